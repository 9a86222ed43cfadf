//! A tyre through the year: how hard it grips in each month, and how much draw is neither slack in the driest nor too
//! much in the wettest.
//!
//! Wood that was crushed in the wettest month stays crushed, so every month is reckoned as it is after the first whole
//! year. Thick timber follows the air late and by a part only; the lateness is left out, so that a month here is the
//! season of that name and not its weeks.

use std::f64::consts::TAU;

use super::assumed::{Assumption, Corner};
use super::build::Build;
use super::fit::{Fit, Fitting, most_draw};
use super::gives::Gives;
use super::moved::{Damp, Lost};
use super::refusal::FitRefusal;
use super::sheet::Leading;
use super::springs::Springs;
use super::stiffness::{Stiffness, mm};
use super::year::Year;
use crate::quantity::circumference::Draw;
use crate::quantity::length::millimetres;
use crate::quantity::{Band, Force, Length};

/// How much of the air's swing through the year the timber makes: rim and spokes, and the nave. Assumed, from the
/// time that water takes through 30 mm of oak and through 150 mm of elm at about 10⁻¹⁰ m²/s; paint slows it further.
const RIM_FOLLOWS: Band<f64> = Band::new(0.6, 0.85, 1.0);
const NAVE_FOLLOWS: Band<f64> = Band::new(0.1, 0.3, 0.6);

/// How far shoulders may sink in for good (house). Wood is tested across its grain to a tenth of an inch: ASTM D143
/// (from memory).
const MAY_SINK: f64 = 2.54;
/// How much dish may be gained, as a part of the dish, and always this much in millimetres (house).
const MAY_DISH: [f64; 2] = [1.0 / 3.0, 5.0];

/// One month.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Month {
    /// Pull in the tyre.
    pub grip: Band<Force>,
    /// Push of one spoke on the rim.
    pub spoke: Band<Force>,
    /// How far the shoulders stand off.
    pub off: Band<Length>,
    /// How much longer round the tyre is than the wheel.
    pub slack: Band<Length>,
}

/// What sets the most draw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Harm {
    /// A part crushes or bends too far.
    Part(Gives),
    /// Shoulders sink in too far.
    Sinks,
    /// The wheel gains too much dish.
    Dishes,
}

/// How much draw suits the year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The least that still grips in the driest month; nothing where no draw does.
    pub least: Option<Draw>,
    /// The most that does no harm in the wettest month; nothing where the least draw does harm.
    pub most: Option<Draw>,
    /// What sets the most.
    pub harm: Harm,
    /// The greatest least and the least most of all corners of what is assumed; nothing where one of them has none.
    corners: [Option<Draw>; 2],
}

/// What would make a range where there is none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Helps {
    /// A place where the air's moisture, in points of wood, swings by no more than this from driest to wettest.
    Steadier(f64),
    /// A tyre of this thickness, which gives more.
    Thinner(Length),
    /// Neither: the wheel itself does not bear a tyre as it stands.
    Neither,
}

/// A tyre through the year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Season {
    /// Each month, January first.
    pub months: [Month; 12],
    /// The driest and the wettest, January being 0.
    pub driest_and_wettest: [usize; 2],
    /// How much draw suits the year.
    pub range: Range,
    /// What would make a range where there is none.
    pub helps: Option<Helps>,
    /// What moves the answer most.
    pub leading: Leading,
}

impl Range {
    /// The range with the middle of all that is assumed, where there is one.
    #[must_use]
    pub fn likely(&self) -> Option<[Draw; 2]> {
        ordered([self.least, self.most])
    }

    /// The range that holds at every corner of what is assumed, where there is one.
    #[must_use]
    pub fn sure(&self) -> Option<[Draw; 2]> {
        ordered(self.corners)
    }

    fn take(&mut self, corner: &Range) {
        let [least, most] = &mut self.corners;
        *least = least
            .zip(corner.least)
            .map(|(one, other)| if one < other { other } else { one });
        *most = most
            .zip(corner.most)
            .map(|(one, other)| if one < other { one } else { other });
    }
}

fn ordered([least, most]: [Option<Draw>; 2]) -> Option<[Draw; 2]> {
    let (least, most) = (least?, most?);
    (least <= most).then_some([least, most])
}

