//! A share of a whole, in hundredths: 0 to 100, kept to two decimals.

/// A share of a whole, 0 to 100 hundredths of it.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Percent(f64);

impl Percent {
    /// The share of this many hundredths, to two decimals; `None` for what is not from 0 to 100.
    #[must_use]
    pub fn new(hundredths: f64) -> Option<Percent> {
        (0.0..=100.0)
            .contains(&hundredths)
            .then(|| Percent((hundredths * 100.0).round() / 100.0 + 0.0))
    }

    /// How many hundredths.
    #[must_use]
    pub fn value(self) -> f64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::Percent;

    #[test]
    fn a_share_lies_from_nought_to_a_hundred() {
        for (given, kept) in [
            (0.0, 0.0),
            (12.5, 12.5),
            (12.346, 12.35),
            (99.999, 100.0),
            (100.0, 100.0),
        ] {
            assert_eq!(Percent::new(given).unwrap().value(), kept);
        }
        assert!(Percent::new(-0.0).unwrap().value().is_sign_positive());
        for given in [-0.01, 100.01, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(Percent::new(given), None, "{given}");
        }
    }
}
