//! JSON in which no object has a field twice. Of two fields of one name one reader takes the first
//! and another the last, so two devices could read two things in one line.

use std::cell::RefCell;
use std::fmt;

use serde::Deserializer;
use serde::de::{DeserializeSeed, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};

use super::LineRefusal;

/// Reads one JSON value.
///
/// # Errors
/// What is not JSON, and a field that stands twice in one object, however deep.
pub(super) fn read(line: &str) -> Result<Value, LineRefusal> {
    let twice = RefCell::new(None);
    let mut json = serde_json::Deserializer::from_str(line);
    let read = Once(&twice).deserialize(&mut json);
    let read = read.and_then(|value| json.end().map(|()| value));
    read.map_err(|error| match twice.take() {
        Some(field) => LineRefusal::Twice(field),
        None => LineRefusal::NotJson(error.to_string()),
    })
}

/// Reads a value and notes the first field that stands twice.
#[derive(Clone, Copy)]
struct Once<'t>(&'t RefCell<Option<String>>);

impl<'de> DeserializeSeed<'de> for Once<'_> {
    type Value = Value;

    fn deserialize<D: Deserializer<'de>>(self, json: D) -> Result<Value, D::Error> {
        json.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Once<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E>(self, flag: bool) -> Result<Value, E> {
        Ok(flag.into())
    }

    fn visit_u64<E>(self, number: u64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_i64<E>(self, number: i64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_f64<E>(self, number: f64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_str<E>(self, text: &str) -> Result<Value, E> {
        Ok(text.into())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(self)? {
            list.push(item);
        }
        Ok(Value::Array(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<Value, A::Error> {
        let mut object = Map::new();
        while let Some(field) = fields.next_key::<String>()? {
            if object.contains_key(&field) {
                self.0.replace(Some(field));
                return Err(A::Error::custom("a field stands twice"));
            }
            let value = fields.next_value_seed(self)?;
            object.insert(field, value);
        }
        Ok(Value::Object(object))
    }
}
