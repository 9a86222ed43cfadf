//! The day of the fire: what comes before it is lit, the clock from *out of the fire* to the moment the tyre touches,
//! and what comes before water.

use cartside_core::words::{Style, caution};
use js_sys::{Date, Function, Promise, Reflect};
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::OnTheBench;
use crate::component::caution_card::{folded_card, open_card};
use crate::markup::{Piece, live, sheet, tap};

/// How often the clock is looked at, in milliseconds.
const TICK: u64 = 250;

/// The clock that runs while the tyre is out of the fire. Copies are the same; its signals live as long as its page.
#[derive(Clone, Copy)]
pub struct Clock {
    /// When it left the fire, in milliseconds of the device's clock.
    began: RwSignal<Option<f64>>,
    /// Whole seconds since then.
    gone: RwSignal<i64>,
    awake: RwSignal<Option<JsValue>, LocalStorage>,
}

impl Clock {
    /// A clock that stands.
    pub fn new() -> Clock {
        Clock {
            began: RwSignal::new(None),
            gone: RwSignal::new(0),
            awake: RwSignal::new_local(None),
        }
    }

    fn begin(self) {
        self.began.set(Some(Date::now()));
        self.gone.set(0);
        self.tick();
        spawn_local(async move {
            let lock = keep_awake().await;
            // The page may be gone by now.
            let _ = self.awake.try_set(lock);
        });
    }

    /// The time is read each tick, not counted: a browser may leave ticks out.
    fn tick(self) {
        let Some(Some(began)) = self.began.try_get_untracked() else {
            return;
        };
        self.gone.set(((Date::now() - began) / 1000.0) as i64);
        set_timeout(move || self.tick(), std::time::Duration::from_millis(TICK));
    }

    fn stop(self) {
        self.began.set(None);
        if let Some(Some(lock)) = self.awake.try_update(Option::take) {
            release(&lock);
        }
    }
}

/// Asks that the screen stays on; nothing where the browser cannot.
async fn keep_awake() -> Option<JsValue> {
    let lock = Reflect::get(&window().navigator(), &"wakeLock".into()).ok()?;
    let promise = method(&lock, "request")?
        .call1(&lock, &"screen".into())
        .ok()?
        .dyn_into::<Promise>()
        .ok()?;
    JsFuture::from(promise).await.ok()
}

fn release(lock: &JsValue) {
    drop(method(lock, "release").and_then(|release| release.call0(lock).ok()));
}

/// A method by its name, where there is one: not every browser has these.
fn method(of: &JsValue, name: &str) -> Option<Function> {
    Reflect::get(of, &name.into()).ok()?.dyn_into().ok()
}

/// The section about the day of the fire; `left` is the seconds that may be counted on, once they are reckoned.
pub fn fire(bench: OnTheBench, clock: Clock, left: Memo<Option<i64>>, style: Style) -> Piece {
    sheet!(
        "<section class=stack data-sheet=fire><h2>The day of the fire</h2>{}{}{}{}\
         <p class=dim>After it: write the work down, and take the proof as an examination of its own: ring, joints, stand-off, \
         dish, run-out, the round cold.</p></section>",
        open_card(caution::light_the_fire(style)),
        bench
            .order(style)
            .map(|order| sheet!("<p data-order>{}</p>", order)),
        live(move || running(bench, clock, left.get())),
        folded_card(caution::quench(style))
    )
}

fn running(bench: OnTheBench, clock: Clock, left: Option<i64>) -> Piece {
    if clock.began.get().is_none() {
        let lay = bench.lay();
        return sheet!(
            "{}<button type=button class=\"key key-main\" data-key=out-of-the-fire on:click={}>Out of the fire now</button>",
            lay.map(|seconds| sheet!(
                "<p data-lay>It lay {} after the fire.</p>",
                minutes(seconds)
            )),
            tap(move || clock.begin())
        );
    }
    let gone = clock.gone.get();
    let counted = left.map(|left| left - gone);
    let (state, words) = match counted {
        None => ("unknown", "out of the fire".to_owned()),
        Some(more) if more > 0 => ("left", format!("{} left, counted low", minutes(more))),
        Some(_) => (
            "over",
            "It may touch at any moment: on now, or not at all".to_owned(),
        ),
    };
    sheet!(
        "<section class=card data-clock={}><p class=clock role=timer>{}</p><p class=strong aria-live=assertive>{}</p>\
         <button type=button class=\"key key-main\" data-key=it-lies on:click={}>It lies</button></section>",
        state,
        minutes(gone),
        words,
        tap(move || {
            bench.lies(clock.gone.get_untracked());
            clock.stop();
        })
    )
}

fn minutes(seconds: i64) -> String {
    format!("{}:{:02}", seconds / 60, seconds % 60)
}
