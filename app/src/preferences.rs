//! Harmless preferences of this browser: units, and who is looking. They live in localStorage, which
//! may lose them in a crash; nothing of the book is ever kept there.

use cartside_core::quantity::format::{FeelerStyle, Fraction, LengthStyle};
use cartside_core::words::Style;
use gloo_storage::{LocalStorage, Storage};
use leptos::prelude::*;

const PERSON: &str = "cartside-person";
const INCHES: &str = "cartside-inches";
const THOU: &str = "cartside-thou";
const AMERICAN: &str = "cartside-american";

/// What the person looking prefers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Preferences {
    /// Who is looking; written into each entry.
    pub person: String,
    /// Lengths in inches and sixteenths, not in millimetres.
    pub inches: bool,
    /// Feelers in thousandths of an inch, not in millimetres.
    pub thou: bool,
    /// The trade's American words, not its British ones.
    pub american: bool,
}

impl Preferences {
    /// How lengths are written out.
    pub fn length(&self) -> LengthStyle {
        if self.inches {
            LengthStyle::Inches(Fraction::Sixteenths)
        } else {
            LengthStyle::Millimetres
        }
    }

    /// How feelers are written out.
    pub fn feeler(&self) -> FeelerStyle {
        if self.thou {
            FeelerStyle::Thou
        } else {
            FeelerStyle::Millimetres
        }
    }

    /// How everything is worded for this person.
    pub fn style(&self) -> Style {
        let words = if self.american {
            Style::american
        } else {
            Style::british
        };
        words(self.length(), self.feeler())
    }
}

/// The preferences as a signal; each change is kept.
///
/// Each is kept as plain text under a key of its own: reading them as JSON would bring a second reader of JSON into
/// the download, an eighth of its limit when measured.
pub fn watch() -> RwSignal<Preferences> {
    let kept = |key| LocalStorage::raw().get_item(key).ok().flatten();
    let preferences = RwSignal::new(Preferences {
        person: kept(PERSON).unwrap_or_default(),
        inches: kept(INCHES).is_some(),
        thou: kept(THOU).is_some(),
        american: kept(AMERICAN).is_some(),
    });
    Effect::new(move || {
        let Preferences {
            person,
            inches,
            thou,
            american,
        } = preferences.get();
        keep(PERSON, &person);
        keep(INCHES, if inches { "yes" } else { "" });
        keep(THOU, if thou { "yes" } else { "" });
        keep(AMERICAN, if american { "yes" } else { "" });
    });
    preferences
}

fn keep(key: &str, text: &str) {
    let storage = LocalStorage::raw();
    // A browser that keeps no preferences works with the usual ones.
    let _ = match text {
        "" => storage.remove_item(key),
        text => storage.set_item(key, text),
    };
}