/// A wheel at one corner: fresh under its tyre, and in each month.
struct Through<'b> {
    build: &'b Build,
    fitting: Fitting,
    corner: Corner,
    fresh: Stiffness,
}

impl Through<'_> {
    fn of(build: &Build, fitting: Fitting, corner: Corner) -> Through<'_> {
        let moisture = fitting.moisture;
        let fresh = Stiffness::of(build, &corner, moisture, moisture);
        Through {
            build,
            fitting,
            corner,
            fresh,
        }
    }

    /// Moisture of the wheel in one month of the year.
    fn damp(&self, year: &Year, month: usize) -> Damp {
        let level = self.corner.of(Assumption::Following);
        let mean = year.mean();
        let moisture = year.0.get(month).copied().unwrap_or(self.fitting.moisture);
        let away = moisture.percent() - mean;
        let follows = |spread: Band<f64>| moisture.shifted(away * (spread.at(level) - 1.0));
        Damp {
            nave: follows(NAVE_FOLLOWS),
            rim: follows(RIM_FOLLOWS),
        }
    }

    fn at(&self, damp: Damp) -> (Stiffness, Lost) {
        let from = Damp::even(self.fitting.moisture);
        (
            Stiffness::of(self.build, &self.corner, damp.rim, damp.nave),
            Lost::of(self.build, &self.corner, from, damp),
        )
    }

    /// The springs with this draw, as the fitting has left them.
    fn fitted(&self, draw: Draw) -> Springs {
        let springs = self.fresh.springs(
            &Fitting {
                draw,
                ..self.fitting
            },
            &self.corner,
        );
        springs.after(springs.balance())
    }

    /// What has given stays so, and the parts are those of another moisture.
    fn then(&self, before: &Springs, (wheel, lost): &(Stiffness, Lost)) -> Springs {
        let mut now = wheel.springs(&self.fitting, &self.corner);
        now.tyre = before.tyre;
        now.rim.set = before.rim.set;
        now.spokes.set = before.spokes.set;
        lost.moves(self.build, now)
    }
}

/// A tyre through the year, with its bands.
///
/// # Errors
///
/// Whatever [`Build::check`] and [`Fitting::check`] refuse.
pub fn season(build: &Build, fitting: &Fitting, year: &Year) -> Result<Season, FitRefusal> {
    build.check()?;
    fitting.check(build)?;
    let ends = year.driest_and_wettest();
    let at = |corner: &Corner| Through::of(build, *fitting, *corner);
    let leading = Leading::of(&|corner| {
        let [dry, wet] = at(corner).ends(year, ends, fitting.draw);
        dry.0.grip.value + wet.0.grip.value
    });
    let middle = at(&Corner::default());
    let mut months = middle.months(year, ends).map(Month::of);
    let mut range = middle.range(year, ends);
    leading.each_corner(&mut |corner| {
        let through = at(corner);
        for (month, fit) in months.iter_mut().zip(through.months(year, ends)) {
            month.take(&fit);
        }
        range.take(&through.range(year, ends));
    });
    let helps = range
        .likely()
        .is_none()
        .then(|| helps(build, fitting, year));
    Ok(Season {
        months,
        driest_and_wettest: ends,
        range,
        helps,
        leading,
    })
}

impl Month {
    fn of(fit: Fit) -> Month {
        Month {
            grip: Band::certain(fit.grip),
            spoke: Band::certain(fit.spoke),
            off: Band::certain(fit.off),
            slack: Band::certain(fit.slack),
        }
    }

    fn take(&mut self, fit: &Fit) {
        self.grip.take(fit.grip);
        self.spoke.take(fit.spoke);
        self.off.take(fit.off);
        self.slack.take(fit.slack);
    }
}

