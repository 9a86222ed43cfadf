//! Lines of every kind as they have been written, byte for byte. Books hold such lines for ever, so
//! a line or a digest that changes here is a change of the form.

use crate::daybook::tyring::{Ran, TakenWith, Warm};
use crate::daybook::{
    Day, Decision, Digest, EntryId, Hand, Kind, LimitSaid, Mark, Marks, Picture, Report,
    RoundTaken, SameAs, Says, Spot, Stamp, Threshold, TyringSaid, Unwritten, Visit, WheelSaid,
    Work, WorkDone,
};
use crate::material::timber::Grain;
use crate::material::{Iron, Species};
use crate::mechanics::Stand;
use crate::paper::line;
use crate::quantity::length::{inches, millimetres};
use crate::quantity::{Measured, Percent};
use crate::survey::{Answer, Crack, Play, Question, Reading, Ring, Slot, Stage, Standing, Use};
use crate::tyring::round::{Line, Run, TapeClass};
use crate::wheel::{
    Arm, Felloes, Keeper, Part, Place, Position, Rim, Size, Sizes, Tyre, Vehicle, VehicleKind,
    Wheel,
};

/// The lines, each of this version.
pub(super) const GOLDEN: &str = include_str!("../golden.jsonl");
/// Their digests in the same order, as another program worked them out.
const DIGESTS: &str = include_str!("../golden.sha256");
/// Lines as a newer version might write them.
pub(super) const NEWER: &str = include_str!("../newer.jsonl");

/// Writes lines one after another, each under the next counter.
#[derive(Default)]
struct Book {
    lines: Vec<String>,
}

impl Book {
    fn write(&mut self, entry: Unwritten) -> EntryId {
        let hand = Hand {
            by: "A. Smith".to_owned(),
            device: "barn-7f3a".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+01:00").unwrap(),
            n: 1 + self.lines.len() as u64,
        };
        let line = line::write(&entry, &hand).unwrap();
        let id = Digest::of(line.as_bytes());
        self.lines.push(line);
        id
    }

    fn says(&mut self, vehicle: EntryId, says: Says) -> EntryId {
        self.write(Unwritten::new(Some(vehicle), says).unwrap())
    }
}

fn reading(position: Position, place: Place, question: Question, answer: Answer) -> Says {
    let slot = Slot {
        position,
        place,
        question,
    };
    let written = match answer {
        Answer::Length(_) => "1 1/2 mm".to_owned(),
        _ => String::new(),
    };
    Says::Reading(Reading {
        slot,
        answer,
        written,
    })
}

fn answers() -> [Says; 10] {
    let gap = Measured::new(millimetres(1.5), millimetres(0.25)).unwrap();
    let part = Measured::new(inches(1.0 / 32.0), millimetres(0.0)).unwrap();
    let near = |place, question, answer| reading(Position::Near, place, question, answer);
    [
        near(Place::Between(1), Question::TyreGap, Answer::Length(gap)),
        near(Place::Joint(1), Question::JointGap, Answer::Length(part)),
        near(
            Place::Joint(6),
            Question::FelloeStep,
            Answer::Over(millimetres(5.0)),
        ),
        near(
            Place::Spoke(3),
            Question::SpokeFoot,
            Answer::Play(Play::Tight),
        ),
        near(
            Place::Spoke(4),
            Question::SpokeFoot,
            Answer::Play(Play::JustMoves),
        ),
        near(
            Place::Spoke(3),
            Question::SpokeRimEnd,
            Answer::Play(Play::Loose),
        ),
        near(Place::Whole, Question::KeeperPresent, Answer::Yes),
        near(Place::Spoke(12), Question::SpokeBroken, Answer::No),
        near(Place::Whole, Question::KeeperRight, Answer::CannotSee),
        near(Place::Whole, Question::KeeperSecured, Answer::NotThere),
    ]
}

