//! Work done on one wheel: what was done to which part, by whom, and what the same part read before and after.

use cartside_core::daybook::{
    Entry, EntryId, Kind, Says, Thread, Unwritten, VehicleView, Work, WorkDone,
};
use cartside_core::survey::Slot;
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::choice::choice;
use crate::correction_key::{correction_key, strong, told};
use crate::fate::Fate;
use crate::looking::Looking;
use crate::markup::{Piece, heard, live, nothing, sheet, tap, typed};
use crate::page::wheel::no_wheel;
use crate::route::Route;
use crate::wording;
use crate::workshop::{Notice, Workshop, workshop};

/// Work being written down. Copies are the same; its signals live as long as its page.
#[derive(Clone, Copy)]
struct Writing {
    shop: Workshop,
    id: EntryId,
    position: Position,
    place: RwSignal<Place>,
    did: RwSignal<Vec<Work>>,
    text: RwSignal<String>,
    by_whom: RwSignal<String>,
}

impl Writing {
    /// Saves it; the fields are emptied only of what was saved.
    fn save(self) {
        let done = WorkDone {
            part: Part::At(self.position, self.place.get_untracked()),
            did: self.did.get_untracked(),
            text: self.text.get_untracked().trim().to_owned(),
            by_whom: self.by_whom.get_untracked().trim().to_owned(),
        };
        if done.did.is_empty() && done.text.is_empty() {
            self.shop.notice.set(Notice::Trouble(
                "There is nothing to save yet: choose what was done, or write it. Nothing was changed.".to_owned(),
            ));
            return;
        }
        let Some(opened) = self.shop.in_hand() else {
            return;
        };
        let view = opened.book.view();
        let wheel = view.vehicle(self.id).wheel(self.position);
        let style = self.shop.preferences.with_untracked(|kept| kept.style());
        let what = words::outcome::work_done(&done, wheel.map(|(wheel, _)| wheel), style);
        let entry = Unwritten::new(Some(self.id), Says::Work(done));
        let described = |entry: Unwritten| match wheel {
            Some((_, described_by)) => entry.described_by(described_by),
            None => entry,
        };
        if let Some(entry) = entry.map(described) {
            self.shop.write_then(&entry, what, move |stored| {
                if stored {
                    // The page may be gone by now, and its signals with it.
                    let _ = self.did.try_set(Vec::new());
                    let _ = self.text.try_set(String::new());
                }
            });
        }
    }
}

/// Work done on one wheel.
pub fn page(id: EntryId, position: Position) -> Piece {
    let shop = workshop();
    let looking = Looking::follow(shop, position);
    let writing = Writing {
        shop,
        id,
        position,
        place: RwSignal::new(Place::Whole),
        did: RwSignal::new(Vec::new()),
        text: RwSignal::new(String::new()),
        by_whom: RwSignal::new(shop.preferences.get_untracked().person),
    };
    let there = Memo::new(move |_| looking.with(Option::is_some));
    sheet!(
        "<main class=page data-page=work><h1>Work done: {}</h1>{}{}\
         <a class=\"key key-plain\" href={}>To the wheel</a></main>",
        words::place::wheel_at(position),
        live(move || if there.get() {
            form(writing, looking)
        } else {
            no_wheel()
        }),
        live(move || written(shop, position)),
        Route::Wheel(id, position).href()
    )
}

fn form(writing: Writing, looking: Memo<Option<Looking>>) -> Piece {
    let shop = writing.shop;
    sheet!(
        "<section class=card><label class=field>Part<select on:change={}>{}</select></label>{}\
         <label class=field>More about it{}</label><label class=field>By whom\
         <input type=text autocomplete=off maxlength=80 value={} on:input={}/></label>\
         <button type=button class=\"key key-main\" data-key=save-work on:click={}>Save the work</button></section>",
        heard(move |event| {
            let place = Place::from_code(&typed(&event));
            writing.place.set(place.unwrap_or(Place::Whole));
        }),
        live(move || looking.get().map(|looking| places(&looking, shop.style()))),
        live(move || sorts(writing, shop.style())),
        live(move || sheet!(
            "<textarea maxlength=2000 value={} on:input={}/>",
            writing.text.get(),
            heard(move |event| writing.text.set(typed(&event)))
        )),
        writing.by_whom.get_untracked(),
        heard(move |event| writing.by_whom.set(typed(&event))),
        tap(move || writing.save())
    )
}

