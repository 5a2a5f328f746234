//! Is the page the same after a day, a million answers and ten thousand saves?
//!
//! In one tab each. Before memory is told, the browser throws away what nobody holds; what is then left at each quarter
//! is compared with what was left after a warm-up. `cargo xtask prove life` runs these, in Chromium alone.

use crate::environment::site;
use crate::fixtures::{US, link};
use crate::host_page;
use crate::session::Session;
use serde_json::{Value, json};
use std::thread;
use std::time::{Duration, Instant};

const ANSWERS: u32 = 1_000_000;
const ANSWERS_AT_THE_DESK: u32 = 100_000;
const SAVES: u32 = 10_000;
const ATTACHED: u32 = 10_000;
/// What a stretch may leave behind and still count as flat: the browser's own tables and its compiler's code.
const SLACK_BYTES: f64 = 256.0 * 1024.0;
const SLACK_NODES: f64 = 20.0;

/// Keeps hold of the wasm's memory, and of a clock that the test moves.
const WATCH: &str = "
    for (const way of ['instantiate', 'instantiateStreaming']) {
        const load = WebAssembly[way];
        WebAssembly[way] = async (...all) => {
            const done = await load.apply(WebAssembly, all);
            window.memory = done.instance.exports.memory;
            return done;
        };
    }
    const real = Date.now;
    window.ahead = 0;
    Date.now = () => real() + Math.floor(ahead);
    window.steps = 0;
    // So many steps of `act`, with a rest for the page after each few; `steps` says how far it is, `stuck` why no farther.
    window.walk = async (count, act) => {
        window.done = false;
        try {
            for (let n = 0; n < count; n++) {
                act(steps++);
                if (n % 20 === 19) await new Promise((rest) => setTimeout(rest));
            }
        } catch (fault) {
            window.stuck = String(fault);
        }
        await new Promise((rest) => setTimeout(rest, 1200));
        window.done = true;
    };";

/// Bytes of wasm and of scripts, nodes and listeners.
#[derive(Clone, Copy)]
struct Held([f64; 4]);

const HELD: [&str; 4] = ["wasm", "scripts", "nodes", "listeners"];

impl Held {
    fn now(page: &Session) -> Self {
        let number = |value: &Value| value.as_f64().expect("a number");
        // What is let go of by a clean-up is thrown away by the next.
        for _ in 0..3 {
            collect(page);
        }
        let heap = page.inspect("Runtime.getHeapUsage", json!({}));
        let page_has = page.inspect("Memory.getDOMCounters", json!({}));
        Self([
            number(&page.ask("return memory.buffer.byteLength")),
            number(&heap["usedSize"]),
            number(&page_has["nodes"]),
            number(&page_has["jsEventListeners"]),
        ])
    }
}

fn collect(page: &Session) {
    page.inspect("HeapProfiler.enable", json!({}));
    page.inspect("HeapProfiler.collectGarbage", json!({}));
    thread::sleep(Duration::from_millis(300));
}

/// Takes so many steps in four quarters after a warm-up of a twentieth, and holds what is left at each against it.
fn flat(page: &Session, what: &str, count: u32, act: &str) {
    page.ask("window.steps = 0");
    // The garbage of a twentieth lies about at a time: how much of it a browser lets come together is its own affair.
    let piece = count / 20;
    let walk = |pieces: u32| {
        for _ in 0..pieces {
            page.ask(&format!("window.walk({piece}, {act})"));
            let start = Instant::now();
            while !page.holds("return done") {
                assert!(start.elapsed() < Duration::from_secs(3600), "{what}: it does not end");
                // Each question of ours leaves 68 bytes in the page.
                thread::sleep(Duration::from_secs(2));
            }
            assert!(page.holds("return !window.stuck"), "{what}: {}", page.ask("return window.stuck"));
            collect(page);
        }
    };
    let start = Instant::now();
    walk(1);
    let before = Held::now(page);
    println!("{what:<28}{:>12}{:>12}{:>8}{:>10}", HELD[0], HELD[1], HELD[2], HELD[3]);
    let tell = |at: u32, held: Held| {
        let [wasm, scripts, nodes, listeners] = held.0;
        println!("{at:<28}{wasm:>12}{scripts:>12}{nodes:>8}{listeners:>10}");
    };
    tell(piece, before);
    let mut last = before;
    for quarter in 1..=4 {
        walk(5);
        last = Held::now(page);
        tell(piece + 5 * quarter * piece, last);
    }
    println!("{:.0} s", start.elapsed().as_secs_f64());
    assert_eq!(page.ask("return steps"), 21 * piece);
    for ((name, slack), (before, last)) in
        HELD.iter().zip([0.0, SLACK_BYTES, SLACK_NODES, SLACK_NODES]).zip(before.0.into_iter().zip(last.0))
    {
        assert!(last - before <= slack, "{what}: {name} grow from {before} to {last}");
    }
}

