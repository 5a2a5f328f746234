//! Which values may a number take? The one table; every check, fault and limit comes from it.

use core::fmt;

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident, $word:literal, $unit:literal;)*) => {
        /// What is being bounded, and in which unit.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[non_exhaustive]
        pub enum Quantity {
            $($(#[$doc])* $name,)*
            /// What this crate knows nothing of: a row of someone else's.
            Other {
                /// What it is called.
                name: &'static str,
                /// Its unit; nothing for a bare number.
                unit: &'static str,
            },
        }

        impl Quantity {
            /// What it is called.
            ///
            /// ```
            /// use saltwright_chem::Quantity;
            /// assert_eq!(Quantity::Salinity.name(), "salinity");
            /// assert_eq!(Quantity::Other { name: "price", unit: "per bag" }.name(), "price");
            /// ```
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$name => $word,)*
                    Self::Other { name, .. } => name,
                }
            }

            /// The canonical unit; nothing for a bare number.
            ///
            /// ```
            /// use saltwright_chem::Quantity;
            /// assert_eq!((Quantity::Salinity.unit(), Quantity::Ph.unit()), ("mg/L as NaCl", ""));
            /// ```
            #[must_use]
            pub const fn unit(self) -> &'static str {
                match self {
                    $(Self::$name => $unit,)*
                    Self::Other { unit, .. } => unit,
                }
            }
        }
    };
}

quantities! {
    /// Amount of water, m³.
    Volume, "volume", "m³";
    /// Amount of salt, kg.
    Mass, "mass", "kg";
    /// Sodium chloride in salt, part of 1.
    Purity, "purity", "parts of 1";
    /// A part of a whole, 0 to 1.
    Fraction, "fraction", "parts of 1";
    /// Salt in water, mg/L as NaCl.
    Salinity, "salinity", "mg/L as NaCl";
    /// °C.
    Temperature, "temperature", "°C";
    /// Negative logarithm of hydrogen ion activity.
    Ph, "pH", "";
    /// Total alkalinity, mg/L as CaCO3.
    Alkalinity, "total alkalinity", "mg/L as CaCO3";
    /// Calcium hardness, mg/L as CaCO3.
    Hardness, "calcium hardness", "mg/L as CaCO3";
    /// Cyanuric acid, mg/L.
    CyanuricAcid, "cyanuric acid", "mg/L";
    /// Boron, mg/L as B.
    Boron, "boron", "mg/L as B";
    /// Magnesium hardness, mg/L as CaCO3.
    Magnesium, "magnesium hardness", "mg/L as CaCO3";
    /// Sulfate, mg/L.
    Sulfate, "sulfate", "mg/L";
    /// Free chlorine, mg/L as Cl2.
    Chlorine, "free chlorine", "mg/L as Cl2";
    /// Chemical added, mmol per litre.
    Dose, "dose", "mmol/L";
    /// Hydrogen chloride in acid, percent by mass.
    AcidPercent, "strength of acid", "% by mass";
    /// Strength of acid, degrees Baumé.
    AcidBaume, "strength of acid", "°Bé";
    /// Available chlorine in bleach, percent.
    BleachPercent, "strength of bleach", "%";
    /// Specific gravity of bleach.
    BleachGravity, "specific gravity of bleach", "";
    /// Conductivity, mS/cm.
    Conductivity, "conductivity", "mS/cm";
    /// Ionic strength, mol per kg of water.
    IonicStrength, "ionic strength", "mol/kg";
    /// Pressure of carbon dioxide, millionths of an atmosphere.
    Air, "carbon dioxide in air", "µatm";
    /// A length of a pool, m.
    Length, "length", "m";
    /// A surface of a pool, m².
    Area, "area", "m²";
    /// Dissolved solids.
    Solids, "dissolved solids", "mg/L";
    /// A difference of two temperatures.
    TemperatureDifference, "difference of temperature", "K";
    /// Strength of acid, by what reacts in a litre.
    AcidStrength, "strength of acid", "mol/L";
    /// Strength of bleach, by the chlorine in a litre.
    BleachStrength, "strength of bleach", "g/L";
    /// The part of alkalinity that bicarbonate and carbonate hold.
    CarbonateAlkalinity, "carbonate alkalinity", "mg/L as CaCO3";
    /// Calcite saturation index.
    SaturationIndex, "saturation index", "";
    /// Total inorganic carbon.
    InorganicCarbon, "inorganic carbon", "mol/kg";
    /// Partial pressure of carbon dioxide.
    CarbonDioxide, "pressure of carbon dioxide", "atm";
    /// Mass of a cubic metre.
    Density, "density", "kg/m³";
    /// Water in a litre of solution.
    WaterContent, "water content", "kg/L";
}

