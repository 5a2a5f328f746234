//! How is a number read from what was typed, and written for a reader?
//!
//! Without std's float text: it would add a third to the page. At most fifteen digits are read, as an
//! integer over an exact power of ten, which is correctly rounded. Writing rounds to an integer of
//! the last place and differs from exact rounding only at decimal ties, where it rounds up as a
//! person does (0.005 is written 0.01).

/// The page's sign for decimals and for groups of three.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Signs {
    /// Before the decimals.
    pub decimal: char,
    /// Between groups of three.
    pub group: char,
    /// Numbers of fewer digits before the decimals have no groups: in Spanish 3600, and 16.596.
    pub grouped_from: usize,
}

impl Signs {
    /// Signs for decimals and groups; groups from four digits on.
    pub const fn new(decimal: char, group: char) -> Self {
        Self { decimal, group, grouped_from: 4 }
    }
}

impl Default for Signs {
    fn default() -> Self {
        Self::new('.', ',')
    }
}

/// A number as typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Typed {
    /// What the page's language makes of it.
    pub value: f64,
    /// What the other use of the sign would make of it: `1,500` may be 1500 or 1.5.
    pub other: Option<f64>,
}

/// Why a text is not a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotNumber {
    /// It is something else.
    Text,
    /// It is a number with something behind it that looks like a unit.
    Unit,
}

const MOST_DIGITS: u32 = 15;

/// Reads a number. `Ok(None)` where nothing was typed.
///
/// ```
/// use saltwright_form::read::number::{Signs, read};
/// let english = Signs::default();
/// assert_eq!(read("13,536", english).unwrap().unwrap().value, 13_536.0);
/// assert_eq!(read("3,5", english).unwrap().unwrap().value, 3.5);
/// assert!(read("3..5", english).is_err());
/// assert_eq!(read("  ", english), Ok(None));
/// ```
pub fn read(text: &str, signs: Signs) -> Result<Option<Typed>, NotNumber> {
    let text = text.trim_matches(is_space);
    if text.is_empty() {
        return Ok(None);
    }
    let number = text.split(starts_unit).next().unwrap_or("");
    match parse(number.trim_end_matches(is_space), signs) {
        Ok(_) if number.len() < text.len() => Err(NotNumber::Unit),
        Ok(typed) => Ok(Some(typed)),
        Err(()) => Err(NotNumber::Text),
    }
}

/// Not `e`, which begins no unit of ours, but a power of ten that we don't read.
fn starts_unit(c: char) -> bool {
    c.is_ascii_alphabetic() && !matches!(c, 'e' | 'E') || matches!(c, '%' | '°' | '[')
}

pub(crate) fn is_space(c: char) -> bool {
    c.is_ascii_whitespace() || matches!(c, '\u{a0}' | '\u{2009}' | '\u{202f}' | '\u{200e}' | '\u{200f}')
}

/// What languages write before decimals. A digit there would make another number.
pub(crate) fn is_decimal(c: char) -> bool {
    matches!(c, '.' | ',' | '\u{66b}')
}

/// What languages write between groups.
pub(crate) fn is_group(c: char) -> bool {
    matches!(c, '.' | ',' | '\'' | '\u{2019}' | '\u{66c}' | ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}')
}

fn parse(text: &str, signs: Signs) -> Result<Typed, ()> {
    // Digits of any script to ASCII, every kind of group or decimal sign to one of four.
    let mut negative = false;
    let mut plain: Vec<u8> = Vec::with_capacity(text.len());
    let mut marks: Vec<usize> = Vec::new();
    for (i, c) in text.char_indices() {
        let mark = match c {
            '-' | '\u{2212}' if i == 0 => {
                negative = true;
                continue;
            }
            '+' if i == 0 => continue,
            '.' => b'.',
            ',' => b',',
            '\u{66b}' => decimal(signs),
            '\'' | '\u{2019}' | '\u{66c}' => APART,
            _ if is_space(c) => b' ',
            _ => {
                plain.push(b'0' + digit(c).ok_or(())?);
                continue;
            }
        };
        marks.push(plain.len());
        plain.push(mark);
    }
    let value =
        |decimal: Option<usize>| value(&plain, decimal).map(|x| if negative { -x } else { x }).ok_or(());
    let (Some(&first), Some(&last)) = (marks.first(), marks.last()) else {
        return Ok(Typed { value: value(None)?, other: None });
    };
    // Groups: one kind of sign, one to three digits before the first, three between and to the end.
    let grouped = |groups: &[usize], end: usize| {
        (1..=3).contains(&first)
            && groups.iter().all(|i| plain[*i] == plain[first])
            && groups.windows(2).all(|w| w[1] - w[0] == 4)
            && groups.last().is_none_or(|i| end - i == 4)
    };
    let can_be_decimal = matches!(plain[last], b'.' | b',');
    if marks.len() == 1 && can_be_decimal {
        let as_decimal = value(Some(last))?;
        // A number of groups does not begin with a nought.
        if !grouped(&marks, plain.len()) || plain[0] == b'0' {
            return Ok(Typed { value: as_decimal, other: None });
        }
        let as_group = value(None)?;
        return Ok(if plain[last] == decimal(signs) {
            Typed { value: as_decimal, other: Some(as_group) }
        } else {
            Typed { value: as_group, other: Some(as_decimal) }
        });
    }
    // Otherwise one reading is left, whatever the language: all groups, or groups and a decimal sign.
    if grouped(&marks, plain.len()) {
        return Ok(Typed { value: value(None)?, other: None });
    }
    let groups = &marks[..marks.len() - 1];
    if can_be_decimal && plain[last] != plain[first] && grouped(groups, last) {
        return Ok(Typed { value: value(Some(last))?, other: None });
    }
    Err(())
}

