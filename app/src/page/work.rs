//! Work done on one wheel: what was done to which part, by whom, and what the same part read before and after.

use cartside_core::daybook::{Entry, EntryId, Kind, Says, Unwritten, VehicleView, Work, WorkDone};
use cartside_core::diagnosis::{InTheWay, before_a_draw};
use cartside_core::survey::{Question, Slot};
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::choice::choice;
use crate::correction_key::{correction_key, strong, told};
use crate::fate::Fate;
use crate::looking::Looking;
use crate::markup::{Piece, heard, live, nothing, sheet, tap, typed};
use crate::page::wheel::findings::in_the_way;
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
    /// The code of the part, and those of what was done with a space after each. As text, since each sort of signal is
    /// code of its own.
    place: RwSignal<String>,
    did: RwSignal<String>,
    text: RwSignal<String>,
    by_whom: RwSignal<String>,
}

impl Writing {
    /// Saves it; the fields are emptied only of what was saved.
    fn save(self) {
        let place = Place::from_code(&self.place.get_untracked());
        let did = self.did.get_untracked();
        let did = did.split(' ').filter_map(Work::from_code);
        let done = WorkDone {
            part: Part::At(self.position, place.unwrap_or(Place::Whole)),
            did: did.collect(),
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
                    let _ = self.did.try_set(String::new());
                    let _ = self.text.try_set(String::new());
                    let _ = self.place.try_set(Place::Whole.code());
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
        place: RwSignal::new(Place::Whole.code()),
        did: RwSignal::new(String::new()),
        text: RwSignal::new(String::new()),
        by_whom: RwSignal::new(shop.preferences.get_untracked().person),
    };
    sheet!(
        "<main class=page data-page=work><h1>Work done: {}</h1>{}{}\
         <a class=\"key key-plain\" href={}>To the wheel</a></main>",
        words::place::wheel_at(position),
        live(move || match looking.get() {
            Some(looking) => form(writing, &looking),
            None => no_wheel(),
        }),
        live(move || written(shop, position)),
        Route::Wheel(id, position).href()
    )
}

fn form(writing: Writing, looking: &Looking) -> Piece {
    let shop = writing.shop;
    let ways = before_a_draw(&looking.judgement);
    sheet!(
        "<section class=stack><label class=field>Part<select value={} on:change={}>{}</select></label>{}\
         <label class=field>More about it{}</label><label class=field>By whom\
         <input type=text autocomplete=off maxlength=80 value={} on:input={}/></label>\
         <button type=button class=\"key key-main\" data-key=save-work on:click={}>Save the work</button></section>",
        writing.place.get(),
        heard(move |event| writing.place.set(typed(&event))),
        places(looking, shop.style()),
        live(move || sorts(writing, shop.style(), &ways)),
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
        let name = match place {
            Place::Whole => words::outcome::whole_or_tyre(style),
            _ => words::place::place(place, Some(&looking.wheel), style),
        };
        sheet!(
            "<option value={}>{}</option>",
            place.code(),
            words::capital(&name)
        )
    };
    parts.map(one).collect()
}

/// The sorts of work, of which several may be chosen.
fn sorts(writing: Writing, style: Style, ways: &[InTheWay]) -> Piece {
    let chosen = writing.did.get();
    let mut keys: Vec<Piece> = Vec::new();
    let draws = chosen.split(' ').any(|it| it == Work::Contracted.code());
    for work in Work::ALL {
        let code = format!("{} ", work.code());
        keys.push(choice(
            work.code(),
            chosen.split(' ').any(|it| it == work.code()),
            words::outcome::work(*work, style).into(),
            tap(move || {
                // No code of a sort ends with that of another.
                writing.did.update(|did| {
                    if !words::within::take_out(did, &code) {
                        did.push_str(&code);
                    }
                });
            }),
        ));
    }
    sheet!(
        "<div class=stack data-step=work><h2>What was done?</h2><div class=choices>{}</div>{}</div>",
        keys,
        draws.then(|| in_the_way(ways))
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
const BEFORE: When = ("before", "Before");
const AFTER: When = ("after", "After");

/// For each question, what this part read last before an entry of this number, and first after it.
fn readings<'a>(vehicle: &VehicleView<'_, 'a>, part: Part, n: u64) -> Vec<(When, &'a Entry)> {
    let mut found: Vec<(When, &'a Entry)> = Vec::new();
    for thread in vehicle.threads(&Kind::Reading) {
        for entry in thread.entries() {
            let slot = Slot::from_code(&entry.slot).filter(|slot| tells_of(slot, part));
            if slot.is_some() && !thread.struck() && matches!(entry.says, Says::Reading(_)) {
                take(&mut found, entry, n);
            }
        }
    }
    found
}

/// Whether a reading tells of work on this part. The tyre goes by the whole wheel, and so do the gaps under it and the
/// joints it draws together.
fn tells_of(slot: &Slot, part: Part) -> bool {
    let whole = part == Part::At(slot.position, Place::Whole);
    let drawn = matches!(
        slot.question,
        Question::TyreGap | Question::TyreRing | Question::JointGap
    );
    slot.part() == part || (whole && drawn)
}

/// Keeps an entry if it is nearer to this number than what is kept of its slot on that side.
fn take<'a>(found: &mut Vec<(When, &'a Entry)>, entry: &'a Entry, n: u64) {
    let after = entry.n > n;
    let when = if after { AFTER } else { BEFORE };
    let same = |(of, other): &&mut (When, &Entry)| *of == when && other.slot == entry.slot;
    match found.iter_mut().find(same) {
        Some((_, kept)) if (entry.n < kept.n) == after => *kept = entry,
        Some(_) => {}
        None => {
            // Before stands above after, question by question.
            let at = found.iter().position(|(_, other)| other.slot == entry.slot);
            let at = at.map_or(found.len(), |at| at + usize::from(after));
            found.insert(at, (when, entry));
        }
    }
}
