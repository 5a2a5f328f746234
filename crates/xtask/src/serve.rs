//! How does a browser on this machine get the site?

use crate::{build, shell};
use anyhow::{Result, anyhow, bail, ensure};
use std::collections::BTreeMap;
use std::io::ErrorKind;
use std::net::{Ipv4Addr, TcpListener};
use std::path::Path;
use std::sync::Arc;
use std::thread::{self, JoinHandle};
use tiny_http::{Header, Method, Response};

/// Where to begin the search for a free port.
pub const PORT: u16 = 8137;

/// Builds the site and serves it until the process is ended.
pub fn serve(port: u16) -> Result<()> {
    let site = build::build(&mut shell::Steps::default())?.folder;
    let server = start(&site, port)?;
    println!("{}", server.address());
    server.wait()
}

/// A server at work; it stops when dropped.
pub struct Server {
    http: Arc<tiny_http::Server>,
    worker: Option<JoinHandle<()>>,
    port: u16,
}

/// Serves a folder as it is now, on loopback only, from this port or the next free one.
/// Port 0 means any.
pub fn start(folder: &Path, port: u16) -> Result<Server> {
    let site = Site::read(folder)?;
    let listener = listen(port)?;
    let port = listener.local_addr()?.port();
    let http = tiny_http::Server::from_listener(listener, None).map_err(|error| anyhow!(error))?;
    let http = Arc::new(http);
    let worker = thread::spawn({
        let http = Arc::clone(&http);
        move || {
            for request in http.incoming_requests() {
                let header = |name| request.headers().iter().find(|h| h.field.equiv(name));
                let accepted = header("accept-encoding").map_or("", |h| h.value.as_str());
                let reply = site.reply(request.method(), request.url(), accepted);
                // A browser that has gone away is no fault of ours.
                let _ = request.respond(reply);
            }
        }
    });
    Ok(Server { http, worker: Some(worker), port })
}

impl Server {
    /// What to type into a browser.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/", self.port)
    }

    fn wait(mut self) -> Result<()> {
        let worker = self.worker.take().expect("only `wait` and `drop` take it");
        worker.join().map_err(|_| anyhow!("the server broke down"))
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.http.unblock();
        if let Some(worker) = self.worker.take() {
            let _ = worker.join();
        }
    }
}

fn listen(port: u16) -> Result<TcpListener> {
    for port in port..=port.saturating_add(99) {
        match TcpListener::bind((Ipv4Addr::LOCALHOST, port)) {
            Err(error) if error.kind() == ErrorKind::AddrInUse => {}
            other => return Ok(other?),
        }
    }
    bail!("no port is free from {port} on")
}

/// All files by their address. What was not in the folder at the start cannot be reached.
struct Site(BTreeMap<String, File>);

struct File {
    kind: &'static str,
    plain: Vec<u8>,
    packed: Vec<u8>,
}

impl Site {
    fn read(folder: &Path) -> Result<Self> {
        let mut files = BTreeMap::new();
        for path in shell::files(folder)? {
            let name = path.strip_prefix(folder)?.to_string_lossy().replace('\\', "/");
            let plain = std::fs::read(&path)?;
            let packed = build::sizes::brotli(&plain)?;
            files.insert(format!("/{name}"), File { kind: kind(&name), plain, packed });
        }
        ensure!(files.contains_key("/index.html"), "there is no page in {}", folder.display());
        Ok(Self(files))
    }

    fn reply(&self, method: &Method, url: &str, accepted: &str) -> Reply {
        if !matches!(method, Method::Get | Method::Head) {
            return Response::from_data([]).with_status_code(405).with_header(header("Allow", "GET, HEAD"));
        }
        let address = match url.split(['?', '#']).next() {
            None | Some("/") => "/index.html",
            Some(address) => address,
        };
        let Some(file) = self.0.get(address) else {
            return Response::from_data("no such file\n").with_status_code(404);
        };
        let packed = accepts_brotli(accepted);
        let body = if packed { &file.packed } else { &file.plain };
        let mut reply = Response::from_data(body.clone());
        // Any page may try the script: nothing here is private.
        let always = [
            ("Content-Type", file.kind),
            ("Cache-Control", "no-cache"),
            ("Vary", "Accept-Encoding"),
            ("Access-Control-Allow-Origin", "*"),
            ("X-Content-Type-Options", "nosniff"),
        ];
        for (name, value) in always.into_iter().chain(packed.then_some(("Content-Encoding", "br"))) {
            reply.add_header(header(name, value));
        }
        reply
    }
}

