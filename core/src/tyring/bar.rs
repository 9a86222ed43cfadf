//! The bar for a new tyre: π × (D + t) through the middle of its thickness, and beside it what smiths have printed.

use std::f64::consts::PI;

use super::refusal::Refusal;
use crate::quantity::circumference::{Circumference, Diameter};
use crate::quantity::length::{inches, to_paper_mm};
use crate::quantity::{Length, LengthRange};

/// How a rule gets from the ring to its bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rule {
    /// To the round on the inside come so many thicknesses, from the least to the most.
    Thicknesses(f64, f64),
    /// To the round on the inside come so many inches, from the least to the most: rough, to be trimmed once it is bent.
    Inches(f64, f64),
    /// Diameter and thickness together, times 3 1/7.
    ThreeAndASeventh,
    /// Three times the diameter, half an inch more for each foot of that, three thicknesses, and a third of one more.
    OldRing,
}

/// One rule and who gives it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Printed {
    /// The rule.
    pub rule: Rule,
    /// Who gives it, and of what.
    pub source: &'static str,
}

/// The rules, each for itself: no mean of them is a rule.
pub const PRINTED: [Printed; 8] = [
    Printed {
        rule: Rule::ThreeAndASeventh,
        source: "T. F. Googerty, Hand Forging and Wrought-Iron, p. 69, which adds ⅜ in for the weld of a small ring",
    },
    Printed {
        rule: Rule::Thicknesses(3.0, 3.0),
        source: "Wagon and carriage tires, an American smith's manual (freeblacksmith.com), and more for upsetting",
    },
    Printed {
        rule: Rule::Thicknesses(3.5, 3.75),
        source: "a carriage maker of today, the weld and its upsetting in it; no source in print",
    },
    Printed {
        rule: Rule::OldRing,
        source: "an old smith's rule for large rings, the weld in it; no source in print",
    },
    Printed {
        rule: Rule::Inches(3.0, 3.0),
        source: "J. G. Holmström, Modern Blacksmithing, 1901, a heavy tyre, rough",
    },
    Printed {
        rule: Rule::Inches(2.0, 2.0),
        source: "J. G. Holmström, Modern Blacksmithing, 1901, a thin tyre, rough",
    },
    Printed {
        rule: Rule::Inches(1.0, 2.0),
        source: "Wagon and carriage tires, an American smith's manual (freeblacksmith.com), rough",
    },
    Printed {
        rule: Rule::Inches(1.0, 1.0),
        source: "P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, Tyring Cart Wheels, rough; the figure is hard to read",
    },
];

impl Rule {
    /// The least and the most that it gives for a ring of this round on the inside, of iron so thick.
    ///
    /// # Errors
    ///
    /// [`Refusal::Given`] for a ring that no tyre is.
    pub fn bar(
        self,
        inside: Circumference,
        thickness: Length,
    ) -> Result<(Length, Length), Refusal> {
        let (inside, thickness) = (ring(inside)?, iron(thickness)?);
        let Diameter(across) = inside.across();
        Ok(match self {
            Rule::Thicknesses(least, most) => {
                (inside.0 + thickness * least, inside.0 + thickness * most)
            }
            Rule::Inches(least, most) => (inside.0 + inches(least), inside.0 + inches(most)),
            Rule::ThreeAndASeventh => twice((across + thickness) * (22.0 / 7.0)),
            Rule::OldRing => {
                let feet = to_paper_mm(across) / 304.8;
                twice((across + thickness) * 3.0 + inches(feet * 3.0 / 2.0) + thickness / 3.0)
            }
        })
    }
}

/// The bar that makes a tyre of this round on the inside, of iron so thick, and loses so much in its weld.
///
/// # Errors
///
/// [`Refusal::Given`] for a tyre that cannot be.
pub fn bar(inside: Circumference, thickness: Length, weld: Length) -> Result<Length, Refusal> {
    let weld = LengthRange::Draw.check(weld)?;
    Ok(ring(inside)?.0 + iron(thickness)? * PI + weld)
}

fn twice(length: Length) -> (Length, Length) {
    (length, length)
}

fn ring(inside: Circumference) -> Result<Circumference, Refusal> {
    Ok(Circumference(LengthRange::Round.check(inside.0)?))
}

fn iron(thickness: Length) -> Result<Length, Refusal> {
    Ok(LengthRange::TyreThickness.check(thickness)?)
}

#[cfg(test)]
mod tests;
