//! May the salt go in, and the generator on? The worst gate decides.

use crate::Unknown;
use crate::balance::{Balance, shown};
use crate::case::{Case, Optional};
use crate::choice::{Instrument, Method, Surface};
use crate::gates::{GATES, Gate, Row, Salt};
use crate::policy;
use crate::ready;
use crate::staging::{Dose, Standing};
use crate::treat::Treatment;
use chem::Mass;

/// What a gate says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Nothing against it.
    Pass,
    /// Not yet; something can be done about it.
    Wait,
    /// No; it needs a person.
    Stop,
    /// Something is missing, which is never a pass.
    Unknown,
    /// Somebody who may has ruled against it, in writing.
    Over,
}

/// What each gate says, in the order of [`GATES`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gates([Verdict; GATES.len()]);

/// The one verdict on adding salt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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

impl Gates {
    /// What one gate says.
    pub const fn at(&self, gate: Gate) -> Verdict {
        self.0[gate as usize]
    }

    /// Has some chemical to go in first?
    pub fn call_for_chemicals(&self) -> bool {
        [Gate::Ph, Gate::Index, Gate::First]
            .iter()
            .any(|gate| matches!(self.at(*gate), Verdict::Wait | Verdict::Stop))
    }

    /// Says any gate of those that `of` chooses this?
    fn any(&self, verdict: Verdict, of: impl Fn(&Row) -> bool) -> bool {
        GATES.iter().any(|row| of(row) && self.at(row.gate) == verdict)
    }
}

/// What the readings so far say to the gates.
#[derive(Clone, Copy, Debug)]
pub struct Read {
    /// What the last reading is worth, by the instrument it was taken with.
    by: Verdict,
    /// When it was taken, in minutes.
    at: Option<i64>,
    /// Does it, with nothing put in since, stand between the limits?
    level: Verdict,
}

impl Read {
    /// By the dose of today, whatever is to be done to the water first.
    pub fn of(case: &Case, today: &Dose) -> Self {
        Self { by: reading(case, today), at: read_at(case, today), level: level(case, today) }
    }
}

/// Judges each gate. A value on a limit takes the better side.
///
/// ```
/// use plan::{Case, Dose, Gate, Needs, Unknown, Verdict, rules};
/// let nothing = Err(Unknown::Needs(Needs::NONE));
/// let read = rules::Read::of(&Case::default(), &Dose::default());
/// let gates = rules::gates(&Case::default(), &read, &nothing, &Err(Unknown::NotAsked));
/// assert_eq!(gates.at(Gate::Ph), Verdict::Unknown);
/// ```
pub fn gates(
    case: &Case,
    read: &Read,
    balance: &Result<Balance, Unknown>,
    treatment: &Result<Treatment, Unknown>,
) -> Gates {
    Gates(GATES.map(|row| match row.gate {
        Gate::Code => ready::code(case),
        Gate::Past => ready::past(case),
        Gate::CyanuricAcid => cyanuric_acid(case),
        Gate::Fill => ready::fill(case),
        Gate::Running => ready::running(case),
        Gate::Clear => ready::clear(case),
        Gate::Algae => ready::algae(case),
        Gate::Chlorine => ready::chlorine(case),
        Gate::Combined => ready::combined(case),
        Gate::Copper => ready::copper(case),
        Gate::Iron => ready::iron(case),
        Gate::First => first(treatment),
        Gate::Heat => heat(case),
        Gate::Alkalinity => ready::alkalinity(case),
        Gate::Hardness => ready::hardness(case),
        Gate::Stabiliser => ready::stabiliser(case),
        Gate::Ph => ph(case),
        Gate::Index => index(case, balance),
        Gate::Volume => volume(case),
        Gate::Target => target(case),
        Gate::Reading => read.by,
        Gate::ReadingAge => ready::reading_age(case, read.at),
        Gate::Grade => ready::grade(case),
        Gate::FinishAge => ready::finish(case),
        Gate::Clearance => ready::clearance(case),
        Gate::Papers => ready::papers(case),
        Gate::Weather => ready::weather(case),
        Gate::Wired => ready::wired(case),
        Gate::Level => read.level,
        Gate::Clock => ready::clock(case),
    }))
}

/// When the last reading was taken.
fn read_at(case: &Case, today: &Dose) -> Option<i64> {
    match today.latest()?.entry {
        Some(line) => case.log.given().and_then(|log| log[line]).map(|entry| entry.when),
        None => case.read_at.given(),
    }
}

/// Does the last reading, with nothing put in since, stand between the limits?
fn level(case: &Case, today: &Dose) -> Verdict {
    let unread = today.course.is_some_and(|course| course.after > Mass::NONE);
    let read = today.latest().map(|visit| visit.reading.salt);
    match (today.standing(), case.band.zip(read)) {
        (None, _) => Verdict::Unknown,
        (Some(Standing::Over), _) => Verdict::Stop,
        (_, Some((band, read))) if read > band.high => Verdict::Stop,
        (Some(Standing::Within), Some((band, read))) if !unread && read >= band.low => Verdict::Pass,
        _ => Verdict::Wait,
    }
}

fn volume(case: &Case) -> Verdict {
    match (case.volume, case.method) {
        (None, _) => Verdict::Unknown,
        (Some(_), None | Some(Method::Remembered)) => Verdict::Wait,
        (Some(_), _) => Verdict::Pass,
    }
}

