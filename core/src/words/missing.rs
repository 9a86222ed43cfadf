//! What is still to be recorded before a wheel is judged.

use super::need::need;
use super::place::places;
use super::style::Style;
use crate::diagnosis::{Missing, questions};
use crate::wheel::Wheel;

/// One thing that is missing, as a sentence.
#[must_use]
pub fn missing(missing: &Missing, wheel: &Wheel, style: Style) -> String {
    let what = need(missing.need, style);
    if questions(missing.need).is_empty() {
        format!(
            "Still to be recorded: {what}. No page takes it yet; a remark can hold it, and the wheel stays not judged."
        )
    } else if missing.places.is_empty() {
        format!("Still to be recorded: {what}.")
    } else {
        format!(
            "Still to be recorded: {what}. Left: {}.",
            places(&missing.places, wheel, style)
        )
    }
}
