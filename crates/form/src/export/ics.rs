//! How do the steps become a calendar? By RFC 5545, without a word of our own.

use crate::text::joined;

/// An entry.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Which step, for ever the same, so that a second import moves the first.
    pub id: String,
    /// From when: local, as `datetime-local` has it.
    pub at: String,
    /// What to do.
    pub title: String,
}

/// A calendar of these, each with `more` for its text; `now` in UTC, and the count of times it was made.
///
/// ```
/// use saltwright_form::export::ics::{Entry, calendar};
/// let brush = Entry { id: "1.step.brush.0".into(), at: "2027-05-21T13:00".into(), title: "Brush; look".into() };
/// let text = calendar(&[brush], "https://pool.example/#sw1", "2027-05-21T09:00", 3);
/// assert!(text.contains("\r\nDTSTART:20270521T130000\r\n") && text.contains("SUMMARY:Brush\\; look\r\n"));
/// assert!(text.lines().all(|line| line.len() <= 75));
/// ```
pub fn calendar(entries: &[Entry], more: &str, now: &str, count: u64) -> String {
    let mut all = String::new();
    let mut line = |name: &str, text: &str| fold(&mut all, name, text);
    line("BEGIN:", "VCALENDAR");
    line("VERSION:", "2.0");
    line("PRODID:", "-//Saltwright//EN");
    for entry in entries {
        line("BEGIN:", "VEVENT");
        line("UID:", &escaped(&joined(&[&entry.id, "@saltwright"])));
        line("SEQUENCE:", &count.to_string());
        line("DTSTAMP:", &joined(&[&bare(now), "Z"]));
        line("DTSTART:", &bare(&entry.at));
        line("DURATION:", "PT30M");
        line("SUMMARY:", &escaped(&entry.title));
        line("DESCRIPTION:", &escaped(more));
        line("BEGIN:", "VALARM");
        line("ACTION:", "DISPLAY");
        line("TRIGGER:", "PT0M");
        line("DESCRIPTION:", &escaped(&entry.title));
        line("END:", "VALARM");
        line("END:", "VEVENT");
    }
    line("END:", "VCALENDAR");
    all
}

/// `2027-05-21T13:00` as the calendar has it.
fn bare(moment: &str) -> String {
    let mut text: String = moment.chars().filter(|c| *c != '-' && *c != ':').collect();
    text.push_str("00");
    text
}

fn escaped(text: &str) -> String {
    let mut all = String::new();
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => all.extend(['\\', c]),
            '\n' => all.push_str("\\n"),
            c => all.push(c),
        }
    }
    all
}

/// A line of at most 75 bytes, and what is over on lines that begin with a space; no letter is cut, and what would
/// begin a line of its own is left out.
fn fold(all: &mut String, name: &str, text: &str) {
    let mut length = 0;
    for c in name.chars().chain(text.chars()).filter(|c| !c.is_control()) {
        if length + c.len_utf8() > 75 {
            all.push_str("\r\n ");
            length = 1;
        }
        all.push(c);
        length += c.len_utf8();
    }
    all.push_str("\r\n");
}
