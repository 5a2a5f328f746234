//! Does the form take what people type, by keys alone, and lose nothing of it?

use crate::figures::{self, Rows};
use crate::seat::{Seat, setting, site, visit};
use std::thread;
use std::time::Duration;

#[test]
fn the_demo_in_us_units() {
    visit(&site(), &[], |page| {
        page.fill(figures::US);
        page.expect(figures::US_ANSWER);
        assert!(page.says("add.quote"));
    });
}

#[test]
fn the_demo_in_metric_units() {
    visit(&site(), &[], |page| {
        page.fill(figures::METRIC);
        page.expect(figures::METRIC_ANSWER);
        assert!(page.says("add.quote"));
    });
}

#[test]
fn the_same_file_from_disk() {
    visit(&format!("file://{}/index.html", setting("SALTWRIGHT_SITE")), &[], |page| {
        page.fill(figures::US);
        page.expect(figures::US_ANSWER);
        assert!(page.says("add.quote"));
    });
}

/// Where the focus is: place in the document, name, and whether something fixed lies over it.
const FOCUS: &str = "
    const at = document.activeElement, r = at.getBoundingClientRect();
    const fixed = all('body *').find((e) => getComputedStyle(e).position === 'fixed' && seen(e));
    const bottom = fixed ? fixed.getBoundingClientRect().top : innerHeight;
    const free = fixed?.contains(at) || r.top >= 0 && r.bottom <= bottom;
    return [all('*').indexOf(at), at.name || at.id || at.textContent.trim(), free, at === document.body];";

#[test]
fn the_whole_form_by_keyboard_on_a_telephone() {
    visit(&site(), &[], |page| {
        page.resize(360, 740);
        assert!(
            page.holds(
                "return all('body *').some((e) => getComputedStyle(e).position === 'fixed' && seen(e))"
            )
        );
        let (mut last, mut met) = (0, Vec::new());
        for step in 0.. {
            assert!(step < 200, "the Tab key does not get to the end: {met:?}");
            page.press("\t");
            let focus = page.ask(FOCUS);
            let place = focus[0].as_u64().unwrap();
            if focus[3] == true || place == 0 || met.first() == Some(&focus[1]) {
                break;
            }
            assert!(place > last, "{} comes before what had the focus before it", focus[1]);
            assert_eq!(focus[2], true, "{} has the focus, unseen", focus[1]);
            page.unfold("*");
            last = place;
            met.push(focus[1].clone());
        }
        let names = page.ask("return [...new Set(all('input[name], select[name]').map((e) => e.name))]");
        let missed: Vec<_> = names.as_array().unwrap().iter().filter(|name| !met.contains(name)).collect();
        assert!(missed.is_empty(), "never met: {missed:?}");

        // Back the way we came, the focus is as visible.
        for _ in 0..met.len() {
            page.press_back();
            let focus = page.ask(FOCUS);
            assert!(
                focus[2] == true || focus[3] == true,
                "{} has the focus, unseen, on the way back",
                focus[1]
            );
        }
    });
}

#[test]
fn enter_in_a_field_goes_to_the_sheet() {
    visit(&site(), &[], |page| {
        page.tab_to("salt.now");
        page.press("400\n");
        assert!(page.holds("return '#' + document.activeElement.id === form.getAttribute('action')"));
        assert!(page.holds("return document.activeElement.matches('h2') && seen(document.activeElement)"));
        assert_eq!(page.text("return value('salt.now')"), "400");
    });
}

/// A text that cannot be used, the code of its fault, what is no longer known, and what still is.
struct Fault {
    field: &'static str,
    bad: &'static str,
    good: &'static str,
    code: &'static str,
    gone: &'static [&'static str],
}

const DOSE: &[&str] = &["dose.mass", "dose.bags", "buy.bags", "first.mass", "index.same"];
const INDEX: &[&str] = &["index.now", "index.same", "index.free"];
const BOTH: &[&str] = &["dose.mass", "buy.bags", "first.mass", "index.now", "index.same", "index.free"];

