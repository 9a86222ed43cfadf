//! The pictures of one part, and the taking of one. That a picture is waited for is kept as a draft, since the
//! browser may end the page while the camera is open.

use std::collections::BTreeMap;

use cartside_core::daybook::{Digest, EntryId, Kind, Says};
use cartside_core::wheel::Part;
use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::File;

use crate::component::plain::key;
use crate::correction_key::correction_key;
use crate::draft;
use crate::fate::Fate;
use crate::markup::{Piece, Tag, picked_file, tag};
use crate::photo::ObjectUrl;
use crate::picturing::{self, Erased};
use crate::wording;
use crate::workshop::Workshop;

/// The pictures of one part as the page shows them.
#[derive(Clone, Copy)]
struct Album {
    shop: Workshop,
    /// What there is to see of the picture of an entry, from the first showing on.
    sights: RwSignal<BTreeMap<EntryId, Sight>, LocalStorage>,
    /// Pictures erased since the page was opened; each can still be brought back.
    erased: RwSignal<Vec<Erased>, LocalStorage>,
}

/// A picture, small; large when tapped.
#[derive(Default)]
struct Sight {
    large: bool,
    /// Its address, `None` within if it is not on this device; none yet while it is being fetched.
    seen: Option<Option<ObjectUrl>>,
}

/// The pictures of one part.
pub(super) fn pictures(shop: Workshop, id: EntryId, of: Part) -> Tag {
    let lost = RwSignal::new(false);
    let busy = RwSignal::new(false);
    spawn_local(async move {
        let waiting = draft::find(shop, &draft::of_picture(id, of)).await;
        lost.try_set(waiting.is_some());
    });
    let album = Album {
        shop,
        sights: RwSignal::new_local(BTreeMap::new()),
        erased: RwSignal::new_local(Vec::new()),
    };
    tag("section")
        .class("card")
        .put(tag("h2").put("Pictures"))
        .live(move || {
            lost.get().then(|| {
                tag("p")
                    .class("warning")
                    .set("role", "alert")
                    .set("data-lost", "picture")
                    .put("A picture was being taken here when the page was closed, and it was not received. Nothing else was lost: take it again.")
            })
        })
        .live(move || taking(shop, id, of, lost, busy))
        .live(move || tag("div").class("pictures").each(album.figures(id, of)))
}

/// The key that opens the camera.
fn taking(
    shop: Workshop,
    id: EntryId,
    of: Part,
    lost: RwSignal<bool>,
    busy: RwSignal<bool>,
) -> Tag {
    let taking = busy.get();
    let name = move || draft::of_picture(id, of);
    let words = if taking {
        "Taking it up…"
    } else {
        "Take a picture"
    };
    let camera = tag("input")
        .set("type", "file")
        .set("accept", "image/*")
        .set("capture", "environment")
        .tap(move || {
            lost.set(false);
            draft::keep(shop, name(), "waiting for a picture".to_owned());
        })
        .on("cancel", move |_| draft::drop_it(shop, name()))
        .on("change", move |event| match picked_file(&event) {
            Some(file) => spawn_local(take(shop, id, of, file, busy)),
            None => draft::drop_it(shop, name()),
        });
    tag("label")
        .class("key key-main")
        .is("aria-busy", taking)
        .put(words)
        .put(camera)
}

async fn take(shop: Workshop, id: EntryId, of: Part, file: File, busy: RwSignal<bool>) {
    busy.try_set(true);
    if picturing::take(shop, id, of, file).await.is_err() {
        // The file came, so nothing is waited for any more; why it was not taken is shown at the foot.
        draft::drop_it(shop, draft::of_picture(id, of));
    }
    busy.try_set(false);
}

