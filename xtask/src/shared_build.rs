//! The build folder every checkout on this machine shares, so that a second clone is fast.
//!
//! Cargo tells files of one checkout from those of another only by their time of change, so a clone
//! with older files would be given the other's programs. Hence one checkout at a time holds the folder,
//! and a new holder first throws away what was made of the workspace's own packages; what was made of
//! the libraries stays. Plain `cargo` keeps to the checkout's own `target`.
//! It grows by about 1 GB a kind of build and may be removed at any time while no command runs.

use crate::toolchain::{self, WASM};
use crate::workspace::Workspace;
use crate::{setup, step};
use anyhow::{Context, Result};
use std::env;
use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::SystemTime;

const HOLDER: &str = "holder";

/// A hold on the shared folder; dropping it lets another checkout in.
#[derive(Debug)]
pub(crate) struct SharedBuild {
    folder: Option<PathBuf>,
    _lock: Option<File>,
}

impl SharedBuild {
    /// Waits for the folder and makes it safe for this checkout. A build folder the caller has chosen is used instead.
    pub(crate) fn hold(workspace: &Workspace) -> Result<Self> {
        let chosen = ["CARGO_TARGET_DIR", "CARGO_BUILD_BUILD_DIR"];
        if chosen.iter().any(|name| env::var_os(name).is_some()) {
            return Ok(Self {
                folder: None,
                _lock: None,
            });
        }
        let folder = setup::cache()?.join("build");
        fs::create_dir_all(&folder)?;
        let lock = lock(&folder)?;
        let held = Self {
            folder: Some(folder.clone()),
            _lock: Some(lock),
        };
        let token = token(&workspace.root)?;
        if fs::read_to_string(folder.join(HOLDER)).unwrap_or_default() != token {
            held.forget_workspace(workspace)?;
            fs::write(folder.join(HOLDER), token)?;
        }
        Ok(held)
    }

    /// Cargo of the pinned toolchain, building into the folder.
    pub(crate) fn cargo(&self, workspace: &Workspace) -> Command {
        let mut command = toolchain::pinned("cargo");
        command.current_dir(&workspace.root);
        self.lend_to(&mut command);
        command
    }

    /// Lets a command that calls cargo build into the folder.
    pub(crate) fn lend_to(&self, command: &mut Command) {
        if let Some(folder) = &self.folder {
            command.env("CARGO_BUILD_BUILD_DIR", folder);
        }
    }

    fn forget_workspace(&self, workspace: &Workspace) -> Result<()> {
        let kinds: [&[&str]; 4] = [
            &[],
            &["--release"],
            &["--target", WASM],
            &["--target", WASM, "--release"],
        ];
        for kind in kinds {
            let mut clean = self.cargo(workspace);
            clean.args(["clean", "--quiet", "--offline"]).args(kind);
            for package in workspace.packages() {
                clean.args(["--package", package]);
            }
            // The checkout's own finished programs, this one among them, are left alone.
            if let Some(folder) = &self.folder {
                clean.env("CARGO_TARGET_DIR", folder.join("no-target"));
            }
            step::call(&mut clean)?;
        }
        Ok(())
    }
}

fn lock(folder: &Path) -> Result<File> {
    let file = File::create(folder.join("lock"))?;
    match file.try_lock() {
        Ok(()) => return Ok(file),
        Err(TryLockError::WouldBlock) => {
            println!("waiting for another checkout to finish building")
        }
        Err(TryLockError::Error(error)) => return Err(error.into()),
    }
    file.lock()?;
    Ok(file)
}

/// Names this very checkout: a new clone in the same place is another one.
fn token(root: &Path) -> Result<String> {
    let file = root.join("target/checkout");
    if !file.is_file() {
        fs::create_dir_all(root.join("target"))?;
        let now = SystemTime::now().duration_since(SystemTime::UNIX_EPOCH)?;
        fs::write(&file, now.as_nanos().to_string())?;
    }
    let born = fs::read_to_string(&file).with_context(|| file.display().to_string())?;
    Ok(format!("{}\n{born}", root.display()))
}
