//! How many nanoseconds does each take on this machine, natively?

use std::time::Instant;

fn main() {
    let all: [(&str, fn(u32) -> f64); 6] = [
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
        println!("{name} {}", best * 1e9 / f64::from(turns) / f64::from(bench::waters()));
    }
}
