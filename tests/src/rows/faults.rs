//! What is told while a field is at fault, or holds what nobody types? Found by fuzzing: see `tests/fuzz`.

use super::days::METRIC;
use crate::row::Row;

const TOO_SALTY_OVER_LINER: &str = "pool.shape=rectangle pool.length=10 pool.width=5 pool.length.unit=m pool.floor=level \
     pool.shallow=1.5 surface.kind=liner salt.how=lab salt.now=4,100 salt.now.unit=[ppm] salt.target=3200 salt.low=2800 \
     salt.high=3600 fill.salt=150";
const HARD: &str = "pool.how=taped pool.volume=68 pool.volume.unit=m3 salt.now=1800 salt.now.unit=[ppm] salt.how=drops \
     salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.heat=25 water.heat.unit=Cel water.ph=7.5 water.ta=100 \
     water.ch=300 water.cya=30 fill.salt=120 fill.ch=300 treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100";
const DOSED: &str = "log.1.kind=dose log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00";

const IN_BAND: &str = "pool.how=taped pool.volume=68 pool.volume.unit=m3 surface.kind=cement salt.now=3050 salt.now.unit=[ppm] \
     salt.how=lab salt.target=3200 salt.low=2800 salt.high=3600 bag.size=20 bag.size.unit=kg bag.purity=99.4 \
     water.heat=25 water.heat.unit=Cel water.ph=7.5 water.ta=100 water.ch=300 water.cya=30";
const FOUR: &str = "log.1.kind=dose log.1.mass=120 log.1.mass.unit=kg log.1.when=2027-05-21T09:00 \
     log.2.kind=reading log.2.salt=2000 log.2.how=lab log.2.when=2027-05-22T10:00 \
     log.3.kind=reading log.3.salt=2000 log.3.how=drops log.3.when=2027-05-22T11:00 \
     log.4.kind=reading log.4.salt=2000 log.4.how=strip log.4.when=2027-05-22T12:00";
const CURED: &str = "surface.kind=cement surface.day=2027-05-09 now=2027-05-21T09:00 over.finish-age.who=A \
     over.finish-age.role=applicator";

