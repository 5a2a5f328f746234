//! How much water does a pool of these measures hold?
//!
//! All depths are of water, from its surface down. Everything but [`Outline::Kidney`] is plane geometry.

use crate::bounds::{self, OutOfRange};
use crate::error::ShapeError;
use crate::quantity::measured::{Area, Length, Volume};

/// The most measures in a row: 24 widths every metre are a pool of 23 m.
pub const MOST_MEASURES: usize = 24;

/// Measures in a row, up to [`MOST_MEASURES`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measures {
    all: [f64; MOST_MEASURES],
    count: usize,
}

impl Measures {
    /// None.
    pub const NONE: Self = Self { all: [0.0; MOST_MEASURES], count: 0 };

    /// One more; `false` when there is no room for it.
    ///
    /// ```
    /// use saltwright_chem::{Length, pool_shape::Measures};
    /// let mut widths = Measures::NONE;
    /// assert!(widths.push(Length::from_metres(3.0).unwrap()) && widths.push(Length::from_metres(5.0).unwrap()));
    /// assert_eq!(widths.mean().unwrap().metres(), 4.0);
    /// assert_eq!(Measures::NONE.mean(), None);
    /// ```
    #[must_use]
    pub fn push(&mut self, measure: Length) -> bool {
        let Some(place) = self.all.get_mut(self.count) else { return false };
        *place = measure.metres();
        self.count += 1;
        true
    }

    /// In m, in their order.
    #[must_use]
    pub fn metres(&self) -> &[f64] {
        self.all.get(..self.count).unwrap_or_default()
    }

    /// All in one.
    #[must_use]
    pub fn sum(&self) -> f64 {
        self.metres().iter().sum()
    }

    /// Their mean, if there is any.
    #[must_use]
    pub fn mean(&self) -> Option<Length> {
        (self.count > 0).then(|| Length::clamped(self.sum() / self.count as f64))
    }
}

/// The water's edge, seen from above.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Outline {
    /// `L W`.
    Rectangle([Length; 2]),
    /// `π/4 D²`.
    Round(Length),
    /// An oval that is curved all round: `π/4 L W`.
    Ellipse([Length; 2]),
    /// An oval with two straight sides and half-round ends: `W (L − W) + π/4 W²`.
    Stadium([Length; 2]),
    /// `0.45 (A + B) L`, with the widest part of each lobe: a rule of the trade (common practice, no source), no
    /// geometry.
    Kidney(Length, [Length; 2]),
    /// Widths across the long axis, the first and the last at its ends, so far apart.
    Offsets(Length, Measures),
}

/// The floor along the length; depths at the shallow end, then at the deep one.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Floor {
    /// As deep everywhere.
    Level(Length),
    /// One slope from end to end.
    Slope([Length; 2]),
    /// So much flat, so much slope, and the rest deep; the sides upright.
    Break([Length; 2], [Length; 2]),
    /// So much flat, and from there four sides that narrow to a pad, its length and width.
    Hopper([Length; 2], Length, [Length; 2]),
}

/// A shelf under little water.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Ledge {
    /// Its surface.
    pub area: Area,
    /// Water above it.
    pub water: Length,
    /// Water where it ends.
    pub around: Length,
}

/// Steps of one width and one tread.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Steps {
    /// From side to side.
    pub width: Length,
    /// From the front of one to the front of the next.
    pub tread: Length,
    /// From the floor up to each tread.
    pub heights: Measures,
}

/// A pool by its measures.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Pool {
    /// Its edge.
    pub outline: Outline,
    /// Its floor.
    pub floor: Floor,
    /// The other rectangle of an L: length, width, depth.
    pub wing: Option<[Length; 3]>,
    /// A tanning ledge.
    pub ledge: Option<Ledge>,
    /// Steps.
    pub steps: Option<Steps>,
    /// Other solids under water.
    pub less: Volume,
    /// A spa that shares the water.
    pub spa: Volume,
}

/// What two rules make of the same widths: trapezoids, and Simpson's, which wants an even number of strips.
pub type Rules<T> = (T, Option<T>);

/// How large a pool is.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Size {
    /// Its surface, without a spa's.
    pub area: Area,
    /// Mean depth, without a spa's water.
    pub depth: Length,
    /// Within its walls, before anything is taken off or put to it.
    pub walls: Volume,
    /// Taken up by steps.
    pub steps: Volume,
    /// Taken up by the ledge.
    pub ledge: Volume,
    /// All the water.
    pub volume: Volume,
    /// What the mean of both ends' depths would make of the walls; asked only where the floor breaks.
    pub ends: Option<Volume>,
    /// By trapezoids and by Simpson's rule, which wants an even number of strips; asked only of offsets.
    pub offsets: Option<Rules<Area>>,
}

