//! What becomes of many pools if people do as they are told? Says a table, and holds it against the
//! reference simulation within four standard errors.
//!
//! The daily test takes few pools, and tells no more than that nothing is far off: of 120 pools a part of 3.6 %
//! might go astray unseen. `cargo xtask prove simulation` takes 200,000, and some minutes.

mod pool;
mod ways;

use pool::{Pool, Stress};
use ways::{Way, salted};

/// How often, and how sure that is.
#[derive(Clone, Copy)]
struct Share {
    mean: f64,
    error: f64,
}

/// What became of all pools; those that began above the high limit are nobody's doing.
struct Tally {
    overshoot: Share,
    in_band: Share,
    visits: Share,
}

fn run(pools: usize, way: Way, cap: f64, stress: Stress) -> Tally {
    let threads = std::thread::available_parallelism().map_or(1, |n| n.get());
    // Whole numbers, so that the tally does not depend on who counted what.
    let count = |from: usize| {
        let mut sums = [0usize; 5];
        for pool in (from..pools).step_by(threads).map(Pool::draw) {
            let [low, _, high] = pool.band;
            if pool.start > high {
                continue;
            }
            let end = salted(&pool, way, cap, stress);
            let over = end.salt > high;
            let within = !over && end.salt >= low;
            let found = [1, usize::from(over), usize::from(within), end.visits, end.visits * end.visits];
            sums.iter_mut().zip(found).for_each(|(sum, x)| *sum += x);
        }
        sums
    };
    let sums = std::thread::scope(|scope| {
        let hands: Vec<_> = (0..threads).map(|from| scope.spawn(move || count(from))).collect();
        hands.into_iter().map(|hand| hand.join().unwrap()).fold([0; 5], |mut all, sums| {
            all.iter_mut().zip(sums).for_each(|(all, sum)| *all += sum);
            all
        })
    });
    let [n, over, within, visits, squares] = sums.map(|x| x as f64);
    let part = |x: f64| Share { mean: x / n, error: (x / n * (1.0 - x / n) / n).sqrt() };
    let mean = visits / n;
    let visits = Share { mean, error: ((squares / n - mean * mean).max(0.0) / n).sqrt() };
    Tally { overshoot: part(over), in_band: part(within), visits }
}

/// A line of the reference, which had 200,000 pools.
struct Line {
    stress: Stress,
    way: Way,
    cap: f64,
    tally: [f64; 3],
}

const THEIR_POOLS: f64 = 200_000.0;

fn reference() -> Vec<Line> {
    let lines = include_str!("reference.csv").lines().skip(2);
    let line = |line: &str| {
        let cells: Vec<_> = line.split(',').collect();
        let number = |at: usize| cells[at].parse::<f64>().unwrap();
        let stress = match cells[0] {
            "none" => Stress::None,
            "calibration" => Stress::Calibration,
            "smaller" => Stress::Smaller,
            "undissolved" => Stress::Undissolved,
            "slips" => Stress::Slips,
            other => panic!("no stress {other}"),
        };
        let ways = [Way::A, Way::B, Way::C, Way::D, Way::P, Way::M, Way::F, Way::Page];
        let way = ways.into_iter().find(|way| format!("{way:?}") == cells[1]).unwrap();
        Line { stress, way, cap: number(2), tally: [number(3), number(4), number(5)] }
    };
    lines.map(line).collect()
}

fn words(way: Way) -> &'static str {
    match way {
        Way::A => "A: all at once, starting salt taken as zero",
        Way::B => "B: all at once from a measured start",
        Way::C => "C: two thirds, then the rest of the first sum",
        Way::D => "D: two thirds, then by volume",
        Way::P => "P: two thirds, then by proportion",
        Way::M => "M: two thirds, then the smaller of both",
        Way::F => "F: by the estimate, half bags later",
        Way::Page => "the page: as F, weighed where bags are too coarse",
    }
}

fn stressed(stress: Stress) -> &'static str {
    match stress {
        Stress::None => "as assumed",
        Stress::Calibration => "calibration errors 1.6 times as large",
        Stress::Smaller => "volumes 7 % smaller",
        Stress::Undissolved => "four times as much undissolved",
        Stress::Slips => "3 % of readings 25 % low",
    }
}

/// Compares with every line of the reference; says the table.
fn hold(pools: usize) {
    println!(
        "| Way | Cap | What is so | Passes the high limit | Visits | Ends in the band |\n|---|---|---|---|---|---|"
    );
    let (mut beyond, mut largest) = (Vec::new(), 0.0f64);
    let say = |way: Way, cap: f64, stress: Stress, tally: &Tally| {
        let [over, within] = [tally.overshoot, tally.in_band].map(|share| share.mean * 100.0);
        let visits = tally.visits.mean;
        let stress = stressed(stress);
        println!("| {} | {cap} | {stress} | {over:.2} % | {visits:.2} | {within:.1} % |", words(way));
    };
    for Line { stress, way, cap, tally: theirs } in reference() {
        let ours = run(pools, way, cap, stress);
        say(way, cap, stress, &ours);
        let columns = [("overshoot", ours.overshoot), ("visits", ours.visits), ("in band", ours.in_band)];
        for ((column, ours), theirs) in columns.into_iter().zip(theirs) {
            // Theirs is as sure as ours would be with as many pools; one pool is the least that counts.
            let sure = ours.error.max(1.0 / pools as f64);
            let both = sure * (1.0 + pools as f64 / THEIR_POOLS).sqrt();
            let off = (ours.mean - theirs) / both;
            largest = largest.max(off.abs());
            if off.abs() > 4.0 {
                let mean = ours.mean;
                beyond.push(format!(
                    "{way:?} {cap} {stress:?} {column}: ours {mean}, theirs {theirs}, {off:.1} errors"
                ));
            }
        }
    }
    println!("\nLargest difference from the reference: {largest:.1} standard errors.");
    assert!(beyond.is_empty(), "beyond four standard errors:\n{}", beyond.join("\n"));
}

#[test]
fn many_pools_end_as_in_the_reference() {
    hold(std::env::var("SALTWRIGHT_POOLS").map_or(120, |pools| pools.parse().unwrap()));
}
