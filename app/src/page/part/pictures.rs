//! The pictures of one part, and the taking of one. That a picture is waited for is kept as a draft, since the
//! browser may end the page while the camera is open.

use cartside_core::daybook::{Digest, EntryId, Kind, Mark, Says};
use cartside_core::wheel::Part;
use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::File;

use crate::component::marked;
use crate::correction_key::{correction_key, plain};
use crate::draft;
use crate::fate::Fate;
use crate::markup::{Piece, heard, live, picked_file, sheet, tap};
use crate::photo::ObjectUrl;
use crate::picturing::{self, Erased};
use crate::route::Route;
use crate::wording;
use crate::workshop::Workshop;

/// The pictures of one part as the page shows them.
#[derive(Clone, Copy)]
struct Album {
    shop: Workshop,
    seen: RwSignal<Seen, LocalStorage>,
}

/// What has happened to the pictures since the page was opened.
#[derive(Default)]
struct Seen {
    /// What there is to see of the picture of an entry, from the first showing on.
    sights: Vec<(EntryId, Sight)>,
    /// Pictures erased; each can still be brought back.
    erased: Vec<Erased>,
}

/// A picture, small; large when tapped.
#[derive(Default)]
struct Sight {
    large: bool,
    /// Its address, `None` within if it is not on this device; none yet while it is being fetched.
    seen: Option<Option<ObjectUrl>>,
}

/// The pictures of one part.
pub(super) fn pictures(shop: Workshop, id: EntryId, of: Part) -> Piece {
    let lost = RwSignal::new(false);
    let busy = RwSignal::new(false);
    draft::find(shop, draft::of_picture(id, of), move |_| {
        lost.try_set(true);
    });
    let album = Album {
        shop,
        seen: RwSignal::new_local(Seen::default()),
    };
    let warning = move || {
        lost.get().then(|| {
            sheet!(
                "<p class=warning role=alert data-lost=picture>A picture was being taken here when the page \
                was closed, and it was not received. Nothing else was lost: take it again.</p>"
            )
        })
    };
    sheet!(
        "<section class=card><h2>Pictures</h2>{}{}{}</section>",
        live(warning),
        live(move || taking(shop, id, of, lost, busy)),
        live(move || sheet!("<div class=pictures>{}</div>", album.figures(id, of))),
    )
}

/// The key that opens the camera.
fn taking(
    shop: Workshop,
    id: EntryId,
    of: Part,
    lost: RwSignal<bool>,
    busy: RwSignal<bool>,
) -> Piece {
    let name = move || draft::of_picture(id, of);
    let (busy_now, words) = if busy.get() {
        ("true", "Taking it up…")
    } else {
        ("false", "Take a picture")
    };
    sheet!(
        "<label class=\"key key-main\" aria-busy={}>{}<input type=file accept=image/* capture=environment \
        on:click={} on:cancel={} on:change={}/></label>",
        busy_now,
        words,
        tap(move || {
            lost.set(false);
            draft::keep(shop, name(), "waiting for a picture".to_owned());
        }),
        heard(move |_| draft::drop_it(shop, name())),
        heard(move |event| match picked_file(&event) {
            Some(file) => spawn_local(take(shop, id, of, file, busy)),
            None => draft::drop_it(shop, name()),
        }),
    )
}

async fn take(shop: Workshop, id: EntryId, of: Part, file: File, busy: RwSignal<bool>) {
    busy.try_set(true);
    if picturing::take(shop, id, of, file).await.is_err() {
        // The file came, so nothing is waited for any more; why it was not taken is shown at the foot.
        draft::drop_it(shop, draft::of_picture(id, of));
    }
    busy.try_set(false);
}

impl Seen {
    fn sight(&mut self, of: EntryId) -> Option<&mut Sight> {
        let sight = self.sights.iter_mut().find(|(entry, _)| *entry == of)?;
        Some(&mut sight.1)
    }
}

