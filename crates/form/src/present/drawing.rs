//! What does the pool look like? Its edge from above and its floor from the side, to one scale.
//!
//! Numbers for the page's own drawing, which is 440 by 280: paths, and the places of their labels.

use crate::answer::{Answer, Part, Shown};
use crate::contract::units::Unit;
use crate::contract::{DrawingPart, Output};
use crate::read::number::Signs;
use chem::Length;
use chem::pool_shape::{Floor, Outline, Pool};

/// From left to right, leaving room for labels at both sides.
const LEFT: f64 = 84.0;
const WIDE: f64 = 272.0;
/// From above the plan to under the section, without what lies between them.
const TOP: f64 = 24.0;
const HIGH: f64 = 200.0;
const BETWEEN: f64 = 34.0;

/// A path in the making; its points in m, from a corner.
struct Path {
    text: String,
    scale: f64,
    corner: [f64; 2],
}

impl Path {
    fn to(&mut self, command: char, [x, y]: [f64; 2]) {
        self.text.push(command);
        self.number(self.corner[0] + x * self.scale);
        self.number(self.corner[1] + y * self.scale);
    }

    /// Lines through the points, and back.
    fn around(&mut self, points: &[[f64; 2]]) {
        for (i, point) in points.iter().enumerate() {
            self.to(if i == 0 { 'M' } else { 'L' }, *point);
        }
        self.text.push('Z');
    }

    /// Half an ellipse, clockwise, with these half axes.
    fn arc(&mut self, half: [f64; 2], to: [f64; 2]) {
        self.text.push('A');
        self.number(half[0] * self.scale);
        self.number(half[1] * self.scale);
        self.text.push_str(" 0 0 1");
        self.to(' ', to);
    }

    fn number(&mut self, x: f64) {
        self.text.push(' ');
        self.text.push_str(&(x.round() as i32).to_string());
    }
}

/// Draws the pool, its lengths in `unit`.
pub fn draw(pool: &Pool, answer: &mut Answer, unit: &'static Unit, signs: Signs) {
    let long = pool.outline.length();
    let [wing_long, wing_wide] = pool.wing.map_or([0.0; 2], |[l, w, _]| [l.metres(), w.metres()]);
    let wide = wide(&pool.outline);
    let [shallow, deep] = depths(&pool.floor);
    let all_long = long.max(wing_long);
    let scale = (WIDE / all_long).min(HIGH / (wide + wing_wide + deep));
    // An L hangs its other part on the far end of the main one.
    let begin = LEFT + (WIDE - all_long * scale) / 2.0 + (all_long - long) * scale;
    let under = TOP + (wide + wing_wide) * scale;
    let water = under + BETWEEN;
    let path = |y: f64| Path { text: String::new(), scale, corner: [begin, y] };
    let (mut plan, mut inner, mut section) = (path(TOP), path(TOP), path(water));
    edge(&mut plan, pool, long, wide, [wing_long, wing_wide]);
    lines(&mut inner, pool, long, wide);
    section.around(&profile(&pool.floor, long));

    // Each label: what it tells, where along the length, and how far down.
    let middle = |y: f64, high: f64| y + high * scale / 2.0 + 5.0;
    let below = |depth: f64| water + depth * scale + 18.0;
    let right = long + 8.0 / scale;
    let left = -8.0 / scale;
    let mut labels = vec![
        (Output::DrawLength, long, long / 2.0, TOP - 8.0),
        (Output::DrawShallow, shallow, left, middle(water, shallow)),
    ];
    match pool.outline {
        Outline::Kidney(_, lobes) => {
            let [a, b] = lobes.map(Length::metres);
            labels.push((Output::DrawA, a, long * 0.25, middle(TOP, a)));
            labels.push((Output::DrawB, b, long * 0.75, middle(TOP, b)));
        }
        Outline::Round(_) => {}
        _ => labels.push((Output::DrawWidth, wide, left, middle(TOP, wide))),
    }
    if pool.wing.is_some() {
        let x = long - wing_long / 2.0;
        labels.push((Output::DrawA, wing_long, x, under + 18.0));
        labels.push((Output::DrawB, wing_wide, x, middle(TOP + wide * scale, wing_wide)));
    }
    let deep_aside = (Output::DrawDeep, deep, right, middle(water, deep));
    match pool.floor {
        Floor::Level(_) => {}
        Floor::Slope(_) => labels.push(deep_aside),
        Floor::Break(_, parts) => {
            let [flat, slope] = parts.map(Length::metres);
            labels.push(deep_aside);
            labels.push((Output::DrawFlat, flat, flat / 2.0, below(shallow)));
            labels.push((Output::DrawSlope, slope, flat + slope / 2.0, below(deep)));
        }
        Floor::Hopper(_, flat, _) => {
            let flat = flat.metres();
            labels.push((Output::DrawFlat, flat, flat / 2.0, below(shallow)));
            // A pad has a length too, so a line says which way this one goes.
            let (x, surface) = ((flat + long) / 2.0, (water - TOP) / scale);
            inner.to('M', [x, surface]);
            inner.to('L', [x, surface + deep]);
            labels.push((Output::DrawDeep, deep, x + 6.0 / scale, middle(water, deep)));
        }
    }
    for (name, path) in
        [(DrawingPart::DrawPlan, plan), (DrawingPart::DrawInner, inner), (DrawingPart::DrawSection, section)]
    {
        answer.shapes.push((Part::Path(name), path.text));
    }
    for (name, length, x, y) in labels {
        let mut place = path(0.0);
        place.text.push_str("translate(");
        place.number(begin + x * scale);
        place.number(y);
        place.text.push(')');
        answer.shapes.push((Part::Label(name), place.text));
        answer.put(name, Shown::plain(unit.rounded(unit.outward(length)), Some(unit), signs));
    }
}

