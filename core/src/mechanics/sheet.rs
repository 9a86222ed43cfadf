//! How far what is assumed moves the answer: the corners of the four assumptions that move it most.

use super::assumed::{Assumption, Corner};
use super::build::Build;
use super::fit::{Fit, Fitting, fit_checked};
use super::refusal::FitRefusal;
use crate::quantity::circumference::Draw;
use crate::quantity::{Band, End, Force, Length};

/// How many assumptions are taken at both ends together.
pub const LEADING: usize = 4;

/// The four assumptions that move an answer most, the widest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Leading(pub [Assumption; LEADING]);

impl Leading {
    /// Tries each assumption alone at both ends, and keeps the four by which the answer moves most.
    pub(super) fn of(answer: &dyn Fn(&Corner) -> f64) -> Leading {
        let middle = answer(&Corner::default());
        let swing = |assumption| {
            let at = |level| answer(&Corner::default().with(assumption, level));
            let (low, high) = (at(End::Low), at(End::High));
            low.max(high).max(middle) - low.min(high).min(middle)
        };
        let mut all = Assumption::ALL.map(|assumption| (swing(assumption), assumption));
        all.sort_unstable_by(|(one, _), (other, _)| other.total_cmp(one));
        let [(_, first), (_, second), (_, third), (_, fourth), ..] = all;
        Leading([first, second, third, fourth])
    }

    /// Calls with each corner of the four: sixteen.
    pub(super) fn each_corner(&self, visit: &mut dyn FnMut(&Corner)) {
        for bits in 0..1_u8 << LEADING {
            let mut corner = Corner::default();
            for (at, assumption) in self.0.into_iter().enumerate() {
                let level = if bits >> at & 1 == 0 {
                    End::Low
                } else {
                    End::High
                };
                corner = corner.with(assumption, level);
            }
            visit(&corner);
        }
    }

    /// The assumption that moves the answer most.
    #[must_use]
    pub fn widest(&self) -> Assumption {
        let [widest, ..] = self.0;
        widest
    }
}

/// One fit with its bands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// With the middle of all that is assumed.
    pub middle: Fit,
    /// Pull in the tyre.
    pub grip: Band<Force>,
    /// Push of one spoke.
    pub spoke: Band<Force>,
    /// How much dish the wheel gains: at the corners of the four assumptions that move this most, which are others.
    pub dish: Band<Length>,
    /// How much longer round the tyre becomes for good.
    pub stretched: Band<Length>,
    /// How near the worst part is to giving.
    pub worst: Band<f64>,
    /// What moves the grip most.
    pub leading: Leading,
    /// The grip with the draw at the low and the high end of its own doubt, everything else at its middle.
    pub measured: [Force; 2],
}

/// One fit with its bands.
///
/// # Errors
///
/// Whatever [`Build::check`] and [`Fitting::check`] refuse.
pub fn sheet(build: &Build, fitting: &Fitting) -> Result<Sheet, FitRefusal> {
    build.check()?;
    fitting.check(build)?;
    let at = |corner: &Corner| fit_checked(build, fitting, corner);
    let leading = Leading::of(&|corner| at(corner).grip.value);
    let middle = at(&Corner::default());
    let mut sheet = Sheet {
        middle,
        grip: Band::certain(middle.grip),
        spoke: Band::certain(middle.spoke),
        dish: Band::certain(middle.dish),
        stretched: Band::certain(middle.stretched),
        worst: Band::certain(middle.pressed.worst().1),
        leading,
        measured: [-1.0, 1.0].map(|side| {
            let draw = Draw(fitting.draw.0 + fitting.doubt * side);
            fit_checked(build, &Fitting { draw, ..*fitting }, &Corner::default()).grip
        }),
    };
    leading.each_corner(&mut |corner| {
        let fit = at(corner);
        sheet.grip.take(fit.grip);
        sheet.spoke.take(fit.spoke);
        sheet.stretched.take(fit.stretched);
        sheet.worst.take(fit.pressed.worst().1);
    });
    let dishes = Leading::of(&|corner| at(corner).dish.value);
    dishes.each_corner(&mut |corner| sheet.dish.take(at(corner).dish));
    Ok(sheet)
}
