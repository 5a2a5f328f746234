//! Which waters are drawn? The same ones each time, so that a failure can be repeated.
#![allow(dead_code)] // Each test that includes this draws what it needs.

use chem::*;

/// A small generator of even numbers, with a fixed start.
pub struct Draw(pub u64);

impl Draw {
    /// From 0 to 1.
    pub fn next(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }

    /// A whole number below this.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() * end as f64) as usize
    }

    pub fn pick<T: Copy>(&mut self, all: &[T]) -> T {
        all[(self.next() * all.len() as f64) as usize]
    }

    /// A water without boron, magnesium and sulfate.
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
}
