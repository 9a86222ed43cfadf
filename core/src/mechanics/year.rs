//! The moisture that thin wood has month by month where a cart stands, January first.

use crate::material::moisture::MoistureRefusal;
use crate::material::{MoistureContent, equilibrium};
use crate::quantity::temperature::{celsius, in_celsius};
use crate::quantity::{Percent, Temperature};

/// The air of one month: its mean humidity and its mean temperature.
pub type Air = (Percent, Temperature);

/// The moisture of thin wood in each month, January first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Year(pub [MoistureContent; 12]);

/// A place that is offered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stand {
    /// A shed with a roof and open sides.
    OpenShed,
    /// A closed barn without heating.
    ClosedBarn,
    /// A heated hall: driest in winter.
    HeatedHall,
    /// Out of the rain in the south of England.
    SouthEngland,
    /// Out of the rain in Portland, Oregon.
    Portland,
    /// Out of the rain in Phoenix, Arizona.
    Phoenix,
}

/// Where a place's months come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum StandSource {
    /// DIN 1052-1 (1988): the mean and the span are its own, the run of the months is ours.
    Din1052,
    /// *Wood Handbook*, FPL-GTR-190 (2010), Table 13-1, from memory.
    Handbook,
    /// Typical air, made up from memory and no weather station's.
    Typical,
}

/// How a year swings between winter (1) and summer (−1).
const WINTER: [f64; 12] = [
    1.0, 0.87, 0.5, 0.0, -0.5, -0.87, -1.0, -0.87, -0.5, 0.0, 0.5, 0.87,
];
/// The coldest air of the equation's table in °C; frost is reckoned as this, since cold air changes little.
const FROST: f64 = -1.0;
const COLDEST_ON_EARTH: f64 = -90.0;

/// Humidity in percent and temperature in °C.
const SOUTH_ENGLAND: [(f64, f64); 12] = [
    (86.0, 4.5),
    (83.0, 5.0),
    (79.0, 7.0),
    (74.0, 9.5),
    (72.0, 12.5),
    (72.0, 15.5),
    (71.0, 17.5),
    (73.0, 17.5),
    (77.0, 15.0),
    (82.0, 11.5),
    (86.0, 7.5),
    (87.0, 5.0),
];
const PORTLAND: [f64; 12] = [
    16.5, 15.3, 14.2, 13.5, 13.1, 12.4, 11.7, 11.9, 12.6, 15.0, 16.8, 17.4,
];
const PHOENIX: [f64; 12] = [9.4, 8.4, 7.9, 6.1, 5.1, 4.6, 6.2, 6.9, 6.9, 7.0, 8.2, 9.5];

/// The air, or the frost that it is reckoned as; what is colder than any place on earth stays as it is.
fn frost_at_most(air: Temperature) -> Temperature {
    let degrees = in_celsius(air);
    if (COLDEST_ON_EARTH..FROST).contains(&degrees) {
        celsius(FROST)
    } else {
        air
    }
}

impl Year {
    /// The year that this air makes. Frost is reckoned as −1 °C.
    ///
    /// # Errors
    ///
    /// [`MoistureRefusal`] where a month is too damp or too warm for the equation, or colder than any place on earth.
    pub fn of_air(months: &[Air; 12]) -> Result<Year, MoistureRefusal> {
        let mut year = [MoistureContent::of_table(0.0); 12];
        for (month, (humidity, air)) in year.iter_mut().zip(months) {
            *month = equilibrium(*humidity, frost_at_most(*air))?;
        }
        Ok(Year(year))
    }

    /// The mean of the months in percent.
    #[must_use]
    pub fn mean(&self) -> f64 {
        self.0.iter().map(|month| month.percent()).sum::<f64>() / 12.0
    }

    /// Places of the driest and the wettest month, January being 0; the first of equals.
    #[must_use]
    pub fn driest_and_wettest(&self) -> [usize; 2] {
        let mut found = [0; 2];
        for (place, month) in self.0.iter().enumerate() {
            let of = |at: usize| self.0.get(at).map_or(0.0, |it| it.percent());
            if month.percent() < of(found[0]) {
                found[0] = place;
            }
            if month.percent() > of(found[1]) {
                found[1] = place;
            }
        }
        found
    }

    /// The same year with its swing about the mean so many times as wide.
    #[must_use]
    pub fn swinging(&self, times: f64) -> Year {
        let mean = self.mean();
        Year(
            self.0
                .map(|month| month.shifted((month.percent() - mean) * (times - 1.0))),
        )
    }
}

impl Stand {
    /// Every place that is offered.
    pub const ALL: [Stand; 6] = [
        Stand::OpenShed,
        Stand::ClosedBarn,
        Stand::HeatedHall,
        Stand::SouthEngland,
        Stand::Portland,
        Stand::Phoenix,
    ];

    /// The word that stands for it on paper.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Stand::OpenShed => "open-shed",
            Stand::ClosedBarn => "closed-barn",
            Stand::HeatedHall => "heated-hall",
            Stand::SouthEngland => "south-england",
            Stand::Portland => "portland",
            Stand::Phoenix => "phoenix",
        }
    }

    /// The place a word stands for.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Stand> {
        Stand::ALL.into_iter().find(|it| it.code() == code)
    }

    /// Where its months come from.
    #[must_use]
    pub fn source(self) -> StandSource {
        match self {
            Stand::OpenShed | Stand::ClosedBarn | Stand::HeatedHall => StandSource::Din1052,
            Stand::SouthEngland => StandSource::Typical,
            Stand::Portland | Stand::Phoenix => StandSource::Handbook,
        }
    }

    /// Its year.
    #[must_use]
    pub fn year(self) -> Year {
        let swings = |mean: f64, winter: f64| WINTER.map(|it| mean + winter * it);
        let percent = match self {
            Stand::OpenShed => swings(15.0, 3.0),
            Stand::ClosedBarn => swings(12.0, 3.0),
            Stand::HeatedHall => swings(9.0, -3.0),
            Stand::SouthEngland => SOUTH_ENGLAND.map(in_air),
            Stand::Portland => PORTLAND,
            Stand::Phoenix => PHOENIX,
        };
        Year(percent.map(MoistureContent::of_table))
    }
}

/// The moisture in air of the table; a test holds the table to what the equation is good for.
fn in_air((humidity, degrees): (f64, f64)) -> f64 {
    let air = celsius(degrees);
    let humidity = Percent::from_paper(humidity);
    humidity
        .ok()
        .and_then(|humidity| equilibrium(humidity, air).ok())
        .map_or(0.0, MoistureContent::percent)
}
