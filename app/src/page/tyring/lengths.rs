//! What a smith can use at once: rounds, the draw, what to take out, what the joints take, the stick.

use cartside_core::daybook::tyring::Ran;
use cartside_core::quantity::circumference::{Circumference, Draw};
use cartside_core::quantity::length::millimetres;
use cartside_core::tyring::bar;
use cartside_core::tyring::cut::{FEWEST_JOBS, Job, WeldLoss, to_take_out};
use cartside_core::tyring::draw::seating;
use cartside_core::words::capital;
use cartside_core::words::tyring::{self, advice, cut, measure, said as round_said, told};

use super::given::{Given, Said};
use crate::markup::{Piece, sheet};

/// Every length, and why one is not there.
pub fn lengths(given: &Given, (jobs, named): &(Vec<Job>, Vec<String>)) -> Piece {
    sheet!(
        "<section class=card data-sheet=lengths><h2>Lengths</h2>{}{}{}</section>",
        lines(said(given, jobs)),
        why(given, named),
        new_bar(given)
    )
}

/// How the draw is reckoned, and from which jobs the loss in a weld is learnt, once there are enough.
fn why(given: &Given, named: &[String]) -> Option<Piece> {
    let tyred = &given.tyred;
    let (sole, tyre) = (tyred.round(Ran::Sole)?, tyred.tyre()?);
    let taken = tyred.taken().ok()?;
    let named = named.iter().filter(|_| named.len() >= FEWEST_JOBS);
    let named = named.map(|job| sheet!("<li>{}</li>", job.clone()));
    Some(sheet!(
        "<details class=fold><summary>Why</summary><p>{}</p><ul class=points data-jobs>{}</ul></details>",
        measure::why(&sole, &tyre, &taken, given.style),
        named.collect::<Vec<Piece>>()
    ))
}

/// The bar for a new tyre of this draw, and beside it the rules of the smiths.
fn new_bar(given: &Given) -> Option<Piece> {
    let (wheel, draw) = (given.tyred.round(Ran::Sole)?, given.tyred.draw().ok()?);
    let (thickness, style) = (given.tyred.iron[1]?, given.style);
    let inside = Circumference(wheel.round.0 - draw.0);
    let bar = bar::bar(inside, thickness, millimetres(0.0)).ok()?;
    let rules = bar::PRINTED.iter().filter_map(|printed| {
        let lengths = printed.rule.bar(inside, thickness).ok()?;
        Some(sheet!(
            "<li>{}</li>",
            cut::bar_rule(printed, lengths, style)
        ))
    });
    Some(sheet!(
        "<details class=fold data-bar><summary>A new bar</summary><div class=stack><p>{}</p><ul class=\"points stack\">{}</ul></div></details>",
        cut::new_bar(bar, style),
        rules.collect::<Vec<Piece>>()
    ))
}

/// Sentences under each other; a refusal stands out.
pub fn lines(said: Vec<Said<String>>) -> Piece {
    let mut told = Vec::new();
    let each = said.into_iter().filter(|line| {
        // The same refusal said twice helps nobody.
        let new = !told.contains(line);
        told.push(line.clone());
        new
    });
    let each = each.filter_map(|line| match line {
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

fn said(given: &Given, jobs: &[Job]) -> Vec<Said<String>> {
    let (style, tyred) = (given.style, &given.tyred);
    let refused = given.refused.iter();
    let mut said: Vec<Said<String>> = refused.map(|why| Err(Some(why.clone()))).collect();
    for ran in [Ran::Sole, Ran::Tyre, Ran::Welded] {
        said.extend(tyred.round(ran).map(|round| {
            let name = capital(&round_said::ran(ran, style));
            Ok(format!("{name}: {}.", measure::round(&round, style)))
        }));
    }
    match given.said(told::taken(tyred, style)) {
        Ok(taken) => said.extend(taken.into_iter().map(Ok)),
        Err(why) => said.push(Err(why)),
    }
    said.extend(to_cut(given, jobs));
    said.push(nip(given));
    said.extend(given.stand_offs.first().map(|_| seats(given)));
    let charred = tyred.charred().map(|lost| measure::charred(lost, style));
    said.push(given.said(charred));
    said.push(given.said(told::proof(tyred, style)));
    said
}

fn to_cut(given: &Given, jobs: &[Job]) -> Vec<Said<String>> {
    let tyred = &given.tyred;
    let (Some(wheel), Some(tyre)) = (tyred.round(Ran::Sole), tyred.tyre()) else {
        return Vec::new();
    };
    let style = given.style;
    let mut said = Vec::new();
    if let (Some(before), Some(after), Some(cut)) = (
        tyred.round(Ran::Tyre),
        tyred.round(Ran::Welded),
        tyred.said.cut,
    ) {
        let job = Job {
            before: before.round,
            cut,
            after: after.round,
        };
        said.push(Ok(measure::weld_took(job.lost(), style)));
    }
    let Some(draw) = tyred.said.draw.map(Draw) else {
        return said;
    };
    let near = tyred.taken().is_ok_and(|taken| {
        let off = draw.0 - taken.draw.0;
        off.abs() <= taken.doubt.to_either_side()
    });
    if near {
        said.push(Ok(measure::as_wanted(style)));
        return said;
    }
    let loss = WeldLoss::learnt(jobs).unwrap_or_else(|_| WeldLoss::printed());
    match to_take_out(wheel.round, tyre.round, draw, &loss) {
        Ok(take) => said.extend(
            [
                cut::take_out(&take, style),
                cut::weld_loss(&loss, style),
                measure::hot_weld(style),
            ]
            .map(Ok),
        ),
        Err(refusal) => said.push(Err(Some(tyring::refusal(&refusal, style)))),
    }
    said
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
         <ul class=\"points stack\">{}</ul><p class=dim>They differ by trade and country: no mean of them is advice.</p></details>",
        rows.len().to_string(),
        each.collect::<Vec<Piece>>()
    )
}
