//! Does each way to embed work under the policy that it claims?

use crate::environment::site;
use crate::fixtures;
use crate::host_page::{host, page, script};
use crate::session::{Session, visit};
use evidence::site::{SHEETS, in_language, sheet};
use scraper::Node;

pub fn example(name: &str) -> String {
    format!("{}examples/{name}.html", site())
}

pub fn script_file() -> String {
    format!("{}saltwright.js", site())
}

#[test]
fn an_own_copy_answers_and_keeps_its_own_jobs() {
    visit(&example("own"), &[], |page| {
        page.fill(&[
            ("pool.volume", "62.82"),
            ("pool.method", "taped"),
            ("salt.now", "400"),
            ("salt.method", "meter"),
            ("salt.target", "3200"),
            ("bag.size", "20"),
        ]);
        page.expect(&[("buy.bags", "9"), ("stage.bags", "6"), ("stage.mass", "120 kg")]);
        assert!(page.says("standing.short"));
        // Two forms of one address have each their own place in the store: this one's begins with its id.
        page.wait("return Object.keys(localStorage).some((key) => key.endsWith('.a'))");
        assert!(page.holds("return Object.keys(localStorage).every((key) => key.startsWith('bags:'))"));
        page.reload();
        page.expect(&[("buy.bags", "9")]);
    });
}

#[test]
fn a_frame_that_may_only_run_scripts_has_no_dead_button() {
    let framed = site() + "index.html";
    visit(&example("frame"), &[&framed], |page| {
        page.enter_frame();
        page.wait("return all('[data-when=\"!ready\"]').every((e) => e.hidden)");
        page.expect(&[("basic.mass", "–"), ("stage.mass", "–"), ("buy.bags", "–"), ("basic.rise", "–")]);
        assert!(page.holds("return field('salt.now')[0].readOnly && field('salt.now')[0].value === '400'"));
        assert!(page.holds(
            "return [...field('pool.method')[0].options].every((o) => o.disabled !== (o.value === 'taped'))"
        ));
        let parts = page.text("return [...new Set(all('[data-part]').filter((e) => e.checkVisibility()).map((e) => e.dataset.part))].join()");
        assert_eq!(parts, "pool,salt,bags,sheet");
        // Locked is locked, whatever is pressed; Enter leads to the sheet.
        page.click("[name='salt.now']");
        page.press("9\n");
        assert!(page.holds("return document.activeElement.id === 'sheet-t'"));
        assert_eq!(page.text("return value('salt.now')"), "400");
        // Every button that is seen does something, and nothing on the console says otherwise.
        let seen = page.ask("return all('button').filter(seen).map((e) => e.textContent)");
        for at in 0..seen.as_array().unwrap().len() {
            page.ask(&format!("all('button').filter(seen)[{at}]?.click()"));
        }
        assert_eq!(page.text("return value('salt.now')"), "400", "cleared, the link's figures stand");
        assert!(
            page.holds("return !all('[data-act=print], [data-act=copy]').some(seen)"),
            "neither can be here"
        );
        // By hand: 62.82 m³ × 2,800 ÷ 1,000 ÷ 0.994 = 177.0 kg.
        page.click("[name='try.basic.mass']");
        page.press("177\t");
        page.click("[name='try.stage.mass']");
        page.press("120\t");
        page.click("[data-act=check]");
        page.expect(&[("basic.mass", "177 kg"), ("stage.mass", "120 kg"), ("basic.rise", "2,800 ppm")]);
    });
}

#[test]
fn a_script_alone_fills_a_table() {
    visit(&example("script"), &[&script_file()], |page| {
        page.wait("return document.querySelectorAll('tbody tr').length === 3");
        assert_eq!(
            page.text(
                "return document.querySelectorAll('tbody tr')[1].innerText.trim().split(/\\s+/).join()"
            ),
            "62.82,9,120"
        );
    });
}

const FORM: &str = "
    <form data-saltwright=1 lang=en>
    <label id=l>Water</label> <input name=pool.volume value=50><p data-hint=pool.volume>Filled.</p><p data-fault=pool.volume></p>
    <input type=hidden name=pool.volume.unit value=m3><input name=own value=mine>
    <output name=used.volume>–</output> <output name=used.volume data-unit='[gal_us]'>–</output>
    <output name=used.volume data-unit=kg>–</output>
    <template data-units><data value=m3>m³</data><data value='[gal_us]'>gal</data></template></form>";

