//! The fields of the tyring sheet that are typed into, in the order in which they stand.

use cartside_core::quantity::format::LengthStyle;
use cartside_core::words::Style;

use super::pick::Pick;

/// A field.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Field {
    /// The traveller's own round; empty where a tape is used.
    Traveller,
    /// The wheel's round, run by run.
    Wheel,
    /// The tyre's as it came, on the inside.
    Tyre,
    /// The draw that is wanted.
    Draw,
    /// Another traveller, that ran the tyre.
    Other,
    /// How warm the tyre was, in °C.
    Warm,
    /// The joints' sum with the rim cramped.
    Cramped,
    /// The tyre's widest less its narrowest.
    Oval,
    /// The piece that was cut out.
    Cut,
    /// The tyre's round as welded.
    Welded,
    /// Room between tyre and sole as it drops, across the wheel.
    Clearance,
    /// Seconds from the fire to the wheel.
    Carry,
    /// Wind in m/s.
    Wind,
    /// Air in °C.
    Air,
    /// How deep the sole charred.
    Charred,
    /// The round over the tyre as it lies.
    Lying,
    /// Humidity and °C of the twelve months.
    Months,
}

/// How many there are.
pub const FIELDS: usize = 17;

/// What is typed, field by field.
pub type Typed = [String; FIELDS];

/// A part of the sheet: its heading, whether it stands open, its fields.
pub struct Group {
    /// The heading.
    pub name: &'static str,
    /// Whether it stands open.
    pub open: bool,
    /// The fields.
    pub fields: &'static [Field],
    /// The lists under them.
    pub picks: &'static [Pick],
}

/// The parts of the sheet, in order.
pub const GROUPS: [Group; 5] = [
    Group {
        name: "Rounds",
        open: true,
        fields: &[Field::Traveller, Field::Wheel, Field::Tyre, Field::Draw],
        picks: &[],
    },
    Group {
        name: "How they were taken; rim and iron",
        open: false,
        fields: &[Field::Other, Field::Warm, Field::Cramped, Field::Oval],
        picks: &[Pick::Line, Pick::Tape],
    },
    Group {
        name: "Cut and weld",
        open: false,
        fields: &[Field::Cut, Field::Welded],
        picks: &[Pick::Weld],
    },
    Group {
        name: "The day, and the proof",
        open: false,
        fields: &[
            Field::Clearance,
            Field::Carry,
            Field::Wind,
            Field::Air,
            Field::Charred,
            Field::Lying,
        ],
        picks: &[],
    },
    Group {
        name: "The air where it stands",
        open: false,
        fields: &[Field::Months],
        picks: &[],
    },
];

impl Field {
    /// A name that a page is found by.
    pub fn code(self) -> &'static str {
        match self {
            Field::Traveller => "traveller",
            Field::Other => "other",
            Field::Wheel => "wheel",
            Field::Tyre => "tyre",
            Field::Draw => "draw",
            Field::Warm => "warm",
            Field::Cramped => "cramped",
            Field::Oval => "oval",
            Field::Cut => "cut",
            Field::Welded => "welded",
            Field::Clearance => "clearance",
            Field::Carry => "carry",
            Field::Wind => "wind",
            Field::Air => "air",
            Field::Charred => "charred",
            Field::Lying => "lying",
            Field::Months => "months",
        }
    }

    /// Whether a round is typed, run by run.
    pub fn has_runs(self) -> bool {
        matches!(
            self,
            Field::Wheel | Field::Tyre | Field::Welded | Field::Lying
        )
    }

    /// The keys a telephone shows: for numbers, unless inches want a slash, or a cold day a minus.
    pub fn keys(self, style: Style) -> &'static str {
        let words = matches!(
            self,
            Field::Other | Field::Warm | Field::Air | Field::Months
        );
        match style.length {
            LengthStyle::Millimetres if !words => "decimal",
            _ => "text",
        }
    }

    /// Its label.
    pub fn label(self, style: Style) -> String {
        style.fill(match self {
            Field::Traveller => "Traveller, once round itself",
            Field::Other => "{tyre} run with another: its number and round (2: 631), or tape",
            Field::Wheel => "Wheel, round the sole",
            Field::Tyre => "{tyre}, round the inside",
            Field::Draw => "{draw} wanted, round",
            Field::Warm => "{tyre} read warm, at °C",
            Field::Cramped => "Joints together, rim cramped",
            Field::Oval => "{tyre} oval: widest less narrowest",
            Field::Cut => "Piece cut out",
            Field::Welded => "{tyre} as welded, round the inside",
            Field::Clearance => "Room as it drops, across (3 mm)",
            Field::Carry => "Carry, in seconds (30)",
            Field::Wind => "Wind, in m/s (a breeze of 5)",
            Field::Air => "Air, in °C (15)",
            Field::Charred => "Sole charred, how deep",
            Field::Lying => "Round over the {tyre}, lying, cold",
            Field::Months => "Humidity in % and °C, January to December: 86 4; 83 5; …",
        })
    }
}
