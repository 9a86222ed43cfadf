//! Makes the machine ready: looks, plans, installs what is missing.

use crate::machine::{Component, Machine};
use crate::plan::{Need, Step, plan};
use crate::tools::{Tool, cache_root};
use crate::{step, toolchain};
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::Command;

/// Where tools and the shared build are kept.
pub(crate) fn cache() -> Result<PathBuf> {
    cache_root(|name| std::env::var(name).ok().filter(|value| !value.is_empty()))
        .context("there is no home folder to keep tools in; name a folder in CARTSIDE_CACHE")
}

/// Installs what is missing, or stops and says what to do; the machine as it is then.
pub(crate) fn prepare(need: Need) -> Result<Machine> {
    step::run("set up", "See above for what is missing.", || {
        ready_machine(&cache()?, need)
    })
}

fn ready_machine(cache: &Path, need: Need) -> Result<Machine> {
    std::fs::create_dir_all(cache)?;
    let (mut no_target, mut no_source) = (false, false);
    let mut last = None;
    loop {
        let mut machine = Machine::look(cache);
        if no_target {
            machine.target = Component::Refused;
        }
        if no_source {
            machine.source = Component::Refused;
        }
        let Some(step) = plan(&machine, need).into_iter().next() else {
            return Ok(machine);
        };
        if last.as_ref() == Some(&step) {
            bail!("{step:?} was done, but what it should bring is still not found");
        }
        let refused = take(&step, cache)? == Answer::Refused;
        no_target |= refused && step == Step::AddWasmTarget;
        no_source |= refused && step == Step::AddLibrarySource;
        last = Some(step);
    }
}

#[derive(PartialEq)]
enum Answer {
    Done,
    Refused,
}

fn take(step: &Step, cache: &Path) -> Result<Answer> {
    match step {
        Step::AddWasmTarget => return Ok(add_wasm_target()),
        Step::AddLibrarySource => return Ok(add_library_source()),
        Step::AptInstall(packages) => apt_install(packages)?,
        Step::CargoInstall(tool) => cargo_install(tool, cache)?,
        Step::NpmInstall(tool) => npm_install(tool, cache)?,
        Step::Stop(told) => bail!("{told}"),
    }
    Ok(Answer::Done)
}

fn add_wasm_target() -> Answer {
    let remedy = "Debian's compiler is taken instead.";
    by_rustup(
        "add the wasm target",
        ["target", "add"],
        toolchain::WASM,
        remedy,
    )
}

fn add_library_source() -> Answer {
    let remedy = "The library is taken as it comes; the download is larger by some 40 kB gzipped.";
    let name = "add the standard library's source";
    by_rustup(name, ["component", "add"], "rust-src", remedy)
}

/// A refusal is no failure yet: something stands in.
fn by_rustup(name: &str, verb: [&str; 2], part: &str, remedy: &str) -> Answer {
    let mut command = Command::new("rustup");
    command.args(verb);
    command.args(["--toolchain", toolchain::channel(), part]);
    match step::run(name, remedy, || step::call(&mut command)) {
        Ok(()) => Answer::Done,
        Err(error) => {
            println!("{error:#}");
            Answer::Refused
        }
    }
}

fn apt_install(packages: &[&str]) -> Result<()> {
    let name = format!("install {}", packages.join(", "));
    let remedy = "Check that the package sources in /etc/apt can be reached.";
    step::run(&name, remedy, || {
        step::call(Command::new("apt-get").arg("update"))?;
        let mut install = Command::new("apt-get");
        install.args(["install", "-y", "--no-install-recommends"]);
        install.env("DEBIAN_FRONTEND", "noninteractive");
        step::call(install.args(packages))
    })
}

/// Tools are built as they are quickest built, not as they run quickest: that takes a third of the time. The bytes they
/// write are the same; wasm-bindgen takes 0.7 s more a build, of the others no difference could be measured.
const QUICK: [(&str, &str); 3] = [
    ("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0"),
    ("CARGO_PROFILE_RELEASE_LTO", "off"),
    ("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "256"),
];

fn cargo_install(tool: &Tool, cache: &Path) -> Result<()> {
    let name = format!("install {} {} (minutes)", tool.package, tool.version);
    let remedy = "Check that the Rust registry can be reached and that a C compiler is there.";
    step::run(&name, remedy, || {
        // The author's lock is tried first; a registry may have stopped serving one of its versions.
        let locked = step::call(cargo_install_command(tool, cache).arg("--locked"));
        locked.or_else(|_| {
            println!(
                "Not with the versions it was published with: once more, with the newest there are."
            );
            step::call(&mut cargo_install_command(tool, cache))
        })
    })
}

fn cargo_install_command(tool: &Tool, cache: &Path) -> Command {
    let mut command = toolchain::pinned("cargo");
    command
        .args([
            "install",
            "--quiet",
            tool.package,
            "--version",
            tool.version,
        ])
        .args(tool.features)
        .arg("--root")
        .arg(tool.home(cache))
        .envs(QUICK)
        .env("CARGO_TARGET_DIR", cache.join("tool-build"))
        .env_remove("CARGO_BUILD_BUILD_DIR")
        // Cargo reads the settings of the folder it is called in.
        .current_dir(cache);
    command
}

fn npm_install(tool: &Tool, cache: &Path) -> Result<()> {
    let name = format!("install {} {}", tool.package, tool.version);
    step::run(&name, "Check that the npm registry can be reached.", || {
        let home = tool.home(cache);
        std::fs::create_dir_all(&home)?;
        let mut command = Command::new("npm");
        command.args(["install", "--no-audit", "--no-fund", "--prefix"]);
        command
            .arg(&home)
            .arg(format!("{}@{}", tool.package, tool.version));
        step::call(&mut command)
    })
}