/// An apostrophe, as a sign between groups.
const APART: u8 = b'\'';

fn decimal(signs: Signs) -> u8 {
    if signs.decimal == ',' { b',' } else { b'.' }
}

fn digit(c: char) -> Option<u8> {
    let zero = match c {
        '0'..='9' => '0',
        '\u{660}'..='\u{669}' => '\u{660}',
        '\u{6f0}'..='\u{6f9}' => '\u{6f0}',
        '\u{ff10}'..='\u{ff19}' => '\u{ff10}',
        _ => return None,
    };
    Some((c as u32 - zero as u32) as u8)
}

/// The digits of `plain` with the decimal sign at `at`, other signs ignored.
fn value(plain: &[u8], at: Option<usize>) -> Option<f64> {
    let (mut whole, mut digits, mut decimals) = (0u64, 0u32, 0usize);
    let mut any = false;
    for (i, c) in plain.iter().enumerate().filter(|(_, c)| c.is_ascii_digit()) {
        any = true;
        if digits > 0 || *c != b'0' {
            digits += 1;
        }
        if digits > MOST_DIGITS {
            return None;
        }
        whole = whole * 10 + u64::from(c - b'0');
        decimals += usize::from(at.is_some_and(|at| i > at));
    }
    (any && decimals <= 22).then(|| whole as f64 / power_of_ten(decimals))
}

fn power_of_ten(n: usize) -> f64 {
    (0..n).fold(1.0, |x, _| x * 10.0) // Exact up to 10²².
}

