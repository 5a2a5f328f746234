//! How does a job become a table for a spreadsheet? By RFC 4180, with a byte-order mark.

/// A table with these rows; `decimal` of the page's language chooses the sign between cells.
///
/// A cell that a spreadsheet would take for a formula begins with an apostrophe, unless it is a number.
///
/// ```
/// use wasm::table::table;
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
    let formula = first.is_some_and(|c| matches!(c, '=' | '+' | '-' | '@' | '\t' | '\r'));
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
