//! Do the steps before the salt come out as by hand?

use chem::treatment::{AcidStrength, BleachStrength};
use chem::*;
use evidence::quantities::ppm;
use plan::water::product::ProductAmount;
use plan::water::replacement::{ReplacementInput, replace};
use plan::water::treatment::{Additive, STEPS, Start, Treatment, TreatmentInput, TreatmentStep, treat};
use plan::{Acid, Band, Case, Excess, Goals, Instrument, Products, Tests, Typed};

fn case(volume: f64, salt: f64, how: Instrument, tests: [f64; 5], goals: [Option<f64>; 4]) -> Case {
    Case {
        volume: Volume::from_cubic_metres(volume).ok(),
        reading: Typed::Valid(ppm(salt)),
        instrument: Some(how),
        water: Tests {
            temperature: Temperature::from_celsius(tests[0]).ok(),
            ph: Ph::from_units(tests[1]).ok(),
            alkalinity: Alkalinity::from_mg_per_l(tests[2]).ok(),
            hardness: Hardness::from_mg_per_l(tests[3]).ok(),
            cyanuric_acid: CyanuricAcid::from_mg_per_l(tests[4]).ok(),
            chlorine: Typed::Missing,
        },
        goals: Goals {
            ph: goals[0].and_then(|x| Ph::from_units(x).ok()),
            alkalinity: goals[1].and_then(|x| Alkalinity::from_mg_per_l(x).ok()),
            hardness: goals[2].and_then(|x| Hardness::from_mg_per_l(x).ok()),
            cyanuric_acid: goals[3].and_then(|x| CyanuricAcid::from_mg_per_l(x).ok()),
            ..Goals::default()
        },
        band: Band::of(None, None, None).ok(),
        products: Some(Products {
            acid: Acid::Hydrochloric(AcidStrength::from_mass_percent(31.45).unwrap()),
            bleach: BleachStrength::from_trade_percent(10.0).unwrap(),
            calcium: Purity::from_ratio(0.77).unwrap(),
            powder: Purity::WHOLE,
        }),
        ..Case::default()
    }
}

/// Once water is replaced for the sake of that.
fn replaced(case: &Case, excess: Excess) -> Start {
    let input = ReplacementInput::of(case, case.read(), case.volume);
    Start::after(&input, &replace(&input, excess, None))
}

fn treated(case: &Case, rise: f64) -> Treatment {
    treat(&TreatmentInput::of(case), ppm(rise), Start::Today).unwrap()
}

fn steps(case: &Case, rise: f64) -> Vec<TreatmentStep> {
    treated(case, rise).steps.into_iter().flatten().collect()
}

fn kg(amount: ProductAmount) -> f64 {
    let ProductAmount::Powder(mass) = amount else { panic!("{amount:?} is no powder") };
    mass.kilograms()
}

/// 20 mg/L of cyanuric acid in 62.82 m³ is 1.256 kg; 30 mg/L of hardness by calcium chloride of 77 % is
/// 30 ÷ 100.0869 × 110.984 × 62.82 ÷ 0.77 g = 2.714 kg (arithmetic). The cyanuric acid alone brings the
/// pH to about 7.4, so no acid is asked for.
#[test]
fn the_demo_s_first_test_put_right() {
    let demo = case(
        62.82,
        360.0,
        Instrument::Meter,
        [24.0, 7.8, 110.0, 220.0, 20.0],
        [None, None, Some(250.0), Some(40.0)],
    );
    let steps = steps(&demo, 2_800.0);
    assert_eq!(
        steps.iter().map(|s| s.additive).collect::<Vec<_>>(),
        [Additive::CyanuricAcid, Additive::Calcium]
    );
    assert!((kg(steps[0].whole) - 1.2564).abs() < 1e-4);
    assert!((kg(steps[1].whole) - 2.7140).abs() < 1e-3);
    assert!((steps[1].then.ph.units() - 7.4).abs() < 0.05);
    assert!(steps[1].salted.unwrap() < steps[1].then.index.unwrap());
}

