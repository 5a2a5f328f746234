//! What does the pool look like? Its edge from above and its floor from the side, to one scale.
//!
//! Numbers for the page's own drawing, which is 440 by 280: paths, and the places of their labels.

use crate::answer::{Answer, Shown, joined};
use chem::Length;
use chem::shape::{Floor, Outline, Pool};

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
    fn to(&mut self, command: char, points: &[[f64; 2]]) -> &mut Self {
        self.text.push(command);
        for [x, y] in points {
            self.number(self.corner[0] + x * self.scale);
            self.number(self.corner[1] + y * self.scale);
        }
        self
    }

    /// Lines through the points, and back.
    fn around(&mut self, points: &[[f64; 2]]) {
        for (i, point) in points.iter().enumerate() {
            self.to(if i == 0 { 'M' } else { 'L' }, &[*point]);
        }
        self.text.push('Z');
    }

    /// Half an ellipse, clockwise, with these half axes.
    fn arc(&mut self, half: [f64; 2], to: [f64; 2]) -> &mut Self {
        self.text.push('A');
        self.number(half[0] * self.scale);
        self.number(half[1] * self.scale);
        self.text.push_str(" 0 0 1");
        self.to(' ', &[to])
    }

    fn number(&mut self, x: f64) {
        self.text.push(' ');
        self.text.push_str(&(x.round() as i32).to_string());
    }
}

/// Draws the pool; `shown` writes a length on it.
pub fn draw(pool: &Pool, answer: &mut Answer, shown: impl Fn(f64) -> Shown) {
    let long = pool.outline.length();
    let [wing_long, wing_wide] = pool.wing.map_or([0.0; 2], |[l, w, _]| [l.metres(), w.metres()]);
    let wide = wide(&pool.outline);
    let [shallow, deep] = depths(&pool.floor);
    let all_long = long.max(wing_long);
    let scale = (WIDE / all_long).min(HIGH / (wide + wing_wide + deep));
    // An L hangs its other part on the far end of the main one.
    let begin = LEFT + (WIDE - all_long * scale) / 2.0 + (all_long - long) * scale;
    let path = |y: f64| Path { text: String::new(), scale, corner: [begin, y] };
    let mut plan = path(TOP);
    edge(&mut plan, pool, long, wide, [wing_long, wing_wide]);
    answer.shapes.push(("draw.plan", plan.text));
    let mut inner = path(TOP);
    lines(&mut inner, pool, long, wide);
    answer.shapes.push(("draw.inner", inner.text));

    let under = TOP + (wide + wing_wide) * scale;
    let water = under + BETWEEN;
    let mut section = path(water);
    let floor = profile(&pool.floor, long);
    section.around(&[&[[0.0, 0.0]], floor.as_slice(), &[[long, 0.0]]].concat());
    answer.shapes.push(("draw.section", section.text));

    let end = begin + long * scale;
    let at = |x: f64| begin + x * scale;
    let mut label = |name: &'static str, x: f64, y: f64, length: f64| {
        let [x, y] = [x, y].map(|x| (x.round() as i32).to_string());
        answer.shapes.push((name, joined(&["translate(", &x, " ", &y, ")"])));
        answer.put(name, shown(length));
    };
    label("draw.length", at(long / 2.0), TOP - 8.0, long);
    match pool.outline {
        Outline::Kidney(_, [a, b]) => {
            label("draw.a", at(long * 0.25), TOP + a.metres() * scale / 2.0 + 5.0, a.metres());
            label("draw.b", at(long * 0.75), TOP + b.metres() * scale / 2.0 + 5.0, b.metres());
        }
        Outline::Round(_) => {}
        _ => label("draw.width", begin - 8.0, TOP + wide * scale / 2.0 + 5.0, wide),
    }
    if pool.wing.is_some() {
        label("draw.a", at(long - wing_long / 2.0), under + 18.0, wing_long);
        label("draw.b", at(long - wing_long / 2.0), TOP + (wide + wing_wide / 2.0) * scale + 5.0, wing_wide);
    }
    label("draw.shallow", begin - 8.0, water + shallow * scale / 2.0 + 5.0, shallow);
    let below = |depth: f64| water + depth * scale + 18.0;
    match pool.floor {
        Floor::Level(_) => {}
        Floor::Hopper(_, flat, _) => {
            let flat = flat.metres();
            label("draw.flat", at(flat / 2.0), below(shallow), flat);
            label("draw.deep", at((flat + long) / 2.0) - 20.0, below(deep), deep);
        }
        floor => {
            label("draw.deep", end + 8.0, water + deep * scale / 2.0 + 5.0, deep);
            if let Floor::Break(_, parts) = floor {
                let [flat, slope] = parts.map(Length::metres);
                label("draw.flat", at(flat / 2.0), below(shallow), flat);
                label("draw.slope", at(flat + slope / 2.0), below(deep), slope);
            }
        }
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

/// The floor from the shallow end to the deep one.
fn profile(floor: &Floor, long: f64) -> Vec<[f64; 2]> {
    let [s, d] = depths(floor);
    let mut all = vec![[0.0, s]];
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
            path.to('M', &[[0.0, middle]]).arc(half, [right, middle]).arc(half, [0.0, middle]);
        }
        Outline::Stadium(_) => {
            path.to('M', &[[middle, 0.0]]).to('L', &[[right - middle, 0.0]]);
            path.arc([middle; 2], [right - middle, wide]).to('L', &[[middle, wide]]);
            path.arc([middle; 2], [middle, 0.0]);
        }
        Outline::Kidney(_, lobes) => kidney(path, long, lobes.map(Length::metres)),
        Outline::Offsets(gap, widths) => {
            let mut all = Vec::new();
            for side in [-0.5, 0.5] {
                let one = widths.metres().iter().enumerate();
                let begin = all.len();
                all.extend(one.map(|(i, w)| [gap.metres() * i as f64, middle + side * w]));
                if begin > 0 {
                    all[begin..].reverse();
                }
            }
            path.around(&all);
        }
    }
}

/// Both lobes as wide as typed; what lies between is a sketch.
fn kidney(path: &mut Path, l: f64, [a, b]: [f64; 2]) {
    let waist = 0.65 * a.min(b);
    path.to('M', &[[0.0, a / 2.0]]);
    path.to('C', &[[0.0, 0.2 * a], [0.1 * l, 0.0], [0.25 * l, 0.0]]).to('L', &[[0.75 * l, 0.0]]);
    path.to('C', &[[0.9 * l, 0.0], [l, 0.2 * b], [l, b / 2.0]]);
    path.to('C', &[[l, 0.8 * b], [0.9 * l, b], [0.75 * l, b]]);
    path.to('C', &[[0.62 * l, b], [0.62 * l, waist], [0.5 * l, waist]]);
    path.to('C', &[[0.38 * l, waist], [0.38 * l, a], [0.25 * l, a]]);
    path.to('C', &[[0.1 * l, a], [0.0, 0.8 * a], [0.0, a / 2.0]]);
}

/// What lies within the edge: where a floor breaks, a hopper's pad, or the widths as measured.
fn lines(path: &mut Path, pool: &Pool, long: f64, wide: f64) {
    let mut line = |from: [f64; 2], to: [f64; 2]| {
        path.to('M', &[from]).to('L', &[to]);
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
