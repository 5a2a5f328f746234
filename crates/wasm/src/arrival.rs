//! What does a form from elsewhere mean on this page? Its signs may be another language's, its units others than the
//! page has settled.
//!
//! `1,250` is a thousand times less in French. Whatever would be read otherwise here than where it was typed is written
//! anew, in this page's own signs and units; all else stays as it was typed.

use crate::answer::joined;
use crate::field::{self, Answered};
use crate::form::Form;
use crate::number::{self, Signs};
use crate::unit::{UNITS, Unit};

/// The names under which a form's signs travel with it.
const SIGNS: &str = "sign.";

/// Does what stands in a form read otherwise in another language? Then its signs have to go with it.
///
/// ```
/// use wasm::{Form, arrival::hangs_on_signs};
/// assert!(hangs_on_signs(&Form::from([("pool.volume", "16,596")])));
/// assert!(!hangs_on_signs(&Form::from([("pool.volume", "62.82"), ("job.note", "1,250")])));
/// ```
pub fn hangs_on_signs(form: &Form) -> bool {
    let [point, comma] = [('.', ','), (',', '.')].map(|(decimal, group)| Signs { decimal, group });
    let differs = |text: &str| number::read(text, point) != number::read(text, comma);
    form.0.iter().any(|(name, text)| is_number(name) && text.split(';').any(differs))
}

fn is_number(name: &str) -> bool {
    let number = |found: &field::Field| matches!(found.answer, Answered::Number(..) | Answered::List(..));
    name.starts_with("try.") || field::find(name).is_some_and(number)
}

/// The same form in the signs of this page, and in the units that it has settled: names of questions with codes.
///
/// ```
/// use wasm::{Form, arrival::here, number::Signs};
/// let english = Form::from([
///     ("pool.volume", "16,596"), ("pool.volume.unit", "[gal_us]"), ("salt.now", "0.5"), ("job.note", "1,250"),
///     ("sign.decimal", "."), ("sign.group", ","),
/// ]);
/// let french = Signs { decimal: ',', group: '\u{202f}' };
/// let read = here(&english, french, &[]);
/// assert_eq!(read.text("pool.volume"), "16596");
/// assert_eq!((read.text("salt.now"), read.text("job.note")), ("0.5", "1,250")); // as typed: it reads the same
/// let read = here(&english, french, &[("pool.volume.unit".into(), "m3".into())]);
/// assert_eq!((read.text("pool.volume"), read.text("pool.volume.unit")), ("62,822694", "m3"));
/// ```
pub fn here(form: &Form, own: Signs, settled: &[(String, String)]) -> Form {
    let theirs = if form.text("sign.decimal").is_empty() { own } else { form.signs() };
    let mut out = Form::default();
    for (name, text) in form.0.iter().filter(|(name, _)| !name.starts_with(SIGNS)) {
        let asked = field::unit_of(name);
        if let Some((_, code)) = settled.iter().find(|(unit, _)| unit == name) {
            out.0.push((name.clone(), code.clone()));
            continue;
        }
        let unit = settled.iter().find(|(unit, _)| unit == asked && asked != name.as_str());
        let units = unit
            .and_then(|(_, code)| Some((form.text(asked), code.as_str())).filter(|(from, to)| from != to));
        let text = if is_number(name) {
            let parts: Vec<String> = text.split(';').map(|part| one(part, theirs, own, units)).collect();
            let mut all = String::new();
            for (at, part) in parts.iter().enumerate() {
                all = joined(&[&all, if at > 0 { ";" } else { "" }, part]);
            }
            all
        } else {
            text.clone()
        };
        out.0.push((name.clone(), text));
    }
    out
}

/// One number; as it stands where it means the same.
fn one(text: &str, theirs: Signs, own: Signs, units: Option<(&str, &str)>) -> String {
    let Ok(Some(typed)) = number::read(text, theirs) else { return text.into() };
    let mut value = typed.value;
    if let Some((from, to)) = units {
        // What is typed in no unit means nothing yet; the page says so beside it.
        let Some([from, to]) = alike(from, to) else { return text.into() };
        value = to.outward(from.inward(value));
        value = (value * 1e6).round() / 1e6;
    } else if number::read(text, own) == Ok(Some(typed)) {
        return text.into();
    }
    plain(value, own)
}

/// The units of two codes that measure the same.
fn alike(from: &str, to: &str) -> Option<[&'static Unit; 2]> {
    UNITS.iter().filter(|unit| unit.code == from).find_map(|from| Some([from, Unit::find(from.kind, to)?]))
}

/// With as many decimals as it takes, and no sign between thousands: it is to be read back.
pub fn plain(value: f64, signs: Signs) -> String {
    let text = crate::Shown::plain(value, None, Signs { group: ' ', ..signs }).text;
    text.chars().filter(|c| *c != ' ').map(|c| if c == '\u{2212}' { '-' } else { c }).collect()
}
