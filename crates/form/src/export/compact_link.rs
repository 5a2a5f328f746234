//! How does a form become few bytes for a link or a code, and a form again?
//!
//! A line a field: its number in the table of the contract, `=`, the text as typed. `3` is a field, `113.2` one of line
//! 2 of the log, `t96` an attempt at a result, `t96u` its unit, `t96w` within how much it is right; a name that the
//! contract does not know follows a colon. In a text `\n` is a new line and `\\` a backslash; in a name `\e` is `=`. The
//! page deflates the lines and writes them in letters that an address takes: [`letters`].

use crate::contract::{Field, FieldId, LINES, OF_A_LINE, Output, Scope};
use crate::form::{Form, UTC};
use crate::text::joined;
use core::error::Error;
use core::fmt;

/// A link's bytes are at most so many: twenty times a full job.
pub const MOST: usize = 1 << 16;

/// Why a link holds no form. Nothing of it is used then.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum LinkError {
    /// It is longer than [`MOST`].
    TooLong,
    /// A letter that no link has, or too few of them.
    NotALetter,
    /// The bytes are no text.
    NotText,
    /// This line, from 1, is no field with its text.
    NotAField(usize),
}

impl fmt::Display for LinkError {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong => to.write_str("the link is longer than any job: open the job's file"),
            Self::NotALetter | Self::NotText => {
                to.write_str("the link is cut off or altered: copy all of it")
            }
            Self::NotAField(line) => {
                to.write_str("the link is altered at field ")?;
                fmt::Display::fmt(line, to)?;
                to.write_str(": copy all of it")
            }
        }
    }
}

impl Error for LinkError {}

/// What of a form differs from the blank page, as bytes: nothing that is the page's own matter, and nothing about a
/// person unless that is `named`.
///
/// ```
/// use saltwright_form::Form;
/// use saltwright_form::contract::Field;
/// use saltwright_form::export::compact_link::{decode, encode};
/// let [volume, note] = [Field::PoolVolume.name(), Field::JobNote.name()];
/// let form = Form::from([(volume, "16,596"), (note, "Gate code 1234"), ("school", "A = B")]);
/// let bytes = encode(&form, &Form::default(), false);
/// assert_eq!(bytes, b"3=16,596\n:school=A = B\n");
/// assert_eq!(decode(&bytes).unwrap(), Form::from([(volume, "16,596"), ("school", "A = B")]));
/// ```
#[must_use]
pub fn encode(form: &Form, blank: &Form, named: bool) -> Vec<u8> {
    let mut lines = String::new();
    for (place, (name, text)) in form.0.iter().enumerate() {
        let counts = !form.0[place + 1..].iter().any(|(later, _)| later == name);
        if counts && text != blank.raw(name) && goes(name, named) {
            lines.push_str(&joined(&[&key(name), "=", &escaped(text, &ESCAPED[..2]), "\n"]));
        }
    }
    lines.into_bytes()
}

/// The form that these bytes hold. A number that only a later edition knows is kept under itself, as `#300`: no name
/// looks like that, and [`encode`] gives it back, so that a link loses nothing on its way through an older edition.
///
/// # Errors
/// Where the bytes are no such link, see [`LinkError`].
pub fn decode(bytes: &[u8]) -> Result<Form, LinkError> {
    if bytes.len() > MOST {
        return Err(LinkError::TooLong);
    }
    let lines = core::str::from_utf8(bytes).map_err(|_| LinkError::NotText)?;
    let mut form = Form::default();
    for (place, line) in lines.split_terminator('\n').enumerate() {
        let entry = line.split_once('=').and_then(|(key, text)| Some((name(key)?, unescaped(text)?)));
        let (name, text) = entry.ok_or(LinkError::NotAField(place + 1))?;
        if goes(&name, true) {
            form.0.push((name, text));
        }
    }
    Ok(form)
}

/// May a field of this name leave with a link?
fn goes(name: &str, named: bool) -> bool {
    match FieldId::find(name).and_then(FieldId::field).map(Field::scope) {
        Some(Scope::Page | Scope::Handed) => false,
        Some(Scope::Person) => named,
        Some(Scope::Job | Scope::Shop | Scope::Link) => true,
        None => !name.starts_with(UTC),
    }
}

/// Begins the key of an attempt, of a name, and the name of what only a later edition knows.
const ATTEMPT: char = 't';
const NAME: char = ':';
const LATER: char = '#';

fn key(name: &str) -> String {
    let attempt = |output: Output, end| joined(&["t", &output.number().to_string(), end]);
    match FieldId::find(name) {
        Some(FieldId::Field(field)) => field.number().to_string(),
        Some(FieldId::Line(field, line)) => joined(&[&field.number().to_string(), ".", &line.to_string()]),
        Some(FieldId::Attempt(output)) => attempt(output, ""),
        Some(FieldId::AttemptUnit(output)) => attempt(output, "u"),
        Some(FieldId::AttemptWithin(output)) => attempt(output, "w"),
        None => match name.strip_prefix(LATER).filter(|key| read(key) == Some(None)) {
            Some(key) => key.into(),
            None => joined(&[":", &escaped(name, &ESCAPED)]),
        },
    }
}

