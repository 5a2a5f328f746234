//! How much water, before any reading?

use crate::policy::uncertainty::{BLUNDERS, Moments, PURITY_STD_DEV, VolumeError, blunder_std_dev};

/// What is known of the volume before any reading: `V = κ V0 e^w`.
///
/// `w` has the density `0.95 N(0, t²) + 0.05 N(0, s²)`, `t² = ln(1 + ρ²) + 0.006²` with the purity's
/// doubt in it, `s` that of a blunder.
#[derive(Clone, Copy, Debug)]
pub(crate) struct VolumePrior {
    /// Pure salt in a bag, g: what it gives a cubic metre, mg/L.
    pub bag: f64,
    /// The volume at `w = 0`, m³.
    volume: f64,
    t: f64,
    pub s: f64,
    blunders: f64,
}

impl VolumePrior {
    /// From the volume as stated, m³, and the pure salt in a bag, g.
    pub(crate) fn new(stated: f64, error: VolumeError, bag: f64) -> Self {
        let VolumeError { kappa, rho } = error;
        let t = libm::sqrt(libm::log1p(rho * rho) + PURITY_STD_DEV * PURITY_STD_DEV);
        Self { bag, volume: kappa * stated, t, s: blunder_std_dev(t), blunders: BLUNDERS }
    }

    /// The same without blunders, and with a `t` of at most `most`.
    pub(crate) fn strict(self, most: f64) -> Self {
        let t = libm::fmin(self.t, most);
        // The nodes reach to four times `s`: twelve times `t`.
        Self { t, s: 3.0 * t, blunders: 0.0, ..self }
    }

    /// Mean and standard deviation of the volume, m³.
    pub(crate) fn moments(&self) -> Moments {
        let moment = |k: f64| {
            let of = |sigma: f64| libm::exp(k * k * sigma * sigma / 2.0);
            (1.0 - self.blunders) * of(self.t) + self.blunders * of(self.s)
        };
        let mean = moment(1.0);
        let std_dev = libm::sqrt(libm::fmax(moment(2.0) - mean * mean, 0.0));
        Moments { mean: self.volume * mean, std_dev: self.volume * std_dev }
    }

    /// `x`: what a bag gives where the volume is off by `w`, mg/L.
    pub(crate) fn mg_per_l_per_bag(&self, w: f64) -> f64 {
        self.bag / self.volume * libm::exp(-w)
    }

    pub(crate) fn log_density(&self, w: f64) -> f64 {
        let of = |sigma: f64| libm::exp(-0.5 * w * w / (sigma * sigma)) / sigma;
        libm::log((1.0 - self.blunders) * of(self.t) + self.blunders * of(self.s))
    }
}
