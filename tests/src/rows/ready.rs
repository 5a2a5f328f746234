//! Is the pool ready: each gate on its limit, what is missing, who may rule otherwise, and the day it comes to.
//!
//! The limits are common practice or our choice, as `policy.rs` says of each.

use crate::row::{BALANCED, Row};

/// The demo in metres, every figure there.
const DEMO: &str = "pool.volume=62.82 pool.volume.unit=m3 pool.method=taped surface.kind=cement salt.now=400 salt.now.unit=[ppm] \
     salt.method=meter salt.target=3200 salt.low=2800 salt.high=3600 bag.size=20 bag.size.unit=kg bag.purity=99.4 \
     water.temperature=24 water.temperature.unit=Cel";
/// What else is asked of it, answered as of a pool that is ready, two days before the salt.
const READY: &str = "pool.use=home pool.location=outdoor ready.full=yes ready.running=yes ready.clarity=clear ready.algae=none \
     ready.swimmers=no ready.weather=dry water.sanitizer=chlorine surface.day=2027-04-02 surface.approval=in-hand \
     surface.approval-by=Applicator surface.approval-day=2027-05-14 warranty.liner=not-fitted warranty.heater=read warranty.cover=not-fitted \
     warranty.coping=read warranty.ladders=read ready.electrical=not-yet bag.salt=pool salt.since=no salt.when=2027-05-20T09:00 \
     water.fc=2.5 water.cc=0.2 water.cu=0 water.fe=0";
/// The time of the demo's first bag.
const NOW: &str = "now=2027-05-21T09:00";

