//! From the facts of a machine to the steps that make it ready.

use crate::machine::{Component, Machine};
use crate::tools::{
    AXE, CARGO_FUZZ, ESBUILD, GECKODRIVER, LIGHTHOUSE, TRUNK, Tool, WASM_BINDGEN, WASM_OPT,
};
use std::path::Path;

/// What the machine must be able to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Need {
    /// Build the app.
    Build,
    /// Build it and drive it through Chromium.
    BuildAndBrowse,
    /// Build it, time it in Chromium and have it rated.
    Measure,
    /// Feed the readers of files with whatever a fuzzer finds.
    Fuzz,
    /// Build it and drive it through each of the three engines.
    BuildAndBrowseAll,
}

/// One thing to do, or to ask for, before the machine is ready.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Step {
    /// Ask rustup for the wasm target of the pinned toolchain.
    AddWasmTarget,
    /// Ask rustup for the source of the pinned toolchain's standard library.
    AddLibrarySource,
    /// Install Debian packages.
    AptInstall(Vec<&'static str>),
    /// Install a tool from the Rust registry into the cache.
    CargoInstall(Tool),
    /// Install a tool from the npm registry into the cache.
    NpmInstall(Tool),
    /// Stop and say what only the machine's keeper can do.
    Stop(String),
}

const DEBIAN_RUST: [&str; 5] = [
    "rustc-web",
    "cargo-web",
    "rust-web-clippy",
    "rust-web-src",
    "lld-22",
];

/// The steps in order, none if the machine is ready. What may stop comes before what takes minutes.
pub(crate) fn plan(machine: &Machine, need: Need) -> Vec<Step> {
    if need == Need::Fuzz {
        return plan_to_fuzz(machine);
    }
    let mut steps = Vec::new();
    if machine.target == Component::Missing && machine.rustup {
        steps.push(Step::AddWasmTarget);
    }
    // Where the target was refused, Debian's compiler brings a source of its own.
    if machine.source == Component::Missing
        && machine.rustup
        && machine.target != Component::Refused
    {
        steps.push(Step::AddLibrarySource);
    }
    steps.extend(system_step(machine, &system_packages(machine, need)));
    steps.extend(tool_steps(machine));
    if need == Need::BuildAndBrowseAll && machine.axe.is_none() {
        steps.push(Step::NpmInstall(AXE));
    }
    if need == Need::Measure && machine.lighthouse.is_none() {
        steps.push(Step::NpmInstall(LIGHTHOUSE));
    }
    if need == Need::BuildAndBrowseAll && machine.geckodriver.is_none() {
        steps.push(Step::CargoInstall(GECKODRIVER));
    }
    steps
}

/// No browser and no wasm: only the core is fuzzed.
fn plan_to_fuzz(machine: &Machine) -> Vec<Step> {
    let compiler: &[_] = if machine.cpp { &[] } else { &["g++"] };
    let tool = machine.cargo_fuzz.is_none();
    let tool = tool.then_some(Step::CargoInstall(CARGO_FUZZ));
    let system = system_step(machine, compiler);
    system.into_iter().chain(tool).collect()
}

fn system_packages(machine: &Machine, need: Need) -> Vec<&'static str> {
    let mut packages = Vec::new();
    let no_target = match machine.target {
        Component::Installed => false,
        Component::Missing => !machine.rustup,
        Component::Refused => true,
    };
    if no_target && !machine.debian_rust {
        packages.extend(DEBIAN_RUST);
    }
    if needs_npm(machine, need) && !machine.npm {
        packages.push("npm");
    }
    // npm brings Node; where its tools are there already, Node alone may be missing.
    if need == Need::Measure && !machine.node {
        packages.push("nodejs");
    }
    if need != Need::Build {
        packages.extend(chromium(machine));
    }
    if need == Need::BuildAndBrowseAll {
        packages.extend(further_engines(machine));
    }
    packages
}

/// The browser without its window only makes the tests quicker, so another system's is not asked for; with it come the
/// other two, so that all three are of one version.
fn chromium(machine: &Machine) -> Vec<&'static str> {
    let all = ["chromium", "chromium-driver", "chromium-headless-shell"];
    let chosen = machine.browser.as_deref();
    let of_debian = chosen.is_none_or(|path| path == Path::new("/usr/bin/chromium"));
    if machine.apt && of_debian && machine.shell.is_none() {
        return all.to_vec();
    }
    let missing = [machine.browser.is_none(), machine.driver.is_none(), false];
    let wanted = all.into_iter().zip(missing);
    wanted
        .filter_map(|(package, missing)| missing.then_some(package))
        .collect()
}

