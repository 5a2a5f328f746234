//! Do the generator's setting, a season and the effort of replacing turn where they must?

use super::demo::demo;
use chem::{Fraction, Length, Mass, Temperature, Volume};
use evidence::quantities::{chlorine, m3, ppm};
use plan::Typed::{self, Valid};
use plan::operation::{Ahead, OutputInput, SeasonInput, Setting, Warmth, ahead, climb, setting};
use plan::water::drain::{Basis, DrainInput, cap};
use plan::water::effort::{effort, exchange_hours};
use plan::water::treatment::TreatmentInput;
use plan::{Case, Ground, Surface};
use plan::{Flow, Run, Season};

/// 3 mg/L a day in 60 m³ are 180 g; at 15 g/h twelve hours.
fn at_work() -> Case {
    Case {
        volume: Volume::from_cubic_metres(60.0).ok(),
        run: Run { demand: Valid(3.0), makes: Valid(15.0), hours: Valid(24.0) },
        ..demo()
    }
}

fn set(change: fn(&mut Case)) -> Option<Setting> {
    let mut case = at_work();
    change(&mut case);
    setting(&OutputInput::of(&case, case.volume))
}

#[test]
fn a_setting_is_there_once_every_figure_is_above_none() {
    let told = set(|_| {}).unwrap();
    assert_eq!((told.grams, told.full_hours, told.share, told.reserve), (180.0, 12.0, 0.5, 2.0));
    assert!(!told.example && told.range == [0.25, 0.75]);
    let ours = set(|case| case.run.demand = Typed::Missing).unwrap();
    assert!(ours.example && ours.grams == 180.0);
    let without: [fn(&mut Case); 6] = [
        |case| case.run.demand = Valid(0.0),
        |case| case.run.makes = Valid(0.0),
        |case| case.run.hours = Valid(0.0),
        |case| case.run.demand = Typed::Invalid,
        |case| case.run.makes = Typed::Missing,
        |case| case.volume = None,
    ];
    for change in without {
        assert_eq!(set(change), None);
    }
}

/// A day has 24 hours: 180 g at 7.5 g/h fill it, and no more.
#[test]
fn a_day_is_not_more_than_a_day() {
    assert!(!set(|case| case.run.makes = Valid(7.5)).unwrap().is_beyond_a_day());
    assert!(set(|case| case.run.makes = Valid(7.4)).unwrap().is_beyond_a_day());
}

#[test]
fn cold_water_throttles_a_generator_and_stops_it() {
    for (heat, warmth) in [
        (14.9, Warmth::Stopped),
        (15.0, Warmth::Throttled),
        (17.9, Warmth::Throttled),
        (18.0, Warmth::Enough),
    ] {
        let mut case = at_work();
        case.water.temperature = Temperature::from_celsius(heat).ok();
        assert_eq!(setting(&OutputInput::of(&case, case.volume)).unwrap().warmth, Some(warmth), "{heat}");
    }
}

/// From 1 to 4 mg/L in 60 m³ is 180 g, twelve hours; at the goal, or above it, there is nothing to lift.
#[test]
fn chlorine_is_lifted_up_to_its_goal_and_never_down() {
    for (now, lift) in [(1.0, Some(12.0)), (4.0, None), (5.0, None)] {
        let mut case = at_work();
        (case.water.chlorine, case.goals.chlorine) = (Valid(chlorine(now)), Some(chlorine(4.0)));
        assert_eq!(setting(&OutputInput::of(&case, case.volume)).unwrap().lift, lift, "{now}");
    }
}

/// A beginning that is planned leads to a schedule; a moment of switching on that is none, to none.
#[test]
fn no_schedule_is_told_beside_a_moment_that_is_none() {
    let planned = Case { start: Valid(0), ..demo() };
    assert!(plan::plan(&planned).schedule.is_some());
    assert_eq!(plan::plan(&Case { on: Typed::Invalid, ..planned }).schedule, None);
    assert_eq!(plan::plan(&Case { start: Typed::Invalid, ..demo() }).schedule, None);
}

/// A pool on its way to the target needs the acid of one that is there. 0.474 L of acid, 1.16 kg/L with 31.45 % of HCl,
/// are 4.74 mol (36.46 g/mol); in 62.82 m³ they take 0.0755 meq/L of alkalinity, 50.04 mg/L each.
#[test]
fn the_climb_is_that_of_the_water_with_the_salt_in() {
    let target = ppm(3_200.0);
    let acid = |case: Case, target| {
        climb(&TreatmentInput::of(&case), target).map(|climb| (climb.acid, climb.whole)).unwrap()
    };
    let raised = acid(demo(), target);
    assert_eq!(raised, acid(Case { reading: Valid(target), ..demo() }, target));
    assert_ne!(raised, acid(demo(), ppm(400.0)));
    let taken = climb(&TreatmentInput::of(&demo()), target).unwrap().alkalinity;
    assert!((taken - 3.78).abs() < 0.04, "{taken}");
}

#[test]
fn a_figure_typed_begins_its_part() {
    assert!(!Run::default().is_begun() && !Season::default().is_begun());
    let one = Valid(1.0);
    for run in [
        Run { demand: one, ..Run::default() },
        Run { makes: one, ..Run::default() },
        Run { hours: Typed::Invalid, ..Run::default() },
    ] {
        assert!(run.is_begun(), "{run:?}");
    }
    for season in [
        Season { lost: one, ..Season::default() },
        Season { backwash: one, ..Season::default() },
        Season { times: one, ..Season::default() },
        Season { rain: one, ..Season::default() },
    ] {
        assert!(season.is_begun(), "{season:?}");
    }
}

