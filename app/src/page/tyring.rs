//! The tyring sheet of one wheel: round and draw, what to take out, how hot and how long, what gives first, the year, and
//! the day of the fire. Lengths stand first; everything is reckoned anew as it is typed.

mod fire;
mod given;
mod grip;
mod heat;
mod lengths;

use cartside_core::daybook::{EntryId, Says, Unwritten, Work, WorkDone};
use cartside_core::diagnosis::before_a_draw;
use cartside_core::material::{Iron, Species};
use cartside_core::mechanics::Stand;
use cartside_core::wheel::{Part, Place, Position, Tyre};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::looking::Looking;
use crate::markup::{Piece, heard, live, sheet, tap, typed};
use crate::page::wheel::findings::in_the_way;
use crate::page::wheel::no_wheel;
use crate::route::Route;
use crate::workshop::{Notice, Workshop, workshop};
use fire::Clock;
use given::{Chosen, Field, Given, Typed};
use grip::Reckoned;

/// The sheet in hand. Copies are the same; its signals live as long as its page.
#[derive(Clone, Copy)]
struct OnTheBench {
    shop: Workshop,
    id: EntryId,
    position: Position,
    typed: RwSignal<Typed>,
    chosen: RwSignal<Chosen>,
    given: Memo<Option<Same>>,
}

/// What is given, with what it was read from, so that it is reckoned anew only when that changes.
#[derive(Clone)]
struct Same {
    from: (Typed, Chosen, Style),
    looking: Looking,
    given: Given,
}

impl PartialEq for Same {
    fn eq(&self, other: &Same) -> bool {
        self.from == other.from && self.looking == other.looking
    }
}

/// The tyring sheet of one wheel.
pub fn page(id: EntryId, position: Position) -> Piece {
    let shop = workshop();
    let looking = Looking::follow(shop, position);
    let (texts, chosen) = (
        RwSignal::new(Typed::default()),
        RwSignal::new(Chosen::default()),
    );
    let given = Memo::new(move |_| {
        let (looking, from) = (looking.get()?, (texts.get(), chosen.get(), shop.style()));
        let given = Given::of(&looking, &from.0, from.1, from.2);
        Some(Same {
            from,
            looking,
            given,
        })
    });
    let bench = OnTheBench {
        shop,
        id,
        position,
        typed: texts,
        chosen,
        given,
    };
    let (reckoned, clock) = (Reckoned::new(), Clock::new());
    Effect::new(move |_| {
        if let Some(same) = given.get() {
            reckoned.begin(same.given);
        }
    });
    let hooped = Memo::new(move |_| {
        looking
            .get()
            .map(|it| it.wheel.tyre.is_none_or(|tyre| tyre == Tyre::Hoop))
    });
    sheet!(
        "<main class=page data-page=tyring><h1>Tyring: {}</h1>{}\
         <a class=\"key key-plain\" href={}>To the wheel</a></main>",
        words::place::wheel_at(position),
        live(move || match hooped.get() {
            None => no_wheel(),
            Some(false) => sheet!(
                "<p class=warning data-no-sheet>This wheel is not shod with a hoop: there is no round to draw.</p>"
            ),
            Some(true) => on_the_bench(bench, reckoned, clock),
        }),
        Route::Wheel(id, position).href()
    )
}

fn on_the_bench(bench: OnTheBench, reckoned: Reckoned, clock: Clock) -> Piece {
    let style = bench.shop.style();
    let of = move |show: fn(&Given) -> Piece| live(move || bench.with(|same| show(&same.given)));
    let left = Memo::new(move |_| bench.with(|same| heat::left(&same.given)).flatten());
    sheet!(
        "{}<div class=wheel-and-list><div class=page-part>{}{}{}</div><div class=page-part>{}{}{}</div></div>{}{}",
        live(move || bench
            .with(|same| in_the_way(&before_a_draw(&same.looking.judgement)))
            .flatten()),
        rounds(bench, style),
        of(lengths::lengths),
        of(lengths::printed),
        of(heat::heat),
        choices(bench, style),
        live(move || bench.with(|same| grip::shown(reckoned, &same.given))),
        fire::fire(clock, left, style),
        sheet!(
            "<button type=button class=key data-key=write-down on:click={}>Write this down as work done</button>",
            tap(move || bench.write_down())
        )
    )
}

/// The fields.
fn rounds(bench: OnTheBench, style: Style) -> Piece {
    let each = Field::ALL.map(|field| {
        let at = field as usize;
        let now = bench.typed.with_untracked(|typed| typed.get(at).cloned().unwrap_or_default());
        sheet!(
            "<label class=field data-field={}><span class=capital>{}</span><input type=text autocomplete=off autocapitalize=off maxlength=120 value={} on:input={}/></label>",
            code(field),
            label(field, style),
            now,
            heard(move |event| bench.typed.update(|typed| {
                if let Some(text) = typed.get_mut(at) {
                    *text = self::typed(&event);
                }
            }))
        )
    });
    sheet!(
        "<section class=stack><h2>Rounds</h2><p class=dim>{}</p>{}</section>",
        style.fill("Both on the same chalked line, with the same traveller, cold: turns + what is left over, each run parted by a semicolon, such as 6 + 471; 6 + 472. Without a traveller: a tape."),
        Vec::from(each)
    )
}

