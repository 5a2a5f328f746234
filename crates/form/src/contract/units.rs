//! What does a unit mean, and how is it shown? The only place that knows of any but the canonical ones.
//!
//! Codes are UCUM's (an open standard); the page has the words. Factors are exact by definition
//! (NIST Handbook 44, appendix C; the imperial gallon by UK Weights and Measures Act 1985).

use chem::atomic_weights::{CALCIUM_CARBONATE, CALCIUM_OXIDE, CHLORIDE, SODIUM_CHLORIDE};
use chem::bounds::{self, Bounds};
use plan::limits;

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuantityKind {
    /// Amount of water; inside m³.
    Water,
    /// Mass of salt; inside kg.
    Mass,
    /// Salt in water; inside mg/L.
    Salt,
    /// Salt put in; inside kg, or bags as they are.
    Dose,
    /// Liquid chemical; inside m³.
    Liquid,
    /// What a salt test can show besides salt: chloride, inside mg/L of salt, and conductivity, inside
    /// itself, since what it means hangs on the temperature.
    Reading,
    /// Alkalinity; inside mg/L as calcium carbonate.
    Alkalinity,
    /// Hardness; inside mg/L as calcium carbonate.
    Hardness,
    /// Strength of an acid; inside itself.
    Acid,
    /// Strength of liquid chlorine; inside itself.
    Bleach,
    /// Chlorine made; inside g/h.
    Output,
    /// Rain; inside m.
    Rain,
    /// Water moved; inside m³/h.
    Flow,
    /// Price of water; inside one m³'s.
    Price,
    /// Temperature; inside °C.
    Temperature,
    /// A part of a whole; inside parts of 1.
    Part,
    /// A length; inside m.
    Length,
    /// A surface; inside m².
    Area,
}

/// A unit of one kind.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// UCUM code.
    pub code: &'static str,
    /// What it measures.
    pub kind: QuantityKind,
    /// Canonical value of one.
    pub factor: f64,
    /// How many of these the canonical zero is.
    pub zero: f64,
    /// Decimals shown at ten and above, and below ten.
    decimals: [usize; 2],
    /// The code of the same quantity in the other system.
    pub also: &'static str,
    /// What may be typed in it, where that is not the same as for the field's other units.
    pub bounds: Option<&'static Bounds>,
    /// Our word for it; for the reference, so not in a page's wasm.
    #[cfg(not(target_family = "wasm"))]
    pub word: &'static str,
}

const fn unit(
    code: &'static str,
    word: &'static str,
    kind: QuantityKind,
    [factor, zero]: [f64; 2],
    decimals: [usize; 2],
    also: &'static str,
    bounds: Option<&'static Bounds>,
) -> Unit {
    let _ = word;
    Unit {
        code,
        kind,
        factor,
        zero,
        decimals,
        also,
        bounds,
        #[cfg(not(target_family = "wasm"))]
        word,
    }
}

