//! The fields of a JSON object, taken out one by one; what is left at the end was written by a newer
//! version.

use super::{LineRefusal, MOST_REPLACED};
use crate::daybook::Digest;
use crate::paper::json::{Json, Object};

/// What remains to be taken of an object.
pub(super) struct Fields {
    open: Object,
    /// Fields that nobody took of objects within it.
    within: usize,
}

impl Fields {
    pub(super) fn new(object: Object) -> Fields {
        Fields {
            open: object,
            within: 0,
        }
    }

    /// How many fields nobody has taken.
    pub(super) fn left(&self) -> usize {
        self.open.len() + self.within
    }

    /// Adds the fields that nobody has taken of an object within this one.
    pub(super) fn count(&mut self, left: usize) {
        self.within += left;
    }

    fn take(&mut self, field: &str) -> Option<Json> {
        let at = self.open.iter().position(|(name, _)| name == field)?;
        Some(self.open.swap_remove(at).1)
    }

    /// Whether a field is there and not yet taken.
    pub(super) fn has(&self, field: &str) -> bool {
        self.open.iter().any(|(name, _)| name == field)
    }

    /// A text that may be missing.
    pub(super) fn maybe_text(
        &mut self,
        field: &'static str,
    ) -> Result<Option<String>, LineRefusal> {
        match self.take(field) {
            None => Ok(None),
            Some(Json::Text(text)) => Ok(Some(text)),
            Some(other) => Err(wrong(field, &other, "a text")),
        }
    }

    /// A text.
    pub(super) fn text(&mut self, field: &'static str) -> Result<String, LineRefusal> {
        self.maybe_text(field)?.ok_or(LineRefusal::Missing(field))
    }

    /// A whole number, never below nought.
    pub(super) fn whole(&mut self, field: &'static str) -> Result<u64, LineRefusal> {
        let value = self.take(field).ok_or(LineRefusal::Missing(field))?;
        value
            .whole()
            .ok_or_else(|| wrong(field, &value, "a whole number from 0"))
    }

    /// A number.
    pub(super) fn number(&mut self, field: &'static str) -> Result<f64, LineRefusal> {
        self.maybe_number(field)?.ok_or(LineRefusal::Missing(field))
    }

    /// A number that may be missing.
    pub(super) fn maybe_number(&mut self, field: &'static str) -> Result<Option<f64>, LineRefusal> {
        self.take(field)
            .map(|value| {
                value
                    .number()
                    .ok_or_else(|| wrong(field, &value, "a number"))
            })
            .transpose()
    }

    /// Yes or no; missing is no.
    pub(super) fn flag(&mut self, field: &'static str) -> Result<bool, LineRefusal> {
        match self.take(field) {
            None => Ok(false),
            Some(Json::Flag(flag)) => Ok(flag),
            Some(other) => Err(wrong(field, &other, "true or false")),
        }
    }

    /// An object that may be missing.
    pub(super) fn object(&mut self, field: &'static str) -> Result<Option<Fields>, LineRefusal> {
        match self.take(field) {
            None => Ok(None),
            Some(Json::Object(object)) => Ok(Some(Fields::new(object))),
            Some(other) => Err(wrong(field, &other, "an object")),
        }
    }

    /// What stands in a list.
    pub(super) fn list(&mut self, field: &'static str) -> Result<Vec<Json>, LineRefusal> {
        match self.take(field).ok_or(LineRefusal::Missing(field))? {
            Json::List(items) => Ok(items),
            other => Err(wrong(field, &other, "a list")),
        }
    }

    /// Objects in a list.
    pub(super) fn objects(&mut self, field: &'static str) -> Result<Vec<Fields>, LineRefusal> {
        let items = self.list(field)?.into_iter();
        items
            .map(|item| match item {
                Json::Object(object) => Ok(Fields::new(object)),
                other => Err(wrong(field, &other, "a list of objects")),
            })
            .collect()
    }

    /// Whole numbers in a list.
    pub(super) fn wholes(&mut self, field: &'static str) -> Result<Vec<u64>, LineRefusal> {
        let allowed = "a list of whole numbers";
        match self.take(field).ok_or(LineRefusal::Missing(field))? {
            Json::List(items) => items
                .iter()
                .map(|item| item.whole().ok_or_else(|| wrong(field, item, allowed)))
                .collect(),
            other => Err(wrong(field, &other, allowed)),
        }
    }

    /// Texts in a list that may be missing.
    pub(super) fn texts(
        &mut self,
        field: &'static str,
    ) -> Result<Option<Vec<String>>, LineRefusal> {
        let Some(value) = self.take(field) else {
            return Ok(None);
        };
        let texts = match &value {
            Json::List(items) => {
                let texts = items.iter().map(|item| item.text().map(str::to_owned));
                texts.collect()
            }
            _ => None,
        };
        texts
            .map(Some)
            .ok_or_else(|| wrong(field, &value, "a list of texts"))
    }

    /// A digest that may be missing.
    pub(super) fn id(&mut self, field: &'static str) -> Result<Option<Digest>, LineRefusal> {
        self.maybe_text(field)?
            .map(|text| digest(field, &text))
            .transpose()
    }

    /// A list of digests, empty if missing.
    pub(super) fn ids(&mut self, field: &'static str) -> Result<Vec<Digest>, LineRefusal> {
        let items = match self.take(field) {
            None => return Ok(Vec::new()),
            Some(Json::List(items)) => items,
            Some(other) => return Err(wrong(field, &other, "a list of digests")),
        };
        if items.len() > MOST_REPLACED {
            return Err(LineRefusal::ReplacesTooMany(items.len()));
        }
        items
            .iter()
            .map(|item| digest(field, item.text().unwrap_or_default()))
            .collect()
    }
}

/// A digest written as 64 lower-case hexadecimal digits.
pub(super) fn digest(field: &'static str, text: &str) -> Result<Digest, LineRefusal> {
    Digest::from_hex(text).ok_or_else(|| LineRefusal::Wrong {
        field,
        given: text.to_owned(),
        allowed: "64 hexadecimal digits in lower case",
    })
}

fn wrong(field: &'static str, value: &Json, allowed: &'static str) -> LineRefusal {
    LineRefusal::Wrong {
        field,
        given: value.to_string(),
        allowed,
    }
}
