//! The driver of one browser, and the browser's processes below it. Reads `/proc`, as Linux has it.

use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead, BufReader};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use super::engine::Engine;
use super::programs;

/// How long a driver may take to listen.
const PATIENCE: Duration = Duration::from_secs(20);

/// How often a driver is started before it counts as lost.
const STARTS: u32 = 3;

/// A running driver.
#[derive(Debug)]
pub struct Driver {
    child: Child,
    /// The screen that its browser draws on, where it needs one.
    screen: Option<Child>,
    port: u16,
}

impl Driver {
    /// Starts one on a free port; what it and its browser leave lying about goes into this folder.
    pub fn start(engine: Engine, leavings: &Path) -> Driver {
        match engine {
            Engine::Chromium => Driver::that_says(
                Command::new(programs::driver()).arg("--port=0"),
                "successfully on port ",
                leavings,
            ),
            Engine::Firefox => Driver::that_says(
                Command::new(programs::geckodriver()).args([
                    "--port",
                    "0",
                    "--allow-system-access",
                ]),
                "Listening on 127.0.0.1:",
                leavings,
            ),
            Engine::WebKit => Driver::on_a_screen(leavings),
        }
    }

    /// A driver that finds itself a port and says which, after these words.
    fn that_says(command: &mut Command, words: &str, leavings: &Path) -> Driver {
        // A browser's own grumbling is no news.
        let quiet = command.env("TMPDIR", leavings).stderr(Stdio::null());
        let quiet = quiet.stdout(Stdio::piped());
        // The port it finds may be taken by another program before it listens there, and then it ends: about once in
        // two hundred starts on a busy machine.
        let begun = (0..STARTS).find_map(|_| {
            let mut child = started(quiet);
            match said(&mut child, |line| port_after(line, words)) {
                Some(port) => Some((child, port)),
                None => child.wait().ok().and(None),
            }
        });
        let (child, port) = begun.expect("the driver says on which port it listens");
        Driver {
            child,
            screen: None,
            port,
        }
    }

    /// WebKitGTK's: it must be given a port, and its browser a screen.
    fn on_a_screen(leavings: &Path) -> Driver {
        let mut screen = started(
            Command::new("Xvfb")
                .args(["-displayfd", "1", "-screen", "0", "1000x1100x24"])
                .args(["-nolisten", "tcp"])
                .stdout(Stdio::piped())
                .stderr(Stdio::null()),
        );
        let number = said(&mut screen, |line| line.trim().parse::<u32>().ok());
        let number = number.expect("the screen says which it is");
        let port = free_port();
        let child = started(
            Command::new(programs::webkit_driver())
                .arg(format!("--port={port}"))
                .env("TMPDIR", leavings)
                .env("DISPLAY", format!(":{number}")),
        );
        let screen = Some(screen);
        let driver = Driver {
            child,
            screen,
            port,
        };
        driver.wait_until_it_listens();
        driver
    }

    fn wait_until_it_listens(&self) {
        let until = Instant::now() + PATIENCE;
        while TcpStream::connect((Ipv4Addr::LOCALHOST, self.port)).is_err() {
            assert!(Instant::now() < until, "the driver listens");
            thread::sleep(Duration::from_millis(20));
        }
    }

    /// Where it listens.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// The driver and every process of its browser, the screen last, so that no browser hears of its end before its own.
    pub fn processes(&self) -> Vec<u32> {
        let mut all = below(self.child.id());
        all.push(self.child.id());
        all.extend(self.screen.as_ref().map(Child::id));
        all
    }
}

impl Drop for Driver {
    /// Ends the driver and every process of its browser at once, as a flat battery would.
    fn drop(&mut self) {
        let pids = self.processes().into_iter().map(|pid| pid.to_string());
        // Those that have ended meanwhile make `kill` complain, and nothing else.
        let _ = Command::new("kill")
            .arg("-KILL")
            .args(pids)
            .stderr(Stdio::null())
            .status();
        let _ = self.child.wait();
        if let Some(screen) = &mut self.screen {
            let _ = screen.wait();
        }
    }
}

fn started(command: &mut Command) -> Child {
    let child = command.spawn();
    let program = command.get_program().display();
    child.unwrap_or_else(|error| panic!("{program} does not start: {error}"))
}

/// The first that is found in what a program says. Its further words are read and dropped, so that it never waits for
/// a full pipe.
fn said<T>(child: &mut Child, find: impl Fn(&str) -> Option<T>) -> Option<T> {
    let said = BufReader::new(child.stdout.take().expect("its output is piped"));
    let mut lines = said.lines().map_while(Result::ok);
    let found = lines.find_map(|line| find(&line));
    thread::spawn(move || lines.for_each(drop));
    found
}

/// `ChromeDriver was started successfully on port 35271.`, `Listening on 127.0.0.1:35271`
fn port_after(line: &str, words: &str) -> Option<u16> {
    let (_, port) = line.split_once(words)?;
    port.trim_end_matches('.').parse().ok()
}

/// A port that nobody listens on at this moment.
fn free_port() -> u16 {
    let bound = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).and_then(|free| free.local_addr());
    bound.expect("there is a free port").port()
}

/// Every process that descends from this one.
fn below(pid: u32) -> Vec<u32> {
    let parents = parents();
    let mut found = vec![pid];
    let mut at = 0;
    while let Some(parent) = found.get(at).copied() {
        let children = parents.iter().filter(|(_, of)| **of == parent);
        found.extend(children.map(|(child, _)| *child));
        at += 1;
    }
    found.split_off(1)
}

/// Every process with its parent.
fn parents() -> BTreeMap<u32, u32> {
    let listed = fs::read_dir("/proc").into_iter().flatten().flatten();
    listed
        .filter_map(|entry| {
            let pid: u32 = entry.file_name().to_str()?.parse().ok()?;
            let stat = fs::read_to_string(entry.path().join("stat")).ok()?;
            // The name may hold blanks and brackets; state and parent follow its last bracket.
            let (_, after) = stat.rsplit_once(')')?;
            let parent = after.split_whitespace().nth(1)?.parse().ok()?;
            Some((pid, parent))
        })
        .collect()
}