#[rustfmt::skip]
const FAULTS: [Fault; 9] = [
    Fault { field: "pool.volume", bad: "about 60", good: "62.82", code: "not-a-number", gone: &["dose.mass", "buy.bags", "first.mass"] },
    Fault { field: "pool.volume", bad: "62 m3", good: "62.82", code: "unit-in-text", gone: &["dose.mass", "buy.bags", "first.mass"] },
    Fault { field: "salt.now", bad: "4..00", good: "400", code: "not-a-number", gone: BOTH },
    Fault { field: "salt.target", bad: "3.200", good: "3200", code: "two-readings", gone: DOSE },
    Fault { field: "bag.size", bad: "-20", good: "20", code: "low", gone: &["dose.bags", "buy.bags", "first.mass"] },
    Fault { field: "bag.have", bad: "1.5", good: "0", code: "not-whole", gone: &["buy.bags"] },
    Fault { field: "water.ph", bad: "75", good: "7.5", code: "high", gone: INDEX },
    Fault { field: "water.heat", bad: "240", good: "24", code: "high", gone: INDEX },
    Fault { field: "water.ta", bad: "110?", good: "110", code: "not-a-number", gone: INDEX },
];

/// Outputs with their texts, echoes of the field itself aside.
const OUTPUTS: &str = "return Object.fromEntries(all('#sheet output').map((o) => [o.name, o.textContent]))";

