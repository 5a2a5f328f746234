//! Does the treatment of the water turn where a kit can tell, and is it judged for the water that it leads to?

use super::demo::{demo, tests};
use chem::salt::{SaltTest, other_ions};
use chem::{Alkalinity, CyanuricAcid, Hardness, Mass, Ph, Volume};
use evidence::quantities::{chlorine, kg, ppm};
use plan::log::{Entry, LogEvent as Put, MOST_ENTRIES, Reading};
use plan::water::balance::After;
use plan::water::product::ProductAmount;
use plan::water::replacement::Excess;
use plan::water::treatment::{Additive, Position, Treatment, TreatmentStep};
use plan::{Case, Goals, Instrument, Plan, Surface, Typed, plan};

fn ta(x: f64) -> Goals {
    Goals { alkalinity: Alkalinity::from_mg_per_l(x).ok(), ..Goals::default() }
}

fn ch(x: f64) -> Goals {
    Goals { hardness: Hardness::from_mg_per_l(x).ok(), ..Goals::default() }
}

fn cya(x: f64) -> Goals {
    Goals { cyanuric_acid: CyanuricAcid::from_mg_per_l(x).ok(), ..Goals::default() }
}

fn ph(x: f64) -> Goals {
    Goals { ph: Ph::from_units(x).ok(), ..Goals::default() }
}

fn fc(x: f64) -> Goals {
    Goals { chlorine: Some(chlorine(x)), ..Goals::default() }
}

fn to(goals: Goals) -> Plan {
    plan(&Case { goals, ..demo() })
}

fn treated(goals: Goals) -> Treatment {
    to(goals).treatment.unwrap()
}

fn steps(goals: Goals) -> Vec<TreatmentStep> {
    treated(goals).steps.into_iter().flatten().collect()
}

/// The demo has alkalinity 110, hardness 250, cyanuric acid 40, pH 7.5 and chlorine 2.5.
#[test]
fn what_a_kit_cannot_tell_is_met() {
    for (met, missed, what) in [
        (ta(114.9), ta(115.1), Additive::Bicarbonate),
        (ta(105.1), ta(104.9), Additive::AcidAndAir),
        (ch(259.9), ch(260.1), Additive::Calcium),
        (cya(44.9), cya(45.1), Additive::CyanuricAcid),
        (ph(7.451), ph(7.449), Additive::Acid),
        (ph(7.549), ph(7.551), Additive::Carbonate),
        (fc(2.69), fc(2.71), Additive::Chlorine),
    ] {
        assert_eq!(steps(met).len(), 0, "{met:?}");
        assert_eq!(steps(missed).iter().map(|step| step.additive).collect::<Vec<_>>(), [what], "{missed:?}");
        assert!(treated(missed).is_due() && !treated(met).is_due());
    }
}

#[test]
fn chlorine_two_above_its_goal_is_not_waited_for() {
    assert!(!treated(fc(0.5)).is_due());
    let over = treated(fc(0.4));
    assert!(over.chlorine_over && over.is_due() && over.steps.iter().all(Option::is_none));
    let water = tests(25.0, 7.8, 100.0, 250.0, 0.0);
    let goals = Goals { ph: Ph::from_units(8.6).ok(), ..ta(40.0) };
    let thin = plan(&Case { water, goals, ..demo() }).treatment.unwrap();
    assert!(thin.below_air && thin.is_due() && !thin.chlorine_over && !thin.water_first);
}

#[test]
fn what_is_far_enough_above_its_goal_asks_for_other_water() {
    let excess = |goals| to(goals).excess;
    assert_eq!((excess(ch(240.0)), excess(cya(35.0))), (None, None));
    let hardness = ch(239.9).hardness;
    assert_eq!(excess(ch(239.9)), Some(Excess { hardness, ..Excess::default() }));
    let cyanuric_acid = cya(34.9).cyanuric_acid;
    assert_eq!(excess(cya(34.9)), Some(Excess { cyanuric_acid, ..Excess::default() }));
}

