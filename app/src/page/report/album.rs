//! The pictures of a report: each is fetched once, in full, and kept as long as the page.

use cartside_core::daybook::Digest;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::markup::{Piece, sheet};
use crate::photo::ObjectUrl;
use crate::picturing;
use crate::workshop::Workshop;

/// A picture's address; `None` within if it is not on this device, none yet while it is being fetched.
type Sight = Option<Option<ObjectUrl>>;

/// The pictures of a page.
#[derive(Clone, Copy)]
pub(super) struct Album {
    shop: Workshop,
    seen: RwSignal<Vec<(Digest, Sight)>, LocalStorage>,
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

    /// A picture above its caption.
    pub fn figure(self, digest: Digest, caption: String, erased: bool) -> Piece {
        if erased {
            return without(
                &caption,
                "The picture was erased; its entry stays in the book.",
            );
        }
        let address = self.seen.with(|seen| {
            let (_, sight) = seen.iter().find(|(of, _)| *of == digest)?;
            let here = |url: &Option<ObjectUrl>| url.as_ref().map(|url| url.as_str().to_owned());
            Some(sight.as_ref().map(here))
        });
        match address {
            Some(Some(Some(address))) => sheet!(
                "<figure><img data-picture={} decoding=sync src={} alt={}/><figcaption>{}</figcaption></figure>",
                digest.hex(),
                address,
                caption.clone(),
                caption
            ),
            Some(Some(None)) => without(&caption, "The picture is not on this device."),
            Some(None) => without(&caption, "Fetching the picture…"),
            None => {
                self.seen
                    .try_update_untracked(|seen| seen.push((digest, None)));
                spawn_local(self.fetch(digest));
                without(&caption, "Fetching the picture…")
            }
        }
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

fn without(caption: &str, why: &'static str) -> Piece {
    sheet!(
        "<figure><p>{}</p><figcaption>{}</figcaption></figure>",
        why,
        caption.to_owned()
    )
}
