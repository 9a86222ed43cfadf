//! How the reader likes lengths written, and whose trade words they speak.

use super::terms::{AMERICAN, BRITISH, Terms};
use crate::quantity::Length;
use crate::quantity::format::{FeelerStyle, LengthStyle, format_feeler, format_length};
use crate::quantity::spelling::BareUnit;
use crate::survey::{Pad, Question};

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

    /// American words with these ways to write lengths.
    #[must_use]
    pub fn american(length: LengthStyle, feeler: FeelerStyle) -> Style {
        Style {
            length,
            feeler,
            terms: &AMERICAN,
        }
    }

    /// The sentence with its trade words in the place of their names.
    #[must_use]
    pub fn fill(&self, sentence: &str) -> String {
        self.terms.fill(sentence)
    }

    /// A length that answers this question: what is typed is a size, what is felt for a gap.
    #[must_use]
    pub fn read(&self, question: Question, length: Length) -> String {
        match question.pad() {
            Pad::Size(_) => self.size(length),
            _ => self.gap(length),
        }
    }

    /// The unit of a length typed for this question without one.
    #[must_use]
    pub fn unit(&self, question: Question) -> BareUnit {
        match question.pad() {
            Pad::Size(_) => self.length.bare_unit(),
            _ => self.feeler.bare_unit(),
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

#[cfg(test)]
mod tests {
    use super::quarters;
    use crate::quantity::length::millimetres;
    use crate::words::sample::{inches, style};

    #[test]
    fn gaps_are_written_as_the_keys_are() {
        let gaps = [0.0, 0.25, 0.5, 0.75, 1.0, 1.5, 10.5, 0.3, 0.55, 2.25];
        let row = |gap: &f64| {
            let gap = millimetres(*gap);
            format!(
                "{} | {} | {}",
                style().gap(gap),
                inches().gap(gap),
                style().size(gap)
            )
        };
        insta::assert_snapshot!(gaps.iter().map(row).collect::<Vec<_>>().join("\n"), @r"
        0 mm | 0 thou | 0 mm
        ¼ mm | ≈ 10 thou | 0.25 mm
        ½ mm | ≈ 20 thou | 0.5 mm
        ¾ mm | ≈ 30 thou | 0.75 mm
        1 mm | ≈ 39 thou | 1 mm
        1½ mm | ≈ 59 thou | 1.5 mm
        10½ mm | ≈ 413 thou | 10.5 mm
        0.3 mm | ≈ 12 thou | 0.3 mm
        0.55 mm | ≈ 22 thou | 0.55 mm
        2¼ mm | ≈ 89 thou | 2.25 mm
        ");
        assert_eq!(inches().size(millimetres(1274.7625)), "50 3/16 in");
    }

    #[test]
    fn only_quarters_become_fractions() {
        assert_eq!(quarters("≈ 0.5 mm").as_deref(), Some("≈ ½ mm"));
        assert_eq!(quarters("100.25 mm").as_deref(), Some("100¼ mm"));
        for text in ["1 mm", "0.2 mm", "12 thou", ""] {
            assert_eq!(quarters(text), None, "{text}");
        }
    }
}
