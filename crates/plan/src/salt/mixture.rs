//! What may a figure be, and how likely?

use crate::policy::uncertainty::Moments;

/// Volumes that are tried, each a part of what a figure may be.
pub const NODES: usize = 49;

/// One part of a mixture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// How much it weighs.
    pub weight: f64,
    /// Its own normal distribution.
    pub moments: Moments,
}

/// What a figure may be: one normal distribution a volume.
///
/// ```
/// use saltwright_plan::policy::Moments;
/// use saltwright_plan::salt::mixture::{Mixture, NODES, Part};
/// let moments = Moments { mean: 3_000.0, std_dev: 100.0 };
/// let plain = Mixture([Part { weight: 1.0 / NODES as f64, moments }; NODES]);
/// assert!((plain.prob_above(3_100.0) - 0.1587).abs() < 1e-4);
/// assert!((plain.prob_below(3_000.0) - 0.5).abs() < 1e-9);
/// assert!((plain.moments().std_dev - 100.0).abs() < 1e-9);
/// let [low, high] = plain.range();
/// assert!((low - 2_835.5).abs() < 0.5 && (high - 3_164.5).abs() < 0.5);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mixture(pub [Part; NODES]);

impl Mixture {
    /// How likely it lies above `limit`.
    #[must_use]
    pub fn prob_above(&self, limit: f64) -> f64 {
        self.0.iter().map(|part| part.weight * part.moments.prob_above(limit)).sum()
    }

    /// How likely it lies below `limit`.
    #[must_use]
    pub fn prob_below(&self, limit: f64) -> f64 {
        self.0.iter().map(|part| part.weight * part.moments.prob_below(limit)).sum()
    }

    /// Its mean and standard deviation.
    #[must_use]
    pub fn moments(&self) -> Moments {
        moments(self.0.iter().map(|part| (part.weight, part.moments)))
    }

    /// Where it lies 9 times in 10, to a two-hundredth of its standard deviation.
    #[must_use]
    pub fn range(&self) -> [f64; 2] {
        range(self.moments(), |limit| self.prob_above(limit))
    }
}

impl Moments {
    /// How likely a normal figure lies above `limit`.
    #[must_use]
    pub fn prob_above(&self, limit: f64) -> f64 {
        upper_tail((limit - self.mean) / self.std_dev)
    }

    /// How likely a normal figure lies below `limit`.
    #[must_use]
    pub fn prob_below(&self, limit: f64) -> f64 {
        upper_tail((self.mean - limit) / self.std_dev)
    }

    /// Where a normal figure lies 9 times in 10, found as a mixture's range is.
    #[must_use]
    pub fn range(self) -> [f64; 2] {
        range(self, |limit| self.prob_above(limit))
    }
}

/// Nothing lies farther than 4.36 standard deviations from its mean as often as 1 time in 20 (Cantelli).
fn range(Moments { mean, std_dev }: Moments, prob_above: impl Fn(f64) -> f64) -> [f64; 2] {
    [0.95, 0.05].map(|sought| {
        let (mut low, mut high) = (mean - 4.36 * std_dev, mean + 4.36 * std_dev);
        for _ in 0..11 {
            let middle = 0.5 * (low + high);
            if prob_above(middle) > sought { low = middle } else { high = middle }
        }
        0.5 * (low + high)
    })
}

/// Mean and standard deviation of weighed figures with doubts of their own.
pub(crate) fn moments(parts: impl Iterator<Item = (f64, Moments)> + Clone) -> Moments {
    let mean: f64 = parts.clone().map(|(weight, of)| weight * of.mean).sum();
    let square = |x: f64| x * x;
    let variance: f64 =
        parts.map(|(weight, of)| weight * (square(of.std_dev) + square(of.mean - mean))).sum();
    Moments { mean, std_dev: libm::sqrt(variance) }
}

/// `Q`: how likely a normal figure stands more than `z` standard deviations above its mean.
pub(crate) fn upper_tail(z: f64) -> f64 {
    0.5 * libm::erfc(z * core::f64::consts::FRAC_1_SQRT_2)
}
