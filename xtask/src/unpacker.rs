//! Builds the little wasm that unpacks the app's, and tells the script that runs it its name and digest, so that script
//! and wasm can never be of two builds.

use crate::machine::Machine;
use crate::once::replace_once;
use crate::shared_build::SharedBuild;
use crate::step;
use crate::toolchain::{WASM, WasmCompiler};
use crate::workspace::Workspace;
use anyhow::{Context, Result};
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
/// How the name of the wasm ends; it begins alike.
pub(crate) const WASM_ENDING: &str = ".wasm";
/// Where the name of the wasm belongs in the script, and where its digest, however they are quoted.
const PLACES: [&str; 2] = ["UNPACKER_NAME", "UNPACKER_DIGEST"];

/// Puts the unpacker beside the script of a folder, and names each by what is in it.
pub(crate) fn put_into(folder: &Path, wasm: &[u8]) -> Result<()> {
    let script = folder.join(SCRIPT);
    let text = fs::read_to_string(&script).context("Trunk left no unpack.js")?;
    let text = told(&text, wasm)?;
    fs::remove_file(&script)?;
    fs::write(folder.join(named(wasm, WASM_ENDING)), wasm)?;
    fs::write(folder.join(named(text.as_bytes(), NAME.1)), text)?;
    Ok(())
}

/// Builds the unpacker; its bytes.
pub(crate) fn build(
    machine: &Machine,
    workspace: &Workspace,
    held: &SharedBuild,
) -> Result<Vec<u8>> {
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
    shrink.args(["-Oz", "--strip-producers", "--strip-target-features"]);
    step::call(shrink.arg(&built).arg("-o").arg(&smaller))?;
    fs::read(&smaller).with_context(|| smaller.display().to_string())
}

/// The script with the name and the digest of this wasm.
fn told(script: &str, wasm: &[u8]) -> Result<String> {
    let digest = digest(wasm);
    let mut script = script.to_owned();
    for (place, words) in PLACES.iter().zip([named(wasm, WASM_ENDING), digest]) {
        script = replace_once(SCRIPT, &script, place, &words)?;
    }
    Ok(script)
}

/// The digest by which a page knows these bytes.
pub(crate) fn digest(bytes: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(bytes)))
}

/// The name of a file that holds this.
fn named(bytes: &[u8], ending: &str) -> String {
    let digest = Sha256::digest(bytes);
    let digest: String = digest.iter().take(8).map(|b| format!("{b:02x}")).collect();
    format!("{}{digest}{ending}", NAME.0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::told;

    #[test]
    fn the_script_is_told_the_name_and_the_digest() {
        let script = told("run(\"UNPACKER_NAME\", \"UNPACKER_DIGEST\")", b"abc").unwrap();
        // SHA-256 of "abc" (FIPS 180-4): its first eight bytes, and all of it as OpenSSL writes it in base 64.
        let (name, digest) = (
            "unpack-ba7816bf8f01cfea.wasm",
            "ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=",
        );
        assert_eq!(script, format!("run(\"{name}\", \"sha256-{digest}\")"));
    }

    #[test]
    fn a_script_without_one_of_its_places_is_refused() {
        for script in ["run()", "UNPACKER_NAME", "UNPACKER_DIGEST"] {
            assert!(told(script, b"abc").is_err(), "{script}");
        }
    }
}
