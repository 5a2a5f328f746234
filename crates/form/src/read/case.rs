//! Which case do the fields make?
//!
//! From the flat form, name to text as typed, to a typed [`Case`]. All faults are collected before any sum; a
//! field with a fault counts for nothing, and everything else stays.

use crate::answer::Answer;
use crate::contract::codes::Show;
use crate::contract::units::{self, QuantityKind, Unit};
use crate::contract::{Fact, FaultCode, Field};
use crate::form::{Form, Texts};
use crate::read::moment;
use crate::read::reader::Reader;
use chem::treatment::{AcidStrength, BleachStrength};
use chem::*;
use plan::RiskLevels;
use plan::water::size::Measured;
use plan::{
    Acid, Bag, Band, BandError, Case, Goals, Ground, History, Instrument, Method, Products, Surface, Tests,
    Typed,
};
use plan::{Flow, Run, Season, WeighedIn, YesNo};

impl Reader<'_> {
    /// The risks that the page's author takes.
    fn levels(&mut self) -> Typed<RiskLevels> {
        let usual = RiskLevels::default();
        let mut level = |field: Field, usual: f64| match self.value(field.into()).map(|(_, x)| x) {
            None if self.is_faulty(field) => f64::NAN,
            typed => typed.unwrap_or(usual),
        };
        let levels = RiskLevels {
            over: level(Field::RiskLevelOver, usual.over),
            low: level(Field::RiskLevelLow, usual.low),
            cap: level(Field::RiskLevelCap, usual.cap),
            enough: level(Field::RiskLevelEnough, usual.enough),
            slack: level(Field::RiskLevelSlack, usual.slack),
            drained: level(Field::RiskLevelDrained, usual.drained),
        };
        if levels.are_levels() { Typed::Valid(levels) } else { Typed::Invalid }
    }

    fn tests(&mut self, [temperature, ph, alkalinity, hardness, cyanuric_acid]: [Field; 5]) -> Tests {
        Tests {
            temperature: self.quantity(temperature, Temperature::from_celsius),
            ph: self.quantity(ph, Ph::from_units),
            alkalinity: self.quantity(alkalinity, Alkalinity::from_mg_per_l),
            hardness: self.quantity(hardness, Hardness::from_mg_per_l),
            cyanuric_acid: self.quantity(cyanuric_acid, CyanuricAcid::from_mg_per_l),
            chlorine: Typed::Missing,
        }
    }

    /// The shelf, once all its labels can be read.
    fn products(&mut self) -> Option<Products> {
        let acid = self.number(Field::TreatAcid).and_then(|x| match self.text(Field::TreatAcidUnit) {
            "{Be}" => AcidStrength::from_baume(x).ok().map(Acid::Hydrochloric),
            "%{NaHSO4}" => Purity::from_ratio(x).ok().map(Acid::Bisulfate),
            _ => AcidStrength::from_mass_percent(x).ok().map(Acid::Hydrochloric),
        });
        let bleach = self.number(Field::TreatBleach).and_then(|x| match self.text(Field::TreatBleachUnit) {
            "%{NaOCl}" => BleachStrength::from_hypochlorite_percent(x).ok(),
            _ => BleachStrength::from_trade_percent(x).ok(),
        });
        let calcium = self.quantity(Field::TreatCalcium, Purity::from_ratio);
        let powder = self.quantity(Field::TreatPowder, Purity::from_ratio);
        Some(Products { acid: acid?, bleach: bleach?, calcium: calcium?, powder: powder? })
    }

    fn goals(&mut self) -> Goals {
        let goals = Goals {
            ph: self.quantity(Field::GoalPh, Ph::from_units),
            alkalinity: self.quantity(Field::GoalTa, Alkalinity::from_mg_per_l),
            hardness: self.quantity(Field::GoalCh, Hardness::from_mg_per_l),
            cyanuric_acid: self.quantity(Field::GoalCya, CyanuricAcid::from_mg_per_l),
            chlorine: self.quantity(Field::GoalFc, Chlorine::from_mg_per_l),
            invalid: false,
            water_unknown: false,
        };
        let typed = |field: Field| !self.text(field).is_empty();
        let water_unknown = [[Field::GoalCh, Field::WaterCh], [Field::GoalCya, Field::WaterCya]]
            .iter()
            .any(|both| self.any_faulty(both) && both.iter().all(|field| typed(*field)));
        let invalid = self.is_faulty_under("goal.");
        Goals { invalid, water_unknown, ..goals }
    }

    fn band(&mut self) -> Option<Band> {
        let mut limit = |field| self.quantity(field, Salinity::from_mg_per_l);
        let (low, target, high) = (limit(Field::SaltLow), limit(Field::SaltTarget), limit(Field::SaltHigh));
        if self.any_faulty(&[Field::SaltLow, Field::SaltTarget, Field::SaltHigh]) {
            return None;
        }
        Band::of(low, target, high)
            .map_err(|fault| match fault {
                BandError::LowNotBelow => self.fault(Field::SaltLow, FaultCode::NotBelow),
                _ => self.fault(Field::SaltHigh, FaultCode::NotAbove),
            })
            .ok()
    }
}

