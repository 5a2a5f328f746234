//! Is what was typed ever lost, and can what goes out be read by others?
//!
//! The store is cut, filled, wiped and shared on purpose. Calendars, tables and codes are read back by libraries that
//! are not ours: `icalendar`, `csv`, `rqrr`.

use evidence::draw::Draw;
use form::export::csv::table;
use form::export::ics::{Entry, calendar};
use form::export::qr::code;
use form::job_journal::{self, NotKept, Store};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// A store that can be made to fail.
#[derive(Default)]
struct Frail {
    texts: RefCell<BTreeMap<String, String>>,
    /// How many bytes of the next text it takes before the power goes; all of it by default.
    cut: Cell<Option<usize>>,
    /// How many bytes it holds in all.
    room: Cell<Option<usize>>,
    /// It throws at every call.
    throws: Cell<bool>,
}

impl Store for Frail {
    fn get(&self, key: &str) -> Option<String> {
        (!self.throws.get()).then(|| self.texts.borrow().get(key).cloned())?
    }

    fn set(&self, key: &str, text: &str) -> bool {
        if self.throws.get() {
            return false;
        }
        let others: usize =
            self.texts.borrow().iter().filter(|(k, _)| *k != key).map(|(_, text)| text.len()).sum();
        if self.room.get().is_some_and(|room| others + text.len() > room) {
            return false;
        }
        let end = self.cut.get().map_or(text.len(), |end| end.min(text.len()));
        let end = (0..=end).rev().find(|end| text.is_char_boundary(*end)).unwrap_or(0);
        self.texts.borrow_mut().insert(key.into(), text[..end].into());
        true
    }

    fn remove(&self, key: &str) {
        self.texts.borrow_mut().remove(key);
    }

    fn keys(&self) -> Vec<String> {
        if self.throws.get() { Vec::new() } else { self.texts.borrow().keys().cloned().collect() }
    }
}

/// A form as a link has it, of any length, with letters of more than one byte.
fn form(d: &mut Draw, n: usize) -> String {
    let more = "pool.volume=50&job.name=Süd €𝄞&".repeat(d.below(6));
    format!("n={n}&{more}")
}

#[test]
fn ten_thousand_cuts_leave_the_new_or_the_one_before() {
    let mut d = Draw(1);
    let (mut cut_short, mut whole) = (0, 0);
    for _ in 0..10_000 {
        let store = Frail::default();
        let (mut number, mut last) = (0, None);
        for n in 0..d.below(4) + 1 {
            let text = form(&mut d, n);
            number = job_journal::write(&store, "job", &text, n as u64, number).unwrap();
            last = Some(text);
        }
        let text = form(&mut d, 99);
        store.cut.set(Some(d.below(text.len() + 40)));
        let wrote = job_journal::write(&store, "job", &text, 99, number);
        let read = job_journal::read(&store, "job").map(|kept| kept.form);
        if read.as_ref() == Some(&text) {
            assert_eq!(wrote, Ok(number + 1));
            whole += 1;
        } else {
            assert_eq!(read, last, "neither the new one nor the one before");
            assert_eq!(wrote, Err(NotKept::NoStore), "told as kept, and not there");
            cut_short += 1;
        }
        // Afterwards it goes on.
        store.cut.set(None);
        let known = job_journal::read(&store, "job").map_or(0, |kept| kept.number);
        assert_eq!(job_journal::write(&store, "job", "n=100", 100, known), Ok(known + 1));
        assert_eq!(job_journal::read(&store, "job").unwrap().form, "n=100");
    }
    assert!(cut_short > 1_000 && whole > 1_000, "{cut_short} cut short, {whole} whole");
}

#[test]
fn any_other_text_is_never_taken_for_a_job() {
    let store = Frail::default();
    job_journal::write(&store, "job", "pool.volume=50", 7, 0).unwrap();
    let text = store.get("saltwright.job.a").or(store.get("saltwright.job.b")).unwrap();
    let key = store.keys().into_iter().find(|key| key.starts_with("saltwright.job.")).unwrap();
    for at in 0..text.len() {
        let mut bytes = text.clone().into_bytes();
        bytes[at] ^= 1;
        store.texts.borrow_mut().insert(key.clone(), String::from_utf8(bytes).unwrap());
        assert_eq!(job_journal::read(&store, "job"), None, "byte {at} turned");
    }
    for foreign in ["", " ", "{}", "1 2 3", "0 0 0 x", "99999999999999999999 1 1 x"] {
        store.texts.borrow_mut().insert(key.clone(), foreign.into());
        assert_eq!(job_journal::read(&store, "job"), None, "{foreign:?}");
        assert!(job_journal::jobs(&store).is_empty());
    }
}

