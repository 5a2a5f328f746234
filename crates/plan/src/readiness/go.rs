//! May the salt go in, and the generator on? The worst gate decides.

use crate::input::answers::{Typed, Unknown};
use crate::input::case::Case;
use crate::readiness::gates::{By, EffectOnSalt, Gate, Gates, Row};
use crate::readiness::judge::finish_day;
use crate::readiness::verdict::Verdict;
use crate::salt::code::Standing;
use crate::salt::salt_plan::SaltPlan;
use crate::water::treatment::Treatment;

/// The one verdict on adding salt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Go {
    /// Something is missing.
    CantSay,
    /// There is nothing to add.
    Nothing,
    /// No.
    No,
    /// Not yet.
    NotYet,
    /// Every figure is there and nothing stands against it; what was asked besides is not answered yet.
    Ask,
    /// Yes.
    Yes,
}

/// May the salt go in? The worst decides: a stop; then nothing to add, or nothing that can be told; then a wait
/// that holds, which a stage that is in is too; then anything missing.
#[must_use]
pub fn go(case: &Case, plan: &SaltPlan, gates: &Gates) -> Go {
    let salt = |row: &Row| row.salt != EffectOnSalt::NotAsked;
    let holds = |row: &Row| row.salt == EffectOnSalt::Holds;
    let figures = |row: &Row| holds(row) && row.by == By::Plan;
    match plan.standing() {
        Some(Standing::Over) => Go::No,
        _ if gates.any(Verdict::Stop, salt) => Go::No,
        // What can't be used may be what stands against it.
        Some(Standing::Within) if (case.unlisted || case.untested) && gates.any(Verdict::Unknown, salt) => {
            Go::CantSay
        }
        Some(Standing::Within) if gates.at(Gate::Reading) == Verdict::Pass => Go::Nothing,
        Some(Standing::Within | Standing::Held) => Go::NotYet,
        None => Go::CantSay,
        Some(Standing::Short) if plan.is_in() || gates.any(Verdict::Wait, holds) => Go::NotYet,
        Some(Standing::Short) if gates.any(Verdict::Unknown, figures) || is_at_fault(case) => Go::CantSay,
        Some(Standing::Short) if gates.any(Verdict::Unknown, holds) => Go::Ask,
        Some(Standing::Short) => Go::Yes,
    }
}

/// Was something typed that can't be used, and that may stand against the salt? Left out, it is a note.
fn is_at_fault(case: &Case) -> bool {
    let tests = [case.ready.combined, case.ready.copper, case.ready.iron];
    case.unlisted || tests.iter().any(Typed::is_invalid)
}

/// May the generator be switched on? By the gates that are judged for it.
#[must_use]
pub fn power(case: &Case, gates: &Gates) -> Go {
    let power = |row: &Row| row.power;
    if gates.any(Verdict::Stop, power) {
        Go::No
    } else if gates.any(Verdict::Wait, power) {
        Go::NotYet
    } else if gates.any(Verdict::Unknown, power) || case.unlisted {
        Go::CantSay
    } else {
        Go::Yes
    }
}

/// The first day on which salt may go in by the waits that have a date; `None` where none of them has, and where one
/// of them can't be told for a fault: of two the later counts. It may be later: other waits have no date.
#[must_use]
pub fn earliest(case: &Case, gates: &Gates, treatment: &Result<Treatment, Unknown>) -> Option<i64> {
    let today = case.today?;
    let waits = |gate| gates.at(gate) == Verdict::Wait;
    let age = finish_day(case).filter(|_| waits(Gate::FinishAge));
    let running = waits(Gate::Running).then(|| today.saturating_add(1));
    let steps: u32 = treatment
        .as_ref()
        .map_or(0, |treatment| treatment.steps.iter().flatten().map(|step| step.wait).sum());
    let asked = !matches!(treatment, Err(Unknown::NotAsked));
    let untold = asked && steps == 0 && (case.untested || case.uncounted);
    let ruled = age.is_some() && case.ready.rulings.finish_age.day.is_invalid();
    if untold || ruled || case.ready.finish.is_invalid() {
        return None;
    }
    let steps = (steps > 0).then(|| today.saturating_add(steps.div_ceil(24).into()));
    [age, running, steps].into_iter().flatten().max()
}
