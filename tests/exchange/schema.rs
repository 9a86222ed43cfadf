//! Our lines against the JSON Schema of a line, by a validator that is not ours.

use cartside_core::daybook::tyring::{Ran, TakenWith, Warm};
use cartside_core::daybook::{
    Day, Decision, Digest, Hand, Kind, LimitSaid, Mark, Marks, Picture, Report, RoundTaken, SameAs,
    Says, Spot, Stamp, Threshold, TyringSaid, Unwritten, Visit, WheelSaid, Work, WorkDone,
};
use cartside_core::diagnosis::house_limits;
use cartside_core::material::timber::Grain;
use cartside_core::material::{Iron, Species};
use cartside_core::mechanics::Stand;
use cartside_core::paper::line;
use cartside_core::quantity::length::{inches, millimetres};
use cartside_core::quantity::{Measured, Percent};
use cartside_core::survey::{
    Answer, Crack, Play, Question, Reading, Ring, SafeToLift, Slot, Stage, Standing, Use,
};
use cartside_core::tyring::round::{Line, Run, TapeClass};
use cartside_core::wheel::{
    Arm, Felloes, Keeper, Part, Place, Position, Rim, Size, Sizes, Tyre, Vehicle, VehicleKind,
    Wheel,
};
use jsonschema::Validator;
use serde_json::{Value, json};

use crate::book::{cart, erasure, jpeg, picture_line, remark, visit};

fn schema() -> Value {
    serde_json::from_str(include_str!("../../core/src/paper/entry.schema.json")).unwrap()
}

/// The schema as the reader takes it: what a later version adds is allowed.
fn tolerant() -> Validator {
    jsonschema::draft202012::new(&schema()).unwrap()
}

/// The schema as the writer must keep it: nothing but the fields, words and slots it names.
fn strict() -> Validator {
    let mut schema = schema();
    only_known_words(&mut schema);
    for said in [
        "vehicle", "wheel", "visit", "reading", "remark", "picture", "erasure", "decision",
        "limit", "work", "report", "same-as", "marks", "mark", "round", "tyring",
    ] {
        assert!(schema["$defs"][said]["properties"].is_object(), "{said}");
        schema["$defs"][said]["additionalProperties"] = false.into();
    }
    let sizes = &mut schema["$defs"]["wheel"]["properties"]["sizes_mm"];
    assert!(sizes["properties"].is_object());
    sizes["additionalProperties"] = false.into();
    schema["additionalProperties"] = false.into();
    only_slots_of_the_kind(&mut schema);
    schema["properties"]["cartside"]["const"] = 1.into();
    jsonschema::draft202012::new(&schema).unwrap()
}

/// Has a line of each kind stand in a slot of that kind, where the reader takes any slot for a later version's.
fn only_slots_of_the_kind(schema: &mut Value) {
    let rules = schema["allOf"].as_array_mut().unwrap();
    let of_kind = |rule: &Value| {
        let kind = rule["if"]["properties"]["kind"].clone();
        let slots = ["if", "then"].map(|part| rule[part]["properties"]["slot"].clone());
        let slot = slots.into_iter().find(|slot| !slot.is_null())?;
        Some(
            json!({ "if": { "properties": { "kind": kind } }, "then": { "properties": { "slot": slot } } }),
        )
    };
    let closed: Vec<Value> = rules.iter().filter_map(of_kind).collect();
    assert_eq!(closed.len(), 15, "one for each kind");
    rules.extend(closed);
}

/// Makes every list of examples a list of all that is allowed.
fn only_known_words(schema: &mut Value) {
    match schema {
        Value::Object(object) => {
            if let Some(examples) = object.remove("examples") {
                object.insert("enum".to_owned(), examples);
            }
            object.values_mut().for_each(only_known_words);
        }
        Value::Array(items) => items.iter_mut().for_each(only_known_words),
        _ => {}
    }
}

fn id(word: &str) -> Digest {
    Digest::of(word.as_bytes())
}

fn hand(n: u64) -> Hand {
    Hand {
        by: "A. Wright".to_owned(),
        device: "0f1e".to_owned(),
        at: Stamp::read("2024-05-06T07:08:09-01:30").unwrap(),
        n,
    }
}

fn entry(says: Says) -> Unwritten {
    let vehicle =
        (!matches!(says, Says::Vehicle(_) | Says::Limit(_) | Says::SameAs(_))).then(|| id("cart"));
    Unwritten::new(vehicle, says).unwrap().in_visit(id("visit"))
}

fn vehicles() -> impl Iterator<Item = Unwritten> {
    VehicleKind::ALL.into_iter().map(|kind| {
        let name = "\u{7}½ \"cart\" \\ 🛞".to_owned();
        entry(Says::Vehicle(Vehicle { kind, name }))
    })
}

fn wheels() -> Vec<Unwritten> {
    let bare = Wheel::of(Felloes::even(14, 6).unwrap());
    let mut wheels = vec![bare.clone()];
    wheels.extend(Rim::ALL.map(|rim| Wheel {
        rim: Some(rim),
        ..bare.clone()
    }));
    wheels.extend(Tyre::ALL.map(|tyre| Wheel {
        tyre: Some(tyre),
        ..bare.clone()
    }));
    wheels.extend(Arm::ALL.map(|arm| Wheel {
        arm: Some(arm),
        ..bare.clone()
    }));
    wheels.extend(Keeper::ALL.map(|keeper| Wheel {
        keeper: Some(keeper),
        ..bare.clone()
    }));
    let mut sizes = Sizes::default();
    for size in Size::ALL {
        sizes = sizes.with(size, Some(size.range().min()));
        wheels.push(Wheel {
            sizes,
            ..bare.clone()
        });
    }
    let said = |(wheel, position)| entry(Says::Wheel(WheelSaid { position, wheel }));
    wheels
        .into_iter()
        .zip(Position::ALL.into_iter().cycle())
        .map(said)
        .collect()
}

