//! How much water and how much salt, and how sure is that?
//!
//! At each of a fixed number of volumes a filter follows the salt; the readings then say how much
//! each volume weighs. Nothing is drawn at random, and the cost is fixed.

use crate::policy::uncertainty::Moments;
use crate::salt::ekf::{Ekf, Event, Evidence};
use crate::salt::mixture::{Mixture, NODES, Part, moments, upper_tail};
use crate::salt::prior::VolumePrior;

/// How often: each time nearer to where the weight lies.
const PASSES: usize = 3;

/// One volume, and the salt if it were the true one.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Node {
    /// How much it weighs, `W`; all together weigh 1.
    pub weight: f64,
    /// What a bag gives, `x`.
    pub mg_per_l_per_bag: f64,
    /// The salt `C`, mg/L.
    pub salt: Moments,
}

/// Volume and salt together.
///
/// ```
/// # use chem::*;
/// # use saltwright_plan::log::*;
/// # use saltwright_plan::salt::course::*;
/// # use saltwright_plan::salt::decide::decide;
/// # use saltwright_plan::salt::job::*;
/// # use saltwright_plan::*;
/// # fn main() -> Result<(), OutOfRange> {
/// # let job = Job {
/// #     volume: Volume::from_cubic_metres(62.82)?,
/// #     method: Method::Taped,
/// #     doubt: None,
/// #     bag: Mass::from_kilograms(20.0)?,
/// #     purity: Purity::from_ratio(0.994)?,
/// #     in_hand: 0,
/// #     band: Band::of(None, None, None).unwrap(),
/// #     history: History::Fresh,
/// #     fill: None,
/// #     handled: Handled::Parts(policy::PART_OF_BAG),
/// #     levels: RiskLevels::default(),
/// # };
/// # let salt = Salinity::from_mg_per_l(400.0)?;
/// # let reading = Reading { salt, again: None, instrument: Instrument::Meter };
/// # let first = Some(Baseline { when: None, reading });
/// let known = decide(&job, &course(first, &[None; MOST_ENTRIES])).unwrap().known.unwrap();
/// let estimate = known.estimate;
/// assert!((estimate.volume().mean - 61.7).abs() < 0.1); // people over-estimate
/// assert!((estimate.salt(6.0).moments().mean - 2_341.4).abs() < 0.1); // with six bags in it
/// assert!((estimate.mean_need(3_200.0) - 8.68).abs() < 0.005);
/// assert!((estimate.mean_bags(3_200.0) - 8.68).abs() < 0.005);
/// assert_eq!([0.05, 0.5, 0.95].map(|sure| estimate.bags(3_200.0, sure)), [8.0, 9.0, 10.0]);
/// # Ok(())
/// # }
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Estimate {
    /// The volumes tried.
    #[cfg_attr(feature = "serde", serde(with = "crate::serialize"))]
    pub nodes: [Node; NODES],
    /// Pure salt in a bag, g.
    pub bag: f64,
}

impl Estimate {
    /// What the evidence makes of both priors, of the volume and of the salt in mg/L.
    ///
    /// Nodes stand evenly over ±4 `s`, by the trapezoid rule; then twice more over mean ± 8 standard
    /// deviations of the pass before. Within 0.3 % in volume and 11 mg/L in salt of brute force.
    pub(crate) fn new(volume: &VolumePrior, salt: Moments, evidence: &Evidence) -> Self {
        let (start, after) = at_first_dose(salt, evidence);
        let mut nodes = [Node::default(); NODES];
        let end = 4.0 * volume.s;
        let (mut low, mut high) = (-end, end);
        for _ in 0..PASSES {
            let spacing = (high - low) / (NODES - 1) as f64;
            let w = |i: usize| low + spacing * i as f64;
            let mut most = f64::NEG_INFINITY;
            for (i, node) in nodes.iter_mut().enumerate() {
                let x = volume.mg_per_l_per_bag(w(i));
                let found = start.after(after, &evidence.instruments, x);
                let weight = found.log_likelihood + volume.log_density(w(i));
                most = libm::fmax(most, weight);
                *node = Node { weight, mg_per_l_per_bag: x, salt: found.salt() };
            }
            for node in &mut nodes {
                node.weight = libm::exp(node.weight - most);
            }
            nodes[0].weight *= 0.5;
            nodes[NODES - 1].weight *= 0.5;
            let all: f64 = nodes.iter().map(|node| node.weight).sum();
            nodes.iter_mut().for_each(|node| node.weight /= all);
            let found = moments(nodes.iter().enumerate().map(|(i, node)| (node.weight, exact(w(i)))));
            let reach = 8.0 * libm::fmax(found.std_dev, spacing);
            (low, high) = (libm::fmax(found.mean - reach, -end), libm::fmin(found.mean + reach, end));
        }
        Self { nodes, bag: volume.bag }
    }

