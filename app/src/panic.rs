//! What happens when the program stops on a fault of its own: the page is told, so that `reload.js` can show a
//! plain panel in the place of a dead page. Everything said to be saved is stored by then. A build for release stops
//! at once without a word, and the browser's own report of that is heard by `reload.js` as well.

use leptos::logging;

/// The event that `public/reload.js` listens for.
const EVENT: &str = "cartside-panic";

/// Tells the page of every panic from now on, and the console what it was.
pub fn tell_the_page() {
    std::panic::set_hook(Box::new(|panic| {
        logging::error!("{panic}");
        let event = web_sys::Event::new(EVENT).ok();
        if let (Some(window), Some(event)) = (web_sys::window(), event) {
            // A page that cannot be told is dead without a panel; nothing more can be done here.
            drop(window.dispatch_event(&event));
        }
    }));
}
