//! Do the shapes keep the laws of geometry, and refuse what contradicts itself?

extern crate std;
use super::*;
use std::vec::Vec;

const FOOT: f64 = 0.3048;

fn m(x: f64) -> Length {
    Length::from_metres(x).unwrap()
}

fn list(all: &[f64]) -> Measures {
    let mut list = Measures::NONE;
    assert!(all.iter().all(|x| list.push(m(*x))));
    list
}

fn pool(outline: Outline, floor: Floor) -> Pool {
    Pool { outline, floor, wing: None, ledge: None, steps: None, less: Volume::NONE, spa: Volume::NONE }
}

fn water(outline: Outline, floor: Floor) -> f64 {
    pool(outline, floor).size().unwrap().volume.cubic_metres()
}

/// Every edge over every floor that goes with it, all measures times `k`.
fn all(k: f64) -> Vec<Pool> {
    let m = |x: f64| m(x * k);
    let two = |a, b| [m(a), m(b)];
    let outlines = [
        Outline::Rectangle(two(10.0, 5.0)),
        Outline::Round(m(7.0)),
        Outline::Ellipse(two(10.0, 5.0)),
        Outline::Stadium(two(10.0, 5.0)),
        Outline::Kidney(m(10.0), two(4.0, 6.0)),
        Outline::Offsets(m(1.5), list(&[0.0, 3.0 * k, 5.0 * k, 4.0 * k, 2.0 * k])),
        Outline::Offsets(m(1.5), list(&[1.0 * k, 3.0 * k, 5.0 * k, 4.0 * k])),
    ];
    let floors = [
        Floor::Level(m(1.5)),
        Floor::Slope(two(1.0, 2.0)),
        Floor::Break(two(1.0, 2.0), two(1.5, 2.0)),
        Floor::Hopper(two(1.0, 2.5), m(3.0), two(2.0, 2.0)),
    ];
    let pools = outlines.into_iter().flat_map(|o| floors.into_iter().map(move |f| pool(o, f)));
    pools.filter(|p| !matches!(p.size(), Err(ShapeError::OtherFloor))).collect()
}

#[test]
fn twice_as_large_is_eight_times_the_water() {
    assert_eq!(all(1.0).len(), 7 * 3 - 1 + 1); // No break under a kidney, a hopper under a rectangle alone.
    for (one, two) in all(1.0).iter().zip(all(2.0)) {
        let [one_size, two] = [one.size().unwrap(), two.size().unwrap()];
        let ratio = two.volume.cubic_metres() / one_size.volume.cubic_metres();
        assert!((ratio - 8.0).abs() < 1e-9, "{one:?}: {ratio}");
        assert!((two.depth.metres() / one_size.depth.metres() - 2.0).abs() < 1e-9, "{one:?}");
    }
}

#[test]
fn what_is_taken_off_never_adds() {
    for bare in all(1.0) {
        let whole = bare.size().unwrap().volume;
        let ledge = Ledge { area: Area::from_square_metres(2.0).unwrap(), water: m(0.2), around: m(1.0) };
        let steps = Steps { width: m(2.0), tread: m(0.3), heights: list(&[0.9, 0.6, 0.3]) };
        for less in [
            Pool { ledge: Some(ledge), ..bare },
            Pool { steps: Some(steps), ..bare },
            Pool { less: Volume::from_cubic_metres(0.5).unwrap(), ..bare },
        ] {
            let off = whole.cubic_metres() - less.size().unwrap().volume.cubic_metres();
            assert!(off > 0.4 && off < 2.0, "{less:?}: {off}");
        }
        let more = Pool { spa: Volume::from_cubic_metres(3.0).unwrap(), ..bare }.size().unwrap();
        assert!((more.volume.cubic_metres() - whole.cubic_metres() - 3.0).abs() < 1e-9);
        assert_eq!(more.depth, bare.size().unwrap().depth);
    }
}

