//! The heat: the stick, how hot, how long there is, what wood it takes.

use cartside_core::daybook::tyring::Ran;
use cartside_core::quantity::Percent;
use cartside_core::quantity::time::in_seconds;
use cartside_core::tyring::hot::colour::Colour;
use cartside_core::tyring::hot::fire::{self, FuelMoisture};
use cartside_core::tyring::hot::{Heat, Window};
use cartside_core::words::tyring::heat;

use super::given::{Given, Said};
use super::lengths::lines;
use crate::markup::{Piece, sheet};

/// The whole seconds that may be counted on after the carry, once they can be reckoned.
pub fn left(given: &Given) -> Option<i64> {
    Some(in_seconds(given.tyred.heat().ok()?.window.left) as i64)
}

/// The section about the heat.
pub fn heat(given: &Given) -> Piece {
    let hot = given.said(given.tyred.heat());
    let said = match &hot {
        // A round or a draw that is refused is told with the lengths.
        Err(_) if given.tyred.draw().is_err() || given.tyred.round(Ran::Sole).is_none() => vec![],
        Err(None) => vec![Ok(unsaid(given))],
        Err(why) => vec![Err(why.clone())],
        Ok(hot) => told(hot, given),
    };
    if said.is_empty() {
        return sheet!("<section class=card data-sheet=heat hidden></section>");
    }
    sheet!(
        "<section class=card data-sheet=heat data-verdict={}><h2>Heat</h2>{}{}</section>",
        hot.as_ref().map_or("none", |hot| verdict(&hot.window)),
        lines(said),
        hot.ok().map(|hot| why(&hot, given))
    )
}

/// What the charts call its colour, and how little that says.
fn colours(hot: &Heat) -> String {
    let names = Colour::names(hot.drop.at).map(heat::colour);
    let names = names.collect::<Vec<String>>().join("; ");
    if names.is_empty() {
        return "By the charts it shows no colour yet: trust the stick.".to_owned();
    }
    format!(
        "Its colour by the charts: {names}. They do not agree, and daylight hides the first reds: trust the stick."
    )
}

/// That the iron's own sizes are not said yet.
fn unsaid(given: &Given) -> String {
    given
        .style
        .fill("Not reckoned until {tyre} width and thickness are said, under how it is built.")
}

fn verdict(window: &Window) -> &'static str {
    match window.verdict {
        cartside_core::tyring::hot::Verdict::Enough => "enough",
        cartside_core::tyring::hot::Verdict::DoNotTry => "do-not-try",
    }
}

fn told(hot: &Heat, given: &Given) -> Vec<Said<String>> {
    let style = given.style;
    let mut said = vec![
        Ok(heat::stick(hot.over.stick(), style)),
        Ok(heat::drop_on(&hot.drop)),
    ];
    let window = heat::window(&hot.window, style);
    said.push(match verdict(&hot.window) {
        "enough" => Ok(window),
        _ => Err(Some(window)),
    });
    said.extend(heat::leave_the_fire(&hot.window).map(Ok));
    said
}

fn why(hot: &Heat, given: &Given) -> Piece {
    // Wood that has lain a year under a roof.
    let dry = Percent::whole(20);
    let wood = fire::wood(&hot.tyre, hot.drop.most_useful, FuelMoisture::OfDry(dry));
    let wood = wood.ok().map(|wood| heat::wood(&wood, given.style));
    sheet!(
        "<details class=fold><summary>Why, and how much wood</summary><div class=stack><p>{}</p><p>{}</p><p>{}</p><p>{}</p>\
         <p class=dim>Growth by EN 1993-1-2:2005, 3.4.1.1; cooling by radiation and by Churchill and Chu's equations, the \
         low end in a breeze of 5 m/s.</p></div></details>",
        heat::growth(hot.over.stick(), hot.tyre.across(), given.style),
        heat::by_handbook(&hot.drop, given.style),
        wood.unwrap_or_default(),
        colours(hot)
    )
}