impl Pool {
    /// Its size.
    ///
    /// Domain: measures that leave at least the smallest pool of [`crate::bounds::POOL`]. Source: arithmetic; the
    /// hopper is the prismatoid `h/6 (top + 4 middle + pad)` below the block that is as deep as the shallow end.
    ///
    /// ```
    /// use saltwright_chem::{Length, Volume, pool_shape::*};
    /// let m = |x| Length::from_metres(x).unwrap();
    /// let pool = Pool {
    ///     outline: Outline::Rectangle([m(8.0), m(4.0)]),
    ///     floor: Floor::Slope([m(1.0), m(1.9)]),
    ///     wing: None, ledge: None, steps: None, less: Volume::NONE, spa: Volume::NONE,
    /// };
    /// assert!((pool.size().unwrap().volume.cubic_metres() - 46.4).abs() < 1e-12);
    /// ```
    pub fn size(&self) -> Result<Size, ShapeError> {
        let (main, offsets) = self.outline.area()?;
        let mut walls = self.walls(main)?;
        let mut ends = match self.floor {
            Floor::Break([s, d], _) | Floor::Hopper([s, d], ..) => Some(main * mean(s, d)),
            _ => None,
        };
        let mut area = main;
        if let Some(wing) = self.wing {
            let [l, w, d] = wing.map(Length::metres);
            area += l * w;
            walls += l * w * d;
            ends = ends.map(|x| x + l * w * d);
        }
        let ledge = self.ledge.map_or(Ok(0.0), |l| {
            let rise = l.around.metres() - l.water.metres();
            if l.area.square_metres() >= area {
                Err(ShapeError::LedgeTooLarge)
            } else if rise > 0.0 {
                Ok(l.area.square_metres() * rise)
            } else {
                Err(ShapeError::NoLedge)
            }
        })?;
        let steps = self.steps.map_or(0.0, |s| s.width.metres() * s.tread.metres() * s.heights.sum());
        let water = walls - ledge - steps - self.less.cubic_metres();
        if water.is_nan() || water <= 0.0 || area <= 0.0 {
            return Err(ShapeError::NoPool);
        }
        let size = || -> Result<Size, OutOfRange> {
            Ok(Size {
                area: Area::from_square_metres(area)?,
                depth: Length::from_metres(water / area)?,
                walls: Volume::from_cubic_metres(walls)?,
                steps: Volume::from_cubic_metres(steps)?,
                ledge: Volume::from_cubic_metres(ledge)?,
                volume: bounds::POOL
                    .check(water + self.spa.cubic_metres())
                    .and_then(Volume::from_cubic_metres)?,
                ends: ends.map(Volume::from_cubic_metres).transpose()?,
                offsets: offsets.map(both_rules).transpose()?,
            })
        };
        size().map_err(ShapeError::Outside)
    }

    /// Within the walls of the main part, m³.
    fn walls(&self, area: f64) -> Result<f64, ShapeError> {
        let deeper = |s: Length, d: Length| {
            if d < s { Err(ShapeError::NotDeeper) } else { Ok((s.metres(), d.metres())) }
        };
        match self.floor {
            Floor::Level(d) => Ok(area * d.metres()),
            Floor::Slope([s, d]) => {
                let (s, d) = deeper(s, d)?;
                match self.outline {
                    Outline::Offsets(gap, widths) => {
                        let long = gap.metres() * (widths.metres().len() - 1) as f64;
                        Ok(along(gap.metres(), widths.metres(), |x| s + (d - s) * x / long))
                    }
                    // As much to the one side of the middle as to the other; a kidney nearly.
                    _ => Ok(area * (s + d) / 2.0),
                }
            }
            Floor::Break([s, d], parts) => {
                let (s, d) = deeper(s, d)?;
                let [flat, slope] = parts.map(Length::metres);
                let long = self.outline.length();
                if flat + slope > long {
                    return Err(ShapeError::TooLong);
                }
                let depth = |x: f64| match x - flat {
                    x if x <= 0.0 => s,
                    x if x >= slope => d,
                    x => s + (d - s) * x / slope,
                };
                match self.outline {
                    Outline::Kidney(..) => Err(ShapeError::OtherFloor),
                    Outline::Rectangle([_, w]) => {
                        let side = flat * s + slope * (s + d) / 2.0 + (long - flat - slope) * d;
                        Ok(side * w.metres())
                    }
                    Outline::Offsets(gap, widths) => Ok(along(gap.metres(), widths.metres(), depth)),
                    _ => Ok(self.outline.strips(long, depth)),
                }
            }
            Floor::Hopper([s, d], flat, pad) => {
                let (s, d) = deeper(s, d)?;
                let Outline::Rectangle([l, w]) = self.outline else { return Err(ShapeError::OtherFloor) };
                let (long, wide, [a, b]) = (l.metres() - flat.metres(), w.metres(), pad.map(Length::metres));
                if long <= 0.0 {
                    return Err(ShapeError::TooLong);
                }
                if a > long || b > wide {
                    return Err(ShapeError::PadTooLarge);
                }
                let middle = (long + a) / 2.0 * ((wide + b) / 2.0);
                Ok(area * s + (d - s) / 6.0 * (long * wide + 4.0 * middle + a * b))
            }
        }
    }
}

