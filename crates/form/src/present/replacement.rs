//! What of the water to replace.

use super::{Filler, index, percent};
use crate::answer::{Line, Shown};
use crate::contract::{Fact, List, Output, RowOutput};
use plan::water::drain::Basis;
use plan::water::replacement::{Analyte, Parts};
use plan::{Case, Plan, Replace, Unknown};

/// Hours out, hours in, and the price: of all passes, and of one.
const TOTAL: [Output; 3] = [Output::ReplaceTotalOut, Output::ReplaceTotalIn, Output::ReplaceTotalPrice];
const PASS: [Output; 3] = [Output::ReplacePassOut, Output::ReplacePassIn, Output::ReplacePassPrice];

impl Filler<'_> {
    pub(super) fn replace(&mut self, case: &Case, r: &Replace) {
        let share = match &r.at_once {
            Ok(amount) => amount,
            Err(_) => return self.answer.say(Fact::ReplaceImpossible),
        };
        self.answer.say(Fact::ReplaceTold);
        self.answer.say(match r.decides {
            Analyte::Salt => Fact::ReplaceBySalt,
            Analyte::Hardness => Fact::ReplaceByHardness,
            Analyte::CyanuricAcid => Fact::ReplaceByCya,
        });
        self.amount(Output::ReplaceShare, Output::ReplaceVolume, share);
        if let Some(water) = r.water {
            self.water(Output::ReplaceWater, water);
        }
        if let Some(flow) = &r.exchange {
            self.amount(Output::ReplaceFlowShare, Output::ReplaceFlowVolume, flow);
            self.exchange(case, flow);
        }
        if let Some(parts) = &r.parts {
            self.part(Output::ReplaceMost, parts.cap.share.ratio());
            self.number(Output::ReplaceCount, parts.count.into(), 0);
            self.amount(Output::ReplaceTotalShare, Output::ReplaceTotalVolume, &parts.total);
            self.answer.say(match parts.cap.basis {
                Basis::Careful => Fact::CapOurs,
                Basis::Depth => Fact::CapDepth,
                Basis::Cement => Fact::CapThird,
                Basis::Owner => Fact::CapOwner,
            });
            if parts.cap.owner_larger {
                self.answer.say(Fact::CapLarger);
            }
            self.answer.say(Fact::ReplaceParts);
            self.effort(TOTAL, case, &parts.total);
            let largest = parts.first[0].map(|first| first.amount);
            if let Some((largest, depth)) = largest.zip(case.depth.valid()) {
                self.answer.say(Fact::ReplaceDepth);
                let sinks = Shown::of(largest.share * depth.metres(), self.units.length, self.signs);
                self.answer.put(Output::ReplaceSinks, sinks);
            }
            if let Some(largest) = largest.filter(|_| parts.count > 1) {
                self.answer.say(Fact::ReplaceSeveral);
                self.effort(PASS, case, &largest);
            }
            if case.flow.out.valid().is_some()
                || case.flow.in_.valid().is_some()
                || case.flow.price.valid().is_some()
            {
                self.answer.say(Fact::ReplaceEffort);
            }
            self.parts(r.decides, parts);
        }
        self.sum(case, r);
        if let Some(x) = r.salt {
            self.salt(Output::ReplaceSalt, x);
        }
        if let Some(x) = r.alkalinity {
            self.alkalinity(Output::ReplaceTa, x);
        }
        if let Some(x) = r.hardness {
            self.hardness(Output::ReplaceCh, x);
        }
        if let Some(x) = r.cyanuric_acid {
            self.number(Output::ReplaceCya, x.mg_per_l(), 0);
        }
        match r.mixed {
            Err(Unknown::Chemistry(_)) => self.answer.say(Fact::ReplaceOutside),
            Err(_) => {}
            Ok(mixed) => {
                self.answer.say(Fact::ReplaceMixed);
                self.number(Output::ReplacePh, mixed.ph.units(), 2);
                if let Some(i) = index(&mixed) {
                    self.signed(Output::ReplaceIndex, i);
                }
            }
        }
    }

    /// The figures that the share was worked out from: those of the analyte that asks for most.
    fn sum(&mut self, case: &Case, r: &Replace) {
        match r.decides {
            Analyte::Salt => {
                let figures = [
                    (Output::ReplaceNow, r.from),
                    (Output::ReplaceGoal, r.salt),
                    (Output::ReplaceFill, case.fill_salt),
                ];
                figures.into_iter().for_each(|(name, x)| x.into_iter().for_each(|x| self.salt(name, x)));
            }
            Analyte::Hardness => {
                let figures = [
                    (Output::ReplaceNow, case.water.hardness),
                    (Output::ReplaceGoal, r.excess.hardness),
                    (Output::ReplaceFill, case.fill.hardness),
                ];
                figures.into_iter().for_each(|(name, x)| x.into_iter().for_each(|x| self.hardness(name, x)));
            }
            Analyte::CyanuricAcid => {
                let figures = [
                    (Output::ReplaceNow, case.water.cyanuric_acid),
                    (Output::ReplaceGoal, r.excess.cyanuric_acid),
                    (Output::ReplaceFill, case.fill.cyanuric_acid),
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
            (plan.excess.is_some(), Fact::ReplaceDue),
            (excess.hardness.is_some(), Fact::ReplaceHardness),
            (excess.cyanuric_acid.is_some(), Fact::ReplaceCya),
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
                (RowOutput::PassesPass.into(), Shown::number((rows.len() + 1) as f64, 0, false, signs)),
                (RowOutput::PassesShare.into(), percent(part.amount.share, signs)),
            ];
            if let Some(level) = part.level {
                row.push((RowOutput::PassesLevel.into(), self.level(decides, level)));
            }
            if let Some(v) = part.amount.volume {
                row.push((RowOutput::PassesVolume.into(), Shown::of(v.cubic_metres(), units.water, signs)));
            }
            rows.push(Line { state: None, cells: row });
        }
        if parts.count as usize > rows.len() {
            self.answer.say(Fact::ReplaceMany);
        }
        self.answer.rows.push((List::Passes, rows));
    }
}
