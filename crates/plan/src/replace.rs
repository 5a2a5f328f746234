//! What if there is too much salt? Only water takes it out.

use crate::Unknown;
use crate::band::Band;
use crate::case::{Case, Ground, Input, Needs, Surface, Tests};
use crate::policy;
use chem::{Alkalinity, Cyanurate, Fraction, Hardness, Salinity, State, Volume, dilution};
use dilution::Conserved;

/// Water to replace.
#[derive(Clone, Copy, Debug)]
pub struct Replace {
    /// At one go, all other things ignored.
    pub at_once: Result<Amount, dilution::Fault>,
    /// By running fill water through a full pool.
    pub exchange: Option<Amount>,
    /// In parts; `None` while the cap is not known.
    pub parts: Option<Parts>,
    /// The other tests afterwards, those that are known on both sides.
    pub alkalinity: Option<Alkalinity>,
    /// See `alkalinity`.
    pub hardness: Option<Hardness>,
    /// See `alkalinity`.
    pub cyanurate: Option<Cyanurate>,
    /// pH and index afterwards, by mixing the two waters; no gas lost.
    pub mixed: Result<State, Unknown>,
    /// What is missing for some of this.
    pub needs: Needs,
}

/// Drains of no more than the cap.
#[derive(Clone, Copy, Debug)]
pub struct Parts {
    /// The most that may be drained at one go, and whose figure that is.
    pub cap: Cap,
    /// The owner's own figure is larger, and was not used.
    pub owner_larger: bool,
    /// The first of them.
    pub first: [Option<Part>; MOST_PARTS],
    /// How many in all.
    pub count: u32,
    /// All together.
    pub total: Amount,
}

/// One drain.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// Of the pool.
    pub amount: Amount,
    /// Reading after it.
    pub salt: Salinity,
}

/// More drains than this are only counted.
pub const MOST_PARTS: usize = 12;

/// A share of the pool, and the water in it once the volume is known.
#[derive(Clone, Copy, Debug)]
pub struct Amount {
    /// Parts of the pool; above 1 where water is run through it or replaced again and again.
    pub share: f64,
    /// The same as water.
    pub volume: Option<Volume>,
}

/// The most that may be drained at one go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cap {
    /// Share of the pool.
    pub share: Fraction,
    /// Whose figure it is.
    pub basis: Basis,
}

/// Where a cap comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// What is not known counts as the careful case.
    Careful,
    /// Cement over ground water that is known to be low.
    Cement,
    /// The owner's own smaller figure.
    Owner,
}

/// The cap of a case, and whether the owner's own figure is larger; `None` while that is garbled.
///
/// ```
/// use plan::replace::{Basis, cap};
/// use plan::{Case, Optional, Surface};
/// // Cement alone is not enough for the larger cap: what stands under it counts.
/// let case = Case { surface: Some(Surface::Cement), ..Case::default() };
/// assert_eq!(cap(&case).unwrap().0.basis, Basis::Careful);
/// assert!(cap(&Case { cap: Optional::Garbled, ..case }).is_none());
/// ```
pub fn cap(case: &Case) -> Option<(Cap, bool)> {
    let cement = case.surface == Some(Surface::Cement) && case.ground == Some(Ground::Low);
    let (share, basis) =
        if cement { (policy::CAP_CEMENT, Basis::Cement) } else { (policy::CAP_UNKNOWN, Basis::Careful) };
    let share = Fraction::from_ratio(share).ok()?;
    let own = case.cap.or(share)?;
    let cap = if own < share { Cap { share: own, basis: Basis::Owner } } else { Cap { share, basis } };
    Some((cap, own > share))
}

/// Replacement for a case whose reading is above the band.
///
/// Errors: [`Unknown::Needs`] while the reading or the fill water's salt is missing.
///
/// ```
/// use chem::Salinity;
/// use plan::{Band, Case, Optional, replace};
/// let ppm = |x| Salinity::from_mg_per_l(x).unwrap();
/// let case = Case { reading: Optional::Given(ppm(4_000.0)), fill_salt: Some(ppm(400.0)), ..Case::default() };
/// let band = Band::of(None, Some(ppm(3_200.0)), None).unwrap();
/// let parts = replace::replace(&case, &band).unwrap().parts.unwrap();
/// assert_eq!(parts.count, 2); // 22.2 % in drains of 15 % at most
/// ```
pub fn replace(case: &Case, band: &Band) -> Result<Replace, Unknown> {
    let (p, f) = (&case.water, &case.fill);
    let needs = Needs::of(&[
        (Input::Volume, case.volume.is_some()),
        (Input::FillSalt, case.fill_salt.is_some()),
        (Input::FillHeat, f.heat.is_some()),
        (Input::FillPh, f.ph.is_some()),
        (Input::FillAlkalinity, f.alkalinity.is_some()),
        (Input::FillHardness, f.hardness.is_some()),
        (Input::FillCyanurate, f.cyanurate.is_some()),
    ]);
    let (Some(now), Some(fill)) = (case.read(), case.fill_salt) else {
        return Err(Unknown::Needs(needs));
    };
    let target = band.target;
    let amount = |share: f64| Amount { share, volume: case.volume.map(|v| v.times(share)) };
    let share = dilution::share(now, target, fill);
    let parts = cap(case).map(|(cap, owner_larger)| {
        let mut parts = Parts { cap, owner_larger, first: [None; MOST_PARTS], count: 0, total: amount(0.0) };
        let mut total = 0.0;
        for pass in dilution::passes(now, target, fill, cap.share) {
            if let Some(part) = parts.first.get_mut(parts.count as usize) {
                *part = Some(Part { amount: amount(pass.share.ratio()), salt: pass.salt });
            }
            parts.count = parts.count.saturating_add(1);
            total += pass.share.ratio();
        }
        Parts { total: amount(total), ..parts }
    });
    Ok(Replace {
        at_once: share.map(|f| amount(f.ratio())),
        exchange: dilution::exchange(Volume::ONE, now, target, fill).ok().map(|v| amount(v.cubic_metres())),
        parts,
        alkalinity: after(p.alkalinity, f.alkalinity, share),
        hardness: after(p.hardness, f.hardness, share),
        cyanurate: after(p.cyanurate, f.cyanurate, share),
        mixed: mixed(case, now, fill, share),
        needs,
    })
}

/// However it is replaced, at once, in parts or by running through, the same part of the old water
/// is left when the salt is down, so each other test ends at the same figure.
fn after<Q: Conserved>(
    pool: Option<Q>,
    fill: Option<Q>,
    share: Result<Fraction, dilution::Fault>,
) -> Option<Q> {
    Some(pool?.replaced(fill?, share.ok()?))
}

fn mixed(
    case: &Case,
    now: Salinity,
    fill: Salinity,
    share: Result<Fraction, dilution::Fault>,
) -> Result<State, Unknown> {
    let (Some(instrument), Ok(share)) = (case.instrument, share) else { return Err(Unknown::NotAsked) };
    let water = |tests: &Tests, reading| {
        tests.behind(reading, instrument).ok_or(Unknown::NotAsked)?.water().map_err(Unknown::Chemistry)
    };
    let (pool, fill) = (water(&case.water, now)?, water(&case.fill, fill)?);
    pool.replaced(fill, share).state().map_err(Unknown::Chemistry)
}
