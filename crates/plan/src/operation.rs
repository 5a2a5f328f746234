//! How is the output to be set, and what does a season take of the salt?

use crate::input::answers::{Run, Season, Typed};
use crate::input::case::{Bag, Case};
use crate::policy;
use crate::water::product::ProductAmount;
use crate::water::treatment::TreatmentInput;
use chem::treatment::recipe::dose_to_ph;
use chem::{CarbonDioxide, Chlorine, Length, Mass, Ph, Salinity, Temperature, Volume, salt};

/// What a setting is worked out from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OutputInput {
    /// Amount of water: where doses have told it, by these.
    pub volume: Option<Volume>,
    /// The generator and its pump.
    pub run: Run,
    /// Free chlorine by today's test.
    pub chlorine: Option<Chlorine>,
    /// Where it is to go.
    pub goal: Option<Chlorine>,
    /// The water's temperature.
    pub temperature: Option<Temperature>,
}

impl OutputInput {
    /// Of a case, and the size of its pool as far as it is known.
    #[must_use]
    pub fn of(case: &Case, volume: Option<Volume>) -> Self {
        Self {
            volume,
            run: case.run,
            chlorine: case.water.chlorine.valid(),
            goal: case.goals.chlorine,
            temperature: case.water.temperature,
        }
    }
}

/// A setting to begin with.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Setting {
    /// The demand is our example, not typed.
    pub example: bool,
    /// Chlorine used up a day, g.
    pub grams: f64,
    /// Hours at full output that make it.
    pub full_hours: f64,
    /// Output setting, part of 1; above 1 it can't be set.
    pub share: f64,
    /// The same where the pool uses half as much, and half as much again.
    pub range: [f64; 2],
    /// What it makes in a pump day, in daily demands.
    pub reserve: f64,
    /// Hours at full output that bring free chlorine from today's test to its goal, besides what is used meanwhile.
    pub lift: Option<f64>,
    /// What the temperature does to it.
    pub warmth: Option<Warmth>,
}

impl Setting {
    /// Would it not be enough even at full output all day?
    #[must_use]
    pub fn is_beyond_a_day(&self) -> bool {
        self.full_hours > policy::DAY
    }
}

/// What the water's temperature does to a generator.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Warmth {
    /// Warm enough.
    Enough,
    /// It makes less.
    Throttled,
    /// It may stop.
    Stopped,
}

fn warmth(temperature: Temperature) -> Warmth {
    match temperature.celsius() {
        t if t >= policy::WARM_ENOUGH => Warmth::Enough,
        t if t >= policy::STOPS_BELOW => Warmth::Throttled,
        _ => Warmth::Stopped,
    }
}

/// The setting, once size, rating and pump hours are there.
///
/// ```
/// use saltwright_plan::operation::{OutputInput, setting};
/// use saltwright_plan::{Run, Typed};
/// # fn main() -> Result<(), chem::OutOfRange> {
/// let run = Run { demand: Typed::Valid(3.0), makes: Typed::Valid(20.0), hours: Typed::Valid(12.0) };
/// let volume = Some(chem::Volume::from_cubic_metres(62.82)?);
/// let set = setting(&OutputInput { volume, run, ..OutputInput::default() }).unwrap();
/// assert!((set.full_hours - 9.42).abs() < 0.005 && (set.share - 0.785).abs() < 0.0005);
/// # Ok(())
/// # }
/// ```
#[must_use]
pub fn setting(input: &OutputInput) -> Option<Setting> {
    let (volume, run) = (input.volume?.cubic_metres(), &input.run);
    let demand = run.demand.or(policy::EXAMPLE_DEMAND)?;
    let (makes, hours) = (run.makes.valid()?, run.hours.valid()?);
    if !(makes > 0.0 && hours > 0.0 && demand > 0.0) {
        return None;
    }
    let grams = demand * volume;
    let full_hours = grams / makes;
    let share = full_hours / hours;
    let lift = input.goal.zip(input.chlorine).and_then(|(goal, now)| {
        let rise = goal.mg_per_l() - now.mg_per_l();
        (rise > 0.0).then_some(rise * volume / makes)
    });
    Some(Setting {
        example: run.demand == Typed::Missing,
        grams,
        full_hours,
        share,
        range: policy::DEMAND_RANGE.map(|part| part * share),
        reserve: makes * hours / grams,
        lift,
        warmth: input.temperature.map(warmth),
    })
}

/// What brings a pH that has climbed back again.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Climb {
    /// From here,
    pub from: Ph,
    /// to here, each time.
    pub to: Ph,
    /// The acid for it.
    pub acid: ProductAmount,
    /// Alkalinity that goes with it, mg/L.
    pub alkalinity: f64,
    /// Where the air would leave it, if nobody brought it back.
    pub rest: Ph,
    /// The acid from there to the goal.
    pub whole: ProductAmount,
}