/// The name that a key stands for; nothing for what is no key.
fn name(key: &str) -> Option<String> {
    if let Some(name) = key.strip_prefix(NAME) {
        return unescaped(name);
    }
    Some(match read(key)? {
        Some(field) => field.name(),
        None => joined(&["#", key]),
    })
}

/// The field that a key stands for, if this edition knows it; nothing for what is no key.
fn read(key: &str) -> Option<Option<FieldId>> {
    if let Some(attempt) = key.strip_prefix(ATTEMPT) {
        let (number, of): (_, fn(Output) -> FieldId) = match attempt.strip_suffix(['u', 'w']) {
            Some(number) if attempt.ends_with('u') => (number, FieldId::AttemptUnit),
            Some(number) => (number, FieldId::AttemptWithin),
            None => (attempt, FieldId::Attempt),
        };
        return Some(Output::numbered(digits(number)?).filter(|output| output.is_asked()).map(of));
    }
    let Some((number, line)) = key.split_once('.') else {
        return Some(Field::numbered(digits(key)?).map(FieldId::Field));
    };
    let (number, line) = (digits(number)?, digits(line)?);
    let field = Field::numbered(number).filter(|field| OF_A_LINE.contains(field));
    let line = u8::try_from(line).ok().filter(|line| LINES.contains(line));
    Some(field.zip(line).map(|(field, line)| field.in_line(line)))
}

/// A number as numbers are written: 3, and not 03.
fn digits(text: &str) -> Option<u16> {
    let plain = text.bytes().all(|b| b.is_ascii_digit()) && !text.starts_with('0');
    text.parse().ok().filter(|_| plain)
}

/// How the signs that part lines and names from texts are written.
const ESCAPED: [(char, char); 3] = [('\\', '\\'), ('\n', 'n'), ('=', 'e')];

fn escaped(text: &str, signs: &[(char, char)]) -> String {
    let mut all = String::with_capacity(text.len());
    for c in text.chars() {
        match signs.iter().find(|(sign, _)| *sign == c) {
            Some((_, written)) => all.extend(['\\', *written]),
            None => all.push(c),
        }
    }
    all
}

fn unescaped(text: &str) -> Option<String> {
    let mut all = String::with_capacity(text.len());
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        if c != '\\' {
            all.push(c);
            continue;
        }
        let next = chars.next()?;
        all.push(ESCAPED.iter().find(|(_, written)| *written == next)?.0);
    }
    Some(all)
}

const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Bytes in letters that an address takes as they are: base64url by RFC 4648, section 5, without padding.
///
/// ```
/// use saltwright_form::export::compact_link::{bytes, letters};
/// assert_eq!(letters(&[0xfb, 0xff, 0x3d]), "-_89");
/// assert_eq!(letters(b"salt"), "c2FsdA");
/// assert_eq!(bytes("c2FsdA").unwrap(), b"salt");
/// assert!(bytes("c2FsdA=").is_err() && bytes("c").is_err());
/// ```
#[must_use]
pub fn letters(bytes: &[u8]) -> String {
    let mut all = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let at = |place: usize| u32::from(three.get(place).copied().unwrap_or(0));
        let bits = at(0) << 16 | at(1) << 8 | at(2);
        for place in 0..=three.len() {
            all.push(char::from(LETTERS[(bits >> (18 - 6 * place) & 63) as usize]));
        }
    }
    all
}

