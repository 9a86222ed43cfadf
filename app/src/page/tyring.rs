//! The tyring sheet of one wheel: round and draw, what to take out, how hot and how long, what gives first, the year, and
//! the day of the fire. Lengths stand first; everything is reckoned anew as it is typed.

mod chosen;
mod field;
mod fire;
mod given;
mod grip;
mod heat;
mod keep;
mod lengths;
mod pick;
mod plot;
mod reader;

use std::sync::Arc;

use cartside_core::daybook::{EntryId, Says, Unwritten, Work, WorkDone};
use cartside_core::diagnosis::before_a_draw;
use cartside_core::tyring::cut::Job;
use cartside_core::wheel::{Part, Place, Position, Size, Tyre};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::looking::{Examination, Looking};
use crate::markup::{Hole, Piece, heard, live, sheet, tap, typed};
use crate::page::book::titles;
use crate::page::wheel::findings::in_the_way;
use crate::page::wheel::no_wheel;
use crate::route::Route;
use crate::typing;
use crate::workshop::{Notice, Workshop, workshop};
use chosen::Chosen;
use field::{Field, GROUPS, Typed};
use fire::Clock;
use given::Given;
use grip::Reckoned;
use pick::{BUILT, lists};

/// The sheet in hand. Copies are the same; its signals live as long as its page.
#[derive(Clone, Copy)]
struct OnTheBench {
    shop: Workshop,
    id: EntryId,
    position: Position,
    typed: RwSignal<Typed>,
    chosen: RwSignal<Chosen>,
    given: Memo<Option<Arc<Same>>>,
}

/// What is given, with what it was read from, so that it is reckoned anew only when that changes.
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
        let given = Given::of((&looking, position), &from.0, from.1, from.2);
        Some(Arc::new(Same {
            from,
            looking,
            given,
        }))
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
            reckoned.begin(same);
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
    bench.fill(style);
    let of = move |show: fn(&Given) -> Piece| live(move || bench.with(|same| show(&same.given)));
    let left = Memo::new(move |_| bench.with(|same| heat::left(&same.given)).flatten());
    sheet!(
        "{}<div class=wheel-and-list><div class=page-part>{}{}{}{}</div><div class=page-part>{}{}{}</div></div>{}{}",
        live(move || bench
            .with(|same| in_the_way(&before_a_draw(&same.looking.judgement)))
            .flatten()),
        fields(bench, style, &GROUPS[..1]),
        live(move || bench.with(|same| lengths::lengths(&same.given, &bench.jobs(style)))),
        sheet!(
            "{}<button type=button class=\"key key-main\" data-key=keep on:click={}>Keep this sheet</button>",
            fields(bench, style, &GROUPS[1..]),
            tap(move || bench.keep())
        ),
        of(lengths::printed),
        of(heat::heat),
        sheet!(
            "<section class=stack><h2>Iron, timber, place</h2>{}</section>",
            lists(&BUILT, bench.chosen, style)
        ),
        live(move || bench.with(|same| grip::shown(reckoned, &same.given))),
        fire::fire(bench, clock, left, style),
        sheet!(
            "<button type=button class=key data-key=write-down on:click={}>Write this down as work done</button>",
            tap(move || bench.write_down())
        )
    )
}

/// The fields, part by part; only the rounds stand open, unless something is typed in another.
fn fields(bench: OnTheBench, style: Style, groups: &'static [field::Group]) -> Vec<Piece> {
    let text = |field: Field| {
        bench
            .typed
            .with_untracked(|typed| typed.get(field as usize).cloned().unwrap_or_default())
    };
    let field = |field: Field| {
        sheet!(
            "<label class=field data-field={}><span class=capital>{}</span><input type=text inputmode={} autocomplete=off autocapitalize=off maxlength=240 value={} on:input={}/></label>{}",
            field.code(),
            field.label(style),
            field.keys(style),
            text(field),
            heard(move |event| bench.typed.update(|typed| {
                if let Some(text) = typed.get_mut(field as usize) {
                    *text = self::typed(&event);
                }
            })),
            field.has_runs().then(|| run_keys(field))
        )
    };
    let group = |group: &field::Group| {
        let inner: Vec<Piece> = group.fields.iter().map(|it| field(*it)).collect();
        let more = lists(group.picks, bench.chosen, style);
        if group.open {
            return sheet!(
                "<section class=stack><h2>{}</h2><p class=dim>{}</p>{}</section>",
                group.name.to_owned(),
                style.fill("Both on the same chalked line, with the same traveller, cold: turns + what is left over, each run parted by a semicolon, such as 6 + 471; 6 + 472. Without a traveller: a tape."),
                inner
            );
        }
        let typed = group.fields.iter().any(|it| !text(*it).is_empty());
        sheet!(
            "<details class=fold open={}><summary>{}</summary><div class=stack>{}{}</div></details>",
            Hole::Flag(typed),
            group.name.to_owned(),
            inner,
            more
        )
    };
    groups.iter().map(group).collect()
}