/// Every answer, at one place of every question.
fn readings() -> Vec<Unwritten> {
    let length = |value, doubt| Answer::Length(Measured::new(value, doubt).unwrap());
    let mut answers = vec![
        length(inches(1.0 / 32.0), millimetres(0.05)),
        length(millimetres(-12.57), millimetres(0.0)),
        Answer::Over(millimetres(1.0)),
        Answer::Yes,
        Answer::No,
        Answer::CannotSee,
        Answer::NotThere,
        Answer::NothingFound,
    ];
    answers.extend(Play::ALL.map(Answer::Play));
    answers.extend(Ring::ALL.map(Answer::Ring));
    answers.extend(Crack::ALL.map(Answer::Crack));
    let shares = [0.0, 0.01, 33.33, 100.0];
    answers.extend(shares.map(|share| Answer::Share(Percent::from_paper(share).unwrap())));
    let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
    let places = Question::all().flat_map(|question| {
        let last = question.places_on(&wheel).pop().unwrap();
        Position::ALL.map(|position| Slot {
            position,
            place: last,
            question,
        })
    });
    let readings = places.flat_map(|slot| answers.iter().map(move |answer| (slot, *answer)));
    readings
        .map(|(slot, answer)| {
            let written = "1/32".to_owned();
            entry(Says::Reading(Reading {
                slot,
                answer,
                written,
            }))
            .described_by(id("wheel"))
        })
        .collect()
}

fn about_parts() -> Vec<Unwritten> {
    let places = [
        Place::Whole,
        Place::Nave,
        Place::Spoke(1),
        Place::Between(12),
        Place::Joint(6),
        Place::Felloe(65_535),
    ];
    let parts = places.map(|place| Part::At(Position::OffHind, place));
    let picture = |part| Picture {
        part,
        digest: id("jpeg"),
        width: 4,
        height: 3,
        bytes: u32::MAX,
    };
    let parts = || parts.into_iter().chain([Part::Vehicle]);
    let remarks = parts().map(|part| entry(Says::Remark(part, "split".to_owned())));
    remarks
        .chain(parts().map(|part| entry(Says::Picture(picture(part)))))
        .collect()
}

/// Marks on a picture, of none to all sorts.
fn drawn() -> [Vec<Mark>; 4] {
    let (first, last) = (Spot::at(0, 1000), Spot::at(1000, 0));
    let pins = ["", "\u{7}½ \"crack\" \\ 🛞"].map(|text| Mark::Pin(last, text.to_owned()));
    let line = Mark::Line(vec![first, Spot::at(333, 1), last]);
    [
        vec![],
        vec![line],
        vec![Mark::Ring(last, first)],
        pins.to_vec(),
    ]
}

fn visits() -> Vec<Unwritten> {
    let plain = Visit {
        place: "Long Barn".to_owned(),
        ..Visit::default()
    };
    let mut visits = vec![plain.clone()];
    visits.extend(Stage::ALL.map(|stage| Visit {
        stage,
        used_for: Use::ALL.to_vec(),
        conditions: "rain".to_owned(),
        ..plain.clone()
    }));
    visits.extend(SafeToLift::ALL.map(|it| Visit {
        safe_to_lift: Some(it),
        ..plain.clone()
    }));
    visits
        .into_iter()
        .map(|visit| entry(Says::Visit(visit)))
        .collect()
}

fn decisions() -> Vec<Unwritten> {
    let decided = |position, standing, day: &str| {
        entry(Says::Decision(Decision {
            position,
            standing,
            proposed: Standing::KeepEmpty,
            reason: day.to_owned(),
            look_again: Day::read(day),
            signed: "A. Wright".to_owned(),
        }))
    };
    let standings = Standing::ALL.into_iter().cycle();
    let each = Position::ALL.into_iter().zip(standings);
    each.flat_map(|(at, standing)| ["", "2027-05-01"].map(|day| decided(at, standing, day)))
        .collect()
}

/// Every row of the table, set in every way there is.
fn limits() -> Vec<Unwritten> {
    let ways = [
        None,
        Some(Threshold::Length(inches(1.0 / 32.0))),
        Some(Threshold::Percent(Percent::from_paper(33.33).unwrap())),
        Some(Threshold::Count(2)),
    ];
    let rows = house_limits().into_iter().map(|row| row.code());
    rows.flat_map(|row| {
        ways.map(|threshold| {
            let row = row.clone();
            entry(Says::Limit(LimitSaid { row, threshold }))
        })
    })
    .collect()
}

fn work_and_reports() -> Vec<Unwritten> {
    let work = |did: &[Work], text: &str| {
        entry(Says::Work(WorkDone {
            part: Part::At(Position::Off, Place::Nave),
            did: did.to_vec(),
            text: text.to_owned(),
            by_whom: text.to_owned(),
        }))
    };
    let report = Says::Report(Report {
        text: "All\nof it.".to_owned(),
        to: String::new(),
        core: "0.1.0".to_owned(),
    });
    vec![work(&[], ""), work(Work::ALL, "oak"), entry(report)]
}

