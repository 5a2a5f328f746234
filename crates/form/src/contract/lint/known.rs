//! Which names may stand where in a page? The tables of the contract, as the author's lint reads them.

use super::any_line;
use crate::contract::codes::Codes;
use crate::contract::units::UNITS;
use crate::contract::{
    ASKED, Act, CHOSEN, DrawingMark, DrawingPart, Fact, FaultCode, Field, FieldId, FieldType, InFault, List,
    Mark, Measures, Output, OutputId, RowOutput, State, UnitRule,
};
use plan::Verdict;
use plan::readiness::gates::GATES;

/// A question.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct KnownField {
    /// Its name.
    pub name: String,
    /// The question for its unit, without whose answer it can't be used.
    pub unit: Option<String>,
    /// The codes that it takes; none where it takes others than codes.
    pub codes: Vec<String>,
}

/// A state.
#[derive(Clone, Debug, PartialEq)]
pub struct KnownState {
    /// Its name.
    pub name: String,
    /// The field without which it can't hold.
    pub field: Option<String>,
    /// The code that this field must offer.
    pub code: Option<String>,
    /// A field that brings it about as well.
    pub or: Option<String>,
}

/// All names that a page can use, in the order of the tables; N stands for the number of a line of the log.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// For `name` on what can be filled in.
    pub fields: Vec<KnownField>,
    /// For `name` on `output`.
    pub outputs: Vec<String>,
    /// For `data-when`.
    pub states: Vec<KnownState>,
    /// For `data-fault`, behind the colon.
    pub faults: Vec<String>,
    /// For `output` inside `data-fault`.
    pub in_fault: Vec<String>,
    /// For `data-each`.
    pub lists: Vec<String>,
    /// For `output` inside `data-each`, as `list/output`.
    pub cells: Vec<String>,
    /// For `data-act`.
    pub acts: Vec<String>,
    /// For `data-mark`.
    pub marks: Vec<String>,
    /// For `data-shape`.
    pub shapes: Vec<String>,
    /// For `data-unit`, and `data` inside `data-units`.
    pub units: Vec<String>,
    /// For `data` inside `data-gates`.
    pub gates: Vec<String>,
    /// Results, and `list/output`, that tell how much goes into the water.
    pub doses: Vec<String>,
    /// Words of `data-when` that make an element a caution.
    pub cautions: Vec<String>,
}

impl Known {
    /// What the tables have.
    #[must_use]
    pub fn of_the_contract() -> Self {
        Self {
            fields: fields(),
            outputs: outputs(),
            states: states(),
            faults: texts(FaultCode::ALL.map(FaultCode::name)),
            in_fault: texts(InFault::ALL.map(InFault::name)),
            lists: texts(List::ALL.map(List::name)),
            cells: texts(RowOutput::ALL.map(RowOutput::name)),
            acts: texts(Act::ALL.map(Act::name)),
            marks: texts(DrawingMark::ALL.map(DrawingMark::name)),
            shapes: texts(DrawingPart::ALL.map(DrawingPart::name).into_iter().chain(labels())),
            units: units(),
            gates: texts(GATES.iter().map(|row| row.code)),
            doses: doses(),
            cautions: cautions(),
        }
    }
}

fn texts<'a>(names: impl IntoIterator<Item = &'a str>) -> Vec<String> {
    names.into_iter().map(String::from).collect()
}

fn fields() -> Vec<KnownField> {
    let asked = Field::ALL.into_iter().map(|field| KnownField {
        name: field.name().into(),
        unit: needs_unit(field).then(|| field.unit().map(|unit| unit.name().into())).flatten(),
        codes: match field.kind() {
            FieldType::Choice(codes) => texts(codes.all.iter().copied()),
            FieldType::Unit(_) => texts(field.units().map(|unit| unit.code)),
            _ => Vec::new(),
        },
    });
    let of_attempts = [FieldId::Attempt, FieldId::AttemptUnit, FieldId::AttemptWithin];
    let attempts = ASKED.into_iter().flat_map(|output| of_attempts.map(|of| of(output).name()));
    asked.chain(attempts.map(|name| KnownField { name, ..KnownField::default() })).collect()
}

