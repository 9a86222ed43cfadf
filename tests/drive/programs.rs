//! Where the build and the programs are: told by the environment, else looked for in the usual places.

use std::path::PathBuf;

fn told(variable: &str, otherwise: impl Into<PathBuf>) -> PathBuf {
    std::env::var_os(variable).map_or_else(|| otherwise.into(), PathBuf::from)
}

/// The checkout.
pub fn root() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
}

/// The folder of the built app: `CARTSIDE_DIST`.
///
/// # Panics
/// Nothing is built there.
pub fn dist() -> PathBuf {
    let dist = told("CARTSIDE_DIST", root().join("dist"));
    let built = dist.join("index.html").is_file();
    assert!(
        built,
        "{} holds no build; run `cargo xtask test`, or `cargo xtask dist` before this program",
        dist.display()
    );
    dist
}

/// The program that serves it: `CARTSIDE_XTASK`.
pub fn xtask() -> PathBuf {
    told("CARTSIDE_XTASK", "xtask")
}

/// The browser: `CARTSIDE_BROWSER`.
pub fn browser() -> PathBuf {
    told("CARTSIDE_BROWSER", "/usr/bin/chromium")
}

/// The browser's driver: `CARTSIDE_DRIVER`.
pub fn driver() -> PathBuf {
    told("CARTSIDE_DRIVER", "chromedriver")
}

/// Where pictures of failed pages go.
pub fn failures() -> PathBuf {
    root().join("target/browser-failures")
}
