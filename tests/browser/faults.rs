//! Is what cannot be used said beside it, once it is left, and never before?

use crate::environment::site;
use crate::fixtures;
use crate::session::{Session, visit};
use std::thread;
use std::time::Duration;

/// A text that cannot be used, the code of its fault, what is no longer known, and what still is.
struct Fault {
    field: &'static str,
    bad: &'static str,
    good: &'static str,
    code: &'static str,
    gone: &'static [&'static str],
}

const DOSE: &[&str] = &["basic.mass", "basic.bags", "buy.bags", "stage.mass", "index.same"];
const INDEX: &[&str] = &["index.now", "index.same", "index.free"];
const BOTH: &[&str] = &["basic.mass", "buy.bags", "stage.mass", "index.now", "index.same", "index.free"];

#[rustfmt::skip]
const FAULTS: [Fault; 9] = [
    Fault { field: "pool.volume", bad: "about 60", good: "62.82", code: "not-a-number", gone: &["basic.mass", "buy.bags", "stage.mass"] },
    Fault { field: "pool.volume", bad: "62 m3", good: "62.82", code: "unit-in-text", gone: &["basic.mass", "buy.bags", "stage.mass"] },
    Fault { field: "salt.now", bad: "4..00", good: "400", code: "not-a-number", gone: BOTH },
    Fault { field: "salt.target", bad: "3.200", good: "3200", code: "two-readings", gone: DOSE },
    Fault { field: "bag.size", bad: "-20", good: "20", code: "low", gone: &["basic.bags", "buy.bags", "stage.mass"] },
    Fault { field: "bag.on-hand", bad: "1.5", good: "0", code: "not-whole", gone: &["buy.bags"] },
    Fault { field: "water.ph", bad: "75", good: "7.5", code: "high", gone: INDEX },
    Fault { field: "water.temperature", bad: "240", good: "24", code: "high", gone: INDEX },
    Fault { field: "water.ta", bad: "110?", good: "110", code: "not-a-number", gone: INDEX },
];

/// Outputs with their texts, echoes of the field itself aside.
const OUTPUTS: &str = "return Object.fromEntries(all('#sheet output').map((o) => [o.name, o.textContent]))";

#[test]
fn a_bad_figure_is_said_beside_it_and_takes_along_only_what_hangs_on_it() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::METRIC)), &[], |page| {
        for Fault { field, bad, good, code, gone } in FAULTS {
            page.tab_to(field);
            page.press(good);
            let before = page.ask(OUTPUTS);
            let message = || message(page, field);
            let invalid = || page.holds(&format!("return field({field:?})[0].ariaInvalid === 'true'"));
            assert_eq!(message(), "", "{field} before");

            page.leave(field);
            page.back_to(field);
            page.press(bad);
            page.leave(field);
            let said = said(page, field);
            assert!(is_about(page, &said, code), "about {bad} in {field}, for {code}: {said}");
            assert!(invalid(), "{field}: {bad}");
            assert_eq!(page.text(&format!("return value({field:?})")), bad);
            let after = page.ask(OUTPUTS);
            for name in gone {
                assert_eq!(after[name], "–", "{name}, with {bad} in {field}");
            }
            for name in ["index.now", "basic.mass"].iter().filter(|name| !gone.contains(name)) {
                assert_eq!(after[name], before[name], "{name}, with {bad} in {field}");
                assert_ne!(after[name], "–", "{name}, with {bad} in {field}");
            }

            page.back_to(field);
            page.press(good);
            assert_eq!((message().as_str(), invalid()), ("", false), "{field} mended");
            assert_eq!(page.ask(OUTPUTS), before, "{field} mended");
            page.leave(field);
        }
    });
}

/// Longer than a page waits from leaving a field to showing what is wrong with it.
const A_WHILE: Duration = Duration::from_millis(500);

/// Nothing is said about a field, not even after a while.
fn silent(page: &Session, field: &str, when: &str) {
    thread::sleep(A_WHILE);
    assert_eq!(message(page, field), "", "{field} {when}");
}

#[test]
fn nothing_is_said_about_a_figure_while_it_is_typed() {
    visit(&site(), &[], |page| {
        page.tab_to("salt.now");
        for (visit, text) in [("the first time", "x4"), ("gone back to", "400"), ("once more", "x4")] {
            page.press(text);
            silent(page, "salt.now", visit);
            page.press("\t");
            silent(page, "salt.now", &format!("{visit}, while its unit is chosen"));
            page.back_to("salt.now");
            page.leave("salt.now");
            if text == "400" {
                silent(page, "salt.now", &format!("{visit}, when left"));
            } else {
                said(page, "salt.now");
                // Once said, it goes as soon as it is mended.
                page.back_to("salt.now");
                page.press("400");
                assert_eq!(message(page, "salt.now"), "", "{visit}, when mended");
                page.leave("salt.now");
            }
            page.back_to("salt.now");
        }
    });
}