/// What came with the second version: what an examination is for, decisions, limits, work, reports.
fn outcomes(book: &mut Book, cart: EntryId, visit: EntryId) {
    let second = Visit {
        place: String::new(),
        used_for: vec![Use::Goods, Use::Road],
        stage: Stage::TyreOff,
        conditions: "poor light; straw in the way".to_owned(),
        safe_to_lift: None,
    };
    book.says(cart, Says::Visit(second));
    let plain = Decision {
        position: Position::Near,
        standing: Standing::KeepEmpty,
        proposed: Standing::KeepEmpty,
        reason: String::new(),
        look_again: None,
        signed: "A. Smith".to_owned(),
    };
    let kinder = Decision {
        standing: Standing::LightWorkOnly,
        reason: "the gap is under a nail".to_owned(),
        look_again: Day::read("2027-05-01"),
        ..plain.clone()
    };
    let decided = |decision| Unwritten::new(Some(cart), Says::Decision(decision)).unwrap();
    let first = book.write(decided(plain).in_visit(visit));
    book.write(decided(kinder).in_visit(visit).replacing(vec![first]));
    let limits = [
        (
            "tyre-gap/keep-empty/anywhere",
            Some(Threshold::Length(millimetres(2.5))),
        ),
        (
            "spoke-broken/not-on-this-wheel/answered",
            Some(Threshold::Count(3)),
        ),
        (
            "keeper-worn/note/share",
            Some(Threshold::Percent(Percent::from_paper(12.5).unwrap())),
        ),
        ("joint-gap/light-work-only/sum", None),
    ];
    for (row, threshold) in limits {
        let row = row.to_owned();
        let said = Says::Limit(LimitSaid { row, threshold });
        book.write(Unwritten::new(None, said).unwrap());
    }
    let full = WorkDone {
        part: Part::At(Position::Near, Place::Spoke(3)),
        did: vec![Work::ReSeated, Work::Other],
        text: "shimmed with “leather”".to_owned(),
        by_whom: "B. Lea".to_owned(),
    };
    let plain = WorkDone {
        part: Part::Vehicle,
        did: vec![Work::Greased],
        text: String::new(),
        by_whom: String::new(),
    };
    let work = Unwritten::new(Some(cart), Says::Work(full)).unwrap();
    book.write(work.in_visit(visit));
    book.says(cart, Says::Work(plain));
    let report = Says::Report(Report {
        text: "Near wheel: light work only.\nLook again by 1 May 2027.".to_owned(),
        to: "B. Lea".to_owned(),
        core: "0.1.0".to_owned(),
    });
    let report = Unwritten::new(Some(cart), report).unwrap();
    book.write(report.in_visit(visit));
}

/// A wheel with all its sizes, and the answers that are neither a gap, a verdict nor yes and no.
fn sized_and_graded() -> Vec<Says> {
    let mm = [1275.0, -12.5, 63.5, 15.875, 76.2, 57.15, 260.0];
    let sizes = Size::ALL.into_iter().zip(mm);
    let sizes = sizes.fold(Sizes::default(), |sizes, (size, mm)| {
        sizes.with(size, Some(millimetres(mm)))
    });
    let wheel = Wheel {
        sizes,
        ..Wheel::of(Felloes::even(12, 6).unwrap())
    };
    let dish = Measured::new(millimetres(-12.5), millimetres(2.0)).unwrap();
    let near = |place, question, answer| reading(Position::Near, place, question, answer);
    let mut says = vec![Says::Wheel(WheelSaid {
        position: Position::Near,
        wheel,
    })];
    says.push(near(Place::Whole, Question::Dish, Answer::Length(dish)));
    says.extend(
        Ring::ALL.map(|ring| near(Place::Between(4), Question::TyreRing, Answer::Ring(ring))),
    );
    says.extend(
        Crack::ALL.map(|crack| near(Place::Nave, Question::CrackNave, Answer::Crack(crack))),
    );
    for percent in [12.57, 0.0, 100.0] {
        let share = Answer::Share(Percent::from_paper(percent).unwrap());
        says.push(near(Place::Felloe(2), Question::Moisture, share));
    }
    says
}

