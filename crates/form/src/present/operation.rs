//! What of the generator at work, and of a season?

use super::Filler;
use crate::contract::{Fact, Output};
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
            None if case.run.is_begun() => self.answer.say(Fact::RunOpen),
            None => {}
        }
        if running.ahead.is_none() && case.season.is_begun() {
            self.answer.say(Fact::SeasonOpen);
        }
        if let Some(climb) = &running.climb {
            self.answer.say(Fact::RunClimb);
            self.number(Output::RunClimbFrom, climb.from.units(), 1);
            self.number(Output::RunClimbTo, climb.to.units(), 1);
            self.number(Output::RunClimbTa, climb.alkalinity, 1);
            self.number(Output::RunClimbRest, climb.rest.units(), 1);
            for (name, acid) in [(Output::RunClimbAcid, climb.acid), (Output::RunClimbWhole, climb.whole)] {
                let acid = self.amount_of(acid);
                self.answer.put(name, acid);
            }
        }
        if let Some(ahead) = &running.ahead {
            self.answer.say(Fact::Season);
            self.salt(Output::SeasonEnd, ahead.salt);
            if let Ok(less) = Salinity::from_mg_per_l(ahead.loss) {
                self.salt(Output::SeasonLess, less);
            }
            if let Some(mass) = ahead.mass {
                self.mass(Output::SeasonMass, mass);
            }
            if let Some([bags, whole]) = ahead.bags {
                self.bags(Output::SeasonBags, bags);
                self.number(Output::SeasonWhole, whole, 0);
            }
        }
    }

    fn setting(&mut self, s: &Setting) {
        self.answer.say(Fact::Run);
        self.number(Output::RunGrams, s.grams, 0);
        self.number(Output::RunFullHours, s.full_hours, 1);
        self.number(Output::RunReserve, s.reserve, 1);
        for (name, share) in [
            (Output::RunSetting, s.share),
            (Output::RunSettingLow, s.range[0]),
            (Output::RunSettingHigh, s.range[1]),
        ] {
            self.number(name, 100.0 * share, 0);
        }
        if let Some(hours) = s.lift {
            self.answer.say(Fact::RunLift);
            self.number(Output::RunLift, hours, 1);
        }
        for (holds, state) in [
            (s.example, Fact::RunExample),
            (s.share > 1.0, Fact::RunShort),
            (s.is_beyond_a_day(), Fact::RunBeyond),
            (s.range[1] > 1.0, Fact::RunHotShort),
            (s.share > policy::LITTLE_RESERVE && s.share <= 1.0, Fact::RunLittleReserve),
            (s.reserve < policy::AMPLE, Fact::RunSmall),
            (s.warmth == Some(Warmth::Throttled), Fact::RunThrottled),
            (s.warmth == Some(Warmth::Stopped), Fact::RunStopped),
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
            self.number(Output::ReplaceFlowHours, hours, 1);
        }
        if let Some(price) = effort(&case.flow, water).price {
            self.number(Output::ReplaceFlowPrice, price, 2);
        }
    }

    /// Hours out, hours in and money for so much water.
    pub(super) fn effort(&mut self, [out, in_, price]: [Output; 3], case: &Case, amount: &Amount) {
        let Some(water) = amount.volume else { return };
        let effort = effort(&case.flow, water);
        for (name, x, decimals) in [(out, effort.out, 1), (in_, effort.in_, 1), (price, effort.price, 2)] {
            x.into_iter().for_each(|x| self.number(name, x, decimals));
        }
    }
}
