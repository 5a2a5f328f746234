//! What if there is too much salt? Only water takes it out.

use crate::Unknown;
use crate::band::Band;
use crate::case::{Case, Ground, Input, Needs, Surface};
use crate::policy;
use chem::salt::sodium_chloride_behind;
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
    /// Salt now, to aim at and in the fill water: what the parts are worked out from.
    pub salt: [Salinity; 3],
    /// The other tests afterwards, those that are known on both sides.
    pub alkalinity: Option<Alkalinity>,
    /// See `alkalinity`.
    pub hardness: Option<Hardness>,
    /// See `alkalinity`.
    pub cyanurate: Option<Cyanurate>,
    /// pH and index afterwards, by mixing the two waters; no gas lost.
    pub mixed: Option<State>,
    /// What is missing for some of this.
    pub needs: Needs,
}

/// Drains of no more than the cap.
#[derive(Clone, Copy, Debug)]
pub struct Parts {
    /// The most that may be drained at one go, and whose figure that is.
    pub cap: Cap,
    /// How many.
    pub count: u32,
    /// All together.
    pub total: Amount,
}

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

/// The cap of a case; `None` while the owner's own figure is garbled.
pub fn cap(case: &Case) -> Option<Cap> {
    let cement = case.surface == Some(Surface::Cement) && case.ground == Some(Ground::Low);
    let (share, basis) =
        if cement { (policy::CAP_CEMENT, Basis::Cement) } else { (policy::CAP_UNKNOWN, Basis::Careful) };
    let own = case.cap.or(Fraction::WHOLE)?;
    if own.ratio() < share {
        return Some(Cap { share: own, basis: Basis::Owner });
    }
    Fraction::from_ratio(share).ok().map(|share| Cap { share, basis })
}

/// Replacement for a case whose reading is above the band.
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
    let (Some(now), Some(fill)) = (case.reading, case.fill_salt) else {
        return Err(Unknown::Needs(needs));
    };
    let target = band.target;
    let amount = |share: f64| Amount { share, volume: case.volume.map(|v| v.times(share)) };
    let share = dilution::share(now, target, fill);
    let parts = cap(case).map(|cap| {
        let (count, total) = dilution::passes(now, target, fill, cap.share)
            .fold((0, 0.0), |(n, sum), pass| (n + 1, sum + pass.share.ratio()));
        Parts { cap, count, total: amount(total) }
    });
    Ok(Replace {
        at_once: share.map(|f| amount(f.ratio())),
        exchange: dilution::exchange(Volume::ONE, now, target, fill).ok().map(|v| amount(v.cubic_metres())),
        parts,
        salt: [now, target, fill],
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
) -> Option<State> {
    let responds = case.instrument?.responds();
    let water = |tests: &crate::case::Tests, reading| {
        let salt = sodium_chloride_behind(reading, responds, tests.alkalinity?, tests.hardness?);
        tests.sample(salt)?.water().ok()
    };
    let (pool, fill) = (water(&case.water, now)?, water(&case.fill, fill)?);
    pool.replaced(fill, share.ok()?).state().ok()
}
