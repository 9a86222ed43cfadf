//! Builds the little wasm that unpacks the app's, and puts it into the script that runs it: as text it is packed by
//! every host, and script and wasm can never be of two builds.

use crate::machine::Machine;
use crate::shared_build::SharedBuild;
use crate::step;
use crate::toolchain::{WASM, WasmCompiler};
use crate::workspace::Workspace;
use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const PACKAGE: &str = "cartside-unpacker";
/// The script as it lies in `public`.
const SCRIPT: &str = "unpack.js";
/// How its name begins in a build, and how that ends.
pub(crate) const NAME: (&str, &str) = ("unpack-", ".js");
/// Where the wasm belongs in the script, however it is quoted.
const PLACE: &str = "UNPACKER_WASM";

/// Builds the unpacker into the script of a folder, and names that by what is in it.
pub(crate) fn put_into(
    folder: &Path,
    machine: &Machine,
    workspace: &Workspace,
    held: &SharedBuild,
) -> Result<()> {
    let wasm = build(machine, workspace, held)?;
    let script = folder.join(SCRIPT);
    let text = fs::read_to_string(&script).context("Trunk left no unpack.js")?;
    let text = with_wasm(&text, &wasm)?;
    fs::remove_file(&script)?;
    fs::write(folder.join(named(&text)), text)?;
    Ok(())
}

fn build(machine: &Machine, workspace: &Workspace, held: &SharedBuild) -> Result<Vec<u8>> {
    let mut cargo = held.cargo(workspace);
    let compiler = WasmCompiler::on(machine);
    compiler.lend_to(&mut cargo);
    compiler.for_size(machine, &mut cargo);
    cargo.args(["build", "--quiet", "--locked", "--offline", "--release"]);
    step::call(cargo.args(["--target", WASM, "--package", PACKAGE]))?;
    let target = env::var_os("CARGO_TARGET_DIR").map(PathBuf::from);
    let target = target.unwrap_or_else(|| workspace.root.join("target"));
    let built = target.join(WASM).join("release/cartside_unpacker.wasm");
    let smaller = built.with_extension("small.wasm");
    let wasm_opt = machine.wasm_opt.as_ref();
    let mut shrink = Command::new(wasm_opt.context("wasm-opt is not installed")?);
    step::call(shrink.arg("-Oz").arg(&built).arg("-o").arg(&smaller))?;
    fs::read(&smaller).with_context(|| smaller.display().to_string())
}

fn with_wasm(script: &str, wasm: &[u8]) -> Result<String> {
    if script.matches(PLACE).count() != 1 {
        bail!("{SCRIPT} should hold {PLACE} exactly once");
    }
    Ok(script.replace(PLACE, &STANDARD.encode(wasm)))
}

/// The name of a script that holds this.
fn named(script: &str) -> String {
    let digest = Sha256::digest(script);
    let digest: String = digest.iter().take(8).map(|b| format!("{b:02x}")).collect();
    format!("{}{digest}{}", NAME.0, NAME.1)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::{named, with_wasm};

    #[test]
    fn the_script_holds_the_wasm_as_text() {
        let script = with_wasm("run(\"UNPACKER_WASM\")", b"abc").unwrap();
        assert_eq!(script, "run(\"YWJj\")");
        assert_ne!(named(&script), named("run(\"YWJk\")"));
    }

    #[test]
    fn a_script_without_its_place_is_refused() {
        assert!(with_wasm("run()", b"abc").is_err());
    }
}
