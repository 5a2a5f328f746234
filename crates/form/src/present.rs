//! Which name shows which part of the plan? Rounding lives here, words do not.

use crate::answer::{Answer, Line, Shown};
use crate::contract::fields;
use crate::contract::units::{Kind, Unit};
use crate::form::{Form, Units};
use crate::read::number::Signs;
use crate::text::joined;
use chem::{Alkalinity, Hardness, Mass, Salinity, State, Volume};
use plan::readiness::gates::{By, EffectOnSalt, GATES, Row};
use plan::water::replacement::Amount;
use plan::{Case, Go, Input, Needs, Plan, Standing, Unknown, Verdict};

mod days;
pub(crate) mod drawing;
mod operation;
mod replacement;
mod salt;
mod water;

struct Filler<'a> {
    answer: &'a mut Answer,
    units: Units,
    signs: Signs,
}

/// Puts the plan into the answer.
pub fn fill(form: &Form, case: &Case, plan: &Plan, units: Units, answer: &mut Answer) {
    let mut f = Filler { answer, units, signs: form.signs() };
    f.answer.say("ready");
    f.answer.put("edition", Shown::words(env!("CARGO_PKG_VERSION").into()));
    if let Some(now) = case.now {
        f.answer.put("clock.now", Shown::moment(now));
    }
    f.needs(plan);
    if let Some(volume) = case.volume {
        let unit = units.water;
        let size = unit.rounded(unit.outward(volume.cubic_metres()));
        f.answer.put("used.volume", Shown::plain(size, Some(unit), f.signs));
    }
    if let Some(band) = &case.band {
        f.band(band);
    }
    let standing = plan.salt.standing();
    f.answer.say(match standing {
        None => "dose.unknown",
        Some(Standing::Short) => "dose.add",
        Some(Standing::Within) => "dose.enough",
        Some(Standing::Over) => "dose.less",
        Some(Standing::Held) => "dose.hold",
    });
    for (name, unit) in [
        ("salt.unit", units.salt),
        ("ta.unit", units.alkalinity),
        ("ch.unit", units.hardness),
        ("reading.unit", units.reading),
    ] {
        f.answer.put(name, Shown::word(unit.code));
    }
    if case.reading_is_rare() {
        f.answer.say("salt.tiny");
    }
    f.dose(case, plan, &plan.salt);
    if form.text("ask.pays") == "yes" {
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
        Err(Unknown::NotAsked) if standing == Some(Standing::Over) => f.answer.say("less.withheld"),
        Err(Unknown::NotAsked) => {}
        Err(_) => f.answer.say("less.unknown"),
    }
    f.excess(plan);
    for (state, unit) in [("also.ta", units.alkalinity), ("also.ch", units.hardness)] {
        if unit.code != unit.also {
            f.answer.say(state);
        }
    }
    if !matches!(plan.treatment, Err(Unknown::NotAsked)) {
        f.answer.say("treat");
    }
    match &plan.treatment {
        Ok(treatment) => f.treatment(case, treatment),
        Err(Unknown::NotAsked) => {}
        Err(Unknown::Needs(_)) => f.answer.say("treat.unknown"),
        Err(Unknown::Chemistry(_)) => f.answer.say("treat.outside"),
    }
    f.answer.say(match plan.go {
        Go::CantSay => "add.unknown",
        Go::Nothing => "add.none",
        Go::No => "add.no",
        Go::NotYet => "add.wait",
        Go::Ask => "add.unknown",
        Go::Yes => "add.yes",
    });
    if plan.go == Go::Ask {
        f.answer.say("ready.open");
    }
    f.answer.say(match plan.power {
        Go::No => "power.no",
        Go::NotYet => "power.wait",
        Go::Yes => "power.yes",
        _ => "power.unknown",
    });
    f.days(case, plan);
    f.running(case, plan);
}

