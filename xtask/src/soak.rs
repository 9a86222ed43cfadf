//! `cargo xtask soak`: what takes too long for every run of the tests.

use crate::plan::Need;
use crate::test::Run;
use crate::{setup, step};
use anyhow::Result;

/// How often the browser is killed; `cargo xtask test` does it twenty times.
const KILLS: u32 = 200;

/// How many histories of three devices; `cargo xtask test` takes 10 000.
const HISTORIES: u32 = 100_000;

/// Builds, lets three devices bring their books together again and again, and kills the browser two hundred times
/// while remarks are being saved.
pub(crate) fn run() -> Result<()> {
    let run = Run::begin(setup::prepare(Need::BuildAndBrowse)?)?;
    bring_together(&run)?;
    run.build()?;
    let remedy = "What was said to be saved and is not in the book is named above.";
    step::run("kill the browser again and again", remedy, || {
        let mut kills = run.program("browser");
        kills.args(["--", "kills::chromium::", "--nocapture"]);
        step::call(kills.env("CARTSIDE_KILLS", KILLS.to_string()))
    })
}

fn bring_together(run: &Run) -> Result<()> {
    let remedy = "The seed of the history whose devices disagree is named above.";
    step::run("histories of three devices", remedy, || {
        let mut histories = run.program("exchange");
        histories.args(["--", "histories::", "--nocapture"]);
        step::call(histories.env("CARTSIDE_HISTORIES", HISTORIES.to_string()))
    })
}
