//! The JSON Schema of a line against lines that have been written, and the reader against the
//! schema: by a validator that is not ours (JSON Schema, draft 2020-12).

use std::collections::BTreeSet;

use cartside_core::daybook::{Decision, Work};
use cartside_core::diagnosis::house_limits;
use cartside_core::paper::line;
use cartside_core::survey::{Answer, Crack, Play, Question, Ring, Stage, Standing, Use};
use cartside_core::wheel::{
    Arm, Felloes, Keeper, Place, Position, Rim, Size, Tyre, VehicleKind, Wheel,
};
use jsonschema::Validator;
use serde_json::{Map, Value, json};

const GOLDEN: &str = include_str!("../../core/src/paper/line/golden.jsonl");
const NEWER: &str = include_str!("../../core/src/paper/line/newer.jsonl");

fn schema() -> Value {
    serde_json::from_str(include_str!("../../core/src/paper/entry.schema.json")).unwrap()
}

fn validator() -> Validator {
    jsonschema::draft202012::new(&schema()).unwrap()
}

fn lines() -> impl Iterator<Item = Value> {
    let lines = GOLDEN.lines().chain(NEWER.lines());
    lines.map(|line| serde_json::from_str(line).unwrap())
}

/// The schema and the reader must come to the same verdict; the verdict.
fn lawful(validator: &Validator, line: &Value) -> bool {
    let by_schema = validator.is_valid(line);
    let read = line::read(&line.to_string());
    assert_eq!(by_schema, read.is_ok(), "{line}\nthe reader says {read:?}");
    by_schema
}

#[test]
fn the_schema_is_one() {
    jsonschema::meta::validate(&schema()).unwrap();
}

#[test]
fn what_has_been_written_and_what_a_newer_version_may_write_is_lawful() {
    let validator = validator();
    for line in lines() {
        assert!(lawful(&validator, &line));
    }
}

/// What is written holds no field that the schema does not name, whatever it holds.
#[test]
fn the_schema_names_every_field_that_is_written() {
    let mut closed = schema();
    closed["additionalProperties"] = false.into();
    let kinds = [
        "vehicle", "wheel", "visit", "reading", "remark", "picture", "erasure", "decision",
        "limit", "work", "report",
    ];
    for kind in kinds {
        closed["$defs"][kind]["additionalProperties"] = false.into();
    }
    let closed = jsonschema::draft202012::new(&closed).unwrap();
    for line in GOLDEN
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
    {
        if let Err(error) = closed.validate(&line) {
            panic!("{error}\n{line}");
        }
    }
    let new_fields = NEWER.lines().filter(|line| line.contains("season"));
    for line in new_fields {
        assert!(
            !closed.is_valid(&serde_json::from_str(line).unwrap()),
            "it is closed"
        );
    }
}

/// Fields without which a line is none; whether a strike or a newer form spares one is the
/// reader's and the schema's to agree on.
#[test]
fn a_line_without_a_field_is_judged_alike() {
    let validator = validator();
    let mut missed = BTreeSet::new();
    for line in lines() {
        for field in line.as_object().unwrap().keys() {
            let mut without = line.clone();
            without.as_object_mut().unwrap().remove(field);
            if !lawful(&validator, &without) {
                missed.insert(match field.as_str() {
                    "vehicle" | "visit" => format!("{field} of {}", line["kind"]),
                    _ => field.clone(),
                });
            }
        }
        for field in said(&line).keys() {
            let mut without = line.clone();
            without["says"].as_object_mut().unwrap().remove(field);
            if !lawful(&validator, &without) {
                missed.insert(format!("{}.{field}", line["kind"].as_str().unwrap()));
            }
        }
    }
    let needed = [
        "at",
        "by",
        "cartside",
        "device",
        "kind",
        "n",
        "says",
        "slot",
        "struck",
        "vehicle of \"decision\"",
        "vehicle of \"erasure\"",
        "vehicle of \"marks\"",
        "vehicle of \"picture\"",
        "vehicle of \"reading\"",
        "vehicle of \"remark\"",
        "vehicle of \"report\"",
        "vehicle of \"round\"",
        "vehicle of \"tyring\"",
        "vehicle of \"visit\"",
        "vehicle of \"wheel\"",
        "vehicle of \"work\"",
        "visit of \"decision\"",
        "visit of \"reading\"",
        "visit of \"report\"",
        "visit of \"round\"",
        "visit of \"tyring\"",
        "decision.proposed",
        "decision.signed",
        "decision.standing",
        "limit.count",
        "limit.mm",
        "limit.off",
        "limit.percent",
        "marks.marks",
        "picture.bytes",
        "picture.height",
        "picture.sha256",
        "picture.width",
        "reading.answer",
        "reading.doubt_mm",
        "reading.mm",
        "reading.percent",
        "remark.text",
        "report.core",
        "report.text",
        "report.to",
        "round.class",
        "round.line",
        "round.number",
        "round.runs",
        "round.turn_doubt_mm",
        "round.turn_mm",
        "round.with",
        "vehicle.kind",
        "wheel.felloes",
        "work.did",
    ];
    assert_eq!(missed, needed.map(str::to_owned).into());
}

