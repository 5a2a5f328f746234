//! How are moments and days read and written? In minutes, or days, since the beginning of 1970, by the
//! Gregorian calendar.
//!
//! The form's own text, as in HTML's `datetime-local` and `date`: `2027-05-22T15:00`, `2027-05-22`. Zones are
//! the caller's affair.

use crate::text::joined;

/// Minutes that are moments: from 1970 to about 9999.
pub const RANGE: core::ops::Range<i64> = 0..4_223_000_000;

/// The last day of 9999.
const LAST_DAY: i64 = 2_932_896;

/// Minutes of a moment; `None` for what is none.
///
/// ```
/// use saltwright_form::read::moment::{read, write};
/// assert_eq!(read("1970-01-02T00:01"), Some(1_441));
/// assert_eq!(read("2027-02-29T12:00"), None); // no leap year
/// assert_eq!(write(read("2028-02-29T23:59").unwrap() + 1), "2028-03-01T00:00");
/// ```
pub fn read(text: &str) -> Option<i64> {
    let (day, time) = text.split_once(['T', ' '])?;
    let mut time = time.split(':');
    let (hour, minute) = (whole(time.next()?)?, whole(time.next()?)?);
    // A browser may send seconds; they are of no use here.
    let seconds = time.next().map_or(Some(0), whole)?;
    let there = hour < 24 && minute < 60 && seconds < 60 && time.next().is_none();
    Some(read_day(day)? * 1_440 + hour * 60 + minute).filter(|_| there)
}

/// Days of a date; `None` for what is none.
///
/// ```
/// use saltwright_form::read::moment::{read_day, write_day};
/// assert_eq!(read_day("1970-02-01"), Some(31));
/// assert_eq!(write_day(read_day("2027-04-02").unwrap() + 30), "2027-05-02");
/// ```
pub fn read_day(text: &str) -> Option<i64> {
    let mut day = text.split('-');
    let (year, month, of_month) = (whole(day.next()?)?, whole(day.next()?)?, whole(day.next()?)?);
    let there = (1..=12).contains(&month)
        && (1..=length(year, month)).contains(&of_month)
        && (day.next().is_none() && (1_970..10_000).contains(&year));
    there.then(|| days(year, month) + of_month - 1)
}

/// The text of a moment.
pub fn write(minutes: i64) -> String {
    let minute = minutes.rem_euclid(1_440);
    joined(&[&write_day(minutes.div_euclid(1_440)), "T", &two(minute / 60), ":", &two(minute % 60)])
}

/// The text of a day; of what lies beyond, the last that has one.
pub fn write_day(day: i64) -> String {
    let (mut year, mut day) = (1_970, day.clamp(0, LAST_DAY));
    while day >= year_length(year) {
        day -= year_length(year);
        year += 1;
    }
    let mut month = 1;
    while day >= length(year, month) {
        day -= length(year, month);
        month += 1;
    }
    joined(&[&two(year / 100), &two(year % 100), "-", &two(month), "-", &two(day + 1)])
}

/// Digits alone.
fn whole(text: &str) -> Option<i64> {
    let digits = !text.is_empty() && text.len() < 6 && text.bytes().all(|b| b.is_ascii_digit());
    digits.then(|| text.bytes().fold(0, |x, b| x * 10 + i64::from(b - b'0')))
}

fn two(x: i64) -> String {
    let digit = |of: i64| char::from(b'0' + of as u8);
    String::from_iter([digit(x / 10), digit(x % 10)])
}

/// Days before the first of a month.
fn days(year: i64, month: i64) -> i64 {
    (1_970..year).map(year_length).sum::<i64>() + (1..month).map(|m| length(year, m)).sum::<i64>()
}

fn year_length(year: i64) -> i64 {
    337 + length(year, 2)
}

fn length(year: i64, month: i64) -> i64 {
    match month {
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_day_of_a_thousand_years_comes_back() {
        for day in 0..366_000 {
            let minutes = day * 1_440 + day % 1_440;
            assert_eq!(read(&write(minutes)), Some(minutes));
        }
        // Seconds since 1970 of a known moment: 2001-09-09T01:46:40Z is 1,000,000,000 (POSIX).
        assert_eq!(read("2001-09-09T01:46:40"), Some(16_666_666));
    }

    /// A forged store may tell of any minute; its text is not worked out for ages, and reads.
    #[test]
    fn whatever_lies_beyond_the_calendar_is_its_end() {
        assert_eq!(read_day("9999-12-31"), Some(LAST_DAY));
        for (minutes, text) in [(i64::MAX, "9999-12-31T"), (i64::MIN, "1970-01-01T"), (-1, "1970-01-01T")] {
            assert!(write(minutes).starts_with(text) && read(&write(minutes)).is_some(), "{minutes}");
        }
    }

    #[test]
    fn what_is_no_moment_is_refused() {
        for text in [
            "",
            "2027",
            "2027-13-01T00:00",
            "2027-00-01T00:00",
            "2027-04-31T00:00",
            "2027-04-01T24:00",
            "2027-04-01T00:60",
            "-027-04-01T00:00",
            "2027-04-01T00:00:00:00",
            "2027-4-1-1T00:00",
            "٢٠٢٧-04-01T00:00",
            "1969-12-31T00:00",
        ] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
