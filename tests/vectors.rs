//! Do our formulas give what others published? One row, one check; files in `vectors/`.
//!
//! `SALTWRIGHT_VECTORS=folder cargo test -p evidence --test vectors -- --nocapture` reads another
//! folder. As wasm the files of `vectors/` are embedded, and every value must equal the native one
//! bit for bit.

use chem::salt;
use chem::treatment::{Chemical, Dose};
use chem::*;

#[cfg(target_family = "wasm")]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

/// A line of a file, its cells found by the name in the header.
struct Row<'a> {
    head: &'a [&'a str],
    cells: Vec<&'a str>,
}

impl<'a> Row<'a> {
    fn text(&self, name: &str) -> &'a str {
        let at = self.head.iter().position(|h| *h == name);
        self.cells[at.unwrap_or_else(|| panic!("no column {name}"))]
    }

    fn number(&self, name: &str) -> f64 {
        let text = self.text(name);
        text.parse().unwrap_or_else(|_| panic!("{name} is {text:?}, not a number"))
    }

    /// The water of the columns that begin with `prefix`; an absent column counts as none.
    fn sample(&self, prefix: &str, salt: Option<f64>) -> Sample {
        let x = |name: &str| {
            let name = format!("{prefix}{name}");
            if self.head.contains(&name.as_str()) { self.number(&name) } else { 0.0 }
        };
        Sample {
            temperature: Temperature::from_celsius(x("t_c")).unwrap(),
            ph: Ph::from_units(x("ph")).unwrap(),
            alkalinity: Alkalinity::from_mg_per_l(x("ta_mgl_caco3")).unwrap(),
            hardness: Hardness::from_mg_per_l(x("ch_mgl_caco3")).unwrap(),
            cyanurate: Cyanurate::from_mg_per_l(x("cya_mgl")).unwrap(),
            salt: ppm(salt.unwrap_or_else(|| x("nacl_mgl"))),
            boron: Boron::from_mg_per_l(x("b_mgl")).unwrap(),
            magnesium: Magnesium::from_mg_per_l(x("mg_mgl_caco3")).unwrap(),
            sulfate: Sulfate::from_mg_per_l(x("so4_mgl")).unwrap(),
        }
    }
}

fn ppm(x: f64) -> Salinity {
    Salinity::from_mg_per_l(x).unwrap()
}

fn index(state: Result<State, Fault>) -> f64 {
    state.unwrap().index.unwrap().log10()
}

/// The rows below that end in "printed" are held to half of the last digit of the source.
const PRINTED: f64 = 0.5;

/// What a check found in one row.
struct Found {
    column: String,
    ours: f64,
    theirs: f64,
    /// Size of one unit of the tolerance: 1, or the last printed digit.
    scale: f64,
}

fn plainly(row: &Row, column: &str, ours: f64) -> Found {
    Found { column: column.into(), ours, theirs: row.number(column), scale: 1.0 }
}

fn printed(row: &Row, column: &str, ours: f64) -> Found {
    let text = row.text(column);
    let digits = text.split_once('.').map_or(0, |(_, after)| after.len());
    Found { column: column.into(), ours, theirs: row.number(column), scale: 0.1f64.powi(digits as i32) }
}

fn relative(row: &Row, column: &str, ours: f64) -> Found {
    Found { scale: row.number(column), ..plainly(row, column, ours) }
}

