//! How long does it take to replace water, and what does it cost?

use crate::input::answers::{Flow, Typed};
use chem::Volume;

/// Hours and money for so much water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort {
    /// Hours to let it out.
    pub out: Option<f64>,
    /// Hours to let it in.
    pub in_: Option<f64>,
    /// Price.
    pub price: Option<f64>,
}

/// What it takes to replace so much water.
#[must_use]
pub fn effort(flow: &Flow, water: Volume) -> Effort {
    let hours = |flow: Typed<f64>| flow.valid().filter(|x| *x > 0.0).map(|x| water.cubic_metres() / x);
    Effort {
        out: hours(flow.out),
        in_: hours(flow.in_),
        price: flow.price.valid().map(|price| price * water.cubic_metres()),
    }
}

/// Hours to run so much water through a full pool: at the slower of the two flows, since the level is kept.
#[must_use]
pub fn exchange_hours(flow: &Flow, water: Volume) -> Option<f64> {
    if flow.out.is_invalid() || flow.in_.is_invalid() {
        return None; // It may be the slower one.
    }
    let both = effort(flow, water);
    [both.out, both.in_].into_iter().flatten().reduce(f64::max)
}
