//! Is a closed part out of the document, and does what is typed in it count all the same?

use crate::host_page::{page, script};
use crate::session::{Session, visit};

/// The pool is asked in a part that is closed at first, with presets, a lock and a range in it.
const FORM: &str = "
    <form data-saltwright=1 lang=en id=job data-keep>
    <label>Bag <input name=bag.size value=20></label><input type=hidden name=bag.size.unit value=kg>
    <input type=hidden name=bag.purity value=99.4>
    <input type=hidden name=salt.method value=meter><input type=hidden name=pool.method value=taped>
    <p>Lacks <output name=basic.mass>–</output>.</p>
    <label>Exercise <input name=variant></label>
    <button type=button data-act=expand value=measure>Measure</button>
    <button type=button data-act=expand value=question>Question</button>
    <button type=button data-act=link>Link</button><textarea data-box></textarea>
    <button type=button data-act=clear>Clear</button><button type=button data-act=undo>Undo</button>
    <p data-when=print.old>Printed before</p>
    <template data-part=measure><fieldset id=measure><legend>The pool</legend>
        <label>Water <input name=pool.volume></label><p data-fault=pool.volume></p>
        <input type=hidden name=pool.volume.unit value=m3><output name=echo.pool.volume>–</output>
        <label>Read <input name=salt.now value=400 readonly></label>
        <input type=hidden name=salt.now.unit value='[ppm]'>
        <label>Wanted <input name=salt.target value=3200 data-range='3000 3400 100'></label>
        <label><input type=radio name=show value=as-typed checked>typed</label>
        <label><input type=radio name=show value=us>US</label>
        <button type=button data-act=collapse value=measure>Done</button></fieldset></template>
    QUESTION
    <template data-units><data value=kg>kg</data><data value=m3>m³</data><data value='[lb_av]'>lb</data></template>
    <template data-fault='*:not-a-number'>Not a number: <output name=got></output></template></form>";
const QUESTION: &str = "
    <template data-part=question><fieldset id=question><label>How much? <input name=try.basic.mass></label>
        <p data-when=try.basic-mass.right>Right</p>
        <button type=button data-act=check>Check</button></fieldset></template>";

const MEASURE: &str = "[data-act=expand][value=measure]";
const DONE: &str = "[data-act=collapse]";
/// Everything that a form holds, and what a host's own script sees of it.
const HELD: &str = "return attach(form).form()";
const SEEN: &str = "return Object.fromEntries(new FormData(form))";

fn plain() -> String {
    page(&FORM.replace("QUESTION", ""))
}

fn opened(page: &Session) {
    page.wait("return !!window.attach");
}

/// Opens the pool, says how large it is, and closes it.
fn measured(page: &Session, volume: &str) {
    page.click(MEASURE);
    page.click("[name='pool.volume']");
    page.press(&format!("{volume}\t"));
    page.click(DONE);
}

fn elements(page: &Session) -> u64 {
    page.ask("return document.querySelectorAll('*').length").as_u64().expect("a number")
}

#[test]
fn what_is_typed_in_a_part_counts_when_it_is_closed() {
    visit(&plain(), &[&script()], |page| {
        opened(page);
        let before = elements(page);
        assert!(page.holds("return !document.querySelector('[name=\"pool.volume\"]')"), "closed at first");
        assert_eq!(page.ask(HELD)["salt.now"], "400", "a preset of a closed part");

        page.click(MEASURE);
        assert_eq!(page.text("return all('[aria-expanded=true]').map((e) => e.value).join()"), "measure");
        page.click("[name='pool.volume']");
        page.press("62.82\t");
        page.expect(&[("basic.mass", "177 kg"), ("echo.pool.volume", "62.82 m³")]);
        let open = elements(page);

        page.click(DONE);
        page.expect(&[("basic.mass", "177 kg")]);
        assert_eq!(page.text("return document.activeElement.value"), "measure", "where it can be opened");
        assert_eq!(elements(page), before);
        assert!(open > before + 10, "{open} elements while it is open, {before} closed");
        assert_eq!(page.ask(HELD)["pool.volume"], "62.82");
        assert!(page.ask(SEEN)["pool.volume"].is_null(), "{}", page.ask(SEEN));

        page.ask("attach(form).set({ 'pool.volume': '31.41', show: 'us' })");
        page.expect(&[("basic.mass", "195.1 lb")]);
        page.click(MEASURE);
        assert_eq!(page.text("return value('pool.volume') + value('show')"), "31.41us");
        page.expect(&[("echo.pool.volume", "31.41 m³")]);
        page.click("[value='as-typed']");
        page.expect(&[("basic.mass", "88.5 kg")]);
    });
}

