//! Forces and stresses, and the doors through which plain numbers become one: newtons and megapascals.
//!
//! A force is not a stress:
//!
//! ```
//! use cartside_core::quantity::force::{Force, Stress, megapascals, newtons};
//! fn yields_at(stress: Stress) {}
//! yields_at(megapascals(235.0));
//! ```
//! ```compile_fail,E0308
//! use cartside_core::quantity::force::{Force, Stress, megapascals, newtons};
//! fn yields_at(stress: Stress) {}
//! yields_at(newtons(235.0));
//! ```

use std::marker::PhantomData;

use uom::si::force::newton;
use uom::si::pressure::megapascal;

/// A force of any unit.
pub type Force = uom::si::f64::Force;

/// A force on each part of a surface, of any unit; positive in tension where a sign is needed.
pub type Stress = uom::si::f64::Pressure;

/// A force from a number of newtons: a door for tables of constants.
#[must_use]
pub const fn newtons(v: f64) -> Force {
    Force {
        dimension: PhantomData,
        units: PhantomData,
        value: v,
    }
}

/// A stress from a number of megapascals, which are N/mm²: a door for tables of constants.
#[must_use]
pub const fn megapascals(v: f64) -> Stress {
    Stress {
        dimension: PhantomData,
        units: PhantomData,
        value: v * 1e6,
    }
}

/// The force in newtons: a door for a published formula.
#[must_use]
pub fn in_newtons(force: Force) -> f64 {
    force.get::<newton>()
}

/// The stress in megapascals, N/mm²: a door for a published formula.
#[must_use]
pub fn in_megapascals(stress: Stress) -> f64 {
    stress.get::<megapascal>()
}

#[cfg(test)]
mod tests {
    use uom::si::area::square_millimeter;
    use uom::si::f64::Area;
    use uom::si::force::kilonewton;

    use super::*;

    #[test]
    fn a_stress_on_a_section_is_a_force() {
        let force: Force = megapascals(235.0) * Area::new::<square_millimeter>(960.0);
        assert!((force.get::<kilonewton>() - 225.6).abs() < 1e-9);
        assert!((in_newtons(newtons(225_600.0)) - in_newtons(force)).abs() < 1e-6);
        assert!((in_megapascals(megapascals(235.0)) - 235.0).abs() < 1e-12);
    }
}
