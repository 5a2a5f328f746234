//! Which values may a number take? The one table; every check, fault and limit comes from it.

/// What is being bounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Amount of water, m³.
    Volume,
    /// Amount of salt, kg.
    Mass,
    /// Size of one bag, kg.
    BagSize,
    /// How many bags, a whole number.
    Bags,
    /// Price of one bag, in whichever money.
    Price,
    /// Bags and parts of bags put in.
    PutIn,
    /// How far short of the target bags may come, mg/L.
    Slack,
    /// Sodium chloride in salt, part of 1.
    Purity,
    /// A part of a whole, 0 to 1.
    Fraction,
    /// Salt in water, mg/L as NaCl.
    Salinity,
    /// °C.
    Temperature,
    /// Negative logarithm of hydrogen ion activity.
    Ph,
    /// Total alkalinity, mg/L as CaCO3.
    Alkalinity,
    /// Calcium hardness, mg/L as CaCO3.
    Hardness,
    /// Cyanuric acid, mg/L.
    Cyanurate,
    /// Combined chlorine, copper or iron, mg/L.
    Trace,
    /// Chlorine used up, mg/L a day.
    Demand,
    /// Chlorine made, g/h.
    Output,
    /// Hours of a day.
    Hours,
    /// Water lost, m³.
    Lost,
    /// How often in a season.
    Times,
    /// Rain, m.
    Rain,
    /// Water moved, m³/h.
    Flow,
    /// Boron, mg/L as B.
    Boron,
    /// Magnesium hardness, mg/L as CaCO3.
    Magnesium,
    /// Sulfate, mg/L.
    Sulfate,
    /// Free chlorine, mg/L as Cl2.
    Chlorine,
    /// Chemical added, mmol per litre.
    Dose,
    /// Hydrogen chloride in acid, percent by mass.
    AcidPercent,
    /// Strength of acid, degrees Baumé.
    AcidBaume,
    /// Available chlorine in bleach, percent.
    BleachPercent,
    /// Specific gravity of bleach.
    BleachGravity,
    /// Conductivity, mS/cm.
    Conductivity,
    /// Ionic strength, mol per kg of water.
    IonicStrength,
    /// Pressure of carbon dioxide, millionths of an atmosphere.
    Air,
    /// A length of a pool, m.
    Length,
    /// A surface of a pool, m².
    Area,
    /// Water on a meter, or a part of a pool's, m³.
    Water,
}

/// One row of the table.
#[derive(Debug, PartialEq)]
pub struct Bounds {
    /// What is bounded.
    pub quantity: Quantity,
    /// Lowest value allowed, itself included, in the quantity's canonical unit.
    pub low: f64,
    /// Highest value allowed, itself included, in the quantity's canonical unit.
    pub high: f64,
}

/// A number outside its row, or no number at all (NaN).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// What was given, in the canonical unit.
    pub got: f64,
    /// The row it fell out of: it names the quantity and the limits to keep to.
    pub bounds: &'static Bounds,
}

impl Bounds {
    /// Gives `x` back if it lies in the row, limits included. NaN lies nowhere.
    ///
    /// ```
    /// use chem::bounds::PH;
    /// assert_eq!(PH.check(7.4), Ok(7.4));
    /// assert_eq!(PH.check(2.9).unwrap_err().bounds.low, 3.0);
    /// assert!(PH.check(f64::NAN).is_err());
    /// ```
    pub fn check(&'static self, x: f64) -> Result<f64, OutOfRange> {
        if x >= self.low && x <= self.high { Ok(x) } else { Err(OutOfRange { got: x, bounds: self }) }
    }
}

macro_rules! table {
    ($($name:ident = $quantity:ident $low:literal .. $high:literal, $reason:literal;)*) => {
        $(#[doc = $reason]
        pub const $name: Bounds =
            Bounds { quantity: Quantity::$quantity, low: $low, high: $high };)*
        /// Every row, for tests and for lists of names.
        pub const TABLE: &[&Bounds] = &[$(&$name),*];
    };
}

