//! How is the output to be set, and what does a season take of the salt?

use crate::Acid;
use crate::case::{Case, Optional};
use crate::policy;
use crate::treat::Amount;
use chem::treatment::Chemical;
use chem::treatment::recipe::dose_to_ph;
use chem::{CarbonDioxide, Mass, Ph, Salinity, Temperature, Volume, salt};

/// What was typed of the generator and its pump.
#[derive(Clone, Copy, Debug, Default)]
pub struct Run {
    /// Chlorine the pool uses up, mg/L a day.
    pub demand: Optional<f64>,
    /// Chlorine the generator makes at full output, g/h.
    pub makes: Optional<f64>,
    /// Hours the pump runs a day.
    pub hours: Optional<f64>,
}

impl Run {
    /// Was any of it typed?
    pub fn is_begun(&self) -> bool {
        [self.demand, self.makes, self.hours].iter().any(|x| *x != Optional::LeftOut)
    }
}

/// What was typed of a season.
#[derive(Clone, Copy, Debug, Default)]
pub struct Season {
    /// Water lost as the pool has it, but for backwash: splash, leaks, m³.
    pub lost: Optional<f64>,
    /// Water that one backwash takes, m³.
    pub backwash: Optional<f64>,
    /// How many of them.
    pub times: Optional<f64>,
    /// Rain that overflows, m of water over the pool.
    pub rain: Optional<f64>,
}

impl Season {
    /// Was any of it typed?
    pub fn is_begun(&self) -> bool {
        [self.lost, self.backwash, self.times, self.rain].iter().any(|x| *x != Optional::LeftOut)
    }

    /// Water lost as the pool has it, m³; `None` while a part is garbled, or a backwash has no number, or the
    /// other way round.
    fn water(&self) -> Option<f64> {
        let backwash = match (self.backwash, self.times) {
            (Optional::LeftOut, Optional::LeftOut) => 0.0,
            (each, times) => each.given()? * times.given()?,
        };
        Some(self.lost.or(0.0)? + backwash)
    }
}

/// A setting to begin with.
#[derive(Clone, Copy, Debug, PartialEq)]
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
    pub fn is_beyond_a_day(&self) -> bool {
        self.full_hours > policy::DAY
    }
}

/// What the water's temperature does to a generator.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Warmth {
    /// Warm enough.
    Enough,
    /// It makes less.
    Throttled,
    /// It may stop.
    Stopped,
}

fn warmth(heat: Temperature) -> Warmth {
    match heat.celsius() {
        t if t >= policy::WARM_ENOUGH => Warmth::Enough,
        t if t >= policy::STOPS_BELOW => Warmth::Throttled,
        _ => Warmth::Stopped,
    }
}

/// The setting, once size, rating and pump hours are there.
///
/// ```
/// use plan::running::{Run, setting};
/// use plan::{Case, Optional};
/// # fn main() -> Result<(), chem::OutOfRange> {
/// let run = Run { demand: Optional::Given(3.0), makes: Optional::Given(20.0), hours: Optional::Given(12.0) };
/// let case = Case { volume: Some(chem::Volume::from_cubic_metres(62.82)?), run, ..Case::default() };
/// let set = setting(&case).unwrap();
/// assert!((set.full_hours - 9.42).abs() < 0.005 && (set.share - 0.785).abs() < 0.0005);
/// # Ok(())
/// # }
/// ```
pub fn setting(case: &Case) -> Option<Setting> {
    let (volume, run) = (case.volume?.cubic_metres(), &case.run);
    let demand = run.demand.or(policy::EXAMPLE_DEMAND)?;
    let (makes, hours) = (run.makes.given()?, run.hours.given()?);
    if !(makes > 0.0 && hours > 0.0 && demand > 0.0) {
        return None;
    }
    let grams = demand * volume;
    let full_hours = grams / makes;
    let share = full_hours / hours;
    let lift = case.goals.chlorine.zip(case.water.chlorine.given()).and_then(|(goal, now)| {
        let rise = goal.mg_per_l() - now.mg_per_l();
        (rise > 0.0).then_some(rise * volume / makes)
    });
    Some(Setting {
        example: run.demand == Optional::LeftOut,
        grams,
        full_hours,
        share,
        range: policy::DEMAND_RANGE.map(|part| part * share),
        reserve: makes * hours / grams,
        lift,
        warmth: case.water.heat.map(warmth),
    })
}

/// What brings a pH that has climbed back again.
#[derive(Clone, Copy, Debug)]
pub struct Climb {
    /// From here,
    pub from: Ph,
    /// to here, each time.
    pub to: Ph,
    /// The acid for it.
    pub acid: Amount,
    /// Alkalinity that goes with it, mg/L.
    pub alkalinity: f64,
    /// Where the air would leave it, if nobody brought it back.
    pub rest: Ph,
    /// The acid from there to the goal.
    pub whole: Amount,
}

