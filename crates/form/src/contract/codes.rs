//! Which codes can be chosen, question by question? Those that the plan goes by are the plan's own.

use plan::{
    Algae, Approval, BagSalt, Clarity, Electrical, Ground, History, Instrument, Location, Method, PoolUse,
    Running, Sanitizer, Surface, Undissolved, Warranty, Weather, YesNo,
};

/// The codes of a question.
#[derive(Debug)]
pub struct Codes {
    /// The codes, in the order in which they are offered.
    pub all: &'static [&'static str],
    /// What each means, in the same order; for the reference, so not in a page's wasm.
    #[cfg(not(target_family = "wasm"))]
    pub meanings: &'static [&'static str],
}

#[cfg(not(target_family = "wasm"))]
const fn codes(all: &'static [&'static str], meanings: &'static [&'static str]) -> Codes {
    Codes { all, meanings }
}

#[cfg(target_family = "wasm")]
const fn codes(all: &'static [&'static str], _: &'static [&'static str]) -> Codes {
    Codes { all }
}

macro_rules! of_the_plan {
    ($($name:ident $choice:ident),* $(,)?) => {$(
        #[doc = concat!("The codes of [`", stringify!($choice), "`].")]
        pub static $name: Codes = codes($choice::CODES, $choice::MEANINGS);
    )*};
}

of_the_plan! {
    METHOD Method, SURFACE Surface, POOL_USE PoolUse, LOCATION Location, RUNNING Running, CLARITY Clarity,
    ALGAE Algae, WEATHER Weather, SANITIZER Sanitizer, APPROVAL Approval, WARRANTY Warranty, ELECTRICAL Electrical,
    INSTRUMENT Instrument, HISTORY History, BAG_SALT BagSalt, UNDISSOLVED Undissolved, GROUND Ground, YES_NO YesNo,
}

/// Choices of the page's own, with their codes.
macro_rules! of_the_form {
    ($($(#[$doc:meta])* $static:ident $name:ident {
        $($(#[doc = $meaning:literal])+ $variant:ident = $code:literal),* $(,)?
    })*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum $name { $($(#[doc = $meaning])+ $variant),* }

        impl $name {
            /// All of them, in the order in which they are offered.
            pub const ALL: &[Self] = &[$(Self::$variant),*];

            /// The code in the form, the link and the file.
            #[must_use]
            pub const fn code(self) -> &'static str {
                $static.all[self as usize]
            }
        }

        $(#[$doc])*
        pub static $static: Codes = codes(&[$($code),*], &[$(concat!($($meaning),+)),*]);
    )*};
}

of_the_form! {
    /// Edges that can be measured.
    SHAPE Shape {
        /// rectangle
        Rectangle = "rectangle",
        /// round
        Round = "round",
        /// oval, curved all round
        Ellipse = "ellipse",
        /// oval, two straight sides
        Stadium = "stadium",
        /// kidney
        Kidney = "kidney",
        /// L, two rectangles
        Ell = "ell",
        /// free form, by widths
        Freeform = "freeform",
    }
    /// Floors that can be measured.
    FLOOR FloorShape {
        /// level
        Level = "level",
        /// one slope, end to end
        Slope = "slope",
        /// flat, slope, then deep
        Break = "break",
        /// flat, then a hopper to a pad
        Hopper = "hopper",
    }
    /// What a line of the log tells of.
    LOG_KIND LogKind {
        /// salt put in
        Salt = "salt",
        /// salt read
        Test = "test",
        /// ignored: does not count
        Ignored = "ignored",
    }
    /// In which units results are shown.
    SHOW Show {
        /// the units typed
        AsTyped = "as-typed",
        /// metric units
        Metric = "metric",
        /// US units
        Us = "us",
    }
    /// For whom the page is laid out.
    VIEW View {
        /// an owner, step by step
        Owner = "owner",
        /// a counter, bags first
        Counter = "counter",
        /// a class, with the working
        Class = "class",
    }
    /// Which step of the page is in view.
    STEP Step {
        /// the water you have
        Pool = "pool",
        /// may salt go in yet?
        Ready = "ready",
        /// the other tests
        Water = "water",
        /// salt today and wanted
        Salt = "salt",
        /// bags
        Bags = "bags",
        /// the sheet
        Sheet = "sheet",
        /// the job so far
        Days = "days",
        /// setting the output
        Running = "running",
        /// the fill water, and replacing
        Replace = "replace",
        /// keep, print, pass on
        Keep = "keep",
        /// how it is worked out
        Why = "why",
    }
    /// Which sheet is printed.
    SHEET Sheet {
        /// the record
        Record = "record",
        /// a slip
        Slip = "slip",
        /// the days
        Days = "days",
        /// a class sheet
        Class = "class",
        /// the answers to the class sheet
        Answers = "answers",
    }
    /// What is ticked.
    TICK Tick {
        /// yes
        Yes = "yes",
    }
}

/// What a line of the log can be read with: an assumed reading, the last of the list, is none.
pub static READ_WITH: Codes = codes(but_the_last(Instrument::CODES), but_the_last(Instrument::MEANINGS));

const fn but_the_last(all: &'static [&'static str]) -> &'static [&'static str] {
    all.split_at(all.len() - 1).0
}
