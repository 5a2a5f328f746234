//! Is the pool ready for salt, and for the generator? One judgement a subject.
//!
//! A value on a limit takes the better side, but for metals, which pass below theirs. What is missing is unknown, never passed.

use crate::case::{Case, Optional};
use crate::choice::*;
use crate::policy;
use crate::rules::Verdict::{self, Over, Pass, Stop, Unknown, Wait};
use crate::schedule::power_from;

/// Somebody's ruling against a gate, in writing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Ruling {
    /// Who, and in which role, are both named.
    pub named: bool,
    /// The day it was given.
    pub day: Option<i64>,
}

impl Ruling {
    /// Does it count? Not without a name, a role and a day that has come.
    fn counts(self, today: Option<i64>) -> bool {
        self.named && self.day.zip(today).is_some_and(|(day, today)| day <= today)
    }
}

/// What was answered about the pool; each part may be missing.
#[derive(Clone, Copy, Debug, Default)]
pub struct Ready {
    /// The day the finish was laid.
    pub finish: Optional<i64>,
    /// The applicator's or maker's word on salt.
    pub word: Option<Word>,
    /// Is it said whose word?
    pub word_named: bool,
    /// Of which day?
    pub word_day: Option<i64>,
    /// What the water was treated with.
    pub treated: Option<Treated>,
    /// Papers of liner or shell, heater, cover, stone, rails.
    pub papers: [Option<Paper>; 5],
    /// Filled to its working level?
    pub full: Option<YesNo>,
    /// Pump and filter.
    pub running: Option<Running>,
    /// Clarity.
    pub clear: Option<Clarity>,
    /// Algae.
    pub algae: Option<Algae>,
    /// Do people swim in it now?
    pub swum: Option<YesNo>,
    /// Weather.
    pub weather: Option<Weather>,
    /// Wiring.
    pub wired: Option<Wiring>,
    /// The salt in the bags.
    pub grade: Option<Grade>,
    /// Whose pool.
    pub kind: Option<Kind>,
    /// Has a public pool its qualified operator?
    pub operator: Option<YesNo>,
    /// Where.
    pub place: Option<Place>,
    /// Grains on the floor.
    pub grains: Option<Grains>,
    /// Rain, refill, backwash or chemicals since the last reading?
    pub moved: Option<YesNo>,
    /// Combined chlorine, mg/L.
    pub combined: Optional<f64>,
    /// Copper, mg/L.
    pub copper: Optional<f64>,
    /// Iron, mg/L.
    pub iron: Optional<f64>,
    /// Rulings against the age of the finish, its clearance, the papers, the code.
    pub rulings: [Ruling; 4],
}

/// The subjects that somebody may rule on, in the order of [`Ready::rulings`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ruled {
    /// The age of the finish.
    Age,
    /// Its clearance.
    Clearance,
    /// Other makers' papers.
    Papers,
    /// The local code.
    Code,
}

/// What is missing or garbled is not there to be ruled on.
fn overruled(case: &Case, of: Ruled, verdict: Verdict) -> Verdict {
    let counts = case.ready.rulings[of as usize].counts(case.today);
    if counts && matches!(verdict, Wait | Stop) { Over } else { verdict }
}

fn of<T: Copy>(answer: Option<T>, judge: impl Fn(T) -> Verdict) -> Verdict {
    answer.map_or(Unknown, judge)
}

/// Up to `pass` it passes, up to `wait` it waits, above it stops.
fn up_to(answer: Optional<f64>, [pass, wait]: [f64; 2]) -> Verdict {
    of(answer.given(), |x| match x {
        x if x <= pass => Pass,
        x if x <= wait => Wait,
        _ => Stop,
    })
}

/// Within the inner band it passes, within the outer it waits, outside it stops.
fn within(x: f64, [low, high]: [f64; 2], [least, most]: [f64; 2]) -> Verdict {
    match x {
        x if x >= low && x <= high => Pass,
        x if x >= least && x <= most => Wait,
        _ => Stop,
    }
}