/// The parts of the wheel to choose from.
fn places(looking: &Looking, style: Style) -> Vec<Piece> {
    let places = looking.places().into_iter();
    let parts = places.filter(|place| !matches!(place, Place::Between(_)));
    let one = |place: Place| {
        let name = words::place::place(place, Some(&looking.wheel), style);
        sheet!(
            "<option value={}>{}</option>",
            place.code(),
            words::capital(&name)
        )
    };
    parts.map(one).collect()
}

/// The sorts of work, of which several may be chosen.
fn sorts(writing: Writing, style: Style) -> Piece {
    let chosen = writing.did.get();
    let keys = Work::ALL.iter().map(|work| {
        choice(
            work.code(),
            chosen.contains(work),
            words::outcome::work(*work, style).into(),
            tap(move || {
                writing
                    .did
                    .update(|did| match did.iter().position(|it| it == work) {
                        Some(at) => drop(did.remove(at)),
                        None => did.push(*work),
                    });
            }),
        )
    });
    sheet!(
        "<div class=stack data-step=work><h2>What was done?</h2><div class=choices>{}</div></div>",
        keys.collect::<Vec<Piece>>()
    )
}

/// What was done to this wheel, the latest first.
fn written(shop: Workshop, position: Position) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let mut items: Vec<Piece> = Vec::new();
    for thread in vehicle.threads(&Kind::Work) {
        for entry in thread.entries() {
            let fate = Fate::of(thread, entry);
            if let Says::Work(done) = &entry.says
                && done.part.position() == Some(position)
                && fate != Fate::Replaced
            {
                items.push(item(shop, &vehicle, entry, done.part, fate));
            }
        }
    }
    let none = items
        .is_empty()
        .then(|| sheet!("<p class=dim>No work is written down for this wheel.</p>"));
    items.reverse();
    sheet!(
        "<section class=stack><h2>Done so far</h2>{}<ul class=list>{}</ul></section>",
        none,
        items
    )
}

fn item(
    shop: Workshop,
    vehicle: &VehicleView<'_, '_>,
    entry: &Entry,
    part: Part,
    fate: Fate,
) -> Piece {
    let style = shop.style();
    let says = wording::heading(vehicle, entry, style);
    let beside = readings(vehicle, part, entry.n)
        .into_iter()
        .map(|(when, reading)| {
            sheet!(
                "<li data-beside={}><span class=strong>{}:</span> {}, {}</li>",
                when.0,
                when.1,
                wording::says(vehicle, reading, style),
                words::when::day(&reading.at)
            )
        });
    let correct = fate.correction();
    sheet!(
        "<li class=item data-work={} data-fate={}>{}<ul class=whole-row>{}</ul>{}</li>",
        entry.id.hex(),
        fate.code(),
        told(says, strong(fate), fate, nothing(), wording::hand(entry)),
        beside.collect::<Vec<Piece>>(),
        correct.map(|how| correction_key(shop, entry.id, how))
    )
}

/// The word for the state of the page, and the one that is shown.
type When = (&'static str, &'static str);

/// For each question, what this part read last before an entry of this number, and first after it.
fn readings<'a>(vehicle: &VehicleView<'_, 'a>, part: Part, n: u64) -> Vec<(When, &'a Entry)> {
    let threads = vehicle.threads(&Kind::Reading);
    let threads = threads.into_iter().filter(|thread| !thread.struck());
    let mut taken: Vec<&'a Entry> = threads.flat_map(Thread::entries).copied().collect();
    taken.retain(|entry| {
        let slot = Slot::from_code(&entry.slot);
        slot.is_some_and(|slot| slot.part() == part) && entry.is_read() && !entry.strikes()
    });
    taken.sort_by_key(|entry| entry.order());
    let mut slots: Vec<&str> = taken.iter().map(|entry| entry.slot.as_str()).collect();
    slots.sort_unstable();
    slots.dedup();
    let mut found = Vec::new();
    for slot in slots {
        let mut here = taken.iter().copied().filter(|entry| entry.slot == slot);
        let before = here.clone().take_while(|entry| entry.n < n).last();
        found.extend(before.map(|entry| (("before", "Before"), entry)));
        let after = here.find(|entry| entry.n > n);
        found.extend(after.map(|entry| (("after", "After"), entry)));
    }
    found
}
