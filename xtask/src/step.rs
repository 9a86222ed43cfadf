//! Running one step: its name, its time, and on failure what to do about it.

use anyhow::{Context, Result, bail};
use std::process::Command;
use std::time::Instant;

/// Runs a step, prints its name and its seconds; an error names the step and the remedy.
pub(crate) fn run<T>(name: &str, remedy: &str, work: impl FnOnce() -> Result<T>) -> Result<T> {
    println!("==> {name}");
    let start = Instant::now();
    let done = work();
    let word = if done.is_ok() { "done" } else { "FAILED" };
    let seconds = start.elapsed().as_secs_f64();
    println!("==> {name}: {word} in {seconds:.1} s");
    done.with_context(|| format!("step `{name}` failed. {remedy}\nthe reason"))
}

/// Runs a program to its end; an error tells which and how it ended.
pub(crate) fn call(command: &mut Command) -> Result<()> {
    let status = command.status().with_context(|| line(command))?;
    if !status.success() {
        bail!("`{}` ended with {status}", line(command));
    }
    Ok(())
}

/// The command as it would be typed, without its environment.
pub(crate) fn line(command: &Command) -> String {
    let program = command.get_program().to_string_lossy();
    let arguments = command.get_args().map(|word| word.to_string_lossy());
    std::iter::once(program)
        .chain(arguments)
        .collect::<Vec<_>>()
        .join(" ")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn a_failure_names_the_step_the_remedy_and_the_reason() {
        let failed = run("plane the spoke", "Sharpen the knife.", || {
            call(Command::new("false").arg("now"))
        });
        let told = format!("{:#}", failed.unwrap_err());
        for part in ["`plane the spoke`", "Sharpen the knife.", "`false now`"] {
            assert!(told.contains(part), "{told} lacks {part}");
        }
    }
}