/// Rounds of every sort, and what is chosen for a tyring: nothing, and all.
fn tyred() -> Vec<Unwritten> {
    let own = Measured::new(millimetres(627.5), inches(1.0 / 64.0)).unwrap();
    let round = |position, ran, with, line, warm| {
        let run = |turns, past| Run {
            turns,
            past: millimetres(past),
        };
        entry(Says::Round(RoundTaken {
            position,
            ran,
            with,
            line,
            runs: vec![run(0, 4241.0), run(u16::MAX, 0.5)],
            hot_weld: ran == Ran::Welded,
            warm,
            written: "4241; ½".to_owned(),
        }))
    };
    let mut all = Vec::new();
    for position in Position::ALL {
        for ran in Ran::ALL {
            let traveller = TakenWith::Traveller(u16::MAX, own);
            all.push(round(position, ran, traveller, Line::Middle, None));
        }
    }
    for class in TapeClass::ALL {
        let warm = Some(Warm { at: -7, within: 3 });
        all.extend(Line::ALL.map(|line| {
            let tape = TakenWith::Tape(0, class);
            round(Position::Off, Ran::Tyre, tape, line, warm)
        }));
    }
    let length = Some(inches(0.375));
    let full = |species: Species, stand| TyringSaid {
        draw: length,
        cramped: length,
        cut: length,
        charred: length,
        oval: length,
        clearance: length,
        carry: Some(30),
        lay: Some(u16::MAX),
        wind: Some(0),
        air: Some(-90),
        iron: Some(Iron::Wrought),
        timbers: [Some(species); 3],
        grains: [Some(Grain::Soft), Some(Grain::Medium), Some(Grain::Hard)],
        stand: Some(stand),
        months: Some([(100, 20); 12]),
        ..TyringSaid::of(Position::Near)
    };
    let stands = Stand::ALL.into_iter().cycle();
    let chosen = Species::ALL.iter().zip(stands);
    all.extend(chosen.map(|(species, stand)| entry(Says::Tyring(full(*species, stand)))));
    all.extend(Iron::ALL.map(|iron| {
        entry(Says::Tyring(TyringSaid {
            iron: Some(iron),
            ..TyringSaid::of(Position::Only)
        }))
    }));
    all.extend(Position::ALL.map(|position| entry(Says::Tyring(TyringSaid::of(position)))));
    all
}

/// An entry of everything that can be written.
fn everything() -> Vec<Unwritten> {
    let mut all: Vec<_> = vehicles().collect();
    all.extend(wheels());
    all.extend(visits());
    all.extend(readings());
    all.extend(about_parts());
    all.push(entry(Says::Erasure(id("jpeg"))));
    all.extend(drawn().map(|all| {
        let picture = id("jpeg");
        entry(Says::Marks(Marks { picture, all }))
    }));
    all.extend(decisions());
    all.extend(limits());
    all.extend(work_and_reports());
    all.extend(tyred());
    let same = SameAs::new(id("cart"), id("the same cart")).unwrap();
    all.push(entry(Says::SameAs(same)));
    let corrections: Vec<_> = all
        .iter()
        .map(|entry| entry.clone().replacing(vec![id("a"), id("b")]))
        .collect();
    let strikes = corrections.iter().cloned().map(|entry| Unwritten {
        says: Says::Struck,
        ..entry
    });
    let strikes: Vec<_> = strikes.collect();
    all.into_iter().chain(corrections).chain(strikes).collect()
}

#[test]
fn every_line_we_write_keeps_to_the_schema() {
    let (strict, tolerant) = (strict(), tolerant());
    let everything = everything();
    assert!(everything.len() > 2_000, "{} entries", everything.len());
    for (n, entry) in everything.iter().enumerate() {
        let line = line::write(entry, &hand(n as u64 + 1)).unwrap();
        let value: Value = serde_json::from_str(&line).unwrap();
        for validator in [&strict, &tolerant] {
            if let Err(error) = validator.validate(&value) {
                panic!("{line}: {error} at {}", error.instance_path());
            }
        }
    }
}

#[test]
fn every_kind_is_among_those_written() {
    let written: std::collections::BTreeSet<_> =
        everything().into_iter().map(|entry| entry.kind).collect();
    let words = schema()["properties"]["kind"]["examples"].clone();
    let named: std::collections::BTreeSet<_> = words
        .as_array()
        .unwrap()
        .iter()
        .map(|word| Kind::from_code(word.as_str().unwrap()))
        .collect();
    assert_eq!(written, named);
}

/// A line with one thing changed.
fn changed(line: &str, change: impl FnOnce(&mut Value)) -> String {
    let mut value: Value = serde_json::from_str(line).unwrap();
    change(&mut value);
    value.to_string()
}

fn without(line: &str, field: &str) -> String {
    changed(line, |value| {
        value
            .as_object_mut()
            .unwrap()
            .remove(field)
            .expect("the field is there");
    })
}

/// A reading of a spoke's foot.
fn reading(says: &Value) -> String {
    changed(&remark("", 5), |value| {
        value["kind"] = "reading".into();
        value["visit"] = id("visit").hex().into();
        value["slot"] = "near/spoke-3/spoke-foot".into();
        value["says"] = says.clone();
    })
}

fn wheel(says: &Value) -> String {
    changed(&remark("", 5), |value| {
        value["kind"] = "wheel".into();
        value["slot"] = "near".into();
        value["says"] = says.clone();
    })
}

/// A line of an outcome of the examination: a decision, a limit, work, a report.
fn outcome(kind: &str, slot: &str, says: &Value) -> String {
    changed(&remark("", 5), |value| {
        value["kind"] = kind.into();
        value["visit"] = id("visit").hex().into();
        value["slot"] = slot.into();
        value["says"] = says.clone();
    })
}

