//! Does a text stay one text in a table and in a calendar, whatever it says? Read back by other people's readers.

use evidence::texts::{TEXTS, cell};
use form::Form;
use form::export::csv::{form_of, table, typed};
use form::export::ics::{Entry, calendar};
use icalendar::{Calendar, CalendarComponent, Component};

#[test]
fn a_text_is_one_cell_that_no_spreadsheet_works_out() {
    let wide = ["＝1", "＋1", "－1", "＠a", "\n=1", "\0=1", "'=1", "''", "=", "-", "-1.5", "+2"];
    for text in TEXTS.into_iter().chain(wide) {
        let form =
            Form::from([("job.note", text), (text, text), ("pool.volume", "5"), ("pool.volume.unit", text)]);
        let head = ["step", "name", "value", "unit", "when"];
        let rows: Vec<_> = [head].into_iter().chain(typed(&form, text)).collect();
        let rows: Vec<&[&str]> = rows.iter().map(|row| &row[..]).collect();
        for decimal in ['.', ','] {
            let made = table(&rows, decimal);
            let sign = if decimal == ',' { b';' } else { b',' };
            let mut reader = csv::ReaderBuilder::new()
                .delimiter(sign)
                .has_headers(false)
                .from_reader(made.strip_prefix('\u{feff}').expect("a byte-order mark").as_bytes());
            let read: Vec<Vec<String>> = reader
                .records()
                .map(|row| row.expect("as many cells as in the head").iter().map(String::from).collect())
                .collect();
            let meant: Vec<Vec<String>> =
                rows.iter().map(|row| row.iter().map(|text| cell(text)).collect()).collect();
            assert_eq!(read, meant, "{text:?} in\n{made}");
            let again = form_of(&made).expect("a table of ours");
            assert_eq!((again.raw("job.note"), again.raw(text)), (text, text), "{text:?}");
        }
    }
}

#[test]
fn a_text_is_no_line_of_a_calendar() {
    for text in TEXTS {
        let entry =
            |n: usize| Entry { id: format!("{n}{text}"), at: "2027-05-21T13:00".into(), title: text.into() };
        let made = calendar(&[entry(1), entry(2)], text, "2027-05-21T09:00", 3);
        let calendar: Calendar = made.parse().unwrap_or_else(|error| panic!("{text:?}: {error}\n{made}"));
        assert_eq!(calendar.properties.len(), 2, "{text:?}: {made}");
        assert_eq!(calendar.components.len(), 2, "{text:?}: {made}");
        for component in &calendar.components {
            let CalendarComponent::Event(event) = component else { panic!("{text:?}: {made}") };
            let names: Vec<_> = event.properties().keys().map(String::as_str).collect();
            assert_eq!(
                names,
                ["DESCRIPTION", "DTSTAMP", "DTSTART", "DURATION", "SEQUENCE", "SUMMARY", "UID"],
                "{made}"
            );
            assert!(event.multi_properties().is_empty(), "{made}");
            let kept: String = text.chars().filter(|c| *c == '\n' || !c.is_control()).collect();
            assert_eq!(event.get_summary(), Some(kept.as_str()), "{made}");
            assert_eq!(event.get_description(), Some(kept.as_str()), "{made}");
        }
        // What a stricter reader takes for an end of a line stands nowhere but there.
        assert!(
            made.split("\r\n").all(|line| line.len() <= 75 && !line.contains(char::is_control)),
            "{made:?}"
        );
    }
}
