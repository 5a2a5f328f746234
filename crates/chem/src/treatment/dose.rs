//! What does a chemical do to the water, mole for mole, and how much of the product is that?

use crate::bounds::OutOfRange;
use crate::constants::atomic_weights;
use crate::quantity::{define::quantities, measured::*};
use crate::treatment::chemical::{Change, Chemical};
use crate::treatment::product::{AcidStrength, BleachStrength};
use crate::water::conserved::Water;
use crate::water::solve::Ions;

quantities! {
    in "treatment::";
    /// Chemical per litre of water.
    Dose, DOSE, from_mmol_per_l, mmol_per_l, "mmol per litre";
}

/// None.
impl Default for Dose {
    fn default() -> Self {
        Self(0.0)
    }
}

impl Dose {
    /// Mass of a powder of this purity for a volume of water.
    ///
    /// `m = V · dose · M / purity`. Source: mass balance.
    ///
    /// ```
    /// use saltwright_chem::treatment::{Chemical, Dose};
    /// use saltwright_chem::{Purity, Volume};
    /// // 0.1998 mmol/L of bicarbonate is TA + 10: 168 g in 10 m³ (arithmetic; the trade's 1.4 lb per 10,000 gal).
    /// let dose = Dose::from_mmol_per_l(0.19983).unwrap();
    /// let volume = Volume::from_cubic_metres(10.0).unwrap();
    /// let mass = dose.of_powder(Chemical::SodiumBicarbonate, volume, Purity::WHOLE);
    /// assert_eq!((mass.kilograms() * 1000.0).round(), 168.0);
    /// ```
    #[must_use]
    pub fn of_powder(self, chemical: Chemical, volume: Volume, purity: Purity) -> Mass {
        Mass::new_unchecked(
            volume.cubic_metres() * self.mmol_per_l() * chemical.molar_mass() / 1000.0 / purity.ratio(),
        )
    }

    /// Volume of an acid of this strength for a volume of water. Errors: more than any meter shows.
    ///
    /// ```
    /// use saltwright_chem::Volume;
    /// use saltwright_chem::treatment::{AcidStrength, Dose};
    /// let (pool, acid) = (Volume::from_cubic_metres(50.0).unwrap(), AcidStrength::from_mol_per_l(10.0).unwrap());
    /// let poured = Dose::from_mmol_per_l(0.2).unwrap().of_acid(pool, acid).unwrap();
    /// assert!((poured.cubic_metres() - 0.001).abs() < 1e-12); // ten moles
    /// ```
    pub fn of_acid(self, volume: Volume, strength: AcidStrength) -> Result<Volume, OutOfRange> {
        Volume::from_cubic_metres(volume.cubic_metres() * self.mmol_per_l() / 1000.0 / strength.mol_per_l())
    }

    /// Volume of liquid chlorine of this strength for a volume of water. Errors: more than any meter shows.
    pub fn of_bleach(self, volume: Volume, strength: BleachStrength) -> Result<Volume, OutOfRange> {
        Volume::from_cubic_metres(
            volume.cubic_metres() * self.mmol_per_l() / 1000.0 * atomic_weights::CHLORINE
                / strength.g_per_l(),
        )
    }

    /// The dose of a chlorine source that brings so much free chlorine.
    ///
    /// ```
    /// use saltwright_chem::treatment::{BleachStrength, Chemical, Dose};
    /// use saltwright_chem::{Chlorine, Volume};
    /// // Trade 10 %: 100 mL in 10 m³ for 1 mg/L, by the meaning of the word.
    /// let dose = Dose::of_chlorine(Chemical::LiquidChlorine, Chlorine::from_mg_per_l(1.0).unwrap()).unwrap();
    /// let pool = Volume::from_cubic_metres(10.0).unwrap();
    /// let litres = dose.of_bleach(pool, BleachStrength::from_trade_percent(10.0).unwrap()).unwrap().cubic_metres() * 1000.0;
    /// assert!((litres - 0.1).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn of_chlorine(chemical: Chemical, wanted: Chlorine) -> Option<Self> {
        let available = chemical.available_chlorine();
        (available > 0.0)
            .then(|| Self::new_unchecked(wanted.mg_per_l() / atomic_weights::CHLORINE / available))
    }
}

impl Ions {
    fn with(self, change: Change, mol_per_kg: f64) -> Self {
        let add = |total: f64, each: f64| total + each * mol_per_kg;
        Self {
            alkalinity: add(self.alkalinity, change.alkalinity),
            calcium: add(self.calcium, change.calcium),
            magnesium: self.magnesium,
            sodium: add(self.sodium, change.sodium),
            chloride: add(self.chloride, change.chloride),
            sulfate: add(self.sulfate, change.sulfate),
            cyanuric_acid: add(self.cyanuric_acid, change.cyanuric_acid),
            boron: add(self.boron, change.boron),
            chlorine: add(self.chlorine, change.chlorine),
        }
    }
}

