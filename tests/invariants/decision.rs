//! What holds whatever the case? Over many drawn jobs, the same ones each time.

use chem::*;
use evidence::draw::Draw;
use evidence::quantities::{kg, m3, ppm};
use plan::RiskLevels;
use plan::log::*;
use plan::salt::code::Code;
use plan::salt::course::*;
use plan::salt::decide::{Decision, decide};
use plan::salt::dosing::Dosing;
use plan::salt::job::{Handled, Job, JobError};
use plan::salt::outliers::ReadingStatus;
use plan::salt::value_of_information::value_of_information;
use plan::{Band, History, Instrument, Method};

const EMPTY: Log = [None; MOST_ENTRIES];

fn job(d: &mut Draw) -> Job {
    let target = d.between(1_500.0, 5_000.0);
    Job {
        volume: m3(d.between(20.0, 150.0)),
        method: d.pick(Method::ALL),
        doubt: None,
        bag: kg(d.between(5.0, 25.0)),
        purity: Purity::from_ratio(d.between(0.9, 1.0)).unwrap(),
        in_hand: 0,
        band: Band::of(None, Some(ppm(target)), None).unwrap(),
        history: d.pick(History::ALL),
        fill: Some(ppm(100.0)),
        handled: Handled::Bags(plan::Bag::default().weighed_in),
        levels: RiskLevels::default(),
    }
}

fn instrument(d: &mut Draw) -> Instrument {
    d.pick(&Instrument::ALL[..7])
}

fn read(salt: f64, instrument: Instrument) -> Reading {
    Reading { salt: ppm(salt.clamp(0.0, 40_000.0)), again: None, instrument }
}

fn baseline(reading: Reading) -> Option<Baseline> {
    Some(Baseline { when: None, reading })
}

fn told(job: &Job, first: Reading, log: &Log) -> Decision {
    decide(job, &course(baseline(first), log)).unwrap()
}

/// A dose at the moment 0, and a reading two days later.
fn retest(put_in: Mass, reading: Reading) -> Log {
    let mut log = EMPTY;
    log[0] = Some(Entry { when: 0, what: LogEvent::Dose(put_in) });
    log[1] = Some(Entry { when: 2_880, what: LogEvent::Reading(reading) });
    log
}

/// A job with a first stage told: its dose, and its first reading.
fn begun(d: &mut Draw) -> (Job, Reading, Decision, Mass) {
    loop {
        let job = job(d);
        let first = read(d.between(0.0, 0.6) * job.band.target.mg_per_l(), instrument(d));
        let decision = told(&job, first, &EMPTY);
        let put_in = job.bag.checked_mul(decision.stage.unwrap().bags).unwrap();
        if put_in > Mass::NONE {
            return (job, first, decision, put_in);
        }
    }
}

#[test]
fn one_bag_more_never_lowers_what_is_expected() {
    let mut d = Draw(11);
    for _ in 0..150 {
        let (job, first, decision, put_in) = begun(&mut d);
        let estimate = decision.known.unwrap().estimate;
        let band = &job.band;
        let (mut mean, mut over, mut low, mut reading) = (f64::NEG_INFINITY, 0.0, 1.0, 0.0);
        for bags in 0..8 {
            let salt = estimate.salt(bags as f64);
            assert!(salt.moments().mean > mean, "{job:?}");
            // All weights together are 1 to the last digit but one.
            assert!(salt.prob_above(band.high.mg_per_l()) >= over - 1e-12, "{job:?}");
            assert!(salt.prob_below(band.low.mg_per_l()) <= low + 1e-12, "{job:?}");
            mean = salt.moments().mean;
            (over, low) = (salt.prob_above(band.high.mg_per_l()), salt.prob_below(band.low.mg_per_l()));
            // The same of the reading to come, when that many more than told went in.
            let mut log = EMPTY;
            let more = kg(put_in.kilograms() + job.bag.checked_mul(bags as f64).unwrap().kilograms());
            log[0] = Some(Entry { when: 0, what: LogEvent::Dose(more) });
            let expect = told(&job, first, &log).expect.unwrap();
            assert!(expect.mean > reading && expect.range[0] < expect.mean, "{job:?}");
            assert!(expect.mean < expect.range[1], "{job:?}");
            reading = expect.mean;
        }
    }
}

