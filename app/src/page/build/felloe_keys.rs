//! What each felloe carries, clockwise from the mark, with keys for one spoke more or fewer.

use leptos::prelude::*;

use super::Setting;

/// The felloes of a wheel and the spokes each carries.
#[component]
pub fn FelloeKeys(
    /// What is set so far.
    setting: Setting,
) -> impl IntoView {
    let carried = setting.carried;
    let spokes = move || {
        carried.with(|carried| carried.iter().map(|spokes| u32::from(*spokes)).sum::<u32>())
    };
    let count = move || carried.with(Vec::len);
    let rows = move || {
        (0..count())
            .map(|at| view! { <OneFelloe carried at /> })
            .collect_view()
    };
    view! {
        <section class="stack" data-step="felloes">
            <h2>{count}" felloes, "{spokes}" spokes"</h2>
            <p class="dim">"Clockwise from the mark, seen from the face. A bent rim: each length counts as one."</p>
            <ol class="list">{rows}</ol>
            <div class="row evenly">
                <button type="button" class="key" data-key="fewer-felloes" on:click=move |_| carried.update(|carried| { carried.pop(); })>
                    "One felloe fewer"
                </button>
                <button type="button" class="key" data-key="more-felloes" on:click=move |_| carried.update(|carried| carried.push(carried.last().copied().unwrap_or(2)))>
                    "One felloe more"
                </button>
            </div>
        </section>
    }
}

#[component]
fn OneFelloe(carried: RwSignal<Vec<u16>>, at: usize) -> impl IntoView {
    let spokes = move || carried.with(|carried| carried.get(at).copied().unwrap_or_default());
    let change = move |by: fn(u16) -> u16| {
        carried.update(|carried| {
            if let Some(spokes) = carried.get_mut(at) {
                *spokes = by(*spokes);
            }
        });
    };
    let (fewer, more) = (
        format!("One spoke fewer on felloe {}", at + 1),
        format!("One spoke more on felloe {}", at + 1),
    );
    view! {
        <li class="item" data-felloe=at + 1>
            <span class="strong">"Felloe "{at + 1}</span>
            <span class="row">
                <button type="button" class="key" data-key="fewer" aria-label=fewer on:click=move |_| change(|spokes| spokes.saturating_sub(1).max(1))>"−"</button>
                <output class="strong count">{spokes}</output>
                <button type="button" class="key" data-key="more" aria-label=more on:click=move |_| change(|spokes| spokes.saturating_add(1))>"+"</button>
            </span>
        </li>
    }
}
