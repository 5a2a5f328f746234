//! How much of the free chlorine is hypochlorous acid, and what do chlorine and cyanuric acid together do to
//! alkalinity?
//!
//! Cyanuric acid binds most of the chlorine. The free part is a weak acid, and what is bound is not: how chlorine
//! parts decides how much of the alkali of liquid chlorine stays.

use crate::bounds::OutOfRange;
use crate::constants::activity::{davies, neutral, pow10};
use crate::constants::atomic_weights;
use crate::constants::equilibrium::Constants;
use crate::quantity::{derived::*, measured::*};
use core::f64::consts::LN_10;

/// Free chlorine, shared out.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct ChlorineSpecies {
    /// HOCl, the part that disinfects.
    pub hypochlorous: Chlorine,
    /// OCl-.
    pub hypochlorite: Chlorine,
    /// Bound to cyanurate in any form.
    pub bound: Chlorine,
    /// How far temperature alone may put the three off, part of each: the set of constants is of 25 °C, and with
    /// cyanuric acid its slopes are only partly known. Nothing at 25 °C, and without cyanuric acid. What the set itself
    /// may be off comes on top: see [`species`].
    pub temperature_doubt: Fraction,
}

/// Shares free chlorine out among hypochlorous acid, hypochlorite and the chlorinated cyanurates.
///
/// Mass action over H3Cy, H2Cy-, HCy--, HClCy-, H2ClCy, ClCy--, Cl2Cy-, HCl2Cy, Cl3Cy and HOCl, OCl-. Activities by
/// Davies; for what has no charge 0.1 I. For pK1 of cyanuric acid OB74's own 6.88 at 25 °C, which its other
/// constants were found with; alkalinity ([`crate::Water::state`]) goes by W18's 6.97, which was measured for itself.
///
/// Domain: 0 to 42 °C; the rows of [`crate::bounds`]; ionic strength of pool water. Errors: a temperature beyond.
/// Source: OB74 at 25 °C (from memory), M66. Off 25 °C the two hydrolyses are given 38.8 kJ/mol, the slope that
/// WA19 found for one of them, and cyanuric acid the slope of W18: take 30 % either way ten degrees off, less between (our choice). The choice of constants alone
/// matters: 5.83 instead of 5.62 for HClCy- leaves 38 % less hypochlorous acid.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let species = chlorine::species(
///     Chlorine::from_mg_per_l(3.0)?,
///     CyanuricAcid::from_mg_per_l(30.0)?,
///     Ph::from_units(7.5)?,
///     Temperature::from_celsius(25.0)?,
///     IonicStrength::from_molal(0.0)?,
/// )?;
/// assert!((species.hypochlorous.mg_per_l() - 0.04309).abs() < 0.00001); // PHREEQC with the same constants
/// assert_eq!(species.temperature_doubt.ratio(), 0.0);
/// # Ok(())
/// # }
/// ```
pub fn species(
    free: Chlorine,
    cyanuric_acid: CyanuricAcid,
    ph: Ph,
    t: Temperature,
    strength: IonicStrength,
) -> Result<ChlorineSpecies, OutOfRange> {
    let constants = Constants::at(t)?;
    let i = strength.molal();
    let (ion, none) = (davies(&constants, i, libm::sqrt(i)), neutral(i));
    let hypochlorous = pow10(constants.log.hypochlorous + none - ion);
    let cyanuric = [-1743.0 * coldness(t) - 6.88 + none - ion, -11.40 - 3.0 * ion].map(pow10);
    let binding = Binding::at(&constants, t, i, hypochlorous, cyanuric);
    let molar = |mg_per_l: f64, molar_mass: f64| mg_per_l / molar_mass / 1000.0;
    let chlorine = molar(free.mg_per_l(), atomic_weights::CHLORINE);
    let cyanuric_acid = molar(cyanuric_acid.mg_per_l(), atomic_weights::CYANURIC_ACID);
    binding.part(pow10(-ph.units()), chlorine, cyanuric_acid).species(1.0, t)
}

/// `1/T - 1/298.15`, 1/K.
fn coldness(t: Temperature) -> f64 {
    1.0 / (t.celsius() + 273.15) - 1.0 / 298.15
}

