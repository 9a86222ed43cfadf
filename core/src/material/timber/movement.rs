//! How wood changes its size with its moisture, in one direction of the grain.

use super::Species;
use crate::material::moisture::MoistureContent;
use crate::quantity::Strain;
use crate::quantity::{Band, End};

/// Above it wood swells no further, in percent: *Wood Handbook*, chapter 4, takes 30; others 25 to 32.
const SATURATED: f64 = 30.0;
/// Between these, in percent, size goes straight with moisture: *Wood Handbook*, equation 13-2.
const STRAIGHT: [f64; 2] = [6.0, 14.0];

/// How wood moves in one direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Movement {
    /// Shrinkage from green to bone dry, in percent.
    shrinkage: f64,
    /// Change of size for each percent of moisture from 6 to 14 %.
    coefficient: f64,
}

/// The change for each percent that this shrinkage stands for: equation 13-3 about 10 %. It gives what Table 13-5
/// prints for single kinds to its last digit; for oaks and hickories that table has means of groups.
fn coefficient(shrinkage: f64) -> f64 {
    shrinkage / 3000.0 / (1.0 - shrinkage / 150.0)
}

impl Species {
    /// How it moves across the grain, radially.
    #[must_use]
    pub fn radial(self, level: End) -> Movement {
        let row = self.row();
        Movement::new(row.radial, level, row.printed.map(|[radial, _]| radial))
    }

    /// How it moves across the grain, tangentially.
    #[must_use]
    pub fn tangential(self, level: End) -> Movement {
        let row = self.row();
        let printed = row.printed.map(|[_, tangential]| tangential);
        Movement::new(row.tangential, level, printed)
    }

    /// How it moves across the grain where nobody knows how the piece was cut: radially at the low end,
    /// tangentially at the high one, half-way in the middle.
    #[must_use]
    pub fn across(self, level: End) -> Movement {
        match level {
            End::Low => self.radial(End::Low),
            End::High => self.tangential(End::High),
            End::Middle => {
                let (one, other) = (self.radial(level), self.tangential(level));
                Movement {
                    shrinkage: (one.shrinkage + other.shrinkage) / 2.0,
                    coefficient: (one.coefficient + other.coefficient) / 2.0,
                }
            }
        }
    }

    /// How it moves along the grain.
    #[must_use]
    pub fn along(self, level: End) -> Movement {
        Movement::new(self.row().along, level, None)
    }
}

impl Movement {
    fn new(shrinkage: Band<f64>, level: End, printed: Option<f64>) -> Movement {
        let at = shrinkage.at(level);
        Movement {
            shrinkage: at,
            coefficient: printed.map_or(coefficient(at), |it| it * at / shrinkage.middle),
        }
    }

    /// Of wood with such a change for each percent: a door for what is printed.
    #[must_use]
    pub fn printed(shrinkage: f64, coefficient: f64) -> Movement {
        Movement {
            shrinkage,
            coefficient,
        }
    }

    /// Of wood that shrinks so much from green to bone dry, in percent.
    #[must_use]
    pub fn of_shrinkage(shrinkage: f64) -> Movement {
        Movement::printed(shrinkage, coefficient(shrinkage))
    }

    /// What the size changes by between two moistures, positive where it grows: the *Wood Handbook*'s equation 13-2
    /// from 6 to 14 %, and 13-3 outside. A change that runs through both is the sum of its pieces, where the
    /// handbook takes 13-3 for the whole: so no size jumps at 6 or 14 %. Past 30 % nothing moves.
    #[must_use]
    pub fn between(self, from: MoistureContent, to: MoistureContent) -> Strain {
        let straight = self.since_ten(to.percent()) - self.since_ten(from.percent());
        Strain::of(straight + self.past_ends(from, to))
    }

    /// The part of a change that is straight, counted from 10 %.
    fn since_ten(self, percent: f64) -> f64 {
        self.coefficient * (percent.clamp(STRAIGHT[0], STRAIGHT[1]) - 10.0)
    }

    /// The parts below 6 % and above 14 %.
    fn past_ends(self, from: MoistureContent, to: MoistureContent) -> f64 {
        let (from, to) = (from.percent().min(SATURATED), to.percent().min(SATURATED));
        let below = self.curved(from.min(STRAIGHT[0]), to.min(STRAIGHT[0]));
        below + self.curved(from.max(STRAIGHT[1]), to.max(STRAIGHT[1]))
    }

    /// Equation 13-3.
    fn curved(self, from: f64, to: f64) -> f64 {
        (to - from) / (SATURATED * 100.0 / self.shrinkage - SATURATED + from)
    }
}