impl Album {
    /// Every picture, the latest first.
    fn figures(self, id: EntryId, of: Part) -> Vec<Piece> {
        let Some(opened) = self.shop.opened.get() else {
            return Vec::new();
        };
        let view = opened.book.view();
        let erased = view.erased();
        let vehicle = view.vehicle(opened.vehicle);
        let mut figures = Vec::new();
        for thread in vehicle.threads(&Kind::Picture) {
            for entry in thread.entries() {
                let fate = Fate::of(thread, entry);
                if let Says::Picture(said) = &entry.says
                    && said.part == of
                    && fate != Fate::Replaced
                {
                    let (digest, hand) = (said.digest, wording::hand(entry));
                    let marks = vehicle.marks(digest);
                    let (shown, erase) = if erased.contains(&digest) {
                        (self.gone(entry.id, digest), None)
                    } else {
                        let shown = self.sight(entry.id, digest, hand.clone(), &marks);
                        (shown, Some(self.keys(id, digest)))
                    };
                    let correct = fate.correction();
                    let correct = correct.map(|how| correction_key(self.shop, entry.id, how));
                    figures.push(sheet!(
                        "<figure data-fate={}>{}<figcaption><span class={}>Picture</span> {}<br/>\
                        <span class=dim>{}</span>{}</figcaption><div class=choices>{}{}</div></figure>",
                        fate.code(),
                        shown,
                        plain(fate),
                        fate.words(),
                        hand,
                        marked::told(&marks),
                        erase,
                        correct,
                    ));
                }
            }
        }
        figures.reverse();
        figures
    }

    /// The way to its own page, and the key that erases it.
    fn keys(self, id: EntryId, digest: Digest) -> Piece {
        let Album { shop, seen } = self;
        sheet!(
            "<a class=key data-key=mark href={}>Mark or compare</a><button type=button class=\"key key-plain\" on:click={}>Erase this picture</button>",
            Route::Picture(id, digest).href(),
            tap(move || {
                spawn_local(async move {
                    if let Ok(Some(gone)) = picturing::erase(shop, id, digest).await {
                        seen.try_update(|seen| seen.erased.push(gone));
                    }
                });
            }),
        )
    }

    /// What stands in the place of an erased picture.
    fn gone(self, entry: EntryId, digest: Digest) -> Piece {
        let shop = self.shop;
        // Brought back, it is fetched anew; till then the browser need not keep its bytes.
        self.seen
            .try_update_untracked(|seen| seen.sights.retain(|(of, _)| *of != entry));
        let held = self.seen.with(|seen| {
            let held = seen.erased.iter().rev().find(|gone| gone.digest == digest);
            held.cloned()
        });
        let undo = held.map(|gone| {
            sheet!(
                "<button type=button class=key on:click={}>Undo the erasing</button>",
                tap(move || drop(picturing::bring_back(shop, &gone))),
            )
        });
        sheet!(
            "<p class=dim data-erased={}>This picture was erased. Its entry stays in the book.</p>{}",
            digest.hex(),
            undo,
        )
    }

    fn sight(self, entry: EntryId, digest: Digest, hand: String, marks: &[Mark]) -> Piece {
        let known = self.seen.with(|seen| {
            let (_, sight) = seen.sights.iter().find(|(of, _)| *of == entry)?;
            let seen = sight.seen.as_ref();
            let address = seen.map(|url| url.as_ref().map(|url| url.as_str().to_owned()));
            Some((sight.large, address))
        });
        if known.is_none() {
            self.seen
                .try_update_untracked(|seen| seen.sights.push((entry, Sight::default())));
            spawn_local(self.fetch(entry, digest, false));
        }
        match known {
            None | Some((_, None)) => sheet!("<p class=dim>Fetching the picture…</p>"),
            Some((_, Some(None))) => sheet!(
                "<p class=dim data-not-here={}>The picture is not on this device. \
                Bring in a file that holds it.</p>",
                digest.hex(),
            ),
            Some((large, Some(Some(address)))) => sheet!(
                "<button type=button class=\"key key-plain\" aria-label=\"Show it {}\" on:click={}>\
                <span class=marked><img data-picture={} src={} alt=\"Picture, {}\"/>{}</span></button>",
                if large { "small" } else { "large" },
                tap(move || {
                    self.seen.update(|seen| {
                        if let Some(sight) = seen.sight(entry) {
                            sight.large = !large;
                        }
                    });
                    spawn_local(self.fetch(entry, digest, !large));
                }),
                digest.hex(),
                address,
                hand,
                marked::drawn(marks),
            ),
        }
    }

    /// Fetches a picture, unless it is wanted in another size by the time it is there.
    async fn fetch(self, entry: EntryId, digest: Digest, large: bool) {
        let url = picturing::sight(self.shop, digest, large).await;
        self.seen.try_update(|seen| {
            if let Some(sight) = seen.sight(entry)
                && sight.large == large
            {
                sight.seen = Some(url);
            }
        });
    }
}