/// The widest part, m.
fn wide(outline: &Outline) -> f64 {
    match outline {
        Outline::Round(d) => d.metres(),
        Outline::Rectangle([_, w]) | Outline::Ellipse([_, w]) | Outline::Stadium([_, w]) => w.metres(),
        Outline::Kidney(_, [a, b]) => a.metres().max(b.metres()),
        Outline::Offsets(_, widths) => widths.metres().iter().fold(0.0, |most, w| f64::max(most, *w)),
    }
}

fn depths(floor: &Floor) -> [f64; 2] {
    match floor {
        Floor::Level(d) => [d.metres(); 2],
        Floor::Slope(both) | Floor::Break(both, _) | Floor::Hopper(both, ..) => both.map(Length::metres),
    }
}

/// The water from the side: down at the shallow end, along the floor, and up at the deep one.
fn profile(floor: &Floor, long: f64) -> Vec<[f64; 2]> {
    let [s, d] = depths(floor);
    let mut all = vec![[0.0, 0.0], [0.0, s]];
    match floor {
        Floor::Break(_, parts) => {
            let [flat, slope] = parts.map(Length::metres);
            all.extend_from_slice(&[[flat, s], [flat + slope, d], [long, d]]);
        }
        Floor::Hopper(_, flat, pad) => {
            let (flat, side) = (flat.metres(), (long - flat.metres() - pad[0].metres()) / 2.0);
            all.extend_from_slice(&[[flat, s], [flat + side, d], [long - side, d], [long, s]]);
        }
        _ => all.push([long, d]),
    }
    all.push([long, 0.0]);
    all
}

