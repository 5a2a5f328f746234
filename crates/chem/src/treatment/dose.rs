//! What does a chemical do to the water, mole for mole, and how much of the product is that?
//!
//! Hydrates are chemicals of their own, so that one can't be passed for the dry salt.

use crate::bounds::{self, OutOfRange};
use crate::constants::atomic_weights;
use crate::quantity::*;
use crate::treatment::product::{AcidStrength, BleachStrength};
use crate::water::conserved::Water;
use crate::water::solve::Ions;

/// A chemical that goes into pools. Hydrates are chemicals of their own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Chemical {
    /// HCl, hydrochloric (muriatic) acid.
    HydrochloricAcid,
    /// NaHSO4, sodium bisulfate, "dry acid".
    SodiumBisulfate,
    /// NaHCO3, sodium bicarbonate.
    SodiumBicarbonate,
    /// Na2CO3, sodium carbonate, soda ash.
    SodiumCarbonate,
    /// NaOH, sodium hydroxide. For checks and for what bleach holds; no recipe of ours asks for it.
    SodiumHydroxide,
    /// CaCl2, calcium chloride without water.
    CalciumChloride,
    /// CaCl2·2H2O.
    CalciumChlorideDihydrate,
    /// CO2.
    CarbonDioxide,
    /// C3H3N3O3, cyanuric acid.
    CyanuricAcid,
    /// H3BO3.
    BoricAcid,
    /// Na2B4O7 without water.
    Borax,
    /// Na2B4O7·5H2O.
    BoraxPentahydrate,
    /// Na2B4O7·10H2O.
    BoraxDecahydrate,
    /// NaOCl, without the sodium chloride of its manufacture.
    SodiumHypochlorite,
    /// NaOCl with as much NaCl, as liquid chlorine is made and sold.
    LiquidChlorine,
    /// Ca(OCl)2.
    CalciumHypochlorite,
    /// NaCl2(C3N3O3), sodium dichloroisocyanurate without water.
    Dichlor,
    /// NaCl2(C3N3O3)·2H2O.
    DichlorDihydrate,
    /// Cl3(C3N3O3), trichloroisocyanuric acid.
    Trichlor,
    /// Cl2, chlorine gas.
    Chlorine,
    /// NaCl.
    SodiumChloride,
}

/// What one mole adds, in moles (alkalinity in equivalents).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Change {
    alkalinity: f64,
    carbon: f64,
    calcium: f64,
    cyanurate: f64,
    boron: f64,
    sodium: f64,
    chloride: f64,
    sulfate: f64,
    chlorine: f64,
}

impl Chemical {
    /// All of them.
    pub const ALL: &[Self] = &[
        Self::HydrochloricAcid,
        Self::SodiumBisulfate,
        Self::SodiumBicarbonate,
        Self::SodiumCarbonate,
        Self::SodiumHydroxide,
        Self::CalciumChloride,
        Self::CalciumChlorideDihydrate,
        Self::CarbonDioxide,
        Self::CyanuricAcid,
        Self::BoricAcid,
        Self::Borax,
        Self::BoraxPentahydrate,
        Self::BoraxDecahydrate,
        Self::SodiumHypochlorite,
        Self::LiquidChlorine,
        Self::CalciumHypochlorite,
        Self::Dichlor,
        Self::DichlorDihydrate,
        Self::Trichlor,
        Self::Chlorine,
        Self::SodiumChloride,
    ];

    /// g/mol. Source: IUPAC.
    ///
    /// ```
    /// use chem::treatment::Chemical;
    /// assert_eq!(Chemical::SodiumBicarbonate.molar_mass(), 84.0066);
    /// ```
    pub const fn molar_mass(self) -> f64 {
        match self {
            Self::HydrochloricAcid => atomic_weights::HYDROGEN_CHLORIDE,
            Self::SodiumBisulfate => 120.06,
            Self::SodiumBicarbonate => 84.0066,
            Self::SodiumCarbonate => 105.9884,
            Self::SodiumHydroxide => 39.9971,
            Self::CalciumChloride => 110.984,
            Self::CalciumChlorideDihydrate => 147.014,
            Self::CarbonDioxide => 44.0095,
            Self::CyanuricAcid => atomic_weights::CYANURIC_ACID,
            Self::BoricAcid => 61.83,
            Self::Borax => 201.22,
            Self::BoraxPentahydrate => 291.29,
            Self::BoraxDecahydrate => 381.37,
            Self::SodiumHypochlorite => 74.442,
            Self::LiquidChlorine => 74.442 + atomic_weights::SODIUM_CHLORIDE,
            Self::CalciumHypochlorite => 142.98,
            Self::Dichlor => 219.946,
            Self::DichlorDihydrate => 255.98,
            Self::Trichlor => 232.401,
            Self::Chlorine => atomic_weights::CHLORINE,
            Self::SodiumChloride => atomic_weights::SODIUM_CHLORIDE,
        }
    }

