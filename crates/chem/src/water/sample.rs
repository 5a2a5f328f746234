//! What does a test kit's sample hold? Amounts per litre, with a pH.

use crate::bounds::{self, Bounds};
use crate::constants::atomic_weights;
use crate::density;
use crate::error::WaterError;
use crate::quantity::{derived::*, measured::*};
use crate::water::conserved::Water;
use crate::water::solve::{self, Constraint, Ions, State};

/// What was tested. Ions that no kit shows are filled in by [`Sample::water`]'s convention.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sample {
    /// Temperature.
    pub temperature: Temperature,
    /// pH, as measured.
    pub ph: Ph,
    /// Total alkalinity.
    pub alkalinity: Alkalinity,
    /// Calcium hardness.
    pub hardness: Hardness,
    /// Cyanuric acid.
    pub cyanuric_acid: CyanuricAcid,
    /// Sodium chloride itself: not a salt *reading*, which counts other ions too
    /// (see [`crate::salt::sodium_chloride_behind`]).
    pub salt: Salinity,
    /// Boron; most pools have none.
    pub boron: Boron,
    /// Magnesium; seldom tested.
    pub magnesium: Magnesium,
    /// Sulfate; seldom tested.
    pub sulfate: Sulfate,
}

impl Sample {
    /// pH, carbonate and saturation index at the *measured* pH.
    ///
    /// Alkalinity is counted from the zero level CO2, H3BO3, H3Cy, HOCl, H2O: `TA = [HCO3-] + 2[CO3--] + [B(OH)4-] +
    /// [H2Cy-] + [HClCy-] + [Cl2Cy-] + 2[ClCy--] + [OCl-] + [OH-] + [MgOH+] + [CaOH+] - [H+]`, pairs counted with their
    /// carbonate. The index is `log10(a(Ca++) a(CO3--)) - log Ksp(calcite)`.
    ///
    /// Sources: PB82, PA13, W18 (measured from 5 to 35 °C), OB74. Against PHREEQC 3.7.3 with the same species, on
    /// waters drawn from the whole domain, the index differs by less than 0.0005 up to 8 g/L of sodium chloride, by
    /// less than 0.004 beyond and with much magnesium or sulfate; the pH after liquid chlorine by less than 0.001. That
    /// is agreement with one database; for nature see [`State::index_doubt`]. Cyanuric acid's second step is left out:
    /// up to pH 8.6 that moves the index by 0.0013; after liquid chlorine, where 100 mg/L of it end at pH 8.5, the pH by
    /// 0.007, and at pH 9.5 with 250 mg/L by 0.09.
    ///
    /// Domain: the `MODEL_*` rows of [`bounds`]. Errors: [`WaterError::Outside`] beyond them,
    /// [`WaterError::NoCarbonate`] when cyanurate and borate alone already hold the stated alkalinity.
    ///
    /// ```
    /// use saltwright_chem::*;
    /// # fn main() -> Result<(), OutOfRange> {
    /// let sample = Sample {
    ///     temperature: Temperature::from_celsius(26.0)?,
    ///     ph: Ph::from_units(7.5)?,
    ///     alkalinity: Alkalinity::from_mg_per_l(80.0)?,
    ///     hardness: Hardness::from_mg_per_l(250.0)?,
    ///     cyanuric_acid: CyanuricAcid::from_mg_per_l(30.0)?,
    ///     salt: Salinity::NONE,
    ///     boron: Boron::NONE,
    ///     magnesium: Magnesium::NONE,
    ///     sulfate: Sulfate::NONE,
    /// };
    /// let index = sample.state().unwrap().index.unwrap();
    /// assert!((index.log10() - -0.013).abs() < 0.001); // PHREEQC 3.7.3, phreeqc.dat and W18
    /// # Ok(())
    /// # }
    /// ```
    pub fn state(&self) -> Result<State, WaterError> {
        self.within_model()?;
        let content = self.content();
        solve::solve(&self.ions(content), self.temperature, content, Constraint::Ph(self.ph.units()))
    }

    /// What is conserved in the sample: its inorganic carbon is found from the measured pH.
    ///
    /// Ions no kit shows are taken so that charge balances: calcium and magnesium came with
    /// chloride; alkalinity and sulfate with sodium; salt is sodium chloride. Errors as
    /// [`Sample::state`].
    pub fn water(&self) -> Result<Water, WaterError> {
        let state = self.state()?;
        let content = self.content();
        Ok(Water {
            temperature: self.temperature,
            content,
            ions: self.ions(content),
            carbon: state.carbon.molal(),
        })
    }

    fn content(&self) -> WaterContent {
        density::water_content_within(self.temperature, self.salt)
    }

    fn ions(&self, content: WaterContent) -> Ions {
        let w = content.kg_per_l();
        // mg/L over g/mol is mmol/L; over the water in a litre, mmol per kg.
        let molal = |mg_per_l: f64, molar_mass: f64| mg_per_l / (molar_mass * w * 1000.0);
        let hard = |mg_per_l| molal(mg_per_l, atomic_weights::CALCIUM_CARBONATE);
        let calcium = hard(self.hardness.mg_per_l());
        let magnesium = hard(self.magnesium.mg_per_l());
        let alkalinity = 2.0 * hard(self.alkalinity.mg_per_l());
        let sulfate = molal(self.sulfate.mg_per_l(), atomic_weights::SULFATE);
        let salt = molal(self.salt.mg_per_l(), atomic_weights::SODIUM_CHLORIDE);
        Ions {
            alkalinity,
            calcium,
            magnesium,
            sodium: salt + alkalinity + 2.0 * sulfate,
            chloride: salt + 2.0 * calcium + 2.0 * magnesium,
            sulfate,
            cyanuric_acid: molal(self.cyanuric_acid.mg_per_l(), atomic_weights::CYANURIC_ACID),
            boron: molal(self.boron.mg_per_l(), atomic_weights::BORON),
            chlorine: 0.0,
        }
    }

    fn within_model(&self) -> Result<(), WaterError> {
        let rows: [(&'static Bounds, f64); 9] = [
            (&bounds::MODEL_TEMPERATURE, self.temperature.celsius()),
            (&bounds::MODEL_PH, self.ph.units()),
            (&bounds::MODEL_ALKALINITY, self.alkalinity.mg_per_l()),
            (&bounds::MODEL_HARDNESS, self.hardness.mg_per_l()),
            (&bounds::MODEL_CYANURIC_ACID, self.cyanuric_acid.mg_per_l()),
            (&bounds::MODEL_SALINITY, self.salt.mg_per_l()),
            (&bounds::BORON, self.boron.mg_per_l()),
            (&bounds::MODEL_MAGNESIUM, self.magnesium.mg_per_l()),
            (&bounds::MODEL_SULFATE, self.sulfate.mg_per_l()),
        ];
        rows.iter().try_for_each(|(row, x)| row.check(*x).map(drop)).map_err(WaterError::Outside)
    }
}
