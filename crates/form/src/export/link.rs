//! What of a form goes into a link, and what into the frame that an author makes of it?

use crate::Form;
use crate::contract::codes::Tick;
use crate::contract::{Field, FieldId, Scope};
use crate::embed_options::{self, OPTIONS};
use crate::text::joined;

fn scope(name: &str) -> Option<Scope> {
    FieldId::find(name)?.field().map(Field::scope)
}

fn is_ticked(form: &Form, field: Field) -> bool {
    form.text(field.name()) == Tick::Yes.code()
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
    let named = is_ticked(&typed, Field::LinkJob);
    typed.0.retain(|field| {
        let scope = scope(&field.0);
        let left_out = scope == Some(Scope::Page) || scope == Some(Scope::Person) && !named;
        !left_out && !defaults.0.contains(field)
    });
    typed
}

/// What a frame's link has of a `link`: the options that its author chose in `typed`, and the fields to be locked.
pub fn of_a_frame(mut link: Form, typed: &Form, seen: impl Iterator<Item = String>) -> Form {
    link.keep(&|name| OPTIONS.iter().all(|option| option.name() != name));
    let mut lock = String::new();
    if is_ticked(typed, Field::GiveLock) {
        for name in seen {
            if is_asked(&name) && !typed.text(&name).is_empty() && !embed_options::listed(&lock, &name) {
                lock = joined(&[&lock, if lock.is_empty() { "" } else { "," }, &name]);
            }
        }
    }
    for (option, text) in [
        (Field::View, typed.text(Field::View.name())),
        (Field::Lock, &lock),
        (Field::Ask, typed.text(Field::GiveAsk.name())),
        (Field::Only, typed.text(Field::GiveOnly.name())),
        (Field::Can, "print,download"),
    ] {
        link.say(option.name(), text);
    }
    link
}

/// Is this a question about the pool, and not of the page or its learner?
fn is_asked(name: &str) -> bool {
    const NOT: [Field; 4] = [Field::Show, Field::JobName, Field::JobBy, Field::JobNote];
    let asked = |field: Field| {
        matches!(field.scope(), Scope::Job | Scope::Person | Scope::Shop) && !NOT.contains(&field)
    };
    FieldId::find(name).and_then(FieldId::field).is_some_and(asked)
}
