//! A small wheel that shows where the place in hand is: how far round from the mark, seen from the face.

use cartside_core::wheel::{Place, Wheel};
use leptos::prelude::*;

use crate::component::round::{degrees, point};
use crate::component::wheel_drawing::spoke_turns;

/// Where a place is on a wheel.
#[component]
pub fn Locator(
    /// The wheel.
    wheel: Wheel,
    /// The place.
    place: Place,
) -> impl IntoView {
    let spokes = spoke_turns(&wheel)
        .into_iter()
        .map(|turn| view! { <path class="thin" d="M0 -16V-78" transform=format!("rotate({turn:.2})") /> })
        .collect_view();
    let felloes = wheel.felloes.felloes();
    let joints = (1..=felloes)
        .filter_map(|n| wheel.turn(Place::Joint(n)))
        .map(|turn| view! { <path class="thin" d="M0 -80V-98" transform=format!("rotate({:.2})", degrees(turn)) /> })
        .collect_view();
    view! {
        <svg class="locator" viewBox="-120 -120 240 240" aria-hidden="true">
            <circle class="thin" r="98" />
            <circle class="thin" r="80" />
            <circle class="thin" r="16" />
            {spokes}
            {joints}
            <path class="the-mark" d="M0 -101l-9 -15h18z" />
            {here(&wheel, place)}
        </svg>
    }
}

fn here(wheel: &Wheel, place: Place) -> Option<AnyView> {
    let turn = wheel.turn(place)?;
    let moved = format!("rotate({:.2})", degrees(turn));
    let view = match place {
        Place::Spoke(_) => {
            view! { <path class="here" d="M0 -16V-80" transform=moved /> }.into_any()
        }
        _ => {
            let (x, y) = point(turn, 93.0);
            view! { <circle class="here" cx=format!("{x:.1}") cy=format!("{y:.1}") r="15" /> }
                .into_any()
        }
    };
    Some(view)
}
