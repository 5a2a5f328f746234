//! Does the chemistry keep its laws, whatever the water and whatever is done to it?

use chem::salt::{SaltTest, other_ions};
use chem::treatment::Chemical;
use chem::treatment::recipe::{Goal, recipe};
use chem::*;
use evidence::draw::Draw;
use evidence::quantities::{celsius, kg, mmol, ph, ppm};

pub fn plain(t: f64, p: f64, ta: f64) -> Sample {
    let (ta, ch) = (Alkalinity::from_mg_per_l(ta).unwrap(), Hardness::from_mg_per_l(250.0).unwrap());
    Sample {
        temperature: celsius(t),
        ph: ph(p),
        alkalinity: ta,
        hardness: ch,
        cyanuric_acid: CyanuricAcid::from_mg_per_l(0.0).unwrap(),
        salt: Salinity::NONE,
        boron: Boron::NONE,
        magnesium: Magnesium::NONE,
        sulfate: Sulfate::NONE,
    }
}

pub fn near(a: f64, b: f64, within: f64, of: impl std::fmt::Debug) {
    assert!((a - b).abs() <= within, "{a} beside {b} for {of:?}");
}

#[test]
fn the_ph_of_a_water_is_the_one_its_carbon_was_found_from() {
    let mut d = Draw(10);
    for _ in 0..5_000 {
        let sample = d.with_every_ion();
        let Ok(water) = sample.water() else { continue };
        near(water.state().unwrap().ph.units(), sample.ph.units(), 2e-7, sample);
    }
}

#[test]
fn a_water_in_balance_with_air_gains_and_loses_nothing_there() {
    let mut d = Draw(14);
    for _ in 0..1_000 {
        let (sample, water) = d.water();
        let air = chem::CarbonDioxide::from_micro_atmospheres(d.between(200.0, 5_000.0)).unwrap();
        let there = water.in_air(air).unwrap();
        near(there.carbon_dioxide.atmospheres() / air.atmospheres(), 1.0, 1e-9, sample);
        let own = water.in_air(water.state().unwrap().carbon_dioxide).unwrap();
        near(own.ph.units(), water.state().unwrap().ph.units(), 1e-5, sample);
    }
}

/// PB82's pK2 and pKs put into the two printed forms by another program.
#[test]
fn the_comparison_forms_give_what_they_print() {
    for (t, p, ch, ta, solids, first, second) in FORMS {
        let (h, a) = (Hardness::from_mg_per_l(ch).unwrap(), CarbonateAlkalinity::from_mg_per_l(ta).unwrap());
        let s = Solids::from_mg_per_l(solids).unwrap();
        let found = langelier::standard_methods(celsius(t), ph(p), h, a, s).unwrap().unwrap();
        near(found.log10(), first, 1e-6, t);
        near(langelier::closed_form(celsius(t), ph(p), h, a, s).unwrap().unwrap().log10(), second, 1e-6, t);
        let none = Hardness::from_mg_per_l(0.0).unwrap();
        assert_eq!(langelier::standard_methods(celsius(t), ph(p), none, a, s), Ok(None));
        // Beyond 42 °C neither answers, nor below 10 mg/L of solids the one that takes their logarithm.
        let hot =
            [langelier::standard_methods, langelier::closed_form].map(|f| f(celsius(50.0), ph(p), h, a, s));
        assert!(hot.iter().all(|told| told.is_err_and(|out| out.got == 50.0)), "{hot:?}");
        let fresh = Solids::from_mg_per_l(9.0).unwrap();
        assert!(langelier::closed_form(celsius(t), ph(p), h, a, fresh).is_err());
    }
}

const FORMS: [(f64, f64, f64, f64, f64, f64, f64); 2] = [
    (10.0, 8.0, 150.0, 60.0, 2_000.0, -0.240_723_631, -0.355_403_145),
    (35.0, 7.2, 600.0, 180.0, 500.0, 0.572_567_847, 0.466_086_453),
];

