//! May the salt go in? One row a gate, the worst of them decides.

use crate::Unknown;
use crate::balance::{Balance, shown};
use crate::case::{Case, Optional};
use crate::choice::{Instrument, Method, Surface};
use crate::policy;
use crate::staging::{Dose, Standing};
use crate::treat::Treatment;

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
    /// Not asked here: it is for the person to confirm.
    Confirm,
}

/// A gate this plan can judge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gate {
    /// How much water there is, and how that was found.
    Volume,
    /// The salt reading, and with what it was read.
    Reading,
    /// The generator's target.
    Target,
    /// The water's temperature.
    Heat,
    /// pH.
    Ph,
    /// The saturation index after what is due.
    Index,
    /// What has to be done to the water before the salt, by the person's own goals.
    First,
    /// Free chlorine, once there is a test of it; this plan does not ask for one.
    Chlorine,
    /// Cyanuric acid that only other water brings down.
    Cyanurate,
}

/// One row a gate: its code on the page, and whether a wait at it holds the salt back.
pub const GATES: [(Gate, &str, bool); 9] = [
    (Gate::Volume, "volume", false), // The retest decides.
    (Gate::Reading, "reading", true),
    (Gate::Target, "target", true),
    (Gate::Heat, "heat", true),
    (Gate::Ph, "ph", true),
    (Gate::Index, "index", true),
    (Gate::First, "first", true),
    (Gate::Chlorine, "chlorine", true),
    (Gate::Cyanurate, "cyanurate", true),
];

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
    /// Nothing known here stands against it.
    Quote,
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

    fn any(&self, verdict: Verdict) -> bool {
        self.0.contains(&verdict)
    }

    fn waits(&self) -> bool {
        GATES.iter().any(|(gate, _, holds)| *holds && self.at(*gate) == Verdict::Wait)
    }
}

/// Judges each gate; `reading` is judged before, by [`reading`]. A value on a limit takes the better side.
///
/// ```
/// use plan::{Case, Gate, Needs, Unknown, Verdict, rules};
/// let nothing = Err(Unknown::Needs(Needs::NONE));
/// let gates = rules::gates(&Case::default(), Verdict::Unknown, &nothing, &Err(Unknown::NotAsked));
/// assert_eq!(gates.at(Gate::Ph), Verdict::Unknown);
/// ```
pub fn gates(
    case: &Case,
    reading: Verdict,
    balance: &Result<Balance, Unknown>,
    treatment: &Result<Treatment, Unknown>,
) -> Gates {
    Gates(GATES.map(|(gate, ..)| match gate {
        Gate::Volume => volume(case),
        Gate::Reading => reading,
        Gate::Target => target(case),
        Gate::Heat => heat(case),
        Gate::Ph => ph(case),
        Gate::Index => index(case, balance),
        Gate::First => first(treatment),
        Gate::Chlorine => chlorine(case),
        Gate::Cyanurate => cyanurate(case),
    }))
}

fn volume(case: &Case) -> Verdict {
    match (case.volume, case.method) {
        (None, _) => Verdict::Unknown,
        (Some(_), None | Some(Method::Remembered)) => Verdict::Wait,
        (Some(_), _) => Verdict::Pass,
    }
}

/// What the last reading is worth, by the instrument it was taken with.
pub fn reading(case: &Case, dose: &Dose) -> Verdict {
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

/// Without a test it is for the person to confirm.
fn chlorine(case: &Case) -> Verdict {
    let free = match case.water.chlorine {
        Optional::LeftOut => return Verdict::Confirm,
        Optional::Garbled => return Verdict::Unknown,
        Optional::Given(free) => free.mg_per_l(),
    };
    let cya = case.water.cyanurate.map_or(0.0, |x| x.mg_per_l());
    let least = if cya > 0.0 {
        policy::CHLORINE_STABILISED.max(cya * policy::CHLORINE_OF_CYANURATE)
    } else {
        policy::CHLORINE_BARE
    };
    let goal = case.goals.given().and_then(|goals| goals.chlorine).map_or(0.0, |x| x.mg_per_l());
    let most = policy::CHLORINE_MOST.max(goal).max(least);
    if (least..=most).contains(&free) { Verdict::Pass } else { Verdict::Wait }
}

fn cyanurate(case: &Case) -> Verdict {
    match case.water.cyanurate.map(|x| x.mg_per_l()) {
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

/// The worst decides: a stop; then nothing to add, or nothing that can be told; then anything missing; then a
/// wait that holds, which a stage that is in is too.
pub fn go(case: &Case, dose: &Dose, gates: &Gates) -> Go {
    match dose.standing() {
        Some(Standing::Over) => Go::No,
        _ if gates.any(Verdict::Stop) => Go::No,
        Some(Standing::Within) if gates.at(Gate::Reading) == Verdict::Pass => Go::Nothing,
        Some(Standing::Within | Standing::Held) => Go::NotYet,
        None => Go::CantSay,
        Some(Standing::Short) if dose.is_in() => Go::NotYet,
        Some(Standing::Short) if gates.any(Verdict::Unknown) || case.unlisted => Go::CantSay,
        Some(Standing::Short) if gates.waits() => Go::NotYet,
        Some(Standing::Short) => Go::Quote,
    }
}