#[test]
fn a_form_is_wired_and_tells_its_page() {
    visit(&page(FORM), &[&script()], |page| {
        page.wait("return !!window.answer");
        // 50 m³ ÷ 0.003785411784 = 13,209 gal. What does not measure water keeps the unit typed.
        page.wait("return all('output')[1].textContent !== '–'");
        assert_eq!(
            page.text("return all('output').map((e) => e.textContent).join('|')"),
            "50 m³|13,209 gal|50 m³"
        );
        assert!(page.holds(
            "const f = field('pool.volume')[0];
            return all('output').every((e) => e.ariaLive === 'off') && document.getElementById('l').htmlFor === f.id
                && f.getAttribute('aria-describedby').split(' ').every((id) => !!document.getElementById(id))
                && f.getAttribute('aria-describedby').split(' ').length === 2"
        ));
        let told = page.ask(
            "const told = [];
            form.addEventListener('saltwright:answer', (e) => told.push(e.detail));
            const desk = window.attach(form);
            const again = window.attach(form);
            desk.set({ 'pool.volume': '60', 'strange.name': 'kept', tell: 'https://other.example', lock: 'pool.volume' });
            desk.set({ 'pool.volume': '62' });
            await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
            desk.set({ 'pool.volume': '62' });
            await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
            const kept = again.form();
            desk.detach();
            field('pool.volume')[0].value = '70';
            field('pool.volume')[0].dispatchEvent(new Event('input', { bubbles: true }));
            return { count: told.length, value: told[0].numbers['used.volume'], kept, shown: all('output')[0].textContent }",
        );
        assert_eq!(told["count"], 1, "once a frame, and only if something changed: {told}");
        assert_eq!(told["value"], serde_json::json!({ "value": 62, "unit": "m3" }));
        assert_eq!((&told["kept"]["strange.name"], &told["kept"]["own"]), (&"kept".into(), &"mine".into()));
        let terms = ["tell", "lock"].map(|term| &told["kept"][term]);
        assert_eq!(terms, [&serde_json::Value::Null; 2], "a link's terms are the link's");
        assert_eq!(
            told["shown"].as_str().unwrap().replace('\u{a0}', " "),
            "62 m³",
            "detached, it stays as it was"
        );
        // And attached once more.
        page.ask("window.attach(form)");
        page.wait("return all('output')[0].textContent.startsWith('70')");
    });
}

/// A host of another origin: the frame tells it what the link allows, and takes what it sends; nobody else's.
#[test]
fn a_frame_talks_to_the_host_that_its_link_names() {
    let html = |tell: &str| {
        format!(
            "<!DOCTYPE html><meta charset=utf-8><link rel=icon href='data:,'><title>Host</title>
            <iframe id=f sandbox='allow-scripts allow-same-origin' src='{}#sw1&pool.volume=50&pool.volume.unit=m3&tell={tell}'></iframe>
            <script nonce=host>
            window.heard = [];
            addEventListener('message', (e) => {{ if (e.source === document.getElementById('f').contentWindow) heard.push(e.data.saltwright) }});
            window.send = (form) => document.getElementById('f').contentWindow.postMessage({{ saltwright: {{ contract: 1, kind: 'set', form }} }}, '*');
            </script>",
            site()
        )
    };
    let policy = format!("default-src 'none'; frame-src {}; img-src data:; script-src 'nonce-host'", site());
    let (_, address) = host(&policy, html);
    let frame = site();
    let seen = "return heard.filter((m) => m?.kind === 'answer').at(-1)?.answer.numbers['used.volume']?.value ?? null";
    visit(&address, &[&frame], |page| {
        page.wait(&format!("return ({}) === 50", seen.replace("return ", "")));
        assert!(page.holds("return heard.every((m) => m.contract === 1) && heard.some((m) => m.kind === 'ready') && heard.some((m) => m.kind === 'height' && Number.isInteger(m.height))"));
        page.ask("send({ 'pool.volume': '75' })");
        page.wait(&format!("return ({}) === 75", seen.replace("return ", "")));
    });
    let (_, address) = host(&policy, |_| html("https://other.example"));
    // The browser itself warns of a host that does not listen: no visit here, which counts that as a complaint.
    let page = Session::start();
    page.go(&address);
    page.ask("send({ 'pool.volume': '75' }); await new Promise((done) => setTimeout(done, 500))");
    page.enter_frame();
    assert_eq!(page.text("return value('pool.volume')"), "50", "not from whom the link does not name");
    page.leave_frame();
    assert_eq!(page.ask("return heard.length"), 0);
}

#[test]
fn a_name_that_is_wrong_is_told_while_a_page_is_made() {
    let check = format!("{}saltwright-check.js", site());
    let wrong = format!(
        "<form data-saltwright=1 lang=en><input name=salt.nwo><input name=mine><output name=basic.maas></output>
        <p data-when='add.yes !add.nope'></p><p data-fault=salt.now:lo></p><button type=button data-act=prnt>P</button>
        <template data-each=step><p data-when=step.stage></p></template></form>
        <script type=module nonce=host src='{check}'></script>"
    );
    visit(&page(&wrong), &[&script(), &check], |page| {
        page.wait("return !!document.querySelector('pre[data-mismatch]')");
        let told = page.text("return document.querySelector('pre[data-mismatch]').textContent");
        let names = ["salt.nwo", "basic.maas", "add.nope", "salt.now:lo", "prnt", "“step”"];
        assert!(names.iter().all(|name| told.contains(name)), "{told}");
        assert_eq!(told.lines().count(), names.len(), "{told}");
    });
    // Visitors of a page are told nothing.
    visit(&page(&wrong.replace(&check, "data:text/javascript,")), &[&script()], |page| {
        page.wait("return document.querySelector('p[data-when]').hidden");
        assert!(page.holds("return !document.querySelector('[data-mismatch]')"));
    });
}

