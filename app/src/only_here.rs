//! What of the book is on this device alone, and when a reminder of that is due.
//!
//! A line is elsewhere once the whole book was carried out with it, or if another device wrote it. That a file
//! carried out is still there nobody can know here.

use cartside_core::daybook::Says;
use cartside_core::paper::line;
use cartside_core::words::within;

use crate::carrying::{LAST, REACHED};
use crate::clock;
use crate::storage::{Store, Which};
use crate::workshop::{Step, Workshop, sentence};

/// The name under which the device remembers until when it is to say nothing.
const QUIET: &str = "quiet-until";
/// How many lines are read from storage at once.
const CHUNK: u32 = 500;
/// How old the last file may be, in days, before a reminder is due.
const DAYS: f64 = 7.0;
/// How many entries may be here alone, however young, before a reminder is due.
const MANY: usize = 200;
/// A day in milliseconds.
const DAY: f64 = 86_400_000.0;

/// What is on this device alone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OnlyHere {
    /// How many entries.
    pub entries: usize,
    /// How many pictures.
    pub pictures: usize,
    /// Days since the whole book was last carried out, by this device's clock; `None` if it never was.
    pub days: Option<f64>,
    quiet: bool,
}

impl OnlyHere {
    /// Whether a reminder is due: there is something, it has waited long or has become much, and nobody asked for
    /// quiet.
    pub fn is_due(&self) -> bool {
        // A clock that was set back makes the last file one of the future; how old it is nobody knows then.
        let long = self.days.is_none_or(|days| !(0.0..DAYS).contains(&days));
        self.entries > 0 && !self.quiet && (long || self.entries >= MANY)
    }
}

/// Looks through what has reached this device since the whole book was last carried out.
///
/// # Errors
/// The book cannot be reached.
pub async fn look(shop: Workshop) -> Step<OnlyHere> {
    let store = shop.store()?;
    if store.which() != Which::Own {
        return Ok(OnlyHere::default());
    }
    let meta = async |name| store.meta(name).await.map_err(sentence);
    let reached = meta(REACHED).await?.and_then(|kept| kept.parse().ok());
    let (entries, pictures) = since(&store, reached.unwrap_or(0), &shop.device()).await?;
    let last = meta(LAST).await?;
    let quiet = meta(QUIET).await?;
    Ok(OnlyHere {
        entries,
        pictures,
        days: last.map(|last| clock::since(&last) / DAY),
        // At most a week is ever asked for: a later end comes from a clock that was set back.
        quiet: quiet.is_some_and(|until| (-DAYS * DAY..0.0).contains(&clock::since(&until))),
    })
}

/// How many lines that this device wrote have arrived after this, and how many pictures of theirs are here.
async fn since(store: &Store, reached: u64, device: &str) -> Step<(usize, usize)> {
    let mut names = vec![format!("\"device\":\"{device}\"")];
    let before = store.earlier_names().await.map_err(sentence)?;
    names.extend(before.iter().map(|name| format!("\"device\":\"{name}\"")));
    let (mut entries, mut digests) = (0, Vec::new());
    let mut next = Some(reached + 1);
    while let Some(from) = next {
        let chunk = store.all_lines(from, CHUNK).await.map_err(sentence)?;
        // Looking for the words first spares reading every line.
        let own = |text: &&String| names.iter().any(|name| within::find(text, name).is_some());
        for text in chunk.lines.iter().map(|(_, text)| text).filter(own) {
            entries += 1;
            if within::find(text, "\"picture\"").is_some()
                && let Ok(entry) = line::read(text)
                && let Says::Picture(picture) = entry.says
            {
                digests.push(picture.digest.hex());
            }
        }
        next = chunk.next;
    }
    let here = store.picture_digests().await.map_err(sentence)?;
    digests.sort_unstable();
    digests.dedup();
    digests.retain(|digest| here.binary_search(digest).is_ok());
    Ok((entries, digests.len()))
}

/// Says nothing of it for a week.
///
/// # Errors
/// The reminder comes again.
pub async fn quieten(shop: Workshop) -> Step<()> {
    let until = clock::later(DAYS * DAY);
    let store = shop.store()?;
    store.put_meta(QUIET, &until).await.map_err(sentence)
}
