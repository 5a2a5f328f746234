//! How does a test use a page? One browser and one address, its keys and its eyes.

use crate::driver::Driver;
use crate::engine::Need;
use crate::environment::site;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::thread;
use std::time::{Duration, Instant};

/// Keys without a letter, as WebDriver numbers them.
const SHIFT: char = '\u{e008}';
const CONTROL: char = '\u{e009}';
const TAB: char = '\u{e004}';
const ENTER: char = '\u{e007}';
const DOWN: char = '\u{e015}';

/// How long a page may take for what takes it a blink.
const PATIENCE: Duration = Duration::from_secs(10);

/// In front of every script: what a script of a test may call.
const HELPERS: &str = r#"
const form = document.querySelector("form[data-saltwright]");
const all = (selector) => [...document.querySelectorAll(selector)];
const seen = (element) => element.checkVisibility({ visibilityProperty: true });
const field = (name) => all("input[name], select[name]").filter((e) => e.name === name);
const value = (name) => {
  const [first, ...more] = field(name);
  return more.length ? ([first, ...more].find((e) => e.checked)?.value ?? "") : first?.value;
};
const values = () => { const { at, paper, ...typed } = Object.fromEntries(new FormData(form)); return typed; };
"#;

/// A page in a browser of its own.
pub struct Session {
    driver: Driver,
}

/// Lets `act` use the page at an address, and holds the page to what holds always: the browser has
/// no complaint, and nothing was asked of anybody but that page and the `files` it names.
pub fn visit(address: &str, files: &[&str], act: impl FnOnce(&Session)) {
    let session = Session::start();
    session.open(address);
    act(&session);
    let page = address.split('#').next().unwrap_or(address);
    let mut expected: BTreeSet<_> = files.iter().copied().chain([page]).map(String::from).collect();
    if page.starts_with("file:") && !session.can(Need::FileWatch, "the console") {
        // What it asks of anybody but the disk is seen all the same.
        expected.remove(page);
    } else {
        let complaints = session.driver.complaints();
        assert!(complaints.is_empty(), "on the console: {complaints:#?}");
    }
    assert_eq!(session.asked(), expected, "what was asked for");
}

/// What a served page asks its own address for besides itself.
const OWN: [&str; 4] =
    ["offline.js", "saltwright.webmanifest", "saltwright.fr.webmanifest", "saltwright.es.webmanifest"];

/// A file of the page's own address, by its name.
fn own(address: &str) -> &str {
    address.strip_prefix(&site()).unwrap_or_default()
}

impl Session {
    /// In a browser of its own, at a desk.
    pub fn start() -> Self {
        let session = Self { driver: Driver::start() };
        session.resize(1366, 768);
        session
    }

    /// Every address that was asked for since it was last told, but for the page's own worker and manifest, which a
    /// browser may ask for when it likes.
    pub fn asked(&self) -> BTreeSet<String> {
        self.driver.requests().into_iter().filter(|address| !OWN.contains(&own(address))).collect()
    }

    /// Can this be judged here? If not, the test says so in its output.
    pub fn can(&self, need: Need, what: &str) -> bool {
        self.driver.engine.can(need, what)
    }

    /// The window in front.
    pub fn window(&self) -> String {
        self.driver.ask("window").as_str().expect("a window has a handle").into()
    }

    /// A new tab, and in front.
    pub fn new_tab(&self) -> String {
        let tab = self.driver.command("window/new", json!({ "type": "tab" }));
        let handle = tab["handle"].as_str().expect("a tab has a handle").to_string();
        self.to_window(&handle);
        self.resize(1366, 768);
        handle
    }

    /// Brings a window to the front.
    pub fn to_window(&self, handle: &str) {
        self.driver.command("window", json!({ "handle": handle }));
    }

    /// Goes to an address.
    pub fn go(&self, address: &str) {
        self.driver.command("url", json!({ "url": address }));
    }

    /// Goes to an address and waits until the page answers.
    pub fn open(&self, address: &str) {
        self.go(address);
        self.wait("return all('[data-when=\"!ready\"]').every((e) => e.hidden)");
    }

    pub fn reload(&self) {
        self.driver.reload();
        self.wait("return all('[data-when=\"!ready\"]').every((e) => e.hidden)");
    }

    pub fn go_back(&self) {
        self.driver.command("back", json!({}));
    }

    /// A viewport of this size, a telephone's where it is narrow.
    pub fn resize(&self, width: u32, height: u32) {
        self.driver.resize(width, height);
    }

    /// How the page would look on paper.
    pub fn as_paper(&self) {
        self.driver.as_paper();
    }

    /// A PDF on paper of this size in centimetres.
    pub fn print(&self, width: f64, height: f64) -> Vec<u8> {
        self.driver.print(width, height)
    }

