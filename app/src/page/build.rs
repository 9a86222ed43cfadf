//! How one wheel is built: what each felloe carries, rim, tyre, arm and keeper. What is saved corrects what was
//! written, and every reading keeps the description it was taken against.

mod felloe_keys;
mod writing;

use cartside_core::daybook::EntryId;
use cartside_core::quantity::spelling;
use cartside_core::wheel::{Arm, Felloes, Keeper, Position, Rim, Size, Sizes, Tyre, Wheel};
use cartside_core::words::{self, Style, term};
use leptos::prelude::*;

use crate::component::choice::choice;
use crate::component::terms::terms;
use crate::markup::{self, Piece, heard, live, sheet, tap};
use crate::preferences::Preferences;
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
    /// Sizes as they are typed, in the order of the sizes.
    sizes: Vec<String>,
    was: Sizes,
}

impl Setting {
    fn of(wheel: Option<Wheel>, style: Style) -> Setting {
        let said = |size| wheel.as_ref().and_then(|wheel| wheel.sizes.get(size));
        let sizes = Size::ALL.map(|size| said(size).map(|length| style.size(length)));
        let sizes = sizes.map(Option::unwrap_or_default).to_vec();
        let was = wheel.as_ref().map(|wheel| wheel.sizes).unwrap_or_default();
        match wheel {
            Some(wheel) => Setting {
                carried: wheel.felloes.carried().to_vec(),
                rim: wheel.rim,
                tyre: wheel.tyre,
                arm: wheel.arm,
                keeper: wheel.keeper,
                sizes,
                was,
            },
            None => Setting {
                carried: vec![2; 6],
                rim: None,
                tyre: None,
                arm: None,
                keeper: None,
                sizes,
                was,
            },
        }
    }

    /// The wheel as it is set, or why its numbers make none.
    fn wheel(self, style: Style) -> Result<Wheel, String> {
        let mut sizes = Sizes::default();
        for (size, text) in Size::ALL.into_iter().zip(&self.sizes) {
            let was = self.was.get(size);
            // What could only be shown rounded stays as it was unless it is typed anew.
            let length = match text.trim() {
                "" => None,
                _ if was.is_some_and(|was| style.size(was) == *text) => was,
                text => {
                    let length = spelling::parse(text, size.range(), style.length.bare_unit());
                    Some(length.map_err(|refusal| refusal.to_string())?)
                }
            };
            sizes = sizes.with(size, length);
        }
        let felloes = Felloes::new(self.carried).map_err(|refusal| refusal.to_string())?;
        Ok(Wheel {
            felloes,
            rim: self.rim,
            tyre: self.tyre,
            arm: self.arm,
            keeper: self.keeper,
            sizes,
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
    let setting = RwSignal::new(Setting::of(
        untrack(|| described(shop, position)),
        shop.style(),
    ));
    sheet!(
        "<main class=page data-page=build><h1 class=capital>{}: how it is built</h1>{}{}{}\
         <a class=\"key key-plain\" href={}>To the wheel</a></main>",
        words::place::wheel_at(position),
        live(move || built_of(shop.style())),
        live(move || sheet!(
            "{}{}{}",
            as_the_other(shop, position, setting),
            settings(setting, shop.style()),
            sizes(setting, shop.style())
        )),
        save(shop, id, position, setting),
        Route::Wheel(id, position).href()
    )
}

/// The words that this page chooses by, explained.
fn built_of(style: Style) -> Option<Piece> {
    let rims = Rim::ALL.map(|rim| term::rim(rim, style));
    let tyres = Tyre::ALL.map(|tyre| term::tyre(tyre, style));
    let arms = Arm::ALL.map(|arm| term::arm(arm).to_owned());
    let keepers = Keeper::ALL.map(|keeper| term::keeper(keeper, style).to_owned());
    let sizes = Size::ALL.map(|size| term::size(size, style));
    let all = [&rims[..], &tyres, &arms, &keepers, &sizes].concat();
    terms(&[&all.join(" / ")], style)
}

/// The key that takes over how the other wheel of the axle is built, where that is described.
fn as_the_other(shop: Workshop, position: Position, setting: RwSignal<Setting>) -> Option<Piece> {
    let pair = position.pair()?;
    let other = described(shop, pair)?;
    let style = shop.style();
    Some(sheet!(
        "<button type=button class=key data-key=as-the-other on:click={}>As the {}</button>",
        tap(move || {
            let like = Setting::of(Some(other.clone()), style);
            setting.set(like);
        }),
        words::place::wheel_at(pair)
    ))
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

/// Fields for the sizes; each may stay empty until it is needed.
fn sizes(setting: RwSignal<Setting>, style: Style) -> Piece {
    let typed = setting.get().sizes;
    let field = |(at, (size, text)): (usize, (Size, String))| {
        sheet!(
            "<label class=field><span class=capital>{}</span>\
             <input type=text autocomplete=off maxlength=40 data-size={} value={} on:input={}/></label>",
            term::size(size, style),
            size.code(),
            text,
            heard(move |event| {
                let text = markup::typed(&event);
                change(setting, &|setting| {
                    if let Some(size) = setting.sizes.get_mut(at) {
                        size.clone_from(&text);
                    }
                });
            })
        )
    };
    let fields = Size::ALL.into_iter().zip(typed).enumerate().map(field);
    sheet!(
        "<section class=stack data-step=sizes><h2>Sizes</h2>\
         <p class=dim>As far as they are known. Dish as built is negative in a wheel built back-dished.</p>{}</section>",
        fields.collect::<Vec<Piece>>()
    )
}

/// The key that saves, and what it does to what was written.
fn save(shop: Workshop, id: EntryId, position: Position, setting: RwSignal<Setting>) -> Piece {
    let refused = RwSignal::new(String::new());
    let save = move || match setting
        .get_untracked()
        .wheel(shop.preferences.with_untracked(Preferences::style))
    {
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
