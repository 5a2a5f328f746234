//! Which gates are there, in which order are they worked at, and what does each hold?

/// A gate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gate {
    /// The local code, where the pool is not one household's.
    Code,
    /// What the water was treated with before.
    Past,
    /// Cyanuric acid that only other water brings down.
    CyanuricAcid,
    /// The fill water's tests.
    Fill,
    /// Filled, pump and filter running.
    Running,
    /// Clarity.
    Clear,
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
    First,
    /// The water's temperature.
    Heat,
    /// Alkalinity.
    Alkalinity,
    /// Hardness, by surface.
    Hardness,
    /// The band for cyanuric acid, by place.
    Stabiliser,
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
    Grade,
    /// The age of a cement finish.
    FinishAge,
    /// The written word on the finish.
    Clearance,
    /// Other makers' papers.
    Papers,
    /// Weather.
    Weather,
    /// Wiring.
    Wired,
    /// The last reading between the limits, for switching on.
    Level,
    /// Two days since the last bag, for switching on.
    Clock,
}

/// What a gate does to the salt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Salt {
    /// A wait, or what is missing, holds it back.
    Holds,
    /// A wait is a note.
    Notes,
    /// It is not asked.
    NotAsked,
}

/// A row of the table of gates.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// Which.
    pub gate: Gate,
    /// Its code on the page.
    pub code: &'static str,
    /// What it does to the salt.
    pub salt: Salt,
    /// Is it judged for switching on?
    pub power: bool,
    /// Is it answered in words rather than by figures?
    pub asked: bool,
}

const fn row(gate: Gate, code: &'static str, salt: Salt, power: bool, asked: bool) -> Row {
    Row { gate, code, salt, power, asked }
}

/// One row a gate, in the order of the work: what needs draining, clear water and chlorine, metals, balance,
/// the reading, then papers and dates.
pub const GATES: [Row; 30] = {
    use Salt::*;
    [
        row(Gate::Code, "code", Notes, false, true),
        row(Gate::Past, "past", Holds, false, true),
        row(Gate::CyanuricAcid, "cyanurate", Holds, false, false),
        row(Gate::Fill, "fill", Notes, false, true),
        row(Gate::Running, "running", Holds, false, true),
        row(Gate::Clear, "clear", Holds, false, true),
        row(Gate::Algae, "algae", Holds, false, true),
        row(Gate::Chlorine, "chlorine", Holds, true, true),
        row(Gate::Combined, "combined", Notes, false, true),
        row(Gate::Copper, "copper", Notes, false, true),
        row(Gate::Iron, "iron", Notes, false, true),
        row(Gate::First, "first", Holds, false, false),
        row(Gate::Heat, "heat", Holds, true, false),
        row(Gate::Alkalinity, "ta", Notes, false, true),
        row(Gate::Hardness, "ch", Notes, false, true),
        row(Gate::Stabiliser, "cya", Notes, false, true),
        row(Gate::Ph, "ph", Holds, true, false),
        row(Gate::Index, "index", Holds, false, false),
        row(Gate::Volume, "volume", Notes, false, false), // The retest decides.
        row(Gate::Target, "target", Holds, false, false),
        row(Gate::Reading, "reading", Holds, true, false),
        row(Gate::ReadingAge, "reading-age", Holds, true, true),
        row(Gate::Grade, "grade", Notes, false, true),
        row(Gate::FinishAge, "finish-age", Holds, false, true),
        row(Gate::Clearance, "clearance", Holds, false, true),
        row(Gate::Papers, "papers", Notes, false, true),
        row(Gate::Weather, "weather", Notes, false, true),
        row(Gate::Wired, "wired", Notes, true, true),
        row(Gate::Level, "level", NotAsked, true, false),
        row(Gate::Clock, "clock", NotAsked, true, false),
    ]
};
