//! How one wheel is built: what each felloe carries, rim, tyre, arm and keeper. What is saved corrects what was
//! written, and every reading keeps the description it was taken against.

mod felloe_keys;
mod writing;

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Arm, Felloes, Keeper, Position, Rim, Tyre, Wheel};
use cartside_core::words::{self, Style, term};
use leptos::prelude::*;

use crate::component::choice::choice;
use crate::markup::{Piece, live, sheet, tap};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};
use felloe_keys::felloe_keys;

/// What is set so far and not yet saved.
#[derive(Clone)]
pub struct Setting {
    /// Spokes of each felloe.
    pub carried: Vec<u16>,
    rim: Option<Rim>,
    tyre: Option<Tyre>,
    arm: Option<Arm>,
    keeper: Option<Keeper>,
}

impl Setting {
    fn of(wheel: Option<Wheel>) -> Setting {
        match wheel {
            Some(wheel) => Setting {
                carried: wheel.felloes.carried().to_vec(),
                rim: wheel.rim,
                tyre: wheel.tyre,
                arm: wheel.arm,
                keeper: wheel.keeper,
            },
            None => Setting {
                carried: vec![2; 6],
                rim: None,
                tyre: None,
                arm: None,
                keeper: None,
            },
        }
    }

    /// The wheel as it is set, or why its numbers make none.
    fn wheel(self) -> Result<Wheel, String> {
        let felloes = Felloes::new(self.carried).map_err(|refusal| refusal.to_string())?;
        Ok(Wheel {
            felloes,
            rim: self.rim,
            tyre: self.tyre,
            arm: self.arm,
            keeper: self.keeper,
        })
    }

    fn has(&self, choice: Choice) -> bool {
        match choice {
            Choice::Rim(rim) => self.rim == Some(rim),
            Choice::Tyre(tyre) => self.tyre == Some(tyre),
            Choice::Arm(arm) => self.arm == Some(arm),
            Choice::Keeper(keeper) => self.keeper == Some(keeper),
        }
    }

    /// Chooses; a second tap on what is chosen leaves it open again.
    fn take(&mut self, choice: Choice) {
        let new = !self.has(choice);
        match choice {
            Choice::Rim(rim) => self.rim = new.then_some(rim),
            Choice::Tyre(tyre) => self.tyre = new.then_some(tyre),
            Choice::Arm(arm) => self.arm = new.then_some(arm),
            Choice::Keeper(keeper) => self.keeper = new.then_some(keeper),
        }
    }
}

/// Changes what is set so far. One function for every change, so that following a signal is not made anew for each.
pub fn change(setting: RwSignal<Setting>, by: &dyn Fn(&mut Setting)) {
    setting.update(|setting| by(setting));
}

/// What can be chosen of rim, tyre, arm and keeper.
#[derive(Clone, Copy)]
enum Choice {
    Rim(Rim),
    Tyre(Tyre),
    Arm(Arm),
    Keeper(Keeper),
}

impl Choice {
    fn code(self) -> &'static str {
        match self {
            Choice::Rim(rim) => rim.code(),
            Choice::Tyre(tyre) => tyre.code(),
            Choice::Arm(arm) => arm.code(),
            Choice::Keeper(keeper) => keeper.code(),
        }
    }

    fn words(self, style: Style) -> String {
        match self {
            Choice::Rim(rim) => term::rim(rim, style),
            Choice::Tyre(tyre) => term::tyre(tyre, style),
            Choice::Arm(arm) => term::arm(arm).to_owned(),
            Choice::Keeper(keeper) => term::keeper(keeper, style).to_owned(),
        }
    }
}

/// How one wheel is built: of which vehicle, and where the wheel stands.
pub fn page(id: EntryId, position: Position) -> Piece {
    let shop = workshop();
    // Taken once, so that nothing resets a key while somebody is setting them.
    let setting = RwSignal::new(Setting::of(untrack(|| described(shop, position))));
    sheet!(
        "<main class=page data-page=build><h1 class=capital>{}: how it is built</h1>{}{}\
         <a class=\"key key-plain\" href={}>To the wheel</a></main>",
        words::place::wheel_at(position),
        live(move || settings(setting, shop.style())),
        save(shop, id, position, setting),
        Route::Wheel(id, position).href()
    )
}

/// The wheel as it is described, if it is.
fn described(shop: Workshop, position: Position) -> Option<Wheel> {
    let opened = shop.opened.get()?;
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let (wheel, _) = vehicle.wheel(position).filter(|_| !vehicle.struck())?;
    Some(wheel.clone())
}

/// Felloes, rim, tyre, arm and keeper.
fn settings(setting: RwSignal<Setting>, style: Style) -> Piece {
    let now = setting.get();
    let keys = |choices: &[Choice]| -> Vec<Piece> {
        let key = |&one: &Choice| {
            choice(
                one.code(),
                now.has(one),
                one.words(style).into(),
                tap(move || change(setting, &|setting| setting.take(one))),
            )
        };
        choices.iter().map(key).collect()
    };
    sheet!(
        "{}<section class=stack data-step=rim><h2>Rim</h2><div class=choices>{}</div></section>\
         <section class=stack data-step=tyre><h2>Tyre</h2><div class=choices>{}</div></section>\
         <section class=stack data-step=arm><h2>Arm</h2><div class=choices>{}</div></section>\
         <section class=stack data-step=keeper><h2>What keeps it on</h2><div class=choices>{}</div></section>",
        felloe_keys(setting, &now.carried),
        keys(&Rim::ALL.map(Choice::Rim)),
        keys(&Tyre::ALL.map(Choice::Tyre)),
        keys(&Arm::ALL.map(Choice::Arm)),
        keys(&Keeper::ALL.map(Choice::Keeper))
    )
}

/// The key that saves, and what it does to what was written.
fn save(shop: Workshop, id: EntryId, position: Position, setting: RwSignal<Setting>) -> Piece {
    let refused = RwSignal::new(String::new());
    let save = move || match setting.get_untracked().wheel() {
        Err(said) => refused.set(said),
        Ok(wheel) => {
            refused.set(String::new());
            store(shop, id, position, wheel);
        }
    };
    let corrects = move || {
        described(shop, position).map(|_| {
            sheet!(
                "<p>Saving corrects what was written of this wheel. The earlier description stays in the book, \
                 and readings taken against it are kept.</p>"
            )
        })
    };
    sheet!(
        "<section class=stack>{}<p class=refusal role=alert>{}</p>\
         <button type=button class=\"key key-main\" data-key=save on:click={}>Save how it is built</button></section>",
        live(corrects),
        live(move || refused.get()),
        tap(save)
    )
}

fn store(shop: Workshop, id: EntryId, position: Position, wheel: Wheel) {
    if let Some((unwritten, what)) = writing::description(shop, id, position, wheel) {
        shop.write_then(&unwritten, what, move |stored| {
            if stored {
                Route::Wheel(id, position).go();
            }
        });
    }
}
