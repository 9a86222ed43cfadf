//! JSON read strictly (RFC 8259): in no object may a field stand twice, since of two of one name one reader takes
//! the first and another the last, so two devices could read two things in one line.
//!
//! A reader of our own: that of `serde_json` brings tables and code for every number there can be, 20 kB of a
//! download of 300 when measured, where a line holds whole numbers and a few decimals. The tests hold it against
//! `serde_json`.

use std::fmt;

use serde_json::Number;

use crate::quantity::decimal;

/// A value read from JSON.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Json {
    Null,
    Flag(bool),
    /// As it was written.
    Number(String),
    Text(String),
    List(Vec<Json>),
    Object(Object),
}

/// The fields of an object, sorted by name.
pub(super) type Object = Vec<(String, Json)>;

/// Why a text is not read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Fault {
    /// This field stands twice in one object.
    Twice(String),
    /// What was to stand at this byte.
    Expected(&'static str, usize),
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Twice(field) => write!(f, "\"{field}\" stands twice"),
            Fault::Expected(what, at) => write!(f, "{what} was expected at byte {at}"),
        }
    }
}

/// A number that one reader takes for infinite and another refuses is refused.
const BEYOND: &str = "a number within measure";

/// How deep values may be nested.
const DEEPEST: usize = 100;

impl Json {
    /// Reads one value and nothing more.
    pub(super) fn read(text: &str) -> Result<Json, Fault> {
        let mut reader = Reader { text, at: 0 };
        let value = reader.value(DEEPEST)?;
        reader.skip_blanks();
        if reader.at == text.len() {
            Ok(value)
        } else {
            Err(reader.expected("the end"))
        }
    }

    /// A field of an object.
    pub(super) fn get(&self, field: &str) -> Option<&Json> {
        match self {
            Json::Object(fields) => {
                let found = fields.iter().find(|(name, _)| name == field);
                found.map(|(_, value)| value)
            }
            _ => None,
        }
    }

    /// The text it is.
    pub(super) fn text(&self) -> Option<&str> {
        match self {
            Json::Text(text) => Some(text),
            _ => None,
        }
    }

    /// The whole number it is, never below nought.
    pub(super) fn whole(&self) -> Option<u64> {
        match self {
            Json::Number(text) => text.parse().ok(),
            _ => None,
        }
    }

    /// The number it is. Up to fifteen digits give the nearest `f64`; more are good to as many.
    pub(super) fn number(&self) -> Option<f64> {
        match self {
            Json::Number(text) => number(text),
            _ => None,
        }
    }
}

/// The greatest power of ten that an `f64` holds exactly.
const EXACT_POWER: i32 = 22;

fn number(text: &str) -> Option<f64> {
    let (mantissa, exponent) = match text.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, exponent.parse().ok()?),
        None => (text, 0_i32),
    };
    let (mut digits, mut power) = (0_u64, exponent);
    let mut behind = false;
    for byte in mantissa.bytes() {
        match byte {
            b'.' => behind = true,
            // A nineteenth digit would not fit; it is below what an `f64` can tell apart.
            b'0'..=b'9' if digits < 100_000_000_000_000_000 => {
                digits = digits * 10 + u64::from(byte - b'0');
                power -= i32::from(behind);
            }
            b'0'..=b'9' => power += i32::from(!behind),
            _ => {}
        }
    }
    let value = digits as f64;
    let value = if power.abs() <= EXACT_POWER {
        scaled(value, power)
    } else {
        // In two steps, so that neither power is too great for itself.
        let half = power.clamp(-700, 700) / 2;
        scaled(scaled(value, half), power.clamp(-700, 700) - half)
    };
    let signed = if text.starts_with('-') { -value } else { value };
    signed.is_finite().then_some(signed)
}

fn scaled(value: f64, power: i32) -> f64 {
    let scale = 10_f64.powi(power.abs());
    if power < 0 {
        value / scale
    } else {
        value * scale
    }
}

/// A number as it is written on paper: at most six decimals and at least one, as in `1275.0`. What is no number is
/// written as `null`, which no field takes.
pub(super) fn on_paper(value: f64) -> Number {
    if !value.is_finite() {
        return Number::from_string_unchecked("null".to_owned());
    }
    let mut text = decimal(value, 6);
    if !text.contains('.') {
        text.push_str(".0");
    }
    Number::from_string_unchecked(text)
}

