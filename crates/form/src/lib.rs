//! The contract: text in, names with texts and states out. Pure: no browser, no clock, no store.
//!
//! | Question | Room |
//! |---|---|
//! | Which questions, results, states and units are there? | [`contract`] |
//! | What was typed, in which signs, and in which units are results shown? | `form` |
//! | How are numbers, lengths and moments read; which case do the fields make? | [`read`] |
//! | What goes back to the page? | [`mod@answer`] |
//! | Which name shows which part of the plan? | `present` |
//! | What has a learner to find, and which figures has an exercise? | [`exercise`] |
//! | How does a job leave: file, link, calendar, table, code on paper, frame? | [`export`] |
//! | What does a form from elsewhere mean on this page? | [`relocalize`] |
//! | On what terms does a link embed the form? | [`embed_options`] |
//! | What was typed, kept on a device: is it whole? | [`job_journal`] |

pub mod answer;
pub mod contract;
pub mod embed_options;
pub mod exercise;
pub mod export;
mod form;
pub mod job_journal;
mod present;
pub mod read;
pub mod relocalize;
pub mod text;

pub use answer::{Answer, Fault, Shown};
use form::Texts;
pub use form::{Form, utc_of};

/// Works out the answer to a form. Pure: the same form, the same answer, on any machine.
///
/// ```
/// use saltwright_form::{Form, answer};
/// let form = Form::from([
///     ("pool.volume", "16,596"), ("pool.volume.unit", "[gal_us]"), ("pool.method", "taped"),
///     ("salt.now", "400"), ("salt.now.unit", "[ppm]"), ("salt.method", "meter"), ("salt.target", "3200"),
///     ("bag.size", "40"), ("bag.size.unit", "[lb_av]"), ("bag.purity", "99.4"),
/// ]);
/// let answer = answer(&form);
/// assert_eq!(answer.text("basic.mass"), Some("390.1"));
/// assert_eq!(answer.text("buy.bags"), Some("10"));
/// assert_eq!(answer.text("stage.bags"), Some("6"));
/// assert!(answer.holds("gate.index.unknown")); // nothing was tested, and nothing passed
/// ```
pub fn answer(form: &Form) -> Answer {
    let mut answer = Answer::default();
    let texts = Texts::of(form);
    let (case, taped) = read::case::read(form, &texts, &mut answer);
    let plan = plan::plan(&case);
    present::present(&texts, form.signs(), &case, taped.as_ref(), &plan, &mut answer);
    exercise::variant::check(form, &mut answer);
    exercise::asked::hold(form, &mut answer);
    answer
}
