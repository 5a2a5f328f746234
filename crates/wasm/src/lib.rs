//! The door: text in, names with texts and states out. The only crate that knows of a browser.
//!
//! | Question | Room |
//! |---|---|
//! | Which questions are there? | [`field`] |
//! | What does a unit mean, and how is it shown? | [`mod@unit`] |
//! | How is a number read and written? | [`number`] |
//! | How is a length read, and a list? | [`length`] |
//! | How is a moment read and written? | [`moment`] |
//! | What was typed, in which signs, and in which units are results shown? | [`form`] |
//! | Can what stands in one field be used? | `reader` |
//! | Which case do the fields make? What was answered in words? | `case`, `ready` |
//! | Which size do tape and meter tell? | `measure` |
//! | What does the pool look like? | `drawing` |
//! | What goes back to the page? | [`mod@answer`] |
//! | Which name shows which part of the plan? | `fill` |
//! | Which names make up the contract? Which on a page are not of it? | [`names`], `mismatch` |
//! | Which results has a learner to find, and how near is an attempt? | [`ask`] |
//! | Which figures has the exercise of a number? | [`variant`] |
//! | How does an answer cross to a script? | [`plain`] |
//! | What can a script call? | [`door`] |
//! | What was typed, kept on this device: is it whole? | [`keep`] |
//! | How do the steps become a calendar, a job a table, a link a code on paper? | [`calendar`], [`table`], [`code`] |
//! | Who listens to the page? | `desk` |
//! | What does each button do? | `acts` |
//! | What does only the browser know? | `beside` |
//! | Under which terms does a link put the form before somebody? | `terms` |
//! | How does a form become an exercise? | `exercise` |
//! | What does a form get that its author left out? | `wire` |
//! | Who hears of an answer? | `tell` |
//! | What does a form from elsewhere mean on this page? | [`arrival`] |
//! | Which text puts this page into another one? | `frame` |
//! | How is a served page found without its server? | `offline` |
//! | Where does a desk keep its jobs? How do they leave the page and come back? | `shelf`, on a `store`; `passing` |
//! | Who writes on the page? Where? | `dom`, in `places` |
//! | Which part of the page is in view? | `views` |

mod acts;
pub mod answer;
pub mod arrival;
pub mod ask;
mod beside;
pub mod calendar;
mod case;
pub mod code;
mod desk;
mod dom;
pub mod door;
mod drawing;
mod exercise;
pub mod field;
mod fill;
pub mod form;
mod frame;
pub mod keep;
pub mod length;
mod measure;
mod mismatch;
pub mod moment;
pub mod names;
pub mod number;
mod offline;
mod passing;
mod places;
pub mod plain;
mod reader;
mod ready;
mod shelf;
mod store;
pub mod table;
mod tell;
pub mod terms;
pub mod unit;
pub mod variant;
mod views;
mod wire;

pub use answer::{Answer, Fault, Shown};
pub use form::Form;

/// Works out the answer to a form. Pure: the same form, the same answer, on any machine.
///
/// ```
/// use wasm::{Form, answer};
/// let form = Form::from([
///     ("pool.volume", "16,596"), ("pool.volume.unit", "[gal_us]"), ("pool.how", "taped"),
///     ("salt.now", "400"), ("salt.now.unit", "[ppm]"), ("salt.how", "meter"), ("salt.target", "3200"),
///     ("bag.size", "40"), ("bag.size.unit", "[lb_av]"), ("bag.purity", "99.4"),
/// ]);
/// let answer = answer(&form);
/// assert_eq!(answer.text("dose.mass"), Some("390.1"));
/// assert_eq!(answer.text("buy.bags"), Some("10"));
/// assert_eq!(answer.text("now.bags"), Some("6"));
/// assert!(answer.holds("gate.index.unknown")); // nothing was tested, and nothing passed
/// ```
pub fn answer(form: &Form) -> Answer {
    let mut answer = Answer::default();
    let (case, units) = case::read(form, &mut answer);
    let plan = plan::plan(&case);
    fill::fill(form, &case, &plan, units, &mut answer);
    variant::check(form, &mut answer);
    ask::hold(form, &mut answer);
    answer
}

#[cfg(target_family = "wasm")]
#[global_allocator]
static ALLOCATOR: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();
