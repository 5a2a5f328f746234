//! Are the constants those of their sources?

use super::*;

fn at(celsius: f64) -> Constants {
    Constants::at(Temperature::from_celsius(celsius).unwrap()).unwrap()
}

/// PyCO2SYS 1.8.3.4 (Millero 1979, fresh water): pK1, pK2, pKw at three temperatures. The two
/// sources differ by up to 0.0022.
#[test]
fn carbonic_acid_and_water_agree_with_millero() {
    for (t, carbonic, bicarbonate, water) in
        [(5.0, 6.5171, 10.5555, 14.7317), (25.0, 6.3515, 10.3297, 13.9946), (40.0, 6.2965, 10.2206, 13.5327)]
    {
        let k = at(t);
        for (ours, theirs) in
            [(k.log.carbonic, carbonic), (k.log.bicarbonate, bicarbonate), (k.log.water, water)]
        {
            assert!((-ours - theirs).abs() < 0.0023, "{t} °C: {ours} beside {theirs}");
        }
    }
}

/// Standard Methods 2330 (from memory): pK2 and pKs as printed to two decimals.
#[test]
fn carbonate_and_calcite_agree_with_standard_methods() {
    for (t, bicarbonate, calcite) in
        [(5.0, 10.56, 8.39), (20.0, 10.38, 8.45), (25.0, 10.33, 8.48), (30.0, 10.29, 8.51)]
    {
        let k = at(t);
        assert!((-k.log.bicarbonate - bicarbonate).abs() < 0.007, "{t} °C {}", k.log.bicarbonate);
        assert!((-k.calcite - calcite).abs() < 0.005, "{t} °C {}", k.calcite);
    }
}

/// PHREEQC 3.7.3, phreeqc.dat, LK_SPECIES and LK_PHASE at 5, 25 and 40 °C; cyanuric and hypochlorous acid by their
/// formulas (W18, M66), worked out apart. The database's own R, 8.3147, moves van 't Hoff's term by up to 3e-5.
#[test]
fn constants_are_those_of_the_database() {
    type Row = (fn(&Constants) -> f64, [f64; 3]);
    const ROWS: [Row; 19] = [
        (|k| k.log.carbonic, [-6.51630, -6.35187, -6.29740]),
        (|k| k.log.bicarbonate, [-10.55441, -10.32885, -10.22169]),
        (|k| k.log.water, [-14.72958, -13.99475, -13.53343]),
        (|k| k.log.boric, [-9.40992, -9.24000, -9.12680]),
        (|k| k.log.cyanuric, [-7.38640, -6.96605, -6.68602]),
        (|k| k.log.hypochlorous, [-7.75414, -7.53664, -7.43417]),
        (|k| k.log.ca_co3, [3.12835, 3.22528, 3.38473]),
        (|k| k.log.ca_hco3, [0.90087, 1.10580, 1.17873]),
        (|k| k.log.ca_so4, [2.18017, 2.25000, 2.29652]),
        (|k| k.log.ca_oh, [-12.78000, -12.78000, -12.78000]),
        (|k| k.log.na_co3, [0.80041, 1.27000, 1.58283]),
        (|k| k.log.na_hco3, [-0.19730, -0.25000, -0.28511]),
        (|k| k.log.na_so4, [0.64097, 0.70000, 0.73932]),
        (|k| k.log.mg_co3, [2.84626, 2.97966, 3.07971]),
        (|k| k.log.mg_hco3, [1.04922, 1.06822, 1.10658]),
        (|k| k.log.mg_so4, [2.13020, 2.37000, 2.52975]),
        (|k| k.log.mg_oh, [-12.28074, -11.44000, -10.87992]),
        (|k| k.calcite, [-8.39422, -8.47983, -8.57965]),
        (|k| k.henry, [-1.19203, -1.46817, -1.62505]),
    ];
    for (i, t) in [5.0, 25.0, 40.0].into_iter().enumerate() {
        let k = at(t);
        for (n, (ours, theirs)) in ROWS.iter().enumerate() {
            assert!(
                (ours(&k) - theirs[i]).abs() < 4e-5,
                "row {n} at {t} °C: {} beside {}",
                ours(&k),
                theirs[i]
            );
        }
    }
}

#[test]
fn beyond_their_range_there_are_none() {
    for (t, known) in [(0.0, true), (42.0, true), (42.001, false), (50.0, false)] {
        assert_eq!(Constants::at(Temperature::from_celsius(t).unwrap()).is_ok(), known, "{t} °C");
    }
}