/// The spread of the salt, which is what is read, always; that of the volume while the reading is no
/// surprise. A good instrument that surprises brings a blunder into question, and a poor one does not.
#[test]
fn a_better_instrument_never_widens_the_spread() {
    use Instrument::*;
    // Better in each of its five figures.
    let better = [
        (Lab, Drops),
        (Lab, Meter),
        (Lab, Photometer),
        (Meter, Strip),
        (Meter, Uncalibrated),
        (Photometer, Display),
        (Uncalibrated, Display),
    ];
    let mut d = Draw(12);
    let (mut believed, mut plain) = (0, 0);
    for _ in 0..300 {
        let (job, first, _, put_in) = begun(&mut d);
        let (good, poor) = d.pick(&better);
        let rise = salt::rise_from(put_in, job.purity, job.volume).unwrap().mg_per_l();
        let second = first.salt.mg_per_l() + rise * d.between(0.9, 1.15);
        let by = |instrument| {
            let log = retest(put_in, read(second, instrument));
            told(&job, Reading { instrument, ..first }, &log)
        };
        let (good, poor) = (by(good), by(poor));
        let (Some(known), Some(poorly)) = (good.known, poor.known) else { continue };
        believed += 1;
        assert!(known.salt.std_dev <= poorly.salt.std_dev, "{second} {first:?} {job:?}");
        if good.visits[1].unwrap().z.unwrap().abs() < 1.0 {
            plain += 1;
            assert!(known.volume.std_dev <= poorly.volume.std_dev, "{second} {first:?} {job:?}");
        }
    }
    assert!(believed > 250 && plain > 150, "{believed} {plain}");
}

#[test]
fn a_retest_as_expected_moves_the_volume_by_no_more_than_its_weight() {
    let mut d = Draw(13);
    for _ in 0..300 {
        let (job, first, decision, put_in) = begun(&mut d);
        let mut log = retest(put_in, read(decision.expect.unwrap().mean, first.instrument));
        log[1].as_mut().unwrap().when = 1_440;
        let after = told(&job, first, &log);
        let (stated, volume) = (decision.prior_volume, after.known.unwrap().volume);
        // What the readings took of the variance is what they weigh.
        let weight = 1.0 - (volume.std_dev / stated.std_dev).powi(2);
        let moved = (volume.mean - stated.mean).abs() / stated.std_dev;
        assert!(weight > 0.0 && moved <= weight, "{moved} {weight} {job:?}");
    }
}

#[test]
fn the_order_of_writing_and_of_equal_readings_does_not_matter() {
    let mut d = Draw(14);
    for _ in 0..150 {
        let (job, first, decision, put_in) = begun(&mut d);
        let expected = decision.expect.unwrap().mean;
        let [a, b] = [0.98, 1.02].map(|part| ppm(expected * part));
        let by = first.instrument;
        let log = retest(put_in, Reading { salt: a, again: Some(b), instrument: by });
        let mut shuffled = EMPTY;
        (shuffled[7], shuffled[20]) = (log[1], log[0]);
        let (one, same) = (told(&job, first, &log), told(&job, first, &shuffled));
        assert_eq!((one.code, one.stage, one.known), (same.code, same.stage, same.known), "{job:?}");
        let swapped = told(&job, first, &retest(put_in, Reading { salt: b, again: Some(a), instrument: by }));
        assert_eq!(one.code, swapped.code, "{job:?}");
        if let (Some(one), Some(swapped)) = (one.known, swapped.known) {
            // What is not straight in a reading leaves less than a twentieth of the doubt.
            assert!((one.salt.mean - swapped.salt.mean).abs() < 0.05 * one.salt.std_dev, "{job:?}");
            assert!((one.volume.mean - swapped.volume.mean).abs() < 0.05 * one.volume.std_dev, "{job:?}");
        }
    }
}

#[test]
fn a_better_measurement_never_widens_what_is_needed() {
    let mut d = Draw(18);
    let mut pays_most = [0; 3];
    for _ in 0..150 {
        let (job, first, _, _) = begun(&mut d);
        let worth = value_of_information(&job, &course(baseline(first), &EMPTY)).unwrap().unwrap();
        // Counted in whole bags, whose edges may fall either way.
        for (better, most) in [worth.volume, worth.lab, worth.again].into_iter().zip(&mut pays_most) {
            assert!(better <= worth.today + 1.0, "{worth:?} {job:?}");
            *most += usize::from(better < worth.today);
        }
        let unread = value_of_information(&job, &course(None, &EMPTY)).unwrap();
        assert_eq!(unread, None);
    }
    assert!(pays_most.iter().all(|narrower| *narrower > 10), "{pays_most:?}");
}