/// Marks of every sort on a picture, then others in their place.
fn marked(book: &mut Book, cart: EntryId, visit: EntryId) {
    let at = Spot::at;
    let all = vec![
        Mark::Line(vec![at(0, 1000), at(250, 333), at(1000, 0)]),
        Mark::Ring(at(100, 200), at(300, 450)),
        Mark::Pin(at(500, 500), "crack begins “here”".to_owned()),
        Mark::Pin(at(7, 999), String::new()),
    ];
    let picture = Digest::of(b"a picture");
    let fewer = all.iter().take(2).cloned().collect();
    let marks = |all| Unwritten::new(Some(cart), Says::Marks(Marks { picture, all })).unwrap();
    let first = book.write(marks(all).in_visit(visit));
    book.write(marks(fewer).in_visit(visit).replacing(vec![first]));
}

/// Rounds by traveller and by tape, and what is chosen for a tyring, all of it and nothing.
fn tyred(book: &mut Book, cart: EntryId, visit: EntryId) {
    let own = Measured::new(millimetres(627.5), millimetres(0.5)).unwrap();
    let run = |turns, past| Run {
        turns,
        past: millimetres(past),
    };
    let sole = RoundTaken {
        position: Position::Near,
        ran: Ran::Sole,
        with: TakenWith::Traveller(1, own),
        line: Line::Middle,
        runs: vec![run(6, 471.0), run(6, 472.25)],
        warm: None,
        hot_weld: false,
        written: "6 + 471; 6 + 472 1/4".to_owned(),
    };
    let welded = RoundTaken {
        ran: Ran::Welded,
        with: TakenWith::Tape(2, TapeClass::II),
        line: Line::Face,
        runs: vec![run(0, 4228.5)],
        warm: Some(Warm { at: 60, within: 15 }),
        hot_weld: true,
        written: String::new(),
        ..sole.clone()
    };
    let nothing = TyringSaid::of(Position::Off);
    let all = TyringSaid {
        position: Position::Near,
        draw: Some(millimetres(9.0)),
        cramped: Some(millimetres(1.5)),
        cut: Some(inches(0.5)),
        charred: Some(millimetres(0.5)),
        oval: Some(millimetres(3.0)),
        clearance: Some(millimetres(4.0)),
        carry: Some(30),
        lay: Some(41),
        wind: Some(5),
        air: Some(-2),
        iron: Some(Iron::Wrought),
        timbers: [
            Some(Species::EnglishElm),
            Some(Species::EnglishOak),
            Some(Species::EuropeanAsh),
        ],
        grains: [None; 3],
        stand: Some(Stand::ClosedBarn),
        months: Some(std::array::from_fn(|month| {
            (86 - month as u8, month as i16 - 3)
        })),
    };
    let lying = RoundTaken {
        ran: Ran::Lying,
        ..welded.clone()
    };
    let tyre = RoundTaken {
        ran: Ran::Tyre,
        line: Line::Back,
        ..sole.clone()
    };
    for says in [sole, tyre, welded, lying].map(Says::Round) {
        book.write(Unwritten::new(Some(cart), says).unwrap().in_visit(visit));
    }
    let grained = TyringSaid {
        timbers: [Some(Species::WychElm), None, Some(Species::EnglishElm)],
        grains: [Some(Grain::Hard), Some(Grain::Medium), Some(Grain::Soft)],
        ..TyringSaid::of(Position::Only)
    };
    for says in [nothing, all, grained].map(Says::Tyring) {
        book.write(Unwritten::new(Some(cart), says).unwrap().in_visit(visit));
    }
}

