//! How acid is the water, and does it dissolve calcite or lay it down?
//!
//! One solver for three questions: the pH is known and the carbon is not, or the other way about,
//! or the air keeps up the carbon dioxide.
//! The carbonate system is solved in closed form (or by Newton's step for pH) inside
//! sweeps over the ion pairs and the ionic strength, until that has settled.

use crate::bounds;
use crate::chlorine::{Binding, ChlorineSpecies};
use crate::constants::activity::{Apparent, Present, pow10};
use crate::constants::atomic_weights;
use crate::constants::equilibrium::Constants;
use crate::error::WaterError;
use crate::quantity::{derived::*, measured::*};
use core::f64::consts::LN_10;

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
    /// Free chlorine and how much of it is bound to cyanuric acid; `None` without chlorine. By the pK1 that alkalinity
    /// goes by, so hypochlorous acid lies 2 to 4 % off [`crate::chlorine::species`].
    pub chlorine: Option<ChlorineSpecies>,
    /// log10 of the activity of calcium ions; minus infinity without calcium.
    #[cfg_attr(feature = "serde", serde(with = "crate::serialize::log_of_nothing"))]
    pub log_calcium: f64,
    /// log10 of the activity of carbonate ions.
    pub log_carbonate: f64,
    /// log10 of calcite's solubility product at this temperature.
    pub log_solubility: f64,
}

impl State {
    /// How far the index of an ordinary pool may be off nature, either way, before the error of the tests: 0.1, beyond
    /// 10 g/L of sodium chloride (told by the ionic strength) 0.15.
    ///
    /// Ordinary: 15 to 32 °C, pH 7 to 8, alkalinity 60 to 180, hardness 100 to 600. Toward the corners of the domain it
    /// may be 0.25. Source: PHREEQC's other model, of ion interactions (`pitzer.dat` of PA13), run beside this one: at
    /// 25 °C it lies 0.06 above from 3 to 40 g/L and 0.09 in sea water; in cold soft water 0.14 below, in hot hard
    /// water 0.23 above, mostly by calcite's own constant. Rounded by us.
    ///
    /// ```
    /// use saltwright_chem::*;
    /// # fn main() -> Result<(), OutOfRange> {
    /// let (ta, ch) = (Alkalinity::from_mg_per_l(120.0)?, Hardness::from_mg_per_l(300.0)?);
    /// let doubt = |salt| -> Result<f64, OutOfRange> {
    ///     let (t, ph) = (Temperature::from_celsius(26.0)?, Ph::from_units(7.5)?);
    ///     let none = CyanuricAcid::from_mg_per_l(0.0)?;
    ///     Ok(Sample {
    ///         temperature: t,
    ///         ph,
    ///         alkalinity: ta,
    ///         hardness: ch,
    ///         cyanuric_acid: none,
    ///         salt: Salinity::from_mg_per_l(salt)?,
    ///         boron: Boron::NONE,
    ///         magnesium: Magnesium::NONE,
    ///         sulfate: Sulfate::NONE,
    ///     }.state().unwrap().index_doubt())
    /// };
    /// assert_eq!((doubt(3_200.0)?, doubt(35_000.0)?), (0.1, 0.15));
    /// # Ok(())
    /// # }
    /// ```
    #[must_use]
    pub fn index_doubt(&self) -> f64 {
        if self.strength.molal() <= OF_10_G_PER_L { 0.1 } else { 0.15 }
    }
}

/// Ionic strength of 10 g/L of sodium chloride at 25 °C, mol per kg of water, with what else a pool holds.
const OF_10_G_PER_L: f64 = 0.19;

/// The totals that only dosing or mixing can change, mol (or equivalents) per kg of water.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub(crate) struct Ions {
    pub alkalinity: f64,
    pub calcium: f64,
    pub magnesium: f64,
    pub sodium: f64,
    pub chloride: f64,
    pub sulfate: f64,
    pub cyanuric_acid: f64,
    pub boron: f64,
    /// Free chlorine, HOCl and OCl-.
    pub chlorine: f64,
}

impl Ions {
    /// May they be what is dissolved? Alkalinity alone can stand below none, where there is more strong acid.
    #[cfg(feature = "serde")]
    pub fn are_totals(&self) -> bool {
        let Self {
            alkalinity,
            calcium,
            magnesium,
            sodium,
            chloride,
            sulfate,
            cyanuric_acid,
            boron,
            chlorine,
        } = *self;
        let amounts = [calcium, magnesium, sodium, chloride, sulfate, cyanuric_acid, boron, chlorine];
        alkalinity.is_finite() && amounts.iter().all(|x| x.is_finite() && *x >= 0.0)
    }

