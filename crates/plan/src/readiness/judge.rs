//! Is the pool ready for salt, and for the generator? One judgement a subject.
//!
//! A value on a limit takes the better side, but for metals, which pass below theirs. What is missing is unknown,
//! never passed.

use crate::input::answers::{self, Ruling, Typed};
use crate::input::case::Case;
use crate::input::choices::*;
use crate::policy::{self, power_from};
use crate::readiness::inputs::Inputs;
use crate::readiness::verdict::Verdict::{self, Exception, Pass, Stop, Unknown, Wait};
use crate::readiness::verdict::{of, up_to, within};
use crate::salt::code::Standing;
use crate::water::balance::{Balance, shown};
use chem::Salinity;

/// What is missing or invalid is not there to be ruled on. A ruling counts with a name, a role and a day that has come.
fn overruled(ruling: Ruling, today: Option<i64>, verdict: Verdict) -> Verdict {
    let counts = ruling.named && ruling.day.valid().zip(today).is_some_and(|(day, today)| day <= today);
    if counts && matches!(verdict, Wait | Stop) { Exception } else { verdict }
}

impl Case {
    /// Is the reading so low that a slip of its unit is likelier?
    #[must_use]
    pub fn reading_is_rare(&self) -> bool {
        self.read().is_some_and(|read| read > Salinity::NONE && read.mg_per_l() < policy::LEAST_READING)
    }
}

/// The day on which a cement finish is old enough; nothing where there is none, or its day is not known.
#[must_use]
pub fn finish_day(case: &Case) -> Option<i64> {
    let cement = matches!(case.surface, Some(Surface::Cement | Surface::Tile));
    case.ready.finish.valid().filter(|_| cement).map(|day| day.saturating_add(policy::FINISH_DAYS))
}

pub(crate) fn finish_age(Inputs { case, .. }: &Inputs) -> Verdict {
    let age = match case.surface {
        None | Some(Surface::Other) => Unknown,
        Some(Surface::Cement | Surface::Tile) => {
            of(finish_day(case).zip(case.today), |(day, today)| if today >= day { Pass } else { Wait })
        }
        Some(_) => Pass,
    };
    overruled(case.ready.rulings.finish_age, case.today, age)
}

pub(crate) fn clearance(Inputs { case, .. }: &Inputs) -> Verdict {
    let given = case.ready.word_day.zip(case.today).filter(|(day, today)| day <= today);
    let word = of(case.ready.word, |word| match word {
        Approval::InHand if case.ready.word_named && given.is_some() => Pass,
        Approval::InHand => Unknown,
        Approval::Asked | Approval::NotAsked => Wait,
        Approval::Refused => Stop,
    });
    // A refusal gives way only to a later word, so its own day has to be known.
    let later = case.ready.word_day.zip(case.ready.rulings.clearance.day.valid());
    match word {
        Stop if later.is_none_or(|(refused, released)| released < refused) => Stop,
        word => overruled(case.ready.rulings.clearance, case.today, word),
    }
}

pub(crate) fn warranty(Inputs { case, .. }: &Inputs) -> Verdict {
    let papers = case.ready.papers.all();
    let holds = |paper| papers.contains(&Some(paper));
    let worst = if holds(Warranty::Excludes) {
        Stop
    } else if papers.contains(&None) {
        Unknown
    } else if holds(Warranty::NotRead) {
        Wait
    } else {
        Pass
    };
    overruled(case.ready.rulings.papers, case.today, worst)
}

pub(crate) fn code(Inputs { case, .. }: &Inputs) -> Verdict {
    let code = of(case.ready.kind, |kind| match (kind, case.ready.operator) {
        (PoolUse::Home, _) => Pass,
        (PoolUse::Shared, _) | (PoolUse::Public, Some(YesNo::Yes)) => Wait,
        (PoolUse::Public, Some(YesNo::No)) => Stop,
        (PoolUse::Public, None) => Unknown,
    });
    overruled(case.ready.rulings.code, case.today, code)
}

pub(crate) fn running(Inputs { case, .. }: &Inputs) -> Verdict {
    match (case.ready.full, case.ready.running) {
        (_, Some(Running::Broken)) => Stop,
        (Some(YesNo::No), _) | (_, Some(Running::Less)) => Wait,
        (Some(YesNo::Yes), Some(Running::Yes)) => Pass,
        _ => Unknown,
    }
}

