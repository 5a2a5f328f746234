//! Which pools are there, and what truly happens in them?
//!
//! The truth is not the model that decides: starting salt is lognormal, undissolved salt exponential with
//! half the mean that is assumed, readings are rounded and never below none, and water is lost. All
//! figures are our own, carried over from the reference simulation; nothing here uses those of `plan`.

use evidence::draw::Draw;

/// Parts of all pools, how far a stated volume is off: shift, spread.
const METHODS: [(f64, f64, f64); 6] = [
    (0.05, 1.00, 0.015), // metered
    (0.10, 0.99, 0.04),  // drawing
    (0.25, 0.98, 0.05),  // taped
    (0.15, 0.98, 0.07),  // offsets
    (0.20, 0.97, 0.10),  // rule
    (0.25, 0.95, 0.17),  // remembered
];
/// Blunders: how often, how many times the spread, at least.
const BLUNDERS: (f64, f64, f64) = (0.05, 3.0, 0.15);

/// Parts of all pools, then an instrument's gain, offset, own noise, own noise by part, step.
const INSTRUMENTS: [(f64, [f64; 5]); 7] = [
    (0.30, [0.06, 60.0, 60.0, 0.06, 100.0]),  // strip
    (0.20, [0.03, 30.0, 30.0, 0.02, 200.0]),  // drops
    (0.20, [0.03, 60.0, 15.0, 0.01, 10.0]),   // meter
    (0.08, [0.08, 100.0, 25.0, 0.02, 10.0]),  // uncalibrated meter
    (0.12, [0.05, 50.0, 30.0, 0.04, 10.0]),   // photometer
    (0.05, [0.08, 100.0, 40.0, 0.04, 100.0]), // display
    (0.05, [0.015, 15.0, 10.0, 0.01, 10.0]),  // laboratory
];
/// Places in the list above.
pub const DROPS: usize = 1;
pub const METER: usize = 2;

/// Parts of all pools; low limit, target, high limit.
const BANDS: [(f64, [f64; 3]); 4] = [
    (0.10, [1_000.0, 1_500.0, 2_000.0]),
    (0.30, [2_700.0, 3_200.0, 3_400.0]),
    (0.40, [2_800.0, 3_200.0, 3_600.0]),
    (0.20, [4_000.0, 5_000.0, 6_000.0]),
];
/// Parts of all pools; kg in a bag.
const BAGS: [(f64, f64); 3] = [(0.45, 25.0), (0.25, 20.0), (0.30, 18.144)];
/// Parts of all pools; median of the starting salt, spread of its logarithm.
const STARTS: [(f64, (f64, f64)); 2] = [(0.35, (300.0, 0.5)), (0.65, (1_000.0, 0.45))];
/// Parts of all pools; hours to the retest, the part of the dose that is assumed undissolved then.
const WAITS: [(f64, (i64, f64)); 2] = [(0.5, (48, 0.01)), (0.5, (24, 0.05))];

pub const PURITY: f64 = 0.994;
const PURITY_SPREAD: f64 = 0.006;
const LOST_BETWEEN_VISITS: (f64, f64) = (0.002, 0.006);
const MOST_UNDISSOLVED: f64 = 0.5;
/// Nobody comes more often.
pub const MOST_VISITS: usize = 8;

/// What is worse than assumed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stress {
    None,
    /// Calibration errors 1.6 times as large.
    Calibration,
    /// Volumes 7 % smaller.
    Smaller,
    /// Four times as much salt undissolved.
    Undissolved,
    /// 3 % of readings a quarter too low.
    Slips,
}

/// A pool, and the luck that it has at each visit, whatever is done to it.
pub struct Pool {
    pub stated: f64,
    pub method: usize,
    pub instrument: usize,
    pub band: [f64; 3],
    pub bag: f64,
    pub hours: i64,
    /// The salt it starts with.
    pub start: f64,
    volume: f64,
    salt_in_bag: f64,
    assumed_undissolved: f64,
    /// Gain and offset of the two instruments, in their spreads.
    shared: [[f64; 2]; 2],
    noise: [f64; MOST_VISITS],
    water: [f64; MOST_VISITS],
    heap: [f64; MOST_VISITS],
    slip: [f64; MOST_VISITS],
}

