//! Is a job kept through whatever befalls a store, and does it leave and come back whole?

use crate::engine::Need;
use crate::environment::site;
use crate::fixtures::{self, Rows};
use crate::session::{Session, visit};
use serde_json::Value;
use std::io::Write;
use std::process::{Command, Stdio};

/// What is typed, and what is seen to come of it.
const STATE: &str =
    "return [values(), all('#sheet output').filter(seen).map((o) => `${o.name}: ${o.textContent}`)]";

/// A store that throws whenever it is asked for, as in a sandbox.
const THROWS: &str = "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });";
/// One that takes nothing.
const FULL: &str =
    "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };";
/// From now on, what the page hands out as files is caught before it reaches the disk. Asked of the page that is there:
/// one that its worker brings passes by what a proxy puts into pages.
pub const FILES: &str = "window.files = [];
    URL.createObjectURL = (blob) => { blob.text().then((text) => files.push(text)); return 'data:,'; };
    HTMLAnchorElement.prototype.click = () => {};";

fn kept(page: &Session, how: &str) {
    page.wait(&format!("return all('[data-when=\"kept.{how}\"]').some((e) => !e.hidden)"));
}

#[test]
fn a_store_that_throws_or_is_full_is_told_and_the_address_holds_the_job() {
    for store in [THROWS, FULL] {
        visit(&site(), &[], |page| {
            page.before_every_page(store);
            page.open(&site());
            page.fill(fixtures::US);
            kept(page, "no");
            let typed = page.ask(STATE);
            assert!(page.text("return location.hash").starts_with("#sw1&"), "{store}");
            page.reload();
            assert_eq!(page.ask(STATE), typed, "{store}");
        });
    }
}

#[test]
fn a_store_that_is_wiped_is_filled_again() {
    visit(&site(), &[], |page| {
        page.fill(fixtures::US);
        kept(page, "yes");
        page.ask("localStorage.clear()");
        page.tab_to("bag.on-hand");
        page.press("3");
        page.wait("return Object.values(localStorage).some((text) => text.includes('bag.on-hand=3'))");
        let typed = page.ask(STATE);
        page.reload();
        assert_eq!(page.ask(STATE), typed);
    });
}

#[test]
fn a_newer_copy_of_another_tab_is_never_written_over_unasked() {
    visit(&site(), &[], |page| {
        page.fill(fixtures::US);
        page.wait(
            "return Object.values(localStorage).some((text) => text.includes('bag.size.unit=%5Blb_av'))",
        );
        let first = page.window();
        let second = page.new_tab();
        page.open(&site());
        assert_eq!(
            page.text("return value('pool.volume')"),
            "16596",
            "the other tab goes on with the same job"
        );
        page.fill(&[("bag.on-hand", "2")]);
        page.wait("return Object.values(localStorage).some((text) => text.includes('bag.on-hand=2'))");

        page.to_window(&first);
        kept(page, "other");
        page.tab_to("bag.on-hand");
        page.press("5");
        std::thread::sleep(std::time::Duration::from_millis(600));
        assert!(
            page.holds("return !Object.values(localStorage).some((text) => text.includes('bag.on-hand=5'))")
        );
        page.click("[data-act='keep-mine']");
        page.wait("return Object.values(localStorage).some((text) => text.includes('bag.on-hand=5'))");

        page.to_window(&second);
        kept(page, "other");
        page.click("[data-act='take-theirs']");
        assert_eq!(page.text("return value('bag.on-hand')"), "5");
        assert!(page.holds("return all('[data-when=\"kept.other\"]').every((e) => e.hidden)"));
    });
}

#[test]
fn several_jobs_are_kept_opened_and_deleted() {
    visit(&site(), &[], |page| {
        page.fill(fixtures::US);
        kept(page, "yes");
        let first = page.ask(STATE);
        page.click("[data-act='new']");
        assert_eq!(page.text("return value('pool.volume')"), "");
        page.reload();
        assert_eq!(page.text("return value('pool.volume')"), "", "a new job stays the one in hand");
        page.fill(&[("pool.volume", "50"), ("pool.volume.unit", "m3")]);
        page.wait("return all('.jobs > li').length === 2");
        page.click(".jobs [data-act='open-job']:not([hidden])");
        assert_eq!(page.ask(STATE), first);
        page.click(".jobs li:has([data-act='open-job']:not([hidden])) [data-act='drop-job']");
        page.wait("return all('.jobs > li').length === 1");
        assert!(page.says("can.undo"), "what was deleted can be put back");
    });
}

/// Chooses a file with this text.
pub fn choose(page: &Session, text: &str) {
    page.ask(&format!(
        "const chosen = new DataTransfer();
        chosen.items.add(new File([{text:?}], 'job.json'));
        const field = all('input[type=file]')[0];
        field.files = chosen.files;
        field.dispatchEvent(new Event('change', {{ bubbles: true }}));"
    ));
}

pub fn file(page: &Session, act: &str) -> String {
    page.ask(FILES);
    page.click(&format!("[data-act='{act}']"));
    page.wait("return files.length === 1");
    page.text("return files[0]")
}

