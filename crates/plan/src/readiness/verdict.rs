//! What can a gate say, and how does it follow from a figure and its limits?

use crate::input::answers::Typed;
use crate::policy::Within;

/// What a gate says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Verdict {
    /// Nothing against it.
    Pass,
    /// Not yet; something can be done about it.
    Wait,
    /// No; it needs a person.
    Stop,
    /// Something is missing, which is never a pass.
    Unknown,
    /// Somebody who may has ruled against it, in writing.
    Exception,
}

pub(crate) fn of<T: Copy>(answer: Option<T>, judge: impl Fn(T) -> Verdict) -> Verdict {
    answer.map_or(Verdict::Unknown, judge)
}

/// Up to `pass` it passes, up to `wait` it waits, above it stops.
pub(crate) fn up_to(answer: Typed<f64>, [pass, wait]: [f64; 2]) -> Verdict {
    of(answer.valid(), |x| match x {
        x if x <= pass => Verdict::Pass,
        x if x <= wait => Verdict::Wait,
        _ => Verdict::Stop,
    })
}

/// Within the inner band it passes, within the outer it waits, outside it stops.
pub(crate) fn within(x: f64, bands: &Within) -> Verdict {
    let lies = |[low, high]: [f64; 2]| x >= low && x <= high;
    if lies(bands.pass) {
        Verdict::Pass
    } else if lies(bands.wait) {
        Verdict::Wait
    } else {
        Verdict::Stop
    }
}