/// A pool that is what it is, read truly but for rounding, over as many visits as it takes.
#[test]
fn visit_after_visit_the_job_comes_to_its_end() {
    let mut d = Draw(15);
    for _ in 0..120 {
        let (job, first, _, _) = begun(&mut d);
        let doubt = plan::policy::volume_error(job.method);
        let volume = job.volume.checked_mul(doubt.kappa * (1.0 + doubt.rho * d.between(-1.0, 1.0))).unwrap();
        let (mut salt, mut log, mut place, mut clock) = (first.salt.mg_per_l(), EMPTY, 0, 0);
        let mut narrowest = f64::INFINITY;
        for visit in 0.. {
            let decision = told(&job, first, &log);
            let (known, stage) = (decision.known.unwrap(), decision.stage.unwrap());
            assert!(known.volume.std_dev <= 1.05 * narrowest, "{job:?} {log:?}");
            narrowest = narrowest.min(known.volume.std_dev);
            assert!(stage.bags == 0.0 || stage.over <= job.levels.over, "{job:?} {log:?}");
            salt += salt::rise_from(job.bag.checked_mul(stage.bags).unwrap(), job.purity, volume)
                .unwrap()
                .mg_per_l();
            let done = !matches!(decision.code, Code::AddAndRetest | Code::BagTooCoarse | Code::NoMore);
            if done || stage.bags == 0.0 {
                assert!(salt <= job.band.high.mg_per_l(), "{salt} {job:?} {log:?}");
                break;
            }
            assert!(visit < 8, "no end: {job:?} {log:?}");
            let step = plan::policy::instrument_error(first.instrument).unwrap().step;
            log[place] =
                Some(Entry { when: clock, what: LogEvent::Dose(job.bag.checked_mul(stage.bags).unwrap()) });
            let seen = read((salt / step).round() * step, first.instrument);
            log[place + 1] = Some(Entry { when: clock + 2_880, what: LogEvent::Reading(seen) });
            (place, clock) = (place + 2, clock + 2_880);
        }
    }
}

#[test]
fn a_log_is_read_in_order_of_time_and_corrected_by_writing_it_anew() {
    let mut d = Draw(16);
    let (job, first, decision, put_in) = begun(&mut d);
    let expected = decision.expect.unwrap().mean;
    let dose = |when| Some(Entry { when, what: LogEvent::Dose(put_in) });
    let reading = |when, by| Some(Entry { when, what: LogEvent::Reading(read(expected, by)) });
    let by = first.instrument;
    let mut log = EMPTY;

    // Salt that went in before anybody read: an ordinary beginning, and the first reading is the first.
    (log[0], log[1]) = (reading(1_500, by), dose(0));
    let unread = decide(&job, &course(None, &log)).unwrap();
    let judged = unread.visits[0].unwrap();
    assert_eq!((judged.status, judged.z, judged.visit.put_in), (ReadingStatus::Counts, None, put_in));
    assert!(unread.dosing.is_none() && unread.stage.is_some());
    // With the case's reading before it, the same log is a retest; with its moment after it, it is not.
    assert!(told(&job, first, &log).visits[1].unwrap().z.is_some());
    let late = Some(Baseline { when: Some(3_000), reading: first });
    assert_eq!(course(late, &log).visits[1].unwrap().reading, first);

    // Too early, then in time: the early one leaves nothing but the dose before it.
    log[0] = reading(300, by);
    assert_eq!(told(&job, first, &log).code, Code::WaitLonger);
    log[2] = reading(3_000, by);
    let patient = told(&job, first, &log);
    (log[0], log[2]) = (reading(3_000, by), None);
    let corrected = told(&job, first, &log);
    assert_eq!((patient.code, patient.known), (corrected.code, corrected.known));

    // The clock runs from the last salt; a dose after the last reading changes nothing that was told.
    log[5] = dose(4_000);
    let course = course(baseline(first), &log);
    assert_eq!((course.last_dose, course.after), (Some(4_000), put_in));
    assert_eq!(told(&job, first, &log).stage, corrected.stage);

    // Three instruments are followed; a fourth is a question.
    let others = Instrument::ALL[..7].iter().filter(|other| **other != by);
    for (place, other) in others.take(3).enumerate() {
        log[10 + place] = reading(8_000 + 60 * place as i64, *other);
    }
    log[12] = None;
    assert!(decide(&job, &plan::salt::course::course(baseline(first), &log)).is_ok());
    log[12] = reading(9_000, *Instrument::ALL[..7].iter().filter(|other| **other != by).nth(2).unwrap());
    let faults = decide(&job, &plan::salt::course::course(baseline(first), &log)).unwrap_err();
    assert_eq!(faults.iter().collect::<Vec<_>>(), [JobError::Instruments]);
    // A figure that nobody read is no reading.
    log[12] = reading(9_000, Instrument::Assumed);
    assert!(decide(&job, &plan::salt::course::course(baseline(first), &log)).is_ok());
}

