//! Do gates, bands and what is told of a water turn where they must?

use super::demo::demo;
use chem::*;
use evidence::quantities::{chlorine, kg, ppm};
use plan::Ruling;
use plan::Verdict::{Exception, Pass, Stop, Unknown, Wait};
use plan::log::{Entry, LogEvent, MOST_ENTRIES};
use plan::{
    Band, BandError, Case, Gate, Go, Goals, Instrument, Location, Surface, Tests, Typed, Undissolved,
    Verdict, YesNo, plan,
};

fn says(case: &Case, gate: Gate) -> Verdict {
    plan(case).gates.at(gate)
}

/// A gate, what is set in the case, and what it must say of each figure.
type Turns<'a> = (Gate, fn(&mut Case, f64), &'a [(f64, Verdict)]);

/// From both sides: stops, waits, passes, passes, waits, stops.
const fn band(least: f64, low: f64, high: f64, most: f64, hair: f64) -> [(f64, Verdict); 8] {
    [
        (least - hair, Stop),
        (least, Wait),
        (low - hair, Wait),
        (low, Pass),
        (high, Pass),
        (high + hair, Wait),
        (most, Wait),
        (most + hair, Stop),
    ]
}

#[test]
fn each_gate_turns_on_its_limit() {
    let cyanurate = |case: &mut Case, x| case.water.cyanuric_acid = CyanuricAcid::from_mg_per_l(x).ok();
    let indoors = |case: &mut Case, x| {
        (case.water.cyanuric_acid, case.ready.place) =
            (CyanuricAcid::from_mg_per_l(x).ok(), Some(Location::Indoor));
    };
    let hardness = |case: &mut Case, x| case.water.hardness = Hardness::from_mg_per_l(x).ok();
    let on_a_liner = |case: &mut Case, x| {
        (case.water.hardness, case.surface) = (Hardness::from_mg_per_l(x).ok(), Some(Surface::Vinyl));
    };
    let free = |case: &mut Case, x| case.water.chlorine = Typed::Valid(chlorine(x));
    let bare = |case: &mut Case, x| {
        case.water.chlorine = Typed::Valid(chlorine(x));
        case.water.cyanuric_acid = CyanuricAcid::from_mg_per_l(0.0).ok();
    };
    let shaded = |case: &mut Case, x| {
        case.water.chlorine = Typed::Valid(chlorine(x));
        case.water.cyanuric_acid = CyanuricAcid::from_mg_per_l(120.0).ok();
    };
    let wanted = |case: &mut Case, x| {
        (case.water.chlorine, case.goals.chlorine) = (Typed::Valid(chlorine(x)), Some(chlorine(8.0)));
    };
    let swum = |case: &mut Case, x| {
        (case.water.chlorine, case.ready.swum) = (Typed::Valid(chlorine(x)), Some(YesNo::Yes));
    };
    let all: &[Turns] = &[
        (Gate::Ph, |case, x| case.water.ph = Ph::from_units(x).ok(), &band(7.0, 7.2, 7.6, 8.0, 0.01)),
        (
            Gate::Temperature,
            |case, x| case.water.temperature = Temperature::from_celsius(x).ok(),
            &[(17.9, Wait), (18.0, Pass)],
        ),
        (
            Gate::Alkalinity,
            |case, x| case.water.alkalinity = Alkalinity::from_mg_per_l(x).ok(),
            &band(40.0, 60.0, 120.0, 200.0, 0.1),
        ),
        (Gate::Hardness, hardness, &band(100.0, 200.0, 400.0, 1_000.0, 0.1)),
        (Gate::Hardness, on_a_liner, &band(0.0, 50.0, 300.0, 1_000.0, 0.1)[1..]),
        (Gate::CyanuricAcid, cyanurate, &[(90.0, Pass), (90.1, Wait)]),
        (Gate::CyanuricAcidBand, cyanurate, &[(29.9, Wait), (30.0, Pass), (50.0, Pass), (50.1, Wait)]),
        (Gate::CyanuricAcidBand, indoors, &[(0.0, Pass), (0.1, Wait)]),
        // A twentieth of the cyanuric acid, but two at least: of 40 it is two; of 120 six, above the label's five.
        (Gate::Chlorine, free, &[(0.0, Wait), (1.99, Wait), (2.0, Pass), (5.0, Pass), (5.01, Wait)]),
        (Gate::Chlorine, bare, &[(0.99, Wait), (1.0, Pass), (5.0, Pass), (5.01, Wait)]),
        (Gate::Chlorine, shaded, &[(5.99, Wait), (6.0, Pass), (6.01, Wait)]),
        (Gate::Chlorine, wanted, &[(8.0, Pass), (8.01, Wait)]),
        (Gate::Chlorine, swum, &[(0.0, Stop), (0.1, Wait)]),
        (
            Gate::Combined,
            |case, x| case.ready.combined = Typed::Valid(x),
            &[(0.4, Pass), (0.41, Wait), (1.0, Wait), (1.01, Stop)],
        ),
        (
            Gate::Copper,
            |case, x| case.ready.copper = Typed::Valid(x),
            &[(0.19, Pass), (0.2, Wait), (0.5, Wait), (0.51, Stop)],
        ),
        (
            Gate::Iron,
            |case, x| case.ready.iron = Typed::Valid(x),
            &[(0.19, Pass), (0.2, Wait), (0.3, Wait), (0.31, Stop)],
        ),
        (
            Gate::FinishAge,
            |case, days| case.ready.finish = Typed::Valid(20_000 - days as i64),
            &[(29.0, Wait), (30.0, Pass)],
        ),
    ];
    for (gate, set, turns) in all {
        for (figure, must) in *turns {
            let mut case = demo();
            set(&mut case, *figure);
            assert_eq!(says(&case, *gate), *must, "{gate:?} at {figure}");
        }
    }
}