    /// The volume, m³.
    #[must_use]
    pub fn volume(&self) -> Moments {
        moments(self.nodes.iter().map(|node| (node.weight, exact(self.bag / node.mg_per_l_per_bag))))
    }

    /// How much weight lies farther from the prior's volume than so many `s`.
    pub(crate) fn beyond(&self, volume: &VolumePrior, times: f64) -> f64 {
        let usual = volume.mg_per_l_per_bag(0.0);
        let far = |node: &&Node| libm::fabs(libm::log(usual / node.mg_per_l_per_bag)) > times * volume.s;
        self.nodes.iter().filter(far).map(|node| node.weight).sum()
    }

    /// The salt after so many bags more, once they have dissolved.
    #[must_use]
    pub fn salt(&self, bags: f64) -> Mixture {
        Mixture(self.nodes.map(|node| {
            let mean = node.salt.mean + bags * node.mg_per_l_per_bag;
            Part { weight: node.weight, moments: Moments { mean, ..node.salt } }
        }))
    }

    /// The reading that is to be expected at `event`, the last of the evidence, whose readings do not
    /// count yet.
    pub(crate) fn predict(&self, salt: Moments, evidence: &Evidence, event: &Event) -> Mixture {
        let (start, after) = at_first_dose(salt, evidence);
        Mixture(self.nodes.map(|node| {
            let x = node.mg_per_l_per_bag;
            let found = start.after(after, &evidence.instruments, x);
            let predicted = evidence.instruments[event.instrument].map(|by| found.predict(event, &by, x));
            Part { weight: node.weight, moments: predicted.map_or(Moments::default(), |p| p.moments()) }
        }))
    }

    /// Bags to `salt`, on the average; below zero where it is above already.
    #[must_use]
    pub fn mean_need(&self, salt: f64) -> f64 {
        self.nodes.iter().map(|node| node.weight * (salt - node.salt.mean) / node.mg_per_l_per_bag).sum()
    }

    /// Bags to `salt`, on the average, where none is needed counted as none.
    #[must_use]
    pub fn mean_bags(&self, salt: f64) -> f64 {
        let of = |node: &Node| {
            let z = (salt - node.salt.mean) / node.salt.std_dev;
            let density = libm::exp(-0.5 * z * z) / libm::sqrt(2.0 * core::f64::consts::PI);
            node.weight * node.salt.std_dev * (density + z * upper_tail(-z)) / node.mg_per_l_per_bag
        };
        self.nodes.iter().map(of).sum()
    }

    /// The fewest whole bags that bring the salt up to `salt` as likely as `sure`.
    #[must_use]
    pub fn bags(&self, salt: f64, sure: f64) -> f64 {
        let near = self.mean_need(salt);
        let short = |bags: i64| self.salt(bags as f64).prob_above(salt) < sure;
        (last(near as i64, short) + 1) as f64
    }

    /// The bags, to a thousandth, that bring the salt up to `salt` as likely as `sure`; none below none.
    #[must_use]
    pub fn bags_exactly(&self, salt: f64, sure: f64) -> f64 {
        let most = self.bags(salt, sure);
        let (mut short, mut enough) = (libm::fmax(most - 1.0, 0.0), libm::fmax(most, 0.0));
        for _ in 0..10 {
            let middle = 0.5 * (short + enough);
            if self.salt(middle).prob_above(salt) < sure { short = middle } else { enough = middle }
        }
        enough
    }
}

/// What is known before the first dose, in which the volume has no say, and the events from there on.
fn at_first_dose(salt: Moments, evidence: &Evidence) -> (Ekf, &[Option<Event>]) {
    let (before, after) = evidence.around_first_dose();
    (Ekf::new(salt, &evidence.instruments).after(before, &evidence.instruments, 0.0), after)
}

/// A figure without doubt.
fn exact(mean: f64) -> Moments {
    Moments { mean, std_dev: 0.0 }
}

/// The largest count from 0 for which `holds`, which must hold up to some count and not beyond; -1 if it
/// holds for none. Sought from `near`, with longer and longer strides.
pub(crate) fn last(near: i64, holds: impl Fn(i64) -> bool) -> i64 {
    let near = near.clamp(0, 1 << 40);
    let (mut low, mut high);
    let mut stride = 1;
    if holds(near) {
        (low, high) = (near, near + stride);
        while stride < 1 << 40 && holds(high) {
            stride *= 2;
            (low, high) = (high, high + stride);
        }
    } else {
        (low, high) = (near - stride, near);
        while low >= 0 && !holds(low) {
            stride *= 2;
            (low, high) = (low - stride, low);
        }
        low = low.max(-1);
    }
    while high - low > 1 {
        let middle = low + (high - low) / 2;
        if holds(middle) { low = middle } else { high = middle }
    }
    low
}