/// Whatever is put together, a fault stands or every number is one.
#[test]
fn no_number_comes_with_a_fault_and_none_is_nonsense() {
    let wild = [0.0, -1.0, 1e-300, 1e300, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1.0];
    let mut d = Draw(17);
    let (mut faulty, mut decided) = (0, 0);
    for round in 0..600 {
        let mut job = job(&mut d);
        let spoil = round % 3 == 0;
        let salty = |d: &mut Draw| {
            let far = d.next() < 0.2;
            ppm(d.between(0.0, if far { 40_000.0 } else { 6_000.0 }))
        };
        job.doubt = Fraction::from_ratio(d.next()).ok().filter(|_| d.next() < 0.3);
        job.volume = m3(0.2 * 1e5f64.powf(d.next()));
        if spoil {
            match (d.next() * 6.0) as u32 {
                // What no type holds is none.
                0 => job.volume = job.volume.checked_mul(d.pick(&wild)).unwrap_or(Volume::NONE),
                1 => job.bag = job.bag.checked_mul(d.pick(&wild)).unwrap_or(Mass::NONE),
                2 => job.levels.over = d.pick(&wild),
                3 => job.levels.slack = d.pick(&wild) * 1e4,
                4 => {
                    job.handled = Handled::Parts(plan::policy::PartOfBag { first: d.pick(&wild), later: 0.5 })
                }
                _ => job.band.low = salty(&mut d),
            }
        }
        let mut log = EMPTY;
        let three = [0; 3].map(|_| instrument(&mut d));
        for entry in &mut log[..(d.next() * 9.0) as usize] {
            let when = match d.next() {
                x if x < 0.02 => i64::MIN,
                x if x < 0.04 => i64::MAX,
                x => (x * 20_000.0) as i64,
            };
            let salt = salty(&mut d);
            let again = Some(salty(&mut d)).filter(|_| d.next() < 0.1);
            let by = if d.next() < 0.95 { d.pick(&three) } else { instrument(&mut d) };
            let what = match d.next() {
                x if x < 0.45 => LogEvent::Reading(Reading { salt, again, instrument: by }),
                x if x < 0.47 && spoil => LogEvent::Dose(kg(d.pick(&[0.0, 1e-300, 1.0, bounds::MASS.high]))),
                x => LogEvent::Dose(kg(x * 100.0)),
            };
            *entry = Some(Entry { when, what });
        }
        let first = Some(Baseline { when: None, reading: read(salty(&mut d).mg_per_l(), three[0]) });
        let course = course(first.filter(|_| d.next() < 0.8), &log);
        let worth = value_of_information(&job, &course);
        let decision = match decide(&job, &course) {
            Ok(decision) => decision,
            Err(faults) => {
                faulty += 1;
                assert!(!faults.is_none() && worth == Err(faults), "{job:?} {log:?}");
                continue;
            }
        };
        assert!(job.faults(&course).is_none());
        decided += usize::from(decision.stage.is_some());
        let mut numbers = vec![decision.plain, decision.prior_volume.mean, decision.prior_volume.std_dev];
        numbers.extend(decision.visits.iter().flatten().filter_map(|judged| judged.z));
        if let Some(known) = decision.known {
            numbers.extend([known.volume.mean, known.volume.std_dev, known.salt.mean]);
            numbers.extend([known.salt.std_dev, known.need]);
        }
        if let Some(stage) = decision.stage {
            numbers.extend([stage.bags, stage.wanted, stage.over, stage.low]);
            numbers.extend([stage.allowed, stage.room, stage.part].into_iter().flatten());
            assert!(stage.bags == 0.0 || stage.over <= job.levels.over, "{job:?} {log:?}");
        }
        if let Some(expect) = decision.expect {
            numbers.extend([expect.mean, expect.range[0], expect.range[1]]);
        }
        if let Some(Dosing::Told { volume, low, high, .. }) = decision.dosing {
            numbers.extend([volume.mean, volume.std_dev, low]);
            numbers.extend(high);
            assert!(high.is_none_or(|high| high > low));
        }
        if let Some(dilution) = decision.dilution {
            assert!(0.0 < dilution.share && dilution.share <= 1.0);
        }
        if let Some(worth) = worth.unwrap() {
            numbers.extend([worth.today, worth.volume, worth.lab, worth.again]);
        }
        assert!(numbers.iter().all(|x| x.is_finite()), "{numbers:?} {job:?} {log:?}");
    }
    assert!(faulty > 50 && decided > 100, "{faulty} {decided}");
}
