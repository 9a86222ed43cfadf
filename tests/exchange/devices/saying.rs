//! What a device may say, of what it knows.

use cartside_core::daybook::tyring::{Ran, TakenWith};
use cartside_core::daybook::{
    Book, Day, Decision, Digest, Entry, EntryId, Kind, LimitSaid, Mark, Marks, Picture, Report,
    RoundTaken, SameAs, Says, Spot, Threshold, TyringSaid, Unwritten, Visit, WheelSaid, Work,
    WorkDone,
};
use cartside_core::quantity::length::millimetres;
use cartside_core::quantity::{Measured, Percent};
use cartside_core::survey::{Answer, Crack, Play, Question, Reading, Slot, Stage, Standing, Use};
use cartside_core::tyring::round::{Line, Run, TapeClass};
use cartside_core::wheel::{Felloes, Part, Place, Position, Tyre, Vehicle, VehicleKind, Wheel};

use super::{is_of, vehicle};
use crate::chance::Chance;

/// What a device knows, as far as it needs it to say more.
pub(crate) struct Known {
    vehicles: Vec<EntryId>,
    /// With the vehicle of each.
    visits: Vec<(EntryId, EntryId)>,
    wheels: Vec<EntryId>,
}

impl Known {
    pub(crate) fn of(book: &Book) -> Known {
        let all = |kind: Kind| {
            book.entries()
                .filter(move |entry| is_of(entry, kind.clone()))
        };
        let visits = all(Kind::Visit).filter_map(|entry| Some((entry.id, entry.vehicle?)));
        Known {
            vehicles: book
                .entries()
                .filter(|entry| entry.begins_vehicle())
                .map(|entry| entry.id)
                .collect(),
            visits: visits.collect(),
            wheels: all(Kind::Wheel).map(|entry| entry.id).collect(),
        }
    }
}

/// A cart with one wheel, and its first examination.
pub(super) fn beginning() -> [Says; 3] {
    [cart(0), wheel(Position::Near, 0), visit(0)]
}

/// Anything new that can be said by one who knows this.
pub(super) fn anything(known: &Known, chance: &mut Chance) -> Option<Unwritten> {
    let to = chance.below(3);
    let what = chance.below(16);
    // A vehicle begun twice comes often enough to be said to be one.
    if what == 0 || (what == 14 && known.vehicles.len() < 2) {
        return Unwritten::new(None, cart(to));
    }
    if what == 1 {
        return Unwritten::new(None, limit(to));
    }
    if what == 15 && known.vehicles.len() > 1 {
        let pair = [(); 2].map(|()| chance.one(known.vehicles.clone()));
        let [Some(one), Some(other)] = pair else {
            return None;
        };
        return Unwritten::new(None, Says::SameAs(SameAs::new(one, other)?));
    }
    let said = match what {
        2 => wheel([Position::Near, Position::Off][chance.below(2)], to),
        3 => visit(to),
        4 => remark(Part::Vehicle, to),
        5 => picture(to),
        6 if chance.once_in(2) => marks(bytes_of(to), chance.below(3)),
        6 => Says::Erasure(bytes_of(to)),
        7 => work(to),
        8 => report(to),
        9 => decision(Position::Near, to, chance.below(2)),
        10 if chance.once_in(2) => round(to),
        10 => tyring(to),
        _ => reading(chance),
    };
    if (2..=7).contains(&what) {
        let of = chance.one(known.vehicles.clone())?;
        let entry = Unwritten::new(Some(of), said)?;
        let visit = chance
            .one(known.visits.clone())
            .filter(|(_, its)| *its == of && what > 3);
        return Some(visit.map_or(entry.clone(), |(visit, _)| entry.in_visit(visit)));
    }
    let (visit, of) = chance.one(known.visits.clone())?;
    let entry = Unwritten::new(Some(of), said)?.in_visit(visit);
    let described = chance.one(known.wheels.clone()).filter(|_| what > 13);
    Some(described.map_or(entry.clone(), |wheel| entry.described_by(wheel)))
}

/// Something else about the same slot; `None` of what says nothing by itself.
pub(super) fn something_else(old: &Entry, chance: &mut Chance) -> Option<Unwritten> {
    let to = chance.below(3);
    let said = match &old.says {
        Says::Vehicle(_) => cart(to),
        Says::Wheel(said) => wheel(said.position, to),
        Says::Visit(_) => visit(to),
        Says::Reading(said) => Says::Reading(Reading {
            slot: said.slot,
            answer: answer(said.slot.question, chance),
            written: written(chance),
        }),
        Says::Remark(part, _) => remark(*part, to),
        Says::Picture(_) | Says::Erasure(_) | Says::SameAs(_) => old.says.clone(),
        Says::Marks(said) => marks(said.picture, to),
        Says::Decision(said) => decision(said.position, to, chance.below(2)),
        Says::Limit(_) => limit(to),
        Says::Work(_) => work(to),
        Says::Report(_) => report(to),
        Says::Round(_) => round(to),
        Says::Tyring(_) => tyring(to),
        Says::Struck | Says::Unread => return None,
    };
    let entry = Unwritten::new(vehicle(old), said)?;
    // A remark, a picture or work may leave its examination; the others cannot be without one.
    let stays = matches!(
        old.kind,
        Kind::Reading | Kind::Decision | Kind::Report | Kind::Round | Kind::Tyring
    );
    let visit = old.visit.filter(|_| stays || !chance.once_in(4));
    Some(visit.map_or(entry.clone(), |visit| entry.in_visit(visit)))
}

