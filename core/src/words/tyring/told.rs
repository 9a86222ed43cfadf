//! What stands on the sheet and in a report alike: the draw as the tyre stands, and the proof.

use super::{measure, refusal};
use crate::daybook::tyred::{Reckoned, Tyred};
use crate::daybook::tyring::Ran;
use crate::words::style::Style;

/// The draw as the tyre stands, and whether one traveller ran both.
///
/// # Errors
/// Why there is none.
pub fn taken(tyred: &Tyred, style: Style) -> Reckoned<Vec<String>> {
    let taken = tyred.taken()?;
    let mut told = vec![format!("As it is: {}.", measure::draw(&taken, style))];
    if let (Some(sole), Some(tyre)) = (tyred.round(Ran::Sole), tyred.tyre())
        && !sole.same_gauge(&tyre)
    {
        told.push(measure::not_the_same(style));
    }
    Ok(told)
}

/// The proof: what the round over the tyre as it lies has to say.
///
/// # Errors
/// Why there is none.
pub fn proof(tyred: &Tyred, style: Style) -> Reckoned<String> {
    let (sole, tyre) = (
        tyred.round(Ran::Sole).ok_or(None)?,
        tyred.tyre().ok_or(None)?,
    );
    Ok(measure::lying(&tyred.lies()?, &sole, &tyre, style))
}

/// A line of it, or the sentence that says why there is none; nothing where something is not said yet.
pub fn sentence(said: Reckoned<String>, style: Style) -> Option<String> {
    said.map_or_else(|why| Some(refusal(&why?, style)), Some)
}
