//! What of the salt: the band, the plain sum, the bags, the stage, the clock.

use super::Filler;
use crate::answer::{Line, Shown};
use crate::contract::units::{Kind, Unit};
use crate::text::joined;
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

/// The code of a decision on the page.
const fn code(code: Code) -> &'static str {
    match code {
        Code::NeedBaseline => "do.read-first",
        Code::RepeatDiffers => "do.third-reading",
        Code::WaitLonger => "do.wait-longer",
        Code::ReadsTooLow => "do.reads-low",
        Code::ReadsTooHigh => "do.reads-high",
        Code::VolumeImplausible => "do.measure-again",
        Code::TooSalty => "do.dilute",
        Code::AddAndRetest => "do.add-retest",
        Code::AddAndFinish => "do.add-finish",
        Code::StopInBand => "do.stop",
        Code::StopNearHigh => "do.stop-near-high",
        Code::NoMore => "do.no-more",
        Code::BagTooCoarse => "do.part-bag",
    }
}

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

    pub(super) fn dose(&mut self, case: &Case, plan: &Plan, dose: &SaltPlan) {
        if let Some(from) = plan.counted_from {
            self.answer.say("dose.after-water");
            self.salt("dose.from", from);
        } else if let Some(from) = dose.from {
            self.salt("dose.from", from);
        }
        if let Some(rise) = dose.rise {
            self.answer.say("dose.top");
            self.salt("dose.rise", rise);
        }
        let sums = [("dose.pure", dose.pure), ("dose.mass", dose.mass)];
        sums.into_iter().for_each(|(name, mass)| mass.into_iter().for_each(|mass| self.mass(name, mass)));
        if let Some(bags) = dose.bags {
            self.bags("dose.bags", bags);
        }
        if dose.faults.contains(JobError::Instruments) {
            self.answer.say("log.instruments");
        }
        if dose.faults.contains(JobError::Dose) {
            self.answer.say("log.too-much");
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
            self.number("buy.have", have.into(), 0);
            self.number("buy.bags", buy.more.into(), 0);
            if let Some(price) = case.bag.price {
                self.answer.say("buy.price");
                self.number("buy.price", price * f64::from(buy.more), 2);
            }
            if buy.more == 0 {
                self.answer.say("buy.none");
            }
        }
    }

    /// What is in, and from when on the next thing may be done.
    fn clock(&mut self, case: &Case, course: &Course) {
        let Some(last) = course.last_dose else { return };
        self.answer.say("log.dosed");
        if case.read().is_some() && case.read_at == Typed::Missing {
            self.answer.say("log.first-before");
        }
        self.mass("in.all", course.put_in);
        for (name, hours) in [
            ("clock.last", 0),
            ("clock.retest", policy::HOURS_TO_READING),
            ("clock.power", policy::HOURS_TO_POWER),
        ] {
            self.answer.put(name, Shown::moment(last.saturating_add(hours * 60)));
        }
    }

    /// Without bags and size it is known that no salt is due, and nothing of the pool.
    fn enough(&mut self, case: &Case, enough: &Enough) {
        self.answer.say(code(enough.code));
        if enough.visits.iter().flatten().nth(1).is_some() {
            self.answer.say("log.read");
        }
        self.chance("risk.now", enough.over);
        self.range("found.salt", enough.salt.mean, enough.salt.range());
        self.sums(enough.sums.as_ref());
        self.visits(case, &enough.visits);
    }

    fn decision(&mut self, case: &Case, dose: &SaltPlan, d: &Decision) {
        self.answer.say(code(d.code));
        if d.visits.iter().flatten().nth(1).is_some() {
            self.answer.say("log.read");
        }
        if let Some(buy) = &d.buy {
            self.buy(d.code, buy);
            if let Some(left) = dose.bags_left() {
                self.bags("buy.left", left);
            }
        }
        if let Some(stage) = &d.stage {
            self.chance("risk.now", stage.over_now);
        }
        if let (Some(stage), Some(StageMass { all, left })) = (&d.stage, dose.due()) {
            self.stage(dose, stage);
            if d.is_first() {
                self.answer.say("stage.first");
            }
            if stage.bags > 0.0 || stage.part.is_some() {
                self.mass("now.mass", all);
                self.mass("now.left", left);
                if let (Some(job), Some(course)) = (&dose.job, &dose.course) {
                    self.bags("now.left.bags", job.in_bags(left));
                    self.bags("in.since.bags", job.in_bags(course.after));
                    self.mass("in.since", course.after);
                }
                if let Some(reading) = dose.plain_after() {
                    self.salt("now.plain", reading);
                }
            }
        }
        if let Some(expected) = &d.expect {
            self.range("now.expect", expected.mean, expected.range);
        }
        if let Some(known) = &d.known {
            let range = known.estimate.salt(0.0).range();
            self.range("found.salt", known.salt.mean, range);
            self.marks(dose, d, [range[0], known.salt.mean, range[1]]);
        }
        if let Some(known) = &d.known {
            self.about_water("found.volume", known.volume);
            self.bags("found.need", known.need.max(0.0));
        }
        self.about_water("stated.volume", d.prior_volume);
        self.sums(d.sums.as_ref());
        self.dosing(d.dosing.as_ref());
        self.visits(case, &d.visits);
    }

    fn buy(&mut self, code: Code, buy: &Buy) {
        self.number("buy.total", buy.bags.into(), 0);
        self.number("buy.low", buy.range[0].into(), 0);
        self.number("buy.high", buy.range[1].into(), 0);
        if buy.sealed.is_some_and(|sealed| sealed > 0) {
            self.answer.say("buy.sealed");
        }
        if buy.range[0] < buy.range[1] {
            self.answer.say("buy.span");
        }
        if code == Code::NeedBaseline {
            self.answer.say("buy.range");
        }
    }

    fn stage(&mut self, dose: &SaltPlan, stage: &Stage) {
        self.answer.say(match stage.bound {
            Bound::Risk => "because.risk",
            Bound::Need => "because.need",
            Bound::Cap => "because.cap",
            Bound::Low => "because.low",
        });
        self.answer.say(if stage.weighed || stage.part.is_some() { "now.weigh" } else { "now.in-bags" });
        self.bags("now.bags", stage.part.unwrap_or(stage.bags));
        self.bags("now.wanted", stage.wanted);
        self.bags("now.allowed", stage.allowed.unwrap_or(0.0));
        self.chance("risk.over", stage.over);
        self.chance("risk.low", stage.low);
        if let Some(job) = &dose.job {
            self.chosen("risk.over.most", job.levels.over);
            self.chosen("risk.low.most", job.levels.low);
            self.chosen("cap", job.levels.cap);
        }
        if let Some(over) = dose.overdone() {
            self.answer.say("stage.over");
            self.chance("risk.in", over);
        }
        if dose.is_in() {
            self.answer.say("stage.in");
        } else if dose.course.is_some_and(|course| course.after > Mass::NONE) {
            self.answer.say("stage.some-in");
        }
    }

    fn sums(&mut self, sums: Option<&Sums>) {
        if let Some(sums) = sums {
            self.answer.say("sums");
            self.mass("sums.volume", sums.by_volume);
            if let Some(mass) = sums.by_proportion {
                self.mass("sums.proportion", mass);
            }
        }
    }

    /// The volume that the doses tell of.
    fn dosing(&mut self, dosing: Option<&Dosing>) {
        match dosing {
            None => {}
            Some(Dosing::NoRise) => self.answer.say("dosing.no-rise"),
            Some(Dosing::Told { weak, volume, low, high }) => {
                self.answer.say(if *weak { "dosing.weak" } else { "dosing.told" });
                self.cubic_metres("dosing.volume", volume.mean);
                self.cubic_metres("dosing.volume.low", *low);
                match high {
                    Some(high) => self.cubic_metres("dosing.volume.high", *high),
                    None => self.answer.say("dosing.open"),
                }
            }
        }
    }

    /// Which measurement would pay most to repeat; asked for only when somebody looks.
    pub(super) fn pays(&mut self, dose: &SaltPlan) {
        let (Some(job), Some(course)) = (&dose.job, &dose.course) else { return };
        let Ok(Some(pays)) = value_of_information(job, course) else { return };
        self.answer.say("pays");
        let widths = [pays.today, pays.volume, pays.lab, pays.again];
        let names = ["pays.today", "pays.volume", "pays.lab", "pays.again"];
        names.into_iter().zip(widths).for_each(|(name, width)| self.number(name, width, 1));
        self.answer.say(match pays.most() {
            None => "pays.nothing",
            Some(Measurement::Volume) => "pays.most.volume",
            Some(Measurement::Lab) => "pays.most.lab",
        });
    }

    fn visits(&mut self, case: &Case, visits: &[Option<Screened>]) {
        let lines = visits.iter().flatten().map(|judged| self.visit(case, judged)).collect();
        self.answer.rows.push(("visits", lines));
    }

    fn visit(&self, case: &Case, Screened { visit, status, .. }: &Screened) -> Line {
        let state = match status {
            ReadingStatus::Counts => "visit.counts",
            ReadingStatus::Early => "visit.early",
            ReadingStatus::Differs => "visit.differs",
            ReadingStatus::Aside(Side::Low) => "visit.low",
            ReadingStatus::Aside(Side::High) => "visit.high",
            ReadingStatus::Out(_) => "visit.out",
        };
        let Visit { entry, put_in, reading, .. } = visit;
        let when = match entry {
            Some(line) => case.log.valid().and_then(|log| log[*line]).map(|entry| entry.when),
            None => case.read_at.valid(),
        };
        let mut cells =
            vec![("read".into(), Shown::of(reading.salt.mg_per_l(), self.units.salt, self.signs))];
        if let Some(when) = when {
            cells.push(("when".into(), Shown::moment(when)));
        }
        if *put_in > Mass::NONE {
            cells.push(("put-in".into(), Shown::of(put_in.kilograms(), self.units.mass, self.signs)));
        }
        Line { state, cells }
    }

    /// Where the drawing's marks lie, on a scale from none to a little above all of them.
    fn marks(&mut self, dose: &SaltPlan, d: &Decision, [from, now, to]: [f64; 3]) {
        let Some(job) = &dose.job else { return };
        let [low, target, high] = [job.band.low, job.band.target, job.band.high].map(|x| x.mg_per_l());
        let top = 1.1 * high.max(to).max(d.expect.map_or(0.0, |expected| expected.range[1]));
        let mut mark = |name, from: f64, to: f64| {
            self.answer.marks.push((name, [from, to].map(|x| (x / top).clamp(0.0, 1.0))));
        };
        mark("band", low, high);
        mark("target", target, target);
        mark("now", now, now);
        mark("now.range", from, to);
        if let Some(expected) = &d.expect {
            mark("then", expected.mean, expected.mean);
            mark("then.range", expected.range[0], expected.range[1]);
        }
        self.answer.say("ruler");
        if d.expect.is_some() {
            self.answer.say("ruler.then");
        }
    }

    /// A figure and where it likely lies, under its name and `.low`, `.high`; mg/L.
    fn range(&mut self, name: &str, mean: f64, [low, high]: [f64; 2]) {
        for (part, x) in [("", mean), (".low", low), (".high", high)] {
            let shown = Shown::of(x.max(0.0), self.units.salt, self.signs);
            self.answer.put(&joined(&[name, part]), shown);
        }
    }

    fn about_water(&mut self, name: &str, about: Moments) {
        let [low, high] = about.nine_in_ten();
        for (part, x) in [("", about.mean), (".low", low), (".high", high)] {
            self.cubic_metres(&joined(&[name, part]), x);
        }
    }

    fn cubic_metres(&mut self, name: &str, x: f64) {
        let unit = self.units.water;
        self.answer.put(name, Shown::of(x.max(0.0), unit, self.signs));
    }

    /// A level that somebody chose, in percent, with no more decimals than it has.
    fn chosen(&mut self, name: &'static str, x: f64) {
        let unit = Unit::find(Kind::Part, "%");
        self.answer.put(name, Shown::plain(100.0 * x, unit, self.signs));
    }

    /// A chance, in percent; below a tenth of one it is no more than that.
    fn chance(&mut self, name: &'static str, x: f64) {
        self.part(name, x.clamp(0.0, 1.0));
    }
}