fn decision(says: &Value) -> String {
    outcome("decision", "near/whole/decision", says)
}

fn limit(says: &Value) -> String {
    let slot = "tyre-gap/keep-empty/anywhere";
    without(&outcome("limit", slot, says), "vehicle")
}

fn work(says: &Value) -> String {
    outcome("work", "near/nave", says)
}

fn report(says: &Value) -> String {
    outcome("report", "vehicle/report", says)
}

fn marked(says: &Value) -> String {
    outcome("marks", &id("jpeg").hex(), says)
}

/// A line with one mark.
fn one_mark(mark: &Value) -> String {
    marked(&json!({ "marks": [mark] }))
}

fn round(says: &Value) -> String {
    outcome("round", "near/whole/round-sole", says)
}

/// A round by traveller with one thing otherwise; nothing leaves it out.
fn run(field: &str, value: Value) -> String {
    let mut says = json!({
        "with": "traveller", "number": 1, "turn_mm": 627.5, "turn_doubt_mm": 0.5, "line": "middle", "runs": [[6, 471]],
    });
    says[field] = value;
    round(&says)
}

fn taped(says: &Value) -> String {
    let mut round = json!({ "with": "tape", "number": 1, "class": "II", "line": "middle", "runs": [[0, 4241.5]] });
    for (field, value) in says.as_object().unwrap() {
        round[field] = value.clone();
    }
    outcome("round", "near/whole/round-sole", &round)
}

fn tyring(says: &Value) -> String {
    outcome("tyring", "near/whole/tyring", says)
}

fn examined(says: &Value) -> String {
    changed(&visit(), |line| line["says"] = says.clone())
}

pub(crate) fn good_outcomes() -> Vec<String> {
    vec![
        decision(&json!({ "standing": "keep-empty", "proposed": "not-judged", "signed": "A" })),
        limit(&json!({ "mm": 2 })),
        limit(&json!({ "percent": 100 })),
        limit(&json!({ "count": 0 })),
        limit(&json!({ "off": true })),
        work(&json!({ "did": [] })),
        report(&json!({ "text": "", "to": "", "core": "" })),
        examined(&json!({ "used_for": ["people", "goods"], "stage": "on-the-arm" })),
        marked(&json!({ "marks": [] })),
        one_mark(&json!({ "mark": "line", "at": [[0, 1000], [0, 1000]] })),
        one_mark(&json!({ "mark": "ring", "at": [[1000, 1000], [0, 0]] })),
        one_mark(&json!({ "mark": "pin", "at": [[0, 0]] })),
        run("runs", json!([[0, -20_000], [65_535, 20_000]])),
        run("number", 65_535.into()),
        taped(&json!({ "warm_c": -90, "warm_within_k": 0, "hot_weld": false })),
        taped(&json!({ "warm_c": 1500, "warm_within_k": 65_535, "hot_weld": true })),
        taped(&json!({ "warm_c": 20.0 })),
        tyring(&json!({})),
        tyring(&json!({ "months": vec![json!([0, -90]); 12], "air_c": -90 })),
        tyring(&json!({ "months": vec![json!([100, 1500]); 12], "carry_s": 65_535 })),
        // More than this version writes.
        marked(&json!({ "marks": vec![json!({ "mark": "line", "at": vec![[5, 5]; 65] }); 41] })),
    ]
}

