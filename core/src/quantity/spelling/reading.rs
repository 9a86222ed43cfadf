//! The grammar of a length: a sign, an amount, a unit; or feet and then inches.

use super::BareUnit;
use super::amount::{Amount, Comma, Shape, split_amount};
use super::token::Token;
use super::unit::Unit;
use crate::quantity::refusal::Fault;

/// What `tokens` say, in millimetres.
pub(super) fn millimetres(
    tokens: &[Token<'_>],
    bare: BareUnit,
    comma: Comma,
) -> Result<f64, Fault> {
    match tokens {
        [Token::Hyphen | Token::Minus, behind @ ..] => Ok(-unsigned(behind, bare, comma)?),
        [Token::Plus, behind @ ..] => unsigned(behind, bare, comma),
        _ => unsigned(tokens, bare, comma),
    }
}

fn unsigned(tokens: &[Token<'_>], bare: BareUnit, comma: Comma) -> Result<f64, Fault> {
    let (amount, behind) = split_amount(tokens, comma)?;
    match behind {
        [] => amount.times_bare(bare),
        [Token::Unit(unit)] => Ok(amount.times(*unit)),
        _ if has_sign(behind) => Err(Fault::SignInside),
        [Token::Unit(Unit::Foot), inches @ ..] => feet_and_inches(amount, inches, comma),
        _ if n_units(behind) > 1 => Err(Fault::TwoUnits),
        _ => Err(Fault::Unreadable),
    }
}

fn feet_and_inches(feet: Amount, tokens: &[Token<'_>], comma: Comma) -> Result<f64, Fault> {
    let (inches, behind) = split_amount(tokens, comma)?;
    match behind {
        [] | [Token::Unit(Unit::Inch)] => {}
        _ if n_units(behind) > 0 => return Err(Fault::TwoUnits),
        _ => return Err(Fault::Unreadable),
    }
    if feet.shape != Shape::Whole {
        Err(Fault::BrokenFeet)
    } else if inches.value >= 12.0 {
        Err(Fault::TwelveInches)
    } else {
        Ok(feet.times(Unit::Foot) + inches.times(Unit::Inch))
    }
}

/// Whether a sign is left over; a hyphen that joins a whole to its fraction is not, once read.
fn has_sign(tokens: &[Token<'_>]) -> bool {
    let sign = |pair: &[Token<'_>]| match pair {
        [before, Token::Hyphen] => !matches!(before, Token::Number(_)),
        [_, Token::Minus | Token::Plus] => true,
        _ => false,
    };
    matches!(tokens, [Token::Hyphen | Token::Minus | Token::Plus, ..])
        || tokens.windows(2).any(sign)
}

fn n_units(tokens: &[Token<'_>]) -> usize {
    tokens
        .iter()
        .filter(|token| matches!(token, Token::Unit(_)))
        .count()
}
