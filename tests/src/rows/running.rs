//! The generator at work, a season ahead, and the effort of replacing water.
//!
//! Worked by hand: demand × volume ÷ rating; e to the power of minus (lost ÷ pool); volume ÷ flow.

use crate::row::Row;

const POOL: &str = "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped";
const SALT: &str = "salt.now=400 salt.now.unit=[ppm] salt.method=meter salt.target=3200 bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4";

const SHELF: &str = "water.temperature=26 water.temperature.unit=Cel generator.output=20 generator.output.unit=g/h pump.hours=12 treat.acid=31.45 treat.bleach=10 treat.calcium=77 treat.powder=100";

pub const ROWS: &[Row] = &[
    Row {
        name: "3 mg/L a day by 20 g/h: 188 g, 9.4 h; a pump of 12 h at 79 %",
        form: &[POOL, "generator.demand=3 generator.output=20 generator.output.unit=g/h pump.hours=12"],
        shows: &[
            "used.volume=62.82 run.grams=188 run.full-hours=9.4 run.setting=79 run.setting.low=39 run.setting.high=118 run.reserve=1.3",
        ],
        holds: "run run.small run.hot-short !run.short !run.little-reserve !run.example !run.open",
    },
    Row {
        name: "the same by a pump of 10 h: 94 %, no reserve",
        form: &[POOL, "generator.demand=3 generator.output=20 generator.output.unit=g/h pump.hours=10"],
        shows: &["run.setting=94"],
        holds: "run run.little-reserve !run.short",
    },
    Row {
        name: "the same by a pump of 8 h can't be",
        form: &[POOL, "generator.output=20 generator.output.unit=g/h pump.hours=8"],
        shows: &["run.setting=118 run.full-hours=9.4"],
        holds: "run run.short run.example !run.little-reserve !run.beyond",
    },
    Row {
        name: "by 5 g/h it would take 37.7 hours of a day",
        form: &[POOL, "generator.demand=3 generator.output=5 generator.output.unit=g/h pump.hours=24"],
        shows: &["run.full-hours=37.7 run.reserve=0.6"],
        holds: "run run.short run.beyond run.small",
    },
    Row {
        name: "a generator with plenty: 30 g/h, 24 h; 26 %, a hot spell 39 %",
        form: &[POOL, "generator.demand=3 generator.output=30 generator.output.unit=g/h pump.hours=24"],
        shows: &["run.setting=26 run.setting.high=39 run.reserve=3.8"],
        holds: "run !run.small !run.hot-short !run.little-reserve !run.short",
    },
    Row {
        name: "no pump hours: what is missing is asked for, no setting told",
        form: &[POOL, "generator.demand=3 generator.output=20 generator.output.unit=g/h"],
        shows: &["run.setting=– run.grams=–"],
        holds: "run.open !run",
    },
    Row {
        name: "where the air leaves the pH, by PHREEQC 8.38; the acid for 0.2 of it, and for all",
        form: &[POOL, SALT, SHELF, "water.ph=7.8 water.ta=120 water.ch=300 water.cya=40 goal.ph=7.4"],
        shows: &["run.climb.from=7.6 run.climb.to=7.4 run.climb.rest=8.4"],
        holds: "run.climb",
    },
    Row {
        name: "the same near where the air leaves it: it climbs no farther than there",
        form: &[POOL, SALT, SHELF, "water.ph=7.8 water.ta=120 water.ch=300 water.cya=40 goal.ph=8.3"],
        shows: &["run.climb.from=8.4 run.climb.to=8.3"],
        holds: "run.climb",
    },
    Row {
        name: "a goal for pH that is none: no acid is told for ours",
        form: &[POOL, SALT, SHELF, "water.ph=7.8 water.ta=120 water.ch=300 water.cya=40 goal.ph=x"],
        shows: &["run.climb.acid=– run.climb.whole=–"],
        holds: "fault !run.climb",
    },
    Row {
        name: "so little alkalinity that the air leaves the pH below its goal: nothing climbs",
        form: &[POOL, SALT, SHELF, "water.ph=7.2 water.ta=20 water.ch=300 water.cya=40 goal.ph=7.8"],
        shows: &["run.climb.acid=–"],
        holds: "!run.climb",
    },
    Row {
        name: "a pound a day is 18.9 g an hour",
        form: &[POOL, "generator.demand=3 generator.output=1 generator.output.unit=[lb_av]/d pump.hours=24"],
        shows: &["echo.generator.output.also=18.9 run.full-hours=10.0 run.setting=42"],
        holds: "run !run.small",
    },
    Row {
        name: "indoors: 90 m3 at 1 mg/L by 15 g/h: 6 h, 75 % of 8",
        form: &[
            "pool.volume=90 pool.volume.unit=m3 generator.demand=1 generator.output=15 generator.output.unit=g/h pump.hours=8",
        ],
        shows: &["run.grams=90 run.full-hours=6.0 run.setting=75"],
        holds: "run",
    },
    Row {
        name: "chlorine from 1 to 4: 188 g, another 9.4 h",
        form: &[
            POOL,
            "generator.demand=3 generator.output=20 generator.output.unit=g/h pump.hours=12 water.fc=1 goal.fc=4",
        ],
        shows: &["run.lift=9.4"],
        holds: "run.lift",
    },
    Row {
        name: "cold, and colder",
        form: &[
            POOL,
            "generator.output=20 generator.output.unit=g/h pump.hours=12 water.temperature=17.9 water.temperature.unit=Cel",
        ],
        shows: &[],
        holds: "run.throttled !run.stopped",
    },
    Row {
        name: "so cold that it may stop",
        form: &[
            POOL,
            "generator.output=20 generator.output.unit=g/h pump.hours=12 water.temperature=14.9 water.temperature.unit=Cel",
        ],
        shows: &[],
        holds: "run.stopped !run.throttled",
    },
    Row {
        name: "a rating that is none: no setting",
        form: &[POOL, "generator.output=twenty generator.output.unit=g/h pump.hours=12"],
        shows: &["run.setting=–"],
        holds: "fault !run",
    },
    Row {
        name: "a demand that is none is not our example either",
        form: &[POOL, "generator.demand=x generator.output=20 generator.output.unit=g/h pump.hours=12"],
        shows: &["run.setting=–"],
        holds: "fault !run",
    },
    Row {
        name: "2,500 gal lost of 16,596 at 3,200, fill 120: 2,769, 60 lb, a bag and a half",
        form: &[
            SALT,
            "pool.volume=16596 pool.volume.unit=[gal_us] fill.salt=120 season.lost=2500 season.lost.unit=[gal_us]",
        ],
        shows: &["season.end=2,769 season.less=431 season.mass=60 season.bags=1.5 season.whole=2"],
        holds: "season !season.open",
    },
    Row {
        name: "250 gal of backwash, twenty times, from 20,000 gal, fill 100: about 690",
        form: &[
            SALT,
            "pool.volume=20000 pool.volume.unit=[gal_us] fill.salt=100 season.backwash=250 season.times=20 season.lost.unit=[gal_us]",
        ],
        shows: &["season.less=686"],
        holds: "season",
    },
    Row {
        name: "backwash and splash are one loss: 5,000 and 1,000 gal, 803",
        form: &[
            SALT,
            "pool.volume=20000 pool.volume.unit=[gal_us] fill.salt=100 season.backwash=250 season.times=20",
            "season.lost=1000 season.lost.unit=[gal_us]",
        ],
        shows: &["season.less=803"],
        holds: "season",
    },
    Row {
        name: "backwashes of which nobody knows the number are not none",
        form: &[
            SALT,
            "pool.volume=20000 pool.volume.unit=[gal_us] fill.salt=100 season.backwash=250 season.lost=1000",
            "season.lost.unit=[gal_us]",
        ],
        shows: &["season.end=–"],
        holds: "season.open !season",
    },
    Row {
        name: "100 mm of rain over 1.4 m: 6.9 % of the salt",
        form: &[
            SALT,
            "pool.shape=rectangle pool.length=10 pool.width=5 pool.length.unit=m pool.floor=level pool.shallow=1.4",
            "season.rain=100 season.rain.unit=mm",
        ],
        shows: &["season.end=2,979 season.less=221"],
        holds: "season",
    },
    Row {
        name: "rain over a depth that nobody measured tells nothing",
        form: &[SALT, POOL, "season.rain=100 season.rain.unit=mm"],
        shows: &["season.end=–"],
        holds: "season.open !season",
    },
    Row {
        name: "20,000 gal, 4,000 to 3,200 with 400: 22.2 %, by the estimate a hair less; hours and money",
        form: &[
            "pool.volume=20000 pool.volume.unit=[gal_us] pool.method=metered salt.now=4000 salt.now.unit=[ppm] salt.method=lab",
            "salt.target=3200 salt.low=2800 salt.high=3600 fill.salt=400 replace.fill-rate=9 replace.drain-rate=40 replace.drain-rate.unit=[gal_us]/min",
            "replace.water-price=10 replace.water-price.unit=/[kgal]",
        ],
        shows: &[
            "replace.share=22.2 replace.volume=4,438 replace.flow.volume=5,018 replace.flow.hours=9.3 replace.flow.price=50.18",
        ],
        holds: "replace.effort replace.told",
    },
    Row {
        name: "card 1 by the tape: a hand-span off 1.5 m is the cap",
        form: &[
            "pool.shape=rectangle pool.length=10 pool.width=5 pool.length.unit=m pool.floor=level pool.shallow=1.5",
            "surface.kind=vinyl salt.method=meter salt.now=4,100 salt.now.unit=[ppm] salt.target=3200 salt.low=2800",
            "salt.high=3600 fill.salt=150",
        ],
        shows: &["replace.most=13.3 replace.sinks=0.20 used.volume=75 risk.now=100.0"],
        holds: "cap.depth replace.depth replace.told replace.several !cap.ours !replace.effort",
    },
    Row {
        name: "the same over cement: a hand-span does not bind where the ground is known to be low; one pass, 22.8 %",
        form: &[
            "pool.shape=rectangle pool.length=10 pool.width=5 pool.length.unit=m pool.floor=level pool.shallow=1.5",
            "surface.kind=cement replace.groundwater=low salt.method=lab salt.now=4,100 salt.now.unit=[ppm] salt.target=3200",
            "salt.low=2800 salt.high=3600 fill.salt=150",
        ],
        shows: &["replace.count=1 replace.sinks=0.34"],
        holds: "cap.third replace.depth !replace.several",
    },
    Row {
        name: "passes of the hand-span: the first, 13.3 % of 75 m3, is 10 m3, an hour out and ten in",
        form: &[
            "pool.shape=rectangle pool.length=10 pool.width=5 pool.length.unit=m pool.floor=level pool.shallow=1.5",
            "surface.kind=vinyl salt.method=lab salt.now=4,100 salt.now.unit=[ppm] salt.target=3200 salt.low=2800",
            "salt.high=3600 fill.salt=150 replace.drain-rate=166.667 replace.fill-rate=16.6667 replace.water-price=2.5",
        ],
        shows: &["replace.sinks=0.20 replace.pass.out=1.0 replace.pass.in=10.0 replace.pass.price=25.00"],
        holds: "replace.several replace.effort",
    },
    Row {
        name: "too much salt, all known: what goes in after the other water is told",
        form: &[
            "pool.volume=75 pool.volume.unit=m3 pool.method=drawing surface.kind=tile salt.method=meter salt.now=4100",
            "salt.now.unit=[ppm] salt.target=3200 salt.low=2800 salt.high=3600 fill.salt=150 fill.temperature=15",
            "fill.temperature.unit=Cel fill.ph=7.8 fill.ta=40 fill.ch=80 fill.cya=0 water.temperature=26 water.temperature.unit=Cel",
            "water.ph=7.5 water.ta=90 water.ch=280 water.cya=60 goal.ta=90 treat.acid=31.45 treat.bleach=10",
            "treat.calcium=77 treat.powder=100",
        ],
        shows: &[],
        holds: "standing.over replace.told treat.water-first treat.steps",
    },
    Row {
        name: "too much salt, the fill water's alkalinity not known: no step is told for a water nobody knows",
        form: &[
            "pool.volume=75 pool.volume.unit=m3 pool.method=drawing surface.kind=tile salt.method=meter salt.now=4100",
            "salt.now.unit=[ppm] salt.target=3200 salt.low=2800 salt.high=3600 fill.salt=150 water.temperature=26",
            "water.temperature.unit=Cel water.ph=7.5 water.ta=90 water.ch=280 water.cya=60 goal.ta=110 treat.acid=31.45",
            "treat.bleach=10 treat.calcium=77 treat.powder=100",
        ],
        shows: &[],
        holds: "standing.over replace.told treat.water-first !treat.steps need.fill-ta",
    },
];