/// Whoever may write to the store may seal what he writes.
#[test]
fn a_forged_job_can_be_read_and_after_the_last_number_none_is_kept() {
    let text = format!("{} {} pool.volume=50", u64::MAX, u64::MAX);
    let sum = text
        .bytes()
        .fold(0xcbf2_9ce4_8422_2325_u64, |sum, byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3));
    let store = Frail::default();
    store.set("saltwright.job.a", &format!("{sum} {text}"));
    let kept = job_journal::read(&store, "job").unwrap();
    assert_eq!(kept.form, "pool.volume=50");
    assert!(form::read::moment::read(&form::read::moment::write(kept.saved as i64)).is_some());
    assert_eq!(job_journal::write(&store, "job", "pool.volume=60", 1, kept.number), Err(NotKept::NoStore));
}

#[test]
fn a_store_that_is_full_throws_or_is_wiped_is_told() {
    let store = Frail::default();
    let number = job_journal::write(&store, "job", "n=1", 1, 0).unwrap();
    store.room.set(Some(60));
    assert_eq!(job_journal::write(&store, "job", &"x".repeat(100), 2, number), Err(NotKept::NoStore));
    assert_eq!(job_journal::read(&store, "job").unwrap().form, "n=1", "what was there stays");
    store.room.set(None);
    store.throws.set(true);
    assert_eq!(job_journal::write(&store, "job", "n=2", 2, number), Err(NotKept::NoStore));
    assert_eq!(job_journal::read(&store, "job"), None);
    store.throws.set(false);
    // Wiped while the page stands: the next write keeps all of it again.
    store.texts.borrow_mut().clear();
    assert_eq!(job_journal::write(&store, "job", "n=3", 3, number), Ok(number + 1));
    assert_eq!(job_journal::read(&store, "job").unwrap().form, "n=3");
}

#[test]
fn two_tabs_never_write_over_each_other() {
    let mut d = Draw(2);
    for _ in 0..2_000 {
        let store = Frail::default();
        let mut known = [0, 0];
        let mut newest = String::new();
        for n in 0..12 {
            let tab = d.below(2);
            let text = format!("tab={tab}&n={n}");
            let latest = job_journal::read(&store, "job").map_or(0, |kept| kept.number);
            match job_journal::write(&store, "job", &text, n, known[tab]) {
                Ok(number) => {
                    assert_eq!(known[tab], latest, "written over a newer one");
                    (known[tab], newest) = (number, text);
                }
                Err(NotKept::Newer) => {
                    assert!(known[tab] < latest);
                    known[tab] = latest; // Its person has chosen: theirs, or mine over it.
                }
                Err(NotKept::NoStore) => panic!("the store works"),
            }
            assert_eq!(job_journal::read(&store, "job").map_or(String::new(), |kept| kept.form), newest);
        }
    }
}

#[test]
fn jobs_are_listed_the_last_saved_first() {
    let store = Frail::default();
    for (job, saved) in [("1", 5), ("2", 9), ("3", 7)] {
        job_journal::write(&store, job, &format!("job.name={job}"), saved, 0).unwrap();
    }
    store.set("other.thing", "x");
    let names = |store: &Frail| job_journal::jobs(store).into_iter().map(|(job, _)| job).collect::<Vec<_>>();
    assert_eq!(names(&store), ["2", "3", "1"]);
    assert_eq!(job_journal::in_hand(&store).as_deref(), Some("2"));
    job_journal::take_up(&store, "1");
    assert_eq!(job_journal::in_hand(&store).as_deref(), Some("1"));
    job_journal::drop(&store, "2");
    assert_eq!(names(&store), ["3", "1"]);
    assert_eq!(store.get("other.thing").as_deref(), Some("x"), "what is not ours stays");
}

const LETTERS: &[&str] = &["a", "ü", "€", "𝄞", " ", ",", ";", "\\", "\n", "\"", ":", "=", "x", "\u{202e}"];

fn words(d: &mut Draw, most: usize) -> String {
    (0..d.below(most)).map(|_| d.pick(LETTERS)).collect()
}

#[test]
fn calendars_are_read_back_by_another_library() {
    use icalendar::{Calendar, CalendarComponent, Component};
    let mut d = Draw(3);
    for _ in 0..1_000 {
        let entries: Vec<_> = (0..d.below(6) + 1)
            .map(|n| Entry {
                id: format!("7.step.brush.{n}"),
                at: "2027-05-21T13:00".into(),
                title: format!("Brush {}", words(&mut d, 60)),
            })
            .collect();
        let more = format!("https://pool.example/#sw1&pool.volume=50&{}", words(&mut d, 300));
        let text = calendar(&entries, &more, "2027-05-20T09:30", 4);
        assert!(
            text.ends_with("\r\n") && text.split("\r\n").all(|line| line.len() <= 75 && !line.contains('\n'))
        );
        let read: Calendar = text.parse().unwrap_or_else(|error| panic!("{error}: {text}"));
        let events: Vec<_> = read
            .components
            .iter()
            .filter_map(|c| if let CalendarComponent::Event(event) = c { Some(event) } else { None })
            .collect();
        assert_eq!(events.len(), entries.len());
        for (event, entry) in events.iter().zip(&entries) {
            let plain = |text: &str| {
                text.replace("\\n", "\n").replace("\\,", ",").replace("\\;", ";").replace("\\\\", "\\")
            };
            let same = |got: Option<&str>, want: &str| {
                let got = got.unwrap_or_default();
                assert!(got == want || plain(got) == want, "{got:?} is not {want:?}");
            };
            same(event.get_summary(), &entry.title);
            same(event.get_description(), &more);
            assert_eq!(event.get_uid(), Some(format!("{}@saltwright", entry.id).as_str()));
            assert_eq!(event.property_value("DTSTART"), Some("20270521T130000"));
            assert_eq!(event.property_value("DTSTAMP"), Some("20270520T093000Z"));
            assert_eq!(event.property_value("SEQUENCE"), Some("4"));
        }
    }
}