#[test]
fn a_bad_figure_is_said_beside_it_and_takes_along_only_what_hangs_on_it() {
    visit(&format!("{}#{}", site(), figures::link(figures::METRIC)), &[], |page| {
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
            for name in ["index.now", "dose.mass"].iter().filter(|name| !gone.contains(name)) {
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

#[test]
fn nothing_is_said_about_a_figure_while_it_is_typed() {
    visit(&site(), &[], |page| {
        page.tab_to("salt.now");
        for (visit, text) in [("the first time", "x4"), ("gone back to", "400"), ("once more", "x4")] {
            page.press(text);
            thread::sleep(A_WHILE);
            assert_eq!(message(page, "salt.now"), "", "{visit}");
            page.press("\t");
            thread::sleep(A_WHILE);
            assert_eq!(message(page, "salt.now"), "", "{visit}, while its unit is chosen");
            page.back_to("salt.now");
            page.leave("salt.now");
            if text == "400" {
                thread::sleep(A_WHILE);
                assert_eq!(message(page, "salt.now"), "", "{visit}, when left");
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

/// What is said about a field, once it is.
fn said(page: &Seat, field: &str) -> String {
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
fn message(page: &Seat, field: &str) -> String {
    page.text(&format!(
        "const places = field({field:?})[0].getAttribute('aria-describedby').split(' ');
        const faults = places.map((id) => document.getElementById(id))
            .filter((e) => e.matches('[data-fault]') || e.querySelector('[data-fault]'));
        return faults.filter(seen).map((e) => e.innerText).join(' ').trim()"
    ))
}

/// Has a message all the words of the page's template for a code?
fn is_about(page: &Seat, said: &str, code: &str) -> bool {
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
    visit(&format!("{}#{}", site(), figures::link(figures::METRIC)), &[], |page| {
        page.tab_to("salt.target");
        page.press("3.200\t");
        let said = said(page, "salt.target");
        assert!(said.contains("3.200") && said.contains("3,200 ppm"), "{said}");
        assert_eq!(page.text("return value('salt.target')"), "3.200");
    });
}

#[test]
fn cleared_figures_can_be_put_back() {
    let odd: Rows = &[("salt.class", "older"), ("bag.have", "about two"), ("fill.salt", "120")];
    visit(&site(), &[], |page| {
        let state = "return [values(), all('#sheet output').filter(seen).map((o) => o.textContent)]";
        let blank = page.ask(state);
        page.fill(figures::US);
        page.fill(odd);
        let typed = page.ask(state);

        page.click("[data-act='clear']");
        assert_eq!(page.ask(state), blank);
        assert_eq!(page.text("return value('bag.purity')"), "99.4");
        assert_eq!(page.text("return value('salt.now.unit')"), "[ppm]");

        page.click("[data-act='undo']");
        assert_eq!(page.ask(state), typed);
        // Pressed again it undoes itself: nothing typed since is lost either.
        page.click("[data-act='undo']");
        assert_eq!(page.ask(state), blank);
    });
}

#[test]
fn what_is_typed_outlives_a_reload_and_going_back() {
    visit(&site(), &[], |page| {
        let state = "return values()";
        page.fill(figures::US);
        let typed = page.ask(state);
        page.reload();
        assert_eq!(page.ask(state), typed);
        page.expect(figures::US_ANSWER);

        page.resize(360, 740);
        page.click(".strip a");
        page.tab_to("bag.have");
        page.press("3");
        let typed = page.ask(state);
        page.go_back();
        assert_eq!(page.ask(state), typed, "going back undid what was typed since");

        page.click("[data-act='clear']");
        assert_eq!(page.text("return location.hash"), "");
    });
}

#[test]
fn a_link_fills_the_form() {
    visit(&format!("{}#{}", site(), figures::link(figures::US)), &[], |page| {
        page.expect(figures::US_ANSWER);
    });
}

#[test]
fn a_link_takes_decimal_commas() {
    visit(&format!("{}#{}", site(), figures::COMMA), &[], |page| page.expect(figures::COMMA_ANSWER));
}

/// Parts that name no field: unknown, an output, words a form knows of itself, and broken coding.
const STRANGE: &str = "&no.such=1&pool-volume=9&dose.mass=9&length=3&item=4&namedItem=5&reset=6&submit=7&__proto__=8&constructor=9&=0&&%zz=%zz";

#[test]
fn strange_names_in_a_link_do_no_harm() {
    let address = format!("{}#{}{STRANGE}", site(), figures::link(figures::US));
    visit(&address, &[], |page| {
        page.expect(figures::US_ANSWER);
        // The form still works.
        page.tab_to("salt.now");
        page.press("3200");
        assert!(page.says("dose.enough"));
        page.click("[data-act='clear']");
        assert_eq!(page.text("return value('pool.volume')"), "");
    });
}

/// What 16,596 of each unit asks for: × 3.785411784, 1 and 4.54609 L × 2.8 g/L ÷ 0.994, in pounds.
const MEANT: [(&str, &str); 3] = [("L", "103.1 lb"), ("[gal_br]", "468.5 lb"), ("[gal_us]", "390.1 lb")];

#[test]
fn a_unit_changes_what_a_figure_means_and_never_the_figure() {
    visit(&format!("{}#{}", site(), figures::link(figures::US)), &[], |page| {
        for (unit, mass) in MEANT {
            page.fill(&[("pool.volume.unit", unit)]);
            assert_eq!(page.text("return value('pool.volume')"), "16596", "{unit}");
            page.expect(&[("dose.mass", mass)]);
            page.press("\t");
        }
    });
}

/// What each choice shows of the metric demo: 177.0 kg ÷ 0.45359237 = 390.1 lb.
const SHOWN: [(&str, &str); 3] = [("us", "390.1 lb"), ("metric", "177 kg"), ("as-typed", "177 kg")];

#[test]
fn the_units_of_results_never_touch_a_field() {
    visit(&format!("{}#{}", site(), figures::link(figures::METRIC)), &[], |page| {
        let fields = "const typed = values(); delete typed.show; return typed";
        let before = page.ask(fields);
        for (choice, mass) in SHOWN {
            page.click(&format!("[name='show'][value='{choice}']"));
            page.expect(&[("dose.mass", mass)]);
            assert_eq!(page.ask(fields), before, "{choice}");
        }
    });
}
