//! Does the script serve other people's pages?

use crate::engine::Need;
use crate::environment::{setting, site};
use crate::session::visit;
use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, TcpListener};
use std::thread;

/// Serves one page, whatever is asked for, until the tests end; it may depend on its own origin. Returns origin and
/// address.
pub fn host(policy: &str, html: impl FnOnce(&str) -> String) -> (String, String) {
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
    let origin = format!("http://{}", listener.local_addr().unwrap());
    let address = format!("{origin}/");
    let html = html(&origin);
    let reply = format!(
        "HTTP/1.1 200 OK\r\nContent-Type: text/html; charset=utf-8\r\nContent-Security-Policy: {policy}\r\n\
         Content-Length: {}\r\nConnection: close\r\n\r\n{html}",
        html.len()
    );
    thread::spawn(move || {
        for mut stream in listener.incoming().flatten() {
            let mut asked = BufReader::new(&stream).lines();
            while asked.next().is_some_and(|line| line.is_ok_and(|line| !line.is_empty())) {}
            drop(asked);
            // A browser that has gone away is no fault of ours.
            let _ = stream.write_all(reply.as_bytes());
        }
    });
    (origin, address)
}

pub fn script() -> String {
    format!("{}saltwright.js", site())
}

/// A page of another address, with nothing of ours in it but the script.
/// Its policy allows that script by its hash, the wasm in it, and no more.
pub fn page(forms: &str) -> String {
    let integrity = setting("SALTWRIGHT_SITE") + "/saltwright.js.integrity";
    let integrity = std::fs::read_to_string(integrity).unwrap();
    let (integrity, script) = (integrity.trim(), script());
    let policy = format!(
        "default-src 'none'; img-src data:; \
         script-src '{integrity}' 'nonce-host' 'wasm-unsafe-eval'; require-trusted-types-for 'script'; \
         trusted-types 'none'; base-uri 'none'; form-action 'none'"
    );
    let html = |_: &str| {
        format!(
            "<!DOCTYPE html><meta charset=utf-8><link rel=icon href='data:,'><title>Host</title>{forms}
            <script type=module src='{script}' integrity='{integrity}' crossorigin></script>
            <script type=module nonce=host>
            import {{ answer, attach, edition }} from '{script}'; Object.assign(window, {{ answer, attach, edition }})
            </script>"
        )
    };
    host(&policy, html).1
}

/// Another language, order and choice of fields than our own page has, and no word of it.
const GERMAN: &str = "
    <p>Vorher</p>
    <form data-saltwright=1 lang=de>
    <p data-when='!ready'>Wird geladen</p>
    <p>Es fehlen <output name=basic.mass>–</output>, zuerst <output name=stage.mass>–</output>.</p>
    <p data-when=add.unknown>Noch offen</p>
    <label>Sack <input name=bag.size></label><input type=hidden name=bag.size.unit value=kg>
    <label>Ziel <input name=salt.target></label>
    <label>Wert <input name=salt.now></label><p data-fault=salt.now></p>
    <label>Becken <input name=pool.volume></label><input type=hidden name=pool.volume.unit value=m3>
    <input type=hidden name=bag.purity value=99,4>
    <input type=hidden name=salt.method value=meter><input type=hidden name=pool.method value=taped><input type=hidden name=salt.now.unit value='[ppm]'>
    <button type=button data-act=clear>Leeren</button>
    <template data-units><data value=kg>Kilo</data></template>
    <template data-fault='*:not-a-number'>Keine Zahl: <output name=got></output></template>
    </form>";

#[test]
fn a_form_in_another_page_and_language() {
    visit(&page(GERMAN), &[&script()], |page| {
        page.fill(&[
            ("bag.size", "20"),
            ("salt.target", "3.200"),
            ("salt.now", "400"),
            ("pool.volume", "62,82"),
        ]);
        page.expect(&[("basic.mass", "177 Kilo"), ("stage.mass", "120 Kilo")]);
        assert_eq!(page.text("return location.hash"), "", "a form that did not ask keeps nothing");
        assert!(page.says("add.unknown"));
        page.click("[name='salt.now']");
        page.press("?\t");
        page.wait("return all('[data-fault=\"salt.now\"]')[0].innerText === 'Keine Zahl: 400?'");
        page.expect(&[("basic.mass", "–")]);
        page.click("[data-act='clear']");
        assert_eq!(page.text("return value('salt.target')"), "");
    });
}

