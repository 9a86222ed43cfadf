//! What the tyring sheet says: lengths first, heat no finer than ten degrees, time no finer than ten seconds and cut short.

pub mod refusal;
pub mod measure;
pub mod cut;
pub mod heat;
pub mod advice;
pub mod said;
pub mod told;

pub use refusal::refusal;

use super::style::Style;
use super::unmarked;
use crate::quantity::format::LengthStyle;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::quantity::temperature::in_celsius;
use crate::quantity::{Length, Temperature, decimal};

/// A length that was reckoned: to half a millimetre or a sixteenth of an inch, which is finer than it is known.
pub(in crate::words) fn about(length: Length, style: Style) -> String {
    let near = match style.length {
        LengthStyle::Millimetres => millimetres((to_paper_mm(length) * 2.0).round() / 2.0),
        LengthStyle::Inches(_) => length,
    };
    unmarked(&style.size(near)).to_owned()
}

/// A temperature of hot iron, no finer than ten degrees.
#[must_use]
pub fn hot(at: Temperature) -> String {
    let tens = (in_celsius(at) / 10.0).round() * 10.0;
    format!("{} °C", number(tens))
}

/// Seconds, no finer than ten and cut short: there is never less time than is said.
#[must_use]
pub fn seconds(s: f64) -> String {
    let tens = (s / 10.0).floor() * 10.0;
    if tens < 120.0 {
        format!("{} s", number(tens))
    } else {
        format!("{} min", number((tens / 30.0).floor() / 2.0))
    }
}

fn number(v: f64) -> String {
    if v.is_finite() {
        decimal(v, 1).replace('-', "−")
    } else {
        "no number".to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::{about, hot, seconds};
    use crate::quantity::length::{inches as of_inches, millimetres};
    use crate::quantity::temperature::celsius;
    use crate::words::sample::{inches, style};

    #[test]
    fn nothing_is_said_finer_than_it_is_known() {
        let heat = [684.2, 326.0, 20.0, -3.0, f64::NAN].map(|c| hot(celsius(c)));
        insta::assert_snapshot!(heat.join(", "), @"680 °C, 330 °C, 20 °C, 0 °C, no number °C");
        let time = [0.0, 59.9, 75.0, 119.0, 120.0, 163.0, 1200.0].map(seconds);
        insta::assert_snapshot!(time.join(", "), @"0 s, 50 s, 70 s, 110 s, 2 min, 2.5 min, 20 min");
        let lengths = [1359.13, 17.6, -3.2, 0.0].map(|mm| about(millimetres(mm), style()));
        insta::assert_snapshot!(lengths.join(", "), @"1359 mm, 17.5 mm, −3 mm, 0 mm");
        assert_eq!(about(of_inches(0.51), inches()), "1/2 in");
    }
}
