//! What if there is too much of what only other water takes out?

use crate::Unknown;
use crate::case::{Case, Needs, Tests};
use crate::choice::{Ground, Input, Surface};
use crate::dilute::Dilution;
use crate::policy;
use chem::{Alkalinity, CyanuricAcid, Fraction, Hardness, Salinity, Volume, Water, dilution};
use dilution::Conserved;

/// What stands above where it is to be. Only other water brings any of it down.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Excess {
    /// Salt, and the target it is to fall to.
    pub salt: Option<Salinity>,
    /// Calcium hardness, and its goal.
    pub hardness: Option<Hardness>,
    /// Cyanuric acid, and its goal.
    pub cyanuric_acid: Option<CyanuricAcid>,
}

impl Excess {
    /// What of a case stands above its goals, and above the band where `salt_over`.
    ///
    /// ```
    /// use chem::CyanuricAcid;
    /// use plan::{Case, Goals, Tests, replace::Excess};
    /// let mg = |x| CyanuricAcid::from_mg_per_l(x).ok();
    /// let goals = Goals { cyanuric_acid: mg(50.0), ..Goals::default() };
    /// let water = Tests { cyanuric_acid: mg(130.0), ..Tests::default() };
    /// let case = Case { goals, water, ..Case::default() };
    /// assert_eq!(Excess::of(&case, false).unwrap().cyanuric_acid, mg(50.0));
    /// assert_eq!(Excess::of(&Case::default(), false), None);
    /// ```
    pub fn of(case: &Case, salt_over: bool) -> Option<Self> {
        let (goals, water) = (case.goals, &case.water);
        let excess = Self {
            salt: case.band.filter(|_| salt_over).map(|band| band.target),
            hardness: over(goals.hardness, water.hardness, policy::NEAR_HARDNESS),
            cyanuric_acid: over(goals.cyanuric_acid, water.cyanuric_acid, policy::NEAR_CYANURATE),
        };
        (excess != Self::default()).then_some(excess)
    }
}

/// The goal, if the water stands above it by more than is `near`.
fn over<Q: Conserved>(goal: Option<Q>, now: Option<Q>, near: f64) -> Option<Q> {
    goal.filter(|goal| now.is_some_and(|now| now.mg_per_l() - goal.mg_per_l() > near))
}

/// What can be in excess.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Analyte {
    /// Salt.
    #[default]
    Salt,
    /// Calcium hardness.
    Hardness,
    /// Cyanuric acid.
    CyanuricAcid,
}

/// Water to replace.
#[derive(Clone, Copy, Debug)]
pub struct Replace {
    /// For the sake of which.
    pub excess: Excess,
    /// The one of them that asks for most.
    pub decides: Analyte,
    /// At one go.
    pub at_once: Result<Amount, chem::DilutionError>,
    /// By running fill water through a full pool.
    pub exchange: Option<Amount>,
    /// In parts; `None` while the cap is not known.
    pub parts: Option<Parts>,
    /// The salt now.
    pub from: Option<Salinity>,
    /// All of the water: where doses have told its size, by these.
    pub water: Option<Volume>,
    /// The salt reading afterwards.
    pub salt: Option<Salinity>,
    /// The other tests afterwards, those that are known on both sides.
    pub alkalinity: Option<Alkalinity>,
    /// See `alkalinity`.
    pub hardness: Option<Hardness>,
    /// See `alkalinity`.
    pub cyanuric_acid: Option<CyanuricAcid>,
    /// The water afterwards, by mixing the two; no gas lost.
    pub mixed: Result<Water, Unknown>,
    /// What is missing for the salt afterwards.
    pub needs: Needs,
    /// What is missing for the other tests afterwards.
    pub wants: Needs,
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
    /// What the drains are for, after it: the analyte that decides, mg/L.
    pub level: Option<f64>,
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
    /// A hand-span off the depth of this pool.
    Depth,
    /// Cement over ground water that is known to be low.
    Cement,
    /// The owner's own smaller figure.
    Owner,
}

