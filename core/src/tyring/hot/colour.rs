//! What the names of the colours of hot iron mean, by two printed charts that do not agree, and how little that says.

use crate::quantity::Temperature;
use crate::quantity::temperature::{celsius, in_celsius};

/// A name that is used for the colour of hot iron.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Colour {
    /// It can just be seen to glow, in the dark.
    JustSeen,
    /// Dark or dull red.
    DullRed,
    /// Cherry, by whichever word before it.
    Cherry,
    /// Orange.
    Orange,
}

/// One line of a chart: the name, the least and the most it is put at in °C.
type Line = (Colour, f64, f64);

/// W. A. J. Chapman, *Workshop Technology*: the black red seen in dull light, very dark to dark red, cherry, orange.
const CHAPMAN: [Line; 4] = [
    (Colour::JustSeen, 426.0, 593.0),
    (Colour::DullRed, 594.0, 814.0),
    (Colour::Cherry, 815.0, 870.0),
    (Colour::Orange, 982.0, 1092.0),
];

/// Stirling Boiler Company, *A Book of Steam for Engineers*, 1905, which W. H. Dooley, *Applied Science for Metal Workers*,
/// repeats: incipient, dull, dull to clear cherry, deep orange.
const STIRLING: [Line; 4] = [
    (Colour::JustSeen, 525.0, 525.0),
    (Colour::DullRed, 699.0, 699.0),
    (Colour::Cherry, 800.0, 1000.0),
    (Colour::Orange, 1100.0, 1100.0),
];

impl Colour {
    /// Every name, from cool to hot.
    pub const ALL: [Colour; 4] = [
        Colour::JustSeen,
        Colour::DullRed,
        Colour::Cherry,
        Colour::Orange,
    ];

    /// The least and the most that the charts together put it at.
    #[must_use]
    pub fn says(self) -> (Temperature, Temperature) {
        let lines = CHAPMAN
            .iter()
            .chain(&STIRLING)
            .filter(|line| line.0 == self);
        let (low, high) = lines.fold((f64::INFINITY, 0.0_f64), |(low, high), line| {
            (low.min(line.1), high.max(line.2))
        });
        (celsius(low), celsius(high))
    }

    /// The names that one chart or the other gives to this temperature; none below any glow.
    pub fn names(at: Temperature) -> impl Iterator<Item = Colour> {
        let c = in_celsius(at);
        Colour::ALL.into_iter().filter(move |colour| {
            let (low, high) = colour.says();
            (in_celsius(low)..=in_celsius(high)).contains(&c)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_says_little() {
        let width = |colour: Colour| {
            let (low, high) = colour.says();
            (in_celsius(high) - in_celsius(low)).round()
        };
        assert_eq!(Colour::ALL.map(width), [167.0, 220.0, 200.0, 118.0]);
    }

    #[test]
    fn one_heat_goes_by_two_names() {
        let names = |c| Colour::names(celsius(c)).collect::<Vec<_>>();
        assert_eq!(names(805.0), [Colour::DullRed, Colour::Cherry]);
        assert_eq!(names(300.0), []);
        assert_eq!(names(f64::NAN), []);
    }
}