/// A row of the demo, ready but for what it says.
const fn but(name: &'static str, form: &'static [&'static str; 5], holds: &'static str) -> Row {
    Row { name, form, shows: &[], holds }
}

macro_rules! but {
    ($($name:literal: $change:literal => $holds:literal;)*) => {
        &[$(but($name, &[DEMO, BALANCED, READY, NOW, $change], $holds)),*]
    };
}

/// One change each.
pub const CHANGES: &[Row] = but! {
    "the demo, all answered": "show=metric" =>
        "add.yes gate.finish-age.pass gate.clearance.pass gate.electrical.wait gate.reading-age.pass !ready.asks !ready.open";
    "card 4: plaster of twelve days": "surface.day=2027-05-09" => "add.wait gate.finish-age.wait ready.earliest";
    "plaster of thirty days, to the day": "surface.day=2027-04-21" => "add.yes gate.finish-age.pass";
    "plaster of twenty-nine": "surface.day=2027-04-22" => "add.wait gate.finish-age.wait";
    "no day of the plaster": "surface.day=" => "add.unknown ready.open gate.finish-age.unknown";
    "a day that is none": "surface.day=yesterday" => "fault add.unknown gate.finish-age.unknown";
    "a liner has no such age": "surface.kind=vinyl surface.day=" => "add.yes gate.finish-age.pass";
    "a surface not known": "surface.kind=other" => "add.unknown gate.finish-age.unknown";
    "a ruling on the age, in full": "surface.day=2027-05-09 exception.finish-age.who=A exception.finish-age.role=applicator exception.finish-age.day=2027-05-20"
        => "add.yes gate.finish-age.exception !gate.finish-age.wait";
    "a ruling of tomorrow": "surface.day=2027-05-09 exception.finish-age.who=A exception.finish-age.role=applicator exception.finish-age.day=2027-05-22"
        => "add.wait gate.finish-age.wait";
    "a ruling without a role": "surface.day=2027-05-09 exception.finish-age.who=A exception.finish-age.day=2027-05-20"
        => "add.wait gate.finish-age.wait";
    "a ruling on another subject": "surface.day=2027-05-09 exception.warranty.who=A exception.warranty.role=maker exception.warranty.day=2027-05-20"
        => "add.wait gate.finish-age.wait";
    "no ruling on water: hazy": "ready.clarity=hazy exception.code.who=A exception.code.role=b exception.code.day=2027-05-20" => "add.wait gate.clarity.wait";
    "clearance refused": "surface.approval=refused" => "add.no gate.clearance.stop";
    "refused, and an older release": "surface.approval=refused surface.approval-day=2027-05-10 exception.clearance.who=A exception.clearance.role=maker exception.clearance.day=2027-05-09"
        => "add.no gate.clearance.stop";
    "refused on a day not said": "surface.approval=refused surface.approval-day= exception.clearance.who=A exception.clearance.role=maker exception.clearance.day=2027-05-20"
        => "add.no gate.clearance.stop";
    "cleared tomorrow": "surface.approval-day=2027-05-22" => "add.unknown gate.clearance.unknown";
    "a ruling on an age nobody can read": "surface.day=x exception.finish-age.who=A exception.finish-age.role=applicator exception.finish-age.day=2027-05-01"
        => "fault gate.finish-age.unknown !add.yes";
    "a ruling where nothing was answered": "surface.approval= exception.clearance.who=A exception.clearance.role=maker exception.clearance.day=2027-05-20"
        => "gate.clearance.unknown !add.yes";
    "a reading of next year": "salt.when=2028-05-20T09:00" => "gate.reading-age.unknown add.unknown";
    "soft water over a surface not known": "surface.kind=other water.ch=60" => "gate.ch.stop";
    "switched on by the display": "salt.now=3200 salt.method=display ready.electrical=electrician salt.undissolved=none" => "power.wait gate.reading.wait";
    "switched on near the high limit": "salt.now=3590 salt.method=meter ready.electrical=electrician salt.undissolved=none" => "gate.salt-level.pass";
    "switched on above it by a poor meter": "salt.now=3610 salt.method=meter-uncalibrated ready.electrical=electrician salt.undissolved=none" => "power.no gate.salt-level.stop";
    "switched on by a reading of March": "salt.now=3200 salt.when=2027-03-20T09:00 ready.electrical=electrician salt.undissolved=none" => "power.no gate.reading-age.stop";
    "switched on after rain": "salt.now=3200 salt.since=yes ready.electrical=electrician salt.undissolved=none" => "power.wait gate.reading-age.wait";
    "refused, then released in writing": "surface.approval=refused exception.clearance.who=A exception.clearance.role=maker exception.clearance.day=2027-05-20"
        => "add.yes gate.clearance.exception";
    "clearance asked for": "surface.approval=asked" => "add.wait gate.clearance.wait";
    "clearance in hand, nobody named": "surface.approval-by=" => "add.unknown gate.clearance.unknown";
    "papers exclude salt": "warranty.heater=excludes-salt" => "add.no gate.warranty.stop";
    "papers exclude salt, and their maker rules otherwise": "warranty.heater=excludes-salt exception.warranty.who=A exception.warranty.role=maker exception.warranty.day=2027-05-20" => "add.yes gate.warranty.exception";
    "papers not read are a note": "warranty.heater=not-read" => "add.yes gate.warranty.wait";
    "papers not answered are no pass, and no bar": "warranty.heater=" => "add.yes gate.warranty.unknown ready.more";
    "card 5: cold": "water.temperature=14" => "add.wait gate.temperature.wait";
    "eighteen degrees": "water.temperature=18" => "gate.temperature.pass";
    "card 6: not visible, used up": "ready.clarity=not-visible water.fc=0.2 water.cc=1.1" =>
        "add.no gate.clarity.stop gate.chlorine.wait gate.combined.stop";
    "no chlorine, people in it": "water.fc=0 ready.swimmers=yes" => "add.no gate.chlorine.stop";
    "no chlorine, nobody in it": "water.fc=0 ready.swimmers=no" => "add.wait gate.chlorine.wait";
    "no test of chlorine": "water.fc=" => "add.unknown gate.chlorine.unknown ready.open";
    "chlorine, but the stabiliser that it depends on not known": "water.cya= water.fc=4" => "add.unknown gate.chlorine.unknown";
    "too little chlorine for any water": "water.cya= water.fc=0.5" => "add.wait gate.chlorine.wait";
    "switched on, and what the chlorine must be not known": "water.cya= salt.now=3200 ready.electrical=electrician salt.undissolved=none" => "power.unknown gate.chlorine.unknown";
    "combined chlorine on its limits": "water.cc=0.4 water.cu=0.5" => "gate.combined.pass gate.copper.wait add.yes";
    "combined chlorine of one": "water.cc=1 water.fe=0.3" => "gate.combined.wait gate.iron.wait add.yes";
    "copper and iron of a fifth": "water.cu=0.2 water.fe=0.2" => "gate.copper.wait gate.iron.wait";
    "copper above a half": "water.cu=0.51" => "add.no gate.copper.stop";
    "iron above three tenths": "water.fe=0.31" => "add.no gate.iron.stop";
    "copper that can't be read, though left out it is a note": "water.cu=0.6x" => "add.unknown gate.copper.unknown !add.yes";
    "alkalinity on its limits": "water.ta=120" => "gate.ta.pass";
    "alkalinity of 60": "water.ta=60" => "gate.ta.pass";
    "alkalinity of 40": "water.ta=40" => "gate.ta.wait";
    "alkalinity of 39": "water.ta=39" => "gate.ta.stop add.no";
    "alkalinity of 200": "water.ta=200" => "gate.ta.wait";
    "hardness of 200 over cement": "water.ch=200" => "gate.ch.pass";
    "hardness of 199": "water.ch=199" => "gate.ch.wait";
    "hardness of 99": "water.ch=99" => "gate.ch.stop add.no";
    "hardness of 50 on a liner": "water.ch=50 surface.kind=vinyl" => "gate.ch.pass";
    "hardness of 400 on a liner": "water.ch=400 surface.kind=vinyl" => "gate.ch.wait";
    "stabiliser of 29 outdoors": "water.cya=29" => "gate.cya.wait gate.cya-limit.pass";
    "stabiliser of 50 outdoors": "water.cya=50" => "gate.cya.pass";
    "stabiliser indoors": "water.cya=40 pool.location=indoor" => "gate.cya.wait";
    "pH on its limits": "water.ph=7.2" => "gate.ph.pass";
    "pH of 8.1": "water.ph=8.1" => "add.no gate.ph.stop";
    "a week to the minute": "salt.when=2027-05-14T09:00" => "add.yes gate.reading-age.pass";
    "a week and a minute": "salt.when=2027-05-14T08:59" => "add.wait gate.reading-age.wait";
    "card 10: 47 days, rain and chlorine since": "salt.now=1100 salt.when=2027-04-04T09:00 salt.since=yes" =>
        "add.no gate.reading-age.stop";
    "a reading without its time": "salt.when=" => "add.unknown gate.reading-age.unknown ready.open";
    "rain since": "salt.since=yes" => "add.wait gate.reading-age.wait";
    "nothing said of since": "salt.since=" => "add.unknown gate.reading-age.unknown";
    "bromine before": "water.sanitizer=bromine" => "add.no gate.sanitizer.stop";
    "copper before, tested": "water.sanitizer=copper-silver" => "add.yes gate.sanitizer.pass";
    "copper before, not tested": "water.sanitizer=copper-silver water.cu=" => "add.wait gate.sanitizer.wait";
    "not known before": "water.sanitizer=unknown" => "add.unknown gate.sanitizer.unknown";
    "a bloom": "ready.algae=bloom" => "add.no gate.algae.stop";
    "a dusting": "ready.algae=dusting" => "add.wait gate.algae.wait";
    "an answer that is none": "ready.algae=green" => "fault add.unknown gate.algae.unknown";
    "a broken pump": "ready.running=broken" => "add.no gate.running.stop";
    "not full": "ready.full=no" => "add.wait gate.running.wait ready.earliest";
    "iodised": "bag.salt=additives" => "add.no gate.bag-salt.stop";
    "a storm is a note": "ready.weather=storm" => "add.yes gate.weather.wait";
    "weather not known is no pass": "ready.weather=unknown" => "add.yes gate.weather.unknown ready.more";
    "wiring damaged": "ready.electrical=damaged" => "add.no gate.electrical.stop power.no";
    "public, no operator": "pool.use=public pool.operator=no" => "add.no gate.code.stop use.public";
    "public, an operator": "pool.use=public pool.operator=yes" => "add.yes gate.code.wait";
    "shared": "pool.use=shared" => "add.yes gate.code.wait";
    "public, ruled by the authority": "pool.use=public pool.operator=no exception.code.who=A exception.code.role=authority exception.code.day=2027-05-20"
        => "add.yes gate.code.exception";
    "no clock": "now=" => "add.unknown gate.finish-age.unknown gate.reading-age.unknown";
};

/// The demo's three days in, and what the generator may do.
const DONE: &str = "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00 \
     log.2.kind=test log.2.salt=2320 log.2.method=meter log.2.when=2027-05-22T09:00 \
     log.3.kind=salt log.3.mass=2.5 log.3.mass.unit={bag} log.3.when=2027-05-22T15:00 \
     log.4.kind=test log.4.salt=3150 log.4.method=meter log.4.when=2027-05-24T12:00";

/// Days, whole forms, and the generator.
pub const ROWS: &[Row] = &[
    Row {
        name: "card 4: the day is told, by the age and by nothing else",
        form: &[DEMO, BALANCED, READY, NOW, "surface.day=2027-05-09"],
        shows: &["ready.finish=2027-06-08 ready.earliest=2027-06-08 buy.bags=9"],
        holds: "add.wait",
    },
    Row {
        name: "running since less than a day: tomorrow at the earliest",
        form: &[DEMO, BALANCED, READY, NOW, "ready.running=less"],
        shows: &["ready.earliest=2027-05-22"],
        holds: "add.wait",
    },
    Row {
        name: "the generator two minutes too early",
        form: &[
            DEMO,
            BALANCED,
            READY,
            DONE,
            "now=2027-05-24T14:58 ready.electrical=electrician salt.undissolved=none",
        ],
        shows: &["clock.power=2027-05-24T15:00"],
        holds: "power.wait gate.clock.wait gate.salt-level.pass do.stop",
    },
    Row {
        name: "the generator to the minute",
        form: &[
            DEMO,
            BALANCED,
            READY,
            DONE,
            "now=2027-05-24T15:00 ready.electrical=electrician salt.undissolved=none",
        ],
        shows: &[],
        holds: "power.yes gate.clock.pass gate.salt-level.pass gate.electrical.pass",
    },
    Row {
        name: "grains on the floor",
        form: &[
            DEMO,
            BALANCED,
            READY,
            DONE,
            "now=2027-05-25T15:00 ready.electrical=electrician salt.undissolved=some",
        ],
        shows: &[],
        holds: "power.no gate.clock.stop",
    },
    Row {
        name: "nobody looked for grains",
        form: &[DEMO, BALANCED, READY, DONE, "now=2027-05-25T15:00 ready.electrical=electrician"],
        shows: &[],
        holds: "power.unknown gate.clock.unknown",
    },
    Row {
        name: "not signed off",
        form: &[DEMO, BALANCED, READY, DONE, "now=2027-05-25T15:00 salt.undissolved=none"],
        shows: &[],
        holds: "power.wait gate.electrical.wait",
    },
    Row {
        name: "the last salt not read yet",
        form: &[
            DEMO,
            BALANCED,
            READY,
            DONE,
            "log.4.kind=ignored now=2027-05-25T15:00 ready.electrical=electrician salt.undissolved=none",
        ],
        shows: &[],
        holds: "power.wait gate.salt-level.wait",
    },
];