impl Through<'_> {
    /// Driest and wettest month with this draw, each with the springs it is reckoned from.
    fn ends(&self, year: &Year, ends: [usize; 2], draw: Draw) -> [(Fit, Stiffness); 2] {
        let [dry, wet] = ends.map(|month| self.at(self.damp(year, month)));
        self.both(&dry, &wet, draw)
    }

    fn both(
        &self,
        dry: &(Stiffness, Lost),
        wet: &(Stiffness, Lost),
        draw: Draw,
    ) -> [(Fit, Stiffness); 2] {
        let wettest = self.then(&self.fitted(draw), wet);
        let then = wettest.after(wettest.balance());
        let driest = self.then(&then, dry);
        [(dry.0.fit(&driest), dry.0), (wet.0.fit(&wettest), wet.0)]
    }

    /// Every month after the wettest has been.
    fn months(&self, year: &Year, [_, wettest]: [usize; 2]) -> [Fit; 12] {
        let wet = self.then(
            &self.fitted(self.fitting.draw),
            &self.at(self.damp(year, wettest)),
        );
        let after = wet.after(wet.balance());
        std::array::from_fn(|month| {
            let now = self.at(self.damp(year, month));
            now.0.fit(&self.then(&after, &now))
        })
    }

    /// How much draw suits the year at this corner.
    fn range(&self, year: &Year, ends: [usize; 2]) -> Range {
        let [dry, wet] = ends.map(|month| self.at(self.damp(year, month)));
        let most = most_draw(self.build).0;
        let least = self.fitting.joints;
        let both = |draw: Length| self.both(&dry, &wet, Draw(draw));
        let grips = |draw: Length| both(draw)[0].0.grip.value > 0.0;
        let harms = |draw: Length| {
            let [_, (fit, _)] = both(draw);
            self.harm(&fit)
        };
        let harmless = |draw: Length| harms(draw).is_none();
        let least_that_grips = grips(most).then(|| turn(least, most, &|draw| !grips(draw)));
        let most_harmless = harmless(least).then(|| turn(least, most, &harmless));
        let beyond = most_harmless.unwrap_or(least) + millimetres(0.05);
        let (least, most) = (least_that_grips.map(Draw), most_harmless.map(Draw));
        Range {
            least,
            most,
            harm: harms(beyond).unwrap_or(Harm::Sinks),
            corners: [least, most],
        }
    }

    /// The worst harm that the wheel takes, if any.
    fn harm(&self, fit: &Fit) -> Option<Harm> {
        let may_dish = (mm(self.build.dish).abs() * MAY_DISH[0]).max(MAY_DISH[1]);
        let parts = [Gives::Joints, Gives::Spokes, Gives::Sole, Gives::Feet];
        let mut worst = (mm(fit.sunk) / MAY_SINK, Harm::Sinks);
        let dishes = (mm(fit.dish).abs() / may_dish, Harm::Dishes);
        let parts = parts.map(|part| (fit.pressed.ratio(part), Harm::Part(part)));
        for found in parts.into_iter().chain([dishes]) {
            if found.0 > worst.0 {
                worst = found;
            }
        }
        (worst.0 > 1.0).then_some(worst.1)
    }
}

/// Where what holds at the low end ceases to hold, to 1/50 mm.
fn turn(low: Length, high: Length, holds: &dyn Fn(Length) -> bool) -> Length {
    let (mut low, mut high) = (low, high);
    if holds(high) {
        return high;
    }
    while high - low > millimetres(0.02) {
        let middle = (low + high) / 2.0;
        if holds(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// What would make a range: a steadier place first, since it costs the wheel nothing.
fn helps(build: &Build, fitting: &Fitting, year: &Year) -> Helps {
    let there_is = |build: &Build, year: &Year| {
        let through = Through::of(build, *fitting, Corner::default());
        through
            .range(year, year.driest_and_wettest())
            .likely()
            .is_some()
    };
    let [driest, wettest] = year.driest_and_wettest();
    let of = |month: usize| year.0.get(month).map_or(0.0, |it| it.percent());
    let swing = of(wettest) - of(driest);
    // Down to a quarter: less than that is no place a cart stands.
    for quarter in [3.0, 2.0, 1.0] {
        if there_is(build, &year.swinging(quarter / 4.0)) {
            return Helps::Steadier(swing * quarter / 4.0);
        }
    }
    for quarter in [3.0, 2.0] {
        let thinner = Build {
            tyre_thickness: build.tyre_thickness * (quarter / 4.0),
            ..*build
        };
        if there_is(&thinner, year) {
            return Helps::Thinner(thinner.tyre_thickness);
        }
    }
    Helps::Neither
}

/// A radius of so many millimetres as the round that it makes.
pub(super) fn round(radius: f64) -> Length {
    millimetres(radius * TAU)
}
