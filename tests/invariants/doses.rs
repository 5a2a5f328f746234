//! Does what is put into a water do what it must, and is the dose for a goal found?

use super::chemistry::{near, plain};
use chem::treatment::recipe::{Goal, alkalinity_by_bicarbonate, dose_to_ph, minerals, recipe};
use chem::treatment::{Chemical, Dose};
use chem::*;
use evidence::draw::Draw;
use evidence::quantities::{celsius, m3, mmol, ph};

#[test]
fn a_recipe_applied_gives_its_goal_or_names_what_must_fall() {
    let mut d = Draw(11);
    let mut reached = 0;
    for _ in 0..2_000 {
        let (sample, water) = d.water();
        let goal = Goal {
            ph: ph(d.between(7.0, 8.2)),
            alkalinity: Alkalinity::from_mg_per_l(d.between(60.0, 200.0)).unwrap(),
            hardness: Hardness::from_mg_per_l(d.between(10.0, 1_200.0)).unwrap(),
            cyanuric_acid: CyanuricAcid::from_mg_per_l(d.between(0.0, 150.0)).unwrap(),
        };
        let found = recipe(&water, &goal);
        let rise = |to: f64, from: f64, molar_mass: f64| (to - from) / molar_mass;
        let calcium = rise(goal.hardness.mg_per_l(), sample.hardness.mg_per_l(), 100.0869);
        let cyanuric = rise(goal.cyanuric_acid.mg_per_l(), sample.cyanuric_acid.mg_per_l(), 129.07422);
        if calcium < 0.0 {
            assert_eq!(found, Err(chem::RecipeError::Hardness), "{sample:?}");
        } else if cyanuric < 0.0 {
            assert_eq!(found, Err(chem::RecipeError::CyanuricAcid), "{sample:?}");
        } else {
            let parts = minerals(&water, goal.hardness, goal.cyanuric_acid).unwrap();
            near(parts.calcium.mmol_per_l(), calcium, 1e-9, sample);
            near(parts.cyanuric.mmol_per_l(), cyanuric, 1e-9, sample);
        }
        // No goal is out of reach but for what it calls for.
        assert_ne!(found, Err(chem::RecipeError::OutOfReach), "{sample:?}");
        let Ok(found) = found else { continue };
        reached += 1;
        let there = found.applied(water);
        near(there.state().unwrap().ph.units(), goal.ph.units(), 1e-6, (sample, goal));
        near(there.alkalinity().unwrap().mg_per_l(), goal.alkalinity.mg_per_l(), 1e-6, (sample, goal));
        let all = [found.bicarbonate, found.carbonate, found.acid, found.stripped];
        assert!(all.iter().all(|dose| dose.mmol_per_l() >= 0.0), "{found:?} for {sample:?}");
        // Never an acid and a base that undo each other but for their carbon.
        let [_, carbonate, acid, _] = all.map(Dose::mmol_per_l);
        assert!(carbonate == 0.0 || acid == 0.0, "{found:?} for {sample:?}");
    }
    assert!(reached > 200, "only {reached} recipes");
}

#[test]
fn a_dose_to_a_ph_gets_there_and_more_acid_never_raises_it() {
    let mut d = Draw(12);
    for _ in 0..1_000 {
        let (sample, water) = d.water();
        let target = ph(sample.ph.units() - d.between(0.01, 0.5));
        let dose = dose_to_ph(&water, Chemical::HydrochloricAcid, target).unwrap();
        let there = water.treated(Chemical::HydrochloricAcid, dose).state().unwrap();
        near(there.ph.units(), target.units(), 1e-6, sample);
        let back = dose_to_ph(&water, Chemical::SodiumCarbonate, target);
        assert!(back.is_err(), "soda ash takes {sample:?} down to {target:?}");
        let mut last = f64::INFINITY;
        for step in 0..12 {
            let acid = mmol(0.15 * f64::from(step));
            let now = water.treated(Chemical::HydrochloricAcid, acid).state().unwrap().ph.units();
            assert!(now < last, "{step} of {sample:?}");
            last = now;
        }
    }
}

/// Where halving finds a dose, so does the solver: also where borate and cyanuric acid leave hardly any carbonate, or
/// where the undosed water could not hold the goal at all.
#[test]
fn a_dose_that_there_is_is_found() {
    let mut d = Draw(14);
    let mut found = [0; 2];
    for _ in 0..1_000 {
        let sample = Sample { boron: Boron::from_mg_per_l(d.between(0.0, 80.0)).unwrap(), ..d.sample() };
        let Ok(water) = sample.water() else { continue };
        for (n, chemical) in [Chemical::HydrochloricAcid, Chemical::SodiumCarbonate].into_iter().enumerate() {
            let goal = ph(d.between(6.5, 8.6));
            let at = |dose: f64| water.treated(chemical, mmol(dose)).state().map(|state| state.ph.units());
            let (mut low, mut high) = (0.0, 8.0);
            let toward = if n == 0 { -1.0 } else { 1.0 };
            let behind = |dose: f64| at(dose).map_or(true, |x| (x - goal.units()) * toward > 0.0);
            if behind(low) || !behind(high) {
                continue;
            }
            for _ in 0..60 {
                let middle = 0.5 * (low + high);
                if behind(middle) { high = middle } else { low = middle }
            }
            // A water may lose its pH before it gets there.
            if at(low).is_ok_and(|x| (x - goal.units()).abs() < 1e-7) {
                let dose =
                    dose_to_ph(&water, chemical, goal).unwrap_or_else(|e| panic!("{e}: {sample:?} {goal:?}"));
                near(dose.mmol_per_l(), low, 1e-5 * (1.0 + low), (sample, goal));
                found[n] += 1;
            }
        }
    }
    assert!(found.iter().all(|n| *n > 200), "only {found:?}");
}

