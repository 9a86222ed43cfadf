//! The day book: every vehicle, the latest written first or by the day to look again, and the search among them.

use cartside_core::daybook::Stamp;
use cartside_core::diagnosis::Standing;
use cartside_core::paper::summary::Summary;
use cartside_core::words;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::clock;
use crate::component::choice::plain_choice;
use crate::component::mark::standing_mark;
use crate::component::reminder::reminder;
use crate::demonstration;
use crate::folding::{folded, holds};
use crate::markup::{Piece, heard, live, sheet, tap, typed};
use crate::route::Route;
use crate::storage::Which;
use crate::wording::counted;
use crate::workshop::{Workshop, workshop};

/// How many rows are laid out before more are asked for: the keys below the list stay within reach.
const FIRST: usize = 50;

/// What is sought among the vehicles and in which order they stand, as long as the app runs: who comes back from a
/// vehicle finds the list as it was.
#[derive(Clone, Copy)]
pub struct Seeking {
    text: RwSignal<String>,
    by_day: RwSignal<bool>,
    all: RwSignal<bool>,
}

impl Seeking {
    /// Nothing is sought, the latest written stands first.
    pub fn new() -> Seeking {
        Seeking {
            text: RwSignal::new(String::new()),
            by_day: RwSignal::new(false),
            all: RwSignal::new(false),
        }
    }
}

/// The day book: every vehicle, the latest first.
pub fn page() -> Piece {
    let shop = workshop();
    let seeking = expect_context::<Seeking>();
    let several = Memo::new(move |_| shop.list.with(|list| list.len() > 1));
    let texts = Memo::new(move |_| searched(shop));
    sheet!(
        "<main class=page data-page=book><h1>Day book</h1>\
         <a class=\"key key-main\" href=#/begin>Begin a vehicle</a>{}{}{}{}</main>",
        reminder(shop),
        live(move || several.get().then(|| search(seeking))),
        live(move || shop.list.with(|list| vehicles(list, shop, seeking, texts))),
        live(move || elsewhere(shop))
    )
}

/// The ways to other pages, and into the demonstration.
fn elsewhere(shop: Workshop) -> Piece {
    let own = shop.which.get() == Which::Own;
    let demonstration = own.then(|| {
        sheet!(
            "<button type=button class=\"key rest\" on:click={}>Open the demonstration</button>",
            tap(move || spawn_local(demonstration::enter(shop)))
        )
    });
    sheet!(
        "<div class=choices><a class=key href=#/carry-out>Carry out</a>\
         <a class=key href=#/bring-in>Bring in</a><a class=key href=#/kept>What is kept</a>\
         <a class=key href=#/preferences>Preferences</a>{}</div>",
        demonstration
    )
}

/// The field to search by and the keys of the order.
fn search(seeking: Seeking) -> Piece {
    let order = move || {
        let way = |label: &'static str, by_day| {
            let ear = tap(move || seeking.by_day.set(by_day));
            let chosen = seeking.by_day.get() == by_day;
            plain_choice(label.into(), chosen, label.into(), ear)
        };
        sheet!(
            "<div class=choices data-order>{}{}</div>",
            way("Last written", false),
            way("Due first", true)
        )
    };
    sheet!(
        "<section class=stack><label class=field>Search\
         <input type=search autocomplete=off maxlength=80 data-search value={} on:input={}/></label>{}</section>",
        seeking.text.get_untracked(),
        heard(move |event| {
            seeking.all.set(false);
            seeking.text.set(typed(&event));
        }),
        live(order)
    )
}

/// What of each vehicle is searched: name, kind, what is written of it as a whole.
fn searched(shop: Workshop) -> Vec<String> {
    let style = shop.style();
    let text = |summary: &Summary| {
        let kind = summary
            .kind
            .map(|kind| words::term::vehicle_kind(kind, style));
        folded(&[&summary.name, kind.unwrap_or_default(), &summary.also].join(" "))
    };
    shop.list.with(|list| list.iter().map(text).collect())
}

