//! Which size of the pool counts, and how was it found?

use crate::input::choices::Method;
use crate::policy::APART;
use chem::pool_shape::{Outline, Pool, Size};
use chem::{Volume, bounds};

/// What a meter or a tape says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// All the water.
    pub volume: Volume,
    /// By which way.
    pub method: Method,
    /// By the tape, if there was one.
    pub taped: Option<(Pool, Size)>,
}

/// The measured size: by the meter before the tape, since nothing does better.
#[must_use]
pub fn measured(metered: Option<Volume>, taped: Option<(Pool, Size)>) -> Option<Measured> {
    let of_tape = taped.map(|(pool, size)| {
        let method = match pool.outline {
            Outline::Kidney(..) => Method::Rule,
            Outline::Offsets(..) => Method::Offsets,
            _ => Method::Taped,
        };
        (size.volume, method)
    });
    let (volume, method) = metered.map(|volume| (volume, Method::Metered)).or(of_tape)?;
    Some(Measured { volume, method, taped })
}

/// How much more a typed size is than a measured one, part of the latter; and whether one of the two must be wrong.
///
/// ```
/// use chem::Volume;
/// let [typed, measured] = [66.0, 60.0].map(|x| Volume::from_cubic_metres(x).unwrap());
/// let (more, wrong) = saltwright_plan::water::size::apart(typed, measured);
/// assert!((more - 0.1).abs() < 1e-9 && !wrong);
/// ```
#[must_use]
pub fn apart(typed: Volume, measured: Volume) -> (f64, bool) {
    let more = typed.cubic_metres() / libm::fmax(measured.cubic_metres(), bounds::POOL.low) - 1.0;
    (more, more.abs() > APART)
}
