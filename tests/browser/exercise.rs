//! Does question mode hold back what it must in a browser, does a lock hold, and does a number fill its exercise?

use crate::embed::{example, script_file};
use crate::environment::site;
use crate::fixtures;
use crate::host_page::{page, script};
use crate::session::visit;

#[test]
fn a_numbered_exercise_is_found_step_by_step() {
    visit(&example("form"), &[&script_file()], |page| {
        page.click("[name='variant']");
        page.press("7\t");
        // Number 7 stands in `tests/ask.rs` too: it is a promise.
        let figures = "return all('[data-range]').map((e) => e.value).join(' ')";
        assert_eq!(page.text(figures), "65.0 400 3500");
        assert!(page.holds("return all('[data-range]').every((e) => e.readOnly)"));
        page.expect(&[("basic.rise", "–"), ("basic.mass", "–")]);
        assert!(page.says("held") || page.holds("return all('[data-when=\"!held\"]')[0].hidden"));
        // 3,500 − 400 = 3,100 ppm; 65 m³ × 3,100 ÷ 1,000 ÷ 0.994 = 202.7 kg, one percent allowed.
        page.click("[name='try.basic.rise']");
        page.press("3200\t203\t");
        page.click("[data-act=check]");
        assert!(
            page.says("try.basic-rise.off")
                && page.says("try.basic-mass.right")
                && page.says("try.first.basic-rise")
        );
        page.expect(&[("basic.mass", "–"), ("basic.rise", "–")]);
        page.click("[name='try.basic.rise']");
        page.retype("3,100");
        assert!(!page.says("try.basic-rise.off"), "a new attempt is not marked before it is checked");
        page.click("[data-act=check]");
        page.expect(&[("basic.rise", "3,100 ppm"), ("basic.mass", "202.7 kg")]);
        // Another number is another exercise.
        page.click("[name='variant']");
        page.retype("8");
        page.expect(&[("basic.rise", "–"), ("basic.mass", "–")]);
        page.click("summary");
        page.click("[data-act=answers]");
        let row = |number: usize| {
            format!("return all('tbody tr')[{}].innerText.split(/\\s*\\t\\s*/).join('|')", number - 1)
        };
        assert_eq!(page.text(&row(7)), "7|65 m³, 400 ppm, 3,500 ppm|3,100 ppm, 202.7 kg");
        assert_eq!(page.text("return String(all('tbody tr').length)"), "30");
    });
}

/// The main page under the terms of a link: asked, locked, revealed on paper alone.
#[test]
fn a_link_asks_locks_and_its_answers_print_apart() {
    let link = format!("{}#{}&ask=basic.mass&lock=salt.now,show", site(), fixtures::link(fixtures::US));
    visit(&link, &[], |page| {
        page.expect(&[("basic.mass", "–"), ("buy.bags", "–"), ("stage.left", "–")]);
        assert!(page.holds("return field('salt.now')[0].readOnly"));
        page.ask("window.print = () => { window.printed = document.querySelector('#paper-answers output[name=\"basic.mass\"]').textContent }");
        page.ask("all('[data-act=print][value=class]')[0].click()");
        assert_eq!(page.text("return window.printed"), "–", "the class sheet holds back");
        page.ask("all('[data-act=print][value=answers]')[0].click()");
        assert!(
            page.text("return window.printed").starts_with("390.1"),
            "the answers are a sheet of their own"
        );
        page.ask("window.dispatchEvent(new Event('afterprint'))");
        page.expect(&[("basic.mass", "–")]);
        page.ask("all('a[href^=\"#sw1&\"]')[0].click()");
        page.expect(&[("basic.mass", "390.1 lb")]);
        assert!(page.holds("return !field('salt.now')[0].readOnly"), "another link, other terms");
    });
}