fn code(field: Field) -> &'static str {
    match field {
        Field::Traveller => "traveller",
        Field::Wheel => "wheel",
        Field::Tyre => "tyre",
        Field::Cramped => "cramped",
        Field::Draw => "draw",
        Field::Clearance => "clearance",
        Field::Carry => "carry",
    }
}

fn label(field: Field, style: Style) -> String {
    style.fill(match field {
        Field::Traveller => "Traveller, once round itself",
        Field::Wheel => "Wheel, round the sole",
        Field::Tyre => "{tyre}, round the inside",
        Field::Cramped => "Joints together, rim cramped",
        Field::Draw => "Draw wanted, round",
        Field::Clearance => "Room as it drops, across (3 mm)",
        Field::Carry => "Carry, in seconds (30)",
    })
}

/// What is chosen: iron, timbers, where it stands.
fn choices(bench: OnTheBench, style: Style) -> Piece {
    let chosen = bench.chosen.get_untracked();
    let [nave, spokes, felloes] = chosen.timbers;
    let timber = |name: &'static str, at: usize, now: Species| {
        let options = Species::ALL
            .iter()
            .map(|it| (it.code(), words::timber::species(*it)));
        let pick = move |code: &str| {
            bench.chosen.update(|chosen| {
                if let (Some(place), Some(it)) =
                    (chosen.timbers.get_mut(at), Species::from_code(code))
                {
                    *place = it;
                }
            });
        };
        picker(style.fill(name), now.code(), options.collect(), pick)
    };
    let stands = Stand::ALL
        .iter()
        .map(|it| (it.code(), words::year::stand(*it).to_owned()));
    let irons = [Iron::NotKnown, Iron::Steel, Iron::Wrought];
    sheet!(
        "<section class=stack><h2>Iron, timber, place</h2>{}{}{}{}{}</section>",
        picker(
            "Iron".to_owned(),
            chosen.iron.code(),
            irons
                .map(|it| (it.code(), words::tyring::said::iron(it).to_owned()))
                .into(),
            move |code| {
                let iron = Iron::from_code(code);
                bench
                    .chosen
                    .update(|chosen| chosen.iron = iron.unwrap_or(chosen.iron));
            }
        ),
        picker(
            "It stands in".to_owned(),
            chosen.stand.code(),
            stands.collect(),
            move |code| {
                let stand = Stand::from_code(code);
                bench
                    .chosen
                    .update(|chosen| chosen.stand = stand.unwrap_or(chosen.stand));
            }
        ),
        timber("{nave}", 0, nave),
        timber("Spokes", 1, spokes),
        timber("{felloe}s", 2, felloes)
    )
}

fn picker(
    name: String,
    now: &'static str,
    options: Vec<(&'static str, String)>,
    pick: impl Fn(&str) + 'static,
) -> Piece {
    let options = options
        .into_iter()
        .map(|(code, words)| sheet!("<option value={}>{}</option>", code, words::capital(&words)));
    sheet!(
        "<label class=field><span class=capital>{}</span><select value={} on:change={}>{}</select></label>",
        name,
        now,
        heard(move |event| pick(&typed(&event))),
        options.collect::<Vec<Piece>>()
    )
}

impl OnTheBench {
    /// Something of what is given, without a copy of it; whoever reads it reads it again when that changes.
    fn with<T>(self, take: impl FnOnce(&Same) -> T) -> Option<T> {
        self.given.with(|same| same.as_ref().map(take))
    }

    /// Writes the lengths down as work on the tyre, in words.
    fn write_down(self) {
        let Some(same) = self.given.get_untracked() else {
            return;
        };
        let text = same.given.told();
        if text.is_empty() {
            self.shop.notice.set(Notice::Trouble(
                "There is no round on the sheet yet. Nothing was saved; type the wheel's round first.".to_owned(),
            ));
            return;
        }
        let done = WorkDone {
            part: Part::At(self.position, Place::Whole),
            did: vec![Work::Contracted],
            text,
            by_whom: self.shop.preferences.get_untracked().person,
        };
        let entry = Unwritten::new(Some(self.id), Says::Work(done));
        if let Some(entry) = entry.map(|it| it.described_by(same.looking.described_by)) {
            self.shop.write_then(
                &entry,
                "tyring sheet written down as work done".to_owned(),
                |_| {},
            );
        }
    }
}