#[test]
fn what_a_meter_did_is_undone_and_other_ions_are_counted() {
    let salt = ppm(3_000.0);
    for t in [5.0, 15.0, 35.0] {
        let read = conductivity::of_salt(salt, celsius(t)).unwrap().within().unwrap().ms_per_cm();
        let plain = Conductivity::from_ms_per_cm(read).unwrap();
        near(
            conductivity::salt_of(plain, celsius(t)).unwrap().within().unwrap().mg_per_l(),
            3_000.0,
            0.01,
            t,
        );
        let shown = Conductivity::from_ms_per_cm(read / (1.0 + 0.02 * (t - 25.0))).unwrap();
        let part = Fraction::from_ratio(0.02).unwrap();
        near(
            conductivity::salt_of_compensated(shown, celsius(t), part).unwrap().within().unwrap().mg_per_l(),
            3_000.0,
            0.01,
            t,
        );
    }
    let (ta, ch) = (Alkalinity::from_mg_per_l(100.0).unwrap(), Hardness::from_mg_per_l(200.0).unwrap());
    for (responds, counted) in [
        // Calcium's two chlorides, as sodium chloride.
        (SaltTest::Chloride, 200.0 / 100.0869 * 2.0 * 58.442_769_28),
        (SaltTest::Conductivity, 85.0 + 230.0),
        (SaltTest::AsNaCl, 0.0),
    ] {
        near(other_ions(responds, ta, ch).mg_per_l(), counted, 1e-9, responds);
    }
}

#[test]
fn chlorine_is_shared_out_whole_and_warmth_frees_it() {
    let at = |t: f64, cya: f64, strength: f64| {
        chlorine::species(
            chem::Chlorine::from_mg_per_l(3.0).unwrap(),
            CyanuricAcid::from_mg_per_l(cya).unwrap(),
            ph(7.5),
            celsius(t),
            IonicStrength::from_molal(strength).unwrap(),
        )
        .unwrap()
    };
    for cya in [0.0, 30.0, 100.0] {
        let mut last = 0.0;
        for t in [5.0, 15.0, 25.0, 35.0] {
            let s = at(t, cya, 0.05);
            let sum = s.hypochlorous.mg_per_l() + s.hypochlorite.mg_per_l() + s.bound.mg_per_l();
            near(sum, 3.0, 1e-9, s);
            assert_eq!(s.temperature_doubt.ratio() > 0.0, t != 25.0 && cya > 0.0);
            assert!(cya == 0.0 || s.hypochlorous.mg_per_l() > 1.1 * last, "{t} {cya}");
            last = s.hypochlorous.mg_per_l();
        }
    }
    // M66, pK = 3000/T - 10.0686 + 0.0253 T, put in by another program.
    for (t, pk) in [(15.0, 7.632_839_1), (35.0, 7.463_113_4)] {
        let part = at(t, 0.0, 0.0).hypochlorous.mg_per_l() / 3.0;
        near(part, 1.0 / (1.0 + 10f64.powf(7.5 - pk)), 1e-7, t);
    }
}

/// From ordinary pools to the sea, and never the other way about.
#[test]
fn the_doubt_of_an_index_grows_with_the_salt() {
    let doubt = |salt: f64| {
        let salt = ppm(salt);
        Sample { salt, ..plain(26.0, 7.5, 120.0) }.state().unwrap().index_doubt()
    };
    assert_eq!(
        [0.0, 3_200.0, 9_000.0, 12_000.0, 35_000.0, 40_000.0].map(doubt),
        [0.1, 0.1, 0.1, 0.15, 0.15, 0.15]
    );
}

#[test]
fn carbonate_holds_the_same_by_whichever_way_the_water_is_solved() {
    let mut d = Draw(15);
    for _ in 0..1_000 {
        let (sample, water) = d.water();
        let [tested, free] = [sample.state().unwrap(), water.state().unwrap()];
        let air = water.in_air(tested.carbon_dioxide).unwrap();
        for other in [free, air] {
            let [a, b] = [tested, other].map(|state| state.carbonate_alkalinity.mg_per_l());
            near(a, b, 1e-4, sample);
        }
        near(water.alkalinity().unwrap().mg_per_l(), sample.alkalinity.mg_per_l(), 1e-9, sample);
        near(water.hardness().unwrap().mg_per_l(), sample.hardness.mg_per_l(), 1e-9, sample);
        near(water.cyanuric_acid().unwrap().mg_per_l(), sample.cyanuric_acid.mg_per_l(), 1e-9, sample);
    }
}

/// Whatever is conserved stands in a mixture by its share of the volume, however salty the two are.
#[test]
fn replacing_a_share_of_the_volume_moves_a_test_along_a_straight_line() {
    let mut d = Draw(16);
    for _ in 0..1_000 {
        let [(old, water), (new, fill)] = [d.water(), d.water()];
        let share = d.next();
        let there = water.replaced(fill, Fraction::from_ratio(share).unwrap());
        let line = |a: f64, b: f64| a + share * (b - a);
        let hardness = line(old.hardness.mg_per_l(), new.hardness.mg_per_l());
        near(there.hardness().unwrap().mg_per_l(), hardness, 1e-9, (old, new));
        near(
            there.cyanuric_acid().unwrap().mg_per_l(),
            line(old.cyanuric_acid.mg_per_l(), new.cyanuric_acid.mg_per_l()),
            1e-9,
            share,
        );
    }
}

