//! Which numbers are choices, and whose? Everything here may be argued with.
//!
//! "Common practice": the trade does it so, no source. "Our choice": we had to pick something.

/// A typed size this much off the measured one means that one of the two is wrong, part of it. Our choice: above
/// what two careful persons would differ by.
pub const APART: f64 = 0.15;

/// Target shown as an example until the generator's manual is read, mg/L. Our choice.
pub const EXAMPLE_TARGET: f64 = 3_200.0;
/// Low and high limit below and above the target until typed, mg/L. Our choice.
pub const BAND_HALF_WIDTH: f64 = 400.0;

/// Targets that generators usually ask for, mg/L; others are asked about. Common practice.
pub const USUAL_TARGET: [f64; 2] = [1_000.0, 8_000.0];
/// A lower reading than this, other than none at all, is asked about, mg/L. Our choice: a slip of unit
/// is likelier than such water.
pub const LEAST_READING: f64 = 20.0;

/// Other ions may account for this much more than a conductivity reads before the two are said to
/// disagree, mg/L. Our choice.
pub const BELIED_BY: f64 = 100.0;

/// Dissolved solids besides the salt, for the table forms of the index, mg/L. Common practice: 300 to 800.
pub const OTHER_SOLIDS: f64 = 500.0;

/// Part of the computed bags that goes in at the first stage. Common practice: six or seven of ten.
pub const FIRST_STAGE: f64 = 0.7;
/// Below this many bags the salt is weighed. Our choice.
pub const WEIGH_BELOW_BAGS: f64 = 2.0;
/// Below this mass in all it is weighed in the finer step, kg. Our choice.
pub const WEIGH_FINELY_BELOW: f64 = 5.0;
/// A shortfall worth no more than this is not worth another bag, mg/L. Our choice.
pub const BUYING_SLACK: f64 = 50.0;

/// Salt in a pool nobody has read, freshly filled: mean and spread, mg/L. This and the next three are
/// our choice, from what each source of chlorine leaves behind.
pub const UNREAD_FRESH: (f64, f64) = (300.0, 300.0);
/// The same after a season or more of chlorine.
pub const UNREAD_OLDER: (f64, f64) = (1_000.0, 800.0);
/// The same where it was salted before.
pub const UNREAD_SALTED: (f64, f64) = (3_000.0, 1_500.0);
/// The same where nothing is known of it.
pub const UNREAD_UNKNOWN: (f64, f64) = (800.0, 1_200.0);

/// Most of a pool to drain at one go while its depth is not known. Our choice: what a hand-span
/// takes off a shallow pool.
pub const CAP_UNKNOWN: f64 = 0.15;
/// The same for a cement shell over ground water that is known to be low. Our choice.
pub const CAP_CEMENT: f64 = 1.0 / 3.0;

/// Saturation index: inside this either side of zero it passes. Common practice.
pub const INDEX_PASS: f64 = 0.30;
/// Beyond this either side of zero salt waits for a person. Common practice.
pub const INDEX_STOP: f64 = 0.50;
/// pH: passes in the inner band, waits in the outer, stops beyond. Common practice inside legal bands.
pub const PH_PASS: [f64; 2] = [7.2, 7.6];
/// See [`PH_PASS`].
pub const PH_WAIT: [f64; 2] = [7.0, 8.0];
/// Free chlorine: at least this without cyanuric acid, mg/L. Common practice.
pub const CHLORINE_BARE: f64 = 1.0;
/// The same with it, mg/L.
pub const CHLORINE_STABILISED: f64 = 2.0;
/// And at least this part of the cyanuric acid. From memory of a published risk model; common practice.
pub const CHLORINE_OF_CYANURATE: f64 = 0.05;
/// And no more than this, mg/L, unless the goal is higher. Our choice: the label and the local rule decide.
pub const CHLORINE_MOST: f64 = 5.0;
/// Cyanuric acid above this is brought down by other water before salt goes in, mg/L. Common practice.
pub const CYANURATE_MOST: f64 = 90.0;
/// Below this units throttle and grains dissolve slowly, °C. Common practice.
pub const WARM_ENOUGH: f64 = 18.0;

/// Of a dose that moves the pH, the part of the model's figure that goes in first. Our choice: printed
/// tables and models differ by a half.
pub const OF_THE_MODEL: f64 = 0.75;
/// No first dose goes below this pH by the model. Common practice.
pub const PH_FLOOR: f64 = 7.2;
/// A step smaller than this is none, mmol/L: a tenth of a ppm of alkalinity. Our choice.
pub const LEAST_DOSE: f64 = 0.001;