/// Writes a number with `decimals` places, groups of three and, if `signed`, a plus before what is
/// above zero. The minus is U+2212. Nothing for NaN and for what has more than fifteen digits.
///
/// ```
/// use saltwright_form::read::number::{Signs, write};
/// assert_eq!(write(13_536.4, 0, false, Signs::default()).unwrap(), "13,536");
/// assert_eq!(write(-0.126, 2, true, Signs::new(',', '.')).unwrap(), "\u{2212}0,13");
/// assert_eq!(write(-0.001, 2, true, Signs::default()).unwrap(), "0.00");
/// let spanish = Signs { grouped_from: 5, ..Signs::new(',', '.') };
/// assert_eq!(write(3_600.0, 0, false, spanish).unwrap(), "3600");
/// assert_eq!(write(16_596.5, 1, false, spanish).unwrap(), "16.596,5");
/// ```
pub fn write(x: f64, decimals: usize, signed: bool, signs: Signs) -> Option<String> {
    let scaled = x.abs() * power_of_ten(decimals);
    if scaled.is_nan() || scaled >= 1e15 {
        return None;
    }
    // A hair above, so that a decimal tie that binary holds a little too low still rounds up.
    let mut rest = (scaled * (1.0 + 4.0 * f64::EPSILON) + 0.5) as u64;
    let zero = rest == 0;
    let (mut whole, mut digits) = (rest, 0);
    while whole > 0 {
        whole /= 10;
        digits += 1;
    }
    let grouped = digits >= decimals + signs.grouped_from;
    let mut backwards: Vec<char> = Vec::with_capacity(24);
    let mut place = 0;
    while rest > 0 || place <= decimals {
        if place == decimals && decimals > 0 {
            backwards.push(signs.decimal);
        } else if grouped && place > decimals && (place - decimals).is_multiple_of(3) {
            backwards.push(signs.group);
        }
        backwards.push((b'0' + (rest % 10) as u8) as char);
        rest /= 10;
        place += 1;
    }
    if x < 0.0 && !zero {
        backwards.push('\u{2212}');
    } else if signed && !zero {
        backwards.push('+');
    }
    Some(backwards.iter().rev().collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    const COMMA: Signs = Signs::new(',', '.');

    #[test]
    fn typed_numbers_are_read_as_a_person_means_them() {
        let dot = Signs::default();
        for (text, signs, value, other) in [
            ("3200", dot, 3200.0, None),
            ("+7.4", dot, 7.4, None),
            ("7,4", dot, 7.4, None),
            (".5", dot, 0.5, None),
            ("5.", dot, 5.0, None),
            ("3,200", dot, 3200.0, Some(3.2)),
            ("3,200", COMMA, 3.2, Some(3200.0)),
            ("3.200", COMMA, 3200.0, Some(3.2)),
            ("0,500", dot, 0.5, None),
            ("1,234.5", dot, 1234.5, None),
            ("1.234,5", dot, 1234.5, None),
            ("1,234,567", dot, 1234567.0, None),
            ("1 234", COMMA, 1234.0, None),
            ("1\u{202f}234,5", COMMA, 1234.5, None),
            ("1'234.5", dot, 1234.5, None),
            ("1 234,567", dot, 1234.567, None),
            ("16 596", dot, 16596.0, None),
            ("\u{200e}3200\u{200f}", dot, 3200.0, None),
            ("\u{663}\u{662}\u{660}\u{660}", dot, 3200.0, None),
            ("\u{ff13}.\u{ff15}", dot, 3.5, None),
            ("\u{2212}5", dot, -5.0, None),
            ("000123456789012345", dot, 123456789012345.0, None),
        ] {
            assert_eq!(read(text, signs), Ok(Some(Typed { value, other })), "{text}");
        }
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for (text, fault) in [
            ("abc", NotNumber::Text),
            ("1e3", NotNumber::Text),
            ("62 82", NotNumber::Text),
            ("400 2", NotNumber::Text),
            ("7 4", NotNumber::Text),
            ("5'", NotNumber::Text),
            ("30' 6", NotNumber::Text),
            ("7.4 5", NotNumber::Text),
            ("12,345 678", NotNumber::Text),
            ("1 234 56", NotNumber::Text),
            ("1 234'567", NotNumber::Text),
            ("3200 ppm", NotNumber::Unit),
            ("62 m3", NotNumber::Unit),
            ("24°C", NotNumber::Unit),
            ("99.4%", NotNumber::Unit),
            ("1/2", NotNumber::Text),
            ("--5", NotNumber::Text),
            ("5-", NotNumber::Text),
            ("1.2.3", NotNumber::Text),
            ("1,23,456", NotNumber::Text),
            ("12,34.5", NotNumber::Text),
            ("1.234.567,8.9", NotNumber::Text),
            (",", NotNumber::Text),
            ("-", NotNumber::Text),
            ("1234567890123456", NotNumber::Text),
            ("0.00000000000000000000001", NotNumber::Text),
            ("ppm", NotNumber::Text),
        ] {
            assert_eq!(read(text, Signs::default()), Err(fault), "{text}");
        }
    }

    /// std is the reference: read what std wrote, at every width, and get the same number.
    #[test]
    fn reading_agrees_with_std_to_the_last_bit() {
        let mut x = 0x2545_f491_4f6c_dd1du64;
        for _ in 0..100_000 {
            x ^= x << 13;
            x ^= x >> 7;
            x ^= x << 17;
            let digits = (x % 1_000_000_000_000_000) >> (x >> 59);
            let text = digits.to_string();
            let at = (x >> 40) as usize % (text.len() + 1);
            let text = format!("{}.{}", &text[..at], &text[at..]);
            if text.len() - 1 - at == 3 {
                continue; // Might be a group.
            }
            let std: f64 = if text == "." {
                continue;
            } else {
                text.parse().unwrap()
            };
            assert_eq!(read(&text, Signs::default()).unwrap().unwrap().value, std, "{text}");
        }
    }

    /// Writing agrees with std except at ties, which a person rounds up.
    #[test]
    fn writing_agrees_with_std_off_the_ties() {
        let none = Signs::new('.', '_');
        let mut x = 0x9e37_79b9_7f4a_7c15u64;
        for _ in 0..100_000 {
            x ^= x << 13;
            x ^= x >> 7;
            x ^= x << 17;
            let value = (x >> 11) as f64 / 1e9;
            let decimals = (x % 4) as usize;
            let ours = write(value, decimals, false, none).unwrap().replace('_', "");
            let std = format!("{value:.decimals$}");
            let tie = (value * power_of_ten(decimals)).fract();
            assert!(ours == std || (tie - 0.5).abs() < 1e-6, "{value}: {ours}, std {std}");
        }
        for (value, text) in
            [(0.005, "0.01"), (0.125, "0.13"), (2.675, "2.68"), (-0.0, "0.00"), (-0.004, "0.00")]
        {
            assert_eq!(write(value, 2, false, none).unwrap(), text);
        }
        for nothing in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e15] {
            assert_eq!(write(nothing, 2, false, none), None);
        }
    }
}
