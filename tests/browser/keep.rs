//! Is anything typed ever lost: to a press, a reload, a step back or a link?

use crate::environment::site;
use crate::fixtures::{self, Rows};
use crate::session::{Session, visit};
use std::thread;
use std::time::Duration;

/// What is typed, and what is seen to come of it.
const STATE: &str =
    "return [values(), all('#sheet output').filter(seen).map((o) => `${o.name}: ${o.textContent}`)]";
const ADDRESS: &str = "return location.hash";

/// Texts that are no figures, a choice of each kind, and signs that mean something in an address.
const ODD: Rows = &[
    ("water.history", "older"),
    ("bag.on-hand", "about 2 & 3+4=7, 5 %#é"),
    ("fill.salt", "120"),
    ("show", "metric"),
];

#[test]
fn cleared_figures_can_be_put_back() {
    visit(&site(), &[], |page| {
        let blank = page.ask(STATE);
        assert!(!page.says("can.undo"));
        page.fill(fixtures::US);
        page.fill(ODD);
        let typed = page.ask(STATE);

        page.click("[data-act='clear']");
        assert_eq!(page.ask(STATE), blank);
        assert_eq!(page.text("return value('bag.purity')"), "99.4");
        assert_eq!(page.text("return value('salt.now.unit')"), "[ppm]");

        // It waits through whatever is typed next, and swaps that in turn.
        page.fill(&[("pool.volume", "50"), ("pool.volume.unit", "m3")]);
        let since = page.ask(STATE);
        for swapped in [&typed, &since, &typed] {
            assert!(page.says("can.undo"));
            page.click("[data-act='undo']");
            assert_eq!(&page.ask(STATE), swapped);
        }
        assert!(page.says("can.undo"));
    });
}

#[test]
fn a_slow_press_counts_although_a_message_comes() {
    visit(&site(), &[], |page| {
        page.tab_to("water.cya");
        page.press("x");
        let closed = "return !document.querySelector('#fill').open";
        let top =
            "return Math.round(all('#fill > summary')[0].getBoundingClientRect().top + scrollY).toString()";
        let before = page.text(top);
        assert!(page.holds(closed));
        page.press_slowly("#fill > summary");
        assert!(!page.holds(closed), "the press was swallowed");
        page.wait("return field('water.cya')[0].ariaInvalid === 'true'");
        assert_ne!(page.text(top), before, "the message moves nothing here: press elsewhere");
    });
}

#[test]
fn what_is_typed_outlives_a_reload() {
    visit(&site(), &[], |page| {
        let blank = page.ask(STATE);
        assert_eq!(page.text(ADDRESS), "", "of a blank form");
        page.reload();
        assert_eq!((page.text(ADDRESS).as_str(), page.ask(STATE)), ("", blank.clone()), "of a blank form");

        page.fill(fixtures::US);
        page.fill(ODD);
        let typed = page.ask(STATE);
        page.wait("return all('[data-when=\"kept.yes\"]').every((e) => !e.hidden)");
        assert_eq!(page.text(ADDRESS), "", "the store has it, so the address need not");
        page.reload();
        assert_eq!(page.ask(STATE), typed);
        // Elsewhere too: a browser puts back by itself what was typed before a reload.
        page.go("about:blank");
        page.open(&site());
        assert_eq!(page.ask(STATE), typed, "opened anew");

        page.click("[data-act='clear']");
        assert_eq!((page.text(ADDRESS).as_str(), page.ask(STATE)), ("", blank.clone()), "when cleared");
        page.reload();
        assert_eq!((page.text(ADDRESS).as_str(), page.ask(STATE)), ("", blank), "when cleared");
    });
}

/// For whatever the page does about a change of its address.
const A_MOMENT: Duration = Duration::from_millis(200);

/// By the link that a telephone shows at the bottom.
fn go_to_the_sheet(page: &Session) {
    page.resize(360, 740);
    page.click(".summary-bar a");
    page.wait("return Math.abs(all('#sheet')[0].getBoundingClientRect().top) < 100");
    thread::sleep(A_MOMENT);
}

#[test]
fn going_back_never_undoes_what_was_typed_since() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::US)), &[], |page| {
        go_to_the_sheet(page);
        page.resize(1366, 768);
        page.tab_to("bag.on-hand");
        page.press("3");
        let typed = page.ask(STATE);
        page.go_back();
        thread::sleep(A_MOMENT);
        assert_eq!(page.ask(STATE), typed, "going back undid what was typed since");
    });
}

#[test]
fn a_link_within_the_page_keeps_what_is_typed() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::US)), &[], |page| {
        let typed = page.ask(STATE);
        go_to_the_sheet(page);
        page.reload();
        assert_eq!(page.ask(STATE), typed);
    });
}

#[test]
fn a_link_fills_the_form() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::US)), &[], |page| {
        page.expect(fixtures::US_ANSWER);
    });
}

#[test]
fn a_link_takes_decimal_commas() {
    visit(&format!("{}#{}", site(), fixtures::COMMA), &[], |page| page.expect(fixtures::COMMA_ANSWER));
}

/// Parts that name no field: unknown, an output, words a form knows of itself, and broken coding.
const STRANGE: &str = "&no.such=1&pool-volume=9&basic.mass=9&length=3&item=4&namedItem=5&reset=6&submit=7&__proto__=8&constructor=9&=0&&%zz=%zz";

#[test]
fn strange_names_in_a_link_do_no_harm() {
    let address = format!("{}#{}{STRANGE}", site(), fixtures::link(fixtures::US));
    visit(&address, &[], |page| {
        page.expect(fixtures::US_ANSWER);
        // The form still works.
        page.tab_to("salt.now");
        page.press("3200");
        assert!(page.says("standing.within"));
        page.click("[data-act='clear']");
        assert_eq!(page.text("return value('pool.volume')"), "");
    });
}
