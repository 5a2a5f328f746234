//! What of a form goes into a link, and what into the frame that an author makes of it?

use crate::Form;
use crate::contract::fields::find;
use crate::embed_options;
use crate::text::joined;

/// What only the page itself asks: it is in no link and in no frame's locks.
const OF_THE_PAGE: [&str; 4] = ["at", "paper", "view", "link.job"];
/// What is about a person.
const OF_A_PERSON: [&str; 3] = ["job.", "surface.who", "over."];

fn begins(name: &str, all: &[&str]) -> bool {
    all.iter().any(|begin| name.starts_with(begin))
}

/// What a link has of the form: not what the page begins with anyway, and nothing about a person unless that is ticked.
///
/// ```
/// use saltwright_form::{Form, export::link::of};
/// let typed = Form::from([("pool.volume", "50"), ("bag.size", "20"), ("job.name", "Hall"), ("view", "owner")]);
/// let begins_with = Form::from([("bag.size", "20")]);
/// assert_eq!(of(typed.clone(), &begins_with), Form::from([("pool.volume", "50")]));
/// ```
pub fn of(mut typed: Form, defaults: &Form) -> Form {
    let named = typed.text("link.job") == "yes";
    typed.0.retain(|field| {
        let name = field.0.as_str();
        let own = OF_THE_PAGE.contains(&name) || name.starts_with("give.");
        !own && !defaults.0.contains(field) && (named || !begins(name, &OF_A_PERSON))
    });
    typed
}

/// What a frame's link has of a `link`: the options that its author chose in `typed`, and the fields to be locked.
pub fn of_a_frame(mut link: Form, typed: &Form, seen: impl Iterator<Item = String>) -> Form {
    link.0.retain(|(name, _)| !embed_options::NAMES.contains(&name.as_str()));
    let mut lock = String::new();
    if typed.text("give.lock") == "yes" {
        for name in seen {
            if is_asked(&name) && !typed.text(&name).is_empty() && !embed_options::listed(&lock, &name) {
                lock = joined(&[&lock, if lock.is_empty() { "" } else { "," }, &name]);
            }
        }
    }
    let options = [
        ("view", typed.text("view")),
        ("lock", &lock),
        ("ask", typed.text("give.ask")),
        ("only", typed.text("give.only")),
        ("can", "print,download"),
    ];
    link.0.extend(options.map(|(name, text)| (name.to_string(), text.to_string())));
    link
}

/// Is this a question of the job or its unit, and not of the page, a person or a learner?
fn is_asked(name: &str) -> bool {
    (find(name).is_some() || name.ends_with(".unit") || name == "variant")
        && name != "show"
        && !begins(name, &["job.", "try."])
}

#[cfg(test)]
mod tests {
    use super::is_asked;
    use crate::contract::names::FIELDS;

    /// A frame's author can lock whatever its reader would fill in.
    #[test]
    fn all_that_is_asked_can_be_locked() {
        let own = ["view", "at", "paper", "show", "link.job", "ask"];
        for field in FIELDS {
            let name = field.name.replace('N', "3");
            let of_the_page =
                own.contains(&field.name) || ["give.", "job."].iter().any(|b| name.starts_with(b));
            assert_eq!(is_asked(&name), !of_the_page, "{name}");
        }
        assert!(!is_asked("own") && !is_asked("try.dose.mass.unit"));
    }
}
