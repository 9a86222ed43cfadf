//! The reminder that part of the book is on this device alone, and how that is told.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::markup::{Piece, live, sheet, tap};
use crate::only_here::{self, OnlyHere};
use crate::wording::counted;
use crate::workshop::{Notice, Workshop};

/// A banner while a reminder is due, with the way to carry out and a key for a week's quiet.
pub fn reminder(shop: Workshop) -> Piece {
    let found = shop.only_here;
    // What is found while the page shows waits for the next time it does: nothing is to move under a thumb. But what is
    // no longer due goes at once.
    let due = RwSignal::new(found.get_untracked());
    let look = move || {
        spawn_local(async move {
            if let Ok(now) = only_here::look(shop).await {
                // A page that is gone reminds nobody.
                if !now.is_due() {
                    due.try_set(OnlyHere::default());
                }
                found.try_set(now);
            }
        });
    };
    Effect::new(move |_| {
        shop.list.track();
        look();
    });
    live(move || {
        let now = due.get();
        now.is_due().then(|| {
            sheet!(
                "<section class=banner data-reminder={}><p>{} {}</p><div class=choices>\
                 <a class=key href=#/carry-out>Carry out</a>\
                 <button type=button class=key data-key=quiet on:click={}>Quiet for a week</button></div></section>",
                now.entries.to_string(),
                only(&now),
                age(&now),
                tap(move || spawn_local(async move {
                    match only_here::quieten(shop).await {
                        Ok(()) => {
                            due.try_set(OnlyHere::default());
                            look();
                        }
                        Err(sentence) => shop.notice.set(Notice::Trouble(sentence)),
                    }
                }))
            )
        })
    })
}

/// How much is on this device alone.
pub fn only(now: &OnlyHere) -> String {
    if now.entries == 0 {
        return "Nothing written here is on this device alone.".to_owned();
    }
    let entries = counted(now.entries, "entry is", "entries are");
    match now.pictures {
        0 => format!("{entries} on this device alone."),
        more => format!(
            "{entries} on this device alone, with {}.",
            counted(more, "picture", "pictures")
        ),
    }
}

/// How long ago the whole book was carried out.
pub fn age(now: &OnlyHere) -> String {
    match now.days {
        None => "The whole book was never carried out.".to_owned(),
        Some(days) if days < 0.0 => {
            "By this device’s clock the book was last carried out in a time to come: set the clock."
                .to_owned()
        }
        Some(days) if days < 1.0 => "The whole book was last carried out today.".to_owned(),
        Some(days) => format!(
            "The whole book was last carried out {} ago.",
            counted(days as usize, "day", "days")
        ),
    }
}
