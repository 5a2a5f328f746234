//! Does what comes from outside break the page, or what it writes for others break them? Typed numbers and moments,
//! tables, kept jobs, links' options, forms in other signs, links; calendars, tables, codes.
//!
//! What a job file, a link or a message holds is pairs of texts once the browser has parsed it: forms, then.
#![no_main]

mod forms;
mod store;

use form::contract::units::QuantityKind;
use form::contract::{Field, Output, OutputId};
use form::embed_options::{self, EmbedOptions, OPTIONS};
use form::exercise::variant;
use form::export::compact_link::{self, decode, encode, letters};
use form::export::csv::{Cells, form_of, table, typed};
use form::export::ics::{Entry, calendar};
use form::job_journal::{self, NotKept, Store};
use form::read::number::{self, Signs};
use form::read::{length, moment};
use form::relocalize::{hangs_on_signs, here};
use form::{Answer, Form, Shown, answer};
use libfuzzer_sys::fuzz_target;
use std::collections::BTreeSet;
use store::{Memory, sealed};

const LAWS: [fn(&[u8]); 10] =
    [numbers, moments, rows, read_back, entries, kept, options, arrivals, exercise_and_code, links];

fuzz_target!(|bytes: &[u8]| {
    if let [law, rest @ ..] = bytes {
        LAWS[*law as usize % LAWS.len()](rest);
    }
});

/// Texts between bytes that no text has.
fn texts(bytes: &[u8]) -> impl Iterator<Item = String> {
    bytes.split(|byte| *byte == 0xff).map(|part| String::from_utf8_lossy(part).into_owned())
}

fn word(bytes: &[u8]) -> u64 {
    bytes.iter().take(8).fold(0, |word, byte| word << 8 | u64::from(*byte))
}

const SIGNS: [Signs; 3] = [Signs::new('.', ','), Signs::new(',', '.'), Signs::new(',', '\u{202f}')];

fn signs(byte: Option<&u8>) -> Signs {
    let at = byte.copied().unwrap_or_default() as usize;
    Signs { grouped_from: 4 + at / 3 % 2, ..SIGNS[at % 3] }
}

/// What reads is a number, and what std reads of it too; what is written reads back to half its last place.
fn numbers(bytes: &[u8]) {
    let signs = signs(bytes.first());
    let rest = bytes.get(1..).unwrap_or_default();
    let text = String::from_utf8_lossy(rest);
    for read in [number::read, length::feet] {
        if let Ok(Some(typed)) = read(&text, signs) {
            assert!(typed.value.is_finite() && typed.other.is_none_or(f64::is_finite), "{text:?}");
            let plain = text.bytes().all(|b| b.is_ascii_digit() || b == b'.') && signs.decimal == '.';
            assert!(!plain || text.parse() == Ok(typed.value), "{text:?} is {typed:?}");
        }
    }
    if let Some(items) = length::items(&text, signs) {
        let joined = items.join(";");
        let again = length::items(&joined, signs);
        let one = !joined.contains(';') || items.last() == Some(&"");
        assert!(one || again.as_ref() == Some(&items), "{text:?} parts into {items:?} and {again:?}");
    }
    let (x, decimals) = (f64::from_bits(word(rest)), rest.get(8).map_or(0, |byte| *byte as usize % 8));
    let Some(written) = number::write(x, decimals, rest.len() % 2 == 0, signs) else {
        return assert!(!x.is_finite() || x.abs() * 10_f64.powi(decimals as i32) >= 0.99e15);
    };
    let read = number::read(&written, signs).unwrap().unwrap().value;
    let off = (read - x).abs() * 10_f64.powi(decimals as i32);
    assert!(off <= 0.5001 + 1e-15 * x.abs() * 10_f64.powi(decimals as i32), "{x} is written {written}");
    assert!(!written.starts_with('\u{2212}') || read != 0.0, "{x} is written {written}");
}

/// What reads is the same moment when it is written; whatever minute there is has a text that reads.
fn moments(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    if let Some(minutes) = moment::read(&text) {
        assert_eq!(moment::read(&moment::write(minutes)), Some(minutes), "{text:?}");
    }
    if let Some(day) = moment::read_day(&text) {
        assert_eq!(moment::read_day(&moment::write_day(day)), Some(day), "{text:?}");
    }
    let minutes = word(bytes) as i64;
    assert!(moment::read(&moment::write(minutes)).is_some(), "{minutes}: {}", moment::write(minutes));
    assert!(moment::read_day(&moment::write_day(minutes)).is_some(), "{minutes}");
}