/// The day on which a cement finish is old enough; nothing where there is none, or its day is not known.
pub fn finish_day(case: &Case) -> Option<i64> {
    let cement = matches!(case.surface, Some(Surface::Cement | Surface::Tile));
    case.ready.finish.given().filter(|_| cement).map(|day| day + policy::FINISH_DAYS)
}

pub(crate) fn finish(case: &Case) -> Verdict {
    let age = match case.surface {
        None | Some(Surface::Other) => Unknown,
        Some(Surface::Cement | Surface::Tile) => {
            of(finish_day(case).zip(case.today), |(day, today)| if today >= day { Pass } else { Wait })
        }
        Some(_) => Pass,
    };
    overruled(case, Ruled::Age, age)
}

pub(crate) fn clearance(case: &Case) -> Verdict {
    let given = case.ready.word_day.zip(case.today).filter(|(day, today)| day <= today);
    let word = of(case.ready.word, |word| match word {
        Word::Have if case.ready.word_named && given.is_some() => Pass,
        Word::Have => Unknown,
        Word::Asked | Word::NotAsked => Wait,
        Word::Refused => Stop,
    });
    // A refusal gives way only to a later word, so its own day has to be known.
    let later = case.ready.word_day.zip(case.ready.rulings[Ruled::Clearance as usize].day);
    match word {
        Stop if later.is_none_or(|(refused, released)| released < refused) => Stop,
        word => overruled(case, Ruled::Clearance, word),
    }
}

pub(crate) fn papers(case: &Case) -> Verdict {
    let holds = |paper| case.ready.papers.contains(&Some(paper));
    let worst = if holds(Paper::Excludes) {
        Stop
    } else if case.ready.papers.contains(&None) {
        Unknown
    } else if holds(Paper::Unknown) {
        Wait
    } else {
        Pass
    };
    overruled(case, Ruled::Papers, worst)
}

pub(crate) fn code(case: &Case) -> Verdict {
    let code = of(case.ready.kind, |kind| match (kind, case.ready.operator) {
        (Kind::Home, _) => Pass,
        (Kind::Shared, _) | (Kind::Public, Some(YesNo::Yes)) => Wait,
        (Kind::Public, Some(YesNo::No)) => Stop,
        (Kind::Public, None) => Unknown,
    });
    overruled(case, Ruled::Code, code)
}

pub(crate) fn running(case: &Case) -> Verdict {
    match (case.ready.full, case.ready.running) {
        (_, Some(Running::Broken)) => Stop,
        (Some(YesNo::No), _) | (_, Some(Running::Less)) => Wait,
        (Some(YesNo::Yes), Some(Running::Yes)) => Pass,
        _ => Unknown,
    }
}

pub(crate) fn past(case: &Case) -> Verdict {
    of(case.ready.treated, |treated| match treated {
        Treated::Chlorine => Pass,
        // Once copper and iron are tested, they have gates of their own.
        Treated::Metals if case.ready.copper.given().is_some() && case.ready.iron.given().is_some() => Pass,
        Treated::Metals => Wait,
        Treated::Bromine | Treated::Biguanide => Stop,
        Treated::Unknown => Unknown,
    })
}

pub(crate) fn clear(case: &Case) -> Verdict {
    of(case.ready.clear, |clear| match clear {
        Clarity::Sharp => Pass,
        Clarity::Hazy => Wait,
        Clarity::Hidden => Stop,
    })
}

pub(crate) fn algae(case: &Case) -> Verdict {
    of(case.ready.algae, |algae| match algae {
        Algae::None => Pass,
        Algae::Dusting => Wait,
        Algae::Bloom => Stop,
    })
}

