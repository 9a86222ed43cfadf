//! A small server of one folder's files on this machine only.

use anyhow::{Result, anyhow};
use percent_encoding::percent_decode_str;
use std::fs::{self, File};
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;
use tiny_http::{Header, Method, Request, Response, Server, StatusCode};

const PAGE: &str = "index.html";
// One thread may be kept busy by a slow reader while a page asks for several files at once.
const THREADS: usize = 4;

/// A folder, bound to a port and ready to answer.
pub(crate) struct FolderServer {
    server: Arc<Server>,
    site: Arc<Site>,
}

/// What is served, and under which path.
#[derive(Debug)]
struct Site {
    folder: PathBuf,
    /// Begins and ends with `/`.
    under: String,
}

/// What a path asks for.
#[derive(Debug, PartialEq)]
enum Answer {
    /// The file at this path.
    File(PathBuf),
    /// The same address with its closing `/`.
    Moved(String),
    /// Nothing that is served.
    Absent,
}

impl FolderServer {
    /// Takes the port, or any free one for 0.
    pub(crate) fn bind(folder: &Path, port: u16, under: &str) -> Result<Self> {
        let folder = folder.to_path_buf();
        let site = Site {
            folder,
            under: with_slashes(under),
        };
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
        let server = Server::http(address).map_err(|error| {
            anyhow!("port {port} cannot be had ({error}); choose another with --port, 0 for any")
        })?;
        Ok(Self {
            server: Arc::new(server),
            site: Arc::new(site),
        })
    }

    /// Where it is reached.
    pub(crate) fn address(&self) -> String {
        let bound = self.server.server_addr();
        format!("http://{bound}{}", self.site.under)
    }

    /// Answers until the process ends.
    pub(crate) fn run(&self) {
        thread::scope(|scope| {
            for _ in 0..THREADS {
                scope.spawn(|| self.answer_all());
            }
        });
    }

    fn answer_all(&self) {
        for request in self.server.incoming_requests() {
            // A reader who has gone away is no concern of the others.
            let _gone = self.site.answer(request);
        }
    }
}

impl Site {
    fn answer(&self, request: Request) -> std::io::Result<()> {
        if !matches!(request.method(), Method::Get | Method::Head) {
            return plain(request, 405, "only GET and HEAD are answered here");
        }
        match self.find(request.url()) {
            Answer::File(path) => send(request, &path),
            Answer::Moved(to) => {
                let mut moved = Response::empty(301);
                if let Some(location) = header("Location", &to) {
                    moved.add_header(location);
                }
                request.respond(moved)
            }
            Answer::Absent => plain(request, 404, "there is no such file here"),
        }
    }

    fn find(&self, url: &str) -> Answer {
        let path = url.split(['?', '#']).next().unwrap_or_default();
        if format!("{path}/") == self.under {
            return Answer::Moved(self.under.clone());
        }
        let wanted = path.strip_prefix(&self.under).and_then(relative);
        match wanted.map(|wanted| self.folder.join(wanted)) {
            Some(file) if self.holds(&file) => Answer::File(file),
            _ => Answer::Absent,
        }
    }

    /// Following links, so that none leads out of the folder.
    fn holds(&self, file: &Path) -> bool {
        let Ok(folder) = self.folder.canonicalize() else {
            return false;
        };
        file.canonicalize()
            .is_ok_and(|file| file.is_file() && file.starts_with(folder))
    }
}

/// The path inside the folder; none if it could lead anywhere else.
fn relative(asked: &str) -> Option<PathBuf> {
    if asked.is_empty() {
        return Some(PAGE.into());
    }
    let decoded = percent_decode_str(asked).decode_utf8().ok()?;
    let is_safe = |part: &str| {
        !part.is_empty() && !part.starts_with('.') && !part.contains(['\\', ':', '\0'])
    };
    decoded
        .split('/')
        .all(is_safe)
        .then(|| decoded.as_ref().into())
}

fn with_slashes(under: &str) -> String {
    match under.trim_matches('/') {
        "" => "/".to_owned(),
        inner => format!("/{inner}/"),
    }
}

fn send(request: Request, path: &Path) -> std::io::Result<()> {
    let file = File::open(path)?;
    let size = usize::try_from(fs::metadata(path)?.len()).ok();
    let headers = safe_headers(media_type(path));
    request.respond(Response::new(StatusCode(200), headers, file, size, None))
}

fn plain(request: Request, code: u16, text: &str) -> std::io::Result<()> {
    let mut response = Response::from_string(text).with_status_code(code);
    for header in safe_headers("text/plain; charset=utf-8".to_owned()) {
        response.add_header(header);
    }
    request.respond(response)
}

fn safe_headers(media_type: String) -> Vec<Header> {
    let headers = [
        header("Content-Type", &media_type),
        header("Cache-Control", "no-cache"),
        header("X-Content-Type-Options", "nosniff"),
        header("Cross-Origin-Opener-Policy", "same-origin"),
        header("Cross-Origin-Resource-Policy", "same-origin"),
        header("Referrer-Policy", "no-referrer"),
    ];
    headers.into_iter().flatten().collect()
}

