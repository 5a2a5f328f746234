//! What if there is too much of what only other water takes out?

use crate::input::answers::{Needs, Unknown};
use crate::input::case::{Case, Goals, TestedWater, Tests};
use crate::input::choices::Input;
use crate::policy;
use crate::salt::dilute::Dilution;
use crate::water::drain::{Cap, DrainInput, cap};
use chem::{Alkalinity, CyanuricAcid, Fraction, Hardness, Salinity, State, Volume, Water, dilution};
use dilution::Conserved;

/// What stands above where it is to be. Only other water brings any of it down.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Excess {
    /// Salt, and the target it is to fall to.
    pub salt: Option<Salinity>,
    /// Calcium hardness, and its goal.
    pub hardness: Option<Hardness>,
    /// Cyanuric acid, and its goal.
    pub cyanuric_acid: Option<CyanuricAcid>,
}

impl Excess {
    /// What of a water stands above its goals; of its salt, the target where that is over.
    ///
    /// ```
    /// use chem::CyanuricAcid;
    /// use saltwright_plan::{Excess, Goals, Tests};
    /// let mg = |x| CyanuricAcid::from_mg_per_l(x).ok();
    /// let goals = Goals { cyanuric_acid: mg(50.0), ..Goals::default() };
    /// let water = Tests { cyanuric_acid: mg(130.0), ..Tests::default() };
    /// assert_eq!(Excess::of(&goals, &water, None).unwrap().cyanuric_acid, mg(50.0));
    /// assert_eq!(Excess::of(&Goals::default(), &water, None), None);
    /// ```
    #[must_use]
    pub fn of(goals: &Goals, water: &Tests, salt: Option<Salinity>) -> Option<Self> {
        let excess = Self {
            salt,
            hardness: over(goals.hardness, water.hardness, policy::NEAR_HARDNESS),
            cyanuric_acid: over(goals.cyanuric_acid, water.cyanuric_acid, policy::NEAR_CYANURIC_ACID),
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
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
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
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
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
    pub mixed: Result<State, Unknown>,
    /// What is missing for the salt afterwards.
    pub needs: Needs,
    /// What is missing for the other tests afterwards.
    pub wants: Needs,
}

/// Drains of no more than the cap.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Parts {
    /// The most that may be drained at one go, and whose figure that is.
    pub cap: Cap,
    /// The first of them.
    pub first: [Option<DrainPart>; MOST_PARTS],
    /// How many in all.
    pub count: u32,
    /// All together.
    pub total: Amount,
}

/// One drain.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct DrainPart {
    /// Of the pool.
    pub amount: Amount,
    /// What the drains are for, after it: the analyte that decides, mg/L.
    pub level: Option<f64>,
}

/// More drains than this are only counted.
pub const MOST_PARTS: usize = 12;

/// A share of the pool, and the water in it once the volume is known.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Amount {
    /// Parts of the pool; above 1 where water is run through it or replaced again and again.
    pub share: f64,
    /// The same as water.
    pub volume: Option<Volume>,
}

/// What a replacement is worked out from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ReplacementInput {
    /// The pool's tests, with the salt that is in it now.
    pub pool: TestedWater,
    /// The fill water's tests.
    pub fill: Tests,
    /// The fill water's salt.
    pub fill_salt: Option<Salinity>,
    /// Amount of water: where doses have told it, by these.
    pub volume: Option<Volume>,
    /// How much may be drained at one go.
    pub drain: DrainInput,
}

impl ReplacementInput {
    /// Of a case, and the salt and the size of its pool as far as they are known now.
    #[must_use]
    pub fn of(case: &Case, reading: Option<Salinity>, volume: Option<Volume>) -> Self {
        Self {
            pool: TestedWater { reading, ..case.tested() },
            fill: case.fill,
            fill_salt: case.fill_salt,
            volume,
            drain: DrainInput::of(case),
        }
    }
}