/// Free chlorine: what the stabiliser asks for, and not above the goal or the usual label. None at all with people
/// in the water stops. While the stabiliser is not known, nobody knows what it asks for.
pub(crate) fn chlorine(case: &Case) -> Verdict {
    let Some(free) = case.water.chlorine.given().map(|x| x.mg_per_l()) else { return Unknown };
    let cya = case.water.cyanuric_acid.map(|x| x.mg_per_l());
    let least = match cya {
        Some(cya) if cya > 0.0 => policy::CHLORINE_STABILISED.max(cya * policy::CHLORINE_OF_CYANURATE),
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

pub(crate) fn combined(case: &Case) -> Verdict {
    up_to(case.ready.combined, policy::COMBINED)
}

pub(crate) fn copper(case: &Case) -> Verdict {
    metal(case.ready.copper, policy::COPPER)
}

pub(crate) fn iron(case: &Case) -> Verdict {
    metal(case.ready.iron, policy::IRON)
}

/// Below the first limit it passes.
fn metal(answer: Optional<f64>, [pass, wait]: [f64; 2]) -> Verdict {
    match up_to(answer, [pass, wait]) {
        Pass if answer.given() == Some(pass) => Wait,
        verdict => verdict,
    }
}

pub(crate) fn alkalinity(case: &Case) -> Verdict {
    of(case.water.alkalinity, |ta| within(ta.mg_per_l(), policy::ALKALINITY_PASS, policy::ALKALINITY_WAIT))
}

pub(crate) fn hardness(case: &Case) -> Verdict {
    let shell = case.surface.map(Surface::is_shell);
    of(case.water.hardness.zip(shell), |(ch, shell)| {
        let [pass, wait] = if shell { policy::HARDNESS_SHELL } else { policy::HARDNESS_CEMENT };
        within(ch.mg_per_l(), pass, wait)
    })
}

/// The band for cyanuric acid by place; above what only other water brings down another gate judges.
pub(crate) fn stabiliser(case: &Case) -> Verdict {
    of(case.water.cyanuric_acid.zip(case.ready.place), |(cya, place)| {
        let band = if place == Place::Indoor { [0.0, 0.0] } else { policy::CYANURATE_PASS };
        if within(cya.mg_per_l(), band, band) == Pass { Pass } else { Wait }
    })
}

/// How old the reading is, and whether anything has moved the salt since.
pub(crate) fn reading_age(case: &Case, read: Option<i64>) -> Verdict {
    let old = |days: i64| days * 1_440;
    of(case.now.zip(read), |(now, read)| match now.saturating_sub(read) {
        age if age < -policy::AHEAD => Unknown, // A slip: nobody reads tomorrow.
        age if age > old(policy::READING_DAYS[1]) => Stop,
        age if age > old(policy::READING_DAYS[0]) => Wait,
        _ => of(case.ready.moved, |moved| if moved == YesNo::Yes { Wait } else { Pass }),
    })
}

pub(crate) fn grade(case: &Case) -> Verdict {
    of(case.ready.grade, |grade| match grade {
        Grade::Pool => Pass,
        Grade::Unknown => Wait,
        Grade::Other => Stop,
    })
}

pub(crate) fn wired(case: &Case) -> Verdict {
    of(case.ready.wired, |wired| match wired {
        Wiring::Signed => Pass,
        Wiring::NotYet => Wait,
        Wiring::Damaged => Stop,
    })
}

pub(crate) fn weather(case: &Case) -> Verdict {
    of(case.ready.weather, |weather| match weather {
        Weather::Dry => Pass,
        Weather::Storm => Wait,
        Weather::Unknown => Unknown,
    })
}

/// Two days since the last bag, and no grain on the floor.
pub(crate) fn clock(case: &Case) -> Verdict {
    let last = match case.last_dose() {
        Optional::LeftOut => return Pass,
        Optional::Garbled => return Unknown,
        Optional::Given(last) => last,
    };
    let waits = |now: i64| now < power_from(last);
    match (case.ready.grains, case.now) {
        (Some(Grains::Some), _) => Stop,
        (_, Some(now)) if waits(now) => Wait,
        (Some(Grains::None), Some(_)) => Pass,
        _ => Unknown,
    }
}

/// Is the fill water known?
pub(crate) fn fill(case: &Case) -> Verdict {
    let all = (case.fill_salt, case.fill.hardness, case.fill.alkalinity);
    if let (Some(_), Some(_), Some(_)) = all { Pass } else { Unknown }
}