fn needs_npm(machine: &Machine, need: Need) -> bool {
    let of_all = machine.wasm_opt.is_none() || machine.esbuild.is_none();
    of_all
        || (need == Need::BuildAndBrowseAll && machine.axe.is_none())
        || (need == Need::Measure && machine.lighthouse.is_none())
}

fn further_engines(machine: &Machine) -> Vec<&'static str> {
    let mut packages = Vec::new();
    packages.extend(machine.firefox.is_none().then_some("firefox-esr"));
    packages.extend(
        machine
            .webkit_driver
            .is_none()
            .then_some("webkit2gtk-driver"),
    );
    if machine.webkit_python.is_none() {
        packages.extend(["gir1.2-webkit2-4.1", "python3-gi"]);
    }
    packages.extend(machine.screen.is_none().then_some("xvfb"));
    packages
}

fn system_step(machine: &Machine, packages: &[&'static str]) -> Option<Step> {
    if packages.is_empty() {
        return None;
    }
    Some(match (machine.apt, machine.root) {
        (true, true) => Step::AptInstall(packages.to_vec()),
        (true, false) => Step::Stop(format!(
            "run this as root, then try again:\n  {}",
            by_apt(packages)
        )),
        (false, _) => Step::Stop(by_hand(packages)),
    })
}

fn by_apt(packages: &[&str]) -> String {
    let packages = packages.join(" ");
    format!("apt-get update && apt-get install -y --no-install-recommends {packages}")
}

fn by_hand(packages: &[&str]) -> String {
    let mut lines =
        vec!["this system is not known here; install by its own means, then try again:"];
    let mut add = |package: &str, line| {
        if packages.contains(&package) {
            lines.push(line);
        }
    };
    add(
        "rustc-web",
        "  the Rust target wasm32-unknown-unknown for the version in rust-toolchain.toml",
    );
    add(
        "npm",
        "  npm, or wasm-opt version 132 and esbuild 0.28.2 on the path",
    );
    add("nodejs", "  Node 18 or newer, on the path as node");
    add("g++", "  a compiler of C++, on the path as c++");
    add(
        "chromium",
        "  Chromium, on the path or named by CARTSIDE_BROWSER",
    );
    add(
        "chromium-driver",
        "  chromedriver of the same version, on the path or named by CARTSIDE_DRIVER",
    );
    add(
        "firefox-esr",
        "  Firefox, on the path or named by CARTSIDE_FIREFOX",
    );
    add(
        "webkit2gtk-driver",
        "  WebKitWebDriver, on the path or named by CARTSIDE_WEBKIT_DRIVER",
    );
    add(
        "python3-gi",
        "  Python 3 with WebKit2 4.1 by GObject introspection, named by CARTSIDE_WEBKIT_PYTHON",
    );
    add("xvfb", "  Xvfb, on the path");
    lines.join("\n")
}

fn tool_steps(machine: &Machine) -> Vec<Step> {
    let mut steps = Vec::new();
    if machine.wasm_opt.is_none() {
        steps.push(Step::NpmInstall(WASM_OPT));
    }
    if machine.esbuild.is_none() {
        steps.push(Step::NpmInstall(ESBUILD));
    }
    if machine.wasm_bindgen.is_none() {
        steps.push(Step::CargoInstall(WASM_BINDGEN));
    }
    if machine.trunk.is_none() {
        steps.push(Step::CargoInstall(TRUNK));
    }
    steps
}

#[cfg(test)]
mod tests {
    #![allow(clippy::panic, clippy::indexing_slicing)]
    use super::*;

    fn ready() -> Machine {
        Machine {
            root: true,
            apt: true,
            rustup: true,
            target: Component::Installed,
            source: Component::Installed,
            debian_rust: false,
            npm: true,
            node: true,
            cpp: true,
            cargo_fuzz: None,
            trunk: Some("/t/trunk".into()),
            wasm_bindgen: Some("/t/wasm-bindgen".into()),
            wasm_opt: Some("/t/wasm-opt".into()),
            esbuild: Some("/t/esbuild".into()),
            axe: Some("/t/axe.min.js".into()),
            lighthouse: Some("/t/lighthouse".into()),
            browser: Some("/usr/bin/chromium".into()),
            driver: Some("/usr/bin/chromedriver".into()),
            shell: Some("/usr/bin/chromium-headless-shell".into()),
            firefox: Some("/usr/bin/firefox-esr".into()),
            geckodriver: Some("/t/geckodriver".into()),
            webkit_driver: Some("/usr/bin/WebKitWebDriver".into()),
            webkit_python: Some("/usr/bin/python3".into()),
            screen: Some("/usr/bin/Xvfb".into()),
        }
    }

    fn bare() -> Machine {
        Machine {
            target: Component::Missing,
            source: Component::Missing,
            npm: false,
            node: false,
            trunk: None,
            wasm_bindgen: None,
            wasm_opt: None,
            esbuild: None,
            axe: None,
            lighthouse: None,
            browser: None,
            driver: None,
            shell: None,
            firefox: None,
            geckodriver: None,
            webkit_driver: None,
            webkit_python: None,
            screen: None,
            ..ready()
        }
    }

    fn tools() -> [Step; 4] {
        [
            Step::NpmInstall(WASM_OPT),
            Step::NpmInstall(ESBUILD),
            Step::CargoInstall(WASM_BINDGEN),
            Step::CargoInstall(TRUNK),
        ]
    }

    #[test]
    fn a_ready_machine_has_nothing_to_do() {
        assert_eq!(plan(&ready(), Need::BuildAndBrowseAll), []);
        assert_eq!(plan(&ready(), Need::Measure), []);
    }

    #[test]
    fn measuring_needs_lighthouse_and_node_to_run_it() {
        let machine = Machine {
            node: false,
            lighthouse: None,
            axe: None,
            ..ready()
        };
        let lighthouse = Step::NpmInstall(LIGHTHOUSE);
        assert_eq!(
            plan(&machine, Need::Measure),
            [Step::AptInstall(vec!["nodejs"]), lighthouse]
        );
        assert_eq!(plan(&machine, Need::BuildAndBrowse), []);
    }

    #[test]
    fn testing_needs_axe_and_npm_to_fetch_it() {
        let machine = Machine {
            npm: false,
            axe: None,
            ..ready()
        };
        let steps = [Step::AptInstall(vec!["npm"]), Step::NpmInstall(AXE)];
        assert_eq!(plan(&machine, Need::BuildAndBrowseAll), steps);
        assert_eq!(plan(&machine, Need::Measure), []);
    }

    #[test]
    fn a_bare_debian_as_root_gets_everything() {
        let system = vec![
            "npm",
            "chromium",
            "chromium-driver",
            "chromium-headless-shell",
        ];
        let mut expected = vec![
            Step::AddWasmTarget,
            Step::AddLibrarySource,
            Step::AptInstall(system),
        ];
        expected.extend(tools());
        assert_eq!(plan(&bare(), Need::BuildAndBrowse), expected);
    }

    #[test]
    fn a_chromium_without_its_window_comes_with_the_browser_and_driver_of_its_version() {
        let machine = Machine {
            shell: None,
            ..ready()
        };
        let all = ["chromium", "chromium-driver", "chromium-headless-shell"];
        let steps = [Step::AptInstall(all.to_vec())];
        assert_eq!(plan(&machine, Need::BuildAndBrowse), steps);
        assert_eq!(plan(&machine, Need::Build), []);
        for elsewhere in [
            Machine {
                apt: false,
                shell: None,
                ..ready()
            },
            Machine {
                browser: Some("/opt/chromium".into()),
                shell: None,
                ..ready()
            },
        ] {
            assert_eq!(plan(&elsewhere, Need::BuildAndBrowse), []);
        }
    }

    #[test]
    fn all_engines_need_their_packages_and_firefoxs_driver_besides() {
        let bare = bare();
        let one = plan(&bare, Need::BuildAndBrowse);
        let all = plan(&bare, Need::BuildAndBrowseAll);
        let system = vec![
            "npm",
            "chromium",
            "chromium-driver",
            "chromium-headless-shell",
            "firefox-esr",
            "webkit2gtk-driver",
            "gir1.2-webkit2-4.1",
            "python3-gi",
            "xvfb",
        ];
        assert_eq!(all[2], Step::AptInstall(system));
        assert_eq!(all[3..one.len()], one[3..]);
        let further = [Step::NpmInstall(AXE), Step::CargoInstall(GECKODRIVER)];
        assert_eq!(all[one.len()..], further);
    }

    #[test]
    fn one_engine_missing_is_installed_alone() {
        let machine = Machine {
            webkit_python: None,
            ..ready()
        };
        let packages = vec!["gir1.2-webkit2-4.1", "python3-gi"];
        assert_eq!(
            plan(&machine, Need::BuildAndBrowseAll),
            [Step::AptInstall(packages)]
        );
        assert_eq!(plan(&machine, Need::BuildAndBrowse), []);
    }

    #[test]
    fn an_unknown_system_is_told_of_every_engine_it_lacks() {
        let machine = Machine {
            apt: false,
            ..bare()
        };
        let steps = plan(&machine, Need::BuildAndBrowseAll);
        let told = steps.iter().find_map(|step| match step {
            Step::Stop(told) => Some(told),
            _ => None,
        });
        for words in ["CARTSIDE_FIREFOX", "WebKitWebDriver", "Python 3", "Xvfb"] {
            assert!(told.is_some_and(|told| told.contains(words)), "{words}");
        }
    }

    #[test]
    fn a_refused_source_is_not_asked_for_again() {
        let machine = Machine {
            source: Component::Refused,
            ..ready()
        };
        assert_eq!(plan(&machine, Need::Build), []);
    }

    #[test]
    fn building_alone_needs_no_browser() {
        let mut expected = vec![
            Step::AddWasmTarget,
            Step::AddLibrarySource,
            Step::AptInstall(vec!["npm"]),
        ];
        expected.extend(tools());
        assert_eq!(plan(&bare(), Need::Build), expected);
    }

    #[test]
    fn without_root_the_command_is_said_before_anything_slow() {
        let machine = Machine {
            root: false,
            ..bare()
        };
        let steps = plan(&machine, Need::BuildAndBrowse);
        let command = "run this as root, then try again:\n  apt-get update && \
                       apt-get install -y --no-install-recommends npm chromium chromium-driver chromium-headless-shell";
        assert_eq!(steps[2], Step::Stop(command.to_owned()));
        assert!(!steps.iter().any(|step| matches!(step, Step::AptInstall(_))));
    }

    #[test]
    fn a_refused_target_falls_back_on_debians_compiler() {
        let machine = Machine {
            target: Component::Refused,
            ..ready()
        };
        assert_eq!(
            plan(&machine, Need::Build),
            [Step::AptInstall(DEBIAN_RUST.to_vec())]
        );
        let after = Machine {
            debian_rust: true,
            ..machine
        };
        assert_eq!(plan(&after, Need::Build), []);
    }

    #[test]
    fn without_rustup_the_target_is_not_asked_for() {
        let machine = Machine {
            target: Component::Missing,
            rustup: false,
            ..ready()
        };
        assert_eq!(
            plan(&machine, Need::Build),
            [Step::AptInstall(DEBIAN_RUST.to_vec())]
        );
    }

    #[test]
    fn fuzzing_needs_neither_browser_nor_wasm() {
        let bare = Machine {
            cpp: false,
            ..bare()
        };
        let tool = || Step::CargoInstall(CARGO_FUZZ);
        assert_eq!(
            plan(&bare, Need::Fuzz),
            [Step::AptInstall(vec!["g++"]), tool()]
        );
        assert_eq!(plan(&ready(), Need::Fuzz), [tool()]);
        let installed = Machine {
            cargo_fuzz: Some("/t/cargo-fuzz".into()),
            ..ready()
        };
        assert_eq!(plan(&installed, Need::Fuzz), []);
    }

    #[test]
    fn an_unknown_system_is_told_what_is_missing_and_no_more() {
        let machine = Machine {
            apt: false,
            browser: None,
            ..ready()
        };
        let steps = plan(&machine, Need::BuildAndBrowse);
        let [Step::Stop(told)] = steps.as_slice() else {
            panic!("expected one stop, got {steps:?}");
        };
        assert!(told.contains("CARTSIDE_BROWSER"));
        assert!(!told.contains("apt-get") && !told.contains("CARTSIDE_DRIVER"));
    }
}