/// Our whole page with its sections in another order and every word another: the same figures, no line of script.
#[test]
fn our_page_in_another_order_and_language_gives_the_same_figures() {
    let mut page = sheet();
    let asked = page.select("#ask")[0].id();
    let sections: Vec<_> = page.select("#ask > section").iter().map(|section| section.id()).collect();
    let texts: Vec<_> = page.select("#ask")[0].descendants().map(|node| node.id()).collect();
    let tree = &mut page.html.tree;
    for section in sections.into_iter().rev() {
        tree.get_mut(section).unwrap().detach();
        tree.get_mut(asked).unwrap().append_id(section);
    }
    for text in texts {
        let mut node = tree.get_mut(text).unwrap();
        let Node::Text(text) = node.value() else { continue };
        let backwards = |word: &str| -> String {
            let is_word = word.chars().all(char::is_alphabetic);
            if is_word { word.chars().rev().collect() } else { word.into() }
        };
        text.text = text.split(' ').map(backwards).collect::<Vec<_>>().join(" ").into();
    }
    let german_page = page.html.html();
    let german_page = german_page.replace("lang=\"en-US\"", "lang=\"de\"");
    let german_page = german_page.replace(" data-worker=\"offline.js\"", "");
    let (_, address) = host("", |_| german_page);
    visit(&format!("{address}#{}", fixtures::link(fixtures::US)), &[], |page| {
        page.wait(
            "return document.querySelector('output[name=\"basic.mass\"]').textContent.startsWith('390,1')",
        );
        assert!(page.holds("return document.documentElement.lang === 'de'"));
        page.wait("return document.querySelector('output[name=\"index.now\"]').textContent === '+0,09'");
    });
}

/// `1,250` is a thousand times less in French; a page that has settled its unit gets the amount in that.
#[test]
fn a_job_means_the_same_in_another_language_and_unit() {
    let french = site() + in_language(SHEETS, "fr");
    visit(&site(), &[&french], |page| {
        page.fill(&[("pool.volume", "1,250"), ("pool.volume.unit", "m3")]);
        page.press("\t");
        page.wait("return Object.keys(localStorage).some((key) => key.endsWith('.a'))");
        page.open(&french);
        assert_eq!(page.text("return value('pool.volume')"), "1250");
        assert_eq!(page.output("used.volume").replace(['\u{202f}', '\u{a0}'], " "), "1 250 m³");
    });
    // By hand: 13,209 US gallons × 0.003785411784 = 50.0015 m³.
    let link =
        format!("{}#sw1&pool.volume=13,209&pool.volume.unit=%5Bgal_us%5D&sign.decimal=.", example("own"));
    visit(&link, &[], |page| {
        assert_eq!(page.text("return value('pool.volume.unit')"), "m3");
        assert_eq!(page.text("return value('pool.volume')"), "50.001504");
    });
}

/// In a sandbox that may print, it may so after Clear and Put back too.
#[test]
fn a_frame_stays_what_its_link_made_it() {
    let html = format!(
        "<!DOCTYPE html><meta charset=utf-8><link rel=icon href='data:,'><title>Host</title>
        <iframe sandbox='allow-scripts allow-modals' src='{}#sw1&pool.volume=50&pool.volume.unit=m3&can=print&tell=*'></iframe>
        <script nonce=host>window.heard = []; addEventListener('message', (e) => heard.push(e.data))</script>",
        site()
    );
    let policy = format!("default-src 'none'; frame-src {}; img-src data:; script-src 'nonce-host'", site());
    let (_, address) = host(&policy, |_| html);
    visit(&address, &[&site()], |page| {
        page.enter_frame();
        page.wait("return all('[data-when=\"!ready\"]').every((e) => e.hidden)");
        let count = "return String(all('[data-act=print]').filter((e) => !e.closest('[hidden]')).length)";
        let before = page.text(count);
        assert_ne!(before, "0");
        page.ask("all('[data-act=clear]')[0].click(); all('[data-act=undo]')[0].click()");
        assert_eq!(page.text(count), before);
        assert_eq!(page.text("return value('pool.volume')"), "50");
        page.leave_frame();
        page.ask("await new Promise((done) => setTimeout(done, 300))");
        assert_eq!(page.ask("return heard.length"), 0, "everybody is no host");
    });
}
