//! A small server of one folder's files on this machine only.
//!
//! One thread and one answer a connection. Tried first was `tiny_http` 0.12: when a browser opens several
//! connections at once, it now and then leaves one unanswered for as long as another is kept open, and a
//! service worker then waits for ever in its first install.

use anyhow::{Context, Result, bail};
use percent_encoding::percent_decode_str;
use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::thread;
use std::time::Duration;

const PAGE: &str = "index.html";
/// The longest request head that is read, in bytes.
const HEAD_LIMIT: usize = 16 * 1024;
const MOST_HEADERS: usize = 64;
/// How long a connection may be silent; browsers open some in advance and never use them.
const PATIENCE: Duration = Duration::from_secs(60);

/// A folder, bound to a port and ready to answer.
#[derive(Debug)]
pub(crate) struct FolderServer {
    listener: TcpListener,
    site: Site,
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

/// The line a request begins with.
#[derive(Debug)]
struct Asked {
    method: String,
    url: String,
}

impl FolderServer {
    /// Takes the port, or any free one for 0.
    pub(crate) fn bind(folder: &Path, port: u16, under: &str) -> Result<Self> {
        let site = Site {
            folder: folder.to_path_buf(),
            under: with_slashes(under)?,
        };
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
        let listener = TcpListener::bind(address).with_context(|| {
            format!("port {port} cannot be had; choose another with --port, 0 for any")
        })?;
        Ok(Self { listener, site })
    }

    /// Where it is reached.
    pub(crate) fn address(&self) -> Result<String> {
        let bound = self.listener.local_addr()?;
        Ok(format!("http://{bound}{}", self.site.under))
    }

    /// Answers until the process ends.
    pub(crate) fn run(&self) {
        thread::scope(|scope| {
            for stream in self.listener.incoming().flatten() {
                // A reader who has gone away is no concern of the others.
                scope.spawn(move || self.site.answer(stream).ok());
            }
        });
    }
}

impl Site {
    fn answer(&self, mut stream: TcpStream) -> io::Result<()> {
        stream.set_read_timeout(Some(PATIENCE))?;
        stream.set_write_timeout(Some(PATIENCE))?;
        let Some(asked) = read_head(&mut stream)? else {
            return plain(&mut stream, "400 Bad Request", "this is no request");
        };
        if !["GET", "HEAD"].contains(&asked.method.as_str()) {
            let told = "only GET and HEAD are answered here";
            return plain(&mut stream, "405 Method Not Allowed", told);
        }
        match self.find(&asked.url) {
            Answer::File(path) => send(&mut stream, &path, asked.method == "GET"),
            Answer::Moved(to) => write!(
                stream,
                "HTTP/1.1 301 Moved Permanently\r\nLocation: {to}\r\n{}\r\n",
                headers("text/plain", 0)
            ),
            Answer::Absent => plain(&mut stream, "404 Not Found", "there is no such file here"),
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

fn with_slashes(under: &str) -> Result<String> {
    let inner = under.trim_matches('/');
    let is_plain = |letter: char| letter.is_ascii_alphanumeric() || "-._~/".contains(letter);
    if !inner.chars().all(is_plain) {
        bail!("`{under}` cannot be served under; use letters, digits and - . _ ~ between slashes");
    }
    Ok(match inner {
        "" => "/".to_owned(),
        inner => format!("/{inner}/"),
    })
}

/// None if what comes is no request, or one with too long a head.
fn read_head(stream: &mut TcpStream) -> io::Result<Option<Asked>> {
    let mut head = Vec::new();
    let mut part = [0; 2048];
    while head.len() < HEAD_LIMIT {
        let read = stream.read(&mut part)?;
        if read == 0 {
            return Ok(None);
        }
        head.extend(part.iter().take(read));
        match parse_head(&head) {
            Ok(None) => {}
            Ok(asked) => return Ok(asked),
            Err(_) => return Ok(None),
        }
    }
    Ok(None)
}

/// None while the head is not whole.
fn parse_head(head: &[u8]) -> Result<Option<Asked>, httparse::Error> {
    let mut headers = [httparse::EMPTY_HEADER; MOST_HEADERS];
    let mut request = httparse::Request::new(&mut headers);
    let whole = request.parse(head)?.is_complete();
    let line = request.method.zip(request.path).filter(|_| whole);
    Ok(line.map(|(method, url)| Asked {
        method: method.to_owned(),
        url: url.to_owned(),
    }))
}

fn send(stream: &mut TcpStream, path: &Path, with_body: bool) -> io::Result<()> {
    let mut file = File::open(path)?;
    let headers = headers(&media_type(path), fs::metadata(path)?.len());
    write!(stream, "HTTP/1.1 200 OK\r\n{headers}\r\n")?;
    if with_body {
        io::copy(&mut file, stream)?;
    }
    Ok(())
}

fn plain(stream: &mut TcpStream, status: &str, text: &str) -> io::Result<()> {
    let headers = headers("text/plain; charset=utf-8", text.len() as u64);
    write!(stream, "HTTP/1.1 {status}\r\n{headers}\r\n{text}")
}

fn headers(media_type: &str, length: u64) -> String {
    format!(
        "Content-Type: {media_type}\r\n\
         Content-Length: {length}\r\n\
         Cache-Control: no-cache\r\n\
         X-Content-Type-Options: nosniff\r\n\
         Cross-Origin-Opener-Policy: same-origin\r\n\
         Cross-Origin-Resource-Policy: same-origin\r\n\
         Referrer-Policy: no-referrer\r\n\
         Connection: close\r\n"
    )
}

fn media_type(path: &Path) -> String {
    let guess = mime_guess::from_path(path).first_or_octet_stream();
    match guess.type_().as_str() {
        "text" => format!("{guess}; charset=utf-8"),
        _ => guess.to_string(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

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
                under: with_slashes(under).unwrap(),
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
    fn a_path_that_would_break_a_header_is_refused() {
        assert_eq!(with_slashes("a/b").unwrap(), "/a/b/");
        assert!(with_slashes("/a\r\nX: y/").is_err());
    }

    #[test]
    fn idle_connections_keep_nobody_waiting() {
        let yard = Yard::new("idle");
        let server = FolderServer::bind(&yard.0.join("dist"), 0, "").unwrap();
        let address = server.address().unwrap();
        thread::spawn(move || server.run());
        let host = address.trim_start_matches("http://").trim_end_matches('/');
        let idle: Vec<_> = (0..32).map(|_| TcpStream::connect(host).unwrap()).collect();
        assert!(ask(host, "GET / HTTP/1.1").starts_with("HTTP/1.1 200"));
        drop(idle);
    }

    #[test]
    fn a_running_server_answers_with_safe_headers() {
        let yard = Yard::new("running");
        let server = FolderServer::bind(&yard.0.join("dist"), 0, "").unwrap();
        let address = server.address().unwrap();
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
        assert!(ask(host, "no request").starts_with("HTTP/1.1 400"));
        let head = ask(host, "HEAD / HTTP/1.1");
        assert!(
            head.contains("Content-Length: 7") && head.ends_with("\r\n\r\n"),
            "{head}"
        );
    }

    fn ask(host: &str, line: &str) -> String {
        let mut stream = TcpStream::connect(host).unwrap();
        // In one piece, since the server may have answered and gone before a second.
        let request = format!("{line}\r\nHost: {host}\r\nConnection: close\r\n\r\n");
        stream.write_all(request.as_bytes()).unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        answer
    }
}
