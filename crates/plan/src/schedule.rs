//! What is to be done when, from the moments noted?
//!
//! Worked out anew each time, from the last bag: nothing is stored, so whatever moves re-dates all of it.

use crate::input::answers::Typed;
use crate::input::case::Case;
use crate::policy::{self, power_from};
use crate::salt::code::{Code, Standing};
use crate::salt::salt_plan::SaltPlan;
use chem::Mass;

/// The moments noted, in minutes of elapsed time.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Clock {
    /// The moment it is.
    pub now: Option<i64>,
    /// When the first bag is planned for.
    pub start: Typed<i64>,
    /// When the generator was switched on.
    pub on: Typed<i64>,
    /// When the last salt went in, by the log alone.
    pub last_dose: Typed<i64>,
    /// Something that the decision on the salt, or the bags, are counted by is at fault.
    pub invalid: bool,
}

impl Clock {
    /// Of a case.
    #[must_use]
    pub fn of(case: &Case) -> Self {
        Self {
            now: case.now,
            start: case.start,
            on: case.on,
            last_dose: case.last_dose(),
            invalid: case.is_invalid() || case.uncounted,
        }
    }
}

/// A thing to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Act {
    /// Put in what the sheet tells.
    Stage,
    /// Brush, look for grains, see to the chlorine.
    Brush,
    /// Read the salt.
    Read,
    /// Switch the generator on, not before.
    Power,
    /// Test chlorine and pH, and set the output.
    Test,
    /// Test alkalinity, too, and the salt; look at cell and rails.
    Week,
    /// Test everything.
    Month,
}

/// When a thing is to be done, in minutes; without a moment it is due now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct ScheduledStep {
    /// What.
    pub act: Act,
    /// From when on.
    pub at: Option<i64>,
    /// Best until then.
    pub until: Option<i64>,
}

/// A schedule has no more steps.
pub const MOST_STEPS: usize = 18;

/// What lies ahead.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Schedule {
    steps: [Option<ScheduledStep>; MOST_STEPS],
    /// Reckoned from a moment that was only planned, or as if a later stage went in at once.
    pub forecast: bool,
    now: Option<i64>,
}

impl Schedule {
    /// The steps in their order, without those whose time has gone by. A reading that is overdue stays.
    pub fn steps(&self) -> impl Iterator<Item = &ScheduledStep> {
        self.steps.iter().flatten().filter(|step| !self.is_past(step))
    }

    /// The one to do next: the first, unless one that waits to be done is due.
    #[must_use]
    pub fn next(&self) -> Option<&ScheduledStep> {
        self.steps().find(|step| waits(step.act) && self.is_due(step)).or(self.steps().next())
    }

    /// Has its time come?
    #[must_use]
    pub fn is_due(&self, step: &ScheduledStep) -> bool {
        step.at.is_none_or(|at| self.now.is_some_and(|now| now >= at))
    }

    fn is_past(&self, step: &ScheduledStep) -> bool {
        let end = step.until.or(step.at);
        !waits(step.act)
            && self.now.zip(end).is_some_and(|(now, end)| now > end.saturating_add(policy::GRACE * 60))
    }
}

/// Does it stay until it is done?
const fn waits(act: Act) -> bool {
    matches!(act, Act::Stage | Act::Read | Act::Power)
}

