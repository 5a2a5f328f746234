//! What of the salt: the band, the plain sum, the bags, the stage, the clock.

use super::Filler;
use crate::answer::{Line, Shown};
use crate::contract::units::{QuantityKind, Unit};
use crate::contract::{DrawingMark, Fact, List, Output, RowFact, RowOutput};
use chem::Mass;
use plan::policy::Moments;
use plan::salt::buy::Buy;
use plan::salt::code::Code;
use plan::salt::course::{Course, Visit};
use plan::salt::decide::Decision;
use plan::salt::dosing::Dosing;
use plan::salt::enough::Enough;
use plan::salt::job::JobError;
use plan::salt::outliers::{ReadingStatus, Screened, Side};
use plan::salt::salt_plan::StageMass;
use plan::salt::stage::{Bound, Stage};
use plan::salt::sums::Sums;
use plan::salt::value_of_information::{Measurement, value_of_information};
use plan::{Band, Case, Plan, SaltPlan, Typed, policy};

/// A figure, and the ends of where it likely lies.
const ESTIMATE_SALT: [Output; 3] = [Output::EstimateSalt, Output::EstimateSaltLow, Output::EstimateSaltHigh];
const STAGE_EXPECT: [Output; 3] = [Output::StageExpect, Output::StageExpectLow, Output::StageExpectHigh];
const ESTIMATE_VOLUME: [Output; 3] =
    [Output::EstimateVolume, Output::EstimateVolumeLow, Output::EstimateVolumeHigh];
const STATED_VOLUME: [Output; 3] = [Output::StatedVolume, Output::StatedVolumeLow, Output::StatedVolumeHigh];

/// What a decision is called on the page.
const fn code(code: Code) -> Fact {
    match code {
        Code::NeedBaseline => Fact::DoReadFirst,
        Code::RepeatDiffers => Fact::DoThirdReading,
        Code::WaitLonger => Fact::DoWaitLonger,
        Code::ReadsTooLow => Fact::DoReadsLow,
        Code::ReadsTooHigh => Fact::DoReadsHigh,
        Code::VolumeImplausible => Fact::DoMeasureAgain,
        Code::TooSalty => Fact::DoDilute,
        Code::AddAndRetest => Fact::DoAddRetest,
        Code::AddAndFinish => Fact::DoAddFinish,
        Code::StopInBand => Fact::DoStop,
        Code::StopNearHigh => Fact::DoStopNearHigh,
        Code::NoMore => Fact::DoNoMore,
        Code::BagTooCoarse => Fact::DoPartBag,
    }
}