/// A season over a pool of 60 m³, 1.5 m deep, filled up with water without salt.
fn season(season: Season, change: fn(&mut Case)) -> Option<Ahead> {
    let depth = Valid(Length::from_metres(1.5).unwrap());
    let mut case = Case { fill_salt: Some(ppm(0.0)), season, depth, ..at_work() };
    change(&mut case);
    ahead(&SeasonInput::of(&case, case.volume))
}

/// A pool's worth lost leaves one part in e of the salt; a depth of rain does the same, and needs no fill water.
#[test]
fn a_season_takes_by_what_is_lost_and_by_rain() {
    let left = 3_200.0 / core::f64::consts::E;
    let lost = Season { lost: Valid(60.0), ..Season::default() };
    let told = season(lost, |_| {}).unwrap();
    assert!((told.salt.mg_per_l() - left).abs() < 1e-9 && (told.loss - (3_200.0 - left)).abs() < 1e-9);
    let rained = Season { rain: Valid(1.5), ..Season::default() };
    assert!((season(rained, |case| case.fill_salt = None).unwrap().salt.mg_per_l() - left).abs() < 1e-9);
    assert_eq!(season(rained, |case| case.depth = Typed::Missing), None);
    assert_eq!(season(lost, |case| case.fill_salt = None), None);
    assert_eq!(season(Season::default(), |_| {}), None);
    assert_eq!(season(Season { lost: Valid(0.0), rain: Valid(0.0), ..Season::default() }, |_| {}), None);
    // Without rain nobody asks for the depth.
    assert_eq!(season(lost, |case| case.depth = Typed::Missing), Some(told));
    let washed = Season { backwash: Valid(6.0), times: Valid(10.0), ..Season::default() };
    assert_eq!(season(washed, |_| {}).unwrap().salt, told.salt);
    assert_eq!(season(Season { times: Typed::Missing, ..washed }, |_| {}), None);
}

/// What comes to whole bags is so many; what is a hair more is one more. No bag, no number of them.
#[test]
fn bags_for_a_season_are_whole() {
    let bags = |size: f64| {
        let mut case = Case { fill_salt: Some(ppm(0.0)), ..at_work() };
        case.season = Season { lost: Valid(60.0), ..Season::default() };
        case.bag.size = Mass::from_kilograms(size).ok();
        let all = ahead(&SeasonInput::of(&case, case.volume)).unwrap();
        (all.mass.unwrap().kilograms(), all.bags)
    };
    let (mass, _) = bags(20.0);
    assert!((mass - 3.2 * (1.0 - (-1.0_f64).exp()) * 60.0 / 0.994).abs() < 1e-9, "{mass}");
    assert_eq!(bags(mass / 6.0).1.unwrap()[1], 6.0);
    assert_eq!(bags(mass / 6.001).1.unwrap()[1], 7.0);
    assert_eq!(bags(0.0).1, None);
}

#[test]
fn an_exchange_runs_at_the_slower_of_two_flows() {
    let water = m3(12.0);
    let flow = Flow { out: Valid(6.0), in_: Valid(2.0), price: Valid(2.5) };
    let both = effort(&flow, water);
    assert_eq!((both.out, both.in_, both.price), (Some(2.0), Some(6.0), Some(30.0)));
    assert_eq!(exchange_hours(&flow, water), Some(6.0));
    let still = Flow { out: Valid(0.0), ..flow };
    assert_eq!((effort(&still, water).out, exchange_hours(&still, water)), (None, Some(6.0)));
    assert_eq!(exchange_hours(&Flow::default(), water), None);
}

/// A hand-span of 0.2 m off the depth, where that is not all of it; a third over cement on low ground water; 15 %
/// where nothing is known; the owner's own if it is smaller.
#[test]
fn the_cap_goes_by_what_is_known_best() {
    let known = |depth: Option<f64>, surface, ground, own: Option<f64>| {
        let case = Case {
            depth: depth.map_or(Typed::Missing, |x| Valid(Length::from_metres(x).unwrap())),
            surface,
            ground,
            cap: own.map_or(Typed::Missing, |x| Valid(Fraction::from_ratio(x).unwrap())),
            ..Case::default()
        };
        let cap = cap(&DrainInput::of(&case)).unwrap();
        (cap.share.ratio(), cap.basis, cap.owner_larger)
    };
    let (cement, low) = (Some(Surface::Cement), Some(Ground::Low));
    assert_eq!(known(None, None, None, None), (0.15, Basis::Careful, false));
    assert_eq!(known(Some(2.0), None, None, None), (0.1, Basis::Depth, false));
    assert_eq!(known(Some(0.2), None, None, None), (0.15, Basis::Careful, false));
    assert_eq!(known(Some(2.0), cement, low, None), (1.0 / 3.0, Basis::Cement, false));
    assert_eq!(known(Some(2.0), cement, Some(Ground::High), None), (0.1, Basis::Depth, false));
    assert_eq!(known(Some(2.0), Some(Surface::Tile), low, None), (0.1, Basis::Depth, false));
    assert_eq!(known(None, None, None, Some(0.1)), (0.1, Basis::Owner, false));
    assert_eq!(known(None, None, None, Some(0.15)), (0.15, Basis::Careful, false));
    assert_eq!(known(None, None, None, Some(0.2)), (0.15, Basis::Careful, true));
    assert!(cap(&DrainInput { depth: Typed::Invalid, ..DrainInput::default() }).is_none());
}
