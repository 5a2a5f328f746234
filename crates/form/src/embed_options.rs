//! On what terms does a link embed the form? What is locked, asked, shown, told, allowed.

use crate::Form;
use crate::contract::Field;

/// What a link says besides the form itself.
#[derive(Clone, Debug, Default)]
pub struct EmbedOptions {
    /// The fields that keep the link's value.
    lock: String,
    /// And these values.
    pub locked: Form,
    /// The results to be found.
    ask: String,
    /// The only parts to be shown; all, if empty.
    pub only: String,
    /// The one host that may hear of answers, and set fields.
    pub tell: String,
    /// What a sandbox allows besides scripts: whoever wrote it knows, the page cannot ask.
    pub can: String,
}

/// The names that a link has for them.
pub const OPTIONS: [Field; 5] = [Field::Lock, Field::Ask, Field::Only, Field::Tell, Field::Can];

/// How far an exercise has got, which is nobody's to say who hands a form over.
const OF_AN_EXERCISE: [Field; 3] = [Field::AskCheck, Field::AskReveal, Field::AskValue];

/// Is a name in a list of them?
///
/// ```
/// use saltwright_form::embed_options::listed;
/// assert!(listed("salt,bags", "bags") && !listed("salt,bags", "bag") && !listed("", "bag"));
/// ```
pub fn listed(list: &str, name: &str) -> bool {
    list.split(',').any(|listed| listed == name)
}

/// Is this a name that only a link may say, and no host, file or script?
pub fn is_option(name: &str) -> bool {
    Field::find(name).is_some_and(|field| OPTIONS.contains(&field) || OF_AN_EXERCISE.contains(&field))
}

impl EmbedOptions {
    /// Takes the options out of what a link, a file or a kept job holds. A host is one origin, and nobody else: not
    /// everybody who may have put the page into a frame.
    pub fn take(form: &mut Form, is_origin: fn(&str) -> bool) -> Self {
        let [lock, ask, only, tell, can] = OPTIONS.map(|option| form.text(option.name()).to_string());
        // Nobody's attempt is checked or revealed by what comes from elsewhere.
        form.0.retain(|(name, _)| !is_option(name));
        let tell = if is_origin(&tell) { tell } else { String::new() };
        let locked = Form(form.0.iter().filter(|(name, _)| listed(&lock, name)).cloned().collect());
        Self { lock, locked, ask, only, tell, can }
    }

    /// What is to stand in a field: in a locked one what its link says, in another what is handed in.
    pub fn value<'a>(&'a self, name: &str, part: &'a Form) -> Option<&'a str> {
        self.locked.said(name).or(part.said(name))
    }

    /// Does the link settle what stands in this field?
    pub fn locks(&self, name: &str) -> bool {
        self.locked.said(name).is_some()
    }

    /// What goes with a job wherever it goes. Who may hear and what a sandbox allows is a matter of the place.
    pub fn of_a_job(&self) -> impl Iterator<Item = (String, String)> {
        filled([(Field::Lock, &self.lock), (Field::Ask, &self.ask), (Field::Only, &self.only)])
    }

    /// What goes into the page's address besides: the place stays what it is when it is read again.
    pub fn of_the_place(&self) -> impl Iterator<Item = (String, String)> {
        filled([(Field::Tell, &self.tell), (Field::Can, &self.can)])
    }

    /// A blank form under the same options.
    pub fn blank(&self) -> Form {
        Form(self.locked.0.iter().cloned().chain(self.of_a_job()).collect())
    }
}

fn filled<const N: usize>(all: [(Field, &String); N]) -> impl Iterator<Item = (String, String)> {
    all.into_iter()
        .filter(|(_, text)| !text.is_empty())
        .map(|(option, text)| (option.name().into(), text.clone()))
}