/// A file's tolerance and how a row of it is worked out. Adding a file is adding a line here.
type Check = (&'static str, f64, fn(&Row) -> Vec<Found>);

const CHECKS: &[Check] = &[
    ("saturation-index.csv", 0.002, |row| {
        vec![plainly(row, "si_calcite", index(row.sample("", None).state()))]
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
        let water = Sample::plain(
            Temperature::from_celsius(26.0).unwrap(),
            Ph::from_units(7.8).unwrap(),
            Alkalinity::from_mg_per_l(120.0).unwrap(),
            Hardness::from_mg_per_l(300.0).unwrap(),
            Cyanurate::from_mg_per_l(40.0).unwrap(),
            ppm(3200.0),
        );
        let chemical = chemical(row.text("chemical"));
        let dose = match row.text("dose_mgl") {
            "" => row.number("dose_mmol_l"),
            _ => row.number("dose_mgl") / chemical.molar_mass(),
        };
        let water = water.water().unwrap().treated(chemical, Dose::from_mmol_per_l(dose).unwrap());
        let state = water.state().unwrap();
        vec![
            printed(row, "ta", water.alkalinity().mg_per_l()),
            printed(row, "ph", state.ph.units()),
            printed(row, "si", state.index.unwrap().log10()),
        ]
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
        let shares = chlorine::shares(
            Chlorine::from_mg_per_l(row.number("fc_mgl_cl2")).unwrap(),
            Cyanurate::from_mg_per_l(row.number("cya_mgl")).unwrap(),
            Ph::from_units(row.number("ph")).unwrap(),
            Temperature::from_celsius(25.0).unwrap(),
            IonicStrength::from_molal(row.number("ionic_strength_molal")).unwrap(),
        );
        vec![
            relative(row, "hocl_mg_cl2", shares.hypochlorous.mg_per_l()),
            relative(row, "ocl_mg_cl2", shares.hypochlorite.mg_per_l()),
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
        let ours = conductivity::of_salt(ppm(salt), Temperature::from_celsius(t).unwrap());
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
            conductivity::of_salt(salt, Temperature::from_celsius(t).unwrap()).ms_per_cm()
        };
        vec![relative(row, "c_over_c25", at(row.number("t_c")) / at(25.0))]
    }),
    ("density.csv", 0.1, |row| {
        let t = Temperature::from_celsius(row.number("t_c")).unwrap();
        let salt = ppm(row.number("nacl_mgl"));
        let rho = density::brine(t, salt).kg_per_m3();
        let mut found = vec![plainly(row, "rho_phreeqc_kg_m3", rho)];
        // Water content is held to 1e-4 kg/L: a thousandth of the density's unit.
        let content = density::water_content(t, salt).kg_per_l();
        found.push(Found { scale: 1e-3, ..plainly(row, "kg_water_per_l", content) });
        if !row.text("rho_kell_kg_m3").is_empty() {
            found.push(plainly(row, "rho_kell_kg_m3", density::pure_water(t).kg_per_m3()));
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
                let mass = Mass::from_kilograms(row.number("mass") * pound).unwrap();
                salt::rise_from(mass, purity, volume).mg_per_l()
            }
        };
        vec![printed(row, "printed", ours)]
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
            printed(row, "drain_volume", volume.times(share.ratio()).cubic_metres() / unit),
            printed(row, "flow_pct", flow / volume.cubic_metres() * 100.0),
            printed(row, "flow_volume", flow / unit),
            printed(row, "parts", parts.len() as f64),
            printed(row, "parts_pct", parts.iter().map(|p| p.share.ratio()).sum::<f64>() * 100.0),
        ]
    }),
];

fn chemical(name: &str) -> Chemical {
    match name {
        "HCl" => Chemical::HydrochloricAcid,
        "NaHSO4" => Chemical::SodiumBisulfate,
        "NaHCO3" => Chemical::SodiumBicarbonate,
        "Na2CO3" => Chemical::SodiumCarbonate,
        "NaOH" => Chemical::SodiumHydroxide,
        "CaCl2" => Chemical::CalciumChloride,
        "H3BO3" => Chemical::BoricAcid,
        "borax" => Chemical::Borax,
        "cyanuric_acid" => Chemical::CyanuricAcid,
        "CO2" => Chemical::CarbonDioxide,
        "NaOCl" => Chemical::SodiumHypochlorite,
        "NaCl" => Chemical::SodiumChloride,
        other => panic!("no chemical {other}"),
    }
}

fn volume(row: &Row) -> Volume {
    let litres = match row.text("volume_unit") {
        "[gal_us]" => 3.785411784,
        "L" => 1.0,
        _ => 1000.0,
    };
    Volume::from_cubic_metres(row.number("volume") * litres / 1000.0).unwrap()
}