/// The cap of a case, and whether the owner's own figure is larger; `None` while that is garbled, or the depth.
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
    let span = case.depth.given().map(|depth| policy::HAND_SPAN / depth.metres()).filter(|part| *part < 1.0);
    let (share, basis) = match span {
        _ if cement => (policy::CAP_CEMENT, Basis::Cement),
        Some(part) => (part, Basis::Depth),
        // It may be deeper than what is careful for a pool that nobody measured.
        None if case.depth.is_garbled() => return None,
        None => (policy::CAP_UNKNOWN, Basis::Careful),
    };
    let share = Fraction::from_ratio(share).ok()?;
    let own = case.cap.or(share)?;
    let cap = if own < share { Cap { share: own, basis: Basis::Owner } } else { Cap { share, basis } };
    Some((cap, own > share))
}

/// Replacement that takes all of an excess away: the analyte that needs most decides.
///
/// Where the salt is in doubt, `dilution` has its share. Errors: [`Unknown::Needs`] while the pool's or the fill water's value of an analyte in excess is missing.
///
/// ```
/// use chem::Salinity;
/// use plan::{Case, Optional, replace};
/// let ppm = |x| Salinity::from_mg_per_l(x).unwrap();
/// let case = Case { reading: Optional::Given(ppm(4_000.0)), fill_salt: Some(ppm(400.0)), ..Case::default() };
/// let excess = replace::Excess { salt: Some(ppm(3_200.0)), ..Default::default() };
/// let parts = replace::replace(&case, excess, None).unwrap().parts.unwrap();
/// assert_eq!(parts.count, 2); // 22.2 % in drains of 15 % at most
/// ```
pub fn replace(case: &Case, excess: Excess, dilution: Option<Dilution>) -> Result<Replace, Unknown> {
    let (p, f) = (&case.water, &case.fill);
    let needs = Needs::of(&[
        (Input::FillSalt, case.fill_salt.is_some()),
        (Input::FillHardness, f.hardness.is_some() || excess.hardness.is_none()),
        (Input::FillCyanurate, f.cyanuric_acid.is_some() || excess.cyanuric_acid.is_none()),
    ]);
    let wants = Needs::of(&[
        (Input::FillHeat, f.heat.is_some()),
        (Input::FillPh, f.ph.is_some()),
        (Input::FillAlkalinity, f.alkalinity.is_some()),
        (Input::FillHardness, f.hardness.is_some()),
        (Input::FillCyanurate, f.cyanuric_acid.is_some()),
    ]);
    let salt = match dilution {
        Some(Dilution { share }) => {
            Some(Ok(Demand { of: Analyte::Salt, share, exchange: -libm::log1p(-share) }))
        }
        None => demand(Analyte::Salt, excess.salt, case.read(), case.fill_salt),
    };
    let hardness = demand(Analyte::Hardness, excess.hardness, p.hardness, f.hardness);
    let cyanuric_acid = demand(Analyte::CyanuricAcid, excess.cyanuric_acid, p.cyanuric_acid, f.cyanuric_acid);
    let mut most = Ok(Demand::default());
    for demand in [salt, hardness, cyanuric_acid] {
        most = match (most, demand.ok_or(Unknown::Needs(needs))?) {
            (Ok(a), Ok(b)) => Ok(if b.share > a.share { b } else { a }),
            (Err(fault), _) | (_, Err(fault)) => Err(fault),
        };
    }
    let amount = |share: f64| Amount { share, volume: case.volume.and_then(|v| v.checked_mul(share).ok()) };
    let share =
        most.and_then(|most| Fraction::from_ratio(most.share).map_err(|_| chem::DilutionError::FillTooSalty));
    Ok(Replace {
        excess,
        decides: most.map_or(Analyte::Salt, |most| most.of),
        at_once: share.map(|f| amount(f.ratio())),
        // All of the water, so without end.
        exchange: most.ok().filter(|most| most.share < 1.0).map(|most| amount(most.exchange)),
        parts: share
            .ok()
            .and_then(|share| parts(case, share, most.map_or(Analyte::Salt, |most| most.of), amount)),
        from: case.read(),
        water: case.volume,
        salt: after(case.read(), case.fill_salt, share),
        alkalinity: after(p.alkalinity, f.alkalinity, share),
        hardness: after(p.hardness, f.hardness, share),
        cyanuric_acid: after(p.cyanuric_acid, f.cyanuric_acid, share),
        mixed: mixed(case, share),
        needs,
        wants,
    })
}

