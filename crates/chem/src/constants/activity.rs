//! What do the equilibrium constants look like through this ionic strength?
//!
//! `Apparent` constants are what reactions show in concentrations (mol per kg of water), with the hydrogen ion
//! kept as an *activity*, since that is what a pH meter reports.
//!
//! Powers of ten are what a solution costs. So each reaction that can take place gets one, and from sweep
//! to sweep its constant only moves along.

use crate::constants::equilibrium::{Constants, Reactions};
use core::f64::consts::LN_10;

pub(crate) fn pow10(x: f64) -> f64 {
    libm::exp(LN_10 * x)
}

/// [`pow10`] of next to nothing: five terms of the series are off by less than 1e-13 where they are used.
fn pow10_of_step(x: f64) -> f64 {
    let y = LN_10 * x;
    if y.abs() < 0.02 {
        1.0 + y * (1.0 + y * (1.0 / 2.0 + y * (1.0 / 6.0 + y * (1.0 / 24.0 + y * (1.0 / 120.0)))))
    } else {
        libm::exp(y)
    }
}

/// Which of the parts that many waters lack are there.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Present {
    pub calcium: bool,
    pub magnesium: bool,
    pub sulfate: bool,
    pub cyanuric_acid: bool,
    pub boron: bool,
    pub chlorine: bool,
}

impl Present {
    /// The logarithms with those of reactions that lack a part brought down to that of nothing.
    fn of(&self, log: &Reactions) -> Reactions {
        let only = |present: bool, log_k: f64| if present { log_k } else { f64::NEG_INFINITY };
        Reactions {
            boric: only(self.boron, log.boric),
            cyanuric: only(self.cyanuric_acid, log.cyanuric),
            hypochlorous: only(self.chlorine, log.hypochlorous),
            ca_co3: only(self.calcium, log.ca_co3),
            ca_hco3: only(self.calcium, log.ca_hco3),
            ca_so4: only(self.calcium && self.sulfate, log.ca_so4),
            ca_oh: only(self.calcium, log.ca_oh),
            na_so4: only(self.sulfate, log.na_so4),
            mg_co3: only(self.magnesium, log.mg_co3),
            mg_hco3: only(self.magnesium, log.mg_hco3),
            mg_so4: only(self.magnesium && self.sulfate, log.mg_so4),
            mg_oh: only(self.magnesium, log.mg_oh),
            ..*log
        }
    }
}

/// log γ of an ion of charge one by D62; of one of charge z it is z² times that. `root` is √I.
pub(crate) fn davies(k: &Constants, strength: f64, root: f64) -> f64 {
    -k.debye_a * (root / (1.0 + root) - 0.3 * strength)
}

/// log γ of what has no charge.
pub(crate) fn neutral(strength: f64) -> f64 {
    0.1 * strength
}

/// log10 activity coefficients at one ionic strength.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Activities {
    pub ca: f64,
    pub co3: f64,
    pub neutral: f64,
    /// What all of them together add to the logarithm of each constant.
    shift: Reactions,
}

impl Activities {
    /// `log γ = -A z² √I/(1 + B a √I) + b I` (TJ74, with a and b of PA13) where an ion size is known;
    /// `-A z² (√I/(1 + √I) - 0.3 I)` (Davies) for borate, cyanuric_acid, hypochlorite, NaCO3- and CaOH+; `0.1 I`
    /// for what has no charge. HCO3-, CO3-- and NaSO4- share one size, so one evaluation serves all three.
    fn at(k: &Constants, strength: f64) -> Self {
        let root = libm::sqrt(strength);
        let sized =
            |z2: f64, a: f64, b: f64| -k.debye_a * z2 * root / (1.0 + k.debye_b * a * root) + b * strength;
        let (davies, neutral) = (davies(k, strength, root), neutral(strength));
        let h = sized(1.0, 9.0, 0.0);
        let hco3 = sized(1.0, 5.4, 0.0);
        let (co3, na_so4) = (4.0 * hco3, hco3);
        let oh = sized(1.0, 3.5, 0.0);
        let so4 = sized(4.0, 5.0, -0.04);
        let ca = sized(4.0, 5.0, 0.165);
        let mg = sized(4.0, 5.5, 0.20);
        let na = sized(1.0, 4.08, 0.082);
        let ca_hco3 = sized(1.0, 6.0, 0.0);
        let mg_hco3 = sized(1.0, 4.0, 0.0);
        let mg_oh = sized(1.0, 6.5, 0.0);
        let shift = Reactions {
            carbonic: neutral - hco3,
            bicarbonate: hco3 - co3,
            water: -oh,
            boric: neutral - davies,
            cyanuric: neutral - davies,
            hypochlorous: neutral - davies,
            ca_co3: ca + co3 - neutral,
            ca_hco3: ca + hco3 - ca_hco3,
            ca_so4: ca + so4 - neutral,
            ca_oh: ca - davies,
            na_co3: na + co3 - davies,
            na_hco3: na + hco3 - neutral,
            na_so4: na + so4 - na_so4,
            mg_co3: mg + co3 - neutral,
            mg_hco3: mg + hco3 - mg_hco3,
            mg_so4: mg + so4 - neutral,
            mg_oh: mg - mg_oh,
            hydrogen: -h,
        };
        Self { ca, co3, neutral, shift }
    }
}

/// The constants in concentrations, at one ionic strength.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Apparent {
    pub strength: f64,
    pub log: Activities,
    pub k: Reactions,
}

/// A strength that has moved by less, mol/kg, moves no constant by more than two millionths: they stay as they
/// are.
const HARDLY: f64 = 3e-8;

impl Apparent {
    /// `K γ(left)/γ(right)` for what is `present`, and nothing for the rest.
    pub(crate) fn at(constants: &Constants, present: &Present, strength: f64, water_activity: f64) -> Self {
        let log = Activities::at(constants, strength);
        let mut k = present.of(&constants.log).with(&log.shift, |log_k, shift| pow10(log_k + shift));
        k.water *= water_activity;
        k.carbonic *= water_activity;
        Self { strength, log, k }
    }

    /// The same at a strength nearby.
    pub(crate) fn moved(self, constants: &Constants, strength: f64) -> Self {
        if (strength - self.strength).abs() < HARDLY {
            return self;
        }
        let log = Activities::at(constants, strength);
        let step = log.shift.with(&self.log.shift, |now, then| now - then);
        // Most waters lack a part or two, and nothing stays nothing.
        let k = self.k.with(&step, |k, step| if k == 0.0 { k } else { k * pow10_of_step(step) });
        Self { strength, log, k }
    }
}

#[cfg(test)]
mod tests;