/// As near to its goal as this a test is taken to be there: most kits can't tell. Our choice: pH.
pub const NEAR_PH: f64 = 0.05;
/// The same for alkalinity, mg/L.
pub const NEAR_ALKALINITY: f64 = 5.0;
/// The same for hardness, mg/L.
pub const NEAR_HARDNESS: f64 = 10.0;
/// The same for cyanuric acid, mg/L.
pub const NEAR_CYANURATE: f64 = 5.0;
/// The same for free chlorine, mg/L.
pub const NEAR_CHLORINE: f64 = 0.2;
/// Chlorine this much above its goal is waited for, mg/L. Our choice.
pub const CHLORINE_FAR_OVER: f64 = 2.0;

/// The most of a step to put in at one go, mmol per litre, in the order of the steps. Common practice, no
/// source: chlorine as its label says; bicarbonate for 50 ppm of alkalinity; 25 mL of 31 % acid a cubic
/// metre; cyanuric acid for 30 ppm; calcium for 80 ppm of hardness; acid as before; 12 g of soda ash a
/// cubic metre.
pub const LARGEST_DOSE: [f64; 7] = [1_000.0, 1.0, 0.25, 0.232, 0.8, 0.25, 0.113];
/// Hours from a step to its test, at least, in the same order. Common practice, no source; cyanuric acid
/// dissolves slowly and is tested after days.
pub const WAIT: [u32; 7] = [4, 6, 24, 72, 24, 4, 4];

/// Which risks are taken. An author of a page may set each; all of them are our choice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Levels {
    /// Risk of passing the high limit that a dose may bring.
    pub over: f64,
    /// Risk of staying below the low limit that is left standing.
    pub low: f64,
    /// Part of the plain sum that goes in before the first retest; 1 means no such limit.
    pub cap: f64,
    /// How likely the bags bought are to suffice.
    pub enough: f64,
    /// Bags are bought to come this near the target, mg/L.
    pub slack: f64,
    /// Risk of still standing above the high limit that is left after all the replacing.
    pub drained: f64,
}

/// Salt goes in easily and comes out only with water: passing the high limit is allowed one time in a
/// hundred, ending a little low one time in four.
impl Default for Levels {
    fn default() -> Self {
        Self { over: 0.01, low: 0.25, cap: FIRST_STAGE, enough: 0.75, slack: BUYING_SLACK, drained: 0.10 }
    }
}

impl Levels {
    /// Is each of them in its range? NaN is in none. The risk of passing the high limit stays under
    /// even odds, where it is too salty for any dose.
    ///
    /// ```
    /// use plan::policy::Levels;
    /// assert!(Levels::default().are_levels());
    /// assert!(!Levels { over: f64::NAN, ..Levels::default() }.are_levels());
    /// ```
    pub fn are_levels(&self) -> bool {
        let part = |x: f64| x > 0.0 && x < 1.0;
        let cap = part(self.cap) || self.cap == 1.0;
        let risks = part(self.over) && self.over <= 0.5 && part(self.low) && part(self.drained);
        risks && cap && part(self.enough) && (0.0..=1_000.0).contains(&self.slack)
    }
}

/// The cap holds on after the first stage while less than this part of it has gone in. Our choice.
pub const CAP_STILL_HOLDS: f64 = 0.5;
/// The smallest part of a bag that is handled: at the first stage, later. Our choice.
pub const PART_OF_BAG: [f64; 2] = [1.0, 0.5];

/// Hours from the last salt to a reading that can be decided from. Common practice.
pub const HOURS_TO_READING: i64 = 24;
/// Hours from the last salt to switching on, at least. Common practice; the manual decides.
pub const HOURS_TO_POWER: i64 = 48;

/// Hours from a bag to each brushing: from, to. Common practice: until no heap is left, once more after four to
/// six hours, then once or twice a day; the later hours are our choice.
pub const BRUSH: [[i64; 2]; 4] = [[4, 6], [24, 25], [32, 34], [46, 48]];
/// Days from switching on to each early test of chlorine and pH. Common practice.
pub const TESTS_AFTER: [i64; 4] = [1, 2, 3, 5];
/// Hours by which a step may be late before it counts as gone by. Our choice.
pub const GRACE: i64 = 6;

