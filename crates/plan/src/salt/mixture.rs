//! What may a figure be, and how likely?

/// Volumes that are tried, each a part of what a figure may be.
pub const NODES: usize = 49;

/// A figure and its doubt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct About {
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub spread: f64,
}

impl About {
    /// Where it lies 9 times in 10, taken as a normal distribution.
    ///
    /// ```
    /// use plan::salt::mixture::About;
    /// let [low, high] = About { mean: 60.0, spread: 2.0 }.likely();
    /// assert!((low - 56.71).abs() < 0.001 && (high - 63.29).abs() < 0.001);
    /// ```
    pub fn likely(&self) -> [f64; 2] {
        [self.mean - 1.645 * self.spread, self.mean + 1.645 * self.spread]
    }
}

/// One part of a mixture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// How much it weighs.
    pub weight: f64,
    /// Its mean.
    pub mean: f64,
    /// Its standard deviation.
    pub spread: f64,
}

/// What a figure may be: one normal distribution a volume.
///
/// ```
/// use plan::salt::mixture::NODES;
/// use plan::salt::mixture::{Mixture, Part};
/// let plain = Mixture([Part { weight: 1.0 / NODES as f64, mean: 3_000.0, spread: 100.0 }; NODES]);
/// assert!((plain.above(3_100.0) - 0.1587).abs() < 1e-4 && (plain.below(3_000.0) - 0.5).abs() < 1e-9);
/// assert!((plain.about().spread - 100.0).abs() < 1e-9);
/// let [low, high] = plain.range();
/// assert!((low - 2_835.5).abs() < 0.5 && (high - 3_164.5).abs() < 0.5);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mixture(pub [Part; NODES]);

impl Mixture {
    /// How likely it lies above `limit`.
    pub fn above(&self, limit: f64) -> f64 {
        self.0.iter().map(|part| part.weight * upper_tail((limit - part.mean) / part.spread)).sum()
    }

    /// How likely it lies below `limit`.
    pub fn below(&self, limit: f64) -> f64 {
        self.0.iter().map(|part| part.weight * upper_tail((part.mean - limit) / part.spread)).sum()
    }

    /// Its mean and spread.
    pub fn about(&self) -> About {
        about(self.0.iter().map(|part| (part.weight, part.mean, part.spread * part.spread)))
    }

    /// Where it lies 9 times in 10, to a two-hundredth of its spread.
    ///
    /// Nothing lies farther than 4.36 spreads from its mean as often as 1 time in 20 (Cantelli).
    pub fn range(&self) -> [f64; 2] {
        let About { mean, spread } = self.about();
        [0.95, 0.05].map(|above| {
            let (mut low, mut high) = (mean - 4.36 * spread, mean + 4.36 * spread);
            for _ in 0..11 {
                let middle = 0.5 * (low + high);
                if self.above(middle) > above { low = middle } else { high = middle }
            }
            0.5 * (low + high)
        })
    }
}

/// Mean and spread of weighed figures with variances of their own.
pub(crate) fn about(parts: impl Iterator<Item = (f64, f64, f64)> + Clone) -> About {
    let mean: f64 = parts.clone().map(|(weight, x, _)| weight * x).sum();
    let var: f64 = parts.map(|(weight, x, var)| weight * (var + (x - mean) * (x - mean))).sum();
    About { mean, spread: libm::sqrt(var) }
}

/// How likely a normal figure stands more than `z` spreads above its mean.
pub(crate) fn upper_tail(z: f64) -> f64 {
    0.5 * libm::erfc(z * core::f64::consts::FRAC_1_SQRT_2)
}
