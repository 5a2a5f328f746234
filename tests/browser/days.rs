//! A job over days, walked on the page: salt in, a reading, the rest, and what is corrected.

use crate::environment::site;
use crate::fixtures;
use crate::session::{Session, visit};

/// Types a line of the log, which the page has by now.
fn line(page: &Session, n: usize, rows: &[(&str, &str)]) {
    for (name, text) in rows {
        let name = format!("log.{n}.{name}");
        let set = format!(
            "const field = document.querySelector('[name=\"{name}\"]');
            field.focus(); field.value = {text:?};
            for (const kind of ['input', 'change']) field.dispatchEvent(new Event(kind, {{ bubbles: true }}));
            return true"
        );
        assert!(page.holds(&set), "{name}");
    }
}

#[test]
fn the_demo_from_the_first_bag_to_the_last() {
    visit(&site(), &[], |page| {
        page.open(&format!("{}#{}", site(), fixtures::link(fixtures::US)));
        assert!(page.says("ready.open"));
        page.expect(&[("stage.bags", "6"), ("buy.bags", "10"), ("buy.low", "9"), ("buy.high", "11")]);
        assert!(page.holds("return all('#days fieldset.line').length === 1"), "one blank line to begin with");

        line(page, 1, &[("kind", "salt"), ("mass", "6")]);
        page.expect(&[("stage.mass", "–")]); // Not finished: no amount is told.
        line(page, 1, &[("mass.unit", "{bag}"), ("when", "2027-05-21T09:00")]);
        assert!(page.says("stage.in") && page.says("add.wait"), "in: brush and wait");
        page.expect(&[("in.all", "240 lb"), ("echo.log.1.mass.also", "240.0 lb")]);
        assert!(page.output("clock.power").contains("May 23, 2027"), "{}", page.output("clock.power"));
        assert!(page.holds("return all('#days fieldset.line').length === 2"), "always one more");

        line(
            page,
            2,
            &[("kind", "test"), ("salt", "2150"), ("method", "meter"), ("when", "2027-05-22T09:00")],
        );
        page.expect(&[
            ("stage.bags", "3"),
            ("stage.mass", "120 lb"),
            ("sums.proportion", "144 lb"),
            ("sums.volume", "146.3 lb"),
        ]);
        assert!(page.says("do.add-finish") && page.says("ready.open"));

        line(
            page,
            3,
            &[("kind", "salt"), ("mass", "3"), ("mass.unit", "{bag}"), ("when", "2027-05-22T15:00")],
        );
        assert!(page.says("stage.in"));
        assert!(
            page.output("clock.power").contains("May 24, 2027, 3:00 PM"),
            "{}",
            page.output("clock.power")
        );

        // Nothing is lost by a reload, and a line corrected changes all that follows.
        page.reload();
        assert!(page.says("do.add-finish") && page.says("stage.in"));
        line(page, 2, &[("salt", "1400")]);
        assert!(page.says("do.reads-low") && page.says("add.wait"));
        page.expect(&[("stage.mass", "–"), ("estimate.volume", "–")]);
        line(page, 2, &[("kind", "ignored")]);
        // Without that reading nine bags went in where six were told.
        assert!(page.says("stage.over") && page.says("add.wait"));
    });
}

/// The clock counts elapsed hours: over a change of the clocks the time shown moves.
#[test]
fn forty_eight_hours_are_hours_whatever_the_clocks_do() {
    visit(&site(), &[], |page| {
        page.open(&format!("{}#{}", site(), fixtures::link(fixtures::US)));
        line(
            page,
            1,
            &[("kind", "salt"), ("mass", "6"), ("mass.unit", "{bag}"), ("when", "2027-03-27T12:00")],
        );
        let shift = page.ask(
            "const at = (text) => new Date(text).getTimezoneOffset();
            return (at('2027-03-27T12:00') - at('2027-03-29T13:00')) / 60",
        );
        let hour = ["11:00 AM", "12:00 PM", "1:00 PM"][(1.0 + shift.as_f64().unwrap()) as usize];
        let shown = page.output("clock.power");
        assert!(shown.contains("Mar 29") && shown.contains(hour), "{shown}, shift {shift}");
    });
}