impl Pool {
    pub fn draw(number: usize) -> Self {
        let mut chance = Draw((number as u64).wrapping_mul(0xd134_2543_de82_ef95) ^ 0x2026_1125);
        let methods = METHODS.map(|(part, shift, spread)| (part, (shift, spread)));
        let (method, (shift, spread)) = chance.weighted(&methods);
        let (instrument, _) = chance.weighted(&INSTRUMENTS);
        let (_, band) = chance.weighted(&BANDS);
        let (_, bag) = chance.weighted(&BAGS);
        let (_, (median, start_spread)) = chance.weighted(&STARTS);
        let (_, (hours, assumed_undissolved)) = chance.weighted(&WAITS);
        let stated = (50.0 * (0.45 * chance.normal()).exp()).clamp(12.0, 160.0).round();
        let usual = (1.0f64 + spread * spread).ln().sqrt();
        let (often, times, least) = BLUNDERS;
        let wide = if chance.next() < often { (times * usual).max(least) } else { usual };
        let volume = shift * stated * (wide * chance.normal()).exp();
        let start = median * (start_spread * chance.normal()).exp();
        let salt_in_bag = 1_000.0 * bag * PURITY * (PURITY_SPREAD * chance.normal()).exp();
        let shared = [(); 2].map(|()| [chance.normal(), chance.normal()]);
        let noise = [(); MOST_VISITS].map(|()| chance.normal());
        let water = [(); MOST_VISITS].map(|()| chance.normal());
        let heap = [(); MOST_VISITS].map(|()| chance.next());
        let slip = [(); MOST_VISITS].map(|()| chance.next());
        Self {
            stated,
            method,
            instrument,
            band,
            bag,
            hours,
            start,
            volume,
            salt_in_bag,
            assumed_undissolved,
            shared,
            noise,
            water,
            heap,
            slip,
        }
    }

    /// What a bag truly gives, mg/L.
    pub fn rise(&self, stress: Stress) -> f64 {
        let part = if stress == Stress::Smaller { 0.93 } else { 1.0 };
        self.salt_in_bag / (self.volume * part)
    }

    /// The salt at the next visit.
    pub fn later(&self, salt: f64, visit: usize) -> f64 {
        let (lost, spread) = LOST_BETWEEN_VISITS;
        salt * (1.0 - lost + spread * self.water[visit])
    }

    /// The part of the latest dose that lies on the floor.
    pub fn undissolved(&self, visit: usize, stress: Stress) -> f64 {
        let times = if stress == Stress::Undissolved { 2.0 } else { 0.5 };
        let part = -(1.0 - self.heap[visit]).ln() * self.assumed_undissolved * times;
        part.min(MOST_UNDISSOLVED)
    }

    /// The instrument that is taken when the first one's reading was odd.
    pub fn other(&self) -> usize {
        if self.instrument == METER { DROPS } else { METER }
    }

    /// What somebody notes down, with the first instrument or the other.
    pub fn read(&self, dissolved: f64, visit: usize, other: bool, stress: Stress) -> f64 {
        let by = if other { self.other() } else { self.instrument };
        let [gain, offset, each, part, step] = INSTRUMENTS[by].1;
        let badly = if stress == Stress::Calibration && !other { 1.6 } else { 1.0 };
        let [g, o] = self.shared[usize::from(other)].map(|luck| luck * badly);
        let own = (each * each + (part * dissolved).powi(2)).sqrt() * self.noise[visit];
        let mut read = dissolved * (1.0 + gain * g) + offset * o + own;
        if stress == Stress::Slips && self.slip[visit] < 0.03 {
            read *= 0.75;
        }
        ((read / step + 0.5).floor() * step).max(0.0)
    }
}
