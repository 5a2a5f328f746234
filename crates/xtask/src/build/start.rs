//! What is hidden of a page before anything is typed? The same that a blank form hides, so that nothing jumps.

use super::contract;
use form::Answer;
use scraper::{ElementRef, Html, Selector};

/// The page with `hidden` on all that waits for a state which an untouched form does not have.
pub fn hidden(page: &str) -> String {
    let document = Html::parse_document(page);
    let form = selector("form");
    let forms = document.select(&form).map(|form| contract::answer(presets(form)));
    let mut parts = page.split("<form ");
    let mut out = parts.next().unwrap_or_default().to_string();
    for (part, answer) in parts.zip(forms) {
        out.push_str("<form ");
        out.push_str(&of_a_form(part, &answer));
    }
    out
}

/// What the fields of a form hold before anybody types.
fn presets(form: ElementRef) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for field in form.select(&selector("[name]")) {
        let value = match (field.value().name(), field.attr("type")) {
            ("input", Some("radio" | "checkbox")) if field.attr("checked").is_none() => continue,
            ("input", _) => field.attr("value").unwrap_or_default(),
            ("select", _) => {
                let chosen = field.select(&selector("option[selected]")).next();
                chosen.and_then(|option| option.attr("value")).unwrap_or_default()
            }
            _ => continue,
        };
        found.push((field.attr("name").unwrap_or_default().to_string(), value.to_string()));
    }
    found.push(("ask".to_string(), asked(form).join(" ")));
    found
}

/// What a learner is asked for from the start: each attempt that waits for nobody to ask.
fn asked(form: ElementRef<'_>) -> Vec<&str> {
    let attempts = form.select(&selector("[name^='try.']:not([data-when*='ask.'] *)")).collect::<Vec<_>>();
    let names = attempts.into_iter().filter_map(|field| field.attr("name"));
    names.filter(|name| !name.ends_with(".within")).filter_map(|name| name.strip_prefix("try.")).collect()
}

fn selector(text: &str) -> Selector {
    Selector::parse(text).expect("a selector of our own")
}

/// Rows are shown by what holds in them alone, so nothing is hidden in their templates; lines of the log wait for
/// what is chosen in them.
fn of_a_form(part: &str, blank: &Answer) -> String {
    let mut out = String::with_capacity(part.len() + part.len() / 32);
    let mut rows = 0;
    for piece in part.split_inclusive('>') {
        let tag = piece.rfind('<').map_or("", |at| &piece[at..]);
        if tag.starts_with("</template") {
            rows = i32::max(rows - 1, 0);
        } else if tag.starts_with("<template") && !tag.contains(" data-lines=") {
            rows += 1;
        }
        let when = tag.split_once(" data-when=\"").and_then(|(_, rest)| rest.split_once('"'));
        match when {
            Some((when, rest)) if rows == 0 && !shown(when, blank) => {
                out.push_str(&piece[..piece.len() - rest.len()]);
                out.push_str(" hidden");
                out.push_str(rest);
            }
            _ => out.push_str(piece),
        }
    }
    out
}

fn shown(when: &str, blank: &Answer) -> bool {
    // The script has not started, and echoes keep their place until it has.
    let holds = |state: &str| state != "ready" && !state.starts_with("echo.") && blank.holds(state);
    when.split(' ').all(|state| match state.strip_prefix('!') {
        Some(state) => !holds(state),
        None => holds(state),
    })
}

#[cfg(test)]
mod tests {
    use super::hidden;

    fn form(inside: &str) -> String {
        hidden(&format!("<p data-when=\"need\"></p><form data-saltwright=\"1\">{inside}</form>"))
    }

    #[test]
    fn what_a_blank_form_does_not_say_is_hidden_and_nothing_else() {
        let page = form(
            r#"<p data-when="need.salt-now">a</p><p class="b" data-when="add.yes">b</p><p data-when="!add.yes">c</p>"#,
        );
        assert!(page.contains(r#"<p data-when="need.salt-now">"#), "{page}");
        assert!(page.contains(r#"<p class="b" data-when="add.yes" hidden>"#), "{page}");
        assert!(page.contains(r#"<p data-when="!add.yes">"#), "{page}");
    }

    #[test]
    fn presets_count() {
        let asks = r#"<p data-when="need.salt-now-unit">a unit</p>"#;
        let page = form(&format!(r#"<input name="salt.now" value="400">{asks}"#));
        assert!(page.contains(asks), "{page}");
        let unit = r#"<select name="salt.now.unit"><option value="">unit<option value="[ppm]" selected>ppm</select>"#;
        let page = form(&format!(r#"<input name="salt.now" value="400">{unit}{asks}"#));
        assert!(!page.contains(asks), "{page}");
    }

    #[test]
    fn rows_are_left_alone_but_lines_of_the_log_are_not() {
        let rows = r#"<template data-each="steps"><p data-when="step.read">a</p></template>"#;
        assert!(form(rows).contains(rows));
        let lines = form(r#"<template data-lines="log"><p data-when="log.N.timed">a</p></template>"#);
        assert!(lines.contains(r#"data-when="log.N.timed" hidden"#), "{lines}");
    }

    #[test]
    fn what_waits_for_the_script_waits() {
        let page = form(
            r#"<p data-when="!ready">a</p><p data-when="ready">b</p><input name="bag.purity" value="99"><p data-when="echo.bag.purity">c</p>"#,
        );
        assert!(page.contains(r#"<p data-when="!ready">"#), "{page}");
        assert!(page.contains(r#"<p data-when="ready" hidden>"#), "{page}");
        assert!(page.contains(r#"<p data-when="echo.bag.purity" hidden>"#), "{page}");
    }
}
