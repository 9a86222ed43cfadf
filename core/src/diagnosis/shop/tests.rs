//! The shop's own values: what can be set, what counts, and that a wheel is judged by it.

use std::collections::BTreeSet;

use proptest::prelude::*;

use super::limits;
use crate::daybook::{
    Book, Digest, Entry, EntryId, Hand, LimitSaid, Says, Stamp, State, Subject, Threshold,
    Unwritten,
};
use crate::diagnosis::row::number;
use crate::diagnosis::{Beside, EditRefusal, Grade, Limit, Origin, Taken, house_limits, judge};
use crate::paper::line;
use crate::quantity::length::millimetres;
use crate::quantity::{Measured, Percent};
use crate::survey::{Answer, Question, Reading, Slot};
use crate::wheel::{Felloes, Place, Position, Wheel};

const GAP: &str = "tyre-gap/keep-empty/anywhere";
const BROKEN: &str = "spoke-broken/not-on-this-wheel/answered";

fn mm(mm: f64) -> Option<Threshold> {
    Some(Threshold::Length(millimetres(mm)))
}

fn percent(share: f64) -> Option<Threshold> {
    Some(Threshold::Percent(Percent::from_paper(share).unwrap()))
}

fn row(code: &str) -> Limit {
    let mut rows = house_limits().into_iter();
    rows.find(|row| row.code() == code).unwrap()
}

/// An entry that sets a row, written and read.
fn set(code: &str, threshold: Option<Threshold>, replaces: &[EntryId], n: u64) -> Entry {
    let row = code.to_owned();
    let said = Says::Limit(LimitSaid { row, threshold });
    let entry = Unwritten::new(None, said).unwrap();
    write(&entry.replacing(replaces.to_vec()), n)
}

fn write(entry: &Unwritten, n: u64) -> Entry {
    let hand = Hand {
        by: "A. Smith".to_owned(),
        device: "shop".to_owned(),
        at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
        n,
    };
    line::read(&line::write(entry, &hand).unwrap()).unwrap()
}

/// What the row of this name comes to in a book of these entries; `None` if it is not used.
fn now(entries: &[Entry], code: &str) -> Option<Limit> {
    let book: Book = entries.iter().cloned().collect();
    let mut rows = limits(&book.view()).into_iter();
    rows.find(|row| row.code() == code)
}

fn value(entries: &[Entry], code: &str) -> Option<f64> {
    now(entries, code)
        .and_then(|row| row.threshold())
        .map(number)
}

#[test]
fn every_row_has_a_name_of_its_own() {
    let rows = house_limits();
    let codes: BTreeSet<String> = rows.iter().map(Limit::code).collect();
    assert_eq!(codes.len(), rows.len());
    assert_eq!(row(GAP).code(), GAP);
}

