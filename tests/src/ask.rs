//! Which quantities, samples and waters are there to ask about?
//!
//! All are drawn from a [`Source`]: a small generator in the daily sweep, a fuzzer's bytes in
//! `cargo xtask prove fuzz`. Both ask exactly the same.

use crate::finite::finite;
use chem::bounds::{self, Bounds};
use chem::treatment::{AcidStrength, BleachStrength, Chemical, Dose, recipe};
use chem::*;

/// Where the draws come from.
pub trait Source {
    /// Any 64 bits.
    fn word(&mut self) -> u64;
}

/// Draws of every kind.
pub struct Ask<'a>(pub &'a mut dyn Source);

macro_rules! quantities {
    ($($name:ident: $type:ident = $from:ident in $row:ident;)*) => {
        impl Ask<'_> {
            $(
            /// One of this quantity, out of its row.
            pub fn $name(&mut self) -> $type {
                $type::$from(self.within(&bounds::$row)).unwrap()
            }
            )*
        }

        /// Every constructor of a measured quantity takes what its row allows and nothing else.
        pub fn constructors(ask: &mut Ask) {
            let x = ask.any();
            $(
                let made = $type::$from(x);
                let allowed = (bounds::$row.low..=bounds::$row.high).contains(&x);
                assert_eq!(made.is_ok(), allowed, "{} of {x:?}", stringify!($type));
                if let Ok(made) = made { finite(x, made) }
            )*
        }
    };
}

quantities! {
    volume: Volume = from_cubic_metres in VOLUME;
    mass: Mass = from_kilograms in MASS;
    fraction: Fraction = from_ratio in FRACTION;
    purity: Purity = from_ratio in PURITY;
    salinity: Salinity = from_mg_per_l in SALINITY;
    temperature: Temperature = from_celsius in TEMPERATURE;
    ph: Ph = from_units in PH;
    alkalinity: Alkalinity = from_mg_per_l in ALKALINITY;
    hardness: Hardness = from_mg_per_l in HARDNESS;
    cyanuric_acid: CyanuricAcid = from_mg_per_l in CYANURIC_ACID;
    boron: Boron = from_mg_per_l in BORON;
    magnesium: Magnesium = from_mg_per_l in MAGNESIUM;
    sulfate: Sulfate = from_mg_per_l in SULFATE;
    chlorine: Chlorine = from_mg_per_l in CHLORINE;
    carbonate: CarbonateAlkalinity = from_mg_per_l in CARBONATE_ALKALINITY;
    solids: Solids = from_mg_per_l in SOLIDS;
    length: Length = from_metres in LENGTH;
    area: Area = from_square_metres in AREA;
    strength: IonicStrength = from_molal in STRENGTH;
    conductivity: Conductivity = from_ms_per_cm in CONDUCTIVITY;
    air: CarbonDioxide = from_micro_atmospheres in AIR;
    dose: Dose = from_mmol_per_l in DOSE;
    acid_percent: AcidStrength = from_mass_percent in ACID_PERCENT;
    acid_baume: AcidStrength = from_baume in ACID_BAUME;
    bleach_trade: BleachStrength = from_trade_percent in BLEACH_PERCENT;
}

impl Ask<'_> {
    /// One of `all`.
    pub fn one<T: Copy>(&mut self, all: &[T]) -> T {
        all[(self.0.word() % all.len() as u64) as usize]
    }

    /// Any number at all: the odd ones, the limits and just past them, or 64 bits as they come.
    pub fn any(&mut self) -> f64 {
        const ODD: &[f64] = &[
            f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
            0.0,
            -0.0,
            5e-324,
            -5e-324,
            f64::MIN_POSITIVE,
            f64::MAX,
            f64::MIN,
            f64::EPSILON,
        ];
        match self.0.word() % 8 {
            0 => self.one(ODD),
            1..4 => {
                let row = self.one(bounds::TABLE);
                let limit = self.one(&[row.low, row.high]);
                self.one(&[limit, limit.next_up(), limit.next_down()])
            }
            4 => self.within(&bounds::VOLUME),
            _ => f64::from_bits(self.0.word()),
        }
    }

    /// A number of the row: its corners, next to nothing, or anything between.
    pub fn within(&mut self, row: &'static Bounds) -> f64 {
        let word = self.0.word();
        let part = (word >> 11) as f64 / (1u64 << 53) as f64;
        match word % 16 {
            0 | 1 => row.low,
            2 | 3 => row.high,
            4 => row.low.next_up(),
            5 => row.high.next_down(),
            6 => row.low.max(f64::MIN_POSITIVE),
            // Most that goes wrong goes wrong near the low end.
            7 => row.low + (row.high - row.low) * part.powi(8),
            _ => (row.low + (row.high - row.low) * part).min(row.high),
        }
    }

    /// A sample: half of them as the model takes them, half of anything that a person can type.
    pub fn sample(&mut self) -> Sample {
        let model = self.one(&[true, false]);
        let mut x = |inner, outer| self.within(if model { inner } else { outer });
        Sample {
            temperature: Temperature::from_celsius(x(&bounds::MODEL_TEMPERATURE, &bounds::TEMPERATURE))
                .unwrap(),
            ph: Ph::from_units(x(&bounds::MODEL_PH, &bounds::POOL_PH)).unwrap(),
            alkalinity: Alkalinity::from_mg_per_l(x(&bounds::MODEL_ALKALINITY, &bounds::ALKALINITY)).unwrap(),
            hardness: Hardness::from_mg_per_l(x(&bounds::MODEL_HARDNESS, &bounds::HARDNESS)).unwrap(),
            cyanuric_acid: CyanuricAcid::from_mg_per_l(x(
                &bounds::MODEL_CYANURIC_ACID,
                &bounds::CYANURIC_ACID,
            ))
            .unwrap(),
            salt: Salinity::from_mg_per_l(x(&bounds::MODEL_SALINITY, &bounds::SALINITY)).unwrap(),
            boron: self.boron(),
            magnesium: Magnesium::from_mg_per_l(self.within(&bounds::MODEL_MAGNESIUM)).unwrap(),
            sulfate: Sulfate::from_mg_per_l(self.within(&bounds::MODEL_SULFATE)).unwrap(),
        }
    }

    /// A water with up to eight things done to it; none where the sample itself has no answer.
    pub fn water(&mut self) -> Option<Water> {
        let mut water = self.sample().water().ok()?;
        for _ in 0..self.one(&[0, 1, 1, 2, 3, 8]) {
            water = match self.0.word() % 10 {
                0 => water.salted(self.salinity()),
                1 => water.mixed(self.sample().water().ok()?, self.fraction()),
                2 => water.replaced(self.sample().water().ok()?, self.fraction()),
                3 => water.spent(),
                5 => water.stripped(self.dose()),
                4 => recipe::recipe(&water, &self.goal()).ok()?.applied(water),
                _ => water.treated(self.one(Chemical::ALL), self.dose()),
            };
        }
        Some(water)
    }

    /// A goal for a water.
    pub fn goal(&mut self) -> recipe::Goal {
        let Sample { ph, alkalinity, hardness, cyanuric_acid, .. } = self.sample();
        recipe::Goal { ph, alkalinity, hardness, cyanuric_acid }
    }

    /// What a test of salt responds to.
    pub fn responds(&mut self) -> salt::SaltTest {
        use salt::SaltTest::*;
        self.one(&[Chloride, Conductivity, AsNaCl])
    }
}
