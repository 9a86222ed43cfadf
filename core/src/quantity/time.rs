//! Spans of time, and the doors through which plain numbers become one.

use uom::si::time::second;

/// A span of time.
pub type Time = uom::si::f64::Time;

/// A span of so many seconds.
#[must_use]
pub fn seconds(v: f64) -> Time {
    Time::new::<second>(v)
}

/// How many seconds a span has.
#[must_use]
pub fn in_seconds(time: Time) -> f64 {
    time.get::<second>()
}