fn reading(case: &Case, dose: &Dose) -> Verdict {
    match dose.latest().map(|visit| visit.reading.instrument) {
        Some(Instrument::Display) => Verdict::Wait,
        Some(_) => Verdict::Pass,
        None if case.instrument == Some(Instrument::Assumed) => Verdict::Stop,
        None => Verdict::Unknown,
    }
}

fn target(case: &Case) -> Verdict {
    match case.band {
        None => Verdict::Unknown,
        Some(band) if band.example => Verdict::Wait,
        Some(_) => Verdict::Pass,
    }
}

fn heat(case: &Case) -> Verdict {
    match case.water.heat.map(|t| t.celsius()) {
        None => Verdict::Unknown,
        Some(t) if t >= policy::WARM_ENOUGH => Verdict::Pass,
        Some(_) => Verdict::Wait,
    }
}

fn ph(case: &Case) -> Verdict {
    let within = |x: f64, [low, high]: [f64; 2]| x >= low && x <= high;
    match case.water.ph.map(|ph| ph.units()) {
        None => Verdict::Unknown,
        Some(ph) if within(ph, policy::PH_PASS) => Verdict::Pass,
        Some(ph) if within(ph, policy::PH_WAIT) => Verdict::Wait,
        Some(_) => Verdict::Stop,
    }
}

fn index(case: &Case, balance: &Result<Balance, Unknown>) -> Verdict {
    let judged = balance.as_ref().ok().and_then(Balance::judged);
    match judged.map(|i| shown(i.log10())) {
        None => Verdict::Unknown,
        Some(i) if i.abs() <= policy::INDEX_PASS => Verdict::Pass,
        Some(_) if low_is_a_note(case, balance.as_ref().ok()) => Verdict::Pass,
        Some(i) if i.abs() <= policy::INDEX_STOP => Verdict::Wait,
        Some(_) => Verdict::Stop,
    }
}

fn first(treatment: &Result<Treatment, Unknown>) -> Verdict {
    match treatment {
        Ok(treatment) if treatment.is_due() => Verdict::Wait,
        Ok(_) | Err(Unknown::NotAsked) => Verdict::Pass,
        Err(_) => Verdict::Unknown,
    }
}

fn cyanuric_acid(case: &Case) -> Verdict {
    match case.water.cyanuric_acid.map(|x| x.mg_per_l()) {
        None => Verdict::Unknown,
        Some(cya) if cya <= policy::CYANURATE_MOST => Verdict::Pass,
        Some(_) => Verdict::Wait,
    }
}

/// Is the index low on a shell that has nothing of cement for soft water to take from? Then the maker's
/// figure decides, and it is only a note.
pub fn low_is_a_note(case: &Case, balance: Option<&Balance>) -> bool {
    let judged = balance.and_then(Balance::judged);
    case.surface.is_some_and(Surface::is_shell)
        && judged.is_some_and(|i| shown(i.log10()) < -policy::INDEX_PASS)
}

/// May the salt go in? The worst decides: a stop; then nothing to add, or nothing that can be told; then a wait
/// that holds, which a stage that is in is too; then anything missing.
pub fn go(case: &Case, dose: &Dose, gates: &Gates) -> Go {
    let salt = |row: &Row| row.salt != Salt::NotAsked;
    let holds = |row: &Row| row.salt == Salt::Holds;
    let figures = |row: &Row| holds(row) && !row.asked;
    match dose.standing() {
        Some(Standing::Over) => Go::No,
        _ if gates.any(Verdict::Stop, salt) => Go::No,
        Some(Standing::Within) if gates.at(Gate::Reading) == Verdict::Pass => Go::Nothing,
        Some(Standing::Within | Standing::Held) => Go::NotYet,
        None => Go::CantSay,
        Some(Standing::Short) if dose.is_in() || gates.any(Verdict::Wait, holds) => Go::NotYet,
        Some(Standing::Short) if gates.any(Verdict::Unknown, figures) || is_at_fault(case) => Go::CantSay,
        Some(Standing::Short) if gates.any(Verdict::Unknown, holds) => Go::Ask,
        Some(Standing::Short) => Go::Yes,
    }
}

/// Was something typed that can't be used, and that may stand against the salt? Left out, it is a note.
fn is_at_fault(case: &Case) -> bool {
    let tests = [case.ready.combined, case.ready.copper, case.ready.iron];
    case.unlisted || tests.iter().any(Optional::is_garbled)
}

/// May the generator be switched on? By the gates that are judged for it.
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

/// The first day on which salt may go in by the waits that have a date; `None` where none of them has. It may be
/// later: other waits have no date.
pub fn earliest(case: &Case, gates: &Gates, treatment: &Result<Treatment, Unknown>) -> Option<i64> {
    let today = case.today?;
    let age = ready::finish_day(case).filter(|_| gates.at(Gate::FinishAge) == Verdict::Wait);
    let running = (gates.at(Gate::Running) == Verdict::Wait).then_some(today + 1);
    let steps = treatment.as_ref().map_or(0, |treatment| {
        treatment
            .steps
            .iter()
            .zip(policy::WAIT)
            .filter(|(step, _)| step.is_some())
            .map(|(_, hours)| hours)
            .sum()
    });
    let steps = (steps > 0).then_some(today + i64::from(steps.div_ceil(24)));
    [age, running, steps].into_iter().flatten().max()
}