/// The acid for one climb of the pH above its goal, with the salt to the target in, whatever time that takes. Air drives
/// it no farther than to where it rests; `None` where that is not above the goal, and while the water, its size, its
/// goals or the label are not known.
pub fn climb(case: &Case, target: Salinity) -> Option<Climb> {
    let goal =
        Some(case.goals).filter(|goals| !goals.garbled)?.ph.or(Ph::from_units(policy::CLIMB_FROM).ok())?;
    let (sample, products, volume) = (case.sample()?, case.products?, case.volume?);
    // A reading counts more than sodium chloride; what is put in is that alone.
    let rise = case.read().and_then(|read| target.excess_over(read)).unwrap_or(Salinity::NONE);
    let salt = sample.salt.checked_add(rise).ok()?;
    let at = |ph| chem::Sample { ph, salt, ..sample }.water().ok();
    let rest = at(goal)?.in_air(CarbonDioxide::OPEN_AIR).ok()?.ph;
    let from = Ph::from_units((goal.units() + policy::CLIMB).min(rest.units())).ok()?;
    let chemical = match products.acid {
        Acid::Hydrochloric(_) => Chemical::HydrochloricAcid,
        Acid::Bisulfate(_) => Chemical::SodiumBisulfate,
    };
    let back = |from| {
        let water = at(from)?;
        let dose = dose_to_ph(&water, chemical, goal).ok()?;
        let acid = match products.acid {
            Acid::Hydrochloric(strength) => Amount::Liquid(dose.of_acid(volume, strength).ok()?),
            Acid::Bisulfate(purity) => Amount::Powder(dose.of_powder(chemical, volume, purity)),
        };
        let left = water.treated(chemical, dose).alkalinity().ok()?;
        Some((acid, water.alkalinity().ok()?.mg_per_l() - left.mg_per_l()))
    };
    let ((acid, alkalinity), (whole, _)) = (back(from)?, back(rest)?);
    Some(Climb { from, to: goal, acid, alkalinity, rest, whole })
}

/// What a season takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ahead {
    /// The salt at its end.
    pub salt: Salinity,
    /// How much less that is.
    pub less: f64,
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
/// use plan::running::{Season, ahead};
/// use plan::{Band, Case, Optional};
/// # fn main() -> Result<(), chem::OutOfRange> {
/// let ppm = Salinity::from_mg_per_l;
/// let lost = Optional::Given(2_500.0 * 0.003785411784);
/// let case = Case {
///     volume: Some(Volume::from_cubic_metres(62.82)?),
///     band: Band::of(None, Some(ppm(3_200.0)?), None).ok(),
///     fill_salt: Some(ppm(120.0)?),
///     season: Season { lost, ..Season::default() },
///     ..Case::default()
/// };
/// assert!((ahead(&case).unwrap().salt.mg_per_l() - 2_769.0).abs() < 0.5);
/// # Ok(())
/// # }
/// ```
pub fn ahead(case: &Case) -> Option<Ahead> {
    let (volume, target) = (case.volume?, case.band?.target);
    let (lost, rain) = (case.season.water()?, case.season.rain.or(0.0)?);
    let size = volume.cubic_metres();
    // Rain falls on all of the surface: the same part of the water as of its depth.
    let rained = if rain > 0.0 { rain / case.depth.given()?.metres() } else { 0.0 };
    let fill = if lost > 0.0 { case.fill_salt?.mg_per_l() } else { 0.0 };
    if size <= 0.0 || lost + rained <= 0.0 {
        return None;
    }
    let begun = target.mg_per_l() * libm::exp(-rained);
    let ended = fill + (begun - fill) * libm::exp(-lost / size);
    let salt = Salinity::from_mg_per_l(ended).ok()?;
    let mass = case
        .bag
        .purity
        .zip(target.excess_over(salt))
        .map(|(purity, rise)| salt::mass_for(volume, rise, purity));
    let size = case.bag.size.filter(|size| *size > Mass::NONE);
    let bags = mass.zip(size).map(|(mass, size)| mass.kilograms() / size.kilograms());
    // What only rounding makes more than a whole bag is none.
    let bags = bags.map(|bags| [bags, libm::ceil(bags - 1e-9)]);
    Some(Ahead { salt, less: target.mg_per_l() - ended, mass, bags })
}

/// What was typed of replacing water.
#[derive(Clone, Copy, Debug, Default)]
pub struct Flow {
    /// Water let out, m³/h.
    pub out: Optional<f64>,
    /// Water let in, m³/h.
    pub in_: Optional<f64>,
    /// Price of a cubic metre, in and out together.
    pub price: Optional<f64>,
}

/// Hours and money for so much water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort {
    /// Hours to let it out.
    pub out: Option<f64>,
    /// Hours to let it in.
    pub in_: Option<f64>,
    /// Price.
    pub price: Option<f64>,
}

/// What it takes to replace so much water.
pub fn effort(flow: &Flow, water: Volume) -> Effort {
    let hours = |flow: Optional<f64>| flow.given().filter(|x| *x > 0.0).map(|x| water.cubic_metres() / x);
    Effort {
        out: hours(flow.out),
        in_: hours(flow.in_),
        price: flow.price.given().map(|price| price * water.cubic_metres()),
    }
}

/// Hours to run so much water through a full pool: at the slower of the two flows, since the level is kept.
pub fn exchange_hours(flow: &Flow, water: Volume) -> Option<f64> {
    if flow.out.is_garbled() || flow.in_.is_garbled() {
        return None; // It may be the slower one.
    }
    let both = effort(flow, water);
    [both.out, both.in_].into_iter().flatten().reduce(f64::max)
}