#[test]
fn a_fault_in_a_closed_part_gives_no_number_and_stands_there_when_it_is_opened() {
    visit(&plain(), &[&script()], |page| {
        opened(page);
        measured(page, "x");
        page.expect(&[("basic.mass", "–")]);
        page.click(MEASURE);
        page.wait("return all('[data-fault=\"pool.volume\"]')[0].innerText === 'Not a number: x'");
    });
}

#[test]
fn a_kept_job_a_link_and_a_step_back_carry_a_closed_part() {
    visit(&plain(), &[&script()], |page| {
        opened(page);
        measured(page, "62.82");
        page.click("[data-act=link]");
        let link = page.text("return all('textarea')[0].value");
        assert!(link.contains("pool.volume=62.82"), "{link}");
        page.click("[data-act=clear]");
        page.expect(&[("basic.mass", "–")]);
        assert_eq!(page.ask(HELD)["salt.now"], "400", "cleared to what the page begins with");
        page.click("[data-act=undo]");
        page.expect(&[("basic.mass", "177 kg")]);
        page.reload();
        opened(page);
        page.wait("return all('output')[0].textContent.startsWith('177')");
        assert!(page.holds("return !document.querySelector('[name=\"pool.volume\"]')"), "closed at first");

        assert!(
            page.holds("return !Object.keys(localStorage).some((key) => key.includes('..'))"),
            "no job without a name"
        );
        page.ask("attach(form).detach(); localStorage.clear()");
        page.go("about:blank");
        page.open(&link);
        page.wait("return all('output')[0].textContent.startsWith('177')");
        page.click(MEASURE);
        assert_eq!(page.text("return value('pool.volume')"), "62.82");
    });
}

#[test]
fn what_was_printed_is_no_older_for_a_part_that_is_opened() {
    visit(&plain(), &[&script()], |page| {
        opened(page);
        measured(page, "62.82");
        let pdf = page.print(21.0, 29.7);
        assert!(pdf.starts_with(b"%PDF"));
        page.expect(&[("basic.mass", "177 kg")]);
        page.click(MEASURE);
        assert!(!page.says("print.old"));
        page.click("[name='pool.volume']");
        page.press("1");
        page.wait("return all('[data-when=\"print.old\"]').some(seen)");
    });
}

#[test]
fn a_question_in_a_closed_part_holds_its_answer_back() {
    visit(&page(&FORM.replace("QUESTION", QUESTION)), &[&script()], |page| {
        opened(page);
        measured(page, "62.82");
        page.expect(&[("basic.mass", "–")]);
        page.click("[data-act=expand][value=question]");
        page.click("[name='try.basic.mass']");
        page.press("177\t");
        page.expect(&[("basic.mass", "–")]);
        page.click("[data-act=check]");
        page.expect(&[("basic.mass", "177 kg")]);
        assert!(page.says("try.basic-mass.right"));
    });
}

#[test]
fn locks_presets_and_ranges_of_a_closed_part_count() {
    let address = plain();
    let link = format!("{address}#sw1&pool.volume=62.82&salt.now=900&lock=pool.volume");
    visit(&link, &[&script()], |page| {
        opened(page);
        page.expect(&[("basic.mass", "177 kg")]); // What the author has locked no link changes.
        page.ask("attach(form).set({ 'pool.volume': '50', 'salt.now': '900' })");
        page.expect(&[("basic.mass", "177 kg")]);
        page.click("[name=variant]");
        page.press("7\t");
        let target = page.ask(HELD)["salt.target"].as_str().expect("a text").to_string();
        assert!(["3000", "3100", "3200", "3300", "3400"].contains(&target.as_str()), "{target}");
        page.click(MEASURE);
        assert_eq!(page.text("return value('salt.target')"), target);
        let locked = "return all('[readonly]').map((e) => e.name).sort().join()";
        assert_eq!(page.text(locked), "pool.volume,salt.now,salt.target");
    });
}

#[test]
fn a_form_that_is_let_go_gives_its_parts_back() {
    visit(&plain(), &[&script()], |page| {
        opened(page);
        measured(page, "62.82");
        page.ask("attach(form).detach()");
        assert!(
            page.holds("return all('template[data-part]')[0].content.querySelectorAll('input').length > 4")
        );
        page.ask("attach(form)");
        page.wait("return all('output')[0].textContent.startsWith('177')");
        page.click(MEASURE);
        assert_eq!(page.text("return value('pool.volume')"), "62.82");
    });
}
