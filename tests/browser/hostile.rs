//! Does a text stay a text: on the page, on paper, in a table, a calendar, a job file and a link, whatever it says?

use crate::engine::Need;
use crate::environment::site;
use crate::fixtures;
use crate::host_page::host;
use crate::paper::text_of;
use crate::records::{choose, file};
use crate::session::{Session, visit};
use icalendar::Component;
use serde_json::{Value, json};
use std::collections::BTreeMap;

use evidence::texts::{TEXTS, cell};

/// What a person writes in words of their own.
const WORDS: [&str; 12] = [
    "job.name",
    "job.by",
    "job.note",
    "surface.approval-by",
    "exception.finish-age.who",
    "exception.finish-age.role",
    "exception.clearance.who",
    "exception.clearance.role",
    "exception.warranty.who",
    "exception.warranty.role",
    "exception.code.who",
    "exception.code.role",
];

/// All that has a name, but for days and moments, of whose text the browser keeps none (Chromium says so on the
/// console), and for what chooses a view.
const NAMES: &str = "return [...new Set(all('form [name]:not(output, [type=date], [type=datetime-local])').map((e) => e.name))]
    .filter((name) => !['at', 'view', 'paper', 'show'].includes(name) && !name.includes('N'))";

/// What the page is made of: how many elements of each kind that could do something, and what is shown of a text.
const SEEN: &str = "
    const dark = 'img, svg, script, style, link, meta, base, iframe, object, embed, form, template, a, pre, p';
    const count = {};
    for (const e of all(dark)) if (!e.closest('[data-row], [data-line]')) count[e.localName] = (count[e.localName] ?? 0) + 1;
    const shown = (o) => [o.name, o.textContent];
    return {
        ran: window.ran ?? null,
        count,
        inside: all('output *').length + all('option *').length,
        handlers: all('*').filter((e) => e.getAttributeNames().some((name) => name.startsWith('on'))).length,
        typed: Object.fromEntries(all('form input[type=text]').map((e) => [e.name, e.value])),
        echoes: all('output').filter((o) => o.name.startsWith('echo.')).map(shown),
        got: all('[data-fault] output[name=got]').filter((o) => !o.closest('[hidden]'))
            .map((o) => [o.closest('[data-fault]').dataset.fault.split(':')[0], o.textContent]),
        called: all('.jobs output[name=called]').map((o) => o.textContent),
    }";

fn coded(text: &str) -> String {
    text.bytes().map(|byte| format!("%{byte:02X}")).collect()
}

fn link<'a>(pairs: impl IntoIterator<Item = (&'a str, &'a str)>) -> String {
    pairs.into_iter().map(|(name, text)| format!("&{}={}", coded(name), coded(text))).collect()
}

/// The page is made of the same, and each text that is shown is what was typed.
fn judge(page: &Session, empty: &Value, text: &str) -> Value {
    let seen = page.ask(SEEN);
    assert_eq!(seen["ran"], Value::Null, "{text:?} ran");
    assert_eq!((&seen["inside"], &seen["handlers"]), (&json!(0), &json!(0)), "{text:?} made an element");
    assert_eq!(seen["count"], empty["count"], "{text:?} made an element");
    for (name, shown) in pairs(&seen["echoes"]) {
        if WORDS.contains(&&name["echo.".len()..]) && shown != "–" {
            assert_eq!(shown, bare(&seen["typed"][&name["echo.".len()..]]), "{name}");
        }
    }
    for (name, shown) in pairs(&seen["got"]) {
        assert_eq!(shown, bare(&seen["typed"][&name]), "{name}");
    }
    seen
}

fn pairs(list: &Value) -> Vec<(String, String)> {
    serde_json::from_value(list.clone()).expect("names with texts")
}

/// A text of a field without white space around it.
fn bare(text: &Value) -> &str {
    text.as_str().expect("a text").trim_ascii()
}

/// How a field of one line has a text.
fn in_field(text: &str) -> String {
    text.replace(['\r', '\n'], "")
}