#[test]
fn which_measurement_pays_is_worked_out_when_it_is_opened() {
    visit(&site(), &[], |page| {
        page.open(&format!("{}#{}", site(), fixtures::link(fixtures::US)));
        page.expect(&[("value.today", "–")]);
        page.click("[data-ask=value] > summary");
        page.wait("return document.querySelector('output[name=\"value.today\"]').textContent !== '–'");
    });
}

/// An owner's days, each with its own clock and a page opened anew; what is seen first on the sheet.
#[test]
fn an_owner_from_the_first_look_to_the_first_week() {
    visit(&format!("{}#{}&{}", site(), fixtures::link(fixtures::US), fixtures::READY), &[], |page| {
        page.resize(360, 740);
        let day = |clock: &str, lines: &[(usize, &[(&str, &str)])], holds: &[&str], next: &str| {
            page.wait("return all('[data-when=\"kept.yes\"]').some((e) => !e.hidden)");
            page.set_clock(clock);
            page.reload();
            for (n, rows) in lines {
                line(page, *n, rows);
            }
            page.ask("field('at').find((e) => e.value === 'sheet').click()");
            for state in holds {
                let there =
                    format!("return all('[data-when~={state:?}]').some((e) => !e.closest('[hidden]'))");
                assert!(page.holds(&there), "{state} on {clock}");
            }
            assert!(page.output("next.when").starts_with(next), "{clock}: {}", page.output("next.when"));
        };
        day("2027-05-20T18:00", &[], &["add.yes"], "–");
        let first: &[_] =
            &[("kind", "salt"), ("mass", "6"), ("mass.unit", "{bag}"), ("when", "2027-05-21T09:00")];
        day(
            "2027-05-21T10:00",
            &[(1, first)],
            &["add.wait", "next.brush", "stage.in"],
            "May 21, 2027, 1:00 PM",
        );
        let read: &[_] =
            &[("kind", "test"), ("salt", "2150"), ("method", "meter"), ("when", "2027-05-22T09:05")];
        day("2027-05-22T09:04", &[], &["next.read", "next.due"], "May 22, 2027, 9:00 AM");
        day("2027-05-22T09:10", &[(2, read)], &["add.yes", "do.add-finish"], "May 22, 2027, 9:10 AM");
        let rest: &[_] =
            &[("kind", "salt"), ("mass", "3"), ("mass.unit", "{bag}"), ("when", "2027-05-22T15:00")];
        day(
            "2027-05-22T15:10",
            &[(3, rest)],
            &["add.wait", "power.wait", "gate.clock.wait"],
            "May 22, 2027, 7:00 PM",
        );
        let last: &[_] =
            &[("kind", "test"), ("salt", "3150"), ("method", "meter"), ("when", "2027-05-24T12:05")];
        day(
            "2027-05-24T12:10",
            &[(4, last)],
            &["add.none", "power.wait", "do.stop"],
            "May 24, 2027, 1:00 PM",
        );
        page.ask(
            "for (const [name, value] of [['salt.undissolved', 'none'], ['ready.electrical', 'electrician']])
                field(name).find((e) => e.value === value).click()",
        );
        page.wait(
            "return Object.values(localStorage).some((text) => text.includes('salt.undissolved=none'))",
        );
        day("2027-05-24T15:20", &[], &["power.yes", "next.power", "next.due"], "May 24, 2027, 3:00 PM");
        page.ask("field('at').find((e) => e.value === 'days').click()");
        page.tap("[data-act='now'][value='power.when']");
        page.wait("return Object.values(localStorage).some((text) => text.includes('power.when'))");
        day("2027-05-25T15:30", &[], &["next.test", "next.due"], "May 25, 2027, 3:20 PM");
        day("2027-05-31T08:00", &[], &["next.week"], "May 31, 2027, 3:20 PM");
    });
}
