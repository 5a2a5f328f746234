//! Which results can be shown? One row a result.

use crate::contract::families::{DOSE, Families, INDEX, NONE, REPLACE, RUN, SIZE};
use crate::contract::table::{Names, are_distinct, names};

/// What the table says of a result besides its name.
#[derive(Debug)]
pub struct Told {
    /// What it measures.
    pub measures: Measures,
    /// What is to be found when it is asked for; none for what can't be.
    pub asked: Families,
    /// With which families it is held back.
    pub families: Families,
}

/// What a result measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measures {
    /// Amount of water.
    Water,
    /// Salt in water.
    Salt,
    /// Mass of salt.
    Mass,
    /// Amount of a chemical, by weight or by volume.
    Chemical,
    /// Alkalinity.
    Alkalinity,
    /// Hardness.
    Hardness,
    /// Salt, hardness or stabilizer: whatever decides.
    Decides,
    /// A part of a whole.
    Part,
    /// A saturation index.
    Index,
    /// A length.
    Length,
    /// A surface.
    Area,
    /// Hours.
    Hours,
    /// Money, in the person's own.
    Money,
    /// A number.
    Number,
    /// A moment.
    Moment,
    /// A day.
    Day,
    /// Words.
    Words,
    /// The unit alone.
    Unit,
}

impl Measures {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Water => "amount of water",
            Self::Salt => "salt in water",
            Self::Mass => "mass of salt",
            Self::Chemical => "amount of a chemical",
            Self::Alkalinity => "alkalinity",
            Self::Hardness => "hardness",
            Self::Decides => "as what decides",
            Self::Part => "part",
            Self::Index => "index",
            Self::Length => "length",
            Self::Area => "area",
            Self::Hours => "hours",
            Self::Money => "money",
            Self::Number => "number",
            Self::Moment => "moment",
            Self::Day => "day",
            Self::Words => "words",
            Self::Unit => "the unit alone",
        }
    }
}

const fn told(measures: Measures, families: Families) -> Told {
    Told { measures, asked: NONE, families }
}

const fn asked(measures: Measures, asked: Families, families: Families) -> Told {
    Told { measures, asked, families }
}

use Measures::*;