/// Another library reads each cell as it was; what a spreadsheet would work out it takes for a text.
fn rows(bytes: &[u8]) {
    let decimal = if bytes.first().is_some_and(|byte| byte % 2 == 0) { ',' } else { '.' };
    let cells: Vec<_> = texts(bytes.get(1..).unwrap_or_default()).collect();
    let rows: Vec<Vec<&str>> = cells.chunks(5).map(|row| row.iter().map(String::as_str).collect()).collect();
    // A line with nothing on it is no row to others.
    let rows: Vec<&[&str]> = rows.iter().map(|row| &row[..]).filter(|row| **row != [""]).collect();
    let text = table(&rows, decimal);
    let text = text.strip_prefix('\u{feff}').expect("a mark at the beginning");
    let between = if decimal == ',' { b';' } else { b',' };
    let mut reader = csv::ReaderBuilder::new();
    let mut reader = reader.has_headers(false).flexible(true).delimiter(between).from_reader(text.as_bytes());
    let read: Vec<Vec<String>> = reader.deserialize().map(Result::unwrap).collect();
    assert_eq!(read.len(), rows.len(), "{text:?}");
    for (read, row) in read.iter().flatten().zip(rows.iter().copied().flatten()) {
        let number =
            read.len() > 1 && read.chars().skip(1).all(|c| c.is_ascii_digit() || c == '.' || c == ',');
        let formula = read.starts_with(['=', '+', '-', '@', '\t', '\r']);
        assert!(!formula || number && read.starts_with(['+', '-']), "{read:?} is worked out");
        assert!(read == row || read.strip_prefix('\'') == Some(row), "{row:?} reads {read:?}");
    }
}

/// A table that we read we also write, and read the same again.
fn read_back(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes.get(1..).unwrap_or_default());
    let (form, decimal) = match bytes.first().copied().unwrap_or_default() {
        byte if byte % 4 < 2 => (form_of(&text).unwrap_or_default(), byte),
        byte => (forms::form(bytes.get(1..).unwrap_or_default()), byte),
    };
    // Where a name is twice the last counts.
    let mut form = Form(form.0.iter().map(|(name, _)| (name.clone(), form.raw(name).into())).collect());
    let mut names = BTreeSet::new();
    form.0.retain(|(name, text)| !text.is_empty() && names.insert(name.clone()));
    let head: Cells = ["step", "name", "value", "unit", "when"];
    let mut all: Vec<Cells> = vec![head];
    all.extend(typed(&form, "typed"));
    all.push(["result", "basic.mass", "177", "kg", ""]);
    let all: Vec<&[&str]> = all.iter().map(|row| &row[..]).collect();
    if form.0.is_empty() {
        return;
    }
    let again = form_of(&table(&all, if decimal % 2 == 0 { ',' } else { '.' })).unwrap();
    let pairs = |form: &Form| form.0.iter().cloned().collect::<BTreeSet<_>>();
    assert_eq!(pairs(&again), pairs(&form));
}

/// No text makes a line of its own, no line is too long, and another library reads every entry.
fn entries(bytes: &[u8]) {
    let mut all: Vec<String> = texts(bytes).collect();
    let (more, now) = (all.pop().unwrap_or_default(), all.pop().unwrap_or_default());
    let entry = |three: &[String]| match three {
        [id, at, title] => Some(Entry { id: id.clone(), at: at.clone(), title: title.clone() }),
        _ => None,
    };
    let entries: Vec<Entry> = all.chunks(3).filter_map(entry).collect();
    let text = calendar(&entries, &more, &now, word(bytes));
    let lines: Vec<&str> = text.strip_suffix("\r\n").unwrap().split("\r\n").collect();
    assert!(lines.iter().all(|line| line.len() <= 75 && !line.contains(char::is_control)), "{text:?}");
    let unfolded = text.replace("\r\n ", "");
    let begins = |line: &str| line.split(':').next().unwrap_or_default().to_string();
    const ENTRY: [&str; 14] = [
        "BEGIN",
        "UID",
        "SEQUENCE",
        "DTSTAMP",
        "DTSTART",
        "DURATION",
        "SUMMARY",
        "DESCRIPTION",
        "BEGIN",
        "ACTION",
        "TRIGGER",
        "DESCRIPTION",
        "END",
        "END",
    ];
    let wanted =
        ["BEGIN", "VERSION", "PRODID"].into_iter().chain(entries.iter().flat_map(|_| ENTRY)).chain(["END"]);
    assert!(unfolded.lines().map(begins).eq(wanted.map(String::from)), "{text:?}");
    let read: icalendar::Calendar = text.parse().unwrap();
    let titles = read.components.iter().filter_map(|one| {
        use icalendar::Component;
        one.as_event().map(|event| event.get_summary().unwrap_or_default().to_string())
    });
    let clean = |text: &str| text.chars().filter(|c| !c.is_control() || *c == '\n').collect::<String>();
    assert!(titles.eq(entries.iter().map(|entry| clean(&entry.title))), "{text:?}");
}

