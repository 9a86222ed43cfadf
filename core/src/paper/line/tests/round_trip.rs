//! Whatever can be said is read back as it was written.

use proptest::prelude::*;

use crate::daybook::entry::GREATEST_N;
use crate::daybook::marks::{EDGE, LONGEST_BESIDE, MOST_MARKS, MOST_POINTS};
use crate::daybook::tyring::{Ran, TakenWith, Warm};
use crate::daybook::{
    Day, Decision, Digest, Entry, Hand, LimitSaid, Mark, Marks, Picture, Report, RoundTaken,
    SameAs, Says, Spot, Stamp, Threshold, TyringSaid, Unwritten, Visit, WheelSaid, Work, WorkDone,
};
use crate::material::timber::Grain;
use crate::material::{Iron, Species};
use crate::mechanics::Stand;
use crate::paper::line;
use crate::quantity::length::{from_paper_mm, inches, millimetres, to_paper_mm};
use crate::quantity::{Length, Measured, Percent};
use crate::survey::{
    Answer, Crack, Play, Question, Reading, Ring, SafeToLift, Slot, Stage, Standing, Use,
};
use crate::tyring::round::{Line, Run, TapeClass};
use crate::wheel::{
    Arm, Felloes, Keeper, Part, Place, Position, Rim, Size, Sizes, Tyre, Vehicle, VehicleKind,
    Wheel,
};

use proptest::option::of as maybe;
use proptest::sample::select;

fn positions() -> impl Strategy<Value = Position> {
    select(&Position::ALL[..])
}

fn places() -> impl Strategy<Value = Place> {
    prop_oneof![
        Just(Place::Whole),
        Just(Place::Nave),
        (1..=u16::MAX).prop_map(Place::Spoke),
        (1..=u16::MAX).prop_map(Place::Between),
        (1..=u16::MAX).prop_map(Place::Joint),
        (1..=u16::MAX).prop_map(Place::Felloe),
    ]
}

fn parts() -> impl Strategy<Value = Part> {
    prop_oneof![
        1 => Just(Part::Vehicle),
        4 => (positions(), places()).prop_map(|(position, place)| Part::At(position, place)),
    ]
}

fn slots() -> impl Strategy<Value = Slot> {
    let questions: Vec<Question> = Question::all().collect();
    (positions(), places(), select(questions)).prop_filter_map(
        "asked where it is asked",
        |(position, place, question)| {
            question.fits(place).then_some(Slot {
                position,
                place,
                question,
            })
        },
    )
}

/// Lengths on the two grids the trade writes on, as far as a line may go.
fn lengths() -> impl Strategy<Value = Length> {
    prop_oneof![
        (-2_000_000_i32..=2_000_000).prop_map(|n| from_paper_mm(f64::from(n) / 100.0).unwrap()),
        (-25_000_i32..=25_000)
            .prop_map(|n| from_paper_mm(to_paper_mm(inches(f64::from(n) / 32.0))).unwrap()),
    ]
}

fn answers() -> impl Strategy<Value = Answer> {
    prop_oneof![
        4 => (lengths(), lengths())
            .prop_map(|(value, doubt)| Answer::Length(Measured::new(value, doubt.abs()).unwrap())),
        2 => lengths().prop_map(Answer::Over),
        2 => select(&Play::ALL[..]).prop_map(Answer::Play),
        1 => select(&Ring::ALL[..]).prop_map(Answer::Ring),
        1 => select(&Crack::ALL[..]).prop_map(Answer::Crack),
        2 => (0_u32..=10_000).prop_map(|n| {
            Answer::Share(Percent::from_paper(f64::from(n) / 100.0).unwrap())
        }),
        1 => Just(Answer::Yes),
        1 => Just(Answer::No),
        1 => Just(Answer::CannotSee),
        1 => Just(Answer::NotThere),
        1 => Just(Answer::NothingFound),
    ]
}

fn sizes() -> impl Strategy<Value = Sizes> {
    proptest::collection::vec(maybe(lengths()), Size::ALL.len()).prop_map(|lengths| {
        let said = Size::ALL.into_iter().zip(lengths);
        said.fold(Sizes::default(), |sizes, (size, length)| {
            sizes.with(size, length)
        })
    })
}

