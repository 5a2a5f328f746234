//! How does an answer cross to a script? As plain objects, lists and texts.
//!
//! One small tree with one `Serialize`, instead of a derived form a structure: those bring a table
//! of names and a copy of the serializer each, a tenth of the page.

use crate::answer::{Answer, Shown};
use crate::form::Fault;
use serde::ser::{Serialize, Serializer};

/// What a script sees.
#[derive(Clone, Debug, PartialEq)]
pub enum Plain<'a> {
    /// A whole number.
    Number(u32),
    /// A text.
    Text(&'a str),
    /// A list.
    List(Vec<Plain<'a>>),
    /// An object, its keys in order.
    Map(Vec<(&'a str, Plain<'a>)>),
}

impl Serialize for Plain<'_> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match self {
            Plain::Number(n) => s.serialize_u32(*n),
            Plain::Text(text) => s.serialize_str(text),
            Plain::List(all) => s.collect_seq(all),
            Plain::Map(all) => s.collect_map(all.iter().map(|(key, value)| (key, value))),
        }
    }
}

impl<'a> From<&'a Answer> for Plain<'a> {
    fn from(answer: &'a Answer) -> Self {
        let row = |row: &'a crate::answer::Row| Plain::Map(row.iter().map(|(k, v)| (*k, v.into())).collect());
        Plain::Map(vec![
            ("contract", Plain::Number(crate::answer::CONTRACT)),
            ("outputs", Plain::Map(answer.outputs.iter().map(|(k, v)| (k.as_str(), v.into())).collect())),
            ("states", Plain::List(answer.states.iter().map(|s| Plain::Text(s)).collect())),
            (
                "rows",
                Plain::Map(
                    answer
                        .rows
                        .iter()
                        .map(|(k, all)| (*k, Plain::List(all.iter().map(row).collect())))
                        .collect(),
                ),
            ),
            ("faults", Plain::List(answer.faults.iter().map(Plain::from).collect())),
        ])
    }
}

impl<'a> From<&'a Shown> for Plain<'a> {
    fn from(shown: &'a Shown) -> Self {
        let mut map = vec![("text", Plain::Text(&shown.text))];
        if let Some(unit) = shown.unit {
            map.push(("unit", Plain::Text(unit)));
        }
        Plain::Map(map)
    }
}

impl<'a> From<&'a Fault> for Plain<'a> {
    fn from(fault: &'a Fault) -> Self {
        let mut map = vec![
            ("field", Plain::Text(fault.field)),
            ("code", Plain::Text(fault.code)),
            ("got", Plain::Text(&fault.got)),
        ];
        if let Some([low, high]) = &fault.limits {
            map.extend([("low", low.into()), ("high", high.into())]);
        }
        if let Some(other) = &fault.other {
            map.push(("other", other.into()));
        }
        Plain::Map(map)
    }
}