/// One row of the table.
#[derive(Debug, PartialEq)]
pub struct Bounds {
    /// The row's name, by which it is found again.
    pub name: &'static str,
    /// What is bounded.
    pub quantity: Quantity,
    /// Lowest value allowed, itself included, in the quantity's canonical unit.
    pub low: f64,
    /// Highest value allowed, itself included, in the quantity's canonical unit.
    pub high: f64,
}

/// A number outside its row, or no number at all (NaN).
///
/// ```
/// use saltwright_chem::Temperature;
/// let outside = Temperature::from_celsius(55.0).unwrap_err();
/// assert_eq!(outside.to_string(), "temperature 55 °C is outside 0 to 50");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct OutOfRange {
    /// What was given, in the canonical unit.
    pub got: f64,
    /// The row it fell out of: it names the quantity and the limits to keep to.
    pub bounds: &'static Bounds,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        let Bounds { quantity, low, high, .. } = self.bounds;
        let gap = if quantity.unit().is_empty() { "" } else { " " };
        let (name, unit) = (quantity.name(), quantity.unit());
        write!(f, "{name} {}{gap}{unit} is outside {low} to {high}", self.got)
    }
}

impl core::error::Error for OutOfRange {}

impl Bounds {
    /// Does `x` lie in the row, limits included? NaN lies nowhere.
    #[must_use]
    pub const fn contains(&self, x: f64) -> bool {
        x >= self.low && x <= self.high
    }

    /// Gives `x` back if it lies in the row, limits included. NaN lies nowhere.
    ///
    /// ```
    /// use saltwright_chem::bounds::POOL_PH;
    /// assert_eq!(POOL_PH.check(7.4), Ok(7.4));
    /// assert_eq!(POOL_PH.check(2.9).unwrap_err().bounds.low, 3.0);
    /// assert!(POOL_PH.check(f64::NAN).is_err());
    /// ```
    pub const fn check(&'static self, x: f64) -> Result<f64, OutOfRange> {
        if self.contains(x) { Ok(x) } else { Err(OutOfRange { got: x, bounds: self }) }
    }
}

macro_rules! table {
    ($($name:ident = $quantity:ident $low:literal .. $high:literal, $reason:literal;)*) => {
        $(#[doc = $reason]
        pub const $name: Bounds =
            Bounds { name: stringify!($name), quantity: Quantity::$quantity, low: $low, high: $high };)*
        /// Every row, for tests and for lists of names.
        pub const TABLE: &[&Bounds] = &[$(&$name),*];
    };
}