/// The schedule; `None` while there is no moment to reckon from, or while one can't be used.
///
/// ```
/// use saltwright_plan::schedule::{Act, Clock, schedule};
/// use saltwright_plan::{SaltPlan, Typed};
/// // Switched on at minute 0: what is left is testing.
/// let clock = Clock { on: Typed::Valid(0), ..Clock::default() };
/// let all = schedule(&clock, &SaltPlan::default()).unwrap();
/// assert_eq!(all.next().map(|step| (step.act, step.at)), Some((Act::Test, Some(24 * 60))));
/// ```
#[must_use]
pub fn schedule(clock: &Clock, salt: &SaltPlan) -> Option<Schedule> {
    let mut list = List { steps: [None; MOST_STEPS] };
    let mut forecast = false;
    let code = salt.code();
    let last = salt.course.and_then(|course| course.last_dose);
    let unread = salt.course.is_some_and(|course| course.after > Mass::NONE);
    let short = salt.standing() == Some(Standing::Short);
    match (clock.on, last, clock.start) {
        (Typed::Invalid, ..) | (_, None, Typed::Invalid) => return None,
        (Typed::Valid(on), ..) if is_on_early(clock) == Some(false) => list.first_week(on),
        _ if clock.invalid => return None,
        (_, Some(last), _) => {
            match clock.now {
                // As if what is due went in at once.
                Some(now) if short && !salt.is_in() => {
                    forecast = true;
                    list.ahead(now, code);
                }
                _ => list.brushing(last, unread.then_some(last)),
            }
            let held = salt.standing() == Some(Standing::Held);
            if held && !unread {
                let soonest = last.saturating_add(policy::HOURS_TO_READING * 60);
                list.add(Act::Read, Some(clock.now.map_or(soonest, |now| now.max(soonest))), None);
            }
            let done = match code {
                Some(Code::AddAndFinish) => salt.is_in() && salt.overdone().is_none(),
                _ => salt.standing() == Some(Standing::Within),
            };
            if done {
                list.power(last);
                forecast = true;
            }
        }
        // Not where salt is in already, and only the course is counted anew: after other water.
        (_, None, Typed::Valid(start)) if short && clock.last_dose == Typed::Missing => {
            forecast = true;
            list.ahead(start, code);
        }
        _ => return None,
    }
    Some(Schedule { steps: list.steps, forecast, now: clock.now })
}

/// Is the generator said to be on before the last salt allows, while it can still be switched off until then?
/// `None` where it is not said to be on, or nobody knows when the last salt went in.
///
/// ```
/// use saltwright_plan::Typed;
/// use saltwright_plan::schedule::{Clock, is_on_early};
/// // No salt went in, so no moment is too early.
/// let clock = Clock { on: Typed::Valid(0), ..Clock::default() };
/// assert_eq!(is_on_early(&clock), Some(false));
/// assert_eq!(is_on_early(&Clock { last_dose: Typed::Invalid, ..clock }), None);
/// ```
#[must_use]
pub fn is_on_early(clock: &Clock) -> Option<bool> {
    let (on, last) = (clock.on.valid()?, clock.last_dose.map(Some).or(None)?);
    let early = |at: i64| last.is_some_and(|last| at < power_from(last));
    Some(early(on) && clock.now.is_none_or(early))
}

struct List {
    steps: [Option<ScheduledStep>; MOST_STEPS],
}

impl List {
    fn add(&mut self, act: Act, at: Option<i64>, until: Option<i64>) {
        // In order of time, and at the same time in the order of adding.
        let mut carried = Some(ScheduledStep { act, at, until });
        for place in &mut self.steps {
            let later = carried.zip(*place).is_some_and(|(step, there)| there.at > step.at);
            if later || place.is_none() {
                core::mem::swap(place, &mut carried);
            }
        }
    }

    fn after(&mut self, act: Act, from: i64, hours: i64, until: Option<i64>) {
        let at = |hours: i64| from.saturating_add(hours * 60);
        self.add(act, Some(at(hours)), until.map(at));
    }

    /// From a stage that goes in then to the first week.
    fn ahead(&mut self, start: i64, code: Option<Code>) {
        self.add(Act::Stage, Some(start), None);
        let mut last = start;
        if code != Some(Code::AddAndFinish) {
            // As if what the reading asks for went in at once.
            let [[from, to], ..] = policy::BRUSH;
            self.after(Act::Brush, start, from, Some(to));
            self.after(Act::Read, start, policy::HOURS_TO_READING, None);
            last = start.saturating_add(policy::HOURS_TO_READING * 60);
            self.add(Act::Stage, Some(last), None);
        }
        self.brushing(last, Some(last));
        self.power(last);
    }

