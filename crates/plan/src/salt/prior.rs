//! How much water, before any reading?

use crate::policy::uncertainty::{BLUNDERS, OF_PURITY, OfVolume, of_blunder};
use crate::salt::mixture::About;

/// What is known of the volume before any reading: `V = shift · V0 · e^w`.
///
/// `w` has the density `0.95 N(0, t²) + 0.05 N(0, s²)`, `t² = ln(1 + spread²) + 0.006²` with the purity's
/// doubt in it, `s` that of a blunder.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Prior {
    /// Pure salt in a bag, g: what it gives a cubic metre, mg/L.
    pub(crate) bag: f64,
    /// The volume at `w = 0`, m³.
    volume: f64,
    narrow: f64,
    pub(crate) wide: f64,
    blunders: f64,
}

impl Prior {
    /// From the volume as stated, m³, and the pure salt in a bag, g.
    pub(crate) fn new(stated: f64, doubt: OfVolume, bag: f64) -> Self {
        let narrow = libm::sqrt(libm::log1p(doubt.spread * doubt.spread) + OF_PURITY * OF_PURITY);
        let volume = doubt.shift * stated;
        Self { bag, volume, narrow, wide: of_blunder(narrow), blunders: BLUNDERS }
    }

    /// The same without blunders, and with a doubt of at most `most`.
    pub(crate) fn strict(self, most: f64) -> Self {
        let narrow = libm::fmin(self.narrow, most);
        // The nodes reach to four times `wide`: twelve times the doubt.
        Self { narrow, wide: 3.0 * narrow, blunders: 0.0, ..self }
    }

    /// Mean and spread of the volume, m³.
    pub(crate) fn about(&self) -> About {
        let moment = |k: f64| {
            let of = |s: f64| libm::exp(k * k * s * s / 2.0);
            (1.0 - self.blunders) * of(self.narrow) + self.blunders * of(self.wide)
        };
        let mean = moment(1.0);
        let spread = libm::sqrt(libm::fmax(moment(2.0) - mean * mean, 0.0));
        About { mean: self.volume * mean, spread: self.volume * spread }
    }

    pub(crate) fn rise(&self, w: f64) -> f64 {
        self.bag / self.volume * libm::exp(-w)
    }

    pub(crate) fn log_density(&self, w: f64) -> f64 {
        let of = |s: f64| libm::exp(-0.5 * w * w / (s * s)) / s;
        libm::log((1.0 - self.blunders) * of(self.narrow) + self.blunders * of(self.wide))
    }
}