/// Values of every sort of JSON, and some that are nearly right.
fn odd_values() -> Vec<Value> {
    let digest = "a".repeat(64);
    vec![
        json!(null),
        json!(true),
        json!(false),
        json!(0),
        json!(1),
        json!(2),
        json!(-1),
        json!(0.5),
        json!(20_000.01),
        json!(-20_000.01),
        json!(1_000_000_000_000_u64),
        json!(1_000_000_000_001_u64),
        json!(4_294_967_296_u64),
        json!(""),
        json!("vehicle"),
        json!("reading"),
        json!("near"),
        json!("length"),
        json!("over"),
        json!(digest),
        json!(digest.to_uppercase()),
        json!(digest[1..]),
        json!("2026-11-25T10:03:00Z"),
        json!("2026-02-31T10:03:60-00:00"),
        json!("2026-13-01T10:03:00+00:00"),
        json!([]),
        json!([2, 2]),
        json!([0, 3]),
        json!([digest]),
        json!(vec![digest.clone(); 64]),
        json!(vec![digest.clone(); 65]),
        json!([digest, ""]),
        json!(["goods", "people"]),
        json!(["greased"]),
        json!("2026-11-25"),
        json!("2026-11-32"),
        json!("light-work-only"),
        json!(100.5),
        json!("near/whole/decision"),
        json!("tyre-gap/keep-empty/anywhere"),
        json!("vehicle/report"),
        json!({}),
        json!({ "kind": "cart", "text": "x", "felloes": [3], "answer": "yes" }),
        json!({ "mm": 1, "standing": "x", "proposed": "x", "signed": "", "did": [] }),
        json!({ "mm": 1, "count": 1 }),
        json!({ "off": false }),
    ]
}

#[test]
fn a_line_with_any_field_of_another_sort_is_judged_alike() {
    let validator = validator();
    let (mut lawfully, mut not) = (0, 0);
    for line in lines() {
        let fields: Vec<String> = line.as_object().unwrap().keys().cloned().collect();
        let says: Vec<String> = said(&line).keys().cloned().collect();
        for odd in odd_values() {
            let put = |line: &mut Value, field: &str| line[field] = odd.clone();
            for field in &fields {
                let mut other = line.clone();
                put(&mut other, field);
                *if lawful(&validator, &other) {
                    &mut lawfully
                } else {
                    &mut not
                } += 1;
            }
            for field in &says {
                let mut other = line.clone();
                put(&mut other["says"], field);
                *if lawful(&validator, &other) {
                    &mut lawfully
                } else {
                    &mut not
                } += 1;
            }
            for new in ["vehicle", "visit", "of", "struck", "replaces", "new"] {
                let mut other = line.clone();
                put(&mut other, new);
                *if lawful(&validator, &other) {
                    &mut lawfully
                } else {
                    &mut not
                } += 1;
            }
        }
    }
    assert!(
        lawfully > 1000 && not > 1000,
        "{lawfully} lawful, {not} not"
    );
}

fn said(line: &Value) -> Map<String, Value> {
    line["says"].as_object().cloned().unwrap_or_default()
}