#[test]
fn a_script_gets_a_plain_object() {
    visit(&page(""), &[&script()], |page| {
        page.wait("return !!window.answer");
        if !page.can(Need::Order, "whether a second module waits until the first one's wasm is there") {
            page.wait("try { return !!edition() } catch { return false }");
        }
        let answer = page.ask(
            "const given = answer({ 'pool.volume': '62.82', 'pool.volume.unit': 'm3', 'salt.now': '400',
                'salt.now.unit': '[ppm]', 'salt.method': 'meter', 'pool.method': 'taped', 'salt.target': '3200', 'bag.size': '20', 'bag.size.unit': 'kg', 'bag.purity': '99.4',
                'water.ph': 'x' });
            return { given, plain: Object.getPrototypeOf(given) === window.Object.prototype, edition: edition() }",
        );
        assert_eq!(answer["plain"], true);
        let (given, edition) = (&answer["given"], &answer["edition"]);
        assert_eq!((&given["contract"], &edition["contract"]), (&1.into(), &1.into()));
        assert_eq!(given["outputs"]["basic.mass"]["text"], "177");
        assert_eq!(given["outputs"]["basic.mass"]["unit"], "kg");
        assert_eq!(given["faults"][0]["field"], "water.ph");
        assert_eq!(given["faults"][0]["code"], "not-a-number");
        assert!(given["states"].as_array().unwrap().contains(&"standing.short".into()), "{given}");
    });
}

/// Two forms with the same names in them; the second reads and writes as Germans do.
const TWO: &str = "
    <form data-saltwright=1 lang=en id=a>FORM</form>
    <form data-saltwright=1 lang=de id=b>FORM</form>";
const ONE: &str = "
    <p data-when='!ready'>Not yet</p>
    <input name=pool.volume><input type=hidden name=pool.volume.unit value=m3>
    <label><input type=radio name=show value=as-typed checked>typed</label>
    <label><input type=radio name=show value=us>US</label>
    <p data-fault=pool.volume></p><output name=echo.pool.volume>–</output>
    <ul><template data-each=passes><li><output name=share></output></li></template></ul>
    <button type=button data-act=clear>Clear</button>
    <template data-fault='*:not-a-number'>Bad</template>
    <template data-say><span data-when=echo.pool.volume><output name=echo.pool.volume></output></span></template>
    <template data-units><data value=m3>m³</data></template>";

#[test]
fn two_forms_in_one_page_do_not_mix() {
    let state = |id: &str| {
        format!(
            "const f = document.getElementById({id:?});
            return [f.querySelector('input').value, f.querySelector('output').textContent,
                [...f.querySelectorAll('[data-fault]')].filter(seen).map((e) => e.innerText).join(), f.querySelector('input').ariaInvalid ?? '',
                f.querySelector('[role=status]').textContent, f.elements.show.value].join('|')"
        )
    };
    visit(&page(&TWO.replace("FORM", ONE)), &[&script()], |page| {
        let blank = page.text(&state("b"));
        page.click("#a input");
        page.press("1,500.5\t");
        page.click("#a [value='us']");
        page.wait("return document.querySelector('#a [role=status]').textContent !== ''");
        let a = page.text(&state("a"));
        assert_eq!(a, "1,500.5|1,500.5 m³|||1,500.5 m³|us");
        assert_eq!(page.text(&state("b")), blank);

        page.click("#b input");
        page.press("x\t");
        page.wait("return document.querySelector('#b [data-fault]').innerText === 'Bad'");
        assert_eq!(page.text(&state("a")), a);
        assert!(page.text(&state("b")).starts_with("x|–|Bad|true|"), "{}", page.text(&state("b")));

        page.press_back();
        page.press("1.500,5\t");
        page.click("#a [data-act='clear']");
        page.wait("return document.querySelector('#b [role=status]').textContent !== ''");
        assert_eq!(page.text(&state("b")), "1.500,5|1.500,5 m³|||1.500,5 m³|as-typed");
        assert!(page.text(&state("a")).starts_with("|–|"));
    });
}