#[test]
fn simpson_is_exact_on_a_parabola() {
    let (n, gap) = (8, 1.25);
    let long = gap * f64::from(n);
    let widths: Vec<_> = (0..=n).map(|i| f64::from(i) * gap).map(|x| 0.2 * x * (long - x)).collect();
    let edge = Outline::Offsets(m(gap), list(&widths));
    let size = pool(edge, Floor::Level(m(1.0))).size().unwrap();
    let (trapezoid, simpson) = size.offsets.unwrap();
    let exact = 0.2 * long.powi(3) / 6.0;
    assert!((simpson.unwrap().square_metres() - exact).abs() < 1e-9 * exact);
    assert!(trapezoid.square_metres() < 0.99 * exact);
    assert_eq!(size.area, simpson.unwrap());
    let odd = pool(Outline::Offsets(m(gap), list(&widths[..8])), Floor::Level(m(1.0))).size().unwrap();
    assert_eq!(odd.offsets.unwrap(), (odd.area, None));
}

/// By hand, at depths that lie on a line: 2/3 m of 1, 4, 2, 4, 1 times the sections, or 2 m of half, one, one, half.
#[test]
fn sections_are_weighed_with_the_depth_where_they_stand() {
    let five = Outline::Offsets(m(2.0), list(&[3.0, 5.0, 6.0, 6.0, 4.0]));
    let four = Outline::Offsets(m(2.0), list(&[3.0, 5.0, 6.0, 4.0]));
    for (edge, floor, by_hand) in [
        (five, Floor::Level(m(1.0)), 42.0),
        (five, Floor::Slope([m(1.0), m(2.0)]), 64.0),
        (five, Floor::Break([m(1.0), m(2.0)], [m(2.0), m(4.0)]), 97.0 / 1.5),
        (four, Floor::Level(m(1.0)), 29.0),
        (four, Floor::Slope([m(1.0), m(2.5)]), 52.0),
    ] {
        assert!((water(edge, floor) - by_hand).abs() < 1e-9, "{edge:?} {floor:?}");
    }
}

#[test]
fn a_wing_is_water_and_surface() {
    let main = pool(Outline::Rectangle([m(8.0), m(4.0)]), Floor::Level(m(1.5)));
    let size = Pool { wing: Some([m(3.0), m(2.0), m(1.0)]), ..main }.size().unwrap();
    assert_eq!((size.area.square_metres(), size.volume.cubic_metres()), (38.0, 54.0));
    assert_eq!(list(&[1.0, 2.0, 6.0]).mean(), Some(m(3.0)));
}

#[test]
fn an_oval_in_a_box_is_smaller_than_the_box() {
    let sides = [m(10.0), m(5.0)];
    for floor in [Floor::Level(m(1.5)), Floor::Break([m(1.0), m(2.0)], [m(3.0), m(3.0)])] {
        let [e, s, r] =
            [Outline::Ellipse, Outline::Stadium, Outline::Rectangle].map(|o| water(o(sides), floor));
        assert!(e < s && s < r, "{e} {s} {r}");
    }
    // As wide as long, both ovals are the round.
    let square = [m(7.0), m(7.0)];
    let floor = Floor::Break([m(1.0), m(2.0)], [m(2.0), m(1.0)]);
    let [a, b, c] =
        [Outline::Ellipse(square), Outline::Stadium(square), Outline::Round(m(7.0))].map(|o| water(o, floor));
    assert!((a - b).abs() < 1e-9 && (b - c).abs() < 1e-9);
}

/// A break that is none is a level floor, and one that is all slope is a slope: the strips give what the closed
/// forms give.
#[test]
fn strips_give_what_the_formulas_give() {
    for edge in
        [Outline::Round(m(7.0)), Outline::Ellipse([m(10.0), m(5.0)]), Outline::Stadium([m(10.0), m(5.0)])]
    {
        let two = [m(1.0), m(2.0)];
        let slope = water(edge, Floor::Break(two, [m(0.0), m(edge.length())]));
        assert!((slope / water(edge, Floor::Slope(two)) - 1.0).abs() < 2e-5, "{edge:?}");
        let level = water(edge, Floor::Break([m(2.0); 2], [m(1.0), m(1.0)]));
        assert!((level / water(edge, Floor::Level(m(2.0))) - 1.0).abs() < 2e-5, "{edge:?}");
    }
}