    /// What follows is about the first frame of the page.
    pub fn enter_frame(&self) {
        self.driver.command("frame", json!({ "id": 0 }));
    }

    /// What follows is about the page that holds the frame.
    pub fn leave_frame(&self) {
        self.driver.command("frame", json!({ "id": null }));
    }

    /// A command to Chromium's inspector, and what it replies.
    pub fn inspect(&self, command: &str, params: Value) -> Value {
        self.driver.inspect(command, params)
    }

    /// What a script returns. It reads; all that is done to a page is done by keys and clicks.
    pub fn ask(&self, script: &str) -> Value {
        let script = format!("{HELPERS}\nreturn (async () => {{ {script} }})()");
        self.driver.run(&script)
    }

    pub fn text(&self, script: &str) -> String {
        match self.ask(script) {
            Value::String(text) => text.replace('\u{a0}', " "),
            other => panic!("{script}: {other} is no text"),
        }
    }

    pub fn holds(&self, script: &str) -> bool {
        self.ask(script).as_bool().unwrap_or_else(|| panic!("{script}: neither true nor false"))
    }

    pub fn wait(&self, script: &str) {
        let start = Instant::now();
        while !self.holds(script) {
            assert!(
                start.elapsed() < PATIENCE,
                "waited in vain for {script}; on the console: {:#?}",
                self.driver.complaints()
            );
            thread::sleep(Duration::from_millis(20));
        }
    }

    /// Presses one key after the other, wherever the focus is. `\t` is Tab, `\n` Enter.
    pub fn press(&self, keys: &str) {
        let named = keys.chars().map(|c| match c {
            '\t' => TAB,
            '\n' => ENTER,
            c => c,
        });
        self.keys(named.flat_map(|key| [("keyDown", key), ("keyUp", key)]).collect());
    }

    pub fn press_back(&self) {
        self.keys(vec![("keyDown", SHIFT), ("keyDown", TAB), ("keyUp", TAB), ("keyUp", SHIFT)]);
    }

    fn keys(&self, moves: Vec<(&str, char)>) {
        let moves: Vec<_> = moves.iter().map(|(kind, key)| json!({ "type": kind, "value": key })).collect();
        let keyboard = json!({ "type": "key", "id": "keys", "actions": moves });
        self.driver.command("actions", json!({ "actions": [keyboard] }));
    }

    /// A click of the mouse in the middle of the element.
    pub fn click(&self, selector: &str) {
        let found = self.driver.command("element", json!({ "using": "css selector", "value": selector }));
        let id = found.as_object().and_then(|e| e.values().next()).and_then(Value::as_str);
        self.driver.command(&format!("element/{}/click", id.expect("an element has an id")), json!({}));
    }

    /// A tap on what a thumb has first brought to the middle, from under what is fixed.
    pub fn tap(&self, selector: &str) {
        self.ask(&format!("all({selector:?})[0].scrollIntoView({{ block: 'center' }})"));
        self.click(selector);
    }

    /// A press of the mouse that lasts 150 ms, in the middle of where the element was when it began.
    pub fn press_slowly(&self, selector: &str) {
        let middle = self.ask(&format!(
            "all({selector:?})[0].scrollIntoView({{ block: 'center' }});
            const r = all({selector:?})[0].getBoundingClientRect();
            return [r.x + r.width / 2, r.y + r.height / 2].map(Math.round)"
        ));
        let mouse = json!({ "type": "pointer", "id": "mouse", "actions": [
            { "type": "pointerMove", "x": middle[0], "y": middle[1] },
            { "type": "pointerDown", "button": 0 },
            { "type": "pause", "duration": 150 },
            { "type": "pointerUp", "button": 0 },
        ] });
        self.driver.command("actions", json!({ "actions": [mouse] }));
    }

    /// Goes on by Tab until the field of this name has the focus; opens the part it is folded into.
    pub fn tab_to(&self, name: &str) {
        self.tab_on_to(&format!(":is(input, select, textarea)[name={name:?}]"));
    }

    /// Goes on by Tab until such an element has the focus.
    pub fn tab_on_to(&self, selector: &str) {
        let there = format!("return document.activeElement.matches({selector:?})");
        for _ in 0..400 {
            if self.holds(&there) {
                return;
            }
            self.unfold(selector);
            self.step_on(selector);
            self.driver.round_the_end();
            self.press("\t");
        }
        panic!("the Tab key does not get to {selector}");
    }

    /// Presses the button for the next part of the page, if it has the focus and the goal is not in this one.
    fn step_on(&self, selector: &str) {
        let on = format!(
            "return document.activeElement.matches('[data-act=next]')
                && all({selector:?})[0]?.closest('[data-part]')?.checkVisibility() === false"
        );
        if self.holds(&on) {
            self.press("\n");
        }
    }

