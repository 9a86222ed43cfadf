//! How far a long piece of work is, shown as it goes on, and the key that stops it.

use leptos::prelude::*;

use crate::markup::{Piece, live, sheet, tap};
use crate::workshop::Step;

/// What is said of work that was stopped.
pub const STOPPED: &str = "Stopped. Nothing was changed, and nothing of it is left.";

/// How far it is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Far {
    what: &'static str,
    done: usize,
    of: usize,
}

/// A long piece of work on a page. It stops where its key is pressed, and where its page is left.
#[derive(Clone, Copy)]
pub struct Progress {
    far: RwSignal<Far>,
    stopped: RwSignal<bool>,
}

impl Progress {
    /// Work that has not begun, of the page that is being put up.
    pub fn new() -> Progress {
        Progress {
            far: RwSignal::new(Far::default()),
            stopped: RwSignal::new(false),
        }
    }

    /// Says what is about to be done, before the first step.
    pub fn begin(&self, what: &'static str) {
        self.stopped.try_set(false);
        self.far.try_set(Far {
            what,
            done: 0,
            of: 0,
        });
    }

    /// Says that so many of all pictures are done.
    ///
    /// # Errors
    /// It is to stop: [`STOPPED`].
    pub fn step(&self, done: usize, of: usize) -> Step<()> {
        self.far.try_update(|far| (far.done, far.of) = (done, of));
        match self.stopped.try_get_untracked() {
            Some(false) => Ok(()),
            _ => Err(STOPPED.to_owned()),
        }
    }

    /// How far it is, and the key that stops it.
    pub fn shown(self) -> Piece {
        let stop = tap(move || {
            self.stopped.try_set(true);
        });
        sheet!(
            "<section class=card data-busy>{}<button type=button class=key data-key=stop on:click={}>Stop</button></section>",
            live(move || figure(self.far.get())),
            stop
        )
    }
}

/// In words, and as a bar once it is known how long it is.
fn figure(far: Far) -> Piece {
    let Far { what, done, of } = far;
    let at = (done + 1).min(of);
    let bar = (of > 0).then(|| {
        sheet!(
            "<p data-figure>picture {} of {}</p><progress aria-label={} value={} max={}></progress>",
            at.to_string(),
            of.to_string(),
            what,
            done.to_string(),
            of.to_string()
        )
    });
    sheet!("<p role=status>{}</p>{}", what, bar)
}
