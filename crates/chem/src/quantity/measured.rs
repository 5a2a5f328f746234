//! Which quantities can be measured, weighed or read off a label?

use super::define::quantities;

quantities! {
    in "";
    /// An amount of water.
    Volume, VOLUME, from_cubic_metres, cubic_metres, "m³";
    /// An amount of a solid.
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
    CyanuricAcid, CYANURIC_ACID, from_mg_per_l, mg_per_l, "mg/L";
    /// Boron in all its forms, as the element.
    Boron, BORON, from_mg_per_l, mg_per_l, "mg/L as B";
    /// Magnesium hardness, as calcium carbonate.
    Magnesium, MAGNESIUM, from_mg_per_l, mg_per_l, "mg/L as CaCO3";
    /// Sulfate.
    Sulfate, SULFATE, from_mg_per_l, mg_per_l, "mg/L as SO4";
    /// Free chlorine, as Cl2.
    Chlorine, CHLORINE, from_mg_per_l, mg_per_l, "mg/L as Cl2";
    /// Dissolved solids, of every kind.
    Solids, SOLIDS, from_mg_per_l, mg_per_l, "mg/L";
    /// Electrical conductivity.
    Conductivity, CONDUCTIVITY, from_ms_per_cm, ms_per_cm, "mS/cm";
    /// A length.
    Length, LENGTH, from_metres, metres, "m";
    /// A surface.
    Area, AREA, from_square_metres, square_metres, "m²";
}

impl Salinity {
    /// No salt.
    pub const NONE: Self = Self(0.0);
    /// The most the table of bounds knows.
    pub const MOST: Self = Self(Self::BOUNDS.high);
}

macro_rules! none {
    ($($name:ident)*) => {$(
        impl $name {
            /// None of it.
            pub const NONE: Self = Self(0.0);
        }
    )*};
}

none! { Alkalinity Hardness CyanuricAcid Boron Magnesium Sulfate Chlorine }

impl Volume {
    /// None.
    pub const NONE: Self = Self(0.0);
    /// A cubic metre.
    pub const ONE: Self = Self(1.0);
}

impl Mass {
    /// Nothing.
    pub const NONE: Self = Self(0.0);
}

impl Fraction {
    /// Nothing.
    pub const NONE: Self = Self(0.0);
    /// Everything.
    pub const WHOLE: Self = Self(1.0);
}

impl Purity {
    /// Sodium chloride and nothing else.
    pub const WHOLE: Self = Self(1.0);
}
