//! How much water must be replaced, and what does that leave?
//!
//! Everything dissolved that is conserved mixes along a straight line; pH does not
//! (see [`crate::Water::replaced`]).

use crate::units::*;

/// Why replacing water does not lead to the target.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The pool already stands at or below the target: there is nothing to replace.
    NotAbove,
    /// The fill water stands at or above the target: no amount of it gets there.
    FillTooSalty,
}

/// A quantity that mixes along a straight line.
pub trait Conserved: Copy {
    /// The value with `share` of it replaced by `other`'s.
    fn replaced(self, other: Self, share: Fraction) -> Self;
}

macro_rules! conserved {
    ($($name:ident)*) => {$(
        impl Conserved for $name {
            fn replaced(self, other: Self, share: Fraction) -> Self {
                let f = share.ratio();
                Self::found(self.mg_per_l() * (1.0 - f) + other.mg_per_l() * f)
            }
        }
    )*};
}

conserved! { Salinity Alkalinity Hardness Cyanurate Boron Magnesium Sulfate }

/// What is left of the excess over the fill water, part of 1: `(target - fill)/(now - fill)`.
fn remaining(now: Salinity, target: Salinity, fill: Salinity) -> Result<f64, Fault> {
    if now <= target {
        Err(Fault::NotAbove)
    } else if fill >= target {
        Err(Fault::FillTooSalty)
    } else {
        match (target.mg_per_l() - fill.mg_per_l()) / (now.mg_per_l() - fill.mg_per_l()) {
            left if left > 0.0 => Ok(left),
            _ => Err(Fault::FillTooSalty), // Above the fill water by less than a number can tell.
        }
    }
}

/// Share of the pool to drain and refill at one go: `f = (now - target)/(now - fill)`.
///
/// Errors: [`Fault`]. Source: mass balance.
///
/// ```
/// use chem::{Salinity, dilution};
/// let [now, target, fill] = [4_000.0, 3_200.0, 400.0].map(|x| Salinity::from_mg_per_l(x).unwrap());
/// let f = dilution::share(now, target, fill).unwrap();
/// assert!((f.ratio() - 0.222).abs() < 0.0005);
/// assert_eq!(dilution::share(target, now, fill), Err(dilution::Fault::NotAbove));
/// assert_eq!(dilution::share(now, target, target), Err(dilution::Fault::FillTooSalty));
/// ```
pub fn share(now: Salinity, target: Salinity, fill: Salinity) -> Result<Fraction, Fault> {
    Ok(Fraction::found(1.0 - remaining(now, target, fill)?))
}

/// Water to run through a full, well mixed pool: `Q = -V ln((target - fill)/(now - fill))`.
///
/// Always more than [`share`] of the volume. Errors: [`Fault`]. Source: mass balance.
///
/// ```
/// use chem::{Salinity, Volume, dilution};
/// let [now, target, fill] = [4_000.0, 3_200.0, 400.0].map(|x| Salinity::from_mg_per_l(x).unwrap());
/// let one = Volume::from_cubic_metres(1.0).unwrap();
/// let q = dilution::exchange(one, now, target, fill).unwrap();
/// assert!((q.cubic_metres() - 0.251).abs() < 0.0005);
/// ```
pub fn exchange(volume: Volume, now: Salinity, target: Salinity, fill: Salinity) -> Result<Volume, Fault> {
    Ok(volume.times(-libm::log(remaining(now, target, fill)?)))
}

/// One part-drain of a series.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pass {
    /// Share of the pool drained and refilled.
    pub share: Fraction,
    /// Salt after it.
    pub salt: Salinity,
}

/// Part-drains of at most `cap` each, the last one just enough. Empty where [`share`] errs.
///
/// ```
/// use chem::{Fraction, Salinity, dilution};
/// let [now, target, fill] = [1_800.0, 693.0, 120.0].map(|x| Salinity::from_mg_per_l(x).unwrap());
/// let third = Fraction::from_ratio(1.0 / 3.0).unwrap();
/// let passes: Vec<_> = dilution::passes(now, target, fill, third).collect();
/// assert_eq!(passes.len(), 3);
/// assert!((passes[2].salt.mg_per_l() - 693.0).abs() < 1e-9);
/// ```
pub fn passes(now: Salinity, target: Salinity, fill: Salinity, cap: Fraction) -> impl Iterator<Item = Pass> {
    let mut salt = now;
    core::iter::from_fn(move || {
        let needed = share(salt, target, fill).ok()?;
        let last = needed <= cap;
        let share = if last { needed } else { cap };
        let next = if last { target } else { salt.replaced(fill, share) };
        // A cap of nothing, or a target a hair above the fill water, would go on for ever.
        (next < salt).then(|| {
            salt = next;
            Pass { share, salt }
        })
    })
}
