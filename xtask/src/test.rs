//! `cargo xtask test`: everything that must hold, in one run.

use crate::build::{self, Profile};
use crate::machine::Machine;
use crate::newer;
use crate::plan::Need;
use crate::setup;
use crate::shared_build::SharedBuild;
use crate::step;
use crate::tally::Tally;
use crate::toolchain::{self, WASM, WasmCompiler};
use crate::workspace::Workspace;
use anyhow::Result;
use std::path::Path;
use std::process::{Command, ExitCode};

const TESTS: &str = "cartside-tests";
/// Drives the built app, so it comes after the build.
const BROWSER: &str = "browser";
/// Part of the path of each browser test that is timed: other tests beside it would spoil its figures.
const ALONE: &str = "::alone::";
/// Prints figures and is run by `cargo xtask measure`.
pub(crate) const MEASURE: &str = "measure";

/// `cargo xtask test`.
pub(crate) fn run() -> ExitCode {
    let mut tally = Tally::default();
    match setup::prepare(Need::BuildAndBrowseAll).and_then(Run::begin) {
        Ok(run) => run.all(&mut tally),
        Err(error) => {
            eprintln!("{error:#}");
            tally.not_run("all tests", "because the machine could not be set up");
        }
    }
    tally.finish()
}

/// What the commands of the daily loop share.
pub(crate) struct Run {
    machine: Machine,
    workspace: Workspace,
    held: SharedBuild,
}

impl Run {
    /// Takes hold of the build folder.
    pub(crate) fn begin(machine: Machine) -> Result<Self> {
        let workspace = Workspace::read()?;
        let held = SharedBuild::hold(&workspace)?;
        Ok(Self {
            machine,
            workspace,
            held,
        })
    }

    fn all(&self, tally: &mut Tally) {
        self.format(tally);
        self.lint_host(
            tally,
            &["--workspace", "--exclude", "cartside-app", "--all-targets"],
        );
        self.lint_wasm(tally);
        self.test(tally, "core tests", &["--package", "cartside-core"]);
        self.test(tally, "app tests", &["--package", "cartside-app"]);
        self.test(tally, "tests of these commands", &["--package", "xtask"]);
        self.programs(tally);
    }

    pub(crate) fn format(&self, tally: &mut Tally) {
        tally.check("format", "Run `cargo fmt`.", || {
            step::call(self.cargo().args(["fmt", "--all", "--check"]))
        });
    }

    pub(crate) fn lint_host(&self, tally: &mut Tally, what: &[&str]) {
        tally.check("lint", "The lines are named above.", || {
            let mut clippy = self.cargo();
            clippy.args(["clippy", "--locked"]).args(what);
            step::call(deny(&mut clippy, toolchain::host_is_pinned()))
        });
    }

    fn lint_wasm(&self, tally: &mut Tally) {
        tally.check(
            "lint the app for wasm",
            "The lines are named above.",
            || {
                let compiler = WasmCompiler::on(&self.machine);
                let mut clippy = self.cargo();
                clippy.args([
                    "clippy",
                    "--locked",
                    "--package",
                    "cartside-app",
                    "--target",
                    WASM,
                ]);
                compiler.lend_to(&mut clippy);
                step::call(deny(&mut clippy, compiler.is_strict()))
            },
        );
    }

    pub(crate) fn test(&self, tally: &mut Tally, name: &str, what: &[&str]) {
        let mut command = self.cargo();
        command
            .args(["test", "--locked", "--no-fail-fast"])
            .args(what);
        tally.tests(name, &mut command);
    }

    /// Each program the tests' manifest names, so that none can be forgotten.
    fn programs(&self, tally: &mut Tally) {
        let names = self.workspace.test_programs(TESTS);
        if names.is_empty() {
            tally.not_run(
                "outside tests",
                "because tests/Cargo.toml names no [[test]]",
            );
        }
        for name in before_build(&names) {
            self.test(
                tally,
                &format!("{name} tests"),
                &["--package", TESTS, "--test", name],
            );
        }
        let built = self
            .build()
            .and_then(|_| newer::build(&self.workspace.root));
        if tally.note(built) && names.contains(&BROWSER) {
            self.browser(tally);
        } else {
            tally.not_run(
                "browser tests",
                "because there is no build or no such program",
            );
        }
    }

    fn browser(&self, tally: &mut Tally) {
        let mut command = self.program(BROWSER);
        // Each spends much of its time waiting: four keep the usual two processors busy, and five gain nothing.
        command.env("RUST_TEST_THREADS", "4");
        command.args(["--", "--skip", ALONE]);
        tally.tests("browser tests", &mut command);
        let mut timed = self.program(BROWSER);
        timed.args(["--", "--test-threads", "1", ALONE]);
        tally.tests("timed browser tests", &mut timed);
    }

    /// The release build in its place.
    pub(crate) fn build(&self) -> Result<std::path::PathBuf> {
        build::build(&self.machine, &self.workspace, &self.held, Profile::Release)
    }

    /// A program that drives the built app, told where everything is.
    pub(crate) fn program(&self, name: &str) -> Command {
        let mut command = self.cargo();
        command.args(["test", "--locked", "--package", TESTS, "--test", name]);
        command.env("CARTSIDE_DIST", self.workspace.root.join("dist"));
        command.env("CARTSIDE_NEWER", self.workspace.root.join(newer::PLACE));
        // Told where there is none, so that one of another version, which lies at hand, is not taken.
        let shell = self.machine.shell.as_deref();
        command.env("CARTSIDE_SHELL", shell.unwrap_or(Path::new("")));
        let own = std::env::current_exe().ok();
        let told = [
            ("CARTSIDE_XTASK", own.as_deref()),
            ("CARTSIDE_AXE", self.machine.axe.as_deref()),
            ("CARTSIDE_LIGHTHOUSE", self.machine.lighthouse.as_deref()),
            ("CARTSIDE_BROWSER", self.machine.browser.as_deref()),
            ("CARTSIDE_DRIVER", self.machine.driver.as_deref()),
            ("CARTSIDE_FIREFOX", self.machine.firefox.as_deref()),
            ("CARTSIDE_GECKODRIVER", self.machine.geckodriver.as_deref()),
            (
                "CARTSIDE_WEBKIT_DRIVER",
                self.machine.webkit_driver.as_deref(),
            ),
            (
                "CARTSIDE_WEBKIT_PYTHON",
                self.machine.webkit_python.as_deref(),
            ),
        ];
        for (variable, path) in told {
            command.envs(path.map(|path: &Path| (variable, path)));
        }
        command
    }

    /// True if the tests' manifest names this program.
    pub(crate) fn has_program(&self, name: &str) -> bool {
        self.workspace.test_programs(TESTS).contains(&name)
    }

    /// Cargo of the pinned toolchain, building into the shared folder.
    pub(crate) fn cargo(&self) -> Command {
        self.held.cargo(&self.workspace)
    }
}

fn before_build<'a>(names: &[&'a str]) -> Vec<&'a str> {
    let names = names.iter().copied();
    names
        .filter(|name| ![BROWSER, MEASURE].contains(name))
        .collect()
}

fn deny(clippy: &mut Command, strict: bool) -> &mut Command {
    match strict {
        true => clippy.args(["--", "--deny", "warnings"]),
        false => clippy,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_program_runs_once_and_the_browser_last() {
        let names = ["browser", "reference", "measure", "arrows", "new one"];
        assert_eq!(before_build(&names), ["reference", "arrows", "new one"]);
    }
}