fn edge(path: &mut Path, pool: &Pool, long: f64, wide: f64, [wing_long, wing_wide]: [f64; 2]) {
    let (right, middle) = (long, wide / 2.0);
    match &pool.outline {
        Outline::Rectangle(_) if pool.wing.is_some() => path.around(&[
            [0.0, 0.0],
            [right, 0.0],
            [right, wide + wing_wide],
            [right - wing_long, wide + wing_wide],
            [right - wing_long, wide],
            [0.0, wide],
        ]),
        Outline::Rectangle(_) => path.around(&[[0.0, 0.0], [right, 0.0], [right, wide], [0.0, wide]]),
        Outline::Round(_) | Outline::Ellipse(_) => {
            let half = [long / 2.0, middle];
            path.to('M', [0.0, middle]);
            path.arc(half, [right, middle]);
            path.arc(half, [0.0, middle]);
        }
        Outline::Stadium(_) => {
            path.to('M', [middle, 0.0]);
            path.to('L', [right - middle, 0.0]);
            path.arc([middle; 2], [right - middle, wide]);
            path.to('L', [middle, wide]);
            path.arc([middle; 2], [middle, 0.0]);
        }
        Outline::Kidney(_, lobes) => kidney(path, long, lobes.map(Length::metres)),
        Outline::Offsets(gap, widths) => {
            let widths = widths.metres();
            let point = |(i, w): (usize, &f64), side: f64| [gap.metres() * i as f64, middle + side * w];
            let mut all = Vec::new();
            for one in widths.iter().enumerate() {
                all.push(point(one, -0.5));
            }
            for one in widths.iter().enumerate().rev() {
                all.push(point(one, 0.5));
            }
            path.around(&all);
        }
    }
}

/// Both lobes as wide as typed; what lies between is a sketch: each point by hundredths of the length and by one
/// of these heights.
fn kidney(path: &mut Path, l: f64, [a, b]: [f64; 2]) {
    let heights = [0.0, 0.2 * a, 0.5 * a, 0.8 * a, a, 0.65 * a.min(b), b, 0.8 * b, 0.5 * b, 0.2 * b];
    const POINTS: [(char, u8, usize); 20] = [
        ('M', 0, 2),
        ('C', 0, 1),
        (' ', 10, 0),
        (' ', 25, 0),
        ('L', 75, 0),
        ('C', 90, 0),
        (' ', 100, 9),
        (' ', 100, 8),
        (' ', 100, 7),
        (' ', 90, 6),
        (' ', 75, 6),
        (' ', 62, 6),
        (' ', 62, 5),
        (' ', 50, 5),
        (' ', 38, 5),
        (' ', 38, 4),
        (' ', 25, 4),
        (' ', 10, 4),
        (' ', 0, 3),
        (' ', 0, 2),
    ];
    for (command, x, height) in POINTS {
        path.to(command, [l * f64::from(x) / 100.0, heights.get(height).copied().unwrap_or_default()]);
    }
}

/// What lies within the edge: where a floor breaks, a hopper's pad, or the widths as measured.
fn lines(path: &mut Path, pool: &Pool, long: f64, wide: f64) {
    let mut line = |from: [f64; 2], to: [f64; 2]| {
        path.to('M', from);
        path.to('L', to);
    };
    match (&pool.outline, &pool.floor) {
        (Outline::Offsets(gap, widths), _) => {
            for (i, w) in widths.metres().iter().enumerate() {
                let x = gap.metres() * i as f64;
                line([x, (wide - w) / 2.0], [x, (wide + w) / 2.0]);
            }
        }
        (Outline::Rectangle(_), Floor::Break(_, parts)) => {
            let [flat, slope] = parts.map(Length::metres);
            for x in [flat, flat + slope] {
                line([x, 0.0], [x, wide]);
            }
        }
        (_, Floor::Hopper(_, flat, pad)) => {
            let [a, b] = pad.map(Length::metres);
            let flat = flat.metres();
            let [dx, dy] = [(long - flat - a) / 2.0, (wide - b) / 2.0];
            line([flat, 0.0], [flat, wide]);
            for (from, to) in [
                ([flat, 0.0], [flat + dx, dy]),
                ([long, 0.0], [long - dx, dy]),
                ([long, wide], [long - dx, wide - dy]),
                ([flat, wide], [flat + dx, wide - dy]),
            ] {
                line(from, to);
            }
            path.around(&[[flat + dx, dy], [long - dx, dy], [long - dx, wide - dy], [flat + dx, wide - dy]]);
        }
        _ => {}
    }
}
