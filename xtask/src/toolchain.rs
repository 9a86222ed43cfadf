//! Which compiler builds what: the pinned one, and its stand-in for wasm on Debian.

use crate::machine::{Component, Machine, printed};
use std::env;
use std::ffi::OsString;
use std::process::Command;

/// The target the app is built for.
pub(crate) const WASM: &str = "wasm32-unknown-unknown";
/// The linker beside Debian's own compiler.
pub(crate) const DEBIAN_LINKER: &str = "/usr/lib/llvm-22/bin/lld";

const RUST_TOOLCHAIN: &str = include_str!("../../rust-toolchain.toml");

/// The compiler version the workspace is pinned to.
pub(crate) fn channel() -> &'static str {
    let after = RUST_TOOLCHAIN.split("channel = \"").nth(1);
    after.and_then(|text| text.split('"').next()).unwrap_or("")
}

/// A program of the pinned toolchain; without rustup, the one on the path.
pub(crate) fn pinned(program: &str) -> Command {
    let mut command = Command::new(program);
    command.env("RUSTUP_TOOLCHAIN", channel());
    // Left by the cargo that started these commands, which may be another one.
    command.env_remove("CARGO");
    command
}

/// Which compiler makes wasm here. One does all of it, since neither can read the other's libraries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum WasmCompiler {
    /// The pinned toolchain with its wasm target.
    Pinned,
    /// Debian's compiler, which builds the standard library from source.
    Debian,
}

impl WasmCompiler {
    /// The one to use on this machine once it is set up.
    pub(crate) fn on(machine: &Machine) -> Self {
        match machine.target {
            Component::Installed => Self::Pinned,
            Component::Missing | Component::Refused => Self::Debian,
        }
    }

    /// Lets a command that builds wasm use this compiler.
    pub(crate) fn lend_to(self, command: &mut Command) {
        match self {
            Self::Pinned => {
                command.env("RUSTUP_TOOLCHAIN", channel());
            }
            Self::Debian => lend_debian(command),
        }
    }

    /// Has a release build of the app carry a standard library that is built for size, and stop at once at a panic
    /// instead of wording it first: `public/reload.js` shows the panel either way.
    pub(crate) fn for_size(self, machine: &Machine, command: &mut Command) {
        if self == Self::Pinned && machine.source != Component::Installed {
            return;
        }
        command
            .env("RUSTC_BOOTSTRAP", "1")
            .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort")
            .env("CARGO_UNSTABLE_BUILD_STD_FEATURES", "optimize_for_size")
            .env(
                "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS",
                "-Zunstable-options -Cpanic=immediate-abort",
            );
    }

    /// True if its warnings are errors: a compiler nobody chose may warn of what is not wrong.
    pub(crate) fn is_strict(self) -> bool {
        self == Self::Pinned && host_is_pinned()
    }
}

/// True if the compiler for this machine is the pinned one.
pub(crate) fn host_is_pinned() -> bool {
    let version = printed(pinned("rustc").arg("--version"));
    version.is_some_and(|text| text.starts_with(&format!("rustc {} ", channel())))
}

fn lend_debian(command: &mut Command) {
    // Cargo puts its own folder first on the path if it is absent from it, and would then run rustup's clippy.
    let mut path = OsString::from("/usr/bin:");
    path.push(env::var_os("PATH").unwrap_or_default());
    if let Some(home) = env::var_os("HOME") {
        path.push(":");
        path.push(home);
        path.push("/.cargo/bin");
    }
    command
        .env("PATH", path)
        .env_remove("CARGO")
        .env_remove("RUSTUP_TOOLCHAIN")
        .env("RUSTC_BOOTSTRAP", "1")
        .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort")
        .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", DEBIAN_LINKER);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pinned_version_is_read() {
        let numbers = channel().split('.').map(str::parse::<u32>);
        assert_eq!(numbers.filter(Result::is_ok).count(), 3, "{}", channel());
    }
}
