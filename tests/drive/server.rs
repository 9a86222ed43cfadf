//! The host of the built app: a process of its own, so that it can really be killed.

use std::io::{BufRead, BufReader};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};

use super::programs;
use super::site::Site;

/// A running host.
#[derive(Debug)]
pub struct Server {
    child: Child,
    // Kept open, so that the host never writes into a closed pipe.
    _said: BufReader<ChildStdout>,
    folder: PathBuf,
    address: String,
    under: String,
}

impl Server {
    /// Serves the build at the root of a free port.
    pub fn start() -> Server {
        Server::under("/")
    }

    /// Serves the build under this path of a free port.
    pub fn under(path: &str) -> Server {
        Server::on(0, path, &programs::dist())
    }

    /// Serves this folder at the root of a free port.
    pub fn of(site: &Site) -> Server {
        Server::on(0, "/", site.folder())
    }

    /// Serves it again at the very address where it was killed.
    pub fn start_again(self) -> Server {
        let (port, under, folder) = (self.port(), self.under.clone(), self.folder.clone());
        drop(self);
        Server::on(port, &under, &folder)
    }

    fn on(port: u16, under: &str, folder: &Path) -> Server {
        let program = programs::xtask();
        let mut child = Command::new(&program)
            .arg("serve-dist")
            .arg("--dir")
            .arg(folder)
            .args(["--port", &port.to_string(), "--under", under, "--until-eof"])
            // Held open as long as this program runs, so that a host that nobody ends does not outlive it.
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .unwrap_or_else(|error| panic!("{} does not start: {error}", program.display()));
        let mut said = BufReader::new(child.stdout.take().expect("its output is piped"));
        let mut line = String::new();
        said.read_line(&mut line).expect("its output is text");
        let address = line
            .trim()
            .strip_prefix("serving ")
            .unwrap_or_else(|| panic!("the host said {line:?}, not where it serves"));
        Server {
            folder: folder.to_path_buf(),
            address: address.to_owned(),
            under: under.to_owned(),
            child,
            _said: said,
        }
    }

    /// The address of the app, with a slash at its end.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// The build it serves.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }

    fn host(&self) -> &str {
        let after = self.address.trim_start_matches("http://");
        after.split('/').next().unwrap_or(after)
    }

    fn port(&self) -> u16 {
        let port = self
            .host()
            .rsplit(':')
            .next()
            .and_then(|port| port.parse().ok());
        port.expect("the address names a port")
    }

    /// Ends the process and makes sure that nobody answers at its address any more.
    pub fn kill(&mut self) {
        self.end();
        assert!(
            TcpStream::connect(self.host()).is_err(),
            "the host was killed, and something still answers at {}",
            self.address
        );
    }

    fn end(&mut self) {
        // A process that has ended by itself cannot be killed, and need not be.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.end();
    }
}