table! {
    // What a type of quantity itself may hold: nothing that this crate returns lies outside.
    VOLUME = Volume 0.0 .. 1e8, "Any amount of water, to the most that a meter shows.";
    MASS = Mass 0.0 .. 1e12, "Any powder, for any volume at the largest dose.";
    PH = Ph 0.0 .. 14.0, "The usual scale.";
    SOLIDS = Solids 0.0 .. 50_000.0, "Sea water, and what comes with it.";
    TEMPERATURE_DIFFERENCE = TemperatureDifference -50.0 .. 50.0, "From one end of the temperatures to the other.";
    ACID_STRENGTH = AcidStrength 0.27 .. 12.5, "What [`ACID_PERCENT`] and [`ACID_BAUME`] come to.";
    BLEACH_STRENGTH = BleachStrength 9.0 .. 265.0, "What [`BLEACH_PERCENT`] comes to, in every meaning.";
    CARBONATE_ALKALINITY = CarbonateAlkalinity 0.0 .. 100_000.0, "Far beyond any water (our choice).";
    SATURATION_INDEX = SaturationIndex -400.0 .. 20.0, "From the least calcium that a number can tell (our choice).";
    INORGANIC_CARBON = InorganicCarbon 0.0 .. 10.0, "Far beyond any water (our choice).";
    CARBON_DIOXIDE = CarbonDioxide 0.0 .. 100.0, "Far beyond any water that stays in its pool (our choice).";
    DENSITY = Density 950.0 .. 1_050.0, "Water at 50 °C, to a brine of 40 g/L.";
    WATER_CONTENT = WaterContent 0.95 .. 1.0, "A brine of 40 g/L at 50 °C, to water at 4 °C.";

    // What a person can meet and type. Far wider than good water: a bad pool is a verdict, not a slip.
    POOL = Volume 0.2 .. 20_000.0, "From a tub to a large public pool (our choice).";
    PURITY = Purity 0.05 .. 1.0, "From a product that is mostly something else to the pure substance (our choice).";
    FRACTION = Fraction 0.0 .. 1.0, "A part of a whole.";
    SALINITY = Salinity 0.0 .. 40_000.0, "From none to a little above sea water.";
    TEMPERATURE = Temperature 0.0 .. 50.0, "Liquid, and not yet scalding.";
    POOL_PH = Ph 3.0 .. 11.0, "What a spoiled pool can reach.";
    ALKALINITY = Alkalinity 0.0 .. 1_000.0, "What a spoiled pool can reach.";
    HARDNESS = Hardness 0.0 .. 3_000.0, "What a spoiled pool can reach.";
    CYANURIC_ACID = CyanuricAcid 0.0 .. 500.0, "What years of tablets can reach.";
    BORON = Boron 0.0 .. 100.0, "Twice the usual borate level.";
    MAGNESIUM = Magnesium 0.0 .. 6_000.0, "Beyond sea water, which holds 5,300.";
    SULFATE = Sulfate 0.0 .. 3_000.0, "Years of bisulfate included.";

    CHLORINE = Chlorine 0.0 .. 200.0, "Far above any shock dose (our choice).";
    DOSE = Dose 0.0 .. 1_000.0, "Far beyond any treatment; a brine of 58 g/L (our choice).";
    ACID_PERCENT = AcidPercent 1.0 .. 38.0, "Up to fuming acid; the table of densities ends there.";
    ACID_BAUME = AcidBaume 14.0 .. 23.0, "Around the strengths that are sold by Baumé.";
    BLEACH_PERCENT = BleachPercent 1.0 .. 20.0, "From household to fresh trade strength (our choice).";
    BLEACH_GRAVITY = BleachGravity 1.0 .. 1.3, "From water to the strongest sold (our choice).";
    CONDUCTIVITY = Conductivity 0.0 .. 90.0, "From none to a brine of 40 g/L at 42 °C.";
    STRENGTH = IonicStrength 0.0 .. 1.5, "Twice that of sea water.";
    AIR = Air 1.0 .. 1_000_000.0, "From next to none to nothing else.";
    LENGTH = Length 0.0 .. 200.0, "None, where a pool ends in a point, to four times a racing pool (our choice).";
    AREA = Area 0.0 .. 40_000.0, "The longest length by itself.";

    // Where fits of ours hold.
    FIT_TEMPERATURE = Temperature 0.0 .. 42.0, "Range of our fits to conductivity and density.";
    TABLE_SOLIDS = Solids 10.0 .. 50_000.0, "Where the closed form of the table forms has a logarithm.";
    FIT_SALINITY = Salinity 0.0 .. 8_000.0, "Range in which conductivity was fitted.";

    // What the ion model was checked for against PHREEQC. Outside it an index is refused, not guessed.
    MODEL_TEMPERATURE = Temperature 0.0 .. 42.0, "Range of the check against PHREEQC.";
    MODEL_PH = Ph 6.5 .. 8.6, "Range of the check against PHREEQC.";
    MODEL_ALKALINITY = Alkalinity 20.0 .. 300.0, "Range of the check against PHREEQC.";
    MODEL_HARDNESS = Hardness 0.0 .. 1_200.0, "Range of the check against PHREEQC.";
    MODEL_CYANURIC_ACID = CyanuricAcid 0.0 .. 300.0, "Range of the check against PHREEQC.";
    MODEL_SALINITY = Salinity 0.0 .. 40_000.0, "Range of the check against PHREEQC.";
    MODEL_MAGNESIUM = Magnesium 0.0 .. 6_000.0, "Range of the check against PHREEQC.";
    MODEL_SULFATE = Sulfate 0.0 .. 3_000.0, "Range of the check against PHREEQC.";
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_takes_its_limits_and_nothing_beyond() {
        for row in TABLE {
            let step = (row.high - row.low) * 1e-9;
            assert_eq!(row.check(row.low), Ok(row.low), "{row:?}");
            assert_eq!(row.check(row.high), Ok(row.high), "{row:?}");
            for bad in [row.low - step, row.high + step, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                assert!(row.check(bad).is_err(), "{row:?} took {bad}");
            }
        }
    }

    #[test]
    fn the_model_never_reaches_beyond_the_fields() {
        for row in TABLE {
            // The type's row stands first, the field's and the model's after it.
            let field = TABLE.iter().find(|r| r.quantity == row.quantity).unwrap();
            assert!(field.low <= row.low && row.high <= field.high, "{row:?}");
        }
    }

    #[test]
    fn every_row_has_a_name_of_its_own() {
        for row in TABLE {
            assert_eq!(TABLE.iter().filter(|r| r.name == row.name).count(), 1, "{row:?}");
        }
    }
}
