//! Which name shows which part of the plan? Rounding lives here, words do not.

use crate::answer::{Answer, Line, Shown, joined};
use crate::field;
use crate::form::{Form, Units};
use crate::number::Signs;
use crate::unit::Unit;
use chem::salt::Responds;
use chem::{Mass, Quantity, Salinity, State, Volume};
use plan::balance::After;
use plan::policy;
use plan::replace::{Amount, Basis, Parts};
use plan::rules::{GATES, low_is_a_note};
use plan::treat::{self, What};
use plan::{Balance, Band, Case, Dose, Go, Input, Plan, Replace, Standing, Treatment, Unknown, Verdict};

struct Filler<'a> {
    answer: &'a mut Answer,
    units: Units,
    signs: Signs,
}

/// Puts the plan into the answer.
pub fn fill(form: &Form, case: &Case, plan: &Plan, units: Units, answer: &mut Answer) {
    let mut f = Filler { answer, units, signs: form.signs() };
    f.answer.say("ready");
    f.needs(plan);
    if let Some(band) = &case.band {
        f.band(band);
    }
    f.answer.say(match plan.standing {
        None => "dose.unknown",
        Some(Standing::Short) => "dose.add",
        Some(Standing::Within) => "dose.enough",
        Some(Standing::Over) => "dose.less",
    });
    let unit = f.units.salt.code;
    f.answer.put("salt.unit", Shown { text: String::new(), unit: Some(unit) });
    if case.reading_is_rare() {
        f.answer.say("salt.tiny");
    }
    f.dose(case, plan, &plan.dose);
    f.gates(plan);
    match &plan.balance {
        Ok(balance) => f.balance(case, balance),
        Err(Unknown::Chemistry(fault)) => f.chemistry(fault),
        Err(_) => {}
    }
    match &plan.replace {
        Ok(replace) => f.replace(replace),
        Err(Unknown::NotAsked) if plan.standing == Some(Standing::Over) => f.answer.say("less.withheld"),
        Err(Unknown::NotAsked) => {}
        Err(_) => f.answer.say("less.unknown"),
    }
    match &plan.treatment {
        Ok(treatment) => f.treatment(treatment),
        Err(Unknown::NotAsked) => {}
        Err(_) => f.answer.say("treat.unknown"),
    }
    f.answer.say(match plan.go {
        Go::CantSay => "add.unknown",
        Go::Nothing => "add.none",
        Go::No => "add.no",
        Go::NotYet => "add.wait",
        Go::Quote => "add.quote",
    });
}

