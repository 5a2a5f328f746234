//! What are the equilibrium constants at this temperature, and what do they look like through this
//! ionic strength?
//!
//! [`Constants`] are thermodynamic: logarithms to base ten at zero ionic strength and one
//! atmosphere. `Apparent` are what the same reactions show in concentrations (mol per kg of
//! water), with the hydrogen ion kept as an *activity*, since that is what a pH meter reports.
//!
//! Powers of ten are what a solution costs. So each reaction that can take place gets one, and from sweep
//! to sweep its constant only moves along.

use crate::quantity::Temperature;
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

macro_rules! reactions {
    ($($name:ident: $reaction:literal;)*) => {
        /// A number for each reaction.
        #[derive(Clone, Copy, Debug)]
        pub(crate) struct Reactions {
            $(#[doc = $reaction] pub $name: f64,)*
        }

        impl Reactions {
            /// Reaction by reaction, `f` of this number and the other's.
            fn with(&self, other: &Self, f: impl Fn(f64, f64) -> f64) -> Self {
                Self { $($name: f(self.$name, other.$name),)* }
            }
        }
    };
}

reactions! {
    carbonic: "CO2 + H2O = HCO3- + H+";
    bicarbonate: "HCO3- = CO3-- + H+";
    water: "H2O = H+ + OH-";
    boric: "H3BO3 + H2O = B(OH)4- + H+";
    cyanuric: "H3Cy = H2Cy- + H+";
    hypochlorous: "HOCl = H+ + OCl-";
    ca_co3: "Ca++ + CO3-- = CaCO3°";
    ca_hco3: "Ca++ + HCO3- = CaHCO3+";
    ca_so4: "Ca++ + SO4-- = CaSO4°";
    ca_oh: "Ca++ + H2O = CaOH+ + H+";
    na_co3: "Na+ + CO3-- = NaCO3-";
    na_hco3: "Na+ + HCO3- = NaHCO3°";
    na_so4: "Na+ + SO4-- = NaSO4-";
    mg_co3: "Mg++ + CO3-- = MgCO3°";
    mg_hco3: "Mg++ + HCO3- = MgHCO3+";
    mg_so4: "Mg++ + SO4-- = MgSO4°";
    mg_oh: "Mg++ + H2O = MgOH+ + H+";
    hydrogen: "H+ by its activity = H+ by its concentration";
}

/// Thermodynamic constants at one temperature, log10.
#[derive(Clone, Copy, Debug)]
pub struct Constants {
    pub(crate) log: Reactions,
    /// CO2(gas) = CO2, mol per kg and atm.
    pub(crate) henry: f64,
    /// CaCO3(calcite) = Ca++ + CO3--.
    pub(crate) calcite: f64,
    /// Debye and Hückel's A and B.
    pub(crate) debye_a: f64,
    debye_b: f64,
}

impl Constants {
    /// The constants at `t`.
    ///
    /// Analytic expressions in T = t + 273.15 K, and van 't Hoff's
    /// `log K(25 °C) - ΔH/(ln 10 · R) · (1/T - 1/298.15)` where only an enthalpy is known.
    /// Domain: 0 to 42 °C (cyanuric acid was measured from 5 to 35). Total.
    ///
    /// Sources: carbonic acid, calcite, CaCO3° and CaHCO3+ PB82; the rest PA13, but for cyanuric
    /// acid, which is W18 (its enthalpy is 33.4 ± 1.7 kJ/mol), and hypochlorous acid, M66. Debye and
    /// Hückel's A and B are our fits to PA13's own, within 5e-7 and 3e-6 from 0 to 45 °C. The
    /// coefficients are differences of large numbers: do not shorten them.
    pub fn at(t: Temperature) -> Self {
        let c = t.celsius();
        let k = c + 273.15;
        let (l, r) = (libm::log10(k), 1.0 / k);
        let van_t_hoff =
            |log_k: f64, kcal: f64| log_k - kcal * 4184.0 / (LN_10 * 8.314463) * (r - 1.0 / 298.15);
        // CO3-- + H+ = HCO3-, and CO3-- + 2 H+ = CO2 + H2O
        let protonated = 107.8871 + 0.03252849 * k - 5151.79 * r - 38.92561 * l + 563713.9 * r * r;
        let twice = 464.1965 + 0.09344813 * k - 26986.16 * r - 165.75951 * l + 2248628.9 * r * r;
        let log = Reactions {
            carbonic: protonated - twice,
            bicarbonate: -protonated,
            water: 293.29227 + 0.1360833 * k - 10576.913 * r - 123.73158 * l - 6.996455e-5 * k * k,
            boric: van_t_hoff(-9.24, 3.224),
            cyanuric: -1743.0 * r - 1.12,
            hypochlorous: 10.0686 - 0.0253 * k - 3000.0 * r,
            ca_co3: -1228.732 - 0.299440 * k + 35512.75 * r + 485.818 * l,
            ca_hco3: 1317.0071 + 0.34546894 * k - 39916.84 * r - 517.70761 * l + 563713.9 * r * r
                - protonated,
            ca_so4: van_t_hoff(2.25, 1.325),
            ca_oh: -12.78, // The database has no heat for it.
            na_co3: van_t_hoff(1.27, 8.91),
            na_hco3: van_t_hoff(-0.25, -1.0),
            na_so4: van_t_hoff(0.70, 1.120),
            mg_co3: 0.9910 + 0.00667 * k,
            mg_hco3: 48.6721 + 0.03252849 * k - 2614.335 * r - 18.00263 * l + 563713.9 * r * r - protonated,
            mg_so4: van_t_hoff(2.37, 4.550),
            mg_oh: van_t_hoff(-11.44, 15.952),
            hydrogen: 0.0,
        };
        Self {
            log,
            henry: 10.5624 - 2.3547e-2 * k - 3972.8 * r + 5.8746e5 * r * r + 1.9194e-5 * k * k,
            calcite: -171.9065 - 0.077993 * k + 2839.319 * r + 71.595 * l,
            debye_a: 0.490834 + c * (6.59751802e-4 + c * (4.32740684e-6 - c * 5.03923e-10)),
            debye_b: 0.324623 + c * (1.51388956e-4 + c * (7.18398e-8 + c * 2.45836e-9)),
        }
    }
}

/// Which of the parts that many waters lack are there.
#[derive(Clone, Copy, Debug)]
pub(crate) struct There {
    pub calcium: bool,
    pub magnesium: bool,
    pub sulfate: bool,
    pub cyanurate: bool,
    pub boron: bool,
    pub chlorine: bool,
}

impl There {
    /// The logarithms with those of reactions that lack a part brought down to that of nothing.
    fn of(&self, log: &Reactions) -> Reactions {
        let only = |there: bool, log_k: f64| if there { log_k } else { f64::NEG_INFINITY };
        Reactions {
            boric: only(self.boron, log.boric),
            cyanuric: only(self.cyanurate, log.cyanuric),
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
    /// `-A z² (√I/(1 + √I) - 0.3 I)` (Davies) for borate, cyanurate, hypochlorite, NaCO3- and CaOH+; `0.1 I`
    /// for what has no charge. HCO3-, CO3-- and NaSO4- share one size, so one evaluation serves all three.
    fn at(k: &Constants, strength: f64) -> Self {
        let root = libm::sqrt(strength);
        let sized =
            |z2: f64, a: f64, b: f64| -k.debye_a * z2 * root / (1.0 + k.debye_b * a * root) + b * strength;
        let davies = -k.debye_a * (root / (1.0 + root) - 0.3 * strength);
        let neutral = 0.1 * strength;
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
    strength: f64,
    pub log: Activities,
    pub k: Reactions,
}

/// A strength that has moved by less, mol/kg, moves no constant by more than two millionths: they stay as they
/// are.
const HARDLY: f64 = 3e-8;

impl Apparent {
    /// `K γ(left)/γ(right)` for what is `there`, and nothing for the rest.
    pub(crate) fn at(constants: &Constants, there: &There, strength: f64, water_activity: f64) -> Self {
        let log = Activities::at(constants, strength);
        let mut k = there.of(&constants.log).with(&log.shift, |log_k, shift| pow10(log_k + shift));
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
        let k = self.k.with(&step, |k, step| k * pow10_of_step(step));
        Self { strength, log, k }
    }
}

#[cfg(test)]
mod tests;
