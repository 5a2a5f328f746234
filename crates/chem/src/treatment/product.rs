//! How strong is a liquid, by what its label says?
//!
//! Strengths are types, so that a trade percentage can't be passed for a mass percentage.

use crate::bounds::{self, OutOfRange};
use crate::constants::atomic_weights;
use crate::quantity::define::quantities;
use crate::treatment::chemical::Chemical;

quantities! {
    in "treatment::";
    /// Hydrochloric acid by its label.
    AcidStrength, ACID_STRENGTH, from_mol_per_l, mol_per_l, "mol per litre";
    /// Liquid chlorine by its label.
    BleachStrength, BLEACH_STRENGTH, from_g_per_l, g_per_l, "g of available chlorine per litre";
}

impl AcidStrength {
    /// From percent HCl by mass, within [`bounds::ACID_PERCENT`].
    ///
    /// Density `0.9982 + 0.49611 p - 0.09887 p² + 0.87918 p³ - 1.55057 p⁴` (p parts of 1, 20 °C, g/mL): our
    /// fit to the table of PERRY (from memory), within 0.0002 from 1 to 38 %.
    ///
    /// ```
    /// use saltwright_chem::treatment::AcidStrength;
    /// let acid = AcidStrength::from_mass_percent(31.45).unwrap();
    /// assert!((acid.mol_per_l() - 9.98).abs() < 0.01);
    /// ```
    pub fn from_mass_percent(percent: f64) -> Result<Self, OutOfRange> {
        let p = bounds::ACID_PERCENT.check(percent)? / 100.0;
        let density = 0.9982 + p * (0.49611 + p * (-0.09887 + p * (0.87918 - p * 1.55057)));
        Ok(Self::new_unchecked(1000.0 * density * p / atomic_weights::HYDROGEN_CHLORIDE))
    }

    /// From degrees Baumé (heavier than water, 60 °F), within [`bounds::ACID_BAUME`].
    ///
    /// Specific gravity `145/(145 - °Bé)`; mass percent by a parabola through the manufacturers' table
    /// in PERRY (from memory): 18, 20, 22 °Bé are 27.92, 31.45, 35.21 %.
    ///
    /// ```
    /// use saltwright_chem::treatment::AcidStrength;
    /// let acid = AcidStrength::from_baume(20.0).unwrap();
    /// assert!((acid.mol_per_l() - 10.0).abs() < 0.02);
    /// ```
    pub fn from_baume(degrees: f64) -> Result<Self, OutOfRange> {
        let d = bounds::ACID_BAUME.check(degrees)? - 20.0;
        let percent = 31.45 + d * (1.8225 + d * 0.02875);
        let gravity = 145.0 / (125.0 - d);
        // Water at 60 °F weighs 0.999 kg a litre.
        Ok(Self::new_unchecked(10.0 * percent * gravity * 0.999 / atomic_weights::HYDROGEN_CHLORIDE))
    }
}

impl BleachStrength {
    /// From trade percent: g of available chlorine in 100 mL. Within [`bounds::BLEACH_PERCENT`].
    ///
    /// ```
    /// use saltwright_chem::treatment::BleachStrength;
    /// assert_eq!(BleachStrength::from_trade_percent(12.5).unwrap().g_per_l(), 125.0);
    /// ```
    pub fn from_trade_percent(percent: f64) -> Result<Self, OutOfRange> {
        bounds::BLEACH_PERCENT.check(percent).map(|p| Self::new_unchecked(10.0 * p))
    }

    /// From percent available chlorine by mass, and the specific gravity on the label (1 to 1.3).
    ///
    /// ```
    /// use saltwright_chem::treatment::BleachStrength;
    /// let bleach = BleachStrength::from_mass_percent(10.0, 1.16).unwrap();
    /// assert!((bleach.g_per_l() - 116.0).abs() < 1e-9);
    /// ```
    pub fn from_mass_percent(percent: f64, gravity: f64) -> Result<Self, OutOfRange> {
        let gravity = bounds::BLEACH_GRAVITY.check(gravity)?;
        bounds::BLEACH_PERCENT.check(percent).map(|p| Self::new_unchecked(10.0 * p * gravity))
    }

    /// From percent sodium hypochlorite by mass, as many labels say it.
    ///
    /// A mole of it, 74.442 g, is worth 70.906 g of chlorine. Specific gravity by `1 + 0.014 trade percent`: our
    /// line through the trade's 1.09 at 6 % and 1.20 at 12.5 % (from memory), good to about 2 %.
    ///
    /// ```
    /// use saltwright_chem::treatment::BleachStrength;
    /// let bleach = BleachStrength::from_hypochlorite_percent(10.0).unwrap();
    /// assert!((bleach.g_per_l() / 109.9 - 1.0).abs() < 0.001);
    /// ```
    pub fn from_hypochlorite_percent(percent: f64) -> Result<Self, OutOfRange> {
        let p = bounds::BLEACH_PERCENT.check(percent)?;
        let available = p * atomic_weights::CHLORINE / Chemical::SodiumHypochlorite.molar_mass();
        Ok(Self::new_unchecked(10.0 * available / (1.0 - 0.014 * available)))
    }
}
