//! Is a served page found without its server, and does a new edition replace the old one whole?

use crate::environment::setting;
use crate::fixtures;
use crate::session::Session;
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::thread;

type Files = Arc<Mutex<Option<BTreeMap<String, Vec<u8>>>>>;

/// A server that can be told to serve something else, or to hang up on everybody.
struct Host {
    address: String,
    files: Files,
}

impl Host {
    fn start(files: BTreeMap<String, Vec<u8>>) -> Self {
        let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
        let address = format!("http://{}/", listener.local_addr().unwrap());
        let files: Files = Arc::new(Mutex::new(Some(files)));
        let shared = files.clone();
        thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                let shared = shared.clone();
                thread::spawn(move || answer(stream, &shared));
            }
        });
        Self { address, files }
    }
}

fn answer(mut stream: TcpStream, files: &Files) -> Option<()> {
    let mut lines = BufReader::new(stream.try_clone().ok()?).lines();
    let first = lines.next()?.ok()?;
    while !lines.next()?.ok()?.is_empty() {}
    let address = first.split(' ').nth(1)?.split('?').next()?.trim_start_matches('/');
    let name = if address.is_empty() { "index.html" } else { address };
    let files = files.lock().ok()?;
    let found = files.as_ref()?.get(name)?;
    let kind = match name.rsplit('.').next()? {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript",
        _ => "application/manifest+json",
    };
    write!(
        stream,
        "HTTP/1.1 200 OK\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nConnection: close\r\n\r\n",
        found.len()
    )
    .ok()?;
    stream.write_all(found).ok()
}

fn edition() -> BTreeMap<String, Vec<u8>> {
    let folder = setting("SALTWRIGHT_SITE");
    ["index.html", "offline.js", "saltwright.webmanifest"]
        .map(|name| (name.to_string(), std::fs::read(format!("{folder}/{name}")).unwrap()))
        .into()
}

#[test]
fn a_page_outlives_its_server_and_gives_way_to_the_next_edition() {
    let host = Host::start(edition());
    let session = Session::start();
    session.open(&host.address);
    session.wait(
        "return !!navigator.serviceWorker.controller && !!(await caches.match(new URL('./', location)))",
    );
    session.fill(fixtures::US);
    session.wait("return all('[data-when=\"kept.yes\"]').some((e) => !e.hidden)");

    // The server hangs up: page and job are there all the same.
    let files = host.files.lock().unwrap().take().unwrap();
    session.reload();
    session.expect(fixtures::US_ANSWER);

    // It comes back with another edition, which stands there whole at the next visit, with the job in it.
    let mut next = files;
    let page = String::from_utf8(next["index.html"].clone()).unwrap();
    next.insert("index.html".into(), page.replacen("<h1>", "<h1>Second edition: ", 1).into_bytes());
    *host.files.lock().unwrap() = Some(next);
    session.reload();
    assert!(session.text("return document.querySelector('h1').textContent").starts_with("Second edition"));
    session.expect(fixtures::US_ANSWER);
    *host.files.lock().unwrap() = None;
    session.reload();
    assert!(session.text("return document.querySelector('h1').textContent").starts_with("Second edition"));

    // And it can be forgotten.
    *host.files.lock().unwrap() = Some(edition());
    session.go(&format!("{}?forget", host.address));
    session.wait("return (await caches.keys()).length === 0");
}
