//! What timber bears at an angle to its grain, and how much less when it is wet.

use crate::material::moisture::MoistureContent;
use crate::quantity::sine::sine;

/// The square of the sine of an angle in radians.
#[must_use]
pub fn sin_squared(angle: f64) -> f64 {
    let sine = sine(angle);
    sine * sine
}

/// What is borne at an angle to the grain whose sine squared is given: R. L. Hankinson, *Investigation of crushing
/// strength of spruce at varying angles of grain* (Air Service Information Circular 259, 1921), with the exponent 2.
#[must_use]
pub fn hankinson(along: f64, across: f64, sin_squared: f64) -> f64 {
    along * across / (along * sin_squared + across * (1.0 - sin_squared))
}

/// At this moisture, in percent, strength stops falling: the *Wood Handbook*, chapter 5, takes 25 for most kinds.
const NO_WEAKER: f64 = 25.0;
/// The natural logarithm of how much stronger hardwoods are at 12 % than green. The *Wood Handbook*, Table 5-3 (green
/// values from memory), gives 1.6 to 2.1 across the grain and 1.9 to 2.1 along it for the American timbers here.
const STRONGER: f64 = 0.63;

/// How much stronger wood of this moisture is than at 12 %: the *Wood Handbook*'s equation 5-3,
/// P = P₁₂ (P₁₂ / P_green)^((12 − M) / (M_p − 12)), within ½ %; below 4 % as at 4 %.
#[must_use]
pub fn drier_is_stronger(moisture: MoistureContent) -> f64 {
    let share = (12.0 - moisture.percent().clamp(4.0, NO_WEAKER)) / (NO_WEAKER - 12.0);
    // A power of e by five squarings: the library's weighs more of the download than it gives.
    let mut power = 1.0 + STRONGER * share / 32.0;
    for _ in 0..5 {
        power *= power;
    }
    power
}
