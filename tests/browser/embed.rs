//! Does each way to embed work under the policy that it claims, and does question mode hold in a browser?

use crate::figures;
use crate::guest::{host, page, script};
use crate::seat::{Seat, setting, site, visit};

fn example(name: &str) -> String {
    format!("{}examples/{name}.html", site())
}

fn script_file() -> String {
    format!("{}saltwright.js", site())
}

#[test]
fn an_own_copy_answers_and_keeps_its_own_jobs() {
    visit(&example("own"), &[], |page| {
        page.fill(&[
            ("pool.volume", "62.82"),
            ("pool.how", "taped"),
            ("salt.now", "400"),
            ("salt.how", "meter"),
            ("salt.target", "3200"),
            ("bag.size", "20"),
        ]);
        page.expect(&[("buy.bags", "9"), ("now.bags", "6"), ("now.mass", "120 kg")]);
        assert!(page.says("dose.add"));
        // Two forms of one address have each their own place in the store: this one's begins with its id.
        page.wait("return Object.keys(localStorage).some((key) => key.endsWith('.a'))");
        assert!(page.holds("return Object.keys(localStorage).every((key) => key.startsWith('bags:'))"));
        page.reload();
        page.expect(&[("buy.bags", "9")]);
    });
}

#[test]
fn a_numbered_exercise_is_found_step_by_step() {
    visit(&example("form"), &[&script_file()], |page| {
        page.click("[name='variant']");
        page.press("7\t");
        // Number 7 stands in `tests/ask.rs` too: it is a promise.
        let figures = "return all('[data-range]').map((e) => e.value).join(' ')";
        assert_eq!(page.text(figures), "65.0 400 3500");
        assert!(page.holds("return all('[data-range]').every((e) => e.readOnly)"));
        page.expect(&[("dose.rise", "–"), ("dose.mass", "–")]);
        assert!(page.says("held") || page.holds("return all('[data-when=\"!held\"]')[0].hidden"));
        // 3,500 − 400 = 3,100 ppm; 65 m³ × 3,100 ÷ 1,000 ÷ 0.994 = 202.7 kg, one percent allowed.
        page.click("[name='try.dose.rise']");
        page.press("3200\t203\t");
        page.click("[data-act=check]");
        assert!(
            page.says("try.dose-rise.off")
                && page.says("try.dose-mass.right")
                && page.says("try.first.dose-rise")
        );
        page.expect(&[("dose.mass", "–"), ("dose.rise", "–")]);
        page.click("[name='try.dose.rise']");
        page.retype("3,100");
        assert!(!page.says("try.dose-rise.off"), "a new attempt is not marked before it is checked");
        page.click("[data-act=check]");
        page.expect(&[("dose.rise", "3,100 ppm"), ("dose.mass", "202.7 kg")]);
        // Another number is another exercise.
        page.click("[name='variant']");
        page.retype("8");
        page.expect(&[("dose.rise", "–"), ("dose.mass", "–")]);
        page.click("summary");
        page.click("[data-act=answers]");
        let row = |number: usize| {
            format!("return all('tbody tr')[{}].innerText.split(/\\s*\\t\\s*/).join('|')", number - 1)
        };
        assert_eq!(page.text(&row(7)), "7|65 m³|400 ppm|3,500 ppm|3,100 ppm|202.7 kg");
        assert_eq!(page.text("return String(all('tbody tr').length)"), "30");
    });
}

