//! Which name shows which part of the plan? Rounding lives here, words do not.

use crate::answer::{Answer, Shown, joined};
use crate::field;
use crate::form::{Form, Units};
use crate::number::Signs;
use crate::unit::Unit;
use chem::salt::Responds;
use chem::{Mass, Quantity, Salinity, State, Volume, dilution};
use plan::replace::{Amount, Basis};
use plan::{Balance, Band, Case, Dose, Go, Input, Plan, Replace, Standing, Unknown, Verdict};

/// Most rows of part-drains shown.
pub const MOST_PASSES: usize = 12;

struct Filler<'a> {
    answer: &'a mut Answer,
    units: Units,
    signs: Signs,
}

/// Puts the plan into the answer.
pub fn fill(form: &Form, case: &Case, plan: &Plan, units: Units, answer: &mut Answer) {
    let mut f = Filler { answer, units, signs: form.signs() };
    f.answer.say("ready");
    f.needs(form, plan);
    if let Some(band) = &case.band {
        f.band(band);
    }
    f.answer.say(match plan.standing {
        None => "dose.unknown",
        Some(Standing::Short) => "dose.add",
        Some(Standing::Within) => "dose.enough",
        Some(Standing::Over) => "dose.less",
    });
    f.dose(case, plan, &plan.dose);
    f.gates(plan);
    match &plan.balance {
        Ok(balance) => f.balance(balance),
        Err(Unknown::Chemistry(fault)) => f.chemistry(fault),
        Err(_) => {}
    }
    match &plan.replace {
        Ok(replace) => f.replace(replace),
        Err(Unknown::NotAsked) => {}
        Err(_) => f.answer.say("less.unknown"),
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

    /// What is missing: an empty field of those the plan needs, or the unit of a number typed.
    fn needs(&mut self, form: &Form, plan: &Plan) {
        for input in Input::ALL.iter().filter(|i| plan.needs.contains(**i)) {
            if form.text(input.code()).is_empty() {
                self.need(input.code());
            }
        }
        let mut faulty = false;
        for i in 0..self.answer.faults.len() {
            match &self.answer.faults[i] {
                fault if fault.code == "no-unit" => self.need(field::unit_of(fault.field)),
                _ => faulty = true,
            }
        }
        if faulty {
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
        if band.example {
            self.answer.say("salt.example");
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
        if dose.withheld {
            self.answer.say("first.withheld");
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
        self.mass("buy.left", s.left);
        if let Some(buy) = s.buy {
            self.number("buy.bags", buy.into(), 0);
            self.answer.say(if buy == 0 { "buy.none" } else { "buy.some" });
        }
        if let Some(have) = case.bag.in_hand.or(0) {
            self.number("buy.have", have.into(), 0);
        }
        if s.rounded_down {
            self.answer.say("buy.rounded-down");
        }
        if dose.withheld || plan.standing != Some(Standing::Short) {
            return;
        }
        self.answer.say(if s.first.weighed { "first.weigh" } else { "first.bags" });
        self.number("first.share", plan::policy::FIRST_STAGE, 1);
        self.bags("first.bags", s.first.bags);
        self.mass("first.mass", s.first.mass);
        self.salt("first.expect", s.expect);
        self.bags("later.bags", s.later.bags);
        self.mass("later.mass", s.later.mass);
        if let Some(band) = case.band {
            self.salt("later.expect", band.target);
        }
    }

    fn gates(&mut self, plan: &Plan) {
        let g = &plan.gates;
        for (gate, verdict) in [("index", g.index), ("ph", g.ph), ("heat", g.heat)] {
            let verdict = match verdict {
                Verdict::Pass => "pass",
                Verdict::Wait => "wait",
                Verdict::Stop => "stop",
                Verdict::Unknown => "unknown",
            };
            self.answer.say(&joined(&["gate.", gate, ".", verdict]));
        }
        if g.index_note {
            self.answer.say("index.note");
        }
    }

    fn balance(&mut self, b: &Balance) {
        self.answer.say(match b.responds {
            Responds::ToChloride => "index.salt.chloride",
            Responds::ToConductivity => "index.salt.conductivity",
            Responds::ToNothing => "index.salt.assumed",
        });
        self.salt("index.salt.now", b.salt);
        let today = &b.today;
        self.number("index.carbonate", today.carbonate_alkalinity.mg_per_l(), 0);
        self.number("index.strength", today.strength.molal(), 4);
        self.signed("index.log-calcium", today.log_calcium);
        self.signed("index.log-carbonate", today.log_carbonate);
        self.signed("index.log-solubility", today.log_solubility);
        let (Some(now), Some(judged)) = (index(today), b.judged()) else {
            self.answer.say("index.no-calcium");
            return;
        };
        let judged = plan::rules::shown(judged.log10());
        self.signed("index.now", now);
        self.signed("index.worse", judged);
        if judged != 0.0 {
            self.answer.say(if judged < 0.0 { "index.low" } else { "index.high" });
        }
        let Some(salted) = &b.salted else { return };
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
            self.passes(r, parts.cap.share, share.volume.map(|v| v.times(1.0 / share.share)));
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
        if let Some(mixed) = &r.mixed {
            self.answer.say("less.mixed");
            self.number("less.ph", mixed.ph.units(), 2);
            if let Some(i) = index(mixed) {
                self.signed("less.index", i);
            }
        }
    }

    fn passes(&mut self, r: &Replace, cap: chem::Fraction, pool: Option<Volume>) {
        let [now, target, fill] = r.salt;
        let (units, signs) = (self.units, self.signs);
        let mut rows = Vec::new();
        for (n, pass) in dilution::passes(now, target, fill, cap).enumerate() {
            if n == MOST_PASSES {
                self.answer.say("less.many");
                break;
            }
            let share = pass.share.ratio();
            let mut row = vec![
                ("pass".into(), Shown::number((n + 1) as f64, 0, false, signs)),
                ("share".into(), percent(share, signs)),
                ("salt".into(), Shown::of(pass.salt.mg_per_l(), units.salt, signs)),
            ];
            if let Some(v) = pool {
                row.push(("volume".into(), Shown::of(v.cubic_metres() * share, units.water, signs)));
            }
            rows.push(row);
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
