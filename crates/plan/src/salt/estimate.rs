//! How much water and how much salt, and how sure is that?
//!
//! At each of a fixed number of volumes a filter follows the salt; the readings then say how much
//! each volume weighs. Nothing is drawn at random, and the cost is fixed.

use crate::salt::ekf::{Evidence, Filter, Step};
use crate::salt::mixture::{About, Mixture, NODES, Part, about, upper_tail};
use crate::salt::prior::Prior;

/// How often: each time nearer to where the weight lies.
const PASSES: usize = 3;

/// One volume, and the salt if it were the true one.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Node {
    /// How much it weighs; all together weigh 1.
    pub weight: f64,
    /// What a bag gives, mg/L.
    pub rise: f64,
    /// Mean of the salt, mg/L.
    pub salt: f64,
    /// Its standard deviation, mg/L.
    pub spread: f64,
}

/// Volume and salt together.
///
/// ```
/// # use chem::*;
/// # use plan::log::*;
/// # use plan::salt::course::*;
/// # use plan::salt::decide::decide;
/// # use plan::salt::job::*;
/// # use plan::*;
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
/// #     handled: Handled::Parts([1.0, 0.5]),
/// #     levels: Levels::default(),
/// # };
/// # let salt = Salinity::from_mg_per_l(400.0)?;
/// # let reading = Reading { salt, again: None, instrument: Instrument::Meter };
/// # let first = Some(Baseline { when: None, reading });
/// let known = decide(&job, &course(first, &[None; MOST_ENTRIES])).unwrap().known.unwrap();
/// let estimate = known.estimate;
/// assert!((estimate.volume().mean - 61.7).abs() < 0.1); // people over-estimate
/// assert!((estimate.salt(6.0).about().mean - 2_341.4).abs() < 0.1); // with six bags in it
/// assert!((estimate.mean_need(3_200.0) - 8.68).abs() < 0.005);
/// assert!((estimate.mean_bags(3_200.0) - 8.68).abs() < 0.005);
/// assert_eq!([0.05, 0.5, 0.95].map(|sure| estimate.bags(3_200.0, sure)), [8.0, 9.0, 10.0]);
/// # Ok(())
/// # }
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The volumes tried.
    pub nodes: [Node; NODES],
    /// Pure salt in a bag, g.
    pub bag: f64,
}

impl Estimate {
    /// What the evidence makes of the prior.
    ///
    /// Nodes stand evenly over ±4 `s`, by the trapezoid rule; then twice more over mean ± 8 spreads of
    /// the pass before. Within 0.3 % in volume and 11 mg/L in salt of brute force.
    pub(crate) fn new(prior: &Prior, evidence: &Evidence) -> Self {
        let (before, after) = evidence.around_first_dose();
        let start = Filter::new(evidence).after(before, &evidence.meters, 0.0);
        let mut nodes = [Node::default(); NODES];
        let end = 4.0 * prior.wide;
        let (mut low, mut high) = (-end, end);
        for _ in 0..PASSES {
            let apart = (high - low) / (NODES - 1) as f64;
            let place = |i: usize| low + apart * i as f64;
            let mut most = f64::NEG_INFINITY;
            for (i, node) in nodes.iter_mut().enumerate() {
                let rise = prior.rise(place(i));
                let found = start.after(after, &evidence.meters, rise);
                let weight = found.likely + prior.log_density(place(i));
                most = libm::fmax(most, weight);
                *node = Node { weight, rise, salt: found.salt(), spread: libm::sqrt(found.var()) };
            }
            for node in &mut nodes {
                node.weight = libm::exp(node.weight - most);
            }
            nodes[0].weight *= 0.5;
            nodes[NODES - 1].weight *= 0.5;
            let all: f64 = nodes.iter().map(|node| node.weight).sum();
            nodes.iter_mut().for_each(|node| node.weight /= all);
            let about = about(nodes.iter().enumerate().map(|(i, node)| (node.weight, place(i), 0.0)));
            let reach = 8.0 * libm::fmax(about.spread, apart);
            (low, high) = (libm::fmax(about.mean - reach, -end), libm::fmin(about.mean + reach, end));
        }
        Self { nodes, bag: prior.bag }
    }

    /// The volume, m³.
    pub fn volume(&self) -> About {
        about(self.nodes.iter().map(|node| (node.weight, self.bag / node.rise, 0.0)))
    }

    /// How much weight lies farther from the prior's volume than `spreads` of a blunder.
    pub(crate) fn beyond(&self, prior: &Prior, spreads: f64) -> f64 {
        let far = |node: &&Node| libm::fabs(libm::log(prior.rise(0.0) / node.rise)) > spreads * prior.wide;
        self.nodes.iter().filter(far).map(|node| node.weight).sum()
    }

    /// The salt after so many bags more, once they have dissolved.
    pub fn salt(&self, bags: f64) -> Mixture {
        Mixture(self.nodes.map(|n| Part { weight: n.weight, mean: n.salt + bags * n.rise, spread: n.spread }))
    }

    /// The reading that is to be expected at `step`, the last of the evidence, whose readings do not
    /// count yet.
    pub(crate) fn foresee(&self, evidence: &Evidence, step: &Step) -> Mixture {
        let (before, after) = evidence.around_first_dose();
        let start = Filter::new(evidence).after(before, &evidence.meters, 0.0);
        Mixture(self.nodes.map(|node| {
            let found = start.after(after, &evidence.meters, node.rise);
            let seen = evidence.meters[step.meter].map(|meter| found.foresee(step, &meter, node.rise));
            let (mean, var) = seen.map_or((0.0, 0.0), |seen| (seen.mean, seen.var));
            Part { weight: node.weight, mean, spread: libm::sqrt(var) }
        }))
    }

    /// Bags to `salt`, on the average; below zero where it is above already.
    pub fn mean_need(&self, salt: f64) -> f64 {
        self.nodes.iter().map(|node| node.weight * (salt - node.salt) / node.rise).sum()
    }

    /// Bags to `salt`, on the average, where none is needed counted as none.
    pub fn mean_bags(&self, salt: f64) -> f64 {
        let of = |node: &Node| {
            let z = (salt - node.salt) / node.spread;
            let density = libm::exp(-0.5 * z * z) / libm::sqrt(2.0 * core::f64::consts::PI);
            node.weight * node.spread * (density + z * upper_tail(-z)) / node.rise
        };
        self.nodes.iter().map(of).sum()
    }

    /// The fewest whole bags that bring the salt up to `salt` as likely as `sure`.
    pub fn bags(&self, salt: f64, sure: f64) -> f64 {
        let near = self.mean_need(salt);
        let short = |bags: i64| self.salt(bags as f64).above(salt) < sure;
        (last(near as i64, short) + 1) as f64
    }
}

impl Estimate {
    /// The bags, to a thousandth, that bring the salt up to `salt` as likely as `sure`; none below none.
    pub fn bags_exactly(&self, salt: f64, sure: f64) -> f64 {
        let most = self.bags(salt, sure);
        let (mut short, mut enough) = (libm::fmax(most - 1.0, 0.0), libm::fmax(most, 0.0));
        for _ in 0..10 {
            let middle = 0.5 * (short + enough);
            if self.salt(middle).above(salt) < sure { short = middle } else { enough = middle }
        }
        enough
    }
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