/// Judged as it is shown, with two decimals: it passes up to 0.30 either way and stops beyond 0.50.
#[test]
fn the_index_turns_on_its_limits() {
    let mut seen = Vec::new();
    for step in 0..=2_000 {
        let mut case = demo();
        case.water.ph = Ph::from_units(6.9 + 0.001 * f64::from(step)).ok();
        let plan = plan(&case);
        let Some(judged) = plan.balance.ok().and_then(|balance| balance.judged()) else {
            assert_eq!(plan.gates.at(Gate::Index), Unknown);
            continue;
        };
        let hundredths = (100.0 * judged.log10()).round() as i32;
        let must = match hundredths.abs() {
            0..=30 => Pass,
            31..=50 => Wait,
            _ => Stop,
        };
        assert_eq!(plan.gates.at(Gate::Index), must, "{hundredths}");
        seen.push(hundredths);
    }
    for limit in [-51, -50, -31, -30, 30, 31, 50, 51] {
        assert!(seen.contains(&limit), "no water has {limit}");
    }
}

#[test]
fn a_reading_and_the_last_salt_age_to_the_minute() {
    const DAY: i64 = 1_440;
    for (age, must) in [
        (-61, Unknown), // Nobody reads tomorrow, but watches differ.
        (-60, Pass),
        (7 * DAY, Pass),
        (7 * DAY + 1, Wait),
        (30 * DAY, Wait),
        (30 * DAY + 1, Stop),
    ] {
        let case = Case { now: Some(age), read_at: Typed::Valid(0), ..demo() };
        assert_eq!(says(&case, Gate::ReadingAge), must, "{age} minutes");
    }
    let mut log = [None; MOST_ENTRIES];
    log[0] = Some(Entry { when: 0, what: LogEvent::Dose(kg(120.0)) });
    for (now, grains, must) in [
        (Some(2 * DAY - 1), Some(Undissolved::None), Wait),
        (Some(2 * DAY), Some(Undissolved::None), Pass),
        (Some(2 * DAY), Some(Undissolved::Some), Stop),
        (Some(2 * DAY), None, Unknown),
        (None, Some(Undissolved::None), Unknown),
    ] {
        let mut case = Case { now, log: Typed::Valid(log), ..demo() };
        case.ready.grains = grains;
        assert_eq!(says(&case, Gate::Clock), must, "{now:?} {grains:?}");
    }
    assert_eq!(says(&demo(), Gate::Clock), Pass, "nothing went in");
}

