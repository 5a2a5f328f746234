//! A job over days, walked on the page: salt in, a reading, the rest, and what is corrected.

use crate::figures;
use crate::seat::{Seat, site, visit};

/// Types a line of the log, which the page has by now.
fn line(page: &Seat, n: usize, rows: &[(&str, &str)]) {
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
        page.open(&format!("{}#{}", site(), figures::link(figures::US)));
        assert!(page.says("ready.open"));
        page.expect(&[("now.bags", "6"), ("buy.bags", "10"), ("buy.low", "9"), ("buy.high", "11")]);
        assert!(page.holds("return all('#days fieldset.line').length === 1"), "one blank line to begin with");

        line(page, 1, &[("kind", "dose"), ("mass", "6")]);
        page.expect(&[("now.mass", "–")]); // Not finished: no amount is told.
        line(page, 1, &[("mass.unit", "{bag}"), ("when", "2027-05-21T09:00")]);
        assert!(page.says("stage.in") && page.says("add.wait"), "in: brush and wait");
        page.expect(&[("in.all", "240 lb"), ("echo.log.1.mass.also", "240.0 lb")]);
        assert!(page.output("clock.power").contains("23 May 2027"), "{}", page.output("clock.power"));
        assert!(page.holds("return all('#days fieldset.line').length === 2"), "always one more");

        line(
            page,
            2,
            &[("kind", "reading"), ("salt", "2150"), ("how", "meter"), ("when", "2027-05-22T09:00")],
        );
        page.expect(&[
            ("now.bags", "3"),
            ("now.mass", "120 lb"),
            ("sums.proportion", "144 lb"),
            ("sums.volume", "146.3 lb"),
        ]);
        assert!(page.says("do.add-finish") && page.says("ready.open"));

        line(
            page,
            3,
            &[("kind", "dose"), ("mass", "3"), ("mass.unit", "{bag}"), ("when", "2027-05-22T15:00")],
        );
        assert!(page.says("stage.in"));
        assert!(page.output("clock.power").contains("24 May 2027, 15:00"), "{}", page.output("clock.power"));

        // Nothing is lost by a reload, and a line corrected changes all that follows.
        page.reload();
        assert!(page.says("do.add-finish") && page.says("stage.in"));
        line(page, 2, &[("salt", "1400")]);
        assert!(page.says("do.reads-low") && page.says("add.wait"));
        page.expect(&[("now.mass", "–"), ("found.volume", "–")]);
        line(page, 2, &[("kind", "struck")]);
        // Without that reading nine bags went in where six were told.
        assert!(page.says("stage.over") && page.says("add.wait"));
    });
}

/// The clock counts elapsed hours: over a change of the clocks the time shown moves.
#[test]
fn forty_eight_hours_are_hours_whatever_the_clocks_do() {
    visit(&site(), &[], |page| {
        page.open(&format!("{}#{}", site(), figures::link(figures::US)));
        line(
            page,
            1,
            &[("kind", "dose"), ("mass", "6"), ("mass.unit", "{bag}"), ("when", "2027-03-27T12:00")],
        );
        let shift = page.ask(
            "const at = (text) => new Date(text).getTimezoneOffset();
            return (at('2027-03-27T12:00') - at('2027-03-29T13:00')) / 60",
        );
        let hour = 12 + shift.as_f64().unwrap() as i64;
        let shown = page.output("clock.power");
        assert!(shown.contains("29 Mar") && shown.contains(&format!("{hour}:00")), "{shown}, shift {shift}");
    });
}

#[test]
fn which_measurement_pays_is_worked_out_when_it_is_opened() {
    visit(&site(), &[], |page| {
        page.open(&format!("{}#{}", site(), figures::link(figures::US)));
        page.expect(&[("pays.today", "–")]);
        page.click("[data-ask=pays] > summary");
        page.wait("return document.querySelector('output[name=\"pays.today\"]').textContent !== '–'");
    });
}
