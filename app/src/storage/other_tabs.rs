//! The note between tabs that a book has grown, so that a page can read it afresh.

use super::shape::Which;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{BroadcastChannel, MessageEvent};

const CHANNEL: &str = "cartside-book";

thread_local! {
    // One for the page, since a channel hears every other one, those of its own page too. None where the browser
    // has no such channel: then a tab sees what another has saved only when it reads again.
    static TABS: Option<BroadcastChannel> = BroadcastChannel::new(CHANNEL).ok();
}

/// Listens until it is dropped.
pub struct Listening {
    heard: Closure<dyn FnMut(MessageEvent)>,
}

/// Calls back with the book that another tab has saved to. This page's own saves are not heard.
#[must_use = "it stops listening when dropped"]
pub fn on_other_tab(tell: impl Fn(Which) + 'static) -> Listening {
    let heard = Closure::new(move |event: MessageEvent| {
        if let Some(which) = event.data().as_string().as_deref().and_then(Which::named) {
            tell(which);
        }
    });
    with_tabs(|tabs| {
        tabs.add_event_listener_with_callback("message", heard.as_ref().unchecked_ref())
    });
    Listening { heard }
}

impl Drop for Listening {
    fn drop(&mut self) {
        with_tabs(|tabs| {
            tabs.remove_event_listener_with_callback("message", self.heard.as_ref().unchecked_ref())
        });
    }
}

/// Tells the other tabs that this one has saved.
pub(super) fn tell(which: Which) {
    with_tabs(|tabs| tabs.post_message(&JsValue::from_str(which.database())));
}

/// A note that cannot be sent or heard costs only freshness, so faults end here.
fn with_tabs(act: impl FnOnce(&BroadcastChannel) -> Result<(), JsValue>) {
    TABS.with(|tabs| tabs.as_ref().map(act).and_then(Result::err));
}
