//! What does a form from elsewhere mean on this page? Its signs may be another language's, its units others than the
//! page has settled.
//!
//! `1,250` is a thousand times less in French. Whatever would be read otherwise here than where it was typed is written
//! anew, in this page's own signs and units; all else stays as it was typed.

use crate::contract::units::{QuantityKind, Unit};
use crate::contract::{Field, FieldId, FieldType, UnitRule};
use crate::form::Form;
use crate::read::length;
use crate::read::number::{self, Signs, Typed};
use crate::read::reader::Reader;
use crate::text::joined;

/// The names under which a form's signs travel with it.
const SIGNS: &str = "sign.";

/// Does what stands in a form read otherwise in another language? Then its signs have to go with it.
///
/// ```
/// use saltwright_form::{Form, relocalize::hangs_on_signs};
/// assert!(hangs_on_signs(&Form::from([("pool.volume", "16,596")])));
/// assert!(!hangs_on_signs(&Form::from([("pool.volume", "62.82"), ("job.note", "1,250")])));
/// ```
pub fn hangs_on_signs(form: &Form) -> bool {
    let (point, comma) = (Signs::new('.', ','), Signs::new(',', '.'));
    let differs = |name: &str, text: &str| {
        let read = |signs| {
            let asked = FieldId::unit_name(name);
            numbers(name, text, asked.map_or("", |asked| form.text(&asked)), signs)
        };
        read(point) != read(comma)
    };
    form.0.iter().any(|(name, text)| differs(name, text))
}

/// The numbers that a text holds, read as its question reads it; `None` for what can't be read, and for words.
fn numbers(name: &str, text: &str, unit: &str, signs: Signs) -> Option<Vec<Typed>> {
    let id = FieldId::find(name)?;
    let kind = id.field().map(|field| field.kind());
    let length = matches!(
        kind,
        Some(FieldType::List(..) | FieldType::Number(_, UnitRule::Asked(QuantityKind::Length, _)))
    );
    let read = if length && unit == "[ft_i]" { length::feet } else { number::read };
    match kind {
        Some(FieldType::List(..)) => {
            length::items(text, signs)?.iter().map(|item| read(item, signs).ok()?).collect()
        }
        Some(FieldType::Number(..)) => Some(vec![read(text, signs).ok()??]),
        None => Some(vec![read(text, signs).ok()??]),
        _ => None,
    }
}

/// The same form in the signs of this page, and in the units that it has settled: names of questions with codes.
///
/// ```
/// use saltwright_form::{Form, relocalize::here, read::number::Signs};
/// let english = Form::from([
///     ("pool.volume", "16,596"), ("pool.volume.unit", "[gal_us]"), ("salt.now", "0.5"), ("job.note", "1,250"),
///     ("sign.decimal", "."), ("sign.group", ","),
/// ]);
/// let french = Signs::new(',', '\u{202f}');
/// let read = here(&english, french, &[]);
/// assert_eq!(read.text("pool.volume"), "16596");
/// assert_eq!((read.text("salt.now"), read.text("job.note")), ("0.5", "1,250")); // as typed: it reads the same
/// let read = here(&english, french, &[("pool.volume.unit".into(), "m3".into())]);
/// assert_eq!((read.text("pool.volume"), read.text("pool.volume.unit")), ("62,822694", "m3"));
/// ```
pub fn here(form: &Form, own: Signs, settled: &[(String, String)]) -> Form {
    let theirs = if form.text(Field::SignDecimal.name()).is_empty() { own } else { form.signs() };
    let mut out = Form::default();
    for (name, text) in form.0.iter().filter(|(name, _)| !name.starts_with(SIGNS)) {
        let settled =
            |asked: &str| settled.iter().find(|(unit, _)| unit == asked).map(|(_, code)| code.as_str());
        let text = match settled(name) {
            Some(code) => code.into(),
            None => {
                let asked = FieldId::unit_name(name);
                let asked = asked.as_deref();
                let from = asked.map(|asked| form.text(asked)).filter(|code| !code.is_empty());
                let to = asked.and_then(settled).filter(|code| !code.is_empty());
                anew(name, text, [theirs, own], [from, to]).unwrap_or(text.clone())
            }
        };
        out.0.push((name.clone(), text));
    }
    out
}