pub(crate) fn previous_sanitizer(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.ready.treated, |treated| match treated {
        Sanitizer::Chlorine => Pass,
        // Once copper and iron are tested, they have gates of their own.
        Sanitizer::CopperSilver
            if case.ready.copper.valid().is_some() && case.ready.iron.valid().is_some() =>
        {
            Pass
        }
        Sanitizer::CopperSilver => Wait,
        Sanitizer::Bromine | Sanitizer::Biguanide => Stop,
        Sanitizer::Unknown => Unknown,
    })
}

pub(crate) fn clarity(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.ready.clear, |clear| match clear {
        Clarity::Clear => Pass,
        Clarity::Hazy => Wait,
        Clarity::NotVisible => Stop,
    })
}

pub(crate) fn algae(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.ready.algae, |algae| match algae {
        Algae::None => Pass,
        Algae::Dusting => Wait,
        Algae::Bloom => Stop,
    })
}

/// Free chlorine: what the stabilizer asks for, and not above the goal or the usual label. None at all with people
/// in the water stops. While the stabilizer is not known, nobody knows what it asks for.
pub(crate) fn chlorine(Inputs { case, .. }: &Inputs) -> Verdict {
    let Some(free) = case.water.chlorine.valid().map(|x| x.mg_per_l()) else { return Unknown };
    let cya = case.water.cyanuric_acid.map(|x| x.mg_per_l());
    let least = match cya {
        Some(cya) if cya > 0.0 => {
            policy::CHLORINE_WITH_CYANURIC_ACID.max(cya * policy::CHLORINE_OF_CYANURIC_ACID)
        }
        _ => policy::CHLORINE_BARE,
    };
    let goal = case.goals.chlorine.map_or(0.0, |x| x.mg_per_l());
    let most = policy::CHLORINE_MOST.max(goal).max(least);
    match free {
        free if (least..=most).contains(&free) => cya.map_or(Unknown, |_| Pass),
        free if free == 0.0 && case.ready.swum == Some(YesNo::Yes) => Stop,
        _ => Wait,
    }
}

pub(crate) fn combined(Inputs { case, .. }: &Inputs) -> Verdict {
    up_to(case.ready.combined, policy::COMBINED)
}

pub(crate) fn copper(Inputs { case, .. }: &Inputs) -> Verdict {
    metal(case.ready.copper, policy::COPPER)
}

pub(crate) fn iron(Inputs { case, .. }: &Inputs) -> Verdict {
    metal(case.ready.iron, policy::IRON)
}

/// Below the first limit it passes.
fn metal(answer: Typed<f64>, [pass, wait]: [f64; 2]) -> Verdict {
    match up_to(answer, [pass, wait]) {
        Pass if answer.valid() == Some(pass) => Wait,
        verdict => verdict,
    }
}

pub(crate) fn alkalinity(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.water.alkalinity, |ta| within(ta.mg_per_l(), &policy::ALKALINITY))
}

pub(crate) fn hardness(Inputs { case, .. }: &Inputs) -> Verdict {
    let shell = case.surface.map(Surface::is_shell);
    of(case.water.hardness.zip(shell), |(ch, shell)| {
        within(ch.mg_per_l(), if shell { &policy::HARDNESS_SHELL } else { &policy::HARDNESS_CEMENT })
    })
}

/// The band for cyanuric acid by place; above what only other water brings down another gate judges.
pub(crate) fn cyanuric_acid_band(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.water.cyanuric_acid.zip(case.ready.place), |(cya, place)| {
        let [low, high] = if place == Location::Indoor { [0.0, 0.0] } else { policy::CYANURIC_ACID_PASS };
        if (low..=high).contains(&cya.mg_per_l()) { Pass } else { Wait }
    })
}

/// How old the reading is, and whether anything has moved the salt since.
pub(crate) fn reading_age(Inputs { case, latest, .. }: &Inputs) -> Verdict {
    let old = |days: i64| days * 1_440;
    of(case.now.zip(latest.at), |(now, read)| match now.saturating_sub(read) {
        age if age < -policy::AHEAD => Unknown, // A slip: nobody reads tomorrow.
        age if age > old(policy::READING_DAYS) => Stop,
        age if age > old(policy::READING_FRESH_DAYS) => Wait,
        _ => of(case.ready.moved, |moved| if moved == YesNo::Yes { Wait } else { Pass }),
    })
}

pub(crate) fn bag_salt(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.ready.grade, |grade| match grade {
        BagSalt::Pool => Pass,
        BagSalt::Unknown => Wait,
        BagSalt::Additives => Stop,
    })
}

pub(crate) fn electrical(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.ready.wired, |wired| match wired {
        Electrical::Electrician => Pass,
        Electrical::NotYet => Wait,
        Electrical::Damaged => Stop,
    })
}

