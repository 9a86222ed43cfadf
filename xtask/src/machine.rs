//! What is found on this machine before anything is installed.

use crate::toolchain;
use crate::tools::{
    AXE, CARGO_FUZZ, ESBUILD, GECKODRIVER, LIGHTHOUSE, TRUNK, Tool, WASM_BINDGEN, WASM_OPT,
};
use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Whether the pinned toolchain has a part that rustup can add.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Component {
    Installed,
    Missing,
    /// It was asked for and could not be had.
    Refused,
}

/// The facts the plan is made from.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Machine {
    /// May install for the whole system.
    pub(crate) root: bool,
    /// Has Debian's package tool.
    pub(crate) apt: bool,
    /// Has rustup, which can add a target.
    pub(crate) rustup: bool,
    /// The pinned toolchain's wasm target.
    pub(crate) target: Component,
    /// The source of the pinned toolchain's standard library, so that the app's can be built for size.
    pub(crate) source: Component,
    /// Has Debian's own compiler with the library's source, the stand-in for the wasm target.
    pub(crate) debian_rust: bool,
    /// Has npm, which brings `wasm-opt` and `esbuild`.
    pub(crate) npm: bool,
    /// Has Node, which runs `lighthouse`.
    pub(crate) node: bool,
    /// Has a compiler of C++, in which the fuzzer is written.
    pub(crate) cpp: bool,
    pub(crate) cargo_fuzz: Option<PathBuf>,
    pub(crate) trunk: Option<PathBuf>,
    pub(crate) wasm_bindgen: Option<PathBuf>,
    pub(crate) wasm_opt: Option<PathBuf>,
    pub(crate) esbuild: Option<PathBuf>,
    /// The script that looks a page over.
    pub(crate) axe: Option<PathBuf>,
    pub(crate) lighthouse: Option<PathBuf>,
    pub(crate) browser: Option<PathBuf>,
    pub(crate) driver: Option<PathBuf>,
    /// Chromium without its window, of the driver's version: the same engine at a third of a start's cost.
    pub(crate) shell: Option<PathBuf>,
    pub(crate) firefox: Option<PathBuf>,
    pub(crate) geckodriver: Option<PathBuf>,
    pub(crate) webkit_driver: Option<PathBuf>,
    /// The Python that can open a window of WebKitGTK.
    pub(crate) webkit_python: Option<PathBuf>,
    /// The screen that nobody sees, for that window.
    pub(crate) screen: Option<PathBuf>,
}

impl Machine {
    /// Looks; installs and changes nothing.
    pub(crate) fn look(cache: &Path) -> Self {
        let driver = chosen("CARTSIDE_DRIVER", &["chromedriver"]);
        Self {
            root: printed(Command::new("id").arg("-u")).is_some_and(|id| id.trim() == "0"),
            apt: on_path("apt-get").is_some(),
            rustup: on_path("rustup").is_some(),
            target: wasm_target(),
            source: library_source(),
            debian_rust: has_debian_rust(),
            npm: on_path("npm").is_some(),
            node: on_path("node").is_some(),
            cpp: on_path("c++").is_some(),
            cargo_fuzz: found(&CARGO_FUZZ, cache),
            trunk: found(&TRUNK, cache),
            wasm_bindgen: found(&WASM_BINDGEN, cache),
            wasm_opt: found(&WASM_OPT, cache),
            esbuild: found(&ESBUILD, cache),
            axe: script(&AXE, cache),
            lighthouse: found(&LIGHTHOUSE, cache),
            browser: chosen("CARTSIDE_BROWSER", &["chromium", "chromium-browser"]),
            shell: shell(driver.as_deref()),
            driver,
            firefox: chosen("CARTSIDE_FIREFOX", &["firefox-esr", "firefox"]),
            geckodriver: chosen("CARTSIDE_GECKODRIVER", &[]).or_else(|| found(&GECKODRIVER, cache)),
            webkit_driver: chosen("CARTSIDE_WEBKIT_DRIVER", &["WebKitWebDriver"]),
            webkit_python: webkit_python(),
            screen: on_path("Xvfb"),
        }
    }
}

/// What a program prints, if it can be run and is content.
pub(crate) fn printed(command: &mut Command) -> Option<String> {
    let output = command.output().ok().filter(|out| out.status.success())?;
    String::from_utf8(output.stdout).ok()
}

fn found(tool: &Tool, cache: &Path) -> Option<PathBuf> {
    let places = [Some(tool.path(cache)), on_path(tool.program)];
    places.into_iter().flatten().find(|path| is(tool, path))
}

/// A script cannot be asked for its version, and names it in its first line.
fn script(tool: &Tool, cache: &Path) -> Option<PathBuf> {
    let path = tool.path(cache);
    let text = std::fs::read_to_string(&path).ok()?;
    tool.is_named_by(text.lines().next()?).then_some(path)
}

fn is(tool: &Tool, path: &Path) -> bool {
    printed(Command::new(path).arg("--version")).is_some_and(|text| tool.is_named_by(&text))
}

fn on_path(program: &str) -> Option<PathBuf> {
    let folders = env::var_os("PATH")?;
    env::split_paths(&folders)
        .map(|folder| folder.join(program))
        .find(|path| path.is_file())
}

fn chosen(variable: &str, programs: &[&str]) -> Option<PathBuf> {
    let named = env::var_os(variable).map(PathBuf::from);
    named.or_else(|| programs.iter().find_map(|program| on_path(program)))
}

/// One that another version's driver would be told of is as good as none.
fn shell(driver: Option<&Path>) -> Option<PathBuf> {
    let known = chosen("CARTSIDE_SHELL", &["chromium-headless-shell"])?;
    let version = |program: &Path| second_word(&printed(Command::new(program).arg("--version"))?);
    (version(&known)? == version(driver?)?).then_some(known)
}

/// `156.0.8078.108` of `Chromium 156.0.8078.108`
fn second_word(said: &str) -> Option<String> {
    said.split_whitespace().nth(1).map(str::to_owned)
}

/// Debian's own before another on the path, since only that one has Debian's libraries.
fn webkit_python() -> Option<PathBuf> {
    let own = Some(PathBuf::from("/usr/bin/python3")).filter(|path| path.is_file());
    let named = env::var_os("CARTSIDE_WEBKIT_PYTHON").map(PathBuf::from);
    let known = named.or(own).or_else(|| on_path("python3"))?;
    let ask = "import gi; gi.require_version('Gtk', '3.0'); gi.require_version('WebKit2', '4.1')";
    printed(Command::new(&known).args(["-c", ask])).map(|_| known)
}

fn wasm_target() -> Component {
    let mut ask = toolchain::pinned("rustc");
    ask.args(["--print", "target-libdir", "--target", toolchain::WASM]);
    match printed(&mut ask) {
        Some(folder) if Path::new(folder.trim()).is_dir() => Component::Installed,
        _ => Component::Missing,
    }
}

fn library_source() -> Component {
    if has_source(&mut toolchain::pinned("rustc")) {
        Component::Installed
    } else {
        Component::Missing
    }
}

/// True if this compiler has the source of its standard library beside it.
fn has_source(rustc: &mut Command) -> bool {
    let sysroot = printed(rustc.args(["--print", "sysroot"]));
    let source = sysroot.map(|root| Path::new(root.trim()).join("lib/rustlib/src/rust/library"));
    source.is_some_and(|source| source.is_dir())
}

fn has_debian_rust() -> bool {
    has_source(&mut Command::new("/usr/bin/rustc"))
        && Path::new("/usr/bin/cargo").is_file()
        && Path::new(toolchain::DEBIAN_LINKER).is_file()
}
