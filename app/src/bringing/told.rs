//! What bringing a file in would do, and what it did, in sentences; what does not happen is left out.

use super::{Brought, Plan};
use crate::wording::counted;

const NOTHING_NEW: &str = "Everything in this file is here already: bringing it in adds nothing.";

const NOTHING_ADDED: &str = "Nothing was added: everything in the file was here already.";

const OWN_NAME: &str = "Some entries carry this device's own name and are not in its book: it was restored, or copied \
    from another. It would take a new name, so that the two can be told apart.";

const RENAMED: &str =
    "This device has taken a new name, since entries by its old one came from elsewhere.";

/// What it would do.
pub fn foreseen(plan: &Plan) -> Vec<String> {
    let mut said = when(plan.nothing(), NOTHING_NEW);
    said.extend(entries(plan));
    said.extend(pictures(plan));
    said.extend(when(plan.own_name, OWN_NAME));
    said
}

/// What it did.
pub fn came_of(brought: Brought) -> Vec<String> {
    let Brought {
        entries,
        pictures,
        erased,
        renamed,
    } = brought;
    let mut said = when(entries + pictures + erased == 0, NOTHING_ADDED);
    said.extend(some(entries, ["entry", "entries"], "added"));
    said.extend(some(pictures, ["picture", "pictures"], "added"));
    said.extend(some(
        erased,
        ["picture", "pictures"],
        "went from here: erased on the other device",
    ));
    said.extend(when(renamed, RENAMED));
    said
}

fn entries(plan: &Plan) -> impl Iterator<Item = String> {
    let (shown, left) = plan.vehicles.split_at(plan.vehicles.len().min(NAMED));
    let more = (!left.is_empty()).then(|| format!("; and {} more", left.len()));
    let names = shown.join("; ") + &more.unwrap_or_default();
    let vehicles = counted(plan.vehicles.len(), "new vehicle", "new vehicles");
    [
        some(
            plan.entries.len(),
            ["new entry", "new entries"],
            "would be added",
        ),
        some(
            plan.already,
            ["of its entries is", "of its entries are"],
            "here already",
        ),
        (!plan.vehicles.is_empty()).then(|| format!("{vehicles}: {names}.")),
        some(plan.newer, ["entry", "entries"], NEWER),
        some(plan.disputes, ["dispute", "disputes"], DISPUTES),
    ]
    .into_iter()
    .flatten()
}

/// How many new vehicles are named: more would push the key that brings them in out of reach.
const NAMED: usize = 12;

const NEWER: &str = "written by a newer Cartside: kept whole, and read as far as this one can";

const DISPUTES: &str = "would arise, where both books say something of the same thing and differ";

fn pictures(plan: &Plan) -> impl Iterator<Item = String> {
    let gone = "here would go: erased on the other device";
    [
        some(
            plan.pictures.len(),
            ["new picture", "new pictures"],
            "would be added",
        ),
        some(
            plan.kept_out,
            ["picture", "pictures"],
            "would stay out: erased",
        ),
        some(plan.erase.len(), ["picture", "pictures"], gone),
    ]
    .into_iter()
    .flatten()
}

fn some(count: usize, [one, many]: [&str; 2], what: &str) -> Option<String> {
    (count > 0).then(|| format!("{} {what}.", counted(count, one, many)))
}

fn when(holds: bool, sentence: &str) -> Vec<String> {
    holds.then(|| sentence.to_owned()).into_iter().collect()
}
