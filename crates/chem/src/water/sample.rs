//! What does a test kit's sample hold? Amounts per litre, with a pH.

use crate::bounds::{self, Bounds};
use crate::constants::atomic_weights;
use crate::density;
use crate::quantity::{derived::*, measured::*};
use crate::water::conserved::Water;
use crate::water::solve::{self, Fault, Ions, Known, State};

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
    pub cyanurate: Cyanurate,
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
    /// A sample without boron, magnesium and sulfate.
    pub fn plain(
        temperature: Temperature,
        ph: Ph,
        alkalinity: Alkalinity,
        hardness: Hardness,
        cyanurate: Cyanurate,
        salt: Salinity,
    ) -> Self {
        Self {
            temperature,
            ph,
            alkalinity,
            hardness,
            cyanurate,
            salt,
            boron: Boron::found(0.0),
            magnesium: Magnesium::found(0.0),
            sulfate: Sulfate::found(0.0),
        }
    }

    /// pH, carbonate and saturation index at the *measured* pH.
    ///
    /// Domain: the `MODEL_*` rows of [`bounds`]. Errors: [`Fault::Outside`] beyond them,
    /// [`Fault::NoCarbonate`] when cyanurate and borate alone already hold the stated alkalinity.
    ///
    /// ```
    /// use saltwright_chem::*;
    /// # fn main() -> Result<(), OutOfRange> {
    /// let sample = Sample::plain(
    ///     Temperature::from_celsius(26.0)?,
    ///     Ph::from_units(7.5)?,
    ///     Alkalinity::from_mg_per_l(80.0)?,
    ///     Hardness::from_mg_per_l(250.0)?,
    ///     Cyanurate::from_mg_per_l(30.0)?,
    ///     Salinity::NONE,
    /// );
    /// let index = sample.state().unwrap().index.unwrap();
    /// assert!((index.log10() - -0.013).abs() < 0.001); // PHREEQC 3.7.3, phreeqc.dat and W18
    /// # Ok(())
    /// # }
    /// ```
    pub fn state(&self) -> Result<State, Fault> {
        self.within_model()?;
        let content = self.content();
        solve::solve(&self.ions(content), self.temperature, content, Known::Ph(self.ph.units()))
    }

    /// What is conserved in the sample: its inorganic carbon is found from the measured pH.
    ///
    /// Ions no kit shows are taken so that charge balances: calcium and magnesium came with
    /// chloride; alkalinity and sulfate with sodium; salt is sodium chloride. Errors as
    /// [`Sample::state`].
    pub fn water(&self) -> Result<Water, Fault> {
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
            cyanurate: molal(self.cyanurate.mg_per_l(), atomic_weights::CYANURIC_ACID),
            boron: molal(self.boron.mg_per_l(), atomic_weights::BORON),
            chlorine: 0.0,
        }
    }

    fn within_model(&self) -> Result<(), Fault> {
        let rows: [(&'static Bounds, f64); 9] = [
            (&bounds::MODEL_TEMPERATURE, self.temperature.celsius()),
            (&bounds::MODEL_PH, self.ph.units()),
            (&bounds::MODEL_ALKALINITY, self.alkalinity.mg_per_l()),
            (&bounds::MODEL_HARDNESS, self.hardness.mg_per_l()),
            (&bounds::MODEL_CYANURATE, self.cyanurate.mg_per_l()),
            (&bounds::MODEL_SALINITY, self.salt.mg_per_l()),
            (&bounds::BORON, self.boron.mg_per_l()),
            (&bounds::MODEL_MAGNESIUM, self.magnesium.mg_per_l()),
            (&bounds::MODEL_SULFATE, self.sulfate.mg_per_l()),
        ];
        rows.iter().try_for_each(|(row, x)| row.check(*x).map(drop)).map_err(Fault::Outside)
    }
}