#[test]
fn no_text_makes_a_line_of_a_calendar() {
    let hostile = "1\r\nBEGIN:VALARM\nX:\r\u{85}";
    let entry = Entry { id: hostile.into(), at: hostile.into(), title: hostile.into() };
    let text = calendar(&[entry], hostile, hostile, 1);
    let names: Vec<_> = text.lines().map(|line| line.split(':').next().unwrap()).collect();
    assert_eq!(names.join(" ").matches("BEGIN").count(), 3, "{text}");
    assert!(!names.contains(&"X") && text.replace("\r\n", "").chars().all(|c| !c.is_control()), "{text:?}");
}

#[test]
fn tables_are_read_back_by_another_library() {
    let mut d = Draw(4);
    for decimal in ['.', ','] {
        for _ in 0..1_000 {
            let cells: Vec<Vec<String>> = (0..d.below(5) + 1)
                .map(|_| {
                    (0..4)
                        .map(|_| {
                            d.pick(&["", "=1+1", "-5", "+3.2", "@a", "-x", "1,5"]).to_string()
                                + &words(&mut d, 8)
                        })
                        .collect()
                })
                .collect();
            let rows: Vec<Vec<&str>> =
                cells.iter().map(|row| row.iter().map(String::as_str).collect()).collect();
            let rows: Vec<&[&str]> = rows.iter().map(|row| &row[..]).collect();
            let text = table(&rows, decimal);
            let text = text.strip_prefix('\u{feff}').expect("a byte-order mark");
            let between = if decimal == ',' { b';' } else { b',' };
            let mut reader =
                csv::ReaderBuilder::new().has_headers(false).delimiter(between).from_reader(text.as_bytes());
            let read: Vec<_> = reader.records().map(|record| record.unwrap()).collect();
            assert_eq!(read.len(), cells.len());
            for (record, row) in read.iter().zip(&cells) {
                for (got, want) in record.iter().zip(row) {
                    let figure = |c: char| c.is_ascii_digit() || ".,".contains(c);
                    let number = want.len() > 1 && want.chars().skip(1).all(figure);
                    let formula = want.starts_with([
                        '=', '+', '-', '@', '\t', '\'', '\r', '\n', '\0', '＝', '＋', '－', '＠',
                    ]) && !(number && want.starts_with(['+', '-']));
                    assert_eq!(got, if formula { format!("'{want}") } else { want.clone() });
                }
            }
        }
    }
}

/// The pixels of a code, eight a module, from its path: only `M x y h n v1 h -n` stands in it.
fn pixels(width: i32, path: &str) -> (usize, Vec<bool>) {
    let side = width as usize * 8;
    let mut dark = vec![false; side * side];
    for piece in path.split('M').skip(1) {
        let numbers: Vec<i32> = piece.split(['M', 'h', 'v', ' ']).map(|n| n.parse().unwrap()).collect();
        let [x, y, run, 1, back] = numbers[..] else { panic!("{piece}") };
        assert_eq!(run, -back);
        for px in x * 8..(x + run) * 8 {
            for py in y * 8..(y + 1) * 8 {
                dark[py as usize * side + px as usize] = true;
            }
        }
    }
    (side, dark)
}

#[test]
fn codes_are_read_back_by_another_library() {
    let mut d = Draw(5);
    for _ in 0..60 {
        let link = format!("https://pool.example/#sw1&{}", "pool.volume=16596&x=%C3%BC&".repeat(d.below(34)));
        let (width, path) = code(&link).expect("short enough");
        let (side, dark) = pixels(width, &path);
        let mut image =
            rqrr::PreparedImage::prepare_from_greyscale(
                side,
                side,
                |x, y| if dark[y * side + x] { 0 } else { 255 },
            );
        let found = image.detect_grids();
        assert_eq!(found.len(), 1, "{} letters", link.len());
        assert_eq!(found[0].decode().unwrap().1, link);
    }
    assert!(code(&"x".repeat(998)).is_none() && code(&"x".repeat(997)).is_some(), "997 bytes is the most");
}
