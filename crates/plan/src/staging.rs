//! How many bags to buy, how many now, how many later?
//!
//! The simple rule of the trade: most of it now, read again, then the rest. It knows nothing of how
//! sure the volume and the reading are; `stage` is the one function to replace when that changes.

use crate::band::{Band, Standing};
use crate::case::{Bag, Case, History, Input, Needs, Optional};
use crate::policy;
use chem::{Mass, Purity, Salinity, Volume, salt};

/// Salt to the target, as far as it can be known.
#[derive(Clone, Copy, Debug, Default)]
pub struct Dose {
    /// Rise from the reading to the target; `None` at or above it.
    pub rise: Option<Salinity>,
    /// Sodium chloride for the rise.
    pub pure: Option<Mass>,
    /// Salt of the stated purity for the rise.
    pub mass: Option<Mass>,
    /// Bags and stages.
    pub staging: Option<Staging>,
    /// Bags to buy at most and at least while nobody has read the salt.
    pub range: Option<[u32; 2]>,
    /// What is missing.
    pub needs: Needs,
}

/// Bags and stages.
#[derive(Clone, Copy, Debug)]
pub struct Staging {
    /// Exact number of bags.
    pub bags: f64,
    /// Whole bags for the job.
    pub total: u32,
    /// The total was rounded down: the shortfall is not worth a bag.
    pub rounded_down: bool,
    /// The last bag may stay shut: whole bags come to more than is needed.
    pub spare: bool,
    /// Whole bags to buy, those in hand taken off; `None` while those are not known.
    pub buy: Option<u32>,
    /// Reading if every whole bag of the total went in.
    pub lands: Salinity,
    /// Salt left when the job is done, of all bags bought and in hand; `None` while those are not known.
    pub left: Option<Mass>,
    /// The first stage.
    pub first: Portion,
    /// Expected reading after it.
    pub expect: Salinity,
    /// The rest, to be settled by the retest.
    pub later: Portion,
    /// Expected reading after it: the target, or a little less where a bag was not worth buying.
    pub lasts: Salinity,
}

/// An amount to add.
#[derive(Clone, Copy, Debug)]
pub struct Portion {
    /// Its mass.
    pub mass: Mass,
    /// The same in bags.
    pub bags: f64,
    /// To be weighed, because bags are too coarse.
    pub weighed: bool,
}

/// The dose of a case.
///
/// ```
/// use chem::*;
/// use plan::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let case = Case {
///     volume: Some(Volume::from_cubic_metres(62.82)?),
///     reading: Optional::Given(Salinity::from_mg_per_l(400.0)?),
///     band: Band::of(None, Some(Salinity::from_mg_per_l(3_200.0)?), None).ok(),
///     bag: Bag {
///         size: Some(Mass::from_kilograms(20.0)?),
///         purity: Some(Purity::from_ratio(0.994)?),
///         ..Bag::default()
///     },
///     ..Case::default()
/// };
/// let staging = staging::dose(&case, Some(Standing::Short)).staging.unwrap();
/// assert_eq!((staging.total, staging.first.bags), (9, 6.0));
/// # Ok(())
/// # }
/// ```
pub fn dose(case: &Case, standing: Option<Standing>) -> Dose {
    let mut needs =
        Needs::of(&[(Input::Volume, case.volume.is_some()), (Input::Reading, case.read().is_some())]);
    if matches!(standing, None | Some(Standing::Short)) {
        needs = needs.and(Needs::of(&[
            (Input::BagSize, case.bag.size.is_some()),
            (Input::Purity, case.bag.purity.is_some()),
        ]));
    }
    let mut dose = Dose { needs, ..Dose::default() };
    let Some(band) = case.band else { return dose };
    let Some(reading) = case.read() else {
        if case.reading != Optional::Garbled {
            dose.range = range(case, &band);
        }
        return dose;
    };
    dose.rise = band.target.above(reading);
    let (Some(rise), Some(volume)) = (dose.rise, case.volume) else { return dose };
    dose.pure = Some(salt::mass_for(volume, rise, Purity::WHOLE));
    let Some(purity) = case.bag.purity else { return dose };
    let mass = salt::mass_for(volume, rise, purity);
    dose.mass = Some(mass);
    let size = case.bag.size.filter(|size| *size > Mass::NONE);
    dose.staging = size.map(|size| stage(reading, mass, size, purity, volume, &case.bag));
    dose
}

