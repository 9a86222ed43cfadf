//! The limits of this shop: the table as it comes, with what the shop has set in its stead.

use super::house::house_limits;
use super::limit::Limit;
use super::row::number;
use crate::daybook::{Entry, Says, View};

/// The limits that findings are judged by. In a dispute the most cautious side counts; a side that
/// cannot be read, or sets what cannot be set, counts as the row as it comes.
pub fn limits(view: &View<'_>) -> Vec<Limit> {
    let set: Vec<&Entry> = view.limits().flat_map(|thread| thread.counts()).collect();
    let now = |row: Limit| {
        let code = row.code();
        let sides = set.iter().filter(|entry| entry.slot == code);
        sides
            .map(|entry| side(row, entry))
            .reduce(cautious)
            .unwrap_or(Some(row))
    };
    house_limits().into_iter().filter_map(now).collect()
}

/// A row as one entry sets it; `None` if it is not to be used.
fn side(row: Limit, entry: &Entry) -> Option<Limit> {
    match &entry.says {
        Says::Limit(said) => row.edited(said.threshold).unwrap_or(Some(row)),
        _ => Some(row),
    }
}

/// The more cautious of two: a row that is used before one that is not, then the one that is reached
/// sooner.
fn cautious(one: Option<Limit>, other: Option<Limit>) -> Option<Limit> {
    let at = |limit: &Limit| {
        let value = limit.test.threshold().map(number);
        let below = limit.test.is_reached_below();
        value.map(|value| if below { -value } else { value })
    };
    match (one, other) {
        (Some(one), Some(other)) if at(&other) < at(&one) => Some(other),
        (None, other) => other,
        (one, _) => one,
    }
}

#[cfg(test)]
mod tests;
