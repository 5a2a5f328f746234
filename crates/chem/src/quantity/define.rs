//! What do all quantities have in common? A unit, a row of the table, and nothing outside it.

/// Types of quantities, each with the row that it never leaves.
macro_rules! quantities {
    (in $path:literal; $($(#[$doc:meta])* $name:ident, $row:ident, $from:ident, $get:ident, $unit:literal;)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("What it may be: [`bounds::", stringify!($row), "`](crate::bounds::", stringify!($row), ").")]
            pub const BOUNDS: &'static crate::bounds::Bounds = &crate::bounds::$row;

            #[doc = concat!("From a number of ", $unit, ", which must lie in [`bounds::", stringify!($row), "`](crate::bounds::", stringify!($row), ").")]
            ///
            /// ```
            #[doc = concat!("use saltwright_chem::{bounds, ", $path, stringify!($name), "};")]
            #[doc = concat!("let low = bounds::", stringify!($row), ".low;")]
            #[doc = concat!("assert_eq!(", stringify!($name), "::", stringify!($from), "(low).unwrap().", stringify!($get), "(), low);")]
            #[doc = concat!("assert!(", stringify!($name), "::", stringify!($from), "(f64::NAN).is_err());")]
            /// ```
            pub const fn $from(x: f64) -> Result<Self, crate::bounds::OutOfRange> {
                match Self::BOUNDS.check(x) {
                    Ok(x) => Ok(Self(x)),
                    Err(outside) => Err(outside),
                }
            }

            #[doc = concat!("The number of ", $unit, ".")]
            #[must_use]
            pub const fn $get(self) -> f64 {
                self.0
            }

            /// Of a number that lies in the row by what was reckoned with.
            #[allow(dead_code)]
            pub(crate) const fn new_unchecked(x: f64) -> Self {
                debug_assert!(Self::BOUNDS.contains(x));
                Self(x)
            }

            /// Of a number that lies in the row but for what rounding does to it.
            #[allow(dead_code)]
            pub(crate) const fn clamped(x: f64) -> Self {
                debug_assert!(!x.is_nan());
                Self(x.clamp(Self::BOUNDS.low, Self::BOUNDS.high))
            }
        }

        #[cfg(feature = "serde")]
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_f64(self.0)
            }
        }

        /// Refuses what lies outside the row.
        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                let x = <f64 as serde::Deserialize>::deserialize(from)?;
                Self::$from(x).map_err(serde::de::Error::custom)
            }
        }
    )*};
}

pub(crate) use quantities;