/// Whole bags for `mass`, and whether they fall short of it.
///
/// Up, but down when the shortfall is worth no more than the slack; never down to nothing.
fn whole_bags(mass: Mass, size: Mass, purity: Purity, volume: Volume) -> (u32, bool) {
    let bags = in_bags(mass, size);
    let down = libm::floor(bags + TINY);
    let short = salt::rise_from(mass.less(size.times(down)), purity, volume);
    let rounded_down = down > 0.0 && bags > down + TINY && short.mg_per_l() <= policy::BUYING_SLACK;
    let whole = if rounded_down { down } else { libm::ceil(bags - TINY) };
    (whole as u32, rounded_down)
}

/// The simple rule: buy whole bags, put in 0.7 of the need in whole bags (half bags where that is
/// too coarse, weighed where the need is under two), leave the rest to the retest.
fn stage(reading: Salinity, mass: Mass, size: Mass, purity: Purity, volume: Volume, bag: &Bag) -> Staging {
    let bags = in_bags(mass, size);
    let (total, rounded_down) = whole_bags(mass, size, purity, volume);
    let aim = policy::FIRST_STAGE * bags;
    let steps_of = |step: f64, x: f64| libm::floor(x / step + TINY) * step;
    let weighed = bags < policy::WEIGH_BELOW_BAGS;
    let first = if weighed {
        let finely = mass.kilograms() < policy::WEIGH_FINELY_BELOW;
        let step = in_bags(bag.weighed_in[if finely { 0 } else { 1 }], size);
        match steps_of(step, aim) {
            none if none <= 0.0 => bags, // Less than a step: there is nothing to stage.
            some => some,
        }
    } else {
        let whole = steps_of(1.0, aim);
        if whole < policy::FIRST_STAGE_LEAST * bags { steps_of(0.5, aim) } else { whole }
    };
    let portion = |bags: f64| Portion { mass: size.times(bags), bags, weighed };
    let reading_after = |mass| reading.raised_by(salt::rise_from(mass, purity, volume));
    let all = if rounded_down { size.times(total.into()) } else { mass };
    let have = bag.in_hand.or(0);
    Staging {
        bags,
        total,
        rounded_down,
        spare: total > 1 && f64::from(total) > bags + TINY,
        buy: have.map(|have| total.saturating_sub(have)),
        lands: reading_after(size.times(total.into())),
        left: have.map(|have| size.times(total.max(have).into()).less(all)),
        first: portion(first),
        expect: reading_after(size.times(first)),
        later: portion((in_bags(all, size) - first).max(0.0)),
        lasts: reading_after(all),
    }
}

/// Bags to buy at least and at most while there is no reading: the same sum at both ends of what a
/// pool of this history may hold.
fn range(case: &Case, band: &Band) -> Option<[u32; 2]> {
    let size = case.bag.size.filter(|size| *size > Mass::NONE)?;
    let (volume, purity) = (case.volume?, case.bag.purity?);
    let have = case.bag.in_hand.or(0)?;
    let (mean, spread) = match case.history? {
        History::Fresh => policy::UNREAD_FRESH,
        History::Older => policy::UNREAD_OLDER,
        History::Salted => policy::UNREAD_SALTED,
        History::Unknown => policy::UNREAD_UNKNOWN,
    };
    let bags = |salt: f64| {
        let salt = Salinity::from_mg_per_l(salt.max(0.0)).ok()?;
        let Some(rise) = band.target.above(salt) else {
            return Some(0);
        };
        let (total, _) = whole_bags(salt::mass_for(volume, rise, purity), size, purity, volume);
        Some(total.saturating_sub(have))
    };
    Some([bags(mean + spread)?, bags(mean - spread)?])
}

/// What rounding may hide: a millionth of a bag is no bag.
const TINY: f64 = 1e-6;

fn in_bags(mass: Mass, size: Mass) -> f64 {
    mass.kilograms() / size.kilograms()
}