    /// Strong ions that a mole brings: alkalinity changes by their charge and by nothing else.
    const fn change(self) -> Change {
        let none = Change {
            alkalinity: 0.0,
            carbon: 0.0,
            calcium: 0.0,
            cyanurate: 0.0,
            boron: 0.0,
            sodium: 0.0,
            chloride: 0.0,
            sulfate: 0.0,
            chlorine: 0.0,
        };
        match self {
            Self::HydrochloricAcid => Change { alkalinity: -1.0, chloride: 1.0, ..none },
            Self::SodiumBisulfate => Change { alkalinity: -1.0, sodium: 1.0, sulfate: 1.0, ..none },
            Self::SodiumBicarbonate => Change { alkalinity: 1.0, carbon: 1.0, sodium: 1.0, ..none },
            Self::SodiumCarbonate => Change { alkalinity: 2.0, carbon: 1.0, sodium: 2.0, ..none },
            Self::SodiumHydroxide => Change { alkalinity: 1.0, sodium: 1.0, ..none },
            Self::CalciumChloride | Self::CalciumChlorideDihydrate => {
                Change { calcium: 1.0, chloride: 2.0, ..none }
            }
            Self::CarbonDioxide => Change { carbon: 1.0, ..none },
            Self::CyanuricAcid => Change { cyanurate: 1.0, ..none },
            Self::BoricAcid => Change { boron: 1.0, ..none },
            Self::Borax | Self::BoraxPentahydrate | Self::BoraxDecahydrate => {
                Change { alkalinity: 2.0, boron: 4.0, sodium: 2.0, ..none }
            }
            Self::SodiumHypochlorite => Change { alkalinity: 1.0, sodium: 1.0, chlorine: 1.0, ..none },
            Self::LiquidChlorine => {
                Change { alkalinity: 1.0, sodium: 2.0, chloride: 1.0, chlorine: 1.0, ..none }
            }
            Self::CalciumHypochlorite => Change { alkalinity: 2.0, calcium: 1.0, chlorine: 2.0, ..none },
            Self::Dichlor | Self::DichlorDihydrate => {
                Change { alkalinity: 1.0, cyanurate: 1.0, sodium: 1.0, chlorine: 2.0, ..none }
            }
            Self::Trichlor => Change { cyanurate: 1.0, chlorine: 3.0, ..none },
            Self::Chlorine => Change { alkalinity: -1.0, chloride: 1.0, chlorine: 1.0, ..none },
            Self::SodiumChloride => Change { sodium: 1.0, chloride: 1.0, ..none },
        }
    }

    /// Free chlorine that a mole brings, mol.
    ///
    /// ```
    /// use chem::treatment::Chemical;
    /// assert_eq!(Chemical::Trichlor.available_chlorine(), 3.0);
    /// ```
    pub const fn available_chlorine(self) -> f64 {
        self.change().chlorine
    }
}

/// Chemical per litre of water. May be any size; nothing below zero.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Dose(f64);

impl Dose {
    /// From mmol per litre, which must lie in [`bounds::DOSE`].
    ///
    /// ```
    /// use chem::treatment::Dose;
    /// assert_eq!(Dose::from_mmol_per_l(0.5).unwrap().mmol_per_l(), 0.5);
    /// assert!(Dose::from_mmol_per_l(-0.1).is_err());
    /// ```
    pub fn from_mmol_per_l(x: f64) -> Result<Self, OutOfRange> {
        bounds::DOSE.check(x).map(Self)
    }

    /// mmol per litre.
    pub const fn mmol_per_l(self) -> f64 {
        self.0
    }

    pub(crate) const fn found(x: f64) -> Self {
        Self(x)
    }

