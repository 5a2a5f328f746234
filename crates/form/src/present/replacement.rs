//! What of the water to replace.

use super::{Filler, index, percent};
use crate::answer::{Line, Shown};
use plan::water::drain::Basis;
use plan::water::replacement::{Analyte, Parts};
use plan::{Case, Plan, Replace, Unknown};

impl Filler<'_> {
    pub(super) fn replace(&mut self, case: &Case, r: &Replace) {
        let share = match &r.at_once {
            Ok(amount) => amount,
            Err(_) => return self.answer.say("less.impossible"),
        };
        self.answer.say("less.known");
        self.answer.say(match r.decides {
            Analyte::Salt => "less.by-salt",
            Analyte::Hardness => "less.by-hardness",
            Analyte::CyanuricAcid => "less.by-cyanurate",
        });
        self.amount("less.share", "less.volume", share);
        if let Some(water) = r.water {
            self.water("less.water", water);
        }
        if let Some(flow) = &r.exchange {
            self.amount("less.flow.share", "less.flow.volume", flow);
            self.exchange(case, flow);
        }
        if let Some(parts) = &r.parts {
            self.part("less.cap", parts.cap.share.ratio());
            self.number("less.count", parts.count.into(), 0);
            self.amount("less.total.share", "less.total.volume", &parts.total);
            self.answer.say(match parts.cap.basis {
                Basis::Careful => "cap.ours",
                Basis::Depth => "cap.depth",
                Basis::Cement => "cap.third",
                Basis::Owner => "cap.owner",
            });
            if parts.cap.owner_larger {
                self.answer.say("cap.larger");
            }
            self.answer.say("less.parts");
            self.effort("less.total", case, &parts.total);
            let largest = parts.first[0].map(|first| first.amount);
            if let Some((largest, depth)) = largest.zip(case.depth.valid()) {
                self.answer.say("less.depth");
                let sinks = Shown::of(largest.share * depth.metres(), self.units.length, self.signs);
                self.answer.put("less.sinks", sinks);
            }
            if let Some(largest) = largest.filter(|_| parts.count > 1) {
                self.answer.say("less.several");
                self.effort("less.pass", case, &largest);
            }
            if case.flow.out.valid().is_some()
                || case.flow.in_.valid().is_some()
                || case.flow.price.valid().is_some()
            {
                self.answer.say("less.effort");
            }
            self.parts(r.decides, parts);
        }
        self.sum(case, r);
        if let Some(x) = r.salt {
            self.salt("less.salt", x);
        }
        if let Some(x) = r.alkalinity {
            self.alkalinity("less.ta", x);
        }
        if let Some(x) = r.hardness {
            self.hardness("less.ch", x);
        }
        if let Some(x) = r.cyanuric_acid {
            self.number("less.cya", x.mg_per_l(), 0);
        }
        match r.mixed {
            Err(Unknown::Chemistry(_)) => self.answer.say("less.outside"),
            Err(_) => {}
            Ok(mixed) => {
                self.answer.say("less.mixed");
                self.number("less.ph", mixed.ph.units(), 2);
                if let Some(i) = index(&mixed) {
                    self.signed("less.index", i);
                }
            }
        }
    }

    /// The figures that the share was worked out from: those of the analyte that asks for most.
    fn sum(&mut self, case: &Case, r: &Replace) {
        match r.decides {
            Analyte::Salt => {
                let figures = [("less.now", r.from), ("less.goal", r.salt), ("less.fill", case.fill_salt)];
                figures.into_iter().for_each(|(name, x)| x.into_iter().for_each(|x| self.salt(name, x)));
            }
            Analyte::Hardness => {
                let figures = [
                    ("less.now", case.water.hardness),
                    ("less.goal", r.excess.hardness),
                    ("less.fill", case.fill.hardness),
                ];
                figures.into_iter().for_each(|(name, x)| x.into_iter().for_each(|x| self.hardness(name, x)));
            }
            Analyte::CyanuricAcid => {
                let figures = [
                    ("less.now", case.water.cyanuric_acid),
                    ("less.goal", r.excess.cyanuric_acid),
                    ("less.fill", case.fill.cyanuric_acid),
                ];
                for (name, x) in figures {
                    x.into_iter().for_each(|x| self.number(name, x.mg_per_l(), 0));
                }
            }
        }
    }

    /// What stands above its goal.
    pub(super) fn excess(&mut self, plan: &Plan) {
        let excess = plan.excess.unwrap_or_default();
        for (holds, state) in [
            (plan.excess.is_some(), "less.due"),
            (excess.hardness.is_some(), "less.hardness"),
            (excess.cyanuric_acid.is_some(), "less.cyanurate"),
        ] {
            if holds {
                self.answer.say(state);
            }
        }
    }

    fn level(&self, of: Analyte, x: f64) -> Shown {
        match of {
            Analyte::Salt => Shown::of(x, self.units.salt, self.signs),
            Analyte::Hardness => Shown::of(x, self.units.hardness, self.signs),
            Analyte::CyanuricAcid => Shown::number(x, 0, false, self.signs),
        }
    }

    fn parts(&mut self, decides: Analyte, parts: &Parts) {
        let (units, signs) = (self.units, self.signs);
        let mut rows = Vec::new();
        for part in parts.first.iter().flatten() {
            let mut row = vec![
                ("pass".into(), Shown::number((rows.len() + 1) as f64, 0, false, signs)),
                ("share".into(), percent(part.amount.share, signs)),
            ];
            if let Some(level) = part.level {
                row.push(("level".into(), self.level(decides, level)));
            }
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
