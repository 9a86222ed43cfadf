//! A report handed over: what the owner was told is a fact, so its text is kept as it was.

/// The slot of reports handed over.
pub const SLOT: &str = "vehicle/report";

/// The most bytes the text of a report may have to be written; a line holds more, but not much.
pub const LONGEST_REPORT: usize = 40 * 1024;

/// A report that was handed over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Report {
    /// The whole report as plain text.
    pub text: String,
    /// Whom it was handed to; may be empty.
    pub to: String,
    /// The version of this core that worked it out.
    pub core: String,
}