impl Album {
    /// Every picture, the latest first.
    fn figures(self, id: EntryId, of: Part) -> Vec<Tag> {
        let Some(opened) = self.shop.opened.get() else {
            return Vec::new();
        };
        let view = opened.book.view();
        let erased = view.erased();
        let mut figures = Vec::new();
        for thread in view.vehicle(opened.vehicle).threads(&Kind::Picture) {
            for entry in thread.entries() {
                let fate = Fate::of(thread, entry);
                if let Says::Picture(said) = &entry.says
                    && said.part == of
                    && fate != Fate::Replaced
                {
                    let (digest, hand) = (said.digest, wording::hand(entry));
                    let (shown, erase) = if erased.contains(&digest) {
                        (self.gone(entry.id, digest), None)
                    } else {
                        let shown = self.sight(entry.id, digest, &hand);
                        (shown, Some(self.erase_key(id, digest)))
                    };
                    let correct = fate.correction();
                    let correct = correct.map(|how| correction_key(self.shop, entry.id, how));
                    let caption = tag("figcaption")
                        .put(tag("span").class_if(fate.gone(), "struck").put("Picture"))
                        .put(" ")
                        .put(fate.words())
                        .put(tag("br"))
                        .put(tag("span").class("dim").put(hand));
                    figures.push(
                        tag("figure")
                            .set("data-fate", fate.code())
                            .put(shown)
                            .put(caption)
                            .put(tag("div").class("row").put(correct).put(erase)),
                    );
                }
            }
        }
        figures.reverse();
        figures
    }

    fn erase_key(self, id: EntryId, digest: Digest) -> Tag {
        let Album { shop, erased, .. } = self;
        key("Erase this picture").class("key-plain").tap(move || {
            spawn_local(async move {
                if let Ok(Some(gone)) = picturing::erase(shop, id, digest).await {
                    erased.try_update(|list| list.push(gone));
                }
            });
        })
    }

    /// What stands in the place of an erased picture.
    fn gone(self, entry: EntryId, digest: Digest) -> Piece {
        let shop = self.shop;
        // Brought back, it is fetched anew; till then the browser need not keep its bytes.
        self.sights
            .try_update_untracked(|sights| sights.remove(&entry));
        let held = self.erased.with(|list| {
            let held = list.iter().rev().find(|gone| gone.digest == digest);
            held.cloned()
        });
        let undo = held.map(|gone| {
            key("Undo the erasing").tap(move || {
                let gone = gone.clone();
                spawn_local(async move { drop(picturing::bring_back(shop, gone).await) });
            })
        });
        Piece::Several(vec![
            tag("p")
                .class("dim")
                .set("data-erased", digest.hex())
                .put("This picture was erased. Its entry stays in the book.")
                .into(),
            undo.into(),
        ])
    }

    fn sight(self, entry: EntryId, digest: Digest, hand: &str) -> Piece {
        let known = self.sights.with(|sights| {
            let sight = sights.get(&entry)?;
            let seen = sight.seen.as_ref();
            let address = seen.map(|url| url.as_ref().map(|url| url.as_str().to_owned()));
            Some((sight.large, address))
        });
        if known.is_none() {
            self.sights
                .try_update_untracked(|sights| sights.insert(entry, Sight::default()));
            spawn_local(self.fetch(entry, digest, false));
        }
        let words = tag("p").class("dim");
        match known {
            None | Some((_, None)) => words.put("Fetching the picture…").into(),
            Some((_, Some(None))) => words
                .set("data-not-here", digest.hex())
                .put("The picture is not on this device. Bring in a file that holds it.")
                .into(),
            Some((large, Some(Some(address)))) => tag("button")
                .set("type", "button")
                .class("key key-plain")
                .set(
                    "aria-label",
                    if large {
                        "Show it small"
                    } else {
                        "Show it large"
                    },
                )
                .tap(move || {
                    self.sights.update(|sights| {
                        if let Some(sight) = sights.get_mut(&entry) {
                            sight.large = !large;
                        }
                    });
                    spawn_local(self.fetch(entry, digest, !large));
                })
                .put(
                    tag("img")
                        .set("data-picture", digest.hex())
                        .set("src", address)
                        .set("alt", format!("Picture, {hand}")),
                )
                .into(),
        }
    }

    /// Fetches a picture, unless it is wanted in another size by the time it is there.
    async fn fetch(self, entry: EntryId, digest: Digest, large: bool) {
        let url = picturing::sight(self.shop, digest, large).await;
        self.sights.try_update(|sights| {
            if let Some(sight) = sights.get_mut(&entry)
                && sight.large == large
            {
                sight.seen = Some(url);
            }
        });
    }
}