table! {
    // What a person can meet and type. Far wider than good water: a bad pool is a verdict, not a slip.
    VOLUME = Volume 0.2 .. 20_000.0, "From a tub to a large public pool (our choice).";
    MASS = Mass 0.0 .. 2_000_000.0, "The largest pool filled to the highest salinity at the lowest purity.";
    BAG_SIZE = BagSize 0.1 .. 2_000.0, "From a carton to a bulk sack (our choice).";
    BAGS = Bags 0.0 .. 100_000.0, "A whole number of bags (our choice).";
    TRACE = Trace 0.0 .. 100.0, "Far beyond what any pool should hold (our choice).";
    DEMAND = Demand 0.05 .. 50.0, "From a covered pool in winter to a crowded spa (our choice).";
    OUTPUT = Output 0.05 .. 20_000.0, "From a tub's cell to a public plant (our choice).";
    HOURS = Hours 0.1 .. 24.0, "A day has no more.";
    LOST = Lost 0.0 .. 200_000.0, "Ten times the largest pool (our choice).";
    TIMES = Times 0.0 .. 1_000.0, "Several times a day, for most of a year (our choice).";
    RAIN = Rain 0.0 .. 12.0, "A wet year in the wettest places (our choice).";
    FLOW = Flow 0.001 .. 5_000.0, "From a trickle to a fire pump (our choice).";
    PRICE = Price 0.0 .. 10_000_000.0, "Any money's (our choice).";
    PURITY = Purity 0.5 .. 1.0, "Below half it is not pool salt (our choice).";
    FRACTION = Fraction 0.0 .. 1.0, "A part of a whole.";
    PUT_IN = PutIn 0.0 .. 100_000.0, "Bags and parts of bags (our choice).";
    DOUBT = Fraction 0.005 .. 0.5, "Surer than half a percent nobody is; beyond half it is no size (our choice).";
    RISK = Fraction 0.0001 .. 0.5, "Even odds are no risk to take (our choice).";
    CHANCE = Fraction 0.01 .. 0.99, "Neither never nor always (our choice).";
    FIRST_PART = Fraction 0.05 .. 1.0, "All of it at once is no cap at all (our choice).";
    SLACK = Slack 0.0 .. 1_000.0, "More than that is no slack (our choice).";
    CAP = Fraction 0.01 .. 1.0, "A drain of under a hundredth of the pool is no drain (our choice).";
    SALINITY = Salinity 0.0 .. 40_000.0, "From none to a little above sea water.";
    TARGET = Salinity 100.0 .. 40_000.0, "A generator that asks for less than 100 mg/L is unknown to us (our choice).";
    TEMPERATURE = Temperature 0.0 .. 50.0, "Liquid, and not yet scalding.";
    PH = Ph 3.0 .. 11.0, "What a spoiled pool can reach.";
    ALKALINITY = Alkalinity 0.0 .. 1_000.0, "What a spoiled pool can reach.";
    HARDNESS = Hardness 0.0 .. 3_000.0, "What a spoiled pool can reach.";
    CYANURATE = Cyanurate 0.0 .. 500.0, "What years of tablets can reach.";
    BORON = Boron 0.0 .. 100.0, "Twice the usual borate level.";
    MAGNESIUM = Magnesium 0.0 .. 6_000.0, "Beyond sea water, which holds 5,300.";
    SULFATE = Sulfate 0.0 .. 3_000.0, "Years of bisulfate included.";

    CHLORINE = Chlorine 0.0 .. 200.0, "Far above any shock dose (our choice).";
    GOAL_CHLORINE = Chlorine 0.0 .. 20.0, "More than that is no level to keep (our choice).";
    DOSE = Dose 0.0 .. 1_000.0, "Far beyond any treatment; a brine of 58 g/L (our choice).";
    ACID_PERCENT = AcidPercent 1.0 .. 38.0, "Up to fuming acid; the table of densities ends there.";
    ACID_BAUME = AcidBaume 14.0 .. 23.0, "Around the strengths that are sold by Baumé.";
    BLEACH_PERCENT = BleachPercent 1.0 .. 20.0, "From household to fresh trade strength (our choice).";
    BLEACH_GRAVITY = BleachGravity 1.0 .. 1.3, "From water to the strongest sold (our choice).";
    CONDUCTIVITY = Conductivity 0.0 .. 70.0, "From none to a little above sea water.";
    STRENGTH = IonicStrength 0.0 .. 1.5, "Twice that of sea water.";
    AIR = Air 1.0 .. 1_000_000.0, "From next to none to nothing else.";
    LENGTH = Length 0.0 .. 200.0, "None, where a pool ends in a point, to four times a racing pool (our choice).";
    SPAN = Length 0.3 .. 200.0, "From a tub to four times a racing pool (our choice).";
    DEPTH = Length 0.05 .. 10.0, "From a paddling pool to beyond a diving pit (our choice).";
    AREA = Area 0.0 .. 40_000.0, "The longest length by itself.";
    METER = Water 0.0 .. 100_000_000.0, "Whatever a meter can show (our choice).";
    PART = Water 0.0 .. 20_000.0, "None, to the largest pool.";

    // What the ion model was checked for against PHREEQC. Outside it an index is refused, not guessed.
    MODEL_TEMPERATURE = Temperature 0.0 .. 42.0, "Range of the check against PHREEQC.";
    MODEL_PH = Ph 6.5 .. 8.6, "Range of the check against PHREEQC.";
    MODEL_ALKALINITY = Alkalinity 20.0 .. 300.0, "Range of the check against PHREEQC.";
    MODEL_HARDNESS = Hardness 0.0 .. 1_200.0, "Range of the check against PHREEQC.";
    MODEL_CYANURATE = Cyanurate 0.0 .. 300.0, "Range of the check against PHREEQC.";
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
            // The field's row stands first, the model's after it.
            let field = TABLE.iter().find(|r| r.quantity == row.quantity).unwrap();
            assert!(field.low <= row.low && row.high <= field.high, "{row:?}");
        }
    }
}