pub(crate) fn weather(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.ready.weather, |weather| match weather {
        Weather::Dry => Pass,
        Weather::Storm => Wait,
        Weather::Unknown => Unknown,
    })
}

/// Two days since the last bag, and no grain on the floor.
pub(crate) fn clock(Inputs { case, .. }: &Inputs) -> Verdict {
    let last = match case.last_dose() {
        Typed::Missing => return Pass,
        Typed::Invalid => return Unknown,
        Typed::Valid(last) => last,
    };
    let waits = |now: i64| now < power_from(last);
    match (case.ready.grains, case.now) {
        (Some(Undissolved::Some), _) => Stop,
        (_, Some(now)) if waits(now) => Wait,
        (Some(Undissolved::None), Some(_)) => Pass,
        _ => Unknown,
    }
}

/// Is the fill water known?
pub(crate) fn fill(Inputs { case, .. }: &Inputs) -> Verdict {
    let all = (case.fill_salt, case.fill.hardness, case.fill.alkalinity);
    if let (Some(_), Some(_), Some(_)) = all { Pass } else { Unknown }
}

/// Does the last reading, with nothing put in since, stand between the limits?
pub(crate) fn level(Inputs { case, latest, .. }: &Inputs) -> Verdict {
    match (latest.standing, case.band.zip(latest.salt)) {
        (None, _) => Unknown,
        (Some(Standing::Over), _) => Stop,
        (_, Some((band, read))) if read > band.high => Stop,
        (Some(Standing::Within), Some((band, read))) if !latest.salted_since && read >= band.low => Pass,
        _ => Wait,
    }
}

/// Is the index low on a shell that has nothing of cement for soft water to take from? Then the maker's
/// figure decides, and it is only a note.
#[must_use]
pub fn low_is_a_note(case: &Case, balance: Option<&Balance>) -> bool {
    let judged = balance.and_then(Balance::judged);
    case.surface.is_some_and(Surface::is_shell)
        && judged.is_some_and(|i| shown(i.log10()) < -policy::INDEX_PASS)
}

pub(crate) fn volume(Inputs { case, .. }: &Inputs) -> Verdict {
    match (case.volume, case.method) {
        (None, _) => Unknown,
        (Some(_), None | Some(Method::Remembered)) => Wait,
        (Some(_), _) => Pass,
    }
}

pub(crate) fn reading(Inputs { case, latest, .. }: &Inputs) -> Verdict {
    // A line that can't be used may be a reading.
    let log_at_fault = case.log.is_invalid() || case.again.is_invalid() || case.read_at.is_invalid();
    match latest.instrument {
        Some(Instrument::Display) => Wait,
        Some(_) => Pass,
        None if case.instrument == Some(Instrument::Assumed) && !log_at_fault => Stop,
        None => Unknown,
    }
}

pub(crate) fn target(Inputs { case, .. }: &Inputs) -> Verdict {
    match case.band {
        None => Unknown,
        Some(band) if band.example => Wait,
        Some(_) => Pass,
    }
}

pub(crate) fn temperature(Inputs { case, .. }: &Inputs) -> Verdict {
    match case.water.temperature.map(|t| t.celsius()) {
        None => Unknown,
        Some(t) if t >= policy::WARM_ENOUGH => Pass,
        Some(_) => Wait,
    }
}

pub(crate) fn ph(Inputs { case, .. }: &Inputs) -> Verdict {
    of(case.water.ph, |ph| within(ph.units(), &policy::PH))
}

pub(crate) fn index(Inputs { case, balance, .. }: &Inputs) -> Verdict {
    let judged = balance.as_ref().ok().and_then(Balance::judged);
    match judged.map(|i| shown(i.log10())) {
        None => Unknown,
        Some(i) if i.abs() <= policy::INDEX_PASS => Pass,
        Some(_) if low_is_a_note(case, balance.as_ref().ok()) => Pass,
        Some(i) if i.abs() <= policy::INDEX_STOP => Wait,
        Some(_) => Stop,
    }
}

pub(crate) fn balance_first(Inputs { treatment, .. }: &Inputs) -> Verdict {
    match treatment {
        Ok(treatment) if treatment.is_due() => Wait,
        Ok(_) | Err(answers::Unknown::NotAsked) => Pass,
        Err(_) => Unknown,
    }
}

pub(crate) fn cyanuric_acid(Inputs { case, .. }: &Inputs) -> Verdict {
    match case.water.cyanuric_acid.map(|x| x.mg_per_l()) {
        None => Unknown,
        Some(cya) if cya <= policy::CYANURIC_ACID_MOST => Pass,
        Some(_) => Wait,
    }
}
