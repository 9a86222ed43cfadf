//! A share of a whole in hundredths of a percent: how worn a pin is, how moist the wood.

use super::decimal::decimal;
use super::refusal::Refusal;

/// Hundredths of a percent in the whole.
const WHOLE: u16 = 10_000;

/// A share from 0 % to 100 %, to two decimals. It is held as whole hundredths of a percent, so that
/// paper to share to paper changes nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Percent(u16);

impl Percent {
    /// So many whole percent, 100 at most: a door for tables of constants.
    #[must_use]
    pub const fn whole(percent: u8) -> Percent {
        let percent = if percent > 100 { 100 } else { percent };
        Percent(percent as u16 * 100)
    }

    /// The share that stands on paper as `v` percent, rounded to two decimals.
    ///
    /// # Errors
    ///
    /// [`Refusal::NoShare`] when `v` is not a number from 0 to 100.
    pub fn from_paper(v: f64) -> Result<Percent, Refusal> {
        if (0.0..=100.0).contains(&v) {
            Ok(Percent((v * 100.0).round() as u16))
        } else {
            Err(Refusal::NoShare {
                given: decimal(v, 6),
            })
        }
    }

    /// The share as it stands on paper, in percent with two decimals.
    #[must_use]
    pub fn to_paper(self) -> f64 {
        f64::from(self.0) / 100.0
    }

    /// The share as a part of one.
    #[must_use]
    pub fn of_one(self) -> f64 {
        f64::from(self.0) / f64::from(WHOLE)
    }

    /// Reads `12`, `12.5`, `12,5` or `12½`, with or without a percent sign.
    ///
    /// # Errors
    ///
    /// [`Refusal::Empty`] or [`Refusal::NoShare`].
    pub fn parse(text: &str) -> Result<Percent, Refusal> {
        let text = text.trim();
        if text.is_empty() {
            return Err(Refusal::Empty);
        }
        let refused = || Refusal::NoShare {
            given: text.chars().take(40).collect(),
        };
        let number = text.trim_end_matches('%').trim_end();
        let number = number.replace(',', ".").replace('½', ".5");
        let v = read(&number).ok_or_else(refused)?;
        Percent::from_paper(v).map_err(|_| refused())
    }
}

/// Digits with at most one dot among them; six behind it are more than a share keeps.
fn read(text: &str) -> Option<f64> {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let digits = format!("{whole}{part:0<6.6}");
    let plain = whole.len() + part.len() > 0 && digits.bytes().all(|b| b.is_ascii_digit());
    let digits: u64 = digits.parse().ok().filter(|_| plain)?;
    Some(digits as f64 / 1e6)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn a_share_is_read_as_it_is_written() {
        for (text, paper) in [
            ("12", 12.0),
            ("12.5 %", 12.5),
            (" 12,57% ", 12.57),
            ("½", 0.5),
            ("12½ %", 12.5),
            ("0", 0.0),
            ("100 %", 100.0),
        ] {
            assert_eq!(Percent::parse(text).map(Percent::to_paper), Ok(paper));
        }
    }

    #[test]
    fn what_is_no_share_is_refused_with_what_was_given() {
        assert_eq!(Percent::parse(" "), Err(Refusal::Empty));
        for text in ["-1", "100.01", "1e1", "inf", "nan", "a", "1.2.3", "%", "+5"] {
            assert!(
                matches!(Percent::parse(text), Err(Refusal::NoShare { .. })),
                "{text}"
            );
        }
        for v in [-0.01, 100.001, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(Percent::from_paper(v).is_err(), "{v}");
        }
        insta::assert_snapshot!(Percent::parse("130 %").unwrap_err(), @"“130 %” was given, and a share may be from 0 % to 100 %; nothing was changed.");
    }

    #[test]
    fn whole_percents_end_at_a_hundred() {
        assert_eq!(Percent::whole(25).of_one(), 0.25);
        assert_eq!(Percent::whole(200), Percent::whole(100));
    }

    proptest! {
        #[test]
        fn paper_keeps_each_hundredth(n in 0_u16..=10_000) {
            let paper = f64::from(n) / 100.0;
            let share = Percent::from_paper(paper).unwrap();
            prop_assert_eq!(share.to_paper(), paper);
            prop_assert_eq!(Percent::parse(&paper.to_string()), Ok(share));
        }

        #[test]
        fn no_text_brings_the_reader_down(text in any::<String>()) {
            let _ = Percent::parse(&text);
        }
    }
}