type Reply = Response<std::io::Cursor<Vec<u8>>>;

fn header(name: &str, value: &str) -> Header {
    Header::from_bytes(name, value).expect("only plain letters are passed")
}

fn accepts_brotli(accepted: &str) -> bool {
    accepted.split(',').any(|one| {
        let mut parts = one.split(';').map(str::trim);
        let refused = |weight: &str| weight.strip_prefix("q=").and_then(|q| q.parse().ok()) == Some(0.0);
        parts.next() == Some("br") && !parts.any(refused)
    })
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("md") => "text/markdown; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("integrity" | "txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::{Read, Write};
    use std::net::TcpStream;

    /// A folder `site` with a page, beside a file that nobody may see.
    fn site(name: &str) -> Result<Server> {
        let outer = shell::target().join("xtask-tests").join(name);
        let site = outer.join("site");
        std::fs::create_dir_all(&site)?;
        std::fs::write(outer.join("secret.txt"), "secret")?;
        std::fs::write(site.join("index.html"), "<p>words, words, words, words, words</p>")?;
        start(&site, 0)
    }

    fn ask(server: &Server, request: &str) -> String {
        let mut stream = TcpStream::connect(("127.0.0.1", server.port)).unwrap();
        write!(stream, "{request}\r\nHost: localhost\r\nConnection: close\r\n\r\n").unwrap();
        let mut reply = Vec::new();
        stream.read_to_end(&mut reply).unwrap();
        String::from_utf8_lossy(&reply).to_ascii_lowercase()
    }

    #[test]
    fn the_page_comes_at_the_root_with_its_kind() {
        let server = site("root").unwrap();
        for url in ["/", "/index.html", "/?forget", "/index.html?x=/../secret.txt"] {
            let reply = ask(&server, &format!("GET {url} HTTP/1.1"));
            assert!(reply.starts_with("http/1.1 200"), "{url}: {reply}");
            assert!(reply.contains("content-type: text/html; charset=utf-8"), "{reply}");
            assert!(reply.ends_with("words</p>"), "{reply}");
        }
    }

    #[test]
    fn head_has_no_body_and_other_methods_are_refused() {
        let server = site("methods").unwrap();
        let reply = ask(&server, "HEAD / HTTP/1.1");
        assert!(reply.starts_with("http/1.1 200") && reply.ends_with("\r\n\r\n"), "{reply}");
        let reply = ask(&server, "DELETE /index.html HTTP/1.1");
        assert!(reply.starts_with("http/1.1 405"), "{reply}");
    }

    #[test]
    fn nothing_outside_the_folder_is_reached() {
        let server = site("outside").unwrap();
        for url in [
            "/../secret.txt",
            "/%2e%2e/secret.txt",
            "/..%2fsecret.txt",
            "/..\\secret.txt",
            "//secret.txt",
            "../secret.txt",
            "/./../secret.txt",
        ] {
            let reply = ask(&server, &format!("GET {url} HTTP/1.1"));
            assert!(!reply.starts_with("http/1.1 200"), "{url}: {reply}");
            assert!(!reply.ends_with("secret"), "{url}: {reply}");
        }
    }

    #[test]
    fn brotli_is_sent_only_to_who_takes_it() {
        let server = site("brotli").unwrap();
        let packed = "content-encoding: br\r\n";
        let reply = ask(&server, "GET / HTTP/1.1\r\nAccept-Encoding: gzip, br;q=0.5");
        assert!(reply.contains(packed) && !reply.contains("words</p>"), "{reply}");
        for refusal in ["gzip", "br;q=0", "br; q=0.0", "brx"] {
            let reply = ask(&server, &format!("GET / HTTP/1.1\r\nAccept-Encoding: {refusal}"));
            assert!(!reply.contains(packed), "{refusal}: {reply}");
        }
    }

    #[test]
    fn a_taken_port_gives_way_to_the_next() {
        let first = site("port").unwrap();
        let next = listen(first.port).unwrap().local_addr().unwrap().port();
        assert!(next > first.port);
    }
}
