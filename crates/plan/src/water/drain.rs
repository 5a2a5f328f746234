//! How much may be drained at one go, and what does that take?

use crate::input::answers::{Flow, Typed};
use crate::input::case::Case;
use crate::input::choices::{Ground, Surface};
use crate::policy;
use chem::{Fraction, Length, Volume};

/// The most that may be drained at one go.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Cap {
    /// Share of the pool.
    pub share: Fraction,
    /// Whose figure it is.
    pub basis: Basis,
    /// The owner's own figure is larger.
    pub owner_larger: bool,
}

/// Where a cap comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Basis {
    /// What is not known counts as the careful case.
    Careful,
    /// A hand-span off the depth of this pool.
    Depth,
    /// Cement over ground water that is known to be low.
    Cement,
    /// The owner's own smaller figure.
    Owner,
}

/// What says how much may be drained at one go.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DrainInput {
    /// What the water touches.
    pub surface: Option<Surface>,
    /// Is the ground water known to stand low?
    pub ground: Option<Ground>,
    /// Mean depth.
    pub depth: Typed<Length>,
    /// The owner's own limit.
    pub cap: Typed<Fraction>,
}

impl DrainInput {
    /// Of a case.
    #[must_use]
    pub fn of(case: &Case) -> Self {
        Self { surface: case.surface, ground: case.ground, depth: case.depth, cap: case.cap }
    }
}

/// The cap; `None` while the owner's own figure is invalid, or the depth.
///
/// ```
/// use plan::water::drain::{Basis, DrainInput, cap};
/// use plan::{Surface, Typed};
/// // Cement alone is not enough for the larger cap: what stands under it counts.
/// let input = DrainInput { surface: Some(Surface::Cement), ..DrainInput::default() };
/// assert_eq!(cap(&input).unwrap().basis, Basis::Careful);
/// assert!(cap(&DrainInput { cap: Typed::Invalid, ..input }).is_none());
/// ```
#[must_use]
pub fn cap(input: &DrainInput) -> Option<Cap> {
    let cement = input.surface == Some(Surface::Cement) && input.ground == Some(Ground::Low);
    let span = input.depth.valid().map(|depth| policy::HAND_SPAN / depth.metres()).filter(|part| *part < 1.0);
    let (share, basis) = match span {
        _ if cement => (policy::CAP_CEMENT, Basis::Cement),
        Some(part) => (part, Basis::Depth),
        // It may be deeper than what is careful for a pool that nobody measured.
        None if input.depth.is_invalid() => return None,
        None => (policy::CAP_UNKNOWN, Basis::Careful),
    };
    let share = Fraction::from_ratio(share).ok()?;
    let own = input.cap.or(share)?;
    let (share, basis, owner_larger) =
        if own < share { (own, Basis::Owner, false) } else { (share, basis, own > share) };
    Some(Cap { share, basis, owner_larger })
}

/// Hours and money for so much water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort {
    /// Hours to let it out.
    pub out: Option<f64>,
    /// Hours to let it in.
    pub in_: Option<f64>,
    /// Price.
    pub price: Option<f64>,
}

/// What it takes to replace so much water.
#[must_use]
pub fn effort(flow: &Flow, water: Volume) -> Effort {
    let hours = |flow: Typed<f64>| flow.valid().filter(|x| *x > 0.0).map(|x| water.cubic_metres() / x);
    Effort {
        out: hours(flow.out),
        in_: hours(flow.in_),
        price: flow.price.valid().map(|price| price * water.cubic_metres()),
    }
}

/// Hours to run so much water through a full pool: at the slower of the two flows, since the level is kept.
#[must_use]
pub fn exchange_hours(flow: &Flow, water: Volume) -> Option<f64> {
    if flow.out.is_invalid() || flow.in_.is_invalid() {
        return None; // It may be the slower one.
    }
    let both = effort(flow, water);
    [both.out, both.in_].into_iter().flatten().reduce(f64::max)
}