/// Also where the water holds less carbon dioxide than air keeps up, which no aeration could bring about.
#[test]
fn to_leave_a_water_as_it_is_takes_nothing() {
    let mut d = Draw(15);
    let mut below_air = 0;
    for _ in 0..2_000 {
        let sample = d.with_every_ion();
        let Ok(water) = sample.water() else { continue };
        let Sample { ph, alkalinity, hardness, cyanuric_acid, .. } = sample;
        assert_eq!(recipe(&water, &Goal { ph, alkalinity, hardness, cyanuric_acid }), Ok(Default::default()));
        below_air += i32::from(sample.state().unwrap().carbon_dioxide < CarbonDioxide::OPEN_AIR);
    }
    assert!(below_air > 50, "only {below_air}");
}

/// By the charge of the strong ions that each brings, and by its atoms of carbon.
#[test]
fn a_chemical_moves_alkalinity_and_carbon_by_its_formula() {
    use Chemical::*;
    let (sample, water) = Draw(13).water();
    let before = (water.alkalinity().unwrap().mg_per_l(), water.state().unwrap().carbon.molal());
    let litre = density::water_content(sample.temperature, sample.salt).unwrap().kg_per_l();
    for (chemical, equivalents, carbons) in [
        (HydrochloricAcid, -1.0, 0.0),
        (SodiumBisulfate, -1.0, 0.0),
        (SodiumBicarbonate, 1.0, 1.0),
        (SodiumCarbonate, 2.0, 1.0),
        (SodiumHydroxide, 1.0, 0.0),
        (CalciumChloride, 0.0, 0.0),
        (CarbonDioxide, 0.0, 1.0),
        (CyanuricAcid, 0.0, 0.0),
        (BoricAcid, 0.0, 0.0),
        (Borax, 2.0, 0.0),
        (SodiumHypochlorite, 1.0, 0.0),
        (LiquidChlorine, 1.0, 0.0),
        (CalciumHypochlorite, 2.0, 0.0),
        (Dichlor, 1.0, 0.0),
        (Trichlor, 0.0, 0.0),
        (Chlorine, -1.0, 0.0),
        (SodiumChloride, 0.0, 0.0),
    ] {
        let there = water.treated(chemical, mmol(0.2));
        let after = (there.alkalinity().unwrap().mg_per_l(), there.state().unwrap().carbon.molal());
        near(after.0 - before.0, 0.2 * equivalents * 50.04345, 1e-9, chemical);
        near(after.1 - before.1, 0.2e-3 * carbons / litre, 1e-9, chemical);
        // Chlorine at the end of its life has taken as much alkalinity as it was.
        let spent = there.spent().alkalinity().unwrap().mg_per_l() - after.0;
        near(spent, -0.2 * chemical.available_chlorine() * 50.04345, 1e-9, chemical);
    }
    assert_eq!(alkalinity_by_bicarbonate(50.04345).map(|dose| dose.mmol_per_l().round()), Some(1.0));
}

