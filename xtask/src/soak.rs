//! `cargo xtask soak`: what takes too long for every run of the tests.

use crate::plan::Need;
use crate::test::Run;
use crate::{setup, step};
use anyhow::Result;

/// How often the browser is killed; `cargo xtask test` does it twenty times.
const KILLS: u32 = 200;

/// Builds, and kills the browser two hundred times while remarks are being saved.
pub(crate) fn run() -> Result<()> {
    let run = Run::begin(setup::prepare(Need::BuildAndBrowse)?)?;
    run.build()?;
    let remedy = "What was said to be saved and is not in the book is named above.";
    step::run("kill the browser again and again", remedy, || {
        let mut kills = run.program("browser");
        kills.args(["--", "kills::chromium::", "--nocapture"]);
        step::call(kills.env("CARTSIDE_KILLS", KILLS.to_string()))
    })
}
