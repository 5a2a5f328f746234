//! Does the form take what people type, by keys alone?

use crate::environment::{setting, site};
use crate::fixtures;
use crate::session::{Session, visit};

#[test]
fn the_demo_in_us_units() {
    visit(&site(), &[], |page| {
        page.fill(fixtures::US);
        page.expect(fixtures::US_ANSWER);
        assert!(page.says("ready.open"));
    });
}

#[test]
fn the_demo_in_metric_units() {
    visit(&site(), &[], |page| {
        page.fill(fixtures::METRIC);
        page.expect(fixtures::METRIC_ANSWER);
        assert!(page.says("ready.open"));
    });
}

#[test]
fn the_same_file_from_disk() {
    visit(&format!("file://{}/index.html", setting("SALTWRIGHT_SITE")), &[], |page| {
        page.fill(fixtures::US);
        page.expect(fixtures::US_ANSWER);
        assert!(page.says("ready.open"));
    });
}

/// Where the focus is: place in the document, name, and whether something fixed lies over it. Not every
/// browser has scrolled there by the time it is asked; half a second is for that.
const FOCUS: &str = "
    const at = document.activeElement;
    const fixed = all('body *').find((e) => getComputedStyle(e).position === 'fixed' && seen(e));
    const free = () => {
        const r = at.getBoundingClientRect();
        const bottom = fixed ? fixed.getBoundingClientRect().top : innerHeight;
        return fixed?.contains(at) || r.top >= 0 && r.bottom <= bottom;
    };
    for (let n = 0; n < 25 && at !== document.body && !free(); n += 1) await new Promise((on) => setTimeout(on, 20));
    return [all('*').indexOf(at), at.name || at.id || at.textContent.trim(), free(), at === document.body];";

/// Has the button for the next part the focus, and is there one?
const MORE: &str = "return document.activeElement.matches('[data-act=next]') && !field('at').at(-1).checked";
const LAST: &str = "return field('at').at(-1).checked";

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
            assert!(step < 500, "the Tab key does not get to the end: {met:?}");
            page.press("\t");
            let focus = page.ask(FOCUS);
            let place = focus[0].as_u64().unwrap();
            // Not every engine has buttons of its own on the way from the last part round to the page's head.
            let round = || place < last && met.contains(&focus[1]) && page.holds(LAST);
            if focus[3] == true || place == 0 || met.first() == Some(&focus[1]) || round() {
                break;
            }
            if place == last {
                continue; // A date has places of its own within it.
            }
            assert!(place > last, "{} comes before what had the focus before it", focus[1]);
            assert_eq!(focus[2], true, "{} has the focus, unseen", focus[1]);
            page.unfold("*");
            last = place;
            met.push(focus[1].clone());
            if page.holds(MORE) {
                page.press("\n"); // The next part has the focus at its heading.
                last = 0;
            }
        }
        // What is asked only of some, such as a meter's conductivity, is not there for all.
        let names = page.ask(
            "return [...new Set(all('input[name], select[name]')
                .filter((e) => !e.closest('[hidden]') && e.type !== 'hidden').map((e) => e.name))]",
        );
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

/// What 16,596 of each unit asks for: × 3.785411784, 1 and 4.54609 L × 2.8 g/L ÷ 0.994, in pounds.
const MEANT: [(&str, &str); 3] = [("L", "103.1 lb"), ("[gal_br]", "468.5 lb"), ("[gal_us]", "390.1 lb")];

#[test]
fn a_unit_changes_what_a_figure_means_and_never_the_figure() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::US)), &[], |page| {
        for (unit, mass) in MEANT {
            page.fill(&[("pool.volume.unit", unit)]);
            assert_eq!(page.text("return value('pool.volume')"), "16596", "{unit}");
            page.expect(&[("basic.mass", mass)]);
            page.press("\t");
        }
    });
}

/// What each choice shows of the metric demo: 177.0 kg ÷ 0.45359237 = 390.1 lb.
const SHOWN: [(&str, &str); 3] = [("us", "390.1 lb"), ("metric", "177 kg"), ("as-typed", "177 kg")];

#[test]
fn the_units_of_results_never_touch_a_field() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::METRIC)), &[], |page| {
        let fields = "const typed = values(); delete typed.show; return typed";
        let before = page.ask(fields);
        for (choice, mass) in SHOWN {
            page.click(&format!("[name='show'][value='{choice}']"));
            page.expect(&[("basic.mass", mass)]);
            assert_eq!(page.ask(fields), before, "{choice}");
        }
    });
}

/// All that a quote takes.
const QUOTE: [(&str, &str); 9] = [
    ("view", "counter"),
    ("pool.volume", "16596"),
    ("pool.volume.unit", "[gal_us]"),
    ("pool.method", "taped"),
    ("salt.now", "400"),
    ("salt.method", "meter"),
    ("salt.target", "3200"),
    ("bag.size", "40"),
    ("bag.size.unit", "[lb_av]"),
];

#[test]
fn a_counter_quotes_from_an_empty_page_in_nine_fields() {
    visit(&site(), &[], |page| {
        page.fill(&QUOTE);
        page.expect(&[("basic.mass", "390.1 lb"), ("basic.bags", "9.75"), ("buy.bags", "10")]);
        page.back_to("bag.size");
        page.press("\n");
        assert!(page.holds("return document.activeElement.id === 'sheet-t'"));
        page.tab_on_to("[data-act=print][value=slip]");
    });
}

/// Presses a line's own button for the moment.
fn now(page: &Session, line: u32) {
    page.tab_on_to(&format!("[data-act=now][value=\"log.{line}.when\"]"));
    page.press("\n");
}

#[test]
fn an_owner_works_over_two_days_on_a_telephone() {
    visit(&format!("{}#sw1&{}", site(), fixtures::READY), &[], |page| {
        page.resize(360, 740);
        page.set_clock("2027-05-21T09:00");
        page.reload();
        page.fill(fixtures::US);
        page.expect(fixtures::US_ANSWER);
        page.fill(&[("log.1.kind", "salt"), ("log.1.mass", "6"), ("log.1.mass.unit", "{bag}")]);
        now(page, 1);
        page.expect(&[("in.all", "240 lb")]);
        page.wait("return all('[data-when=\"kept.yes\"]').some((e) => !e.hidden)");
        page.set_clock("2027-05-22T09:05");
        page.reload();
        page.fill(&[("log.2.kind", "test"), ("log.2.salt", "2150"), ("log.2.method", "meter")]);
        now(page, 2);
        page.expect(&[("stage.bags", "3"), ("stage.mass", "120 lb")]);
    });
}

#[test]
fn an_educator_has_an_exercise_solved_and_its_answers_listed() {
    visit(&format!("{}first-salt.html", site()), &[], |page| {
        page.tab_to("try.basic.rise");
        // 85 m³ × 3,250 ppm ÷ 1,000 = 276.25 kg; ÷ 0.982 = 281.3 kg; ÷ 20 = 14.07 bags.
        page.press("3250\t276.25\t281.3\t15\n");
        assert!(page.says("try.basic-mass.right") && page.says("try.basic-bags.off"));
        page.retype("14.07\n");
        assert!(page.says("try.basic-bags.right"));
        page.wait("return document.querySelector('#one [data-when=\"!held\"]').hidden === false");
        page.tab_on_to("#one [data-act=answers]");
        page.press("\n");
        page.wait("return all('#one tbody tr').length === 30");
        page.press("\t");
        assert!(
            page.holds("return document.activeElement.matches('#one .scroll-x')"),
            "what rolls is reached"
        );
    });
}
