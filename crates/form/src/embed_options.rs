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
        let said = |option: Field| form.text(option.name()).to_string();
        let (lock, ask, only) = (said(Field::Lock), said(Field::Ask), said(Field::Only));
        let (tell, can) = (said(Field::Tell), said(Field::Can));
        // Nobody's attempt is checked or revealed by what comes from elsewhere.
        form.keep(&|name| !is_option(name));
        let tell = if is_origin(&tell) { tell } else { String::new() };
        let mut locked = form.clone();
        locked.keep(&|name| listed(&lock, name));
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
    pub fn of_a_job(&self) -> Form {
        filled(&[(Field::Lock, &self.lock), (Field::Ask, &self.ask), (Field::Only, &self.only)])
    }

    /// What goes into the page's address besides: the place stays what it is when it is read again.
    pub fn of_the_place(&self) -> Form {
        filled(&[(Field::Tell, &self.tell), (Field::Can, &self.can)])
    }

    /// A blank form under the same options.
    pub fn blank(&self) -> Form {
        let mut blank = self.locked.clone();
        blank.append(self.of_a_job());
        blank
    }
}

fn filled(options: &[(Field, &String)]) -> Form {
    let mut form = Form::default();
    for (option, text) in options.iter().filter(|(_, text)| !text.is_empty()) {
        form.say(option.name(), text);
    }
    form
}