fn wheels() -> impl Strategy<Value = Wheel> {
    let felloes = proptest::collection::vec(1..=6_u16, 1..=32)
        .prop_filter_map("a rim", |carried| Felloes::new(carried).ok());
    let rest = (
        maybe(select(&Rim::ALL[..])),
        maybe(select(&Tyre::ALL[..])),
        maybe(select(&Arm::ALL[..])),
        maybe(select(&Keeper::ALL[..])),
        sizes(),
    );
    (felloes, rest).prop_map(|(felloes, (rim, tyre, arm, keeper, sizes))| Wheel {
        felloes,
        rim,
        tyre,
        arm,
        keeper,
        sizes,
    })
}

fn digests() -> impl Strategy<Value = Digest> {
    any::<u64>().prop_map(|seed| Digest::of(&seed.to_be_bytes()))
}

fn visits() -> impl Strategy<Value = Visit> {
    let uses = proptest::sample::subsequence(&Use::ALL[..], 0..=Use::ALL.len());
    let text = any::<String>;
    let stages = select(&Stage::ALL[..]);
    let lifts = maybe(select(&SafeToLift::ALL[..]));
    (text(), uses, stages, lifts, text()).prop_map(
        |(place, used_for, stage, safe_to_lift, conditions)| Visit {
            place,
            used_for,
            stage,
            safe_to_lift,
            conditions,
        },
    )
}

fn decisions() -> impl Strategy<Value = Decision> {
    let standings = || select(&Standing::ALL[..]);
    let days = maybe(select(&["2026-11-25", "0000-01-01", "9999-12-31"][..]));
    let texts = any::<[String; 2]>();
    (positions(), standings(), standings(), days, texts).prop_map(
        |(position, standing, proposed, day, [reason, signed])| Decision {
            position,
            standing,
            proposed,
            reason,
            look_again: day.and_then(Day::read),
            signed,
        },
    )
}

fn limits() -> impl Strategy<Value = LimitSaid> {
    let thresholds = prop_oneof![
        lengths().prop_map(Threshold::Length),
        (0..=10_000_i32)
            .prop_map(|n| Threshold::Percent(Percent::from_paper(f64::from(n) / 100.0).unwrap())),
        any::<u32>().prop_map(Threshold::Count),
    ];
    let rows = "[a-z-]{1,9}/[a-z-]{1,9}/[a-z-]{1,9}";
    (rows, maybe(thresholds)).prop_map(|(row, threshold)| LimitSaid { row, threshold })
}

fn works() -> impl Strategy<Value = WorkDone> {
    let did = proptest::collection::vec(select(Work::ALL), 0..20);
    (parts(), did, any::<[String; 2]>()).prop_map(|(part, did, [text, by_whom])| WorkDone {
        part,
        did,
        text,
        by_whom,
    })
}

fn marks() -> impl Strategy<Value = Marks> {
    let spots = || (0..=EDGE, 0..=EDGE).prop_map(|(x, y)| Spot { x, y });
    let mark = prop_oneof![
        proptest::collection::vec(spots(), 2..=MOST_POINTS).prop_map(Mark::Line),
        (spots(), spots()).prop_map(|(one, other)| Mark::Ring(one, other)),
        (spots(), any::<String>()).prop_map(|(spot, text)| Mark::Pin(spot, text)),
    ];
    let all = proptest::collection::vec(mark, 0..9);
    (digests(), all).prop_map(|(picture, all)| Marks { picture, all })
}

fn rounds() -> impl Strategy<Value = RoundTaken> {
    let with = prop_oneof![
        (any::<u16>(), lengths(), lengths()).prop_map(|(number, own, doubt)| {
            TakenWith::Traveller(number, Measured::new(own, doubt.abs()).unwrap())
        }),
        (any::<u16>(), select(&TapeClass::ALL[..]))
            .prop_map(|(number, class)| TakenWith::Tape(number, class)),
    ];
    let run = (any::<u16>(), lengths()).prop_map(|(turns, past)| Run { turns, past });
    let warm = (-90..=1500_i16, any::<u16>()).prop_map(|(at, within)| Warm { at, within });
    let what = (
        positions(),
        select(&Ran::ALL[..]),
        with,
        select(&Line::ALL[..]),
    );
    let how = (
        proptest::collection::vec(run, 1..25),
        maybe(warm),
        any::<bool>(),
    );
    (what, how, any::<String>()).prop_map(|((position, ran, with, line), how, written)| {
        let (runs, warm, hot_weld) = how;
        RoundTaken {
            position,
            ran,
            with,
            line,
            runs,
            warm,
            hot_weld,
            written,
        }
    })
}

