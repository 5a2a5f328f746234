//! Does each language write its figures its own way, and does every page fit the narrowest screen?

use crate::environment::site;
use crate::fixtures;
use crate::session::visit;
use evidence::site::{LESSONS, PAGES, SHEETS, in_language};

const EXAMPLES: [&str; 4] =
    ["examples/own.html", "examples/form.html", "examples/frame.html", "examples/script.html"];

fn pages() -> impl Iterator<Item = &'static str> {
    PAGES.into_iter().flatten().map(|(_, file)| file).chain(EXAMPLES)
}

/// What a page asks for besides itself.
fn files(name: &str) -> Vec<String> {
    match name {
        "examples/form.html" | "examples/script.html" => vec![site() + "saltwright.js"],
        "examples/frame.html" => vec![site() + "index.html"],
        _ => Vec::new(),
    }
}

/// Opens all there is, and says what is wider than the page.
const OVER: &str = "
    all('details').forEach((e) => { e.open = true });
    all('[data-act=answers]').forEach((e) => e.click());
    const wide = document.documentElement.clientWidth + 1;
    const out = all('body *').filter((e) => e.checkVisibility() && !e.closest('.scroll-x') && e.getBoundingClientRect().right > wide);
    return [document.documentElement.scrollWidth > wide, ...out.slice(0, 5).map((e) => e.outerHTML.slice(0, 80))].join('\\n')";

/// Letters, words and lines as far apart as WCAG 2.2 allows a reader to set them (1.4.12).
const SPACED: &str = "
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important }
        p { margin-block-end: 2em !important }`);
    document.adoptedStyleSheets = [sheet]";

/// 1,280 pixels at 400 % are 320 (WCAG 2.2, 1.4.10). Then text alone is twice its size (1.4.4).
#[test]
fn every_page_fits_a_screen_of_320() {
    for name in pages() {
        let form = match SHEETS.iter().any(|(_, file)| *file == name) {
            true => format!("#{}&{}&view=counter", fixtures::link(fixtures::US), fixtures::READY),
            false => String::new(),
        };
        let files = files(name);
        let files: Vec<_> = files.iter().map(String::as_str).collect();
        visit(&format!("{}{name}{form}", site()), &files, |page| {
            let fits = |what: &str| assert_eq!(page.text(OVER), "false", "{name}, {what}");
            page.resize(320, 640);
            fits("320 pixels");
            for view in ["class", "owner"] {
                let choose =
                    format!("field('view').filter((e) => e.value === '{view}').forEach((e) => e.click())");
                page.ask(&choose);
                fits(view);
            }
            let parts = page.text("return form && field('at').map((e) => e.value).join() || ''");
            for part in parts.split(',').filter(|part| !part.is_empty()) {
                page.ask(&format!("field('at').find((e) => e.value === '{part}').click()"));
                fits(part);
            }
            page.ask("field('view').filter((e) => e.value === 'counter').forEach((e) => e.click())");
            page.ask(SPACED);
            fits("letters and words apart");
            page.ask("document.adoptedStyleSheets = []; document.documentElement.style.fontSize = '200%'");
            for width in [1366, 800] {
                page.resize(width, 768);
                fits(&format!("text of 200 % on {width} pixels"));
            }
        });
    }
}

/// The same figures, in signs of the page's own: 390.1 lb, 16,596 gallons, 2,800 ppm, a date.
#[test]
fn figures_follow_the_language() {
    for (lang, mass, size, rise, index) in [
        ("en-US", "390.1 lb", "16,596", "2,800 ppm", "+0.09"),
        ("fr", "390,1 lb", "16 596", "2 800 ppm", "+0,09"),
        ("es", "390,1 lb", "16.596", "2800 ppm", "+0,09"),
    ] {
        let name = in_language(SHEETS, lang);
        visit(&format!("{}{name}#{}", site(), fixtures::link(fixtures::US)), &[], |page| {
            let shown = |name: &str| page.output(name).replace(['\u{202f}', '\u{a0}'], " ");
            assert_eq!((shown("basic.mass").as_str(), shown("index.now").as_str()), (mass, index), "{name}");
            assert_eq!(shown("basic.rise"), rise, "{name}");
            assert!(shown("used.volume").starts_with(size), "{name}: {}", shown("used.volume"));
            assert!(page.holds("return form.lang === document.documentElement.lang"));
        });
    }
}

/// The lesson: the same exercise in three languages, its figures in the language's signs, read back as typed.
#[test]
fn an_exercise_is_the_same_in_every_language() {
    for (lang, purity, bags) in [("en-US", "98.2", "."), ("fr", "98,2", ","), ("es", "98,2", ",")] {
        let name = in_language(LESSONS, lang);
        visit(&format!("{}{name}", site()), &[], |page| {
            let one = |what: &str| page.text(&format!("return document.querySelector('#one {what}').value"));
            assert_eq!(one("[name=\"bag.purity\"]"), purity, "{name}");
            assert_eq!(one("[name=\"pool.volume\"]").replace(',', "."), "85.0");
            // 85 m³ × 3,250 ppm ÷ 1,000 = 276.25 kg; ÷ 0.982 = 281.3 kg; ÷ 20 = 14.07 bags.
            for (field, text) in [
                ("basic.rise", "3250"),
                ("basic.pure", "276.25"),
                ("basic.mass", "281.3"),
                ("basic.bags", "14.07"),
            ] {
                let attempt = format!("#one [name=\"try.{field}\"]");
                page.ask(&format!(
                    "document.querySelector({attempt:?}).scrollIntoView({{ block: 'center' }})"
                ));
                page.click(&attempt);
                page.press(&format!("{}\t", text.replace('.', bags)));
            }
            page.ask("document.querySelector('#one [data-act=check]').scrollIntoView({ block: 'center' })");
            page.click("#one [data-act=check]");
            page.wait("return [...document.querySelectorAll('#one [data-when$=\".right\"]')].every((e) => !e.hidden)");
            let held = |form: &str| {
                page.holds(&format!("return document.querySelector('#{form} [data-when=\"!held\"]').hidden"))
            };
            assert!(!held("one") && held("two") && held("three"), "{name}: each form by itself");
        });
    }
}
