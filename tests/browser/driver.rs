//! How is a browser started, told what to do, and ended?
//!
//! The driver is spoken to directly, in the JSON of the W3C's WebDriver: the client crates bring an
//! async runtime and some 26 packages for what is one request a command, and none of them reads the
//! browser's own log, which every test here ends with.

use crate::engine::{Engine, Screen};
use crate::proxy::Proxy;
use serde_json::{Value, json};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::PathBuf;
use std::process::{Child, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// A driver and the one browser it drives.
pub struct Driver {
    pub engine: Engine,
    /// Where the browser's own driver does not tell what is asked for.
    pub proxy: Option<Proxy>,
    process: Child,
    agent: ureq::Agent,
    session: String,
    folder: PathBuf,
    _screen: Option<Screen>,
}

/// How long a driver may take until it listens.
const PATIENCE: Duration = Duration::from_secs(20);

impl Driver {
    /// A driver and a browser for one test, so that no test can leave anything to the next, and a
    /// failure ends both. Costs about a second.
    pub fn start() -> Self {
        let engine = Engine::chosen();
        let proxy = (engine != Engine::Chromium).then(Proxy::start);
        let screen = (engine == Engine::WebKit).then(Screen::start);
        let folder = folder();
        let port = free_port();
        let process = engine
            .driver(port, &folder, screen.as_ref())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("the driver starts");
        let config = ureq::Agent::config_builder()
            .http_status_as_error(false)
            .timeout_global(Some(Duration::from_secs(60)));
        let agent = config.build().new_agent();
        let session = format!("http://127.0.0.1:{port}/session");
        // From here on `drop` cleans up.
        let mut driver = Self { engine, proxy, process, agent, session, folder, _screen: screen };
        let start = Instant::now();
        while TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_err() {
            assert!(start.elapsed() < PATIENCE, "the driver does not listen");
            thread::sleep(Duration::from_millis(10));
        }
        let address = driver.proxy.as_ref().map_or("", |proxy| &proxy.address);
        let capabilities = engine.capabilities(&driver.folder, address);
        let begun = driver.command("", json!({ "capabilities": { "alwaysMatch": capabilities } }));
        driver.session += &format!("/{}", begun["sessionId"].as_str().expect("a session has an id"));
        driver
    }

    /// One command; what the driver refuses is a failure of the test.
    pub fn command(&self, path: &str, body: Value) -> Value {
        let address = format!("{}/{path}", self.session);
        let address = address.trim_end_matches('/');
        let reply = self.agent.post(address).content_type("application/json").send(body.to_string());
        let text = reply.and_then(|mut reply| reply.body_mut().read_to_string());
        value(text.unwrap_or_else(|error| panic!("{path}: {error}")), &format!("{path} {body}"))
    }

    /// What the driver tells without being told to do anything.
    pub fn ask(&self, path: &str) -> Value {
        let reply = self.agent.get(format!("{}/{path}", self.session)).call();
        let text = reply.and_then(|mut reply| reply.body_mut().read_to_string());
        value(text.unwrap_or_else(|error| panic!("{path}: {error}")), path)
    }
}

/// A port that was free a moment ago: not every driver finds one by itself and says which.
fn free_port() -> u16 {
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).expect("a port is free");
    listener.local_addr().expect("an address").port()
}

/// A new folder, for one browser.
fn folder() -> PathBuf {
    static COUNT: AtomicU32 = AtomicU32::new(0);
    let name = format!("browser-{}-{}", std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::create_dir_all(&folder).expect("a folder");
    folder
}

/// What a reply holds; an error in it is a failure of the test.
fn value(text: String, of: &str) -> Value {
    let reply: Value = serde_json::from_str(&text).expect("the driver speaks JSON");
    if let Some(error) = reply["value"]["error"].as_str() {
        panic!("{of}: {error}: {}", reply["value"]["message"]);
    }
    reply["value"].clone()
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Ends the browser; then nobody needs the driver.
        let _ = self.agent.delete(&self.session).call();
        let _ = self.process.kill();
        let _ = self.process.wait();
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}
