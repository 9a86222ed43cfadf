//! The pinned tools, their versions, and where they are kept.

use std::path::{Path, PathBuf};

/// A build tool at one exact version.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Tool {
    /// What the registry calls it.
    pub(crate) package: &'static str,
    /// The program it brings.
    pub(crate) program: &'static str,
    /// The version, without which another may build other bytes.
    pub(crate) version: &'static str,
    /// How its `--version` names that version.
    pub(crate) says: &'static str,
    /// Where in its own folder the program lies.
    folder: &'static str,
    /// What Cargo is told of its features; npm knows none.
    pub(crate) features: &'static [&'static str],
}

/// Builds the page; 0.22 asks for a newer compiler than the pinned one.
pub(crate) const TRUNK: Tool = Tool {
    package: "trunk",
    program: "trunk",
    version: "0.21.14",
    says: "trunk 0.21.14",
    folder: "bin",
    // All it needs is on the machine: it fetches nothing.
    features: &["--no-default-features"],
};

/// Writes the glue between wasm and browser; must equal the `wasm-bindgen` crate exactly.
pub(crate) const WASM_BINDGEN: Tool = Tool {
    package: "wasm-bindgen-cli",
    program: "wasm-bindgen",
    version: "0.2.130",
    says: "wasm-bindgen 0.2.130",
    folder: "bin",
    features: &[],
};

/// Makes the wasm smaller; Debian's own is too old for what the compiler writes.
pub(crate) const WASM_OPT: Tool = Tool {
    package: "binaryen",
    program: "wasm-opt",
    version: "132.0.0",
    says: "wasm-opt version 132",
    folder: "node_modules/.bin",
    features: &[],
};

/// Takes blanks, comments and long names out of the glue and the styles.
pub(crate) const ESBUILD: Tool = Tool {
    package: "esbuild",
    program: "esbuild",
    version: "0.28.2",
    says: "0.28.2",
    folder: "node_modules/.bin",
    features: &[],
};

/// Builds readers with a fuzzer in them and runs them.
pub(crate) const CARGO_FUZZ: Tool = Tool {
    package: "cargo-fuzz",
    program: "cargo-fuzz",
    version: "0.13.2",
    says: "cargo-fuzz 0.13.2",
    folder: "bin",
    features: &[],
};

/// Drives Firefox. Debian has none, and npm's fetches one from elsewhere when it is first run.
pub(crate) const GECKODRIVER: Tool = Tool {
    package: "geckodriver",
    program: "geckodriver",
    version: "0.37.1",
    says: "geckodriver 0.37.1",
    folder: "bin",
    features: &[],
};

/// Looks a page over by the rules of WCAG; a script that is put into the page, not a program.
pub(crate) const AXE: Tool = Tool {
    package: "axe-core",
    program: "axe.min.js",
    version: "4.14.1",
    says: "/*! axe v4.14.1",
    folder: "node_modules/axe-core",
    features: &[],
};

/// Rates a page as it is served; run by Node.
pub(crate) const LIGHTHOUSE: Tool = Tool {
    package: "lighthouse",
    program: "lighthouse",
    version: "12.8.2",
    says: "12.8.2",
    folder: "node_modules/.bin",
    features: &[],
};

impl Tool {
    /// The tool's own folder in the cache, keyed by version.
    pub(crate) fn home(&self, cache: &Path) -> PathBuf {
        cache
            .join("tools")
            .join(format!("{}-{}", self.package, self.version))
    }

    /// Where the cached program is, whether or not it is there yet.
    pub(crate) fn path(&self, cache: &Path) -> PathBuf {
        self.home(cache).join(self.folder).join(self.program)
    }

    /// True if `--version` printed this version and not one that merely begins like it.
    pub(crate) fn is_named_by(&self, printed: &str) -> bool {
        let rest = printed.trim().strip_prefix(self.says);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(char::is_whitespace))
    }
}

/// The folder outside every checkout that holds tools and the shared build.
pub(crate) fn cache_root(variable: impl Fn(&str) -> Option<String>) -> Option<PathBuf> {
    let own = variable("CARTSIDE_CACHE").map(PathBuf::from);
    let desktop = variable("XDG_CACHE_HOME").map(|path| PathBuf::from(path).join("cartside"));
    let home = variable("HOME").map(|path| PathBuf::from(path).join(".cache/cartside"));
    own.or(desktop).or(home)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_glue_writer_equals_the_locked_crate() {
        let lock = include_str!("../../Cargo.lock");
        let pinned = format!(
            "name = \"wasm-bindgen\"\nversion = \"{}\"",
            WASM_BINDGEN.version
        );
        assert!(lock.contains(&pinned), "Cargo.lock does not hold {pinned}");
    }

    #[test]
    fn trunk_is_told_the_same_versions() {
        let settings = include_str!("../../Trunk.toml");
        assert!(settings.contains(&format!("wasm_bindgen = \"{}\"", WASM_BINDGEN.version)));
        assert!(settings.contains("wasm_opt = \"version_132\""));
    }

    #[test]
    fn only_the_exact_version_is_taken() {
        assert!(TRUNK.is_named_by("trunk 0.21.14\n"));
        assert!(WASM_OPT.is_named_by("wasm-opt version 132 (version_132)"));
        assert!(GECKODRIVER.is_named_by("geckodriver 0.37.1\n\nThe source…"));
        assert!(GECKODRIVER.is_named_by("geckodriver 0.37.1 (abc 2026-01-01)\n\nThe source…"));
        assert!(AXE.is_named_by("/*! axe v4.14.1\n * Copyright (c) 2015"));
        assert!(!AXE.is_named_by("/*! axe v4.14.10\n"));
        assert!(!TRUNK.is_named_by("trunk 0.21.140"));
        assert!(!WASM_OPT.is_named_by("wasm-opt version 108"));
    }

    #[test]
    fn the_cache_is_ours_then_the_desktops_then_homes() {
        let all = |name: &str| Some(format!("/{name}"));
        assert_eq!(cache_root(all), Some("/CARTSIDE_CACHE".into()));
        let desktop = |name: &str| all(name).filter(|_| name != "CARTSIDE_CACHE");
        assert_eq!(cache_root(desktop), Some("/XDG_CACHE_HOME/cartside".into()));
        let home = |name: &str| all(name).filter(|_| name == "HOME");
        assert_eq!(cache_root(home), Some("/HOME/.cache/cartside".into()));
        assert_eq!(cache_root(|_| None), None);
    }
}
