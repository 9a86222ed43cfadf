//! `serve` and `serve-dist`: the app on this machine, for a person or for a test.

use crate::arguments::{Serve, ServeDist};
use crate::build::{self, Profile};
use crate::machine::Machine;
use crate::plan::Need;
use crate::server::FolderServer;
use crate::setup;
use crate::shared_build::SharedBuild;
use crate::workspace::{self, Workspace};
use anyhow::{Result, bail};
use std::fs;
use std::io::{self, Write, stdout};
use std::path::{Path, PathBuf};
use std::process;
use std::thread;
use std::time::{Duration, SystemTime};

const PORT: u16 = 8080;
// Another port is another origin, so a worker kept from a release build cannot stand before a dev build.
const DEV_PORT: u16 = 8081;
const SOURCES: [&str; 6] = [
    "app",
    "core",
    "public",
    "Cargo.toml",
    "Cargo.lock",
    "Trunk.toml",
];
const LOOK_EVERY: Duration = Duration::from_millis(500);

/// `cargo xtask serve`.
pub(crate) fn run(options: &Serve) -> Result<()> {
    let (profile, usual) = match options.dev {
        true => (Profile::Dev, DEV_PORT),
        false => (Profile::Release, PORT),
    };
    // The port is taken before the minutes of building, so that a taken one is told at once.
    let place = build::place(&workspace::root()?, profile);
    let server = FolderServer::bind(&place, options.port.unwrap_or(usual), &options.under)?;
    let machine = setup::prepare(Need::Build)?;
    let began = SystemTime::now();
    build(&machine, profile)?;
    announce(&server)?;
    if options.dev {
        thread::spawn(move || rebuild_for_ever(&machine, began));
    }
    server.run();
    Ok(())
}

/// `cargo xtask serve-dist`.
pub(crate) fn run_dist(options: &ServeDist) -> Result<()> {
    if !options.dir.join("index.html").is_file() {
        bail!(
            "{} holds no index.html; build it with `cargo xtask dist`",
            options.dir.display()
        );
    }
    let server = FolderServer::bind(&options.dir, options.port, &options.under)?;
    announce(&server)?;
    if options.until_eof {
        thread::spawn(end_with_the_input);
    }
    server.run();
    Ok(())
}

fn end_with_the_input() {
    // An input that cannot be read has ended too.
    let _ = io::copy(&mut io::stdin(), &mut io::sink());
    process::exit(0);
}

/// Flushed, because a test waits for this line.
fn announce(server: &FolderServer) -> Result<()> {
    println!("serving {}", server.address()?);
    Ok(stdout().flush()?)
}

fn build(machine: &Machine, profile: Profile) -> Result<()> {
    let workspace = Workspace::read()?;
    let held = SharedBuild::hold(&workspace)?;
    build::build(machine, &workspace, &held, profile).map(drop)
}

/// Builds again after every change; a build that fails leaves the last good one being served.
fn rebuild_for_ever(machine: &Machine, mut since: SystemTime) {
    loop {
        thread::sleep(LOOK_EVERY);
        if !changed_since(since) {
            continue;
        }
        since = SystemTime::now();
        match build(machine, Profile::Dev) {
            Ok(()) => println!("reload the page"),
            Err(error) => println!("{error:#}\nthe last good build is still served"),
        }
    }
}

fn changed_since(since: SystemTime) -> bool {
    let root = workspace::root().unwrap_or_default();
    SOURCES
        .iter()
        .any(|source| is_newer(&root.join(source), since))
}

fn is_newer(path: &Path, since: SystemTime) -> bool {
    let Ok(about) = fs::metadata(path) else {
        return false;
    };
    let itself = about.modified().is_ok_and(|changed| changed > since);
    itself || entries(path).iter().any(|inner| is_newer(inner, since))
}

fn entries(folder: &Path) -> Vec<PathBuf> {
    let listed = fs::read_dir(folder).into_iter().flatten();
    listed.flatten().map(|entry| entry.path()).collect()
}
