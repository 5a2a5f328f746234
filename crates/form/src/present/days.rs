//! What is next, and what lies ahead?

use super::Filler;
use crate::answer::{Line, Shown};
use crate::text::joined;
use plan::readiness::judge::finish_day;
use plan::schedule::{Act, Clock, Schedule, ScheduledStep, is_on_early};
use plan::{Case, Plan, policy};

const fn code(act: Act) -> &'static str {
    match act {
        Act::Stage => "step.stage",
        Act::Brush => "step.brush",
        Act::Read => "step.read",
        Act::Power => "step.power",
        Act::Test => "step.test",
        Act::Week => "step.week",
        Act::Month => "step.month",
    }
}

impl Filler<'_> {
    /// The days that the waits tell of.
    pub(super) fn days(&mut self, case: &Case, plan: &Plan) {
        match is_on_early(&Clock::of(case)) {
            Some(true) => {
                self.answer.say("on.early");
                // Off until when? By the log alone, also where nothing else is reckoned from it.
                let last = case.last_dose().valid().filter(|_| self.answer.output("clock.power").is_none());
                if let Some(last) = last {
                    self.answer.put("clock.power", Shown::moment(policy::power_from(last)));
                }
            }
            Some(false) => self.answer.say("on"),
            None => {}
        }
        if plan.earliest.is_some() {
            self.answer.say("ready.earliest");
        }
        let finish = finish_day(case);
        for (name, day) in [("ready.finish", finish), ("ready.earliest", plan.earliest)] {
            if let Some(day) = day {
                self.answer.put(name, Shown::day(day));
            }
        }
    }

    pub(super) fn schedule(&mut self, schedule: &Schedule) {
        self.answer.say("schedule");
        if schedule.forecast {
            self.answer.say("schedule.forecast");
        }
        if let Some(step) = schedule.next() {
            self.answer.say(&joined(&["next.", code(step.act).strip_prefix("step.").unwrap_or_default()]));
            if schedule.is_due(step) {
                self.answer.say("next.due");
            }
            if let Some(at) = step.at {
                self.answer.put("next.when", Shown::moment(at));
            }
        }
        let lines = schedule.steps().map(line).collect();
        self.answer.rows.push(("steps", lines));
    }
}

fn line(step: &ScheduledStep) -> Line {
    let moments = [("when", step.at), ("until", step.until)];
    let cells =
        moments.into_iter().filter_map(|(name, at)| Some((name.into(), Shown::moment(at?)))).collect();
    Line { state: code(step.act), cells }
}
