//! What a smith can use at once: rounds, the draw, what to take out, what the joints take, the stick.

use cartside_core::tyring::cut::{WeldLoss, to_take_out};
use cartside_core::tyring::draw::seating;
use cartside_core::words::capital;
use cartside_core::words::tyring::{self, advice, cut, measure};

use super::given::{Given, Said};
use crate::markup::{Piece, sheet};

/// Every length, and why one is not there.
pub fn lengths(given: &Given) -> Piece {
    sheet!(
        "<section class=card data-sheet=lengths><h2>Lengths</h2>{}</section>",
        lines(said(given))
    )
}

/// Sentences under each other; a refusal stands out.
pub fn lines(said: Vec<Said<String>>) -> Piece {
    let each = said.into_iter().filter_map(|line| match line {
        Ok(words) => Some(sheet!("<p>{}</p>", words)),
        Err(Some(why)) => Some(sheet!("<p class=refusal role=alert>{}</p>", why)),
        Err(None) => None,
    });
    let each: Vec<Piece> = each.collect();
    if each.is_empty() {
        sheet!("<p class=dim>Nothing to reckon with yet: type the wheel's round above.</p>")
    } else {
        sheet!("<div class=stack>{}</div>", each)
    }
}

fn said(given: &Given) -> Vec<Said<String>> {
    let style = given.style;
    let named = |name: &'static str, round: &Said<_>| {
        round
            .clone()
            .map(|it| format!("{name}: {}.", measure::round(&it, style)))
    };
    let mut said = vec![
        named("Wheel", &given.wheel),
        named(
            if style.terms.tyre == "tire" {
                "Tire"
            } else {
                "Tyre"
            },
            &given.tyre,
        ),
        given
            .taken()
            .map(|it| format!("As it is: {}.", measure::draw(&it, style))),
    ];
    // The same refusal said twice helps nobody.
    if given.wheel.is_err() || given.tyre.is_err() {
        said.pop();
    }
    said.extend(to_cut(given));
    said.push(nip(given));
    said.extend(given.stand_offs.first().map(|_| seats(given)));
    said
}

fn to_cut(given: &Given) -> Vec<Said<String>> {
    let (Ok(wheel), Ok(tyre)) = (&given.wheel, &given.tyre) else {
        return Vec::new();
    };
    let style = given.style;
    let draw = match &given.wanted {
        Ok(draw) => *draw,
        Err(why) => return vec![Err(why.clone())],
    };
    let loss = WeldLoss::printed();
    match to_take_out(wheel.round, tyre.round, draw, &loss) {
        Ok(take) => [
            cut::take_out(&take, style),
            cut::weld_loss(&loss, style),
            measure::hot_weld(style),
        ]
        .map(Ok)
        .into(),
        Err(refusal) => vec![Err(Some(tyring::refusal(&refusal, style)))],
    }
}

fn nip(given: &Given) -> Said<String> {
    // Why there is no draw is said above.
    let draw = given.draw().map_err(|_| None)?;
    let joints = given.joints.clone()?;
    let nip = given.refused(joints.nip(draw))?;
    Ok(capital(&measure::nip(&nip, given.style)))
}

fn seats(given: &Given) -> Said<String> {
    let joints = given.joints.clone().map_err(|_| None)?;
    let seats = given.refused(seating(&joints, &given.stand_offs))?;
    Ok(measure::seating(seats, given.style))
}

/// What the trade has printed, row by row.
pub fn printed(given: &Given) -> Piece {
    let rows = match &given.printed {
        Ok(rows) => rows,
        Err(why) => {
            return sheet!(
                "<p class=warning data-printed=none>{}</p>",
                why.clone().unwrap_or_default()
            );
        }
    };
    let each = rows
        .iter()
        .map(|row| sheet!("<li>{}</li>", advice::row(row, given.style)));
    sheet!(
        "<details class=fold data-printed><summary>What the trade prints for such a wheel ({})</summary>\
         <ul class=points>{}</ul><p class=dim>They differ by trade and country: no mean of them is advice.</p></details>",
        rows.len().to_string(),
        each.collect::<Vec<Piece>>()
    )
}
