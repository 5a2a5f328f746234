//! What of the water: its index, its chlorine, and what goes in before the salt.

use super::{Filler, index, round};
use crate::answer::{Line, Shown};
use chem::salt::SaltTest;
use chem::{Quantity, SaturationIndex};
use plan::readiness::judge::low_is_a_note;
use plan::water::balance::{After, Forms};
use plan::water::product::ProductAmount;
use plan::water::treatment::{Additive, Position, TreatmentStep};
use plan::{Acid, Balance, Case, Treatment};

/// From two quarts on nobody measures ounces, m³.
const QUARTS: f64 = 0.0019;

impl Filler<'_> {
    pub(super) fn balance(&mut self, case: &Case, b: &Balance) {
        self.answer.say(match b.salt_test {
            SaltTest::Chloride => "index.salt.chloride",
            _ => "index.salt.conductivity",
        });
        if b.belied {
            self.answer.say("index.salt.belied");
        }
        self.salt("index.salt.now", b.salt);
        self.aside(b);
        self.forms(["index.standard.now", "index.closed.now"], &b.forms);
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
            let judged = plan::water::balance::shown(judged.log10());
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
        self.forms(["index.standard.after", "index.closed.after"], &salted.forms);
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
                self.signed(shift, plan::water::balance::shown(then) - plan::water::balance::shown(now));
            }
        }
    }

    pub(super) fn chemistry(&mut self, fault: &chem::WaterError) {
        match fault {
            chem::WaterError::Outside(out) => {
                self.answer.say("index.outside");
                let field = match out.bounds.quantity {
                    Quantity::Temperature => "outside.water-heat",
                    Quantity::Ph => "outside.water-ph",
                    Quantity::Alkalinity => "outside.water-ta",
                    Quantity::Hardness => "outside.water-ch",
                    Quantity::CyanuricAcid => "outside.water-cya",
                    _ => "outside.salt-now",
                };
                self.answer.say(field);
            }
            _ => self.answer.say("index.no-carbonate"),
        }
    }

    /// What the table forms say, today or with the salt.
    fn forms(&mut self, names: [&'static str; 2], forms: &Forms) {
        for (name, form) in names.into_iter().zip([forms.standard, forms.closed]) {
            if let Some(form) = form {
                self.signed(name, form.log10());
            }
        }
    }

    /// The pH that the air leads to, and how much of the chlorine works.
    fn aside(&mut self, b: &Balance) {
        if let Some(aired) = &b.aired {
            self.answer.say("index.air");
            self.number("index.ph.air", aired.ph.units(), 2);
            if let Some(index) = index(aired) {
                self.signed("index.air", index);
            }
        }
        if let Some(species) = &b.chlorine {
            self.answer.say("chlorine");
            self.number("chlorine.acid", species.hypochlorous.mg_per_l(), 3);
            self.number("chlorine.bound", species.bound.mg_per_l(), 2);
            if species.temperature_doubt.ratio() > 0.0 {
                self.answer.say("chlorine.rough");
            }
        }
    }

    pub(super) fn treatment(&mut self, case: &Case, t: &Treatment) {
        for (holds, state) in [
            (t.water_first, "treat.water-first"),
            (t.below_air, "treat.below-air"),
            (t.chlorine_over, "treat.chlorine-over"),
            (t.steps.iter().any(Option::is_some), "treat.steps"),
            (!t.is_due(), "treat.none"),
        ] {
            if holds {
                self.answer.say(state);
            }
        }
        if case.products.is_some_and(|products| matches!(products.acid, Acid::Bisulfate(_))) {
            self.answer.say("treat.dry");
        }
        self.end(case, t);
        let lines = t.steps.iter().flatten().map(|step| self.step(step)).collect();
        self.answer.rows.push(("treatment", lines));
    }

    /// The water that all the steps lead to, judged as today's is.
    fn end(&mut self, case: &Case, t: &Treatment) {
        let (Some(end), Some(ends)) = (t.end(), t.ends(case.surface)) else { return };
        self.number("treat.end.ph", end.then.ph.units(), 2);
        self.answer.say(match ends.ph {
            Position::Below => "treat.ends.acid",
            Position::Within => "treat.settles-ph",
            Position::Above => "treat.ends.basic",
        });
        if let Some(index) = ends.index {
            self.signed("treat.end.index", index);
        }
        match ends.balance {
            Some(Position::Below) => self.answer.say("treat.ends.low"),
            Some(Position::Above) => self.answer.say("treat.ends.high"),
            _ => {}
        }
    }

    fn step(&self, step: &TreatmentStep) -> Line {
        let state = match step.additive {
            Additive::Chlorine => "treat.chlorine",
            Additive::Bicarbonate => "treat.bicarbonate",
            Additive::AcidAndAir => "treat.acid-air",
            Additive::CyanuricAcid => "treat.cyanuric",
            Additive::Calcium => "treat.calcium",
            Additive::Acid => "treat.acid",
            Additive::Carbonate => "treat.carbonate",
        };
        let signs = self.signs;
        let number = |x: f64, decimals| Shown::number(x, decimals, false, signs);
        let index = |x: Option<SaturationIndex>| x.map(|i| Shown::number(i.log10(), 2, true, signs));
        let cells = [
            ("whole", Some(self.amount_of(step.whole))),
            ("first", step.first.map(|first| self.amount_of(first))),
            ("doses", step.doses.map(|doses| number(doses.into(), 0))),
            ("begun-ph", Some(number(step.begun.ph.units(), 2))),
            ("begun-ta", Some(Shown::of(step.begun_alkalinity.mg_per_l(), self.units.alkalinity, signs))),
            ("then-ph", Some(number(step.then.ph.units(), 2))),
            ("then-ta", Some(Shown::of(step.alkalinity.mg_per_l(), self.units.alkalinity, signs))),
            ("then-ch", Some(Shown::of(step.hardness.mg_per_l(), self.units.hardness, signs))),
            ("then-cya", Some(number(step.cyanuric_acid.mg_per_l(), 0))),
            ("wait", Some(number(step.wait.into(), 0))),
            ("then-index", index(step.then.index)),
            ("then-salted", index(step.salted)),
        ];
        let cells = cells.into_iter().filter_map(|(name, shown)| Some((name.into(), shown?))).collect();
        Line { state, cells }
    }

    pub(super) fn amount_of(&self, amount: ProductAmount) -> Shown {
        let (unit, x) = match amount {
            ProductAmount::Powder(mass) => (self.units.mass, mass.kilograms()),
            ProductAmount::Liquid(volume) => {
                let [small, large] = self.units.liquid;
                let x = volume.cubic_metres();
                (if x < QUARTS { small } else { large }, x)
            }
        };
        round(x, unit, self.signs)
    }
}