fn written_now() -> Vec<String> {
    let mut book = Book::default();
    let name = "Bess's “hay” cart \\ 2\" tyres".to_owned();
    let kind = VehicleKind::Cart;
    let cart = book.write(Unwritten::new(None, Says::Vehicle(Vehicle { kind, name })).unwrap());
    let plain = Wheel::of(Felloes::even(14, 6).unwrap());
    let full = Wheel {
        rim: Some(Rim::Sawn),
        tyre: Some(Tyre::Hoop),
        arm: Some(Arm::Iron),
        keeper: Some(Keeper::LinchPin),
        ..Wheel::of(Felloes::even(12, 6).unwrap())
    };
    let wheel = |position, wheel| Says::Wheel(WheelSaid { position, wheel });
    let near = book.says(cart, wheel(Position::Near, full));
    book.says(cart, wheel(Position::Off, plain));
    let place = "the barn by the ford".to_owned();
    let said = Visit {
        place,
        ..Visit::default()
    };
    let visit = book.says(cart, Says::Visit(said));
    let mut readings = Vec::new();
    let nothing = Answer::NothingFound;
    let shifts = reading(Position::Near, Place::Whole, Question::TyreShifts, nothing);
    for says in answers().into_iter().chain([shifts]) {
        let entry = Unwritten::new(Some(cart), says).unwrap();
        readings.push(book.write(entry.in_visit(visit).described_by(near)));
    }
    book.says(
        cart,
        Says::Remark(
            Part::Vehicle,
            "stood wet\nall\u{2028}winter\u{7}".to_owned(),
        ),
    );
    let felloe = Part::At(Position::Off, Place::Felloe(2));
    book.says(cart, Says::Remark(felloe, "Riß in der Felge 🛞".to_owned()));
    let digest = Digest::of(b"a picture");
    let picture = Picture {
        part: Part::At(Position::Near, Place::Nave),
        digest,
        width: 1600,
        height: 1200,
        bytes: 345_678,
    };
    let entry = Unwritten::new(Some(cart), Says::Picture(picture)).unwrap();
    book.write(entry.in_visit(visit));
    book.says(cart, Says::Erasure(digest));
    let first = answers()[0].clone();
    let correction = Unwritten::new(Some(cart), first).unwrap().in_visit(visit);
    let one = book.write(correction.clone().replacing(vec![readings[0]]));
    let other = book.write(correction.clone().replacing(vec![readings[0]]));
    let settled = book.write(correction.clone().replacing(vec![one, other]));
    let struck = Unwritten {
        says: Says::Struck,
        ..correction.replacing(vec![settled])
    };
    book.write(struck);
    book.write(Unwritten {
        kind: Kind::Vehicle,
        vehicle: Some(cart),
        visit: None,
        described_by: None,
        slot: "vehicle".to_owned(),
        says: Says::Struck,
        replaces: vec![cart],
    });
    outcomes(&mut book, cart, visit);
    for says in sized_and_graded() {
        let entry = Unwritten::new(Some(cart), says).unwrap();
        book.write(entry.in_visit(visit));
    }
    let other = Digest::of(b"begun on another device");
    let same = SameAs::new(cart, other).unwrap();
    book.write(Unwritten::new(None, Says::SameAs(same)).unwrap());
    marked(&mut book, cart, visit);
    tyred(&mut book, cart, visit);
    book.lines
}

#[test]
fn lines_are_written_as_they_always_were() {
    let written = written_now();
    for (at, (golden, now)) in GOLDEN.lines().zip(&written).enumerate() {
        assert_eq!(now, golden, "line {}", at + 1);
    }
    assert_eq!(written.len(), GOLDEN.lines().count());
}

#[test]
fn digests_are_those_of_another_program() {
    let digests: Vec<&str> = DIGESTS.lines().collect();
    assert_eq!(digests.len(), GOLDEN.lines().count());
    for (golden, digest) in GOLDEN.lines().zip(digests) {
        assert_eq!(line::read(golden).unwrap().id.hex(), digest, "{golden}");
    }
}

#[test]
fn every_golden_line_is_read_whole() {
    for golden in GOLDEN.lines() {
        let entry = line::read(golden).unwrap();
        assert!(entry.is_read() && entry.unread_fields == 0, "{golden}");
    }
}

#[test]
fn every_line_of_a_newer_version_is_kept_and_known_as_such() {
    for newer in NEWER.lines() {
        let entry = line::read(newer).unwrap();
        assert!(!entry.is_read() || entry.unread_fields > 0, "{newer}");
    }
    assert!(NEWER.lines().count() >= 10);
}
