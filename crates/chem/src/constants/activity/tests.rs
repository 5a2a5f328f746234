//! Are the activities those of their source, and do constants move as they must?

use super::*;
use crate::quantity::measured::Temperature;

fn at(celsius: f64) -> Constants {
    Constants::at(Temperature::from_celsius(celsius).unwrap()).unwrap()
}

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
    let k = at(30.0);
    let all = Present {
        calcium: true,
        magnesium: true,
        sulfate: true,
        cyanuric_acid: true,
        boron: true,
        chlorine: true,
    };
    for (from, to) in [(0.01, 0.0101), (0.05, 0.06), (0.1, 0.02)] {
        let (at, moved) = (Apparent::at(&k, &all, to, 0.999), Apparent::at(&k, &all, from, 0.999));
        at.k.with(&moved.moved(&k, to).k, |a, b| {
            assert!((a / b - 1.0).abs() < 1e-12, "{a} beside {b}, from {from} to {to}");
            a
        });
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
        let a = Activities::at(&at(t), strength);
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
    let k = at(25.0);
    let none = Present {
        calcium: false,
        magnesium: false,
        sulfate: false,
        cyanuric_acid: false,
        boron: false,
        chlorine: false,
    };
    let left = |present: &Present| {
        let k = Apparent::at(&k, present, 0.05, 0.999).k;
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
    let calcium = Present { calcium: true, ..none };
    assert_eq!(left(&calcium), [[yes, yes, yes, no, no, no], [no; 6]]);
    let magnesium = Present { magnesium: true, ..none };
    assert_eq!(left(&magnesium), [[no, no, no, yes, yes, yes], [no; 6]]);
    let sulfate = Present { sulfate: true, ..none };
    assert_eq!(left(&sulfate), [[no; 6], [yes, no, no, no, no, no]]);
    let acids = Present { cyanuric_acid: true, boron: true, chlorine: true, ..none };
    assert_eq!(left(&acids), [[no; 6], [no, no, no, yes, yes, yes]]);
    let hard = Present { calcium: true, magnesium: true, sulfate: true, ..none };
    assert_eq!(left(&hard), [[yes; 6], [yes, yes, yes, no, no, no]]);
}