#[test]
fn a_frame_that_may_only_run_scripts_has_no_dead_button() {
    let framed = site() + "index.html";
    visit(&example("frame"), &[&framed], |page| {
        page.enter_frame();
        page.wait("return all('[data-when=\"!ready\"]').every((e) => e.hidden)");
        page.expect(&[("dose.mass", "–"), ("now.mass", "–"), ("buy.bags", "–"), ("dose.rise", "–")]);
        assert!(page.holds("return field('salt.now')[0].readOnly && field('salt.now')[0].value === '400'"));
        assert!(page.holds(
            "return [...field('pool.how')[0].options].every((o) => o.disabled !== (o.value === 'taped'))"
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
        page.click("[name='try.dose.mass']");
        page.press("177\t");
        page.click("[name='try.now.mass']");
        page.press("120\t");
        page.click("[data-act=check]");
        page.expect(&[("dose.mass", "177 kg"), ("now.mass", "120 kg"), ("dose.rise", "2,800 ppm")]);
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

/// The main page under the terms of a link: asked, locked, revealed on paper alone.
#[test]
fn a_link_asks_locks_and_its_answers_print_apart() {
    let link = format!("{}#{}&ask=dose.mass&lock=salt.now,show", site(), figures::link(figures::US));
    visit(&link, &[], |page| {
        page.expect(&[("dose.mass", "–"), ("buy.bags", "–"), ("now.left", "–")]);
        assert!(page.holds("return field('salt.now')[0].readOnly"));
        page.ask("window.print = () => { window.printed = document.querySelector('#paper-answers output[name=\"dose.mass\"]').textContent }");
        page.ask("all('[data-act=print][value=class]')[0].click()");
        assert_eq!(page.text("return window.printed"), "–", "the class sheet holds back");
        page.ask("all('[data-act=print][value=answers]')[0].click()");
        assert!(
            page.text("return window.printed").starts_with("390.1"),
            "the answers are a sheet of their own"
        );
        page.ask("window.dispatchEvent(new Event('afterprint'))");
        page.expect(&[("dose.mass", "–")]);
        page.ask("all('a[href^=\"#sw1&\"]')[0].click()");
        page.expect(&[("dose.mass", "390.1 lb")]);
        assert!(page.holds("return !field('salt.now')[0].readOnly"), "another link, other terms");
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
            desk.set({ 'pool.volume': '60', 'strange.name': 'kept' });
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
    let (named, address) = host(&policy, &html);
    let frame = site();
    let seen = "return heard.filter((m) => m?.kind === 'answer').at(-1)?.answer.numbers['used.volume']?.value ?? null";
    visit(&address, &[&frame], |page| {
        page.wait(&format!("return ({}) === 50", seen.replace("return ", "")));
        assert!(page.holds("return heard.every((m) => m.contract === 1) && heard.some((m) => m.kind === 'ready') && heard.some((m) => m.kind === 'height' && Number.isInteger(m.height))"));
        page.ask("send({ 'pool.volume': '75' })");
        page.wait(&format!("return ({}) === 75", seen.replace("return ", "")));
        assert!(!named.is_empty());
    });
    let (_, address) = host(&policy, |_| html("https://other.example"));
    // The browser itself warns of a host that does not listen: no visit here, which counts that as a complaint.
    let page = Seat::start();
    page.go(&address);
    page.ask("send({ 'pool.volume': '75' }); await new Promise((done) => setTimeout(done, 500))");
    page.enter_frame();
    assert_eq!(page.text("return value('pool.volume')"), "50", "not from whom the link does not name");
    page.leave_frame();
    assert_eq!(page.ask("return heard.length"), 0);
}

#[test]
fn a_name_that_is_wrong_is_told_while_a_page_is_made() {
    let wrong = "<form data-saltwright=1 lang=en><input name=salt.nwo><input name=mine><output name=dose.maas></output>
        <p data-when='add.yes !add.nope'></p><p data-fault=salt.now:lo></p><button type=button data-act=prnt>P</button>
        <template data-each=step><p data-when=step.stage></p></template></form>";
    visit(&page(wrong), &[&script()], |page| {
        page.wait("return !!document.querySelector('pre[data-mismatch]')");
        let told = page.text("return document.querySelector('pre[data-mismatch]').textContent");
        let names = ["salt.nwo", "dose.maas", "add.nope", "salt.now:lo", "prnt", "\"step\""];
        assert!(names.iter().all(|name| told.contains(name)), "{told}");
        assert_eq!(told.lines().count(), names.len(), "{told}");
    });
    visit(&site(), &[], |page| {
        assert!(
            page.holds("return !document.querySelector('[data-mismatch]')"),
            "our own page is without fault"
        );
    });
}

/// Our whole page with its sections in another order and every word another: the same figures, no line of script.
#[test]
fn our_page_in_another_order_and_language_gives_the_same_figures() {
    let built = std::fs::read_to_string(setting("SALTWRIGHT_SITE") + "/index.html").unwrap();
    let (begin, rest) = built.split_once("<div id=\"ask\">").unwrap();
    let (asked, end) = rest.split_once("<section id=\"sheet\"").unwrap();
    // Between `>` and `<` stand words; the style and the script come before and behind.
    let german = |text: &str| {
        let mut out = String::new();
        for (at, piece) in text.split('<').enumerate() {
            let (tag, words) = piece.split_once('>').unwrap_or(("", piece));
            if at > 0 {
                out += &format!("<{tag}>");
            }
            out += &words
                .split(' ')
                .map(|word| {
                    if word.chars().all(char::is_alphabetic) {
                        word.chars().rev().collect()
                    } else {
                        word.to_string()
                    }
                })
                .collect::<Vec<_>>()
                .join(" ");
        }
        out
    };
    let mut parts: Vec<String> = Vec::new();
    for piece in german(asked).split("\n<section id=\"").map(String::from) {
        parts.push(piece);
    }
    let first = parts.remove(0);
    parts.reverse();
    let turned = parts.iter().fold(first, |all, part| format!("{all}\n<section id=\"{part}"));
    let german_page = format!(
        "{}<div id=\"ask\">{turned}<section id=\"sheet\"{end}",
        begin.replace("lang=\"en-GB\"", "lang=\"de\"").replace(" data-worker=\"offline.js\"", "")
    );
    let (_, address) = host("", |_| german_page);
    visit(&format!("{address}#{}", figures::link(figures::US)), &[], |page| {
        page.wait(
            "return document.querySelector('output[name=\"dose.mass\"]').textContent.startsWith('390,1')",
        );
        assert!(page.holds("return document.documentElement.lang === 'de'"));
        page.wait("return document.querySelector('output[name=\"index.now\"]').textContent === '+0,09'");
    });
}

/// `1,250` is a thousand times less in French; a page that has settled its unit gets the amount in that.
#[test]
fn a_job_means_the_same_in_another_language_and_unit() {
    visit(&site(), &[&format!("{}fr.html", site())], |page| {
        page.fill(&[("pool.volume", "1,250"), ("pool.volume.unit", "m3")]);
        page.press("\t");
        page.wait("return Object.keys(localStorage).some((key) => key.endsWith('.a'))");
        page.open(&format!("{}fr.html", site()));
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
        page.click("[name='try.dose.rise']");
        page.press("2800\n");
        assert!(page.says("try.dose-rise.right"));
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
        <input type=hidden name=pool.volume.unit value=m3><input type=hidden name=pool.how value=taped>
        <input type=hidden name=salt.now value=400><input type=hidden name=salt.now.unit value='[ppm]'><input type=hidden name=salt.how value=meter>
        <input type=hidden name=salt.target value=3200><input type=hidden name=bag.size value=20><input type=hidden name=bag.size.unit value=kg>
        <input type=hidden name=bag.purity value=99.4><input name=try.dose.mass value=1><output name=dose.mass>–</output>
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