/// What chlorine does where cyanuric acid is: apparent constants at one ionic strength.
///
/// Of each, `K` for the next species from the one before it, times HOCl or over the activity of H+.
#[derive(Clone, Copy)]
pub(crate) struct Binding {
    /// HOCl = OCl- + H+.
    hypochlorous: f64,
    /// H3Cy = H2Cy- + H+, and H2Cy- = HCy-- + H+.
    cyanuric: [f64; 2],
    /// H2Cy- + HOCl = HClCy- + H2O.
    hclcy: f64,
    /// HClCy- + H+ = H2ClCy.
    h2clcy: f64,
    /// HClCy- = ClCy-- + H+.
    clcy: f64,
    /// HClCy- + HOCl = Cl2Cy- + H2O.
    cl2cy: f64,
    /// Cl2Cy- + H+ = HCl2Cy.
    hcl2cy: f64,
    /// HCl2Cy + HOCl = Cl3Cy + H2O.
    cl3cy: f64,
}

/// Chlorine and cyanuric acid parted among their species: concentrations in the unit of what was parted.
#[derive(Clone, Copy)]
pub(crate) struct Parted {
    hypochlorous: f64,
    hypochlorite: f64,
    bound: f64,
    /// All the cyanuric acid.
    cyanuric_acid: f64,
    /// Equivalents that take up acid: OCl-, H2Cy-, HClCy-, Cl2Cy- once, ClCy-- twice; HCy-- is left out, as it is
    /// wherever alkalinity is counted.
    pub alkalinity: f64,
    /// The slope of that against pH · ln 10.
    pub slope: f64,
    /// Concentrations times the charge squared.
    pub charge_squared: f64,
}

impl Binding {
    /// OB74's constants at `t`, seen through an ionic strength, beside apparent ones of the two acids.
    pub fn at(k: &Constants, t: Temperature, strength: f64, hypochlorous: f64, cyanuric: [f64; 2]) -> Self {
        let (ion, none) = (davies(k, strength, libm::sqrt(strength)), neutral(strength));
        let hydrolysis = 38_800.0 / (LN_10 * 8.314463) * coldness(t);
        Self {
            hypochlorous,
            cyanuric,
            hclcy: pow10(5.62 + hydrolysis + none),
            h2clcy: pow10(5.33 + ion - none),
            clcy: pow10(-10.12 - 3.0 * ion),
            cl2cy: pow10(4.51 + hydrolysis + none),
            hcl2cy: pow10(3.75 + ion - none),
            cl3cy: pow10(1.80 + none),
        }
    }

    /// Parts so much chlorine and cyanuric acid, mol/L or mol/kg, at an activity of H+.
    ///
    /// Chlorine's sum is a polynomial in X = `[HOCl]`, solved by Newton's steps from nothing upwards: chlorine binds
    /// ever less, so that no step leads beyond the root, and ten reach 1e-13 over the whole domain.
    pub fn part(&self, a_h: f64, chlorine: f64, cyanuric_acid: f64) -> Parted {
        // Per `[H3Cy]` and power of X.
        let h2cy = self.cyanuric[0] / a_h;
        let hcy = h2cy * self.cyanuric[1] / a_h;
        let hclcy = h2cy * self.hclcy;
        let (h2clcy, clcy) = (hclcy * a_h * self.h2clcy, hclcy * self.clcy / a_h);
        let cl2cy = hclcy * self.cl2cy;
        let hcl2cy = cl2cy * a_h * self.hcl2cy;
        let cl3cy = hcl2cy * self.cl3cy;
        let (a0, a1, a2, a3) = (1.0 + h2cy + hcy, hclcy + h2clcy + clcy, cl2cy + hcl2cy, cl3cy);
        let per_x = self.hypochlorous / a_h;

        let mut x = 0.0;
        for _ in 0..10 {
            let d = a0 + x * (a1 + x * (a2 + x * a3));
            // Chlorine bound is n/d of cyanuric acid in all its forms; dd and dn are their slopes.
            let dd = a1 + x * (2.0 * a2 + x * 3.0 * a3);
            let (n, dn) = (x * dd, a1 + x * (4.0 * a2 + x * 9.0 * a3));
            let f = x * (1.0 + per_x) + cyanuric_acid * n / d - chlorine;
            x -= f / (1.0 + per_x + cyanuric_acid * (dn * d - n * dd) / (d * d));
        }

        // Means over cyanuric acid's forms: of charge z, of chlorine n, and of their products.
        let per = 1.0 / (a0 + x * (a1 + x * (a2 + x * a3)));
        let z = per * (h2cy + x * (hclcy + 2.0 * clcy + x * cl2cy));
        let zz = per * (h2cy + x * (hclcy + 4.0 * clcy + x * cl2cy));
        let zn = per * x * (hclcy + 2.0 * clcy + x * 2.0 * cl2cy);
        let n = per * x * (a1 + x * (2.0 * a2 + x * 3.0 * a3));
        let nn = per * x * (a1 + x * (4.0 * a2 + x * 9.0 * a3));
        let hypochlorite = x * per_x;
        // How charge answers to pH while both sums stay: its variance, less what follows from chlorine's.
        let (vzz, vzn, vnn) = (zz - z * z, zn - z * n, nn - n * n);
        let shared = cyanuric_acid * vzn + hypochlorite;
        let free = cyanuric_acid * vnn + x + hypochlorite;
        let follows = if free > 0.0 { shared * shared / free } else { 0.0 };
        Parted {
            hypochlorous: x,
            hypochlorite,
            bound: cyanuric_acid * n,
            cyanuric_acid,
            alkalinity: cyanuric_acid * z + hypochlorite,
            slope: cyanuric_acid * vzz + hypochlorite - follows,
            charge_squared: cyanuric_acid * zz + hypochlorite,
        }
    }
}

