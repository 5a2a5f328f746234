//! Can everyone use the page: does a checker of access find nothing, is what a screen reader is told what it was, and
//! is an answer spoken once?
//!
//! The checker is axe-core, which `cargo xtask prove access` brings: `SALTWRIGHT_AXE` is its file. The tree of a filled
//! page stands in `access-tree.txt`; `SALTWRIGHT_WRITE=1` writes it anew.

use crate::embed::{example, script_file};
use crate::engine::Need;
use crate::environment::{setting, site};
use crate::fixtures::{METRIC, READY, TOO_MUCH, US, link};
use crate::session::{Session, visit};
use evidence::site::{LESSONS, SHEETS};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fs;
use std::thread;
use std::time::Duration;

/// Of `prefers-color-scheme`, `forced-colors` and `prefers-contrast`.
const LOOKS: [(&str, [&str; 3]); 4] = [
    ("light", ["light", "none", "no-preference"]),
    ("dark", ["dark", "none", "no-preference"]),
    ("forced colours", ["light", "active", "no-preference"]),
    ("more contrast", ["dark", "none", "more"]),
];
const VIEWS: [&str; 3] = ["counter", "owner", "class"];

/// What the checker said in all.
#[derive(Default)]
struct Told {
    runs: usize,
    findings: Vec<String>,
    /// What it left open, by rule and reason.
    unsure: BTreeMap<String, usize>,
}

