//! What does a unit mean, and how is it shown? The only place that knows of any but the canonical ones.
//!
//! Codes are UCUM's (an open standard); the page has the words. Factors are exact by definition
//! (NIST Handbook 44, appendix C; the imperial gallon by UK Weights and Measures Act 1985).

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Amount of water; inside m³.
    Water,
    /// Mass of salt; inside kg.
    Mass,
    /// Salt in water; inside mg/L.
    Salt,
    /// Liquid chemical; inside m³.
    Liquid,
    /// Temperature; inside °C.
    Heat,
    /// A part of a whole; inside parts of 1.
    Part,
}

/// A unit of one kind.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// UCUM code.
    pub code: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// Canonical value of one.
    pub factor: f64,
    /// How many of these the canonical zero is.
    pub zero: f64,
    /// Decimals shown at ten and above, and below ten.
    decimals: [usize; 2],
    /// The code of the same quantity in the other system.
    pub also: &'static str,
}

const fn unit(
    code: &'static str,
    kind: Kind,
    factor: f64,
    zero: f64,
    decimals: [usize; 2],
    also: &'static str,
) -> Unit {
    Unit { code, kind, factor, zero, decimals, also }
}

/// All units.
pub const UNITS: &[Unit] = &[
    unit("m3", Kind::Water, 1.0, 0.0, [2, 2], "[gal_us]"),
    unit("L", Kind::Water, 0.001, 0.0, [0, 0], "[gal_us]"),
    unit("[gal_us]", Kind::Water, 0.003785411784, 0.0, [0, 0], "m3"),
    unit("[gal_br]", Kind::Water, 0.00454609, 0.0, [0, 0], "m3"),
    unit("kg", Kind::Mass, 1.0, 0.0, [1, 2], "[lb_av]"),
    unit("[lb_av]", Kind::Mass, 0.45359237, 0.0, [1, 2], "kg"),
    unit("L", Kind::Liquid, 0.001, 0.0, [1, 2], "[foz_us]"),
    unit("[foz_us]", Kind::Liquid, 0.003785411784 / 128.0, 0.0, [0, 1], "L"),
    unit("[ppm]", Kind::Salt, 1.0, 0.0, [0, 0], "g/L"),
    unit("g/L", Kind::Salt, 1000.0, 0.0, [2, 2], "[ppm]"),
    unit("%", Kind::Salt, 10_000.0, 0.0, [3, 3], "[ppm]"),
    unit("Cel", Kind::Heat, 1.0, 0.0, [1, 1], "[degF]"),
    unit("[degF]", Kind::Heat, 5.0 / 9.0, 32.0, [1, 1], "Cel"),
    unit("%", Kind::Part, 0.01, 0.0, [1, 1], "%"),
];

/// An ounce, for weighing in small lots: a sixteenth of a pound.
pub const OUNCE: f64 = 0.45359237 / 16.0;

impl Unit {
    /// The unit of `kind` with `code`.
    pub fn find(kind: Kind, code: &str) -> Option<&'static Unit> {
        UNITS.iter().find(|u| u.kind == kind && u.code == code)
    }

    /// The same quantity in the other system.
    pub fn also(&self) -> &'static Unit {
        Self::find(self.kind, self.also).unwrap_or(&UNITS[0])
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
            assert_eq!(unit.also().kind, unit.kind, "{}", unit.code);
        }
    }

    /// Fixed points: freezing and boiling of water; a US gallon is 231 cubic inches, an inch 2.54 cm.
    #[test]
    fn units_hold_at_their_fixed_points() {
        let f = Unit::find(Kind::Heat, "[degF]").unwrap();
        assert!((f.inward(32.0)).abs() < 1e-12 && (f.inward(212.0) - 100.0).abs() < 1e-12);
        let gallon = Unit::find(Kind::Water, "[gal_us]").unwrap();
        assert!((gallon.factor - 231.0 * 0.0254f64.powi(3)).abs() < 1e-15);
    }
}
