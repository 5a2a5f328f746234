//! How much may be drained at one go?

use crate::input::answers::Typed;
use crate::input::case::Case;
use crate::input::choices::{Ground, Surface};
use crate::policy;
use chem::{Fraction, Length};

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
/// use saltwright_plan::water::drain::{Basis, DrainInput, cap};
/// use saltwright_plan::{Surface, Typed};
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
