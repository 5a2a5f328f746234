//! What of a water is conserved when it is salted, mixed or diluted?
//!
//! Amounts per kilogram of water, with pH only as a result.

use crate::bounds::OutOfRange;
use crate::constants::atomic_weights;
use crate::error::WaterError;
use crate::quantity::{derived::*, measured::*};
use crate::water::solve::{self, Constraint, Ions, State};

/// What is conserved, mol per kg of water (alkalinity in equivalents).
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "Unchecked"))]
pub struct Water {
    pub(crate) temperature: Temperature,
    pub(crate) content: WaterContent,
    pub(crate) ions: Ions,
    /// Total inorganic carbon.
    pub(crate) carbon: f64,
}

impl Water {
    /// pH, carbonate and saturation index with the pH left free: alkalinity and inorganic carbon are
    /// what they are, and the pH follows. No gas is exchanged with the air.
    ///
    /// Domain: whatever a sample of the model's domain becomes by doses and mixing, to pH 3 or 11 and the ionic strength
    /// of [`bounds::STRENGTH`](crate::bounds::STRENGTH). Agreement as told at [`crate::Sample::state`], held to from pH
    /// 6 to 9.2; beyond that within 0.01. Errors: [`WaterError::NoSolution`] when no pH from 3 to 11 balances the
    /// alkalinity, [`WaterError::Outside`] beyond any row.
    pub fn state(&self) -> Result<State, WaterError> {
        solve::solve(&self.ions, self.temperature, self.content, Constraint::Carbon(self.carbon))
    }

    /// pH, carbonate and saturation index in balance with air: alkalinity stays, carbon dioxide comes
    /// or goes until its pressure is the air's. Where a pool drifts to, given time.
    ///
    /// Errors as [`Water::state`]. Source: Henry's law with PA13's constant.
    pub fn in_air(&self, air: CarbonDioxide) -> Result<State, WaterError> {
        solve::solve(&self.ions, self.temperature, self.content, Constraint::Air(air.atmospheres()))
    }

    /// Total alkalinity. Errors: below zero, where acid has used up more than there was, or above what
    /// [`Alkalinity`] holds; the error tells how much.
    ///
    /// ```
    /// use saltwright_chem::treatment::{Chemical, Dose};
    /// use saltwright_chem::*;
    /// # fn main() -> Result<(), Box<dyn std::error::Error>> {
    /// let water = Sample {
    ///     temperature: Temperature::from_celsius(26.0)?,
    ///     ph: Ph::from_units(7.5)?,
    ///     alkalinity: Alkalinity::from_mg_per_l(80.0)?,
    ///     hardness: Hardness::from_mg_per_l(250.0)?,
    ///     cyanuric_acid: CyanuricAcid::NONE,
    ///     salt: Salinity::NONE,
    ///     boron: Boron::NONE,
    ///     magnesium: Magnesium::NONE,
    ///     sulfate: Sulfate::NONE,
    /// }
    /// .water()?;
    /// assert!((water.alkalinity()?.mg_per_l() - 80.0).abs() < 1e-9);
    /// let sour = water.treated(Chemical::HydrochloricAcid, Dose::from_mmol_per_l(5.0)?);
    /// assert_eq!(sour.alkalinity().unwrap_err().to_string().split(' ').next(), Some("total"));
    /// # Ok(())
    /// # }
    /// ```
    pub fn alkalinity(&self) -> Result<Alkalinity, OutOfRange> {
        Alkalinity::from_mg_per_l(
            self.ions.alkalinity * self.content.kg_per_l() * atomic_weights::CALCIUM_CARBONATE * 500.0,
        )
    }

    /// Calcium hardness. Errors: more than [`Hardness`] holds.
    pub fn hardness(&self) -> Result<Hardness, OutOfRange> {
        Hardness::from_mg_per_l(
            self.ions.calcium * self.content.kg_per_l() * atomic_weights::CALCIUM_CARBONATE * 1000.0,
        )
    }

    /// Cyanuric acid. Errors: more than [`CyanuricAcid`] holds.
    pub fn cyanuric_acid(&self) -> Result<CyanuricAcid, OutOfRange> {
        CyanuricAcid::from_mg_per_l(
            self.ions.cyanuric_acid * self.content.kg_per_l() * atomic_weights::CYANURIC_ACID * 1000.0,
        )
    }

    /// The same water with sodium chloride added. Nothing else is added, so only the activities
    /// change; the small swelling (0.1 % at 3 g/L) is left out.
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
    /// let salted = sample.water().unwrap().salted(Salinity::from_mg_per_l(3_200.0)?);
    /// assert!((salted.state().unwrap().ph.units() - 7.445).abs() < 0.001); // PHREEQC 3.7.3 REACTION NaCl
    /// # Ok(())
    /// # }
    /// ```
    #[must_use]
    pub fn salted(mut self, rise: Salinity) -> Self {
        let added = rise.mg_per_l() / atomic_weights::SODIUM_CHLORIDE / self.content.kg_per_l() / 1000.0;
        self.ions.sodium += added;
        self.ions.chloride += added;
        self
    }

    /// `self` and `other` mixed, `share` of the *mass of water* being `other`'s. Heat mixes too.
    #[must_use]
    pub fn mixed(self, other: Self, share: Fraction) -> Self {
        let f = share.ratio();
        let mix = |a: f64, b: f64| a * (1.0 - f) + b * f;
        let (a, b) = (self.ions, other.ions);
        Self {
            temperature: Temperature::clamped(mix(self.temperature.celsius(), other.temperature.celsius())),
            content: WaterContent::clamped(
                1.0 / mix(1.0 / self.content.kg_per_l(), 1.0 / other.content.kg_per_l()),
            ),
            ions: Ions {
                alkalinity: mix(a.alkalinity, b.alkalinity),
                calcium: mix(a.calcium, b.calcium),
                magnesium: mix(a.magnesium, b.magnesium),
                sodium: mix(a.sodium, b.sodium),
                chloride: mix(a.chloride, b.chloride),
                sulfate: mix(a.sulfate, b.sulfate),
                cyanuric_acid: mix(a.cyanuric_acid, b.cyanuric_acid),
                boron: mix(a.boron, b.boron),
                chlorine: mix(a.chlorine, b.chlorine),
            },
            carbon: mix(self.carbon, other.carbon),
        }
    }

    /// `self` with `share` of its *volume* replaced by `fill`.
    #[must_use]
    pub fn replaced(self, fill: Self, share: Fraction) -> Self {
        let f = share.ratio();
        let (old, new) = ((1.0 - f) * self.content.kg_per_l(), f * fill.content.kg_per_l());
        let of_mass = new / (old + new);
        self.mixed(fill, Fraction::clamped(of_mass))
    }
}

/// A water as it comes in from outside.
#[cfg(feature = "serde")]
#[derive(serde::Deserialize)]
struct Unchecked {
    temperature: Temperature,
    content: WaterContent,
    ions: Ions,
    carbon: f64,
}

#[cfg(feature = "serde")]
impl TryFrom<Unchecked> for Water {
    type Error = &'static str;

    fn try_from(Unchecked { temperature, content, ions, carbon }: Unchecked) -> Result<Self, Self::Error> {
        if ions.are_totals() && carbon.is_finite() {
            Ok(Self { temperature, content, ions, carbon })
        } else {
            Err("a total of what is dissolved is below none, or no number")
        }
    }
}