fn tyrings() -> impl Strategy<Value = TyringSaid> {
    let length = || maybe(lengths());
    let lengths = (length(), length(), length(), length(), length(), length());
    let wholes = (
        maybe(any::<u16>()),
        maybe(any::<u16>()),
        maybe(any::<u16>()),
        maybe(-90..=1500_i16),
    );
    let species = || maybe(select(&Species::ALL[..]));
    let month = (0..=100_u8, -90..=1500_i16);
    let place = (
        maybe(select(&Iron::ALL[..])),
        (species(), species(), species()),
        proptest::array::uniform3(maybe(select(&Grain::ALL[..]))),
        maybe(select(&Stand::ALL[..])),
        maybe(proptest::array::uniform12(month)),
    );
    (positions(), lengths, wholes, place).prop_map(|(position, lengths, wholes, place)| {
        let (draw, cramped, cut, charred, oval, clearance) = lengths;
        let (carry, lay, wind, air) = wholes;
        let (iron, (nave, spokes, felloes), grains, stand, months) = place;
        TyringSaid {
            position,
            draw,
            cramped,
            cut,
            charred,
            oval,
            clearance,
            carry,
            lay,
            wind,
            air,
            iron,
            timbers: [nave, spokes, felloes],
            grains,
            stand,
            months,
        }
    })
}

fn says() -> impl Strategy<Value = Says> {
    let text = any::<String>;
    prop_oneof![
        (select(&VehicleKind::ALL[..]), text())
            .prop_map(|(kind, name)| Says::Vehicle(Vehicle { kind, name })),
        (positions(), wheels())
            .prop_map(|(position, wheel)| Says::Wheel(WheelSaid { position, wheel })),
        visits().prop_map(Says::Visit),
        (slots(), answers(), text()).prop_map(|(slot, answer, written)| Says::Reading(Reading {
            slot,
            answer,
            written
        })),
        (parts(), text()).prop_map(|(part, text)| Says::Remark(part, text)),
        (parts(), digests(), any::<[u32; 3]>()).prop_map(
            |(part, digest, [width, height, bytes])| {
                Says::Picture(Picture {
                    part,
                    digest,
                    width,
                    height,
                    bytes,
                })
            }
        ),
        digests().prop_map(Says::Erasure),
        marks().prop_map(Says::Marks),
        rounds().prop_map(Says::Round),
        tyrings().prop_map(Says::Tyring),
        decisions().prop_map(Says::Decision),
        limits().prop_map(Says::Limit),
        (digests(), digests()).prop_filter_map("one id is no two vehicles", |(one, other)| {
            SameAs::new(one, other).map(Says::SameAs)
        }),
        works().prop_map(Says::Work),
        any::<[String; 3]>().prop_map(|[text, to, core]| Says::Report(Report { text, to, core })),
    ]
}

fn entries() -> impl Strategy<Value = Unwritten> {
    let ids = (digests(), digests(), maybe(digests()));
    let replaces = proptest::collection::vec(digests(), 0..=line::MOST_REPLACED);
    (says(), ids, replaces, any::<bool>()).prop_map(|(says, ids, replaces, struck)| {
        let (vehicle, visit, described_by) = ids;
        let vehicle = Some(vehicle).filter(|_| !matches!(says, Says::Limit(_) | Says::SameAs(_)));
        let entry = Unwritten::new(vehicle, says).unwrap();
        let entry = Unwritten {
            described_by,
            ..entry.in_visit(visit).replacing(replaces)
        };
        match struck {
            true => Unwritten {
                says: Says::Struck,
                ..entry
            },
            false => entry,
        }
    })
}