/// Outcomes in which one thing is wrong.
fn broken_outcomes() -> Vec<String> {
    let decided = |field: &str, value: Value| {
        let mut says = json!({ "standing": "keep-empty", "proposed": "keep-empty", "signed": "A" });
        says[field] = value;
        decision(&says)
    };
    let mut broken = vec![
        decided("standing", json!(3)),
        decided("proposed", json!(null)),
        decided("reason", json!(3)),
        decided("look_again", json!("1 May 2027")),
        decided("look_again", json!("2027-13-01")),
        decided("look_again", json!("2027-05-01T00:00:00+00:00")),
        decided("signed", json!(["A"])),
        limit(&json!({})),
        limit(&json!({ "new": 1 })),
        limit(&json!({ "mm": 2, "off": true })),
        limit(&json!({ "mm": 2, "count": 2 })),
        limit(&json!({ "mm": "2" })),
        limit(&json!({ "mm": 20_000.5 })),
        limit(&json!({ "percent": -1 })),
        limit(&json!({ "percent": 100.01 })),
        limit(&json!({ "count": -1 })),
        limit(&json!({ "count": 1.5 })),
        limit(&json!({ "off": false })),
        limit(&json!({ "off": 1 })),
        work(&json!({ "did": "greased" })),
        work(&json!({ "did": ["greased", 1] })),
        work(&json!({ "did": [], "text": 1 })),
        work(&json!({ "did": [], "by_whom": 1 })),
        examined(&json!({ "used_for": "goods" })),
        examined(&json!({ "used_for": [1] })),
        examined(&json!({ "stage": 1 })),
        examined(&json!({ "conditions": 1 })),
        marked(&json!({ "marks": {} })),
        marked(&json!({ "marks": [[]] })),
        one_mark(&json!({ "at": [[0, 0]] })),
        one_mark(&json!({ "mark": 1, "at": [[0, 0]] })),
        one_mark(&json!({ "mark": "pin" })),
        one_mark(&json!({ "mark": "pin", "at": [0, 0] })),
        one_mark(&json!({ "mark": "pin", "at": [] })),
        one_mark(&json!({ "mark": "pin", "at": [[0, 0], [1, 1]] })),
        one_mark(&json!({ "mark": "pin", "at": [[0]] })),
        one_mark(&json!({ "mark": "pin", "at": [[0, 0, 0]] })),
        one_mark(&json!({ "mark": "pin", "at": [[0, 1001]] })),
        one_mark(&json!({ "mark": "pin", "at": [[-1, 0]] })),
        one_mark(&json!({ "mark": "pin", "at": [[0.5, 0]] })),
        one_mark(&json!({ "mark": "pin", "at": [["0", 0]] })),
        one_mark(&json!({ "mark": "pin", "at": [[0, 0]], "text": 1 })),
        one_mark(&json!({ "mark": "line", "at": [[0, 0]] })),
        one_mark(&json!({ "mark": "ring", "at": [[0, 0]] })),
        one_mark(&json!({ "mark": "ring", "at": [[0, 0], [1, 1], [2, 2]] })),
        one_mark(&json!({ "mark": "line" })),
        one_mark(&json!({ "mark": "ring" })),
        run("with", 1.into()),
        run("number", 65_536.into()),
        run("number", (-1).into()),
        run("turn_mm", 20_001.into()),
        run("turn_doubt_mm", (-1).into()),
        run("line", 1.into()),
        run("runs", json!([])),
        run("runs", json!({})),
        run("runs", json!([6, 471])),
        run("runs", json!([[6]])),
        run("runs", json!([[6, 471, 1]])),
        run("runs", json!([[65_536, 471]])),
        run("runs", json!([[-1, 471]])),
        run("runs", json!([[6.5, 471]])),
        run("runs", json!([[6, 20_001]])),
        run("runs", json!([[6, "471"]])),
        run("written", 1.into()),
        taped(&json!({ "class": 2 })),
        taped(&json!({ "warm_c": 20.5 })),
        taped(&json!({ "warm_c": -91 })),
        taped(&json!({ "warm_c": 1501 })),
        taped(&json!({ "warm_within_k": -1 })),
        taped(&json!({ "hot_weld": "yes" })),
        tyring(&json!({ "draw_mm": "9" })),
        tyring(&json!({ "cut_mm": 20_001 })),
        tyring(&json!({ "carry_s": 65_536 })),
        tyring(&json!({ "wind_m_s": 0.5 })),
        tyring(&json!({ "air_c": 0.5 })),
        tyring(&json!({ "iron": 1 })),
        tyring(&json!({ "nave": 1 })),
        tyring(&json!({ "stand": [] })),
        tyring(&json!({ "months": vec![json!([80, 5]); 11] })),
        tyring(&json!({ "months": vec![json!([80, 5]); 13] })),
        tyring(&json!({ "months": vec![json!([101, 5]); 12] })),
        tyring(&json!({ "months": vec![json!([80, 5.5]); 12] })),
        tyring(&json!({ "months": vec![json!([80]); 12] })),
        tyring(&json!({ "months": vec![json!([80, 5, 1]); 12] })),
        tyring(&json!({ "months": 12 })),
    ];
    let needed = [
        (0, vec!["standing", "proposed", "signed"]),
        (5, vec!["did"]),
        (6, vec!["text", "to", "core"]),
    ];
    for (at, fields) in needed {
        let good = &good_outcomes()[at];
        broken.extend(fields.into_iter().map(|field| {
            changed(good, |line| {
                line["says"].as_object_mut().unwrap().remove(field).unwrap();
            })
        }));
        broken.push(without(good, "vehicle"));
        broken.push(without(good, "says"));
    }
    broken.push(without(&good_outcomes()[0], "visit"));
    broken.push(without(&good_outcomes()[6], "visit"));
    broken
}

#[test]
fn good_outcomes_are_read_and_valid() {
    let schema = tolerant();
    for line in good_outcomes() {
        let entry = line::read(&line).unwrap();
        assert!(entry.is_read() && entry.unread_fields == 0, "{line}");
        assert!(
            schema.is_valid(&serde_json::from_str(&line).unwrap()),
            "{line}"
        );
    }
}

