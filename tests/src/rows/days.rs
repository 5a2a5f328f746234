//! The job over days: what went in, what was read, what is to be done next.

use crate::row::{BALANCED, Row};

/// The demo in gallons and pounds, before anything goes in.
pub const DEMO: &str = "pool.volume=16596 pool.volume.unit=[gal_us] pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm] \
     salt.method=meter salt.target=3200 salt.low=2800 salt.high=3600 bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4 \
     water.temperature=75.2 water.temperature.unit=[degF] water.ph=7.5 water.ta=110 water.ch=250 water.cya=40";
/// The same in cubic metres and kilograms, without its other tests.
pub const METRIC: &str = "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped salt.now=400 salt.now.unit=[ppm] salt.method=meter \
     salt.target=3200 salt.low=2800 salt.high=3600 bag.size=20 bag.size.unit=kg bag.purity=99.4";

pub const ROWS: &[Row] = &[
    Row {
        name: "a reading without its instrument: that is what the line lacks",
        form: &[METRIC, "log.1.kind=test log.1.salt=2320 log.1.when=2027-05-22T09:00"],
        shows: &[],
        holds: "log.unfinished log.1.needs-method !log.1.needs-when !log.1.needs-salt",
    },
    Row {
        name: "a kind of line, and nothing else",
        form: &[METRIC, "log.1.kind=salt"],
        shows: &[],
        holds: "log.unfinished log.1.needs-mass log.1.needs-when !log.1.needs-method",
    },
    Row {
        name: "a reading of nothing",
        form: &[METRIC, "log.1.kind=test log.1.method=meter log.1.when=2027-05-22T09:00"],
        shows: &[],
        holds: "log.unfinished log.1.needs-salt !log.1.needs-mass",
    },
    Row {
        name: "a conductivity by a drop test: one of the two is wrong",
        form: &[
            "salt.now=6.051 salt.repeat=6 salt.now.unit=mS/cm salt.method=drops salt.atc=yes",
            "log.1.kind=test log.1.salt=6 log.1.repeat=6 log.1.method=strip log.1.when=2027-05-20T09:00",
        ],
        shows: &[],
        holds: "fault standing.unknown log.unfinished",
    },
    Row {
        name: "the demo's first stage half in",
        form: &[DEMO, "log.1.kind=salt log.1.mass=3 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00"],
        shows: &[
            "stage.bags=6 stage.left=120 in.all=120 clock.last=2027-05-21T09:00 clock.retest=2027-05-22T09:00",
            "clock.power=2027-05-23T09:00",
        ],
        holds: "log.dosed stage.some-in do.add-retest add.unknown ready.open !stage.in",
    },
    Row {
        name: "the demo's first stage in: brush and wait",
        form: &[DEMO, "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00"],
        shows: &["stage.left=0 in.all=240"],
        holds: "stage.in do.add-retest add.wait !stage.some-in",
    },
    Row {
        name: "the demo read again after a day: three bags more, and done; by proportion 144 lb, by the size 146",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2150 log.2.method=meter log.2.when=2027-05-22T09:00",
        ],
        shows: &[
            "stage.bags=3 stage.mass=120 estimate.salt=2,192 estimate.volume=15,981 estimate.need=3.39 sums.proportion=144 sums.volume=146.3",
            "dosing.volume=15,518 dosing.volume.low=13,793 dosing.volume.high=17,735 buy.total=3",
        ],
        holds: "do.add-finish because.need log.read sums dosing.told add.unknown ready.open !dosing.open",
    },
    Row {
        name: "the demo in kilograms read again: two bags and a half, and done; 55.0 and 55.6 kg by the sums",
        form: &[
            METRIC,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2320 log.2.method=meter log.2.when=2027-05-22T09:00",
        ],
        shows: &[
            "stage.bags=2.5 stage.mass=50 estimate.salt=2,371 estimate.need=2.54 sums.proportion=55 sums.volume=55.6",
        ],
        holds: "do.add-finish !stage.first",
    },
    Row {
        name: "the last of it is in: the clock of 48 hours from the last bag",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2150 log.2.method=meter log.2.when=2027-05-22T09:00",
            "log.3.kind=salt log.3.mass=120 log.3.mass.unit=[lb_av] log.3.when=2027-05-22T15:00",
        ],
        shows: &["clock.last=2027-05-22T15:00 clock.power=2027-05-24T15:00 in.all=360 stage.left=0"],
        holds: "stage.in do.add-finish add.wait",
    },
    Row {
        name: "a rise that is far too small: nothing is added, whatever it says",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=1400 log.2.method=meter log.2.when=2027-05-22T09:00",
        ],
        shows: &["stage.mass=– estimate.volume=– buy.bags=–"],
        holds: "do.reads-low standing.held add.wait log.read",
    },
    Row {
        name: "the same by another instrument a day later: both count, and little goes in",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=1600 log.2.method=meter log.2.when=2027-05-22T09:00",
            "log.3.kind=test log.3.salt=1600 log.3.method=drops log.3.when=2027-05-23T09:00",
        ],
        shows: &[],
        holds: "do.add-retest log.read",
    },
    Row {
        name: "a rise far too large",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=3500 log.2.method=meter log.2.when=2027-05-22T09:00",
        ],
        shows: &["stage.mass=–"],
        holds: "do.reads-high standing.held add.wait",
    },
    Row {
        name: "too far: by two instruments the pool would hold half of it",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=metered salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 salt.low=2800 salt.high=3600 bag.size=20 bag.size.unit=kg bag.purity=99.4",
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=1000 log.2.method=meter log.2.when=2027-05-22T09:00",
            "log.3.kind=test log.3.salt=1000 log.3.method=lab log.3.when=2027-05-24T09:00",
        ],
        shows: &["estimate.volume=–"],
        holds: "do.measure-again standing.held",
    },
    Row {
        name: "read too soon",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2150 log.2.method=meter log.2.when=2027-05-21T19:00",
        ],
        shows: &["stage.mass=– clock.retest=2027-05-22T09:00"],
        holds: "do.wait-longer standing.held add.wait",
    },
    Row {
        name: "two readings of one visit that can't both be right",
        form: &[DEMO, "salt.repeat=700"],
        shows: &["stage.mass=–"],
        holds: "do.third-reading standing.held",
    },
    Row {
        name: "six bags in before anybody read: an ordinary beginning",
        form: &[
            DEMO,
            "salt.now=",
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "salt.now=2150 salt.when=2027-05-22T09:00",
        ],
        shows: &["in.all=240 stage.bags=1"],
        holds: "log.dosed standing.short do.add-retest",
    },
    Row {
        name: "six bags in, and less read than they alone bring: not believed",
        form: &[
            DEMO,
            "salt.now=",
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "salt.now=400 salt.when=2027-05-22T09:00",
        ],
        shows: &["stage.mass=–"],
        holds: "do.reads-low standing.held add.wait",
    },
    Row {
        name: "six bags in and nothing read: a range, and no dose",
        form: &[
            DEMO,
            "salt.now=",
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
        ],
        shows: &["stage.mass=– estimate.volume=– estimate.salt=–"],
        holds: "do.read-first buy.range standing.unknown add.unknown",
    },
    Row {
        name: "the same with stabiliser to come down: a guess is no reading",
        form: &[
            DEMO,
            "salt.now=",
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "goal.cya=30 fill.salt=100 fill.cya=0 treat.acid=31.45 treat.bleach=10 treat.calcium=77 treat.powder=100",
        ],
        shows: &["stage.mass=– basic.from=–"],
        holds: "standing.unknown !add.yes",
    },
    Row {
        name: "only the log has readings: the first of them goes with the other tests",
        form: &[
            DEMO,
            "salt.now=",
            "log.1.kind=test log.1.salt=400 log.1.method=meter log.1.when=2027-05-21T09:00",
        ],
        shows: &["index.now=+0.09 stage.bags=6"],
        holds: "standing.short add.unknown ready.open !need",
    },
    Row {
        name: "near the high limit, perhaps over it",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped salt.now=3500 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 salt.low=2800 salt.high=3600 bag.size=20 bag.size.unit=kg bag.purity=99.4",
        ],
        shows: &[],
        holds: "do.stop-near-high standing.within add.none",
    },
    Row {
        name: "it may be low and any salt may be too much",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped salt.now=3000 salt.now.unit=[ppm] salt.method=strip",
            "salt.target=3200 salt.low=3100 salt.high=3300 bag.size=20 bag.size.unit=kg bag.purity=99.4",
        ],
        shows: &[],
        holds: "do.no-more standing.held",
    },
    Row {
        name: "half a bag is too much and none too little: weighed",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 salt.low=2800 salt.high=3400 bag.size=80 bag.size.unit=kg bag.purity=99.4",
            "log.1.kind=salt log.1.mass=2 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2700 log.2.method=meter log.2.when=2027-05-23T09:00",
        ],
        shows: &[],
        holds: "do.part-bag stage.weigh standing.short",
    },
    Row {
        name: "four instruments",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2150 log.2.method=drops log.2.when=2027-05-22T09:00",
            "log.3.kind=test log.3.salt=2150 log.3.method=strip log.3.when=2027-05-22T10:00",
            "log.4.kind=test log.4.salt=2150 log.4.method=lab log.4.when=2027-05-22T11:00",
        ],
        shows: &["stage.mass=–"],
        holds: "log.instruments standing.unknown",
    },
    Row {
        name: "what pays, when somebody asks",
        form: &[DEMO, "ask.value=yes"],
        shows: &["value.today=1.9"],
        holds: "value.told",
    },
    Row {
        name: "what pays, with a rough reading",
        form: &[
            "pool.volume=16596 pool.volume.unit=[gal_us] pool.method=metered surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=strip salt.target=3200 salt.low=2800 salt.high=3600 bag.size=40 bag.size.unit=[lb_av]",
            "bag.purity=99.4 water.temperature=75.2 water.temperature.unit=[degF]",
            BALANCED,
            "ask.value=yes",
        ],
        shows: &[],
        holds: "value.told",
    },
    Row {
        name: "what pays, with a remembered size",
        form: &[
            "pool.volume=16596 pool.volume.unit=[gal_us] pool.method=remembered surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 salt.low=2800 salt.high=3600 bag.size=40 bag.size.unit=[lb_av]",
            "bag.purity=99.4 water.temperature=75.2 water.temperature.unit=[degF]",
            BALANCED,
            "ask.value=yes",
        ],
        shows: &[],
        holds: "value.told value.most.volume",
    },
    Row {
        name: "an overshoot after the first stage",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 salt.low=2800 salt.high=3300 bag.size=20 bag.size.unit=kg bag.purity=99.4",
            "log.1.kind=salt log.1.mass=10 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=3900 log.2.method=meter log.2.when=2027-05-23T10:00",
            "fill.salt=100",
        ],
        shows: &[],
        holds: "do.dilute standing.over add.no replace.told",
    },
    Row {
        name: "no rise at all: the dose tells nothing of the size",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=400 log.2.method=meter log.2.when=2027-05-22T09:00",
        ],
        shows: &["dosing.volume=–"],
        holds: "dosing.no-rise do.reads-low",
    },
    Row {
        name: "a small dose read with strips: too weak to tell the size from",
        form: &[
            "pool.volume=16596 pool.volume.unit=[gal_us] pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=strip salt.target=3200 salt.low=2800 salt.high=3600 bag.size=40 bag.size.unit=[lb_av]",
            "bag.purity=99.4 water.temperature=75.2 water.temperature.unit=[degF]",
            BALANCED,
            "log.1.kind=salt log.1.mass=1 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=600 log.2.method=strip log.2.when=2027-05-23T10:00",
        ],
        shows: &[],
        holds: "dosing.weak dosing.open",
    },
    Row {
        name: "a reading set aside, and the next one as expected: it stays out",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=1300 log.2.method=strip log.2.when=2027-05-22T09:00",
            "log.3.kind=test log.3.salt=2150 log.3.method=meter log.3.when=2027-05-23T09:00",
        ],
        shows: &[],
        holds: "do.add-finish",
    },
    Row {
        name: "half a bag more than is missing, or it would too often be low",
        form: &[
            "pool.volume=16596 pool.volume.unit=[gal_us] pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 salt.low=2800 salt.high=3800 bag.size=80 bag.size.unit=kg",
            "bag.purity=99.4 water.temperature=75.2 water.temperature.unit=[degF]",
            BALANCED,
            "log.1.kind=salt log.1.mass=2 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2700 log.2.method=meter log.2.when=2027-05-23T09:00",
        ],
        shows: &[],
        holds: "because.low",
    },
    Row {
        name: "what pays in a pool read with strips",
        form: &[
            "pool.volume=100 pool.volume.unit=m3 pool.method=metered salt.now=400 salt.now.unit=[ppm] salt.method=strip",
            "salt.target=3200 bag.size=25 bag.size.unit=kg bag.purity=99.4 ask.value=yes",
        ],
        shows: &[],
        holds: "value.told value.most.lab",
    },
    Row {
        name: "what pays in a large pool read with a meter that nobody calibrates",
        form: &[
            "pool.volume=2000 pool.volume.unit=m3 pool.method=metered salt.now=400 salt.now.unit=[ppm] salt.method=meter-uncalibrated",
            "salt.target=3200 bag.size=25 bag.size.unit=kg bag.purity=99.4 ask.value=yes",
        ],
        shows: &[],
        holds: "value.told value.most.lab",
    },
    Row {
        name: "more salt than any pool takes: a slip",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 bag.size=2000 bag.size.unit=kg bag.purity=99.4 log.1.kind=salt log.1.mass=60000",
            "log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
        ],
        shows: &["stage.mass=– in.all=–"],
        holds: "log.too-much standing.unknown",
    },
    Row {
        name: "more went in than was told",
        form: &[METRIC, "log.1.kind=salt log.1.mass=12 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00"],
        shows: &["stage.left=0"],
        holds: "stage.over stage.in add.wait",
    },
    Row {
        name: "a small sure job: nothing pays",
        form: &[
            "pool.volume=12 pool.volume.unit=m3 pool.method=metered salt.now=400 salt.now.unit=[ppm] salt.method=lab",
            "salt.target=3200 bag.size=25 bag.size.unit=kg bag.purity=99.4 ask.value=yes",
        ],
        shows: &[],
        holds: "value.told value.nothing",
    },
];
