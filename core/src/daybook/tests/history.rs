//! Histories of a few devices that write, correct, strike, settle and now and then bring their
//! books together; with strange entries among them.

use proptest::prelude::*;

use super::writer::{answer, cart, foot, hand, mm, near_wheel};
use crate::daybook::book::next_n;
use crate::daybook::tyring::{Ran, TakenWith};
use crate::daybook::{
    Book, Day, Decision, Digest, Entry, EntryId, Kind, LimitSaid, Mark, Marks, Report, RoundTaken,
    SameAs, Says, Spot, Subject, Threshold, TyringSaid, Unwritten, Visit, Work, WorkDone,
};
use crate::paper::line;
use crate::quantity::Measured;
use crate::quantity::length::millimetres;
use crate::survey::{Answer, Play, Stage, Standing, Use};
use crate::tyring::round::{Line, Run};
use crate::wheel::{Part, Position};

/// One thing a device does. Numbers choose among what the device knows.
#[derive(Clone, Debug)]
pub(super) enum Step {
    Begin,
    Wheel(usize, u8),
    Visit(usize),
    Reading(usize, u8, u8),
    Remark(usize, u8),
    Erasure(usize, u8),
    Marks(usize, u8, u8),
    Decision(usize, u8),
    Limit(u8),
    Work(usize, u8),
    Report(usize, u8),
    Round(usize, u8),
    Tyring(usize, u8),
    Same(usize, usize),
    Correct(usize, u8),
    Strike(usize),
    Settle(usize, u8),
    Unknown(usize, usize),
    Foreign(usize, usize),
    Missing(usize, u8),
    Unite(usize),
}

fn step() -> impl Strategy<Value = Step> {
    let any = any::<usize>;
    prop_oneof![
        1 => Just(Step::Begin),
        2 => (any(), 0..3_u8).prop_map(|(a, b)| Step::Wheel(a, b)),
        2 => any().prop_map(Step::Visit),
        5 => (any(), 0..3_u8, 0..4_u8).prop_map(|(a, b, c)| Step::Reading(a, b, c)),
        1 => (any(), 0..2_u8).prop_map(|(a, b)| Step::Remark(a, b)),
        1 => (any(), 0..2_u8).prop_map(|(a, b)| Step::Erasure(a, b)),
        2 => (any(), 0..2_u8, 0..3_u8).prop_map(|(a, b, c)| Step::Marks(a, b, c)),
        2 => (any(), 0..3_u8).prop_map(|(a, b)| Step::Decision(a, b)),
        2 => (0..3_u8).prop_map(Step::Limit),
        1 => (any(), 0..2_u8).prop_map(|(a, b)| Step::Work(a, b)),
        1 => (any(), 0..2_u8).prop_map(|(a, b)| Step::Report(a, b)),
        2 => (any(), 0..3_u8).prop_map(|(a, b)| Step::Round(a, b)),
        2 => (any(), 0..3_u8).prop_map(|(a, b)| Step::Tyring(a, b)),
        2 => (any(), any()).prop_map(|(a, b)| Step::Same(a, b)),
        5 => (any(), 0..3_u8).prop_map(|(a, b)| Step::Correct(a, b)),
        3 => any().prop_map(Step::Strike),
        3 => (any(), 0..3_u8).prop_map(|(a, b)| Step::Settle(a, b)),
        1 => (any(), any()).prop_map(|(a, b)| Step::Unknown(a, b)),
        1 => (any(), any()).prop_map(|(a, b)| Step::Foreign(a, b)),
        1 => (any(), 0..2_u8).prop_map(|(a, b)| Step::Missing(a, b)),
        2 => any().prop_map(Step::Unite),
    ]
}

/// All entries that one to three devices wrote, in the order they were written.
pub(super) fn histories() -> impl Strategy<Value = Vec<Entry>> {
    let steps = proptest::collection::vec((0..3_usize, step()), 1..40);
    (1..=3_usize, steps).prop_map(|(devices, steps)| {
        let mut history = History::new(devices);
        for (device, step) in steps {
            history.take(device % devices, step);
        }
        history.written
    })
}

const DEVICES: [&str; 3] = ["barn", "shop", "bench"];

struct History {
    known: Vec<Vec<Entry>>,
    written: Vec<Entry>,
}

impl History {
    /// Every device knows of the one cart and its examination.
    fn new(devices: usize) -> History {
        let mut history = History {
            known: vec![Vec::new()],
            written: Vec::new(),
        };
        history.take(0, Step::Begin);
        history.take(0, Step::Visit(0));
        history.known = vec![history.written.clone(); devices];
        history
    }