/// 9.99 mol/L acid, 306 mL in 10,000 US gal for 7.8 to 7.5 at TA 100, CYA 30, CH 250, salt 400 (which drops
/// read as 692, the calcium's chloride with it), 26.7 °C; and
/// 534 g of soda ash for 7.2 to 7.5 (this project's figures, worked out apart in Python; printed tables
/// differ by up to a half). Of each three quarters go in first, unless that is over the usual largest
/// dose: 25 mL of acid or 12 g of soda ash a cubic metre.
#[test]
fn ph_is_trimmed_by_acid_or_soda_ash() {
    let pool = 37.854_117_84;
    let at = |ph, goal| {
        case(pool, 692.0, Instrument::Drops, [26.7, ph, 100.0, 250.0, 30.0], [Some(goal), None, None, None])
    };
    let down = steps(&at(7.8, 7.5), 0.0);
    assert_eq!(down.len(), 1);
    let (ProductAmount::Liquid(whole), ProductAmount::Liquid(first)) =
        (down[0].whole, down[0].first.unwrap())
    else {
        panic!("{down:?}")
    };
    assert!((whole.cubic_metres() * 1e6 - 306.0).abs() < 1.0, "{whole:?}");
    assert!((first.cubic_metres() / whole.cubic_metres() - 0.75).abs() < 1e-9);
    let up = steps(&at(7.2, 7.5), 0.0);
    assert!((kg(up[0].whole) - 0.534).abs() < 0.001, "{:?}", up[0].whole);
    assert!(
        kg(up[0].first.unwrap()) <= 0.75 * kg(up[0].whole) + 1e-9
            && kg(up[0].first.unwrap()) <= 0.0121 * pool
    );
}

/// Whatever is asked, the last step's water is what was asked for.
#[test]
fn the_last_step_reaches_the_goals() {
    for (ph, ta, goal_ph, goal_ta) in
        [(7.2, 70.0, 7.6, 100.0), (8.0, 180.0, 7.5, 100.0), (7.4, 80.0, 7.4, 140.0), (7.8, 120.0, 7.4, 90.0)]
    {
        let case = case(
            50.0,
            3_200.0,
            Instrument::Drops,
            [26.0, ph, ta, 250.0, 40.0],
            [Some(goal_ph), Some(goal_ta), Some(300.0), Some(50.0)],
        );
        let steps = steps(&case, 0.0);
        let last = steps.last().unwrap();
        assert!((last.then.ph.units() - goal_ph).abs() < 2e-6, "{ph} {ta}: {:?}", last.then.ph);
        assert!((last.alkalinity.mg_per_l() - goal_ta).abs() < 1e-6, "{ph} {ta}");
        let places: Vec<_> =
            steps.iter().map(|s| STEPS.iter().position(|w| *w == s.additive).unwrap()).collect();
        assert!(places.is_sorted(), "cyanuric acid and calcium go before the trim");
        for step in &steps {
            let (whole, first) = match (step.whole, step.first.unwrap()) {
                (ProductAmount::Powder(a), ProductAmount::Powder(b)) => (a.kilograms(), b.kilograms()),
                (ProductAmount::Liquid(a), ProductAmount::Liquid(b)) => (a.cubic_metres(), b.cubic_metres()),
                mixed => panic!("{mixed:?}"),
            };
            assert!(first > 0.0 && first <= whole, "{step:?}");
        }
    }
}

/// What only other water can do, and what even air does not allow.
#[test]
fn what_no_chemical_does_is_said() {
    let over = case(
        68.0,
        1_800.0,
        Instrument::Drops,
        [25.0, 7.5, 100.0, 300.0, 130.0],
        [None, None, Some(250.0), Some(50.0)],
    );
    // Without the fill water's tests no step is told: it would be for another water.
    let excess = Excess::of(&over.goals, &over.water, None).unwrap();
    assert!(excess.hardness.is_some() && excess.cyanuric_acid.is_some() && excess.salt.is_none());
    let treatment = treat(&TreatmentInput::of(&over), Salinity::NONE, replaced(&over, excess)).unwrap();
    assert!(treatment.water_first && treatment.steps.iter().all(Option::is_none) && treatment.is_due());
    let thin = case(
        40.0,
        400.0,
        Instrument::Drops,
        [25.0, 7.8, 100.0, 250.0, 0.0],
        [Some(8.6), Some(40.0), None, None],
    );
    assert!(treated(&thin, 0.0).below_air);
}