#[test]
fn a_number_is_not_at_fault_while_its_unit_is_chosen() {
    visit(&site(), &[], |page| {
        page.tab_to("pool.volume");
        page.press("62.82\t");
        silent(page, "pool.volume", "while its unit is chosen");
        page.press("\t");
        assert!(is_about(page, &said(page, "pool.volume"), "no-unit"));
        page.back_to("pool.volume");
        page.fill(&[("pool.volume.unit", "m3")]);
        assert_eq!(message(page, "pool.volume"), "");
    });
}

#[test]
fn a_message_that_stands_is_followed_key_by_key_and_no_other_comes_or_goes() {
    visit(&site(), &[], |page| {
        page.tab_to("bag.size");
        page.press("x");
        page.leave("bag.size");
        let first = said(page, "bag.size");

        page.tab_to("water.ph");
        page.press("7?");
        silent(page, "water.ph", "while typed");
        assert_eq!(message(page, "bag.size"), first, "while another figure is typed");
        page.leave("water.ph");
        assert!(is_about(page, &said(page, "water.ph"), "not-a-number"));

        page.back_to("water.ph");
        for (text, code) in [("-2", "low"), ("?", "not-a-number"), ("-3", "low")] {
            page.retype(text);
            let said = message(page, "water.ph");
            assert!(is_about(page, &said, code), "about {text}, for {code}: {said}");
        }
        page.retype("7.5");
        assert_eq!(message(page, "water.ph"), "", "mended");
        page.retype("75");
        silent(page, "water.ph", "once mended and spoilt again, while typed");
        page.leave("water.ph");
        said(page, "water.ph");
        assert_eq!(message(page, "bag.size"), first);
    });
}

/// What is listed as still needed, by the names of its states.
fn needed(page: &Session) -> String {
    page.text("return all('#sheet .head .needs li').filter((e) => seen(e) && e.dataset.when.startsWith('need.')).map((e) => e.dataset.when).join(' ')")
}

const FIRST_NEEDS: &str = "need.pool-volume need.salt-now need.salt-method need.bag-size \
    need.water-temperature need.water-ph need.water-ta need.water-ch need.water-cya";

#[test]
fn what_is_needed_is_listed_from_the_start_and_so_is_a_figure_at_fault() {
    visit(&site(), &[], |page| {
        assert_eq!(needed(page), FIRST_NEEDS);
        let leads = "return all('#sheet .needs a').filter(seen).every((a) =>
            field(a.closest('li').dataset.when.slice(5).replace('-', '.'))[0] === document.querySelector(a.hash))";
        assert!(page.holds(leads), "a need that does not lead to its field");
        page.fill(fixtures::US);
        assert_eq!(needed(page), "");
        assert!(!page.says("need"));
        page.tab_to("show");
        for (field, need) in [("water.ph", "need.water-ph"), ("bag.purity", "need.bag-purity")] {
            while page.holds(&format!("return document.activeElement.name !== {field:?}")) {
                page.press_back();
            }
            page.press("x");
            assert_eq!(needed(page), need);
            page.retype("7.5");
            assert_eq!(needed(page), if field == "water.ph" { "" } else { need }, "{field} mended");
        }
    });
}

/// What is said about a field, once it is.
fn said(page: &Session, field: &str) -> String {
    for _ in 0..40 {
        let said = message(page, field);
        if !said.is_empty() {
            return said;
        }
        thread::sleep(Duration::from_millis(50));
    }
    panic!("no word about {field}");
}

/// What is seen to be said about a field, beside it.
fn message(page: &Session, field: &str) -> String {
    page.text(&format!(
        "const places = field({field:?})[0].getAttribute('aria-describedby').split(' ');
        const faults = places.map((id) => document.getElementById(id))
            .filter((e) => e.matches('[data-fault]') || e.querySelector('[data-fault]'));
        return faults.filter(seen).map((e) => e.innerText).join(' ').trim()"
    ))
}

/// Has a message all the words of the page's template for a code?
fn is_about(page: &Session, said: &str, code: &str) -> bool {
    page.holds(&format!(
        "const template = all('template').find((t) => t.dataset.fault === {:?});
        const said = {said:?}.replace(/\\s+/g, ' ');
        return [...template.content.childNodes].filter((n) => n.nodeType === 3)
            .every((n) => said.includes(n.data.trim().replace(/\\s+/g, ' ')))",
        format!("*:{code}"),
    ))
}

#[test]
fn a_figure_with_two_readings_is_asked_about() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::METRIC)), &[], |page| {
        page.tab_to("salt.target");
        page.press("3.200\t");
        let said = said(page, "salt.target");
        assert!(said.contains("3.200") && said.contains("3,200 ppm"), "{said}");
        assert_eq!(page.text("return value('salt.target')"), "3.200");
    });
}
