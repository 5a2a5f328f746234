//! Which questions are there? One row a question; the page, the link and the file use these names.

use crate::unit::Kind;
use chem::bounds::{self, Bounds};
use plan::{Ground, History, Instrument, Method, Surface};

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
    /// One of these codes.
    Choice(&'static [&'static str]),
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
    /// The same, and in this unit while nobody has answered.
    Usual(Kind, &'static str, &'static str),
}

const fn number(name: &'static str, bounds: &'static Bounds, unit: In) -> Field {
    Field { name, answer: Answered::Number(bounds, unit) }
}

const fn choice(name: &'static str, codes: &'static [&'static str]) -> Field {
    Field { name, answer: Answered::Choice(codes) }
}

const WATER: In = In::Asked(Kind::Water, "pool.volume.unit");
const SALT: In = In::Asked(Kind::Salt, "salt.now.unit");
const TA: In = In::Usual(Kind::Alkalinity, "water.ta.unit", "mg/L");
const CH: In = In::Usual(Kind::Hardness, "water.ch.unit", "mg/L");
const PART: In = In::Fixed(Kind::Part, "%");

/// Every question but the units, which are the questions that [`In::Asked`] and [`In::Usual`] name.
pub const FIELDS: &[Field] = &[
    number("pool.volume", &bounds::VOLUME, WATER),
    choice("pool.how", Method::CODES),
    choice("surface.kind", Surface::CODES),
    number("salt.now", &bounds::SALINITY, SALT),
    choice("salt.how", Instrument::CODES),
    choice("salt.compensated", &["yes", "no"]),
    choice("salt.class", History::CODES),
    number("salt.target", &bounds::TARGET, SALT),
    number("salt.low", &bounds::TARGET, SALT),
    number("salt.high", &bounds::TARGET, SALT),
    number("bag.size", &bounds::BAG_SIZE, In::Asked(Kind::Mass, "bag.size.unit")),
    number("bag.purity", &bounds::PURITY, PART),
    number("bag.have", &bounds::BAGS, In::Bare),
    number("water.heat", &bounds::TEMPERATURE, In::Asked(Kind::Heat, "water.heat.unit")),
    number("water.ph", &bounds::PH, In::Bare),
    number("water.ta", &bounds::ALKALINITY, TA),
    number("water.ch", &bounds::HARDNESS, CH),
    number("water.cya", &bounds::CYANURATE, In::Bare),
    number("water.fc", &bounds::CHLORINE, In::Bare),
    number("fill.salt", &bounds::SALINITY, SALT),
    number("fill.heat", &bounds::TEMPERATURE, In::Asked(Kind::Heat, "fill.heat.unit")),
    number("fill.ph", &bounds::PH, In::Bare),
    number("fill.ta", &bounds::ALKALINITY, TA),
    number("fill.ch", &bounds::HARDNESS, CH),
    number("fill.cya", &bounds::CYANURATE, In::Bare),
    number("less.cap", &bounds::CAP, PART),
    choice("less.ground", Ground::CODES),
    number("goal.ph", &bounds::MODEL_PH, In::Bare),
    number("goal.ta", &bounds::MODEL_ALKALINITY, TA),
    number("goal.ch", &bounds::MODEL_HARDNESS, CH),
    number("goal.cya", &bounds::MODEL_CYANURATE, In::Bare),
    number("goal.fc", &bounds::GOAL_CHLORINE, In::Bare),
    number("treat.acid", &bounds::ACID_PERCENT, In::Usual(Kind::Acid, "treat.acid.unit", "%{HCl}")),
    number("treat.bleach", &bounds::BLEACH_PERCENT, In::Usual(Kind::Bleach, "treat.bleach.unit", "g/dL")),
    number("treat.calcium", &bounds::PURITY, PART),
    number("treat.powder", &bounds::PURITY, PART),
    choice("show", &["as-typed", "metric", "us"]),
];

/// The question of that name.
pub fn find(name: &str) -> Option<&'static Field> {
    FIELDS.iter().find(|f| f.name == name)
}

/// The question that answers a field's unit; the field itself where none does.
pub fn unit_of(name: &str) -> &str {
    match find(name).map(|f| &f.answer) {
        Some(Answered::Number(_, In::Asked(_, asked) | In::Usual(_, asked, _))) => asked,
        _ => name,
    }
}
