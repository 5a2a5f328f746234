//! What is next, and what lies ahead?

use super::Filler;
use crate::answer::{Line, Shown};
use crate::contract::{Fact, List, Output, RowFact, RowOutput};
use plan::readiness::judge::finish_day;
use plan::schedule::{Act, Clock, Schedule, ScheduledStep, is_on_early};
use plan::{Case, Plan, policy};

/// What an act is called among the steps, and as the next of them.
const fn facts(act: Act) -> (RowFact, Fact) {
    match act {
        Act::Stage => (RowFact::StepStage, Fact::NextStage),
        Act::Brush => (RowFact::StepBrush, Fact::NextBrush),
        Act::Read => (RowFact::StepRead, Fact::NextRead),
        Act::Power => (RowFact::StepPower, Fact::NextPower),
        Act::Test => (RowFact::StepTest, Fact::NextTest),
        Act::Week => (RowFact::StepWeek, Fact::NextWeek),
        Act::Month => (RowFact::StepMonth, Fact::NextMonth),
    }
}

impl Filler<'_> {
    /// The days that the waits tell of.
    pub(super) fn days(&mut self, case: &Case, plan: &Plan) {
        match is_on_early(&Clock::of(case)) {
            Some(true) => {
                self.answer.say(Fact::PowerEarly);
                // Off until when? By the log alone, also where nothing else is reckoned from it.
                let last =
                    case.last_dose().valid().filter(|_| self.answer.shown(Output::ClockPower).is_none());
                if let Some(last) = last {
                    self.answer.put(Output::ClockPower, Shown::moment(policy::power_from(last)));
                }
            }
            Some(false) => self.answer.say(Fact::PowerGiven),
            None => {}
        }
        if plan.earliest.is_some() {
            self.answer.say(Fact::ReadyEarliest);
        }
        let finish = finish_day(case);
        for (name, day) in [(Output::ReadyFinish, finish), (Output::ReadyEarliest, plan.earliest)] {
            if let Some(day) = day {
                self.answer.put(name, Shown::day(day));
            }
        }
    }

    pub(super) fn schedule(&mut self, schedule: &Schedule) {
        self.answer.say(Fact::Schedule);
        if schedule.forecast {
            self.answer.say(Fact::ScheduleForecast);
        }
        if let Some(step) = schedule.next() {
            self.answer.say(facts(step.act).1);
            if schedule.is_due(step) {
                self.answer.say(Fact::NextDue);
            }
            if let Some(at) = step.at {
                self.answer.put(Output::NextWhen, Shown::moment(at));
            }
        }
        let mut lines = Vec::new();
        for step in schedule.steps() {
            lines.push(line(step));
        }
        self.answer.rows.push((List::Steps, lines));
    }
}

fn line(step: &ScheduledStep) -> Line {
    let mut line = Line { state: Some(facts(step.act).0.into()), cells: Vec::new() };
    line.put(RowOutput::StepsWhen, step.at.map(Shown::moment));
    line.put(RowOutput::StepsUntil, step.until.map(Shown::moment));
    line
}