impl fmt::Display for Json {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Json::Null => f.write_str("null"),
            Json::Flag(flag) => write!(f, "{flag}"),
            Json::Number(number) => f.write_str(number),
            Json::Text(text) => write!(f, "\"{text}\""),
            Json::List(items) => {
                f.write_str("[")?;
                for (n, item) in items.iter().enumerate() {
                    let comma = if n == 0 { "" } else { "," };
                    write!(f, "{comma}{item}")?;
                }
                f.write_str("]")
            }
            Json::Object(fields) => {
                f.write_str("{")?;
                for (n, (name, value)) in fields.iter().enumerate() {
                    let comma = if n == 0 { "" } else { "," };
                    write!(f, "{comma}\"{name}\":{value}")?;
                }
                f.write_str("}")
            }
        }
    }
}

struct Reader<'t> {
    text: &'t str,
    at: usize,
}

impl Reader<'_> {
    fn expected(&self, what: &'static str) -> Fault {
        Fault::Expected(what, self.at)
    }

    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// Passes a byte over if it is the next.
    fn takes(&mut self, byte: u8) -> bool {
        let is_next = self.peek() == Some(byte);
        self.at += usize::from(is_next);
        is_next
    }

    fn skip_blanks(&mut self) {
        self.skip(|byte| matches!(byte, b' ' | b'\t' | b'\n' | b'\r'));
    }

    /// Passes over all bytes of a kind; whether there was one.
    fn skip(&mut self, kind: fn(&u8) -> bool) -> bool {
        let before = self.at;
        while self.peek().is_some_and(|byte| kind(&byte)) {
            self.at += 1;
        }
        self.at > before
    }

    fn value(&mut self, depth: usize) -> Result<Json, Fault> {
        self.skip_blanks();
        let Some(depth) = depth.checked_sub(1) else {
            return Err(self.expected("less nesting"));
        };
        match self.peek() {
            Some(b'{') => self.object(depth),
            Some(b'[') => self.list(depth),
            Some(b'"') => self.string().map(Json::Text),
            Some(b'-' | b'0'..=b'9') => self.digits(),
            _ => self.word(),
        }
    }

    fn word(&mut self) -> Result<Json, Fault> {
        let rest = self.text.get(self.at..).unwrap_or_default();
        for (word, value) in [
            ("true", Json::Flag(true)),
            ("false", Json::Flag(false)),
            ("null", Json::Null),
        ] {
            if rest.starts_with(word) {
                self.at += word.len();
                return Ok(value);
            }
        }
        Err(self.expected("a value"))
    }

    fn object(&mut self, depth: usize) -> Result<Json, Fault> {
        let mut fields = Object::new();
        self.each(b'}', |reader| {
            let name = reader.string()?;
            reader.skip_blanks();
            if !reader.takes(b':') {
                return Err(reader.expected("\":\""));
            }
            fields.push((name, reader.value(depth)?));
            Ok(())
        })?;
        fields.sort_unstable_by(|one, other| one.0.cmp(&other.0));
        let twice = fields.windows(2).find_map(|pair| match pair {
            [one, other] if one.0 == other.0 => Some(one.0.clone()),
            _ => None,
        });
        twice.map_or(Ok(Json::Object(fields)), |field| Err(Fault::Twice(field)))
    }

    fn list(&mut self, depth: usize) -> Result<Json, Fault> {
        let mut items = Vec::new();
        self.each(b']', |reader| {
            items.push(reader.value(depth)?);
            Ok(())
        })?;
        Ok(Json::List(items))
    }

    /// Reads what stands between an opening bracket and this closing one, parted by commas.
    fn each(
        &mut self,
        close: u8,
        mut one: impl FnMut(&mut Self) -> Result<(), Fault>,
    ) -> Result<(), Fault> {
        self.at += 1;
        self.skip_blanks();
        if self.takes(close) {
            return Ok(());
        }
        loop {
            self.skip_blanks();
            one(self)?;
            self.skip_blanks();
            if self.takes(close) {
                return Ok(());
            }
            if !self.takes(b',') {
                return Err(self.expected("a comma or the end of the list"));
            }
        }
    }

    fn digits(&mut self) -> Result<Json, Fault> {
        let begin = self.at;
        self.takes(b'-');
        if !self.takes(b'0') && !self.skip(u8::is_ascii_digit) {
            return Err(self.expected("a digit"));
        }
        if self.takes(b'.') && !self.skip(u8::is_ascii_digit) {
            return Err(self.expected("a digit"));
        }
        if self.takes(b'e') || self.takes(b'E') {
            let _ = self.takes(b'+') || self.takes(b'-');
            if !self.skip(u8::is_ascii_digit) {
                return Err(self.expected("a digit"));
            }
        }
        let text = self.text.get(begin..self.at).unwrap_or_default();
        if number(text).is_none() {
            return Err(self.expected(BEYOND));
        }
        Ok(Json::Number(text.to_owned()))
    }

    fn string(&mut self) -> Result<String, Fault> {
        if !self.takes(b'"') {
            return Err(self.expected("a text"));
        }
        let mut text = String::new();
        loop {
            let begin = self.at;
            self.skip(|byte| !matches!(byte, b'"' | b'\\' | 0..=0x1F));
            text.push_str(self.text.get(begin..self.at).unwrap_or_default());
            if self.takes(b'"') {
                return Ok(text);
            }
            if !self.takes(b'\\') {
                return Err(self.expected("the end of a text"));
            }
            text.push(self.escaped()?);
        }
    }

    fn escaped(&mut self) -> Result<char, Fault> {
        let sign = match self.peek() {
            Some(sign @ (b'"' | b'\\' | b'/')) => char::from(sign),
            Some(b'b') => '\u{8}',
            Some(b'f') => '\u{c}',
            Some(b'n') => '\n',
            Some(b'r') => '\r',
            Some(b't') => '\t',
            Some(b'u') => return self.unicode(),
            _ => return Err(self.expected("an escape")),
        };
        self.at += 1;
        Ok(sign)
    }

    /// A sign given by its number, or by the two halves of a pair.
    fn unicode(&mut self) -> Result<char, Fault> {
        let mut number = self.four_digits()?;
        if (0xD800..0xDC00).contains(&number) && self.takes(b'\\') {
            let low = self.four_digits()?;
            if !(0xDC00..0xE000).contains(&low) {
                return Err(self.expected("the other half of a pair"));
            }
            number = 0x1_0000 + ((number - 0xD800) << 10) + (low - 0xDC00);
        }
        char::from_u32(number).ok_or_else(|| self.expected("a sign there is"))
    }

    fn four_digits(&mut self) -> Result<u32, Fault> {
        let digits = self.text.get(self.at + 1..self.at + 5);
        let sound = |digits: &&str| digits.bytes().all(|byte| byte.is_ascii_hexdigit());
        let digits = digits.filter(sound).filter(|_| self.peek() == Some(b'u'));
        let number = digits.and_then(|digits| u32::from_str_radix(digits, 16).ok());
        let number = number.ok_or_else(|| self.expected("four hexadecimal digits"))?;
        self.at += 5;
        Ok(number)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use serde_json::Value;

    use super::{BEYOND, Fault, Json, number, on_paper};

    /// The same value as `serde_json` reads it.
    fn theirs(value: &Json) -> Value {
        match value {
            Json::Null => Value::Null,
            Json::Flag(flag) => (*flag).into(),
            Json::Number(text) => Value::Number(text.parse().unwrap()),
            Json::Text(text) => text.as_str().into(),
            Json::List(items) => items.iter().map(theirs).collect(),
            Json::Object(fields) => {
                let each = fields
                    .iter()
                    .map(|(name, value)| (name.clone(), theirs(value)));
                Value::Object(each.collect())
            }
        }
    }

    fn same(text: &str) -> Result<(), TestCaseError> {
        match (Json::read(text), serde_json::from_str::<Value>(text)) {
            (Ok(ours), Ok(value)) => prop_assert_eq!(theirs(&ours), value, "{}", text),
            (Err(Fault::Twice(_) | Fault::Expected(BEYOND, _)), Ok(_)) | (Err(_), Err(_)) => {}
            (ours, value) => prop_assert!(false, "{text}: {ours:?} and {value:?}"),
        }
        Ok(())
    }

    fn json() -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            Just(Value::Null),
            any::<bool>().prop_map(Value::from),
            any::<i64>().prop_map(Value::from),
            (-20_000_000_000_i64..20_000_000_000).prop_map(|n| Value::from(n as f64 / 1e6)),
            any::<f64>().prop_map(Value::from),
            any::<String>().prop_map(Value::from),
        ];
        leaf.prop_recursive(4, 30, 5, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..5).prop_map(Value::from),
                prop::collection::btree_map(any::<String>(), inner, 0..5)
                    .prop_map(|map| Value::Object(map.into_iter().collect())),
            ]
        })
    }

    proptest! {
        #[test]
        fn it_reads_what_serde_json_reads(value in json(), pretty: bool) {
            let text = if pretty {
                serde_json::to_string_pretty(&value)
            } else {
                serde_json::to_string(&value)
            };
            let text = text.unwrap();
            prop_assert!(Json::read(&text).is_ok(), "{}", text);
            same(&text)?;
        }

        #[test]
        fn it_refuses_what_serde_json_refuses(value in json(), at: prop::sample::Index, sign in "[\\[\\]{}\",:\\\\0-9eE.+ntu\u{1}-]?", cut in 0..3_usize) {
            let mut text: Vec<char> = serde_json::to_string(&value).unwrap().chars().collect();
            let at = at.index(text.len());
            text.splice(at..(at + cut).min(text.len()), sign.chars());
            same(&text.into_iter().collect::<String>())?;
        }

        #[test]
        fn up_to_fifteen_digits_give_the_nearest_number(digits in "-?(0|[1-9][0-9]{0,7})(\\.[0-9]{1,7})?(e-?[0-9])?") {
            prop_assert_eq!(number(&digits), digits.parse().ok());
        }

        #[test]
        fn what_is_put_on_paper_is_read_back(millionths in -20_000_000_000_i64..20_000_000_000) {
            let value = millionths as f64 / 1e6;
            let text = on_paper(value).to_string();
            // As `serde_json` writes the same number.
            prop_assert_eq!(&text, &serde_json::to_string(&value).unwrap());
            prop_assert_eq!(number(&text), Some(value));
        }
    }

    #[test]
    fn odd_texts_are_read_or_refused_as_serde_json_does() {
        for text in [
            "",
            " ",
            "{}",
            " [ ] ",
            "{\"a\":1,}",
            "[1,]",
            "[,1]",
            "{,}",
            "{\"a\" 1}",
            "{a:1}",
            "01",
            "1.",
            ".5",
            "-",
            "-0",
            "1e",
            "1e+",
            "1E5",
            "1e999",
            "+1",
            "NaN",
            "tru",
            "truee",
            "nul",
            "\"",
            "\"\\\"",
            "\"\\u12\"",
            "\"\\u+123\"",
            "\"\\ud800\"",
            "\"\\ud83d\\ude00\"",
            "\"\\ud83d\\u0041\"",
            "\"\\udc00\"",
            "\"\\x\"",
            "\"\t\"",
            "\"\u{7f}\u{2028}\"",
            "[1 2]",
            "1 1",
            "[[]]]",
            "\u{feff}1",
            "{\"a\":{\"b\":[{}]}}",
            "\"\\/\\b\\f\\n\\r\\t\"",
        ] {
            same(text).unwrap();
        }
    }

    #[test]
    fn a_field_that_stands_twice_is_named() {
        let twice = |text| Json::read(text).unwrap_err();
        assert_eq!(
            twice("{\"a\":1,\"b\":2,\"a\":3}"),
            Fault::Twice("a".to_owned())
        );
        assert_eq!(
            twice("[{\"b\":{\"c\":1,\"\\u0063\":1}}]"),
            Fault::Twice("c".to_owned())
        );
        assert!(Json::read("[{\"a\":1},{\"a\":1}]").is_ok());
    }

    #[test]
    fn what_is_nested_too_deep_is_refused() {
        let nested = |deep: usize| format!("{}{}", "[".repeat(deep), "]".repeat(deep));
        assert!(Json::read(&nested(100)).is_ok());
        assert!(Json::read(&nested(101)).is_err());
        assert!(Json::read(&"[".repeat(100_000)).is_err());
    }

    #[test]
    fn a_number_beyond_measure_is_none() {
        assert_eq!(number("1e999"), None);
        assert!(number("-1e308").is_some_and(|n| (n + 1e308).abs() < 1e294));
        assert_eq!(on_paper(f64::NAN).to_string(), "null");
        assert_eq!(number("1e-999"), Some(0.0));
        assert_eq!(
            number("123456789012345678901234567890"),
            Some(123456789012345678901234567890.0)
        );
    }
}
