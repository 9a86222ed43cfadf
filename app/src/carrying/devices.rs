//! Other devices that this book has met, and how much of it each of them has.
//!
//! How much is told by arrival: the number under which a line reached this book, whatever any clock said. It is
//! remembered only where it is certain that the device has everything up to it, or was handed a file with it;
//! otherwise more goes out than need be, and never less.

use crate::storage::Saved;
use crate::workshop::{Step, Workshop, sentence};

/// How the names begin under which devices are remembered.
const MET: &str = "met/";

/// Another device.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Met {
    /// Its name, as it stands in the lines it writes.
    pub device: String,
    /// The greatest arrival up to which it has everything.
    pub reached: u64,
    /// The day of the last file from it, as its clock claimed.
    pub day: String,
    /// Who wrote on it last; empty if not said.
    pub who: String,
}

/// Every device met, by name.
///
/// # Errors
/// The book cannot be reached.
pub async fn met(shop: Workshop) -> Step<Vec<Met>> {
    let kept = shop.store()?.metas(MET).await.map_err(sentence)?;
    Ok(kept
        .iter()
        .filter_map(|(name, told)| read(name, told))
        .collect())
}

/// Remembers that a file came from a device. It has what was in that file; so where it had everything before, or all
/// that was here before stood in the file too (`already` lines did), it has everything now.
///
/// # Errors
/// It is not remembered.
pub async fn remember_came_from(
    shop: Workshop,
    from: Met,
    already: usize,
    saved: Saved,
) -> Step<()> {
    let before = known(shop, &from.device).await?;
    let all = before.reached >= saved.before || already as u64 >= saved.before;
    let reached = if all { saved.reached } else { before.reached };
    keep(shop, &Met { reached, ..from }).await
}

/// Remembers that a device was handed everything up to an arrival.
///
/// # Errors
/// It is not remembered.
pub(super) async fn remember_has(shop: Workshop, device: &str, reached: u64) -> Step<()> {
    let before = known(shop, device).await?;
    keep(shop, &Met { reached, ..before }).await
}

async fn known(shop: Workshop, device: &str) -> Step<Met> {
    let met = met(shop).await?.into_iter();
    let mut same = met.filter(|met| met.device == device);
    Ok(same.next().unwrap_or_else(|| Met {
        device: device.to_owned(),
        ..Met::default()
    }))
}

async fn keep(shop: Workshop, met: &Met) -> Step<()> {
    if met.device == shop.device() {
        return Ok(());
    }
    let (name, told) = (format!("{MET}{}", met.device), written(met));
    shop.store()?.put_meta(&name, &told).await.map_err(sentence)
}

fn written(met: &Met) -> String {
    format!("{} {} {}", met.reached, met.day, met.who)
}

fn read(name: &str, told: &str) -> Option<Met> {
    let mut told = told.splitn(3, ' ').map(str::to_owned);
    Some(Met {
        device: name.strip_prefix(MET)?.to_owned(),
        reached: told.next()?.parse().ok()?,
        day: told.next()?,
        who: told.next()?,
    })
}

#[cfg(test)]
mod tests {
    use super::{MET, Met, read, written};

    #[test]
    fn what_is_kept_of_a_device_is_read_back() {
        let met = Met {
            device: "0f1e".to_owned(),
            reached: 1234,
            day: "2026-11-25".to_owned(),
            who: "A. Wright".to_owned(),
        };
        let nobody = Met {
            day: String::new(),
            who: String::new(),
            ..met.clone()
        };
        for met in [met, nobody] {
            assert_eq!(read(&format!("{MET}0f1e"), &written(&met)), Some(met));
        }
        assert_eq!(read("met/0f1e", "many 2026-11-25 A. Wright"), None);
        assert_eq!(read("carried-out", "3 2026-11-25 "), None);
    }
}
