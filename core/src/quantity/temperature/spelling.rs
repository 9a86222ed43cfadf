//! Temperatures as they are typed and written: `700`, `−5 °C`, `1300 °F`, `12,5 C`.

use super::{Temperature, TemperatureRange, celsius, in_celsius};
use crate::quantity::decimal;
use crate::quantity::refusal::Refusal;

/// What a number without a scale means, and the scale that is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Scale {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit: 1.8 to each of Celsius, from 32 (NIST Special Publication 811, 2008, B.8).
    Fahrenheit,
}

impl Scale {
    /// The temperature that this number of degrees is.
    #[must_use]
    pub fn degrees(self, v: f64) -> Temperature {
        match self {
            Scale::Celsius => celsius(v),
            Scale::Fahrenheit => celsius((v - 32.0) / 1.8),
        }
    }

    /// The temperature in these degrees.
    #[must_use]
    pub fn of(self, temperature: Temperature) -> f64 {
        let c = in_celsius(temperature);
        match self {
            Scale::Celsius => c,
            Scale::Fahrenheit => c * 1.8 + 32.0,
        }
    }

    /// The temperature as text, to whole degrees.
    #[must_use]
    pub fn write(self, temperature: Temperature) -> String {
        let sign = match self {
            Scale::Celsius => "°C",
            Scale::Fahrenheit => "°F",
        };
        let v = self.of(temperature);
        if v.is_finite() {
            format!("{} {sign}", decimal(v, 0).replace('-', "−"))
        } else {
            "beyond measure".to_owned()
        }
    }
}

/// Reads a temperature within its range; a number without a scale is of `bare`.
///
/// # Errors
///
/// [`Refusal::NoTemperature`] where it cannot be read, or what [`TemperatureRange::check`] refuses.
pub fn parse(text: &str, range: TemperatureRange, bare: Scale) -> Result<Temperature, Refusal> {
    let text = text.trim();
    let refused = || Refusal::NoTemperature {
        given: text.chars().take(40).collect(),
    };
    let (number, scale) = match text.char_indices().last() {
        Some((at, 'c' | 'C')) => (text.get(..at), Scale::Celsius),
        Some((at, 'f' | 'F')) => (text.get(..at), Scale::Fahrenheit),
        _ => (Some(text), bare),
    };
    let number = number.unwrap_or_default().trim_end();
    let number = number.strip_suffix('°').unwrap_or(number).trim_end();
    let (below, digits) = match number.strip_prefix(['-', '−']) {
        Some(digits) => (true, digits),
        None => (false, number),
    };
    let v = read(digits).ok_or_else(refused)?;
    range.check(scale.degrees(if below { -v } else { v }))
}

/// Digits with at most one dot or comma among them: four before it and two behind are all that a temperature needs.
fn read(text: &str) -> Option<f64> {
    let (whole, part) = text.split_once(['.', ',']).unwrap_or((text, ""));
    let digits = format!("{whole}{part:0<2}");
    let plain = digits.bytes().all(|b| b.is_ascii_digit());
    let short = (1..=4).contains(&whole.len()) && part.len() <= 2;
    let hundredths: u32 = digits.parse().ok().filter(|_| plain && short)?;
    Some(f64::from(hundredths) / 100.0)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn iron(text: &str) -> Result<f64, Refusal> {
        parse(text, TemperatureRange::Iron, Scale::Celsius)
            .map(|at| (in_celsius(at) * 1e6).round() / 1e6)
    }

    #[test]
    fn a_temperature_is_read_as_it_is_written() {
        for (text, c) in [
            ("700", 700.0),
            (" 700 °C ", 700.0),
            ("700C", 700.0),
            ("12,5 c", 12.5),
            ("−5", -5.0),
            ("-5 °C", -5.0),
            ("212 °F", 100.0),
            ("-40 f", -40.0),
            ("0", 0.0),
        ] {
            assert_eq!(iron(text), Ok(c), "{text}");
        }
        let bare = parse("977", TemperatureRange::Iron, Scale::Fahrenheit).unwrap();
        assert_eq!(Scale::Celsius.write(bare), "525 °C");
        assert_eq!(Scale::Fahrenheit.write(celsius(699.0)), "1290 °F");
        assert_eq!(Scale::Celsius.write(celsius(-5.0)), "−5 °C");
        assert_eq!(Scale::Celsius.write(celsius(f64::NAN)), "beyond measure");
    }

    #[test]
    fn what_is_no_temperature_is_refused_with_what_was_given() {
        for text in [
            "", "C", "red", "1e3", "1.2.3", "nan", "--5", "12345", "7°0", "700 K", "1.234",
        ] {
            assert!(
                matches!(iron(text), Err(Refusal::NoTemperature { .. })),
                "{text}"
            );
        }
        insta::assert_snapshot!(iron("cherry red").unwrap_err(), @"“cherry red” was given, and a temperature is written like 20 °C or 68 °F; nothing was changed.");
        insta::assert_snapshot!(iron("-300").unwrap_err(), @"The temperature was given as −300 °C, and nothing is colder than −273.15 °C; nothing was changed.");
        assert!(matches!(iron("9999"), Err(Refusal::Temperature { .. })));
    }

    proptest! {
        #[test]
        fn no_text_brings_the_reader_down(text in any::<String>()) {
            let _ = parse(&text, TemperatureRange::Air, Scale::Fahrenheit);
        }

        #[test]
        fn what_is_written_is_read_again(c in -40_i32..=1200) {
            let at = celsius(f64::from(c));
            for scale in [Scale::Celsius, Scale::Fahrenheit] {
                let read = parse(&scale.write(at), TemperatureRange::Iron, Scale::Celsius).unwrap();
                prop_assert!((in_celsius(read) - f64::from(c)).abs() < 0.6);
            }
        }
    }
}
