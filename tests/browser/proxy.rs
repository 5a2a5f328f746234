//! What does a page ask for, and what goes wrong in it, where the browser's driver does not tell?
//!
//! All requests of the browser go through here. What is on this machine is fetched, and a script is put in
//! front of every page on its way; for all else there is no way out. Either is remembered.

use std::collections::BTreeSet;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::thread;

/// Every complaint of a page, kept over reloads: in the one store that ends with the tab. A frame that may have
/// no store has its own list, and is not loaded again.
const WATCH: &str = "{
    const tell = (what) => {
        try {
            const told = JSON.parse(sessionStorage.getItem('complaints') ?? '[]');
            sessionStorage.setItem('complaints', JSON.stringify([...told, String(what)]));
        } catch {
            (window.complaints ??= []).push(String(what));
        }
    };
    addEventListener('error', (e) => tell(e.message ?? `not loaded: ${e.target.outerHTML}`), true);
    addEventListener('unhandledrejection', (e) => tell(e.reason));
    addEventListener('securitypolicyviolation', (e) => tell(`${e.violatedDirective}: ${e.blockedURI}`));
    for (const kind of ['error', 'warn', 'assert']) {
        const said = console[kind];
        console[kind] = (...what) => { if (kind !== 'assert' || !what[0]) tell(what.join(' ')); said(...what); };
    }
}";

/// Reads what `WATCH` has kept.
pub const COMPLAINTS: &str = "try {
        return JSON.parse(sessionStorage.getItem('complaints') ?? '[]');
    } catch {
        return window.complaints ?? [];
    }";

#[derive(Default)]
struct Shared {
    asked: BTreeSet<String>,
    prelude: String,
}

/// A proxy for one browser.
pub struct Proxy {
    pub address: String,
    shared: Arc<Mutex<Shared>>,
}

impl Proxy {
    pub fn start() -> Self {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).expect("a port");
        let address = listener.local_addr().expect("an address").to_string();
        let shared = Arc::new(Mutex::new(Shared { prelude: WATCH.into(), ..Shared::default() }));
        let ours = shared.clone();
        thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                let shared = shared.clone();
                // Who has gone away, on either side, is gone for the other side too.
                thread::spawn(move || pass(stream, &shared));
            }
        });
        Self { address, shared: ours }
    }

    /// Every address that was asked for since it was last told; of a stranger behind encryption only who it is.
    pub fn asked(&self) -> BTreeSet<String> {
        std::mem::take(&mut self.shared.lock().expect("no thread broke").asked)
    }

    /// A script that runs in every page opened from now on, before the page's own.
    pub fn before_every_page(&self, script: &str) {
        self.shared.lock().expect("no thread broke").prelude += script;
    }
}

fn pass(mut browser: TcpStream, shared: &Mutex<Shared>) -> Option<()> {
    let mut lines = BufReader::new(browser.try_clone().ok()?).lines();
    let first = lines.next()?.ok()?;
    while !lines.next()?.ok()?.is_empty() {}
    let mut words = first.split(' ');
    let (method, address) = (words.next()?, words.next()?);
    let prelude = {
        let mut shared = shared.lock().ok()?;
        shared.asked.insert(address.into());
        shared.prelude.clone()
    };
    let near = address.strip_prefix("http://").filter(|rest| rest.starts_with("127.0.0.1:"));
    let Some((host, path)) = near.and_then(|rest| rest.split_once('/')) else {
        return browser.write_all(b"HTTP/1.1 502 No way out\r\nContent-Length: 0\r\n\r\n").ok();
    };
    let mut server = TcpStream::connect(host).ok()?;
    // Of the older kind, so that the answer comes in one piece.
    write!(server, "{method} /{path} HTTP/1.0\r\nHost: {host}\r\n\r\n").ok()?;
    let mut reply = Vec::new();
    server.read_to_end(&mut reply).ok()?;
    let gap = reply.windows(4).position(|four| four == b"\r\n\r\n")?;
    let (head, mut body) = (String::from_utf8_lossy(&reply[..gap]), reply[gap + 4..].to_vec());
    if head.contains("text/html") {
        // Before the page's own policy; a policy of its server's is told of the script.
        let page = String::from_utf8_lossy(&body);
        let (start, rest) = page.split_at(page.find("<meta charset").unwrap_or(0));
        let (meta, rest) = rest.split_once('>')?;
        body = format!("{start}{meta}><script nonce=watch>{prelude}</script>{rest}").into_bytes();
    }
    let plain = |line: &&str| !["content-length", "connection"].contains(&name(line).as_str());
    for line in head.lines().filter(plain) {
        write!(browser, "{}\r\n", line.replace("script-src ", "script-src 'nonce-watch' ")).ok()?;
    }
    write!(browser, "Content-Length: {}\r\nConnection: close\r\n\r\n", body.len()).ok()?;
    browser.write_all(&body).ok()
}

fn name(line: &str) -> String {
    line.split(':').next().unwrap_or_default().to_ascii_lowercase()
}
