//! How acid is the water, and does it dissolve calcite or lay it down?
//!
//! One solver for three questions: the pH is known and the carbon is not, or the other way about,
//! or the air keeps up the carbon dioxide.
//! The carbonate system is solved in closed form (or by Newton's step for pH) inside
//! sweeps over the ion pairs and the ionic strength, until that has settled.

use crate::bounds::OutOfRange;
use crate::constants::atomic_weights;
use crate::constants::equilibrium::{Apparent, Constants, There, pow10};
use crate::quantity::*;
use core::f64::consts::LN_10;

/// Why a water has no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Fault {
    /// A test lies outside what the model was checked for.
    Outside(OutOfRange),
    /// At this pH the cyanuric acid and borate tested already hold more than the alkalinity tested:
    /// one of the three readings is wrong. Test them again.
    NoCarbonate,
    /// No pH between 2 and 12.5 balances this alkalinity with this carbon, or there is no such water.
    NoSolution,
}

/// What the water is doing.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct State {
    /// pH, measured or found.
    pub ph: Ph,
    /// Calcite saturation index; `None` without calcium, where it would be minus infinity.
    pub index: Option<SaturationIndex>,
    /// Ionic strength, ion pairs counted.
    pub strength: IonicStrength,
    /// Total inorganic carbon.
    pub carbon: InorganicCarbon,
    /// Alkalinity held by bicarbonate and carbonate, in a litre.
    pub carbonate_alkalinity: CarbonateAlkalinity,
    /// Carbon dioxide pressure this water would be in equilibrium with.
    pub carbon_dioxide: CarbonDioxide,
    /// log10 of the activity of calcium ions; minus infinity without calcium.
    #[cfg_attr(feature = "serde", serde(with = "crate::serialize::log_of_nothing"))]
    pub log_calcium: f64,
    /// log10 of the activity of carbonate ions.
    pub log_carbonate: f64,
    /// log10 of calcite's solubility product at this temperature.
    pub log_solubility: f64,
}

/// The totals that only dosing or mixing can change, mol (or equivalents) per kg of water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Ions {
    pub alkalinity: f64,
    pub calcium: f64,
    pub magnesium: f64,
    pub sodium: f64,
    pub chloride: f64,
    pub sulfate: f64,
    pub cyanurate: f64,
    pub boron: f64,
    /// Free chlorine, HOCl and OCl-.
    pub chlorine: f64,
}

impl Ions {
    /// All that is dissolved; the carbon counts as the alkalinity that it holds.
    fn solutes(&self) -> f64 {
        self.sodium
            + self.chloride
            + self.calcium
            + self.magnesium
            + self.sulfate
            + self.alkalinity
            + self.cyanurate
            + self.boron
            + self.chlorine
    }
}

/// What is known beside the conserved ions.
#[derive(Clone, Copy)]
pub(crate) enum Known {
    Ph(f64),
    Carbon(f64),
    /// Pressure of carbon dioxide that the water is in equilibrium with, atm.
    Air(f64),
}

/// The sweeps end when one moves the ionic strength by less than this, mol/kg, and bicarbonate by less than
/// such a part of itself: then the pH found from the carbon that was found from a pH is that pH again within
/// 2e-7, even where cyanurate leaves hardly any carbonate. Four do in most pools; sulfate with magnesium
/// takes a few more.
const SETTLED: f64 = 1e-9;
const SETTLED_PART: f64 = 1e-7;
const MOST_SWEEPS: u32 = 24;
const LOWEST_PH: f64 = 2.0;
const HIGHEST_PH: f64 = 12.5;

