//! The pictures of a page that shows them large: each is fetched once, in full, and kept as long as the page.

use cartside_core::daybook::{Digest, Mark};
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::marked;
use crate::markup::{Piece, sheet};
use crate::photo::ObjectUrl;
use crate::picturing;
use crate::workshop::Workshop;

/// A picture's address; `None` within if it is not on this device, none yet while it is being fetched.
type Sight = Option<Option<ObjectUrl>>;

/// The pictures of a page.
#[derive(Clone, Copy)]
pub struct Album {
    shop: Workshop,
    seen: RwSignal<Vec<(Digest, Sight)>, LocalStorage>,
}

/// The name of a picture, and what is drawn over it.
pub struct Shown {
    /// The digest of its bytes.
    pub digest: Digest,
    /// What it shows, in words.
    pub words: String,
    /// What is drawn over it.
    pub marks: Vec<Mark>,
    /// Whether its bytes are to go.
    pub erased: bool,
}

impl Album {
    /// An album with nothing in it yet.
    pub fn new(shop: Workshop) -> Album {
        let seen = RwSignal::new_local(Vec::new());
        Album { shop, seen }
    }

    /// How many are still being fetched.
    pub fn fetching(self) -> usize {
        let seen = self.seen.read();
        seen.iter().filter(|(_, sight)| sight.is_none()).count()
    }

    /// A picture with its marks, above its caption and the same marks told in words.
    pub fn figure(self, shown: Shown) -> Piece {
        let (caption, marks) = (shown.words.clone(), shown.marks.clone());
        let told = (!shown.erased).then(|| marked::told(&marks));
        sheet!(
            "<figure>{}<figcaption>{}{}</figcaption></figure>",
            self.sight(shown),
            caption,
            told.flatten()
        )
    }

    /// A picture with its marks; where it cannot be seen, why not.
    pub fn sight(self, shown: Shown) -> Piece {
        if shown.erased {
            return without("The picture was erased; its entry stays in the book.");
        }
        match self.address(shown.digest) {
            None => without("Fetching the picture…"),
            Some(None) => without("The picture is not on this device."),
            Some(Some(address)) => sheet!(
                "<div class=marked><img data-picture={} decoding=sync draggable=false src={} alt={}/>{}</div>",
                shown.digest.hex(),
                address,
                shown.words,
                marked::drawn(&shown.marks)
            ),
        }
    }

    /// Where a picture can be had, `None` within if it is not on this device; none while it is being fetched.
    pub fn address(self, digest: Digest) -> Option<Option<String>> {
        let known = self.seen.with(|seen| {
            let (_, sight) = seen.iter().find(|(of, _)| *of == digest)?;
            let here = |url: &Option<ObjectUrl>| url.as_ref().map(|url| url.as_str().to_owned());
            Some(sight.as_ref().map(here))
        });
        if known.is_none() {
            self.seen
                .try_update_untracked(|seen| seen.push((digest, None)));
            spawn_local(self.fetch(digest));
        }
        known.flatten()
    }

    async fn fetch(self, digest: Digest) {
        // Only now, when the page has been made, is it told that something is being fetched.
        self.seen.try_update(|_| {});
        let url = picturing::sight(self.shop, digest, true).await;
        self.seen.try_update(|seen| {
            if let Some((_, sight)) = seen.iter_mut().find(|(of, _)| *of == digest) {
                *sight = Some(url);
            }
        });
    }
}

fn without(why: &'static str) -> Piece {
    sheet!("<p>{}</p>", why)
}
