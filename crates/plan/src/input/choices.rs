//! Which answers can be chosen, and by which codes?

use chem::salt;

/// Choices with the codes that the page uses for them.
macro_rules! choices {
    ($($(#[$doc:meta])* $name:ident {
        $($(#[doc = $meaning:literal])+ $variant:ident = $code:literal),* $(,)?
    })*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
        pub enum $name {
            $($(#[doc = $meaning])+ #[cfg_attr(feature = "serde", serde(rename = $code))] $variant),*
        }

        impl $name {
            /// All of them, in the order in which they are offered.
            pub const ALL: &[Self] = &[$(Self::$variant),*];
            /// Their codes, in the same order.
            pub const CODES: &[&'static str] = &[$($code),*];
            /// What each means, in the same order.
            pub const MEANINGS: &[&'static str] = &[$(concat!($($meaning),+)),*];

            /// The code in a form, a link and a file.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code),* }
            }
        }
    )*};
}

choices! {
    /// How the amount of water was found.
    Method {
        /// Filled through a water meter.
        Metered = "metered",
        /// From the builder's drawing.
        Drawing = "drawing",
        /// Measured, plain shape.
        Taped = "taped",
        /// Measured by offsets along an axis.
        Offsets = "offsets",
        /// A rule of thumb.
        Rule = "rule",
        /// Remembered.
        Remembered = "remembered",
    }
    /// What the salt was read with.
    Instrument {
        /// Drop titration.
        Drops = "drops",
        /// Test strip.
        Strip = "strip",
        /// Hand meter, calibrated near 3 g/L.
        Meter = "meter",
        /// Hand meter, not calibrated lately.
        Uncalibrated = "meter-uncalibrated",
        /// Photometer.
        Photometer = "photometer",
        /// The generator's own display.
        Display = "display",
        /// A laboratory.
        Lab = "lab",
        /// Not read at all.
        Assumed = "assumed",
    }
    /// The water's history, for a buying range while there is no reading.
    History {
        /// Freshly filled.
        Fresh = "fresh",
        /// Chlorinated for a season or more.
        Older = "older",
        /// Salted before.
        Salted = "salted",
        /// Not known.
        Unknown = "unknown",
    }
    /// What the water touches.
    Surface {
        /// Plaster, quartz, pebble or other cement finish.
        Cement = "cement",
        /// Tile, with cement grout.
        Tile = "tile",
        /// Vinyl liner.
        Vinyl = "vinyl",
        /// Fiberglass with gelcoat.
        Fiberglass = "fiberglass",
        /// Paint.
        Painted = "painted",
        /// Anything else.
        Other = "other",
    }
    /// How the ground water stands.
    Ground {
        /// Low, checked.
        Low = "low",
        /// High, or not known to be low.
        High = "high",
        /// Not known.
        Unknown = "unknown",
    }
    /// Yes or no.
    YesNo {
        /// Yes.
        Yes = "yes",
        /// No.
        No = "no",
    }
    /// What the written approval of the finish's maker is.
    Approval {
        /// In hand, in writing.
        InHand = "in-hand",
        /// Asked for.
        Asked = "asked",
        /// Refused.
        Refused = "refused",
        /// Not asked for.
        NotAsked = "not-asked",
    }
    /// What the water was treated with before.
    Sanitizer {
        /// Chlorine only.
        Chlorine = "chlorine",
        /// Copper or silver as well.
        CopperSilver = "copper-silver",
        /// Bromine or sodium bromide.
        Bromine = "bromine",
        /// Biguanide.
        Biguanide = "biguanide",
        /// Not known.
        Unknown = "unknown",
    }
    /// What a maker's warranty says of salt.
    Warranty {
        /// Read: salt is allowed.
        Read = "read",
        /// There is no such thing here.
        NotFitted = "not-fitted",
        /// Salt is excluded.
        Excludes = "excludes-salt",
        /// Not read.
        NotRead = "not-read",
    }
    /// Do pump and filter run?
    Running {
        /// For a day, and two turnovers.
        Yes = "yes",
        /// Less than that.
        Less = "less",
        /// One of them does not work.
        Broken = "broken",
    }
    /// How clear the water is.
    Clarity {
        /// The drain is sharply visible.
        Clear = "clear",
        /// Hazy.
        Hazy = "hazy",
        /// The drain can't be seen.
        NotVisible = "not-visible",
    }
    /// How much there is of algae.
    Algae {
        /// None.
        None = "none",
        /// A dusting.
        Dusting = "dusting",
        /// A bloom.
        Bloom = "bloom",
    }
    /// What the weather is to be.
    Weather {
        /// Dry for two days.
        Dry = "dry",
        /// A storm is forecast.
        Storm = "storm",
        /// Not known.
        Unknown = "unknown",
    }
    /// How far the electrician is.
    Electrical {
        /// Done, and signed off.
        Electrician = "electrician",
        /// Not yet.
        NotYet = "not-yet",
        /// Damaged, or done by nobody licensed.
        Damaged = "damaged",
    }
    /// What salt it is.
    BagSalt {
        /// For pool generators, nothing added.
        Pool = "pool",
        /// Not known.
        Unknown = "unknown",
        /// Iodized, or with anti-caking agents, rust remover or grit.
        Additives = "additives",
    }
    /// Whose pool it is.
    PoolUse {
        /// One household's.
        Home = "home",
        /// Shared or let.
        Shared = "shared",
        /// Public.
        Public = "public",
    }
    /// Where it lies.
    Location {
        /// In the sun.
        Outdoor = "outdoor",
        /// Under a roof.
        Indoor = "indoor",
    }
    /// What lies on the floor.
    Undissolved {
        /// Nothing.
        None = "none",
        /// Grains of salt.
        Some = "some",
    }
    /// An answer that a result may lack.
    Input {
        /// Amount of water.
        Volume = "volume",
        /// Salt reading.
        Reading = "reading",
        /// What it was read with.
        Instrument = "instrument",
        /// Bag size.
        BagSize = "bag-size",
        /// Purity.
        Purity = "purity",
        /// Temperature.
        Temperature = "temperature",
        /// pH.
        Ph = "ph",
        /// Total alkalinity.
        Alkalinity = "alkalinity",
        /// Calcium hardness.
        Hardness = "hardness",
        /// Cyanuric acid.
        CyanuricAcid = "cyanuric-acid",
        /// Salt of the fill water.
        FillSalt = "fill-salt",
        /// Its temperature.
        FillTemperature = "fill-temperature",
        /// Its pH.
        FillPh = "fill-ph",
        /// Its alkalinity.
        FillAlkalinity = "fill-alkalinity",
        /// Its calcium hardness.
        FillHardness = "fill-hardness",
        /// Its cyanuric acid.
        FillCyanuricAcid = "fill-cyanuric-acid",
        /// Strength of the products for the other tests.
        Products = "products",
        /// Free chlorine.
        Chlorine = "chlorine",
    }
}

impl Instrument {
    /// What the instrument responds to. A laboratory is taken to titrate chloride, the usual method
    /// (ISO 9297; common practice). An assumed figure is meant as sodium chloride.
    #[must_use]
    pub const fn salt_test(self) -> salt::SaltTest {
        match self {
            Self::Drops | Self::Strip | Self::Photometer | Self::Lab => salt::SaltTest::Chloride,
            Self::Meter | Self::Uncalibrated | Self::Display => salt::SaltTest::Conductivity,
            Self::Assumed => salt::SaltTest::AsNaCl,
        }
    }
}

impl Surface {
    /// Has it nothing of cement for soft water to take from?
    #[must_use]
    pub const fn is_shell(self) -> bool {
        matches!(self, Self::Vinyl | Self::Fiberglass)
    }
}
