//! What of the salt: the band, the bags, the stages.

use super::Filler;
use plan::{Band, Case, Dose, Plan, Standing, policy};

impl Filler<'_> {
    pub(super) fn band(&mut self, band: &Band) {
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

    pub(super) fn dose(&mut self, case: &Case, plan: &Plan, dose: &Dose) {
        if let Some([from, to]) = dose.range {
            self.answer.say("buy.range");
            self.number("buy.from", from.into(), 0);
            self.number("buy.to", to.into(), 0);
        }
        if let Some(from) = plan.counted_from {
            self.answer.say("dose.after-water");
            self.salt("dose.from", from);
        } else if let Some(from) = case.read() {
            self.salt("dose.from", from);
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
}
