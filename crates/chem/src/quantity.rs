//! In which unit does a number stand? One type a meaning, one canonical unit inside.
//!
//! Other units exist only at the door. `from_*` checks the table of [`crate::bounds`]; what a
//! formula computes from checked quantities is not checked again.

use crate::bounds::{self, OutOfRange};

macro_rules! measured {
    ($($(#[$doc:meta])* $name:ident, $row:ident, $from:ident, $get:ident, $unit:literal;)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("From a number of ", $unit, ", which must lie in [`bounds::", stringify!($row), "`].")]
            ///
            /// ```
            #[doc = concat!("use chem::{bounds, ", stringify!($name), "};")]
            #[doc = concat!("let low = bounds::", stringify!($row), ".low;")]
            #[doc = concat!("assert_eq!(", stringify!($name), "::", stringify!($from), "(low).unwrap().", stringify!($get), "(), low);")]
            #[doc = concat!("assert!(", stringify!($name), "::", stringify!($from), "(f64::NAN).is_err());")]
            /// ```
            pub fn $from(x: f64) -> Result<Self, OutOfRange> {
                bounds::$row.check(x).map(Self)
            }

            #[doc = concat!("The number of ", $unit, ".")]
            pub const fn $get(self) -> f64 {
                self.0
            }

            /// What a formula found; the caller answers for its being a number.
            #[allow(dead_code)]
            pub(crate) const fn found(x: f64) -> Self {
                Self(x)
            }
        }
    )*};
}

