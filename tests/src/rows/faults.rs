//! What is told while a field is at fault, or holds what nobody types? Found by fuzzing: see `tests/fuzz`.

use super::days::METRIC;
use crate::row::Row;

const TOO_SALTY_OVER_LINER: &str = "pool.shape=rectangle pool.length=10 pool.width=5 pool.length.unit=m pool.floor=level \
     pool.shallow=1.5 surface.kind=vinyl salt.method=lab salt.now=4,100 salt.now.unit=[ppm] salt.target=3200 salt.low=2800 \
     salt.high=3600 fill.salt=150";
const HARD: &str = "pool.method=taped pool.volume=68 pool.volume.unit=m3 salt.now=1800 salt.now.unit=[ppm] salt.method=drops \
     salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=100 \
     water.ch=300 water.cya=30 fill.salt=120 fill.ch=300 treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100";
const DOSED: &str = "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00";

const IN_BAND: &str = "pool.method=taped pool.volume=68 pool.volume.unit=m3 surface.kind=cement salt.now=3050 salt.now.unit=[ppm] \
     salt.method=lab salt.target=3200 salt.low=2800 salt.high=3600 bag.size=20 bag.size.unit=kg bag.purity=99.4 \
     water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=100 water.ch=300 water.cya=30";
const FOUR: &str = "log.1.kind=salt log.1.mass=120 log.1.mass.unit=kg log.1.when=2027-05-21T09:00 \
     log.2.kind=test log.2.salt=2000 log.2.method=lab log.2.when=2027-05-22T10:00 \
     log.3.kind=test log.3.salt=2000 log.3.method=drops log.3.when=2027-05-22T11:00 \
     log.4.kind=test log.4.salt=2000 log.4.method=strip log.4.when=2027-05-22T12:00";
const CURED: &str = "surface.kind=cement surface.day=2027-05-09 now=2027-05-21T09:00 exception.finish-age.who=A \
     exception.finish-age.role=applicator";

