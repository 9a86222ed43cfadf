//! `cargo xtask fuzz`: feeds the readers of files and lengths with whatever a fuzzer makes up.

use crate::arguments::Fuzz;
use crate::machine::Machine;
use crate::plan::Need;
use crate::{setup, step, toolchain, workspace};
use anyhow::{Context, Result, bail};
use std::fs;
use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Command, Stdio};

/// The targets of `tests/fuzz`, and how long what each is fed with may be, in bytes.
const TARGETS: [(&str, u32); 5] = [
    ("file", 8192),
    ("members", 4096),
    ("manifest", 4096),
    ("line", 2048),
    ("length", 80),
];
/// Files of the exchange file's own tests that are good to begin with.
const GOOD_TO_BEGIN_WITH: [&str; 2] = ["exchange/good", "exchange/broken"];

/// What a target did, as the fuzzer says.
#[derive(Debug, Default, PartialEq)]
struct Figures {
    executions: u64,
    /// Edges of the program that were reached, and all that were compiled in.
    reached: u64,
    edges: u64,
}

/// Gives each target its share of the time, prints what it did, and fails if any was made to fail.
pub(crate) fn run(options: &Fuzz) -> Result<()> {
    let machine = setup::prepare(Need::Fuzz)?;
    let fuzz = Fuzzing::new(&machine)?;
    let seconds = options.minutes * 60 / TARGETS.len() as u64;
    let (mut executions, mut failed) = (0, Vec::new());
    for (target, longest) in TARGETS {
        let mut figures = Figures::default();
        let remedy =
            "What made it fail lies in tests/fuzz/crashers; it is to be mended and kept there.";
        let done = step::run(&format!("fuzz {target}"), remedy, || {
            fuzz.feed(target, longest, seconds, &mut figures)
        });
        println!("{target}: {}", figures.told());
        executions += figures.executions;
        failed.extend(done.err().map(|error| format!("{error:#}")));
        if options.keep {
            fuzz.keep(target, longest)?;
        }
    }
    println!("{executions} executions in all");
    if failed.is_empty() {
        return Ok(());
    }
    bail!("{}", failed.join("\n"))
}

/// Where everything lies.
struct Fuzzing {
    /// The folder of the tests; `fuzz` below it is the package.
    tests: PathBuf,
    /// Where it is built and where the fuzzer keeps what it finds.
    target: PathBuf,
    program: PathBuf,
}

impl Fuzzing {
    fn new(machine: &Machine) -> Result<Self> {
        let root = workspace::root()?;
        Ok(Self {
            tests: root.join("tests"),
            target: root.join("target/fuzz"),
            program: machine
                .cargo_fuzz
                .clone()
                .context("there is no cargo-fuzz")?,
        })
    }

    fn found(&self, target: &str) -> PathBuf {
        self.target.join("found").join(target)
    }

    fn kept(&self, of: &str, target: &str) -> PathBuf {
        self.tests.join("fuzz").join(of).join(target)
    }

    /// Runs a target for so long on all that is known.
    fn feed(&self, target: &str, longest: u32, seconds: u64, figures: &mut Figures) -> Result<()> {
        let crashers = self.kept("crashers", target);
        let mut folders = vec![
            self.found(target),
            self.kept("corpus", target),
            crashers.clone(),
        ];
        if target == "file" {
            folders.extend(GOOD_TO_BEGIN_WITH.map(|folder| self.tests.join(folder)));
        }
        for folder in &folders {
            fs::create_dir_all(folder)?;
        }
        let mut command = self.cargo_fuzz(target);
        command.args(&folders).args([
            "--".to_owned(),
            format!("-max_total_time={seconds}"),
            format!("-max_len={longest}"),
            format!("-artifact_prefix={}/", crashers.display()),
            "-timeout=10".to_owned(),
            "-print_final_stats=1".to_owned(),
        ]);
        let done = watch(&mut command, figures);
        // A folder without a crasher is nothing to keep.
        let _ = fs::remove_dir(&crashers);
        done
    }

    /// Puts into the checkout what reached an edge that nothing there reached; how often does not count.
    fn keep(&self, target: &str, longest: u32) -> Result<()> {
        let mut command = self.cargo_fuzz(target);
        command.args([self.kept("corpus", target), self.found(target)]);
        command.args([
            "--",
            "-merge=1",
            "-use_counters=0",
            &format!("-max_len={longest}"),
        ]);
        step::run(&format!("keep what {target} found"), "", || {
            step::call(&mut command)
        })
    }

    fn cargo_fuzz(&self, target: &str) -> Command {
        let mut command = toolchain::pinned(&self.program.to_string_lossy());
        command
            .current_dir(&self.tests)
            // Counters of what is reached are asked of the pinned compiler, so no other is needed.
            .env("RUSTC_BOOTSTRAP", "1")
            .env_remove("CARGO_TARGET_DIR")
            .args(["fuzz", "run", "--sanitizer", "none", "--target-dir"])
            .arg(&self.target)
            .arg(target);
        command
    }
}

/// Runs to the end and reads the figures out of what the fuzzer says; its other lines are shown.
fn watch(command: &mut Command, figures: &mut Figures) -> Result<()> {
    let mut child = command.stderr(Stdio::piped()).spawn()?;
    let lines = child.stderr.take().context("no output to read")?;
    for line in BufReader::new(lines).split(b'\n') {
        let line = String::from_utf8_lossy(&line?).into_owned();
        figures.take(&line);
        if !line.starts_with('#') {
            eprintln!("{line}");
        }
    }
    let status = child.wait()?;
    if !status.success() {
        bail!("`{}` ended with {status}", step::line(command));
    }
    Ok(())
}

impl Figures {
    fn take(&mut self, line: &str) {
        let after = |word: &str| {
            let (_, rest) = line.split_once(word)?;
            let rest = rest.trim_start();
            let end = rest.find(|sign: char| !sign.is_ascii_digit());
            rest.get(..end.unwrap_or(rest.len()))?.parse().ok()
        };
        if let Some(edges) = after("Loaded 1 modules   (") {
            self.edges = edges;
        }
        if let Some(reached) = after(" cov:") {
            self.reached = reached;
        }
        if let Some(executions) = after("stat::number_of_executed_units:") {
            self.executions = executions;
        }
    }

    fn told(&self) -> String {
        format!(
            "{} executions, {} of {} edges reached",
            self.executions, self.reached, self.edges
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The names of the targets as their package has them.
    fn named(manifest: &str) -> Vec<&str> {
        let bins = manifest.split("[[bin]]").skip(1);
        bins.filter_map(|bin| bin.split("name = \"").nth(1)?.split('"').next())
            .collect()
    }

    #[test]
    fn every_target_has_its_share() {
        let manifest = include_str!("../../tests/fuzz/Cargo.toml");
        assert_eq!(named(manifest), TARGETS.map(|(target, _)| target));
    }

    #[test]
    fn the_fuzzers_own_figures_are_read() {
        let mut figures = Figures::default();
        for line in [
            "INFO: Loaded 1 modules   (34567 inline 8-bit counters): 34567 [0x1, 0x2), ",
            "#2\tINITED cov: 12 ft: 13 corp: 1/1b exec/s: 0 rss: 30Mb",
            "#88431\tDONE   cov: 1234 ft: 5678 corp: 90/12Kb lim: 80 exec/s: 4000 rss: 90Mb",
            "stat::number_of_executed_units: 88431",
            "stat::peak_rss_mb:              90",
        ] {
            figures.take(line);
        }
        assert_eq!(
            figures.told(),
            "88431 executions, 1234 of 34567 edges reached"
        );
    }
}
