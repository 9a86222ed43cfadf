//! Harmless preferences of this browser: units, and who is looking. They live in localStorage, which
//! may lose them in a crash; nothing of the book is ever kept there.

use cartside_core::quantity::format::{FeelerStyle, Fraction, LengthStyle};
use cartside_core::words::Style;
use gloo_storage::{LocalStorage, Storage};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};

const KEY: &str = "cartside-preferences";

/// What the person looking prefers.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Preferences {
    /// Who is looking; written into each entry.
    pub person: String,
    /// Lengths in inches and sixteenths, not in millimetres.
    pub inches: bool,
    /// Feelers in thousandths of an inch, not in millimetres.
    pub thou: bool,
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
        Style::british(self.length(), self.feeler())
    }
}

/// The preferences as a signal; each change is kept.
pub fn watch() -> RwSignal<Preferences> {
    let preferences = RwSignal::new(LocalStorage::get(KEY).unwrap_or_default());
    Effect::new(move || {
        // A browser that keeps no preferences works with the usual ones.
        let _ = LocalStorage::set(KEY, preferences.get());
    });
    preferences
}