/// A trace of cyanuric acid can bind no more than a trace of chlorine, and a trace of chlorine can't move the water:
/// there is no step from none to a little. The first missed by a whole unit of pH while chlorine was either all
/// free or all bound.
#[test]
fn a_trace_of_cyanuric_acid_or_of_chlorine_moves_nothing_by_a_step() {
    use chem::treatment::Chemical::{
        CalciumHypochlorite, Dichlor, LiquidChlorine, SodiumHypochlorite, Trichlor,
    };
    let with = |t: f64, cya: f64, chemical, fc: f64| {
        let chlorine = chem::Chlorine::from_mg_per_l(fc).unwrap();
        let dose = Dose::of_chlorine(chemical, chlorine).unwrap();
        let water =
            Sample { cyanuric_acid: CyanuricAcid::from_mg_per_l(cya).unwrap(), ..plain(t, 7.5, 80.0) };
        let state = water.water().unwrap().treated(chemical, dose).state().unwrap();
        (state.ph.units(), state.chlorine.map_or(0.0, |species| species.bound.mg_per_l()))
    };
    for t in [3.0, 25.0, 40.0] {
        for chemical in [LiquidChlorine, SodiumHypochlorite, CalciumHypochlorite, Dichlor, Trichlor] {
            for fc in [1.0, 5.0, 20.0] {
                // A mole of it binds three moles of chlorine at most: so many units of pH a mg/L, and no step.
                let (none, bound_then) = with(t, 0.0, chemical, fc);
                for cya in [1e-9, 1e-6, 1e-4, 1e-2] {
                    let (ph, bound) = with(t, cya, chemical, fc);
                    assert!((ph - none).abs() <= 0.1 * cya, "{chemical:?} {fc} at {cya}, {t} °C: {ph}");
                    // A source that brings cyanuric acid has bound some before any is there.
                    assert!((bound - bound_then).abs() <= 2.0 * cya, "{chemical:?} {fc} at {cya}: {bound}");
                }
            }
            for cya in [0.0, 0.01, 1.0, 50.0] {
                let none = plain(t, 7.5, 80.0).ph.units();
                for fc in [1e-9, 1e-6, 1e-4, 1e-2] {
                    let (ph, bound) = with(t, cya, chemical, fc);
                    assert!(
                        (ph - none).abs() <= 0.1 * fc + 1e-8,
                        "{chemical:?} at {cya}, {t} °C, {fc}: {ph}"
                    );
                    assert!((0.0..=fc).contains(&bound), "{chemical:?} at {cya}, {fc}: {bound}");
                }
            }
        }
    }
}

#[test]
fn a_dose_is_so_much_of_what_stands_on_the_shelf() {
    use chem::treatment::{AcidStrength, BleachStrength};
    let (dose, pool) = (mmol(0.5), m3(20.0));
    // Ten moles in all.
    let acid = AcidStrength::from_mass_percent(31.45).unwrap();
    near(dose.of_acid(pool, acid).unwrap().cubic_metres() * 1000.0, 10.0 / acid.mol_per_l(), 1e-9, acid);
    let bleach = BleachStrength::from_trade_percent(12.5).unwrap();
    near(dose.of_bleach(pool, bleach).unwrap().cubic_metres() * 1000.0, 709.06 / 125.0, 1e-9, bleach);
    let powder = dose.of_powder(Chemical::SodiumBicarbonate, pool, Purity::from_ratio(0.5).unwrap());
    near(powder.kilograms(), 2.0 * 0.840_066_092_8, 1e-9, powder);
    // CRC Handbook (from memory): acid of 20 and 36 % weighs 1.0980 and 1.1789 g/mL.
    for (percent, density) in [(20.0, 1.0980), (36.0, 1.1789)] {
        let acid = AcidStrength::from_mass_percent(percent).unwrap();
        near(acid.mol_per_l() / (10.0 * percent * density / 36.4609), 1.0, 0.0006, percent);
    }
    for (chemical, moles) in [
        (Chemical::SodiumHypochlorite, 1.0),
        (Chemical::LiquidChlorine, 1.0),
        (Chemical::CalciumHypochlorite, 2.0),
        (Chemical::Dichlor, 2.0),
        (Chemical::DichlorDihydrate, 2.0),
        (Chemical::Trichlor, 3.0),
        (Chemical::Chlorine, 1.0),
    ] {
        let free = chem::Chlorine::from_mg_per_l(70.906).unwrap();
        near(Dose::of_chlorine(chemical, free).unwrap().mmol_per_l(), 1.0 / moles, 1e-12, chemical);
    }
    assert_eq!(Dose::of_chlorine(Chemical::Borax, chem::Chlorine::from_mg_per_l(1.0).unwrap()), None);
}

/// Bleach brings its alkalinity either way; what is free takes up acid as it goes, and the more cyanuric acid there
/// is, the less is free.
#[test]
fn the_more_cyanuric_acid_the_less_of_an_acid_is_chlorine() {
    let at = |cya: f64, chemical| {
        let (ta, ch) = (Alkalinity::from_mg_per_l(80.0).unwrap(), Hardness::from_mg_per_l(200.0).unwrap());
        let cya = CyanuricAcid::from_mg_per_l(cya).unwrap();
        let water = Sample {
            temperature: celsius(25.0),
            ph: ph(7.5),
            alkalinity: ta,
            hardness: ch,
            cyanuric_acid: cya,
            salt: Salinity::NONE,
            boron: Boron::NONE,
            magnesium: Magnesium::NONE,
            sulfate: Sulfate::NONE,
        }
        .water()
        .unwrap();
        water.treated(chemical, mmol(0.1)).state().unwrap().ph.units()
    };
    let apart = |cya| at(cya, Chemical::SodiumHydroxide) - at(cya, Chemical::SodiumHypochlorite);
    let by_cya = [0.0, 0.1, 1.0, 10.0, 50.0, 100.0].map(apart);
    assert!(by_cya.is_sorted_by(|a, b| a > b) && by_cya[5] > 0.0, "{by_cya:?}");
}
