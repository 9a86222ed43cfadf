//! Every sentence in another country's words: none keeps a word, or the name of one, of this one.

use super::sample::{american, answers, mm, reading, style, wheel};
use super::style::Style;
use super::{answer, cause, caution, cure, finding, glossary, how, limit, need, place, question};
use super::{says, term};
use crate::daybook::Says;
use crate::diagnosis::{Beside, Cause, Cure, InTheWay, Taken, house_limits, judge};
use crate::survey::{Answer, Group, Need, Question, Stage};
use crate::wheel::{Keeper, Place, Rim, Size, Tyre, VehicleKind, Wheel};

/// What the readings of one bad answer to each question come to, in words.
fn findings(style: Style) -> Vec<String> {
    let mut said = Vec::new();
    for on in [Tyre::Hoop, Tyre::Strakes] {
        let on = Wheel {
            tyre: Some(on),
            ..wheel()
        };
        for question in Question::all() {
            for answer in answers().into_iter().chain([mm(40.0)]) {
                let place = question.places_on(&on)[0];
                let entry = reading(1, question, place, answer);
                said.push(says::says(&entry, Some(&on), style));
                let Says::Reading(reading) = entry.says else {
                    panic!("no reading");
                };
                let taken = Taken {
                    entry: entry.id,
                    reading,
                };
                let judged = judge(&on, &[taken], &house_limits(), &Beside::default());
                for it in &judged.findings {
                    let words = finding::finding(it, &on, style);
                    said.extend([words.heading, words.where_, words.how_much, words.limit]);
                }
            }
        }
    }
    said
}

fn questions(style: Style) -> Vec<String> {
    let mut said = Vec::new();
    for it in Question::all() {
        let words = how::how(it, style);
        said.extend([question::short(it, style), question::asks(it, style)]);
        said.extend([words.how, words.why]);
        said.push(answer::told(it, &Answer::Yes, style));
        said.push(answer::told(it, &Answer::No, style));
    }
    said.extend(Group::ALL.map(|it| question::group(it, style)));
    said.extend(Stage::ALL.map(|it| question::stage(it, style)));
    said.extend(Need::ALL.map(|it| need::need(it, style)));
    said
}

fn terms(style: Style) -> Vec<String> {
    let mut said = Vec::new();
    said.extend(Size::ALL.map(|it| term::size(it, style)));
    said.extend(Rim::ALL.map(|it| term::rim(it, style)));
    said.extend(Tyre::ALL.map(|it| term::tyre(it, style)));
    said.extend(Keeper::ALL.map(|it| term::keeper(it, style).to_owned()));
    said.extend(VehicleKind::ALL.map(|it| term::vehicle_kind(it, style).to_owned()));
    said.extend([Place::Nave, Place::Felloe(1)].map(|it| place::place(it, Some(&wheel()), style)));
    said.extend(house_limits().iter().map(|it| limit::limit(it, style)));
    said
}

fn remedies(style: Style) -> Vec<String> {
    let mut said = Vec::new();
    for it in Cause::ALL {
        let words = cause::cause(it, style);
        said.extend([words.name, words.told_by]);
    }
    said.extend(Cure::ALL.map(|it| cure::cure(it, style)));
    let ways = [
        InTheWay::LooseFeet,
        InTheWay::FeetNotLooked,
        InTheWay::ProudTongues,
        InTheWay::FelloeBound,
    ];
    said.extend(ways.map(|it| cure::in_the_way(it, style)));
    for card in [caution::never_at_the_cart(style), caution::no_cure(style)] {
        said.extend(card.lines);
    }
    said.extend(glossary::glossary(style).flat_map(|it| [it.word, it.line]));
    said
}

fn everything(style: Style) -> Vec<String> {
    [
        questions(style),
        findings(style),
        terms(style),
        remedies(style),
    ]
    .concat()
}

fn words(sentence: &str) -> impl Iterator<Item = String> {
    let parts = sentence.split(|letter: char| !letter.is_alphabetic());
    parts.map(|word| word.to_lowercase().trim_end_matches('s').to_owned())
}

#[test]
fn american_sentences_hold_no_british_word() {
    let british = [
        "tyre", "tyring", "nave", "bond", "sole", "tongue", "waggon", "centre", "box", "linch",
    ];
    let count = |style| {
        let said = everything(style).into_iter();
        said.filter(|said| words(said).any(|word| british.contains(&word.as_str())))
            .collect::<Vec<_>>()
    };
    assert_eq!(count(american()), Vec::<String>::new());
    assert!(count(style()).len() > 100, "the words are looked for");
}

#[test]
fn no_sentence_shows_the_name_of_a_word_or_is_empty() {
    for style in [style(), american()] {
        for said in everything(style) {
            assert!(
                !said.is_empty() && !said.contains(['{', '}', '_']),
                "{said}"
            );
        }
    }
}