/// One go is at most 30 mg/L of cyanuric acid (0.232 mmol/L), 50 of alkalinity by bicarbonate (1 mmol/L), 80 of
/// hardness (0.8 mmol/L). Molar masses: 129.07, 84.007, 110.98 g/mol; calcium chloride of 77 %.
#[test]
fn one_go_is_the_largest_dose_and_the_rest_follows() {
    let kg = |amount: ProductAmount| match amount {
        ProductAmount::Powder(mass) => mass.kilograms(),
        ProductAmount::Liquid(volume) => volume.cubic_metres() * 1000.0,
    };
    for (goals, most, doses, wait) in [
        (cya(40.0 + 29.0), 29.0e-3, 1, 72),
        (cya(40.0 + 59.0), 0.232 * 129.07e-3, 2, 72),
        (cya(40.0 + 61.0), 0.232 * 129.07e-3, 3, 72),
        (ta(110.0 + 49.0), 0.979 * 84.007e-3, 1, 6),
        (ta(110.0 + 101.0), 84.007e-3, 3, 6),
        (ch(250.0 + 79.0), 0.7893 * 110.98e-3 / 0.77, 1, 24),
        (ch(250.0 + 159.0), 0.8 * 110.98e-3 / 0.77, 2, 24),
    ] {
        let [step] = steps(goals)[..] else { panic!("{goals:?}") };
        let first = kg(step.first.unwrap());
        assert!((first / (most * 62.82) - 1.0).abs() < 2e-3, "{goals:?}: {first} of {}", most * 62.82);
        assert_eq!((step.doses, step.wait), (Some(doses), wait), "{goals:?}");
        assert_eq!(doses == 1, step.begun.ph == step.then.ph, "{goals:?}");
    }
    // Of what moves the pH three quarters.
    for goals in [ph(7.4), ph(7.6)] {
        let [step] = steps(goals)[..] else { panic!("{goals:?}") };
        assert!((kg(step.first.unwrap()) / kg(step.whole) - 0.75).abs() < 1e-9, "{step:?}");
        assert_eq!((step.doses, step.wait), (Some(2), 4));
    }
    let [step] = steps(fc(5.0))[..] else { panic!() };
    assert_eq!((step.doses, step.wait), (Some(1), 4));
}

/// On pH 7.2 and 7.6 it ends well, beyond them not; on 0.30 either side of zero likewise, and below that only
/// where there is cement.
#[test]
fn the_end_is_judged_as_the_beginning_is() {
    for (goal, side) in
        [(7.19, Position::Below), (7.2, Position::Within), (7.6, Position::Within), (7.61, Position::Above)]
    {
        assert_eq!(treated(ph(goal)).ends(None).unwrap().ph, side, "{goal}");
    }
    assert!(treated(ph(7.5)).ends(None).is_none(), "no step, no end");
    let mut seen = Vec::new();
    for goal in (1_450..1_485).chain(1_570..1_620) {
        let treated = treated(ph(f64::from(goal) / 200.0));
        let Some(end) = treated.ends(Some(Surface::Cement)) else { continue };
        let balance = |surface| treated.ends(surface).unwrap().balance;
        let index = (end.index.unwrap() * 100.0).round() as i32;
        let (side, shell) = match index {
            ..=-31 => (Position::Below, Position::Within),
            -30..=30 => (Position::Within, Position::Within),
            _ => (Position::Above, Position::Above),
        };
        assert_eq!((end.balance, balance(Some(Surface::Vinyl))), (Some(side), Some(shell)), "{index}");
        assert_eq!(balance(None), Some(side), "a surface not known is not spared: {index}");
        seen.push(index);
    }
    for limit in [-31, -30, 30, 31] {
        assert!(seen.contains(&limit), "{limit} was not met: {seen:?}");
    }
}

/// A meter that reads less than the alkalinity and the hardness alone account for, by more than a hundred.
#[test]
fn a_reading_below_its_own_tests_is_belied() {
    let water = tests(24.0, 7.5, 250.0, 600.0, 40.0);
    let others = other_ions(SaltTest::Conductivity, water.alkalinity.unwrap(), water.hardness.unwrap());
    let belied = |salt: f64, instrument| {
        let case = Case { water, reading: Typed::Valid(ppm(salt)), instrument: Some(instrument), ..demo() };
        plan(&case).balance.unwrap().belied
    };
    let limit = others.mg_per_l() - 100.0;
    assert!(belied(limit - 0.1, Instrument::Meter) && !belied(limit, Instrument::Meter), "{limit}");
    assert!(!belied(limit - 0.1, Instrument::Drops));
}

fn entry(when: i64, what: Put) -> Option<Entry> {
    Some(Entry { when, what })
}

fn dose(mass: f64) -> Put {
    Put::Dose(kg(mass))
}

fn reading(salt: f64, instrument: Instrument) -> Put {
    Put::Reading(Reading { salt: ppm(salt), again: None, instrument })
}

/// Ten bags in 62.82 m³ bring 3,165 mg/L; read at 3,900, the pool is smaller than was said, and it is that one's
/// water that is replaced. With no salt put in it is the stated one's.
#[test]
fn shares_are_of_the_pool_that_the_doses_have_found() {
    let mut log = [None; MOST_ENTRIES];
    (log[0], log[1]) = (entry(0, dose(200.0)), entry(2_880, reading(3_900.0, Instrument::Meter)));
    let case = Case { log: Typed::Valid(log), fill_salt: Some(ppm(120.0)), ..demo() };
    let told = plan(&case);
    let known = told.salt.decision.as_ref().unwrap().known.unwrap();
    let replace = told.replace.unwrap();
    assert_eq!(replace.water.unwrap().cubic_metres(), known.volume.mean);
    assert_eq!(replace.from.unwrap().mg_per_l(), known.salt.mean);
    assert!(known.volume.mean < 60.0, "{:?}", known.volume);
    let case = Case { reading: Typed::Valid(ppm(4_100.0)), fill_salt: Some(ppm(120.0)), ..demo() };
    assert_eq!(plan(&case).replace.unwrap().water, Volume::from_cubic_metres(62.82).ok());
}

