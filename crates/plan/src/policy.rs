//! Which numbers are choices, and whose? Everything here may be argued with.
//!
//! "Common practice": the trade does it so, no source. "Our choice": we had to pick something.

/// Target shown as an example until the generator's manual is read, mg/L. Our choice.
pub const EXAMPLE_TARGET: f64 = 3_200.0;
/// Low and high limit below and above the target until typed, mg/L. Our choice.
pub const BAND_HALF_WIDTH: f64 = 400.0;

/// Targets that generators usually ask for, mg/L; others are asked about. Common practice.
pub const USUAL_TARGET: [f64; 2] = [1_000.0, 8_000.0];
/// A lower reading than this, other than none at all, is asked about, mg/L. Our choice: a slip of unit
/// is likelier than such water.
pub const LEAST_READING: f64 = 20.0;

/// This near below the target nothing is added, whatever the low limit, mg/L. Our choice: most tests
/// can't tell it from the target.
pub const NEAR_TARGET: f64 = 100.0;
/// Other ions may account for this much more than a conductivity reads before the two are said to
/// disagree, mg/L. Our choice.
pub const BELIED_BY: f64 = 100.0;

/// Dissolved solids besides the salt, for the table forms of the index, mg/L. Common practice: 300 to 800.
pub const OTHER_SOLIDS: f64 = 500.0;

/// Part of the computed bags that goes in at the first stage. Common practice: six or seven of ten.
pub const FIRST_STAGE: f64 = 0.7;
/// Below this part of the need a first stage in whole bags is too coarse. Our choice.
pub const FIRST_STAGE_LEAST: f64 = 0.5;
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

/// The most of a step to put in at one go, mmol per litre, in the order of the steps. Common practice, no
/// source: chlorine as its label says; bicarbonate for 50 ppm of alkalinity; 25 mL of 31 % acid a cubic
/// metre; cyanuric acid for 30 ppm; calcium for 80 ppm of hardness; acid as before; 12 g of soda ash a
/// cubic metre.
pub const LARGEST_DOSE: [f64; 7] = [1_000.0, 1.0, 0.25, 0.232, 0.8, 0.25, 0.113];
/// Hours from a step to its test, at least, in the same order. Common practice, no source; cyanuric acid
/// dissolves slowly and is tested after days.
pub const WAIT: [u32; 7] = [4, 6, 24, 72, 24, 4, 4];