    /// Leaves a field for the next question: its own unit list is not yet that.
    pub fn leave(&self, field: &str) {
        self.press("\t");
        if self.holds(&format!("return document.activeElement.name === {:?}", format!("{field}.unit"))) {
            self.press("\t");
        }
    }

    /// Goes back by Shift and Tab to a field that was just left; what stands there is then selected.
    pub fn back_to(&self, field: &str) {
        for _ in 0..3 {
            self.press_back();
            if self.holds(&format!("return document.activeElement.name === {field:?}")) {
                return;
            }
        }
        panic!("Shift and Tab do not get back to {field}");
    }

    /// Types over all that stands in the field with the focus, without leaving it.
    pub fn retype(&self, text: &str) {
        self.keys(vec![("keyDown", CONTROL), ("keyDown", 'a'), ("keyUp", 'a'), ("keyUp", CONTROL)]);
        self.press(text);
    }

    /// Opens the folded part whose title has the focus, if there is such a thing in it.
    pub fn unfold(&self, selector: &str) {
        let title = format!(
            "const at = document.activeElement, fold = at.parentElement;
            return at.tagName === 'SUMMARY' && !fold.open && !!fold.querySelector({selector:?})"
        );
        if self.holds(&title) {
            self.press("\n");
        }
    }

    /// Fills fields one after the other by keys alone, as a person does who reads down the page.
    pub fn fill(&self, rows: &[(&str, &str)]) {
        for (name, text) in rows {
            self.tab_to(name);
            match self.text("return document.activeElement.type").as_str() {
                "select-one" => self.choose(text),
                "radio" => self.mark(text),
                _ => self.press(text),
            }
            let typed = self.text(&format!("return value({name:?})"));
            assert_eq!(&typed, text, "what stands in {name} after it was typed");
        }
    }

    /// Chooses in the list that has the focus by typing the answer's first word, and from there by arrow keys:
    /// a space opens the list in WebKit.
    fn choose(&self, code: &str) {
        let option = format!("[...document.activeElement.options].find((o) => o.value === {code:?})");
        let text = self.text(&format!("return {option}.text"));
        let letters = text.chars().take_while(|&letter| letter != ' ');
        for key in letters.chain([DOWN; 10]) {
            if self.holds(&format!("return document.activeElement.value === {code:?}")) {
                return;
            }
            self.press(&key.to_string());
        }
    }

    /// Chooses in the group of radio buttons that has the focus by arrow keys.
    fn mark(&self, code: &str) {
        self.press(" ");
        for _ in 0..10 {
            if self.holds(&format!("return document.activeElement.value === {code:?}")) {
                return;
            }
            self.press(&DOWN.to_string());
        }
    }

    /// Opens one of the page's own examples.
    pub fn open_example(&self, link: &str) {
        self.click(&format!("summary:has(+ * {link})"));
        self.click(link);
    }

    /// Chooses which sheet is printed; its button would open the browser's own window as well.
    pub fn choose_paper(&self, sheet: &str) {
        let there = format!(
            "const paper = all(`[data-act=print][value={sheet}]`).length && field('paper').find((e) => e.value === {sheet:?});
            if (paper) paper.checked = true;
            return !!paper"
        );
        assert!(self.holds(&there), "no button prints the {sheet}");
    }

    /// From now on, every page that is opened takes this for the time: a moment of the browser's own zone.
    pub fn set_clock(&self, moment: &str) {
        let clock = format!("{{ const set = Date.parse({moment:?}); Date.now = () => set; }}");
        self.before_every_page(&clock);
    }

    /// A script that runs in every page opened from now on, before the page's own.
    pub fn before_every_page(&self, script: &str) {
        self.driver.before_every_page(script);
        // A worker would bring its copy of before where the answer is slow.
        self.ask("if (origin !== 'null') for (const name of await caches.keys()) await caches.delete(name)");
    }

    /// The text of an output. It may stand in several places; they must agree.
    pub fn output(&self, name: &str) -> String {
        let script = format!(
            "return [...new Set(all('output').filter((o) => o.name === {name:?}).map((o) => o.textContent))]
                .join(' and also ')"
        );
        self.text(&script)
    }

    pub fn expect(&self, outputs: &[(&str, &str)]) {
        for (name, text) in outputs {
            assert_eq!(&self.output(name), text, "{name}");
        }
    }

    /// Is something seen that waits for this state, among others or alone?
    pub fn says(&self, state: &str) -> bool {
        self.holds(&format!("return all('[data-when~={state:?}]').some(seen)"))
    }
}