    /// Mass of a powder of this purity for a volume of water.
    ///
    /// `m = V · dose · M / purity`. Source: mass balance.
    ///
    /// ```
    /// use chem::treatment::{Chemical, Dose};
    /// use chem::{Purity, Volume};
    /// // 0.1998 mmol/L of bicarbonate is TA + 10: 168 g in 10 m³ (arithmetic; the trade's 1.4 lb per 10,000 gal).
    /// let dose = Dose::from_mmol_per_l(0.19983).unwrap();
    /// let volume = Volume::from_cubic_metres(10.0).unwrap();
    /// let mass = dose.of_powder(Chemical::SodiumBicarbonate, volume, Purity::WHOLE);
    /// assert_eq!((mass.kilograms() * 1000.0).round(), 168.0);
    /// ```
    pub fn of_powder(self, chemical: Chemical, volume: Volume, purity: Purity) -> Mass {
        Mass::found(volume.cubic_metres() * self.0 * chemical.molar_mass() / 1000.0 / purity.ratio())
    }

    /// Volume of an acid of this strength for a volume of water.
    pub fn of_acid(self, volume: Volume, strength: AcidStrength) -> Volume {
        Volume::found(volume.cubic_metres() * self.0 / 1000.0 / strength.mol_per_l())
    }

    /// Volume of liquid chlorine of this strength for a volume of water.
    pub fn of_bleach(self, volume: Volume, strength: BleachStrength) -> Volume {
        Volume::found(volume.cubic_metres() * self.0 / 1000.0 * atomic_weights::CHLORINE / strength.g_per_l())
    }

    /// The dose of a chlorine source that brings so much free chlorine.
    ///
    /// ```
    /// use chem::treatment::{BleachStrength, Chemical, Dose};
    /// use chem::{Chlorine, Volume};
    /// // Trade 10 %: 100 mL in 10 m³ for 1 mg/L, by the meaning of the word.
    /// let dose = Dose::of_chlorine(Chemical::LiquidChlorine, Chlorine::from_mg_per_l(1.0).unwrap()).unwrap();
    /// let pool = Volume::from_cubic_metres(10.0).unwrap();
    /// let litres = dose.of_bleach(pool, BleachStrength::from_trade_percent(10.0).unwrap()).cubic_metres() * 1000.0;
    /// assert!((litres - 0.1).abs() < 1e-12);
    /// ```
    pub fn of_chlorine(chemical: Chemical, wanted: Chlorine) -> Option<Self> {
        let available = chemical.available_chlorine();
        (available > 0.0).then(|| Self(wanted.mg_per_l() / atomic_weights::CHLORINE / available))
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
            cyanurate: add(self.cyanurate, change.cyanurate),
            boron: add(self.boron, change.boron),
            chlorine: add(self.chlorine, change.chlorine),
        }
    }
}

impl Water {
    /// The water with a chemical dissolved in it. No gas is exchanged and nothing settles out.
    ///
    /// ```
    /// use chem::treatment::{Chemical, Dose};
    /// use chem::*;
    /// # fn main() -> Result<(), OutOfRange> {
    /// let water = Sample::plain(
    ///     Temperature::from_celsius(26.0)?,
    ///     Ph::from_units(7.8)?,
    ///     Alkalinity::from_mg_per_l(120.0)?,
    ///     Hardness::from_mg_per_l(300.0)?,
    ///     Cyanurate::from_mg_per_l(40.0)?,
    ///     Salinity::from_mg_per_l(3_200.0)?,
    /// )
    /// .water()
    /// .unwrap();
    /// let acid = water.treated(Chemical::HydrochloricAcid, Dose::from_mmol_per_l(0.2)?);
    /// let then = acid.state().unwrap();
    /// assert!((then.ph.units() - 7.2673).abs() < 0.003);
    /// assert!((acid.alkalinity().mg_per_l() - 109.99).abs() < 0.01);
    /// # Ok(())
    /// # }
    /// ```
    pub fn treated(self, chemical: Chemical, dose: Dose) -> Self {
        let molal = dose.0 / 1000.0 / self.content.kg_per_l();
        let change = chemical.change();
        Self { ions: self.ions.with(change, molal), carbon: self.carbon + change.carbon * molal, ..self }
    }

    /// The water with carbon dioxide driven out by aeration; alkalinity stays, so pH rises.
    pub fn stripped(self, dose: Dose) -> Self {
        Self { carbon: self.carbon - dose.0 / 1000.0 / self.content.kg_per_l(), ..self }
    }

