//! The units a length is spelt with, and what each is in millimetres.

use crate::quantity::spelling::BareUnit;

/// A unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    Millimetre,
    Centimetre,
    Metre,
    Thou,
    Inch,
    Foot,
}

/// Every word for a unit, in lower case. "Mil" is left out: it is a thou to some, 1 mm to others.
const WORDS: &[(Unit, &[&str])] = &[
    (
        Unit::Millimetre,
        &[
            "mm",
            "millimetre",
            "millimetres",
            "millimeter",
            "millimeters",
        ],
    ),
    (
        Unit::Centimetre,
        &[
            "cm",
            "centimetre",
            "centimetres",
            "centimeter",
            "centimeters",
        ],
    ),
    (Unit::Metre, &["m", "metre", "metres", "meter", "meters"]),
    (Unit::Thou, &["thou", "thous"]),
    (Unit::Inch, &["in", "ins", "inch", "inches"]),
    (Unit::Foot, &["ft", "foot", "feet"]),
];

impl Unit {
    /// The unit that `word` names, in capitals or not.
    pub(super) fn named(word: &str) -> Option<Unit> {
        let names = |words: &[&str]| words.iter().any(|known| known.eq_ignore_ascii_case(word));
        WORDS
            .iter()
            .find(|(_, words)| names(words))
            .map(|(unit, _)| *unit)
    }

    /// Millimetres in one of this unit: an inch is 25.4 mm and a foot 304.8 mm, exactly (NIST
    /// Special Publication 811, 2008 edition, appendix B.8).
    pub(super) const fn millimetres(self) -> f64 {
        match self {
            Unit::Millimetre => 1.0,
            Unit::Centimetre => 10.0,
            Unit::Metre => 1000.0,
            Unit::Thou => 0.0254,
            Unit::Inch => 25.4,
            Unit::Foot => 304.8,
        }
    }
}

impl From<BareUnit> for Unit {
    fn from(bare: BareUnit) -> Unit {
        match bare {
            BareUnit::Millimetre => Unit::Millimetre,
            BareUnit::Inch => Unit::Inch,
            BareUnit::Thou => Unit::Thou,
        }
    }
}
