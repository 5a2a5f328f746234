//! What stands on paper, in which order, and on how much of it?

use crate::engine::Need;
use crate::environment::site;
use crate::fixtures;
use crate::session::{Session, visit};
use std::io::Write;
use std::process::{Command, Stdio};

/// Warranty, in centimetres.
const PAPERS: [(&str, f64, f64); 2] = [("A4", 21.0, 29.7), ("Letter", 21.59, 27.94)];
const MOST_PAGES: usize = 3;

#[test]
fn the_demo_on_paper() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::US)), &[], |page| {
        paper(page, "add.unknown", "240 lb")
    });
}

#[test]
fn too_much_salt_on_paper() {
    visit(&site(), &[], |page| {
        page.open_example(fixtures::TOO_MUCH);
        paper(page, "add.no", "25.7 %");
    });
}

/// The verdict stands above every amount, and a section's cautions above its amounts.
fn paper(page: &Session, verdict: &str, amount: &str) {
    let word = page
        .text(&format!("return all('.verdict[data-when={verdict:?}]').find(seen).innerText.split('\\n')[0]"));
    let papers: &[_] = if page.can(Need::Pdf, "pages and their texts") { &PAPERS } else { &[] };
    for &(paper, width, height) in papers {
        let pdf = page.print(width, height);
        assert!(pdf.starts_with(b"%PDF-"), "{paper}");
        let pages = pages(&pdf);
        assert!((1..=MOST_PAGES).contains(&pages), "{pages} pages of {paper}");
        let text = text_of(&pdf);
        let line = |wanted: &str| text.lines().position(|line| line.trim() == wanted);
        let first = text.lines().position(|line| line.contains(amount));
        assert!(line(&word).is_some() && line(&word) < first, "{paper}: {word}, {amount}\n{text}");
    }
    page.as_paper();
    let order = format!(
        "const top = (e) => e.getBoundingClientRect().top, bottom = (e) => e.getBoundingClientRect().bottom;
        const verdict = all('.verdict[data-when={verdict:?}]').find(seen);
        const above = (some, rest) => some.every((e) => rest.every((r) => bottom(e) <= top(r) + 1));
        const parts = ['[aria-labelledby=add-t]', '#less'].map((part) => [part + ' .caution li', part + ' output']);
        return above([verdict], all('#sheet output').filter(seen))
            && parts.every(([li, output]) => above(all(li).filter(seen), all(output).filter(seen)))"
    );
    assert!(page.holds(&order), "an amount stands above the verdict or a caution");
}

fn pages(pdf: &[u8]) -> usize {
    let told = read(pdf, "pdfinfo", &["-"]);
    let line = told.lines().find_map(|line| line.strip_prefix("Pages:")).expect("a number of pages");
    line.trim().parse().expect("a number")
}

/// The words of a PDF, letter by letter where it has some in one.
pub fn text_of(pdf: &[u8]) -> String {
    let text = read(pdf, "pdftotext", &["-layout", "-", "-"]).replace('\u{a0}', " ");
    text.replace('ﬀ', "ff").replace('ﬁ', "fi").replace('ﬂ', "fl").replace('ﬃ', "ffi").replace('ﬄ', "ffl")
}

/// What a program that is not ours says of a PDF.
fn read(pdf: &[u8], program: &str, words: &[&str]) -> String {
    let mut reader = Command::new(program)
        .args(words)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("poppler stands on this machine");
    reader.stdin.take().unwrap().write_all(pdf).unwrap();
    String::from_utf8(reader.wait_with_output().unwrap().stdout).unwrap()
}

/// A sheet, how many pages it may take, and what it says, in this order.
struct Sheet {
    name: &'static str,
    pages: usize,
    says: &'static [&'static str],
    /// What must not stand on it.
    hides: &'static [&'static str],
}

const SHEETS: &[Sheet] = &[
    Sheet {
        name: "slip",
        pages: 1,
        says: &[
            "Salt for a generator",
            "Never all at once",
            "16,596 US gal",
            "3,200 ppm",
            "75.00",
            "240 lb",
            "Saltwright",
        ],
        hides: &["Unopened bags"],
    },
    Sheet {
        name: "days",
        pages: 1,
        says: &[
            "The days at the pool",
            "Generator off",
            "May 21, 2027, 9:00 AM",
            "May 22, 2027, 9:00 AM",
            "May 24, 2027, 9:00 AM",
        ],
        hides: &["Unopened bags"],
    },
    Sheet { name: "record", pages: 4, says: &["240 lb", "Unopened bags"], hides: &["The days at the pool"] },
    Sheet {
        name: "class",
        pages: 1,
        says: &["For learning", "16,596 US gal", "How much is the salt to rise?", "Which of the figures"],
        hides: &["390.1", "2,800 ppm\n", "240 lb"],
    },
    Sheet {
        name: "answers",
        pages: 1,
        says: &["2,800 ppm", "387.8 lb", "390.1 lb", "240 lb"],
        hides: &["For learning"],
    },
];

#[test]
fn every_sheet_fits_its_paper_and_says_its_part() {
    visit(&site(), &[], |page| {
        if !page.can(Need::Pdf, "all of it") {
            return;
        }
        let planned = "&bag.price=7.50&start.when=2027-05-21T09:00";
        page.open(&format!("{}#{}{planned}", site(), fixtures::link(fixtures::US)));
        for sheet in SHEETS {
            page.choose_paper(sheet.name);
            for (paper, width, height) in PAPERS {
                let pdf = page.print(width, height);
                let text = text_of(&pdf);
                assert!(
                    pages(&pdf) <= sheet.pages,
                    "{} pages of {paper} for the {}",
                    pages(&pdf),
                    sheet.name
                );
                let mut rest = text.as_str();
                for words in sheet.says {
                    let found = rest.split_once(words);
                    rest = found
                        .unwrap_or_else(|| panic!("{}, {paper}: {words} is not there\n{text}", sheet.name))
                        .1;
                }
                for words in sheet.hides {
                    assert!(!text.contains(words), "{}, {paper}: {words}\n{text}", sheet.name);
                }
            }
        }
    });
}
