//! Which waters may take salt, and which must be replaced?

use crate::row::{BALANCED, Row};

pub const ROWS: &[Row] = &[
    Row {
        name: "the demo before balancing: pH 7.8, index +0.36",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=360 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel water.ph=7.8 water.ta=110 water.ch=220 water.cya=20",
        ],
        shows: &["index.now=+0.36 index.salt.now=14"],
        holds: "gate.ph.wait add.wait adjust",
    },
    Row {
        name: "card 1: too much salt",
        form: &[
            "pool.volume=75 pool.volume.unit=m3 pool.method=drawing water.history=salted salt.method=meter",
            "salt.now=4,100 salt.now.unit=[ppm] salt.target=3200 salt.low=2800 salt.high=3600 fill.salt=150",
        ],
        shows: &[
            "replace.share=22.7 replace.volume=17.00 replace.flow.share=25.7 replace.most=15.0 replace.count=2",
            "basic.mass=– stage.mass=– buy.bags=–",
        ],
        holds: "standing.over replace.told cap.ours add.no !basic.due need.fill-ph need.fill-cya !need.bag-size",
    },
    Row {
        name: "too much salt, fill water not tested",
        form: &[
            "salt.method=meter pool.method=taped pool.volume=75 pool.volume.unit=m3 salt.now=4100 salt.now.unit=[ppm] salt.target=3200",
        ],
        shows: &["replace.share=–"],
        holds: "replace.unknown need.fill-salt add.no",
    },
    Row {
        name: "too much salt, and the fill water no better",
        form: &["salt.method=meter salt.now=4100 salt.now.unit=[ppm] salt.target=3200 fill.salt=3200"],
        shows: &["replace.share=– replace.flow.share=–"],
        holds: "replace.impossible",
    },
    Row {
        name: "too much salt, cement over low ground water, both waters tested",
        form: &[
            "pool.method=taped pool.volume=20000 pool.volume.unit=[gal_us] salt.now=4000 salt.now.unit=[ppm] salt.method=drops",
            "salt.target=3200 fill.salt=400 surface.kind=cement replace.groundwater=low",
            "water.temperature=26 water.temperature.unit=Cel water.ph=7.8 water.ta=120 water.ch=300 water.cya=60",
            "fill.temperature=26 fill.temperature.unit=Cel fill.ph=7.4 fill.ta=60 fill.ch=120 fill.cya=0",
        ],
        shows: &[
            "replace.share=22.1 replace.volume=4,413 replace.flow.share=24.9 replace.flow.volume=4,986 replace.count=1",
            "replace.ta=107 replace.ch=260 replace.cya=47 replace.most=33.3",
        ],
        holds: "replace.told replace.mixed cap.third !need",
    },
    Row {
        name: "too much salt by far, in sips",
        form: &[
            "salt.method=meter pool.method=taped pool.volume=10 pool.volume.unit=m3 salt.now=12000 salt.now.unit=[ppm] salt.target=3200",
            "fill.salt=0 replace.most=5",
        ],
        shows: &["replace.most=5.0 replace.count=26 replace.share=73.6"],
        holds: "replace.many cap.owner !cap.larger",
    },
    Row {
        name: "too much salt by the display alone: nothing is let out on it",
        form: &[
            "pool.method=taped pool.volume=75 pool.volume.unit=m3 salt.now=4100 salt.now.unit=[ppm] salt.method=display fill.salt=150",
        ],
        shows: &["replace.share=– replace.flow.share=–"],
        holds: "standing.over replace.withheld gate.reading.wait gate.target.wait add.no",
    },
    Row {
        name: "too much salt, soft fill water, the owner's figure larger than ours",
        form: &[
            "pool.method=taped pool.volume=75 pool.volume.unit=m3 salt.now=4100 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 replace.most=60 water.temperature=26 water.temperature.unit=Cel water.ph=7.5 water.ta=90",
            "water.ch=280 water.cya=60 fill.salt=10 fill.temperature=15 fill.temperature.unit=Cel fill.ph=7",
            "fill.ta=10 fill.ch=10 fill.cya=0",
        ],
        shows: &["replace.most=15.0 replace.ph=– replace.ta=72"],
        holds: "replace.parts cap.ours cap.larger replace.outside !replace.mixed",
    },
    Row {
        name: "a garbled cap: the parts are not known, the exchange is",
        form: &[
            "salt.now=4100 salt.now.unit=[ppm] salt.method=meter salt.target=3200 fill.salt=150 replace.most=x",
        ],
        shows: &["replace.most=– replace.count=– replace.flow.share=25.7"],
        holds: "fault !replace.parts",
    },
    Row {
        name: "card 8: fibreglass, soft water: the low index is a note",
        form: &[
            "pool.volume=40 pool.volume.unit=m3 pool.method=taped surface.kind=fiberglass salt.now=250",
            "salt.now.unit=[ppm] salt.method=photometer salt.target=3500 salt.low=3000 salt.high=4000",
            "bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=25 water.temperature.unit=Cel",
            "water.ph=7.5 water.ta=90 water.ch=120 water.cya=40",
        ],
        shows: &["basic.mass=130.8 basic.bags=6.54 buy.bags=7 buy.low=6 buy.high=8 stage.bags=4"],
        holds: "gate.index.pass index.note index.low index.salt.chloride add.unknown ready.open",
    },
    Row {
        // 58 g/L and more: the fit ends far below.
        name: "a conductivity beyond the sea's is no salt",
        form: &[
            "salt.now=70 salt.now.unit=mS/cm salt.method=meter salt.atc=no salt.target=3200",
            "water.temperature=5 water.temperature.unit=Cel",
        ],
        shows: &[],
        holds: "outside.salt-now !add.yes",
    },
    Row {
        // PHREEQC 3.7.3: −0.2895; by REACTION NaCl −0.3882 and pH 7.399.
        name: "a target above most generators' is reckoned with all the same",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=meter salt.target=9000 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
        ],
        shows: &["index.now=+0.09 index.same=−0.29 index.free=−0.39 index.ph.free=7.40"],
        holds: "gate.index.wait salt.odd !index.outside",
    },
    Row {
        // PHREEQC 3.7.3: −0.5055; by REACTION NaCl −0.7172 and pH 7.286.
        name: "a sea-water pool has an index",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=meter salt.target=35000 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
        ],
        shows: &["index.now=+0.09 index.same=−0.51 index.free=−0.72 index.ph.free=7.29"],
        holds: "gate.index.stop salt.odd !index.outside",
    },
    Row {
        name: "an index far too low stops",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=drops salt.target=3200 water.temperature=15",
            "water.temperature.unit=Cel water.ph=7.2 water.ta=60 water.ch=50 water.cya=0",
        ],
        shows: &[],
        holds: "gate.index.stop index.low add.no",
    },
    Row {
        name: "an index too high stops",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=drops salt.target=3200 water.temperature=30",
            "water.temperature.unit=Cel water.ph=7.9 water.ta=200 water.ch=900 water.cya=0",
        ],
        shows: &[],
        holds: "gate.index.stop index.high",
    },
    Row {
        name: "an index a little off waits",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=drops salt.target=3200 water.temperature=24",
            "water.temperature.unit=Cel water.ph=7.3 water.ta=100 water.ch=200 water.cya=30",
        ],
        shows: &[],
        holds: "gate.index.wait index.low",
    },
    Row {
        name: "water without calcium has no index",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=drops water.temperature=24 water.temperature.unit=Cel",
            "water.ph=7.4 water.ta=100 water.ch=0 water.cya=30",
        ],
        shows: &["index.now=– index.log-calcium=–"],
        holds: "index.no-calcium gate.index.unknown",
    },
    Row {
        name: "alkalinity that cannot hold its cyanuric acid",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=drops water.temperature=24 water.temperature.unit=Cel",
            "water.ph=7.8 water.ta=30 water.ch=200 water.cya=200",
        ],
        shows: &["index.now=–"],
        holds: "index.no-carbonate gate.index.unknown",
    },
];