/// Checks one file; says what it did and adds each of our values, as bits, to `values`.
fn check(name: &str, text: &str, values: &mut Vec<u64>) -> Result<String, Vec<String>> {
    let Some((_, tolerance, work)) = CHECKS.iter().find(|c| c.0 == name) else {
        return Ok(format!("{name}: skipped, there is no check for it"));
    };
    let mut lines = text.lines();
    let source = lines.next().unwrap_or("");
    assert!(source.starts_with("# source: "), "{name}: the first line must name its source");
    let head: Vec<_> = lines.next().unwrap_or("").split(',').collect();
    let (mut at, mut rows, mut largest, mut beyond) = (0, 0, 0.0f64, Vec::new());
    for line in lines {
        at += 1;
        let found = work(&Row { head: &head, cells: line.split(',').collect() });
        rows += usize::from(!found.is_empty());
        for found in found {
            let Found { column, ours, theirs, scale } = found;
            values.push(ours.to_bits());
            let difference = (ours - theirs).abs() / scale;
            // The last bit is for the printed digits, which are decimal.
            if difference.is_nan() || difference > tolerance + 1e-9 {
                beyond.push(format!("{name} row {at}, {column}: ours {ours}, theirs {theirs}"));
            }
            largest = largest.max(difference);
        }
    }
    assert!(rows > 0, "{name} has no rows");
    let unit = if *tolerance == PRINTED { " of the last printed digit" } else { "" };
    let passed_by =
        if rows < at { format!(" ({} more are no reference here)", at - rows) } else { String::new() };
    let said = format!(
        "{name}: {rows} rows{passed_by}, largest difference {largest:.2e}, tolerance {tolerance}{unit}"
    );
    if beyond.is_empty() { Ok(said) } else { Err(beyond) }
}

#[cfg(not(target_family = "wasm"))]
#[test]
fn every_vector_file_agrees() {
    let own = concat!(env!("CARGO_MANIFEST_DIR"), "/vectors");
    let folder = std::env::var("SALTWRIGHT_VECTORS");
    let mut files: Vec<_> = std::fs::read_dir(folder.as_deref().unwrap_or(own))
        .expect("the folder of vectors can be read")
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "csv"))
        .collect();
    files.sort();
    assert!(!files.is_empty(), "no vector file in the folder");
    let (mut values, mut beyond) = (Vec::new(), Vec::new());
    for path in &files {
        let name = path.file_name().unwrap().to_str().unwrap();
        match check(name, &std::fs::read_to_string(path).unwrap(), &mut values) {
            Ok(said) => println!("{said}"),
            Err(rows) => beyond.extend(rows),
        }
    }
    assert!(beyond.is_empty(), "beyond tolerance:\n{}", beyond.join("\n"));
    if folder.is_err() {
        // For the wasm run of the same test, which must find the same bits.
        let target = concat!(env!("CARGO_MANIFEST_DIR"), "/../target/evidence");
        std::fs::create_dir_all(target).unwrap();
        let lines: Vec<_> = values.iter().map(|bits| format!("{bits:016x}")).collect();
        std::fs::write(format!("{target}/native.txt"), lines.join("\n")).unwrap();
    }
}

#[cfg(target_family = "wasm")]
#[wasm_bindgen_test::wasm_bindgen_test]
fn every_vector_file_agrees_and_equals_native() {
    macro_rules! files {
        ($($name:literal),*) => { [$(($name, include_str!(concat!("vectors/", $name)))),*] };
    }
    // In the order in which the native run reads the folder.
    let files = files![
        "air-equilibrium.csv",
        "conductivity.csv",
        "demo-index.csv",
        "density.csv",
        "dilution.csv",
        "hocl.csv",
        "mixing.csv",
        "psu-cross-check.csv",
        "salt-mass.csv",
        "salt-shift.csv",
        "saturation-index.csv",
        "titrations.csv",
        "treatments.csv"
    ];
    assert_eq!(files.len(), CHECKS.len(), "a file with a check is not embedded");
    let mut values = Vec::new();
    for (name, text) in files {
        match check(name, text, &mut values) {
            Ok(said) => wasm_bindgen_test::console_log!("{said}"),
            Err(rows) => panic!("beyond tolerance:\n{}", rows.join("\n")),
        }
    }
    let native =
        include_str!(env!("SALTWRIGHT_NATIVE", "run the native test first; `cargo xtask test` does"));
    let native: Vec<_> = native.lines().map(|l| u64::from_str_radix(l, 16).unwrap()).collect();
    assert_eq!(values.len(), native.len(), "native and wasm compared different rows");
    let differing = values.iter().zip(&native).filter(|(a, b)| a != b).count();
    assert_eq!(differing, 0, "of {} values, wasm differs from native in", values.len());
}
