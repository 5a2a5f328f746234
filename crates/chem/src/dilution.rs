//! How much water must be replaced, and what does that leave?
//!
//! Everything dissolved that is conserved mixes along a straight line; pH does not
//! (see [`crate::Water::replaced`]).

use crate::error::DilutionError;
use crate::quantity::measured::*;

/// A quantity that mixes along a straight line.
pub trait Conserved: Copy + PartialOrd {
    /// Its value, mg/L.
    fn mg_per_l(self) -> f64;
    /// The value with `share` of it replaced by `other`'s.
    #[must_use]
    fn replaced(self, other: Self, share: Fraction) -> Self;
}

macro_rules! conserved {
    ($($name:ident)*) => {$(
        impl Conserved for $name {
            fn mg_per_l(self) -> f64 {
                $name::mg_per_l(self)
            }

            fn replaced(self, other: Self, share: Fraction) -> Self {
                let f = share.ratio();
                Self::clamped(self.mg_per_l() * (1.0 - f) + other.mg_per_l() * f)
            }
        }
    )*};
}

conserved! { Salinity Alkalinity Hardness CyanuricAcid Boron Magnesium Sulfate }

/// What is left of the excess over the fill water, part of 1: `(target - fill)/(now - fill)`.
fn remaining<Q: Conserved>(now: Q, target: Q, fill: Q) -> Result<f64, DilutionError> {
    if now <= target {
        Err(DilutionError::NotAbove)
    } else if fill >= target {
        Err(DilutionError::FillTooSalty)
    } else {
        match (target.mg_per_l() - fill.mg_per_l()) / (now.mg_per_l() - fill.mg_per_l()) {
            left if left > 0.0 => Ok(left),
            _ => Err(DilutionError::FillTooSalty), // Above the fill water by less than a number can tell.
        }
    }
}

/// Share of the pool to drain and refill at one go: `f = (now - target)/(now - fill)`.
///
/// Errors: [`DilutionError`]. Source: mass balance.
///
/// ```
/// use saltwright_chem::{DilutionError, Salinity, dilution};
/// let [now, target, fill] = [4_000.0, 3_200.0, 400.0].map(|x| Salinity::from_mg_per_l(x).unwrap());
/// let f = dilution::share(now, target, fill).unwrap();
/// assert!((f.ratio() - 0.222).abs() < 0.0005);
/// assert_eq!(dilution::share(target, now, fill), Err(DilutionError::NotAbove));
/// assert_eq!(dilution::share(now, target, target), Err(DilutionError::FillTooSalty));
/// ```
pub fn share<Q: Conserved>(now: Q, target: Q, fill: Q) -> Result<Fraction, DilutionError> {
    Ok(Fraction::clamped(1.0 - remaining(now, target, fill)?))
}

/// Water to run through a full, well mixed pool: `Q = -V ln((target - fill)/(now - fill))`.
///
/// Always more than [`share`] of the volume. Errors: [`DilutionError`]. Source: mass balance.
///
/// ```
/// use saltwright_chem::{Salinity, Volume, dilution};
/// let [now, target, fill] = [4_000.0, 3_200.0, 400.0].map(|x| Salinity::from_mg_per_l(x).unwrap());
/// let one = Volume::from_cubic_metres(1.0).unwrap();
/// let q = dilution::exchange(one, now, target, fill).unwrap();
/// assert!((q.cubic_metres() - 0.251).abs() < 0.0005);
/// ```
pub fn exchange<Q: Conserved>(volume: Volume, now: Q, target: Q, fill: Q) -> Result<Volume, DilutionError> {
    let left = remaining(now, target, fill)?;
    Ok(volume.checked_mul(libm::fmax(-libm::log(left), 0.0))?)
}

/// One part-drain of a series.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Part {
    /// Share of the pool drained and refilled.
    pub share: Fraction,
    /// Share of the first water gone after it.
    pub gone: Fraction,
}

/// Part-drains of at most `cap` each that come to one drain of `share`, the last one just enough.
///
/// Each takes its share of what the ones before it left: `gone' = gone + part (1 - gone)`.
/// Total; a cap of nothing gives none. Source: mass balance.
///
/// ```
/// use saltwright_chem::{Fraction, dilution};
/// let [share, third] = [0.615, 1.0 / 3.0].map(|x| Fraction::from_ratio(x).unwrap());
/// let parts: Vec<_> = dilution::in_parts(share, third).collect();
/// assert_eq!(parts.len(), 3); // two thirds of two thirds are left after two of them
/// assert!((parts[2].share.ratio() - 0.134).abs() < 0.0005);
/// assert_eq!(parts[2].gone, share);
/// ```
pub fn in_parts(share: Fraction, cap: Fraction) -> impl Iterator<Item = Part> {
    let (share, cap) = (share.ratio(), cap.ratio());
    let mut gone = 0.0;
    core::iter::from_fn(move || {
        let left = 1.0 - gone;
        let needed = (share - gone) / left;
        let last = needed <= cap;
        let next = if last { share } else { gone + cap * left };
        // A cap of nothing, or all of the water, would go on for ever.
        (next > gone).then(|| {
            gone = next;
            let [share, gone] = [if last { needed } else { cap }, gone].map(Fraction::clamped);
            Part { share, gone }
        })
    })
}
