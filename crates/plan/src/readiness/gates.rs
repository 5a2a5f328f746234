//! Which gates are there, in which order are they worked at, and what does each hold?

use crate::readiness::inputs::Inputs;
use crate::readiness::judge;
use crate::readiness::verdict::Verdict;

/// A gate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gate {
    /// The local code, where the pool is not one household's.
    Code,
    /// What the water was treated with before.
    PreviousSanitizer,
    /// Cyanuric acid that only other water brings down.
    CyanuricAcid,
    /// The fill water's tests.
    Fill,
    /// Filled, pump and filter running.
    Running,
    /// Clarity.
    Clarity,
    /// Algae.
    Algae,
    /// Free chlorine.
    Chlorine,
    /// Combined chlorine.
    Combined,
    /// Copper.
    Copper,
    /// Iron.
    Iron,
    /// What has to be done to the water before the salt, by the person's own goals.
    BalanceFirst,
    /// The water's temperature.
    Temperature,
    /// Alkalinity.
    Alkalinity,
    /// Hardness, by surface.
    Hardness,
    /// The band for cyanuric acid, by place.
    CyanuricAcidBand,
    /// pH.
    Ph,
    /// The saturation index after what is due.
    Index,
    /// How much water there is, and how that was found.
    Volume,
    /// The generator's target.
    Target,
    /// The salt reading, and with what it was read.
    Reading,
    /// How old it is.
    ReadingAge,
    /// The salt in the bags.
    BagSalt,
    /// The age of a cement finish.
    FinishAge,
    /// The written word on the finish.
    Clearance,
    /// Other makers' papers.
    Warranty,
    /// Weather.
    Weather,
    /// Electrical.
    Electrical,
    /// The last reading between the limits, for switching on.
    Level,
    /// Two days since the last bag, for switching on.
    Clock,
}

/// What a gate does to the salt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EffectOnSalt {
    /// A wait, or what is missing, holds it back.
    Holds,
    /// A wait is a note.
    Notes,
    /// It is not asked.
    NotAsked,
}

/// What a gate is judged by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// The figures that the plan is worked out from.
    Plan,
    /// What is asked besides.
    Questions,
}

/// A row of the table of gates.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// Which.
    pub gate: Gate,
    /// Its code on the page.
    pub code: &'static str,
    /// What it does to the salt.
    pub salt: EffectOnSalt,
    /// Is it judged for switching on?
    pub power: bool,
    /// What it is judged by.
    pub by: By,
    /// What it says.
    pub judge: fn(&Inputs) -> Verdict,
}

const fn row(
    gate: Gate,
    code: &'static str,
    salt: EffectOnSalt,
    power: bool,
    by: By,
    judge: fn(&Inputs) -> Verdict,
) -> Row {
    Row { gate, code, salt, power, by, judge }
}

