//! A value that is assumed: the middle, and how low and how high it may be.

/// Which end of a spread is meant.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Level {
    /// The low end.
    Low,
    /// The middle.
    #[default]
    Middle,
    /// The high end.
    High,
}

/// The middle of a value, and how low and how high it may be; in the unit of whoever holds it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// The low end.
    pub low: f64,
    /// The middle.
    pub middle: f64,
    /// The high end.
    pub high: f64,
}

impl Spread {
    /// A value between two ends.
    #[must_use]
    pub const fn new(low: f64, middle: f64, high: f64) -> Spread {
        Spread { low, middle, high }
    }

    /// The value at one end or the middle.
    #[must_use]
    pub const fn at(self, level: Level) -> f64 {
        match level {
            Level::Low => self.low,
            Level::Middle => self.middle,
            Level::High => self.high,
        }
    }

    /// The spread at least as wide as this share of the middle to both sides.
    #[must_use]
    pub fn widened(self, share: f64) -> Spread {
        Spread {
            low: self.low.min(self.middle * (1.0 - share)),
            high: self.high.max(self.middle * (1.0 + share)),
            ..self
        }
    }
}
