//! Which risks are taken, and when is a reading not believed? Each is our choice.

use crate::input::case::RiskLevels;
use crate::input::limits::SLACK;

/// Likelier than this is likelier than not.
pub const EVEN_ODDS: f64 = 0.5;
/// Part of the computed bags that goes in at the first stage. Common practice: six or seven of ten.
pub const FIRST_STAGE: f64 = 0.7;
/// A shortfall worth no more than this is not worth another bag, mg/L. Our choice.
pub const BUYING_SLACK: f64 = 50.0;
/// The cap holds on after the first stage while less than this part of it has gone in. Our choice.
pub const CAP_STILL_HOLDS: f64 = 0.5;
/// The smallest part of a bag that is handled.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct PartOfBag {
    /// At the first stage.
    pub first: f64,
    /// At those after it.
    pub later: f64,
}

/// Where nothing else is said. Our choice.
pub const PART_OF_BAG: PartOfBag = PartOfBag { first: 1.0, later: 0.5 };
/// Below this many bags the salt is weighed. Our choice.
pub const WEIGH_BELOW_BAGS: f64 = 2.0;
/// Below this mass in all it is weighed in the finer step, kg. Our choice.
pub const WEIGH_FINELY_BELOW: f64 = 5.0;
/// A reading is an outlier when it stands more of its own standard deviations than this below, or above, what was
/// expected. Our choice, on purpose not the same: too low is mostly undissolved salt or a mixed-up sample, and acting
/// on it overshoots.
pub const OUTLIER_Z: [f64; 2] = [2.0, 3.0];
/// What was expected is reckoned with a doubt of the volume of at most this. Our choice: a remembered
/// volume must not excuse a strange rise.
pub const OUTLIER_DOUBT: f64 = 0.10;
/// Two readings of one visit differ when they stand more of their common standard deviations apart. Our choice.
pub const REPEAT_APART: f64 = 3.0;
/// Two outliers that agree are not believed if the volume they tell of lies, more likely than not,
/// farther off than this many standard deviations of a blunder. Our choice.
pub const FAR_OFF: f64 = 3.0;
/// A rise whose standard deviation is more than this part of it is too weak to tell the volume from. Our choice.
pub const WEAK_RISE: f64 = 0.25;

/// Salt goes in easily and comes out only with water: passing the high limit is allowed one time in a
/// hundred, ending a little low one time in four.
impl Default for RiskLevels {
    fn default() -> Self {
        Self { over: 0.01, low: 0.25, cap: FIRST_STAGE, enough: 0.75, slack: BUYING_SLACK, drained: 0.10 }
    }
}

impl RiskLevels {
    /// Is each of them in its range? NaN is in none. The risk of passing the high limit stays under
    /// even odds, where it is too salty for any dose.
    ///
    /// ```
    /// use saltwright_plan::RiskLevels;
    /// assert!(RiskLevels::default().are_levels());
    /// assert!(!RiskLevels { over: f64::NAN, ..RiskLevels::default() }.are_levels());
    /// ```
    #[must_use]
    pub fn are_levels(&self) -> bool {
        let part = |x: f64| x > 0.0 && x < 1.0;
        let cap = part(self.cap) || self.cap == 1.0;
        let risks = part(self.over) && self.over <= EVEN_ODDS && part(self.low) && part(self.drained);
        risks && cap && part(self.enough) && (SLACK.low..=SLACK.high).contains(&self.slack)
    }
}
