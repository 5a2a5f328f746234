//! How much water to replace while the salt is in doubt?

use crate::input::case::{Band, RiskLevels};
use crate::policy::uncertainty::{Moments, REPLACED_STD_DEV};
use crate::salt::mixture::upper_tail;
use chem::Salinity;

/// Water to replace, in parts of the pool.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Dilution {
    /// All of it, by draining and refilling.
    pub share: f64,
}

/// Water to replace where the salt is so much, mg/L. Nothing without the fill water's salt, and where
/// that is not below the target.
///
/// `f = (C - target)/(C - fill)`. If the salt is then still above the high limit more often than
/// allowed: the share at which it is not, if that does not go below the low limit. Its
/// standard deviation after it: `√(((1 - f) sd)² + (0.03 (C - fill))²)`, `sd` the salt's before.
pub(crate) fn dilution(
    band: &Band,
    fill: Option<Salinity>,
    levels: &RiskLevels,
    salt: Moments,
) -> Option<Dilution> {
    let fill = fill.filter(|fill| *fill < band.target)?.mg_per_l();
    let excess = Some(salt.mean - fill).filter(|excess| *excess > 0.0)?;
    let to = |salt_then: f64| ((salt.mean - salt_then) / excess).clamp(0.0, 1.0);
    let too_often = |share: f64| {
        let stirred = libm::hypot((1.0 - share) * salt.std_dev, REPLACED_STD_DEV * excess);
        let over = upper_tail((band.high.mg_per_l() - (salt.mean - share * excess)) / stirred);
        over > levels.drained
    };
    let to_target = to(band.target.mg_per_l());
    let mut share = to_target;
    if too_often(to_target) && !too_often(1.0) {
        let (mut little, mut enough) = (to_target, 1.0);
        for _ in 0..60 {
            let middle = 0.5 * (little + enough);
            if too_often(middle) { little = middle } else { enough = middle }
        }
        if enough <= to(band.low.mg_per_l()) {
            share = enough;
        }
    }
    Some(Dilution { share })
}
