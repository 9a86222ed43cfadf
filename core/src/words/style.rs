//! How the reader likes lengths written, and whose trade words they speak.

use super::terms::{BRITISH, Terms};
use crate::quantity::Length;
use crate::quantity::format::{FeelerStyle, LengthStyle, format_feeler, format_length};

/// What a reader prefers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// For sizes of wheel and tyre.
    pub length: LengthStyle,
    /// For gaps and play.
    pub feeler: FeelerStyle,
    /// The words of the trade.
    pub terms: &'static Terms,
}

impl Style {
    /// British words with these ways to write lengths.
    #[must_use]
    pub fn british(length: LengthStyle, feeler: FeelerStyle) -> Style {
        Style {
            length,
            feeler,
            terms: &BRITISH,
        }
    }

    /// A size of wheel or tyre: `1275 mm` or `50 3/16 in`.
    #[must_use]
    pub fn size(&self, length: Length) -> String {
        format_length(length, self.length).text
    }

    /// A gap or a play, with the fractions that stand on the keys: `½ mm` or `12 thou`.
    #[must_use]
    pub fn gap(&self, gap: Length) -> String {
        let text = format_feeler(gap, self.feeler).text;
        quarters(&text).unwrap_or(text)
    }
}

impl Default for Style {
    /// Millimetres throughout, in British words.
    fn default() -> Style {
        Style::british(LengthStyle::Millimetres, FeelerStyle::Millimetres)
    }
}

/// `0.5 mm` as `½ mm`; `None` where the decimals are no quarter.
fn quarters(text: &str) -> Option<String> {
    let (whole, decimals) = text.strip_suffix(" mm")?.split_once('.')?;
    let fraction = match decimals {
        "25" => "¼",
        "5" => "½",
        "75" => "¾",
        _ => return None,
    };
    let whole = whole
        .strip_suffix('0')
        .filter(|rest| !rest.ends_with(|c: char| c.is_ascii_digit()))
        .unwrap_or(whole);
    Some(format!("{whole}{fraction} mm"))
}