#[test]
fn every_field_takes_any_text_for_a_text() {
    visit(&site(), &[], |page| {
        let empty = page.ask(SEEN);
        let names: Vec<String> = serde_json::from_value(page.ask(NAMES)).unwrap();
        assert!(names.len() > 150, "{names:?}");
        let mut faults = 0;
        for text in TEXTS {
            // By a link, under every name, and under itself for a name.
            let all = names.iter().map(|name| (name.as_str(), text)).chain([(text, text)]);
            page.go("about:blank");
            page.open(&format!("{}#sw1{}&view=class", site(), link(all)));
            let by_link = judge(page, &empty, text);
            for name in WORDS {
                assert_eq!(by_link["typed"][name], in_field(text), "{name}");
            }
            faults += pairs(&by_link["got"]).len();

            // What goes out says the same to other readers.
            let read: Value = serde_json::from_str(&file(page, "save")).unwrap();
            assert_eq!(read["form"][text], text, "a name that nobody knows");
            let typed: BTreeMap<String, String> = serde_json::from_value(by_link["typed"].clone()).unwrap();
            let table = file(page, "csv");
            let mut reader =
                csv::ReaderBuilder::new().from_reader(table.trim_start_matches('\u{feff}').as_bytes());
            let rows: Vec<_> = reader.records().map(|row| row.expect("five cells")).collect();
            for (name, value) in typed.iter().filter(|(_, value)| !value.is_empty()) {
                assert_eq!(read["form"][name], *value, "{name}");
                let found: Vec<_> =
                    rows.iter().filter(|row| row[1] == *name && row[0] == rows[0][0]).collect();
                assert_eq!(found.len(), 1, "{name} in\n{table}");
                assert_eq!(found[0][2], cell(value), "{name}");
            }
            assert!(rows.iter().any(|row| row[1] == cell(text) && row[2] == cell(text)), "{table}");

            // And comes back by either.
            for file in [serde_json::to_string(&read).unwrap(), table] {
                page.ask("all('[data-act=new]')[0].click()");
                choose(page, &file);
                page.wait("return all('[data-when=\"file.open\"]').some((e) => !e.hidden)");
                assert_eq!(judge(page, &empty, text)["typed"], by_link["typed"], "{text:?}");
            }
        }
        assert!(faults > 40 * TEXTS.len(), "{faults} were shown beside their fields");
        // The names of all those jobs stand in their list.
        let called = page.ask(SEEN)["called"].clone();
        let called: Vec<String> = serde_json::from_value(called).unwrap();
        for text in TEXTS {
            assert!(called.iter().any(|name| name == in_field(text).trim_ascii()), "{text:?} in {called:?}");
        }
        // Half a letter, as only a file or a script can have it, is the sign for none.
        choose(page, r#"{"saltwright":1,"form":{"job.name":"a\ud800b\udc00","\udfff":"\ud800"}}"#);
        page.wait("return value('job.name') === 'a\u{fffd}b\u{fffd}'");
        judge(page, &empty, "half a letter");
    });
}

#[test]
fn keys_make_no_element_either() {
    const TYPED: &str = "\"><b>&lt;";
    visit(&site(), &[], |page| {
        let empty = page.ask(SEEN);
        page.click("[name=view][value=class]");
        page.ask("all('details').forEach((e) => { e.open = true })");
        let names: Vec<String> = serde_json::from_value(page.ask(
            "return all('form input[type=text]').filter((e) => e.checkVisibility()).map((e) => e.name)",
        ))
        .unwrap();
        assert!(names.len() > 50, "{names:?}");
        for name in &names {
            page.ask(&format!("const one = field({name:?})[0]; one.focus(); one.select()"));
            page.press(TYPED);
        }
        page.press("\t");
        let seen = judge(page, &empty, TYPED);
        for name in &names {
            assert_eq!(seen["typed"][name], TYPED, "{name}");
        }
        assert!(pairs(&seen["got"]).len() > 40, "{seen:#}");
        page.reload();
        assert_eq!(judge(page, &empty, TYPED)["typed"]["job.note"], TYPED);
    });
}

#[test]
fn a_person_s_words_are_words_on_paper_and_none_in_a_calendar() {
    visit(&site(), &[], |page| {
        let start =
            format!("{}#{}&start.when=2027-05-21T09:00&link.job=yes", site(), fixtures::link(fixtures::US));
        let calendar = |more: &str| -> icalendar::Calendar {
            page.go("about:blank");
            page.open(&format!("{start}{more}"));
            file(page, "calendar").parse().unwrap()
        };
        let plain = calendar("&job.name=a");
        assert!(plain.components.len() > 5);
        let all = TEXTS.join(" | ");
        let made = calendar(&link(WORDS.map(|name| (name, all.as_str()))));
        assert_eq!(made.properties, plain.properties);
        assert_eq!(made.components.len(), plain.components.len());
        let mut address = None;
        for (one, other) in made.components.iter().zip(&plain.components) {
            let [one, other] = [one, other].map(|one| one.as_event().expect("an event"));
            assert!(one.properties().keys().eq(other.properties().keys()), "{one:?}");
            assert_eq!(one.get_summary(), other.get_summary());
            address = one.get_description();
        }
        // The link in it brings the words as they were.
        page.go("about:blank");
        page.open(address.expect("a link"));
        for name in WORDS {
            assert_eq!(page.ask(&format!("return value({name:?})")), json!(in_field(&all)), "{name}");
        }
        // However long they are, they fit.
        page.resize(360, 740);
        assert!(page.holds("return document.documentElement.scrollWidth <= innerWidth"));
        if !page.can(Need::Pdf, "words on paper") {
            return;
        }
        let dense = |text: &str| text.split_whitespace().collect::<String>();
        for (sheet, times) in [("record", 4), ("slip", 1), ("days", 1)] {
            page.choose_paper(sheet);
            let paper = dense(&text_of(&page.print(21.0, 29.7)));
            // Letters that are not seen are no words.
            for text in TEXTS.iter().filter(|text| !text.contains('\0')) {
                let found = paper.matches(&dense(text)).count();
                assert!(found >= times, "{text:?}, {found} times on the {sheet}:\n{paper}");
            }
        }
    });
}

/// Terms of a link that are no terms, and what a host of a frame may send instead of a form.
#[test]
fn odd_terms_and_odd_messages_change_nothing() {
    visit(&site(), &[], |page| {
        let empty = page.ask(SEEN);
        for text in TEXTS {
            let terms = ["lock", "ask", "tell", "can", "view", "at", "paper", "show", "give.only", "variant"];
            page.go("about:blank");
            page.open(&format!(
                "{}#{}{}",
                site(),
                fixtures::link(fixtures::US),
                link(terms.map(|name| (name, text)))
            ));
            judge(page, &empty, text);
            assert_eq!(page.text("return value('pool.volume')"), "16596");
        }
    });
    let html = |origin: &str| {
        format!(
            "<!DOCTYPE html><meta charset=utf-8><link rel=icon href='data:,'><title>Host</title>
            <iframe id=f sandbox='allow-scripts allow-same-origin' src='{}#sw1&pool.volume=50&pool.volume.unit=m3&tell={origin}'></iframe>
            <script nonce=host>
            const f = document.getElementById('f');
            window.heard = [];
            addEventListener('message', (e) => heard.push(e.data));
            window.send = (message) => f.contentWindow.postMessage(message, '*');
            </script>",
            site()
        )
    };
    let policy = format!("default-src 'none'; frame-src {}; img-src data:; script-src 'nonce-host'", site());
    let (_, address) = host(&policy, html);
    visit(&address, &[&site()], |page| {
        page.wait("return heard.some((m) => m.saltwright?.kind === 'answer')");
        let state = "return [location.hash, values(), all('output').map((o) => o.textContent)]";
        page.enter_frame();
        let before = page.ask(state);
        page.leave_frame();
        let sent = page.ask(
            "const round = {}; round.saltwright = round;
            const odd = [undefined, null, true, 7, NaN, 7n, '', 'saltwright', [], {}, new Date(), /a/, new Map([['saltwright', 1]]),
                new Set([1]), new Error('a'), new ArrayBuffer(8), new Uint8Array(8), new Blob(['a']), round];
            const form = (form) => ({ saltwright: { contract: 1, kind: 'set', form } });
            const pairs = [[1], [[]], { 'pool.volume': 7 }, { 'pool.volume': null }, { 'pool.volume': ['7'] }, { 'pool.volume': {} },
                { 'pool.volume': '7', 'salt.now': 7 }, { 'pool.volume': undefined }, { 'pool.volume': new Date() }, 'ab', [['pool.volume', '7']]];
            const all_of_it = [...odd, ...odd.map((saltwright) => ({ saltwright })),
                ...odd.map((kind) => ({ saltwright: { contract: 1, kind, form: { 'pool.volume': '7' } } })),
                ...odd.map(form), ...pairs.map(form),
                ...['Set', 'set ', 'ready', 'answer', 'clear', '__proto__'].map((kind) => ({ saltwright: { kind, form: { 'pool.volume': '7' } } })),
                { form: { 'pool.volume': '7' } }, { kind: 'set', form: { 'pool.volume': '7' } }, JSON.stringify(form({ 'pool.volume': '7' }))];
            for (const message of all_of_it) send(message);
            await new Promise((done) => setTimeout(done, 300));
            return all_of_it.length",
        );
        assert!(sent.as_u64() > Some(80), "{sent}");
        page.enter_frame();
        assert_eq!(page.ask(state), before, "an odd message changed something");
        let empty = page.ask(SEEN);
        // One that is in order still counts, and its words are words.
        for text in TEXTS {
            page.leave_frame();
            page.ask(&format!("send({})", json!({ "saltwright": { "kind": "set", "form": { "pool.volume": "75", "job.name": text, text: text } } })));
            page.enter_frame();
            page.wait(&format!("return value('job.name') === {}", json!(in_field(text))));
            judge(page, &empty, text);
        }
        assert_eq!(page.text("return value('pool.volume')"), "75");
    });
}
