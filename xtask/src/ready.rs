//! `cargo xtask ready`: the fast loop, before a change is set down.

use crate::machine::Machine;
use crate::setup;
use crate::tally::Tally;
use crate::test::Run;
use anyhow::Result;
use std::process::ExitCode;

/// Format, lints on this machine, core tests. Installs nothing.
pub(crate) fn run() -> Result<ExitCode> {
    let run = Run::begin(Machine::look(&setup::cache()?))?;
    let mut tally = Tally::default();
    run.format(&mut tally);
    // The app compiles for this machine too, which is enough to lint it and needs no wasm library.
    run.lint_host(&mut tally, &["--workspace", "--all-targets"]);
    run.test(&mut tally, "core tests", &["--package", "cartside-core"]);
    Ok(tally.finish())
}
