//! How many bags now?
//!
//! The largest amount that is very unlikely to pass the high limit, no more than is needed, and before
//! the first retest no more than the trade puts in, or one part more where it would else be too low.

use crate::salt::estimate::{Estimate, last};
use crate::salt::job::Job;

/// What keeps a stage from being larger.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Bound {
    /// One unit more would risk the high limit.
    Risk,
    /// No more is needed on the average.
    Need,
    /// The cap: more may follow after a reading.
    Cap,
    /// It is one unit more than is needed on the average, because without it the low limit is at risk.
    Low,
}

/// Salt to put in now.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Stage {
    /// So many bags.
    pub bags: f64,
    /// The smallest part that is handled, in bags.
    pub unit: f64,
    /// It is weighed.
    pub weighed: bool,
    /// Why not more.
    pub bound: Bound,
    /// The most bags whose risk is taken; nothing where even none is too risky.
    pub allowed: Option<f64>,
    /// Bags that are needed on the average, in whole units.
    pub wanted: f64,
    /// What the cap leaves, in bags, below zero where more went in; nothing where it does not hold.
    pub room: Option<f64>,
    /// How likely the salt is above the high limit with nothing put in.
    pub over_now: f64,
    /// How likely it is above the high limit with these bags in it.
    pub over: f64,
    /// How likely it is below the low limit then.
    pub low: f64,
    /// The part of a bag that is due where a unit is too coarse, in hundredths.
    pub part: Option<f64>,
}

/// Chooses the stage in units of `unit` bags, where the cap leaves `room`.
///
/// With `Over(n) = P(C > high)` and `Low(n) = P(C < low)` after `n` bags: `n` is the most with
/// `Over(n) ≤ α`, but no more than the mean need; then the cap, though never less than one unit; then one
/// unit more if `Low(n) > β` and `α` allows it.
pub(crate) fn stage(job: &Job, estimate: &Estimate, unit: f64, weighed: bool, room: Option<f64>) -> Stage {
    let need = estimate.mean_need(job.band.target.mg_per_l());
    let over = |bags: f64| estimate.salt(bags).prob_above(job.band.high.mg_per_l());
    let low = |bags: f64| estimate.salt(bags).prob_below(job.band.low.mg_per_l());
    let bags = |units: i64, unit: f64| units as f64 * unit;
    let limits = |unit: f64| {
        let wanted = units(need, unit);
        (last(wanted, |n| over(bags(n, unit)) <= job.levels.over), wanted)
    };
    let (allowed, wanted) = limits(unit);
    let most = room.map_or(i64::MAX, |room| units(room, unit).max(1));
    let (mut n, mut bound) = if allowed < wanted { (allowed, Bound::Risk) } else { (wanted, Bound::Need) };
    if allowed <= 0 {
        (n, bound) = (0, Bound::Risk);
    } else if most < n {
        (n, bound) = (most, Bound::Cap);
    } else if n < allowed && low(bags(n, unit)) > job.levels.low {
        (n, bound) = (n + 1, Bound::Low);
    }
    let mut stage = Stage {
        bags: bags(n, unit),
        unit,
        weighed,
        bound,
        allowed: (allowed >= 0).then(|| bags(allowed, unit)),
        wanted: bags(wanted, unit),
        room,
        over_now: over(0.0),
        over: over(bags(n, unit)),
        low: low(bags(n, unit)),
        part: None,
    };
    if n == 0 && stage.low > job.levels.low {
        let (allowed, wanted) = limits(HUNDREDTH);
        stage.part = Some(bags(allowed.min(wanted).max(0), HUNDREDTH)).filter(|part| *part > 0.0);
    }
    stage
}

/// In what a part of a bag is told.
const HUNDREDTH: f64 = 0.01;

/// Whole units in so many bags, none below zero. What rounding may hide counts: a billionth of a unit.
fn units(bags: f64, unit: f64) -> i64 {
    libm::floor(libm::fmax(bags, 0.0) / unit + 1e-9) as i64
}