impl Outline {
    /// From end to end, m.
    #[must_use]
    pub fn length(&self) -> f64 {
        match self {
            Self::Round(l) | Self::Kidney(l, _) => l.metres(),
            Self::Rectangle([l, _]) | Self::Ellipse([l, _]) | Self::Stadium([l, _]) => l.metres(),
            Self::Offsets(gap, widths) => gap.metres() * (widths.metres().len().max(1) - 1) as f64,
        }
    }

    /// Its surface, m², and of offsets by trapezoids and by Simpson's rule.
    fn area(&self) -> Result<(f64, Option<Rules<f64>>), ShapeError> {
        use core::f64::consts::FRAC_PI_4;
        let both = |sides: &[Length; 2]| sides.map(Length::metres);
        let area = match self {
            Self::Rectangle(sides) => {
                let [l, w] = both(sides);
                l * w
            }
            Self::Round(d) => FRAC_PI_4 * d.metres() * d.metres(),
            Self::Ellipse(sides) => {
                let [l, w] = both(sides);
                FRAC_PI_4 * l * w
            }
            Self::Stadium(sides) => {
                let [l, w] = both(sides);
                if w > l {
                    return Err(ShapeError::WiderThanLong);
                }
                w * (l - w) + FRAC_PI_4 * w * w
            }
            Self::Kidney(l, lobes) => {
                let [a, b] = both(lobes);
                0.45 * (a + b) * l.metres()
            }
            Self::Offsets(gap, widths) => {
                let (gap, widths) = (gap.metres(), widths.metres());
                if widths.len() < 3 {
                    return Err(ShapeError::TooFew);
                }
                let trapezoid = by_trapezoids(gap, widths, |_| 1.0);
                let simpson = (widths.len() % 2 == 1).then(|| along(gap, widths, |_| 1.0));
                return Ok((simpson.unwrap_or(trapezoid), Some((trapezoid, simpson))));
            }
        };
        Ok((area, None))
    }

    /// Water under a curved edge, m³, for a depth that changes along the length: strips that are finest at the
    /// ends, where the edge turns fastest, so that a thousandth of a part is never missed.
    fn strips(&self, long: f64, depth: impl Fn(f64) -> f64) -> f64 {
        const STRIPS: u32 = 400;
        let wide = match self {
            Self::Ellipse([_, w]) | Self::Stadium([_, w]) => w.metres(),
            _ => long,
        };
        // How long the half-round ends are, both together.
        let ends = if matches!(self, Self::Stadium(_)) { wide } else { long };
        let mut water = 0.0;
        for i in 0..STRIPS {
            let t = (f64::from(i) + 0.5) / f64::from(STRIPS);
            let x = long * t * t * (3.0 - 2.0 * t);
            let from_end = libm::fmin(libm::fmin(x, long - x) / ends, 0.5);
            let width = 2.0 * wide * libm::sqrt(from_end * (1.0 - from_end));
            water += width * depth(x) * 6.0 * long * t * (1.0 - t) / f64::from(STRIPS);
        }
        water
    }
}

fn both_rules((trapezoid, simpson): Rules<f64>) -> Result<Rules<Area>, OutOfRange> {
    Ok((Area::from_square_metres(trapezoid)?, simpson.map(Area::from_square_metres).transpose()?))
}

fn mean(a: Length, b: Length) -> f64 {
    (a.metres() + b.metres()) / 2.0
}

/// By Simpson's rule where the number of strips is even, otherwise by trapezoids.
fn along(gap: f64, widths: &[f64], depth: impl Fn(f64) -> f64) -> f64 {
    if widths.len().is_multiple_of(2) {
        return by_trapezoids(gap, widths, depth);
    }
    let last = widths.len() - 1;
    let weighed = widths.iter().enumerate().map(|(i, w)| {
        let weight = if i == 0 || i == last { 1.0 } else { 2.0 + 2.0 * (i % 2) as f64 };
        weight * w * depth(gap * i as f64)
    });
    weighed.sum::<f64>() * gap / 3.0
}

fn by_trapezoids(gap: f64, widths: &[f64], depth: impl Fn(f64) -> f64) -> f64 {
    let last = widths.len() - 1;
    let weighed = widths.iter().enumerate().map(|(i, w)| {
        let weight = if i == 0 || i == last { 0.5 } else { 1.0 };
        weight * w * depth(gap * i as f64)
    });
    weighed.sum::<f64>() * gap
}

#[cfg(test)]
mod tests;
