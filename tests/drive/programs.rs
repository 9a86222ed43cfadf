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

/// The folder of a newer build of the app, other bytes under other names: `CARTSIDE_NEWER`.
///
/// # Panics
/// Nothing is built there.
pub fn newer() -> PathBuf {
    let newer = told("CARTSIDE_NEWER", root().join("target/dist-newer"));
    let built = newer.join("index.html").is_file();
    assert!(
        built,
        "{} holds no build; run `cargo xtask test`, or `cargo xtask dist-newer` before this program",
        newer.display()
    );
    newer
}

/// This build and a newer one, both with their wasm as it is, so that a first start does not take seconds to unpack;
/// beside the one of [`newer`].
///
/// # Panics
/// They are not there.
pub fn plain() -> (PathBuf, PathBuf) {
    let newer = newer();
    let builds = ["dist-plain", "dist-newer-plain"].map(|name| newer.with_file_name(name));
    for build in &builds {
        let built = build.join("index.html").is_file();
        assert!(
            built,
            "{} holds no build; run `cargo xtask dist-newer`",
            build.display()
        );
    }
    let [older, newer] = builds;
    (older, newer)
}

/// axe-core, the script that looks a page over: `CARTSIDE_AXE`, else as `cargo xtask test` has put it into the cache.
///
/// # Panics
/// It is not there.
pub fn axe() -> PathBuf {
    let axe = told("CARTSIDE_AXE", cached_axe());
    assert!(
        axe.is_file(),
        "{} is no script; run `cargo xtask test`, or name axe-core's axe.min.js in CARTSIDE_AXE",
        axe.display()
    );
    axe
}

fn cached_axe() -> PathBuf {
    let tools =
        PathBuf::from(std::env::var_os("HOME").unwrap_or_default()).join(".cache/cartside/tools");
    let listed = std::fs::read_dir(tools).into_iter().flatten().flatten();
    let scripts = listed.map(|entry| entry.path().join("node_modules/axe-core/axe.min.js"));
    let versions = scripts.filter(|path| path.display().to_string().contains("/axe-core-"));
    versions.max().unwrap_or_default()
}

/// Lighthouse, which rates a page: `CARTSIDE_LIGHTHOUSE`.
pub fn lighthouse() -> PathBuf {
    told("CARTSIDE_LIGHTHOUSE", "lighthouse")
}

/// The program that serves it: `CARTSIDE_XTASK`.
pub fn xtask() -> PathBuf {
    told("CARTSIDE_XTASK", "xtask")
}

/// Chromium: `CARTSIDE_BROWSER`.
pub fn browser() -> PathBuf {
    told("CARTSIDE_BROWSER", "/usr/bin/chromium")
}

/// Chromium without its window, if it is there: `CARTSIDE_SHELL`; that names nothing where none is of the driver's version.
pub fn shell() -> Option<PathBuf> {
    let shell = told("CARTSIDE_SHELL", "/usr/bin/chromium-headless-shell");
    shell.is_file().then_some(shell)
}

/// Chromium's driver: `CARTSIDE_DRIVER`.
pub fn driver() -> PathBuf {
    told("CARTSIDE_DRIVER", "chromedriver")
}

/// Firefox: `CARTSIDE_FIREFOX`.
pub fn firefox() -> PathBuf {
    told("CARTSIDE_FIREFOX", "/usr/bin/firefox-esr")
}

/// Firefox's driver: `CARTSIDE_GECKODRIVER`.
pub fn geckodriver() -> PathBuf {
    told("CARTSIDE_GECKODRIVER", "geckodriver")
}

/// WebKitGTK's driver: `CARTSIDE_WEBKIT_DRIVER`.
pub fn webkit_driver() -> PathBuf {
    told("CARTSIDE_WEBKIT_DRIVER", "WebKitWebDriver")
}

/// The Python that has WebKitGTK's library: `CARTSIDE_WEBKIT_PYTHON`.
pub fn python() -> PathBuf {
    told("CARTSIDE_WEBKIT_PYTHON", "/usr/bin/python3")
}

/// The window that WebKitGTK's driver drives.
pub fn webkit_window() -> PathBuf {
    root().join("tests/drive/webkit_window.py")
}

/// Where pictures of failed pages go.
pub fn failures() -> PathBuf {
    root().join("target/browser-failures")
}

/// Where what is kept of devices is copied from.
pub fn installed() -> PathBuf {
    root().join("target/browser-installed")
}