    /// All that is dissolved; the carbon counts as the alkalinity that it holds.
    fn solutes(&self) -> f64 {
        self.sodium
            + self.chloride
            + self.calcium
            + self.magnesium
            + self.sulfate
            + self.alkalinity
            + self.cyanuric_acid
            + self.boron
            + self.chlorine
    }
}

/// What is known beside the conserved ions.
#[derive(Clone, Copy)]
pub(crate) enum Constraint {
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

/// What the water is doing; for its zero level, sources and agreement see [`crate::Sample::state`].
pub(crate) fn solve(
    all: &Ions,
    t: Temperature,
    content: WaterContent,
    known: Constraint,
) -> Result<State, WaterError> {
    let constants = Constants::at(t)?;
    // Raoult's law with 0.017 for 1/55.5 of a kilogram's moles, as PA13 has it after Garrels and Christ 1965.
    let water_activity = 1.0 - 0.017 * all.solutes();
    if water_activity.is_nan() || water_activity <= 0.0 {
        return Err(WaterError::NoSolution);
    }
    let divalent = all.calcium + all.magnesium + all.sulfate;
    let mut strength = (all.sodium + all.chloride + 4.0 * divalent + all.alkalinity) / 2.0;
    let (mut ca, mut na, mut mg, mut so4) = (all.calcium, all.sodium, all.magnesium, all.sulfate);
    let mut ph = match known {
        Constraint::Ph(ph) => ph,
        Constraint::Carbon(_) | Constraint::Air(_) => 7.5,
    };
    let chlorinated = all.chlorine > 0.0;
    let present = Present {
        calcium: all.calcium > 0.0,
        magnesium: all.magnesium > 0.0,
        sulfate: all.sulfate > 0.0,
        cyanuric_acid: all.cyanuric_acid > 0.0,
        boron: all.boron > 0.0,
        chlorine: chlorinated,
    };
    let mut apparent = Apparent::at(&constants, &present, strength, water_activity);
    let mut a_h = pow10(-ph);
    let (mut step, mut last_hco3) = (0.0, 0.0);
    let mut sweep = 0;
    loop {
        let k = &apparent.k;
        // All bicarbonate, and all carbonate, per free ion of each.
        let fh = 1.0 + k.ca_hco3 * ca + k.na_hco3 * na + k.mg_hco3 * mg;
        let fc = 1.0 + k.ca_co3 * ca + k.na_co3 * na + k.mg_co3 * mg;

        let binding = chlorinated
            .then(|| Binding::at(&constants, t, apparent.strength, k.hypochlorous, [k.cyanuric, 0.0]));
        // Everything but carbonate that takes up acid at this pH, its slope against pH · ln 10, and the charge
        // squared of what of it is an ion.
        let other = |a_h: f64| {
            // Of an acid, the part that has given its hydrogen away; its slope is part (1 - part).
            let part = |k: f64| k / (k + a_h);
            let (b, per_a_h) = (part(k.boric), 1.0 / a_h);
            let (hydroxide, hydrogen) = (k.water * per_a_h, a_h * k.hydrogen);
            let metal_oh = (k.mg_oh * mg + k.ca_oh * ca) * per_a_h;
            let (acids, acids_slope, acids_charge) = match &binding {
                Some(binding) => {
                    let parted = binding.part(a_h, all.chlorine, all.cyanuric_acid);
                    (parted.alkalinity, parted.slope, parted.charge_squared)
                }
                None => {
                    let c = part(k.cyanuric);
                    (all.cyanuric_acid * c, all.cyanuric_acid * c * (1.0 - c), all.cyanuric_acid * c)
                }
            };
            let charged = all.boron * b + hydroxide + metal_oh;
            let slope = all.boron * b * (1.0 - b) + acids_slope + hydroxide + metal_oh + hydrogen;
            (charged + acids - hydrogen, slope, charged + acids_charge + hydrogen)
        };

        // Carbon dioxide in solution that the air keeps up.
        let kept = |pressure: f64| pressure * pow10(constants.henry - apparent.log.neutral);
        if !matches!(known, Constraint::Ph(_)) {
            for _ in 0..2 {
                let r1 = k.carbonic / a_h;
                let r2 = r1 * k.bicarbonate / a_h;
                let (once, twice) = (r1 * fh + 2.0 * r2 * fc, r1 * fh + 4.0 * r2 * fc);
                let d = 1.0 + r1 * fh + r2 * fc;
                // Where the carbon is closed in, what one form gains the others lose.
                let (co2, lost) = match known {
                    Constraint::Air(pressure) => (kept(pressure), 0.0),
                    Constraint::Carbon(carbon) | Constraint::Ph(carbon) => (carbon / d, once / d),
                };
                let held = co2 * once;
                let (rest, rest_slope, _) = other(a_h);
                let slope = co2 * twice - held * lost + rest_slope;
                step = ((held + rest - all.alkalinity) / slope / LN_10).clamp(-1.0, 1.0);
                ph = (ph - step).clamp(bounds::POOL_PH.low, bounds::POOL_PH.high);
                a_h = pow10(-ph);
            }
        }

        let (rest, _, charged) = other(a_h);
        let per_a_h = 1.0 / a_h;
        let ratio = k.bicarbonate * per_a_h;
        let (hco3, held) = match known {
            Constraint::Ph(_) => {
                let held = all.alkalinity - rest;
                if held.is_nan() || held <= 0.0 {
                    return Err(WaterError::NoCarbonate);
                }
                (held / (fh + 2.0 * ratio * fc), held)
            }
            Constraint::Carbon(carbon) => {
                let hco3 = carbon / (a_h / k.carbonic + fh + ratio * fc);
                (hco3, hco3 * (fh + 2.0 * ratio * fc))
            }
            Constraint::Air(pressure) => {
                let hco3 = kept(pressure) * k.carbonic / a_h;
                (hco3, hco3 * (fh + 2.0 * ratio * fc))
            }
        };
        let co3 = ratio * hco3;

        ca = all.calcium / (1.0 + k.ca_oh * per_a_h + k.ca_hco3 * hco3 + k.ca_co3 * co3 + k.ca_so4 * so4);
        na = all.sodium / (1.0 + k.na_hco3 * hco3 + k.na_co3 * co3 + k.na_so4 * so4);
        mg = all.magnesium / (1.0 + k.mg_oh * per_a_h + k.mg_hco3 * hco3 + k.mg_co3 * co3 + k.mg_so4 * so4);
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
        if moving && sweep == MOST_SWEEPS {
            return Err(WaterError::NoSolution);
        }
        if moving {
            last_hco3 = hco3;
            apparent = apparent.moved(&constants, strength);
            continue;
        }
        let co2 = hco3 * a_h / k.carbonic;
        // Carbon below none, or salts beyond any water, have no logarithm either.
        let whole = co2 > 0.0 && co3 > 0.0 && strength.is_finite();
        if step.is_nan() || step.abs() >= 1e-6 || !whole {
            return Err(WaterError::NoSolution);
        }
        let kg_per_l = content.kg_per_l();
        let species = binding.map(|binding| {
            binding
                .part(a_h, all.chlorine, all.cyanuric_acid)
                .species(kg_per_l, t)
                .map_err(WaterError::Outside)
        });
        let chlorine = species.transpose()?;
        let log_calcium = libm::log10(ca) + apparent.log.ca;
        let log_carbonate = libm::log10(co3) + apparent.log.co3;
        let index = log_calcium + log_carbonate - constants.calcite;
        return Ok(State {
            ph: Ph::from_units(ph)?,
            index: (ca > 0.0).then(|| SaturationIndex::from_log10(index)).transpose()?,
            strength: IonicStrength::from_molal(strength)?,
            carbon: InorganicCarbon::from_molal(co2 + hco3 * fh + co3 * fc)?,
            carbonate_alkalinity: CarbonateAlkalinity::from_mg_per_l(
                held * kg_per_l * atomic_weights::CALCIUM_CARBONATE * 500.0,
            )?,
            carbon_dioxide: CarbonDioxide::from_atmospheres(
                co2 * pow10(apparent.log.neutral - constants.henry),
            )?,
            chlorine,
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
            let [alkalinity, calcium, magnesium, sodium, chloride, sulfate, cyanuric_acid, boron, chlorine] =
                x;
            Ions { alkalinity, calcium, magnesium, sodium, chloride, sulfate, cyanuric_acid, boron, chlorine }
        };
        assert!((0..9).all(|n| one(n).solutes() == 1.0));
    }
}
