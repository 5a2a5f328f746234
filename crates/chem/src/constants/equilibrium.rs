//! What are the equilibrium constants at this temperature?
//!
//! They are thermodynamic: logarithms to base ten at zero ionic strength and one atmosphere.

use crate::bounds::{self, OutOfRange};
use crate::quantity::measured::Temperature;
use core::f64::consts::LN_10;

macro_rules! reactions {
    ($($name:ident: $reaction:literal;)*) => {
        /// A number for each reaction.
        #[derive(Clone, Copy, Debug)]
        pub(crate) struct Reactions {
            $(#[doc = $reaction] pub $name: f64,)*
        }

        impl Reactions {
            /// Reaction by reaction, `f` of this number and the other's.
            pub fn with(&self, other: &Self, f: impl Fn(f64, f64) -> f64) -> Self {
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
    pub(crate) debye_b: f64,
}

impl Constants {
    /// The constants at `t`.
    ///
    /// Analytic expressions in T = t + 273.15 K, and van 't Hoff's
    /// `log K(25 °C) - ΔH/(ln 10 · R) · (1/T - 1/298.15)` where only an enthalpy is known.
    /// Domain: 0 to 42 °C, [`bounds::MODEL_TEMPERATURE`] (cyanuric acid was measured from 5 to 35). Errors: beyond.
    ///
    /// Sources: carbonic acid, calcite, CaCO3° and CaHCO3+ PB82; the rest PA13, but for cyanuric
    /// acid, which is W18 (its enthalpy is 33.4 ± 1.7 kJ/mol), and hypochlorous acid, M66. Debye and
    /// Hückel's A and B are our fits to PA13's own, within 5e-7 and 3e-6 from 0 to 45 °C. The
    /// coefficients are differences of large numbers: do not shorten them.
    pub fn at(t: Temperature) -> Result<Self, OutOfRange> {
        let c = bounds::MODEL_TEMPERATURE.check(t.celsius())?;
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
        Ok(Self {
            log,
            henry: 10.5624 - 2.3547e-2 * k - 3972.8 * r + 5.8746e5 * r * r + 1.9194e-5 * k * k,
            calcite: -171.9065 - 0.077993 * k + 2839.319 * r + 71.595 * l,
            debye_a: 0.490834 + c * (6.59751802e-4 + c * (4.32740684e-6 - c * 5.03923e-10)),
            debye_b: 0.324623 + c * (1.51388956e-4 + c * (7.18398e-8 + c * 2.45836e-9)),
        })
    }
}

#[cfg(test)]
mod tests;