#[test]
fn a_job_goes_out_as_a_file_and_comes_back_whole() {
    visit(&site(), &[], |page| {
        page.fill(fixtures::US);
        page.fill(&[("job.name", "Süd <b>1</b>")]);
        let typed = page.ask(STATE);
        let text = file(page, "save");
        let read: Value = serde_json::from_str(&text).unwrap();
        assert_eq!((&read["saltwright"], &read["form"]["job.name"]), (&1.into(), &"Süd <b>1</b>".into()));

        page.click("[data-act='new']");
        choose(page, &text);
        page.wait("return all('[data-when=\"file.open\"]').some((e) => !e.hidden)");
        assert_eq!(page.ask(STATE), typed);
        assert!(page.holds("return all('b').every((b) => b.textContent !== '1')"), "a name became HTML");

        // A file of a later edition: what this page does not know goes out again with it.
        let later =
            r#"{"saltwright":2,"form":{"pool.volume":"77","pool.volume.unit":"m3","moon.phase":"full"}}"#;
        choose(page, later);
        page.wait("return all('[data-when=\"file.newer\"]').some((e) => !e.hidden)");
        assert_eq!(page.text("return value('pool.volume')"), "77");
        let again: Value = serde_json::from_str(&file(page, "save")).unwrap();
        assert_eq!(again["form"]["moon.phase"], "full");

        for wrong in ["", "{}", "[1]", r#"{"saltwright":1}"#, r#"{"saltwright":1,"form":{"a":1}}"#, "<html>"]
        {
            choose(page, wrong);
            page.wait("return all('[data-when=\"file.wrong\"]').some((e) => !e.hidden)");
            assert_eq!(page.text("return value('pool.volume')"), "77", "{wrong}");
        }
    });
}

/// The demo with the day it is planned for.
const PLANNED: Rows = &[("start.when", "2027-05-21T09:00")];

fn planned() -> String {
    let [(name, when)] = PLANNED else { unreachable!() };
    format!("{}#{}&{name}={when}&job.name=Quillane", site(), fixtures::link(fixtures::US))
}

#[test]
fn calendar_and_table_come_from_the_page() {
    visit(&planned(), &[], |page| {
        page.go("about:blank");
        page.set_clock("2027-05-20T12:00");
        page.open(&site());
        let text = file(page, "calendar");
        let calendar: icalendar::Calendar = text.parse().unwrap();
        assert!(calendar.components.len() > 8, "{text}");
        assert!(text.contains("SUMMARY:Put in the next salt"), "{text}");
        let unfolded = text.replace("\r\n ", "");
        assert!(
            unfolded.contains("DTSTART:20270521T090000") && unfolded.contains("#sw1&pool.volume=16596"),
            "{text}"
        );
        assert!(!unfolded.contains("Quillane"), "a name in a link");

        let text = file(page, "csv");
        let mut table = csv::ReaderBuilder::new()
            .flexible(true)
            .from_reader(text.trim_start_matches('\u{feff}').as_bytes());
        let rows: Vec<_> = table.records().map(|row| row.unwrap()).collect();
        let has = |name: &str, value: &str| rows.iter().any(|row| &row[1] == name && &row[2] == value);
        assert!(has("pool.volume", "16596") && has("buy.bags", "10") && has("stage.mass", "240"), "{text}");
    });
}

#[test]
fn the_code_on_the_slip_opens_the_same_job() {
    for address in [planned(), planned() + "&" + fixtures::READY] {
        code_on_slip(&address);
    }
}

fn code_on_slip(address: &str) {
    visit(address, &[], |page| {
        if !page.can(Need::Pdf, "all of it") {
            return;
        }
        page.choose_paper("slip");
        let pdf = page.print(21.0, 29.7);
        let mut painter = Command::new("pdftoppm")
            .args(["-gray", "-r", "300", "-f", "1", "-l", "1", "-"])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("pdftoppm stands on this machine");
        painter.stdin.take().unwrap().write_all(&pdf).unwrap();
        let image = painter.wait_with_output().unwrap().stdout;
        let (width, height, dots) = grey(&image);
        // Where a telephone would be held: the upper right of the page.
        let (left, wide, high) = (width * 6 / 10, width * 4 / 10, height * 3 / 10);
        let dot = |x: usize, y: usize| dots[y * width + left + x];
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(wide, high, dot);
        let grids = image.detect_grids();
        assert_eq!(grids.len(), 1, "codes on the slip");
        let link = grids[0].decode().unwrap().1;
        assert!(link.starts_with(&site()) && !link.contains("Quillane"), "{link}");
        let before = page.ask("return all('#sheet output').map((o) => `${o.name}: ${o.textContent}`)");
        page.ask("localStorage.clear()");
        page.go("about:blank");
        page.open(&link);
        assert_eq!(page.ask("return all('#sheet output').map((o) => `${o.name}: ${o.textContent}`)"), before);
    });
}

/// Width, height and dots of a portable graymap.
fn grey(image: &[u8]) -> (usize, usize, &[u8]) {
    let (mut words, mut at) = (Vec::new(), 0);
    while words.len() < 4 {
        let end = at + image[at..].iter().position(u8::is_ascii_whitespace).unwrap();
        words.push(std::str::from_utf8(&image[at..end]).unwrap());
        at = end + 1;
    }
    assert_eq!((words[0], words[3]), ("P5", "255"));
    (words[1].parse().unwrap(), words[2].parse().unwrap(), &image[at..])
}
