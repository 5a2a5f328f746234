//! Which waters may take salt, and which must be replaced?

use crate::row::{BALANCED, Row};

pub const ROWS: &[Row] = &[
    Row {
        name: "the demo before balancing: pH 7.8, index +0.36",
        form: &[
            "pool.how=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=360 salt.now.unit=[ppm] salt.how=meter",
            "salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.heat=24",
            "water.heat.unit=Cel water.ph=7.8 water.ta=110 water.ch=220 water.cya=20",
        ],
        shows: &["index.now=+0.36 index.salt.now=14"],
        holds: "gate.ph.wait add.wait adjust",
    },
    Row {
        name: "card 1: too much salt",
        form: &[
            "pool.volume=75 pool.volume.unit=m3 pool.how=drawing salt.class=salted salt.how=meter",
            "salt.now=4,100 salt.now.unit=[ppm] salt.target=3200 salt.low=2800 salt.high=3600 fill.salt=150",
        ],
        shows: &[
            "less.share=22.7 less.volume=17.00 less.flow.share=25.7 less.cap=15.0 less.count=2",
            "dose.mass=– now.mass=– buy.bags=–",
        ],
        holds: "dose.less less.known cap.ours add.no !dose.top need.fill-ph need.fill-cya !need.bag-size",
    },
    Row {
        name: "too much salt, fill water not tested",
        form: &[
            "salt.how=meter pool.how=taped pool.volume=75 pool.volume.unit=m3 salt.now=4100 salt.now.unit=[ppm] salt.target=3200",
        ],
        shows: &["less.share=–"],
        holds: "less.unknown need.fill-salt add.no",
    },
    Row {
        name: "too much salt, and the fill water no better",
        form: &["salt.how=meter salt.now=4100 salt.now.unit=[ppm] salt.target=3200 fill.salt=3200"],
        shows: &["less.share=– less.flow.share=–"],
        holds: "less.impossible",
    },
    Row {
        name: "too much salt, cement over low ground water, both waters tested",
        form: &[
            "pool.how=taped pool.volume=20000 pool.volume.unit=[gal_us] salt.now=4000 salt.now.unit=[ppm] salt.how=drops",
            "salt.target=3200 fill.salt=400 surface.kind=cement less.ground=yes",
            "water.heat=26 water.heat.unit=Cel water.ph=7.8 water.ta=120 water.ch=300 water.cya=60",
            "fill.heat=26 fill.heat.unit=Cel fill.ph=7.4 fill.ta=60 fill.ch=120 fill.cya=0",
        ],
        shows: &[
            "less.share=22.1 less.volume=4,413 less.flow.share=24.9 less.flow.volume=4,986 less.count=1",
            "less.ta=107 less.ch=260 less.cya=47 less.cap=33.3",
        ],
        holds: "less.known less.mixed cap.third !need",
    },
    Row {
        name: "too much salt by far, in sips",
        form: &[
            "salt.how=meter pool.how=taped pool.volume=10 pool.volume.unit=m3 salt.now=12000 salt.now.unit=[ppm] salt.target=3200",
            "fill.salt=0 less.cap=5",
        ],
        shows: &["less.cap=5.0 less.count=26 less.share=73.6"],
        holds: "less.many cap.owner !cap.larger",
    },
    Row {
        name: "too much salt by the display alone: nothing is let out on it",
        form: &[
            "pool.how=taped pool.volume=75 pool.volume.unit=m3 salt.now=4100 salt.now.unit=[ppm] salt.how=display fill.salt=150",
        ],
        shows: &["less.share=– less.flow.share=–"],
        holds: "dose.less less.withheld gate.reading.wait gate.target.wait add.no",
    },
    Row {
        name: "too much salt, soft fill water, the owner's figure larger than ours",
        form: &[
            "pool.how=taped pool.volume=75 pool.volume.unit=m3 salt.now=4100 salt.now.unit=[ppm] salt.how=meter",
            "salt.target=3200 less.cap=60 water.heat=26 water.heat.unit=Cel water.ph=7.5 water.ta=90",
            "water.ch=280 water.cya=60 fill.salt=10 fill.heat=15 fill.heat.unit=Cel fill.ph=7",
            "fill.ta=10 fill.ch=10 fill.cya=0",
        ],
        shows: &["less.cap=15.0 less.ph=– less.ta=72"],
        holds: "less.parts cap.ours cap.larger less.outside !less.mixed",
    },
    Row {
        name: "a garbled cap: the parts are not known, the exchange is",
        form: &["salt.now=4100 salt.now.unit=[ppm] salt.how=meter salt.target=3200 fill.salt=150 less.cap=x"],
        shows: &["less.cap=– less.count=– less.flow.share=25.7"],
        holds: "fault !less.parts",
    },
    Row {
        name: "card 8: fibreglass, soft water: the low index is a note",
        form: &[
            "pool.volume=40 pool.volume.unit=m3 pool.how=taped surface.kind=fibreglass salt.now=250",
            "salt.now.unit=[ppm] salt.how=photometer salt.target=3500 salt.low=3000 salt.high=4000",
            "bag.size=20 bag.size.unit=kg bag.purity=99.4 water.heat=25 water.heat.unit=Cel",
            "water.ph=7.5 water.ta=90 water.ch=120 water.cya=40",
        ],
        shows: &["dose.mass=130.8 dose.bags=6.54 buy.bags=7 buy.low=6 buy.high=8 now.bags=4"],
        holds: "gate.index.pass index.note index.low index.salt.chloride add.unknown ready.open",
    },
    Row {
        // 58 g/L and more: the fit ends far below.
        name: "a conductivity beyond the sea's is no salt",
        form: &[
            "salt.now=70 salt.now.unit=mS/cm salt.how=meter salt.compensated=no salt.target=3200",
            "water.heat=5 water.heat.unit=Cel",
        ],
        shows: &[],
        holds: "outside.salt-now !add.yes",
    },
    Row {
        // PHREEQC 3.7.3: −0.2895; by REACTION NaCl −0.3882 and pH 7.399.
        name: "a target above most generators' is reckoned with all the same",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.how=meter salt.target=9000 water.heat=24",
            "water.heat.unit=Cel",
            BALANCED,
        ],
        shows: &["index.now=+0.09 index.same=−0.29 index.free=−0.39 index.ph.free=7.40"],
        holds: "gate.index.wait salt.odd !index.outside",
    },
    Row {
        // PHREEQC 3.7.3: −0.5055; by REACTION NaCl −0.7172 and pH 7.286.
        name: "a sea-water pool has an index",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.how=meter salt.target=35000 water.heat=24",
            "water.heat.unit=Cel",
            BALANCED,
        ],
        shows: &["index.now=+0.09 index.same=−0.51 index.free=−0.72 index.ph.free=7.29"],
        holds: "gate.index.stop salt.odd !index.outside",
    },
    Row {
        name: "an index far too low stops",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.how=drops salt.target=3200 water.heat=15",
            "water.heat.unit=Cel water.ph=7.2 water.ta=60 water.ch=50 water.cya=0",
        ],
        shows: &[],
        holds: "gate.index.stop index.low add.no",
    },
    Row {
        name: "an index too high stops",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.how=drops salt.target=3200 water.heat=30",
            "water.heat.unit=Cel water.ph=7.9 water.ta=200 water.ch=900 water.cya=0",
        ],
        shows: &[],
        holds: "gate.index.stop index.high",
    },
    Row {
        name: "an index a little off waits",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.how=drops salt.target=3200 water.heat=24",
            "water.heat.unit=Cel water.ph=7.3 water.ta=100 water.ch=200 water.cya=30",
        ],
        shows: &[],
        holds: "gate.index.wait index.low",
    },
    Row {
        name: "water without calcium has no index",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.how=drops water.heat=24 water.heat.unit=Cel",
            "water.ph=7.4 water.ta=100 water.ch=0 water.cya=30",
        ],
        shows: &["index.now=– index.log-calcium=–"],
        holds: "index.no-calcium gate.index.unknown",
    },
    Row {
        name: "alkalinity that cannot hold its cyanuric acid",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.how=drops water.heat=24 water.heat.unit=Cel",
            "water.ph=7.8 water.ta=30 water.ch=200 water.cya=200",
        ],
        shows: &["index.now=–"],
        holds: "index.no-carbonate gate.index.unknown",
    },
];
