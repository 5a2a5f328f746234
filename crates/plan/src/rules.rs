//! May the salt go in? One row a gate, the worst of them decides.

use crate::Unknown;
use crate::balance::Balance;
use crate::band::Standing;
use crate::case::{Case, Instrument, Surface};
use crate::policy;

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
}

/// The gates this plan can judge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gates {
    /// The saturation index after the salt.
    pub index: Verdict,
    /// The low side of the index is only a note on this surface.
    pub index_note: bool,
    /// pH.
    pub ph: Verdict,
    /// Temperature.
    pub heat: Verdict,
}

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

/// The index as it is shown, so that the digits and the verdict can't disagree.
pub fn shown(index: f64) -> f64 {
    libm::round(index * 100.0) / 100.0
}

fn beyond(x: f64, [low, high]: [f64; 2]) -> bool {
    !(x >= low && x <= high)
}

/// Judges each gate. A value on a limit takes the better side.
pub fn gates(case: &Case, balance: &Result<Balance, Unknown>) -> Gates {
    let judged = balance.as_ref().ok().and_then(Balance::judged);
    let shell = matches!(case.surface, Some(Surface::Liner | Surface::Fibreglass));
    let (index, index_note) = match judged.map(|i| shown(i.log10())) {
        None => (Verdict::Unknown, false),
        Some(i) if i.abs() <= policy::INDEX_PASS => (Verdict::Pass, false),
        // Nothing of cement for soft water to take from; the maker's figure decides.
        Some(i) if shell && i < 0.0 => (Verdict::Pass, true),
        Some(i) if i.abs() <= policy::INDEX_STOP => (Verdict::Wait, false),
        Some(_) => (Verdict::Stop, false),
    };
    let ph = match case.water.ph.map(|ph| ph.units()) {
        None => Verdict::Unknown,
        Some(ph) if !beyond(ph, policy::PH_PASS) => Verdict::Pass,
        Some(ph) if !beyond(ph, policy::PH_WAIT) => Verdict::Wait,
        Some(_) => Verdict::Stop,
    };
    let heat = match case.water.heat.map(|t| t.celsius()) {
        None => Verdict::Unknown,
        Some(t) if t >= policy::WARM_ENOUGH => Verdict::Pass,
        Some(_) => Verdict::Wait,
    };
    Gates { index, index_note, ph, heat }
}

/// The worst gate decides: a stop, then anything missing, then a wait.
pub fn go(case: &Case, standing: Option<Standing>, gates: &Gates) -> Go {
    let all = [gates.index, gates.ph, gates.heat];
    let any = |verdict| all.contains(&verdict);
    if any(Verdict::Stop) || standing == Some(Standing::Over) {
        Go::No
    } else if standing == Some(Standing::Within) {
        Go::Nothing
    } else if standing.is_none() || case.volume.is_none() || any(Verdict::Unknown) {
        Go::CantSay
    } else if any(Verdict::Wait)
        || case.band.is_none_or(|band| band.example)
        || matches!(case.instrument, Some(Instrument::Assumed | Instrument::Display))
    {
        Go::NotYet
    } else {
        Go::Quote
    }
}
