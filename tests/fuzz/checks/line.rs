//! Lines from outside: one is refused in a sentence or is an entry, what is read is written back and read the same,
//! and a book of any lines can be looked at.

use cartside_core::daybook::{Book, Digest, Entry, Hand, Unwritten};
use cartside_core::diagnosis::limits;
use cartside_core::paper::line::{self, LONGEST_LINE, LineRefusal};
use cartside_core::paper::summary::Summary;
use cartside_core::quantity::format::{FeelerStyle, LengthStyle};
use cartside_core::words::{self, Style};
use serde_json::Value;

/// Reads the bytes as lines, each by itself and all as one book.
pub(crate) fn check(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let entries = text.split('\n').filter_map(one);
    look_at(&entries.collect());
}

fn one(text: &str) -> Option<Entry> {
    let json = serde_json::from_str::<Value>(text);
    match line::read(text) {
        Ok(entry) => {
            assert_eq!(entry.id, Digest::of(text.as_bytes()));
            assert!(text.len() <= LONGEST_LINE);
            assert!(json.is_ok_and(|json| json.is_object()), "{text}");
            is_stable(&entry);
            Some(entry)
        }
        Err(refused) => {
            let sentence = refused.to_string();
            assert!(!sentence.is_empty() && sentence.len() < 400, "{sentence}");
            let ours_alone = sentence.contains("a number within measure");
            let no_json = matches!(refused, LineRefusal::NotJson(_)) && !ours_alone;
            assert!(!no_json || json.is_err(), "{text}: {sentence}");
            None
        }
    }
}

/// What is read whole is written so that it is read as the same, and then stays as it is.
fn is_stable(entry: &Entry) {
    if !entry.is_read() {
        return;
    }
    let (unwritten, hand) = as_unwritten(entry);
    let written = match line::write(&unwritten, &hand) {
        Ok(written) => written,
        // It grew: a sign may be written longer than it stood.
        Err(LineRefusal::TooLong(_) | LineRefusal::ReportTooLong(_)) => return,
        Err(refused) => panic!("{refused}"),
    };
    let read = line::read(&written).expect("what is written is read");
    let (again, same_hand) = as_unwritten(&read);
    assert_eq!((read.unread_fields, &same_hand), (0, &hand));
    assert_eq!(again.replaces, unwritten.replaces);
    assert_eq!(
        (&again.kind, &again.slot),
        (&unwritten.kind, &unwritten.slot)
    );
    assert_eq!(line::write(&again, &same_hand).as_ref(), Ok(&written));
}

fn as_unwritten(entry: &Entry) -> (Unwritten, Hand) {
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

/// Looks at all that a book shows.
fn look_at(book: &Book) {
    let (view, style) = (
        book.view(),
        Style::british(LengthStyle::Millimetres, FeelerStyle::Millimetres),
    );
    let limits = limits(&view);
    let in_threads: usize = view.threads().map(|thread| thread.entries().len()).sum();
    assert_eq!(in_threads, book.len());
    for thread in view.threads() {
        assert!(thread.state().is_some());
        for entry in thread.counts() {
            assert!(!words::says::heading(entry, None, style).is_empty());
            let _ = words::says::says(entry, None, style);
        }
    }
    for problem in view.problems() {
        assert!(!words::problem::problem(problem, book, style).is_empty());
    }
    for id in view.vehicles() {
        let summary = Summary::of(book, id, &limits);
        let text = summary.write();
        let kept = Summary::read(id, cartside_core::paper::summary::SCHEMA, &text);
        assert_eq!(kept.as_ref(), Some(&summary));
    }
}
