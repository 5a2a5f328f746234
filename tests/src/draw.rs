//! Which numbers, samples and waters are drawn? The same ones each time, so that a failure can be repeated.

use crate::ask::Source;
use chem::*;

/// The one generator of all tests: a counter, stirred (SplitMix64), so that any start serves.
pub struct Draw(pub u64);

impl Source for Draw {
    fn word(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut x = self.0;
        x = (x ^ x >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        x = (x ^ x >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        x ^ x >> 31
    }
}

impl Draw {
    /// From 0 to 1, without 1.
    #[allow(clippy::should_implement_trait)] // It has no end.
    pub fn next(&mut self) -> f64 {
        (self.word() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// From the first to the second.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }

    /// Normal, after Box and Muller.
    pub fn normal(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.next()).ln()).sqrt();
        radius * (core::f64::consts::TAU * self.next()).cos()
    }

    /// A whole number below this.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() * end as f64) as usize
    }

    /// One of these.
    pub fn pick<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }

    /// One of these, each as often as the part beside it says; with its place.
    pub fn weighted<T: Copy>(&mut self, all: &[(f64, T)]) -> (usize, T) {
        let mut left = self.next();
        let at = all.iter().position(|(part, _)| {
            left -= part;
            left < 0.0
        });
        let at = at.unwrap_or(all.len() - 1);
        (at, all[at].1)
    }

    /// A sample without boron, magnesium and sulfate.
    pub fn sample(&mut self) -> Sample {
        Sample {
            temperature: Temperature::from_celsius(self.between(0.0, 42.0)).unwrap(),
            ph: Ph::from_units(self.between(6.8, 8.4)).unwrap(),
            alkalinity: Alkalinity::from_mg_per_l(self.between(60.0, 300.0)).unwrap(),
            hardness: Hardness::from_mg_per_l(self.between(10.0, 1_000.0)).unwrap(),
            cyanuric_acid: CyanuricAcid::from_mg_per_l(self.between(0.0, 100.0)).unwrap(),
            salt: Salinity::from_mg_per_l(self.between(0.0, 5_000.0)).unwrap(),
            boron: Boron::NONE,
            magnesium: Magnesium::NONE,
            sulfate: Sulfate::NONE,
        }
    }

    /// A sample with every ion in it.
    pub fn with_every_ion(&mut self) -> Sample {
        Sample {
            boron: Boron::from_mg_per_l(self.between(0.0, 50.0)).unwrap(),
            magnesium: Magnesium::from_mg_per_l(self.between(0.0, 300.0)).unwrap(),
            sulfate: Sulfate::from_mg_per_l(self.between(0.0, 500.0)).unwrap(),
            ..self.sample()
        }
    }

    /// A sample, and the water that it was taken from.
    pub fn water(&mut self) -> (Sample, Water) {
        for _ in 0..1_000 {
            let sample = self.sample();
            if let Ok(water) = sample.water() {
                return (sample, water);
            }
        }
        panic!("hardly a sample has a water")
    }
}