/// What a telephone's keys for numbers do not have, and runs are written with.
fn run_keys(field: Field) -> Piece {
    let key = |code: &'static str, label: &'static str, more: &'static str| {
        let css = format!("[data-field={}]", field.code());
        sheet!(
            "<button type=button class=key data-key={} on:click={}>{}</button>",
            code,
            tap(move || typing::type_on(&css, more)),
            label
        )
    };
    sheet!(
        "<div class=choices>{}{}</div>",
        key("left-over", "+ left over", " + "),
        key("next-run", "; next run", "; ")
    )
}

impl OnTheBench {
    /// Something of what is given, without a copy of it; whoever reads it reads it again when that changes.
    fn with<T>(self, take: impl FnOnce(&Same) -> T) -> Option<T> {
        self.given.with(|same| same.as_deref().map(take))
    }

    /// The sheet as the book has it.
    fn fill(self, style: Style) {
        if let Some(opened) = self.shop.opened.get_untracked() {
            let view = opened.book.view();
            let vehicle = view.vehicle(self.id);
            let visit = Examination::latest(&vehicle).map(|it| it.id);
            let (typed, chosen) = keep::kept(&vehicle, visit, self.position, style);
            self.typed.set(typed);
            self.chosen.set(chosen);
        }
    }

    /// Every tyre that this shop has cut and welded, as far as it is written down, and each in words.
    fn jobs(self, style: Style) -> (Vec<Job>, Vec<String>) {
        let (mut jobs, mut named) = (Vec::new(), Vec::new());
        self.shop.list.with(|list| {
            for summary in list {
                for (job, day, at) in summary.welded() {
                    let (vehicle, _) = titles(summary, self.shop);
                    named.push(words::tyring::cut::job(&job, &vehicle, at, &day, style));
                    jobs.push(job);
                }
            }
        });
        (jobs, named)
    }

    /// Notes after how many seconds it lay, and keeps it with all that is on the sheet.
    fn lies(self, seconds: i64) {
        let seconds = u16::try_from(seconds).unwrap_or(u16::MAX);
        self.chosen.update(|chosen| chosen.lay = Some(seconds));
        self.keep();
    }

    /// After how many seconds it lay, if that was noted.
    fn lay(self) -> Option<i64> {
        self.chosen.with(|chosen| chosen.lay).map(i64::from)
    }

    /// In which order the tyres of this vehicle go on from one fire.
    fn order(self, style: Style) -> Option<String> {
        let opened = self.shop.opened.get_untracked()?;
        let view = opened.book.view();
        let wheels = view.vehicle(self.id).wheels().into_iter();
        let hooped = wheels.filter(|(_, wheel)| wheel.tyre.is_none_or(|tyre| tyre == Tyre::Hoop));
        let irons = hooped.map(|(at, wheel)| (at, wheel.sizes.get(Size::TyreThickness)));
        words::tyring::heat::order(&irons.collect::<Vec<_>>(), style)
    }

    /// Keeps rounds and choices.
    fn keep(self) {
        let Some(same) = self.given.get_untracked() else {
            return;
        };
        let shop = self.shop;
        let entries = keep::entries(shop, (self.id, self.position), &same.looking, &same.given);
        let written = entries.and_then(|entries| {
            let mut scribe = shop.scribe();
            for entry in &entries {
                scribe.write(entry)?;
            }
            scribe.drop_drafts = typing::kept_here();
            Ok((scribe, entries.len()))
        });
        match written {
            Err(why) => shop.notice.set(Notice::Trouble(why)),
            Ok((_, 0)) => shop
                .notice
                .set(Notice::Saved("nothing on the sheet has changed".to_owned())),
            Ok((scribe, _)) => shop.save_then(scribe, "the tyring sheet".to_owned(), |_| {}),
        }
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