/// 2.8 mg/L of chlorine into 50 m³ is 140 g, 1.4 L of trade 10 % (by the meaning of the word); it leaves the
/// alkalinity where it was once it is used up.
#[test]
fn chlorine_goes_in_first_and_is_gone_for_the_rest() {
    let mut here = case(
        50.0,
        400.0,
        Instrument::Drops,
        [25.0, 7.9, 160.0, 250.0, 40.0],
        [Some(7.4), Some(80.0), None, None],
    );
    here.water.chlorine = Typed::Valid(Chlorine::from_mg_per_l(0.2).unwrap());
    let chlorine = Chlorine::from_mg_per_l(3.0).ok();
    here.goals = Goals { chlorine, ..here.goals };
    let steps = steps(&here, 0.0);
    assert_eq!(
        steps.iter().map(|s| s.additive).collect::<Vec<_>>(),
        [Additive::Chlorine, Additive::AcidAndAir]
    );
    let ProductAmount::Liquid(litres) = steps[0].whole else { panic!("{:?}", steps[0]) };
    assert!((litres.cubic_metres() * 1e3 - 1.4).abs() < 1e-9, "{litres:?}");
    // 2.8 mg/L of chlorine holds 0.0395 mmol/L of alkalinity, 1.98 mg/L, until it is used up.
    assert!((steps[0].alkalinity.mg_per_l() - 161.976).abs() < 0.01, "{:?}", steps[0].alkalinity);
    assert!((steps[1].alkalinity.mg_per_l() - 80.0).abs() < 1e-6);
    assert!((steps[1].then.ph.units() - 7.4).abs() < 1e-5);
    // 80 mg/L of alkalinity is 1.5986 mmol/L of acid; never more at one go than 25 mL of 31.45 % a cubic metre.
    let (ProductAmount::Liquid(whole), ProductAmount::Liquid(first)) =
        (steps[1].whole, steps[1].first.unwrap())
    else {
        panic!("{:?}", steps[1])
    };
    assert!((whole.cubic_metres() * 1e3 - 1.5986 * 50.0 / 9.98).abs() < 0.02, "{whole:?}");
    assert!(first.cubic_metres() * 1e6 / 50.0 <= 25.1, "{first:?}");
}

/// Dry acid is weighed, mole for mole what would be poured: litres · mol/L · 120.0603 g/mol ÷ 0.932.
#[test]
fn dry_acid_brings_the_same_hydrogen() {
    let wet = case(
        37.854_117_84,
        400.0,
        Instrument::Drops,
        [26.7, 7.8, 100.0, 250.0, 30.0],
        [Some(7.5), None, None, None],
    );
    let mut dry = wet;
    dry.products.as_mut().unwrap().acid = Acid::Bisulfate(Purity::from_ratio(0.932).unwrap());
    let (wet, dry) = (steps(&wet, 0.0), steps(&dry, 0.0));
    let ProductAmount::Liquid(poured) = wet[0].whole else { panic!("{:?}", wet[0]) };
    let strength = AcidStrength::from_mass_percent(31.45).unwrap().mol_per_l();
    let moles = poured.cubic_metres() * 1000.0 * strength;
    assert!((kg(dry[0].whole) - moles * 0.120_060_309_28 / 0.932).abs() < 1e-9, "{:?}", dry[0]);
    // Sulfate pairs with calcium and sodium, chloride does not: a hair of pH.
    assert!((dry[0].then.ph.units() - 7.5).abs() < 0.001, "{:?}", dry[0]);
}

/// After the replacement the steps are for the mixed water: alkalinity 100 (1 - 0.6154) + 60 · 0.6154 =
/// 75.4, so 24.6 mg/L are missing, 0.4918 mmol/L of bicarbonate: 2.815 kg in 68.14 m³ (arithmetic).
#[test]
fn the_steps_are_for_the_water_that_they_go_into() {
    let mut over = case(
        68.137_412_112,
        1_800.0,
        Instrument::Drops,
        [25.0, 7.5, 100.0, 300.0, 130.0],
        [None, Some(100.0), None, Some(50.0)],
    );
    over.fill = Tests {
        temperature: Temperature::from_celsius(15.0).ok(),
        ph: Ph::from_units(7.8).ok(),
        alkalinity: Alkalinity::from_mg_per_l(60.0).ok(),
        hardness: Hardness::from_mg_per_l(80.0).ok(),
        cyanuric_acid: CyanuricAcid::from_mg_per_l(0.0).ok(),
        chlorine: Typed::Missing,
    };
    over.fill_salt = Salinity::from_mg_per_l(120.0).ok();
    let excess = Excess::of(&over.goals, &over.water, None).unwrap();
    let steps: Vec<_> = treat(&TreatmentInput::of(&over), Salinity::NONE, replaced(&over, excess))
        .unwrap()
        .steps
        .into_iter()
        .flatten()
        .collect();
    assert_eq!(steps.len(), 1);
    assert!((kg(steps[0].whole) - 2.815).abs() < 0.01, "{:?}", steps[0].whole);
    assert!((steps[0].cyanuric_acid.mg_per_l() - 50.0).abs() < 0.1);
    assert!((steps[0].hardness.mg_per_l() - 164.6).abs() < 0.2);
}

/// From pH 7.1 no acid goes in, however much alkalinity is to come down: air first.
#[test]
fn no_acid_where_the_ph_is_too_low_for_it() {
    let sour = case(
        50.0,
        400.0,
        Instrument::Drops,
        [25.0, 7.1, 200.0, 250.0, 40.0],
        [Some(7.4), Some(100.0), None, None],
    );
    let steps = steps(&sour, 0.0);
    assert_eq!(steps[0].additive, Additive::AcidAndAir);
    assert!(steps[0].first.is_none() && steps[0].doses.is_none(), "{:?}", steps[0]);
}