macro_rules! found {
    ($($(#[$doc:meta])* $name:ident, $get:ident, $unit:literal;)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(pub(crate) f64);

        impl $name {
            #[doc = concat!("The number of ", $unit, ".")]
            pub const fn $get(self) -> f64 {
                self.0
            }
        }
    )*};
}

measured! {
    /// An amount of water.
    Volume, VOLUME, from_cubic_metres, cubic_metres, "m³";
    /// An amount of salt.
    Mass, MASS, from_kilograms, kilograms, "kg";
    /// A part of a whole.
    Fraction, FRACTION, from_ratio, ratio, "parts of 1";
    /// Sodium chloride in a bag of salt, by mass.
    Purity, PURITY, from_ratio, ratio, "parts of 1";
    /// Salt in water, as sodium chloride; also a difference of two such, never below zero.
    Salinity, SALINITY, from_mg_per_l, mg_per_l, "mg/L";
    /// Temperature.
    Temperature, TEMPERATURE, from_celsius, celsius, "°C";
    /// Negative decimal logarithm of the hydrogen ion's *activity*.
    Ph, PH, from_units, units, "pH";
    /// Total alkalinity, as calcium carbonate.
    Alkalinity, ALKALINITY, from_mg_per_l, mg_per_l, "mg/L as CaCO3";
    /// Calcium hardness, as calcium carbonate.
    Hardness, HARDNESS, from_mg_per_l, mg_per_l, "mg/L as CaCO3";
    /// Cyanuric acid in all its forms.
    Cyanurate, CYANURATE, from_mg_per_l, mg_per_l, "mg/L";
    /// Boron in all its forms, as the element.
    Boron, BORON, from_mg_per_l, mg_per_l, "mg/L as B";
    /// Magnesium hardness, as calcium carbonate.
    Magnesium, MAGNESIUM, from_mg_per_l, mg_per_l, "mg/L as CaCO3";
    /// Free chlorine, as Cl2.
    Chlorine, CHLORINE, from_mg_per_l, mg_per_l, "mg/L as Cl2";
    /// Ionic strength.
    IonicStrength, STRENGTH, from_molal, molal, "mol per kg of water";
    /// Electrical conductivity.
    Conductivity, CONDUCTIVITY, from_ms_per_cm, ms_per_cm, "mS/cm";
    /// Sulfate.
    Sulfate, SULFATE, from_mg_per_l, mg_per_l, "mg/L as SO4";
    /// A length.
    Length, LENGTH, from_metres, metres, "m";
    /// A surface.
    Area, AREA, from_square_metres, square_metres, "m²";
}

found! {
    /// The part of alkalinity that bicarbonate and carbonate hold.
    CarbonateAlkalinity, mg_per_l, "mg/L as CaCO3";
    /// Calcite saturation index: the decimal logarithm of ion product over solubility product.
    SaturationIndex, log10, "powers of ten";
    /// Total inorganic carbon.
    InorganicCarbon, molal, "mol per kg of water";
    /// Carbon dioxide's partial pressure over water in equilibrium with it.
    CarbonDioxide, atmospheres, "atm";
    /// Mass of a cubic metre.
    Density, kg_per_m3, "kg/m³";
    /// Water in a litre of solution.
    WaterContent, kg_per_l, "kg of water per litre";
}

impl Salinity {
    /// No salt.
    pub const NONE: Self = Self(0.0);
    /// The most the table of bounds knows.
    pub const MOST: Self = Self(bounds::SALINITY.high);

    /// How far `self` stands above `other`; `None` when it does not.
    ///
    /// ```
    /// use chem::Salinity;
    /// let [low, high] = [400.0, 3_200.0].map(|x| Salinity::from_mg_per_l(x).unwrap());
    /// assert_eq!(high.above(low).unwrap().mg_per_l(), 2_800.0);
    /// assert_eq!(low.above(high), None);
    /// ```
    pub fn above(self, other: Self) -> Option<Self> {
        (self > other).then_some(Self(self.0 - other.0))
    }

    /// `self` with `rise` added.
    ///
    /// ```
    /// use chem::Salinity;
    /// let [now, rise] = [400.0, 2_800.0].map(|x| Salinity::from_mg_per_l(x).unwrap());
    /// assert_eq!(now.raised_by(rise).mg_per_l(), 3_200.0);
    /// ```
    pub fn raised_by(self, rise: Self) -> Self {
        Self(self.0 + rise.0)
    }
}

impl Volume {
    /// A cubic metre.
    pub const ONE: Self = Self(1.0);

    /// A part, or a multiple, of `self`. Domain: finite, from none; by anything else it is no quantity, which no
    /// row of [`bounds`] lets through.
    ///
    /// ```
    /// use chem::Volume;
    /// assert_eq!(Volume::from_cubic_metres(60.0).unwrap().times(0.25).cubic_metres(), 15.0);
    /// ```
    pub fn times(self, share: f64) -> Self {
        Self(self.0 * share)
    }
}

impl Mass {
    /// Nothing.
    pub const NONE: Self = Self(0.0);

    /// A part, or a multiple, of `self`. Domain: finite, from none; by anything else it is no quantity, which no
    /// row of [`bounds`] lets through.
    ///
    /// ```
    /// use chem::Mass;
    /// assert_eq!(Mass::from_kilograms(20.0).unwrap().times(6.0).kilograms(), 120.0);
    /// ```
    pub fn times(self, count: f64) -> Self {
        Self(self.0 * count)
    }

    /// What is left of `self` when `other` is taken away; none when nothing is.
    ///
    /// ```
    /// use chem::Mass;
    /// let [all, part] = [177.0, 120.0].map(|x| Mass::from_kilograms(x).unwrap());
    /// assert_eq!(all.less(part).kilograms(), 57.0);
    /// assert_eq!(part.less(all).kilograms(), 0.0);
    /// ```
    pub fn less(self, other: Self) -> Self {
        Self(libm::fmax(self.0 - other.0, 0.0))
    }
}

impl Fraction {
    /// Everything.
    pub const WHOLE: Self = Self(1.0);
}

impl Purity {
    /// Sodium chloride and nothing else.
    pub const WHOLE: Self = Self(1.0);
}

impl CarbonDioxide {
    /// Open air in 2026, about 0.00042 atm; in a hall it is higher, on a mountain lower.
    pub const OPEN_AIR: Self = Self(420e-6);

    /// From a part of a million of an atmosphere, 1 to 1,000,000.
    ///
    /// ```
    /// use chem::CarbonDioxide;
    /// assert_eq!(CarbonDioxide::from_micro_atmospheres(420.0).unwrap(), CarbonDioxide::OPEN_AIR);
    /// ```
    pub fn from_micro_atmospheres(x: f64) -> Result<Self, OutOfRange> {
        bounds::AIR.check(x).map(|x| Self(x / 1e6))
    }
}
