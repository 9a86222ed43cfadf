//! The scribe: turns what is to be said into lines of the book, one step at a time, so that all of a
//! step is saved together. Nothing is stored here.

use cartside_core::daybook::book::next_n;
use cartside_core::daybook::{Digest, Entry, EntryId, Hand, Stamp, Unwritten};
use cartside_core::paper::line;

use crate::clock;
use crate::storage::{NewLine, NewPicture};

/// One step being written.
pub struct Scribe {
    /// Who writes.
    pub by: String,
    device: String,
    n: u64,
    /// The lines so far.
    pub lines: Vec<NewLine>,
    /// The entries so far, as they read.
    pub entries: Vec<Entry>,
    /// Pictures to keep with them.
    pub pictures: Vec<NewPicture>,
    /// Drafts this step takes up.
    pub drop_drafts: Vec<String>,
    /// Pictures whose bytes go with this step.
    pub erase_pictures: Vec<Digest>,
}

impl Scribe {
    /// A scribe for this person and device, in a book whose greatest counter is `greatest`.
    pub fn new(by: String, device: String, greatest: u64) -> Scribe {
        Scribe {
            by,
            device,
            n: next_n(greatest),
            lines: Vec::new(),
            entries: Vec::new(),
            pictures: Vec::new(),
            drop_drafts: Vec::new(),
            erase_pictures: Vec::new(),
        }
    }

    /// Writes one entry down and gives the id it will have in the book.
    ///
    /// # Errors
    /// What could not be read back, in a sentence: text too long, or a clock that gives no time.
    pub fn write(&mut self, entry: &Unwritten) -> Result<EntryId, String> {
        let at = clock::now();
        let at = Stamp::read(&at).ok_or_else(|| {
            format!("This device's clock gave “{at}”, which is no time. Nothing was saved; set the clock and try again.")
        })?;
        let hand = Hand {
            by: self.by.clone(),
            device: self.device.clone(),
            at,
            n: self.n,
        };
        let refused = |refusal| {
            format!(
                "This cannot be written down: {refusal}. Nothing was saved; what was there before is kept."
            )
        };
        let line = line::write(entry, &hand).map_err(refused)?;
        let entry = line::read(&line).map_err(refused)?;
        let id = entry.id;
        self.n = next_n(self.n);
        self.lines.push(new_line(&entry, line));
        self.entries.push(entry);
        Ok(id)
    }
}

/// A line with what the store looks it up by.
pub fn new_line(entry: &Entry, line: String) -> NewLine {
    use cartside_core::daybook::Subject;
    let vehicle = match entry.subject() {
        Subject::Vehicle(id) => id.hex(),
        Subject::House => crate::storage::HOUSE.to_owned(),
    };
    NewLine {
        id: entry.id.hex(),
        vehicle,
        n: entry.n,
        line,
    }
}