impl Parted {
    /// As quantities, with so many litres to what was parted in one. Errors: more chlorine than its row knows.
    pub fn species(&self, per_litre: f64, t: Temperature) -> Result<ChlorineSpecies, OutOfRange> {
        let [hypochlorous, hypochlorite, bound] = [self.hypochlorous, self.hypochlorite, self.bound]
            .map(|mol| Chlorine::from_mg_per_l(mol * per_litre * atomic_weights::CHLORINE * 1000.0));
        let off = if self.cyanuric_acid > 0.0 { (t.celsius() - 25.0).abs() / 10.0 } else { 0.0 };
        Ok(ChlorineSpecies {
            hypochlorous: hypochlorous?,
            hypochlorite: hypochlorite?,
            bound: bound?,
            temperature_doubt: Fraction::new_unchecked(OFF_25 * off.min(1.0)),
        })
    }
}

/// Ten degrees off 25 °C and farther; our choice, near what the slopes that are known leave open.
const OFF_25: f64 = 0.3;

#[cfg(test)]
mod tests {
    use super::*;

    fn parted(a_h: f64, chlorine: f64, cyanuric_acid: f64) -> Parted {
        let t = Temperature::from_celsius(25.0).unwrap();
        let k = Constants::at(t).unwrap();
        Binding::at(&k, t, 0.02, 10f64.powf(-7.45), [10f64.powf(-6.88), 0.0]).part(
            a_h,
            chlorine,
            cyanuric_acid,
        )
    }

    /// The slope beside the difference of two alkalinities, a hair of pH apart.
    #[test]
    fn the_slope_is_that_of_the_alkalinity() {
        for ph in [6.5, 7.2, 7.8, 8.6] {
            for chlorine in [0.0, 1e-5, 1e-4, 1e-3] {
                for cyanuric_acid in [0.0, 1e-7, 1e-4, 1e-3] {
                    let at = |ph: f64| parted(10f64.powf(-ph), chlorine, cyanuric_acid);
                    let h = 1e-5;
                    let by_steps = (at(ph + h).alkalinity - at(ph - h).alkalinity) / (2.0 * h * LN_10);
                    let slope = at(ph).slope;
                    let all = chlorine + cyanuric_acid;
                    assert!((slope - by_steps).abs() <= 1e-7 * all, "{ph} {chlorine} {cyanuric_acid}");
                }
            }
        }
    }

    #[test]
    fn nothing_is_lost_in_parting() {
        for (chlorine, cyanuric_acid) in [(0.0, 1e-3), (1e-4, 0.0), (1e-4, 1e-6), (3e-3, 2e-3), (1e-2, 1e-3)]
        {
            for ph in [5.0, 7.5, 10.0] {
                let p = parted(10f64.powf(-ph), chlorine, cyanuric_acid);
                let sum = p.hypochlorous + p.hypochlorite + p.bound;
                assert!((sum - chlorine).abs() <= 1e-12 * chlorine, "{chlorine} {cyanuric_acid} {ph}");
                assert!(p.bound <= 3.0 * cyanuric_acid * (1.0 + 1e-12));
            }
        }
    }
}
