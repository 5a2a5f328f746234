//! Which questions are there? One row a question; the page, the link and the file use these names.

use crate::contract::units::Kind;
use chem::bounds::{self, Bounds};
use plan::limits;
use plan::log::MOST_ENTRIES;
use plan::{
    Algae, Clarity, Grade, Grains, Ground, History, Instrument, Method, Paper, Place, Running, Surface,
    Treated, Weather, Wiring, Word, YesNo,
};

/// A question.
#[derive(Debug)]
pub struct Field {
    /// Its name in the form.
    pub name: &'static str,
    /// What kind of answer it takes.
    pub answer: Answered,
}

/// What kind of answer a question takes.
#[derive(Debug)]
pub enum Answered {
    /// A number within a row of the table of bounds.
    Number(&'static Bounds, In),
    /// Numbers in a row, each within a row of the table of bounds.
    List(&'static Bounds, In),
    /// One of these codes.
    Choice(&'static [&'static str]),
    /// A moment: a day and a time of day.
    Moment,
    /// A day.
    Day,
    /// Words of a person's own, kept and shown, never judged.
    Text,
}

/// In which unit a number is typed.
#[derive(Debug)]
pub enum In {
    /// In no unit.
    Bare,
    /// In one fixed unit.
    Fixed(Kind, &'static str),
    /// In the unit that this question answers.
    Asked(Kind, &'static str),
    /// In the square of the unit of lengths that this question answers.
    Squared(&'static str),
    /// As [`In::Asked`], and in this unit while nobody has answered.
    Usual(Kind, &'static str, &'static str),
}

const fn number(name: &'static str, bounds: &'static Bounds, unit: In) -> Field {
    Field { name, answer: Answered::Number(bounds, unit) }
}

const fn choice(name: &'static str, codes: &'static [&'static str]) -> Field {
    Field { name, answer: Answered::Choice(codes) }
}

const fn moment(name: &'static str) -> Field {
    Field { name, answer: Answered::Moment }
}

const fn day(name: &'static str) -> Field {
    Field { name, answer: Answered::Day }
}

const fn text(name: &'static str) -> Field {
    Field { name, answer: Answered::Text }
}

const fn list(name: &'static str, bounds: &'static Bounds) -> Field {
    Field { name, answer: Answered::List(bounds, LENGTH) }
}

const LENGTH: In = In::Asked(Kind::Length, "pool.length.unit");
const PART_OF_WATER: In = In::Asked(Kind::Water, "pool.part.unit");
const METER: In = In::Asked(Kind::Water, "pool.meter.unit");
const WATER: In = In::Asked(Kind::Water, "pool.volume.unit");
const SALT: In = In::Asked(Kind::Salt, "salt.now.unit");
const READING: In = In::Asked(Kind::Reading, "salt.now.unit");
const FLOW: In = In::Usual(Kind::Flow, "less.flow.unit", "L/min");
const TA: In = In::Usual(Kind::Alkalinity, "water.ta.unit", "mg/L");
const CH: In = In::Usual(Kind::Hardness, "water.ch.unit", "mg/L");
const PART: In = In::Fixed(Kind::Part, "%");

/// What a line of the log can be read with: an assumed reading, the last of the list, is none.
pub const READ_WITH: &[&str] = Instrument::CODES.split_at(Instrument::CODES.len() - 1).0;

/// Edges that can be measured.
pub const SHAPES: &[&str] = &["rectangle", "round", "ellipse", "stadium", "kidney", "ell", "freeform"];

/// Floors that can be measured.
pub const FLOORS: &[&str] = &["level", "slope", "break", "hopper"];

/// Every question but the units, which are the questions that [`In::Asked`] and [`In::Usual`] name.
pub const FIELDS: &[Field] = &[
    number("pool.volume", &bounds::POOL, WATER),
    choice("pool.how", Method::CODES),
    choice("pool.shape", SHAPES),
    number("pool.length", &limits::SPAN, LENGTH),
    number("pool.width", &limits::SPAN, LENGTH),
    number("pool.lobe-a", &limits::SPAN, LENGTH),
    number("pool.lobe-b", &limits::SPAN, LENGTH),
    number("pool.gap", &limits::SPAN, LENGTH),
    list("pool.widths", &bounds::LENGTH),
    list("pool.depths", &limits::DEPTH),
    choice("pool.floor", FLOORS),
    number("pool.shallow", &limits::DEPTH, LENGTH),
    number("pool.deep", &limits::DEPTH, LENGTH),
    number("pool.flat", &bounds::LENGTH, LENGTH),
    number("pool.slope", &bounds::LENGTH, LENGTH),
    number("pool.pad-length", &bounds::LENGTH, LENGTH),
    number("pool.pad-width", &bounds::LENGTH, LENGTH),
    number("pool.length-b", &limits::SPAN, LENGTH),
    number("pool.width-b", &limits::SPAN, LENGTH),
    number("pool.depth-b", &limits::DEPTH, LENGTH),
    number("pool.ledge-area", &bounds::AREA, In::Squared("pool.length.unit")),
    number("pool.ledge-water", &bounds::LENGTH, LENGTH),
    number("pool.ledge-around", &limits::DEPTH, LENGTH),
    list("pool.steps", &limits::DEPTH),
    number("pool.steps-width", &bounds::LENGTH, LENGTH),
    number("pool.steps-tread", &bounds::LENGTH, LENGTH),
    number("pool.less", &limits::PART, PART_OF_WATER),
    number("pool.spa", &limits::PART, PART_OF_WATER),
    number("pool.meter-before", &limits::METER, METER),
    number("pool.meter-after", &limits::METER, METER),
    choice("surface.kind", Surface::CODES),
    number("pool.doubt", &limits::DOUBT, PART),
    number("salt.now", &bounds::SALINITY, READING),
    number("salt.again", &bounds::SALINITY, READING),
    moment("salt.when"),
    choice("salt.how", Instrument::CODES),
    choice("salt.compensated", &["yes", "no"]),
    choice("salt.class", History::CODES),
    number("salt.target", &limits::TARGET, SALT),
    number("salt.low", &limits::TARGET, SALT),
    number("salt.high", &limits::TARGET, SALT),
    number("bag.size", &limits::BAG_SIZE, In::Asked(Kind::Mass, "bag.size.unit")),
    number("bag.purity", &limits::BAG_PURITY, PART),
    number("bag.have", &limits::BAGS, In::Bare),
    number("water.heat", &bounds::TEMPERATURE, In::Asked(Kind::Heat, "water.heat.unit")),
    number("water.ph", &bounds::POOL_PH, In::Bare),
    number("water.ta", &bounds::ALKALINITY, TA),
    number("water.ch", &bounds::HARDNESS, CH),
    number("water.cya", &bounds::CYANURIC_ACID, In::Bare),
    number("water.fc", &bounds::CHLORINE, In::Bare),
    number("fill.salt", &bounds::SALINITY, SALT),
    number("fill.heat", &bounds::TEMPERATURE, In::Asked(Kind::Heat, "fill.heat.unit")),
    number("fill.ph", &bounds::POOL_PH, In::Bare),
    number("fill.ta", &bounds::ALKALINITY, TA),
    number("fill.ch", &bounds::HARDNESS, CH),
    number("fill.cya", &bounds::CYANURIC_ACID, In::Bare),
    number("less.cap", &limits::CAP, PART),
    choice("less.ground", Ground::CODES),
    number("goal.ph", &bounds::MODEL_PH, In::Bare),
    number("goal.ta", &bounds::MODEL_ALKALINITY, TA),
    number("goal.ch", &bounds::MODEL_HARDNESS, CH),
    number("goal.cya", &bounds::MODEL_CYANURIC_ACID, In::Bare),
    number("goal.fc", &limits::GOAL_CHLORINE, In::Bare),
    number("treat.acid", &bounds::ACID_PERCENT, In::Usual(Kind::Acid, "treat.acid.unit", "%{HCl}")),
    number("treat.bleach", &bounds::BLEACH_PERCENT, In::Usual(Kind::Bleach, "treat.bleach.unit", "g/dL")),
    number("treat.calcium", &limits::BAG_PURITY, PART),
    number("treat.powder", &limits::BAG_PURITY, PART),
    number("level.over", &limits::RISK, PART),
    number("level.low", &limits::CHANCE, PART),
    number("level.cap", &limits::FIRST_PART, PART),
    number("level.enough", &limits::CHANCE, PART),
    number("level.drained", &limits::CHANCE, PART),
    number("level.slack", &limits::SLACK, In::Bare),
    number("water.cc", &limits::TRACE, In::Bare),
    number("water.cu", &limits::TRACE, In::Bare),
    number("water.fe", &limits::TRACE, In::Bare),
    choice("salt.since", YesNo::CODES),
    day("surface.day"),
    choice("surface.word", Word::CODES),
    text("surface.who"),
    day("surface.word-day"),
    choice("past.treated", Treated::CODES),
    choice("papers.liner", Paper::CODES),
    choice("papers.heater", Paper::CODES),
    choice("papers.cover", Paper::CODES),
    choice("papers.stone", Paper::CODES),
    choice("papers.rails", Paper::CODES),
    choice("ready.full", YesNo::CODES),
    choice("ready.running", Running::CODES),
    choice("ready.clear", Clarity::CODES),
    choice("ready.algae", Algae::CODES),
    choice("ready.people", YesNo::CODES),
    choice("ready.weather", Weather::CODES),
    choice("ready.wired", Wiring::CODES),
    choice("bag.grade", Grade::CODES),
    choice("pool.kind", plan::Kind::CODES),
    choice("pool.operator", YesNo::CODES),
    choice("pool.place", Place::CODES),
    choice("grains", Grains::CODES),
    text("job.name"),
    text("job.by"),
    text("job.note"),
    text("over.finish-age.who"),
    text("over.finish-age.role"),
    day("over.finish-age.day"),
    text("over.clearance.who"),
    text("over.clearance.role"),
    day("over.clearance.day"),
    text("over.papers.who"),
    text("over.papers.role"),
    day("over.papers.day"),
    text("over.code.who"),
    text("over.code.role"),
    day("over.code.day"),
    number("run.demand", &limits::DEMAND, In::Bare),
    number("run.makes", &limits::OUTPUT, In::Asked(Kind::Output, "run.makes.unit")),
    number("run.hours", &limits::HOURS, In::Bare),
    number("season.lost", &limits::LOST, In::Asked(Kind::Water, "season.lost.unit")),
    number("season.backwash", &limits::LOST, In::Asked(Kind::Water, "season.lost.unit")),
    number("season.times", &limits::TIMES, In::Bare),
    number("season.rain", &limits::RAIN, In::Asked(Kind::Rain, "season.rain.unit")),
    number("less.out", &limits::FLOW, FLOW),
    number("less.in", &limits::FLOW, FLOW),
    number("less.price", &limits::PRICE, In::Usual(Kind::Price, "less.price.unit", "/m3")),
    moment("start.when"),
    moment("on.when"),
    number("bag.price", &limits::PRICE, In::Bare),
    // N is the number of a line: see [`LINES`].
    choice("log.N.kind", &["dose", "reading", "struck"]),
    moment("log.N.when"),
    number("log.N.mass", &limits::SALT, In::Asked(Kind::Dose, "log.N.mass.unit")),
    number("log.N.salt", &bounds::SALINITY, READING),
    number("log.N.again", &bounds::SALINITY, READING),
    choice("log.N.how", READ_WITH),
    choice("show", &["as-typed", "metric", "us"]),
];

/// The names of the questions in one line of the log.
#[derive(Debug)]
pub struct Line {
    /// Salt put in, or read?
    pub kind: &'static str,
    /// When?
    pub when: &'static str,
    /// How much went in?
    pub mass: &'static str,
    /// In which unit?
    pub unit: &'static str,
    /// What was read?
    pub salt: &'static str,
    /// And when it was read again at once?
    pub again: &'static str,
    /// With what?
    pub how: &'static str,
}

impl Line {
    /// All names whose answers begin a line; a unit alone does not.
    pub const fn names(&self) -> [&'static str; 6] {
        [self.kind, self.when, self.mass, self.salt, self.again, self.how]
    }
}

macro_rules! lines {
    ($($n:literal)*) => {
        [$(Line {
            kind: concat!("log.", $n, ".kind"),
            when: concat!("log.", $n, ".when"),
            mass: concat!("log.", $n, ".mass"),
            unit: concat!("log.", $n, ".mass.unit"),
            salt: concat!("log.", $n, ".salt"),
            again: concat!("log.", $n, ".again"),
            how: concat!("log.", $n, ".how"),
        }),*]
    };
}

/// The lines of the log, from 1.
pub const LINES: [Line; MOST_ENTRIES] =
    lines!(1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24);

/// The question of that name; of a line of the log, the one that stands for all lines.
pub fn find(name: &str) -> Option<&'static Field> {
    match name.strip_prefix("log.").and_then(|rest| rest.split_once('.')) {
        Some((_, asked)) => FIELDS.iter().find(|field| field.name.strip_prefix("log.N.") == Some(asked)),
        None => FIELDS.iter().find(|field| field.name == name),
    }
}

/// The question that answers a field's unit; the field itself where none does.
pub fn unit_of(name: &str) -> &str {
    if let Some(line) = LINES.iter().find(|line| line.mass == name) {
        return line.unit;
    }
    match find(name).map(|f| &f.answer) {
        Some(
            Answered::Number(_, In::Asked(_, asked) | In::Usual(_, asked, _) | In::Squared(asked))
            | Answered::List(_, In::Asked(_, asked)),
        ) => asked,
        _ => name,
    }
}