/// 130 mg/L of cyanuric acid to 50 by water without any: 8/13 of it, and of 1,800 mg/L of salt with 120 in the fill
/// water 766 are left (arithmetic). It is a forecast, so what was read twice, and what went in, is none of it.
#[test]
fn after_other_water_the_salt_is_counted_from_one_forecast() {
    let mut case = Case {
        water: tests(25.0, 7.5, 100.0, 300.0, 130.0),
        reading: Typed::Valid(ppm(1_800.0)),
        instrument: Some(Instrument::Drops),
        goals: cya(50.0),
        fill: tests(15.0, 7.8, 60.0, 80.0, 0.0),
        fill_salt: Some(ppm(120.0)),
        ..demo()
    };
    let from = |case: &Case| {
        let told = plan(case);
        let put_in = told.salt.course.unwrap().put_in;
        (told.counted_from.unwrap().mg_per_l(), told.salt.from.unwrap().mg_per_l(), put_in)
    };
    let plain = from(&case);
    let by_hand = 120.0 + (1_800.0 - 120.0) * 5.0 / 13.0;
    assert!((plain.0 - by_hand).abs() < 1e-9 && plain.0 == plain.1, "{plain:?}");
    case.again = Typed::Valid(ppm(1_900.0));
    assert_eq!(from(&case), plain);
    let mut log = [None; MOST_ENTRIES];
    (log[0], log[1]) = (entry(0, dose(20.0)), entry(2_880, reading(2_100.0, Instrument::Drops)));
    case.log = Typed::Valid(log);
    let salted = from(&case);
    assert!(salted.0 == salted.1 && salted.0 > plain.0 && salted.2 == Mass::NONE, "{salted:?}");
    // Without the fill water's salt nobody knows what is left, and no amount is told.
    let told = plan(&Case { fill_salt: None, ..case });
    assert!(told.counted_from.is_none() && told.salt.mass.is_none() && told.salt.decision.is_none());
}

/// The other tests go with the case's own reading; where only the log has one, with the first of those.
#[test]
fn the_index_goes_with_the_reading_of_its_day() {
    let mut log = [None; MOST_ENTRIES];
    log[0] = entry(0, reading(400.0, Instrument::Meter));
    log[1] = entry(10, dose(120.0));
    log[2] = entry(2_890, reading(2_320.0, Instrument::Lab));
    let log = Typed::Valid(log);
    let own = plan(&demo()).balance.unwrap();
    let logged = Case { reading: Typed::Missing, instrument: None, log, ..demo() };
    let first = plan(&logged).balance.unwrap();
    assert_eq!((first.salt, first.salt_test, first.today.index), (own.salt, own.salt_test, own.today.index));
    let later = plan(&Case { log, reading: Typed::Valid(ppm(300.0)), ..demo() });
    assert!(later.balance.unwrap().salt < own.salt);
}

/// What is judged after the salt: the rise that is due, today's water where none is, and nothing while that is not
/// known.
#[test]
fn the_index_is_judged_after_what_is_due() {
    let after = |case: Case| plan(&case).balance.unwrap().after;
    let salt = |after: After| match after {
        After::Salted(Ok(salted)) => Some(salted.salt.mg_per_l()),
        _ => None,
    };
    let due = salt(after(demo())).unwrap();
    let today = plan(&demo()).balance.unwrap().salt.mg_per_l();
    assert!((due - today - 2_800.0).abs() < 1e-9);
    // Without the size of the pool the rise is known all the same.
    assert_eq!(salt(after(Case { volume: None, ..demo() })), Some(due));
    let enough = Case { reading: Typed::Valid(ppm(3_300.0)), instrument: Some(Instrument::Lab), ..demo() };
    assert!(matches!(after(enough), After::Today));
    let invalid: [fn(&mut Case); 6] = [
        |case| case.band = None,
        |case| case.doubt = Typed::Invalid,
        |case| case.levels = Typed::Invalid,
        |case| case.again = Typed::Invalid,
        |case| case.read_at = Typed::Invalid,
        |case| case.log = Typed::Invalid,
    ];
    for (at, garble) in invalid.iter().enumerate() {
        let mut case = Case { goals: ta(150.0), ..demo() };
        assert!(!case.is_invalid() && plan(&case).treatment.is_ok());
        garble(&mut case);
        let told = plan(&case);
        assert!(case.is_invalid() && matches!(told.balance.unwrap().after, After::Unknown), "{at}");
        assert!(told.treatment.is_err(), "{at}");
    }
    // With all of it in, the tests are still those of before: they are judged with the rise.
    let mut log = [None; MOST_ENTRIES];
    (log[0], log[1]) = (entry(0, dose(176.0)), entry(2_880, reading(3_200.0, Instrument::Meter)));
    assert_eq!(salt(after(Case { log: Typed::Valid(log), ..demo() })), Some(due));
}
