//! The report, from one source in three cuts: the owner's page, the full examination, the show card.
//! A cut is a document: data that is rendered as plain text to be kept, or as a page.

pub mod document;
mod case;
mod owner;
mod full;
mod readings;
mod figures;
mod work;
mod tyred;
mod show_card;
#[cfg(test)]
mod tests;

use super::style::Style;
use crate::daybook::report::LONGEST_REPORT;
use crate::daybook::{EntryId, VehicleView};
use crate::diagnosis::Limit;
use case::Case;
pub use document::{Block, Document};
pub use figures::{LEGEND, drawn_at, figures};

/// The version of this core, as it is kept with a report handed over.
pub const CORE: &str = env!("CARGO_PKG_VERSION");

/// What every cut that is handed to an owner or an insurer says of itself.
const NO_LEAVE: &str = "This is an examination of wheels by a wheelwright, not a permission to use the road. Local law and the driver's judgement stand.";

/// One of the three cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// What the owner is told, in plain words.
    Owner,
    /// Everything, as an insurer would want it.
    Full,
    /// What is shown beside the vehicle.
    ShowCard,
}

impl Cut {
    /// Every cut, in the order they are offered.
    pub const ALL: [Cut; 3] = [Cut::Owner, Cut::Full, Cut::ShowCard];

    /// The word that stands for this cut in an address.
    pub fn code(self) -> &'static str {
        match self {
            Cut::Owner => "owner",
            Cut::Full => "full",
            Cut::ShowCard => "show-card",
        }
    }

    /// The cut a code stands for.
    pub fn from_code(code: &str) -> Option<Cut> {
        Cut::ALL.into_iter().find(|cut| cut.code() == code)
    }

    /// What it is called, as a label.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Cut::Owner => "owner's page",
            Cut::Full => "full report",
            Cut::ShowCard => "show card",
        }
    }
}

/// How closely the readings are told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Detail {
    /// Each with its hand, its time and its entry.
    Each,
    /// Like answers drawn together, with none of these.
    DrawnTogether,
}

/// The report of one examination in this cut; `None` if there is no such examination.
#[must_use]
pub fn report(
    cut: Cut,
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    limits: &[Limit],
    style: Style,
) -> Option<Document> {
    Some(made(
        cut,
        &Case::of(vehicle, visit, limits, style)?,
        Detail::Each,
    ))
}

fn made(cut: Cut, case: &Case, detail: Detail) -> Document {
    Document(match cut {
        Cut::Owner => owner::owner(case),
        Cut::Full => full::full(case, detail),
        Cut::ShowCard => show_card::show_card(case),
    })
}

/// The same as plain text, as it is kept when it is handed over: where it would be too long, with the
/// readings drawn together, and saying so.
///
/// # Errors
/// There is no such examination, or even so it is too long; in a sentence.
pub fn kept(
    cut: Cut,
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    limits: &[Limit],
    style: Style,
) -> Result<String, String> {
    let case = Case::of(vehicle, visit, limits, style).ok_or(
        "There is no such examination in the book any more. Nothing was handed over; what is written is kept.",
    )?;
    let whole = made(cut, &case, Detail::Each).plain();
    if whole.len() <= LONGEST_REPORT {
        return Ok(whole);
    }
    let drawn = made(cut, &case, Detail::DrawnTogether).plain();
    if drawn.len() <= LONGEST_REPORT {
        return Ok(drawn);
    }
    Err(format!(
        "The report has {} bytes of text even with its readings drawn together; at most {LONGEST_REPORT} are kept. Nothing was handed over and nothing was lost: print it, and hand over the owner's page.",
        drawn.len()
    ))
}