/// By what was read last, once nothing more is to go in; what was put in since is not read yet.
#[test]
fn the_level_passes_between_the_limits_and_not_beyond() {
    for (salt, must) in [(400.0, Wait), (2_799.9, Wait), (3_200.0, Pass), (3_600.1, Stop), (9_000.0, Stop)] {
        let case = Case { reading: Typed::Valid(ppm(salt)), instrument: Some(Instrument::Lab), ..demo() };
        assert_eq!(says(&case, Gate::Level), must, "{salt}");
    }
    let mut log = [None; MOST_ENTRIES];
    log[0] = Some(Entry { when: 0, what: LogEvent::Dose(kg(1.0)) });
    let salted = Case { reading: Typed::Valid(ppm(3_200.0)), log: Typed::Valid(log), ..demo() };
    assert_eq!(says(&salted, Gate::Level), Wait, "not read since");
    assert_eq!(says(&Case { reading: Typed::Missing, ..demo() }, Gate::Level), Unknown);
}

/// A refusal of the finish gives way to a release of its own day or later; a word counts from its own day on.
#[test]
fn a_word_counts_from_its_day_on() {
    for (released, must) in [(19_989, Stop), (19_990, Exception), (20_000, Exception), (20_001, Stop)] {
        let mut case = demo();
        (case.ready.word, case.ready.word_day) = (Some(plan::Approval::Refused), Some(19_990));
        case.ready.rulings.clearance = Ruling { named: true, day: Typed::Valid(released) };
        assert_eq!(says(&case, Gate::Clearance), must, "released on day {released}");
    }
    for (day, named, must) in [(20_000, true, Pass), (20_001, true, Unknown), (20_000, false, Unknown)] {
        let mut case = demo();
        (case.ready.word, case.ready.word_day) = (Some(plan::Approval::InHand), Some(day));
        case.ready.word_named = named;
        assert_eq!(says(&case, Gate::Clearance), must, "cleared on day {day}");
    }
}

#[test]
fn pump_and_metals_are_judged_with_what_goes_with_them() {
    use plan::{Running, Sanitizer};
    for (full, running, must) in [
        (Some(YesNo::Yes), Some(Running::Yes), Pass),
        (Some(YesNo::Yes), Some(Running::Less), Wait),
        (Some(YesNo::No), Some(Running::Yes), Wait),
        (Some(YesNo::No), None, Wait),
        (Some(YesNo::No), Some(Running::Broken), Stop),
        (Some(YesNo::Yes), None, Unknown),
        (None, Some(Running::Yes), Unknown),
    ] {
        let mut case = demo();
        (case.ready.full, case.ready.running) = (full, running);
        assert_eq!(says(&case, Gate::Running), must, "{full:?} {running:?}");
    }
    let given = Typed::Valid(0.0);
    for (copper, iron, must) in
        [(given, given, Pass), (given, Typed::Missing, Wait), (Typed::Missing, given, Wait)]
    {
        let mut case = demo();
        case.ready.treated = Some(Sanitizer::CopperSilver);
        (case.ready.copper, case.ready.iron) = (copper, iron);
        assert_eq!(says(&case, Gate::PreviousSanitizer), must, "{copper:?} {iron:?}");
    }
}

#[test]
fn a_band_is_filled_in_and_contradicts_itself_on_equal_limits() {
    let given = |x| Some(ppm(x));
    let limits = |target| {
        let band = Band::of(None, given(target), None).unwrap();
        (band.low.mg_per_l(), band.high.mg_per_l())
    };
    assert_eq!(limits(3_200.0), (2_800.0, 3_600.0));
    assert_eq!(limits(800.0), (400.0, 1_200.0));
    assert_eq!(limits(600.0), (300.0, 1_000.0)); // Half of it, not 200.
    let most = Salinity::MOST.mg_per_l();
    assert_eq!(limits(most - 100.0), (most - 500.0, most));
    let example = Band::of(None, None, None).unwrap();
    assert!(example.example && example.limits_ours && !example.is_unusual());
    for (low, high, ours) in
        [(None, given(3_600.0), true), (given(2_800.0), None, true), (given(2_800.0), given(3_600.0), false)]
    {
        assert_eq!(Band::of(low, given(3_200.0), high).unwrap().limits_ours, ours, "{low:?} {high:?}");
    }
    assert_eq!(Band::of(given(3_000.0), given(3_000.0), None), Err(BandError::LowNotBelow));
    assert_eq!(Band::of(None, given(3_000.0), given(3_000.0)), Err(BandError::HighNotAbove));
    for (target, unusual) in [(999.0, true), (1_000.0, false), (8_000.0, false), (8_001.0, true)] {
        assert_eq!(Band::of(None, given(target), None).unwrap().is_unusual(), unusual, "{target}");
    }
}

