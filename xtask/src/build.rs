//! Builds the app with Trunk and seals it.

use crate::machine::Machine;
use crate::plan::Need;
use crate::same::Made;
use crate::seal::WORKER;
use crate::shared_build::SharedBuild;
use crate::shorten::{self, Names};
use crate::toolchain::{WASM, WasmCompiler};
use crate::workspace::Workspace;
use crate::{alike, locals, newer, pack, precache, prune, seal, setup, step, unpacker};
use anyhow::{Context, Result};
use std::env;
use std::ffi::{OsStr, OsString};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// How the app is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Profile {
    /// Small, sealed, kept by the service worker.
    Release,
    /// Quick to build and always fetched afresh.
    Dev,
}

/// `cargo xtask dist`.
pub(crate) fn run() -> Result<()> {
    let machine = setup::prepare(Need::Build)?;
    let workspace = Workspace::read()?;
    let held = SharedBuild::hold(&workspace)?;
    let dist = build(&machine, &workspace, &held, Profile::Release)?;
    println!("{}", dist.display());
    println!("{}", precache::weigh(&dist)?);
    Ok(())
}

/// Builds into a folder of its own and puts it in place only when it is whole; that place.
pub(crate) fn build(
    machine: &Machine,
    workspace: &Workspace,
    held: &SharedBuild,
    profile: Profile,
) -> Result<PathBuf> {
    let remedy = "The compiler's or Trunk's message is above.";
    step::run("build the app", remedy, || {
        let unsealed = workspace.root.join("target/unsealed");
        fetch(machine, workspace, held)?;
        step::call(&mut trunk(machine, workspace, held, profile, &unsealed)?)?;
        let place = place(&workspace.root, profile);
        if profile == Profile::Dev {
            seal::seal(&unsealed, None)?;
            return put_in_place(&unsealed, &place);
        }
        let unpacker = unpacker::build(machine, workspace, held)?;
        let unpacked = workspace.root.join(newer::UNPACKED);
        let tools = [machine.wasm_opt.clone(), machine.esbuild.clone()];
        let results = vec![place.clone(), unpacked.clone()];
        let made = Made::of(&workspace.root, &unsealed, &unpacker, &tools, results)?;
        if made.is_in_place() {
            println!("Nothing has changed since it was last packed.");
            fs::remove_dir_all(&unsealed)?;
            return Ok(place);
        }
        shrink(machine, &unsealed)?;
        unpacker::put_into(&unsealed, &unpacker)?;
        newer::copy(&unsealed, &unpacked)?;
        seal::seal(&unsealed, Some(&pack::pack(&unsealed)?))?;
        let put = put_in_place(&unsealed, &place)?;
        made.record()?;
        Ok(put)
    })
}

/// Where a build is put when it is whole.
pub(crate) fn place(root: &Path, profile: Profile) -> PathBuf {
    root.join(match profile {
        Profile::Release => "dist",
        Profile::Dev => "target/dist-dev",
    })
}

/// Trunk is called without the network, so that it can only use the pinned tools. Fetched with the same settings, so
/// that what the standard library is built from is fetched too, which comes for the named target alone; what runs while
/// it is built comes where none is named.
fn fetch(machine: &Machine, workspace: &Workspace, held: &SharedBuild) -> Result<()> {
    let compiler = WasmCompiler::on(machine);
    for target in [&[][..], &["--target", WASM]] {
        let mut fetch = held.cargo(workspace);
        compiler.lend_to(&mut fetch);
        compiler.for_size(machine, &mut fetch);
        step::call(fetch.args(["fetch", "--quiet", "--locked"]).args(target))?;
    }
    Ok(())
}

fn trunk(
    machine: &Machine,
    workspace: &Workspace,
    held: &SharedBuild,
    profile: Profile,
    into: &Path,
) -> Result<Command> {
    let mut command = Command::new(machine.trunk.as_ref().context("Trunk is not installed")?);
    command.args(["build", "--offline", "--dist"]).arg(into);
    if profile == Profile::Release {
        command.arg("--release");
    }
    command.current_dir(&workspace.root);
    // Trunk reads this variable as true or false and refuses the usual 1.
    command.env_remove("NO_COLOR");
    // A trace of Trunk's own insides would push the compiler's message off the screen.
    command.env("RUST_LIB_BACKTRACE", "0");
    held.lend_to(&mut command);
    let compiler = WasmCompiler::on(machine);
    compiler.lend_to(&mut command);
    if profile == Profile::Release {
        compiler.for_size(machine, &mut command);
    }
    let path = with_tools(machine, &command)?;
    command.env("PATH", path);
    Ok(command)
}