impl Filler<'_> {
    fn salt(&mut self, name: &'static str, x: Salinity) {
        self.answer.put(name, Shown::of(x.mg_per_l(), self.units.salt, self.signs));
    }

    /// Mass, without decimals that are noughts: a count of whole bags is a round figure.
    fn mass(&mut self, name: &'static str, x: Mass) {
        let unit = self.units.mass;
        self.answer.put(name, round(x.kilograms(), unit, self.signs));
    }

    fn water(&mut self, name: &'static str, x: Volume) {
        self.answer.put(name, Shown::of(x.cubic_metres(), self.units.water, self.signs));
    }

    /// Nothing of what is no number: the logarithm of no calcium.
    fn number(&mut self, name: &str, x: f64, decimals: usize) {
        if x.is_finite() {
            self.answer.put(name, Shown::number(x, decimals, false, self.signs));
        }
    }

    fn signed(&mut self, name: &'static str, x: f64) {
        self.answer.put(name, Shown::number(x, 2, true, self.signs));
    }

    fn alkalinity(&mut self, name: &'static str, x: Alkalinity) {
        self.answer.put(name, Shown::of(x.mg_per_l(), self.units.alkalinity, self.signs));
    }

    fn hardness(&mut self, name: &'static str, x: Hardness) {
        self.answer.put(name, Shown::of(x.mg_per_l(), self.units.hardness, self.signs));
    }

    /// Bags: as few decimals as they need, at most two.
    fn bags(&mut self, name: &'static str, x: f64) {
        let hundredths = (x * 100.0).round();
        self.answer.put(name, Shown::plain(hundredths / 100.0, None, self.signs));
    }

    fn part(&mut self, name: &'static str, x: f64) {
        self.answer.put(name, percent(x, self.signs));
    }

    fn amount(&mut self, share: &'static str, volume: &'static str, amount: &Amount) {
        self.part(share, amount.share);
        if let Some(v) = amount.volume {
            self.water(volume, v);
        }
    }

    /// What the plan lacks, and whether anything typed can't be used.
    fn needs(&mut self, plan: &Plan) {
        if self.answer.holds("need.salt-compensated") {
            self.answer.say("need");
        }
        let wants = plan.replace.as_ref().map_or(Needs::NONE, |r| r.wants);
        for input in Input::ALL {
            // Where only the unit is missing, ask for that.
            let unitless = self.answer.faults.iter().any(|f| f.field == input.code() && f.code == "no-unit");
            let asked = if unitless { fields::unit_of(input.code()) } else { input.code() };
            if plan.needs.contains(*input) {
                self.need(asked);
            } else if wants.contains(*input) {
                self.want(asked);
            }
        }
        if self.answer.faults.iter().any(|f| f.code != "no-unit") {
            self.answer.say("fault");
        }
    }

    fn need(&mut self, field: &str) {
        self.want(field);
        self.answer.say_once("need");
    }

    /// `need.` and a field's name, its dots made hyphens.
    fn want(&mut self, field: &str) {
        let state = joined(&["need.", &field.replace('.', "-")]);
        self.answer.say_once(&state);
    }

    fn gates(&mut self, plan: &Plan) {
        let (mut lines, mut left) = (Vec::new(), 0.0);
        for Row { gate, code, salt, by, .. } in GATES {
            let asked = by == By::Questions;
            let (verdict, mut is) = match plan.gates.at(gate) {
                Verdict::Pass => ("pass", "is.pass"),
                Verdict::Wait => ("wait", "is.wait"),
                Verdict::Stop => ("stop", "is.stop"),
                Verdict::Unknown => ("unknown", "is.unknown"),
                Verdict::Over => ("over", "is.over"),
            };
            let ask = if salt == EffectOnSalt::Holds { "ready.asks" } else { "ready.more" };
            if verdict == "unknown" && asked && salt == EffectOnSalt::Holds {
                left += 1.0;
            }
            if verdict == "unknown" && asked && salt != EffectOnSalt::NotAsked && !self.answer.holds(ask) {
                self.answer.say(ask);
            }
            if verdict == "wait" && salt == EffectOnSalt::Notes {
                is = "is.note";
            }
            self.answer.say(&joined(&["gate.", code, ".", verdict]));
            lines.push(Line { state: is, cells: vec![("gate".into(), Shown::word(code))] });
        }
        self.answer.rows.push(("gates", lines));
        self.number("ready.left", left, 0);
        if plan.gates.call_for_chemicals() {
            self.answer.say("adjust");
        }
    }
}

fn index(state: &State) -> Option<f64> {
    state.index.map(|i| i.log10())
}

/// A canonical value in `unit`, rounded as that unit is, without decimals that are noughts.
fn round(x: f64, unit: &'static Unit, signs: Signs) -> Shown {
    let shown = Shown::plain(unit.rounded(unit.outward(x)), Some(unit), signs);
    Shown { number: Some((x, Some(unit))), ..shown }
}

fn percent(x: f64, signs: Signs) -> Shown {
    let unit = Unit::find(Kind::Part, "%");
    unit.map_or(Shown::number(x, 3, false, signs), |u| Shown::of(x, u, signs))
}