#[test]
fn a_hopper_holds_less_than_the_same_pool_with_upright_sides() {
    let edge = Outline::Rectangle([m(10.0), m(5.0)]);
    let depths = [m(1.0), m(2.5)];
    let hopper = |pad| water(edge, Floor::Hopper(depths, m(4.0), pad));
    assert!(hopper([m(2.0), m(2.0)]) < water(edge, Floor::Break(depths, [m(4.0), m(2.0)])));
    // A pad as large as the top leaves nothing narrower.
    assert!((hopper([m(6.0), m(5.0)]) - water(edge, Floor::Break(depths, [m(4.0), m(0.0)]))).abs() < 1e-9);
}

#[test]
fn what_contradicts_itself_is_refused() {
    let edge = Outline::Rectangle([m(10.0), m(5.0)]);
    let two = |a, b| [m(a), m(b)];
    let level = Floor::Level(m(1.5));
    let ledge = |water, around, area| Pool {
        ledge: Some(Ledge {
            area: Area::from_square_metres(area).unwrap(),
            water: m(water),
            around: m(around),
        }),
        ..pool(edge, level)
    };
    for (pool, fault) in [
        (pool(edge, Floor::Slope(two(2.0, 1.0))), ShapeError::NotDeeper),
        (pool(edge, Floor::Break(two(1.0, 2.0), two(6.0, 5.0))), ShapeError::TooLong),
        (pool(edge, Floor::Hopper(two(1.0, 2.0), m(10.0), two(1.0, 1.0))), ShapeError::TooLong),
        (pool(edge, Floor::Hopper(two(1.0, 2.0), m(6.0), two(4.5, 1.0))), ShapeError::PadTooLarge),
        (pool(edge, Floor::Hopper(two(1.0, 2.0), m(6.0), two(1.0, 5.5))), ShapeError::PadTooLarge),
        (pool(Outline::Stadium(two(5.0, 6.0)), level), ShapeError::WiderThanLong),
        (
            pool(Outline::Round(m(5.0)), Floor::Hopper(two(1.0, 2.0), m(2.0), two(1.0, 1.0))),
            ShapeError::OtherFloor,
        ),
        (
            pool(Outline::Kidney(m(9.0), two(4.0, 5.0)), Floor::Break(two(1.0, 2.0), two(2.0, 2.0))),
            ShapeError::OtherFloor,
        ),
        (pool(Outline::Offsets(m(1.0), list(&[1.0, 2.0])), level), ShapeError::TooFew),
        (pool(Outline::Offsets(m(1.0), Measures::NONE), Floor::Slope(two(1.0, 2.0))), ShapeError::TooFew),
        (ledge(1.0, 1.0, 4.0), ShapeError::NoLedge),
        (ledge(0.2, 1.0, 51.0), ShapeError::LedgeTooLarge),
        (Pool { less: Volume::from_cubic_metres(75.0).unwrap(), ..pool(edge, level) }, ShapeError::NoPool),
        (
            Pool {
                less: Volume::from_cubic_metres(76.0).unwrap(),
                spa: Volume::from_cubic_metres(5.0).unwrap(),
                ..pool(edge, level)
            },
            ShapeError::NoPool,
        ),
        (pool(Outline::Rectangle(two(0.0, 5.0)), level), ShapeError::NoPool),
        (
            pool(Outline::Rectangle(two(200.0, 200.0)), level),
            ShapeError::Outside(bounds::POOL.check(60_000.0).unwrap_err()),
        ),
    ] {
        assert_eq!(pool.size(), Err(fault), "{pool:?}");
    }
    let mut full = list(&[1.0; MOST_MEASURES]);
    assert!(!full.push(m(1.0)));
}

#[test]
fn averaging_the_ends_tells_too_much_under_a_hopper() {
    let edge = Outline::Rectangle([m(32.0 * FOOT), m(16.0 * FOOT)]);
    let depths = [m(3.5 * FOOT), m(8.0 * FOOT)];
    let size =
        pool(edge, Floor::Hopper(depths, m(12.0 * FOOT), [m(6.0 * FOOT), m(8.0 * FOOT)])).size().unwrap();
    let over = size.ends.unwrap().cubic_metres() / size.walls.cubic_metres() - 1.0;
    assert!((over - 0.16).abs() < 0.005, "{over}");
}
