//! Which figures has the exercise of this number? The author gives ranges, the number picks from them.
//!
//! Nothing is drawn by chance: number and field alone decide, on every machine and in every edition, so a
//! teacher has one sheet of answers for all numbers.

use crate::answer::{Answer, Fault, Shown};
use crate::contract::{Fact, FaultCode, Field};
use crate::form::Form;
use crate::read::number::{self, Signs};
use crate::relocalize::plain;

/// Numbers that an exercise may have.
pub const NUMBERS: core::ops::RangeInclusive<u32> = 1..=9_999;

/// The number of an exercise; `None` for what is none.
///
/// ```
/// assert_eq!(saltwright_form::exercise::variant::read("7"), Some(7));
/// assert_eq!(saltwright_form::exercise::variant::read("0"), None);
/// ```
pub fn read(text: &str) -> Option<u32> {
    let text = text.trim_ascii();
    let digits = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    text.parse().ok().filter(|number| digits && NUMBERS.contains(number))
}

/// Says what is wrong with the number of an exercise.
pub(crate) fn check(form: &Form, answer: &mut Answer) {
    let got = form.text(Field::Variant.name()).to_string();
    if !got.is_empty() && read(&got).is_none() {
        let digits = got.bytes().all(|b| b.is_ascii_digit());
        let code = match digits {
            true if got.bytes().all(|b| b == b'0') => FaultCode::Low,
            true => FaultCode::High,
            false => FaultCode::NotANumber,
        };
        let limit = |number: &u32| Shown::words(plain(f64::from(*number), form.signs()));
        let limits = Some([limit(NUMBERS.start()), limit(NUMBERS.end())]);
        answer.faults.push(Fault { field: Field::Variant.into(), code, limits, got, other: None });
        answer.say(Fact::Fault);
    }
}

/// What stands in a field in the exercise of this number. `range` is what the author wrote: three numbers
/// (least, most, step; with a point, whatever the page's language), or a list of texts to choose from. `None`
/// for a range that is neither.
///
/// ```
/// use saltwright_form::read::number::Signs;
/// use saltwright_form::exercise::variant::value;
/// let comma = Signs::new(',', '.');
/// assert_eq!(value(7, "salt.now", "200 900 50", comma).as_deref(), Some("400"));
/// assert_eq!(value(7, "bag.purity", "98 99.5 0.1", comma).as_deref(), Some("98,7"));
/// assert_eq!(value(7, "salt.method", "meter drops lab", comma).as_deref(), Some("drops"));
/// ```
pub fn value(variant: u32, field: &str, range: &str, signs: Signs) -> Option<String> {
    let parts: Vec<&str> = range.split_ascii_whitespace().collect();
    let with_point = Signs::default();
    let read = |text: &str| number::read(text, with_point).ok().flatten().map(|typed| typed.value);
    let numbers: Vec<f64> = parts.iter().map_while(|part| read(part)).collect();
    let [least, most, step] = match numbers[..] {
        [least, most, step] if parts.len() == 3 => [least, most, step],
        _ if numbers.is_empty() => return pick(variant, field, parts.len()).map(|at| parts[at].into()),
        _ => return None,
    };
    if !(step > 0.0 && most >= least) {
        return None;
    }
    let steps = ((most - least) / step + 1e-9) as u32;
    let at = pick(variant, field, steps.saturating_add(1) as usize)?;
    let places = |part: &&str| part.split('.').nth(1).map_or(0, str::len);
    let decimals = parts.iter().map(places).max()?;
    // Without signs between thousands: it is to be read back, in whatever language.
    let text = number::write(least + at as f64 * step, decimals, false, Signs { group: ' ', ..signs })?;
    Some(text.chars().filter(|c| *c != ' ').collect())
}

/// One of `count`, by Fowler, Noll and Vo's sum of number and field, well stirred (the finish of splitmix64,
/// G. L. Steele and others 2014, from memory).
fn pick(variant: u32, field: &str, count: usize) -> Option<usize> {
    let seed = variant.to_le_bytes().into_iter().chain(field.bytes());
    let mut x = seed
        .fold(0xcbf2_9ce4_8422_2325_u64, |sum, byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3));
    x = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    x = (x ^ (x >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    x ^= x >> 31;
    (x as u32 as usize).checked_rem(count)
}
