//! Is a job refused for what is wrong with it and for nothing else, weighed below its limits, and bought for?

use super::demo::demo;
use chem::{Fraction, Mass, Purity, Salinity};
use evidence::quantities::{kg, m3, ppm};
use plan::RiskLevels;
use plan::limits;
use plan::log::{Baseline, Entry, LogEvent, MOST_ENTRIES, Reading};
use plan::policy::Moments;
use plan::salt::course::{Course, course};
use plan::salt::decide::decide;
use plan::salt::job::{Handled, Job, JobError};
use plan::salt::salt_plan::salt_plan;
use plan::salt::value_of_information::{Measurement, ValueOfInformation};
use plan::water::size::{apart, measured};
use plan::{Band, Code, History, Instrument, Method, SaltInput, Typed};

fn job() -> Job {
    salt_plan(&SaltInput::of(&demo())).job.unwrap()
}

fn read(salt: f64) -> Course {
    let reading = Reading { salt: ppm(salt), again: None, instrument: Instrument::Meter };
    course(Some(Baseline { when: None, reading }), &[None; MOST_ENTRIES])
}

#[test]
fn a_level_is_a_part_and_the_risk_of_too_much_at_most_even_odds() {
    let well = RiskLevels::default();
    let sets: [fn(&mut RiskLevels, f64); 4] =
        [|l, x| l.over = x, |l, x| l.low = x, |l, x| l.enough = x, |l, x| l.drained = x];
    for (at, set) in sets.iter().enumerate() {
        for (x, part) in [(-0.1, false), (0.0, false), (0.001, true), (0.5, true), (1.0, false), (1.1, false)]
        {
            let mut levels = well;
            set(&mut levels, x);
            assert_eq!(levels.are_levels(), part, "level {at} is {x}");
        }
    }
    assert!(RiskLevels { low: 0.6, enough: 0.6, drained: 0.6, ..well }.are_levels());
    assert!(!RiskLevels { over: 0.51, ..well }.are_levels());
    for (cap, part) in [(0.0, false), (0.5, true), (1.0, true), (1.1, false)] {
        assert_eq!(RiskLevels { cap, ..well }.are_levels(), part, "cap {cap}");
    }
    for (slack, right) in [(-1.0, false), (0.0, true), (1_000.0, true), (1_001.0, false)] {
        assert_eq!(RiskLevels { slack, ..well }.are_levels(), right, "slack {slack}");
    }
}

/// A full log after the case's own reading: none of its lines is lost.
#[test]
fn a_full_log_is_read_to_its_end() {
    let at = |when, salt: f64| {
        let reading = Reading { salt: ppm(salt), again: None, instrument: Instrument::Meter };
        Some(Entry { when, what: LogEvent::Reading(reading) })
    };
    let log: [_; MOST_ENTRIES] = std::array::from_fn(|i| at(i as i64, 3_000.0 + i as f64));
    let reading = Reading { salt: ppm(400.0), again: None, instrument: Instrument::Meter };
    let all = course(Some(Baseline { when: None, reading }), &log);
    let read: Vec<_> = all.visits.iter().flatten().map(|visit| visit.reading.salt.mg_per_l()).collect();
    assert_eq!((read.len(), read[0], read[24]), (25, 400.0, 3_023.0));
    // Every one a dose: none is lost, either, and the last one is the clock's.
    let dose = |i: usize| Some(Entry { when: 10 * i as i64, what: LogEvent::Dose(kg(1.0)) });
    let all = course(None, &std::array::from_fn(dose));
    assert_eq!((all.put_in, all.after, all.last_dose), (kg(24.0), kg(24.0), Some(230)));
}

