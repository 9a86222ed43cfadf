//! One figure: printed, and held against its limit.

use tokio::sync::{Mutex, MutexGuard};

static TURN: Mutex<()> = Mutex::const_new(());

/// Waits until no other figure is being taken, since two at once would slow each other down.
pub(crate) async fn alone() -> MutexGuard<'static, ()> {
    TURN.lock().await
}

/// How many times slower than this machine the page runs.
pub(crate) const SLOWER: u32 = 4;

/// Prints the figure; fails if it does not keep under its limit. Both in milliseconds.
pub(crate) fn under(name: &str, found: f64, limit: f64) {
    println!("figure: {name}: {found:.0} ms (limit {limit:.0} ms)");
    hold(name, found, limit);
}

/// The same in another unit.
pub(crate) fn below(name: &str, found: f64, limit: f64, unit: &str) {
    println!("figure: {name}: {found:.1} {unit} (limit {limit:.0} {unit})");
    hold_in(name, found, limit, unit);
}

fn hold(name: &str, found: f64, limit: f64) {
    hold_in(name, found, limit, "ms");
}

fn hold_in(name: &str, found: f64, limit: f64, unit: &str) {
    assert!(
        found < limit,
        "{name}: {found:.1} {unit} was measured, under {limit} {unit} is allowed"
    );
}

/// The value that 95 of 100 do not exceed (nearest rank).
pub(crate) fn p95(values: Vec<f64>) -> f64 {
    of_hundred(95, values)
}

/// The value that so many of 100 do not exceed (nearest rank).
pub(crate) fn of_hundred(share: usize, mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    let rank = (values.len() * share).div_ceil(100);
    values[rank - 1]
}

#[test]
fn the_nearest_rank_is_taken() {
    let hundred: Vec<f64> = (1..=100).rev().map(f64::from).collect();
    assert_eq!(p95(hundred), 95.0);
    assert_eq!(p95(vec![2.0, 1.0]), 2.0);
    assert_eq!(of_hundred(98, (1..=100).map(f64::from).collect()), 98.0);
    assert_eq!(of_hundred(50, vec![3.0, 1.0, 2.0]), 2.0);
    // The 57th of 60.
    assert_eq!(p95((1..=60).map(f64::from).collect()), 57.0);
}

#[test]
#[should_panic = "100.0 ms was measured, under 100 ms is allowed"]
fn a_figure_at_its_limit_fails() {
    hold("a figure", 100.0, 100.0);
}
