//! The driver of one browser, and the browser's processes below it. Reads `/proc`, as Linux has it.

use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread;

use super::programs;

/// A running driver.
#[derive(Debug)]
pub struct Driver {
    child: Child,
    port: u16,
}

impl Driver {
    /// Starts one on a free port; what it and its browser leave lying about goes into this folder.
    pub fn start(leavings: &Path) -> Driver {
        let program = programs::driver();
        let mut child = Command::new(&program)
            .arg("--port=0")
            .env("TMPDIR", leavings)
            .stdout(Stdio::piped())
            .spawn()
            .unwrap_or_else(|error| panic!("{} does not start: {error}", program.display()));
        let said = BufReader::new(child.stdout.take().expect("its output is piped"));
        let mut lines = said.lines().map_while(Result::ok);
        let port = lines.find_map(|line| port_in(&line));
        let port = port.expect("the driver says on which port it listens");
        // Read on, so that the driver never waits for a full pipe.
        thread::spawn(move || lines.for_each(drop));
        Driver { child, port }
    }

    /// Where it listens.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// Ends the driver and every process of its browser at once, as a flat battery would.
    pub fn kill_all(&mut self) {
        let mut doomed = below(self.child.id());
        doomed.push(self.child.id());
        let pids = doomed.iter().map(u32::to_string);
        // Those that have ended meanwhile make `kill` complain, and nothing else.
        let _ = Command::new("kill")
            .arg("-KILL")
            .args(pids)
            .stderr(Stdio::null())
            .status();
        let _ = self.child.wait();
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        self.kill_all();
    }
}

/// `ChromeDriver was started successfully on port 35271.`
fn port_in(line: &str) -> Option<u16> {
    let (_, port) = line.split_once("successfully on port ")?;
    port.trim_end_matches('.').parse().ok()
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
