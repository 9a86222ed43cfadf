//! Speeds: of wind.

use uom::si::f64::Velocity;
use uom::si::velocity::meter_per_second;

/// So many metres a second.
#[must_use]
pub fn metres_per_second(v: f64) -> Velocity {
    Velocity::new::<meter_per_second>(v)
}
