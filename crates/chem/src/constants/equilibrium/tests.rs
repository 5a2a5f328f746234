//! Are the constants and activities those of their sources?

use super::*;

#[test]
fn a_power_of_ten_is_one_by_either_way() {
    for n in 0..4_000 {
        let x = (f64::from(n) - 2_000.0) / 4e4;
        assert!((pow10_of_step(x) / pow10(x) - 1.0).abs() < 1e-13, "{x}");
        assert!((pow10(x) / libm::exp10(x) - 1.0).abs() < 1e-15, "{x}");
    }
    assert_eq!((pow10(0.0), pow10(f64::NEG_INFINITY)), (1.0, 0.0));
}

/// From sweep to sweep, or at once: the same constants.
#[test]
fn constants_move_to_where_they_would_have_begun() {
    let k = Constants::at(Temperature::from_celsius(30.0).unwrap());
    let all =
        There { calcium: true, magnesium: true, sulfate: true, cyanurate: true, boron: true, chlorine: true };
    for (from, to) in [(0.01, 0.0101), (0.05, 0.06), (0.1, 0.02)] {
        let (at, moved) = (Apparent::at(&k, &all, to, 0.999), Apparent::at(&k, &all, from, 0.999));
        at.k.with(&moved.moved(&k, to).k, |a, b| {
            assert!((a / b - 1.0).abs() < 1e-12, "{a} beside {b}, from {from} to {to}");
            a
        });
    }
}

/// PyCO2SYS 1.8.3.4 (Millero 1979, fresh water): pK1, pK2, pKw at three temperatures. The two
/// sources differ by up to 0.0022.
#[test]
fn carbonic_acid_and_water_agree_with_millero() {
    for (t, carbonic, bicarbonate, water) in
        [(5.0, 6.5171, 10.5555, 14.7317), (25.0, 6.3515, 10.3297, 13.9946), (40.0, 6.2965, 10.2206, 13.5327)]
    {
        let k = Constants::at(Temperature::from_celsius(t).unwrap());
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
        let k = Constants::at(Temperature::from_celsius(t).unwrap());
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
        let k = Constants::at(Temperature::from_celsius(t).unwrap());
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

/// PHREEQC 3.7.3, phreeqc.dat, LG of each species in three waters with all ions, added up over each reaction:
/// what stands on its left less what stands on its right.
#[test]
fn activities_are_those_of_the_database() {
    type Row = (fn(&Activities) -> f64, [f64; 3]);
    const ROWS: [Row; 21] = [
        (|a| a.shift.carbonic, [0.07429, 0.10380, 0.14029]),
        (|a| a.shift.bicarbonate, [0.21196, 0.28755, 0.37094]),
        (|a| a.shift.water, [0.07750, 0.10859, 0.14518]),
        (|a| a.shift.boric, [0.07746, 0.10795, 0.14232]),
        (|a| a.shift.cyanuric, [0.07746, 0.10795, 0.14232]),
        (|a| a.shift.hypochlorous, [0.07746, 0.10795, 0.14232]),
        (|a| a.shift.ca_co3, [-0.56820, -0.77134, -0.99431]),
        (|a| a.shift.ca_hco3, [-0.28387, -0.38341, -0.48862]),
        (|a| a.shift.ca_so4, [-0.57501, -0.78422, -1.01690]),
        (|a| a.shift.ca_oh, [-0.20813, -0.27999, -0.35740]),
        (|a| a.shift.na_co3, [-0.28108, -0.38124, -0.49312]),
        (|a| a.shift.na_hco3, [-0.14658, -0.20164, -0.26450]),
        (|a| a.shift.na_so4, [-0.29106, -0.39827, -0.51774]),
        (|a| a.shift.mg_co3, [-0.56026, -0.75650, -0.96871]),
        (|a| a.shift.mg_hco3, [-0.26909, -0.35608, -0.44231]),
        (|a| a.shift.mg_so4, [-0.56707, -0.76938, -0.99130]),
        (|a| a.shift.mg_oh, [-0.20680, -0.27540, -0.34361]),
        (|a| a.shift.hydrogen, [0.06052, 0.07842, 0.09652]),
        (|a| a.ca, [-0.28195, -0.37999, -0.48308]),
        (|a| a.co3, [-0.28261, -0.38340, -0.49459]),
        (|a| a.neutral, [0.00364, 0.00795, 0.01664]),
    ];
    for (i, (t, strength)) in
        [(5.0, 0.03644265), (25.0, 0.07947179), (40.0, 0.16636754)].into_iter().enumerate()
    {
        let a = Activities::at(&Constants::at(Temperature::from_celsius(t).unwrap()), strength);
        for (n, (ours, theirs)) in ROWS.iter().enumerate() {
            assert!(
                (ours(&a) - theirs[i]).abs() < 3e-5,
                "row {n} at {t} °C: {} beside {}",
                ours(&a),
                theirs[i]
            );
        }
    }
}

#[test]
fn a_reaction_that_lacks_a_part_has_a_constant_of_nothing() {
    let k = Constants::at(Temperature::from_celsius(25.0).unwrap());
    let none = There {
        calcium: false,
        magnesium: false,
        sulfate: false,
        cyanurate: false,
        boron: false,
        chlorine: false,
    };
    let left = |there: &There| {
        let k = Apparent::at(&k, there, 0.05, 0.999).k;
        assert!(
            [k.carbonic, k.bicarbonate, k.water, k.na_co3, k.na_hco3, k.hydrogen].iter().all(|k| *k > 0.0)
        );
        [
            [k.ca_co3, k.ca_hco3, k.ca_oh, k.mg_co3, k.mg_hco3, k.mg_oh],
            [k.na_so4, k.ca_so4, k.mg_so4, k.cyanuric, k.boric, k.hypochlorous],
        ]
        .map(|six| six.map(|k| k > 0.0))
    };
    let (no, yes) = (false, true);
    assert_eq!(left(&none), [[no; 6]; 2]);
    let calcium = There { calcium: true, ..none };
    assert_eq!(left(&calcium), [[yes, yes, yes, no, no, no], [no; 6]]);
    let magnesium = There { magnesium: true, ..none };
    assert_eq!(left(&magnesium), [[no, no, no, yes, yes, yes], [no; 6]]);
    let sulfate = There { sulfate: true, ..none };
    assert_eq!(left(&sulfate), [[no; 6], [yes, no, no, no, no, no]]);
    let acids = There { cyanurate: true, boron: true, chlorine: true, ..none };
    assert_eq!(left(&acids), [[no; 6], [no, no, no, yes, yes, yes]]);
    let hard = There { calcium: true, magnesium: true, sulfate: true, ..none };
    assert_eq!(left(&hard), [[yes; 6], [yes, yes, yes, no, no, no]]);
}
