//! Do a setting and a season agree with themselves? Laws of both, over many drawn pools.

use chem::*;
use evidence::draw::Draw;
use plan::operation::{OutputInput, SeasonInput, ahead, setting};
use plan::{Band, Case, Typed};
use plan::{Run, Season};

/// Hours at full output times what it makes are the demand times the pool; a longer day of the pump never asks for
/// more, and what is more than full is told as such.
#[test]
fn a_setting_makes_what_the_pool_uses_and_a_longer_pump_day_never_raises_it() {
    let mut d = Draw(11);
    for _ in 0..5_000 {
        let [size, demand, makes, hours] =
            [d.between(1.0, 2_000.0), d.between(0.1, 20.0), d.between(1.0, 2_000.0), d.between(0.2, 23.0)];
        let at = |hours| {
            let given = Typed::Valid;
            let run = Run { demand: given(demand), makes: given(makes), hours: given(hours) };
            let volume = Volume::from_cubic_metres(size).ok();
            setting(&OutputInput { volume, run, ..OutputInput::default() }).unwrap()
        };
        let (short, long) = (at(hours), at(hours + 1.0));
        assert!((short.full_hours * makes / (demand * size) - 1.0).abs() < 1e-12, "{short:?}");
        assert!(
            (short.share * hours - long.share * (hours + 1.0)).abs() < 1e-9 * short.full_hours,
            "{short:?}"
        );
        assert!(long.share < short.share && long.reserve > short.reserve, "{short:?} {long:?}");
        assert!(short.range[0] < short.share && short.share < short.range[1], "{short:?}");
        assert!((short.reserve * short.share - 1.0).abs() < 1e-12, "{short:?}");
        assert!(!short.is_beyond_a_day() || short.share > 1.0, "a pump runs no longer than a day: {short:?}");
    }
}

/// More water lost never leaves more salt than less, and never less than the fill water's; twice half a season is
/// one; backwash is a loss like any other.
#[test]
fn a_season_only_takes_and_the_more_the_longer() {
    let mut d = Draw(12);
    for _ in 0..5_000 {
        let size = d.between(5.0, 1_000.0);
        let fill = d.between(0.0, 900.0);
        let target = d.between(1_500.0, 6_000.0);
        let end = |from: f64, season| {
            let case = Case {
                volume: Volume::from_cubic_metres(size).ok(),
                band: Band::of(None, Salinity::from_mg_per_l(from).ok(), None).ok(),
                fill_salt: Salinity::from_mg_per_l(fill).ok(),
                depth: plan::Typed::Valid(Length::from_metres(1.5).unwrap()),
                season,
                ..Case::default()
            };
            ahead(&SeasonInput::of(&case, case.volume)).unwrap().salt.mg_per_l()
        };
        let given = Typed::Valid;
        let water = d.between(0.01, 2.0) * size;
        let once = end(target, Season { lost: given(water), ..Season::default() });
        let more = end(target, Season { lost: given(1.1 * water), ..Season::default() });
        assert!(fill < more && more < once && once < target, "{fill} {more} {once} {target}");
        let half = end(target, Season { lost: given(0.5 * water), ..Season::default() });
        let halves = end(half, Season { lost: given(0.5 * water), ..Season::default() });
        assert!((halves - once).abs() < 1e-9 * target, "{halves} {once}");
        let backwash = Season { backwash: given(water / 8.0), times: given(8.0), ..Season::default() };
        assert!((end(target, backwash) - once).abs() < 1e-9 * target, "{once}");
        let rained = end(target, Season { lost: given(water), rain: given(0.1), ..Season::default() });
        assert!(rained < once, "{rained} {once}");
    }
}