pub const ROWS: &[Row] = &[
    Row {
        name: "a hand-span of no known depth: a tape at fault is not a pool that nobody measured",
        form: &[TOO_SALTY_OVER_LINER, "pool.ledge-area=x"],
        shows: &["less.share=22.8 less.cap=– less.count=–"],
        holds: "less.known fault !less.parts !cap.ours",
    },
    Row {
        name: "a decision at fault: whether water goes first is not known, so no chemical is told",
        form: &[HARD, "goal.ta=120 level.over=x"],
        shows: &["treat.end.index=– treat.end.ph=–"],
        holds: "treat.unknown fault !treat.steps",
    },
    Row {
        name: "nor how much water, for the sake of another test",
        form: &[HARD, "goal.ch=200 pool.how=nonsense"],
        shows: &["less.share=–"],
        holds: "less.unknown treat.unknown",
    },
    Row {
        name: "one goal at fault: what another asks for still goes before the salt",
        form: &[HARD, "goal.ch=200 goal.ph=x"],
        shows: &["buy.bags=– dose.mass=– dose.from=–"],
        holds: "less.due less.hardness treat.unknown fault",
    },
    Row {
        name: "a setting at fault: whether the log can be true is not known",
        form: &[METRIC, DOSED, "level.slack=x now=2027-05-21T10:00"],
        shows: &["in.all=– clock.retest=– now.mass=–"],
        holds: "fault !schedule",
    },
    Row {
        name: "a second reading at fault counts, where the first is in the log",
        form: &[
            METRIC,
            "salt.now= salt.again=x log.1.kind=reading log.1.salt=400 log.1.how=meter log.1.when=2027-05-20T09:00",
        ],
        shows: &["buy.total=– now.mass=–"],
        holds: "fault",
    },
    Row {
        name: "so does a reading at fault that would only be assumed",
        form: &[METRIC, "salt.how=assumed salt.now=x"],
        shows: &["buy.total=–"],
        holds: "fault need.salt-now",
    },
    Row {
        name: "what a line of that kind does not ask for is not at fault",
        form: &[METRIC, DOSED, "log.1.salt=x log.1.how=nonsense log.2.kind=struck log.2.when=x log.2.mass=x"],
        shows: &["in.all=120"],
        holds: "!fault !log.unfinished",
    },
    Row {
        name: "what two readings lack is said once",
        form: &["salt.now=6 salt.again=6.1 salt.now.unit=mS/cm salt.how=meter"],
        shows: &[],
        holds: "need.salt-compensated",
    },
    Row {
        name: "nothing by meter nor tape, said once",
        form: &[
            "pool.meter-before=1 pool.meter-after=1.001 pool.meter.unit=L pool.shape=rectangle pool.length=2 pool.width=1",
            "pool.length.unit=m pool.floor=level pool.shallow=0.5 pool.less=5 pool.part.unit=m3",
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
        shows: &["dose.rise=2,800 used.volume=62.82"],
        holds: "dose.add",
    },
    Row {
        name: "of a name that is there twice the last text counts",
        form: &["run.hours=8 run.hours= log.1.mass=6 log.1.mass="],
        shows: &[],
        holds: "blank",
    },
    Row {
        name: "switched on, and a line of the log at fault: nobody knows whether that was too early",
        form: &[METRIC, DOSED, "on.when=2027-05-21T10:00 log.24.mass=66\u{1} now=2027-05-21T11:00"],
        shows: &["next.when=– clock.power=–"],
        holds: "fault log.unfinished gate.clock.unknown !schedule !on !on.early",
    },
    Row {
        name: "nor is a line of no mass a dose that never was",
        form: &[METRIC, DOSED, "on.when=2027-05-23T10:00 log.2.kind=dose now=2027-05-23T11:00 grains=none"],
        shows: &["next.when=– clock.power=–"],
        holds: "log.unfinished gate.clock.unknown !schedule !on !on.early",
    },
    Row {
        name: "a reading of no known instrument: when the last salt went in is known all the same",
        form: &[METRIC, DOSED, "salt.how= on.when=2027-05-21T10:00 now=2027-05-21T11:00"],
        shows: &["next.when=– clock.power=2027-05-23T09:00"],
        holds: "gate.clock.wait on.early !on !schedule",
    },
    Row {
        name: "a line at fault, and a season: by the doses the pool had another size than was typed",
        form: &[METRIC, DOSED, "log.2.salt=x log.2.kind=reading fill.salt=100 season.lost=10"],
        shows: &["season.end=– season.mass=–"],
        holds: "season.open !season",
    },
    Row {
        name: "a bag at fault: whether salt is still due is not known, nor what is next",
        form: &[
            METRIC,
            "log.1.kind=dose log.1.mass=120 log.1.mass.unit=kg log.1.when=2027-05-21T09:00 bag.purity=x now=2027-05-21T10:00",
        ],
        shows: &["next.when=– now.mass=–"],
        holds: "fault dose.unknown !schedule",
    },
    Row {
        name: "a second reading at fault: the sum is counted from the mean of both, so from none",
        form: &[METRIC, "salt.again=x"],
        shows: &["dose.from=– dose.rise=– dose.mass=– now.mass=–"],
        holds: "fault",
    },
    Row {
        name: "a goal at fault that may call for other water: from which reading salt is counted is not known",
        form: &[HARD, "goal.cya=x"],
        shows: &["dose.from=– dose.mass=– now.bags=– buy.bags=– index.worse=–"],
        holds: "fault dose.unknown treat.unknown !add.yes",
    },
    Row {
        name: "so it is where the goal stands and the test is at fault",
        form: &[HARD, "goal.cya=20 water.cya=x"],
        shows: &["dose.from=– dose.mass=– now.bags=–"],
        holds: "fault dose.unknown",
    },
    Row {
        name: "a test at fault without a goal calls for no water",
        form: &[HARD, "water.cya=x"],
        shows: &["dose.mass=95.8"],
        holds: "fault dose.add",
    },
    Row {
        name: "hardness has to come down, and stabiliser perhaps more: how much water is not known",
        form: &[HARD, "goal.ch=200 fill.ch=50 fill.cya=0 goal.cya=x"],
        shows: &["less.share=– dose.mass=–"],
        holds: "less.unknown",
    },
    Row {
        name: "what the pool stands on at fault: how much at one go is not known, how much in all is",
        form: &[TOO_SALTY_OVER_LINER, "less.ground=x less.out=5 less.in=4"],
        shows: &["less.share=22.8 less.cap=– less.count=–"],
        holds: "less.known fault !less.parts !cap.ours",
    },
    Row {
        name: "one of two flows at fault: it may be the slower",
        form: &[TOO_SALTY_OVER_LINER, "less.out=5 less.in=x"],
        shows: &["less.share=22.8 less.flow.hours=–"],
        holds: "less.known fault",
    },
    Row {
        name: "a meter at fault beside a tape: the size is not the tape's then, and the drawing is",
        form: &[TOO_SALTY_OVER_LINER, "pool.meter-before=0 pool.meter-after=x pool.meter.unit=m3"],
        shows: &["measured.volume=– used.volume=– measured.doubt=– measured.area=50.0 less.share=22.8"],
        holds: "fault measure.drawn !measure.known !pool.measured",
    },
    Row {
        name: "in its band, and a bag at fault: whether salt is due is not known, so nor is the index after it",
        form: &[IN_BAND, "bag.purity=x"],
        shows: &["index.same=– index.free=– index.salt.after=–"],
        holds: "fault dose.unknown",
    },
    Row {
        name: "a guess whose instrument can't be read is still none that the sum is counted from",
        form: &[METRIC, "salt.how=assumed\u{1}"],
        shows: &["dose.from=– dose.rise=– dose.mass=–"],
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
        form: &[CURED, "over.finish-age.day=2027-05-2o"],
        shows: &["ready.earliest=–"],
        holds: "fault !ready.earliest !add.yes",
    },
    Row {
        name: "the same once it can",
        form: &[CURED, "over.finish-age.day="],
        shows: &["ready.earliest=2027-06-08"],
        holds: "ready.earliest gate.finish-age.wait",
    },
    Row {
        name: "a goal at fault: of its steps and the finish the later counts, and one of them is not known",
        form: &[CURED, "over.finish-age.day= goal.ta=x"],
        shows: &["ready.earliest=–"],
        holds: "fault gate.finish-age.wait !ready.earliest",
    },
    Row {
        name: "a guess, and a line at fault that may be a reading: not known, which is no stop",
        form: &[
            METRIC,
            "salt.how=assumed log.1.kind=reading log.1.salt=x log.1.how=meter log.1.when=2027-05-20T09:00",
        ],
        shows: &[],
        holds: "fault gate.reading.unknown !gate.reading.stop",
    },
    Row {
        name: "a guess alone is a stop",
        form: &[METRIC, "salt.how=assumed"],
        shows: &[],
        holds: "gate.reading.stop",
    },
    Row {
        name: "nothing to add, and a test that may stand against the salt can't be read",
        form: &[IN_BAND, "water.ch=x"],
        shows: &[],
        holds: "fault dose.enough add.unknown !add.none",
    },
    Row {
        name: "the same with the test left out",
        form: &[IN_BAND, "water.ch="],
        shows: &[],
        holds: "dose.enough add.none",
    },
    Row {
        name: "more salt in than a log can hold, the bag's purity and the size of the pool not known",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.how=meter salt.target=3200 bag.size=2000 bag.size.unit=kg",
            "log.1.kind=dose log.1.mass=60000 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
        ],
        shows: &["in.all=–"],
        holds: "log.too-much !log.dosed",
    },
    Row {
        name: "a moment after which there is none that can be written",
        form: &["on.when=9999-12-31T23:00 now=9999-12-31T23:00"],
        shows: &["next.when=9999-12-31T23:00"],
        holds: "schedule",
    },
];