/// Alkalinity is counted from the zero level CO2, H3BO3, H3Cy, HOCl, H2O:
/// `TA = [HCO3-] + 2[CO3--] + [B(OH)4-] + [H2Cy-] + [OCl-] + [OH-] + [MgOH+] + [CaOH+] - [H+]`, pairs counted
/// with their carbonate. The index is `log10(a(Ca++) a(CO3--)) - log Ksp(calcite)`.
///
/// Sources: PB82, PA13, W18 (see [`Constants::at`]). Checked against PHREEQC 3.7.3 on random waters
/// of the whole domain: the index differs by less than 0.0005. That is agreement with one database;
/// against nature about ± 0.1 is honest, mostly calcite's own constant away from 25 °C.
pub(crate) fn solve(all: &Ions, t: Temperature, content: WaterContent, known: Known) -> Result<State, Fault> {
    let constants = Constants::at(t);
    let water_activity = 1.0 - 0.017 * all.solutes();
    if water_activity.is_nan() || water_activity <= 0.0 {
        return Err(Fault::NoSolution);
    }
    let divalent = all.calcium + all.magnesium + all.sulfate;
    let mut strength = (all.sodium + all.chloride + 4.0 * divalent + all.alkalinity) / 2.0;
    let (mut ca, mut na, mut mg, mut so4) = (all.calcium, all.sodium, all.magnesium, all.sulfate);
    let mut ph = match known {
        Known::Ph(ph) => ph,
        Known::Carbon(_) | Known::Air(_) => 7.5,
    };
    // Bound to cyanuric acid, chlorine titrates as the cyanurate that it replaces.
    let unbound = if all.cyanurate > 0.0 { 0.0 } else { all.chlorine };
    let there = There {
        calcium: all.calcium > 0.0,
        magnesium: all.magnesium > 0.0,
        sulfate: all.sulfate > 0.0,
        cyanurate: all.cyanurate > 0.0,
        boron: all.boron > 0.0,
        chlorine: unbound > 0.0,
    };
    let mut apparent = Apparent::at(&constants, &there, strength, water_activity);
    let mut a_h = pow10(-ph);
    let (mut step, mut last_hco3) = (0.0, 0.0);
    let mut sweep = 0;
    loop {
        let k = &apparent.k;
        // All bicarbonate, and all carbonate, per free ion of each.
        let fh = 1.0 + k.ca_hco3 * ca + k.na_hco3 * na + k.mg_hco3 * mg;
        let fc = 1.0 + k.ca_co3 * ca + k.na_co3 * na + k.mg_co3 * mg;

        // Everything but carbonate that takes up acid at this pH, and its slope against pH · ln 10.
        let other = |a_h: f64| {
            // Of an acid, the part that has given its hydrogen away; its slope is part (1 - part).
            let part = |k: f64| k / (k + a_h);
            let (b, c, o) = (part(k.boric), part(k.cyanuric), part(k.hypochlorous));
            let per_a_h = 1.0 / a_h;
            let hydroxide = k.water * per_a_h;
            let metal_oh = (k.mg_oh * mg + k.ca_oh * ca) * per_a_h;
            let hydrogen = a_h * k.hydrogen;
            let charged = all.boron * b + all.cyanurate * c + unbound * o + hydroxide;
            let slope = all.boron * b * (1.0 - b)
                + all.cyanurate * c * (1.0 - c)
                + unbound * o * (1.0 - o)
                + hydroxide
                + metal_oh
                + hydrogen;
            (charged + metal_oh - hydrogen, slope, charged + hydrogen)
        };

        // Carbon dioxide in solution that the air keeps up.
        let kept = |pressure: f64| pressure * pow10(constants.henry - apparent.log.neutral);
        if !matches!(known, Known::Ph(_)) {
            for _ in 0..2 {
                let r1 = k.carbonic / a_h;
                let r2 = r1 * k.bicarbonate / a_h;
                let (once, twice) = (r1 * fh + 2.0 * r2 * fc, r1 * fh + 4.0 * r2 * fc);
                let d = 1.0 + r1 * fh + r2 * fc;
                // Where the carbon is closed in, what one form gains the others lose.
                let (co2, lost) = match known {
                    Known::Air(pressure) => (kept(pressure), 0.0),
                    Known::Carbon(carbon) | Known::Ph(carbon) => (carbon / d, once / d),
                };
                let held = co2 * once;
                let (rest, rest_slope, _) = other(a_h);
                let slope = co2 * twice - held * lost + rest_slope;
                step = ((held + rest - all.alkalinity) / slope / LN_10).clamp(-1.0, 1.0);
                ph = (ph - step).clamp(LOWEST_PH, HIGHEST_PH);
                a_h = pow10(-ph);
            }
        }

        let (rest, _, charged) = other(a_h);
        let per_a_h = 1.0 / a_h;
        let ratio = k.bicarbonate * per_a_h;
        let (hco3, held) = match known {
            Known::Ph(_) => {
                let held = all.alkalinity - rest;
                if held.is_nan() || held <= 0.0 {
                    return Err(Fault::NoCarbonate);
                }
                (held / (fh + 2.0 * ratio * fc), held)
            }
            Known::Carbon(carbon) => {
                let hco3 = carbon / (a_h / k.carbonic + fh + ratio * fc);
                (hco3, hco3 * (fh + 2.0 * ratio * fc))
            }
            Known::Air(pressure) => {
                let hco3 = kept(pressure) * k.carbonic / a_h;
                (hco3, hco3 * (fh + 2.0 * ratio * fc))
            }
        };
        let co3 = ratio * hco3;

        ca = all.calcium / (1.0 + k.ca_oh * per_a_h + k.ca_hco3 * hco3 + k.ca_co3 * co3 + k.ca_so4 * so4);
        na = all.sodium / (1.0 + k.na_hco3 * hco3 + k.na_co3 * co3 + k.na_so4 * so4);
        mg = all.magnesium / (1.0 + k.mg_hco3 * hco3 + k.mg_co3 * co3 + k.mg_so4 * so4);
        so4 = all.sulfate / (1.0 + k.ca_so4 * ca + k.na_so4 * na + k.mg_so4 * mg);
        let before = strength;
        strength = (na
            + all.chloride
            + hco3 * (1.0 + k.ca_hco3 * ca + k.mg_hco3 * mg)
            + co3 * k.na_co3 * na
            + k.na_so4 * na * so4
            + charged
            + 4.0 * (ca + mg + so4 + co3))
            / 2.0;

        sweep += 1;
        let moving = (strength - before).abs() > SETTLED
            || (hco3 - last_hco3).abs() > SETTLED_PART * hco3
            || step.abs() > 1e-9;
        if sweep < MOST_SWEEPS && moving {
            last_hco3 = hco3;
            apparent = apparent.moved(&constants, strength);
            continue;
        }
        let co2 = hco3 * a_h / k.carbonic;
        // Carbon below none, or salts beyond any water, have no logarithm either.
        let whole = co2 > 0.0 && co3 > 0.0 && strength.is_finite();
        if step.is_nan() || step.abs() >= 1e-6 || !whole {
            return Err(Fault::NoSolution);
        }
        let log_calcium = libm::log10(ca) + apparent.log.ca;
        let log_carbonate = libm::log10(co3) + apparent.log.co3;
        return Ok(State {
            ph: Ph::found(ph),
            index: (ca > 0.0).then_some(SaturationIndex(log_calcium + log_carbonate - constants.calcite)),
            strength: IonicStrength::found(strength),
            carbon: InorganicCarbon(co2 + hco3 * fh + co3 * fc),
            carbonate_alkalinity: CarbonateAlkalinity(
                held * content.kg_per_l() * atomic_weights::CALCIUM_CARBONATE * 500.0,
            ),
            carbon_dioxide: CarbonDioxide(co2 * pow10(apparent.log.neutral - constants.henry)),
            log_calcium,
            log_carbonate,
            log_solubility: constants.calcite,
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mole_of_anything_dissolved_counts_once() {
        let one = |n: usize| {
            let x: [f64; 9] = core::array::from_fn(|i| if i == n { 1.0 } else { 0.0 });
            let [alkalinity, calcium, magnesium, sodium, chloride, sulfate, cyanurate, boron, chlorine] = x;
            Ions { alkalinity, calcium, magnesium, sodium, chloride, sulfate, cyanurate, boron, chlorine }
        };
        assert!((0..9).all(|n| one(n).solutes() == 1.0));
    }
}
