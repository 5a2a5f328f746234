//! How is a browser looked into and set up, in each engine?
//!
//! Chromium's driver tells its logs and takes the commands of its inspector. For the others a proxy of ours
//! watches, windows are drawn to size, and the page's own style is turned over for paper.

use crate::driver::Driver;
use crate::engine::Engine;
use crate::proxy;
use base64::{Engine as _, engine::general_purpose::STANDARD};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::thread;
use std::time::{Duration, Instant};

/// How long a window may take to have another size, and a page to come again.
const PATIENCE: Duration = Duration::from_secs(10);

/// In what is seen on a screen and what on paper, the two change places.
const AS_PAPER: &str = r"
    const over = { print: 'all', screen: 'not all' };
    const turn = (media) => { media.mediaText = media.mediaText.replace(/\b(print|screen)\b/g, (m) => over[m]); };
    const walk = (rules) => { for (const r of rules) { if (r.media) turn(r.media); if (r.cssRules) walk(r.cssRules); } };
    for (const sheet of document.styleSheets) { turn(sheet.media); walk(sheet.cssRules); }";

impl Driver {
    /// What went wrong in the page, as far as the browser knows of it.
    pub fn complaints(&self) -> Vec<Value> {
        if self.proxy.is_some() {
            let told = || self.run(proxy::COMPLAINTS).as_array().expect("a list").clone();
            // In a frame there are two to be asked.
            let mut all = told();
            if self.run("return window !== window.top") == true {
                self.command("frame", json!({ "id": null }));
                all.extend(told());
            }
            return all;
        }
        let quiet = |entry: &Value| entry["level"] == "INFO" || entry["level"] == "DEBUG";
        self.log("browser").into_iter().filter(|entry| !quiet(entry)).collect()
    }

    /// Every address that was asked for since it was last told; what is inside the page itself is no request.
    pub fn requests(&self) -> BTreeSet<String> {
        if let Some(proxy) = &self.proxy {
            return proxy.asked();
        }
        let mut found = BTreeSet::new();
        for entry in self.log("performance") {
            let entry: Value = serde_json::from_str(entry["message"].as_str().unwrap()).unwrap();
            let event = &entry["message"];
            let address = event["params"]["request"]["url"].as_str().unwrap_or_default();
            let inside = ["data:", "blob:"].iter().any(|kind| address.starts_with(kind));
            if event["method"] == "Network.requestWillBeSent" && !inside {
                found.insert(address.to_string());
            }
        }
        found
    }

    fn log(&self, kind: &str) -> Vec<Value> {
        self.command("se/log", json!({ "type": kind })).as_array().expect("a log is a list").clone()
    }

    /// Loads the page again, as a person's key does it. Firefox's driver would pass by all that is kept,
    /// and by the page's worker with it.
    pub fn reload(&self) {
        if self.engine != Engine::Firefox {
            self.command("refresh", json!({}));
            return;
        }
        self.run("window.stale = true; setTimeout(() => location.reload())");
        let start = Instant::now();
        while self.run("return !!window.stale || document.readyState !== 'complete'") == true {
            assert!(start.elapsed() < PATIENCE, "the page does not come again");
            thread::sleep(Duration::from_millis(20));
        }
    }

    /// From the end of the page a person gets to its start again through the browser's own buttons. Firefox's
    /// driver sends all keys to the page, where those last ones lead nowhere.
    pub fn round_the_end(&self) {
        if self.engine == Engine::Firefox {
            self.run(
                "if (document.activeElement === document.body) getSelection().collapse(document.body, 0)",
            );
        }
    }

    /// A viewport of this size; in Chromium a telephone's where it is narrow.
    pub fn resize(&self, width: u32, height: u32) {
        if self.proxy.is_none() {
            let params = json!({
                "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 640,
            });
            self.inspect("Emulation.setDeviceMetricsOverride", params);
            return;
        }
        let inner = || {
            let size = self.run("return [innerWidth, innerHeight]");
            [0, 1].map(|n| size[n].as_u64().expect("a size") as u32)
        };
        let [mut wide, mut high] = [width, height];
        let start = Instant::now();
        loop {
            self.command("window/rect", json!({ "width": wide, "height": high }));
            // It comes when it comes; what the browser takes for itself is known only then.
            for _ in 0..10 {
                if inner() == [width, height] {
                    return;
                }
                thread::sleep(Duration::from_millis(20));
            }
            let [w, h] = inner();
            assert!(start.elapsed() < PATIENCE, "the page is {w} by {h}, not {width} by {height}");
            [wide, high] = [(wide + width).saturating_sub(w), (high + height).saturating_sub(h)];
        }
    }

    /// How the page would look on paper.
    pub fn as_paper(&self) {
        if self.proxy.is_some() {
            self.run(AS_PAPER);
        } else {
            self.inspect("Emulation.setEmulatedMedia", json!({ "media": "print" }));
        }
    }

    /// A PDF on paper of this size in centimetres.
    pub fn print(&self, width: f64, height: f64) -> Vec<u8> {
        let page = json!({ "page": { "width": width, "height": height } });
        let text = self.command("print", page);
        STANDARD.decode(text.as_str().expect("a PDF as text")).expect("base64")
    }

    /// A script that runs in every page opened from now on, before the page's own.
    pub fn before_every_page(&self, script: &str) {
        match &self.proxy {
            Some(proxy) => proxy.before_every_page(script),
            None => drop(self.inspect("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script }))),
        }
    }

    /// A command to Chromium's inspector, and what it replies.
    pub fn inspect(&self, cmd: &str, params: Value) -> Value {
        self.command("goog/cdp/execute", json!({ "cmd": cmd, "params": params }))
    }

    /// What a script returns.
    pub fn run(&self, script: &str) -> Value {
        self.command("execute/sync", json!({ "script": script, "args": [] }))
    }
}