pub const ROWS: &[Row] = &[
    Row {
        name: "a hand-span of no known depth: a tape at fault is not a pool that nobody measured",
        form: &[TOO_SALTY_OVER_LINER, "pool.ledge-area=x"],
        shows: &["replace.share=22.8 replace.most=– replace.count=–"],
        holds: "replace.told fault !replace.parts !cap.ours",
    },
    Row {
        name: "a decision at fault: whether water goes first is not known, so no chemical is told",
        form: &[HARD, "goal.ta=120 risk-level.over=x"],
        shows: &["treat.end.index=– treat.end.ph=–"],
        holds: "treat.unknown fault !treat.steps",
    },
    Row {
        name: "nor how much water, for the sake of another test",
        form: &[HARD, "goal.ch=200 pool.method=nonsense"],
        shows: &["replace.share=–"],
        holds: "replace.unknown treat.unknown",
    },
    Row {
        name: "one goal at fault: what another asks for still goes before the salt",
        form: &[HARD, "goal.ch=200 goal.ph=x"],
        shows: &["buy.bags=– basic.mass=– basic.from=–"],
        holds: "replace.due replace.hardness treat.unknown fault",
    },
    Row {
        name: "a setting at fault: whether the log can be true is not known",
        form: &[METRIC, DOSED, "risk-level.slack=x now=2027-05-21T10:00"],
        shows: &["in.all=– clock.retest=– stage.mass=–"],
        holds: "fault !schedule",
    },
    Row {
        name: "a second reading at fault counts, where the first is in the log",
        form: &[
            METRIC,
            "salt.now= salt.repeat=x log.1.kind=test log.1.salt=400 log.1.method=meter log.1.when=2027-05-20T09:00",
        ],
        shows: &["buy.total=– stage.mass=–"],
        holds: "fault",
    },
    Row {
        name: "so does a reading at fault that would only be assumed",
        form: &[METRIC, "salt.method=assumed salt.now=x"],
        shows: &["buy.total=–"],
        holds: "fault need.salt-now",
    },
    Row {
        name: "what a line of that kind does not ask for is not at fault",
        form: &[
            METRIC,
            DOSED,
            "log.1.salt=x log.1.method=nonsense log.2.kind=ignored log.2.when=x log.2.mass=x",
        ],
        shows: &["in.all=120"],
        holds: "!fault !log.unfinished",
    },
    Row {
        name: "what two readings lack is said once",
        form: &["salt.now=6 salt.repeat=6.1 salt.now.unit=mS/cm salt.method=meter"],
        shows: &[],
        holds: "need.salt-atc",
    },
    Row {
        name: "nothing by meter nor tape, said once",
        form: &[
            "pool.meter-before=1 pool.meter-after=1.001 pool.meter.unit=L pool.shape=rectangle pool.length=2 pool.width=1",
            "pool.length.unit=m pool.floor=level pool.shallow=0.5 pool.solids=5 pool.solids.unit=m3",
        ],
        shows: &["measured.volume=–"],
        holds: "measure.nothing",
    },
    Row {
        name: "a list of nothing is no list",
        form: &[
            "pool.shape=rectangle pool.length=8 pool.width=4 pool.length.unit=m pool.floor=level pool.shallow=1.5",
            "pool.steps=, pool.steps-width=2 pool.steps-tread=0.3",
        ],
        shows: &["echo.pool.steps.count=– measured.volume=–"],
        holds: "fault measure.unfinished !echo.pool.steps",
    },
    Row {
        name: "letters and digits are no signs between digits",
        form: &[METRIC, "sign.group=m sign.decimal=7"],
        shows: &["basic.rise=2,800 used.volume=62.82"],
        holds: "standing.short",
    },
    Row {
        name: "of a name that is there twice the last text counts",
        form: &["pump.hours=8 pump.hours= log.1.mass=6 log.1.mass="],
        shows: &[],
        holds: "blank",
    },
    Row {
        name: "switched on, and a line of the log at fault: nobody knows whether that was too early",
        form: &[METRIC, DOSED, "power.when=2027-05-21T10:00 log.24.mass=66\u{1} now=2027-05-21T11:00"],
        shows: &["next.when=– clock.power=–"],
        holds: "fault log.unfinished gate.clock.unknown !schedule !power.given !power.early",
    },
    Row {
        name: "nor is a line of no mass a dose that never was",
        form: &[
            METRIC,
            DOSED,
            "power.when=2027-05-23T10:00 log.2.kind=salt now=2027-05-23T11:00 salt.undissolved=none",
        ],
        shows: &["next.when=– clock.power=–"],
        holds: "log.unfinished gate.clock.unknown !schedule !power.given !power.early",
    },
    Row {
        name: "a reading of no known instrument: when the last salt went in is known all the same",
        form: &[METRIC, DOSED, "salt.method= power.when=2027-05-21T10:00 now=2027-05-21T11:00"],
        shows: &["next.when=– clock.power=2027-05-23T09:00"],
        holds: "gate.clock.wait power.early !power.given !schedule",
    },
    Row {
        name: "a line at fault, and a season: by the doses the pool had another size than was typed",
        form: &[METRIC, DOSED, "log.2.salt=x log.2.kind=test fill.salt=100 season.lost=10"],
        shows: &["season.end=– season.mass=–"],
        holds: "season.open !season",
    },
    Row {
        name: "a bag at fault: whether salt is still due is not known, nor what is next",
        form: &[
            METRIC,
            "log.1.kind=salt log.1.mass=120 log.1.mass.unit=kg log.1.when=2027-05-21T09:00 bag.purity=x now=2027-05-21T10:00",
        ],
        shows: &["next.when=– stage.mass=–"],
        holds: "fault standing.unknown !schedule",
    },
    Row {
        name: "a second reading at fault: the sum is counted from the mean of both, so from none",
        form: &[METRIC, "salt.repeat=x"],
        shows: &["basic.from=– basic.rise=– basic.mass=– stage.mass=–"],
        holds: "fault",
    },
    Row {
        name: "a goal at fault that may call for other water: from which reading salt is counted is not known",
        form: &[HARD, "goal.cya=x"],
        shows: &["basic.from=– basic.mass=– stage.bags=– buy.bags=– index.worse=–"],
        holds: "fault standing.unknown treat.unknown !add.yes",
    },
    Row {
        name: "so it is where the goal stands and the test is at fault",
        form: &[HARD, "goal.cya=20 water.cya=x"],
        shows: &["basic.from=– basic.mass=– stage.bags=–"],
        holds: "fault standing.unknown",
    },
    Row {
        name: "a test at fault without a goal calls for no water",
        form: &[HARD, "water.cya=x"],
        shows: &["basic.mass=95.8"],
        holds: "fault standing.short",
    },
    Row {
        name: "hardness has to come down, and stabiliser perhaps more: how much water is not known",
        form: &[HARD, "goal.ch=200 fill.ch=50 fill.cya=0 goal.cya=x"],
        shows: &["replace.share=– basic.mass=–"],
        holds: "replace.unknown",
    },
    Row {
        name: "what the pool stands on at fault: how much at one go is not known, how much in all is",
        form: &[TOO_SALTY_OVER_LINER, "replace.groundwater=x replace.drain-rate=5 replace.fill-rate=4"],
        shows: &["replace.share=22.8 replace.most=– replace.count=–"],
        holds: "replace.told fault !replace.parts !cap.ours",
    },
    Row {
        name: "one of two flows at fault: it may be the slower",
        form: &[TOO_SALTY_OVER_LINER, "replace.drain-rate=5 replace.fill-rate=x"],
        shows: &["replace.share=22.8 replace.flow.hours=–"],
        holds: "replace.told fault",
    },
    Row {
        name: "a meter at fault beside a tape: the size is not the tape's then, and the drawing is",
        form: &[TOO_SALTY_OVER_LINER, "pool.meter-before=0 pool.meter-after=x pool.meter.unit=m3"],
        shows: &["measured.volume=– used.volume=– measured.accuracy=– measured.area=50.0 replace.share=22.8"],
        holds: "fault measure.drawn !measure.known !pool.measured",
    },
    Row {
        name: "in its band, and a bag at fault: whether salt is due is not known, so nor is the index after it",
        form: &[IN_BAND, "bag.purity=x"],
        shows: &["index.same=– index.free=– index.salt.after=–"],
        holds: "fault standing.unknown",
    },
    Row {
        name: "a guess whose instrument can't be read is still none that the sum is counted from",
        form: &[METRIC, "salt.method=assumed\u{1}"],
        shows: &["basic.from=– basic.rise=– basic.mass=–"],
        holds: "fault",
    },
    Row {
        name: "four instruments and a bag at fault: which three are to count is still not known",
        form: &[METRIC, FOUR, "bag.size=x"],
        shows: &["in.all=– clock.retest=–"],
        holds: "fault !log.dosed",
    },
    Row {
        name: "the same with the bag as it is",
        form: &[METRIC, FOUR],
        shows: &["in.all=–"],
        holds: "log.instruments !log.dosed",
    },
    Row {
        name: "a ruling of a day that can't be read: whether the finish still waits is not known, nor until when",
        form: &[CURED, "exception.finish-age.day=2027-05-2o"],
        shows: &["ready.earliest=–"],
        holds: "fault !ready.earliest !add.yes",
    },
    Row {
        name: "the same once it can",
        form: &[CURED, "exception.finish-age.day="],
        shows: &["ready.earliest=2027-06-08"],
        holds: "ready.earliest gate.finish-age.wait",
    },
    Row {
        name: "a goal at fault: of its steps and the finish the later counts, and one of them is not known",
        form: &[CURED, "exception.finish-age.day= goal.ta=x"],
        shows: &["ready.earliest=–"],
        holds: "fault gate.finish-age.wait !ready.earliest",
    },
    Row {
        name: "a guess, and a line at fault that may be a reading: not known, which is no stop",
        form: &[
            METRIC,
            "salt.method=assumed log.1.kind=test log.1.salt=x log.1.method=meter log.1.when=2027-05-20T09:00",
        ],
        shows: &[],
        holds: "fault gate.reading.unknown !gate.reading.stop",
    },
    Row {
        name: "a guess alone is a stop",
        form: &[METRIC, "salt.method=assumed"],
        shows: &[],
        holds: "gate.reading.stop",
    },
    Row {
        name: "nothing to add, and a test that may stand against the salt can't be read",
        form: &[IN_BAND, "water.ch=x"],
        shows: &[],
        holds: "fault standing.within add.unknown !add.none",
    },
    Row {
        name: "the same with the test left out",
        form: &[IN_BAND, "water.ch="],
        shows: &[],
        holds: "standing.within add.none",
    },
    Row {
        name: "more salt in than a log can hold, the bag's purity and the size of the pool not known",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=meter salt.target=3200 bag.size=2000 bag.size.unit=kg",
            "log.1.kind=salt log.1.mass=60000 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
        ],
        shows: &["in.all=–"],
        holds: "log.too-much !log.dosed",
    },
    Row {
        name: "a moment after which there is none that can be written",
        form: &["power.when=9999-12-31T23:00 now=9999-12-31T23:00"],
        shows: &["next.when=9999-12-31T23:00"],
        holds: "schedule",
    },
];