/// Is there no usual unit for it, so that it can't be used without?
fn needs_unit(field: Field) -> bool {
    match field.kind() {
        FieldType::Number(_, rule) | FieldType::List(_, rule) => {
            matches!(rule, UnitRule::Asked(..) | UnitRule::Squared(_))
        }
        _ => false,
    }
}

fn outputs() -> Vec<String> {
    let echoes = [OutputId::Echo, OutputId::EchoAlso, OutputId::EchoCount];
    let echoes = Field::ALL.into_iter().flat_map(|field| echoes.map(|of| of(field.into())));
    let units = ASKED.map(OutputId::AttemptUnit);
    let results = Output::ALL.map(OutputId::Result).into_iter();
    results.chain(echoes).chain(units).map(OutputId::name).collect()
}

/// The drawing's labels are the results that begin as its parts do.
fn labels() -> impl Iterator<Item = &'static str> {
    let begin = DrawingPart::ALL[0].name().split_inclusive('.').next().unwrap_or_default();
    Output::ALL.map(Output::name).into_iter().filter(move |name| name.starts_with(begin))
}

fn units() -> Vec<String> {
    let mut codes = texts(UNITS.iter().map(|unit| unit.code));
    codes.sort();
    codes.dedup();
    codes
}

/// The field that each choice of [`CHOSEN`] belongs to, and what else brings its states about: a size that is measured,
/// a reading in the log.
const CHOSEN_BY: [(Field, Option<Field>); CHOSEN.len()] = [
    (Field::PoolMethod, Some(Field::PoolShape)),
    (Field::SaltMethod, Some(Field::LogMethod)),
    (Field::SurfaceKind, None),
    (Field::PoolShape, None),
    (Field::PoolFloor, None),
    (Field::View, None),
];

fn states() -> Vec<KnownState> {
    let mut all: Vec<KnownState> = Vec::new();
    for state in State::all() {
        let name = any_line(&state.name());
        if !all.iter().any(|known| known.name == name) {
            all.push(KnownState { name, field: None, code: None, or: None });
        }
    }
    let mut say = |state: Option<State>, field: FieldId| {
        let name = state.map(State::name);
        if let Some(known) = all.iter_mut().find(|known| Some(&known.name) == name.as_ref()) {
            known.field = Some(field.name());
        }
    };
    for field in Field::ALL {
        say(Some(State::need(field)), field.into());
        say(State::echo(field.into()), field.into());
    }
    for output in ASKED {
        for mark in [Mark::Open, Mark::Right, Mark::Near, Mark::Off] {
            say(State::attempt(output, mark), FieldId::Attempt(output));
        }
        say(State::first_off(output), FieldId::Attempt(output));
    }
    for ((begin, Codes { all: codes, .. }), (field, or)) in CHOSEN.into_iter().zip(CHOSEN_BY) {
        for code in *codes {
            let name = format!("{begin}.{code}");
            if let Some(known) = all.iter_mut().find(|known| known.name == name) {
                known.field = Some(field.name().into());
                known.code = Some((*code).into());
                known.or = or.map(|or| or.name().into());
            }
        }
    }
    all
}

/// Salt that is in already is no dose; bags to open are.
fn doses() -> Vec<String> {
    let in_already = |output: &Output| matches!(output, Output::InSince | Output::InAll);
    let goes_in = |output: &Output| {
        matches!(output.facts().measures, Measures::Mass | Measures::Chemical)
            || matches!(output, Output::StageBags | Output::StageLeftBags | Output::BasicBags)
    };
    let results =
        Output::ALL.into_iter().filter(|output| goes_in(output) && !in_already(output)).map(Output::name);
    texts(results.chain([RowOutput::TreatmentFirst, RowOutput::TreatmentWhole].map(RowOutput::name)))
}

/// That salt may not, not yet, or perhaps not go in; that a gate does not pass.
fn cautions() -> Vec<String> {
    let held = [Verdict::Wait, Verdict::Stop, Verdict::Unknown];
    let gates = GATES.iter().flat_map(|row| held.map(|verdict| State::gate(row.gate, verdict).name()));
    let facts = texts([Fact::AddNo, Fact::AddWait, Fact::AddUnknown].map(Fact::name));
    facts.into_iter().chain([format!("!{}", Fact::AddYes.name())]).chain(gates).collect()
}