/// Lines in which one thing is wrong.
pub(crate) fn hostile() -> Vec<String> {
    let picture = picture_line(&jpeg("a"), 3);
    let mut hostile = vec![
        changed(&cart(), |line| line["cartside"] = 0.into()),
        changed(&cart(), |line| line["cartside"] = "1".into()),
        changed(&cart(), |line| line["n"] = 0.into()),
        changed(&cart(), |line| line["n"] = 1_000_000_000_001_u64.into()),
        changed(&cart(), |line| line["n"] = 1.5.into()),
        changed(&cart(), |line| line["n"] = (-1).into()),
        changed(&cart(), |line| line["at"] = "2024-05-06".into()),
        changed(&cart(), |line| {
            line["at"] = "2024-13-06T07:08:09+01:00".into()
        }),
        changed(&cart(), |line| {
            line["at"] = "2024-05-06T24:08:09+01:00".into()
        }),
        changed(&cart(), |line| line["at"] = "2024-05-06T07:08:09Z".into()),
        changed(&cart(), |line| line["kind"] = 1.into()),
        changed(&cart(), |line| line["says"] = "a cart".into()),
        changed(&cart(), |line| line["says"] = json!({})),
        changed(&cart(), |line| line["struck"] = true.into()),
        changed(&cart(), |line| line["struck"] = "yes".into()),
        changed(&cart(), |line| line["replaces"] = "all".into()),
        changed(&cart(), |line| line["replaces"] = json!(["abc"])),
        changed(&cart(), |line| {
            line["replaces"] = vec![id("a").hex(); 65].into()
        }),
        changed(&visit(), |line| {
            line["vehicle"] = id("a").hex().to_uppercase().into()
        }),
        changed(&visit(), |line| line["visit"] = 7.into()),
        changed(&visit(), |line| line["of"] = "".into()),
        changed(&visit(), |line| line["says"]["place"] = 7.into()),
        without(&cart(), "says"),
        without(&visit(), "vehicle"),
        without(&remark("a", 4), "vehicle"),
        without(&reading(&json!({ "answer": "yes" })), "visit"),
        changed(&remark("a", 4), |line| {
            line["says"] = json!({ "words": "a" })
        }),
        reading(&json!({})),
        reading(&json!({ "answer": "length", "mm": 1 })),
        reading(&json!({ "answer": "length", "doubt_mm": 1 })),
        reading(&json!({ "answer": "length", "mm": 1, "doubt_mm": -1 })),
        reading(&json!({ "answer": "length", "mm": "1", "doubt_mm": 1 })),
        reading(&json!({ "answer": "length", "mm": 20_000.5, "doubt_mm": 1 })),
        reading(&json!({ "answer": "over" })),
        reading(&json!({ "answer": "yes", "written": 1 })),
        reading(&json!({ "answer": "share" })),
        reading(&json!({ "answer": "share", "percent": -0.01 })),
        reading(&json!({ "answer": "share", "percent": 100.01 })),
        reading(&json!({ "answer": "share", "percent": "12" })),
        wheel(&json!({})),
        wheel(&json!({ "felloes": [2, 2], "sizes_mm": [] })),
        wheel(&json!({ "felloes": [2, 2], "sizes_mm": { "dish": "12" } })),
        wheel(&json!({ "felloes": [2, 2], "sizes_mm": { "dish": null } })),
        wheel(&json!({ "felloes": [2, 2], "sizes_mm": { "height": 20_000.5 } })),
        wheel(&json!({ "felloes": [] })),
        wheel(&json!({ "felloes": [2, 0, 2] })),
        wheel(&json!({ "felloes": [2, -2, 2] })),
        wheel(&json!({ "felloes": vec![2; 33] })),
        wheel(&json!({ "felloes": [2, 2], "rim": 1 })),
        changed(&picture, |line| line["says"]["sha256"] = "abc".into()),
        changed(&picture, |line| line["says"]["width"] = (-4).into()),
        changed(&picture, |line| {
            line["says"]["bytes"] = 4_294_967_296_u64.into()
        }),
        changed(&erasure(&jpeg("a"), 4), |line| line["slot"] = "near".into()),
    ];
    for field in ["cartside", "kind", "slot", "by", "device", "at", "n"] {
        hostile.push(without(&cart(), field));
    }
    hostile.extend(broken_outcomes());
    hostile
}

#[test]
fn reader_and_schema_refuse_the_same_lines() {
    let schema = tolerant();
    for line in hostile() {
        assert!(line::read(&line).is_err(), "read: {line}");
        let value = serde_json::from_str(&line).unwrap();
        assert!(!schema.is_valid(&value), "valid: {line}");
    }
}

/// Lines as a later version might write them.
pub(crate) fn later() -> Vec<String> {
    vec![
        changed(&cart(), |line| line["kind"] = "song".into()),
        without(
            &changed(&cart(), |line| line["kind"] = "song".into()),
            "says",
        ),
        changed(&cart(), |line| line["weather"] = json!([["rain"]])),
        changed(&cart(), |line| line["says"]["kind"] = "sledge".into()),
        changed(&cart(), |line| line["says"]["colour"] = "blue".into()),
        changed(&cart(), |line| line["slot"] = "shafts".into()),
        changed(&remark("a", 4), |line| {
            line["slot"] = "near/hub".into();
            line["says"] = json!({ "song": 1 });
        }),
        changed(&cart(), |line| {
            line["cartside"] = 2.into();
            line["says"] = json!({ "axles": 3 });
        }),
        reading(&json!({ "answer": "twice", "mm": 1 })),
        wheel(&json!({ "felloes": [2, 2], "tyre": "rope" })),
        decision(&json!({ "standing": "half-good", "proposed": "keep-empty", "signed": "A" })),
        outcome("decision", "vehicle/decision", &json!({ "standing": 1 })),
        outcome(
            "limit",
            "tyre-gap/keep-empty/anywhere",
            &json!({ "mm": "2" }),
        ),
        without(
            &outcome("limit", "tyre-gap", &json!({ "mm": "2" })),
            "vehicle",
        ),
        work(&json!({ "did": ["painted"] })),
        outcome("work", "near/hub", &json!({ "done": 1 })),
        outcome("report", "near/report", &json!({ "pages": 1 })),
        examined(&json!({ "used_for": ["racing"] })),
        examined(&json!({ "stage": "in-the-fire" })),
        wheel(&json!({ "felloes": [2, 2], "sizes_mm": { "hub": [1] } })),
        one_mark(&json!({ "mark": "arrow", "bent": true })),
        one_mark(&json!({ "mark": "pin", "at": [[0, 0]], "colour": "red" })),
        one_mark(&json!({ "mark": "ring", "at": [[0, 0], [9, 9]], "text": 1 })),
        outcome("marks", "near/nave", &json!({ "marks": 1 })),
        round(
            &json!({ "with": "light", "number": 1, "line": "middle", "runs": [[0, 4241]], "turn_mm": "x" }),
        ),
        run("line", "edge".into()),
        run("pull_n", 50.into()),
        run("class", 5.into()),
        taped(&json!({ "class": "IV" })),
        taped(&json!({ "turn_mm": "x" })),
        tyring(&json!({ "iron": "bronze" })),
        tyring(&json!({ "felloes": "bamboo" })),
        tyring(&json!({ "stand": "ship" })),
        tyring(&json!({ "grain": {} })),
        outcome("round", "near/whole/round-bond", &json!({ "with": 1 })),
        outcome("tyring", "near/nave/tyring", &json!({ "draw_mm": "x" })),
    ]
}

