//! `cargo xtask measure`: the figures the README quotes.

use crate::plan::Need;
use crate::test::{MEASURE, Run};
use crate::{precache, setup, step};
use anyhow::{Result, bail};

/// Builds, weighs what is carried over the line, and times the app in a browser.
pub(crate) fn run() -> Result<()> {
    let run = Run::begin(setup::prepare(Need::Measure)?)?;
    let dist = run.build()?;
    let weight = precache::weigh(&dist)?;
    println!("kept for use without a network:\n{weight}");
    of_the_core(&run, "bring two books together", "together")?;
    of_the_core(&run, "look at an old vehicle", "old_vehicle")?;
    of_the_core(&run, "reckon a sheet", "sheet")?;
    let timed = time_in_browser(&run);
    if !weight.is_allowed() {
        let (found, limit) = (weight.gzipped(), precache::LIMIT);
        bail!("the build weighs {found} bytes gzipped, at most {limit} are allowed");
    }
    timed
}

/// Times the core alone, as it is built for release.
fn of_the_core(run: &Run, what: &str, example: &str) -> Result<()> {
    let remedy = "The figure over its limit is named above.";
    step::run(what, remedy, || {
        let mut timed = run.cargo();
        timed.args(["run", "--locked", "--release", "--package", "cartside-core"]);
        step::call(timed.args(["--example", example]))
    })
}

fn time_in_browser(run: &Run) -> Result<()> {
    if !run.has_program(MEASURE) {
        bail!("tests/Cargo.toml names no [[test]] `{MEASURE}`, which times the app in a browser");
    }
    step::run(
        "time the app",
        "The figure over its limit is named above.",
        || step::call(run.program(MEASURE).args(["--", "--nocapture"])),
    )
}
