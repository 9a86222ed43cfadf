//! One limit: when it is reached, what the shop sets in its place, and what was set before.

use cartside_core::daybook::{LimitSaid, Says, Thread, Threshold, Unwritten};
use cartside_core::diagnosis::{Limit, house_limits};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::mark::grade_mark;
use crate::component::number_pad::{DIGITS, LENGTHS, SHARES, number_pad};
use crate::correction_key::{plain, told};
use crate::draft;
use crate::fate::Fate;
use crate::markup::{Piece, live, nothing, sheet, tap};
use crate::page::unknown;
use crate::route::Route;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// One row of the limits, by its name.
pub fn page(code: &str) -> Piece {
    let Some(row) = house_limits().into_iter().find(|row| row.code() == code) else {
        return unknown::page(&Route::Limit(code.to_owned()).href());
    };
    let shop = workshop();
    let (typed, refused) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    sheet!(
        "<main class=page data-page=limit><h1>Limit</h1>\
         <a class=\"key key-plain\" href={}>To all limits</a>{}{}{}</main>",
        Route::Limits.href(),
        live(move || now(shop, &row)),
        setting(shop, row, typed, refused),
        live(move || history(shop, &row))
    )
}

/// The row as it stands.
fn now(shop: Workshop, row: &Limit) -> Piece {
    let (limits, style) = (shop.limits(), shop.style());
    let code = row.code();
    let in_force = limits.iter().find(|limit| limit.code() == code);
    sheet!(
        "<section class=card data-limit={}><h2 class=capital>{}</h2>{}<p data-in-force>{}</p>\
         <p class=dim>{}</p></section>",
        code,
        words::question::short(row.question, style),
        grade_mark(row.grade),
        words::limit::in_force(row, in_force, style),
        words::limit::as_it_comes(row, style)
    )
}

/// The pad that sets it, and the keys that leave it out or let it be as it comes.
fn setting(
    shop: Workshop,
    row: Limit,
    typed: RwSignal<String>,
    refused: RwSignal<String>,
) -> Piece {
    let keys: &[&str] = match row.threshold() {
        None => return sheet!("<p class=dim>{}</p>", words::limit::FIXED),
        Some(Threshold::Length(_)) => &LENGTHS,
        Some(Threshold::Percent(_)) => &SHARES,
        Some(Threshold::Count(_)) => &DIGITS,
    };
    let pad = number_pad(
        "Set it to",
        keys,
        typed,
        draft_of(&row),
        move || refused.get(),
        move || accept(shop, &row, typed, refused),
        move || Route::Limits.go(),
    );
    sheet!(
        "<section class=card>{}</section>{}",
        pad,
        live(move || others(shop, row))
    )
}

fn accept(shop: Workshop, row: &Limit, typed: RwSignal<String>, refused: RwSignal<String>) {
    let style = shop.style();
    let text = typed.get_untracked();
    let unit = style.unit(row.question);
    let edited = row.typed(&text, unit).and_then(|threshold| {
        row.edited(Some(threshold))?;
        Ok(threshold)
    });
    match edited {
        Err(refusal) => refused.set(words::refusal::typed(refusal, row, style)),
        Ok(threshold) => {
            refused.set(String::new());
            let draft = draft_of(row);
            set(shop, row, Some(threshold), move || {
                draft::drop_it(shop, draft);
                // The page may be gone by now, and its signals with it.
                let _ = typed.try_set(String::new());
            });
        }
    }
}

/// The name of the draft of what is typed for a row.
fn draft_of(row: &Limit) -> String {
    format!("number/limit/{}", row.code())
}

/// Writes what the row is set to, in the place of whatever was set.
fn set(shop: Workshop, row: &Limit, threshold: Option<Threshold>, then: impl FnOnce() + 'static) {
    let code = row.code();
    let said = LimitSaid {
        row: code.clone(),
        threshold,
    };
    let before = untrack(|| of_row(shop, &code, |thread| Some(thread.to_replace())));
    let before = before.unwrap_or_default();
    if let Some(entry) = Unwritten::new(None, Says::Limit(said)) {
        let what = words::outcome::row_words(&code, shop.style());
        shop.write_then(&entry.replacing(before), what, |stored| {
            if stored {
                then();
            }
        });
    }
}

/// The keys that leave the row out, or let it be as it comes again.
fn others(shop: Workshop, row: Limit) -> Piece {
    let code = row.code();
    let used = shop.limits().iter().any(|limit| limit.code() == code);
    let strike = of_row(shop, &code, |thread| {
        let head = thread.counts().into_iter().next()?;
        Some(Unwritten::striking(head, thread.to_replace()))
    });
    let leave_out = used.then(|| {
        sheet!(
            "<button type=button class=key data-key=leave-out on:click={}>Do not use it here</button>",
            tap(move || set(shop, &row, None, || {}))
        )
    });
    let as_it_comes = strike.map(|strike| {
        let what = format!("as it comes: {}", words::outcome::row_words(&code, shop.style()));
        let strike = tap(move || shop.write_then(&strike, what.clone(), |_| {}));
        sheet!(
            "<button type=button class=key data-key=as-it-comes on:click={}>Let it be as it comes</button>",
            strike
        )
    });
    sheet!("<div class=choices>{}{}</div>", leave_out, as_it_comes)
}

/// What was ever set, the latest first.
fn history(shop: Workshop, row: &Limit) -> Option<Piece> {
    of_row(shop, &row.code(), |thread| {
        Some(sheet!(
            "<section class=stack><h2>What was set</h2><ul class=list>{}</ul></section>",
            said_before(thread, shop.style())
        ))
    })
}

fn said_before(thread: &Thread<'_>, style: Style) -> Vec<Piece> {
    let entries = thread.entries().iter().rev();
    let item = |entry: &&_| {
        let fate = Fate::of(thread, entry);
        let says = words::says::heading(entry, None, style);
        sheet!(
            "<li class=item data-entry={} data-fate={}>{}</li>",
            entry.id.hex(),
            fate.code(),
            told(says, plain(fate), fate, nothing(), wording::hand(entry))
        )
    };
    entries.map(item).collect()
}

/// Something of the thread in which the shop sets the row of this name; `None` if it never did.
fn of_row<T>(shop: Workshop, code: &str, take: impl FnOnce(&Thread<'_>) -> Option<T>) -> Option<T> {
    shop.house.with(|house| {
        let view = house.book.view();
        let is_of = |thread: &&Thread<'_>| thread.heads().iter().any(|head| head.slot == code);
        take(view.limits().find(is_of)?)
    })
}
