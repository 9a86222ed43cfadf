//! A value that is assumed: low, middle and high, so that what rests on it is shown as far apart as the sources are.

/// Which end of a band is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// The least that is likely.
    Low,
    /// The value taken where one must be.
    Middle,
    /// The most that is likely.
    High,
}

impl End {
    /// Both ends and the middle, from low to high.
    pub const ALL: [End; 3] = [End::Low, End::Middle, End::High];
}

/// One value at its low end, in the middle and at its high end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band<T> {
    /// The least that is likely.
    pub low: T,
    /// The value taken where one must be.
    pub middle: T,
    /// The most that is likely.
    pub high: T,
}

impl<T: Copy> Band<T> {
    /// A value that nobody disputes.
    pub const fn certain(value: T) -> Band<T> {
        Band {
            low: value,
            middle: value,
            high: value,
        }
    }

    /// The value at this end.
    pub const fn at(&self, end: End) -> T {
        match end {
            End::Low => self.low,
            End::Middle => self.middle,
            End::High => self.high,
        }
    }
}

impl<T: Copy + PartialOrd> Band<T> {
    /// Makes the band wide enough for this value.
    pub(crate) fn take(&mut self, value: T) {
        if value < self.low {
            self.low = value;
        }
        if value > self.high {
            self.high = value;
        }
    }
}

impl Band<f64> {
    /// A value between two others: a door for tables of constants.
    #[must_use]
    pub const fn new(low: f64, middle: f64, high: f64) -> Band<f64> {
        Band { low, middle, high }
    }

    /// The band at least as wide as this share of the middle to both sides.
    #[must_use]
    pub fn widened(mut self, share: f64) -> Band<f64> {
        self.take(self.middle * (1.0 - share));
        self.take(self.middle * (1.0 + share));
        self
    }
}