/// All units: code, word, kind, canonical value of one, and how many of them the canonical zero is, decimals, other
/// system, bounds of its own.
#[rustfmt::skip]
pub const UNITS: &[Unit] = &[
    unit("m3", "m³", QuantityKind::Water, [1.0, 0.0], [2, 2], "[gal_us]", None),
    unit("L", "liters", QuantityKind::Water, [0.001, 0.0], [0, 0], "[gal_us]", None),
    unit("[gal_us]", "US gal", QuantityKind::Water, [0.003785411784, 0.0], [0, 0], "m3", None),
    unit("[gal_br]", "UK gal", QuantityKind::Water, [0.00454609, 0.0], [0, 0], "m3", None),
    unit("kg", "kg", QuantityKind::Mass, [1.0, 0.0], [1, 2], "[lb_av]", None),
    unit("[lb_av]", "lb", QuantityKind::Mass, [0.45359237, 0.0], [1, 2], "kg", None),
    unit("kg", "kg", QuantityKind::Dose, [1.0, 0.0], [1, 2], "[lb_av]", None),
    unit("[lb_av]", "lb", QuantityKind::Dose, [0.45359237, 0.0], [1, 2], "kg", None),
    unit("{bag}", "bags", QuantityKind::Dose, [1.0, 0.0], [2, 2], "{bag}", Some(&limits::PUT_IN)),
    unit("L", "liters", QuantityKind::Liquid, [0.001, 0.0], [1, 2], "[foz_us]", None),
    unit("[foz_us]", "fl oz", QuantityKind::Liquid, [0.003785411784 / 128.0, 0.0], [0, 1], "L", None),
    unit("[gal_us]", "US gal", QuantityKind::Liquid, [0.003785411784, 0.0], [1, 2], "L", None),
    unit("[ppm]", "ppm", QuantityKind::Salt, [1.0, 0.0], [0, 0], "g/L", None),
    unit("g/L", "g/L", QuantityKind::Salt, [1000.0, 0.0], [2, 2], "[ppm]", None),
    unit("%", "%", QuantityKind::Salt, [10_000.0, 0.0], [3, 3], "[ppm]", None),
    unit("mg/L{Cl}", "mg/L chloride", QuantityKind::Reading, [SODIUM_CHLORIDE / CHLORIDE, 0.0], [0, 0], "[ppm]", None),
    unit("mS/cm", "mS/cm", QuantityKind::Reading, [1.0, 0.0], [2, 2], "mS/cm", Some(&limits::READ_CONDUCTIVITY)),
    unit("uS/cm", "µS/cm", QuantityKind::Reading, [0.001, 0.0], [0, 0], "uS/cm", Some(&limits::READ_CONDUCTIVITY)),
    // As calcium carbonate. A mole of alkalinity is half of one of calcium carbonate; a German degree is 10 mg/L
    // of lime (DIN 38409-6); a French one 10 mg/L of carbonate.
    unit("mg/L", "mg/L", QuantityKind::Alkalinity, [1.0, 0.0], [0, 0], "mg/L", None),
    unit("mmol/L", "mmol/L", QuantityKind::Alkalinity, [CALCIUM_CARBONATE / 2.0, 0.0], [2, 2], "mg/L", None),
    unit("{dH}", "°dH", QuantityKind::Alkalinity, [10.0 * CALCIUM_CARBONATE / CALCIUM_OXIDE, 0.0], [1, 1], "mg/L", None),
    unit("{fH}", "°fH", QuantityKind::Alkalinity, [10.0, 0.0], [1, 1], "mg/L", None),
    unit("mg/L", "mg/L", QuantityKind::Hardness, [1.0, 0.0], [0, 0], "mg/L", None),
    unit("mmol/L", "mmol/L", QuantityKind::Hardness, [CALCIUM_CARBONATE, 0.0], [2, 2], "mg/L", None),
    unit("{dH}", "°dH", QuantityKind::Hardness, [10.0 * CALCIUM_CARBONATE / CALCIUM_OXIDE, 0.0], [1, 1], "mg/L", None),
    unit("{fH}", "°fH", QuantityKind::Hardness, [10.0, 0.0], [1, 1], "mg/L", None),
    unit("%{HCl}", "% HCl", QuantityKind::Acid, [1.0, 0.0], [2, 2], "%{HCl}", Some(&bounds::ACID_PERCENT)),
    unit("{Be}", "°Bé", QuantityKind::Acid, [1.0, 0.0], [1, 1], "{Be}", Some(&bounds::ACID_BAUME)),
    unit("%{NaHSO4}", "% NaHSO₄", QuantityKind::Acid, [0.01, 0.0], [1, 1], "%{NaHSO4}", Some(&limits::BAG_PURITY)),
    unit("g/dL", "g in 100 mL", QuantityKind::Bleach, [1.0, 0.0], [1, 1], "g/dL", Some(&bounds::BLEACH_PERCENT)),
    unit("%{NaOCl}", "% NaOCl", QuantityKind::Bleach, [1.0, 0.0], [1, 1], "%{NaOCl}", Some(&bounds::BLEACH_PERCENT)),
    unit("g/h", "g/h", QuantityKind::Output, [1.0, 0.0], [1, 1], "[lb_av]/d", None),
    unit("[lb_av]/d", "lb/day", QuantityKind::Output, [453.59237 / 24.0, 0.0], [2, 2], "g/h", None),
    unit("mm", "mm", QuantityKind::Rain, [0.001, 0.0], [0, 0], "[in_i]", None),
    unit("[in_i]", "in", QuantityKind::Rain, [0.0254, 0.0], [1, 1], "mm", None),
    unit("L/min", "L/min", QuantityKind::Flow, [0.06, 0.0], [0, 1], "[gal_us]/min", None),
    unit("[gal_us]/min", "gal/min", QuantityKind::Flow, [0.06 * 3.785411784, 0.0], [1, 1], "L/min", None),
    unit("/m3", "for each m³", QuantityKind::Price, [1.0, 0.0], [2, 2], "/m3", None),
    unit("/[kgal]", "for each 1,000 US gal", QuantityKind::Price, [1.0 / 3.785411784, 0.0], [2, 2], "/[kgal]", None),
    unit("Cel", "°C", QuantityKind::Temperature, [1.0, 0.0], [1, 1], "[degF]", None),
    unit("[degF]", "°F", QuantityKind::Temperature, [5.0 / 9.0, 32.0], [1, 1], "Cel", None),
    unit("%", "%", QuantityKind::Part, [0.01, 0.0], [1, 1], "%", None),
    unit("m", "m", QuantityKind::Length, [1.0, 0.0], [2, 2], "[ft_i]", None),
    unit("[ft_i]", "ft", QuantityKind::Length, [0.3048, 0.0], [2, 2], "m", None),
    unit("m2", "m²", QuantityKind::Area, [1.0, 0.0], [1, 2], "[sft_i]", None),
    unit("[sft_i]", "ft²", QuantityKind::Area, [0.3048 * 0.3048, 0.0], [1, 1], "m2", None),
];