/// Replacement that takes all of an excess away: the analyte that needs most decides.
///
/// Where the salt is in doubt, `dilution` has its share. Errors: [`Unknown::Needs`] while the pool's or the fill
/// water's value of an analyte in excess is missing.
///
/// ```
/// use chem::Salinity;
/// use saltwright_plan::{Case, water::replacement as replace};
/// let ppm = |x| Salinity::from_mg_per_l(x).unwrap();
/// let case = Case { fill_salt: Some(ppm(400.0)), ..Case::default() };
/// let input = replace::ReplacementInput::of(&case, Some(ppm(4_000.0)), None);
/// let excess = replace::Excess { salt: Some(ppm(3_200.0)), ..Default::default() };
/// let parts = replace::replace(&input, excess, None).unwrap().parts.unwrap();
/// assert_eq!(parts.count, 2); // 22.2 % in drains of 15 % at most
/// ```
pub fn replace(
    input: &ReplacementInput,
    excess: Excess,
    dilution: Option<Dilution>,
) -> Result<Replace, Unknown> {
    let (p, f) = (&input.pool.tests, &input.fill);
    let needs = Needs::of(&[
        (Input::FillSalt, input.fill_salt.is_some()),
        (Input::FillHardness, f.hardness.is_some() || excess.hardness.is_none()),
        (Input::FillCyanuricAcid, f.cyanuric_acid.is_some() || excess.cyanuric_acid.is_none()),
    ]);
    let wants = Needs::of(&[
        (Input::FillTemperature, f.temperature.is_some()),
        (Input::FillPh, f.ph.is_some()),
        (Input::FillAlkalinity, f.alkalinity.is_some()),
        (Input::FillHardness, f.hardness.is_some()),
        (Input::FillCyanuricAcid, f.cyanuric_acid.is_some()),
    ]);
    let salt = match dilution {
        Some(Dilution { share }) => {
            Some(Ok(Demand { of: Analyte::Salt, share, exchange: -libm::log1p(-share) }))
        }
        None => demand(Analyte::Salt, excess.salt, input.pool.reading, input.fill_salt),
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
    let amount = |share: f64| Amount { share, volume: input.volume.and_then(|v| v.checked_mul(share).ok()) };
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
            .and_then(|share| parts(input, share, most.map_or(Analyte::Salt, |most| most.of), amount)),
        from: input.pool.reading,
        water: input.volume,
        salt: after(input.pool.reading, input.fill_salt, share),
        alkalinity: after(p.alkalinity, f.alkalinity, share),
        hardness: after(p.hardness, f.hardness, share),
        cyanuric_acid: after(p.cyanuric_acid, f.cyanuric_acid, share),
        mixed: mixed(input, share).and_then(|water| water.state().map_err(Unknown::Chemistry)),
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

fn parts(
    input: &ReplacementInput,
    share: Fraction,
    of: Analyte,
    amount: impl Fn(f64) -> Amount,
) -> Option<Parts> {
    let cap = cap(&input.drain)?;
    let mut parts = Parts { cap, first: [None; MOST_PARTS], count: 0, total: amount(0.0) };
    let mut total = 0.0;
    for part in dilution::in_parts(share, cap.share) {
        if let Some(place) = parts.first.get_mut(parts.count as usize) {
            let (pool, fill, gone) = (&input.pool.tests, &input.fill, Ok(part.gone));
            let level = match of {
                Analyte::Salt => after(input.pool.reading, input.fill_salt, gone).map(Salinity::mg_per_l),
                Analyte::Hardness => after(pool.hardness, fill.hardness, gone).map(Hardness::mg_per_l),
                Analyte::CyanuricAcid => {
                    after(pool.cyanuric_acid, fill.cyanuric_acid, gone).map(CyanuricAcid::mg_per_l)
                }
            };
            *place = Some(DrainPart { amount: amount(part.share.ratio()), level });
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

/// The water that a replacement leaves, by mixing the two.
pub(crate) fn replaced_water(input: &ReplacementInput, replace: &Replace) -> Result<Water, Unknown> {
    let share = replace
        .at_once
        .and_then(|amount| Fraction::from_ratio(amount.share).map_err(|_| chem::DilutionError::FillTooSalty));
    mixed(input, share)
}

fn mixed(input: &ReplacementInput, share: Result<Fraction, chem::DilutionError>) -> Result<Water, Unknown> {
    let (Some(instrument), Ok(share)) = (input.pool.instrument, share) else { return Err(Unknown::NotAsked) };
    let water = |tests: &Tests, reading: Option<Salinity>| {
        let sample = reading.and_then(|reading| tests.behind(reading, instrument));
        sample.ok_or(Unknown::NotAsked)?.water().map_err(Unknown::Chemistry)
    };
    let (pool, fill) = (water(&input.pool.tests, input.pool.reading)?, water(&input.fill, input.fill_salt)?);
    Ok(pool.replaced(fill, share))
}
