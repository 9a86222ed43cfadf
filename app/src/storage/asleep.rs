//! A page that the browser keeps asleep when it is left, to show it again at *back*.
//!
//! WebKit keeps its transactions with it, unfinished, and each of them holds up every other page of the book until the
//! browser is closed. So what is under way is undone when a page falls asleep; awake again it opens the book anew and
//! does the step once more, as where a connection was lost. Other browsers keep no page that is in the middle of a step.

use js_sys::Reflect;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbTransaction, window};

/// Listens for a page that falls asleep, or that wakes, until it is dropped.
pub struct Watch {
    event: &'static str,
    heard: Closure<dyn FnMut(JsValue)>,
}

/// Undoes a transaction if the page falls asleep before the watch is dropped.
#[must_use = "it stops watching when dropped"]
pub(super) fn undo_asleep(transaction: &IdbTransaction) -> Watch {
    let transaction = transaction.clone();
    Watch::on("pagehide", move || {
        // Refused only where it is over already.
        drop(transaction.abort());
    })
}

/// Calls back when the page wakes: what other pages told meanwhile was not heard.
#[must_use = "it stops watching when dropped"]
pub fn on_waking(tell: impl Fn() + 'static) -> Watch {
    Watch::on("pageshow", tell)
}

impl Watch {
    fn on(event: &'static str, act: impl Fn() + 'static) -> Watch {
        let heard = Closure::new(move |shown: JsValue| {
            // Not set where a page is loaded, or left for good.
            if Reflect::get(&shown, &"persisted".into()).is_ok_and(|kept| kept.is_truthy()) {
                act();
            }
        });
        let watch = Watch { event, heard };
        if let Some(window) = window() {
            let ear = watch.heard.as_ref().unchecked_ref();
            // A browser without events shows no page either.
            drop(window.add_event_listener_with_callback(event, ear));
        }
        watch
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        if let Some(window) = window() {
            let ear = self.heard.as_ref().unchecked_ref();
            drop(window.remove_event_listener_with_callback(self.event, ear));
        }
    }
}
