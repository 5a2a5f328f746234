//! How many bags are to be bought?

use crate::salt::code::Code;
use crate::salt::estimate::Estimate;
use crate::salt::job::Job;

/// Bags to buy.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Buy {
    /// Whole bags for what is to come.
    pub bags: u32,
    /// What 5 and 95 of 100 such pools need at most, to the target itself.
    pub range: [u32; 2],
    /// Those that are not in hand yet.
    pub more: u32,
    /// Bags that stay sealed at this stage; nothing where nothing was decided.
    pub sealed: Option<u32>,
}

/// Bags to buy for what is to come, once a stage is decided with its code.
pub(crate) fn buy(job: &Job, estimate: &Estimate, stage: Option<(Code, f64)>) -> Buy {
    let target = job.band.target.mg_per_l();
    let bags = match stage {
        Some((Code::TooSalty | Code::StopInBand | Code::StopNearHigh | Code::NoMore, _)) => 0.0,
        Some((Code::AddAndFinish, now)) => libm::ceil(now - 1e-9),
        _ => estimate.bags(target - job.levels.slack, job.levels.enough),
    };
    Buy {
        bags: bags as u32,
        range: [0.05, 0.95].map(|sure| estimate.bags(target, sure) as u32),
        more: (bags as u32).saturating_sub(job.in_hand),
        sealed: stage.map(|(_, now)| libm::floor(libm::fmax(bags - now, 0.0) + 1e-9) as u32),
    }
}
