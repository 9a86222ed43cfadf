//! The choices of a beginning: which wheels, and counts with any other number beside the usual ones.

use std::rc::Rc;

use cartside_core::wheel::{Position, VehicleKind};
use cartside_core::words;
use leptos::prelude::*;

use crate::component::choice::plain_choice;
use crate::component::number_pad::{DIGITS, number_pad};
use crate::draft;
use crate::markup::{Piece, sheet, tap};
use crate::workshop::Workshop;

/// Which wheels are looked at.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum WheelChoice {
    /// All that such a vehicle has.
    All,
    /// One.
    One(Position),
}

impl WheelChoice {
    /// The word that stands for it in the state of the page.
    pub fn code(self) -> &'static str {
        match self {
            WheelChoice::All => "all",
            WheelChoice::One(position) => position.code(),
        }
    }

    /// What stands on its key.
    pub fn words(self) -> String {
        match self {
            WheelChoice::All => "all wheels".to_owned(),
            WheelChoice::One(position) => words::place::wheel_at(position),
        }
    }

    /// Where these wheels stand.
    pub fn positions(self, kind: VehicleKind) -> Vec<Position> {
        match self {
            WheelChoice::All => kind.positions().to_vec(),
            WheelChoice::One(position) => vec![position],
        }
    }
}

/// What can be chosen of the wheels of such a vehicle.
pub fn wheel_choices(kind: VehicleKind) -> Vec<WheelChoice> {
    let each = kind.positions().iter().copied().map(WheelChoice::One);
    match kind.positions() {
        [_] => each.collect(),
        _ => [WheelChoice::All].into_iter().chain(each).collect(),
    }
}

/// The number pad beside the usual counts. Copies are the same; its signals live as long as the page.
#[derive(Clone, Copy)]
pub struct Pad {
    shop: Workshop,
    /// The name of the draft of what is typed.
    draft: &'static str,
    open: RwSignal<bool>,
    typed: RwSignal<String>,
    refused: RwSignal<String>,
}

impl Pad {
    /// A pad that is not yet open, with the name of the draft of what is typed on it.
    pub fn closed(shop: Workshop, draft: &'static str) -> Pad {
        Pad {
            shop,
            draft,
            open: RwSignal::new(false),
            typed: RwSignal::new(String::new()),
            refused: RwSignal::new(String::new()),
        }
    }

    /// Puts the pad away.
    pub fn close(self) {
        self.open.set(false);
    }

    /// Opens the pad with nothing typed but what was typed before and not taken, or puts it away.
    fn turn(self) {
        self.typed.set(String::new());
        self.refused.set(String::new());
        self.open.set(!self.open.get_untracked());
    }
}

/// What takes a count.
pub type Take = Rc<dyn Fn(u16)>;

/// The usual counts as keys, and a number pad for any other.
pub fn counts(usual: &'static [u16], chosen: Option<u16>, pad: Pad, take: &Take) -> Piece {
    let keys = usual.iter().map(|&count| {
        let (take, words) = (Rc::clone(take), count.to_string());
        plain_choice(
            words.clone().into(),
            chosen == Some(count),
            words.into(),
            tap(move || take(count)),
        )
    });
    let unusual = chosen.filter(|count| !usual.contains(count));
    let other = unusual.map_or_else(|| "Other".to_owned(), |count| count.to_string());
    let other_pad = pad.open.get().then(|| {
        let take = Rc::clone(take);
        number_pad(
            "Another number",
            &DIGITS,
            pad.typed,
            pad.draft.to_owned(),
            move || pad.refused.get(),
            move || accept(pad, &take),
            move || pad.close(),
        )
    });
    sheet!(
        "<div class=numbers>{}{}</div>{}",
        keys.collect::<Vec<Piece>>(),
        plain_choice(
            "other".into(),
            unusual.is_some(),
            other.into(),
            tap(move || pad.turn()),
        ),
        other_pad
    )
}

fn accept(pad: Pad, take: &Take) {
    let typed = pad.typed.get_untracked();
    match typed.trim().parse() {
        Ok(count) => {
            pad.close();
            draft::drop_it(pad.shop, pad.draft.to_owned());
            take(count);
        }
        Err(_) => pad.refused.set(format!(
            "“{typed}” was typed; a whole number such as 18 is wanted. Nothing was changed."
        )),
    }
}
