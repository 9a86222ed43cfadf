//! What stands in `READ-ME.txt`: what the file is, for somebody who opens it without Cartside.

use super::What;
use crate::wording::counted;

/// The text, with line ends that every computer's plainest reader knows.
pub(super) fn read_me(what: &What, made_at: &str, entries: usize, pictures: usize) -> String {
    let entries = counted(entries, "entry", "entries");
    let pictures = counted(pictures, "picture", "pictures");
    let lines = [
        format!("{}, carried out of Cartside.", portion(what)),
        format!("Made {made_at}, by the clock of the device it was made on."),
        format!("It holds {entries} and {pictures}."),
        String::new(),
        "To have it on another device: open Cartside there, choose \"Bring in\", and choose this file.".to_owned(),
        "It adds what is not there yet and changes nothing that is. Bringing it in twice adds nothing.".to_owned(),
        String::new(),
        "entries.jsonl  the day book itself: one entry a line, as it was written. Do not edit it.".to_owned(),
        "pictures       the pictures, each named by the SHA-256 of its bytes.".to_owned(),
        "readings.csv   the readings once more, for a spreadsheet. It is never read back.".to_owned(),
        "manifest.json  what the file is, and the size and SHA-256 of everything in it.".to_owned(),
        String::new(),
        "No reading and no standing in it is leave to load, to carry people or to go on a road.".to_owned(),
    ];
    lines.map(|line| line + "\r\n").concat()
}

fn portion(what: &What) -> &'static str {
    match what {
        What::Book => "A wheelwright's day book",
        What::Vehicle(_) => "One vehicle of a wheelwright's day book",
        What::NewFor(_) => "What was new in a wheelwright's day book for another device",
    }
}
