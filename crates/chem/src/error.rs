//! Why is there no answer? One error a subject, each with what to do about it.

use crate::bounds::OutOfRange;
use core::error::Error;
use core::fmt::{Display, Formatter, Result};

/// Why a water has no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum WaterError {
    /// A test lies outside what the model was checked for.
    Outside(OutOfRange),
    /// At this pH the cyanuric acid and borate tested already hold more than the alkalinity tested:
    /// one of the three readings is wrong. Test them again.
    NoCarbonate,
    /// No pH between 3 and 11 balances this alkalinity with this carbon, or there is no such water.
    NoSolution,
}

/// Why there is no recipe.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum RecipeError {
    /// Hardness has to come down: only other water does that.
    Hardness,
    /// Cyanuric acid has to come down: only other water does that.
    CyanuricAcid,
    /// Aeration would have to take carbon dioxide below what air keeps up: a lower pH or a higher
    /// alkalinity can be reached, this can't.
    BelowAir,
    /// The water there, or here, has no answer.
    Chemistry(WaterError),
    /// No dose of this chemical brings the pH there.
    OutOfReach,
}

/// Why replacing water does not lead to the target.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum DilutionError {
    /// The pool already stands at or below the target: there is nothing to replace.
    NotAbove,
    /// The fill water stands at or above the target: no amount of it gets there.
    FillTooSalty,
    /// More water than any meter shows.
    Outside(OutOfRange),
}

/// Measures that contradict each other.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum ShapeError {
    /// The deep end is not as deep as the shallow one.
    NotDeeper,
    /// Flat and slope are longer than the pool.
    TooLong,
    /// The pad is larger than the hopper's top.
    PadTooLarge,
    /// An oval with straight sides can't be wider than long.
    WiderThanLong,
    /// The ledge lies no higher than the floor beside it.
    NoLedge,
    /// The ledge takes up all of the pool.
    LedgeTooLarge,
    /// Three widths at least.
    TooFew,
    /// That floor can't be reckoned under that edge.
    OtherFloor,
    /// What is taken off leaves no water.
    NoPool,
    /// There is less water than in any pool, or more, or a measure is beyond its row.
    Outside(OutOfRange),
}

impl Display for WaterError {
    fn fmt(&self, f: &mut Formatter) -> Result {
        match self {
            Self::Outside(out) => write!(f, "beyond what the ion model takes: {out}"),
            Self::NoCarbonate => f.write_str(
                "cyanuric acid and borate hold more than the alkalinity tested at this pH: test all three again",
            ),
            Self::NoSolution => f.write_str("no pH from 3 to 11 balances this alkalinity with this carbon: test both again"),
        }
    }
}

impl Display for RecipeError {
    fn fmt(&self, f: &mut Formatter) -> Result {
        f.write_str(match self {
            Self::Hardness => "calcium hardness has to come down: replace water",
            Self::CyanuricAcid => "cyanuric acid has to come down: replace water",
            Self::BelowAir => {
                "aeration can't take so much carbon dioxide: aim for a lower pH or more alkalinity"
            }
            Self::Chemistry(water) => return write!(f, "the water on the way has no answer: {water}"),
            Self::OutOfReach => "no dose of this brings the pH there: choose another chemical or goal",
        })
    }
}

impl Display for DilutionError {
    fn fmt(&self, f: &mut Formatter) -> Result {
        f.write_str(match self {
            Self::NotAbove => "the pool does not stand above the target: nothing to replace",
            Self::FillTooSalty => "the fill water does not stand below the target: use other water",
            Self::Outside(out) => return write!(f, "more water than can be told: {out}"),
        })
    }
}

impl Display for ShapeError {
    fn fmt(&self, f: &mut Formatter) -> Result {
        f.write_str(match self {
            Self::NotDeeper => "the deep end is not as deep as the shallow one",
            Self::TooLong => "flat and slope are longer than the pool",
            Self::PadTooLarge => "the pad is larger than the hopper's top",
            Self::WiderThanLong => "an oval with straight sides can't be wider than long",
            Self::NoLedge => "the ledge lies no higher than the floor beside it",
            Self::LedgeTooLarge => "the ledge takes up all of the pool: its area may be wrong",
            Self::TooFew => "three widths at least",
            Self::OtherFloor => "that floor can't be reckoned under that edge",
            Self::NoPool => "steps, ledge and what is taken off leave no water: measure them again",
            Self::Outside(out) => return write!(f, "no pool is like that: {out}"),
        })
    }
}

// Each says itself what it was made of, so that no chain of sources says it twice.
impl Error for WaterError {}

impl Error for RecipeError {}

impl Error for DilutionError {}

impl Error for ShapeError {}

impl From<OutOfRange> for WaterError {
    fn from(out: OutOfRange) -> Self {
        Self::Outside(out)
    }
}

impl From<OutOfRange> for DilutionError {
    fn from(out: OutOfRange) -> Self {
        Self::Outside(out)
    }
}

impl From<OutOfRange> for RecipeError {
    fn from(out: OutOfRange) -> Self {
        Self::Chemistry(out.into())
    }
}

impl From<WaterError> for RecipeError {
    fn from(water: WaterError) -> Self {
        Self::Chemistry(water)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Fraction, Ph, Salinity, Volume, dilution};
    use std::boxed::Box;
    use std::string::{String, ToString};

    type Any = core::result::Result<(), Box<dyn Error>>;

    #[test]
    fn every_error_can_be_passed_on_and_says_what_it_is_of() {
        fn ph() -> Any {
            Ph::from_units(-1.0)?;
            Ok(())
        }
        fn water() -> Any {
            Err(WaterError::from(Fraction::from_ratio(2.0).unwrap_err()))?;
            Ok(())
        }
        fn shape() -> Any {
            Err(ShapeError::TooFew)?;
            Ok(())
        }
        fn replaced() -> Any {
            dilution::exchange(Volume::ONE, Salinity::NONE, Salinity::NONE, Salinity::NONE)?;
            Ok(())
        }
        fn recipe() -> Any {
            Err(RecipeError::from(WaterError::NoSolution))?;
            Ok(())
        }
        let said = |of: fn() -> Any| -> String {
            let error = of().unwrap_err();
            assert!(error.source().is_none(), "said twice: {error}");
            error.to_string()
        };
        assert_eq!(said(ph), "pH -1 is outside 0 to 14");
        assert!(said(water).ends_with("fraction 2 parts of 1 is outside 0 to 1"));
        assert!(said(shape).contains("three widths"));
        assert!(said(replaced).contains("nothing to replace"));
        assert!(said(recipe).contains("no pH from 3 to 11"));
    }
}