/// One row a gate, in the order of the work: what needs draining, clear water and chlorine, metals, balance,
/// the reading, then papers and dates.
#[rustfmt::skip]
pub const GATES: [Row; 30] = {
    use By::*;
    use EffectOnSalt::*;
    [
        // gate, code, salt, power, by, judge
        row(Gate::Code, "code", Notes, false, Questions, judge::code),
        row(Gate::PreviousSanitizer, "sanitizer", Holds, false, Questions, judge::previous_sanitizer),
        row(Gate::CyanuricAcid, "cya-limit", Holds, false, Plan, judge::cyanuric_acid),
        row(Gate::Fill, "fill", Notes, false, Questions, judge::fill),
        row(Gate::Running, "running", Holds, false, Questions, judge::running),
        row(Gate::Clarity, "clarity", Holds, false, Questions, judge::clarity),
        row(Gate::Algae, "algae", Holds, false, Questions, judge::algae),
        row(Gate::Chlorine, "chlorine", Holds, true, Questions, judge::chlorine),
        row(Gate::Combined, "combined", Notes, false, Questions, judge::combined),
        row(Gate::Copper, "copper", Notes, false, Questions, judge::copper),
        row(Gate::Iron, "iron", Notes, false, Questions, judge::iron),
        row(Gate::BalanceFirst, "balance-first", Holds, false, Plan, judge::balance_first),
        row(Gate::Temperature, "temperature", Holds, true, Plan, judge::temperature),
        row(Gate::Alkalinity, "ta", Notes, false, Questions, judge::alkalinity),
        row(Gate::Hardness, "ch", Notes, false, Questions, judge::hardness),
        row(Gate::CyanuricAcidBand, "cya", Notes, false, Questions, judge::cyanuric_acid_band),
        row(Gate::Ph, "ph", Holds, true, Plan, judge::ph),
        row(Gate::Index, "index", Holds, false, Plan, judge::index),
        row(Gate::Volume, "volume", Notes, false, Plan, judge::volume), // The retest decides.
        row(Gate::Target, "target", Holds, false, Plan, judge::target),
        row(Gate::Reading, "reading", Holds, true, Plan, judge::reading),
        row(Gate::ReadingAge, "reading-age", Holds, true, Questions, judge::reading_age),
        row(Gate::BagSalt, "bag-salt", Notes, false, Questions, judge::bag_salt),
        row(Gate::FinishAge, "finish-age", Holds, false, Questions, judge::finish_age),
        row(Gate::Clearance, "clearance", Holds, false, Questions, judge::clearance),
        row(Gate::Warranty, "warranty", Notes, false, Questions, judge::warranty),
        row(Gate::Weather, "weather", Notes, false, Questions, judge::weather),
        row(Gate::Electrical, "electrical", Notes, true, Questions, judge::electrical),
        row(Gate::Level, "salt-level", NotAsked, true, Plan, judge::level),
        row(Gate::Clock, "clock", NotAsked, true, Plan, judge::clock),
    ]
};

// A verdict stands at its gate's place, so the rows stand in the order of the gates.
const _: () = {
    let mut place = 0;
    while place < GATES.len() {
        assert!(GATES[place].gate as usize == place);
        place += 1;
    }
};

/// What each gate says, in the order of [`GATES`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gates([Verdict; GATES.len()]);

/// The verdicts by the codes of their gates.
#[cfg(feature = "serde")]
impl serde::Serialize for Gates {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_map(GATES.iter().map(|row| (row.code, self.at(row.gate))))
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for Gates {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let place = |code: &str| GATES.iter().position(|row| row.code == code);
        let all = crate::serialize::map(from, [None; GATES.len()], place, |mut all, place, verdict| {
            all[place].replace(verdict).is_none().then_some(all)
        })?;
        if let Some(place) = all.iter().position(Option::is_none) {
            return Err(serde::de::Error::missing_field(GATES[place].code));
        }
        Ok(Self(all.map(|verdict| verdict.unwrap_or(Verdict::Unknown))))
    }
}

impl Gates {
    /// Judges each gate. A value on a limit takes the better side.
    ///
    /// ```
    /// use saltwright_plan::readiness::inputs::{Inputs, LatestReading};
    /// use saltwright_plan::{Case, Gate, Gates, Needs, Unknown, Verdict};
    /// let (case, latest) = (Case::default(), LatestReading::default());
    /// let (balance, treatment) = (Err(Unknown::Needs(Needs::NONE)), Err(Unknown::NotAsked));
    /// let gates = Gates::of(&Inputs { case: &case, latest, balance: &balance, treatment: &treatment });
    /// assert_eq!(gates.at(Gate::Ph), Verdict::Unknown);
    /// ```
    #[must_use]
    pub fn of(inputs: &Inputs) -> Self {
        Self(GATES.map(|row| (row.judge)(inputs)))
    }

    /// What one gate says.
    #[must_use]
    pub const fn at(&self, gate: Gate) -> Verdict {
        self.0[gate as usize]
    }

    /// Has some chemical to go in first?
    #[must_use]
    pub fn call_for_chemicals(&self) -> bool {
        [Gate::Ph, Gate::Index, Gate::BalanceFirst]
            .iter()
            .any(|gate| matches!(self.at(*gate), Verdict::Wait | Verdict::Stop))
    }

    /// Says any gate of those that `of` chooses this?
    pub(crate) fn any(&self, verdict: Verdict, of: impl Fn(&Row) -> bool) -> bool {
        GATES.iter().any(|row| of(row) && self.at(row.gate) == verdict)
    }
}
