//! Any case that can be typed, corners first, and some that can't.

use crate::ask::Ask;
use chem::{Fraction, Length, Mass, Purity, Volume, bounds};
use plan::log::{Entry, Log, LogEvent, MOST_ENTRIES, Reading};
use plan::*;

/// Within the days of a job, or at either end of time.
fn moment(ask: &mut Ask) -> i64 {
    ask.one(&[0, 600, 1_440, 2_000, 2_880, 4_500, 10_000, i64::MIN, i64::MAX])
}

fn log(ask: &mut Ask) -> Log {
    let mut log = [None; MOST_ENTRIES];
    let lines = ask.one(&[1, 2, 3, 4, MOST_ENTRIES]);
    for place in log.iter_mut().take(lines) {
        let what = if ask.one(&[true, false]) {
            LogEvent::Dose(Mass::from_kilograms(ask.within(&limits::SALT)).unwrap())
        } else {
            let again = if ask.one(&[true, false]) { Some(ask.salinity()) } else { None };
            LogEvent::Reading(Reading { salt: ask.salinity(), again, instrument: ask.one(Instrument::ALL) })
        };
        *place = Some(Entry { when: moment(ask), what });
    }
    log
}

fn levels(ask: &mut Ask) -> RiskLevels {
    RiskLevels {
        over: ask.one(&[0.001, 0.01, 0.5, 0.9, -1.0]),
        cap: ask.one(&[0.1, 0.7, 1.0]),
        enough: ask.one(&[0.05, 0.75, 0.999]),
        slack: ask.one(&[0.0, 50.0, 1_000.0]),
        ..RiskLevels::default()
    }
}

