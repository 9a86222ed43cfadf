//! How one entry stands in its thread: whether it counts, and if not, why not.

use cartside_core::daybook::{Entry, Thread};

use crate::correction::Correction;

/// How an entry stands in its thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It counts.
    Counts,
    /// It is one side of a dispute.
    Disputed,
    /// It was the last to say something, and is struck out.
    Struck,
    /// It strikes out others.
    Strikes,
    /// A later entry stands in its place.
    Replaced,
}

impl Fate {
    /// How this entry of the thread stands.
    pub fn of(thread: &Thread<'_>, entry: &Entry) -> Fate {
        let head = thread.heads().iter().any(|head| head.id == entry.id);
        let last = thread.last_said().is_some_and(|said| said.id == entry.id);
        match head {
            true if thread.disputed() => Fate::Disputed,
            true if entry.strikes() => Fate::Strikes,
            true => Fate::Counts,
            false if last && thread.struck() => Fate::Struck,
            false => Fate::Replaced,
        }
    }

    /// The word that stands for it in the state of a page.
    pub fn code(self) -> &'static str {
        match self {
            Fate::Counts => "counts",
            Fate::Disputed => "disputed",
            Fate::Struck => "struck",
            Fate::Strikes => "strikes",
            Fate::Replaced => "replaced",
        }
    }

    /// What is said of it beside the entry; empty of one that counts.
    pub fn words(self) -> &'static str {
        match self {
            Fate::Counts | Fate::Strikes => "",
            Fate::Disputed => "in dispute",
            Fate::Struck => "struck out",
            Fate::Replaced => "replaced by a later entry",
        }
    }

    /// Whether its words are shown struck through.
    pub fn gone(self) -> bool {
        matches!(self, Fate::Struck | Fate::Replaced)
    }

    /// What can be done to it with one key; the sides of a dispute are settled where they stand beside each other.
    pub fn correction(self) -> Option<Correction> {
        match self {
            Fate::Counts => Some(Correction::StrikeOut),
            Fate::Struck | Fate::Strikes => Some(Correction::BringBack),
            Fate::Disputed | Fate::Replaced => None,
        }
    }
}
