//! Which figures of shopping, of a season and of risk may be typed? Rows beside those of [`chem::bounds`].

use chem::{Bounds, Quantity};

macro_rules! rows {
    ($($name:ident = $quantity:expr, $low:literal .. $high:literal, $reason:literal;)*) => {
        $(#[doc = $reason]
        pub const $name: Bounds =
            Bounds { name: stringify!($name), quantity: $quantity, low: $low, high: $high };)*
        /// Every row, for tests and for lists of names.
        pub const TABLE: &[&Bounds] = &[$(&$name),*];
    };
}

/// What the chemistry knows nothing of.
const fn other(name: &'static str, unit: &'static str) -> Quantity {
    Quantity::Other { name, unit }
}

rows! {
    SALT = Quantity::Mass, 0.0 .. 2_000_000.0, "The largest pool filled to the highest salinity at the lowest purity.";
    BAG_PURITY = Quantity::Purity, 0.5 .. 1.0, "Below half it is neither pool salt nor dry acid (our choice).";
    BAG_SIZE = other("size of a bag", "kg"), 0.1 .. 2_000.0, "From a carton to a bulk sack (our choice).";
    BAGS = other("bags", ""), 0.0 .. 100_000.0, "A whole number of bags (our choice).";
    TRACE = other("combined chlorine, copper or iron", "mg/L"), 0.0 .. 100.0, "Far beyond what any pool should hold (our choice).";
    DEMAND = other("chlorine used up", "mg/L a day"), 0.05 .. 50.0, "From a covered pool in winter to a crowded spa (our choice).";
    OUTPUT = other("chlorine made", "g/h"), 0.05 .. 20_000.0, "From a tub's cell to a public plant (our choice).";
    HOURS = other("hours", "h"), 0.1 .. 24.0, "A day has no more.";
    LOST = other("water lost", "m³"), 0.0 .. 200_000.0, "Ten times the largest pool (our choice).";
    TIMES = other("times in a season", ""), 0.0 .. 1_000.0, "Several times a day, for most of a year (our choice).";
    RAIN = other("rain", "m"), 0.0 .. 12.0, "A wet year in the wettest places (our choice).";
    FLOW = other("water moved", "m³/h"), 0.001 .. 5_000.0, "From a trickle to a fire pump (our choice).";
    PRICE = other("price", ""), 0.0 .. 10_000_000.0, "Any money's (our choice).";
    PUT_IN = other("bags put in", ""), 0.0 .. 100_000.0, "Bags and parts of bags (our choice).";
    DOUBT = Quantity::Fraction, 0.005 .. 0.5, "Surer than half a percent nobody is; beyond half it is no size (our choice).";
    RISK = Quantity::Fraction, 0.0001 .. 0.5, "Even odds are no risk to take (our choice).";
    CHANCE = Quantity::Fraction, 0.01 .. 0.99, "Neither never nor always (our choice).";
    FIRST_PART = Quantity::Fraction, 0.05 .. 1.0, "All of it at once is no cap at all (our choice).";
    SLACK = other("slack", "mg/L"), 0.0 .. 1_000.0, "More than that is no slack (our choice).";
    CAP = Quantity::Fraction, 0.01 .. 1.0, "A drain of under a hundredth of the pool is no drain (our choice).";
    TARGET = Quantity::Salinity, 100.0 .. 40_000.0, "A generator that asks for less than 100 mg/L is unknown to us (our choice).";
    GOAL_CHLORINE = Quantity::Chlorine, 0.0 .. 20.0, "More than that is no level to keep (our choice).";
    SPAN = Quantity::Length, 0.3 .. 200.0, "From a tub to four times a racing pool (our choice).";
    DEPTH = Quantity::Length, 0.05 .. 10.0, "From a paddling pool to beyond a diving pit (our choice).";
    READ_CONDUCTIVITY = Quantity::Conductivity, 0.0 .. 70.0, "From none to a little above sea water.";
    METER = Quantity::Volume, 0.0 .. 100_000_000.0, "Whatever a meter can show (our choice).";
    PART = Quantity::Volume, 0.0 .. 20_000.0, "None, to the largest pool.";
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_row_has_the_name_of_another() {
        let all = || TABLE.iter().chain(chem::bounds::TABLE);
        for row in all() {
            assert!(
                row.low < row.high && all().filter(|other| other.name == row.name).count() == 1,
                "{row:?}"
            );
        }
    }
}
