//! What of the generator at work, and of a season?

use super::Filler;
use crate::text::joined;
use chem::Salinity;
use plan::operation::{Setting, Warmth};
use plan::water::effort::{effort, exchange_hours};
use plan::water::replacement::Amount;
use plan::{Case, Plan, policy};

impl Filler<'_> {
    pub(super) fn running(&mut self, case: &Case, plan: &Plan) {
        let running = &plan.running;
        match &running.setting {
            Some(setting) => self.setting(setting),
            None if case.run.is_begun() => self.answer.say("run.open"),
            None => {}
        }
        if running.ahead.is_none() && case.season.is_begun() {
            self.answer.say("season.open");
        }
        if let Some(climb) = &running.climb {
            self.answer.say("run.climb");
            self.number("run.climb.from", climb.from.units(), 1);
            self.number("run.climb.to", climb.to.units(), 1);
            self.number("run.climb.ta", climb.alkalinity, 1);
            self.number("run.climb.rest", climb.rest.units(), 1);
            for (name, acid) in [("run.climb.acid", climb.acid), ("run.climb.whole", climb.whole)] {
                let acid = self.amount_of(acid);
                self.answer.put(name, acid);
            }
        }
        if let Some(ahead) = &running.ahead {
            self.answer.say("season");
            self.salt("season.end", ahead.salt);
            if let Ok(less) = Salinity::from_mg_per_l(ahead.loss) {
                self.salt("season.less", less);
            }
            if let Some(mass) = ahead.mass {
                self.mass("season.mass", mass);
            }
            if let Some([bags, whole]) = ahead.bags {
                self.bags("season.bags", bags);
                self.number("season.whole", whole, 0);
            }
        }
    }

    fn setting(&mut self, s: &Setting) {
        self.answer.say("run");
        self.number("run.grams", s.grams, 0);
        self.number("run.full-hours", s.full_hours, 1);
        self.number("run.reserve", s.reserve, 1);
        for (name, share) in [("", s.share), (".low", s.range[0]), (".high", s.range[1])] {
            self.number(&joined(&["run.setting", name]), 100.0 * share, 0);
        }
        if let Some(hours) = s.lift {
            self.answer.say("run.lift");
            self.number("run.lift", hours, 1);
        }
        for (holds, state) in [
            (s.example, "run.example"),
            (s.share > 1.0, "run.short"),
            (s.is_beyond_a_day(), "run.beyond"),
            (s.range[1] > 1.0, "run.hot-short"),
            (s.share > policy::LITTLE_RESERVE && s.share <= 1.0, "run.little-reserve"),
            (s.reserve < policy::AMPLE, "run.small"),
            (s.warmth == Some(Warmth::Throttled), "run.throttled"),
            (s.warmth == Some(Warmth::Stopped), "run.stopped"),
        ] {
            if holds {
                self.answer.say(state);
            }
        }
    }

    /// Hours and money of a steady exchange.
    pub(super) fn exchange(&mut self, case: &Case, amount: &Amount) {
        let Some(water) = amount.volume else { return };
        if let Some(hours) = exchange_hours(&case.flow, water) {
            self.number("less.flow.hours", hours, 1);
        }
        if let Some(price) = effort(&case.flow, water).price {
            self.number("less.flow.price", price, 2);
        }
    }

    /// Hours and money for so much water, under names that begin so.
    pub(super) fn effort(&mut self, begin: &str, case: &Case, amount: &Amount) {
        let Some(water) = amount.volume else { return };
        let effort = effort(&case.flow, water);
        for (name, x, decimals) in
            [(".out", effort.out, 1), (".in", effort.in_, 1), (".price", effort.price, 2)]
        {
            if let Some(x) = x {
                self.number(&joined(&[begin, name]), x, decimals);
            }
        }
    }
}