fn vehicles(list: &[Summary], shop: Workshop, seeking: Seeking, texts: Memo<Vec<String>>) -> Piece {
    if list.is_empty() {
        return sheet!(
            "<section class=card><h2>Nothing is written yet</h2>\
             <p>Four taps begin a vehicle: its kind, which wheels, how many spokes, how many felloes. \
             All else is asked when it is needed, and everything can be left open.</p>\
             <p>To try it first, open the demonstration: a book of its own, with an invented cart in it.</p></section>"
        );
    }
    let sought = seeking.text.with(|text| folded(text));
    let mut found: Vec<&Summary> = texts.with(|texts| {
        let both = list.iter().zip(texts);
        let held = both.filter(|(_, text)| holds(text, &sought));
        held.map(|(summary, _)| summary).collect()
    });
    if seeking.by_day.get() {
        found = by_day(&found);
    }
    let shown = if seeking.all.get() {
        found.len()
    } else {
        FIRST
    };
    let today = clock::now();
    let rows = found.iter().take(shown);
    let rows: Vec<Piece> = rows
        .map(|summary| one_vehicle(summary, shop, &today))
        .collect();
    let more = found.len().saturating_sub(rows.len());
    let more = (more > 0).then(|| {
        sheet!(
            "<button type=button class=key data-key=all on:click={}>{}</button>",
            tap(move || seeking.all.set(true)),
            format!("Show the other {more}")
        )
    });
    sheet!(
        "<p class=dim role=status data-found={}>{}</p><ul class=\"list vehicles\">{}</ul>{}",
        found.len().to_string(),
        told(found.len(), list.len(), sought.trim().is_empty()),
        rows,
        more
    )
}

fn told(found: usize, of: usize, unsought: bool) -> String {
    match found {
        _ if unsought => counted(of, "vehicle", "vehicles"),
        0 => format!(
            "None of {of} holds all these words: names, kinds, remarks on the whole and places are searched."
        ),
        _ => format!("{found} of {of} vehicles"),
    }
}

/// The one to be looked at soonest first, those without a day last; of one day they stay as they stood.
fn by_day<'s>(found: &[&'s Summary]) -> Vec<&'s Summary> {
    let mut dated: Vec<&Summary> = Vec::new();
    for summary in found.iter().filter(|summary| summary.look_again.is_some()) {
        let at = dated.partition_point(|other| other.look_again <= summary.look_again);
        dated.insert(at, summary);
    }
    dated.extend(found.iter().filter(|summary| summary.look_again.is_none()));
    dated
}

fn one_vehicle(summary: &Summary, shop: Workshop, now: &str) -> Piece {
    let (name, under) = titles(summary, shop);
    let classes = if summary.struck {
        "strong capital struck"
    } else {
        "strong capital"
    };
    let again = summary.look_again.as_ref().map(|by| {
        let today = now.get(..10).unwrap_or_default();
        let overdue = if by.as_str() < today { "yes" } else { "no" };
        let said = words::when::look_again(by, today);
        sheet!("<span class=again data-overdue={}>{}</span>", overdue, said)
    });
    sheet!(
        "<li><a class=item href={} data-vehicle={} data-standing={}><span class=whole-row>\
         <span class={}>{}</span><span class=dim>{}</span>{}</span>{}</a></li>",
        Route::Vehicle(summary.vehicle).href(),
        summary.vehicle.hex(),
        // A vehicle without a standing is without the attribute too.
        summary.standing.map(Standing::code),
        classes,
        name,
        under,
        again,
        summary.standing.map(standing_mark)
    )
}

/// The name, or the kind where there is none; and what else is known in a line.
pub fn titles(summary: &Summary, shop: Workshop) -> (String, String) {
    let kind = summary
        .kind
        .map(|kind| words::term::vehicle_kind(kind, shop.style()).to_owned());
    let kind = kind.unwrap_or_else(|| "a vehicle not described here".to_owned());
    let named = !summary.name.is_empty();
    let name = if named {
        summary.name.clone()
    } else {
        kind.clone()
    };
    let parts = [
        named.then_some(kind),
        summary.struck.then(|| "struck out".to_owned()),
        Some(counted(summary.wheels, "wheel", "wheels")),
        Some(day(&summary.last_day)),
        (summary.disputes > 0).then(|| format!("{} in dispute", summary.disputes)),
    ];
    (
        name,
        parts.into_iter().flatten().collect::<Vec<_>>().join(" · "),
    )
}

/// A day as it is shown; one of another form as it stands.
fn day(claimed: &str) -> String {
    let stamp = Stamp::read(&format!("{claimed}T00:00:00+00:00"));
    stamp.map_or_else(|| claimed.to_owned(), |stamp| words::when::day(&stamp))
}