/// Books hold these names, so none of them may change or go.
#[test]
fn the_names_are_those_that_books_hold() {
    let names: Vec<String> = house_limits().iter().map(Limit::code).collect();
    insta::assert_snapshot!(names.join("\n"), @r"
    first-keeper/not-on-this-wheel/answered
    first-tyre/keep-empty/answered
    first-spokes/keep-empty/answered
    first-dish/not-on-this-wheel/answered
    first-joints/light-work-only/answered
    first-nave/keep-empty/answered
    first-rot/light-work-only/answered
    keeper-present/not-on-this-wheel/answered
    keeper-right/not-on-this-wheel/answered
    keeper-secured/not-on-this-wheel/answered
    keeper-worn/note/share
    keeper-worn/light-work-only/share
    keeper-worn/keep-empty/share
    ring/note/sounds
    ring/keep-empty/dead-all-round
    tyre-gap/note/any
    tyre-gap/light-work-only/at-places
    tyre-gap/light-work-only/anywhere
    tyre-gap/keep-empty/anywhere
    tyre-shifts/keep-empty/answered
    tyre-off-centre/not-on-this-wheel/answered
    tyre-cracked/not-on-this-wheel/answered
    tyre-left/note/under
    tyre-left/note/share-of-new
    tyre-left/light-work-only/share-of-new
    tyre-left/keep-empty/under
    tyre-left/keep-empty/share-of-new
    strake/light-work-only/felt
    strake/keep-empty/not-there
    strake-cracked/light-work-only/answered
    joint-gap/note/any
    joint-gap/light-work-only/sum
    joint-gap/keep-empty/sum
    joint-belly/note/any
    felloe-step/keep-empty/anywhere
    crack-felloe/note/cracked
    crack-felloe/light-work-only/cracked
    crack-felloe/keep-empty/cracked
    rot-felloe/note/anywhere
    rot-felloe/light-work-only/anywhere
    rot-felloe/keep-empty/a-third
    moisture/note/share-outside
    spoke-foot/light-work-only/felt
    spoke-foot/light-work-only/any
    spoke-foot/keep-empty/anywhere
    spoke-foot/keep-empty/neighbours
    spoke-foot/keep-empty/a-quarter
    spoke-rim-end/note/anywhere
    spoke-rim-end/note/felt
    spoke-rim-end/light-work-only/anywhere
    spoke-rim-end/light-work-only/felt
    spoke-rim-end/keep-empty/anywhere
    spoke-rim-end/keep-empty/neighbours
    spoke-rim-end/keep-empty/a-quarter
    spoke-broken/keep-empty/answered
    spoke-broken/not-on-this-wheel/answered
    spoke-broken/not-on-this-wheel/beside-a-loose-one
    stand-off/note/felloe-bound
    stand-off/note/any
    tongue-proud/note/answered
    crack-spoke/note/cracked
    crack-spoke/light-work-only/cracked
    crack-spoke/keep-empty/cracked
    rot-spoke/note/anywhere
    rot-spoke/light-work-only/anywhere
    rot-spoke/keep-empty/a-third
    bonds/light-work-only/felt
    bonds/keep-empty/not-there
    crack-nave/note/cracked
    crack-nave/light-work-only/cracked
    crack-nave/keep-empty/cracked-with-loose-bond
    rot-nave/note/anywhere
    rot-nave/light-work-only/anywhere
    rot-nave/keep-empty/anywhere
    box-moves/note/answered
    dish/note/dish-lost
    dish/note/pair-differs
    dish/light-work-only/dish-lost
    dish/light-work-only/dish-grown
    dish/not-on-this-wheel/dish-reversed
    dish-gives/not-on-this-wheel/answered
    run-out/note/anywhere
    run-out/light-work-only/anywhere
    run-out/keep-empty/anywhere
    out-of-round/note/anywhere
    out-of-round/light-work-only/anywhere
    out-of-round/keep-empty/anywhere
    end-play/note/more-than-linch-pin
    end-play/light-work-only/more-than-linch-pin
    end-play/keep-empty/more-than-linch-pin
    end-play/note/more-than-nut
    end-play/light-work-only/more-than-nut
    end-play/keep-empty/more-than-nut
    end-play/note/more-than-collinge-mail
    end-play/light-work-only/more-than-collinge-mail
    end-play/keep-empty/more-than-collinge-mail
    binds/light-work-only/answered
    shake/note/anywhere
    shake/light-work-only/anywhere
    shake/keep-empty/anywhere
    ");
}

#[test]
fn a_book_without_limits_has_those_that_come() {
    assert_eq!(limits(&Book::default().view()), house_limits());
}

#[test]
fn what_the_shop_sets_counts_and_the_rest_is_as_it_comes() {
    let book: Book = [set(GAP, mm(2.0), &[], 1)].into_iter().collect();
    let limits = limits(&book.view());
    assert_eq!(limits.len(), house_limits().len());
    for (now, before) in limits.iter().zip(house_limits()) {
        assert_eq!(now.code(), before.code());
        let set = now.code() == GAP;
        assert_eq!(now.origin, if set { Origin::Shop } else { Origin::House });
        assert_eq!(*now == before, now.code() != GAP);
    }
    assert_eq!(value(&[set(GAP, mm(2.0), &[], 1)], GAP), Some(2.0));
    assert_eq!(
        value(&[set(BROKEN, Some(Threshold::Count(3)), &[], 1)], BROKEN),
        Some(3.0)
    );
    let places = "tyre-gap/light-work-only/at-places";
    assert_eq!(value(&[set(places, mm(0.75), &[], 1)], places), Some(0.75));
    let sum = "joint-gap/keep-empty/sum";
    assert_eq!(value(&[set(sum, mm(8.0), &[], 1)], sum), Some(8.0));
}

#[test]
fn a_row_that_is_not_used_is_gone_and_comes_back() {
    let off = set(GAP, None, &[], 1);
    assert_eq!(now(std::slice::from_ref(&off), GAP), None);
    let on = set(GAP, mm(4.0), &[off.id], 2);
    assert_eq!(value(&[off.clone(), on], GAP), Some(4.0));
    let struck = write(&Unwritten::striking(&off, vec![off.id]), 2);
    assert_eq!(now(&[off, struck], GAP), Some(row(GAP)), "as it comes");
}

#[test]
fn one_thread_holds_the_history_of_a_row() {
    let first = set(GAP, mm(2.0), &[], 1);
    let second = set(GAP, mm(2.5), &[first.id], 2);
    let apart = set(GAP, mm(2.5), &[], 3);
    let book: Book = [first, second.clone(), apart].into_iter().collect();
    let view = book.view();
    let threads: Vec<_> = view.limits().collect();
    assert_eq!(threads.len(), 1);
    assert_eq!(threads[0].entries().len(), 3);
    assert_eq!(
        threads[0].state(),
        Some(State::Settled(&second)),
        "they agree"
    );
    assert_eq!(second.subject(), Subject::House);
}

#[test]
fn of_a_dispute_the_more_cautious_counts() {
    for (one, other, least) in [
        (mm(2.0), mm(4.0), 2.0),
        (mm(4.0), mm(2.0), 2.0),
        (mm(4.0), None, 4.0),
        (None, mm(4.0), 4.0),
        (mm(4.0), mm(2000.0), 3.0),
        (mm(2.0), percent(5.0), 2.0),
    ] {
        let sides = [set(GAP, one, &[], 1), set(GAP, other, &[], 2)];
        assert_eq!(value(&sides, GAP), Some(least), "{one:?} {other:?}");
        let last = set(GAP, mm(5.0), &[sides[0].id, sides[1].id], 3);
        let settled = [sides[0].clone(), sides[1].clone(), last];
        assert_eq!(value(&settled, GAP), Some(5.0));
    }
}

#[test]
fn a_side_of_a_newer_version_counts_as_the_row_as_it_comes() {
    let newer = Entry {
        id: Digest::of(b"newer"),
        says: Says::Unread,
        ..set(GAP, None, &[], 1)
    };
    for (mm, counts) in [(mm(4.0), 3.0), (mm(2.0), 2.0), (None, 3.0)] {
        let sides = [newer.clone(), set(GAP, mm, &[], 2)];
        assert_eq!(value(&sides, GAP), Some(counts));
    }
}

#[test]
fn nonsense_is_refused_and_has_no_effect() {
    let (gap, broken) = (row(GAP), row(BROKEN));
    let beyond = |given: Option<Threshold>, most: Option<Threshold>| {
        let (given, most) = (given.unwrap(), most.unwrap());
        Err(EditRefusal::Beyond { given, most })
    };
    for given in [0.0, -1.0, 50.01, 1e4, f64::NAN].map(mm) {
        let refused = format!("{:?}", gap.edited(given));
        assert_eq!(refused, format!("{:?}", beyond(given, mm(50.0))));
    }
    for least in [0.000_001, 50.0] {
        assert!(gap.edited(mm(least)).unwrap().is_some(), "{least}");
    }
    for count in [0, 65, u32::MAX].map(Threshold::Count) {
        let most = Some(Threshold::Count(64));
        assert_eq!(broken.edited(Some(count)), beyond(Some(count), most));
    }
    for other in [mm(2.0), percent(5.0)] {
        let refused = Err(EditRefusal::OtherSort(other.unwrap()));
        assert_eq!(broken.edited(other), refused);
    }
    for entry in [
        set(GAP, mm(0.0), &[], 1),
        set(GAP, mm(50.01), &[], 1),
        set(GAP, Some(Threshold::Count(2)), &[], 1),
        set("tyre-gap/keep-empty/by-moonlight", mm(1.0), &[], 1),
    ] {
        assert_eq!(now(&[entry], GAP), Some(gap));
    }
}

#[test]
fn a_row_without_a_value_stays() {
    let fixed: Vec<Limit> = house_limits()
        .into_iter()
        .filter(|row| row.threshold().is_none())
        .collect();
    assert!(fixed.contains(&row("keeper-present/not-on-this-wheel/answered")));
    assert!(fixed.contains(&row("spoke-foot/keep-empty/neighbours")));
    for row in fixed {
        for to in [None, mm(1.0), Some(Threshold::Count(2))] {
            assert_eq!(row.edited(to), Err(EditRefusal::Fixed));
            assert_eq!(now(&[set(&row.code(), to, &[], 1)], &row.code()), Some(row));
        }
    }
}

/// The grade of one gap under the tyre by the limits of a book.
fn grade(book: &Book, gap: f64) -> Option<Grade> {
    let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
    let slot = Slot {
        position: Position::Near,
        place: Place::Between(1),
        question: Question::TyreGap,
    };
    let answer = Answer::Length(Measured::new(millimetres(gap), millimetres(0.0)).unwrap());
    let written = String::new();
    let taken = Taken {
        entry: Digest::of(b"gap"),
        reading: Reading {
            slot,
            answer,
            written,
        },
    };
    let judgement = judge(&wheel, &[taken], &limits(&book.view()), &Beside::default());
    judgement.findings.first().map(|finding| finding.grade)
}

#[test]
fn a_wheel_is_judged_at_under_and_over_the_value_that_was_set() {
    for least in [1.5, 2.0, 12.7, 50.0] {
        let book: Book = [set(GAP, mm(least), &[], 1)].into_iter().collect();
        assert_eq!(grade(&book, least - 0.01), Some(Grade::LightWorkOnly));
        assert_eq!(grade(&book, least), Some(Grade::KeepEmpty));
        assert_eq!(grade(&book, least + 0.01), Some(Grade::KeepEmpty));
    }
    let off: Book = [set(GAP, None, &[], 1)].into_iter().collect();
    assert_eq!(grade(&off, 50.0), Some(Grade::LightWorkOnly));
}

proptest! {
    /// Whatever lies in the range of its readings can be set, is written and read, and is what the
    /// row then is.
    #[test]
    fn whatever_a_reading_can_be_can_be_set(at in any::<prop::sample::Index>(), part in 0.01..=1.0_f64) {
        let rows = house_limits();
        let row = rows[at.index(rows.len())];
        if let Some(before) = row.threshold() {
            let beyond = match before {
                Threshold::Length(_) => mm(1e6),
                Threshold::Percent(_) => percent(0.0),
                Threshold::Count(_) => Some(Threshold::Count(u32::MAX)),
            };
            let Err(EditRefusal::Beyond { most, .. }) = row.edited(beyond) else {
                panic!("a value beyond all readings is refused")
            };
            let to = match most {
                Threshold::Length(most) => Threshold::Length(most * part),
                Threshold::Percent(most) => Threshold::Percent(Percent::from_paper(most.to_paper() * part).unwrap()),
                Threshold::Count(most) => Threshold::Count((f64::from(most) * part).ceil() as u32),
            };
            let value = value(&[set(&row.code(), Some(to), &[], 1)], &row.code());
            prop_assert_eq!(value, Some(number(to)));
        }
    }
}

#[test]
fn what_is_typed_is_read_by_the_sort_of_its_row() {
    use crate::diagnosis::TypedRefusal;
    use crate::quantity::spelling::BareUnit::{Millimetre, Thou};
    let typed = |code: &str, text: &str| row(code).typed(text, Millimetre);
    assert_eq!(typed(GAP, "2.5"), Ok(mm(2.5).unwrap()));
    assert_eq!(row(GAP).typed("100", Thou), Ok(mm(2.54).unwrap()));
    assert_eq!(typed(BROKEN, " 3 "), Ok(Threshold::Count(3)));
    // What is no count is refused when the row is set.
    assert_eq!(typed(BROKEN, "three"), Ok(Threshold::Count(0)));
    assert!(row(BROKEN).edited(Some(Threshold::Count(0))).is_err());
    let share = row_of_sort(|sort| matches!(sort, Threshold::Percent(_)));
    assert_eq!(share.typed("12.5", Millimetre), Ok(percent(12.5).unwrap()));
    let mut rows = house_limits().into_iter();
    let fixed = rows.find(|row| row.threshold().is_none()).unwrap();
    assert!(matches!(typed(GAP, "two"), Err(TypedRefusal::Spelled(_))));
    assert_eq!(
        fixed.typed("1", Millimetre),
        Err(TypedRefusal::Row(EditRefusal::Fixed))
    );
}

fn row_of_sort(is: impl Fn(Threshold) -> bool) -> Limit {
    let mut rows = house_limits().into_iter();
    rows.find(|row| row.threshold().is_some_and(&is)).unwrap()
}
