//! When a decision stands, and which standing counts, in books as they are written and read.

use proptest::prelude::*;
use proptest::sample::select;

use super::{DecisionRefusal, carries_people, decided, decisions, effective, stands, stands_at};
use crate::daybook::{
    Book, Day, Decision, Entry, EntryId, Hand, Kind, Says, Stamp, Unwritten, Visit, WheelSaid,
};
use crate::diagnosis::{house_limits, lowest};
use crate::paper::line;
use crate::survey::{Standing, Use};
use crate::wheel::{Felloes, Position, Vehicle, VehicleKind, Wheel};

use Standing::{KeepEmpty, LightWorkOnly, NoFaultFound, NotJudged, NotOnThisWheel};

/// A book being written, each entry under the next counter.
#[derive(Default)]
struct Writing(Book);

impl Writing {
    fn write(&mut self, entry: &Unwritten) -> EntryId {
        let hand = Hand {
            by: "A. Smith".to_owned(),
            device: "barn".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
            n: self.0.next_n(),
        };
        let entry = line::read(&line::write(entry, &hand).unwrap()).unwrap();
        let id = entry.id;
        assert!(self.0.add(entry));
        id
    }

    fn cart(&mut self) -> EntryId {
        let kind = VehicleKind::Cart;
        let name = String::new();
        let says = Says::Vehicle(Vehicle { kind, name });
        let cart = self.write(&Unwritten::new(None, says).unwrap());
        let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
        let position = Position::Near;
        let says = Says::Wheel(WheelSaid { position, wheel });
        self.write(&Unwritten::new(Some(cart), says).unwrap());
        cart
    }

    fn visit(&mut self, cart: EntryId, used_for: &[Use]) -> EntryId {
        let says = Says::Visit(Visit {
            used_for: used_for.to_vec(),
            ..Visit::default()
        });
        self.write(&Unwritten::new(Some(cart), says).unwrap())
    }

    fn decide(&mut self, (cart, visit): (EntryId, EntryId), decision: Decision) -> EntryId {
        self.write(&entry(cart, visit, decision))
    }
}

fn entry(cart: EntryId, visit: EntryId, decision: Decision) -> Unwritten {
    Unwritten::new(Some(cart), Says::Decision(decision))
        .unwrap()
        .in_visit(visit)
}

/// A decision with a reason, signed, on the near wheel.
fn because(standing: Standing, proposed: Standing) -> Decision {
    Decision {
        position: Position::Near,
        standing,
        proposed,
        reason: "the gap is under a nail".to_owned(),
        look_again: None,
        signed: "A. Smith".to_owned(),
    }
}

fn plainly(standing: Standing, proposed: Standing) -> Decision {
    Decision {
        reason: " ".to_owned(),
        ..because(standing, proposed)
    }
}

/// The decision and the standing that counts for the near wheel, and how many sides there are.
fn comes_to(
    book: &Book,
    (cart, visit): (EntryId, EntryId),
    proposed: Standing,
) -> (Option<Standing>, Standing, usize) {
    let view = book.view();
    let vehicle = view.vehicle(cart);
    let near = Position::Near;
    (
        decided(&vehicle, visit, near).map(|decision| decision.standing),
        effective(&vehicle, visit, near, proposed),
        decisions(&vehicle, visit, near).len(),
    )
}

#[test]
fn a_kinder_decision_needs_a_reason() {
    for proposed in Standing::ALL {
        for standing in Standing::ALL {
            let without = stands(&plainly(standing, proposed), proposed, false);
            let refusal = DecisionRefusal::NoReason { standing, proposed };
            let kinder = standing < proposed;
            assert_eq!(without, if kinder { Err(refusal) } else { Ok(()) });
            let with = stands(&because(standing, proposed), proposed, false);
            assert_eq!(with, Ok(()), "{standing:?} for {proposed:?}");
        }
    }
}

#[test]
fn for_people_light_work_and_no_judgement_are_never_enough() {
    for proposed in Standing::ALL {
        for standing in Standing::ALL {
            let stands = stands(&because(standing, proposed), proposed, true);
            let refused = Err(DecisionRefusal::People(standing));
            let little = [LightWorkOnly, NotJudged].contains(&standing);
            assert_eq!(stands, if little { refused } else { Ok(()) });
        }
    }
}

#[test]
fn a_reason_given_for_something_milder_is_not_enough() {
    let decision = because(LightWorkOnly, KeepEmpty);
    assert_eq!(stands(&decision, KeepEmpty, false), Ok(()));
    assert_eq!(stands(&decision, LightWorkOnly, false), Ok(()));
    let (then, now) = (KeepEmpty, NotOnThisWheel);
    let outgrown = Err(DecisionRefusal::Outgrown { then, now });
    assert_eq!(stands(&decision, now, false), outgrown);
    let harsh = because(NotOnThisWheel, KeepEmpty);
    assert_eq!(stands(&harsh, now, false), Ok(()), "it is no kinder");
}

