//! Beginning to look again never makes a wheel better.

use super::{held, standing_at, standing_by};
use crate::daybook::{
    Book, Decision, EntryId, Hand, Says, Stamp, Unwritten, VehicleView, Visit, WheelSaid,
};
use crate::diagnosis::{examined, house_limits, lowest};
use crate::paper::line;
use crate::survey::{Answer, Question, Reading, Slot, Standing};
use crate::wheel::{Felloes, Place, Position, Vehicle, VehicleKind, Wheel};

use Standing::{KeepEmpty, LightWorkOnly, NoFaultFound, NotJudged, NotOnThisWheel};

/// A cart being examined again and again; only its near wheel is described.
struct Cart {
    book: Book,
    id: EntryId,
    visits: Vec<EntryId>,
}

impl Cart {
    fn new() -> Cart {
        let mut cart = Cart {
            book: Book::default(),
            id: EntryId::of(b""),
            visits: Vec::new(),
        };
        let (kind, name) = (VehicleKind::Cart, String::new());
        cart.id = cart.write(None, Says::Vehicle(Vehicle { kind, name }));
        let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
        let position = Position::Near;
        cart.write(Some(cart.id), Says::Wheel(WheelSaid { position, wheel }));
        cart
    }

    fn write(&mut self, vehicle: Option<EntryId>, says: Says) -> EntryId {
        let entry = Unwritten::new(vehicle, says).unwrap();
        let entry = match self.visits.last() {
            Some(visit) if entry.slot != "visit" => entry.in_visit(*visit),
            _ => entry,
        };
        let hand = Hand {
            by: String::new(),
            device: "barn".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
            n: self.book.next_n(),
        };
        let entry = line::read(&line::write(&entry, &hand).unwrap()).unwrap();
        let id = entry.id;
        self.book.add(entry);
        id
    }

    fn visit(&mut self) {
        let visit = self.write(Some(self.id), Says::Visit(Visit::default()));
        self.visits.push(visit);
    }

    /// A broken spoke: *keep empty* by the house limits.
    fn finds_a_broken_spoke(&mut self, spoke: u16) {
        let slot = Slot {
            position: Position::Near,
            place: Place::Spoke(spoke),
            question: Question::SpokeBroken,
        };
        let reading = Reading {
            slot,
            answer: Answer::Yes,
            written: String::new(),
        };
        self.write(Some(self.id), Says::Reading(reading));
    }

    fn decides(&mut self, standing: Standing) {
        let decision = Decision {
            position: Position::Near,
            standing,
            proposed: NotJudged,
            reason: "seen by daylight".to_owned(),
            look_again: None,
            signed: "A. Smith".to_owned(),
        };
        self.write(Some(self.id), Says::Decision(decision));
    }

    /// The standing at the latest examination, that of the vehicle, and which examination holds.
    fn now(&self) -> (Standing, Option<usize>) {
        let view = self.book.view();
        let vehicle: VehicleView<'_, '_> = view.vehicle(self.id);
        let (visit, limits) = (*self.visits.last().unwrap(), house_limits());
        let now = standing_at(&vehicle, visit, Position::Near, &limits).unwrap();
        assert_eq!(lowest(&vehicle, &limits), Some(now));
        let holds = held(&vehicle, visit, Position::Near, &limits);
        let proposed = examined(&vehicle, visit, Position::Near, &limits).unwrap();
        let (of, proposed) = ((visit, Position::Near), proposed.proposed());
        let by = standing_by(&vehicle, of, proposed, holds.map(|(standing, _)| standing));
        assert_eq!(by, now, "what is shown of a wheel that is looked at");
        let holds = holds.map(|(_, entry)| self.visits.iter().position(|id| *id == entry.id));
        (now, holds.flatten())
    }
}

#[test]
fn beginning_to_look_again_makes_nothing_better() {
    let mut cart = Cart::new();
    cart.visit();
    assert_eq!(cart.now(), (NotJudged, None));
    cart.finds_a_broken_spoke(3);
    assert_eq!(cart.now(), (KeepEmpty, None));
    for _ in 0..3 {
        cart.visit();
        assert_eq!(cart.now(), (KeepEmpty, Some(0)));
    }
    cart.finds_a_broken_spoke(3);
    cart.finds_a_broken_spoke(4);
    assert_eq!(cart.now(), (NotOnThisWheel, Some(0)));
    cart.visit();
    assert_eq!(cart.now(), (NotOnThisWheel, Some(3)));
}

#[test]
fn a_decision_ends_what_held_and_a_signed_silence_does_not() {
    let mut cart = Cart::new();
    cart.visit();
    cart.finds_a_broken_spoke(3);
    cart.visit();
    cart.decides(NotJudged);
    assert_eq!(cart.now(), (KeepEmpty, Some(0)));
    cart.visit();
    cart.decides(LightWorkOnly);
    assert_eq!(cart.now().0, LightWorkOnly);
    cart.visit();
    assert_eq!(
        cart.now(),
        (NotJudged, None),
        "what is milder than silence does not hold"
    );
    cart.decides(NoFaultFound);
    assert_eq!(cart.now().0, NoFaultFound);
}