/// What one analyte asks for.
#[derive(Clone, Copy, Default)]
struct Demand {
    /// Which.
    of: Analyte,
    /// Share of the pool, at one go.
    share: f64,
    /// Pools of water run through a full one.
    exchange: f64,
}

/// Nothing is asked without a goal; `None` while a value is missing.
fn demand<Q: Conserved>(
    of: Analyte,
    goal: Option<Q>,
    now: Option<Q>,
    fill: Option<Q>,
) -> Option<Result<Demand, chem::DilutionError>> {
    let Some(goal) = goal else { return Some(Ok(Demand::default())) };
    let (now, fill) = now.zip(fill)?;
    Some(dilution::share(now, goal, fill).and_then(|share| {
        let exchange = dilution::exchange(Volume::ONE, now, goal, fill)?;
        Ok(Demand { of, share: share.ratio(), exchange: exchange.cubic_metres() })
    }))
}

fn parts(case: &Case, share: Fraction, of: Analyte, amount: impl Fn(f64) -> Amount) -> Option<Parts> {
    let (cap, owner_larger) = cap(case)?;
    let mut parts = Parts { cap, owner_larger, first: [None; MOST_PARTS], count: 0, total: amount(0.0) };
    let mut total = 0.0;
    for part in dilution::in_parts(share, cap.share) {
        if let Some(place) = parts.first.get_mut(parts.count as usize) {
            let (pool, fill, gone) = (&case.water, &case.fill, Ok(part.gone));
            let level = match of {
                Analyte::Salt => after(case.read(), case.fill_salt, gone).map(Salinity::mg_per_l),
                Analyte::Hardness => after(pool.hardness, fill.hardness, gone).map(Hardness::mg_per_l),
                Analyte::CyanuricAcid => {
                    after(pool.cyanuric_acid, fill.cyanuric_acid, gone).map(CyanuricAcid::mg_per_l)
                }
            };
            *place = Some(Part { amount: amount(part.share.ratio()), level });
        }
        parts.count = parts.count.saturating_add(1);
        total += part.share.ratio();
    }
    Some(Parts { total: amount(total), ..parts })
}

/// However it is replaced, at once, in parts or by running through, the same part of the old water
/// is left in the end, so each test ends at the same figure.
fn after<Q: Conserved>(
    pool: Option<Q>,
    fill: Option<Q>,
    share: Result<Fraction, chem::DilutionError>,
) -> Option<Q> {
    Some(pool?.replaced(fill?, share.ok()?))
}

fn mixed(case: &Case, share: Result<Fraction, chem::DilutionError>) -> Result<Water, Unknown> {
    let (Some(instrument), Ok(share)) = (case.instrument, share) else { return Err(Unknown::NotAsked) };
    let water = |tests: &Tests, reading: Option<Salinity>| {
        let sample = reading.and_then(|reading| tests.behind(reading, instrument));
        sample.ok_or(Unknown::NotAsked)?.water().map_err(Unknown::Chemistry)
    };
    let (pool, fill) = (water(&case.water, case.read())?, water(&case.fill, case.fill_salt)?);
    Ok(pool.replaced(fill, share))
}
