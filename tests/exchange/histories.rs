//! Histories of three devices: whoever hears of what first, and by which clock, in the end all have the same book.

use std::num::NonZero;
use std::thread;

use cartside_core::daybook::Book;

use crate::devices::{DEVICES, History};
use crate::told::{Told, Words};

/// The seed of the first history; each further one takes the next.
const FIRST_SEED: u64 = 0x0CA7_51DE;

/// How many histories: 10 000, or as many as `CARTSIDE_HISTORIES` says.
fn histories() -> u64 {
    let said = std::env::var("CARTSIDE_HISTORIES");
    said.map_or(10_000, |said| {
        said.parse().expect("CARTSIDE_HISTORIES is a number")
    })
}

/// How many things are done in the history of this seed: few, so that there can be many, and at times more.
fn steps(seed: u64) -> usize {
    match seed % 32 {
        0 => 30,
        few => 1 + (few % 6) as usize,
    }
}

/// What the devices disagree about, if they do.
fn fault(seed: u64) -> Option<String> {
    let mut history = History::of(seed, steps(seed));
    history.bring_together();
    let afresh = history.read_afresh();
    let expected = Told::of(&afresh);
    if expected.ids.len() != history.written.len() {
        let (read, written) = (expected.ids.len(), history.written.len());
        return Some(format!("seed {seed}: {read} of {written} lines"));
    }
    let mut books: Vec<&Book> = history.devices.iter().map(|device| &device.book).collect();
    // Every fiftieth goes through a whole file as well, which takes longer.
    let carried = seed.is_multiple_of(50).then(|| history.carried());
    books.extend(&carried);
    let differs = books
        .iter()
        .map(|book| Told::of(book))
        .find(|told| *told != expected);
    if let Some(told) = differs {
        return Some(format!(
            "seed {seed}: {told:#?}\nis not as read afresh: {expected:#?}"
        ));
    }
    // Putting a book into words takes longest, so every fourth has its turn, and one device of it.
    if !seed.is_multiple_of(4) {
        return None;
    }
    let device = (seed / 4 % DEVICES as u64) as usize;
    let (ours, theirs) = (Words::of(books[device]), Words::of(&afresh));
    (ours != theirs).then(|| format!("seed {seed}: {ours:#?}\nis not as read afresh: {theirs:#?}"))
}

#[test]
fn three_devices_end_with_the_same_book() {
    let histories = histories();
    let threads = thread::available_parallelism().map_or(1, NonZero::get) as u64;
    let share = |first: u64| {
        move || {
            (first..histories)
                .step_by(threads as usize)
                .find_map(|n| fault(FIRST_SEED + n))
        }
    };
    let running: Vec<_> = (0..threads)
        .map(|first| thread::spawn(share(first)))
        .collect();
    for run in running {
        if let Some(fault) = run.join().expect("no history panics") {
            panic!("{fault}");
        }
    }
}
