//! How many nanoseconds does each take on this machine, natively?

use std::time::Instant;

/// So many times round the waters.
type Act = fn(u32) -> f64;

fn main() {
    let waters = include_str!("../../vectors/saturation-index.csv").lines().filter(|l| !l.starts_with('#'));
    let mut count = 0;
    for line in waters.skip(1) {
        // Columns by place: the same rows go to PHREEQC in `phreeqc.py`, by name.
        let x: Vec<f64> = line.split(',').map_while(|cell| cell.parse().ok()).collect();
        count += 1;
        assert_eq!(
            bench::push(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8]),
            count,
            "no water: {line}"
        );
    }
    let all: [(&str, Act); 6] = [
        ("index", bench::index),
        ("treatment", bench::treatment),
        ("recipe", bench::recipes),
        ("powers", bench::powers),
        ("decision", bench::decision),
        ("pays", bench::paying),
    ];
    for (name, act) in all {
        let took = |turns| {
            let start = Instant::now();
            std::hint::black_box(act(turns));
            start.elapsed().as_secs_f64()
        };
        let mut turns = 1;
        while took(turns) < 0.005 {
            turns *= 2;
        }
        // The fastest of many short ones: whatever else runs on the machine only ever adds.
        let best = (0..100).map(|_| took(turns)).fold(f64::INFINITY, f64::min);
        println!("{name} {}", best * 1e9 / f64::from(turns) / f64::from(count));
    }
}