#[test]
fn a_decision_is_signed() {
    let nobody = Decision {
        signed: " ".to_owned(),
        ..because(KeepEmpty, KeepEmpty)
    };
    assert_eq!(
        stands(&nobody, KeepEmpty, false),
        Err(DecisionRefusal::NotSigned)
    );
}

#[test]
fn a_day_to_look_again_is_none_before_the_examination() {
    let at = |again| {
        let decision = Decision {
            look_again: Day::read(again),
            ..plainly(KeepEmpty, KeepEmpty)
        };
        stands_at(&decision, KeepEmpty, false, "2026-11-25")
    };
    assert_eq!(at("2026-11-24"), Err(DecisionRefusal::AgainBefore));
    assert_eq!(at("2026-11-25"), Ok(()));
    assert_eq!(at("2027-01-01"), Ok(()));
}

#[test]
fn the_proposal_counts_until_it_is_decided() {
    let mut writing = Writing::default();
    let cart = writing.cart();
    let at = (cart, writing.visit(cart, &[Use::Goods]));
    assert_eq!(comes_to(&writing.0, at, NotJudged), (None, NotJudged, 0));
    writing.decide(at, because(LightWorkOnly, NotJudged));
    let decided = (Some(LightWorkOnly), LightWorkOnly, 1);
    assert_eq!(comes_to(&writing.0, at, NotJudged), decided);
    let elsewhere = effective(
        &writing.0.view().vehicle(cart),
        at.1,
        Position::Off,
        NotJudged,
    );
    assert_eq!(elsewhere, NotJudged, "another wheel is not decided");
}

#[test]
fn what_does_not_stand_does_not_count() {
    let mut writing = Writing::default();
    let cart = writing.cart();
    let at = (cart, writing.visit(cart, &[]));
    writing.decide(at, plainly(NoFaultFound, KeepEmpty));
    let refused = (Some(NoFaultFound), KeepEmpty, 1);
    assert_eq!(comes_to(&writing.0, at, KeepEmpty), refused);
    let people = (cart, writing.visit(cart, &[Use::People, Use::Road]));
    writing.decide(people, because(LightWorkOnly, KeepEmpty));
    let refused = (Some(LightWorkOnly), KeepEmpty, 1);
    assert_eq!(comes_to(&writing.0, people, KeepEmpty), refused);
}

#[test]
fn people_on_any_side_of_an_examination_are_people() {
    let mut writing = Writing::default();
    let cart = writing.cart();
    let visit = writing.visit(cart, &[Use::Goods]);
    let people = |writing: &Writing| carries_people(&writing.0.view().vehicle(cart), visit);
    assert!(!people(&writing));
    for used_for in [Use::People, Use::Display] {
        let says = Says::Visit(Visit {
            used_for: vec![used_for],
            ..Visit::default()
        });
        let correction = Unwritten::new(Some(cart), says).unwrap();
        writing.write(&correction.replacing(vec![visit]));
    }
    assert!(people(&writing), "one of two sides says so");
}

#[test]
fn of_a_dispute_the_harsher_counts_whether_one_knew_of_the_other_or_not() {
    for correcting in [false, true] {
        for (one, other) in [(LightWorkOnly, KeepEmpty), (KeepEmpty, LightWorkOnly)] {
            let mut writing = Writing::default();
            let cart = writing.cart();
            let at = (cart, writing.visit(cart, &[]));
            let first = writing.decide(at, because(NoFaultFound, NotOnThisWheel));
            let replaces = if correcting { vec![first] } else { Vec::new() };
            for standing in [one, other] {
                let decision = because(standing, NotOnThisWheel);
                let entry = entry(at.0, at.1, decision).replacing(replaces.clone());
                writing.write(&entry);
            }
            let sides = if correcting { 2 } else { 3 };
            let harsher = (Some(KeepEmpty), KeepEmpty, sides);
            assert_eq!(comes_to(&writing.0, at, NotOnThisWheel), harsher);
            let view = writing.0.view();
            assert_eq!(view.vehicle(cart).disputes().len(), 1, "it can be settled");
            let heads = decisions(&view.vehicle(cart), at.1, Position::Near);
            let heads = heads.iter().map(|entry| entry.id).collect();
            let last = entry(at.0, at.1, because(LightWorkOnly, NotOnThisWheel));
            let last = last.replacing(heads);
            writing.write(&last);
            let settled = (Some(LightWorkOnly), LightWorkOnly, 1);
            assert_eq!(comes_to(&writing.0, at, NotOnThisWheel), settled);
        }
    }
}

#[test]
fn of_two_as_harsh_the_one_that_looks_again_sooner_counts() {
    for days in [
        ["2027-05-01", "2027-03-01", ""],
        ["", "2027-03-01", "2027-05-01"],
    ] {
        let mut writing = Writing::default();
        let cart = writing.cart();
        let at = (cart, writing.visit(cart, &[]));
        for day in days {
            let look_again = Day::read(day);
            let decision = because(KeepEmpty, KeepEmpty);
            writing.decide(
                at,
                Decision {
                    look_again,
                    ..decision
                },
            );
        }
        let view = writing.0.view();
        let decided = decided(&view.vehicle(cart), at.1, Position::Near).unwrap();
        assert_eq!(decided.look_again, Day::read("2027-03-01"));
    }
}