/// Whatever lies in the store: what is kept is read, what is cut is not, and what was kept before it is.
fn kept(bytes: &[u8]) {
    let store = Memory::default();
    let mut all = texts(bytes);
    let mut next = || all.next().unwrap_or_default();
    let (job, first, second) = (next(), next(), next());
    for slot in ["a", "b"] {
        let text = next();
        store.set(&format!("saltwright.{job}.{slot}"), &text);
        store.set(&format!("saltwright.{}.{slot}", next()), &sealed(&text));
    }
    store.set(&next(), &next());
    for (job, kept) in job_journal::jobs(&store) {
        assert_eq!(job_journal::read(&store, &job), Some(kept.clone()));
        assert!(moment::read(&moment::write(kept.saved as i64)).is_some(), "{kept:?}");
    }
    let known = job_journal::read(&store, &job).map_or(0, |kept| kept.number);
    let there = job_journal::read(&store, &job).map(|kept| kept.form);
    let number = match job_journal::write(&store, &job, &first, 1, known) {
        Ok(number) => number,
        Err(wrong) => return assert_eq!((wrong, known), (NotKept::NoStore, u64::MAX)),
    };
    assert_eq!(job_journal::read(&store, &job).map(|kept| kept.form), Some(first.clone()), "after {there:?}");
    if number < u64::MAX && first != second {
        let before = store.clone();
        assert_eq!(job_journal::write(&store, &job, &second, 2, number), Ok(number + 1));
        assert_eq!(job_journal::write(&store, &job, &first, 2, number), Err(NotKept::Newer));
        store.cut_what_differs(&before, bytes.len());
        assert_eq!(job_journal::read(&store, &job).map(|kept| kept.form), Some(first));
    }
}

/// What a link locks stays, whatever is handed in; its options are no part of the form.
fn options(bytes: &[u8]) {
    let mut pairs = Vec::new();
    let mut all = texts(bytes).peekable();
    while let (Some(name), Some(text)) = (all.next(), all.next()) {
        // A place in a list, so that names are met again.
        let known = |place: u8| match place as usize {
            place if place < OPTIONS.len() => OPTIONS[place].name().to_string(),
            place => Field::ALL[place % Field::ALL.len()].name().to_string(),
        };
        pairs.push((if let [place] = name.as_bytes() { known(*place) } else { name }, text));
    }
    let (link, part) = pairs.split_at(pairs.len() / 2);
    let (link, part) = (Form(link.to_vec()), Form(part.to_vec()));
    let mut form = link.clone();
    let options = EmbedOptions::take(&mut form, |tell| tell == "https://host.example");
    assert!(form.0.iter().all(|(name, _)| !embed_options::is_option(name)));
    assert!(options.tell.is_empty() || options.tell == "https://host.example");
    let lock = link.text("lock");
    for (name, _) in &form.0 {
        let locked = lock.split(',').any(|locked| locked == name);
        let said = options.value(name, &part).unwrap_or_default();
        assert_eq!(said, if locked { form.raw(name) } else { part.raw(name) }, "{name} locked: {locked}");
    }
    for (name, _) in &part.0 {
        let free = form.0.iter().all(|(locked, _)| locked != name);
        assert!(!free || options.value(name, &part) == Some(part.raw(name)), "{name}");
    }
}

/// A form means here what it means in its own signs and units, and hangs on its signs where it says so.
fn arrivals(bytes: &[u8]) {
    let [from, to, settle, rest @ ..] = bytes else { return };
    let (own, theirs) = (signs(Some(to)), signs(Some(from)));
    let mut form = forms::form(rest);
    form.0.retain(|(name, _)| !name.starts_with("sign."));
    let with = |form: &Form, signs: Signs| {
        let signs = [("sign.decimal", signs.decimal), ("sign.group", signs.group)];
        let signs = signs.map(|(name, sign)| (name.to_string(), sign.to_string()));
        Form(form.0.iter().cloned().chain(signs).collect())
    };
    let units = [("pool.length.unit", "m"), ("pool.volume.unit", "[gal_us]"), ("salt.now.unit", "[ppm]")];
    let units = units.map(|(name, code)| (name.to_string(), code.to_string()));
    let come = here(&with(&form, theirs), own, &units[..*settle as usize % 4]);
    assert!(come.0.iter().all(|(name, _)| !name.starts_with("sign.")));
    alike(&answer(&with(&form, theirs)), &answer(&with(&come, own)), &form);
    assert_eq!(here(&come, own, &units[..*settle as usize % 4]), come, "a second time");
    if !hangs_on_signs(&form) {
        alike(&answer(&with(&form, theirs)), &answer(&with(&form, own)), &form);
    }
}

