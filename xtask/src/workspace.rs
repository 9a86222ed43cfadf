//! The checkout: its root, its packages and the test programs they name.

use crate::toolchain;
use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::path::PathBuf;

/// The checkout this command was called in.
pub(crate) fn root() -> Result<PathBuf> {
    let here = std::env::current_dir()?;
    let root = here
        .ancestors()
        .find(|folder| folder.join("Trunk.toml").is_file());
    root.map(Into::into)
        .with_context(|| format!("{} is not inside a checkout of Cartside", here.display()))
}

/// What cargo says of the workspace.
#[derive(Debug)]
pub(crate) struct Workspace {
    /// The folder of the checkout.
    pub(crate) root: PathBuf,
    metadata: Value,
}

impl Workspace {
    /// Asks cargo, without the network.
    pub(crate) fn read() -> Result<Self> {
        let root = root()?;
        let mut ask = toolchain::pinned("cargo");
        ask.args([
            "metadata",
            "--no-deps",
            "--offline",
            "--format-version",
            "1",
        ]);
        let output = ask.current_dir(&root).output()?;
        if !output.status.success() {
            bail!(
                "cargo metadata: {}",
                String::from_utf8_lossy(&output.stderr)
            );
        }
        let metadata = serde_json::from_slice(&output.stdout)?;
        Ok(Self { root, metadata })
    }

    /// The names of the workspace's packages.
    pub(crate) fn packages(&self) -> Vec<&str> {
        names(self.metadata.get("packages"), |_| true)
    }

    /// The names of a package's `[[test]]` programs, in the order of its manifest.
    pub(crate) fn test_programs(&self, package: &str) -> Vec<&str> {
        let packages = self.metadata.get("packages").and_then(Value::as_array);
        let found = packages
            .into_iter()
            .flatten()
            .find(|entry| name(entry) == Some(package));
        names(found.and_then(|entry| entry.get("targets")), is_test)
    }
}

fn is_test(target: &Value) -> bool {
    let kinds = target.get("kind").and_then(Value::as_array);
    kinds.is_some_and(|kinds| kinds.iter().any(|kind| kind == "test"))
}

fn names(list: Option<&Value>, keep: impl Fn(&Value) -> bool) -> Vec<&str> {
    let entries = list.and_then(Value::as_array).into_iter().flatten();
    entries
        .filter(|entry| keep(entry))
        .filter_map(name)
        .collect()
}

fn name(entry: &Value) -> Option<&str> {
    entry.get("name").and_then(Value::as_str)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn test_programs_are_what_the_manifest_names() {
        let target = |name: &str, kind: &str| serde_json::json!({"name": name, "kind": [kind]});
        let metadata = serde_json::json!({"packages": [
            {"name": "hay", "targets": [target("hay", "lib"), target("dry", "test")]},
            {"name": "oats", "targets": [target("sown", "test"), target("cut", "test")]},
        ]});
        let workspace = Workspace {
            root: PathBuf::new(),
            metadata,
        };
        assert_eq!(workspace.packages(), ["hay", "oats"]);
        assert_eq!(workspace.test_programs("oats"), ["sown", "cut"]);
        assert!(workspace.test_programs("barley").is_empty());
    }
}