#[rustfmt::skip]
names! {
    /// A result, by its row of the table. Of those that can be asked for, each stands behind what it is worked out
    /// from.
    Output: Told {
    1 MeasuredVolume "measured.volume": asked(Water, SIZE, SIZE), "Water measured with meter or tape, the meter first; counts where no size is typed";
    2 LengthUnit "length.unit": told(Unit, NONE), "Unit in which lengths are typed";
    3 AreaUnit "area.unit": told(Unit, NONE), "Unit of the ledge’s surface: the square of that of lengths";
    4 SolidsUnit "solids.unit": told(Unit, NONE), "Unit of other solids and of the spa";
    5 MeterUnit "meter.unit": told(Unit, NONE), "Unit in which the meter is read";
    6 MeasuredApart "measured.apart": told(Part, SIZE), "How far the typed size is off the measured one, as a part of the measured";
    7 MeasuredEnds "measured.ends": told(Water, SIZE), "Water within the walls if the mean of both ends’ depths held everywhere";
    8 MeasuredOver "measured.over": told(Part, SIZE), "How much more the mean of both ends would tell than the walls hold";
    9 MeasuredVolumeAlso "measured.volume.also": told(Water, SIZE), "The measured water in the other system of units";
    10 MeasuredAccuracy "measured.accuracy": told(Part, SIZE), "Doubt of the measured size, one standard deviation, by the way it was measured";
    11 MeasuredArea "measured.area": told(Area, SIZE), "Surface of the water, by the measures";
    12 MeasuredDepth "measured.depth": told(Length, SIZE), "Mean depth of the water, steps and ledge taken off, without a spa";
    13 DrawLength "draw.length": told(Length, NONE), "Label of the drawing: length, or from side to side where it is round";
    14 DrawWidth "draw.width": told(Length, NONE), "Label of the drawing: width, of a free form the widest";
    15 DrawA "draw.a": told(Length, NONE), "Label of the drawing: first lobe of a kidney, or length of an L’s other part";
    16 DrawB "draw.b": told(Length, NONE), "Label of the drawing: second lobe of a kidney, or width of an L’s other part";
    17 DrawShallow "draw.shallow": told(Length, NONE), "Label of the drawing: depth at the shallow end, or the one depth";
    18 DrawDeep "draw.deep": told(Length, NONE), "Label of the drawing: depth at the deep end";
    19 DrawFlat "draw.flat": told(Length, NONE), "Label of the drawing: length of the flat, shallow part of the floor";
    20 DrawSlope "draw.slope": told(Length, NONE), "Label of the drawing: length of the slope of the floor";
    21 MeasuredSimpson "measured.simpson": told(Area, SIZE), "Free form: surface by Simpson’s rule, with an odd number of widths";
    22 MeasuredTrapezoid "measured.trapezoid": told(Area, SIZE), "Free form: surface by straight lines between the widths";
    23 MeasuredWalls "measured.walls": told(Water, SIZE), "Water within the walls, before steps, ledge and solids come off and a spa is added";
    24 MeasuredSteps "measured.steps": told(Water, SIZE), "Water that the steps take up";
    25 MeasuredLedge "measured.ledge": told(Water, SIZE), "Water that the ledge takes up";
    26 ReadyLeft "ready.left": told(Number, NONE), "Questions without figures that hold the salt back and are not answered";
    27 UsedTarget "used.target": told(Salt, NONE), "Target in use: as typed, else our example";
    28 UsedLow "used.low": told(Salt, NONE), "Low limit in use: as typed, else ours";
    29 UsedHigh "used.high": told(Salt, NONE), "High limit in use: as typed, else ours";
    30 UsedVolume "used.volume": told(Water, SIZE), "Water in use: the size as typed, else as measured";
    31 TaUnit "ta.unit": told(Unit, NONE), "Unit of alkalinity, typed and shown";
    32 ChUnit "ch.unit": told(Unit, NONE), "Unit of calcium hardness, typed and shown";
    33 ReadingUnit "reading.unit": told(Unit, NONE), "Unit of the salt readings, as the test shows it";
    34 SaltUnit "salt.unit": told(Unit, NONE), "Unit of salt figures other than readings: ppm beside chloride or conductivity";
    35 NextWhen "next.when": told(Moment, NONE), "From when the next step may be done";
    36 RiskIn "risk.in": told(Part, DOSE), "Chance above the high limit by what is in, where that is more than the stage told";
    37 ClockRetest "clock.retest": told(Moment, NONE), "Earliest next salt reading: 24 hours after the last salt";
    38 ClockPower "clock.power": told(Moment, NONE), "Earliest moment to switch on: 48 hours after the last salt";
    39 TreatEndPh "treat.end.ph": told(Number, SIZE.and(INDEX)), "pH once all steps before the salt are done";
    40 ReadyFinish "ready.finish": told(Day, NONE), "Day on which a cement finish or grout is 30 days old";
    41 ReadyEarliest "ready.earliest": told(Day, NONE), "Earliest day for salt by the waits that have a date";
    42 EstimateSalt "estimate.salt": told(Salt, NONE), "Salt when last read, estimated from all readings that count";
    43 RiskNow "risk.now": told(Part, DOSE), "Chance that the salt stood above the high limit when last read";
    44 ReplaceFlowShare "replace.flow.share": told(Part, SIZE.and(REPLACE)), "Steady exchange: water to run through, as a part of the pool; may be above 100 %";
    45 ReplaceFlowVolume "replace.flow.volume": told(Water, SIZE.and(REPLACE)), "Steady exchange: water to run through";
    46 ReplaceFlowHours "replace.flow.hours": told(Hours, SIZE.and(REPLACE)), "Steady exchange: hours at the slower of the two flows";
    47 ReplaceFlowPrice "replace.flow.price": told(Money, SIZE.and(REPLACE)), "Steady exchange: price of the water";
    48 ReplaceMost "replace.most": told(Part, SIZE.and(REPLACE)), "Most of the pool to drain at one go, in use";
    49 ReplaceSinks "replace.sinks": told(Length, SIZE.and(REPLACE)), "How far the water sinks at one go, in the largest pass";
    50 ReplaceTotalShare "replace.total.share": told(Part, SIZE.and(REPLACE)), "All passes together, as a part of the pool";
    51 ReplaceTotalVolume "replace.total.volume": told(Water, SIZE.and(REPLACE)), "All passes together, as an amount of water";
    52 ReplacePassIn "replace.pass.in": told(Hours, SIZE.and(REPLACE)), "Hours to let in the water of the first pass";
    53 ReplacePassOut "replace.pass.out": told(Hours, SIZE.and(REPLACE)), "Hours to let out the water of the first pass";
    54 ReplacePassPrice "replace.pass.price": told(Money, SIZE.and(REPLACE)), "Price of the water of the first pass";
    55 ReplaceTotalIn "replace.total.in": told(Hours, SIZE.and(REPLACE)), "Hours to let in the water of all passes";
    56 ReplaceTotalOut "replace.total.out": told(Hours, SIZE.and(REPLACE)), "Hours to let out the water of all passes";
    57 ReplaceTotalPrice "replace.total.price": told(Money, SIZE.and(REPLACE)), "Price of the water of all passes";
    58 ReplaceSalt "replace.salt": told(Salt, SIZE.and(REPLACE)), "Salt reading to expect once the water is replaced";
    59 ReplaceTa "replace.ta": told(Alkalinity, SIZE.and(REPLACE)), "Total alkalinity to expect once the water is replaced";
    60 ReplaceCh "replace.ch": told(Hardness, SIZE.and(REPLACE)), "Calcium hardness to expect once the water is replaced";
    61 ReplaceCya "replace.cya": told(Number, SIZE.and(REPLACE)), "Stabilizer to expect once the water is replaced, mg/L";
    62 ReplacePh "replace.ph": told(Number, SIZE.and(REPLACE)), "pH once the two waters are mixed, before air or a chemical moves it";
    63 ReplaceIndex "replace.index": told(Index, SIZE.and(INDEX).and(REPLACE)), "Saturation index of the two waters mixed";
    64 ReplaceNow "replace.now": told(Decides, SIZE.and(REPLACE)), "Today’s figure of what decides the share: salt, hardness or stabilizer";
    65 ReplaceGoal "replace.goal": told(Decides, SIZE.and(REPLACE)), "Figure that what decides the share comes down to: its goal, or the salt reading then";
    66 ReplaceFill "replace.fill": told(Decides, SIZE.and(REPLACE)), "The fill water’s figure of what decides the share: salt, hardness or stabilizer";
    67 BasicRise "basic.rise": asked(Salt, DOSE, DOSE), "Rise from the first reading, the mean if read twice, to the target";
    68 ReplaceWater "replace.water": told(Water, SIZE.and(REPLACE)), "All of the water that is shared in: where doses have told its size, by these";
    69 BasicPure "basic.pure": asked(Mass, DOSE, DOSE), "Pure sodium chloride that brings the first reading to the target, every figure believed";
    70 ReplaceCount "replace.count": told(Number, SIZE.and(REPLACE)), "How many passes it takes at no more than the most to drain at one go";
    71 TreatEndIndex "treat.end.index": told(Index, SIZE.and(INDEX)), "Index of the water that the steps end at, with the salt in where that can be told";
    72 BasicMass "basic.mass": asked(Mass, DOSE, DOSE), "Salt of these bags that brings the first reading to the target, every figure believed";
    73 BuyLow "buy.low": told(Number, DOSE), "Whole bags that 5 of 100 pools like this need at most, to the target itself";
    74 BuyHigh "buy.high": told(Number, DOSE), "Whole bags that 95 of 100 pools like this need at most, to the target itself";
    75 BasicBags "basic.bags": asked(Number, DOSE, DOSE), "Bags, not rounded up, that bring the first reading to the target, every figure believed";
    76 BasicFrom "basic.from": told(Salt, NONE), "Reading that the simple sum counts from; expected, where water is replaced first";
    77 BuyBags "buy.bags": asked(Number, DOSE, DOSE), "Whole bags to buy: the total less the unopened bags in hand";
    78 BuyPrice "buy.price": asked(Money, DOSE, DOSE), "Price of the bags to buy";
    79 BuyTotal "buy.total": told(Number, DOSE), "Whole bags needed from the last reading on, the doubt counted in";
    80 BuyOnHand "buy.on-hand": told(Number, DOSE), "Unopened bags in hand, as typed; 0 where left empty";
    81 InSince "in.since": told(Mass, NONE), "Salt put in since the last reading";
    82 InSinceBags "in.since.bags": told(Number, NONE), "Salt put in since the last reading, in bags";
    83 StageLeftBags "stage.left.bags": told(Number, DOSE), "Bags of this stage that are not in yet";
    84 StageLeft "stage.left": told(Mass, DOSE), "Weight of this stage that is not in yet";
    85 StageBags "stage.bags": told(Number, DOSE), "Bags of this stage, all of it; where a unit is too coarse, the part of one that is due";
    86 StageMass "stage.mass": asked(Mass, DOSE, DOSE), "Weight of this stage, all of it";
    87 BuyLeft "buy.left": told(Number, DOSE), "Bags to have at hand from here on: the total less what is in since the last reading";
    88 StageExpect "stage.expect": told(Salt, DOSE), "Reading to expect a day after this stage, by the same instrument";
    89 StageExpectLow "stage.expect.low": told(Salt, DOSE), "Low end of where the reading to expect lies 9 times in 10";
    90 StageExpectHigh "stage.expect.high": told(Salt, DOSE), "High end of where the reading to expect lies 9 times in 10";
    91 Cap "cap": told(Part, DOSE), "Part of the simple sum that may go in before the next reading, as set by risk-level.cap";
    92 RiskOverMost "risk.over.most": told(Part, DOSE), "Chance of passing the high limit that a stage may bring, as set by risk-level.over";
    93 RiskOver "risk.over": told(Part, DOSE), "Chance above the high limit with this stage in";
    94 RiskLow "risk.low": told(Part, DOSE), "Chance below the low limit with this stage in";
    95 RiskLowMost "risk.low.most": told(Part, DOSE), "Chance of staying below the low limit that is left standing, as set by risk-level.low";
    96 StagePlain "stage.plain": asked(Salt, DOSE, DOSE), "Reading after the first stage by the simple sum, every figure believed";
    97 IndexNow "index.now": asked(Index, INDEX, INDEX), "Saturation index of the water as tested";
    98 IndexSame "index.same": asked(Index, INDEX, INDEX), "Index with all salt in, the pH put back to today’s";
    99 EstimateVolume "estimate.volume": told(Water, SIZE), "Water in the pool, estimated from size, doses and readings together";
    100 EstimateVolumeLow "estimate.volume.low": told(Water, SIZE), "Low end of where the estimated volume lies 9 times in 10";
    101 EstimateVolumeHigh "estimate.volume.high": told(Water, SIZE), "High end of where the estimated volume lies 9 times in 10";
    102 EstimateSaltLow "estimate.salt.low": told(Salt, NONE), "Low end of where the salt when last read lies 9 times in 10";
    103 EstimateSaltHigh "estimate.salt.high": told(Salt, NONE), "High end of where the salt when last read lies 9 times in 10";
    104 EstimateNeed "estimate.need": told(Number, DOSE), "Bags missing to the target on the average, at the last reading; 0 where none";
    105 StageAllowed "stage.allowed": told(Number, DOSE), "Most bags whose risk of passing the high limit is taken; 0 where none";
    106 StageWanted "stage.wanted": told(Number, DOSE), "Bags missing to the target on the average, down to whole units of what is handled";
    107 ValueToday "value.today": told(Number, DOSE), "Width of the range, 9 times in 10, of bags still needed: as it is, in bags";
    108 ValueVolume "value.volume": told(Number, DOSE), "Width of that range with half the doubt of the size, in bags";
    109 ValueAgain "value.again": told(Number, DOSE), "Width of that range with one more reading of the same kind, in bags";
    110 ValueLab "value.lab": told(Number, DOSE), "Width of that range if the readings were a laboratory’s, in bags";
    111 RunFullHours "run.full-hours": told(Number, SIZE.and(RUN)), "Hours a day at full output that make up for the chlorine used";
    112 IndexFree "index.free": asked(Index, INDEX, INDEX), "Index with all salt in, the pH left to fall by itself";
    113 RunSettingLow "run.setting.low": told(Number, SIZE.and(RUN)), "Output setting on a mild day, half the chlorine used, in percent";
    114 RunSettingHigh "run.setting.high": told(Number, SIZE.and(RUN)), "Output setting in a hot spell, half as much again used, in percent";
    115 RunGrams "run.grams": told(Number, SIZE.and(RUN)), "Chlorine used up in a day, in grams";
    116 RunLift "run.lift": told(Number, SIZE.and(RUN)), "Hours at full output, once, from today’s free chlorine to the goal";
    117 RunReserve "run.reserve": told(Number, SIZE.and(RUN)), "What it makes in a pump day, over what is used in a day";
    118 RunClimbTo "run.climb.to": told(Number, SIZE.and(RUN)), "pH that the acid brings it back to: the goal, or 7.4";
    119 RunClimbFrom "run.climb.from": told(Number, SIZE.and(RUN)), "pH that one climb ends at, where acid is due";
    120 RunClimbAcid "run.climb.acid": told(Chemical, SIZE.and(RUN)), "Acid that brings one climb of the pH back";
    121 RunClimbTa "run.climb.ta": told(Number, SIZE.and(RUN)), "Alkalinity that the acid for one climb takes away, mg/L";
    122 RunClimbRest "run.climb.rest": told(Number, SIZE.and(RUN)), "pH at which the air alone would leave the water";
    123 RunClimbWhole "run.climb.whole": told(Chemical, SIZE.and(RUN)), "Acid from the pH at rest with the air back to the pH wanted, in all";
    124 SeasonEnd "season.end": told(Salt, SIZE.and(RUN)), "Salt at the end of a season that begins at the target";
    125 SeasonLess "season.less": told(Salt, SIZE.and(RUN)), "Salt gone at the end of that season: the target less what is left";
    126 SeasonMass "season.mass": told(Mass, SIZE.and(RUN)), "Salt of these bags that brings a season’s loss back to the target";
    127 SeasonBags "season.bags": told(Number, SIZE.and(RUN)), "Bags, not rounded up, that bring a season’s loss back";
    128 SeasonWhole "season.whole": told(Number, SIZE.and(RUN)), "Whole bags that bring a season’s loss back";
    129 ClockLast "clock.last": told(Moment, NONE), "When the last salt went in";
    130 InAll "in.all": told(Mass, NONE), "All salt put in so far, by the log";
    131 SumsVolume "sums.volume": told(Mass, DOSE), "Salt still missing by the size as stated alone, every reading believed";
    132 SumsProportion "sums.proportion": told(Mass, DOSE), "Salt still missing by the readings alone: in proportion to the rise so far";
    133 DosingVolume "dosing.volume": told(Water, SIZE), "Size of the pool that the first dose alone tells of";
    134 DosingVolumeLow "dosing.volume.low": told(Water, SIZE), "Low end of where the size told by the first dose lies 19 times in 20";
    135 DosingVolumeHigh "dosing.volume.high": told(Water, SIZE), "High end of where it lies 19 times in 20; missing where there is no end";
    136 StatedVolume "stated.volume": told(Water, SIZE), "Size of the pool before any reading: as stated, usual over-estimates allowed for";
    137 StatedVolumeLow "stated.volume.low": told(Water, SIZE), "Low end of where the size before any reading lies 9 times in 10";
    138 StatedVolumeHigh "stated.volume.high": told(Water, SIZE), "High end of where the size before any reading lies 9 times in 10";
    139 ReplaceShare "replace.share": asked(Part, REPLACE, SIZE.and(REPLACE)), "Share of the pool to replace if it were drained once";
    140 ReplaceVolume "replace.volume": asked(Water, REPLACE, SIZE.and(REPLACE)), "Water to replace if it were drained once";
    141 IndexShiftSame "index.shift.same": told(Index, INDEX), "Index with all salt in and the pH put back, less the index as tested";
    142 IndexPhFree "index.ph.free": told(Number, INDEX), "pH with all salt in, left to fall by itself";
    143 RunSetting "run.setting": asked(Number, RUN, SIZE.and(RUN)), "Output setting to begin with, in percent of full output";
    144 IndexShiftFree "index.shift.free": told(Index, INDEX), "Index with all salt in and the pH left free, less the index as tested";
    145 IndexWorse "index.worse": told(Index, INDEX), "Index that is judged: with salt due the one of two farther from zero, else today’s";
    146 IndexLogCalcium "index.log-calcium": told(Number, INDEX), "Logarithm of the calcium’s activity, today";
    147 IndexLogCarbonate "index.log-carbonate": told(Number, INDEX), "Logarithm of the carbonate’s activity, today";
    148 IndexLogSolubility "index.log-solubility": told(Number, INDEX), "Logarithm of calcite’s solubility product at this temperature";
    149 IndexCarbonate "index.carbonate": told(Number, INDEX), "Carbonate alkalinity, without the stabilizer’s part, mg/L as calcium carbonate";
    150 IndexStrength "index.strength": told(Number, INDEX), "Ionic strength of the water as tested, mol/kg";
    151 IndexSaltNow "index.salt.now": told(Salt, DOSE.and(INDEX)), "Sodium chloride behind the reading, other ions taken off";
    152 IndexSaltAfter "index.salt.after": told(Salt, DOSE.and(INDEX)), "Sodium chloride in the water with the salt in";
    153 IndexStandardNow "index.standard.now": told(Index, INDEX), "For comparison: index by the form of Standard Methods 2330B, as tested";
    154 IndexStandardAfter "index.standard.after": told(Index, INDEX), "For comparison: index by Standard Methods 2330B with the salt in, the pH kept";
    155 IndexClosedNow "index.closed.now": told(Index, INDEX), "For comparison: index by the closed form of the factor tables, as tested";
    156 IndexClosedAfter "index.closed.after": told(Index, INDEX), "For comparison: index by the closed form with the salt in, the pH kept";
    157 IndexPhAir "index.ph.air": told(Number, INDEX), "pH that the water comes to if left to the air for long";
    158 IndexAir "index.air": told(Index, INDEX), "Saturation index that the water comes to if left to the air for long";
    159 ChlorineAcid "chlorine.acid": told(Number, NONE), "Of the free chlorine, what is hypochlorous acid, mg/L";
    160 ChlorineBound "chlorine.bound": told(Number, NONE), "Of the free chlorine, what the stabilizer holds, mg/L";
    161 KeptWhen "kept.when": told(Moment, NONE), "When the job was last kept on this device";
    162 PrintWhen "print.when": told(Moment, NONE), "When the page was last printed";
    163 Edition "edition": told(Words, NONE), "Edition of the program";
    164 ClockNow "clock.now": told(Moment, NONE), "This device’s time when the answer was worked out";
    }
}

/// The results that can be asked for.
pub const ASKED: [Output; 15] = {
    let mut all = [Output::MeasuredVolume; 15];
    let (mut at, mut found) = (0, 0);
    while at < Output::ALL.len() {
        if !Output::FACTS[at].asked.is_none() {
            all[found] = Output::ALL[at];
            found += 1;
        }
        at += 1;
    }
    assert!(found == all.len());
    all
};

impl Output {
    /// Can it be asked for?
    #[must_use]
    pub fn is_asked(self) -> bool {
        !self.facts().asked.is_none()
    }

    /// With which families it is held back.
    #[must_use]
    pub fn families(self) -> Families {
        self.facts().families
    }
}
