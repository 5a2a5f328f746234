//! Which name shows which part of the plan? Rounding lives here, words do not.

use crate::answer::{Answer, Line, Shown};
use crate::contract::codes::Tick;
use crate::contract::units::{QuantityKind, Unit};
use crate::contract::{Fact, FaultCode, Field, FieldId, List, Output, RowFact, RowOutput, State};
use crate::form::{Texts, Units};
use crate::read::case::Taped;
use crate::read::number::Signs;
use chem::{Alkalinity, Hardness, Mass, Salinity, State as Water, Volume};
use plan::readiness::gates::{By, EffectOnSalt, GATES, Row};
use plan::water::replacement::Amount;
use plan::{Case, Go, Input, Needs, Plan, Standing, Unknown, Verdict};

mod days;
mod drawing;
mod operation;
mod pool;
mod replacement;
mod salt;
mod water;

struct Filler<'a> {
    answer: &'a mut Answer,
    units: Units,
    signs: Signs,
}

/// Puts the plan into the answer.
pub fn present(
    texts: &Texts,
    signs: Signs,
    case: &Case,
    taped: Option<&Taped>,
    plan: &Plan,
    answer: &mut Answer,
) {
    let units = Units::of(texts);
    let mut f = Filler { answer, units, signs };
    if let Some(Taped { measured, typed, metered_wrong }) = taped {
        pool::measured(&mut f, measured, *typed, *metered_wrong);
    }
    f.answer.say(Fact::Ready);
    f.answer.put(Output::Edition, Shown::words(env!("CARGO_PKG_VERSION").into()));
    if let Some(now) = case.now {
        f.answer.put(Output::ClockNow, Shown::moment(now));
    }
    f.needs(plan);
    if let Some(volume) = case.volume {
        let unit = units.water;
        let size = unit.rounded(unit.outward(volume.cubic_metres()));
        f.answer.put(Output::UsedVolume, Shown::plain(size, Some(unit), f.signs));
    }
    if let Some(band) = &case.band {
        f.band(band);
    }
    let standing = plan.salt.standing();
    f.answer.say(match standing {
        None => Fact::StandingUnknown,
        Some(Standing::Short) => Fact::StandingShort,
        Some(Standing::Within) => Fact::StandingWithin,
        Some(Standing::Over) => Fact::StandingOver,
        Some(Standing::Held) => Fact::StandingHeld,
    });
    for (name, unit) in [
        (Output::SaltUnit, units.salt),
        (Output::TaUnit, units.alkalinity),
        (Output::ChUnit, units.hardness),
        (Output::ReadingUnit, units.reading),
    ] {
        f.answer.put(name, Shown::word(unit.code));
    }
    if case.reading_is_rare() {
        f.answer.say(Fact::SaltTiny);
    }
    f.dose(case, plan, &plan.salt);
    if texts.text(Field::AskValue) == Tick::Yes.code() {
        f.pays(&plan.salt);
    }
    if let Some(schedule) = plan.schedule.as_ref().filter(|schedule| schedule.next().is_some()) {
        f.schedule(schedule);
    }
    f.gates(plan);
    match &plan.balance {
        Ok(balance) => f.balance(case, balance),
        Err(Unknown::Chemistry(fault)) => f.chemistry(fault),
        Err(_) => {}
    }
    match &plan.replace {
        Ok(replace) => f.replace(case, replace),
        Err(Unknown::NotAsked) if standing == Some(Standing::Over) => f.answer.say(Fact::ReplaceWithheld),
        Err(Unknown::NotAsked) => {}
        Err(_) => f.answer.say(Fact::ReplaceUnknown),
    }
    f.excess(plan);
    for (state, unit) in [(Fact::AlsoTa, units.alkalinity), (Fact::AlsoCh, units.hardness)] {
        if unit.code != unit.also {
            f.answer.say(state);
        }
    }
    if !matches!(plan.treatment, Err(Unknown::NotAsked)) {
        f.answer.say(Fact::Treat);
    }
    match &plan.treatment {
        Ok(treatment) => f.treatment(case, treatment),
        Err(Unknown::NotAsked) => {}
        Err(Unknown::Needs(_)) => f.answer.say(Fact::TreatUnknown),
        Err(Unknown::Chemistry(_)) => f.answer.say(Fact::TreatOutside),
    }
    f.answer.say(match plan.go {
        Go::CantSay => Fact::AddUnknown,
        Go::Nothing => Fact::AddNone,
        Go::No => Fact::AddNo,
        Go::NotYet => Fact::AddWait,
        Go::Ask => Fact::AddUnknown,
        Go::Yes => Fact::AddYes,
    });
    if plan.go == Go::Ask {
        f.answer.say(Fact::ReadyOpen);
    }
    f.answer.say(match plan.power {
        Go::No => Fact::PowerNo,
        Go::NotYet => Fact::PowerWait,
        Go::Yes => Fact::PowerYes,
        _ => Fact::PowerUnknown,
    });
    f.days(case, plan);
    f.running(case, plan);
}

