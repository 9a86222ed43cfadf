//! The pieces a spelling falls into: numbers, fractions of one sign, marks and units.

use super::unit::Unit;
use crate::quantity::refusal::Fault;

/// One piece of a spelling; blanks part pieces and are otherwise nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Token<'t> {
    /// Digits with any dots and commas among them, as yet unread.
    Number(&'t str),
    /// A fraction written as one sign: its top and bottom.
    Vulgar(u32, u32),
    /// The line of a fraction.
    Slash,
    /// A hyphen from the keyboard: a minus in front, a joint before a fraction.
    Hyphen,
    /// A hyphen or dash that can only be a joint.
    Joint,
    /// A true minus sign.
    Minus,
    /// A plus sign.
    Plus,
    /// A unit, by word or by mark.
    Unit(Unit),
}

/// The pieces of `text` in their order.
pub(super) fn tokens(text: &str) -> Result<Vec<Token<'_>>, Fault> {
    let mut found = Vec::new();
    let mut rest = text.trim_start();
    while let Some(first) = rest.chars().next() {
        let (token, behind) = split_token(rest, first)?;
        found.push(token);
        rest = behind.trim_start();
    }
    Ok(found)
}

fn split_token(text: &str, first: char) -> Result<(Token<'_>, &str), Fault> {
    match first {
        '0'..='9' | '.' | ',' => Ok(split_number(text)),
        _ if is_letter(first) => split_word(text),
        _ => split_mark(text, first),
    }
}

/// A letter of a word for a unit, or of one that is not. The letters of Europe are told; the table of all there are
/// would add to the download.
fn is_letter(sign: char) -> bool {
    sign.is_ascii_alphabetic() || matches!(sign, '\u{c0}'..='\u{24f}' | '\u{370}'..='\u{52f}')
}

fn split_number(text: &str) -> (Token<'_>, &str) {
    let (number, behind) = split_while(text, |c| c.is_ascii_digit() || c == '.' || c == ',');
    (Token::Number(number), behind)
}

/// A word and its full stop. A stop with a digit behind it may as well begin a decimal, so it is
/// not taken for either.
fn split_word(text: &str) -> Result<(Token<'_>, &str), Fault> {
    let (word, behind) = split_while(text, is_letter);
    let unit = Unit::named(word).ok_or_else(|| Fault::UnknownUnit {
        unit: word.to_owned(),
    })?;
    match behind.strip_prefix('.') {
        Some(digits) if digits.starts_with(|c: char| c.is_ascii_digit()) => Err(Fault::Unreadable),
        Some(behind) => Ok((Token::Unit(unit), behind)),
        None => Ok((Token::Unit(unit), behind)),
    }
}

fn split_mark(text: &str, first: char) -> Result<(Token<'_>, &str), Fault> {
    let behind = text.get(first.len_utf8()..).unwrap_or_default();
    let token = mark(first).ok_or(Fault::Unreadable)?;
    // Two foot marks side by side are how a keyboard without a good inch mark writes one.
    match behind.chars().next() {
        Some(second) if token == FOOT && mark(second) == Some(FOOT) => {
            Ok((INCH, behind.get(second.len_utf8()..).unwrap_or_default()))
        }
        _ => Ok((token, behind)),
    }
}

const FOOT: Token<'_> = Token::Unit(Unit::Foot);
const INCH: Token<'_> = Token::Unit(Unit::Inch);

/// The token a single sign stands for.
fn mark(sign: char) -> Option<Token<'static>> {
    Some(match sign {
        '\'' | '′' | '’' | '‘' => FOOT,
        '"' | '″' | '”' | '“' => INCH,
        '/' | '\u{2044}' | '\u{2215}' => Token::Slash,
        '-' => Token::Hyphen,
        '\u{2010}' | '\u{2011}' | '\u{2013}' => Token::Joint,
        '\u{2212}' => Token::Minus,
        '+' => Token::Plus,
        _ => {
            let (top, bottom) = vulgar(sign)?;
            Token::Vulgar(top, bottom)
        }
    })
}

fn vulgar(sign: char) -> Option<(u32, u32)> {
    Some(match sign {
        '⅛' => (1, 8),
        '¼' => (1, 4),
        '⅜' => (3, 8),
        '½' => (1, 2),
        '⅝' => (5, 8),
        '¾' => (3, 4),
        '⅞' => (7, 8),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        _ => return None,
    })
}

fn split_while(text: &str, wanted: impl Fn(char) -> bool) -> (&str, &str) {
    text.split_at(text.find(|c| !wanted(c)).unwrap_or(text.len()))
}
