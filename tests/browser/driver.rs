//! How is a browser started, told what to do, and ended?
//!
//! The driver is spoken to directly, in the JSON of the W3C's WebDriver: the client crates bring an
//! async runtime and some 26 packages for what is one request a command, and none of them reads the
//! browser's own log, which every test here ends with.

use crate::seat::setting;
use serde_json::{Value, json};
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::Duration;

/// No window, no profile but the empty one the driver makes, no call to anybody.
const FLAGS: [&str; 9] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
];

/// A driver and the one browser it drives.
pub struct Driver {
    process: Child,
    agent: ureq::Agent,
    session: String,
}

impl Driver {
    /// A driver and a browser for one test, so that no test can leave anything to the next, and a
    /// failure ends both. Costs about a second.
    pub fn start() -> Self {
        let mut process = Command::new(setting("CHROMEDRIVER"))
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("the driver starts");
        let mut lines = BufReader::new(process.stdout.take().expect("piped")).lines();
        let port = lines.find_map(|line| {
            let line = line.ok()?;
            let (_, port) = line.split_once("successfully on port ")?;
            Some(port.trim_end_matches('.').to_string())
        });
        // The driver must not stall on a full pipe.
        thread::spawn(move || lines.for_each(drop));
        let config = ureq::Agent::config_builder()
            .http_status_as_error(false)
            .timeout_global(Some(Duration::from_secs(60)));
        let agent = config.build().new_agent();
        let session = format!("http://127.0.0.1:{}/session", port.expect("the driver says its port"));
        // From here on `drop` cleans up.
        let mut driver = Self { process, agent, session };
        let options = json!({ "capabilities": { "alwaysMatch": {
            "goog:chromeOptions": { "args": FLAGS },
            "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
        } } });
        let begun = driver.command("", options);
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
    }
}