fn watched() -> Session {
    let page = Session::start();
    page.before_every_page(WATCH);
    page
}

/// Figures below the target, none of them twice in a row.
const FIGURE: &str = "300 + (n * 7919) % 2500";

#[test]
#[ignore = "takes long: cargo xtask prove life"]
fn a_million_answers_to_a_script() {
    let page = watched();
    page.open(&format!("{}#{}", site(), link(US)));
    let form = page.ask("return values()");
    page.go(&host_page::page(""));
    page.wait("return !!window.answer");
    page.ask(&format!("window.given = {form}"));
    let act = format!(
        "(n) => {{ given['salt.now'] = String({FIGURE}); if (!answer(given).outputs['basic.rise']) throw `${{n}}: no rise` }}"
    );
    flat(&page, "answers to a script", ANSWERS, &act);
}

/// A day goes by meanwhile: the page's clock is ours, and each answer comes 0.864 s after the one before.
#[test]
#[ignore = "takes long: cargo xtask prove life"]
fn a_day_at_the_desk() {
    let page = watched();
    page.open(&format!("{}#{}", site(), link(US)));
    let before = page.ask("return Date.now()").as_f64().expect("a time");
    let act = format!(
        "(n) => {{
            ahead += 86_400_000 / {ANSWERS_AT_THE_DESK};
            const f = document.querySelector('[name=\"salt.now\"]');
            f.value = {FIGURE};
            f.dispatchEvent(new Event('input', {{ bubbles: true }}));
        }}"
    );
    flat(&page, "answers at the desk", ANSWERS_AT_THE_DESK, &act);
    let hours = (page.ask("return Date.now()").as_f64().expect("a time") - before) / 3_600_000.0;
    println!("{hours:.1} h of the page's own clock");
    assert!(hours >= 24.0, "only {hours} h");
    assert!(page.says("ready") || page.output("basic.mass") != "–", "it answers still");
}

/// Each by the page being put out of sight, which keeps at once what was typed.
#[test]
#[ignore = "takes long: cargo xtask prove life"]
fn ten_thousand_saves() {
    let page = watched();
    page.open(&format!("{}#{}", site(), link(US)));
    page.ask("window.kept = 0; window.all = () => JSON.stringify({ ...localStorage }); window.then = all()");
    let act = format!(
        "(n) => {{
            const f = document.querySelector('[name=\"salt.now\"]');
            f.value = {FIGURE};
            dispatchEvent(new Event('pagehide'));
            const now = window.all();
            kept += now !== then;
            window.then = now;
        }}"
    );
    flat(&page, "saves", SAVES, &act);
    assert_eq!(page.ask("return kept"), page.ask("return steps"), "each of them is in the store");
    let keys = page.ask("return Object.keys({ ...localStorage }).length");
    println!("{keys} keys in the store");
    let typed = page.text("return value('salt.now')");
    page.reload();
    assert_eq!(page.text("return value('salt.now')"), typed, "the last one comes back");
}

#[test]
#[ignore = "takes long: cargo xtask prove life"]
fn a_form_attached_and_let_go() {
    let page = watched();
    let form = "<form data-saltwright=1 lang=en><input name=pool.volume value=50>
        <input type=hidden name=pool.volume.unit value=m3><p data-fault=pool.volume></p>
        <output name=echo.pool.volume>–</output><template data-say><output name=basic.mass></output></template></form>";
    page.go(&host_page::page(form));
    page.wait("return !!window.attach && value('pool.volume') === '50'");
    let act = "() => { const d = attach(document.querySelector('form')); d.form(); d.detach() }";
    flat(&page, "forms attached and let go", ATTACHED, act);
}
