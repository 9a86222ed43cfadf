//! Reading a length from text: one reading, or a refusal that says why there is not one.
//!
//! The table of spellings stands at the head of [`crate::quantity`]. A sign goes in front of the
//! whole. A dot is always decimal. A comma parts decimals or thousands; where both readings are in
//! range, neither is chosen. A fraction without a unit is inches when inches are the bare unit;
//! halves and quarters are millimetres when millimetres are; every other one is refused, because
//! eighths and finer, or a hyphen before a fraction, are the writing of an inch rule.

mod unit;
mod token;
mod amount;
mod reading;

use self::amount::Comma;
use self::token::Token;
use super::length::{Length, from_paper_mm};
use super::range::LengthRange;
use super::refusal::{Fault, Refusal};

/// The longest text that is read, in characters.
pub const LONGEST_TEXT: usize = 64;

/// What a number without a unit means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BareUnit {
    /// Millimetres.
    Millimetre,
    /// Inches.
    Inch,
    /// Thousandths of an inch.
    Thou,
}

/// Reads `text` as a length within `range`; a number without a unit is in `bare`.
///
/// # Errors
///
/// [`Refusal::Empty`], [`Refusal::TooLong`], [`Refusal::Misspelt`], [`Refusal::CommaTwoWays`] or
/// [`Refusal::OutOfRange`].
pub fn parse(text: &str, range: LengthRange, bare: BareUnit) -> Result<Length, Refusal> {
    let text = text.trim();
    check_size(text)?;
    let misspelt = |fault| Refusal::Misspelt {
        text: text.to_owned(),
        fault,
    };
    let tokens = token::tokens(text).map_err(misspelt)?;
    let read = |comma| read(&tokens, range, bare, comma, misspelt);
    match (read(Comma::Decimal), read(Comma::Thousands)) {
        (Ok(decimal), Ok(thousands)) if decimal != thousands => Err(Refusal::CommaTwoWays {
            text: text.to_owned(),
            decimal,
            thousands,
        }),
        (Ok(length), _) | (_, Ok(length)) => Ok(length),
        (Err(Refusal::Misspelt { .. }), Err(refusal)) | (Err(refusal), Err(_)) => Err(refusal),
    }
}

fn check_size(text: &str) -> Result<(), Refusal> {
    match text.chars().count() {
        0 => Err(Refusal::Empty),
        given if given > LONGEST_TEXT => Err(Refusal::TooLong {
            given,
            allowed: LONGEST_TEXT,
        }),
        _ => Ok(()),
    }
}

fn read(
    tokens: &[Token<'_>],
    range: LengthRange,
    bare: BareUnit,
    comma: Comma,
    misspelt: impl Fn(Fault) -> Refusal,
) -> Result<Length, Refusal> {
    let millimetres = reading::millimetres(tokens, bare, comma).map_err(misspelt)?;
    range.check(from_paper_mm(millimetres)?)
}
