//! Rounds and what is chosen for a tyring: one thing in each examination, corrected, in dispute, and reckoned from.

use super::writer::{Writer, book};
use crate::daybook::tyring::{Ran, TakenWith, Warm};
use crate::daybook::{Entry, EntryId, RoundTaken, Says, TyringSaid, Unwritten, Visit};
use crate::material::Iron;
use crate::quantity::Measured;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::tyring::draw::DrawTaken;
use crate::tyring::round::{Care, Line, Run, TapeClass};
use crate::wheel::Position;

const NEAR: Position = Position::Near;

fn taken(ran: Ran, past: f64) -> RoundTaken {
    let own = Measured::new(millimetres(627.0), millimetres(0.5)).unwrap();
    let run = Run {
        turns: 6,
        past: millimetres(past),
    };
    RoundTaken {
        position: NEAR,
        ran,
        with: TakenWith::Traveller(1, own),
        line: Line::Middle,
        runs: vec![run],
        warm: None,
        hot_weld: false,
        written: format!("6 + {past}"),
    }
}

fn visit(writer: &mut Writer, cart: EntryId) -> Entry {
    writer.write(Unwritten::new(Some(cart), Says::Visit(Visit::default())).unwrap())
}

fn write(
    writer: &mut Writer,
    (cart, visit): (EntryId, EntryId),
    says: Says,
    replaces: &[&Entry],
) -> Entry {
    let replaces = replaces.iter().map(|entry| entry.id).collect();
    let entry = Unwritten::new(Some(cart), says).unwrap().in_visit(visit);
    writer.write(entry.replacing(replaces))
}

/// What is left over after the turns of the sole's round in an examination.
fn past(entries: &[&Entry], cart: EntryId, visit: EntryId) -> Option<f64> {
    let book = book(entries.iter().copied());
    let view = book.view();
    let round = view.vehicle(cart).round(visit, NEAR, Ran::Sole)?.clone();
    Some(to_paper_mm(round.runs[0].past))
}

#[test]
fn each_examination_has_its_own_round_and_a_correction_takes_its_place() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let (this, next) = (visit(&mut writer, cart.id), visit(&mut writer, cart.id));
    let sole = |past| Says::Round(taken(Ran::Sole, past));
    let first = write(&mut writer, (cart.id, this.id), sole(471.0), &[]);
    let tyre = Says::Round(taken(Ran::Tyre, 480.0));
    let tyre = write(&mut writer, (cart.id, this.id), tyre, &[]);
    let corrected = write(&mut writer, (cart.id, this.id), sole(472.0), &[&first]);
    let later = write(&mut writer, (cart.id, next.id), sole(465.0), &[]);
    let before = [&cart, &this, &next, &first, &tyre];
    assert_eq!(past(&before, cart.id, this.id), Some(471.0));
    assert_eq!(past(&before, cart.id, next.id), None);
    let all = [&cart, &this, &next, &first, &tyre, &corrected, &later];
    assert_eq!(past(&all, cart.id, this.id), Some(472.0));
    assert_eq!(past(&all, cart.id, next.id), Some(465.0));
    let book = book(all);
    assert!(book.view().vehicle(cart.id).disputes().is_empty());
}

#[test]
fn two_that_differ_are_a_dispute_and_two_typed_otherwise_are_none() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let this = visit(&mut writer, cart.id);
    let first = taken(Ran::Sole, 471.0);
    let retyped = RoundTaken {
        written: "471 after six".to_owned(),
        ..first.clone()
    };
    let other = taken(Ran::Sole, 473.0);
    let [first, retyped, other] = [first, retyped, other]
        .map(|round| write(&mut writer, (cart.id, this.id), Says::Round(round), &[]));
    let disputes = |entries: [&Entry; 4]| {
        let book = book(entries);
        book.view().vehicle(cart.id).disputes().len()
    };
    assert_eq!(disputes([&cart, &this, &first, &retyped]), 0);
    assert_eq!(disputes([&cart, &this, &first, &other]), 1);
    assert_eq!(
        past(&[&cart, &this, &other, &first], cart.id, this.id),
        Some(471.0)
    );
}

