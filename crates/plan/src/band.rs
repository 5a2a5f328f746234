//! Between which limits is the salt to stand?

use crate::policy;
use chem::Salinity;

/// The generator's target and limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Lowest salt it works with.
    pub low: Salinity,
    /// Salt to aim at.
    pub target: Salinity,
    /// Highest salt it works with.
    pub high: Salinity,
    /// The target is our example, not the manual's.
    pub example: bool,
    /// A limit is ours, not the manual's.
    pub limits_ours: bool,
}

/// A band that contradicts itself: which limit is at fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BandFault {
    /// The low limit must be below the target.
    LowNotBelow,
    /// The high limit must be above the target.
    HighNotAbove,
}

impl Band {
    /// The band as typed, what was not typed filled in from [`policy`].
    ///
    /// ```
    /// use chem::Salinity;
    /// use plan::Band;
    /// let target = Salinity::from_mg_per_l(3_000.0).ok();
    /// let band = Band::of(None, target, None).unwrap();
    /// assert_eq!((band.low.mg_per_l(), band.high.mg_per_l()), (2_600.0, 3_400.0));
    /// assert!(Band::of(target, target, None).is_err());
    /// ```
    pub fn of(
        low: Option<Salinity>,
        target: Option<Salinity>,
        high: Option<Salinity>,
    ) -> Result<Self, BandFault> {
        let at = |x: f64| Salinity::from_mg_per_l(x).unwrap_or(Salinity::NONE);
        let aim = target.map_or(policy::EXAMPLE_TARGET, Salinity::mg_per_l);
        // Half the target keeps the limit above zero for the few units that ask for very little.
        let band = Self {
            low: low.unwrap_or(at((aim - policy::BAND_HALF_WIDTH).max(aim / 2.0))),
            target: at(aim),
            high: high.unwrap_or(at((aim + policy::BAND_HALF_WIDTH).min(Salinity::MOST.mg_per_l()))),
            example: target.is_none(),
            limits_ours: low.is_none() || high.is_none(),
        };
        if band.low >= band.target {
            Err(BandFault::LowNotBelow)
        } else if band.high <= band.target {
            Err(BandFault::HighNotAbove)
        } else {
            Ok(band)
        }
    }

    /// Does the manual's target lie where few generators' do?
    pub fn is_unusual(&self) -> bool {
        let [low, high] = policy::USUAL_TARGET;
        !self.example && !(low..=high).contains(&self.target.mg_per_l())
    }
}
