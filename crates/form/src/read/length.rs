//! How is a length read as people write it, `30' 6"`, and a list of numbers?

use crate::read::number::{self, NotNumber, Signs, Typed};

/// What stands behind a part of a length.
#[derive(Clone, Copy, PartialEq)]
enum Mark {
    Feet,
    Inches,
}

/// Reads feet: a plain number, or feet and inches with the marks and words that people type. `Ok(None)` where
/// nothing was typed.
///
/// ```
/// use saltwright_form::read::{length::feet, number::Signs};
/// let read = |text| feet(text, Signs::default()).unwrap().unwrap().value;
/// assert_eq!(read("30' 6\""), 30.5);
/// assert_eq!(read("30 ft 6 in"), 30.5);
/// assert_eq!(read("30.5"), 30.5);
/// assert!(feet("30' 14\"", Signs::default()).is_err());
/// ```
pub fn feet(text: &str, signs: Signs) -> Result<Option<Typed>, NotNumber> {
    let number = |text| number::read(text, signs)?.map(|typed| typed.value).ok_or(NotNumber::Text);
    let Some((before, mark, after)) = mark(text)? else { return number::read(text, signs) };
    let first = number(before)?;
    let after = after.trim_ascii();
    let value = match mark {
        Mark::Inches if after.is_empty() => first / 12.0,
        Mark::Feet if after.is_empty() => first,
        Mark::Feet if first.fract() == 0.0 && first >= 0.0 => {
            let inches = match self::mark(after)? {
                None => number(after)?,
                Some((inches, Mark::Inches, "")) => number(inches)?,
                Some(_) => return Err(NotNumber::Text),
            };
            if !(0.0..12.0).contains(&inches) {
                return Err(NotNumber::Text);
            }
            first + inches / 12.0
        }
        _ => return Err(NotNumber::Text),
    };
    Ok(Some(Typed { value, other: None }))
}

/// The first mark of feet or inches, with what stands before and after it.
fn mark(text: &str) -> Result<Option<(&str, Mark, &str)>, NotNumber> {
    let Some(at) = text.find(|c: char| is_foot(c) || is_inch(c) || c.is_ascii_alphabetic()) else {
        return Ok(None);
    };
    let (before, rest) = text.split_at_checked(at).unwrap_or_default();
    let mut after = rest.chars();
    let mark = match after.next() {
        Some(c) if is_inch(c) => Mark::Inches,
        Some(c) if is_foot(c) => match after.clone().next() {
            // Two single marks make a double one.
            Some(next) if is_foot(next) => {
                after.next();
                Mark::Inches
            }
            _ => Mark::Feet,
        },
        _ => {
            let end = rest.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(rest.len());
            let (word, rest) = rest.split_at_checked(end).unwrap_or_default();
            after = rest.strip_prefix('.').unwrap_or(rest).chars();
            let is = |all: &[&str]| all.iter().any(|one| word.eq_ignore_ascii_case(one));
            if is(&["ft", "feet", "foot"]) {
                Mark::Feet
            } else if is(&["in", "inch", "inches"]) {
                Mark::Inches
            } else {
                return Err(NotNumber::Unit);
            }
        }
    };
    Ok(Some((before, mark, after.as_str())))
}

fn is_inch(c: char) -> bool {
    matches!(c, '"' | '\u{201c}' | '\u{201d}' | '\u{201e}' | '\u{2033}')
}

fn is_foot(c: char) -> bool {
    matches!(c, '\'' | '`' | '\u{b4}' | '\u{2018}' | '\u{2019}' | '\u{2032}')
}