#[test]
fn choices_are_those_of_their_examination() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let (this, next) = (visit(&mut writer, cart.id), visit(&mut writer, cart.id));
    let said = TyringSaid {
        iron: Some(Iron::Wrought),
        ..TyringSaid::of(NEAR)
    };
    let chosen = write(
        &mut writer,
        (cart.id, this.id),
        Says::Tyring(said.clone()),
        &[],
    );
    let book = book([&cart, &this, &next, &chosen]);
    let view = book.view();
    let of = view.vehicle(cart.id);
    assert_eq!(of.tyring(this.id, NEAR), Some(&said));
    assert_eq!(of.tyring(next.id, NEAR), None);
    assert_eq!(of.tyring(this.id, Position::Off), None);
}

#[test]
fn a_draw_is_reckoned_from_what_is_kept() {
    let reckoned = |round: &RoundTaken| round.reckoned(Iron::Steel, Care::default()).unwrap();
    let (sole, tyre) = (taken(Ran::Sole, 471.0), taken(Ran::Tyre, 460.0));
    let draw = DrawTaken::of(&reckoned(&sole), &reckoned(&tyre)).unwrap();
    assert!((to_paper_mm(draw.draw.0) - 11.0).abs() < 1e-9);
    // The traveller's own error falls out where the same one ran both, and not where another did.
    let other = RoundTaken {
        with: match tyre.with {
            TakenWith::Traveller(_, own) => TakenWith::Traveller(2, own),
            tape => tape,
        },
        ..tyre.clone()
    };
    let apart = DrawTaken::of(&reckoned(&sole), &reckoned(&other)).unwrap();
    assert!(apart.doubt.to_either_side() > draw.doubt.to_either_side() * 1.2);
    // ⅛ in less where the weld was hot (Hasluck), and less again where the iron was warm.
    let hot = RoundTaken {
        hot_weld: true,
        ..tyre.clone()
    };
    let less = to_paper_mm(reckoned(&tyre).round.0 - reckoned(&hot).round.0);
    assert!((less - 25.4 / 8.0).abs() < 1e-9);
    let warm = RoundTaken {
        warm: Some(Warm { at: 100, within: 0 }),
        ..tyre
    };
    let less = to_paper_mm(reckoned(&sole).round.0) - 11.0 - to_paper_mm(reckoned(&warm).round.0);
    // EN 1993-1-2, 3.4.1.1, from 20 to 100 °C: 0.0998 % of 4222 mm.
    assert!((less - 4.21).abs() < 0.02, "{less}");
}

#[test]
fn what_cannot_be_is_refused_and_not_reckoned() {
    let bad = |round: RoundTaken| round.reckoned(Iron::Steel, Care::default()).is_err();
    let good = taken(Ran::Sole, 471.0);
    assert!(!bad(good.clone()));
    assert!(bad(taken(Ran::Sole, 700.0)), "more than a turn left over");
    assert!(bad(RoundTaken {
        runs: Vec::new(),
        ..good.clone()
    }));
    let nothing = Measured::new(millimetres(0.0), millimetres(0.0)).unwrap();
    assert!(bad(RoundTaken {
        with: TakenWith::Traveller(1, nothing),
        ..good.clone()
    }));
    let tape = TakenWith::Tape(1, TapeClass::I);
    assert!(bad(RoundTaken {
        with: tape,
        ..taken(Ran::Sole, 0.0)
    }));
    assert!(bad(RoundTaken {
        warm: Some(Warm {
            at: 1500,
            within: 0
        }),
        ..good
    }));
}

#[test]
fn a_slot_leads_back() {
    for position in Position::ALL {
        for ran in Ran::ALL {
            let slot = RoundTaken::slot_of(position, ran);
            assert_eq!(RoundTaken::of_slot(&slot), Some((position, ran)));
            assert_eq!(TyringSaid::position(&slot), None);
        }
        assert_eq!(
            TyringSaid::position(&TyringSaid::slot(position)),
            Some(position)
        );
    }
    for slot in [
        "near/whole/round-",
        "near/nave/round-sole",
        "near/whole",
        "round-sole",
        "",
    ] {
        assert_eq!(RoundTaken::of_slot(slot), None, "{slot}");
    }
}