#[test]
fn each_fault_is_found_alone() {
    let found = |job: Job, course: &Course| job.faults(course).iter().collect::<Vec<_>>();
    let faults = |job: Job| found(job, &read(400.0));
    assert_eq!(faults(job()), []);
    let band = |low, target, high| {
        let [low, target, high] = [low, target, high].map(ppm);
        faults(Job { band: Band { low, target, high, example: false, limits_ours: false }, ..job() })
    };
    assert_eq!(band(1.0, 2.0, 3.0), []);
    for [low, target, high] in
        [[0.0, 2.0, 3.0], [2.0, 2.0, 3.0], [3.0, 2.0, 4.0], [1.0, 2.0, 2.0], [1.0, 3.0, 2.0], [3.0, 2.0, 1.0]]
    {
        assert_eq!(band(low, target, high), [JobError::Band], "{low} {target} {high}");
    }
    assert_eq!(faults(Job { bag: Mass::NONE, ..job() }), [JobError::Bag]);
    assert_eq!(
        faults(Job { levels: RiskLevels { over: 0.0, ..RiskLevels::default() }, ..job() }),
        [JobError::Levels]
    );
    let beyond = limits::SALT.high * 1.1;
    for (step, well) in [(0.0, false), (1e-7, false), (1e-6, true), (1.0, true), (beyond, false)] {
        for (first, later) in [(step, 1.0), (1.0, step)] {
            let parts = plan::policy::PartOfBag { first, later };
            let faults = faults(Job { handled: Handled::Parts(parts), ..job() });
            assert_eq!(faults.is_empty(), well, "{parts:?}: {faults:?}");
        }
    }
    // More than any mass can't come through the types, but through sums of them.
    let much = kg(limits::SALT.high).checked_mul(2.0).unwrap();
    let sets: [fn(&mut Course, Mass); 3] = [
        |all, much| all.put_in = much,
        |all, much| all.visits[0].as_mut().unwrap().put_in = much,
        |all, much| all.visits[0].as_mut().unwrap().latest = much,
    ];
    for set in sets {
        let mut all = read(400.0);
        set(&mut all, much);
        assert_eq!(found(job(), &all), [JobError::Dose], "{:?}", all.visits[0]);
    }
    let typed = Job { doubt: Fraction::from_ratio(0.5).ok(), fill: Some(Salinity::NONE), ..job() };
    assert_eq!(faults(typed), []);
}

/// Of nine bags to buy six are left when three went in; more than all of them leaves none, not fewer.
#[test]
fn what_went_in_is_taken_off_what_is_left() {
    let left = |bags: f64| {
        let mut log = [None; MOST_ENTRIES];
        log[0] = Some(Entry { when: 0, what: LogEvent::Dose(kg(20.0 * bags)) });
        let dose = salt_plan(&SaltInput { log: Typed::Valid(log), ..SaltInput::of(&demo()) });
        (dose.decision.as_ref().unwrap().buy.unwrap().bags, dose.bags_left().unwrap())
    };
    assert_eq!((left(3.0), left(12.0)), ((9, 6.0), (9, 0.0)));
}

/// In a band too narrow for the display any salt may be too much, be it a hundredth of a bag, and it may be low.
#[test]
fn where_any_salt_may_be_too_much_no_part_of_a_bag_is_told() {
    let [low, target, high] = [3_100.0, 3_200.0, 3_300.0].map(|x| Some(ppm(x)));
    let reading = Reading { salt: ppm(3_190.0), again: None, instrument: Instrument::Display };
    let first = course(Some(Baseline { when: None, reading }), &[None; MOST_ENTRIES]);
    let told = decide(&Job { band: Band::of(low, target, high).unwrap(), ..job() }, &first).unwrap();
    assert_eq!((told.code, told.stage.unwrap().part), (Code::NoMore, None), "{:?}", told.stage);
}

/// Of a normal distribution nine parts in ten lie within 1.645 deviations (any table of it).
#[test]
fn nine_times_in_ten_is_1_645_spreads_either_way() {
    let [low, high] = Moments { mean: 100.0, std_dev: 2.0 }.nine_in_ten();
    assert!((low - 96.71).abs() < 1e-9 && (high - 103.29).abs() < 1e-9);
}

/// What the laboratory will read lies closer together than what the strip of the first day would; where nothing goes
/// in, no reading is to be expected.
#[test]
fn the_next_reading_is_foreseen_by_the_instrument_of_the_last() {
    let by = |salt, instrument| Reading { salt: ppm(salt), again: None, instrument };
    let width = |last| {
        let mut log = [None; MOST_ENTRIES];
        log[0] = Some(Entry { when: 0, what: LogEvent::Dose(kg(120.0)) });
        log[1] = Some(Entry { when: 2_880, what: LogEvent::Reading(by(2_320.0, last)) });
        let baseline = Baseline { when: None, reading: by(400.0, Instrument::Strip) };
        let expect = decide(&job(), &course(Some(baseline), &log)).unwrap().expect.unwrap();
        expect.range[1] - expect.range[0]
    };
    assert!(width(Instrument::Lab) < 0.6 * width(Instrument::Strip));
    // After a day a twentieth of what went in is not dissolved yet, and is not read.
    let first = decide(&job(), &read(400.0)).unwrap();
    let (known, bags) = (first.known.unwrap().estimate, first.stage.unwrap().bags);
    let rise: f64 = known.nodes.iter().map(|node| node.weight * node.mg_per_l_per_bag).sum();
    let read_then = known.salt(bags).moments().mean - 0.05 * bags * rise;
    assert!((first.expect.unwrap().mean - read_then).abs() < 0.01 * bags * rise, "{:?}", first.expect);
    let enough = decide(&job(), &read(3_200.0)).unwrap();
    assert!(enough.stage.is_some_and(|stage| stage.bags == 0.0) && enough.expect.is_none());
}