#[test]
fn a_slip_of_a_unit_is_asked_about_below_twenty() {
    for (salt, rare) in [(0.0, false), (0.1, true), (19.9, true), (20.0, false)] {
        let case = Case { reading: Typed::Valid(ppm(salt)), ..demo() };
        assert_eq!(case.reading_is_rare(), rare, "{salt}");
    }
}

/// The days that have a date: plaster's thirtieth, tomorrow for the pump, the steps' hours in whole days.
#[test]
fn the_earliest_day_is_the_last_of_the_waits() {
    let earliest = |change: fn(&mut Case)| {
        let mut case = demo();
        change(&mut case);
        plan(&case).earliest.map(|day| day - 20_000)
    };
    assert_eq!(earliest(|_| {}), None);
    assert_eq!(earliest(|case| case.ready.finish = Typed::Valid(19_980)), Some(10));
    assert_eq!(earliest(|case| case.ready.full = Some(YesNo::No)), Some(1));
    // Cyanuric acid for 72 hours and calcium for 24; acid for four.
    let minerals = |case: &mut Case| {
        case.goals.hardness = Hardness::from_mg_per_l(300.0).ok();
        case.goals.cyanuric_acid = CyanuricAcid::from_mg_per_l(60.0).ok();
    };
    assert_eq!(earliest(minerals), Some(4));
    assert_eq!(earliest(|case| case.goals.ph = Ph::from_units(7.2).ok()), Some(1));
    assert_eq!(earliest(|case| case.goals.ph = case.water.ph), None, "a goal that is met takes no time");
    assert_eq!(earliest(|case| (case.today, case.ready.full) = (None, Some(YesNo::No))), None);
}

/// Every figure there, nothing answered: asked, not told. A choice that is none of its list is never passed.
#[test]
fn without_an_answer_salt_waits_for_it() {
    let go = |case: Case| plan(&case).go;
    assert_eq!(go(demo()), Go::Ask);
    assert_eq!(go(Case { unlisted: true, ..demo() }), Go::CantSay);
    assert_eq!(go(Case { volume: None, ..demo() }), Go::CantSay);
    assert_eq!(go(Case { water: Tests { ph: None, ..demo().water }, ..demo() }), Go::CantSay);
    let heat = Temperature::from_celsius(10.0).ok();
    assert_eq!(go(Case { water: Tests { temperature: heat, ..demo().water }, ..demo() }), Go::NotYet);
    let enough = Case { reading: Typed::Valid(ppm(3_200.0)), instrument: Some(Instrument::Lab), ..demo() };
    assert_eq!(go(enough), Go::Nothing);
    assert_eq!(go(Case { instrument: Some(Instrument::Display), ..enough }), Go::NotYet);
    assert_eq!(go(Case { reading: Typed::Valid(ppm(9_000.0)), ..enough }), Go::No);
}

/// No goal, no treatment; each by itself is one.
#[test]
fn each_goal_is_a_goal() {
    assert!(!Goals::default().are_any());
    let sets: [fn(&mut Goals); 5] = [
        |g| g.ph = Ph::from_units(7.4).ok(),
        |g| g.alkalinity = Alkalinity::from_mg_per_l(100.0).ok(),
        |g| g.hardness = Hardness::from_mg_per_l(250.0).ok(),
        |g| g.cyanuric_acid = CyanuricAcid::from_mg_per_l(40.0).ok(),
        |g| g.chlorine = Some(chlorine(3.0)),
    ];
    for set in sets {
        let mut goals = Goals::default();
        set(&mut goals);
        assert!(goals.are_any(), "{goals:?}");
    }
}