#[test]
fn reader_and_schema_take_lines_of_a_later_version() {
    let schema = tolerant();
    for line in later() {
        assert!(line::read(&line).is_ok(), "not read: {line}");
        let value = serde_json::from_str(&line).unwrap();
        assert!(schema.is_valid(&value), "not valid: {line}");
    }
}

/// Fields that every line needs.
const ALWAYS: [&str; 7] = ["cartside", "kind", "slot", "by", "device", "at", "n"];

/// A good line of each kind, and of each way to say it, with the fields it needs besides.
fn needed() -> Vec<(String, Vec<&'static str>)> {
    let picture = jpeg("a");
    let full = json!({
        "felloes": [2, 2], "rim": "sawn", "tyre": "hoop", "arm": "iron", "keeper": "nut",
        "sizes_mm": { "height": 1275.0, "dish": -12.5 },
    });
    let visited = json!({
        "place": "", "used_for": ["road"], "stage": "tyre-off", "conditions": "", "safe_to_lift": "no",
    });
    let decided = json!({
        "standing": "keep-empty", "proposed": "keep-empty", "reason": "", "look_again": "2027-05-01", "signed": "A",
    });
    let measured = json!({ "answer": "length", "mm": 1.5, "doubt_mm": 0.5, "written": "" });
    let worked = json!({ "did": ["greased"], "text": "", "by_whom": "" });
    let strike = changed(&without(&visit(), "says"), |line| {
        line["struck"] = true.into();
        line["replaces"] = json!([id("a").hex()]);
    });
    let [one, other] = SameAs::new(id("cart"), id("the same")).unwrap().both();
    let same = changed(&without(&erasure(&picture, 4), "vehicle"), |line| {
        line["kind"] = "same-as".into();
        line["slot"] = format!("{one}/{other}").into();
    });
    vec![
        (same, vec!["says"]),
        (cart(), vec!["says", "says/kind"]),
        (wheel(&full), vec!["vehicle", "says", "says/felloes"]),
        (examined(&visited), vec!["vehicle", "says"]),
        (
            reading(&measured),
            vec![
                "vehicle",
                "visit",
                "says",
                "says/answer",
                "says/mm",
                "says/doubt_mm",
            ],
        ),
        (
            reading(&json!({ "answer": "over", "mm": 5, "written": "" })),
            vec!["vehicle", "visit", "says", "says/answer", "says/mm"],
        ),
        (
            reading(&json!({ "answer": "share", "percent": 5 })),
            vec!["vehicle", "visit", "says", "says/answer", "says/percent"],
        ),
        (
            reading(&json!({ "answer": "tight", "written": "" })),
            vec!["vehicle", "visit", "says", "says/answer"],
        ),
        (remark("a", 4), vec!["vehicle", "says", "says/text"]),
        (
            picture_line(&picture, 3),
            vec![
                "vehicle",
                "says",
                "says/sha256",
                "says/width",
                "says/height",
                "says/bytes",
            ],
        ),
        (erasure(&picture, 4), vec!["vehicle", "says"]),
        (
            marked(&json!({ "marks": [{ "mark": "pin", "at": [[0, 0]], "text": "" }] })),
            vec!["vehicle", "says", "says/marks"],
        ),
        (
            run("written", "".into()),
            vec![
                "vehicle",
                "visit",
                "says",
                "says/with",
                "says/number",
                "says/turn_mm",
                "says/turn_doubt_mm",
                "says/line",
                "says/runs",
            ],
        ),
        (
            taped(&json!({ "warm_c": 60, "warm_within_k": 5, "hot_weld": true, "written": "" })),
            vec![
                "vehicle",
                "visit",
                "says",
                "says/with",
                "says/number",
                "says/class",
                "says/line",
                "says/runs",
            ],
        ),
        (
            tyring(&json!({
                "draw_mm": 9, "cramped_mm": 1, "cut_mm": 12, "charred_mm": 0.5, "oval_mm": 3, "clearance_mm": 4,
                "carry_s": 30, "lay_s": 41, "wind_m_s": 5, "air_c": 12, "iron": "steel", "nave": "wych-elm",
                "spokes": "english-oak", "felloes": "white-ash", "stand": "phoenix",
                "months": vec![json!([80, 5]); 12],
            })),
            vec!["vehicle", "visit", "says"],
        ),
        (
            decision(&decided),
            vec![
                "vehicle",
                "visit",
                "says",
                "says/standing",
                "says/proposed",
                "says/signed",
            ],
        ),
        (limit(&json!({ "mm": 2 })), vec!["says", "says/mm"]),
        (
            limit(&json!({ "percent": 2 })),
            vec!["says", "says/percent"],
        ),
        (limit(&json!({ "count": 2 })), vec!["says", "says/count"]),
        (limit(&json!({ "off": true })), vec!["says", "says/off"]),
        (work(&worked), vec!["vehicle", "says", "says/did"]),
        (
            report(&json!({ "text": "", "to": "", "core": "" })),
            vec![
                "vehicle",
                "visit",
                "says",
                "says/text",
                "says/to",
                "says/core",
            ],
        ),
        (strike, vec!["vehicle", "struck"]),
    ]
}