#[test]
fn a_decision_of_another_examination_is_not_used() {
    let mut writing = Writing::default();
    let cart = writing.cart();
    let first = (cart, writing.visit(cart, &[]));
    let second = (cart, writing.visit(cart, &[]));
    let of_first = writing.decide(first, because(NoFaultFound, KeepEmpty));
    assert_eq!(
        comes_to(&writing.0, second, KeepEmpty),
        (None, KeepEmpty, 0)
    );
    assert_eq!(comes_to(&writing.0, first, KeepEmpty).1, NoFaultFound);
    let reaching = entry(second.0, second.1, because(KeepEmpty, KeepEmpty));
    writing.write(&reaching.replacing(vec![of_first]));
    let untouched = (Some(NoFaultFound), NoFaultFound, 1);
    assert_eq!(comes_to(&writing.0, first, KeepEmpty), untouched);
    assert_eq!(writing.0.view().problems().len(), 1, "it is reported");
    assert_eq!(writing.0.view().vehicle(cart).disputes().len(), 0);
}

#[test]
fn a_decision_struck_out_decides_nothing() {
    let mut writing = Writing::default();
    let cart = writing.cart();
    let at = (cart, writing.visit(cart, &[]));
    let id = writing.decide(at, because(NoFaultFound, KeepEmpty));
    let decision = writing.0.entry(id).unwrap().clone();
    writing.write(&Unwritten::striking(&decision, vec![id]));
    assert_eq!(comes_to(&writing.0, at, KeepEmpty), (None, KeepEmpty, 0));
}

#[test]
fn a_decision_of_a_newer_version_leaves_the_proposal() {
    let mut writing = Writing::default();
    let cart = writing.cart();
    let at = (cart, writing.visit(cart, &[]));
    let id = writing.decide(at, because(NoFaultFound, KeepEmpty));
    let newer = Entry {
        id: crate::daybook::Digest::of(b"newer"),
        says: Says::Unread,
        replaces: vec![id],
        n: 9,
        ..writing.0.entry(id).unwrap().clone()
    };
    writing.0.add(newer);
    assert_eq!(comes_to(&writing.0, at, KeepEmpty), (None, KeepEmpty, 1));
}

#[test]
fn the_lowest_standing_is_the_one_that_counts() {
    let mut writing = Writing::default();
    let cart = writing.cart();
    let visit = writing.visit(cart, &[]);
    let lowest = |book: &Book| lowest(&book.view().vehicle(cart), &house_limits());
    assert_eq!(lowest(&writing.0), Some(NotJudged));
    writing.decide((cart, visit), because(LightWorkOnly, NotJudged));
    assert_eq!(lowest(&writing.0), Some(LightWorkOnly));
    writing.visit(cart, &[]);
    assert_eq!(
        lowest(&writing.0),
        Some(NotJudged),
        "a new look, a new decision"
    );
}

fn standings() -> impl Strategy<Value = Standing> {
    select(&Standing::ALL[..])
}

proptest! {
    /// Without a reason nothing that is decided is kinder than what is proposed.
    #[test]
    fn without_a_reason_no_decision_makes_it_kinder(
        sides in proptest::collection::vec(standings(), 0..4),
        proposed in standings(),
        people in any::<bool>(),
    ) {
        let mut writing = Writing::default();
        let cart = writing.cart();
        let used_for: &[Use] = if people { &[Use::People] } else { &[] };
        let at = (cart, writing.visit(cart, used_for));
        for side in sides {
            writing.decide(at, plainly(side, proposed));
        }
        let (_, counts, _) = comes_to(&writing.0, at, proposed);
        prop_assert!(counts >= proposed);
    }

    /// One more side of a dispute never makes it kinder, and with people carried nothing decided
    /// comes to light work only.
    #[test]
    fn one_more_side_is_never_kinder(
        sides in proptest::collection::vec(standings(), 1..4),
        proposed in standings(),
        people in any::<bool>(),
    ) {
        let mut writing = Writing::default();
        let cart = writing.cart();
        let used_for: &[Use] = if people { &[Use::People] } else { &[] };
        let at = (cart, writing.visit(cart, used_for));
        let mut before = None;
        for side in sides {
            writing.decide(at, because(side, proposed));
            let (_, counts, _) = comes_to(&writing.0, at, proposed);
            prop_assert!(before <= Some(counts));
            prop_assert!(!people || counts != LightWorkOnly || proposed == LightWorkOnly);
            before = Some(counts);
        }
        let view = writing.0.view();
        prop_assert!(view.vehicle(cart).threads(&Kind::Decision).len() == 1);
    }
}
