//! Why a line is not one.

use std::fmt;

use crate::daybook::report::LONGEST_REPORT;

use super::{DEEPEST, LONGEST_LINE, MOST_REPLACED};

/// What is wrong with a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LineRefusal {
    /// It has this many bytes.
    TooLong(usize),
    /// It holds a line break.
    LineBreak,
    /// Its brackets are nested this deep.
    TooDeep(usize),
    /// It is not JSON; what the reader of JSON said.
    NotJson(String),
    /// This field stands twice in one object.
    Twice(String),
    /// It is JSON, but not an object.
    NotAnObject,
    /// A field that must be there is not.
    Missing(&'static str),
    /// A field is not of its form.
    Wrong {
        /// The field.
        field: &'static str,
        /// What it holds.
        given: String,
        /// What it may hold.
        allowed: &'static str,
    },
    /// It replaces this many entries.
    ReplacesTooMany(usize),
    /// It both says something and strikes out.
    SaysAndStrikes,
    /// It was to be written, and the text of its report has this many bytes.
    ReportTooLong(usize),
    /// It was to be written, and this version could not read it back.
    Unreadable,
}

/// The most characters of a wrong value that are shown back.
const SHOWN: usize = 40;

/// The first characters of what was given, so that a long one cannot fill the page.
fn start(given: &str) -> String {
    let mut shown: String = given.chars().take(SHOWN).collect();
    if shown.len() < given.len() {
        shown.push('…');
    }
    shown
}

impl fmt::Display for LineRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LineRefusal::TooLong(bytes) => write!(
                f,
                "the line has {bytes} bytes; at most {LONGEST_LINE} are allowed"
            ),
            LineRefusal::LineBreak => {
                write!(f, "the line holds a line break; an entry is one line")
            }
            LineRefusal::TooDeep(deep) => write!(
                f,
                "the line is nested {deep} deep; at most {DEEPEST} is allowed"
            ),
            LineRefusal::NotJson(what) => write!(f, "the line is not JSON: {what}"),
            LineRefusal::Twice(field) => write!(
                f,
                "the field “{}” stands twice; each may stand once",
                start(field)
            ),
            LineRefusal::NotAnObject => write!(
                f,
                "the line is JSON but not an object; an entry is one object"
            ),
            LineRefusal::Missing(field) => write!(f, "the field “{field}” is missing"),
            LineRefusal::Wrong {
                field,
                given,
                allowed,
            } => {
                write!(
                    f,
                    "the field “{field}” holds “{}”; allowed is {allowed}",
                    start(given)
                )
            }
            LineRefusal::ReplacesTooMany(count) => {
                write!(
                    f,
                    "the line replaces {count} entries; at most {MOST_REPLACED} are allowed"
                )
            }
            LineRefusal::SaysAndStrikes => write!(
                f,
                "the line both says something and strikes out; it may do one of them"
            ),
            LineRefusal::ReportTooLong(bytes) => write!(
                f,
                "the report has {bytes} bytes of text; at most {LONGEST_REPORT} are kept"
            ),
            LineRefusal::Unreadable => write!(
                f,
                "this version could not read the line back; only what it can read is written"
            ),
        }
    }
}
