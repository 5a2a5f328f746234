//! What is typed at the counter: bags, stages, what is missing or at fault.

use crate::row::{BALANCED, Row};

pub const ROWS: &[Row] = &[
    Row {
        name: "the demo in gallons and pounds",
        form: &[
            "pool.volume=16,596 pool.volume.unit=[gal_us] pool.method=taped surface.kind=cement",
            "salt.now=400 salt.now.unit=[ppm] salt.method=meter salt.target=3200 salt.low=2800 salt.high=3600",
            "bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4 water.temperature=75.2 water.temperature.unit=[degF]",
            BALANCED,
        ],
        shows: &[
            "basic.rise=2,800 basic.pure=387.8 basic.mass=390.1 basic.bags=9.75 buy.total=10 buy.bags=10",
            "stage.bags=6 stage.mass=240 stage.plain=2,122 buy.low=9 buy.high=11 estimate.need=9.57",
            "cap=70 echo.pool.volume.also=62.82",
            "index.now=+0.09 index.same=−0.13 index.free=−0.17 index.ph.free=7.45 index.worse=−0.17",
            "index.shift.same=−0.22 index.shift.free=−0.26 index.salt.now=19 index.salt.after=2,819",
            // The two textbook forms, worked out apart in Python with solids of 900 and 3,700.
            "index.standard.now=+0.01 index.closed.now=−0.11 index.standard.after=−0.20 index.closed.after=−0.17",
        ],
        holds: "standing.short basic.due do.add-retest because.cap stage.in-bags stage.first ruler ruler.then gate.index.pass gate.ph.pass gate.temperature.pass add.unknown ready.open \
                index.after index.salt.conductivity is.cement instrument.meter method.taped buy.sealed !need !fault !adjust !log.dosed !log.read",
    },
    Row {
        name: "read twice: counted from the mean",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped salt.now=400 salt.repeat=500 salt.now.unit=[ppm]",
            "salt.method=strip salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4",
        ],
        shows: &["basic.from=450 basic.rise=2,750"],
        holds: "standing.short",
    },
    Row {
        name: "the demo in metres and kilograms",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 bag.on-hand=2",
            "water.temperature=24 water.temperature.unit=Cel",
            BALANCED,
        ],
        shows: &[
            "basic.pure=175.9 basic.mass=177 basic.bags=8.85 buy.total=9 buy.on-hand=2 buy.bags=7 stage.bags=6",
            "stage.mass=120 stage.plain=2,299 index.now=+0.09 index.same=−0.13 index.free=−0.17",
        ],
        holds: "limits.ours add.unknown ready.open",
    },
    Row {
        name: "the demo in bags of 25 kg, without saying how it was read: no amount",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.target=3200",
            "bag.size=25 bag.size.unit=kg bag.purity=99.4 bag.on-hand=9",
        ],
        shows: &["basic.bags=7.08 buy.bags=– stage.mass=–"],
        holds: "standing.unknown gate.index.unknown gate.ph.unknown gate.temperature.unknown add.unknown \
                need need.salt-method need.water-temperature need.water-ph need.water-ta need.water-ch need.water-cya",
    },
    Row {
        name: "card 2: a small spa is weighed",
        form: &[
            "pool.volume=1.2 pool.volume.unit=m3 pool.method=metered salt.now=300 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=2000 salt.low=1500 salt.high=2500 bag.size=10 bag.size.unit=kg",
            "bag.purity=99.4",
        ],
        shows: &["basic.mass=2.05 stage.mass=1.4 buy.bags=1"],
        holds: "stage.weigh standing.short do.add-retest",
    },
    Row {
        name: "card 3: a large public pool",
        form: &[
            "pool.volume=500 pool.volume.unit=m3 pool.method=drawing salt.now=350 salt.now.unit=[ppm]",
            "salt.method=lab salt.target=3200 salt.low=2800 salt.high=3600 bag.size=25 bag.size.unit=kg",
            "bag.purity=99.4",
        ],
        shows: &["basic.mass=1,433.6 basic.bags=57.34 buy.bags=58 buy.low=53 buy.high=62 stage.bags=40"],
        holds: "because.cap do.add-retest",
    },
    Row {
        name: "card 5: cold water waits",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=14",
            "water.temperature.unit=Cel",
            BALANCED,
        ],
        shows: &["stage.bags=6"],
        holds: "gate.temperature.wait add.wait",
    },
    Row {
        name: "card 7: a fresh fill is not free of salt",
        form: &[
            "salt.method=meter pool.volume=45 pool.volume.unit=m3 pool.method=metered salt.now=400 salt.now.unit=[ppm]",
            "salt.target=3000 salt.low=2700 salt.high=3400 bag.size=20 bag.size.unit=kg bag.purity=99.4",
        ],
        shows: &["basic.mass=117.7 basic.bags=5.89 buy.bags=6 buy.low=6 buy.high=7 stage.bags=4"],
        holds: "standing.short",
    },
    Row {
        name: "card 11: in the band already",
        form: &[
            "pool.volume=15000 pool.volume.unit=[gal_us] pool.method=taped salt.now=2950",
            "salt.now.unit=[ppm] salt.method=meter salt.target=3200 salt.low=2800 salt.high=3600",
            "bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4",
        ],
        shows: &["basic.mass=31.5 basic.bags=0.79 stage.mass=–"],
        holds: "standing.within basic.due do.stop add.none",
    },
    Row {
        name: "card 12: decimal commas and grams a litre",
        form: &[
            "salt.method=meter pool.method=taped pool.volume=48 pool.volume.unit=m3 salt.now=0,5 salt.now.unit=g/L salt.target=3,5 salt.low=3,0",
            "salt.high=4,0 bag.size=25 bag.size.unit=kg bag.purity=99,4 sign.decimal=,",
        ],
        shows: &["basic.mass=144,9 basic.bags=5,79 buy.bags=6 stage.bags=4 stage.plain=2,57 used.low=3,00"],
        holds: "standing.short",
    },
    Row {
        name: "a need of two and a half bags: one first, by the cap",
        form: &[
            "salt.method=meter pool.method=taped pool.volume=20 pool.volume.unit=m3 salt.now=700 salt.now.unit=[ppm] salt.target=3200",
            "bag.size=20 bag.size.unit=kg bag.purity=100",
        ],
        shows: &["basic.bags=2.5 stage.bags=1"],
        holds: "stage.in-bags because.cap",
    },
    Row {
        name: "imperial gallons are not US gallons",
        form: &[
            "salt.method=meter pool.method=taped pool.volume=10000 pool.volume.unit=[gal_br] salt.now=0 salt.now.unit=[ppm] salt.target=3000",
            "bag.size=25 bag.size.unit=kg bag.purity=100",
        ],
        shows: &["basic.pure=136.4 echo.pool.volume.also=45.46"],
        holds: "standing.short",
    },
    Row {
        name: "an assumed reading is no reading: below the band, in it, above it",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=0 salt.now.unit=[ppm] salt.method=assumed",
            "salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
        ],
        shows: &["stage.mass=– basic.mass=– index.now=–"],
        holds: "gate.reading.stop add.no standing.unknown",
    },
    Row {
        name: "an assumed reading in the band is not enough",
        form: &["salt.now=3200 salt.now.unit=[ppm] salt.method=assumed salt.target=3200"],
        shows: &[],
        holds: "gate.reading.stop add.no !add.none !standing.within",
    },
    Row {
        name: "the display alone is not enough either",
        form: &["salt.now=3200 salt.now.unit=[ppm] salt.method=display salt.target=3200"],
        shows: &[],
        holds: "gate.reading.wait add.wait standing.within !add.none",
    },
    Row {
        name: "in the band today's water is judged, not water with salt that is not due",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 bag.size=25 bag.size.unit=kg bag.purity=99.4 salt.now=2950 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 salt.low=2800 salt.high=3600 water.temperature=24 water.temperature.unit=Cel water.ph=7.4",
            "water.ta=60 water.ch=150 water.cya=30",
        ],
        shows: &["index.same=– index.free=–"],
        holds: "standing.within !index.after adjust",
    },
    Row {
        name: "a target at fault: the water is shown as it is, and not judged",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=32oo water.temperature=24 water.temperature.unit=Cel",
            BALANCED,
        ],
        shows: &["index.now=+0.09 index.worse=–"],
        holds: "gate.index.unknown gate.target.unknown fault",
    },
    Row {
        name: "a garbled reading gives no range either",
        form: &[
            "salt.method=meter pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=4oo salt.now.unit=[ppm] water.history=fresh",
            "salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4",
        ],
        shows: &["buy.low=– buy.high=–"],
        holds: "!buy.range fault need.salt-now",
    },
    Row {
        name: "purity at fault: no bags, and no go-ahead",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=994 water.temperature=24 water.temperature.unit=Cel",
            BALANCED,
        ],
        shows: &["basic.pure=175.9 basic.mass=– buy.bags=–"],
        holds: "add.unknown fault need.bag-purity",
    },
    Row {
        name: "a reading below what its own tests account for, and a slip of unit",
        form: &[
            "salt.now=15 salt.now.unit=[ppm] salt.method=meter water.temperature=24 water.temperature.unit=Cel water.ph=7.5",
            "water.ta=150 water.ch=400 water.cya=30",
        ],
        shows: &["index.salt.now=0"],
        holds: "index.salt.belied salt.tiny",
    },
    Row {
        name: "a remembered size is a guess until the retest",
        form: &["pool.volume=60 pool.volume.unit=m3 pool.method=remembered"],
        shows: &[],
        holds: "gate.volume.wait method.remembered",
    },
    Row {
        name: "no reading: a range to buy, and nothing to add",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 water.history=fresh salt.target=3200 salt.now.unit=[ppm]",
            "bag.size=20 bag.size.unit=kg bag.purity=99.4",
        ],
        shows: &["buy.low=8 buy.high=11 buy.total=10 stage.mass=–"],
        holds: "buy.range need.salt-now standing.unknown add.unknown",
    },
    Row {
        name: "the example target is no manual",
        form: &[
            "pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=meter",
            "bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24 water.temperature.unit=Cel",
            BALANCED,
        ],
        shows: &["used.target=3,200 stage.bags=6"],
        holds: "gate.target.wait add.wait",
    },
    Row {
        name: "pH 9 is a stop, not a typing fault, and beyond the model",
        form: &[
            "salt.now=400 salt.now.unit=[ppm] salt.method=meter water.temperature=24 water.temperature.unit=Cel",
            "water.ph=9 water.ta=110 water.ch=250 water.cya=40",
        ],
        shows: &["index.now=–"],
        holds: "gate.ph.stop gate.index.unknown index.outside outside.water-ph add.no !fault",
    },
    Row {
        name: "a limit on the wrong side stops the dose and says so",
        form: &[
            "salt.method=meter pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.target=3200",
            "salt.low=3300 bag.size=20 bag.size.unit=kg bag.purity=99.4",
        ],
        shows: &["basic.mass=– used.target=– echo.salt.target=3,200"],
        holds: "fault standing.unknown",
    },
    Row {
        name: "a number without its unit is not used",
        form: &[
            "pool.volume=16596 salt.now=400 salt.now.unit=[ppm] salt.target=3200 bag.size=40 bag.purity=99.4",
        ],
        shows: &["basic.mass=– basic.rise=2,800 echo.pool.volume=–"],
        holds: "need.pool-volume-unit need.bag-size-unit !need.pool-volume !fault",
    },
    Row {
        name: "garbled bags in hand: everything but the bags to buy stays",
        form: &[
            "salt.method=meter pool.method=taped pool.volume=62.82 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.target=3200",
            "bag.size=20 bag.size.unit=kg bag.purity=99.4 bag.on-hand=2.5",
        ],
        shows: &["buy.bags=– buy.total=9 stage.bags=6"],
        holds: "fault !buy.none",
    },
    Row {
        name: "nothing typed, nothing claimed",
        form: &["salt.now.unit=[ppm] bag.purity=99.4 show=as-typed"],
        shows: &["basic.mass=– index.now=–"],
        holds: "blank need need.pool-volume need.salt-now add.unknown standing.unknown !fault ready",
    },
    Row {
        name: "a chlorine test that can't be read is not passed",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
            "water.fc=abc",
        ],
        shows: &[],
        holds: "fault gate.chlorine.unknown add.unknown",
    },
    Row {
        name: "a goal that can't be read takes the others along",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
            "goal.ph=abc goal.cya=200",
        ],
        shows: &[],
        holds: "fault gate.balance-first.unknown add.unknown",
    },
    Row {
        name: "a surface that is none of the list: nothing goes ahead",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
            "surface.kind=zz",
        ],
        shows: &[],
        holds: "fault add.unknown",
    },
    Row {
        name: "a way of finding the size that is none of the list: no amount",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
            "pool.method=zz",
        ],
        shows: &["stage.mass=–"],
        holds: "fault standing.unknown",
    },
    Row {
        name: "a moment that is none: no amount",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
            "salt.when=2027-13-01T09:00",
        ],
        shows: &["stage.mass=–"],
        holds: "fault standing.unknown",
    },
    Row {
        name: "a risk that nobody may take",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
            "risk-level.over=60",
        ],
        shows: &["stage.mass=–"],
        holds: "fault standing.unknown",
    },
    Row {
        name: "no chlorine test: for the person to confirm",
        form: &[
            "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=meter salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel",
            BALANCED,
            "water.fc=",
        ],
        shows: &["stage.bags=6"],
        holds: "gate.chlorine.unknown add.unknown ready.open",
    },
    Row {
        name: "a target at the very top has no room above it",
        form: &["salt.target=40000 salt.now.unit=[ppm]"],
        shows: &["used.target=–"],
        holds: "fault",
    },
    Row {
        name: "far too much salt, and nothing known of pool and bags",
        form: &["salt.now=5000 salt.now.unit=[ppm] salt.method=meter salt.target=3200"],
        shows: &["estimate.volume=– stated.volume=–"],
        holds: "do.dilute standing.over add.no",
    },
];