/// The items of a list; `None` where it is not sure which signs part them.
///
/// Semicolons always part. Without any, commas with a space behind them do, then spaces; commas alone part only
/// where they can't be decimal signs. Nothing that could be a list in one way and another in the other is read.
///
/// ```
/// use saltwright_form::read::{length::items, number::Signs};
/// let english = Signs::default();
/// assert_eq!(items("0, 10, 14.5", english).unwrap(), ["0", "10", "14.5"]);
/// assert_eq!(items("3,5; 4,2", english).unwrap(), ["3,5", "4,2"]);
/// assert_eq!(items("3,5", english), None); // 3.5, or 3 and 5?
/// ```
pub fn items(text: &str, signs: Signs) -> Option<Vec<&str>> {
    let (mut semicolons, mut spaced, mut commas, mut spaces, mut dots, mut marks) = (0, 0, 0, 0, 0, 0);
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            ';' => semicolons += 1,
            ',' if chars.peek().is_none_or(|next| number::is_space(*next)) => spaced += 1,
            ',' => commas += 1,
            '.' => dots += 1,
            _ if number::is_space(c) => spaces += 1,
            _ if c.is_ascii_digit() => {}
            _ => marks += 1,
        }
    }
    let comma_is_decimal = signs.decimal == ',';
    let sure = match () {
        _ if semicolons > 0 => true,
        // A comma inside an item is a decimal sign only where that is the page's.
        _ if spaced > 0 => commas == 0 || comma_is_decimal,
        // A space may stand between feet and inches.
        _ if spaces > 0 => (commas == 0 || comma_is_decimal) && marks == 0,
        _ if commas > 0 => dots > 0 || commas > 1 && !comma_is_decimal,
        _ => true,
    };
    if !sure {
        return None;
    }
    let mut all = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        let mut chars = rest.char_indices().peekable();
        let end = loop {
            let Some((at, c)) = chars.next() else { break rest.len() };
            let next = chars.peek().map(|(_, next)| *next);
            let parts = match c {
                ';' => true,
                ',' if semicolons > 0 => false,
                ',' if spaced > 0 => next.is_none_or(number::is_space),
                ',' => spaces == 0,
                _ => semicolons == 0 && spaced == 0 && number::is_space(c),
            };
            if parts {
                break at;
            }
        };
        let (item, behind) = rest.split_at_checked(end).unwrap_or_default();
        let mut behind = behind.chars();
        let by_space = behind.next().is_some_and(number::is_space);
        if !item.is_empty() || !by_space && !behind.as_str().is_empty() {
            all.push(item.trim_ascii());
        }
        rest = behind.as_str();
    }
    all.retain(|item| !item.is_empty() || semicolons > 0);
    Some(all)
}

#[cfg(test)]
mod tests {
    use super::*;

    const COMMA: Signs = Signs::new(',', '.');

    #[test]
    fn feet_and_inches_are_read_as_people_and_phones_write_them() {
        for (text, value) in [
            ("30", 30.0),
            ("30.5", 30.5),
            ("30,5", 30.5),
            ("30'", 30.0),
            ("30' 6\"", 30.5),
            ("30'6\"", 30.5),
            ("30'6", 30.5),
            ("30’ 6”", 30.5),
            ("30‘6“", 30.5),
            ("30′ 6″", 30.5),
            ("30' 6''", 30.5),
            ("30 ft 6 in", 30.5),
            ("30ft6in", 30.5),
            ("30 Ft. 6 In.", 30.5),
            ("30 feet 6 inches", 30.5),
            ("1 foot 1.5 inch", 1.125),
            ("6\"", 0.5),
            ("18 in", 1.5),
            ("0'9\"", 0.75),
            ("30.5 ft", 30.5),
        ] {
            assert_eq!(feet(text, Signs::default()), Ok(Some(Typed { value, other: None })), "{text}");
        }
        assert_eq!(feet(" ", COMMA), Ok(None));
    }

    #[test]
    fn what_is_no_length_is_refused() {
        for text in [
            "30' 12\"",
            "30.5' 6\"",
            "6\" 3'",
            "30' 6' 2\"",
            "'",
            "\"",
            "ft",
            "30 m",
            "9 yd 2 ft",
            "30' x",
            "-3' 6\"",
            "6\"\"",
        ] {
            assert!(feet(text, Signs::default()).is_err(), "{text}");
        }
    }

    #[test]
    fn lists_are_parted_only_where_it_is_sure_how() {
        let dot = Signs::default();
        for (text, signs, all) in [
            ("0 10 14", dot, &["0", "10", "14"][..]),
            ("0  10", COMMA, &["0", "10"]),
            ("0,10,14", dot, &["0", "10", "14"]),
            ("0, 10, 14,", COMMA, &["0", "10", "14"]),
            ("3,5, 4,2", COMMA, &["3,5", "4,2"]),
            ("3,5 4,2", COMMA, &["3,5", "4,2"]),
            ("3.5,4.2", COMMA, &["3.5", "4.2"]),
            ("3,5;4,2;", dot, &["3,5", "4,2"]),
            ("10' 6\"; 12'", dot, &["10' 6\"", "12'"]),
            ("10' 6\", 12'", dot, &["10' 6\"", "12'"]),
            ("10'6\",12',9'", dot, &["10'6\"", "12'", "9'"]),
            ("1;;2", dot, &["1", "", "2"]),
            ("7", dot, &["7"]),
            ("", dot, &[]),
        ] {
            assert_eq!(items(text, signs).as_deref(), Some(all), "{text}");
        }
        for (text, signs) in [
            ("3,5", dot),
            ("0,10,14", COMMA),
            ("10' 6\" 12'", dot),
            ("10,14 15", dot),
            ("10,14, 15", dot),
            ("3,5,4,2", COMMA),
        ] {
            assert_eq!(items(text, signs), None, "{text}");
        }
    }
}