/// The text of a number as it has to stand here, from their signs and unit to ours; `None` where it means the same
/// as it stands. Nothing where it can't be turned into our unit: it would be another amount.
fn anew(name: &str, text: &str, [theirs, own]: [Signs; 2], [from, to]: [Option<&str>; 2]) -> Option<String> {
    let unit = from.unwrap_or_default();
    let typed = numbers(name, text, unit, theirs)?;
    // What is typed in no unit is in the one that is settled.
    let turned = from.zip(to).filter(|(from, to)| from != to);
    if turned.is_none() && numbers(name, text, unit, own).as_ref() == Some(&typed) {
        return None;
    }
    let units = turned.map(|(from, to)| units(name, from, to));
    let mut all = String::new();
    for typed in typed {
        let value = match units {
            None => typed.value,
            Some(Some([from, to])) => (to.outward(from.inward(typed.value)) * 1e6).round() / 1e6,
            Some(None) => break,
        };
        all = joined(&[&all, if all.is_empty() { "" } else { "; " }, &plain(value, own)]);
    }
    Some(all)
}

/// The units of two codes for a field, as long as the one can be turned into the other.
fn units(name: &str, from: &str, to: &str) -> Option<[&'static Unit; 2]> {
    let (kind, squared) = match FieldId::find(name)?.field()?.kind() {
        FieldType::Number(_, UnitRule::Asked(kind, _) | UnitRule::Usual(kind, ..))
        | FieldType::List(_, UnitRule::Asked(kind, _)) => (*kind, false),
        FieldType::Number(_, UnitRule::Squared(_)) => (QuantityKind::Length, true),
        _ => return None,
    };
    let unit = |code| Reader::unit(kind, code).ok().map(|unit| if squared { unit.squared() } else { unit });
    let (from, to) = (unit(from)?, unit(to)?);
    // Not bags into kilograms, nor conductivity into salt.
    let alike = from.canonical() == to.canonical() && from.bounds.is_some() == to.bounds.is_some();
    alike.then_some([from, to])
}

/// With as many decimals as it takes, and no sign between thousands: it is to be read back.
pub fn plain(value: f64, signs: Signs) -> String {
    let text = crate::Shown::plain(value, None, Signs { group: ' ', ..signs }).text;
    text.chars().filter(|c| *c != ' ').map(|c| if c == '\u{2212}' { '-' } else { c }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const POINT: Signs = Signs::new('.', ',');

    /// A foot is 0.3048 m by definition.
    #[test]
    fn what_is_typed_in_another_unit_is_turned_or_asked_for_again() {
        for (name, unit, typed, settled, stands) in [
            ("pool.widths", "[ft_i]", "0, 10, 20", "m", "0; 3.048; 6.096"),
            ("pool.widths", "[ft_i]", "10' 6\"; 12'", "m", "3.2004; 3.6576"),
            ("pool.length", "[ft_i]", "30' 6\"", "m", "9.2964"),
            ("pool.ledge-area", "[ft_i]", "100", "m", "9.290304"),
            ("salt.now", "mS/cm", "5", "[ppm]", ""),
            ("salt.target", "mS/cm", "3200", "g/L", "3.2"),
            ("treat.acid", "{Be}", "20", "%{HCl}", ""),
            ("log.1.mass", "{bag}", "6", "kg", ""),
            ("water.temperature", "Cel", "x", "[degF]", "x"),
        ] {
            let asked = FieldId::unit_name(name).unwrap();
            let form = Form::from([(name, typed), (asked.as_str(), unit)]);
            let come = here(&form, POINT, &[(asked.clone(), settled.into())]);
            assert_eq!((come.text(name), come.text(&asked)), (stands, settled), "{typed} {unit}");
        }
    }

    #[test]
    fn a_list_is_read_as_its_question_reads_it() {
        let form = Form::from([("pool.widths", "1.500; 2"), ("sign.decimal", "."), ("sign.group", ",")]);
        assert_eq!(here(&form, Signs::new(',', '.'), &[]).text("pool.widths"), "1,5; 2");
        assert!(hangs_on_signs(&form) && !hangs_on_signs(&Form::from([("pool.widths", "1.5; 2")])));
        assert!(hangs_on_signs(&Form::from([("pool.widths", "0,10,14")])));
    }
}