#[test]
fn what_is_locked_stays_so() {
    visit(&example("form"), &[&script_file()], |page| {
        let figures = "return all('[data-range]').map((e) => e.value + e.readOnly).join(' ')";
        let begun = page.text(figures);
        assert_eq!(begun, "50true 400true 3200true");
        page.click("[name='variant']");
        page.press("7");
        assert_eq!(page.text(figures), "65.0true 400true 3500true");
        // A number that is none has no figures, and says so.
        page.retype("12345\t");
        page.wait("return all('[data-fault=variant]')[0].innerText === 'At most 9999.'");
        assert_eq!(page.text(figures), "true true true");
        page.click("[name='variant']");
        page.retype("\u{e003}");
        assert_eq!(page.text(figures), begun);
        // Enter in an attempt checks it.
        page.click("[name='try.basic.rise']");
        page.press("2800\n");
        assert!(page.says("try.basic-rise.right"));
    });
    let link = format!(
        "{}#sw1&salt.when=2026-01-01T08:00&lock=salt.when,link.job&link.job=yes&only=pool,salt,sheet",
        site()
    );
    visit(&link, &[], |page| {
        page.ask("all('[data-act=now][value=\"salt.when\"]')[0].click(); field('link.job')[0].click()");
        assert_eq!(page.text("return value('salt.when')"), "2026-01-01T08:00");
        assert!(page.holds("return field('link.job')[0].checked"));
        let parts = "return String(new Set(all('input[name=at]').filter((e) => !e.closest('label').hidden).map((e) => e.value)).size)";
        assert_eq!(page.text(parts), "3");
        page.ask("all('a[href^=\"#sw1&\"]')[0].click()");
        assert_eq!(page.text(parts), "11", "another link, other terms: every part has its way again");
    });
}

/// Which jobs a device keeps is nobody's business; what a part brings is neither checked nor revealed by it.
#[test]
fn nothing_slips_out_with_the_event() {
    let html = "
        <form data-saltwright=1 lang=en id=a data-keep>
        <input name=job.name value=Smith><input name=variant><input name=pool.volume value=50 data-range='40 90 2.5'>
        <input type=hidden name=pool.volume.unit value=m3><input type=hidden name=pool.method value=taped>
        <input type=hidden name=salt.now value=400><input type=hidden name=salt.now.unit value='[ppm]'><input type=hidden name=salt.method value=meter>
        <input type=hidden name=salt.target value=3200><input type=hidden name=bag.size value=20><input type=hidden name=bag.size.unit value=kg>
        <input type=hidden name=bag.purity value=99.4><input name=try.basic.mass value=1><output name=basic.mass>–</output>
        <ul><template data-each=jobs><li><output name=called></output></li></template></ul>
        <button data-act=check>Check</button><button type=button data-act=reveal>Reveal</button></form>";
    visit(&page(html), &[&script()], |page| {
        page.wait("return !!window.attach && all('output')[0].textContent === '–'");
        let told = page.ask(
            "const told = [];
            form.addEventListener('saltwright:answer', (e) => told.push(e.detail));
            const desk = attach(form), frame = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
            desk.set({ 'ask.reveal': 'yes', 'pool.volume': '60' }); await frame();
            await new Promise((done) => setTimeout(done, 700)); // kept by now
            desk.set({ 'pool.volume': '61' }); await frame();
            const held = all('output')[0].textContent;
            form.querySelector('[data-act=check]').click(); form.querySelector('[data-act=reveal]').click(); await frame();
            const revealed = all('output')[0].textContent;
            desk.set({ variant: '7' }); await frame();
            return { held, revealed, after: all('output')[0].textContent, jobs: told.map((a) => a.rows.jobs).filter((j) => j), count: told.length }",
        );
        assert_eq!((&told["held"], &told["after"]), (&"–".into(), &"–".into()), "{told}");
        assert!(told["revealed"].as_str().unwrap().starts_with("171.8"), "{told}");
        assert_eq!(told["jobs"], serde_json::json!([]));
        assert!(told["count"].as_u64().unwrap() > 2);
    });
}