fn with_tools(machine: &Machine, command: &Command) -> Result<OsString> {
    let lent = command.get_envs().find(|(name, _)| *name == "PATH");
    let before = lent.and_then(|(_, path)| path).map(OsString::from);
    let before = before.or_else(|| env::var_os("PATH")).unwrap_or_default();
    let before: Vec<PathBuf> = env::split_paths(&before).collect();
    let tools = [&machine.wasm_bindgen, &machine.wasm_opt]
        .into_iter()
        .flatten();
    let folders = tools
        .filter_map(|tool| tool.parent())
        .map(Path::to_path_buf);
    // A folder already on the path may hold a compiler too, and must not come before the chosen one.
    let new: Vec<PathBuf> = folders.filter(|folder| !before.contains(folder)).collect();
    Ok(env::join_paths(new.into_iter().chain(before))?)
}

/// Takes out what nothing calls and what only people read, and puts the rest in the order that packs best.
fn shrink(machine: &Machine, folder: &Path) -> Result<()> {
    let mut paths: Vec<PathBuf> = Vec::new();
    for entry in fs::read_dir(folder)? {
        paths.push(entry?.path());
    }
    // The wasm comes first: what is renamed in it is renamed in its glue.
    paths.sort_by_key(|path| path.extension() != Some(OsStr::new("wasm")));
    let mut names = Names::default();
    for path in paths {
        // The worker stays as it is: its list has a place to be found.
        if path.file_name().is_some_and(|name| name == WORKER) {
            continue;
        }
        match path.extension().and_then(OsStr::to_str) {
            Some("wasm") => names = shrink_wasm(machine, &path)?,
            Some("js") => {
                let glue = prune::glue_without_streams(&fs::read_to_string(&path)?);
                fs::write(&path, glue)?;
                minify(machine, &path)?;
                if is_glue(&path) {
                    let glue = names.in_glue(&fs::read_to_string(&path)?)?;
                    fs::write(&path, glue)?;
                }
            }
            Some("css") => minify(machine, &path)?,
            _ => {}
        }
    }
    Ok(())
}

/// Whether this is the script that Trunk names after the app.
fn is_glue(path: &Path) -> bool {
    let name = path.file_name().and_then(OsStr::to_str);
    name.is_some_and(|name| name.starts_with("cartside-app-"))
}

fn shrink_wasm(machine: &Machine, path: &Path) -> Result<Names> {
    let wasm_opt = machine
        .wasm_opt
        .as_ref()
        .context("wasm-opt is not installed")?;
    fs::write(path, prune::without_streams(&fs::read(path)?)?)?;
    // What is reckoned twice is packed into less than what keeps it in one more local (*local-cse*).
    let passes = ["-Oz", "-Oz", "--skip-pass=local-cse"];
    let strips = ["--strip-producers", "--strip-target-features"];
    let mut smaller = Command::new(wasm_opt);
    step::call(
        smaller
            .args(passes)
            .args(strips)
            .arg(path)
            .arg("-o")
            .arg(path),
    )?;
    let (wasm, names) = shorten::imports(&fs::read(path)?)?;
    fs::write(path, locals::by_first_use(&alike::side_by_side(&wasm)?)?)?;
    Ok(names)
}

fn minify(machine: &Machine, path: &Path) -> Result<()> {
    let esbuild = machine
        .esbuild
        .as_ref()
        .context("esbuild is not installed")?;
    let mut command = Command::new(esbuild);
    command.args([
        "--minify",
        "--allow-overwrite",
        "--log-level=warning",
        "--legal-comments=none",
    ]);
    let mut into = OsString::from("--outfile=");
    into.push(path);
    step::call(command.arg(path).arg(into))
}

fn put_in_place(from: &Path, to: &Path) -> Result<PathBuf> {
    if to.exists() {
        fs::remove_dir_all(to)?;
    }
    fs::rename(from, to).with_context(|| format!("{} to {}", from.display(), to.display()))?;
    Ok(to.to_path_buf())
}