/// Two bags and five kilograms are the limits: 1,000 mg/L into 40 m³ by bags of 20 kg are two bags; 500 mg/L into
/// 10 m³ are five kilograms.
#[test]
fn few_bags_are_weighed_and_little_salt_finely() {
    for (volume, from, unit, weighed) in [
        (40.0, 2_000.0, 1.0, false),
        (39.9, 2_000.0, 0.5 / 20.0, true),
        (10.0, 2_500.0, 0.5 / 20.0, true),
        (9.99, 2_500.0, 0.05 / 20.0, true),
    ] {
        let job = Job {
            volume: m3(volume),
            purity: Purity::WHOLE,
            band: Band::of(None, Some(ppm(3_000.0)), None).unwrap(),
            handled: Handled::Bags(plan::Bag::default().weighed_in),
            ..job()
        };
        let stage = decide(&job, &read(from)).unwrap().stage.unwrap();
        assert_eq!((stage.unit, stage.weighed), (unit, weighed), "{volume} m3 from {from}: {stage:?}");
    }
}

/// What is bought is by a guess that nothing goes in by.
#[test]
fn the_water_s_history_is_the_guess_while_nothing_was_read() {
    for (history, mean, spread) in [
        (History::Fresh, 300.0, 300.0),
        (History::Older, 1_000.0, 800.0),
        (History::Salted, 3_000.0, 1_500.0),
        (History::Unknown, 800.0, 1_200.0),
    ] {
        let told = decide(&Job { history, ..job() }, &course(None, &[None; MOST_ENTRIES])).unwrap();
        assert!(told.code == Code::NeedBaseline && told.known.is_none() && told.stage.is_none());
        let salt = told.guess.unwrap().salt;
        assert!((salt.mean - mean).abs() < 1e-6 && (salt.std_dev - spread).abs() < 1e-6, "{salt:?}");
    }
}

/// Half a bag is worth a measurement; of two that are worth the same, the size.
#[test]
fn a_measurement_pays_from_half_a_bag_on() {
    for (volume, lab, most) in [
        (2.6, 2.6, None),
        (2.5, 3.0, Some(Measurement::Volume)),
        (3.0, 2.5, Some(Measurement::Lab)),
        (2.0, 2.0, Some(Measurement::Volume)),
        (2.0, 1.5, Some(Measurement::Lab)),
        (1.5, 2.0, Some(Measurement::Volume)),
        (3.5, 3.5, None),
    ] {
        let pays = ValueOfInformation { today: 3.0, volume, lab, again: 3.0 };
        assert_eq!(pays.most(), most, "{volume} {lab}");
    }
}

/// Half the doubt, typed, is as narrow as half the doubt was said to make it.
#[test]
fn what_pays_is_what_is_in_doubt() {
    let pays = |job: Job| {
        plan::salt::value_of_information::value_of_information(&job, &read(400.0)).unwrap().unwrap()
    };
    let taped = pays(job());
    assert!(taped.volume < taped.today && taped.lab < taped.today && taped.again < taped.today, "{taped:?}");
    let remembered = pays(Job { method: Method::Remembered, ..job() });
    assert!(remembered.today > taped.today && remembered.most() == Some(Measurement::Volume));
    let halved = pays(Job { doubt: Fraction::from_ratio(0.025).ok(), ..job() });
    assert!((halved.today - taped.volume).abs() < 1e-9, "{halved:?} {taped:?}");
}

#[test]
fn a_meter_counts_before_a_tape_and_sizes_more_than_15_percent_apart_are_wrong() {
    let size = |x| m3(x);
    assert_eq!(measured(None, None), None);
    assert_eq!(measured(Some(size(50.0)), None).unwrap().method, Method::Metered);
    for (typed, wrong) in [(84.9, true), (85.1, false), (100.0, false), (114.9, false), (115.1, true)] {
        let (more, apart) = apart(size(typed), size(100.0));
        assert!((more - (typed / 100.0 - 1.0)).abs() < 1e-12);
        assert_eq!(apart, wrong, "{typed}");
    }
}
