//! How many of a unit: a whole, a decimal, a fraction, or a whole and a fraction. Never negative.

use super::token::Token;
use super::unit::Unit;
use crate::quantity::refusal::Fault;
use crate::quantity::spelling::BareUnit;

/// What a comma is taken to part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Comma {
    Decimal,
    Thousands,
}

/// A number as it was written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Amount {
    pub(super) value: f64,
    pub(super) shape: Shape,
}

/// How a number was written, as far as its meaning hangs on that.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Shape {
    Whole,
    Decimal,
    Fraction { bottom: u32, hyphened: bool },
}

/// The amount at the head of `tokens`, and what stands behind it.
pub(super) fn split_amount<'t, 's>(
    tokens: &'t [Token<'s>],
    comma: Comma,
) -> Result<(Amount, &'t [Token<'s>]), Fault> {
    if let Some((fraction, behind)) = split_fraction(tokens)? {
        return Ok((fraction, behind));
    }
    let [Token::Number(number), behind @ ..] = tokens else {
        return Err(Fault::Unreadable);
    };
    let whole = read_number(number, comma).ok_or(Fault::Unreadable)?;
    let (hyphened, after) = match behind {
        [Token::Hyphen | Token::Joint, after @ ..] => (true, after),
        after => (false, after),
    };
    match split_fraction(after)? {
        Some((fraction, behind)) => Ok((whole.with_fraction(fraction, hyphened)?, behind)),
        None => Ok((whole, behind)),
    }
}

impl Amount {
    /// The amount in millimetres when its unit is `unit`.
    pub(super) fn times(self, unit: Unit) -> f64 {
        self.value * unit.millimetres()
    }

    /// The amount in millimetres when it stands without a unit.
    pub(super) fn times_bare(self, bare: BareUnit) -> Result<f64, Fault> {
        match (self.shape, bare) {
            (Shape::Whole | Shape::Decimal, _) | (_, BareUnit::Inch) => Ok(self.times(bare.into())),
            (
                Shape::Fraction {
                    bottom: 2 | 4,
                    hyphened: false,
                },
                BareUnit::Millimetre,
            ) => Ok(self.times(bare.into())),
            _ => Err(Fault::FractionWithoutUnit { bare }),
        }
    }

    fn with_fraction(self, fraction: Amount, hyphened: bool) -> Result<Amount, Fault> {
        match (self.shape, fraction.shape) {
            (Shape::Whole, Shape::Fraction { bottom, .. }) => Ok(Amount {
                value: self.value + fraction.value,
                shape: Shape::Fraction { bottom, hyphened },
            }),
            _ => Err(Fault::Unreadable),
        }
    }
}

/// The fraction at the head of `tokens`, if there is one, and what stands behind it.
fn split_fraction<'t, 's>(
    tokens: &'t [Token<'s>],
) -> Result<Option<(Amount, &'t [Token<'s>])>, Fault> {
    let (top, bottom, behind) = match tokens {
        [Token::Vulgar(top, bottom), behind @ ..] => (*top, *bottom, behind),
        [
            Token::Number(top),
            Token::Slash,
            Token::Number(bottom),
            behind @ ..,
        ] => (read_part(top)?, read_part(bottom)?, behind),
        _ => return Ok(None),
    };
    Ok(Some((read_fraction(top, bottom)?, behind)))
}

/// A fraction below one: `13/8` is more often `1 3/8` with its blank lost than it is meant.
fn read_fraction(top: u32, bottom: u32) -> Result<Amount, Fault> {
    if bottom == 0 {
        Err(Fault::ZeroBottom)
    } else if top >= bottom {
        Err(Fault::ImproperFraction)
    } else {
        let shape = Shape::Fraction {
            bottom,
            hyphened: false,
        };
        Ok(Amount {
            value: f64::from(top) / f64::from(bottom),
            shape,
        })
    }
}

fn read_part(digits: &str) -> Result<u32, Fault> {
    digits.parse().map_err(|_| Fault::Unreadable)
}

fn read_number(text: &str, comma: Comma) -> Option<Amount> {
    let plain = match comma {
        Comma::Decimal => text.replace(',', "."),
        Comma::Thousands if has_thousands(text) => text.replace(',', ""),
        Comma::Thousands => return None,
    };
    match plain.split_once('.') {
        None => Some(Amount {
            value: read_digits(&plain, "")?,
            shape: Shape::Whole,
        }),
        // A dot with nothing behind it is a number that was not finished.
        Some((_, "")) => None,
        Some((whole, part)) => Some(Amount {
            value: read_digits(whole, part)?,
            shape: Shape::Decimal,
        }),
    }
}

/// The number with these digits before and behind the dot.
///
/// All digits are read as one whole number and divided once, so up to fifteen of them give the
/// nearest `f64`, as the standard library would; its own reader of decimals weighs 18 kB (14 kB
/// gzipped) in an app where nothing else reads one.
fn read_digits(whole: &str, part: &str) -> Option<f64> {
    let digits: u64 = format!("{whole}{part}").parse().ok()?;
    let places = i32::try_from(part.len()).ok()?;
    Some(digits as f64 / 10_f64.powi(places))
}

/// Whether every comma parts three digits from those before, or there is none.
fn has_thousands(text: &str) -> bool {
    let whole = text.split('.').next().unwrap_or_default();
    let mut groups = whole.split(',');
    let first = groups.next().unwrap_or_default();
    let mut others = groups.peekable();
    let leads = (1..=3).contains(&first.len()) && !first.starts_with('0');
    (others.peek().is_none() || leads)
        && others.all(|group| group.len() == 3)
        && text.matches(',').count() == whole.matches(',').count()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn fifteen_digits_are_read_as_the_standard_library_reads_them(
            text in "[0-9]{0,7}[.][0-9]{1,8}"
        ) {
            let amount = read_number(&text, Comma::Decimal).unwrap();
            prop_assert_eq!(amount.value, text.parse::<f64>().unwrap());
        }
    }
}