#[test]
fn the_schema_lists_every_word_there_is() {
    let schema = schema();
    let listed = |pointer: &str| -> BTreeSet<String> {
        let examples = schema.pointer(&format!("{pointer}/examples")).unwrap();
        serde_json::from_value(examples.clone()).unwrap()
    };
    let words = |words: &[&str]| -> BTreeSet<String> {
        words.iter().map(|word| (*word).to_owned()).collect()
    };
    let of = "/$defs/wheel/properties";
    assert_eq!(
        listed(&format!("{of}/rim")),
        words(&Rim::ALL.map(Rim::code))
    );
    assert_eq!(
        listed(&format!("{of}/tyre")),
        words(&Tyre::ALL.map(Tyre::code))
    );
    assert_eq!(
        listed(&format!("{of}/arm")),
        words(&Arm::ALL.map(Arm::code))
    );
    assert_eq!(
        listed(&format!("{of}/keeper")),
        words(&Keeper::ALL.map(Keeper::code))
    );
    let sizes = schema.pointer(&format!("{of}/sizes_mm/properties"));
    let sizes = sizes.unwrap().as_object().unwrap().keys().cloned();
    assert_eq!(
        sizes.collect::<BTreeSet<_>>(),
        words(&Size::ALL.map(Size::code))
    );
    let kinds = VehicleKind::ALL.map(VehicleKind::code);
    assert_eq!(listed("/$defs/vehicle/properties/kind"), words(&kinds));
    let uses = listed("/$defs/visit/properties/used_for/items");
    assert_eq!(uses, words(&Use::ALL.map(Use::code)));
    let stages = listed("/$defs/visit/properties/stage");
    assert_eq!(stages, words(&Stage::ALL.map(Stage::code)));
    let standings = Standing::ALL.map(Standing::code);
    assert_eq!(listed("/$defs/standing"), words(&standings));
    let works: Vec<&str> = Work::ALL.iter().map(|work| work.code()).collect();
    assert_eq!(listed("/$defs/work/properties/did/items"), words(&works));
    let answers = listed("/$defs/reading/properties/answer");
    assert!(Play::ALL.iter().all(|play| answers.contains(play.code())));
    assert!(Ring::ALL.iter().all(|ring| answers.contains(ring.code())));
    assert!(
        Crack::ALL
            .iter()
            .all(|crack| answers.contains(crack.code()))
    );
    for answer in answers {
        assert!(known(&answer).is_some(), "{answer}");
    }
}

/// The answer a word stands for, by the reader.
fn known(answer: &str) -> Option<Answer> {
    let golden = GOLDEN
        .lines()
        .find(|line| line.contains("\"answer\":\"length\""))?;
    let answer = format!("\"answer\":\"{answer}\",\"percent\":12.5");
    let line = golden.replace("\"answer\":\"length\"", &answer);
    match line::read(&line).unwrap().says {
        cartside_core::daybook::Says::Reading(reading) => Some(reading.answer),
        _ => None,
    }
}

#[test]
fn the_schema_knows_the_slot_of_every_question_at_every_place_it_is_put_to() {
    let slots = defined("reading-slot");
    let wheel = Wheel::of(Felloes::even(64, 32).unwrap());
    let numbered = |n| {
        [
            Place::Spoke(n),
            Place::Between(n),
            Place::Joint(n),
            Place::Felloe(n),
        ]
    };
    let mut places = vec![Place::Whole, Place::Nave];
    places.extend((1..=64).chain([65_535]).flat_map(numbered));
    for question in Question::all() {
        assert!(!question.places_on(&wheel).is_empty());
        for position in Position::ALL {
            for place in &places {
                let (position, place_code) = (position.code(), place.code());
                let slot = json!(format!("{position}/{place_code}/{}", question.code()));
                assert_eq!(slots.is_valid(&slot), question.fits(*place), "{slot}");
            }
        }
    }
    let (wheels, parts) = (defined("wheel-slot"), defined("part-slot"));
    assert!(
        Position::ALL
            .iter()
            .all(|position| wheels.is_valid(&json!(position.code())))
    );
    for place in places {
        assert!(parts.is_valid(&json!(format!("off-hind/{}", place.code()))));
    }
    for odd in [
        "near/spoke-0/spoke-foot",
        "near/spoke-03/spoke-foot",
        "near",
        "",
        "x/nave",
    ] {
        assert!(
            !slots.is_valid(&json!(odd)) && !parts.is_valid(&json!(odd)),
            "{odd}"
        );
    }
}

#[test]
fn the_schema_knows_the_slot_of_every_limit_and_every_decision() {
    let (limits, decisions) = (defined("limit-slot"), defined("decision-slot"));
    for row in house_limits() {
        assert!(limits.is_valid(&json!(row.code())), "{}", row.code());
    }
    for position in Position::ALL {
        assert!(decisions.is_valid(&json!(Decision::slot(position))));
    }
    for odd in ["tyre-gap/3/any", "tyre-gap", "near/decision", ""] {
        assert!(!limits.is_valid(&json!(odd)), "{odd}");
    }
    for odd in [
        "near/nave/decision",
        "near/decision",
        "vehicle/decision",
        "",
    ] {
        assert!(!decisions.is_valid(&json!(odd)), "{odd}");
    }
}

fn defined(name: &str) -> Validator {
    jsonschema::draft202012::new(&schema()["$defs"][name]).unwrap()
}
