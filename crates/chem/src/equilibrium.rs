//! What are the equilibrium constants at this temperature, and what do they look like through this
//! ionic strength?
//!
//! [`Constants`] are thermodynamic: logarithms to base ten at zero ionic strength and one
//! atmosphere. `Apparent` are what the same reactions show in concentrations (mol per kg of
//! water), with the hydrogen ion kept as an *activity*, since that is what a pH meter reports.

use crate::units::Temperature;
use core::f64::consts::LN_10;

pub(crate) fn pow10(x: f64) -> f64 {
    libm::exp(LN_10 * x)
}

/// Thermodynamic constants at one temperature, log10, each named for the reaction in its comment.
#[derive(Clone, Copy, Debug)]
pub struct Constants {
    pub(crate) water: f64,
    pub(crate) carbonic: f64,
    pub(crate) bicarbonate: f64,
    pub(crate) henry: f64,
    pub(crate) calcite: f64,
    pub(crate) boric: f64,
    pub(crate) cyanuric: f64,
    pub(crate) hypochlorous: f64,
    pub(crate) ca_co3: f64,
    pub(crate) ca_hco3: f64,
    pub(crate) ca_so4: f64,
    pub(crate) na_co3: f64,
    pub(crate) na_hco3: f64,
    pub(crate) na_so4: f64,
    pub(crate) mg_co3: f64,
    pub(crate) mg_hco3: f64,
    pub(crate) mg_so4: f64,
    pub(crate) mg_oh: f64,
    pub(crate) ca_oh: f64,
    debye_a: f64,
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
    /// acid, which is W18 (its enthalpy is 33.4 ± 1.7 kJ/mol), and hypochlorous acid, M66. Debye and Hückel's A and B are our
    /// fits to PA13's own, within 5e-7 and 3e-6 from 0 to 45 °C. The coefficients are differences of
    /// large numbers: do not shorten them.
    pub fn at(t: Temperature) -> Self {
        let c = t.celsius();
        let k = c + 273.15;
        let (l, r) = (libm::log10(k), 1.0 / k);
        let van_t_hoff =
            |log_k: f64, kcal: f64| log_k - kcal * 4184.0 / (LN_10 * 8.314463) * (r - 1.0 / 298.15);
        // CO3-- + H+ = HCO3-, and CO3-- + 2 H+ = CO2 + H2O
        let protonated = 107.8871 + 0.03252849 * k - 5151.79 * r - 38.92561 * l + 563713.9 * r * r;
        let twice = 464.1965 + 0.09344813 * k - 26986.16 * r - 165.75951 * l + 2248628.9 * r * r;
        Self {
            // H2O = H+ + OH-
            water: 293.29227 + 0.1360833 * k - 10576.913 * r - 123.73158 * l - 6.996455e-5 * k * k,
            // CO2 + H2O = HCO3- + H+
            carbonic: protonated - twice,
            // HCO3- = CO3-- + H+
            bicarbonate: -protonated,
            // CO2(gas) = CO2, mol per kg and atm
            henry: 10.5624 - 2.3547e-2 * k - 3972.8 * r + 5.8746e5 * r * r + 1.9194e-5 * k * k,
            // CaCO3(calcite) = Ca++ + CO3--
            calcite: -171.9065 - 0.077993 * k + 2839.319 * r + 71.595 * l,
            // H3BO3 + H2O = B(OH)4- + H+
            boric: van_t_hoff(-9.24, 3.224),
            // H3Cy = H2Cy- + H+
            cyanuric: -1743.0 * r - 1.12,
            // HOCl = H+ + OCl-
            hypochlorous: 10.0686 - 0.0253 * k - 3000.0 * r,
            // Ca++ + CO3-- = CaCO3°
            ca_co3: -1228.732 - 0.299440 * k + 35512.75 * r + 485.818 * l,
            // Ca++ + HCO3- = CaHCO3+
            ca_hco3: 1317.0071 + 0.34546894 * k - 39916.84 * r - 517.70761 * l + 563713.9 * r * r
                - protonated,
            // Ca++ + SO4-- = CaSO4°
            ca_so4: van_t_hoff(2.25, 1.325),
            // Na+ + CO3-- = NaCO3-
            na_co3: van_t_hoff(1.27, 8.91),
            // Na+ + HCO3- = NaHCO3°
            na_hco3: van_t_hoff(-0.25, -1.0),
            // Na+ + SO4-- = NaSO4-
            na_so4: van_t_hoff(0.70, 1.120),
            // Mg++ + CO3-- = MgCO3°
            mg_co3: 0.9910 + 0.00667 * k,
            // Mg++ + HCO3- = MgHCO3+
            mg_hco3: 48.6721 + 0.03252849 * k - 2614.335 * r - 18.00263 * l + 563713.9 * r * r - protonated,
            // Mg++ + SO4-- = MgSO4°
            mg_so4: van_t_hoff(2.37, 4.550),
            // Mg++ + H2O = MgOH+ + H+
            mg_oh: van_t_hoff(-11.44, 15.952),
            // Ca++ + H2O = CaOH+ + H+, for which the database has no heat
            ca_oh: -12.78,
            debye_a: 0.490834 + c * (6.59751802e-4 + c * (4.32740684e-6 - c * 5.03923e-10)),
            debye_b: 0.324623 + c * (1.51388956e-4 + c * (7.18398e-8 + c * 2.45836e-9)),
        }
    }
}

