//! What may be added, taken away or multiplied, so that a quantity comes out?
//!
//! An operator stands where the result always lies in its row; everything else answers with a `Result`.

use super::derived::TemperatureDifference;
use super::measured::*;
use crate::bounds::OutOfRange;
use core::ops::{Mul, Sub};

macro_rules! additive {
    ($($name:ident, $from:ident, $get:ident;)*) => {$(
        impl $name {
            /// Both together, if the sum lies within [`Self::BOUNDS`].
            ///
            /// ```
            #[doc = concat!("use saltwright_chem::", stringify!($name), ";")]
            #[doc = concat!("let of = |x| ", stringify!($name), "::", stringify!($from), "(x).unwrap();")]
            /// assert_eq!(of(30.0).checked_add(of(12.0)), Ok(of(42.0)));
            #[doc = concat!("let most = of(", stringify!($name), "::BOUNDS.high);")]
            /// assert!(most.checked_add(most).is_err());
            /// ```
            pub fn checked_add(self, other: Self) -> Result<Self, OutOfRange> {
                Self::$from(self.$get() + other.$get())
            }

            /// `self` without `other`, if there is as much in it.
            ///
            /// ```
            #[doc = concat!("use saltwright_chem::", stringify!($name), ";")]
            #[doc = concat!("let of = |x| ", stringify!($name), "::", stringify!($from), "(x).unwrap();")]
            /// assert_eq!(of(30.0).checked_sub(of(12.0)), Ok(of(18.0)));
            /// assert!(of(12.0).checked_sub(of(30.0)).is_err());
            /// ```
            pub fn checked_sub(self, other: Self) -> Result<Self, OutOfRange> {
                Self::$from(self.$get() - other.$get())
            }

            /// `self` without `other`; none where there is less in it.
            ///
            /// ```
            #[doc = concat!("use saltwright_chem::", stringify!($name), ";")]
            #[doc = concat!("let of = |x| ", stringify!($name), "::", stringify!($from), "(x).unwrap();")]
            /// assert_eq!(of(30.0).saturating_sub(of(12.0)), of(18.0));
            /// assert_eq!(of(12.0).saturating_sub(of(30.0)), of(0.0));
            /// ```
            #[must_use]
            pub fn saturating_sub(self, other: Self) -> Self {
                Self::new_unchecked(libm::fmax(self.$get() - other.$get(), 0.0))
            }

            /// So many times as much, if that lies within [`Self::BOUNDS`].
            ///
            /// ```
            #[doc = concat!("use saltwright_chem::", stringify!($name), ";")]
            #[doc = concat!("let of = |x| ", stringify!($name), "::", stringify!($from), "(x).unwrap();")]
            /// assert_eq!(of(20.0).checked_mul(2.5), Ok(of(50.0)));
            /// assert!(of(20.0).checked_mul(-1.0).is_err() && of(20.0).checked_mul(f64::NAN).is_err());
            /// ```
            pub fn checked_mul(self, times: f64) -> Result<Self, OutOfRange> {
                Self::$from(self.$get() * times)
            }
        }

        /// A part of it.
        impl Mul<Fraction> for $name {
            type Output = Self;

            fn mul(self, part: Fraction) -> Self {
                Self::new_unchecked(self.$get() * part.ratio())
            }
        }
    )*};
}

additive! {
    Volume, from_cubic_metres, cubic_metres;
    Mass, from_kilograms, kilograms;
    Salinity, from_mg_per_l, mg_per_l;
    Alkalinity, from_mg_per_l, mg_per_l;
    Hardness, from_mg_per_l, mg_per_l;
    CyanuricAcid, from_mg_per_l, mg_per_l;
    Boron, from_mg_per_l, mg_per_l;
    Magnesium, from_mg_per_l, mg_per_l;
    Sulfate, from_mg_per_l, mg_per_l;
    Chlorine, from_mg_per_l, mg_per_l;
    Solids, from_mg_per_l, mg_per_l;
    Length, from_metres, metres;
    Area, from_square_metres, square_metres;
}

/// A part of a part.
impl Mul for Fraction {
    type Output = Self;

    fn mul(self, part: Self) -> Self {
        Self::new_unchecked(self.ratio() * part.ratio())
    }
}

impl Fraction {
    /// What is left of the whole.
    ///
    /// ```
    /// use saltwright_chem::Fraction;
    /// assert_eq!(Fraction::from_ratio(0.25).unwrap().rest().ratio(), 0.75);
    /// ```
    #[must_use]
    pub fn rest(self) -> Self {
        Self::new_unchecked(1.0 - self.ratio())
    }
}

/// Salt dissolved in so much water: grams a litre are kilograms a cubic metre.
///
/// ```
/// use saltwright_chem::{Salinity, Volume};
/// let (water, salt) = (Volume::from_cubic_metres(50.0).unwrap(), Salinity::from_mg_per_l(3_200.0).unwrap());
/// assert_eq!((water * salt).kilograms(), 160.0);
/// ```
impl Mul<Salinity> for Volume {
    type Output = Mass;

    fn mul(self, salt: Salinity) -> Mass {
        Mass::new_unchecked(self.cubic_metres() * salt.mg_per_l() / 1000.0)
    }
}

/// The sodium chloride in so much salt.
impl Mul<Purity> for Mass {
    type Output = Self;

    fn mul(self, purity: Purity) -> Self {
        Self::new_unchecked(self.kilograms() * purity.ratio())
    }
}

/// ```
/// use saltwright_chem::Temperature;
/// let [pool, fill] = [26.0, 12.0].map(|x| Temperature::from_celsius(x).unwrap());
/// assert_eq!((fill - pool).kelvin(), -14.0);
/// ```
impl Sub for Temperature {
    type Output = TemperatureDifference;

    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference::new_unchecked(self.celsius() - other.celsius())
    }
}

impl Salinity {
    /// How far `self` stands above `other`; `None` when it does not.
    ///
    /// ```
    /// use saltwright_chem::Salinity;
    /// let [low, high] = [400.0, 3_200.0].map(|x| Salinity::from_mg_per_l(x).unwrap());
    /// assert_eq!(high.excess_over(low).unwrap().mg_per_l(), 2_800.0);
    /// assert_eq!((low.excess_over(high), low.excess_over(low)), (None, None));
    /// ```
    #[must_use]
    pub fn excess_over(self, other: Self) -> Option<Self> {
        (self > other).then(|| self.saturating_sub(other))
    }
}
