//! How does a job become a table for a spreadsheet, and a job again? By RFC 4180, with a byte-order mark.

use crate::contract::FieldId;
use crate::form::Form;
use crate::text::joined;

/// A row: kind, name, value, unit, moment.
pub type Cells<'a> = [&'a str; 5];

/// A row for each field in which something stands, and for each unit that stands alone; `kind` is the page's word
/// for what was typed.
pub fn typed<'a>(form: &'a Form, kind: &'a str) -> Vec<Cells<'a>> {
    let filled = form.0.iter().filter(|(_, text)| !text.is_empty());
    let mut with_another = Vec::new();
    for (name, _) in filled.clone() {
        with_another.extend(FieldId::unit_name(name));
    }
    let mut rows = Vec::new();
    for (name, text) in filled.filter(|(name, _)| !with_another.contains(name)) {
        let unit = FieldId::unit_name(name);
        rows.push([kind, name, text, unit.map_or("", |unit| form.raw(&unit)), ""]);
    }
    rows
}

/// The form that a table holds: its rows of the first kind, as [`typed`] makes them. `None` for what is no such table.
///
/// ```
/// use saltwright_form::Form;
/// use saltwright_form::export::csv::{form_of, table, typed};
/// let form = Form::from([("pool.volume", "62,5"), ("pool.volume.unit", "m3"), ("job.note", "=\"x\"; 'y'")]);
/// let head = ["step", "name", "value", "unit", "when"];
/// let rows: Vec<_> = std::iter::once(head).chain(typed(&form, "typed")).collect();
/// let rows: Vec<&[&str]> = rows.iter().map(|row| &row[..]).collect();
/// let again = form_of(&table(&rows, ',')).unwrap();
/// assert!(form.0.iter().all(|(name, text)| again.text(name) == text));
/// assert_eq!(form_of("a,b\n1,2\n"), None);
/// ```
pub fn form_of(text: &str) -> Option<Form> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let head = text.lines().next()?;
    let count = |sign: char| head.chars().filter(|c| *c == sign).count();
    let between = if count(';') >= count(',') { ';' } else { ',' };
    let rows = cells(text, between);
    let rows = rows.get(1..)?;
    let kind = rows.first()?.first()?;
    let mut form = Form::default();
    for row in rows.iter().filter(|row| row.first() == Some(kind)) {
        let [_, name, value, unit, ..] = &row[..] else { return None };
        form.0.push((name.clone(), value.clone()));
        if !unit.is_empty() {
            let asked = FieldId::unit_name(name).unwrap_or_else(|| joined(&[name, ".unit"]));
            form.0.push((asked, unit.clone()));
        }
    }
    Some(form)
}

/// The cells of each row, what keeps a spreadsheet from calculating taken off.
fn cells(text: &str, between: char) -> Vec<Vec<String>> {
    let (mut rows, mut row, mut cell) = (Vec::new(), Vec::new(), String::new());
    let (mut quoted, mut chars) = (false, text.chars().peekable());
    while let Some(c) = chars.next() {
        match c {
            '"' if quoted && chars.peek() == Some(&'"') => {
                chars.next();
                cell.push('"');
            }
            '"' if quoted || cell.is_empty() => quoted = !quoted,
            '\r' if !quoted && chars.peek() == Some(&'\n') => {}
            '\n' if !quoted => {
                row.push(bare(&mut cell));
                rows.push(core::mem::take(&mut row));
            }
            c if !quoted && c == between => row.push(bare(&mut cell)),
            c => cell.push(c),
        }
    }
    if !cell.is_empty() || !row.is_empty() {
        row.push(bare(&mut cell));
        rows.push(row);
    }
    rows
}

fn bare(cell: &mut String) -> String {
    let cell = core::mem::take(cell);
    match cell.strip_prefix('\'') {
        Some(rest) if rest.starts_with(is_kept_apart) => rest.into(),
        _ => cell,
    }
}

/// Would a spreadsheet take a cell that begins so for a formula, or an apostrophe for our own?
fn is_kept_apart(c: char) -> bool {
    matches!(c, '=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '\0' | '\'' | '＝' | '＋' | '－' | '＠')
}

/// A table with these rows; `decimal` of the page's language chooses the sign between cells.
///
/// A cell that a spreadsheet would take for a formula begins with an apostrophe, unless it is a number.
///
/// ```
/// use saltwright_form::export::csv::table;
/// let text = table(&[&["name", "value"], &["a \"b\"", "1,5"], &["=1+1", "-2"]], '.');
/// assert_eq!(text, "\u{feff}name,value\r\n\"a \"\"b\"\"\",\"1,5\"\r\n'=1+1,-2\r\n");
/// assert!(table(&[&["a", "1,5"]], ',').ends_with("a;1,5\r\n"));
/// ```
pub fn table(rows: &[&[&str]], decimal: char) -> String {
    let between = if decimal == ',' { ';' } else { ',' };
    let mut all = String::from('\u{feff}');
    for row in rows {
        for (place, cell) in row.iter().enumerate() {
            if place > 0 {
                all.push(between);
            }
            push(&mut all, cell, between);
        }
        all.push_str("\r\n");
    }
    all
}

fn push(all: &mut String, cell: &str, between: char) {
    let first = cell.chars().next();
    let formula = first.is_some_and(is_kept_apart);
    let number = cell.chars().skip(1).all(|c| c.is_ascii_digit() || c == '.' || c == ',') && cell.len() > 1;
    let quoted = cell.chars().any(|c| matches!(c, '"' | '\r' | '\n') || c == between);
    if quoted {
        all.push('"');
    }
    if formula && !(number && matches!(first, Some('+' | '-'))) {
        all.push('\'');
    }
    for c in cell.chars() {
        if c == '"' {
            all.push('"');
        }
        all.push(c);
    }
    if quoted {
        all.push('"');
    }
}