    fn brushing(&mut self, last: i64, read: Option<i64>) {
        for [from, to] in policy::BRUSH {
            self.after(Act::Brush, last, from, Some(to));
        }
        if let Some(last) = read {
            self.after(Act::Read, last, policy::HOURS_TO_READING, None);
        }
    }

    fn power(&mut self, last: i64) {
        self.after(Act::Power, last, policy::HOURS_TO_POWER, None);
        self.first_week(power_from(last));
    }

    fn first_week(&mut self, on: i64) {
        for day in policy::TESTS_AFTER {
            self.after(Act::Test, on, day * 24, None);
        }
        self.after(Act::Week, on, 7 * 24, None);
        self.after(Act::Month, on, 30 * 24, None);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_stand_in_order_of_time_and_past_ones_go() {
        let clock = Clock { on: Typed::Valid(0), now: Some(25 * 60), ..Clock::default() };
        let all = schedule(&clock, &SaltPlan::default()).unwrap();
        assert!(all.steps().zip(all.steps().skip(1)).all(|(a, b)| a.at <= b.at));
        // A day and an hour after: the first test is still due; six hours on it is past.
        assert_eq!(all.next().unwrap().at, Some(24 * 60));
        assert!(all.is_due(all.next().unwrap()));
        let later = schedule(&Clock { now: Some(31 * 60), ..clock }, &SaltPlan::default()).unwrap();
        assert_eq!(later.next().unwrap().at, Some(48 * 60));
        assert!(!later.is_due(later.next().unwrap()));
        // Six hours to the minute are not past yet.
        for (now, first) in [(30 * 60, 24 * 60), (30 * 60 + 1, 48 * 60)] {
            let late = schedule(&Clock { now: Some(now), ..clock }, &SaltPlan::default()).unwrap();
            assert_eq!(late.next().unwrap().at, Some(first));
        }
    }

    /// Days 1, 2, 3 and 5, then the week and the month; before them a stage, its reading, and the rest.
    #[test]
    fn the_first_month_is_all_there_and_a_plan_leads_to_it() {
        const HOUR: i64 = 60;
        let clock = Clock { on: Typed::Valid(0), ..Clock::default() };
        let all = schedule(&clock, &SaltPlan::default()).unwrap();
        let days = all.steps().filter_map(|step| step.at);
        assert!(days.eq([1, 2, 3, 5, 7, 30].map(|day| day * 24 * HOUR)));
        let mut list = List { steps: [None; MOST_STEPS] };
        list.ahead(0, Some(Code::AddAndRetest));
        let at = |act| list.steps.iter().flatten().filter(move |s| s.act == act).filter_map(|s| s.at);
        assert!(at(Act::Stage).eq([0, 24].map(|hours| hours * HOUR)));
        assert!(at(Act::Brush).eq([4, 28, 48, 56, 70].map(|hours| hours * HOUR)));
        assert!(at(Act::Read).eq([24, 48].map(|hours| hours * HOUR)));
        assert!(at(Act::Power).eq([72 * HOUR]) && at(Act::Week).eq([(72 + 7 * 24) * HOUR]));
        let mut done = List { steps: [None; MOST_STEPS] };
        done.ahead(0, Some(Code::AddAndFinish));
        assert_eq!(done.steps.iter().flatten().filter(|step| step.act == Act::Stage).count(), 1);
    }

    #[test]
    fn without_a_moment_there_is_none() {
        assert_eq!(schedule(&Clock::default(), &SaltPlan::default()), None);
        let invalid = Clock { on: Typed::Invalid, start: Typed::Valid(0), ..Clock::default() };
        assert_eq!(schedule(&invalid, &SaltPlan::default()), None);
        // A planned beginning says nothing while no salt is known to be due.
        let planned = Clock { start: Typed::Valid(0), ..Clock::default() };
        assert_eq!(schedule(&planned, &SaltPlan::default()), None);
    }
}
