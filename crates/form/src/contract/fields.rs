//! Which questions are there? One row a question; the page, the link and the file use these names.

use crate::contract::codes::{self, Codes};
use crate::contract::table::{Names, are_distinct, names};
use crate::contract::units::{QuantityKind, UNITS, Unit};
use chem::bounds::{self, Bounds};
use plan::{Input, limits};

/// What the table says of a question besides its name.
#[derive(Debug)]
pub struct Question {
    /// What kind of answer it takes.
    pub kind: FieldType,
    /// Whose matter it is.
    pub scope: Scope,
}

/// What kind of answer a question takes.
#[derive(Debug)]
pub enum FieldType {
    /// A number within a row of the table of bounds.
    Number(&'static Bounds, UnitRule),
    /// Numbers in a row, each within a row of the table of bounds.
    List(&'static Bounds, UnitRule),
    /// One of these codes.
    Choice(&'static Codes),
    /// The unit of other questions.
    Unit(QuantityKind),
    /// A moment: a day and a time of day.
    Moment,
    /// A day.
    Day,
    /// Words of a person's own, kept and shown, never judged.
    Text,
    /// The number of an exercise.
    Count,
    /// Names of the contract, between commas or spaces.
    Names,
}

/// In which unit a number is typed.
#[derive(Debug)]
pub enum UnitRule {
    /// In no unit.
    Bare,
    /// In one fixed unit.
    Fixed(QuantityKind, &'static str),
    /// In the unit that this question answers.
    Asked(QuantityKind, Field),
    /// In the square of the unit of lengths that this question answers.
    Squared(Field),
    /// As [`UnitRule::Asked`], and in this unit while nobody has answered.
    Usual(QuantityKind, Field, &'static str),
}

/// Whose matter is it, and so: where is it kept, does it go into a link, does it make a job that has begun?
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// The job's.
    Job,
    /// The job's, and about a person: in a link only if somebody asks for that.
    Person,
    /// The shop's or the author's: a page may begin with it.
    Shop,
    /// The page's: how it stands before somebody. It leaves the page with no link.
    Page,
    /// A link's: the terms under which it puts the form before somebody.
    Link,
    /// Handed over by what runs the page; never kept.
    Handed,
}

const fn job(kind: FieldType) -> Question {
    Question { kind, scope: Scope::Job }
}

const fn person(kind: FieldType) -> Question {
    Question { kind, scope: Scope::Person }
}

const fn shop(kind: FieldType) -> Question {
    Question { kind, scope: Scope::Shop }
}

const fn page(kind: FieldType) -> Question {
    Question { kind, scope: Scope::Page }
}

const fn link(kind: FieldType) -> Question {
    Question { kind, scope: Scope::Link }
}

const fn handed(kind: FieldType) -> Question {
    Question { kind, scope: Scope::Handed }
}

use FieldType::{Choice as choice, Count as COUNT, Day as DAY, List as list, Moment as MOMENT};
use FieldType::{Names as NAMES, Number as number, Text as TEXT, Unit as unit};
use UnitRule::Bare as BARE;

const LENGTH: UnitRule = UnitRule::Asked(QuantityKind::Length, Field::PoolLengthUnit);
const PART_OF_WATER: UnitRule = UnitRule::Asked(QuantityKind::Water, Field::PoolSolidsUnit);
const METER: UnitRule = UnitRule::Asked(QuantityKind::Water, Field::PoolMeterUnit);
const WATER: UnitRule = UnitRule::Asked(QuantityKind::Water, Field::PoolVolumeUnit);
const SALT: UnitRule = UnitRule::Asked(QuantityKind::Salt, Field::SaltNowUnit);
const READING: UnitRule = UnitRule::Asked(QuantityKind::Reading, Field::SaltNowUnit);
const FLOW: UnitRule = UnitRule::Usual(QuantityKind::Flow, Field::ReplaceDrainRateUnit, "L/min");
const TA: UnitRule = UnitRule::Usual(QuantityKind::Alkalinity, Field::WaterTaUnit, "mg/L");
const CH: UnitRule = UnitRule::Usual(QuantityKind::Hardness, Field::WaterChUnit, "mg/L");
const PART: UnitRule = UnitRule::Fixed(QuantityKind::Part, "%");

names! {
    /// A question, by its row of the table. N is the number of a line of the log: see [`super::FieldId`].
    Field: Question {
    1 View "view": page(choice(&codes::VIEW)), "For whom the page is laid out";
    2 At "at": page(choice(&codes::STEP)), "Which step of the page is in view, on a small screen";
    3 PoolVolume "pool.volume": job(number(&bounds::POOL, WATER)), "Water in the pool, filled to its working level, a spa that shares it included";
    4 PoolVolumeUnit "pool.volume.unit": job(unit(QuantityKind::Water)), "Unit of the water in the pool";
    5 PoolShape "pool.shape": job(choice(&codes::SHAPE)), "Shape of the pool, seen from above";
    6 PoolLengthUnit "pool.length.unit": job(unit(QuantityKind::Length)), "Unit of all lengths";
    7 PoolLength "pool.length": job(number(&limits::SPAN, LENGTH)), "Longest stretch of water; of a round pool from side to side";
    8 PoolWidth "pool.width": job(number(&limits::SPAN, LENGTH)), "Width of the pool";
    9 PoolLobeA "pool.lobe-a": job(number(&limits::SPAN, LENGTH)), "Kidney: widest part of the lobe at the shallow end";
    10 PoolLobeB "pool.lobe-b": job(number(&limits::SPAN, LENGTH)), "Kidney: widest part of the other lobe";
    11 PoolGap "pool.gap": job(number(&limits::SPAN, LENGTH)), "Free form: distance between widths, always the same";
    12 PoolWidths "pool.widths": job(list(&bounds::LENGTH, LENGTH)), "Free form: widths in order from end to end, three to 24, parted by semicolons";
    13 PoolDepths "pool.depths": job(list(&limits::DEPTH, LENGTH)), "Free form: depths spread over the floor, whose mean counts; empty: the floor’s";
    14 PoolFloor "pool.floor": job(choice(&codes::FLOOR)), "Floor of the pool, along its length";
    15 PoolShallow "pool.shallow": job(number(&limits::DEPTH, LENGTH)), "Depth of the water at the shallow end, or of a level floor";
    16 PoolDeep "pool.deep": job(number(&limits::DEPTH, LENGTH)), "Depth of the water at the deep end";
    17 PoolFlat "pool.flat": job(number(&bounds::LENGTH, LENGTH)), "Length of the flat, shallow part of the floor";
    18 PoolSlope "pool.slope": job(number(&bounds::LENGTH, LENGTH)), "Length of the slope; the rest counts as deep";
    19 PoolPadLength "pool.pad-length": job(number(&bounds::LENGTH, LENGTH)), "Hopper: length of the pad at the bottom";
    20 PoolPadWidth "pool.pad-width": job(number(&bounds::LENGTH, LENGTH)), "Hopper: width of the pad at the bottom";
    21 PoolLengthB "pool.length-b": job(number(&limits::SPAN, LENGTH)), "L: length of the other part";
    22 PoolWidthB "pool.width-b": job(number(&limits::SPAN, LENGTH)), "L: width of the other part";
    23 PoolDepthB "pool.depth-b": job(number(&limits::DEPTH, LENGTH)), "L: depth of the other part";
    24 PoolLedgeArea "pool.ledge-area": job(number(&bounds::AREA, UnitRule::Squared(Field::PoolLengthUnit))), "Surface of a tanning ledge, in the square of the unit of lengths";
    25 PoolLedgeWater "pool.ledge-water": job(number(&bounds::LENGTH, LENGTH)), "Depth of the water above the ledge";
    26 PoolLedgeAround "pool.ledge-around": job(number(&limits::DEPTH, LENGTH)), "Depth of the water beside the ledge";
    27 PoolSteps "pool.steps": job(list(&limits::DEPTH, LENGTH)), "Height of each step from the floor up to its tread, parted by semicolons";
    28 PoolStepsWidth "pool.steps-width": job(number(&bounds::LENGTH, LENGTH)), "Width of the steps, from side to side";
    29 PoolStepsTread "pool.steps-tread": job(number(&bounds::LENGTH, LENGTH)), "Tread of one step, from front to back";
    30 PoolSolids "pool.solids": job(number(&limits::PART, PART_OF_WATER)), "Other solids under water, such as benches, to be taken off";
    31 PoolSolidsUnit "pool.solids.unit": job(unit(QuantityKind::Water)), "Unit of other solids and of the spa";
    32 PoolSpa "pool.spa": job(number(&limits::PART, PART_OF_WATER)), "Water of a spa that shares it, to be added";
    33 PoolMeterBefore "pool.meter-before": job(number(&limits::METER, METER)), "Water meter before filling from empty; 0 if it was set back";
    34 PoolMeterUnit "pool.meter.unit": job(unit(QuantityKind::Water)), "Unit in which the water meter reads";
    35 PoolMeterAfter "pool.meter-after": job(number(&limits::METER, METER)), "Water meter after filling to the working level";
    36 PoolMethod "pool.method": job(choice(&codes::METHOD)), "How the size was found; empty where measured: as measured";
    37 PoolAccuracy "pool.accuracy": job(number(&limits::DOUBT, PART)), "To within which part the size is typically right; empty: by how it was found";
    38 SurfaceKind "surface.kind": job(choice(&codes::SURFACE)), "Surface under water";
    39 PoolUse "pool.use": job(choice(&codes::POOL_USE)), "Whose pool it is";
    40 PoolOperator "pool.operator": job(choice(&codes::YES_NO)), "Has a public pool its qualified operator?";
    41 PoolLocation "pool.location": job(choice(&codes::LOCATION)), "Where the pool lies";
    42 ReadyFull "ready.full": job(choice(&codes::YES_NO)), "Is it filled to its working level?";
    43 ReadyRunning "ready.running": job(choice(&codes::RUNNING)), "Have pump and filter run for a day and two turnovers?";
    44 ReadyClarity "ready.clarity": job(choice(&codes::CLARITY)), "How clearly the drain at the deepest point is seen";
    45 ReadyAlgae "ready.algae": job(choice(&codes::ALGAE)), "How much algae there is";
    46 ReadySwimmers "ready.swimmers": job(choice(&codes::YES_NO)), "Are people swimming in it these days?";
    47 ReadyWeather "ready.weather": job(choice(&codes::WEATHER)), "Weather of the next two days";
    48 WaterSanitizer "water.sanitizer": job(choice(&codes::SANITIZER)), "What the water was treated with until now";
    49 SurfaceDay "surface.day": job(DAY), "Day on which the finish was laid, for cement and grout";
    50 SurfaceApproval "surface.approval": job(choice(&codes::APPROVAL)), "Written word on salt from whoever laid or made the finish";
    51 SurfaceApprovalBy "surface.approval-by": person(TEXT), "Whose word on salt it is";
    52 SurfaceApprovalDay "surface.approval-day": job(DAY), "Day of that person’s word on salt";
    53 WarrantyLiner "warranty.liner": job(choice(&codes::WARRANTY)), "What the papers of liner or shell say of salt";
    54 WarrantyHeater "warranty.heater": job(choice(&codes::WARRANTY)), "What the papers of the heater say of salt";
    55 WarrantyCover "warranty.cover": job(choice(&codes::WARRANTY)), "What the papers of an automatic cover say of salt";
    56 WarrantyCoping "warranty.coping": job(choice(&codes::WARRANTY)), "What the papers of stone, coping and deck say of salt";
    57 WarrantyLadders "warranty.ladders": job(choice(&codes::WARRANTY)), "What the papers of rails, ladders and lights say of salt";
    58 ReadyElectrical "ready.electrical": job(choice(&codes::ELECTRICAL)), "Is the generator installed, bonded and signed off, its flow switch proved?";
    59 ExceptionFinishAgeWho "exception.finish-age.who": person(TEXT), "Who has ruled otherwise on the age of the finish";
    60 ExceptionFinishAgeRole "exception.finish-age.role": person(TEXT), "Role of whoever has ruled otherwise on the age of the finish";
    61 ExceptionFinishAgeDay "exception.finish-age.day": person(DAY), "Day of the written ruling on the age of the finish";
    62 ExceptionClearanceWho "exception.clearance.who": person(TEXT), "Who has ruled otherwise on the clearance of the finish";
    63 ExceptionClearanceRole "exception.clearance.role": person(TEXT), "Role of whoever has ruled otherwise on the clearance of the finish";
    64 ExceptionClearanceDay "exception.clearance.day": person(DAY), "Day of the written ruling on the clearance of the finish";
    65 ExceptionWarrantyWho "exception.warranty.who": person(TEXT), "Who has ruled otherwise on other makers’ papers";
    66 ExceptionWarrantyRole "exception.warranty.role": person(TEXT), "Role of whoever has ruled otherwise on other makers’ papers";
    67 ExceptionWarrantyDay "exception.warranty.day": person(DAY), "Day of the written ruling on other makers’ papers";
    68 ExceptionCodeWho "exception.code.who": person(TEXT), "Who at the authority has ruled otherwise on the local code";
    69 ExceptionCodeRole "exception.code.role": person(TEXT), "Role of whoever at the authority has ruled otherwise on the local code";
    70 ExceptionCodeDay "exception.code.day": person(DAY), "Day of the written ruling on the local code";
    71 WaterTemperature "water.temperature": job(number(&bounds::TEMPERATURE, UnitRule::Asked(QuantityKind::Temperature, Field::WaterTemperatureUnit))), "Water temperature";
    72 WaterTemperatureUnit "water.temperature.unit": job(unit(QuantityKind::Temperature)), "Unit of the water temperature";
    73 WaterPh "water.ph": job(number(&bounds::POOL_PH, BARE)), "pH of the pool";
    74 WaterTa "water.ta": job(number(&bounds::ALKALINITY, TA)), "Total alkalinity of the pool, as calcium carbonate where in mg/L";
    75 WaterTaUnit "water.ta.unit": job(unit(QuantityKind::Alkalinity)), "Unit of all alkalinities; empty: mg/L";
    76 WaterCh "water.ch": job(number(&bounds::HARDNESS, CH)), "Calcium hardness of the pool, as calcium carbonate where in mg/L";
    77 WaterChUnit "water.ch.unit": job(unit(QuantityKind::Hardness)), "Unit of all calcium hardnesses; empty: mg/L";
    78 WaterCya "water.cya": job(number(&bounds::CYANURIC_ACID, BARE)), "Stabilizer (cyanuric acid) of the pool, mg/L; 0 for none";
    79 WaterFc "water.fc": job(number(&bounds::CHLORINE, BARE)), "Free chlorine of the pool, mg/L";
    80 WaterCc "water.cc": job(number(&limits::TRACE, BARE)), "Combined chlorine of the pool, total less free, mg/L";
    81 WaterCu "water.cu": job(number(&limits::TRACE, BARE)), "Copper in the pool, mg/L";
    82 WaterFe "water.fe": job(number(&limits::TRACE, BARE)), "Iron in the pool, mg/L";
    83 GoalPh "goal.ph": job(number(&bounds::MODEL_PH, BARE)), "pH wanted before the salt; empty: as it comes";
    84 GoalTa "goal.ta": job(number(&bounds::MODEL_ALKALINITY, TA)), "Total alkalinity wanted before the salt; empty: as it comes";
    85 GoalCh "goal.ch": job(number(&bounds::MODEL_HARDNESS, CH)), "Calcium hardness wanted before the salt; empty: as it comes";
    86 GoalCya "goal.cya": job(number(&bounds::MODEL_CYANURIC_ACID, BARE)), "Stabilizer wanted before the salt, mg/L; empty: as it comes";
    87 GoalFc "goal.fc": job(number(&limits::GOAL_CHLORINE, BARE)), "Free chlorine wanted, mg/L; empty: as it comes";
    88 TreatAcid "treat.acid": shop(number(&bounds::ACID_PERCENT, UnitRule::Usual(QuantityKind::Acid, Field::TreatAcidUnit, "%{HCl}"))), "Strength of the acid, from its label";
    89 TreatAcidUnit "treat.acid.unit": shop(unit(QuantityKind::Acid)), "Unit of the acid’s strength, and so which acid; empty: % hydrochloric";
    90 TreatBleach "treat.bleach": shop(number(&bounds::BLEACH_PERCENT, UnitRule::Usual(QuantityKind::Bleach, Field::TreatBleachUnit, "g/dL"))), "Strength of the liquid chlorine, from its label";
    91 TreatBleachUnit "treat.bleach.unit": shop(unit(QuantityKind::Bleach)), "Unit of the liquid chlorine’s strength; empty: g in 100 mL";
    92 TreatCalcium "treat.calcium": shop(number(&limits::BAG_PURITY, PART)), "Calcium chloride in the product, in percent";
    93 TreatPowder "treat.powder": shop(number(&limits::BAG_PURITY, PART)), "Strength of bicarbonate, soda ash and stabilizer, in percent";
    94 SaltNow "salt.now": job(number(&bounds::SALINITY, READING)), "First salt reading, before any salt goes in; it stays when more are logged";
    95 SaltNowUnit "salt.now.unit": job(unit(QuantityKind::Reading)), "Unit of all salt figures; with chloride or conductivity only of the readings";
    96 SaltAtc "salt.atc": job(choice(&codes::YES_NO)), "Does the conductivity meter correct to 25 °C?";
    97 SaltMethod "salt.method": job(choice(&codes::INSTRUMENT)), "What the salt was read with";
    98 SaltWhen "salt.when": job(MOMENT), "When the first reading was taken";
    99 SaltSince "salt.since": job(choice(&codes::YES_NO)), "Has rain, refill, backwash or a chemical come since the last reading?";
    100 SaltRepeat "salt.repeat": job(number(&bounds::SALINITY, READING)), "Second reading of the same visit, by the same instrument";
    101 WaterHistory "water.history": job(choice(&codes::HISTORY)), "History of the water, for a range of bags while there is no reading";
    102 SaltTarget "salt.target": job(number(&limits::TARGET, SALT)), "Salt wanted, the target in the generator’s manual; empty: our example, 3,200 ppm";
    103 SaltLow "salt.low": job(number(&limits::TARGET, SALT)), "Lowest salt the generator allows; empty: ours, 400 ppm or half the target below it";
    104 SaltHigh "salt.high": job(number(&limits::TARGET, SALT)), "Highest salt the generator allows; empty: ours, 400 ppm above the target";
    105 BagSize "bag.size": job(number(&limits::BAG_SIZE, UnitRule::Asked(QuantityKind::Mass, Field::BagSizeUnit))), "What one bag holds";
    106 BagSizeUnit "bag.size.unit": job(unit(QuantityKind::Mass)), "Unit of what a bag holds";
    107 BagPurity "bag.purity": shop(number(&limits::BAG_PURITY, PART)), "Sodium chloride in the salt, from the label, in percent";
    108 BagSalt "bag.salt": job(choice(&codes::BAG_SALT)), "Which salt is in the bags";
    109 BagOnHand "bag.on-hand": job(number(&limits::BAGS, BARE)), "Unopened bags in hand, a whole number; empty: none";
    110 BagPrice "bag.price": job(number(&limits::PRICE, BARE)), "Price of one bag, in the person’s own money";
    111 StartWhen "start.when": job(MOMENT), "Moment planned for the first bag, for a schedule beforehand";
    112 LogKind "log.N.kind": job(choice(&codes::LOG_KIND)), "Line N of the log: what was done";
    113 LogMass "log.N.mass": job(number(&limits::SALT, UnitRule::Asked(QuantityKind::Dose, Field::LogMassUnit))), "Line N of the log: how much salt went in";
    114 LogMassUnit "log.N.mass.unit": job(unit(QuantityKind::Dose)), "Line N of the log: unit of how much went in, bags included";
    115 LogSalt "log.N.salt": job(number(&bounds::SALINITY, READING)), "Line N of the log: salt read";
    116 LogRepeat "log.N.repeat": job(number(&bounds::SALINITY, READING)), "Line N of the log: second reading of the same visit";
    117 LogMethod "log.N.method": job(choice(&codes::READ_WITH)), "Line N of the log: what it was read with";
    118 LogWhen "log.N.when": job(MOMENT), "Line N of the log: when it was done";
    119 SaltUndissolved "salt.undissolved": job(choice(&codes::UNDISSOLVED)), "Do grains of salt lie on the floor?";
    120 PowerWhen "power.when": job(MOMENT), "When the generator was switched on";
    121 GeneratorDemand "generator.demand": job(number(&limits::DEMAND, BARE)), "Chlorine used up in a day, mg/L; empty: our example, 3";
    122 GeneratorOutput "generator.output": job(number(&limits::OUTPUT, UnitRule::Asked(QuantityKind::Output, Field::GeneratorOutputUnit))), "Chlorine the generator makes at full output, from its plate";
    123 GeneratorOutputUnit "generator.output.unit": job(unit(QuantityKind::Output)), "Unit of the chlorine made";
    124 PumpHours "pump.hours": job(number(&limits::HOURS, BARE)), "Hours a day that the pump runs";
    125 SeasonLost "season.lost": job(number(&limits::LOST, UnitRule::Asked(QuantityKind::Water, Field::SeasonLostUnit))), "Water that a season takes with its salt: splash, leaks";
    126 SeasonLostUnit "season.lost.unit": job(unit(QuantityKind::Water)), "Unit of the water lost and of a backwash";
    127 SeasonBackwash "season.backwash": job(number(&limits::LOST, UnitRule::Asked(QuantityKind::Water, Field::SeasonLostUnit))), "Water that one backwash takes";
    128 SeasonTimes "season.times": job(number(&limits::TIMES, BARE)), "Backwashes in a season";
    129 SeasonRain "season.rain": job(number(&limits::RAIN, UnitRule::Asked(QuantityKind::Rain, Field::SeasonRainUnit))), "Rain that overflows in a season, as depth of water";
    130 SeasonRainUnit "season.rain.unit": job(unit(QuantityKind::Rain)), "Unit of the rain";
    131 FillSalt "fill.salt": job(number(&bounds::SALINITY, SALT)), "Salt of the fill water";
    132 FillTemperature "fill.temperature": job(number(&bounds::TEMPERATURE, UnitRule::Asked(QuantityKind::Temperature, Field::FillTemperatureUnit))), "Temperature of the fill water";
    133 FillTemperatureUnit "fill.temperature.unit": job(unit(QuantityKind::Temperature)), "Unit of the fill water’s temperature";
    134 FillPh "fill.ph": job(number(&bounds::POOL_PH, BARE)), "pH of the fill water";
    135 FillTa "fill.ta": job(number(&bounds::ALKALINITY, TA)), "Total alkalinity of the fill water";
    136 FillCh "fill.ch": job(number(&bounds::HARDNESS, CH)), "Calcium hardness of the fill water";
    137 FillCya "fill.cya": job(number(&bounds::CYANURIC_ACID, BARE)), "Stabilizer of the fill water, mg/L";
    138 ReplaceMost "replace.most": job(number(&limits::CAP, PART)), "Most of the pool to drain at one go, in percent; used if smaller than ours";
    139 ReplaceGroundwater "replace.groundwater": job(choice(&codes::GROUND)), "How the ground water stands";
    140 ReplaceDrainRate "replace.drain-rate": job(number(&limits::FLOW, FLOW)), "How fast water is let out";
    141 ReplaceDrainRateUnit "replace.drain-rate.unit": job(unit(QuantityKind::Flow)), "Unit of water let out and in; empty: liters a minute";
    142 ReplaceFillRate "replace.fill-rate": job(number(&limits::FLOW, FLOW)), "How fast water is let in";
    143 ReplaceWaterPrice "replace.water-price": job(number(&limits::PRICE, UnitRule::Usual(QuantityKind::Price, Field::ReplaceWaterPriceUnit, "/m3"))), "Price of water, supply and sewer together, in the person’s own money";
    144 ReplaceWaterPriceUnit "replace.water-price.unit": job(unit(QuantityKind::Price)), "How much water the price of water is for; empty: a cubic meter";
    145 RiskLevelOver "risk-level.over": shop(number(&limits::RISK, PART)), "Risk of passing the high limit that a stage may bring, in percent";
    146 RiskLevelLow "risk-level.low": shop(number(&limits::CHANCE, PART)), "Risk of staying below the low limit that is left standing, in percent";
    147 RiskLevelCap "risk-level.cap": shop(number(&limits::FIRST_PART, PART)), "Part of the simple sum that may go in before the first retest, in percent";
    148 RiskLevelEnough "risk-level.enough": shop(number(&limits::CHANCE, PART)), "How likely the bags bought are to suffice, in percent";
    149 RiskLevelDrained "risk-level.drained": shop(number(&limits::CHANCE, PART)), "Risk of standing above the high limit left after all replacing, in percent";
    150 RiskLevelSlack "risk-level.slack": shop(number(&limits::SLACK, BARE)), "How near the target the bags bought are to come, mg/L";
    151 Show "show": shop(choice(&codes::SHOW)), "In which units results are shown; never changes what is typed";
    152 JobName "job.name": person(TEXT), "Name of the job, for the paper and the list of jobs";
    153 JobBy "job.by": person(TEXT), "Who worked it out";
    154 JobNote "job.note": person(TEXT), "A note to the job";
    155 LinkJob "link.job": page(choice(&codes::TICK)), "Are names and notes in the link too?";
    156 Paper "paper": page(choice(&codes::SHEET)), "Which sheet is printed";
    157 Variant "variant": job(COUNT), "Number of the exercise; it fills every field that has a `data-range`";
    158 Ask "ask": link(NAMES), "Results to be found: names of outputs, between commas or spaces";
    159 GiveAsk "give.ask": page(NAMES), "For the frame: the result to be found";
    160 GiveLock "give.lock": page(choice(&codes::TICK)), "For the frame: lock what is filled in";
    161 GiveOnly "give.only": page(NAMES), "For the frame: the only parts to be shown";
    162 Lock "lock": link(NAMES), "Fields that keep what the link says, between commas";
    163 Only "only": link(NAMES), "The only parts to be shown, between commas";
    164 Tell "tell": link(TEXT), "The host that may hear of answers and set fields, as https://host";
    165 Can "can": link(TEXT), "What the sandbox allows besides scripts: print, download, copy";
    166 Now "now": handed(MOMENT), "Handed over beside the fields: this place’s date and time";
    167 SignDecimal "sign.decimal": handed(TEXT), "Handed over beside the fields: the page’s sign before decimals";
    168 SignGroup "sign.group": handed(TEXT), "Handed over beside the fields: the page’s sign between groups of three digits";
    169 SignGrouped "sign.grouped": handed(TEXT), "Handed over beside the fields: 5 in languages that leave four digits together";
    170 AskValue "ask.value": handed(choice(&codes::TICK)), "Handed over beside the fields: yes while “which measurement” is unfolded";
    171 AskCheck "ask.check": handed(choice(&codes::TICK)), "Handed over beside the fields: yes while attempts are to be checked";
    172 AskReveal "ask.reveal": handed(choice(&codes::TICK)), "Handed over beside the fields: yes while what is held back is to be shown";
    }
}

/// The question that asks for what a result may lack.
impl From<Input> for Field {
    fn from(input: Input) -> Self {
        match input {
            Input::Volume => Self::PoolVolume,
            Input::Reading => Self::SaltNow,
            Input::Instrument => Self::SaltMethod,
            Input::BagSize => Self::BagSize,
            Input::Purity => Self::BagPurity,
            Input::Temperature => Self::WaterTemperature,
            Input::Ph => Self::WaterPh,
            Input::Alkalinity => Self::WaterTa,
            Input::Hardness => Self::WaterCh,
            Input::CyanuricAcid => Self::WaterCya,
            Input::FillSalt => Self::FillSalt,
            Input::FillTemperature => Self::FillTemperature,
            Input::FillPh => Self::FillPh,
            Input::FillAlkalinity => Self::FillTa,
            Input::FillHardness => Self::FillCh,
            Input::FillCyanuricAcid => Self::FillCya,
            Input::Products => Self::TreatAcid,
            Input::Chlorine => Self::WaterFc,
        }
    }
}

impl Field {
    /// What kind of answer it takes.
    #[must_use]
    pub fn kind(self) -> &'static FieldType {
        &self.facts().kind
    }

    /// Whose matter it is.
    #[must_use]
    pub fn scope(self) -> Scope {
        self.facts().scope
    }

    /// The question that answers its unit, if one does.
    #[must_use]
    pub fn unit(self) -> Option<Field> {
        match self.kind() {
            FieldType::Number(_, rule) | FieldType::List(_, rule) => match rule {
                UnitRule::Asked(_, asked) | UnitRule::Usual(_, asked, _) | UnitRule::Squared(asked) => {
                    Some(*asked)
                }
                UnitRule::Bare | UnitRule::Fixed(..) => None,
            },
            _ => None,
        }
    }

    /// The units that this question for a unit offers: those of every question that is typed in it.
    pub fn units(self) -> impl Iterator<Item = &'static Unit> {
        let typed_in = move |kind: QuantityKind| {
            Self::ALL.into_iter().any(|field| match field.kind() {
                FieldType::Number(_, rule) | FieldType::List(_, rule) => {
                    matches!(rule, UnitRule::Asked(k, asked) | UnitRule::Usual(k, asked, _) if *k == kind && *asked == self)
                }
                _ => false,
            })
        };
        UNITS.iter().filter(move |offered| typed_in(offered.kind))
    }
}