    /// The water when all its free chlorine has done its work and is chloride again.
    ///
    /// A mole of it takes an equivalent of alkalinity: `HOCl = H+ + Cl- + ½ O2`, or reduction by what
    /// it oxidises. So hypochlorite leaves alkalinity where it was, over its whole life.
    pub fn spent(self) -> Self {
        let used = Change { alkalinity: -1.0, chloride: 1.0, chlorine: -1.0, ..Change::default() };
        Self { ions: self.ions.with(used, self.ions.chlorine), ..self }
    }

    /// Total alkalinity; below zero where acid has used up more than there was.
    pub fn alkalinity(&self) -> Alkalinity {
        Alkalinity::found(
            self.ions.alkalinity * self.content.kg_per_l() * atomic_weights::CALCIUM_CARBONATE * 500.0,
        )
    }

    /// Calcium hardness.
    pub fn hardness(&self) -> Hardness {
        Hardness::found(
            self.ions.calcium * self.content.kg_per_l() * atomic_weights::CALCIUM_CARBONATE * 1000.0,
        )
    }

    /// Cyanuric acid.
    pub fn cyanurate(&self) -> Cyanurate {
        Cyanurate::found(
            self.ions.cyanurate * self.content.kg_per_l() * atomic_weights::CYANURIC_ACID * 1000.0,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Sample;

    #[test]
    fn alkalinity_changes_by_the_charge_of_the_strong_ions() {
        for chemical in Chemical::ALL {
            let c = chemical.change();
            let charge = c.sodium + 2.0 * c.calcium - c.chloride - 2.0 * c.sulfate;
            assert_eq!(c.alkalinity, charge, "{chemical:?}");
        }
    }

    /// Arithmetic on the formulas: of a mg/L of free chlorine, once it is spent, as mg/L of sodium chloride,
    /// cyanuric acid, hardness and alkalinity.
    #[test]
    fn a_chlorine_source_leaves_behind_what_it_brought() {
        let water = {
            let (t, ph) = (Temperature::from_celsius(25.0).unwrap(), Ph::from_units(7.5).unwrap());
            let (ta, ch) =
                (Alkalinity::from_mg_per_l(80.0).unwrap(), Hardness::from_mg_per_l(200.0).unwrap());
            Sample::plain(t, ph, ta, ch, Cyanurate::found(30.0), Salinity::NONE).water().unwrap()
        };
        for (chemical, salt, cyanurate, hardness, alkalinity) in [
            (Chemical::LiquidChlorine, 1.648, 0.0, 0.0, 0.0),
            (Chemical::SodiumHypochlorite, 0.824, 0.0, 0.0, 0.0),
            (Chemical::CalciumHypochlorite, 0.824, 0.0, 0.706, 0.0),
            (Chemical::Dichlor, 0.824, 0.910, 0.0, -0.353),
            (Chemical::DichlorDihydrate, 0.824, 0.910, 0.0, -0.353),
            (Chemical::Trichlor, 0.824, 0.607, 0.0, -0.706),
            (Chemical::Chlorine, 1.648, 0.0, 0.0, -1.412),
        ] {
            let dose = Dose::of_chlorine(chemical, Chlorine::found(1.0)).unwrap();
            let there = water.treated(chemical, dose).spent();
            let chloride = (there.ions.chloride - water.ions.chloride) * water.content.kg_per_l() * 1000.0;
            for (found, printed) in [
                (chloride * atomic_weights::SODIUM_CHLORIDE, salt),
                (there.cyanurate().mg_per_l() - water.cyanurate().mg_per_l(), cyanurate),
                (there.hardness().mg_per_l() - water.hardness().mg_per_l(), hardness),
                (there.alkalinity().mg_per_l() - water.alkalinity().mg_per_l(), alkalinity),
            ] {
                assert!((found - printed).abs() <= 0.0005, "{chemical:?}: {found} beside {printed}");
            }
            assert!(there.ions.chlorine.abs() < 1e-15, "{chemical:?}");
        }
        let both = [Chemical::SodiumHypochlorite, Chemical::SodiumChloride].map(Chemical::molar_mass);
        assert_eq!(Chemical::LiquidChlorine.molar_mass(), both[0] + both[1]);
    }
}