/// Every field of a line by its path, and the line without it.
fn each_field_left_out(line: &str) -> Vec<(String, String)> {
    let value: Value = serde_json::from_str(line).unwrap();
    let mut left_out = Vec::new();
    take_each(&value, "", &mut |path| {
        let mut value = value.clone();
        let (within, field) = path.rsplit_once('/').unwrap();
        value
            .pointer_mut(within)
            .unwrap()
            .as_object_mut()
            .unwrap()
            .remove(field);
        left_out.push((path[1..].to_owned(), value.to_string()));
    });
    left_out
}

/// Goes through the paths of all fields of an object, those of objects within it too.
fn take_each(value: &Value, within: &str, take: &mut impl FnMut(&str)) {
    for (field, value) in value.as_object().into_iter().flatten() {
        let path = format!("{within}/{field}");
        take(&path);
        take_each(value, &path, take);
    }
}

/// Lines that lack one field that they need.
pub(crate) fn lacking() -> Vec<String> {
    let lacking = |(line, needed): (String, Vec<&'static str>)| {
        let needs = move |path: &str| ALWAYS.contains(&path) || needed.contains(&path);
        each_field_left_out(&line)
            .into_iter()
            .filter(move |(path, _)| needs(path))
            .map(|(_, line)| line)
    };
    needed().into_iter().flat_map(lacking).collect()
}

#[test]
fn each_field_that_is_needed_is_needed_by_schema_and_reader_and_no_other_is() {
    let (schema, closed) = (tolerant(), strict());
    let keeps_to = |validator: &Validator, line: &str| {
        validator.is_valid(&serde_json::from_str(line).unwrap())
    };
    for (line, needed) in needed() {
        let entry = line::read(&line).unwrap();
        assert!(entry.is_read() && entry.unread_fields == 0, "{line}");
        assert!(keeps_to(&closed, &line), "{line}");
        let mut missed = Vec::new();
        for (path, without) in each_field_left_out(&line) {
            let is_needed = ALWAYS.contains(&path.as_str()) || needed.contains(&path.as_str());
            missed.extend(is_needed.then(|| path.clone()));
            assert_eq!(
                line::read(&without).is_err(),
                is_needed,
                "{path} left out of {line}"
            );
            assert_eq!(
                !keeps_to(&schema, &without),
                is_needed,
                "{path} left out of {line}"
            );
        }
        assert_eq!(
            missed.len(),
            ALWAYS.len() + needed.len(),
            "all of them were left out once: {line}"
        );
    }
}

/// The schema itself says which fields there are to leave out: none of them may be missing above.
#[test]
fn every_field_the_schema_needs_is_left_out_once() {
    let schema = schema();
    assert_eq!(schema["required"], json!(ALWAYS));
    let left_out: Vec<(String, &str)> = needed()
        .into_iter()
        .flat_map(|(line, needed)| {
            let kind = line::read(&line).unwrap().kind.code().to_owned();
            needed.into_iter().map(move |path| (kind.clone(), path))
        })
        .collect();
    let kinds = schema["properties"]["kind"]["examples"].as_array().unwrap();
    for kind in kinds.iter().map(|kind| kind.as_str().unwrap()) {
        let mut required = Vec::new();
        gather_required(&schema["$defs"][kind], &mut required);
        for field in required {
            let path = format!("says/{field}");
            assert!(
                left_out.contains(&(kind.to_owned(), &path)),
                "{kind}: {path}"
            );
        }
        assert!(left_out.contains(&(kind.to_owned(), "says")), "{kind}");
    }
}

/// Every name that stands in a list of required fields, however deep.
fn gather_required(schema: &Value, required: &mut Vec<String>) {
    match schema {
        Value::Object(object) => {
            for (field, value) in object {
                match value.as_array().filter(|_| field == "required") {
                    Some(names) => {
                        required.extend(names.iter().map(|name| name.as_str().unwrap().to_owned()))
                    }
                    None => gather_required(value, required),
                }
            }
        }
        Value::Array(items) => items
            .iter()
            .for_each(|item| gather_required(item, required)),
        _ => {}
    }
}

#[test]
fn a_field_more_is_lawful_and_counted_and_only_the_closed_schema_refuses_it() {
    let (schema, closed) = (tolerant(), strict());
    for (line, _) in needed() {
        let value: Value = serde_json::from_str(&line).unwrap();
        let mut objects = vec![String::new()];
        take_each(&value, "", &mut |path| {
            objects.extend(
                value
                    .pointer(path)
                    .filter(|value| value.is_object())
                    .map(|_| path.to_owned()),
            );
        });
        for within in objects {
            let mut more = value.clone();
            more.pointer_mut(&within).unwrap()["later"] = json!([1]);
            assert!(schema.is_valid(&more), "{more}");
            assert!(!closed.is_valid(&more), "{more}");
            assert_eq!(
                line::read(&more.to_string()).unwrap().unread_fields,
                1,
                "{more}"
            );
        }
    }
}

#[test]
fn golden_lines_keep_to_the_closed_schema_and_those_of_a_newer_version_do_not() {
    let (schema, closed) = (tolerant(), strict());
    let keeps_to = |validator: &Validator, line: &str| {
        validator.is_valid(&serde_json::from_str(line).unwrap())
    };
    for golden in include_str!("../../core/src/paper/line/golden.jsonl").lines() {
        assert!(keeps_to(&closed, golden), "{golden}");
    }
    for newer in include_str!("../../core/src/paper/line/newer.jsonl").lines() {
        assert!(
            keeps_to(&schema, newer) && !keeps_to(&closed, newer),
            "{newer}"
        );
    }
}
