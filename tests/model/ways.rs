//! In which ways may one add salt, and how does each end?

use crate::pool::{MOST_VISITS, PURITY, Pool, Stress};
use chem::Purity;
use evidence::quantities::{kg, m3, ppm};
use plan::RiskLevels;
use plan::log::{Baseline, Entry, Log, LogEvent, MOST_ENTRIES, Reading};
use plan::salt::code::Code;
use plan::salt::course::course;
use plan::salt::decide::decide;
use plan::salt::job::{Handled, Job};
use plan::{Band, History, Instrument, Method};

/// A way of adding salt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// All at once, the starting salt taken as none.
    A,
    /// All at once from a measured start.
    B,
    /// Part of it, then the rest of the first sum.
    C,
    /// Part of it, then by volume.
    D,
    /// Part of it, then by proportion.
    P,
    /// Part of it, then the smaller of both.
    M,
    /// As `plan` decides, half bags later.
    F,
    /// As the page decides: the same, with weighing where bags are too coarse.
    Page,
}

/// How a pool ended.
#[derive(Clone, Copy)]
pub struct End {
    pub salt: f64,
    pub visits: usize,
}

/// Lets a pool be salted.
pub fn salted(pool: &Pool, way: Way, cap: f64, stress: Stress) -> End {
    match way {
        Way::F => judged(pool, Handled::Parts(plan::policy::PART_OF_BAG), cap, stress),
        Way::Page => judged(pool, Handled::Bags(plan::Bag::default().weighed_in), cap, stress),
        _ => simply(pool, way, cap, stress),
    }
}

/// Whole bags in so many.
fn whole(bags: f64) -> f64 {
    (bags + 1e-9).floor().max(0.0)
}

fn simply(pool: &Pool, way: Way, cap: f64, stress: Stress) -> End {
    let [_, target, _] = pool.band;
    let rise = pool.rise(stress);
    let bags_to_target = |salt: f64| (target - salt) * pool.stated / (1_000.0 * pool.bag * PURITY);
    let first = pool.read(pool.start, 0, false, stress);
    let all = whole(bags_to_target(first));
    let at_once = |bags: f64| End { salt: pool.start + bags * rise, visits: 1 };
    if way == Way::A {
        return at_once(whole(bags_to_target(0.0)));
    }
    let part = whole(cap * bags_to_target(first).max(0.0)).max(all.min(1.0));
    if way == Way::B || part >= all {
        return at_once(all);
    }
    let salt = pool.later(pool.start + part * rise, 1);
    let heap = pool.undissolved(1, stress) * part * rise;
    let second = pool.read(salt - heap, 1, false, stress);
    let by_volume = bags_to_target(second);
    let by_proportion = if second > first { part * (target - second) / (second - first) } else { 0.0 };
    let more = match way {
        Way::C => all - part,
        Way::D => whole(by_volume),
        Way::P => whole(by_proportion),
        _ => whole(by_proportion.min(by_volume)),
    };
    End { salt: salt + more * rise, visits: 2 }
}

/// The instruments and methods of a pool, in its order.
const METHODS: [Method; 6] =
    [Method::Metered, Method::Drawing, Method::Taped, Method::Offsets, Method::Rule, Method::Remembered];
const INSTRUMENTS: [Instrument; 7] = [
    Instrument::Strip,
    Instrument::Drops,
    Instrument::Meter,
    Instrument::Uncalibrated,
    Instrument::Photometer,
    Instrument::Display,
    Instrument::Lab,
];

fn judged(pool: &Pool, handled: Handled, cap: f64, stress: Stress) -> End {
    let ppm = |x: f64| ppm(x);
    let [low, target, high] = pool.band.map(|x| Some(ppm(x)));
    let job = Job {
        volume: m3(pool.stated),
        method: METHODS[pool.method],
        doubt: None,
        bag: kg(pool.bag),
        purity: Purity::from_ratio(PURITY).unwrap(),
        in_hand: 0,
        band: Band::of(low, target, high).unwrap(),
        history: History::Unknown,
        fill: None,
        handled,
        levels: RiskLevels { cap, ..RiskLevels::default() },
    };
    let read = |salt: f64, by: usize| Reading { salt: ppm(salt), again: None, instrument: INSTRUMENTS[by] };
    let rise = pool.rise(stress);
    let mut log: Log = [None; MOST_ENTRIES];
    let (mut place, mut clock) = (0, 0);
    let mut enter = |log: &mut Log, when: i64, what: LogEvent| {
        log[place] = Some(Entry { when, what });
        place += 1;
    };
    let mut salt = pool.start;
    let (mut latest, mut heap) = (0.0, 0.0);
    let mut odd = false;
    let first = read(pool.read(salt, 0, false, stress), pool.instrument);
    let baseline = Some(Baseline { when: None, reading: first });
    for visit in 0..MOST_VISITS {
        if visit > 0 {
            salt = pool.later(salt, visit);
            // After an odd reading: two days more, and the other instrument.
            clock += 60 * if odd { 48 } else { pool.hours };
            heap = if odd { 0.2 * heap } else { pool.undissolved(visit, stress) * latest * rise };
            let seen = pool.read(salt - heap, visit, odd, stress);
            let by = if odd { pool.other() } else { pool.instrument };
            enter(&mut log, clock, LogEvent::Reading(read(seen, by)));
        }
        let decision = decide(&job, &course(baseline, &log)).unwrap();
        odd = matches!(decision.code, Code::ReadsTooLow | Code::ReadsTooHigh);
        if odd {
            continue;
        }
        let bags = decision.stage.map_or(0.0, |stage| stage.bags);
        if bags > 0.0 {
            latest = bags;
            salt += bags * rise;
            enter(&mut log, clock, LogEvent::Dose(job.bag.checked_mul(bags).unwrap()));
        }
        let go_on = match decision.code {
            Code::AddAndRetest => true,
            // At the next visit half a bag can be handled.
            Code::BagTooCoarse | Code::NoMore => visit == 0,
            _ => false,
        };
        if !go_on {
            return End { salt, visits: visit + 1 };
        }
    }
    End { salt, visits: MOST_VISITS }
}
