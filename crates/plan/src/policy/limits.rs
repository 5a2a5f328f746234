//! Within which limits does a figure pass?

/// A typed size this much off the measured one means that one of the two is wrong, part of it. Our choice: above
/// what two careful persons would differ by.
pub const APART: f64 = 0.15;
/// A lower reading than this, other than none at all, is asked about, mg/L. Our choice: a slip of unit
/// is likelier than such water.
pub const LEAST_READING: f64 = 20.0;
/// Other ions may account for this much more than a conductivity reads before the two are said to
/// disagree, mg/L. Our choice.
pub const BELIED_BY: f64 = 100.0;
/// Saturation index: inside this either side of zero it passes. Common practice.
pub const INDEX_PASS: f64 = 0.30;
/// Beyond this either side of zero salt waits for a person. Common practice.
pub const INDEX_STOP: f64 = 0.50;
/// Two bands, one in the other: in the inner a figure passes, in the outer it waits, beyond that it stops.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Within {
    /// The inner.
    pub pass: [f64; 2],
    /// The outer.
    pub wait: [f64; 2],
}

/// pH. Common practice inside legal bands.
pub const PH: Within = Within { pass: [7.2, 7.6], wait: [7.0, 8.0] };
/// Free chlorine: at least this without cyanuric acid, mg/L. Common practice.
pub const CHLORINE_BARE: f64 = 1.0;
/// The same with it, mg/L.
pub const CHLORINE_WITH_CYANURIC_ACID: f64 = 2.0;
/// And at least this part of the cyanuric acid. From memory of a published risk model; common practice.
pub const CHLORINE_OF_CYANURIC_ACID: f64 = 0.05;
/// And no more than this, mg/L, unless the goal is higher. Our choice: the label and the local rule decide.
pub const CHLORINE_MOST: f64 = 5.0;
/// Cyanuric acid above this is brought down by other water before salt goes in, mg/L. Common practice.
pub const CYANURIC_ACID_MOST: f64 = 90.0;
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
pub const NEAR_CYANURIC_ACID: f64 = 5.0;
/// The same for free chlorine, mg/L.
pub const NEAR_CHLORINE: f64 = 0.2;
/// Chlorine this much above its goal is waited for, mg/L. Our choice.
pub const CHLORINE_FAR_OVER: f64 = 2.0;
/// A generator should make at least this many daily demands in a pump day. Common practice: 1.5 to 2.
pub const AMPLE: f64 = 1.5;
/// Above this setting there is little reserve, part of 1. Our choice.
pub const LITTLE_RESERVE: f64 = 0.9;
/// Hours that a pump can run in a day.
pub const DAY: f64 = 24.0;
/// Below this many generators stop, °C. Common practice: 10 to 15; the manual decides.
pub const STOPS_BELOW: f64 = 15.0;
/// Days from laying a cement finish to salt. Common practice; start-up cards say 28 or 30.
pub const FINISH_DAYS: i64 = 30;
/// Days for which a reading is fresh. Our choice.
pub const READING_FRESH_DAYS: i64 = 7;
/// Days for which it is a reading. Our choice.
pub const READING_DAYS: i64 = 30;
/// A reading may be so many minutes ahead of the clock, as watches differ. Our choice.
pub const AHEAD: i64 = 60;
/// Combined chlorine: passes up to the first, stops above the second, mg/L. From memory of published codes.
pub const COMBINED: [f64; 2] = [0.4, 1.0];
/// Copper: passes below the first, stops above the second, mg/L. Common practice.
pub const COPPER: [f64; 2] = [0.2, 0.5];
/// The same for iron.
pub const IRON: [f64; 2] = [0.2, 0.3];
/// Alkalinity with a generator, mg/L. Common practice.
pub const ALKALINITY: Within = Within { pass: [60.0, 120.0], wait: [40.0, 200.0] };
/// Hardness over cement, mg/L. Common practice, near a published ideal of 200 to 400.
pub const HARDNESS_CEMENT: Within = Within { pass: [200.0, 400.0], wait: [100.0, 1_000.0] };
/// The same in a shell. Common practice.
pub const HARDNESS_SHELL: Within = Within { pass: [50.0, 300.0], wait: [0.0, 1_000.0] };
/// Cyanuric acid outdoors, mg/L. Common practice.
pub const CYANURIC_ACID_PASS: [f64; 2] = [30.0, 50.0];
/// Targets that generators usually ask for, mg/L; others are asked about. Common practice.
pub const USUAL_TARGET: [f64; 2] = [1_000.0, 8_000.0];
/// Most of a pool to drain at one go for a cement shell over ground water that is known to be low. Our choice.
pub const CAP_CEMENT: f64 = 1.0 / 3.0;
/// How far a pool is lowered at one go where its shell or the ground is not known to allow more, m: a hand-span.
/// Our choice.
pub const HAND_SPAN: f64 = 0.2;