#[test]
fn a_water_without_an_answer_says_why() {
    let alkalinity = |x: f64| Alkalinity::from_mg_per_l(x).unwrap();
    let plain = |ta: f64, cya: f64, t: f64| {
        let (hardness, cya) =
            (Hardness::from_mg_per_l(200.0).unwrap(), CyanuricAcid::from_mg_per_l(cya).unwrap());
        Sample {
            temperature: celsius(t),
            ph: ph(8.0),
            alkalinity: alkalinity(ta),
            hardness,
            cyanuric_acid: cya,
            salt: Salinity::NONE,
            boron: Boron::NONE,
            magnesium: Magnesium::NONE,
            sulfate: Sulfate::NONE,
        }
    };
    // A fifth of 300 mg/L of cyanurate already holds more than 20 mg/L.
    assert_eq!(plain(20.0, 300.0, 25.0).state(), Err(WaterError::NoCarbonate));
    for outside in [plain(400.0, 0.0, 25.0), plain(100.0, 0.0, 45.0)] {
        assert!(matches!(outside.state(), Err(WaterError::Outside(_))), "{outside:?}");
    }
    let water = plain(100.0, 30.0, 25.0).water().unwrap();
    // Sixty mol of salt in a kilogram: more than the water could be.
    let brine = (0..60).fold(water, |w, _| w.treated(Chemical::SodiumChloride, mmol(1_000.0)));
    assert_eq!(brine.state(), Err(WaterError::NoSolution));
    let goal = |p: f64, ta: f64, cya: f64| Goal {
        ph: ph(p),
        alkalinity: alkalinity(ta),
        hardness: Hardness::from_mg_per_l(200.0).unwrap(),
        cyanuric_acid: CyanuricAcid::from_mg_per_l(cya).unwrap(),
    };
    let outside = recipe(&water, &goal(7.5, 400.0, 30.0));
    assert!(matches!(outside, Err(chem::RecipeError::Chemistry(WaterError::Outside(_)))), "{outside:?}");
    assert_eq!(recipe(&water, &goal(8.6, 60.0, 30.0)), Err(chem::RecipeError::BelowAir));
    let strips = recipe(&water, &goal(8.0, 80.0, 30.0)).unwrap();
    assert!(strips.stripped.mmol_per_l() > 0.0 && strips.acid.mmol_per_l() > 0.0, "{strips:?}");
}

#[test]
fn readings_are_taken_apart_and_amounts_never_fall_below_none() {
    use chem::treatment::BleachStrength;
    let ppm = |x: f64| ppm(x);
    let (ta, ch) = (Alkalinity::from_mg_per_l(100.0).unwrap(), Hardness::from_mg_per_l(200.0).unwrap());
    let behind = |x: f64| salt::sodium_chloride_behind(ppm(x), SaltTest::Conductivity, ta, ch);
    assert_eq!(behind(1_000.0), Ok(ppm(1_000.0 - 85.0 - 230.0)));
    assert_eq!(behind(300.0).unwrap_err().got, 300.0 - 85.0 - 230.0);
    let (low, high) = (ppm(400.0), ppm(3_200.0));
    assert_eq!(high.excess_over(low), Some(ppm(2_800.0)));
    assert_eq!((low.excess_over(high), low.excess_over(low)), (None, None));
    assert_eq!(low.checked_add(high).unwrap(), ppm(3_600.0));
    let [all, part] = [177.0, 120.0].map(kg);
    assert_eq!((all.saturating_sub(part).kilograms(), part.saturating_sub(all)), (57.0, Mass::NONE));
    assert_eq!(
        (part.checked_mul(2.5).unwrap().kilograms(), Volume::ONE.checked_mul(2.5).unwrap().cubic_metres()),
        (300.0, 2.5)
    );
    let shown = conductivity::by_factor(
        Conductivity::from_ms_per_cm(6.0).unwrap(),
        Fraction::from_ratio(0.5).unwrap(),
    );
    assert_eq!(shown, Ok(ppm(3_000.0)));
    let bleach = BleachStrength::from_mass_percent(10.0, 1.16).unwrap();
    near(bleach.g_per_l(), 116.0, 1e-9, bleach);
    // 12 % of NaOCl is 11.43 % of Cl2; 13.61 g in 100 mL weigh 1.1905 by the line, which is 11.43 % again.
    let bleach = BleachStrength::from_hypochlorite_percent(12.0).unwrap();
    near(bleach.g_per_l(), 136.1, 0.05, bleach);
}