/// Any case at all.
pub fn case(ask: &mut Ask) -> Case {
    macro_rules! maybe {
        ($x:expr) => {
            if ask.one(&[true, true, true, false]) { Some($x) } else { None }
        };
    }
    macro_rules! optional {
        ($x:expr) => {
            match ask.one(&[0, 1, 2, 2, 2, 2]) {
                0 => Typed::Missing,
                1 => Typed::Invalid,
                _ => Typed::Valid($x),
            }
        };
    }
    macro_rules! tests {
        () => {{
            let sample = ask.sample();
            Tests {
                temperature: maybe!(sample.temperature),
                ph: maybe!(sample.ph),
                alkalinity: maybe!(sample.alkalinity),
                hardness: maybe!(sample.hardness),
                cyanuric_acid: maybe!(sample.cyanuric_acid),
                chlorine: optional!(ask.chlorine()),
            }
        }};
    }
    let [low, target, high] = [(); 3].map(|()| maybe!(ask.salinity()));
    Case {
        volume: maybe!(Volume::from_cubic_metres(ask.within(&bounds::POOL)).unwrap()),
        method: maybe!(ask.one(Method::ALL)),
        doubt: optional!(Fraction::from_ratio(ask.within(&limits::DOUBT)).unwrap()),
        surface: maybe!(ask.one(Surface::ALL)),
        reading: optional!(ask.salinity()),
        again: optional!(ask.salinity()),
        instrument: maybe!(ask.one(Instrument::ALL)),
        read_at: optional!(moment(ask)),
        log: optional!(log(ask)),
        levels: optional!(levels(ask)),
        history: maybe!(ask.one(History::ALL)),
        band: Band::of(low, target, high).or(Band::of(None, target, None)).ok(),
        bag: Bag {
            size: maybe!(Mass::from_kilograms(ask.within(&limits::BAG_SIZE)).unwrap()),
            purity: maybe!(ask.purity()),
            in_hand: optional!(ask.one(&[0, 1, 2, 1_000, u32::MAX])),
            ..Bag::default()
        },
        water: tests!(),
        fill: tests!(),
        fill_salt: maybe!(ask.salinity()),
        cap: optional!(Fraction::from_ratio(ask.within(&limits::CAP)).unwrap()),
        ground: maybe!(ask.one(Ground::ALL)),
        products: maybe!(Products {
            acid: if ask.one(&[true, false]) {
                Acid::Hydrochloric(ask.acid_percent())
            } else {
                Acid::Bisulfate(ask.purity())
            },
            bleach: ask.bleach_trade(),
            calcium: ask.purity(),
            powder: if ask.one(&[true, false]) { ask.purity() } else { Purity::WHOLE },
        }),
        goals: {
            let goal = ask.goal();
            Goals {
                ph: maybe!(goal.ph),
                alkalinity: maybe!(goal.alkalinity),
                hardness: maybe!(goal.hardness),
                cyanuric_acid: maybe!(goal.cyanuric_acid),
                chlorine: maybe!(ask.chlorine()),
                invalid: ask.one(&[true, false, false, false]),
                water_unknown: ask.one(&[true, false, false, false]),
            }
        },
        now: maybe!(moment(ask)),
        today: maybe!(ask.one(&[0, 20, 20_000, i64::MIN, i64::MAX])),
        start: optional!(moment(ask)),
        on: optional!(moment(ask)),
        unlisted: ask.one(&[true, false, false, false]),
        uncounted: ask.one(&[true, false, false, false]),
        untested: ask.one(&[true, false, false, false]),
        ready: Ready {
            finish: optional!(ask.one(&[0, 20_000, i64::MIN, i64::MAX])),
            word: maybe!(ask.one(Approval::ALL)),
            word_named: ask.one(&[true, false]),
            word_day: maybe!(ask.one(&[0, 20_000])),
            treated: maybe!(ask.one(Sanitizer::ALL)),
            papers: Warranties {
                liner: maybe!(ask.one(Warranty::ALL)),
                heater: maybe!(ask.one(Warranty::ALL)),
                cover: maybe!(ask.one(Warranty::ALL)),
                stone: maybe!(ask.one(Warranty::ALL)),
                rails: maybe!(ask.one(Warranty::ALL)),
            },
            full: maybe!(ask.one(YesNo::ALL)),
            running: maybe!(ask.one(Running::ALL)),
            clear: maybe!(ask.one(Clarity::ALL)),
            algae: maybe!(ask.one(Algae::ALL)),
            swum: maybe!(ask.one(YesNo::ALL)),
            weather: maybe!(ask.one(Weather::ALL)),
            wired: maybe!(ask.one(Electrical::ALL)),
            grade: maybe!(ask.one(BagSalt::ALL)),
            kind: maybe!(ask.one(plan::PoolUse::ALL)),
            operator: maybe!(ask.one(YesNo::ALL)),
            place: maybe!(ask.one(plan::Location::ALL)),
            grains: maybe!(ask.one(Undissolved::ALL)),
            moved: maybe!(ask.one(YesNo::ALL)),
            combined: optional!(ask.within(&limits::TRACE)),
            copper: optional!(ask.within(&limits::TRACE)),
            iron: optional!(ask.within(&limits::TRACE)),
            rulings: Rulings { code: Ruling { named: true, day: optional!(20) }, ..Rulings::default() },
        },
        run: Run {
            demand: optional!(ask.within(&limits::DEMAND)),
            makes: optional!(ask.within(&limits::OUTPUT)),
            hours: optional!(ask.within(&limits::HOURS)),
        },
        season: Season {
            lost: optional!(ask.within(&limits::LOST)),
            backwash: optional!(ask.within(&limits::LOST)),
            times: optional!(ask.within(&limits::TIMES)),
            rain: optional!(ask.within(&limits::RAIN)),
        },
        flow: Flow {
            out: optional!(ask.within(&limits::FLOW)),
            in_: optional!(ask.within(&limits::FLOW)),
            price: optional!(ask.one(&[0.0, 2.5])),
        },
        depth: optional!(Length::from_metres(ask.within(&plan::limits::DEPTH)).unwrap()),
    }
}