/// Chlorine that a pool outdoors uses up on a summer day, as an example until typed, mg/L. Common practice: 2 to 4.
pub const EXAMPLE_DEMAND: f64 = 3.0;
/// The demand on a mild day and in a hot spell, parts of it. Our choice.
pub const DEMAND_RANGE: [f64; 2] = [0.5, 1.5];
/// A generator should make at least this many daily demands in a pump day. Common practice: 1.5 to 2.
pub const AMPLE: f64 = 1.5;
/// Above this setting there is little reserve, part of 1. Our choice.
pub const LITTLE_RESERVE: f64 = 0.9;
/// Hours that a pump can run in a day.
pub const DAY: f64 = 24.0;
/// Below this many generators stop, °C. Common practice: 10 to 15; the manual decides.
pub const STOPS_BELOW: f64 = 15.0;
/// A climb of the pH is reckoned from here unless there is a goal, and by so much. Our choice.
pub const CLIMB_FROM: f64 = 7.4;
/// See [`CLIMB_FROM`].
pub const CLIMB: f64 = 0.2;
/// How far a pool is lowered at one go where its shell or the ground is not known to allow more, m: a hand-span.
/// Our choice.
pub const HAND_SPAN: f64 = 0.2;

/// Days from laying a cement finish to salt. Common practice; start-up cards say 28 or 30.
pub const FINISH_DAYS: i64 = 30;
/// Days for which a reading is fresh; for which it is a reading. Our choice.
pub const READING_DAYS: [i64; 2] = [7, 30];
/// A reading may be so many minutes ahead of the clock, as watches differ. Our choice.
pub const AHEAD: i64 = 60;
/// Combined chlorine: passes up to the first, stops above the second, mg/L. From memory of published codes.
pub const COMBINED: [f64; 2] = [0.4, 1.0];
/// Copper: passes below the first, stops above the second, mg/L. Common practice.
pub const COPPER: [f64; 2] = [0.2, 0.5];
/// The same for iron.
pub const IRON: [f64; 2] = [0.2, 0.3];
/// Alkalinity with a generator: passes in the inner band, stops outside the outer, mg/L. Common practice.
pub const ALKALINITY_PASS: [f64; 2] = [60.0, 120.0];
/// See [`ALKALINITY_PASS`].
pub const ALKALINITY_WAIT: [f64; 2] = [40.0, 200.0];
/// Hardness over cement, the two bands in the same way. Common practice, near a published ideal of 200 to 400.
pub const HARDNESS_CEMENT: [[f64; 2]; 2] = [[200.0, 400.0], [100.0, 1_000.0]];
/// The same in a shell. Common practice.
pub const HARDNESS_SHELL: [[f64; 2]; 2] = [[50.0, 300.0], [0.0, 1_000.0]];
/// Cyanuric acid outdoors, mg/L. Common practice.
pub const CYANURATE_PASS: [f64; 2] = [30.0, 50.0];

/// Salt before the first reading once there is one: mean and spread, mg/L. Our choice: so wide that the
/// reading speaks, and not a history that the reading belies.
pub const BEFORE_READING: (f64, f64) = (1_500.0, 3_000.0);
/// No salt at all before the first dose, mean and spread, mg/L: what a first reading after it can't be below.
pub const NO_SALT: (f64, f64) = (0.0, 1.0);
/// A reading is odd when it stands more of its own spreads than this below, or above, what was expected.
/// Our choice, on purpose not the same: too low is mostly undissolved salt or a mixed-up sample, and
/// acting on it overshoots.
pub const ODD: [f64; 2] = [2.0, 3.0];
/// What was expected is reckoned with a doubt of the volume of at most this. Our choice: a remembered
/// volume must not excuse a strange rise.
pub const ODD_DOUBT: f64 = 0.10;
/// Two readings of one visit differ when they stand more of their common spreads apart. Our choice.
pub const REPEAT_APART: f64 = 3.0;
/// Two odd readings that agree are not believed if the volume they tell of lies, more likely than not,
/// farther off than this many spreads of a blunder. Our choice.
pub const FAR_OFF: f64 = 3.0;
/// A rise whose spread is more than this part of it is too weak to tell the volume from. Our choice.
pub const WEAK_RISE: f64 = 0.25;
/// Spread of the salt that replacing takes out, part of it. Our choice.
pub const REPLACED_SPREAD: f64 = 0.03;
