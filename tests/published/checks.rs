//! How is a row of each file worked out? Adding a file is adding a line here.

use super::row::{Found, PRINTED, Row, chemical, index, plainly, pool, printed, relative, volume};
use chem::treatment::recipe::{self, Goal, dose_to_ph};
use chem::treatment::{AcidStrength, BleachStrength, Chemical, Dose};
use chem::*;
use evidence::quantities::{celsius, kg, m3, ph, ppm};

/// A file, its tolerance, and how a row of it is worked out.
pub type Check = (&'static str, f64, fn(&Row) -> Vec<Found>);

pub const CHECKS: &[Check] = &[
    ("saturation-index.csv", 0.002, |row| {
        let state = row.sample("", None).state().unwrap();
        // As a pressure: no logarithm but the chemistry's own is the same everywhere.
        let pressure = 10f64.powf(row.number("log10_pco2_atm"));
        let ours = state.carbon_dioxide.atmospheres();
        vec![
            Found { column: "log10_pco2_atm".into(), ours, theirs: pressure, scale: pressure },
            plainly(row, "si_calcite", index(Ok(state))),
            plainly(row, "log10_a_ca", state.log_calcium),
            plainly(row, "log10_a_co3", state.log_carbonate),
            relative(row, "ionic_strength_molal", state.strength.molal()),
            relative(row, "tic_mmol_kgw", state.carbon.molal() * 1000.0),
        ]
    }),
    ("saturation-index-wide.csv", 0.002, |row| {
        let state = row.sample("", None).state().unwrap();
        // From 8 g/L of sodium chloride on 0.005.
        let scale = if row.number("nacl_mgl") > 8000.0 { 2.5 } else { 1.0 };
        vec![
            Found { scale, ..plainly(row, "si_calcite", index(Ok(state))) },
            Found { scale, ..plainly(row, "log10_a_ca", state.log_calcium) },
            Found { scale, ..plainly(row, "log10_a_co3", state.log_carbonate) },
        ]
    }),
    // Beyond pH 8.6 0.02, as where a source has forms that alkalinity leaves out.
    ("chlorine-titrations.csv", 0.005, |row| {
        let water = row.sample("", None).water().unwrap();
        // What goes into a kilogram of water, in a litre.
        let dose = Dose::from_mmol_per_l(row.number("dose_mmol_kgw") * content(row)).unwrap();
        let state = water.treated(Chemical::LiquidChlorine, dose).state().unwrap();
        let scale = if row.number("ph_after") > 8.6 { 4.0 } else { 1.0 };
        let species = state.chlorine.unwrap();
        let chlorine = row.number("fc_added_mgl_cl2");
        // As parts of all the chlorine.
        let bound = species.bound.mg_per_l() / (chlorine * content(row));
        let bound = Found {
            scale,
            ours: bound,
            theirs: row.number("bound_mmol_kgw") / row.number("dose_mmol_kgw"),
            column: "bound_mmol_kgw".into(),
        };
        vec![
            Found { scale, ..plainly(row, "ph_after", state.ph.units()) },
            Found { scale, ..plainly(row, "si_after", state.index.unwrap().log10()) },
            bound,
        ]
    }),
    ("demo-index.csv", 0.002, |row| {
        let sample = row.sample("", None);
        let state = match row.number("added_mgl") {
            0.0 => sample.state().unwrap(),
            added => sample.water().unwrap().salted(ppm(added)).state().unwrap(),
        };
        vec![
            plainly(row, "si_calcite", state.index.unwrap().log10()),
            plainly(row, "ph_after", state.ph.units()),
        ]
    }),
    ("mixing.csv", 0.002, |row| {
        let of_a = row.number("fraction_a_mass_of_water");
        let [a, b] = ["a_", "b_"].map(|p| row.sample(p, None).water().unwrap());
        let mixed = a.mixed(b, Fraction::from_ratio(1.0 - of_a).unwrap()).state().unwrap();
        let of_a_volume = row.number("fraction_a_volume");
        let replaced = a.replaced(b, Fraction::from_ratio(1.0 - of_a_volume).unwrap());
        vec![
            plainly(row, "ph_mix", mixed.ph.units()),
            plainly(row, "si_mix", mixed.index.unwrap().log10()),
            plainly(row, "ph_mix", replaced.state().unwrap().ph.units()),
        ]
    }),
    ("titrations.csv", 0.003, |row| {
        let dose = Dose::from_mmol_per_l(row.number("dose_mmol_l")).unwrap();
        let water = row.sample("", None).water().unwrap().treated(chemical(row.text("chemical")), dose);
        let state = water.state().unwrap();
        // Outside pH 6 to 9.2, where what the model leaves out begins to tell, 0.01.
        let outside = !(6.0..=9.2).contains(&row.number("ph_after"));
        let scale = if outside { 0.01 / 0.003 } else { 1.0 };
        vec![
            Found { scale, ..plainly(row, "ph_after", state.ph.units()) },
            Found { scale, ..plainly(row, "si_after", state.index.unwrap().log10()) },
        ]
    }),
    ("treatments.csv", PRINTED, |row| {
        let water = Sample {
            temperature: celsius(26.0),
            ph: ph(7.8),
            alkalinity: Alkalinity::from_mg_per_l(120.0).unwrap(),
            hardness: Hardness::from_mg_per_l(300.0).unwrap(),
            cyanuric_acid: CyanuricAcid::from_mg_per_l(40.0).unwrap(),
            salt: ppm(3200.0),
            boron: Boron::NONE,
            magnesium: Magnesium::NONE,
            sulfate: Sulfate::NONE,
        };
        let chemical = chemical(row.text("chemical"));
        let dose = match row.text("dose_mgl") {
            "" => row.number("dose_mmol_l"),
            _ => row.number("dose_mgl") / chemical.molar_mass(),
        };
        let water = water.water().unwrap().treated(chemical, Dose::from_mmol_per_l(dose).unwrap());
        let state = water.state().unwrap();
        vec![
            printed(row, "ta", water.alkalinity().unwrap().mg_per_l()),
            printed(row, "ph", state.ph.units()),
            printed(row, "si", state.index.unwrap().log10()),
        ]
    }),
    ("worked.csv", PRINTED, |row| {
        let water = row.sample("", None).water().unwrap();
        let state = water.state().unwrap();
        let air = || water.in_air(CarbonDioxide::OPEN_AIR).unwrap();
        let to_ph = |chemical| dose_to_ph(&water, chemical, ph(row.number("amount")));
        let ours = match row.text("what") {
            "carbonate" => state.carbonate_alkalinity.mg_per_l(),
            "strength" => state.strength.molal(),
            "carbon_mmol_l" => {
                let temperature = celsius(row.number("t_c"));
                let content = density::water_content(temperature, ppm(row.number("nacl_mgl"))).unwrap();
                state.carbon.molal() * content.kg_per_l() * 1000.0
            }
            "index" => state.index.unwrap().log10(),
            "co2_uatm" => state.carbon_dioxide.atmospheres() * 1e6,
            "times_air" => state.carbon_dioxide.atmospheres() / CarbonDioxide::OPEN_AIR.atmospheres(),
            "ph_in_air" => air().ph.units(),
            "index_in_air" => air().index.unwrap().log10(),
            "ph_by_acid" => {
                let dose = Dose::from_mmol_per_l(row.number("amount")).unwrap();
                let there = water.treated(Chemical::HydrochloricAcid, dose).state().unwrap();
                there.ph.units() - row.number("ph")
            }
            "ph_by_bicarbonate" => {
                let dose = recipe::alkalinity_by_bicarbonate(row.number("amount")).unwrap();
                let there = water.treated(Chemical::SodiumBicarbonate, dose).state().unwrap();
                there.ph.units() - row.number("ph")
            }
            "acid_to_ph" => to_ph(Chemical::HydrochloricAcid).unwrap().mmol_per_l(),
            "soda_ash_g" => {
                let dose = to_ph(Chemical::SodiumCarbonate).unwrap();
                let gallons = m3(37.85411784);
                dose.of_powder(Chemical::SodiumCarbonate, gallons, Purity::WHOLE).kilograms() * 1000.0
            }
            other => panic!("nothing called {other}"),
        };
        vec![printed(row, "printed", ours)]
    }),
    ("recipes.csv", PRINTED, |row| {
        let sample = row.sample("", None);
        let goal = Goal {
            ph: ph(row.number("goal_ph")),
            alkalinity: Alkalinity::from_mg_per_l(row.number("goal_ta")).unwrap(),
            hardness: sample.hardness,
            cyanuric_acid: sample.cyanuric_acid,
        };
        let found = recipe::recipe(&sample.water().unwrap(), &goal).unwrap();
        vec![
            printed(row, "bicarbonate", found.bicarbonate.mmol_per_l()),
            printed(row, "carbonate", found.carbonate.mmol_per_l()),
            printed(row, "acid", found.acid.mmol_per_l()),
            printed(row, "stripped", found.stripped.mmol_per_l()),
        ]
    }),
    ("doses.csv", PRINTED, |row| {
        let chemical = chemical(row.text("chemical"));
        let (what, change) = row.text("change").split_at(row.text("change").find(['+', '-']).unwrap());
        let change = change.parse::<f64>().unwrap();
        let dose = match what {
            // Equivalents of alkalinity that a mole brings.
            "ta" => {
                let each = if chemical == Chemical::SodiumCarbonate { 2.0 } else { change.signum() };
                Dose::from_mmol_per_l(change / 50.04345 / each).unwrap()
            }
            "ch" => Dose::from_mmol_per_l(change / 100.0869).unwrap(),
            "cya" => Dose::from_mmol_per_l(change / 129.0746).unwrap(),
            "fc" => Dose::of_chlorine(chemical, Chlorine::from_mg_per_l(change).unwrap()).unwrap(),
            other => panic!("nothing called {other}"),
        };
        let (volume, strength) = (volume(row), row.number("strength"));
        let of_powder = |part: f64| {
            dose.of_powder(chemical, volume, Purity::from_ratio(part).unwrap()).kilograms() * 1000.0
        };
        let acid = |strength: AcidStrength| dose.of_acid(volume, strength).unwrap().cubic_metres() * 1e6;
        // g or mL.
        let ours = match (chemical, row.text("strength_unit")) {
            (Chemical::HydrochloricAcid, "Be") => acid(AcidStrength::from_baume(strength).unwrap()),
            (Chemical::HydrochloricAcid, _) => acid(AcidStrength::from_mass_percent(strength).unwrap()),
            (_, "trade %") => {
                let bleach = BleachStrength::from_trade_percent(strength).unwrap();
                dose.of_bleach(volume, bleach).unwrap().cubic_metres() * 1e6
            }
            // Beside what the pure substance holds.
            (_, "% Cl2") => {
                let pure = chemical.available_chlorine() * 70.906 / chemical.molar_mass();
                of_powder(strength / 100.0 / pure)
            }
            _ => of_powder(strength / 100.0),
        };
        let unit = match row.text("unit") {
            "lb" => 453.59237,
            "oz" => 28.349523125,
            "floz" => 29.5735295625,
            _ => 1.0,
        };
        vec![printed(row, "amount", ours / unit)]
    }),
    ("meter.csv", PRINTED, |row| {
        let t = celsius(25.0);
        let kappa = row.number("kappa_us_cm") / 1000.0;
        if row.text("kind") == "read" {
            let read = conductivity::salt_of(Conductivity::from_ms_per_cm(kappa).unwrap(), t).unwrap();
            return vec![printed(row, "salt_mgl", read.anywhere().mg_per_l())];
        }
        let salt = row.number("salt_mgl");
        let ours = conductivity::of_salt(ppm(salt), t).unwrap().anywhere().ms_per_cm() * 1000.0;
        vec![printed(row, "kappa_us_cm", ours), printed(row, "factor", salt / ours)]
    }),
    ("hocl-by-hand.csv", PRINTED, |row| {
        // Worked with so many moles: the sheet took cyanuric acid for 129.0746 g/mol.
        let moles = row.number("cya_mgl") / 129.0746;
        let species = chlorine::species(
            Chlorine::from_mg_per_l(row.number("fc_mgl_cl2")).unwrap(),
            CyanuricAcid::from_mg_per_l(moles * atomic_weights::CYANURIC_ACID).unwrap(),
            ph(row.number("ph")),
            celsius(row.number("t_c")),
            IonicStrength::from_molal(row.number("strength")).unwrap(),
        );
        vec![printed(row, "hocl_mg_cl2", species.unwrap().hypochlorous.mg_per_l())]
    }),
    ("air-equilibrium.csv", 0.001, |row| {
        let air = CarbonDioxide::from_micro_atmospheres(row.number("pco2_uatm")).unwrap();
        let state = row.sample("", None).water().unwrap().in_air(air).unwrap();
        vec![
            plainly(row, "ph_eq", state.ph.units()),
            plainly(row, "si_eq", state.index.unwrap().log10()),
            relative(row, "tic_eq_mmol_kgw", state.carbon.molal() * 1000.0),
        ]
    }),
    ("hocl.csv", 1e-4, |row| {
        let species = chlorine::species(
            Chlorine::from_mg_per_l(row.number("fc_mgl_cl2")).unwrap(),
            CyanuricAcid::from_mg_per_l(row.number("cya_mgl")).unwrap(),
            ph(row.number("ph")),
            celsius(25.0),
            IonicStrength::from_molal(row.number("ionic_strength_molal")).unwrap(),
        );
        vec![
            relative(row, "hocl_mg_cl2", species.unwrap().hypochlorous.mg_per_l()),
            relative(row, "ocl_mg_cl2", species.unwrap().hypochlorite.mg_per_l()),
        ]
    }),
    // Tolerance by the source: tables 0.1 %, limits 1 %, PHREEQC's own model 3 % near 25 °C, where it
    // is good, and up to 8 g/L; elsewhere it is no reference.
    ("conductivity.csv", 0.001, |row| {
        let (t, salt) = (row.number("t_c"), row.number("nacl_mgl"));
        let scale = match row.text("kind") {
            "table" => 1.0,
            "limit" => 10.0,
            _ if (20.0..=30.0).contains(&t) && salt <= 8000.0 => 30.0,
            _ => return vec![],
        };
        let ours = match conductivity::of_salt(ppm(salt), celsius(t)) {
            Ok(ours) => ours.anywhere(),
            // Refused beyond the temperatures that were fitted, and there alone.
            Err(out) => {
                assert!(t > 42.0 && out.got == t, "{out}");
                return vec![];
            }
        };
        let found = plainly(row, "kappa_us_cm", ours.ms_per_cm() * 1000.0);
        vec![Found { scale: scale * found.theirs, ..found }]
    }),
    // The temperature factor of sea water, another salt: within 1 % while it is as thin as a pool.
    ("psu-cross-check.csv", 0.01, |row| {
        if row.number("practical_salinity") > 8.0 {
            return vec![];
        }
        let at = |t| {
            let salt = ppm(row.number("practical_salinity") * 1000.0);
            conductivity::of_salt(salt, celsius(t)).unwrap().anywhere().ms_per_cm()
        };
        vec![relative(row, "c_over_c25", at(row.number("t_c")) / at(25.0))]
    }),
    ("density.csv", 0.1, |row| {
        let t = celsius(row.number("t_c"));
        let salt = ppm(row.number("nacl_mgl"));
        let mut found = vec![];
        if let (Ok(rho), Ok(content)) = (density::brine(t, salt), density::water_content(t, salt)) {
            found.push(plainly(row, "rho_phreeqc_kg_m3", rho.kg_per_m3()));
            // Water content is held to 1e-4 kg/L: a thousandth of the density's unit.
            found.push(Found { scale: 1e-3, ..plainly(row, "kg_water_per_l", content.kg_per_l()) });
        } else {
            assert!(t.celsius() > 42.0, "{t:?} is refused");
        }
        if !row.text("rho_kell_kg_m3").is_empty() {
            // The same formula, to its printed digits.
            let ours = density::pure_water(t).kg_per_m3();
            found.push(Found { scale: 1e-3, ..plainly(row, "rho_kell_kg_m3", ours) });
        }
        found
    }),
    ("salt-shift.csv", PRINTED, |row| {
        let at = |salt: f64| row.sample("", Some(salt));
        let fresh = index(at(0.0).state());
        let mut found = vec![printed(row, "si_0", fresh)];
        for salt in [500, 1000, 2000, 3200, 6000, 8000] {
            found.push(printed(row, &format!("d_{salt}"), index(at(salt as f64).state()) - fresh));
        }
        let free = at(0.0).water().unwrap().salted(ppm(3200.0)).state().unwrap();
        found.push(printed(row, "d_free_3200", free.index.unwrap().log10() - fresh));
        found.push(printed(row, "d_ph_3200", free.ph.units() - row.number("ph")));
        found
    }),
    ("salt-mass.csv", PRINTED, |row| {
        let volume = volume(row);
        let pound = if row.text("mass_unit") == "[lb_av]" { 0.45359237 } else { 1.0 };
        let purity = Purity::from_ratio(row.number("purity")).unwrap();
        let ours = match row.text("what") {
            "mass" => salt::mass_for(volume, ppm(row.number("rise_mgl")), purity).kilograms() / pound,
            _ => {
                let mass = kg(row.number("mass") * pound);
                salt::rise_from(mass, purity, volume).unwrap().mg_per_l()
            }
        };
        vec![printed(row, "printed", ours)]
    }),
    ("volumes.csv", PRINTED, |row| {
        let size = pool(row).size().unwrap();
        let by_trapezoids = row.text("outline") == "trapezoid";
        let other =
            size.offsets.filter(|_| by_trapezoids).map(|both| both.0.square_metres() * size.depth.metres());
        let water = other.unwrap_or(size.volume.cubic_metres());
        vec![printed(row, "gal", water / 0.003785411784), printed(row, "m3", water)]
    }),
    ("dilution.csv", PRINTED, |row| {
        let [now, target, fill] = ["salt_mgl", "target_mgl", "fill_mgl"].map(|c| ppm(row.number(c)));
        let volume = volume(row);
        let unit = volume.cubic_metres() / row.number("volume");
        let share = dilution::share(now, target, fill).unwrap();
        let flow = dilution::exchange(volume, now, target, fill).unwrap().cubic_metres();
        let cap = Fraction::from_ratio(row.number("cap")).unwrap();
        let parts: Vec<_> = dilution::in_parts(share, cap).collect();
        vec![
            printed(row, "drain_pct", share.ratio() * 100.0),
            printed(row, "drain_volume", volume.checked_mul(share.ratio()).unwrap().cubic_metres() / unit),
            printed(row, "flow_pct", flow / volume.cubic_metres() * 100.0),
            printed(row, "flow_volume", flow / unit),
            printed(row, "parts", parts.len() as f64),
            printed(row, "parts_pct", parts.iter().map(|p| p.share.ratio()).sum::<f64>() * 100.0),
        ]
    }),
];

/// Kilograms of water in a litre of the row's water.
fn content(row: &Row) -> f64 {
    let t = celsius(row.number("t_c"));
    density::water_content(t, ppm(row.number("nacl_mgl"))).unwrap().kg_per_l()
}
