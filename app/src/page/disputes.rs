//! What is in dispute about one vehicle, and the settling of it.

use cartside_core::daybook::{EntryId, Thread, VehicleView};
use cartside_core::survey::Slot;
use cartside_core::wheel::Part;
use cartside_core::words::{self, DisputeWords, SideWords, Style};
use leptos::prelude::*;

use crate::correction::Correction;
use crate::correction_key::CorrectionKey;
use crate::route::Route;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// One dispute.
#[derive(Clone, Debug, PartialEq)]
struct Dispute {
    slot: String,
    words: DisputeWords,
    /// The sides that this version can read and so can say again.
    sayable: Vec<EntryId>,
    /// Where it is answered anew, if it is about a reading of the latest examination.
    anew: Option<String>,
}

/// What is in dispute about one vehicle.
#[component]
pub fn DisputesPage(
    /// The vehicle.
    id: EntryId,
) -> impl IntoView {
    let shop = workshop();
    let disputes = Memo::new(move |_| disputes(shop));
    view! {
        <main class="page" data-page="disputes">
            <h1>"In dispute"</h1>
            <a class="key key-plain" href=Route::Vehicle(id).href()>"To the vehicle"</a>
            {move || match disputes.get() {
                none if none.is_empty() => view! { <p>"Nothing is in dispute about this vehicle."</p> }.into_any(),
                some => some.into_iter().map(|dispute| view! { <OneDispute dispute /> }).collect_view().into_any(),
            }}
        </main>
    }
}

#[component]
fn OneDispute(dispute: Dispute) -> impl IntoView {
    let Dispute {
        slot,
        words,
        sayable,
        anew,
    } = dispute;
    view! {
        <section class="card" data-dispute=slot>
            <h2>{words.heading}</h2>
            <p>{words.explanation}</p>
            {words.settled_before.map(|said| view! { <p class="warning" data-settled-before="">{said}</p> })}
            <ul class="list">
                {words
                    .sides
                    .into_iter()
                    .map(|side| {
                        let sayable = sayable.contains(&side.entry);
                        view! { <OneSide side sayable /> }
                    })
                    .collect_view()}
            </ul>
            {anew.map(|href| view! { <a class="key" href=href>"Look again and answer anew"</a> })}
            <p class="dim">{words.meanwhile}" "{words.remedy}</p>
        </section>
    }
}

#[component]
fn OneSide(side: SideWords, sayable: bool) -> impl IntoView {
    let device: String = side.device.chars().take(8).collect();
    view! {
        <li class="item" data-side=side.entry.hex()>
            <p>
                <span class="strong">{side.says}</span>
                <br />
                <span class="dim">{side.by}", "{side.when}", device "{device}</span>
            </p>
            {if sayable {
                view! { <CorrectionKey entry=side.entry correction=Correction::Hold /> }.into_any()
            } else {
                view! { <p class="dim">"A newer Cartside wrote this side; settle for it there."</p> }.into_any()
            }}
        </li>
    }
}

fn disputes(shop: Workshop) -> Vec<Dispute> {
    let Some(opened) = shop.opened.get() else {
        return Vec::new();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    vehicle
        .disputes()
        .into_iter()
        .filter_map(|thread| dispute(&vehicle, thread, style))
        .collect()
}

fn dispute(vehicle: &VehicleView<'_, '_>, thread: &Thread<'_>, style: Style) -> Option<Dispute> {
    let first = thread.heads().first()?;
    let readable = thread.heads().iter().filter(|head| head.is_read());
    Some(Dispute {
        slot: first.slot.clone(),
        words: words::dispute::dispute(thread, wording::wheel_of(vehicle, first), style)?,
        sayable: readable.map(|head| head.id).collect(),
        anew: anew(vehicle, thread),
    })
}

/// Only the latest examination is still being written.
fn anew(vehicle: &VehicleView<'_, '_>, thread: &Thread<'_>) -> Option<String> {
    let first = thread.heads().first()?;
    let slot = Slot::from_code(&first.slot)?;
    let latest = vehicle.visits().last()?.id;
    let visit = vehicle.visit_thread(latest)?;
    let Part::At(position, place) = slot.part() else {
        return None;
    };
    let ask = Route::Ask(vehicle.id(), position, slot.question, Some(place));
    visit.has(first.visit?).then(|| ask.href())
}
