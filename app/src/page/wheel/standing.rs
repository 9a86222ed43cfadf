//! The wheel's standing in words, and the way to the next question.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::Standing;
use cartside_core::wheel::Position;
use cartside_core::words::{self, Examined};
use leptos::prelude::*;

use crate::component::mark::StandingMark;
use crate::looking::Looking;
use crate::route::Route;
use crate::workshop::workshop;

/// What the wheel may still be used for, as far as it was looked at.
#[component]
pub fn StandingCard(
    /// The vehicle.
    id: EntryId,
    /// Where the wheel stands.
    position: Position,
    /// The wheel.
    looking: Looking,
) -> impl IntoView {
    let (standing, so_far) = (looking.judgement.proposed(), looking.judgement.so_far());
    let code = so_far.map_or("none", Standing::code);
    let worse = so_far.filter(|found| *found != standing).map(so_far_view);
    let day = looking
        .examination
        .as_ref()
        .map_or("no day yet", |latest| latest.shown.as_str());
    let said = words::standing::standing(
        standing,
        &Examined::of(day, &looking.wheel, &looking.judgement.missing),
        workshop().style(),
    );
    let examined = format!("Examined: {day}");
    view! {
        <section class="card" data-standing=standing.code() data-so-far=code>
            <h2><StandingMark standing /></h2>
            <p>{said}</p>
            {worse}
            <p class="dim">{examined}</p>
            {next(id, position, &looking)}
        </section>
    }
}

fn so_far_view(found: Standing) -> impl IntoView {
    view! {
        <p>"What was found so far already proposes:"</p>
        <p><StandingMark standing=found /></p>
    }
}

fn next(id: EntryId, position: Position, looking: &Looking) -> Option<impl IntoView + use<>> {
    let next = looking.next_question(None)?;
    let (done, all) = looking.progress(next);
    let short = words::question::short(next, workshop().style());
    let label = if done == 0 {
        format!("Next: {short}")
    } else {
        format!("Go on: {short}, {done} of {all}")
    };
    let href = Route::Ask(id, position, next, None).href();
    Some(view! { <a class="key key-main" href=href>{label}</a> })
}