fn cart(to: usize) -> Says {
    Says::Vehicle(Vehicle {
        kind: VehicleKind::ALL[to],
        name: format!("cart {to}"),
    })
}

fn wheel(position: Position, to: usize) -> Says {
    let felloes = Felloes::even(10 + 2 * to as u16, 5).unwrap();
    let tyre = (to > 0).then_some(Tyre::Hoop);
    let wheel = Wheel {
        tyre,
        ..Wheel::of(felloes)
    };
    Says::Wheel(WheelSaid { position, wheel })
}

fn visit(to: usize) -> Says {
    Says::Visit(Visit {
        place: format!("place {to}"),
        used_for: vec![Use::ALL[to]],
        stage: Stage::ALL[to],
        ..Visit::default()
    })
}

fn remark(part: Part, to: usize) -> Says {
    Says::Remark(part, format!("remark {to}"))
}

fn bytes_of(to: usize) -> Digest {
    Digest::of(&[0xFF, 0xD8, 0xFF, to as u8])
}

fn picture(to: usize) -> Says {
    Says::Picture(Picture {
        part: Part::At(Position::Near, Place::Nave),
        digest: bytes_of(to),
        width: 4,
        height: 3,
        bytes: 4,
    })
}

fn marks(picture: Digest, to: usize) -> Says {
    let pin = Mark::Pin(Spot::at(500, 500), format!("pin {to}"));
    let all = vec![Mark::Ring(Spot::at(0, 0), Spot::at(900, 900)), pin];
    Says::Marks(Marks { picture, all })
}

fn work(to: usize) -> Says {
    Says::Work(WorkDone {
        part: Part::At(Position::Near, Place::Whole),
        did: vec![Work::ALL[to]],
        text: String::new(),
        by_whom: format!("hand {to}"),
    })
}

fn report(to: usize) -> Says {
    Says::Report(Report {
        text: format!("report {to}"),
        to: String::new(),
        core: "0".to_owned(),
    })
}

fn round(to: usize) -> Says {
    let run = Run {
        turns: 0,
        past: millimetres(4241.0 + to as f64),
    };
    Says::Round(RoundTaken {
        position: Position::Near,
        ran: Ran::ALL[to],
        with: TakenWith::Tape(1, TapeClass::II),
        line: Line::Middle,
        runs: vec![run],
        warm: None,
        hot_weld: to == 2,
        written: String::new(),
    })
}

fn tyring(to: usize) -> Says {
    Says::Tyring(TyringSaid {
        draw: (to > 0).then(|| millimetres(to as f64)),
        ..TyringSaid::of(Position::Near)
    })
}

fn decision(position: Position, to: usize, why: usize) -> Says {
    Says::Decision(Decision {
        position,
        standing: Standing::ALL[to],
        proposed: Standing::KeepEmpty,
        reason: format!("reason {why}"),
        look_again: Day::read("2027-05-01").filter(|_| to == 1),
        signed: "A. Wright".to_owned(),
    })
}

fn limit(to: usize) -> Says {
    let mm = Threshold::Length(millimetres(to as f64));
    Says::Limit(LimitSaid {
        row: "tyre-gap/keep-empty/anywhere".to_owned(),
        threshold: (to > 0).then_some(mm),
    })
}

/// Questions of which some answers are findings.
const QUESTIONS: [(Question, Place); 6] = [
    (Question::TyreGap, Place::Between(1)),
    (Question::SpokeFoot, Place::Spoke(3)),
    (Question::Dish, Place::Whole),
    (Question::KeeperPresent, Place::Whole),
    (Question::CrackFelloe, Place::Felloe(2)),
    (Question::Moisture, Place::Felloe(2)),
];

fn reading(chance: &mut Chance) -> Says {
    let (question, place) = QUESTIONS[chance.below(QUESTIONS.len())];
    let slot = Slot {
        position: Position::Near,
        place,
        question,
    };
    Says::Reading(Reading {
        slot,
        answer: answer(question, chance),
        written: written(chance),
    })
}

/// What was typed, of which nothing hangs.
fn written(chance: &mut Chance) -> String {
    format!("typed {}", chance.below(2))
}

fn answer(question: Question, chance: &mut Chance) -> Answer {
    let to = chance.below(4);
    let length =
        |mm: f64| Answer::Length(Measured::new(millimetres(mm), millimetres(0.25)).unwrap());
    match (question, to) {
        (_, 3) => Answer::NothingFound,
        (Question::TyreGap, 2) => Answer::Over(millimetres(6.0)),
        (Question::TyreGap | Question::Dish, to) => length(to as f64 * 5.0),
        (Question::SpokeFoot, to) => Answer::Play(Play::ALL[to]),
        (Question::CrackFelloe, to) => Answer::Crack(Crack::ALL[to]),
        (Question::Moisture, to) => Answer::Share(Percent::from_paper(12.25 * to as f64).unwrap()),
        (_, 0) => Answer::Yes,
        _ => Answer::No,
    }
}
