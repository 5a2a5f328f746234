//! What goes back to the page: names with texts, states that hold, rows, faults.

use crate::form::{Fault, Form};
use crate::number::{self, Signs};
use crate::unit::Unit;
use crate::{fill, form};
use serde::ser::{Serialize, SerializeSeq, Serializer};
use std::borrow::Cow;

/// The contract between page and code; see the form's `data-saltwright`.
pub const CONTRACT: u32 = 1;

/// A name of the contract between page and code.
pub type Name = Cow<'static, str>;

/// A number as it is shown, and the code of its unit; the page has the unit's word.
#[derive(Clone, Debug, PartialEq, serde::Serialize)]
pub struct Shown {
    /// The number, in the page's signs.
    pub text: String,
    /// UCUM code, or none where the page's sentence has the unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<&'static str>,
}

/// The outputs of one row, by the name they have inside it.
pub type Row = Vec<(&'static str, Shown)>;

/// The answer to a form.
#[derive(Clone, Debug, Default, PartialEq, serde::Serialize)]
pub struct Answer {
    /// [`CONTRACT`].
    pub contract: u32,
    /// What each output shows; one that is not here shows a dash.
    #[serde(serialize_with = "pairs")]
    pub outputs: Vec<(Name, Shown)>,
    /// The states that hold.
    pub states: Vec<Name>,
    /// The rows of each list.
    #[serde(serialize_with = "lists")]
    pub rows: Vec<(&'static str, Vec<Row>)>,
    /// The fields that can't be used.
    pub faults: Vec<Fault>,
}

/// Works out the answer to a form. Pure: the same form, the same answer, on any machine.
///
/// ```
/// use wasm::{Form, answer};
/// let form = Form::from([
///     ("pool.volume", "16,596"), ("pool.volume.unit", "[gal_us]"),
///     ("salt.now", "400"), ("salt.now.unit", "[ppm]"), ("salt.target", "3200"),
///     ("bag.size", "40"), ("bag.size.unit", "[lb_av]"), ("bag.purity", "99.4"),
/// ]);
/// let answer = answer(&form);
/// assert_eq!(answer.text("dose.mass"), Some("390.1"));
/// assert_eq!(answer.text("buy.bags"), Some("10"));
/// assert_eq!(answer.text("first.bags"), Some("6"));
/// assert!(answer.holds("gate.index.unknown")); // nothing was tested, and nothing passed
/// ```
pub fn answer(form: &Form) -> Answer {
    let mut answer = Answer {
        contract: CONTRACT,
        ..Answer::default()
    };
    let (case, units) = form::read(form, &mut answer);
    let plan = plan::plan(&case);
    fill::fill(form, &case, &plan, units, &mut answer);
    answer
}

impl Answer {
    /// The text of an output.
    pub fn text(&self, name: &str) -> Option<&str> {
        self.output(name).map(|shown| shown.text.as_str())
    }

    /// An output, if it is shown.
    pub fn output(&self, name: &str) -> Option<&Shown> {
        self.outputs
            .iter()
            .find(|(n, _)| n == name)
            .map(|(_, shown)| shown)
    }

    /// Does a state hold?
    pub fn holds(&self, state: &str) -> bool {
        self.states.iter().any(|s| s == state)
    }

    pub(crate) fn put(&mut self, name: impl Into<Name>, shown: Shown) {
        self.outputs.push((name.into(), shown));
    }

    pub(crate) fn say(&mut self, state: impl Into<Name>) {
        self.states.push(state.into());
    }
}

impl Shown {
    /// A canonical value in `unit`, with the decimals that unit is shown with.
    pub fn of(value: f64, unit: &'static Unit, signs: Signs) -> Self {
        let x = unit.outward(value);
        let decimals = unit.decimals[usize::from(x.abs() < 10.0)];
        Self {
            unit: Some(unit.code),
            ..Self::number(x, decimals, false, signs)
        }
    }

    /// A number with a fixed count of decimals.
    pub fn number(x: f64, decimals: usize, signed: bool, signs: Signs) -> Self {
        let text = number::write(x, decimals, signed, signs).unwrap_or_else(|| "–".into());
        Self { text, unit: None }
    }

    /// A number with as many decimals as it was typed with, in practice.
    pub fn plain(x: f64, unit: Option<&'static Unit>, signs: Signs) -> Self {
        let mut scale = 1.0;
        let mut decimals = 0;
        while decimals < 6
            && ((x * scale).round() - x * scale).abs() > 1e-9 * (x * scale).abs().max(1.0)
        {
            scale *= 10.0;
            decimals += 1;
        }
        Self {
            unit: unit.map(|u| u.code),
            ..Self::number(x, decimals, false, signs)
        }
    }
}

fn pairs<K: Serialize, V: Serialize, S: Serializer>(
    all: &[(K, V)],
    s: S,
) -> Result<S::Ok, S::Error> {
    s.collect_map(all.iter().map(|(k, v)| (k, v)))
}

fn lists<S: Serializer>(all: &[(&'static str, Vec<Row>)], s: S) -> Result<S::Ok, S::Error> {
    struct Rows<'a>(&'a [Row]);
    struct One<'a>(&'a Row);
    impl Serialize for Rows<'_> {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            let mut seq = s.serialize_seq(None)?;
            self.0
                .iter()
                .try_for_each(|row| seq.serialize_element(&One(row)))?;
            seq.end()
        }
    }
    impl Serialize for One<'_> {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            pairs(self.0, s)
        }
    }
    s.collect_map(all.iter().map(|(name, rows)| (name, Rows(rows))))
}