/// The acid for one climb of the pH above its goal, with the salt to the target in, whatever time that takes. Air drives
/// it no farther than to where it rests; `None` where that is not above the goal, and while the water, its size, its
/// goals or the label are not known.
#[must_use]
pub fn climb(input: &TreatmentInput, target: Salinity) -> Option<Climb> {
    let goal =
        Some(input.goals).filter(|goals| !goals.invalid)?.ph.or(Ph::from_units(policy::CLIMB_FROM).ok())?;
    let (sample, products, volume) = (input.water.sample()?, input.products?, input.volume?);
    // A reading counts more than sodium chloride; what is put in is that alone.
    let rise = input.water.reading.and_then(|read| target.excess_over(read)).unwrap_or(Salinity::NONE);
    let salt = sample.salt.checked_add(rise).ok()?;
    let at = |ph| chem::Sample { ph, salt, ..sample }.water().ok();
    let rest = at(goal)?.in_air(CarbonDioxide::OPEN_AIR).ok()?.ph;
    let from = Ph::from_units((goal.units() + policy::CLIMB).min(rest.units())).ok()?;
    let chemical = products.acid.chemical();
    let back = |from| {
        let water = at(from)?;
        let dose = dose_to_ph(&water, chemical, goal).ok()?;
        let acid = products.acid.amount(dose, volume).ok()?;
        let left = water.treated(chemical, dose).alkalinity().ok()?;
        Some((acid, water.alkalinity().ok()?.mg_per_l() - left.mg_per_l()))
    };
    let ((acid, alkalinity), (whole, _)) = (back(from)?, back(rest)?);
    Some(Climb { from, to: goal, acid, alkalinity, rest, whole })
}

/// What a season is worked out from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SeasonInput {
    /// Amount of water: where doses have told it, by these.
    pub volume: Option<Volume>,
    /// The generator's target.
    pub target: Option<Salinity>,
    /// What was typed of the season.
    pub season: Season,
    /// Mean depth.
    pub depth: Typed<Length>,
    /// The fill water's salt.
    pub fill_salt: Option<Salinity>,
    /// The bags.
    pub bag: Bag,
}

impl SeasonInput {
    /// Of a case, and the size of its pool as far as it is known.
    #[must_use]
    pub fn of(case: &Case, volume: Option<Volume>) -> Self {
        Self {
            volume,
            target: case.band.map(|band| band.target),
            season: case.season,
            depth: case.depth,
            fill_salt: case.fill_salt,
            bag: case.bag,
        }
    }
}

/// What a season takes.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Ahead {
    /// The salt at its end.
    pub salt: Salinity,
    /// How much less that is.
    pub loss: f64,
    /// Salt to bring it back, as it comes in the bag.
    pub mass: Option<Mass>,
    /// The same in bags, and in whole ones.
    pub bags: Option<[f64; 2]>,
}

/// The salt at the end of a season that begins at the target: water lost goes with its salt and comes back as fill
/// water; rain that overflows brings none. Evaporation takes none, and what tops it up adds the fill water's own.
///
/// `None` while the size, the target or the fill water's salt is missing, or nothing is lost.
///
/// ```
/// use chem::{Salinity, Volume};
/// use saltwright_plan::operation::{SeasonInput, ahead};
/// use saltwright_plan::{Season, Typed};
/// # fn main() -> Result<(), chem::OutOfRange> {
/// let ppm = Salinity::from_mg_per_l;
/// let lost = Typed::Valid(2_500.0 * 0.003785411784);
/// let input = SeasonInput {
///     volume: Some(Volume::from_cubic_metres(62.82)?),
///     target: Some(ppm(3_200.0)?),
///     fill_salt: Some(ppm(120.0)?),
///     season: Season { lost, ..Season::default() },
///     ..SeasonInput::default()
/// };
/// assert!((ahead(&input).unwrap().salt.mg_per_l() - 2_769.0).abs() < 0.5);
/// # Ok(())
/// # }
/// ```
#[must_use]
pub fn ahead(input: &SeasonInput) -> Option<Ahead> {
    let (volume, target) = (input.volume?, input.target?);
    let (lost, rain) = (input.season.water()?, input.season.rain.or(0.0)?);
    let size = volume.cubic_metres();
    // Rain falls on all of the surface: the same part of the water as of its depth.
    let rained = if rain > 0.0 { rain / input.depth.valid()?.metres() } else { 0.0 };
    let fill = if lost > 0.0 { input.fill_salt?.mg_per_l() } else { 0.0 };
    if size <= 0.0 || lost + rained <= 0.0 {
        return None;
    }
    let begun = target.mg_per_l() * libm::exp(-rained);
    let ended = fill + (begun - fill) * libm::exp(-lost / size);
    let salt = Salinity::from_mg_per_l(ended).ok()?;
    let mass = input
        .bag
        .purity
        .zip(target.excess_over(salt))
        .map(|(purity, rise)| salt::mass_for(volume, rise, purity));
    let size = input.bag.size.filter(|size| *size > Mass::NONE);
    let bags = mass.zip(size).map(|(mass, size)| mass.kilograms() / size.kilograms());
    // What only rounding makes more than a whole bag is none.
    let bags = bags.map(|bags| [bags, libm::ceil(bags - 1e-9)]);
    Some(Ahead { salt, loss: target.mg_per_l() - ended, mass, bags })
}