impl Told {
    fn look(&mut self, page: &Session, of: &str, look: &(&str, [&str; 3])) {
        let (look, [scheme, forced, contrast]) = look;
        let media = json!({ "features": [
            { "name": "prefers-color-scheme", "value": scheme },
            { "name": "forced-colors", "value": forced },
            { "name": "prefers-contrast", "value": contrast },
        ] });
        page.inspect("Emulation.setEmulatedMedia", media);
        let found = page.ask(
            &format!("{CONTRAST}
            const {{ violations, incomplete }} = await axe.run(document, {{ resultTypes: ['violations', 'incomplete'] }});
            const all = (rules) => rules.flatMap((rule) => rule.nodes.map((node) => ({{ rule: rule.id, node }})));
            const faint = ({{ rule, node }}) => rule === 'color-contrast' && contrast(document.querySelector(node.target[0])) < 4.5;
            const told = ({{ rule, node }}) => `${{rule}}: ${{node.target}} ${{node.html.slice(0, 90)}}`;
            const open = all(incomplete);
            return [
                [...all(violations), ...open.filter(faint)].map(told),
                open.map(({{ rule, node }}) => `${{rule}}, ${{node.any[0]?.data?.messageKey}}`),
            ]"),
        );
        self.runs += 1;
        let list = |n: usize| found[n].as_array().expect("a list").iter().filter_map(Value::as_str);
        self.findings.extend(list(0).map(|finding| format!("{of}, {look}: {finding}")));
        list(1).for_each(|rule| *self.unsure.entry(rule.into()).or_default() += 1);
    }
}

/// How a text stands out from what is painted behind it, by WCAG's formula: for the elements that the checker leaves
/// open, such as those under what is fixed. All our grounds are of one colour.
const CONTRAST: &str = "
    const parts = (colour) => colour.match(/[\\d.]+/g).map(Number);
    const light = (colour) => parts(colour).slice(0, 3).map((part) => part / 255)
        .map((part) => part <= .04045 ? part / 12.92 : ((part + .055) / 1.055) ** 2.4)
        .reduce((sum, part, n) => sum + part * [.2126, .7152, .0722][n], 0);
    const ground = (element) => {
        for (let e = element; e; e = e.parentElement) {
            const { backgroundColor } = getComputedStyle(e);
            if (parts(backgroundColor)[3] !== 0) return backgroundColor;
        }
        return 'rgb(255, 255, 255)';
    };
    const contrast = (element) => {
        const [dim, bright] = [getComputedStyle(element).color, ground(element)].map(light).sort((a, b) => a - b);
        return (bright + .05) / (dim + .05);
    };";

/// Brings the checker to a page; by the inspector, since the page's policy lets no script in.
fn bring(page: &Session) {
    let script = fs::read_to_string(setting("SALTWRIGHT_AXE")).expect("axe-core is a file");
    page.inspect("Runtime.evaluate", json!({ "expression": script }));
    assert!(page.holds("return typeof axe === 'object'"));
}

fn choose(page: &Session, view: &str) {
    page.ask(&format!("field('view').find((e) => e.value === '{view}').click()"));
}

fn unfold(page: &Session) {
    page.ask("all('details').forEach((e) => { e.open = true })");
}

/// Every language in every view in every look, folded; then all unfolded, on a telephone as well; then each state.
#[test]
#[ignore = "cargo xtask prove access"]
fn the_checker_finds_nothing() {
    let mut told = Told::default();
    for (_, name) in SHEETS {
        visit(&format!("{}{name}#{}&{READY}", site(), link(US)), &[], |page| {
            bring(page);
            for view in VIEWS {
                choose(page, view);
                LOOKS.iter().for_each(|look| told.look(page, &format!("{name}, {view}"), look));
            }
            unfold(page);
            LOOKS[..2].iter().for_each(|look| told.look(page, &format!("{name}, all unfolded"), look));
            choose(page, "owner");
            page.resize(320, 640);
            let parts = page.text("return field('at').map((e) => e.value).join()");
            for (n, part) in parts.split(',').enumerate() {
                page.ask(&format!("field('at').find((e) => e.value === '{part}').click()"));
                unfold(page);
                told.look(page, &format!("{name}, 320 pixels, {part}"), &LOOKS[n % 2]);
            }
        });
    }
    let second_day = "log.1.kind=salt&log.1.mass=6&log.1.mass.unit=%7Bbag%7D&log.1.when=2027-05-22T09:00\
        &log.2.kind=test&log.2.salt=2150&log.2.method=meter&log.2.when=2027-05-23T10:00";
    for (state, form) in [
        ("empty", String::new()),
        ("at fault", "#sw1&pool.volume=-3&water.ph=75&salt.now=a%20lot&salt.low=4000".into()),
        ("metric", format!("#{}&show=metric", link(METRIC))),
        ("second day", format!("#{}&{READY}&{second_day}", link(US))),
        ("asked and locked", format!("#{}&ask=basic.mass,buy.bags&lock=salt.now,show&view=class", link(US))),
    ] {
        for (_, name) in SHEETS {
            let looks = if name == SHEETS[0].1 { &LOOKS[..] } else { &LOOKS[..2] };
            visit(&format!("{}{name}{form}", site()), &[], |page| {
                bring(page);
                looks.iter().for_each(|look| told.look(page, &format!("{name}, {state}"), look));
            });
        }
    }
    visit(&site(), &[], |page| {
        page.open_example(TOO_MUCH);
        bring(page);
        LOOKS.iter().for_each(|look| told.look(page, "too much salt", look));
    });
    for name in LESSONS.map(|(_, name)| name).into_iter().chain(["examples/own.html"]) {
        visit(&format!("{}{name}", site()), &[], |page| {
            bring(page);
            unfold(page);
            LOOKS.iter().for_each(|look| told.look(page, name, look));
        });
    }
    for name in ["form", "script"] {
        visit(&example(name), &[&script_file()], |page| {
            bring(page);
            unfold(page);
            page.ask("all('[data-act=answers]').forEach((e) => e.click())");
            LOOKS.iter().for_each(|look| told.look(page, name, look));
        });
    }
    println!(
        "axe-core: {} runs, {} findings; left open, and contrasts then worked out: {:?}",
        told.runs,
        told.findings.len(),
        told.unsure
    );
    assert!(told.findings.is_empty(), "{}", told.findings.join("\n"));
}

/// The roles that stand in the published list of them, as a browser's tree spells those; its own are in capitals.
fn is_published(role: &str) -> bool {
    role.starts_with(|c: char| c.is_ascii_lowercase()) && !["generic", "none", "paragraph"].contains(&role)
}

/// One line a node, the deeper the further in: role, name, value, states; of a result also its text.
fn tree(nodes: &[Value]) -> String {
    let by_id: BTreeMap<&str, &Value> =
        nodes.iter().filter_map(|node| Some((node["nodeId"].as_str()?, node))).collect();
    let mut lines = String::new();
    write(&by_id, &nodes[0], 0, false, &mut lines);
    lines
}

fn write(all: &BTreeMap<&str, &Value>, node: &Value, depth: usize, result: bool, lines: &mut String) {
    let text = |of: &str| node[of]["value"].as_str().unwrap_or_default().replace(['\n', '\u{a0}'], " ");
    let role = text("role");
    let told = node["ignored"] != true && (is_published(&role) || result && role == "StaticText");
    if told {
        *lines += &format!("{:depth$}{role} {:?}", "", text("name"), depth = 2 * depth);
        if !text("value").is_empty() {
            *lines += &format!(" = {:?}", text("value"));
        }
        for state in node["properties"].as_array().into_iter().flatten() {
            let name = state["name"].as_str().unwrap_or_default();
            let value = state["value"]["value"].to_string().replace('"', "");
            if ["checked", "disabled", "expanded", "invalid", "readonly", "required"].contains(&name)
                && value != "false"
            {
                *lines += &format!(" {name}={value}");
            }
        }
        lines.push('\n');
    }
    let result = result || role == "status";
    for child in node["childIds"].as_array().into_iter().flatten() {
        if let Some(child) = child.as_str().and_then(|id| all.get(id)) {
            write(all, child, depth + usize::from(told), result, lines);
        }
    }
}

/// The demo on a day that is set.
#[test]
fn a_screen_reader_is_told_what_it_was() {
    let stored = concat!(env!("CARGO_MANIFEST_DIR"), "/browser/access-tree.txt");
    let page = Session::start();
    if !page.can(Need::Tree, "all of it") {
        return;
    }
    page.set_clock("2027-05-21T09:00");
    page.open(&format!("{}#{}&{READY}&view=counter", site(), link(US)));
    // The status is spoken, and its text there, once the answer has settled.
    page.wait("return all('[role=status]').some((e) => e.textContent.trim())");
    let nodes = page.inspect("Accessibility.getFullAXTree", json!({}))["nodes"].clone();
    let now = tree(nodes.as_array().expect("a list"));
    assert!(
        now.contains("term \"Whole bags to buy\"") && now.contains("StaticText \"10\""),
        "the tree of a filled page:\n{now}"
    );
    if std::env::var_os("SALTWRIGHT_WRITE").is_some() {
        fs::write(stored, &now).expect("written");
    }
    let was = fs::read_to_string(stored).expect("a stored tree");
    let gone = was.lines().filter(|line| !now.lines().any(|l| l == *line)).map(|line| format!("- {line}"));
    let come = now.lines().filter(|line| !was.lines().any(|l| l == *line)).map(|line| format!("+ {line}"));
    let apart: Vec<_> = gone.chain(come).collect();
    assert!(now == was, "{}\n(SALTWRIGHT_WRITE=1 writes it anew)", apart.join("\n"));
}

/// Whatever is spoken, from now on.
const LISTEN: &str = "
    window.spoken = [];
    const region = all('p[role=status]')[0];
    const hear = (changes) => changes.forEach(() => spoken.push(region.textContent.trim()));
    new MutationObserver(hear).observe(region, { childList: true, characterData: true, subtree: true })";

/// Longer than a page rests before it speaks.
const A_REST: Duration = Duration::from_millis(1_800);

#[test]
fn the_status_speaks_once_of_each_settled_answer() {
    visit(&format!("{}#{}&view=counter", site(), link(US)), &[], |page| {
        page.wait("return all('p[role=status]').some((e) => e.textContent.trim())");
        page.ask(LISTEN);
        let spoken = |act: &dyn Fn()| {
            page.ask("spoken.length = 0");
            act();
            thread::sleep(A_REST);
            page.text("return spoken.join('|')")
        };
        let once_with = |said: &str, figure: &str| {
            let words: Vec<_> = said.split_whitespace().map(|word| word.trim_end_matches('.')).collect();
            assert!(!said.contains('|') && words.contains(&figure), "{figure}: {said:?}");
        };
        assert_eq!(spoken(&|| page.tab_to("salt.now")), "", "nothing is new");
        // 16,596 US gal × 2,400 ppm × 0.0000083454 ÷ 0.994 ÷ 40 lb = 8.36 bags.
        once_with(&spoken(&|| page.press("800")), "9");
        assert_eq!(spoken(&|| page.leave("salt.now")), "", "nothing is new");
        page.back_to("salt.now");
        assert_eq!(spoken(&|| page.press("4x0")), "", "while it is typed");
        let said = spoken(&|| page.leave("salt.now"));
        let figures = said.chars().any(|letter| letter.is_ascii_digit());
        assert!(!said.is_empty() && !said.contains('|') && !figures, "of a fault: {said:?}");
        page.back_to("salt.now");
        once_with(&spoken(&|| page.press("400")), "10");
    });
}
