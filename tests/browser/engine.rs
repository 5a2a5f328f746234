//! Which browser runs the tests, how is it started, and what cannot be judged in it?
//!
//! `SALTWRIGHT_ENGINE` names one: `chromium`, which is meant where nothing is said, `firefox` or `webkit`
//! (WebKitGTK's own small browser). Each says in a variable of its own where its driver is.

use crate::environment::setting;
use serde_json::{Value, json};
use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

#[derive(Clone, Copy, PartialEq)]
pub enum Engine {
    Chromium,
    Firefox,
    WebKit,
}

/// No window, no profile but the empty one the driver makes, no call to anybody.
const CHROMIUM: [&str; 9] = [
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

/// Neither of the others lets its page be as narrow as a telephone while its own buttons need more.
const FIREFOX_STYLE: &str = ":root { min-width: 0 !important; min-height: 0 !important } #navigator-toolbox { display: none !important }";
const GTK_STYLE: &str =
    "* { min-width: 0; min-height: 0; padding: 0; margin: 0; border-width: 0; font-size: 1px }";

/// What a test may need that not every engine's driver can do.
pub enum Need {
    /// A PDF of the page.
    Pdf,
    /// A list of what moved, frame by frame.
    Shifts,
    /// Modules that run in their order, even where one waits.
    Order,
    /// A watch over a page that comes from the disk.
    FileWatch,
    /// What a screen reader is told.
    Tree,
}

impl Engine {
    pub fn chosen() -> Self {
        match std::env::var("SALTWRIGHT_ENGINE").as_deref() {
            Err(_) | Ok("chromium") => Self::Chromium,
            Ok("firefox") => Self::Firefox,
            Ok("webkit") => Self::WebKit,
            Ok(other) => panic!("SALTWRIGHT_ENGINE is {other:?}; there are chromium, firefox and webkit"),
        }
    }

    /// Does it do what a test needs? Where not, says at once, whether or not the test's own output is shown,
    /// what is left without a judgement.
    pub fn can(self, need: Need, what: &str) -> bool {
        let why = match (self, need) {
            (Self::WebKit, Need::Pdf) => "its driver does not print",
            (Self::Firefox | Self::WebKit, Need::Shifts) => "it does not tell what moved",
            (Self::Firefox | Self::WebKit, Need::FileWatch) => {
                "its driver tells no log, and no proxy sees a file"
            }
            (Self::Firefox | Self::WebKit, Need::Tree) => "its driver does not tell the tree",
            (Self::WebKit, Need::Order) => "it does not wait: a fault of its own",
            _ => return true,
        };
        // Not by a macro: that would be kept back where the test passes.
        let _ = writeln!(std::io::stderr(), "NOT JUDGED: {what}: {why}");
        false
    }

    /// The driver, ready to be started at a port, with a folder for what it needs and a screen, if any.
    pub fn driver(self, port: u16, folder: &Path, screen: Option<&Screen>) -> Command {
        let mut command = Command::new(setting(match self {
            Self::Chromium => "CHROMEDRIVER",
            Self::Firefox => "GECKODRIVER",
            Self::WebKit => "WEBKITDRIVER",
        }));
        command.arg(format!("--port={port}"));
        match self {
            Self::Chromium => {}
            Self::Firefox => {
                write(folder.join("chrome/userChrome.css"), FIREFOX_STYLE);
                // Without it Firefox takes its own settings from its maker alone, whatever is preferred.
                command.env("MOZ_REMOTE_SETTINGS_DEVTOOLS", "1").arg("--websocket-port=0");
            }
            Self::WebKit => {
                write(folder.join("gtk-3.0/gtk.css"), GTK_STYLE);
                command.envs(["CONFIG", "CACHE", "DATA"].map(|room| (format!("XDG_{room}_HOME"), folder)));
                command.envs(screen.map(|screen| ("DISPLAY", &screen.name)));
            }
        }
        command
    }

    /// What kind of browser the driver is asked for; `proxy` is the address of one of ours.
    pub fn capabilities(self, folder: &Path, proxy: &str) -> Value {
        let proxy = json!({ "proxyType": "manual", "httpProxy": proxy, "sslProxy": proxy });
        match self {
            Self::Chromium => json!({
                "goog:chromeOptions": { "args": CHROMIUM },
                "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
            }),
            Self::Firefox => json!({ "proxy": proxy, "moz:firefoxOptions": {
                "args": ["-headless", "-profile", folder],
                "prefs": {
                    "toolkit.legacyUserProfileCustomizations.stylesheets": true,
                    "network.proxy.allow_hijacking_localhost": true,
                    "services.settings.server": "data:,",
                },
            } }),
            Self::WebKit => json!({ "proxy": proxy }),
        }
    }
}

fn write(path: PathBuf, text: &str) {
    fs::create_dir_all(path.parent().expect("a file lies in a folder")).expect("a folder");
    fs::write(path, text).expect("a file");
}

/// A screen that nobody sees, for a browser that cannot do without.
pub struct Screen {
    process: Child,
    name: String,
}

impl Screen {
    pub fn start() -> Self {
        let mut process = Command::new("Xvfb")
            .args(["-displayfd", "1", "-screen", "0", "2400x1600x24", "-nolisten", "tcp"])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("Xvfb starts");
        let mut lines = BufReader::new(process.stdout.take().expect("piped")).lines();
        let number = lines.next().expect("Xvfb says its number").expect("Xvfb says its number");
        Self { process, name: format!(":{number}") }
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}