/// An ounce, for weighing in small lots: a sixteenth of a pound.
pub const OUNCE: f64 = 0.45359237 / 16.0;

impl Unit {
    /// The UCUM code of the unit that its canonical values are in.
    pub fn canonical(&self) -> &'static str {
        match self.kind {
            QuantityKind::Water | QuantityKind::Liquid => "m3",
            QuantityKind::Mass | QuantityKind::Dose => "kg",
            QuantityKind::Salt | QuantityKind::Alkalinity | QuantityKind::Hardness => "mg/L",
            QuantityKind::Reading if self.factor > 1.0 => "mg/L",
            QuantityKind::Reading => "mS/cm",
            QuantityKind::Acid | QuantityKind::Bleach => self.code,
            QuantityKind::Output => "g/h",
            QuantityKind::Rain | QuantityKind::Length => "m",
            QuantityKind::Flow => "m3/h",
            QuantityKind::Price => "/m3",
            QuantityKind::Temperature => "Cel",
            QuantityKind::Part => "1",
            QuantityKind::Area => "m2",
        }
    }

    /// The unit of `kind` with `code`.
    pub fn find(kind: QuantityKind, code: &str) -> Option<&'static Unit> {
        UNITS.iter().find(|u| u.kind == kind && u.code == code)
    }

    /// The same quantity in the other system.
    pub fn also(&self) -> &'static Unit {
        let salt = || Self::find(QuantityKind::Salt, self.also);
        Self::find(self.kind, self.also).or_else(salt).unwrap_or(&UNITS[0])
    }

    /// The unit of surfaces where lengths are in this one.
    pub fn squared(&self) -> &'static Unit {
        let code = if self.code == "[ft_i]" { "[sft_i]" } else { "m2" };
        Self::find(QuantityKind::Area, code).unwrap_or(&UNITS[0])
    }

    /// The unit of the other salt figures when the reading is in this one.
    pub fn also_salt(&self) -> &'static Unit {
        Self::find(QuantityKind::Salt, "[ppm]").unwrap_or(self.also())
    }

    /// Canonical value of `x` of these.
    pub fn inward(&self, x: f64) -> f64 {
        (x - self.zero) * self.factor
    }

    /// Decimals that so many of these are shown with.
    pub fn decimals(&self, x: f64) -> usize {
        self.decimals[usize::from(x.abs() < 10.0)]
    }

    /// So many of these to the decimals they are shown with.
    pub fn rounded(&self, x: f64) -> f64 {
        let scale = [1.0, 10.0, 100.0, 1000.0][self.decimals(x).min(3)];
        (x * scale).round() / scale
    }

    /// How many of these a canonical value is.
    pub fn outward(&self, x: f64) -> f64 {
        x / self.factor + self.zero
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_goes_there_and_back() {
        for unit in UNITS {
            for x in [0.001, 1.0, 75.0, 16_596.0] {
                let back = unit.outward(unit.inward(x));
                assert!((back - x).abs() <= 1e-12 * x.max(40.0), "{}: {x} came back as {back}", unit.code);
            }
            // Chloride goes over into salt.
            let chloride = unit.kind == QuantityKind::Reading && unit.also().kind == QuantityKind::Salt;
            assert!(chloride || unit.also().kind == unit.kind, "{}", unit.code);
            assert_eq!(unit.also().code, unit.also, "{}", unit.code);
        }
    }

    /// Fixed points: freezing and boiling of water; a US gallon is 231 cubic inches, an inch 2.54 cm.
    #[test]
    fn units_hold_at_their_fixed_points() {
        let f = Unit::find(QuantityKind::Temperature, "[degF]").unwrap();
        assert!((f.inward(32.0)).abs() < 1e-12 && (f.inward(212.0) - 100.0).abs() < 1e-12);
        let gallon = Unit::find(QuantityKind::Water, "[gal_us]").unwrap();
        assert!((gallon.factor - 231.0 * 0.0254f64.powi(3)).abs() < 1e-15);
    }
}
