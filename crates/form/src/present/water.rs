//! What of the water: its index, its chlorine, and what goes in before the salt.

use super::{Filler, index, round};
use crate::answer::{Line, Shown};
use crate::contract::{Fact, List, Output, RowFact, RowOutput};
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
            SaltTest::Chloride => Fact::IndexSaltChloride,
            _ => Fact::IndexSaltConductivity,
        });
        if b.belied {
            self.answer.say(Fact::IndexSaltBelied);
        }
        self.salt(Output::IndexSaltNow, b.salt);
        self.aside(b);
        self.forms([Output::IndexStandardNow, Output::IndexClosedNow], &b.forms);
        let today = &b.today;
        self.number(Output::IndexCarbonate, today.carbonate_alkalinity.mg_per_l(), 0);
        self.number(Output::IndexStrength, today.strength.molal(), 4);
        self.number(Output::IndexLogCalcium, today.log_calcium, 3);
        self.number(Output::IndexLogCarbonate, today.log_carbonate, 3);
        self.number(Output::IndexLogSolubility, today.log_solubility, 3);
        let Some(now) = index(today) else {
            self.answer.say(Fact::IndexNoCalcium);
            return;
        };
        self.signed(Output::IndexNow, now);
        if let Some(judged) = b.judged() {
            let judged = plan::water::balance::shown(judged.log10());
            self.signed(Output::IndexWorse, judged);
            if judged < 0.0 {
                self.answer.say(Fact::IndexLow);
                if low_is_a_note(case, Some(b)) {
                    self.answer.say(Fact::IndexNote);
                }
            } else if judged > 0.0 {
                self.answer.say(Fact::IndexHigh);
            }
        }
        let salted = match &b.after {
            After::Salted(Ok(salted)) => salted,
            After::Salted(Err(fault)) => return self.chemistry(fault),
            After::Today | After::Unknown => return,
        };
        self.answer.say(Fact::IndexAfter);
        self.forms([Output::IndexStandardAfter, Output::IndexClosedAfter], &salted.forms);
        self.salt(Output::IndexSaltAfter, salted.salt);
        self.number(Output::IndexPhFree, salted.free_ph.ph.units(), 2);
        let sides = [
            (Output::IndexSame, Output::IndexShiftSame, &salted.same_ph),
            (Output::IndexFree, Output::IndexShiftFree, &salted.free_ph),
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
                self.answer.say(Fact::IndexOutside);
                let field = match out.bounds.quantity {
                    Quantity::Temperature => Fact::OutsideWaterTemperature,
                    Quantity::Ph => Fact::OutsideWaterPh,
                    Quantity::Alkalinity => Fact::OutsideWaterTa,
                    Quantity::Hardness => Fact::OutsideWaterCh,
                    Quantity::CyanuricAcid => Fact::OutsideWaterCya,
                    _ => Fact::OutsideSaltNow,
                };
                self.answer.say(field);
            }
            _ => self.answer.say(Fact::IndexNoCarbonate),
        }
    }

    /// What the table forms say, today or with the salt.
    fn forms(&mut self, names: [Output; 2], forms: &Forms) {
        for (name, form) in names.into_iter().zip([forms.standard, forms.closed]) {
            if let Some(form) = form {
                self.signed(name, form.log10());
            }
        }
    }

    /// The pH that the air leads to, and how much of the chlorine works.
    fn aside(&mut self, b: &Balance) {
        if let Some(aired) = &b.aired {
            self.answer.say(Fact::IndexAir);
            self.number(Output::IndexPhAir, aired.ph.units(), 2);
            if let Some(index) = index(aired) {
                self.signed(Output::IndexAir, index);
            }
        }
        if let Some(species) = &b.chlorine {
            self.answer.say(Fact::Chlorine);
            self.number(Output::ChlorineAcid, species.hypochlorous.mg_per_l(), 3);
            self.number(Output::ChlorineBound, species.bound.mg_per_l(), 2);
            if species.temperature_doubt.ratio() > 0.0 {
                self.answer.say(Fact::ChlorineRough);
            }
        }
    }

    pub(super) fn treatment(&mut self, case: &Case, t: &Treatment) {
        for (holds, state) in [
            (t.water_first, Fact::TreatWaterFirst),
            (t.below_air, Fact::TreatBelowAir),
            (t.chlorine_over, Fact::TreatChlorineOver),
            (t.steps.iter().any(Option::is_some), Fact::TreatSteps),
            (!t.is_due(), Fact::TreatNone),
        ] {
            if holds {
                self.answer.say(state);
            }
        }
        if case.products.is_some_and(|products| matches!(products.acid, Acid::Bisulfate(_))) {
            self.answer.say(Fact::TreatDry);
        }
        self.end(case, t);
        let mut lines = Vec::new();
        for step in t.steps.iter().flatten() {
            lines.push(self.step(step));
        }
        self.answer.rows.push((List::Treatment, lines));
    }

    /// The water that all the steps lead to, judged as today's is.
    fn end(&mut self, case: &Case, t: &Treatment) {
        let (Some(end), Some(ends)) = (t.end(), t.ends(case.surface)) else { return };
        self.number(Output::TreatEndPh, end.then.ph.units(), 2);
        self.answer.say(match ends.ph {
            Position::Below => Fact::TreatEndsAcid,
            Position::Within => Fact::TreatSettlesPh,
            Position::Above => Fact::TreatEndsBasic,
        });
        if let Some(index) = ends.index {
            self.signed(Output::TreatEndIndex, index);
        }
        match ends.balance {
            Some(Position::Below) => self.answer.say(Fact::TreatEndsLow),
            Some(Position::Above) => self.answer.say(Fact::TreatEndsHigh),
            _ => {}
        }
    }

    fn step(&self, step: &TreatmentStep) -> Line {
        let state = match step.additive {
            Additive::Chlorine => RowFact::TreatChlorine,
            Additive::Bicarbonate => RowFact::TreatBicarbonate,
            Additive::AcidAndAir => RowFact::TreatAcidAir,
            Additive::CyanuricAcid => RowFact::TreatCya,
            Additive::Calcium => RowFact::TreatCalcium,
            Additive::Acid => RowFact::TreatAcid,
            Additive::Carbonate => RowFact::TreatCarbonate,
        };
        let signs = self.signs;
        let number = |x: f64, decimals| Shown::number(x, decimals, false, signs);
        let index = |x: Option<SaturationIndex>| x.map(|i| Shown::number(i.log10(), 2, true, signs));
        let cells = [
            (RowOutput::TreatmentWhole, Some(self.amount_of(step.whole))),
            (RowOutput::TreatmentFirst, step.first.map(|first| self.amount_of(first))),
            (RowOutput::TreatmentDoses, step.doses.map(|doses| number(doses.into(), 0))),
            (RowOutput::TreatmentBegunPh, Some(number(step.begun.ph.units(), 2))),
            (
                RowOutput::TreatmentBegunTa,
                Some(Shown::of(step.begun_alkalinity.mg_per_l(), self.units.alkalinity, signs)),
            ),
            (RowOutput::TreatmentThenPh, Some(number(step.then.ph.units(), 2))),
            (
                RowOutput::TreatmentThenTa,
                Some(Shown::of(step.alkalinity.mg_per_l(), self.units.alkalinity, signs)),
            ),
            (
                RowOutput::TreatmentThenCh,
                Some(Shown::of(step.hardness.mg_per_l(), self.units.hardness, signs)),
            ),
            (RowOutput::TreatmentThenCya, Some(number(step.cyanuric_acid.mg_per_l(), 0))),
            (RowOutput::TreatmentWait, Some(number(step.wait.into(), 0))),
            (RowOutput::TreatmentThenIndex, index(step.then.index)),
            (RowOutput::TreatmentThenSalted, index(step.salted)),
        ];
        let mut line = Line { state: Some(state.into()), cells: Vec::new() };
        for (name, shown) in cells {
            line.put(name, shown);
        }
        line
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
