//! One line for any entry, as it stands in the list of the day book.

use super::answer::told;
use super::capital;
use super::marks;
use super::outcome;
use super::place::{part, wheel_at};
use super::question::short;
use super::style::Style;
use super::term;
use super::tyring::said as tyred;
use super::visit::visit;
use crate::daybook::{Decision, Entry, Kind, RoundTaken, Says, TyringSaid, WheelSaid};
use crate::survey::{Reading, Slot};
use crate::wheel::{Part, Position, Vehicle, Wheel};

/// What an entry says: `near wheel, spoke 3: foot loose`. The wheel it is about, if it is known,
/// lets the place after the last spoke be named in full.
#[must_use]
pub fn says(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> String {
    match &entry.says {
        Says::Vehicle(said) => vehicle(said, style),
        Says::Wheel(said) => wheel_said(said, style),
        Says::Visit(said) => visit(said),
        Says::Reading(said) => reading(said, wheel, style),
        Says::Remark(at, text) => format!("{}: “{text}”", part(*at, wheel, style)),
        Says::Picture(picture) => format!("{}: picture", part(picture.part, wheel, style)),
        Says::Erasure(_) => "a picture is erased".to_owned(),
        Says::Marks(said) => format!("on a picture: {}", marks::told(&said.all)),
        Says::SameAs(_) => "two descriptions are of one vehicle".to_owned(),
        Says::Decision(said) => outcome::decision(said),
        Says::Limit(said) => outcome::limit(said, style),
        Says::Work(said) => outcome::work_done(said, wheel, style),
        Says::Report(said) => outcome::report(said),
        Says::Round(said) => tyred::round(said, style),
        Says::Tyring(said) => tyred::tyring(said, style),
        Says::Struck => format!("struck out: {}", subject(entry, wheel, style)),
        Says::Unread => "written by a newer Cartside: kept, not read".to_owned(),
    }
}

fn vehicle(said: &Vehicle, style: Style) -> String {
    let kind = term::vehicle_kind(said.kind, style);
    if said.name.is_empty() {
        kind.to_owned()
    } else {
        format!("{kind}: {}", said.name)
    }
}

fn wheel_said(said: &WheelSaid, style: Style) -> String {
    let wheel = &said.wheel;
    let built = [
        wheel.rim.map(|rim| term::rim(rim, style)),
        wheel.tyre.map(|tyre| term::tyre(tyre, style)),
        wheel.arm.map(|arm| term::arm(arm).to_owned()),
        wheel
            .keeper
            .map(|keeper| term::keeper(keeper, style).to_owned()),
    ];
    let mut words = format!(
        "{}: {} spokes, {}",
        wheel_at(said.position),
        wheel.felloes.spokes(),
        counted(wheel.felloes.felloes(), style.terms.felloe)
    );
    let sizes = wheel.sizes.said().map(|(size, length)| {
        let name = term::size(size, style);
        format!("{name} {}", style.size(length))
    });
    for said in built.into_iter().flatten().chain(sizes) {
        words.push_str("; ");
        words.push_str(&said);
    }
    words
}

fn counted(count: u16, noun: &str) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {noun}{plural}")
}

fn reading(said: &Reading, wheel: Option<&Wheel>, style: Style) -> String {
    let at = part(said.slot.part(), wheel, style);
    format!("{at}: {}", told(said.slot.question, &said.answer, style))
}

