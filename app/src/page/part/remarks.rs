//! The remarks on one part, and the writing of one.

use cartside_core::daybook::{EntryId, Kind, Says};
use cartside_core::wheel::Part;
use leptos::prelude::*;

use crate::correction_key::{correction_key, plain, told};
use crate::fate::Fate;
use crate::markup::{Piece, heard, live, nothing, sheet, tap, typed};
use crate::picturing::{self, in_latest_visit};
use crate::scribe::Scribe;
use crate::wording;
use crate::workshop::{Notice, Step, Workshop};

/// The remarks on one part.
pub(super) fn remarks(shop: Workshop, id: EntryId, of: Part) -> Piece {
    let text = RwSignal::new(String::new());
    let field = move || {
        let ear = heard(move |event| {
            text.set(typed(&event));
        });
        sheet!("<textarea value={} on:input={}/>", text.get(), ear)
    };
    sheet!(
        "<section class=card><h2>Remarks</h2><label class=field>Remark{}</label>\
        <button type=button class=\"key key-main\" on:click={}>Save the remark</button>{}</section>",
        live(field),
        tap(move || save(shop, id, of, text)),
        live(move || written(shop, of)),
    )
}

/// Saves what is typed; the field is emptied only of what was saved.
fn save(shop: Workshop, id: EntryId, of: Part, text: RwSignal<String>) {
    let typed = text.get_untracked();
    let written = match typed.trim() {
        "" => Err(
            "There is nothing to save yet: write the remark first. Nothing was changed.".to_owned(),
        ),
        said => write(shop, id, of, said.to_owned()),
    };
    match written {
        Ok(scribe) => {
            let what = picturing::told(shop, &scribe.entries);
            shop.save_then(scribe, what, move |stored| {
                if stored && text.try_get_untracked() == Some(typed) {
                    text.try_set(String::new());
                }
            });
        }
        Err(sentence) => shop.notice.set(Notice::Trouble(sentence)),
    }
}

fn write(shop: Workshop, id: EntryId, of: Part, said: String) -> Step<Scribe> {
    let opened = shop.in_hand();
    let entry = opened.and_then(|opened| in_latest_visit(&opened, id, Says::Remark(of, said)));
    let entry = entry
        .ok_or("The vehicle is not in hand any more. Nothing was saved; what was typed is kept.")?;
    let mut scribe = shop.scribe();
    scribe.write(&entry)?;
    Ok(scribe)
}

/// What was written, the latest first.
fn written(shop: Workshop, of: Part) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let view = opened.book.view();
    let mut items: Vec<Piece> = Vec::new();
    for thread in view.vehicle(opened.vehicle).threads(&Kind::Remark) {
        for entry in thread.entries() {
            let fate = Fate::of(thread, entry);
            if let Says::Remark(part, text) = &entry.says
                && *part == of
                && fate != Fate::Replaced
            {
                let correct = fate.correction();
                items.push(sheet!(
                    "<li class=item data-remark={} data-fate={}>{}{}</li>",
                    entry.id.hex(),
                    fate.code(),
                    told(
                        text.clone(),
                        plain(fate),
                        fate,
                        nothing(),
                        wording::hand(entry)
                    ),
                    correct.map(|how| correction_key(shop, entry.id, how)),
                ));
            }
        }
    }
    if items.is_empty() {
        return nothing();
    }
    items.reverse();
    sheet!("<ul class=list>{}</ul>", items)
}
