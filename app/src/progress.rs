//! How far a long piece of work is, shown as it goes on, and the key that stops it.

use leptos::prelude::*;

use crate::markup::{Piece, live, sheet, tap};
use crate::workshop::Step;

/// What is said of work that was stopped.
pub const STOPPED: &str = "Stopped. Nothing was changed, and nothing of it is left.";

/// A long piece of work on a page. It stops where its key is pressed, and where its page is left.
#[derive(Clone, Copy)]
pub struct Progress {
    what: RwSignal<String>,
    done: RwSignal<u64>,
    of: RwSignal<u64>,
    stopped: RwSignal<bool>,
}

impl Progress {
    /// Work that has not begun, of the page that is being put up.
    pub fn new() -> Progress {
        Progress {
            what: RwSignal::new(String::new()),
            done: RwSignal::new(0),
            of: RwSignal::new(0),
            stopped: RwSignal::new(false),
        }
    }

    /// Says what is about to be done, before the first step.
    pub fn begin(&self, what: &str) {
        self.stopped.try_set(false);
        self.of.try_set(0);
        self.what.try_set(what.to_owned());
    }

    /// Says that so many of all pictures are done.
    ///
    /// # Errors
    /// It is to stop: [`STOPPED`].
    pub fn step(&self, done: usize, of: usize) -> Step<()> {
        self.done.try_set(done as u64);
        self.of.try_set(of as u64);
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
            live(move || self.figure()),
            stop
        )
    }

    /// In words, and as a bar once it is known how long it is.
    fn figure(self) -> Piece {
        let (what, done, of) = (self.what.get(), self.done.get(), self.of.get());
        let at = (done + 1).min(of);
        let bar = (of > 0).then(|| {
            sheet!(
                "<p data-figure>picture {} of {}</p><progress aria-label={} value={} max={}></progress>",
                at.to_string(),
                of.to_string(),
                what.clone(),
                done.to_string(),
                of.to_string()
            )
        });
        sheet!("<p role=status>{}</p>{}", what, bar)
    }
}