    fn take(&mut self, device: usize, step: Step) {
        if let Step::Unite(other) = step {
            let theirs = self.known[other % self.known.len()].clone();
            for entry in theirs {
                if !self.known[device].contains(&entry) {
                    self.known[device].push(entry);
                }
            }
        } else if let Some(line) = self.line(device, &step) {
            let entry = line::read(&line).unwrap();
            self.known[device].push(entry.clone());
            self.written.push(entry);
        }
    }

    fn line(&self, device: usize, step: &Step) -> Option<String> {
        let greatest = self.known[device].iter().map(|entry| entry.n).max();
        let hand = hand(DEVICES[device], next_n(greatest.unwrap_or(0)));
        let entry = self.entry(&self.known[device], step)?;
        let line = line::write(&entry, &hand).unwrap();
        Some(match step {
            Step::Unknown(..) => line.replacen("\"kind\":\"", "\"kind\":\"un", 1),
            _ => line,
        })
    }

    fn entry(&self, known: &[Entry], step: &Step) -> Option<Unwritten> {
        Some(match *step {
            Step::Begin => Unwritten::new(None, cart("Hay cart"))?,
            Step::Wheel(of, spokes) => {
                let spokes = 10 + 2 * u16::from(spokes);
                Unwritten::new(
                    Some(vehicle(known, of)?),
                    near_wheel(Position::Near, spokes, 2),
                )?
            }
            Step::Visit(of) => {
                let said = Says::Visit(Visit::default());
                Unwritten::new(Some(vehicle(known, of)?), said)?
            }
            Step::Reading(of, spoke, said) => {
                let visit = pick(known, of, |entry| entry.kind == Kind::Visit)?;
                let slot = foot(1 + u16::from(spoke));
                answer(visit.vehicle?, visit.id, slot, says(said))
            }
            Step::Remark(of, said) => {
                let said = Says::Remark(Part::Vehicle, format!("remark {said}"));
                Unwritten::new(Some(vehicle(known, of)?), said)?
            }
            Step::Erasure(of, picture) => {
                let erasure = Says::Erasure(Digest::of(&[picture]));
                Unwritten::new(Some(vehicle(known, of)?), erasure)?
            }
            Step::Marks(of, picture, to) => {
                let marks = marks(Digest::of(&[picture]), to);
                Unwritten::new(Some(vehicle(known, of)?), marks)?
            }
            Step::Decision(of, to) => {
                let visit = pick(known, of, |entry| entry.kind == Kind::Visit)?;
                Unwritten::new(visit.vehicle, decision(to))?.in_visit(visit.id)
            }
            Step::Limit(to) => Unwritten::new(None, limit(to))?,
            Step::Same(of, other) => {
                let same = SameAs::new(vehicle(known, of)?, vehicle(known, other)?)?;
                Unwritten::new(None, Says::SameAs(same))?
            }
            Step::Work(of, to) => Unwritten::new(Some(vehicle(known, of)?), work(to))?,
            Step::Report(of, to) => {
                let visit = pick(known, of, |entry| entry.kind == Kind::Visit)?;
                Unwritten::new(visit.vehicle, report(to))?.in_visit(visit.id)
            }
            Step::Round(of, to) => {
                let visit = pick(known, of, |entry| entry.kind == Kind::Visit)?;
                Unwritten::new(visit.vehicle, round(to))?.in_visit(visit.id)
            }
            Step::Tyring(of, to) => {
                let visit = pick(known, of, |entry| entry.kind == Kind::Visit)?;
                Unwritten::new(visit.vehicle, tyring(to))?.in_visit(visit.id)
            }
            Step::Correct(of, to) => {
                let old = pick(known, of, |_| true)?;
                other_than(old, to)?.replacing(vec![old.id])
            }
            Step::Strike(of) => {
                let old = pick(known, of, |_| true)?;
                Unwritten::striking(old, heads(known, old))
            }
            Step::Settle(of, to) => {
                let old = pick(known, of, |entry| !entry.strikes())?;
                other_than(old, to)?.replacing(heads(known, old))
            }
            Step::Foreign(of, target) => {
                let old = pick(known, of, |_| true)?;
                other_than(old, 0)?.replacing(vec![pick(known, target, |_| true)?.id])
            }
            Step::Missing(of, target) => {
                let old = pick(known, of, |_| true)?;
                other_than(old, 1)?.replacing(vec![Digest::of(&[target]), old.id])
            }
            Step::Unknown(of, target) => {
                let old = pick(known, of, |entry| entry.vehicle.is_some())?;
                other_than(old, 2)?.replacing(vec![pick(known, target, |_| true)?.id])
            }
            Step::Unite(_) => return None,
        })
    }
}