impl Filler<'_> {
    #[inline(never)]
    fn salt(&mut self, name: Output, x: Salinity) {
        self.answer.put(name, Shown::of(x.mg_per_l(), self.units.salt, self.signs));
    }

    /// Mass, without decimals that are noughts: a count of whole bags is a round figure.
    #[inline(never)]
    fn mass(&mut self, name: Output, x: Mass) {
        let unit = self.units.mass;
        self.answer.put(name, round(x.kilograms(), unit, self.signs));
    }

    #[inline(never)]
    fn water(&mut self, name: Output, x: Volume) {
        self.answer.put(name, Shown::of(x.cubic_metres(), self.units.water, self.signs));
    }

    /// Nothing of what is no number: the logarithm of no calcium.
    #[inline(never)]
    fn number(&mut self, name: Output, x: f64, decimals: usize) {
        if x.is_finite() {
            self.answer.put(name, Shown::number(x, decimals, false, self.signs));
        }
    }

    #[inline(never)]
    fn signed(&mut self, name: Output, x: f64) {
        self.answer.put(name, Shown::number(x, 2, true, self.signs));
    }

    #[inline(never)]
    fn alkalinity(&mut self, name: Output, x: Alkalinity) {
        self.answer.put(name, Shown::of(x.mg_per_l(), self.units.alkalinity, self.signs));
    }

    #[inline(never)]
    fn hardness(&mut self, name: Output, x: Hardness) {
        self.answer.put(name, Shown::of(x.mg_per_l(), self.units.hardness, self.signs));
    }

    /// Bags: as few decimals as they need, at most two.
    #[inline(never)]
    fn bags(&mut self, name: Output, x: f64) {
        let hundredths = (x * 100.0).round();
        self.answer.put(name, Shown::plain(hundredths / 100.0, None, self.signs));
    }

    #[inline(never)]
    fn part(&mut self, name: Output, x: f64) {
        self.answer.put(name, percent(x, self.signs));
    }

    fn amount(&mut self, share: Output, volume: Output, amount: &Amount) {
        self.part(share, amount.share);
        if let Some(v) = amount.volume {
            self.water(volume, v);
        }
    }

    /// What the plan lacks, and whether anything typed can't be used.
    fn needs(&mut self, plan: &Plan) {
        if self.answer.is(State::need(Field::SaltAtc)) {
            self.answer.say(Fact::Need);
        }
        let wants = plan.replace.as_ref().map_or(Needs::NONE, |r| r.wants);
        for input in Input::ALL {
            let field = Field::from(*input);
            // Where only the unit is missing, ask for that.
            let of = FieldId::Field(field);
            let mut faults = self.answer.faults.iter();
            let unitless = faults.any(|f| f.field == of && f.code == FaultCode::NoUnit);
            let asked = field.unit().filter(|_| unitless).unwrap_or(field);
            if plan.needs.contains(*input) {
                self.answer.say(State::need(asked));
                self.answer.say(Fact::Need);
            } else if wants.contains(*input) {
                self.answer.say(State::need(asked));
            }
        }
        if self.answer.faults.iter().any(|f| f.code != FaultCode::NoUnit) {
            self.answer.say(Fact::Fault);
        }
    }

    fn gates(&mut self, plan: &Plan) {
        let (mut lines, mut left) = (Vec::new(), 0.0);
        for Row { gate, code, salt, by, .. } in GATES {
            let asked = by == By::Questions;
            let verdict = plan.gates.at(gate);
            let is = match verdict {
                Verdict::Wait if salt == EffectOnSalt::Notes => RowFact::IsNote,
                Verdict::Pass => RowFact::IsPass,
                Verdict::Wait => RowFact::IsWait,
                Verdict::Stop => RowFact::IsStop,
                Verdict::Unknown => RowFact::IsUnknown,
                Verdict::Exception => RowFact::IsException,
            };
            if verdict == Verdict::Unknown && asked {
                match salt {
                    EffectOnSalt::Holds => {
                        left += 1.0;
                        self.answer.say(Fact::ReadyAsks);
                    }
                    EffectOnSalt::Notes => self.answer.say(Fact::ReadyMore),
                    EffectOnSalt::NotAsked => {}
                }
            }
            self.answer.say(State::gate(gate, verdict));
            let cells = vec![(RowOutput::GatesGate.into(), Shown::word(code))];
            lines.push(Line { state: Some(is.into()), cells });
        }
        self.answer.rows.push((List::Gates, lines));
        self.number(Output::ReadyLeft, left, 0);
        if plan.gates.call_for_chemicals() {
            self.answer.say(Fact::Adjust);
        }
    }
}

fn index(state: &Water) -> Option<f64> {
    state.index.map(|i| i.log10())
}

/// A canonical value in `unit`, rounded as that unit is, without decimals that are noughts.
fn round(x: f64, unit: &'static Unit, signs: Signs) -> Shown {
    let shown = Shown::plain(unit.rounded(unit.outward(x)), Some(unit), signs);
    Shown { number: Some((x, Some(unit))), ..shown }
}

fn percent(x: f64, signs: Signs) -> Shown {
    let unit = Unit::find(QuantityKind::Part, "%");
    unit.map_or(Shown::number(x, 3, false, signs), |u| Shown::of(x, u, signs))
}