/// The bytes that such letters stand for.
///
/// # Errors
/// [`LinkError::NotALetter`] for any other sign, and for letters that stand for no whole bytes.
pub fn bytes(letters: &str) -> Result<Vec<u8>, LinkError> {
    let mut all = Vec::with_capacity(letters.len() / 4 * 3 + 2);
    for four in letters.as_bytes().chunks(4) {
        let mut bits = 0;
        for letter in four {
            let place = LETTERS.iter().position(|known| known == letter).ok_or(LinkError::NotALetter)?;
            bits = bits << 6 | place as u32;
        }
        let count = four.len() * 6 / 8;
        let spare = four.len() * 6 - count * 8;
        if count == 0 || bits & ((1 << spare) - 1) != 0 {
            return Err(LinkError::NotALetter);
        }
        let whole = (bits >> spare).to_be_bytes();
        all.extend_from_slice(&whole[whole.len() - count..]);
    }
    Ok(all)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A number that looks drawn by chance, and the next such.
    fn next(chance: &mut u64) -> usize {
        *chance = chance.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (*chance >> 33) as usize
    }

    const TEXTS: [&str; 10] =
        ["", "16,596", " 30' 6\" ", "a=b", "two\nlines\r\n", "\\n\\", "=", "水 µ \u{0}", "#7", "\n\n"];
    const NAMES: [&str; 8] = ["school", "a=b", "line\nline", "", "#3", "#999", "#t1u", "later.name"];

    fn any_form(chance: &mut u64) -> Form {
        let mut form = Form::default();
        for _ in 0..next(chance) % 40 {
            let output = Output::ALL[next(chance) % Output::ALL.len()];
            let name = match next(chance) % 6 {
                0 => NAMES[next(chance) % NAMES.len()].into(),
                1 => FieldId::Attempt(output).name(),
                2 => FieldId::AttemptUnit(output).name(),
                3 => FieldId::AttemptWithin(output).name(),
                _ => FieldId::at(next(chance) % crate::contract::PLACES).unwrap().name(),
            };
            form.0.push((name, TEXTS[next(chance) % TEXTS.len()].into()));
        }
        form
    }

    #[test]
    fn a_form_comes_back_as_it_left() {
        let (mut chance, mut fields) = (1, 0);
        for _ in 0..300 {
            let (form, blank) = (any_form(&mut chance), any_form(&mut chance));
            for named in [false, true] {
                let again = decode(&encode(&form, &blank, named)).unwrap();
                for (name, _) in &form.0 {
                    let left = goes(name, named) && form.raw(name) != blank.raw(name);
                    assert_eq!(again.said(name), left.then(|| form.raw(name)), "{name:?} of {form:?}");
                }
                assert!(again.0.iter().all(|(name, _)| form.said(name).is_some()), "{form:?}: {again:?}");
                assert_eq!(encode(&again, &blank, named), encode(&form, &blank, named));
                fields += again.0.len();
            }
        }
        assert!(fields > 5_000, "{fields} fields came back");
    }

    #[test]
    fn what_is_the_pages_own_never_goes_and_never_comes() {
        for field in Field::ALL {
            let form = Form::from([(field.name(), "x")]);
            let (plain, named) =
                (encode(&form, &Form::default(), false), encode(&form, &Form::default(), true));
            let crafted = [joined(&[&field.number().to_string(), "=x"]), joined(&[":", field.name(), "=x"])];
            let comes = crafted.map(|line| !decode(line.as_bytes()).unwrap().0.is_empty());
            match field.scope() {
                Scope::Page | Scope::Handed => {
                    assert!(plain.is_empty() && named.is_empty() && comes == [false; 2])
                }
                Scope::Person => assert!(plain.is_empty() && !named.is_empty() && comes == [true; 2]),
                _ => assert!(!plain.is_empty() && plain == named && comes == [true; 2]),
            }
        }
        assert_eq!(decode(b":utc.x=1\n").unwrap(), Form::default());
    }

    #[test]
    fn a_preset_that_was_emptied_comes_back_empty() {
        let [purity, price] = [Field::BagPurity.name(), Field::BagPrice.name()];
        let blank = Form::from([(purity, "99.4"), (price, "7")]);
        let form = Form::from([(purity, ""), (price, "7")]);
        assert_eq!(decode(&encode(&form, &blank, false)).unwrap(), Form::from([(purity, "")]));
    }

    #[test]
    fn what_only_a_later_edition_knows_is_kept_and_given_back() {
        for line in
            ["60000=7\n", "60000.3=x\n", "3.2=x\n", "113.61=x\n", "113.700=x\n", "t60000u=kg\n", "t163=x\n"]
        {
            let form = decode(line.as_bytes()).unwrap();
            assert!(form.0[0].0.starts_with('#'), "{line}");
            assert_eq!(encode(&form, &Form::default(), false), line.as_bytes());
        }
    }

    #[test]
    fn what_is_no_link_is_told_by_its_line() {
        for (bytes, line) in
            [(&b"3=1\n4"[..], 2), (b"03=1", 1), (b"3=1\n\n", 2), (b"=1", 1), (b"t=1", 1), (b"3=\\x", 1)]
        {
            assert_eq!(decode(bytes), Err(LinkError::NotAField(line)), "{bytes:?}");
        }
        for key in ["3.", ".3", "3.02", "-3", "+3", "t3x", "70000", "3 ", "\u{663}"] {
            assert_eq!(decode(joined(&[key, "=1"]).as_bytes()), Err(LinkError::NotAField(1)), "{key}");
        }
        assert_eq!(decode(b"3=\xff"), Err(LinkError::NotText));
        assert_eq!(decode(&vec![b'a'; MOST + 1]), Err(LinkError::TooLong));
    }

    #[test]
    fn any_bytes_are_a_form_or_an_error() {
        let mut chance = 2;
        let signs = b"0123456789.tuw=:#\\\n\xc3\xa9ax";
        for _ in 0..3_000 {
            let any: Vec<u8> =
                (0..next(&mut chance) % 24).map(|_| signs[next(&mut chance) % signs.len()]).collect();
            if let Ok(form) = decode(&any) {
                assert_eq!(decode(&encode(&form, &Form::default(), true)).map(|_| ()), Ok(()), "{any:?}");
            }
            let letters = letters(&any);
            assert_eq!(bytes(&letters).unwrap(), any);
            assert!(bytes(&joined(&[&letters, "+"])).is_err());
        }
        assert_eq!(bytes("c2FsdB"), Err(LinkError::NotALetter), "bits that no byte has");
    }
}
