//! What goes in before the salt, and figures in other units.

use crate::row::Row;

pub const ROWS: &[Row] = &[
    Row {
        name: "the demo's first test, put right: stabiliser alone brings the pH to 7.4, no acid",
        form: &[
            "pool.method=taped pool.volume=16596 pool.volume.unit=[gal_us] salt.now=360 salt.now.unit=[ppm] salt.method=meter",
            "salt.target=3200 bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4 water.temperature=24",
            "water.temperature.unit=Cel water.ph=7.8 water.ta=110 water.ch=220 water.cya=20 treat.acid=31.45",
            "treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ch=250 goal.cya=40",
        ],
        shows: &[],
        holds: "treat.steps !treat.unknown !treat.cyanurate-over",
    },
    Row {
        name: "goals for alkalinity up and pH down",
        form: &[
            "pool.method=taped pool.volume=40 pool.volume.unit=m3 salt.now=250 salt.now.unit=[ppm] salt.method=photometer",
            "salt.target=3500 water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=90 water.ch=120",
            "water.cya=40 treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ph=7.4 goal.ta=100 goal.ch=200",
        ],
        shows: &[],
        holds: "treat.steps",
    },
    Row {
        name: "goals for pH up alone: soda ash",
        form: &[
            "pool.method=taped pool.volume=10 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=drops water.temperature=26.7",
            "water.temperature.unit=Cel water.ph=7.2 water.ta=100 water.ch=250 water.cya=30 treat.acid=31.45",
            "treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ph=7.5",
        ],
        shows: &[],
        holds: "treat.steps",
    },
    Row {
        name: "where only the log has a reading, the steps go by its first",
        form: &[
            "pool.method=taped pool.volume=10 pool.volume.unit=m3 salt.now.unit=[ppm] water.temperature=26.7",
            "water.temperature.unit=Cel water.ph=7.2 water.ta=100 water.ch=250 water.cya=30 treat.acid=31.45",
            "treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ph=7.5",
            "log.1.kind=test log.1.salt=400 log.1.method=drops log.1.when=2027-05-20T09:00",
        ],
        shows: &[],
        holds: "treat.steps !treat.unknown",
    },
    Row {
        name: "card 6: the chlorine first, and much alkalinity down by acid and air",
        form: &[
            "pool.method=taped pool.volume=50 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=drops salt.target=3200",
            "bag.size=25 bag.size.unit=kg bag.purity=99.4 water.temperature=25 water.temperature.unit=Cel water.ph=7.9",
            "water.ta=160 water.ch=250 water.cya=40 water.fc=0.2 treat.acid=31.45 treat.calcium=77",
            "treat.bleach=10 treat.powder=100 goal.ph=7.4 goal.ta=80 goal.fc=3",
        ],
        shows: &[],
        holds: "treat treat.steps gate.balance-first.wait !treat.water-first adjust chlorine",
    },
    Row {
        name: "card 8: fibreglass, hardness up; the rest is near enough",
        form: &[
            "pool.volume=40 pool.volume.unit=m3 pool.method=taped surface.kind=fiberglass salt.now=250",
            "salt.now.unit=[ppm] salt.method=photometer salt.target=3500 salt.low=3000 salt.high=4000 bag.size=20",
            "bag.size.unit=kg bag.purity=99.4 water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=90",
            "water.ch=120 water.cya=30 treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100",
            "goal.ch=180 goal.ta=92 goal.cya=33",
        ],
        shows: &["basic.mass=130.8 basic.bags=6.54 stage.bags=4"],
        holds: "treat.steps gate.balance-first.wait add.wait !treat.water-first",
    },
    Row {
        name: "card 9: too much stabiliser, so water first, in thirds; the salt is counted from what is left",
        form: &[
            "pool.volume=18000 pool.volume.unit=[gal_us] pool.method=taped surface.kind=cement replace.groundwater=low",
            "salt.now=1800 salt.now.unit=[ppm] salt.method=drops salt.target=3200 bag.size=40 bag.size.unit=[lb_av]",
            "bag.purity=99.4 water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=100 water.ch=300",
            "water.cya=130 fill.salt=120 fill.cya=0 treat.acid=31.45 treat.calcium=77 treat.bleach=10",
            "treat.powder=100 goal.cya=50",
        ],
        shows: &[
            "replace.share=61.5 replace.volume=11,077 replace.count=3 replace.total.share=80.1 replace.cya=50 replace.salt=766",
            "replace.now=130 replace.goal=50 replace.fill=0 basic.from=766 basic.mass=367.8 replace.ta=– replace.ph=–",
        ],
        holds: "replace.due replace.cya replace.told replace.parts cap.third treat.water-first gate.balance-first.wait add.wait \
                basic.after-water standing.short !treat.steps !standing.over !replace.hardness",
    },
    Row {
        name: "the same with the fill water known: what goes in after it is told",
        form: &[
            "pool.method=taped pool.volume=18000 pool.volume.unit=[gal_us] surface.kind=cement replace.groundwater=low salt.now=1800",
            "salt.now.unit=[ppm] salt.method=drops salt.target=3200 bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4",
            "water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=100 water.ch=300 water.cya=130 fill.salt=120",
            "fill.temperature=15 fill.temperature.unit=Cel fill.ph=7.8 fill.ta=60 fill.ch=80 fill.cya=0 treat.acid=31.45",
            "treat.calcium=77 treat.bleach=10 treat.powder=100 goal.cya=50 goal.ta=100",
        ],
        shows: &["replace.ta=75 replace.ch=165 replace.cya=50"],
        holds: "treat.water-first treat.steps add.wait",
    },
    Row {
        name: "card 9 with fill water as hard as the pool: hardness will not come down",
        form: &[
            "pool.method=taped pool.volume=68 pool.volume.unit=m3 salt.now=1800 salt.now.unit=[ppm] salt.method=drops salt.target=3200",
            "water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=100 water.ch=300 water.cya=30 fill.salt=120",
            "fill.ch=300 treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ch=200",
        ],
        shows: &["buy.bags=–"],
        holds: "replace.due replace.hardness replace.impossible treat.water-first",
    },
    Row {
        name: "goals that are met as near as a kit can tell",
        form: &[
            "pool.method=taped pool.volume=40 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=drops salt.target=3200",
            "bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=25 water.temperature.unit=Cel water.ph=7.5",
            "water.ta=100 water.ch=250 water.cya=30 water.fc=2 treat.acid=31.45 treat.calcium=77 treat.bleach=10",
            "treat.powder=100 goal.ph=7.47 goal.ta=103 goal.ch=245 goal.cya=34 goal.fc=2.1",
        ],
        shows: &[],
        holds: "treat treat.none gate.balance-first.pass add.unknown ready.open !treat.steps !replace.due",
    },
    Row {
        name: "chlorine wanted without a test of it",
        form: &["goal.fc=3 treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100 water.ph=7.5"],
        shows: &[],
        holds: "treat.unknown need.water-fc gate.balance-first.unknown",
    },
    Row {
        name: "other units: chloride, German degrees, millimoles; 1.6485 and 17.848 by their definitions",
        form: &[
            "pool.method=taped pool.volume=50 pool.volume.unit=m3 salt.now=1820 salt.now.unit=mg/L{Cl} salt.method=drops",
            "salt.target=3200 bag.size=25 bag.size.unit=kg bag.purity=99.4 water.temperature=24 water.temperature.unit=Cel",
            "water.ph=7.5 water.ta=5.6 water.ta.unit={dH} water.ch=2.5 water.ch.unit=mmol/L water.cya=0 fill.ta=10",
            "fill.ch=3 goal.ta=5.6 goal.ch=2.5 treat.acid=31.45 treat.bleach=10 treat.calcium=77 treat.powder=100",
        ],
        shows: &[
            "echo.salt.now=1,820 echo.salt.now.also=3,000 basic.from=3,000 basic.rise=200 echo.water.ta=5.6",
            "echo.water.ta.also=100 echo.water.ch.also=250 echo.fill.ta.also=178 echo.fill.ch.also=300",
        ],
        holds: "also.ta also.ch add.none !salt.conducts",
    },
    Row {
        name: "a conductivity, brought to 25 °C by the meter: 6.051 mS/cm is 3,200 mg/L (Shedlovsky 1932)",
        form: &[
            "pool.volume=50 pool.volume.unit=m3 salt.now=6.051 salt.now.unit=mS/cm salt.method=meter",
            "salt.atc=yes salt.target=3000",
        ],
        shows: &["echo.salt.now=6.051 echo.salt.now.also=3,200"],
        holds: "salt.conducts standing.within",
    },
    Row {
        name: "the same as it is in water of 15 °C: 80.2 % of it by our fit (80.0 at infinite dilution, Robinson and Stokes 1959)",
        form: &[
            "pool.method=taped salt.now=4.853 salt.now.unit=mS/cm salt.method=meter salt.atc=no water.temperature=15",
            "water.temperature.unit=Cel salt.target=3000 pool.volume=50 pool.volume.unit=m3",
        ],
        shows: &["echo.salt.now.also=3,200"],
        holds: "salt.conducts standing.within",
    },
    Row {
        name: "a conductivity whose meter nobody knows",
        form: &["salt.now=6.051 salt.now.unit=mS/cm salt.method=meter pool.volume=50 pool.volume.unit=m3"],
        shows: &["echo.salt.now=6.051 basic.rise=–"],
        holds: "salt.conducts need need.salt-atc standing.unknown",
    },
    Row {
        name: "acid by Baumé; bleach by weight",
        form: &[
            "pool.method=taped pool.volume=10 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=drops water.temperature=26",
            "water.temperature.unit=Cel water.ph=7.8 water.ta=100 water.ch=250 water.cya=30 water.fc=0 treat.acid=20",
            "treat.acid.unit={Be} treat.calcium=77 treat.bleach=10 treat.bleach.unit=%{NaOCl} treat.powder=100",
            "goal.ph=7.5 goal.fc=2",
        ],
        shows: &[],
        holds: "treat.steps",
    },
    Row {
        name: "dry acid",
        form: &[
            "pool.method=taped pool.volume=10 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=drops water.temperature=26",
            "water.temperature.unit=Cel water.ph=7.8 water.ta=100 water.ch=250 water.cya=30 treat.acid=93.2",
            "treat.acid.unit=%{NaHSO4} treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ph=7.5",
        ],
        shows: &[],
        holds: "treat.steps",
    },
    Row {
        name: "a water beyond the model, with a goal",
        form: &[
            "pool.method=taped pool.volume=10 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=drops water.temperature=26",
            "water.temperature.unit=Cel water.ph=6.2 water.ta=100 water.ch=250 water.cya=30 treat.acid=31.45",
            "treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ph=7.5",
        ],
        shows: &[],
        holds: "treat.outside !treat.steps",
    },
    Row {
        name: "a goal that air does not allow",
        form: &[
            "pool.method=taped pool.volume=40 pool.volume.unit=m3 salt.now=400 salt.now.unit=[ppm] salt.method=drops water.temperature=25",
            "water.temperature.unit=Cel water.ph=7.8 water.ta=100 water.ch=250 water.cya=0 treat.acid=31.45",
            "treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ph=8.6 goal.ta=40",
        ],
        shows: &[],
        holds: "treat.below-air !treat.steps",
    },
    Row {
        name: "goals without the tests",
        form: &[
            "goal.ph=7.4 treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100 water.ph=7.8",
        ],
        shows: &[],
        holds: "treat.unknown need.water-ta",
    },
    Row {
        name: "goals that end outside what passes are said to, whatever was wanted",
        form: &[
            "pool.volume=40 pool.volume.unit=m3 surface.kind=cement salt.now=400 salt.now.unit=[ppm] salt.method=drops",
            "salt.target=3200 water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=80 water.ch=250 water.cya=30",
            "treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ph=6.8",
        ],
        shows: &["treat.end.ph=6.80"],
        holds: "treat.steps treat.ends.acid treat.ends.low !treat.settles-ph",
    },
    Row {
        name: "the same upwards, with much calcium",
        form: &[
            "pool.volume=40 pool.volume.unit=m3 surface.kind=cement salt.now=400 salt.now.unit=[ppm] salt.method=drops",
            "salt.target=3200 water.temperature=30 water.temperature.unit=Cel water.ph=7.5 water.ta=120 water.ch=400 water.cya=30",
            "treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100 goal.ph=8.2",
        ],
        shows: &[],
        holds: "treat.steps treat.ends.basic treat.ends.high",
    },
    Row {
        name: "no chlorine, and too much: neither passes",
        form: &[
            "pool.volume=40 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=drops salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=25",
            "water.temperature.unit=Cel water.ph=7.5 water.ta=100 water.ch=250 water.cya=0 water.fc=0",
        ],
        shows: &["chlorine.acid=0.000"],
        holds: "gate.chlorine.wait add.wait",
    },
    Row {
        name: "chlorine above its goal is waited for",
        form: &[
            "pool.volume=40 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=drops salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=25",
            "water.temperature.unit=Cel water.ph=7.5 water.ta=100 water.ch=250 water.cya=30 water.fc=12 goal.fc=3",
            "treat.acid=31.45 treat.calcium=77 treat.bleach=10 treat.powder=100",
        ],
        shows: &[],
        holds: "treat.chlorine-over gate.chlorine.wait gate.balance-first.wait add.wait !treat.none",
    },
    Row {
        name: "far too much stabiliser waits, goal or none",
        form: &[
            "pool.volume=40 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm]",
            "salt.method=drops salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4 water.temperature=25",
            "water.temperature.unit=Cel water.ph=7.5 water.ta=140 water.ch=250 water.cya=130",
        ],
        shows: &[],
        holds: "gate.cya-limit.wait add.wait",
    },
];
