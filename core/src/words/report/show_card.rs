//! The show card: people carried yes or no, pace, dates, signed.

use super::super::{capital, place, when};
use super::case::Case;
use super::document::{Block, fact};
use crate::diagnosis::Standing;

pub(super) fn show_card(case: &Case) -> Vec<Block> {
    let standing = case.standing();
    let again = case.look_again();
    let again = again.unwrap_or_else(|| "no day is set".to_owned());
    let signed = if case.signed() {
        case.names()
    } else {
        "not signed: this is no card yet".to_owned()
    };
    let uses = case.uses().unwrap_or_else(|| "no use was said".to_owned());
    let (day, by) = (when::day(&case.begun.at), case.examiners());
    let examined = format!("{day}, by {by}");
    let mut card = vec![
        Block::Title(case.name()),
        Block::Strong(people(case)),
        Block::Standing("Its wheels".to_owned(), standing),
        Block::Facts(vec![
            fact("Pace", capital(pace(standing))),
            fact("For", capital(&uses)),
            fact("Examined", examined),
            fact("Look again by", capital(&again)),
            fact("Signed", capital(&signed)),
        ]),
    ];
    if !case.absent.is_empty() {
        let absent = case.absent.iter().map(|at| place::wheel_at(*at));
        let absent: Vec<String> = absent.collect();
        card.push(Block::Text(format!("Not examined: {}.", absent.join(", "))));
    }
    card.push(Block::text("Wheels only; axle bed, shafts, brake and harness were not examined. Not a permission to use the road: local law, the rules of the show and the driver's judgement stand."));
    card
}

/// Yes only where it was asked for, nothing was found on any wheel, and every wheel is signed for.
fn people(case: &Case) -> String {
    let why = match case.standing() {
        _ if !case.people => "it was not examined for them",
        Standing::NoFaultFound if case.passed() => "faults were found and passed over",
        Standing::NoFaultFound if case.signed() => return "People carried: YES".to_owned(),
        Standing::NoFaultFound => "not every wheel is signed for",
        Standing::NotJudged => "not every wheel is judged",
        _ => "a wheel is not good enough",
    };
    format!("People carried: NO – {why}")
}

fn pace(standing: Standing) -> &'static str {
    match standing {
        Standing::NoFaultFound => "as the driver judges; this card sets none",
        Standing::LightWorkOnly => "a walk, on level hard ground",
        Standing::NotJudged => "none: the wheels are not judged",
        Standing::KeepEmpty => "none: it stands, or is walked empty to the shed",
        Standing::NotOnThisWheel => "none: it is not to be moved on its wheels",
    }
}