impl Filler<'_> {
    pub(super) fn band(&mut self, band: &Band) {
        self.salt(Output::UsedLow, band.low);
        self.salt(Output::UsedTarget, band.target);
        self.salt(Output::UsedHigh, band.high);
        if band.is_unusual() {
            self.answer.say(Fact::SaltOdd);
        }
        if band.limits_ours {
            self.answer.say(Fact::LimitsOurs);
        }
    }

    pub(super) fn dose(&mut self, case: &Case, plan: &Plan, dose: &SaltPlan) {
        if let Some(from) = plan.counted_from {
            self.answer.say(Fact::BasicAfterWater);
            self.salt(Output::BasicFrom, from);
        } else if let Some(from) = dose.from {
            self.salt(Output::BasicFrom, from);
        }
        if let Some(rise) = dose.rise {
            self.answer.say(Fact::BasicDue);
            self.salt(Output::BasicRise, rise);
        }
        let sums = [(Output::BasicPure, dose.pure), (Output::BasicMass, dose.mass)];
        sums.into_iter().for_each(|(name, mass)| mass.into_iter().for_each(|mass| self.mass(name, mass)));
        if let Some(bags) = dose.bags {
            self.bags(Output::BasicBags, bags);
        }
        if dose.faults.contains(JobError::Instruments) {
            self.answer.say(Fact::LogInstruments);
        }
        if dose.faults.contains(JobError::Dose) {
            self.answer.say(Fact::LogTooMuch);
        }
        // Whether the log can be true is not known while something that it is held against is at fault.
        let known = dose.faults.is_none() && !case.is_invalid() && !case.uncounted;
        if let Some(course) = dose.course.as_ref().filter(|_| known) {
            self.clock(case, course);
        }
        if let Some(enough) = &dose.enough {
            self.enough(case, enough);
        }
        let Some(decision) = &dose.decision else { return };
        self.decision(case, dose, decision);
        if let (Some(buy), Some(have)) = (&decision.buy, case.bag.in_hand.or(0)) {
            self.number(Output::BuyOnHand, have.into(), 0);
            self.number(Output::BuyBags, buy.more.into(), 0);
            if let Some(price) = case.bag.price {
                self.answer.say(Fact::BuyPrice);
                self.number(Output::BuyPrice, price * f64::from(buy.more), 2);
            }
            if buy.more == 0 {
                self.answer.say(Fact::BuyNone);
            }
        }
    }

    /// What is in, and from when on the next thing may be done.
    fn clock(&mut self, case: &Case, course: &Course) {
        let Some(last) = course.last_dose else { return };
        self.answer.say(Fact::LogDosed);
        if case.read().is_some() && case.read_at == Typed::Missing {
            self.answer.say(Fact::LogFirstBefore);
        }
        self.mass(Output::InAll, course.put_in);
        for (name, hours) in [
            (Output::ClockLast, 0),
            (Output::ClockRetest, policy::HOURS_TO_READING),
            (Output::ClockPower, policy::HOURS_TO_POWER),
        ] {
            self.answer.put(name, Shown::moment(last.saturating_add(hours * 60)));
        }
    }

    /// Without bags and size it is known that no salt is due, and nothing of the pool.
    fn enough(&mut self, case: &Case, enough: &Enough) {
        self.answer.say(code(enough.code));
        if enough.visits.iter().flatten().nth(1).is_some() {
            self.answer.say(Fact::LogRead);
        }
        self.chance(Output::RiskNow, enough.over);
        self.range(ESTIMATE_SALT, enough.salt.mean, enough.salt.range());
        self.sums(enough.sums.as_ref());
        self.visits(case, &enough.visits);
    }

    fn decision(&mut self, case: &Case, dose: &SaltPlan, d: &Decision) {
        self.answer.say(code(d.code));
        if d.visits.iter().flatten().nth(1).is_some() {
            self.answer.say(Fact::LogRead);
        }
        if let Some(buy) = &d.buy {
            self.buy(d.code, buy);
            if let Some(left) = dose.bags_left() {
                self.bags(Output::BuyLeft, left);
            }
        }
        if let Some(stage) = &d.stage {
            self.chance(Output::RiskNow, stage.over_now);
        }
        if let (Some(stage), Some(StageMass { all, left })) = (&d.stage, dose.due()) {
            self.stage(dose, stage);
            if d.is_first() {
                self.answer.say(Fact::StageFirst);
            }
            if stage.bags > 0.0 || stage.part.is_some() {
                self.mass(Output::StageMass, all);
                self.mass(Output::StageLeft, left);
                if let (Some(job), Some(course)) = (&dose.job, &dose.course) {
                    self.bags(Output::StageLeftBags, job.in_bags(left));
                    self.bags(Output::InSinceBags, job.in_bags(course.after));
                    self.mass(Output::InSince, course.after);
                }
                if let Some(reading) = dose.plain_after() {
                    self.salt(Output::StagePlain, reading);
                }
            }
        }
        if let Some(expected) = &d.expect {
            self.range(STAGE_EXPECT, expected.mean, expected.range);
        }
        if let Some(known) = &d.known {
            let range = known.estimate.salt(0.0).range();
            self.range(ESTIMATE_SALT, known.salt.mean, range);
            self.marks(dose, d, [range[0], known.salt.mean, range[1]]);
        }
        if let Some(known) = &d.known {
            self.about_water(ESTIMATE_VOLUME, known.volume);
            self.bags(Output::EstimateNeed, known.need.max(0.0));
        }
        self.about_water(STATED_VOLUME, d.prior_volume);
        self.sums(d.sums.as_ref());
        self.dosing(d.dosing.as_ref());
        self.visits(case, &d.visits);
    }

    fn buy(&mut self, code: Code, buy: &Buy) {
        self.number(Output::BuyTotal, buy.bags.into(), 0);
        self.number(Output::BuyLow, buy.range[0].into(), 0);
        self.number(Output::BuyHigh, buy.range[1].into(), 0);
        if buy.sealed.is_some_and(|sealed| sealed > 0) {
            self.answer.say(Fact::BuySealed);
        }
        if buy.range[0] < buy.range[1] {
            self.answer.say(Fact::BuySpan);
        }
        if code == Code::NeedBaseline {
            self.answer.say(Fact::BuyRange);
        }
    }

    fn stage(&mut self, dose: &SaltPlan, stage: &Stage) {
        self.answer.say(match stage.bound {
            Bound::Risk => Fact::BecauseRisk,
            Bound::Need => Fact::BecauseNeed,
            Bound::Cap => Fact::BecauseCap,
            Bound::Low => Fact::BecauseLow,
        });
        self.answer.say(if stage.weighed || stage.part.is_some() {
            Fact::StageWeigh
        } else {
            Fact::StageInBags
        });
        self.bags(Output::StageBags, stage.part.unwrap_or(stage.bags));
        self.bags(Output::StageWanted, stage.wanted);
        self.bags(Output::StageAllowed, stage.allowed.unwrap_or(0.0));
        self.chance(Output::RiskOver, stage.over);
        self.chance(Output::RiskLow, stage.low);
        if let Some(job) = &dose.job {
            self.chosen(Output::RiskOverMost, job.levels.over);
            self.chosen(Output::RiskLowMost, job.levels.low);
            self.chosen(Output::Cap, job.levels.cap);
        }
        if let Some(over) = dose.overdone() {
            self.answer.say(Fact::StageOver);
            self.chance(Output::RiskIn, over);
        }
        if dose.is_in() {
            self.answer.say(Fact::StageIn);
        } else if dose.course.is_some_and(|course| course.after > Mass::NONE) {
            self.answer.say(Fact::StageSomeIn);
        }
    }

    fn sums(&mut self, sums: Option<&Sums>) {
        if let Some(sums) = sums {
            self.answer.say(Fact::Sums);
            self.mass(Output::SumsVolume, sums.by_volume);
            if let Some(mass) = sums.by_proportion {
                self.mass(Output::SumsProportion, mass);
            }
        }
    }

    /// The volume that the doses tell of.
    fn dosing(&mut self, dosing: Option<&Dosing>) {
        match dosing {
            None => {}
            Some(Dosing::NoRise) => self.answer.say(Fact::DosingNoRise),
            Some(Dosing::Told { weak, volume, low, high }) => {
                self.answer.say(if *weak { Fact::DosingWeak } else { Fact::DosingTold });
                self.cubic_metres(Output::DosingVolume, volume.mean);
                self.cubic_metres(Output::DosingVolumeLow, *low);
                match high {
                    Some(high) => self.cubic_metres(Output::DosingVolumeHigh, *high),
                    None => self.answer.say(Fact::DosingOpen),
                }
            }
        }
    }

    /// Which measurement would pay most to repeat; asked for only when somebody looks.
    pub(super) fn pays(&mut self, dose: &SaltPlan) {
        let (Some(job), Some(course)) = (&dose.job, &dose.course) else { return };
        let Ok(Some(pays)) = value_of_information(job, course) else { return };
        self.answer.say(Fact::ValueTold);
        let widths = [pays.today, pays.volume, pays.lab, pays.again];
        let names = [Output::ValueToday, Output::ValueVolume, Output::ValueLab, Output::ValueAgain];
        names.into_iter().zip(widths).for_each(|(name, width)| self.number(name, width, 1));
        self.answer.say(match pays.most() {
            None => Fact::ValueNothing,
            Some(Measurement::Volume) => Fact::ValueMostVolume,
            Some(Measurement::Lab) => Fact::ValueMostLab,
        });
    }

    fn visits(&mut self, case: &Case, visits: &[Option<Screened>]) {
        let mut lines = Vec::new();
        for judged in visits.iter().flatten() {
            lines.push(self.visit(case, judged));
        }
        self.answer.rows.push((List::Visits, lines));
    }

    fn visit(&self, case: &Case, Screened { visit, status, .. }: &Screened) -> Line {
        let state = match status {
            ReadingStatus::Counts => RowFact::VisitCounts,
            ReadingStatus::Early => RowFact::VisitEarly,
            ReadingStatus::Differs => RowFact::VisitDiffers,
            ReadingStatus::Aside(Side::Low) => RowFact::VisitLow,
            ReadingStatus::Aside(Side::High) => RowFact::VisitHigh,
            ReadingStatus::Out(_) => RowFact::VisitOut,
        };
        let Visit { entry, put_in, reading, .. } = visit;
        let when = match entry {
            Some(line) => case.log.valid().and_then(|log| log[*line]).map(|entry| entry.when),
            None => case.read_at.valid(),
        };
        let mut cells = vec![(
            RowOutput::VisitsRead.into(),
            Shown::of(reading.salt.mg_per_l(), self.units.salt, self.signs),
        )];
        if let Some(when) = when {
            cells.push((RowOutput::VisitsWhen.into(), Shown::moment(when)));
        }
        if *put_in > Mass::NONE {
            cells.push((
                RowOutput::VisitsPutIn.into(),
                Shown::of(put_in.kilograms(), self.units.mass, self.signs),
            ));
        }
        Line { state: Some(state.into()), cells }
    }

    /// Where the drawing's marks lie, on a scale from none to a little above all of them.
    fn marks(&mut self, dose: &SaltPlan, d: &Decision, [from, now, to]: [f64; 3]) {
        let Some(job) = &dose.job else { return };
        let band = &job.band;
        let (low, target, high) = (band.low.mg_per_l(), band.target.mg_per_l(), band.high.mg_per_l());
        let top = 1.1 * high.max(to).max(d.expect.map_or(0.0, |expected| expected.range[1]));
        let mut mark = |name, from: f64, to: f64| {
            let part = |x: f64| (x / top).clamp(0.0, 1.0);
            self.answer.marks.push((name, [part(from), part(to)]));
        };
        mark(DrawingMark::Band, low, high);
        mark(DrawingMark::Target, target, target);
        mark(DrawingMark::Now, now, now);
        mark(DrawingMark::NowRange, from, to);
        if let Some(expected) = &d.expect {
            mark(DrawingMark::Then, expected.mean, expected.mean);
            mark(DrawingMark::ThenRange, expected.range[0], expected.range[1]);
        }
        self.answer.say(Fact::Ruler);
        if d.expect.is_some() {
            self.answer.say(Fact::RulerThen);
        }
    }

    /// A figure and where it likely lies; mg/L.
    fn range(&mut self, names: [Output; 3], mean: f64, [low, high]: [f64; 2]) {
        for (name, x) in names.into_iter().zip([mean, low, high]) {
            self.answer.put(name, Shown::of(x.max(0.0), self.units.salt, self.signs));
        }
    }

    fn about_water(&mut self, names: [Output; 3], about: Moments) {
        let [low, high] = about.nine_in_ten();
        for (name, x) in names.into_iter().zip([about.mean, low, high]) {
            self.cubic_metres(name, x);
        }
    }

    fn cubic_metres(&mut self, name: Output, x: f64) {
        let unit = self.units.water;
        self.answer.put(name, Shown::of(x.max(0.0), unit, self.signs));
    }

    /// A level that somebody chose, in percent, with no more decimals than it has.
    fn chosen(&mut self, name: Output, x: f64) {
        let unit = Unit::find(QuantityKind::Part, "%");
        self.answer.put(name, Shown::plain(100.0 * x, unit, self.signs));
    }

    /// A chance, in percent; below a tenth of one it is no more than that.
    fn chance(&mut self, name: Output, x: f64) {
        self.part(name, x.clamp(0.0, 1.0));
    }
}