impl Water {
    /// The water with a chemical dissolved in it. No gas is exchanged and nothing settles out.
    ///
    /// ```
    /// use saltwright_chem::treatment::{Chemical, Dose};
    /// use saltwright_chem::*;
    /// # fn main() -> Result<(), OutOfRange> {
    /// let water = Sample {
    ///     temperature: Temperature::from_celsius(26.0)?,
    ///     ph: Ph::from_units(7.8)?,
    ///     alkalinity: Alkalinity::from_mg_per_l(120.0)?,
    ///     hardness: Hardness::from_mg_per_l(300.0)?,
    ///     cyanuric_acid: CyanuricAcid::from_mg_per_l(40.0)?,
    ///     salt: Salinity::from_mg_per_l(3_200.0)?,
    ///     boron: Boron::NONE,
    ///     magnesium: Magnesium::NONE,
    ///     sulfate: Sulfate::NONE,
    /// }
    /// .water()
    /// .unwrap();
    /// let acid = water.treated(Chemical::HydrochloricAcid, Dose::from_mmol_per_l(0.2)?);
    /// let then = acid.state().unwrap();
    /// assert!((then.ph.units() - 7.2673).abs() < 0.003);
    /// assert!((acid.alkalinity()?.mg_per_l() - 109.99).abs() < 0.01);
    /// # Ok(())
    /// # }
    /// ```
    #[must_use]
    pub fn treated(self, chemical: Chemical, dose: Dose) -> Self {
        self.treated_by(chemical, dose.mmol_per_l())
    }

    /// With so many mmol a litre, which may lie outside every row while a solver looks for what does not.
    pub(crate) fn treated_by(self, chemical: Chemical, mmol_per_l: f64) -> Self {
        let molal = mmol_per_l / 1000.0 / self.content.kg_per_l();
        let change = chemical.change();
        Self { ions: self.ions.with(change, molal), carbon: self.carbon + change.carbon * molal, ..self }
    }

    /// The water with carbon dioxide driven out by aeration; alkalinity stays, so pH rises.
    #[must_use]
    pub fn stripped(self, dose: Dose) -> Self {
        Self { carbon: self.carbon - dose.mmol_per_l() / 1000.0 / self.content.kg_per_l(), ..self }
    }

    /// The water when all its free chlorine has done its work and is chloride again.
    ///
    /// A mole of it takes an equivalent of alkalinity: `HOCl = H+ + Cl- + ½ O2`, or reduction by what
    /// it oxidises. So hypochlorite leaves alkalinity where it was, over its whole life.
    #[must_use]
    pub fn spent(self) -> Self {
        let used = Change { alkalinity: -1.0, chloride: 1.0, chlorine: -1.0, ..Change::default() };
        Self { ions: self.ions.with(used, self.ions.chlorine), ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Sample;

    /// Arithmetic on the formulas: of a mg/L of free chlorine, once it is spent, as mg/L of sodium chloride,
    /// cyanuric acid, hardness and alkalinity.
    #[test]
    fn a_chlorine_source_leaves_behind_what_it_brought() {
        let water = {
            let (t, ph) = (Temperature::from_celsius(25.0).unwrap(), Ph::from_units(7.5).unwrap());
            let (ta, ch) =
                (Alkalinity::from_mg_per_l(80.0).unwrap(), Hardness::from_mg_per_l(200.0).unwrap());
            Sample {
                temperature: t,
                ph,
                alkalinity: ta,
                hardness: ch,
                cyanuric_acid: CyanuricAcid::new_unchecked(30.0),
                salt: Salinity::NONE,
                boron: Boron::NONE,
                magnesium: Magnesium::NONE,
                sulfate: Sulfate::NONE,
            }
            .water()
            .unwrap()
        };
        for (chemical, salt, cyanuric_acid, hardness, alkalinity) in [
            (Chemical::LiquidChlorine, 1.648, 0.0, 0.0, 0.0),
            (Chemical::SodiumHypochlorite, 0.824, 0.0, 0.0, 0.0),
            (Chemical::CalciumHypochlorite, 0.824, 0.0, 0.706, 0.0),
            (Chemical::Dichlor, 0.824, 0.910, 0.0, -0.353),
            (Chemical::DichlorDihydrate, 0.824, 0.910, 0.0, -0.353),
            (Chemical::Trichlor, 0.824, 0.607, 0.0, -0.706),
            (Chemical::Chlorine, 1.648, 0.0, 0.0, -1.412),
        ] {
            let dose = Dose::of_chlorine(chemical, Chlorine::new_unchecked(1.0)).unwrap();
            let there = water.treated(chemical, dose).spent();
            let chloride = (there.ions.chloride - water.ions.chloride) * water.content.kg_per_l() * 1000.0;
            for (found, printed) in [
                (chloride * atomic_weights::SODIUM_CHLORIDE, salt),
                (
                    there.cyanuric_acid().unwrap().mg_per_l() - water.cyanuric_acid().unwrap().mg_per_l(),
                    cyanuric_acid,
                ),
                (there.hardness().unwrap().mg_per_l() - water.hardness().unwrap().mg_per_l(), hardness),
                (there.alkalinity().unwrap().mg_per_l() - water.alkalinity().unwrap().mg_per_l(), alkalinity),
            ] {
                assert!((found - printed).abs() <= 0.0005, "{chemical:?}: {found} beside {printed}");
            }
            assert!(there.ions.chlorine.abs() < 1e-15, "{chemical:?}");
        }
    }
}
