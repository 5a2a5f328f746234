//! What do a fault, a row of measures and a logarithm look like in a file? (Feature `serde`.)
//!
//! A quantity is its number in its canonical unit, and refused outside its row.

use crate::bounds::{self, Bounds, OutOfRange};
use crate::pool_shape::{MOST_MEASURES, Measures};
use crate::quantity::measured::Length;
use core::fmt::{self, Formatter};
use serde::de::{Deserializer, Error, SeqAccess, Visitor};
use serde::ser::Serializer;
use serde::{Deserialize, Serialize};

/// A row by its name.
struct Row(&'static Bounds);

impl Serialize for Row {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.0.name)
    }
}

impl<'de> Deserialize<'de> for Row {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct Name;

        impl Visitor<'_> for Name {
            type Value = Row;

            fn expecting(&self, f: &mut Formatter) -> fmt::Result {
                f.write_str("the name of a row of bounds")
            }

            fn visit_str<E: Error>(self, name: &str) -> Result<Row, E> {
                let row = bounds::TABLE.iter().copied().find(|row| row.name == name);
                row.map(Row).ok_or_else(|| E::custom("no row of that name"))
            }
        }

        from.deserialize_str(Name)
    }
}

/// What an [`OutOfRange`] is written as.
#[derive(Serialize, Deserialize)]
struct Outside {
    /// Nothing where it was no number.
    got: Option<f64>,
    row: Row,
}

impl Serialize for OutOfRange {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        Outside { got: Some(self.got).filter(|x| x.is_finite()), row: Row(self.bounds) }.serialize(to)
    }
}

/// Knows the rows of this crate, no others.
impl<'de> Deserialize<'de> for OutOfRange {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let Outside { got, row: Row(row) } = Outside::deserialize(from)?;
        match row.check(got.unwrap_or(f64::NAN)) {
            Err(outside) => Ok(outside),
            Ok(_) => Err(D::Error::custom("that lies inside its row")),
        }
    }
}

impl Serialize for Measures {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_seq(self.metres())
    }
}

impl<'de> Deserialize<'de> for Measures {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct InARow;

        impl<'de> Visitor<'de> for InARow {
            type Value = Measures;

            fn expecting(&self, f: &mut Formatter) -> fmt::Result {
                write!(f, "up to {MOST_MEASURES} measures")
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut all: A) -> Result<Measures, A::Error> {
                let mut measures = Measures::NONE;
                while let Some(measure) = all.next_element::<Length>()? {
                    if !measures.push(measure) {
                        return Err(A::Error::invalid_length(MOST_MEASURES + 1, &self));
                    }
                }
                Ok(measures)
            }
        }

        from.deserialize_seq(InARow)
    }
}

/// A logarithm that is minus infinity where there is nothing to take it of: written as nothing.
pub(crate) mod log_of_nothing {
    use serde::{Deserialize, Deserializer, Serialize, Serializer};

    pub fn serialize<S: Serializer>(log: &f64, to: S) -> Result<S::Ok, S::Error> {
        Some(*log).filter(|x| x.is_finite()).serialize(to)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<f64, D::Error> {
        Ok(Option::deserialize(from)?.unwrap_or(f64::NEG_INFINITY))
    }
}