fn media_type(path: &Path) -> String {
    let guess = mime_guess::from_path(path).first_or_octet_stream();
    match guess.type_().as_str() {
        "text" => format!("{guess}; charset=utf-8"),
        _ => guess.to_string(),
    }
}

/// None for a value no header may hold, such as one with a line break in it.
fn header(name: &str, value: &str) -> Option<Header> {
    Header::from_bytes(name, value).ok()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use std::io::{Read, Write};
    use std::net::TcpStream;

    /// A folder of its own for one test, with a page, a worker, and a secret beside it.
    struct Yard(PathBuf);

    impl Yard {
        fn new(name: &str) -> Self {
            let yard = std::env::temp_dir().join(format!("cartside-{name}-{}", std::process::id()));
            fs::create_dir_all(yard.join("dist/icons")).unwrap();
            fs::write(yard.join("secret"), "not for serving").unwrap();
            fs::write(yard.join("dist/index.html"), "<p>page").unwrap();
            fs::write(yard.join("dist/icons/a b.svg"), "<svg/>").unwrap();
            fs::write(yard.join("dist/.hidden"), "hidden").unwrap();
            Self(yard)
        }

        fn site(&self, under: &str) -> Site {
            Site {
                folder: self.0.join("dist"),
                under: with_slashes(under),
            }
        }

        fn file(&self, name: &str) -> Answer {
            Answer::File(self.0.join("dist").join(name))
        }
    }

    impl Drop for Yard {
        fn drop(&mut self) {
            fs::remove_dir_all(&self.0).unwrap();
        }
    }

    #[test]
    fn browsers_get_the_types_they_insist_on() {
        let check = |name: &str, expected: &str| assert_eq!(media_type(Path::new(name)), expected);
        check("a.wasm", "application/wasm");
        check("a.js", "text/javascript; charset=utf-8");
        check("a.html", "text/html; charset=utf-8");
        check("a.css", "text/css; charset=utf-8");
        check("a.webmanifest", "application/manifest+json");
        check("a.svg", "image/svg+xml");
        check("a.png", "image/png");
        check("a", "application/octet-stream");
    }

    #[test]
    fn files_are_found_and_the_root_is_the_page() {
        let yard = Yard::new("found");
        let site = yard.site("");
        assert_eq!(site.find("/"), yard.file("index.html"));
        assert_eq!(site.find("/?from=home"), yard.file("index.html"));
        assert_eq!(site.find("/icons/a%20b.svg"), yard.file("icons/a b.svg"));
        assert_eq!(site.find("/icons/"), Answer::Absent);
        assert_eq!(site.find("/none.js"), Answer::Absent);
    }

    #[test]
    fn nothing_outside_the_folder_is_served() {
        let yard = Yard::new("outside");
        let site = yard.site("");
        for path in [
            "/../secret",
            "/%2e%2e/secret",
            "/icons/../../secret",
            "/icons/..%2f..%2fsecret",
            "/..\\secret",
            "//etc/passwd",
            "/%2fetc/passwd",
            "/.hidden",
            "/index.html%00.js",
        ] {
            assert_eq!(site.find(path), Answer::Absent, "{path}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_link_out_of_the_folder_is_not_followed() {
        let yard = Yard::new("link");
        std::os::unix::fs::symlink(yard.0.join("secret"), yard.0.join("dist/inside.txt")).unwrap();
        assert_eq!(yard.site("").find("/inside.txt"), Answer::Absent);
    }

    #[test]
    fn under_a_path_only_that_path_is_served() {
        let yard = Yard::new("under");
        let site = yard.site("tools/cartside");
        assert_eq!(site.find("/tools/cartside/"), yard.file("index.html"));
        assert_eq!(
            site.find("/tools/cartside"),
            Answer::Moved("/tools/cartside/".to_owned())
        );
        assert_eq!(site.find("/"), Answer::Absent);
        assert_eq!(site.find("/tools/cartsideindex.html"), Answer::Absent);
    }

    #[test]
    fn a_running_server_answers_with_safe_headers() {
        let yard = Yard::new("running");
        let server = FolderServer::bind(&yard.0.join("dist"), 0, "").unwrap();
        let address = server.address();
        thread::spawn(move || server.run());
        let host = address.trim_start_matches("http://").trim_end_matches('/');
        let page = ask(host, "GET / HTTP/1.1");
        assert!(
            page.starts_with("HTTP/1.1 200") && page.ends_with("<p>page"),
            "{page}"
        );
        for line in ["Cache-Control: no-cache", "X-Content-Type-Options: nosniff"] {
            assert!(page.contains(line), "{page}");
        }
        assert!(ask(host, "GET /../secret HTTP/1.1").starts_with("HTTP/1.1 404"));
        assert!(ask(host, "POST / HTTP/1.1").starts_with("HTTP/1.1 405"));
    }

    fn ask(host: &str, line: &str) -> String {
        let mut stream = TcpStream::connect(host).unwrap();
        write!(
            stream,
            "{line}\r\nHost: {host}\r\nConnection: close\r\n\r\n"
        )
        .unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        answer
    }
}
