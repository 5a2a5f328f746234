//! What stands where nothing was typed?

use crate::input::case::{Band, BandError};
use crate::policy::limits::USUAL_TARGET;
use chem::Salinity;

/// Target shown as an example until the generator's manual is read, mg/L. Our choice.
pub const EXAMPLE_TARGET: f64 = 3_200.0;
/// Low and high limit below and above the target until typed, mg/L. Our choice.
pub const BAND_HALF_WIDTH: f64 = 400.0;
/// Dissolved solids besides the salt, for the table forms of the index, mg/L. Common practice: 300 to 800.
pub const OTHER_SOLIDS: f64 = 500.0;
/// Most of a pool to drain at one go while its depth is not known. Our choice: what a hand-span
/// takes off a shallow pool.
pub const CAP_UNKNOWN: f64 = 0.15;
/// Chlorine that a pool outdoors uses up on a summer day, as an example until typed, mg/L. Common practice: 2 to 4.
pub const EXAMPLE_DEMAND: f64 = 3.0;
/// The demand on a mild day and in a hot spell, parts of it. Our choice.
pub const DEMAND_RANGE: [f64; 2] = [0.5, 1.5];
/// A climb of the pH is reckoned from here unless there is a goal, and by so much. Our choice.
pub const CLIMB_FROM: f64 = 7.4;
/// See [`CLIMB_FROM`].
pub const CLIMB: f64 = 0.2;

impl Band {
    /// The band as typed, what was not typed filled in from here.
    ///
    /// ```
    /// use chem::Salinity;
    /// use saltwright_plan::Band;
    /// let target = Salinity::from_mg_per_l(3_000.0).ok();
    /// let band = Band::of(None, target, None).unwrap();
    /// assert_eq!((band.low.mg_per_l(), band.high.mg_per_l()), (2_600.0, 3_400.0));
    /// let error: Box<dyn std::error::Error> = Band::of(target, target, None).unwrap_err().into();
    /// assert_eq!(error.to_string(), "low limit: must be below the target");
    /// ```
    pub fn of(
        low: Option<Salinity>,
        target: Option<Salinity>,
        high: Option<Salinity>,
    ) -> Result<Self, BandError> {
        let at = |x: f64| Salinity::from_mg_per_l(x).unwrap_or(Salinity::NONE);
        let aim = target.map_or(EXAMPLE_TARGET, Salinity::mg_per_l);
        // Half the target keeps the limit above zero for the few units that ask for very little.
        let band = Self {
            low: low.unwrap_or(at((aim - BAND_HALF_WIDTH).max(aim / 2.0))),
            target: at(aim),
            high: high.unwrap_or(at((aim + BAND_HALF_WIDTH).min(Salinity::MOST.mg_per_l()))),
            example: target.is_none(),
            limits_ours: low.is_none() || high.is_none(),
        };
        band.ordered()
    }

    /// Does the manual's target lie where few generators' do?
    #[must_use]
    pub fn is_unusual(&self) -> bool {
        let [low, high] = USUAL_TARGET;
        !self.example && !(low..=high).contains(&self.target.mg_per_l())
    }
}
