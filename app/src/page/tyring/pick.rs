//! The lists of the tyring sheet that something is chosen from.

use cartside_core::material::timber::Grain;
use cartside_core::material::{Iron, Species};
use cartside_core::mechanics::Stand;
use cartside_core::tyring::round::{Line, TapeClass};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use super::chosen::Chosen;
use crate::markup::{Piece, heard, live, sheet, typed};

/// A list.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Pick {
    /// The line that was run.
    Line,
    /// The tape, where no traveller is.
    Tape,
    /// Whether the weld was hot.
    Weld,
    /// The iron of the tyre.
    Iron,
    /// Where it stands.
    Stand,
    /// The timber of nave, spokes or felloes.
    Timber(usize),
    /// How hard its side grain is; only where the timber asks for it.
    Grain(usize),
}

/// The lists about iron, timber and place.
pub const BUILT: [Pick; 8] = [
    Pick::Iron,
    Pick::Stand,
    Pick::Timber(0),
    Pick::Grain(0),
    Pick::Timber(1),
    Pick::Grain(1),
    Pick::Timber(2),
    Pick::Grain(2),
];

const HOT: &str = "yes";

impl Pick {
    /// Its label.
    fn name(self) -> &'static str {
        match self {
            Pick::Line => "Line that was run",
            Pick::Tape => "Tape, where no traveller is",
            Pick::Weld => "The weld as it was read",
            Pick::Iron => "Iron",
            Pick::Stand => "It stands in",
            Pick::Timber(0) => "{nave}",
            Pick::Timber(1) => "Spokes",
            Pick::Timber(_) => "{felloe}s",
            Pick::Grain(_) => "Its side grain",
        }
    }

    /// What can be chosen, each with its word on paper.
    fn options(self) -> Vec<(&'static str, String)> {
        let mut all: Vec<(&'static str, String)> = Vec::new();
        let mut add = |code, words: &str| all.push((code, words.to_owned()));
        match self {
            Pick::Line => Line::ALL
                .iter()
                .for_each(|it| add(it.code(), words::tyring::said::line(*it))),
            Pick::Tape => TapeClass::ALL
                .iter()
                .for_each(|it| add(it.code(), it.code())),
            Pick::Weld => {
                add("no", "cold");
                add(HOT, "still hot");
            }
            Pick::Iron => [Iron::NotKnown, Iron::Steel, Iron::Wrought]
                .iter()
                .for_each(|it| add(it.code(), words::tyring::said::iron(*it))),
            Pick::Stand => Stand::ALL
                .iter()
                .for_each(|it| add(it.code(), words::year::stand(*it))),
            Pick::Timber(_) => Species::ALL
                .iter()
                .for_each(|it| add(it.code(), &words::timber::species(*it))),
            Pick::Grain(_) => {
                add("", "not said");
                Grain::ALL
                    .iter()
                    .for_each(|it| add(it.code(), words::timber::grain(*it)));
            }
        }
        all
    }

    /// What is chosen; `None` where this is not asked.
    fn now(self, chosen: &Chosen) -> Option<&'static str> {
        Some(match self {
            Pick::Line => chosen.line.code(),
            Pick::Tape => chosen.tape.code(),
            Pick::Weld if chosen.hot_weld => HOT,
            Pick::Weld => "no",
            Pick::Iron => chosen.iron.code(),
            Pick::Stand => chosen.stand.code(),
            Pick::Timber(at) => chosen.timbers.get(at)?.code(),
            Pick::Grain(at) => {
                chosen.timbers.get(at).filter(|it| it.asks_for_grain())?;
                chosen.grains.get(at)?.map_or("", Grain::code)
            }
        })
    }

    /// Chooses; what is not known leaves it as it was.
    fn choose(self, chosen: &mut Chosen, code: &str) -> Option<()> {
        match self {
            Pick::Line => chosen.line = Line::from_code(code)?,
            Pick::Tape => chosen.tape = TapeClass::from_code(code)?,
            Pick::Weld => chosen.hot_weld = code == HOT,
            Pick::Iron => chosen.iron = Iron::from_code(code)?,
            Pick::Stand => chosen.stand = Stand::from_code(code)?,
            Pick::Timber(at) => *chosen.timbers.get_mut(at)? = Species::from_code(code)?,
            Pick::Grain(at) => *chosen.grains.get_mut(at)? = Grain::from_code(code),
        }
        Some(())
    }
}

/// These lists, each as long as it is asked.
pub fn lists(picks: &'static [Pick], chosen: RwSignal<Chosen>, style: Style) -> Vec<Piece> {
    let each = picks
        .iter()
        .map(|pick| live(move || list(*pick, chosen, style)));
    each.collect()
}

/// Nothing where it is not asked.
fn list(pick: Pick, chosen: RwSignal<Chosen>, style: Style) -> Option<Piece> {
    let now = chosen.with(|it| pick.now(it))?;
    let options = pick.options().into_iter();
    let options = options
        .map(|(code, words)| sheet!("<option value={}>{}</option>", code, words::capital(&words)));
    Some(sheet!(
        "<label class=field><span class=capital>{}</span><select value={} on:change={}>{}</select></label>",
        style.fill(pick.name()),
        now,
        heard(move |event| chosen.update(|chosen| {
            pick.choose(chosen, &typed(&event));
        })),
        options.collect::<Vec<Piece>>()
    ))
}