fn vehicle(known: &[Entry], at: usize) -> Option<EntryId> {
    pick(known, at, Entry::begins_vehicle).map(|entry| entry.id)
}

fn pick(known: &[Entry], at: usize, fits: impl Fn(&Entry) -> bool) -> Option<&Entry> {
    let fitting: Vec<&Entry> = known.iter().filter(|entry| fits(entry)).collect();
    fitting.get(at % fitting.len().max(1)).copied()
}

/// The heads of an entry's thread as a device that knows these entries sees them.
fn heads(known: &[Entry], entry: &Entry) -> Vec<EntryId> {
    let book: Book = known.iter().cloned().collect();
    let view = book.view();
    let mut threads = view.threads();
    let thread =
        threads.find(|thread| thread.has(entry.id) && !thread.not_here().contains(&entry.id));
    thread.map(|thread| thread.to_replace()).unwrap_or_default()
}

fn decision(to: u8) -> Says {
    Says::Decision(Decision {
        position: Position::Near,
        standing: Standing::ALL[usize::from(to)],
        proposed: Standing::KeepEmpty,
        reason: format!("reason {to}"),
        look_again: Day::read("2027-05-01").filter(|_| to == 1),
        signed: "A. Smith".to_owned(),
    })
}

fn limit(to: u8) -> Says {
    let mm = |to| Threshold::Length(millimetres(f64::from(to)));
    Says::Limit(LimitSaid {
        row: "tyre-gap/keep-empty/anywhere".to_owned(),
        threshold: (to > 0).then(|| mm(to)),
    })
}

fn work(to: u8) -> Says {
    Says::Work(WorkDone {
        part: Part::Vehicle,
        did: vec![Work::ALL[usize::from(to)]],
        text: format!("work {to}"),
        by_whom: String::new(),
    })
}

fn report(to: u8) -> Says {
    Says::Report(Report {
        text: format!("report {to}"),
        to: String::new(),
        core: "0".to_owned(),
    })
}

fn round(to: u8) -> Says {
    let run = Run {
        turns: 6,
        past: millimetres(470.0 + f64::from(to)),
    };
    let own = Measured::new(millimetres(627.0), millimetres(0.5)).unwrap();
    Says::Round(RoundTaken {
        position: Position::Near,
        ran: Ran::Sole,
        with: TakenWith::Traveller(1, own),
        line: Line::Middle,
        runs: vec![run],
        warm: None,
        hot_weld: false,
        written: String::new(),
    })
}

fn tyring(to: u8) -> Says {
    Says::Tyring(TyringSaid {
        draw: Some(millimetres(f64::from(to))),
        ..TyringSaid::of(Position::Near)
    })
}

fn marks(picture: Digest, to: u8) -> Says {
    let pin = Mark::Pin(Spot::at(100, 100 * i32::from(to)), format!("pin {to}"));
    let all = vec![pin];
    Says::Marks(Marks { picture, all })
}

fn says(said: u8) -> Answer {
    match said {
        0 => Answer::Play(Play::Tight),
        1 => mm(1.0),
        2 => mm(2.0),
        _ => Answer::NothingFound,
    }
}

/// Something else about the same slot; `None` for what this version does not read.
fn other_than(old: &Entry, to: u8) -> Option<Unwritten> {
    let said = match &old.says {
        Says::Vehicle(_) => cart(&format!("cart {to}")),
        Says::Wheel(said) => near_wheel(said.position, 10 + u16::from(to), 2),
        Says::Visit(_) => Says::Visit(Visit {
            place: format!("place {to}"),
            used_for: vec![Use::ALL[usize::from(to)]],
            stage: Stage::ALL[usize::from(to)],
            ..Visit::default()
        }),
        Says::Reading(reading) => {
            let mut reading = reading.clone();
            reading.answer = says(to);
            Says::Reading(reading)
        }
        Says::Remark(part, _) => Says::Remark(*part, format!("remark {to}")),
        Says::Picture(_) | Says::Erasure(_) | Says::SameAs(_) => old.says.clone(),
        Says::Marks(said) => marks(said.picture, to),
        Says::Decision(_) => decision(to),
        Says::Limit(_) => limit(to),
        Says::Work(_) => work(to),
        Says::Report(_) => report(to),
        Says::Round(_) => round(to),
        Says::Tyring(_) => tyring(to),
        Says::Struck | Says::Unread => return None,
    };
    let vehicle = match old.subject() {
        Subject::Vehicle(vehicle) => Some(vehicle),
        Subject::House => None,
    };
    let entry = Unwritten::new(vehicle, said)?;
    Some(
        old.visit
            .map_or(entry.clone(), |visit| entry.in_visit(visit)),
    )
}