impl Constants {
    /// Debye and Hückel's A.
    pub(crate) const fn debye_a(&self) -> f64 {
        self.debye_a
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

/// The same reactions in concentrations, at one ionic strength.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Apparent {
    pub carbonic: f64,
    pub bicarbonate: f64,
    pub water: f64,
    pub boric: f64,
    pub cyanuric: f64,
    pub hypochlorous: f64,
    pub ca_co3: f64,
    pub ca_hco3: f64,
    pub ca_so4: f64,
    pub na_co3: f64,
    pub na_hco3: f64,
    pub na_so4: f64,
    pub mg_co3: f64,
    pub mg_hco3: f64,
    pub mg_so4: f64,
    pub mg_oh: f64,
    pub ca_oh: f64,
    /// Concentration of hydrogen ions over their activity.
    pub per_hydrogen_activity: f64,
    /// log10 activity coefficients that the results need.
    pub log_ca: f64,
    pub log_co3: f64,
    pub log_neutral: f64,
}

impl Apparent {
    /// Activity coefficients and the constants through them.
    ///
    /// `log γ = -A z² √I/(1 + B a √I) + b I` (TJ74, with a and b of PA13) where an ion size is known;
    /// `-A z² (√I/(1 + √I) - 0.3 I)` (Davies) for borate, cyanurate, hypochlorite and NaCO3-; `0.1 I` for what
    /// has no charge. HCO3-, CO3-- and NaSO4- share one size, so one evaluation serves all three.
    /// A constant of which no water's part is `there` is left at nothing: its power of ten is what costs.
    pub(crate) fn at(k: &Constants, there: &There, strength: f64, water_activity: f64) -> Self {
        let of = |there: bool, log_k: f64| if there { pow10(log_k) } else { 0.0 };
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
        Self {
            carbonic: water_activity * pow10(k.carbonic + neutral - hco3),
            bicarbonate: pow10(k.bicarbonate + hco3 - co3),
            water: water_activity * pow10(k.water - oh),
            boric: of(there.boron, k.boric + neutral - davies),
            cyanuric: of(there.cyanurate, k.cyanuric + neutral - davies),
            hypochlorous: of(there.chlorine, k.hypochlorous + neutral - davies),
            ca_co3: of(there.calcium, k.ca_co3 + ca + co3 - neutral),
            ca_hco3: of(there.calcium, k.ca_hco3 + ca + hco3 - ca_hco3),
            ca_so4: of(there.calcium && there.sulfate, k.ca_so4 + ca + so4 - neutral),
            na_co3: pow10(k.na_co3 + na + co3 - davies),
            na_hco3: pow10(k.na_hco3 + na + hco3 - neutral),
            na_so4: of(there.sulfate, k.na_so4 + na + so4 - na_so4),
            mg_co3: of(there.magnesium, k.mg_co3 + mg + co3 - neutral),
            mg_hco3: of(there.magnesium, k.mg_hco3 + mg + hco3 - mg_hco3),
            mg_so4: of(there.magnesium && there.sulfate, k.mg_so4 + mg + so4 - neutral),
            mg_oh: of(there.magnesium, k.mg_oh + mg - mg_oh),
            ca_oh: of(there.calcium, k.ca_oh + ca - davies),
            per_hydrogen_activity: pow10(-h),
            log_ca: ca,
            log_co3: co3,
            log_neutral: neutral,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// PyCO2SYS 1.8.3.4 (Millero 1979, fresh water): pK1, pK2, pKw at three temperatures. The two
    /// sources differ by up to 0.0022.
    #[test]
    fn carbonic_acid_and_water_agree_with_millero() {
        for (t, carbonic, bicarbonate, water) in [
            (5.0, 6.5171, 10.5555, 14.7317),
            (25.0, 6.3515, 10.3297, 13.9946),
            (40.0, 6.2965, 10.2206, 13.5327),
        ] {
            let k = Constants::at(Temperature::from_celsius(t).unwrap());
            for (ours, theirs) in [(k.carbonic, carbonic), (k.bicarbonate, bicarbonate), (k.water, water)] {
                assert!((-ours - theirs).abs() < 0.0023, "{t} °C: {ours} beside {theirs}");
            }
        }
    }

    /// Standard Methods 2330 (from memory): pK2 and pKs as printed to two decimals.
    #[test]
    fn carbonate_and_calcite_agree_with_standard_methods() {
        for (t, bicarbonate, calcite) in
            [(5.0, 10.56, 8.39), (20.0, 10.38, 8.45), (25.0, 10.33, 8.48), (30.0, 10.29, 8.51)]
        {
            let k = Constants::at(Temperature::from_celsius(t).unwrap());
            assert!((-k.bicarbonate - bicarbonate).abs() < 0.007, "{t} °C {}", k.bicarbonate);
            assert!((-k.calcite - calcite).abs() < 0.005, "{t} °C {}", k.calcite);
        }
    }
}
