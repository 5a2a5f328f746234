//! What comes next and when: planned, under way, late, switched on.

use super::days::DEMO;
use crate::row::Row;

pub const ROWS: &[Row] = &[
    Row {
        name: "the demo planned beforehand, with a price: ten bags, and dates to reckon with",
        form: &[DEMO, "bag.price=7.5 start.when=2027-05-21T09:00 now=2027-05-20T12:00"],
        shows: &["buy.bags=10 buy.price=75.00 next.when=2027-05-21T09:00"],
        holds: "schedule schedule.forecast next.stage !next.due",
    },
    Row {
        name: "the demo's first stage in, at noon of that day: brush, an hour ago",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00 now=2027-05-21T14:00",
        ],
        shows: &["next.when=2027-05-21T13:00"],
        holds: "schedule next.brush next.due !schedule.forecast",
    },
    Row {
        name: "the demo's first stage in, unread for three days: the reading stays due",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00 now=2027-05-24T12:00",
        ],
        shows: &["next.when=2027-05-22T09:00"],
        holds: "schedule next.read next.due",
    },
    Row {
        name: "the demo read again: the rest is due now, and what follows is forecast from it",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2150 log.2.method=meter log.2.when=2027-05-22T09:05 now=2027-05-22T09:10",
        ],
        shows: &["next.when=2027-05-22T09:10"],
        holds: "schedule schedule.forecast next.stage next.due do.add-finish",
    },
    Row {
        name: "a reading too high to believe: read again now",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=5600 log.2.method=meter log.2.when=2027-05-22T09:05 now=2027-05-22T09:30",
        ],
        shows: &["next.when=2027-05-22T09:30"],
        holds: "schedule next.read next.due standing.held do.reads-high",
    },
    Row {
        name: "the demo's last bag in at three: power on not before two days later, the first week after it",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2150 log.2.method=meter log.2.when=2027-05-22T09:00",
            "log.3.kind=salt log.3.mass=3 log.3.mass.unit={bag} log.3.when=2027-05-22T15:00",
            "log.4.kind=test log.4.salt=3150 log.4.method=meter log.4.when=2027-05-24T12:00 now=2027-05-24T13:00",
        ],
        shows: &["clock.power=2027-05-24T15:00 next.when=2027-05-24T13:00"],
        holds: "schedule schedule.forecast next.brush do.stop",
    },
    Row {
        name: "the same two hours and more later: switch on",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "log.2.kind=test log.2.salt=2150 log.2.method=meter log.2.when=2027-05-22T09:00",
            "log.3.kind=salt log.3.mass=3 log.3.mass.unit={bag} log.3.when=2027-05-22T15:00",
            "log.4.kind=test log.4.salt=3150 log.4.method=meter log.4.when=2027-05-24T12:00 now=2027-05-25T03:00",
        ],
        shows: &["next.when=2027-05-24T15:00"],
        holds: "next.power next.due",
    },
    Row {
        name: "switched on: the first test a day later; after six days the week's; then the month's",
        form: &[DEMO, "power.when=2027-05-24T15:30 now=2027-05-24T16:00"],
        shows: &["next.when=2027-05-25T15:30"],
        holds: "next.test !next.due !schedule.forecast",
    },
    Row {
        name: "switched on six days ago",
        form: &[DEMO, "power.when=2027-05-24T15:30 now=2027-05-30T16:00"],
        shows: &["next.when=2027-05-31T15:30"],
        holds: "next.week",
    },
    Row {
        name: "switched on three weeks ago",
        form: &[DEMO, "power.when=2027-05-24T15:30 now=2027-06-14T16:00"],
        shows: &["next.when=2027-06-23T15:30"],
        holds: "next.month",
    },
    Row {
        name: "on within 48 hours of the last bag: off again until they are over, and no first week",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "power.when=2027-05-23T08:59 now=2027-05-23T08:59",
        ],
        shows: &["clock.power=2027-05-23T09:00"],
        holds: "power.early !power.given log.dosed !next.test power.wait",
    },
    Row {
        name: "on once they are over",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "power.when=2027-05-23T09:00 now=2027-05-23T09:00",
        ],
        shows: &["next.when=2027-05-24T09:00"],
        holds: "power.given !power.early next.test",
    },
    Row {
        name: "on too early, told when they are over: there is nothing left to switch off",
        form: &[
            DEMO,
            "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "power.when=2027-05-22T09:00 now=2027-05-23T09:00",
        ],
        shows: &["next.when=2027-05-23T09:00"],
        holds: "power.given !power.early",
    },
    Row {
        name: "water goes first, and salt is in already: nothing is planned for a beginning that is past",
        form: &[
            DEMO,
            "water.temperature=25 water.temperature.unit=Cel water.ph=7.5 water.ta=100 water.ch=300 water.cya=130 fill.salt=120 fill.cya=0",
            "fill.temperature=15 fill.temperature.unit=Cel fill.ph=7.8 fill.ta=60 fill.ch=80 goal.cya=50 start.when=2027-05-21T08:00",
            "log.1.kind=salt log.1.mass=1 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
            "power.when=2027-05-22T08:00 now=2027-05-22T09:00",
        ],
        shows: &["next.when=– clock.power=2027-05-23T09:00"],
        holds: "power.early replace.cya !next.stage !schedule",
    },
    Row {
        name: "switched on, by a moment that is none: no schedule",
        form: &[DEMO, "power.when=noon now=2027-06-14T16:00"],
        shows: &["next.when=–"],
        holds: "fault !schedule",
    },
];