/// The size that was measured, beside what was typed.
pub struct Taped {
    /// What meter and tape tell.
    pub measured: Measured,
    /// The size as it was typed.
    pub typed: Option<Volume>,
    /// Is the meter at fault?
    pub metered_wrong: bool,
}

/// Reads the whole form: the case, and into `answer` the faults, the echoes and what was chosen.
pub fn read(form: &Form, texts: &Texts, answer: &mut Answer) -> (Case, Option<Taped>) {
    let signs = form.signs();
    let mut r = Reader { texts, form, signs, answer };
    let weighed_in = match Unit::find(QuantityKind::Mass, texts.text(Field::BagSizeUnit)) {
        Some(pound) if pound.code == "[lb_av]" => Some([units::OUNCE, pound.factor]),
        _ => None,
    };
    let bag = Bag::default();
    let step = |kg: f64, otherwise| Mass::from_kilograms(kg).unwrap_or(otherwise);
    let instrument = r.choice(Field::SaltMethod, Instrument::ALL);
    let water = Tests {
        chlorine: r.optional(Field::WaterFc, |x| Chlorine::from_mg_per_l(x).ok()),
        ..r.tests([Field::WaterTemperature, Field::WaterPh, Field::WaterTa, Field::WaterCh, Field::WaterCya])
    };
    let _ = r.choice(Field::SaltAtc, YesNo::ALL);
    if Unit::find(QuantityKind::Reading, texts.text(Field::SaltNowUnit))
        .is_some_and(|unit| unit.bounds.is_some())
    {
        r.answer.say(Fact::SaltConducts);
    }
    let size = r.quantity(Field::BagSize, Mass::from_kilograms);
    let typed = r.quantity(Field::PoolVolume, Volume::from_cubic_metres);
    let faults = r.answer.faults.len();
    let measured = r.measured();
    let meter = [Field::PoolMeterBefore.into(), Field::PoolMeterAfter.into()];
    let tape_faulty = r.answer.faults.iter().skip(faults).any(|fault| !meter.contains(&fault.field));
    let metered_wrong = r.is_metered_wrong();
    // A size that is typed always counts, also where it is invalid: then nobody knows which is meant. Nor by the tape
    // where the meter is at fault.
    let counted = measured.filter(|_| texts.text(Field::PoolVolume).is_empty() && !metered_wrong);
    if counted.is_some() {
        r.answer.say(Fact::PoolMeasured);
    }
    let chosen = r.choice(Field::PoolMethod, Method::ALL);
    let mut case = Case {
        volume: typed.or(counted.map(|m| m.volume)),
        method: chosen.or(counted.map(|m| m.method).filter(|_| texts.text(Field::PoolMethod).is_empty())),
        surface: r.choice(Field::SurfaceKind, Surface::ALL),
        doubt: r.optional(Field::PoolAccuracy, |x| Fraction::from_ratio(x).ok()),
        reading: r.salt(Field::SaltNow, instrument, water.temperature),
        again: r.salt(Field::SaltRepeat, instrument, water.temperature),
        instrument,
        read_at: r.moment(Field::SaltWhen),
        now: r.moment(Field::Now).valid(),
        today: moment::read(texts.text(Field::Now)).map(|now| now.div_euclid(1_440)),
        start: r.moment(Field::StartWhen),
        on: r.moment(Field::PowerWhen),
        log: r.log(size, water.temperature),
        levels: r.levels(),
        history: r.choice(Field::WaterHistory, History::ALL),
        band: r.band(),
        bag: Bag {
            size,
            purity: r.quantity(Field::BagPurity, Purity::from_ratio),
            in_hand: r.optional(Field::BagOnHand, |x| Some(x as u32)),
            price: r.number(Field::BagPrice),
            weighed_in: weighed_in.map_or(bag.weighed_in, |[fine, coarse]| WeighedIn {
                fine: step(fine, bag.weighed_in.fine),
                coarse: step(coarse, bag.weighed_in.coarse),
            }),
        },
        water,
        fill: r.tests([Field::FillTemperature, Field::FillPh, Field::FillTa, Field::FillCh, Field::FillCya]),
        fill_salt: r.quantity(Field::FillSalt, Salinity::from_mg_per_l),
        cap: r.optional(Field::ReplaceMost, |x| Fraction::from_ratio(x).ok()),
        products: r.products(),
        goals: r.goals(),
        ready: r.ready(),
        run: Run {
            demand: r.optional(Field::GeneratorDemand, Some),
            makes: r.optional(Field::GeneratorOutput, Some),
            hours: r.optional(Field::PumpHours, Some),
        },
        season: Season {
            lost: r.optional(Field::SeasonLost, Some),
            backwash: r.optional(Field::SeasonBackwash, Some),
            times: r.optional(Field::SeasonTimes, Some),
            rain: r.optional(Field::SeasonRain, Some),
        },
        flow: Flow {
            out: r.optional(Field::ReplaceDrainRate, Some),
            in_: r.optional(Field::ReplaceFillRate, Some),
            price: r.optional(Field::ReplaceWaterPrice, Some),
        },
        ground: r.choice(Field::ReplaceGroundwater, Ground::ALL),
        unlisted: false,
        uncounted: false,
        untested: false,
        depth: match measured.and_then(|m| m.taped) {
            Some((_, size)) => Typed::Valid(size.depth),
            None if tape_faulty => Typed::Invalid,
            None => Typed::Missing,
        },
    };
    case.unlisted = r.answer.faults.iter().any(|fault| fault.code == FaultCode::NotListed);
    if r.words(Field::JobName) {
        r.answer.say(Fact::JobNamed);
    }
    let _ = r.words(Field::JobBy) | r.words(Field::JobNote);
    // What the decision goes by besides numbers.
    if r.any_faulty(&[Field::PoolMethod, Field::SaltMethod, Field::WaterHistory]) {
        case.doubt = Typed::Invalid;
    }
    // A reading by nobody knows what may be a guess.
    if r.is_faulty(Field::SaltMethod) && case.reading != Typed::Missing {
        case.reading = Typed::Invalid;
    }
    // And how much may be drained at one go.
    if r.any_faulty(&[Field::SurfaceKind, Field::ReplaceGroundwater]) {
        case.cap = Typed::Invalid;
    }
    // And how many bags.
    case.uncounted = r.any_faulty(&[Field::BagSize, Field::BagPurity])
        || case.volume.is_none() && r.is_faulty_under("pool.");
    // What the water was treated with, and its history, are no tests of it.
    let tested = |field: Field| {
        ["water.", "fill.", "goal.", "treat."].iter().any(|begin| field.name().starts_with(begin))
            && !matches!(field, Field::WaterSanitizer | Field::WaterHistory)
    };
    case.untested = r.is_faulty(Field::Now)
        || r.answer.faults.iter().any(|fault| fault.field.field().is_some_and(tested));
    let _ = r.choice(Field::Show, Show::ALL);
    case.method.into_iter().for_each(|method| r.answer.say(method));
    case.surface.into_iter().for_each(|surface| r.answer.say(surface));
    case.instrument.into_iter().for_each(|instrument| r.answer.say(instrument));
    if form.is_blank() {
        r.answer.say(Fact::Blank);
    }
    (case, measured.map(|measured| Taped { measured, typed, metered_wrong }))
}