/// What an entry is about, by its kind and slot alone.
#[must_use]
pub fn subject(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> String {
    let slot = entry.slot.as_str();
    let at = || Part::from_code(slot).map(|at| part(at, wheel, style));
    let known = match entry.kind {
        Kind::Vehicle => Some("the vehicle".to_owned()),
        Kind::Visit => Some("the examination".to_owned()),
        Kind::Wheel => Position::from_code(slot).map(wheel_at),
        Kind::Reading => Slot::from_code(slot).map(|slot| asked(slot, wheel, style)),
        Kind::Remark => at().map(|at| format!("remark, {at}")),
        Kind::Picture => at().map(|at| format!("picture, {at}")),
        Kind::Erasure => Some("erasure of a picture".to_owned()),
        Kind::Marks => Some("marks on a picture".to_owned()),
        Kind::Decision => Decision::position(slot).map(|at| format!("decision, {}", wheel_at(at))),
        Kind::Limit => Some(outcome::row_words(slot, style)),
        Kind::Work => at().map(|at| format!("work, {at}")),
        Kind::Report => Some("a report handed over".to_owned()),
        Kind::Round => RoundTaken::of_slot(slot).map(|(at, what)| tyred::round_of(at, what, style)),
        Kind::Tyring => TyringSaid::position(slot).map(tyred::tyring_of),
        Kind::SameAs => Some("two descriptions of one vehicle".to_owned()),
        Kind::Unknown(_) => None,
    };
    known.unwrap_or_else(|| "something a newer Cartside wrote".to_owned())
}

fn asked(slot: Slot, wheel: Option<&Wheel>, style: Style) -> String {
    let at = part(slot.part(), wheel, style);
    format!("{at}, {}", short(slot.question, style))
}

/// The same line as a heading, with a capital.
#[must_use]
pub fn heading(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> String {
    capital(&says(entry, wheel, style))
}

#[cfg(test)]
mod tests {
    use super::{heading, says, subject};
    use crate::daybook::tyring::{Ran, TakenWith};
    use crate::daybook::{
        Decision, Digest, Entry, Kind, LimitSaid, Mark, Marks, Picture, Report, RoundTaken, Says,
        Spot, TyringSaid, Visit, WheelSaid, Work, WorkDone,
    };
    use crate::quantity::length::millimetres;
    use crate::survey::{Answer, Play, Question, Standing};
    use crate::tyring::round::{Line, Run, TapeClass};
    use crate::wheel::{
        Arm, Keeper, Part, Place, Position, Rim, Size, Sizes, Tyre, Vehicle, VehicleKind, Wheel,
    };
    use crate::words::sample::{entry, mm, reading, style, wheel};

    fn described(rim: Option<Rim>) -> Says {
        let wheel = Wheel {
            rim,
            tyre: rim.map(|_| Tyre::Hoop),
            arm: rim.map(|_| Arm::Iron),
            keeper: rim.map(|_| Keeper::LinchPin),
            sizes: rim.map_or_else(Sizes::default, |_| {
                Sizes::default().with(Size::Dish, Some(millimetres(-12.0)))
            }),
            ..wheel()
        };
        Says::Wheel(WheelSaid {
            position: Position::NearFore,
            wheel,
        })
    }

    fn vehicle(name: &str) -> Says {
        Says::Vehicle(Vehicle {
            kind: VehicleKind::Waggon,
            name: name.to_owned(),
        })
    }

    fn visit(place: &str) -> Says {
        Says::Visit(Visit {
            place: place.to_owned(),
            ..Visit::default()
        })
    }

    fn decided() -> Says {
        Says::Decision(Decision {
            position: Position::Near,
            standing: Standing::KeepEmpty,
            proposed: Standing::KeepEmpty,
            reason: String::new(),
            look_again: None,
            signed: "Ada Field".to_owned(),
        })
    }

    fn worked(part: Part) -> Says {
        Says::Work(WorkDone {
            part,
            did: vec![Work::ReSeated],
            text: String::new(),
            by_whom: String::new(),
        })
    }

    fn reported() -> Says {
        Says::Report(Report {
            text: "All of it.".to_owned(),
            to: "Ben Lea".to_owned(),
            core: "0.1.0".to_owned(),
        })
    }

    fn drawn(picture: Digest) -> Says {
        let pin = Mark::Pin(Spot::at(90, 90), "crack".to_owned());
        let all = vec![pin, Mark::Ring(Spot::at(400, 400), Spot::at(600, 600))];
        Says::Marks(Marks { picture, all })
    }

    fn ran() -> Says {
        let run = Run {
            turns: 0,
            past: millimetres(4241.0),
        };
        Says::Round(RoundTaken {
            position: Position::Near,
            ran: Ran::Sole,
            with: TakenWith::Tape(0, TapeClass::II),
            line: Line::Middle,
            runs: vec![run],
            warm: None,
            hot_weld: false,
            written: "4241".to_owned(),
        })
    }

    fn every() -> Vec<Entry> {
        let digest = Digest::of(b"picture");
        let foot = Part::At(Position::Near, Place::Spoke(3));
        let picture = Says::Picture(Picture {
            part: Part::At(Position::Only, Place::Joint(1)),
            digest,
            width: 4,
            height: 3,
            bytes: 2,
        });
        let loose = Answer::Play(Play::Loose);
        vec![
            entry(0, Kind::Vehicle, "vehicle", vehicle("")),
            entry(1, Kind::Vehicle, "vehicle", vehicle("Upper Meadow")),
            entry(2, Kind::Wheel, "near-fore", described(None)),
            entry(3, Kind::Wheel, "near-fore", described(Some(Rim::Sawn))),
            entry(4, Kind::Visit, "visit", visit("")),
            entry(5, Kind::Visit, "visit", visit("Upper Meadow")),
            reading(6, Question::SpokeFoot, Place::Spoke(3), loose),
            reading(7, Question::TyreGap, Place::Between(12), mm(0.5)),
            reading(8, Question::KeeperPresent, Place::Whole, Answer::Yes),
            entry(
                9,
                Kind::Remark,
                "near/spoke-3",
                Says::Remark(foot, "split".to_owned()),
            ),
            entry(
                10,
                Kind::Remark,
                "vehicle",
                Says::Remark(Part::Vehicle, "wet".to_owned()),
            ),
            entry(11, Kind::Picture, "only/joint-1", picture),
            entry(12, Kind::Erasure, &digest.hex(), Says::Erasure(digest)),
            entry(13, Kind::Decision, "near/whole/decision", decided()),
            entry(
                14,
                Kind::Limit,
                "tyre-gap/keep-empty/anywhere",
                Says::Limit(LimitSaid {
                    row: "tyre-gap/keep-empty/anywhere".to_owned(),
                    threshold: None,
                }),
            ),
            entry(15, Kind::Work, "near/spoke-3", worked(foot)),
            entry(16, Kind::Report, "vehicle/report", reported()),
            entry(17, Kind::Marks, &digest.hex(), drawn(digest)),
            entry(18, Kind::Round, "near/whole/round-sole", ran()),
            entry(
                19,
                Kind::Tyring,
                "near/whole/tyring",
                Says::Tyring(TyringSaid::of(Position::Near)),
            ),
            entry(20, Kind::Unknown("tally".to_owned()), "x", Says::Unread),
        ]
    }

    #[test]
    fn every_entry_has_a_line() {
        let rows: Vec<_> = every()
            .iter()
            .map(|entry| says(entry, Some(&wheel()), style()))
            .collect();
        insta::assert_snapshot!(rows.join("\n"), @r"
        waggon
        waggon: Upper Meadow
        near fore wheel: 12 spokes, 6 felloes
        near fore wheel: 12 spokes, 6 felloes; sawn felloes; hoop tyre, shrunk on; iron arm; linch pin; dish as built −12 mm
        examination
        examination at Upper Meadow
        near wheel, spoke 3: foot loose
        near wheel, between 12 and 1: tyre gap ½ mm ± ¼ mm
        near wheel: keeper there
        near wheel, spoke 3: “split”
        whole vehicle: “wet”
        only wheel, joint 1, the mark: picture
        a picture is erased
        near wheel: keep empty, decided; signed Ada Field
        the shop's limit for tyre gap, keep empty: not used; it was 3 mm or more anywhere
        near wheel, spoke 3: foot seated anew
        a report handed to Ben Lea
        on a picture: pin 1, upper left: “crack”; ring, middle
        near wheel, round of the sole: 4241 mm, tape of class II
        near wheel, for its tyring: nothing chosen
        written by a newer Cartside: kept, not read
        ");
    }

    #[test]
    fn what_is_struck_out_is_named_by_its_slot() {
        let struck = every().into_iter().map(|entry| Entry {
            says: Says::Struck,
            ..entry
        });
        let rows: Vec<_> = struck
            .map(|entry| heading(&entry, Some(&wheel()), style()))
            .collect();
        insta::assert_snapshot!(rows.join("\n"), @r"
        Struck out: the vehicle
        Struck out: the vehicle
        Struck out: near fore wheel
        Struck out: near fore wheel
        Struck out: the examination
        Struck out: the examination
        Struck out: near wheel, spoke 3, spoke foot
        Struck out: near wheel, between 12 and 1, tyre gap
        Struck out: near wheel, keeper there
        Struck out: remark, near wheel, spoke 3
        Struck out: remark, whole vehicle
        Struck out: picture, only wheel, joint 1, the mark
        Struck out: erasure of a picture
        Struck out: decision, near wheel
        Struck out: the shop's limit for tyre gap, keep empty
        Struck out: work, near wheel, spoke 3
        Struck out: a report handed over
        Struck out: marks on a picture
        Struck out: near wheel, round of the sole
        Struck out: near wheel, for its tyring
        Struck out: something a newer Cartside wrote
        ");
    }

    #[test]
    fn a_slot_of_a_newer_cartside_is_not_guessed_at() {
        let rows = [
            Kind::Wheel,
            Kind::Reading,
            Kind::Remark,
            Kind::Picture,
            Kind::Decision,
            Kind::Work,
        ]
        .map(|kind| subject(&entry(1, kind, "fifth-wheel", Says::Unread), None, style()));
        assert_eq!(rows, ["something a newer Cartside wrote"; 6]);
    }

    #[test]
    fn without_the_wheel_the_place_after_the_last_spoke_has_one_number() {
        let gap = reading(1, Question::TyreGap, Place::Between(12), mm(0.5));
        insta::assert_snapshot!(says(&gap, None, style()), @"near wheel, between 12 and the next: tyre gap ½ mm ± ¼ mm");
    }
}