impl Filler<'_> {
    fn salt(&mut self, name: &'static str, x: Salinity) {
        self.answer.put(name, Shown::of(x.mg_per_l(), self.units.salt, self.signs));
    }

    /// Mass, without decimals that are noughts: a count of whole bags is a round figure.
    fn mass(&mut self, name: &'static str, x: Mass) {
        let unit = self.units.mass;
        self.answer
            .put(name, Shown::plain(unit.rounded(unit.outward(x.kilograms())), Some(unit), self.signs));
    }

    fn water(&mut self, name: &'static str, x: Volume) {
        self.answer.put(name, Shown::of(x.cubic_metres(), self.units.water, self.signs));
    }

    fn number(&mut self, name: &'static str, x: f64, decimals: usize) {
        self.answer.put(name, Shown::number(x, decimals, false, self.signs));
    }

    fn signed(&mut self, name: &'static str, x: f64) {
        self.answer.put(name, Shown::number(x, 2, true, self.signs));
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
        for input in Input::ALL.iter().filter(|i| plan.needs.contains(**i)) {
            // Where only the unit is missing, ask for that.
            let unitless = self.answer.faults.iter().any(|f| f.field == input.code() && f.code == "no-unit");
            self.need(if unitless { field::unit_of(input.code()) } else { input.code() });
        }
        if self.answer.faults.iter().any(|f| f.code != "no-unit") {
            self.answer.say("fault");
        }
    }

    /// `need.` and a field's name, its dots made hyphens.
    fn need(&mut self, field: &str) {
        let state = joined(&["need.", &field.replace('.', "-")]);
        if !self.answer.holds(&state) {
            self.answer.say(&state);
        }
        if !self.answer.holds("need") {
            self.answer.say("need");
        }
    }

    fn band(&mut self, band: &Band) {
        self.salt("used.low", band.low);
        self.salt("used.target", band.target);
        self.salt("used.high", band.high);
        if band.is_unusual() {
            self.answer.say("salt.odd");
        }
        if band.limits_ours {
            self.answer.say("limits.ours");
        }
    }

    fn dose(&mut self, case: &Case, plan: &Plan, dose: &Dose) {
        if let Some([from, to]) = dose.range {
            self.answer.say("buy.range");
            self.number("buy.from", from.into(), 0);
            self.number("buy.to", to.into(), 0);
        }
        let Some(rise) = dose.rise else { return };
        self.answer.say("dose.top");
        self.salt("dose.rise", rise);
        if let Some(pure) = dose.pure {
            self.mass("dose.pure", pure);
        }
        if let Some(mass) = dose.mass {
            self.mass("dose.mass", mass);
        }
        let Some(s) = &dose.staging else { return };
        self.bags("dose.bags", s.bags);
        self.number("buy.total", s.total.into(), 0);
        self.salt("buy.lands", s.lands);
        if let Some(left) = s.left {
            self.mass("buy.left", left);
        }
        if let Some(buy) = s.buy {
            self.number("buy.bags", buy.into(), 0);
            if buy == 0 {
                self.answer.say("buy.none");
            }
        }
        if let Some(have) = case.bag.in_hand.or(0) {
            self.number("buy.have", have.into(), 0);
        }
        if s.rounded_down {
            self.answer.say("buy.rounded-down");
        }
        if plan.standing != Some(Standing::Short) {
            return;
        }
        if s.spare {
            self.answer.say("buy.spare");
        }
        self.answer.say(if s.first.weighed { "first.weigh" } else { "first.bags" });
        self.number("first.share", policy::FIRST_STAGE, 1);
        self.bags("first.bags", s.first.bags);
        self.mass("first.mass", s.first.mass);
        self.salt("first.expect", s.expect);
        self.bags("later.bags", s.later.bags);
        self.mass("later.mass", s.later.mass);
        self.salt("later.expect", s.lasts);
    }

    fn gates(&mut self, plan: &Plan) {
        for (gate, code, _) in GATES {
            let verdict = match plan.gates.at(gate) {
                Verdict::Pass => "pass",
                Verdict::Wait => "wait",
                Verdict::Stop => "stop",
                Verdict::Unknown => "unknown",
            };
            self.answer.say(&joined(&["gate.", code, ".", verdict]));
        }
        if plan.gates.call_for_chemicals() {
            self.answer.say("adjust");
        }
    }

    fn balance(&mut self, case: &Case, b: &Balance) {
        self.answer.say(match b.responds {
            Responds::ToChloride => "index.salt.chloride",
            _ => "index.salt.conductivity",
        });
        if b.belied {
            self.answer.say("index.salt.belied");
        }
        self.salt("index.salt.now", b.salt);
        let today = &b.today;
        self.number("index.carbonate", today.carbonate_alkalinity.mg_per_l(), 0);
        self.number("index.strength", today.strength.molal(), 4);
        self.number("index.log-calcium", today.log_calcium, 3);
        self.number("index.log-carbonate", today.log_carbonate, 3);
        self.number("index.log-solubility", today.log_solubility, 3);
        let Some(now) = index(today) else {
            self.answer.say("index.no-calcium");
            return;
        };
        self.signed("index.now", now);
        if let Some(judged) = b.judged() {
            let judged = plan::rules::shown(judged.log10());
            self.signed("index.worse", judged);
            if judged < 0.0 {
                self.answer.say("index.low");
                if low_is_a_note(case, Some(b)) {
                    self.answer.say("index.note");
                }
            } else if judged > 0.0 {
                self.answer.say("index.high");
            }
        }
        let salted = match &b.after {
            After::Salted(Ok(salted)) => salted,
            After::Salted(Err(fault)) => return self.chemistry(fault),
            After::Today | After::Unknown => return,
        };
        self.answer.say("index.after");
        self.salt("index.salt.after", salted.salt);
        self.number("index.ph.free", salted.free_ph.ph.units(), 2);
        let sides = [
            ("index.same", "index.shift.same", &salted.same_ph),
            ("index.free", "index.shift.free", &salted.free_ph),
        ];
        for (name, shift, state) in sides {
            if let Some(then) = index(state) {
                self.signed(name, then);
                // Of the figures shown, so that the sum on the page comes out.
                self.signed(shift, plan::rules::shown(then) - plan::rules::shown(now));
            }
        }
    }

    fn chemistry(&mut self, fault: &chem::Fault) {
        match fault {
            chem::Fault::NoCarbonate | chem::Fault::NoSolution => self.answer.say("index.no-carbonate"),
            chem::Fault::Outside(out) => {
                self.answer.say("index.outside");
                let field = match out.bounds.quantity {
                    Quantity::Temperature => "outside.water-heat",
                    Quantity::Ph => "outside.water-ph",
                    Quantity::Alkalinity => "outside.water-ta",
                    Quantity::Hardness => "outside.water-ch",
                    Quantity::Cyanurate => "outside.water-cya",
                    _ => "outside.salt-now",
                };
                self.answer.say(field);
            }
        }
    }

    fn replace(&mut self, r: &Replace) {
        let share = match &r.at_once {
            Ok(amount) => amount,
            Err(_) => return self.answer.say("less.impossible"),
        };
        self.answer.say("less.known");
        self.amount("less.share", "less.volume", share);
        if let Some(flow) = &r.exchange {
            self.amount("less.flow.share", "less.flow.volume", flow);
        }
        if let Some(parts) = &r.parts {
            self.part("less.cap", parts.cap.share.ratio());
            self.number("less.count", parts.count.into(), 0);
            self.amount("less.total.share", "less.total.volume", &parts.total);
            self.answer.say(match parts.cap.basis {
                Basis::Careful => "cap.ours",
                Basis::Cement => "cap.third",
                Basis::Owner => "cap.owner",
            });
            if parts.owner_larger {
                self.answer.say("cap.larger");
            }
            self.answer.say("less.parts");
            self.parts(parts);
        }
        let tests = [
            ("less.ta", r.alkalinity.map(|x| x.mg_per_l())),
            ("less.ch", r.hardness.map(|x| x.mg_per_l())),
            ("less.cya", r.cyanurate.map(|x| x.mg_per_l())),
        ];
        for (name, x) in tests {
            if let Some(x) = x {
                self.number(name, x, 0);
            }
        }
        match &r.mixed {
            Err(Unknown::Chemistry(_)) => self.answer.say("less.outside"),
            Err(_) => {}
            Ok(mixed) => {
                self.answer.say("less.mixed");
                self.number("less.ph", mixed.ph.units(), 2);
                if let Some(i) = index(mixed) {
                    self.signed("less.index", i);
                }
            }
        }
    }

    fn treatment(&mut self, t: &Treatment) {
        for (holds, state) in [
            (t.hardness_over, "treat.hardness-over"),
            (t.cyanurate_over, "treat.cyanurate-over"),
            (t.below_air, "treat.below-air"),
            (t.steps.iter().any(Option::is_some), "treat.steps"),
        ] {
            if holds {
                self.answer.say(state);
            }
        }
        let signs = self.signs;
        let mut lines = Vec::new();
        for step in t.steps.iter().flatten() {
            let state = match step.what {
                What::Bicarbonate => "treat.bicarbonate",
                What::AcidAndAir => "treat.acid-air",
                What::Cyanuric => "treat.cyanuric",
                What::Calcium => "treat.calcium",
                What::Acid => "treat.acid",
                What::Carbonate => "treat.carbonate",
            };
            let mut cells = vec![
                ("whole".into(), self.amount_of(step.whole)),
                ("first".into(), self.amount_of(step.first)),
                ("then-ph".into(), Shown::number(step.then.ph.units(), 2, false, signs)),
                ("then-ta".into(), Shown::number(step.alkalinity.mg_per_l(), 0, false, signs)),
                ("wait-least".into(), Shown::number(step.wait[0].into(), 0, false, signs)),
                ("wait-most".into(), Shown::number(step.wait[1].into(), 0, false, signs)),
            ];
            for (name, index) in [("then-index", step.then.index), ("then-salted", step.salted)] {
                if let Some(index) = index {
                    cells.push((name.into(), Shown::number(index.log10(), 2, true, signs)));
                }
            }
            lines.push(Line { state, cells });
        }
        self.answer.rows.push(("treatment", lines));
    }

    fn amount_of(&self, amount: treat::Amount) -> Shown {
        let (unit, x) = match amount {
            treat::Amount::Powder(mass) => (self.units.mass, mass.kilograms()),
            treat::Amount::Liquid(volume) => (self.units.liquid, volume.cubic_metres()),
        };
        Shown::plain(unit.rounded(unit.outward(x)), Some(unit), self.signs)
    }

    fn parts(&mut self, parts: &Parts) {
        let (units, signs) = (self.units, self.signs);
        let mut rows = Vec::new();
        for part in parts.first.iter().flatten() {
            let mut row = vec![
                ("pass".into(), Shown::number((rows.len() + 1) as f64, 0, false, signs)),
                ("share".into(), percent(part.amount.share, signs)),
                ("salt".into(), Shown::of(part.salt.mg_per_l(), units.salt, signs)),
            ];
            if let Some(v) = part.amount.volume {
                row.push(("volume".into(), Shown::of(v.cubic_metres(), units.water, signs)));
            }
            rows.push(Line { state: "", cells: row });
        }
        if parts.count as usize > rows.len() {
            self.answer.say("less.many");
        }
        self.answer.rows.push(("passes", rows));
    }
}

fn index(state: &State) -> Option<f64> {
    state.index.map(|i| i.log10())
}

fn percent(x: f64, signs: Signs) -> Shown {
    let unit = Unit::find(crate::unit::Kind::Part, "%");
    unit.map_or(Shown::number(x, 3, false, signs), |u| Shown::of(x, u, signs))
}
