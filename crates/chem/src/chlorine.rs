//! How much of the free chlorine is hypochlorous acid, when cyanuric acid holds most of it?

use crate::constants::atomic_weights;
use crate::constants::equilibrium::{Constants, pow10};
use crate::quantity::*;
use core::f64::consts::LN_10;

/// Free chlorine, shared out.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Shares {
    /// HOCl, the part that disinfects.
    pub hypochlorous: Chlorine,
    /// OCl-.
    pub hypochlorite: Chlorine,
    /// Bound to cyanurate in any form.
    pub bound: Chlorine,
    /// Off 25 °C the constants are only partly known: take the figure as ± 30 %.
    pub approximate: bool,
}

/// Shares free chlorine out among hypochlorous acid, hypochlorite and the chlorinated cyanurates.
///
/// Mass action over H3Cy, H2Cy-, HCy--, HClCy-, H2ClCy, ClCy--, Cl2Cy-, HCl2Cy, Cl3Cy and HOCl, OCl-;
/// the sum of chlorine is a polynomial in `[HOCl]`, solved by ten of Newton's steps (eight reach 1e-13 over
/// the whole domain). Activities by Davies.
///
/// Domain: the rows of [`crate::bounds`]; ionic strength of pool water. Total.
/// Source: OB74 at 25 °C (from memory), M66. Off 25 °C the two hydrolyses are given 38.8 kJ/mol, the
/// slope that Wahman and Alexander 2019 (Environ. Eng. Sci. 36:283) found for one of them, and
/// cyanuric acid the slope of W18; such a value says that it is approximate. The choice of constants
/// alone matters: 5.83 instead of 5.62 for HClCy- leaves 38 % less hypochlorous acid.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let shares = chlorine::shares(
///     Chlorine::from_mg_per_l(3.0)?,
///     Cyanurate::from_mg_per_l(30.0)?,
///     Ph::from_units(7.5)?,
///     Temperature::from_celsius(25.0)?,
///     IonicStrength::from_molal(0.0)?,
/// );
/// assert!((shares.hypochlorous.mg_per_l() - 0.04309).abs() < 0.00001); // PHREEQC with the same constants
/// assert!(!shares.approximate);
/// # Ok(())
/// # }
/// ```
pub fn shares(free: Chlorine, cya: Cyanurate, ph: Ph, t: Temperature, strength: IonicStrength) -> Shares {
    let warmth = 1.0 / (t.celsius() + 273.15) - 1.0 / 298.15;
    let constants = Constants::at(t);
    let (i, a) = (strength.molal(), constants.debye_a);
    let root = libm::sqrt(i);
    // log γ of an ion of charge one, and of what has none.
    let (ion, none) = (-a * (root / (1.0 + root) - 0.3 * i), 0.1 * i);
    let a_h = pow10(-ph.units());
    let hydrolysis = 38_800.0 / (LN_10 * 8.314463) * warmth;
    let acid = -1743.0 * warmth - 6.88;

    // All per `[H3Cy]` and power of X = [HOCl], concentrations; H+ stays an activity.
    let hypochlorite = pow10(constants.log.hypochlorous + none - ion) / a_h;
    let h2cy = pow10(acid + none - ion) / a_h;
    let hcy = h2cy * pow10(-11.40 + ion - 4.0 * ion) / a_h;
    let hclcy = h2cy * pow10(5.62 + hydrolysis + none);
    let h2clcy = hclcy * a_h * pow10(5.33 + ion - none);
    let clcy = hclcy * pow10(-10.12 + ion - 4.0 * ion) / a_h;
    let cl2cy = hclcy * pow10(4.51 + hydrolysis + none);
    let hcl2cy = cl2cy * a_h * pow10(3.75 + ion - none);
    let cl3cy = hcl2cy * pow10(1.80 + none);

    let (a0, a1, a2, a3) = (1.0 + h2cy + hcy, hclcy + h2clcy + clcy, cl2cy + hcl2cy, cl3cy);
    let b = 1.0 + hypochlorite;
    let chlorine = free.mg_per_l() / atomic_weights::CHLORINE / 1000.0;
    let total = cya.mg_per_l() / atomic_weights::CYANURIC_ACID / 1000.0;
    // From nothing upwards: chlorine binds ever less, so that no step leads beyond the root.
    let mut x = 0.0;
    for _ in 0..10 {
        let d = a0 + x * (a1 + x * (a2 + x * a3));
        // Chlorine bound, by cyanurate in all its forms, is n/d; dd and dn are their slopes.
        let dd = a1 + x * (2.0 * a2 + x * 3.0 * a3);
        let (n, dn) = (x * dd, a1 + x * (4.0 * a2 + x * 9.0 * a3));
        let f = x * b + total * n / d - chlorine;
        let slope = b + total * (dn * d - n * dd) / (d * d);
        x -= f / slope;
    }
    let as_chlorine = |mol: f64| Chlorine::found(mol * atomic_weights::CHLORINE * 1000.0);
    Shares {
        hypochlorous: as_chlorine(x),
        hypochlorite: as_chlorine(x * hypochlorite),
        bound: as_chlorine(libm::fmax(chlorine - x * b, 0.0)),
        approximate: t.celsius() != 25.0 && cya.mg_per_l() > 0.0,
    }
}