fn hands() -> impl Strategy<Value = Hand> {
    let times = select(
        &[
            "2026-11-25T10:03:00+00:00",
            "1999-12-31T23:59:60-12:45",
            "0000-01-01T00:00:00+14:00",
        ][..],
    );
    (any::<String>(), any::<String>(), times, 1..=GREATEST_N).prop_map(|(by, device, at, n)| {
        let at = Stamp::read(at).unwrap();
        Hand { by, device, at, n }
    })
}

/// What an entry would be written from.
fn unwritten(entry: &Entry) -> (Unwritten, Hand) {
    let hand = Hand {
        by: entry.by.clone(),
        device: entry.device.clone(),
        at: entry.at.clone(),
        n: entry.n,
    };
    let unwritten = Unwritten {
        kind: entry.kind.clone(),
        vehicle: entry.vehicle,
        visit: entry.visit,
        described_by: entry.described_by,
        slot: entry.slot.clone(),
        says: entry.says.clone(),
        replaces: entry.replaces.clone(),
    };
    (unwritten, hand)
}

proptest! {
    #[test]
    fn what_is_written_is_read_back(entry in entries(), hand in hands()) {
        let line = line::write(&entry, &hand).unwrap();
        let read = line::read(&line).unwrap();
        prop_assert_eq!(read.id, Digest::of(line.as_bytes()));
        prop_assert_eq!(read.unread_fields, 0);
        let (again, same_hand) = unwritten(&read);
        prop_assert_eq!(&again, &entry);
        prop_assert_eq!(&same_hand, &hand);
        prop_assert_eq!(line::write(&again, &same_hand).unwrap(), line, "byte for byte");
    }

    #[test]
    fn a_line_is_one_line(entry in entries(), hand in hands()) {
        let line = line::write(&entry, &hand).unwrap();
        prop_assert_eq!(line.lines().count(), 1);
        prop_assert!(!line.contains('\n') && !line.contains('\r'));
    }

    #[test]
    fn a_length_off_the_grids_is_read_back_to_the_sixth_decimal(v in -20_000.0..20_000.0_f64) {
        let says = Says::Reading(Reading {
            slot: Slot {
                position: Position::Near,
                place: Place::Joint(1),
                question: Question::JointGap,
            },
            answer: Answer::Over(millimetres(v)),
            written: String::new(),
        });
        let id = Digest::of(b"any");
        let entry = Unwritten::new(Some(id), says).unwrap().in_visit(id);
        let at = Stamp::read("2026-11-25T10:03:00+00:00").unwrap();
        let hand = Hand { by: String::new(), device: String::new(), at, n: 1 };
        let read = line::read(&line::write(&entry, &hand).unwrap()).unwrap();
        let Says::Reading(reading) = read.says else { panic!("not a reading") };
        let length = to_paper_mm(reading.answer.length().unwrap());
        prop_assert_eq!(length, to_paper_mm(millimetres(v)));
        prop_assert!((length - v).abs() <= 0.000_000_5 + 1e-11);
    }
}

/// As much as is ever drawn, with the longest remarks of the signs that take the most room, fits one line.
#[test]
fn the_most_marks_fit_a_line() {
    let far = Spot { x: EDGE, y: EDGE };
    let pins = ["\u{7}", "\"", "🛞"].map(|sign| Mark::Pin(far, sign.repeat(LONGEST_BESIDE)));
    let picture = Digest::of(b"a picture");
    let at = Stamp::read("2026-11-25T10:03:00+00:00").unwrap();
    let hand = Hand {
        by: "a".repeat(200),
        device: "a".repeat(64),
        at,
        n: GREATEST_N,
    };
    for mark in pins.into_iter().chain([Mark::Line(vec![far; MOST_POINTS])]) {
        let all = vec![mark; MOST_MARKS];
        let entry = Unwritten::new(Some(picture), Says::Marks(Marks { picture, all })).unwrap();
        let replaces = vec![picture; line::MOST_REPLACED];
        let entry = entry.in_visit(picture).replacing(replaces);
        assert!(line::write(&entry, &hand).is_ok());
    }
}
