//! What the core is built from: nothing that knows a browser, a clock, a random number or the app.

use std::process::Command;

/// Packages, by the beginning of their names, that would let the core ask somebody.
const FORBIDDEN: [&str; 21] = [
    "cartside-app",
    "chrono",
    "fastrand",
    "getrandom",
    "gloo",
    "hifitime",
    "indexed-db",
    "instant",
    "jiff",
    "js-sys",
    "leptos",
    "nanoid",
    "rand",
    "time",
    "tokio",
    "ulid",
    "uuid",
    "wasm-bindgen",
    "wasm-timer",
    "web-sys",
    "web-time",
];

/// The packages of a tree as `cargo tree --prefix none` prints it, each once.
fn packages(tree: &str) -> Vec<String> {
    let names = tree
        .lines()
        .filter_map(|line| line.split_whitespace().next());
    let mut names: Vec<String> = names.map(str::to_owned).collect();
    names.sort();
    names.dedup();
    names
}

/// Those of the packages that may not be there. A name counts with everything that is built on it:
/// `rand` is `rand_core` too.
fn forbidden(packages: &[String]) -> Vec<&String> {
    let bad = |package: &&String| {
        FORBIDDEN.iter().any(|name| {
            package
                .strip_prefix(name)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with(['-', '_']))
        })
    };
    packages.iter().filter(bad).collect()
}

/// The packages the core is built from, for this machine and for the browser.
fn of_the_core() -> Vec<String> {
    let output = Command::new(env!("CARGO"))
        .args([
            "tree",
            "--offline",
            "--package",
            "cartside-core",
            "--edges",
            "normal,build",
        ])
        .args(["--prefix", "none", "--target", "all"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "cargo tree: {said}");
    packages(&String::from_utf8(output.stdout).unwrap())
}

#[test]
fn the_core_asks_nobody() {
    let packages = of_the_core();
    for expected in ["cartside-core", "serde_json", "sha2", "uom"] {
        assert!(
            packages.iter().any(|package| package == expected),
            "{packages:?}"
        );
    }
    let found = forbidden(&packages);
    assert!(found.is_empty(), "{found:?}");
}

#[test]
fn a_package_that_asks_is_found() {
    let tree = "cartside-core v0.1.0 (core)\nrand_core v0.9.0\nserde v1.0.0\ntime v0.3.0 (*)\n\njs-sys v0.3.1\ncartside-app v0.1.0 (app)\n";
    let packages = packages(tree);
    assert_eq!(
        forbidden(&packages),
        ["cartside-app", "js-sys", "rand_core", "time"]
    );
    assert!(forbidden(&["timer-free".to_owned(), "randomise".to_owned()]).is_empty());
}
