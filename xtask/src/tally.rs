//! The account of a whole run: what passed, what failed, and the line it ends with.

use crate::libtest::{self, Counts};
use crate::step;
use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::process::{Command, ExitCode, Stdio};

/// Steps go on after one has failed, so that one run tells all; the tally remembers.
#[derive(Debug, Default)]
pub(crate) struct Tally {
    counts: Counts,
    skipped: Vec<String>,
    faults: Vec<String>,
}

impl Tally {
    /// Runs a step that either holds or does not; a failure counts as one failed.
    pub(crate) fn check(&mut self, name: &str, remedy: &str, work: impl FnOnce() -> Result<()>) {
        self.note(step::run(name, remedy, work));
    }

    /// Notes how a step that has told its own name ended; true if it holds.
    pub(crate) fn note<T>(&mut self, done: Result<T>) -> bool {
        done.inspect_err(|error| self.fault(error, 1)).is_ok()
    }

    /// Runs a program of tests and adds what it counted; one that counts nothing has failed.
    pub(crate) fn tests(&mut self, name: &str, command: &mut Command) {
        let mut counts = Counts::default();
        let remedy = "The failing tests are named above.";
        let done = step::run(name, remedy, || {
            run_and_count(command, &mut counts, &mut self.skipped)
        });
        self.counts += counts;
        if let Err(error) = done {
            // A program that broke off before it could count has failed too.
            self.fault(&error, u64::from(counts.failed == 0));
        }
    }

    /// Notes a step that could not be tried.
    pub(crate) fn not_run(&mut self, name: &str, because: &str) {
        println!("==> {name}: NOT RUN, {because}");
        self.faults
            .push(format!("step `{name}` was not run, {because}"));
        self.counts.failed += 1;
    }

    fn fault(&mut self, error: &anyhow::Error, failed: u64) {
        self.faults.push(format!("{error:#}"));
        self.counts.failed += failed;
    }

    /// Prints what was skipped and every fault again, and last of all the one plain line; a failure if anything failed or nothing ran.
    pub(crate) fn finish(mut self) -> ExitCode {
        if self.counts.is_empty() {
            self.faults.push("no test ran at all".to_owned());
            self.counts.failed += 1;
        }
        for skipped in &self.skipped {
            println!("{skipped}");
        }
        for fault in &self.faults {
            eprintln!("{fault}");
        }
        println!("{}", self.line());
        match self.holds() {
            true => ExitCode::SUCCESS,
            false => ExitCode::FAILURE,
        }
    }

    fn holds(&self) -> bool {
        self.counts.failed == 0 && self.counts.passed > 0
    }

    fn line(&self) -> String {
        format!(
            "{} passed, {} failed",
            self.counts.passed, self.counts.failed
        )
    }
}

/// Shows the program's lines as they come, adds up those that sum up, and notes what was skipped.
fn run_and_count(
    command: &mut Command,
    counts: &mut Counts,
    skipped: &mut Vec<String>,
) -> Result<()> {
    let mut child = command.stdout(Stdio::piped()).spawn()?;
    let lines = child.stdout.take().context("no output to read")?;
    for line in BufReader::new(lines).split(b'\n') {
        let line = String::from_utf8_lossy(&line?).into_owned();
        println!("{line}");
        if let Some(found) = libtest::counts(&line) {
            *counts += found;
        }
        if let Some((name, because)) = libtest::skipped(&line) {
            skipped.push(format!("skipped: {name}: {because}"));
        }
    }
    let status = child.wait()?;
    if !status.success() {
        bail!("`{}` ended with {status}", step::line(command));
    }
    if counts.is_empty() {
        bail!("`{}` ran no test", step::line(command));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn says(text: &str, code: u8) -> Command {
        let mut command = Command::new("sh");
        command.args(["-c", &format!("printf '%s\\n' '{text}'; exit {code}")]);
        command
    }

    fn after(text: &str, code: u8) -> Tally {
        let mut tally = Tally::default();
        tally.tests("some tests", &mut says(text, code));
        tally
    }

    #[test]
    fn counts_of_all_programs_are_added() {
        let mut tally = after("test result: ok. 2 passed; 0 failed; 0 ignored", 0);
        tally.tests(
            "more",
            &mut says("test result: FAILED. 3 passed; 2 failed; 0 ignored", 101),
        );
        assert_eq!(tally.line(), "5 passed, 2 failed");
        assert_eq!(tally.faults.len(), 1);
    }

    #[test]
    fn what_is_skipped_is_told_and_not_counted() {
        let text =
            "test a::b ... ignored, no such key\ntest result: ok. 2 passed; 0 failed; 1 ignored";
        let tally = after(text, 0);
        assert_eq!(tally.line(), "2 passed, 0 failed");
        assert_eq!(tally.skipped, ["skipped: a::b: no such key"]);
    }

    #[test]
    fn a_program_that_breaks_off_counts_as_a_failure() {
        let tally = after("running 3 tests", 101);
        assert_eq!(tally.line(), "0 passed, 1 failed");
    }

    #[test]
    fn a_program_without_tests_counts_as_a_failure() {
        let tally = after("test result: ok. 0 passed; 0 failed; 0 ignored", 0);
        assert_eq!(tally.line(), "0 passed, 1 failed");
    }

    #[test]
    fn a_run_holds_only_if_something_passed_and_nothing_failed() {
        assert!(after("test result: ok. 1 passed; 0 failed; 0 ignored", 0).holds());
        assert!(!after("test result: ok. 1 passed; 0 failed; 0 ignored", 3).holds());
        assert!(!Tally::default().holds());
        assert_eq!(Tally::default().finish(), ExitCode::FAILURE);
    }

    #[test]
    fn what_was_not_run_counts_as_a_failure() {
        let mut tally = Tally::default();
        tally.not_run("browser tests", "because there is no build");
        assert_eq!(tally.line(), "0 passed, 1 failed");
    }

    #[test]
    fn a_check_that_fails_counts_and_says_so() {
        let mut tally = Tally::default();
        tally.check("holds", "", || Ok(()));
        assert_eq!(tally.line(), "0 passed, 0 failed");
        tally.check("fails", "Mend it.", || bail!("broken"));
        assert_eq!(tally.line(), "0 passed, 1 failed");
    }
}
