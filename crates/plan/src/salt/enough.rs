//! Is it enough, whatever the bags and the size of the pool?
//!
//! As long as no salt went in, the salt in mg/L depends on neither: the filter alone tells it.

use crate::input::case::{Band, RiskLevels};
use crate::policy::EVEN_ODDS;
use crate::policy::uncertainty::{Moments, unread_salt};
use crate::salt::code::Code;
use crate::salt::course::{Course, MOST_VISITS};
use crate::salt::decide::refusal;
use crate::salt::dilute::{Dilution, dilution};
use crate::salt::ekf::{Ekf, Evidence};
use crate::salt::outliers::{Screened, Screening};
use crate::salt::salt_input::SaltInput;
use crate::salt::sums::{Sums, last_of_several};
use chem::Mass;

/// That no salt is due.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Enough {
    /// What is to be done: [`Code::TooSalty`], [`Code::StopNearHigh`] or [`Code::StopInBand`].
    pub code: Code,
    /// Every reading and what became of it.
    pub visits: [Option<Screened>; MOST_VISITS],
    /// Salt, mg/L.
    pub salt: Moments,
    /// How likely it is above the high limit.
    pub over: f64,
    /// The simple sums after a second reading: both have nothing to add.
    pub sums: Option<Sums>,
    /// Water to replace; asked where it is too salty, and nothing without the fill water's reading or
    /// where that is no help.
    pub dilution: Option<Dilution>,
}

/// Whether it is enough; `None` where that depends on bags or size, or is not so. Nothing may be wrong with the course.
pub(crate) fn enough(input: &SaltInput, band: &Band, levels: &RiskLevels, course: &Course) -> Option<Enough> {
    if input.doubt.is_invalid() || course.put_in > Mass::NONE {
        return None;
    }
    let filtered = |salt: Moments, evidence: &Evidence| {
        Ekf::new(salt, &evidence.instruments).after(&evidence.events, &evidence.instruments, 0.0)
    };
    let screening = Screening::of(course, |_| 0.0, unread_salt(input.history()), &|salt, evidence, event| {
        let by = evidence.instruments[event.instrument].map(|by| (filtered(salt, evidence), by));
        by.map_or(Moments::default(), |(known, by)| known.predict(event, &by, 0.0).moments())
    })
    .ok()?;
    let (_, latest) = screening.latest()?;
    if refusal(latest.status).is_some() {
        return None;
    }
    let salt = filtered(screening.salt_prior(), &screening.evidence).salt();
    let (over, low) = (salt.prob_above(band.high.mg_per_l()), salt.prob_below(band.low.mg_per_l()));
    let code = if over > EVEN_ODDS {
        Code::TooSalty
    } else if low > levels.low {
        return None;
    } else if over > levels.over {
        Code::StopNearHigh
    } else if salt.mean >= band.target.mg_per_l() {
        Code::StopInBand
    } else {
        return None;
    };
    let last = last_of_several(&screening.visits).filter(|last| *last >= band.target.mg_per_l());
    Some(Enough {
        code,
        visits: screening.visits,
        salt,
        over,
        sums: last.map(|_| Sums { by_volume: Mass::NONE, by_proportion: None }),
        dilution: if code == Code::TooSalty { dilution(band, input.fill_salt, levels, salt) } else { None },
    })
}