/// What is understood of both is the same.
fn alike(a: &Answer, b: &Answer, form: &Form) {
    let understood = |output: &OutputId| matches!(output, OutputId::Echo(_) | OutputId::EchoCount(_));
    for (output, one) in a.outputs.iter().filter(|(output, _)| understood(output)) {
        let name = output.name();
        let Some(two) = b.shown(*output) else { continue };
        let [x, y] = [one, two].map(|shown: &Shown| shown.number.map_or(0.0, |(x, _)| x));
        // A length is told to a millimetre, or a thousandth of a foot.
        let of_length =
            one.number.is_some_and(|(_, unit)| unit.is_some_and(|unit| unit.kind == QuantityKind::Length));
        let told = if of_length { 1e-3 } else { 1e-7 };
        assert!((x - y).abs() <= 1e-5 * x.abs() + told, "{name} is {x} and {y} of {form:?}");
    }
    let [area, other] =
        [a, b].map(|answer| answer.shown(Output::MeasuredArea).and_then(|shown| shown.number));
    if let Some((x, y)) = area.zip(other) {
        assert!((x.0 - y.0).abs() <= 1e-4 * x.0.abs(), "the surface is {} and {} of {form:?}", x.0, y.0);
    }
}

/// What an exercise fills in lies in its range and is one of its steps; a code is a path.
fn exercise_and_code(bytes: &[u8]) {
    let mut all = texts(bytes);
    let mut next = || all.next().unwrap_or_default();
    let (number, field, range) = (next(), next(), next());
    // Three numbers, or whatever an author may have written.
    let range = match bytes {
        [a, b, c, d, ..] if a % 2 == 0 => format!("{a}.{b} {c}{d} 0.{d}"),
        _ => range,
    };
    let number = variant::read(&number).unwrap_or(1);
    let value = variant::value(number, &field, &range, signs(bytes.first()));
    assert_eq!(value, variant::value(number, &field, &range, signs(bytes.first())));
    let read = |text: &str| number::read(text, Signs::default()).ok().flatten().map(|typed| typed.value);
    let ends: Vec<f64> = range.split_ascii_whitespace().map_while(read).collect();
    match (value, &ends[..]) {
        (Some(value), []) => assert!(range.split_ascii_whitespace().any(|part| part == value), "{value:?}"),
        (Some(value), [least, most, step]) => {
            let value = number::read(&value, signs(bytes.first())).unwrap().unwrap().value;
            let within = value >= least - 0.5 * step && value <= most + 0.5 * step;
            let steps = (value - least) / step;
            assert!(within && (steps - steps.round()).abs() < 1e-5, "{value} of {range:?}");
        }
        (Some(value), _) => panic!("{value:?} of {range:?}"),
        (None, _) => {}
    }
    if let Some((width, path)) = form::export::qr::code(&next()) {
        let own = |c: char| c.is_ascii_digit() || "Mhv- ".contains(c);
        assert!(width > 0 && path.starts_with('M') && path.chars().all(own), "{path}");
    }
}

/// What a link holds goes into a link as it came; letters stand for their bytes, and no others do.
fn links(bytes: &[u8]) {
    let of_letters = letters(bytes);
    assert_eq!(compact_link::bytes(&of_letters).as_deref(), Ok(bytes));
    let text = String::from_utf8_lossy(bytes);
    if let Ok(read) = compact_link::bytes(&text) {
        assert_eq!(letters(&read), text);
    }
    if let Ok(form) = decode(bytes) {
        let mut last = form.clone();
        let mut names = BTreeSet::new();
        last.0.reverse();
        last.0.retain(|(name, _)| names.insert(name.clone()));
        last.0.reverse();
        // Nothing is as on this page, so that all of it goes.
        let blank = Form(last.0.iter().map(|(name, text)| (name.clone(), [text, "x"].concat())).collect());
        assert_eq!(decode(&encode(&form, &blank, true)), Ok(last));
    }
    for named in [false, true] {
        let link = encode(&forms::form(bytes), &Form::default(), named);
        let again = decode(&link).unwrap();
        assert_eq!(encode(&again, &Form::default(), named), link);
    }
}
