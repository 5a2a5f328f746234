//! How large is a pool, by its measures? Amounts are held by the thin slices of `vectors/volumes.py`, or worked by
//! hand where a row says so.

use crate::row::Row;

const FEET: &str = "pool.length.unit=[ft_i]";

pub const ROWS: &[Row] = &[
    Row {
        name: "rectangle in feet, one slope: the results are in gallons",
        form: &[
            FEET,
            "pool.shape=rectangle pool.length=30 pool.width=15 pool.floor=slope pool.shallow=3.5 pool.deep=6.5",
        ],
        shows: &[
            "measured.volume=16,831 measured.volume.also=63.71 measured.area=450.0 measured.depth=5.00 measured.accuracy=5.0",
            "echo.pool.length=30 echo.pool.length.also=9.14 draw.length=30 draw.deep=6.5 draw.slope=–",
        ],
        holds: "pool.measured method.taped measure.known measure.drawn !need.pool-volume !measure.unfinished !measure.typed !gate.volume.wait",
    },
    Row {
        name: "the same in feet and inches, as a phone types them",
        form: &[
            FEET,
            "pool.shape=rectangle pool.length=30’ pool.width=14'12.0″ pool.floor=slope pool.shallow=3’6” pool.deep=6ft6in",
        ],
        shows: &["measured.volume=– echo.pool.shallow=3.5 echo.pool.deep=6.5 echo.pool.deep.also=1.98"],
        holds: "measure.unfinished !pool.measured",
    },
    Row {
        name: "the same with fourteen feet and twelve inches put right",
        form: &[
            FEET,
            "pool.shape=rectangle pool.length=30’0 pool.width=15' pool.floor=slope pool.shallow=3’6” pool.deep=78in",
        ],
        shows: &["measured.volume=16,831"],
        holds: "pool.measured",
    },
    Row {
        name: "three steps taken off",
        form: &[
            FEET,
            "pool.shape=rectangle pool.length=30 pool.width=15 pool.floor=slope pool.shallow=3.5 pool.deep=6.5",
            "pool.steps=2.625;1.75;0.875 pool.steps-width=6 pool.steps-tread=1",
        ],
        shows: &[
            "measured.volume=16,596 measured.volume.also=62.82 measured.steps=236 measured.walls=16,831",
            "echo.pool.steps=2.625;_1.75;_0.875 echo.pool.steps.count=3",
        ],
        holds: "measure.steps !measure.ledge",
    },
    Row {
        name: "round",
        form: &[FEET, "pool.shape=round pool.length=24 pool.floor=level pool.shallow=4"],
        shows: &["measured.volume=13,536 measured.volume.also=51.24 draw.width=– measured.depth=4.00"],
        holds: "pool.measured method.taped",
    },
    Row {
        name: "an oval curved all round",
        form: &[FEET, "pool.shape=ellipse pool.length=34 pool.width=18 pool.floor=level pool.shallow=5"],
        shows: &["measured.volume=17,978 measured.volume.also=68.05"],
        holds: "pool.measured",
    },
    Row {
        name: "an oval with straight sides",
        form: &[FEET, "pool.shape=stadium pool.length=34 pool.width=18 pool.floor=level pool.shallow=5"],
        shows: &["measured.volume=20,290 measured.volume.also=76.81"],
        holds: "pool.measured",
    },
    Row {
        name: "kidney, by the rule",
        form: &[
            FEET,
            "pool.shape=kidney pool.length=32 pool.lobe-a=14 pool.lobe-b=18 pool.floor=level pool.shallow=5",
        ],
        shows: &[
            "measured.volume=17,235 measured.volume.also=65.24 measured.accuracy=10.0 draw.a=14 draw.b=18",
        ],
        holds: "pool.measured method.rule",
    },
    Row {
        name: "free form by nine widths, its list with commas",
        form: &[
            FEET,
            "pool.shape=freeform pool.gap=4 pool.widths=0,10,14,15,13,12,14,11,0 pool.depths=5;4.5;5.5;4;6",
        ],
        shows: &[
            "measured.volume=13,664 measured.trapezoid=356.0 measured.simpson=365.3 measured.accuracy=7.0",
            "echo.pool.widths.count=9 echo.pool.depths.count=5 echo.pool.widths=0;_10;_14;_15;_13;_12;_14;_11;_0",
        ],
        holds: "pool.measured method.offsets measure.depths !measure.odd !need.pool-floor",
    },
    Row {
        // Trapezoids by hand: 4 ft by 89 ft is 356 ft², of 5 ft 13,315 gal; of the first eight widths alone
        // 4 by 83.5 is 334 ft², 12,492 gal.
        name: "free form by eight widths: no Simpson",
        form: &[
            FEET,
            "pool.shape=freeform pool.gap=4 pool.widths=0;10;14;15;13;12;14;11 pool.floor=level pool.shallow=5",
        ],
        shows: &["measured.volume=12,492 measured.trapezoid=334.0 measured.simpson=–"],
        holds: "pool.measured measure.odd",
    },
    Row {
        name: "L of two rectangles, each with its depth",
        form: &[
            FEET,
            "pool.shape=ell pool.length=30 pool.width=15 pool.floor=level pool.shallow=5",
            "pool.length-b=12 pool.width-b=10 pool.depth-b=3.5",
        ],
        shows: &["measured.volume=19,973 measured.volume.also=75.61 measured.area=570.0 draw.a=12"],
        holds: "pool.measured method.taped",
    },
    Row {
        name: "a floor that breaks",
        form: &[
            FEET,
            "pool.shape=rectangle pool.length=32 pool.width=16 pool.floor=break pool.shallow=3.5 pool.deep=8",
            "pool.flat=12 pool.slope=10",
        ],
        shows: &["measured.volume=21,484 measured.ends=22,023 measured.over=2.5 draw.flat=12 draw.slope=10"],
        holds: "pool.measured measure.broken floor.break",
    },
    Row {
        name: "a hopper",
        form: &[
            FEET,
            "pool.shape=rectangle pool.length=32 pool.width=16 pool.floor=hopper pool.shallow=3.5 pool.deep=8",
            "pool.flat=12 pool.pad-length=6 pool.pad-width=8",
        ],
        shows: &["measured.volume=18,971 measured.volume.also=71.81 measured.ends=22,023 measured.over=16.1"],
        holds: "pool.measured floor.hopper measure.broken",
    },
    Row {
        name: "a ledge taken off, a spa put to it, in US units of water",
        form: &[
            FEET,
            "pool.shape=rectangle pool.length=30 pool.width=15 pool.floor=slope pool.shallow=3.5 pool.deep=6.5",
            "pool.ledge-area=90 pool.ledge-water=9in pool.ledge-around=3.5 pool.spa=864 pool.solids.unit=[gal_us] pool.solids=100",
        ],
        shows: &[
            "measured.volume=15,744 measured.ledge=1,851 echo.pool.spa.also=3.27 echo.pool.ledge-area.also=8.36",
        ],
        holds: "measure.ledge measure.spa measure.solids",
    },
    Row {
        name: "metric, with commas: the results are in cubic metres",
        form: &[
            "sign.decimal=, pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4,0 pool.floor=slope pool.shallow=1,0 pool.deep=1,9",
        ],
        shows: &["measured.volume=46,40 measured.volume.also=12.258 measured.area=32,0 measured.depth=1,45"],
        holds: "pool.measured",
    },
    Row {
        name: "metric, shown in US units",
        form: &[
            "show=us pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=slope pool.shallow=1.0 pool.deep=1.9",
        ],
        shows: &["measured.volume=12,258 measured.volume.also=46.40 measured.area=344.4 echo.pool.length=8"],
        holds: "pool.measured",
    },
    Row {
        name: "a list that can be parted in two ways",
        form: &[
            "sign.decimal=, pool.length.unit=m pool.shape=freeform pool.gap=2 pool.widths=3,5,4,2,3 pool.floor=level pool.shallow=1,5",
        ],
        shows: &["measured.volume=– echo.pool.widths=–"],
        holds: "measure.unfinished fault !pool.measured need.pool-volume",
    },
    Row {
        name: "a list too long, and one with letters",
        form: &[
            "pool.length.unit=m pool.shape=freeform pool.gap=1 pool.depths=1;zwei",
            "pool.widths=1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1;1",
        ],
        shows: &["measured.volume=–"],
        holds: "measure.unfinished fault",
    },
    Row {
        name: "two widths are no shape",
        form: &[
            "pool.length.unit=m pool.shape=freeform pool.gap=1 pool.widths=1;2 pool.floor=level pool.shallow=1.5",
        ],
        shows: &["measured.volume=–"],
        holds: "fault !pool.measured",
    },
    Row {
        name: "half finished: what is missing is named, and no amount told",
        form: &[
            "pool.shape=rectangle pool.length=30 salt.now=400 salt.now.unit=[ppm] salt.method=meter salt.target=3200 bag.size=20 bag.size.unit=kg bag.purity=99.4",
        ],
        shows: &["measured.volume=– basic.mass=–"],
        holds: "measure.unfinished need.pool-length-unit need.pool-width need.pool-floor need.pool-volume add.unknown !pool.measured",
    },
    Row {
        name: "steps begun and not finished take the whole size away",
        form: &[
            "pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=level pool.shallow=1.5 pool.steps=0.9;0.6",
            "pool.ledge-water=0.2",
        ],
        shows: &["measured.volume=–"],
        holds: "measure.unfinished need.pool-steps-width need.pool-steps-tread need.pool-ledge-area need.pool-ledge-around",
    },
    Row {
        name: "L, kidney and free form begun",
        form: &["pool.length.unit=m pool.shape=ell pool.floor=hopper pool.steps-width=2 pool.ledge-area=3"],
        shows: &["measured.volume=–"],
        holds: "need.pool-length need.pool-length-b need.pool-width-b need.pool-depth-b need.pool-shallow need.pool-deep need.pool-flat need.pool-pad-length need.pool-pad-width need.pool-steps need.pool-ledge-water",
    },
    Row {
        name: "kidney begun",
        form: &["pool.length.unit=m pool.shape=kidney pool.floor=break"],
        shows: &[],
        holds: "need.pool-lobe-a need.pool-lobe-b need.pool-slope",
    },
    Row {
        name: "free form begun",
        form: &["pool.length.unit=m pool.shape=freeform"],
        shows: &[],
        holds: "need.pool-gap need.pool-widths need.pool-floor",
    },
    Row {
        name: "the deep end not so deep",
        form: &[
            "pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=slope pool.shallow=1.9 pool.deep=1.0",
        ],
        shows: &["measured.volume=–"],
        holds: "fault !pool.measured need.pool-volume",
    },
    Row {
        name: "flat and slope longer than the pool",
        form: &[
            "pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=break pool.shallow=1 pool.deep=2 pool.flat=5 pool.slope=4",
        ],
        shows: &["measured.volume=–"],
        holds: "fault !pool.measured",
    },
    Row {
        name: "a pad larger than its hopper",
        form: &[
            "pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=hopper pool.shallow=1 pool.deep=2 pool.flat=5 pool.pad-length=4 pool.pad-width=2",
        ],
        shows: &["measured.volume=–"],
        holds: "fault !pool.measured",
    },
    Row {
        name: "a hopper under an oval",
        form: &[
            "pool.length.unit=m pool.shape=ellipse pool.length=8 pool.width=4 pool.floor=hopper pool.shallow=1 pool.deep=2 pool.flat=3 pool.pad-length=2 pool.pad-width=2",
        ],
        shows: &["measured.volume=–"],
        holds: "fault !pool.measured",
    },
    Row {
        name: "straight sides, wider than long",
        form: &[
            "pool.length.unit=m pool.shape=stadium pool.length=4 pool.width=8 pool.floor=level pool.shallow=1",
        ],
        shows: &["measured.volume=–"],
        holds: "fault !pool.measured",
    },
    Row {
        name: "a ledge under as much water as beside it",
        form: &[
            "pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=level pool.shallow=1 pool.ledge-area=2 pool.ledge-water=1 pool.ledge-around=1",
        ],
        shows: &["measured.volume=–"],
        holds: "fault !pool.measured",
    },
    Row {
        name: "more taken off than there is",
        form: &[
            "pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=level pool.shallow=1 pool.solids=40 pool.solids.unit=m3",
        ],
        shows: &["measured.volume=–"],
        holds: "measure.nothing !pool.measured need.pool-volume",
    },
    Row {
        // By hand: 16,596 gal typed to 16,831.17 measured is 1.4 % less.
        name: "typed beside measured: the typed one counts",
        form: &[
            FEET,
            "pool.volume=16596 pool.volume.unit=[gal_us] pool.shape=rectangle pool.length=30 pool.width=15 pool.floor=slope pool.shallow=3.5 pool.deep=6.5",
            "salt.now=400 salt.now.unit=[ppm] salt.method=meter salt.target=3200 bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4",
        ],
        shows: &["measured.volume=16,831 measured.apart=1.4 basic.mass=390.1"],
        holds: "measure.typed measure.typed.less !measure.typed.more !measure.apart !pool.measured gate.volume.wait",
    },
    Row {
        // By hand: 22,023 to 18,970.6 is 16.1 % more.
        name: "typed and measured too far apart",
        form: &[
            FEET,
            "pool.volume=22023 pool.volume.unit=[gal_us] pool.shape=rectangle pool.length=32 pool.width=16 pool.floor=hopper",
            "pool.shallow=3.5 pool.deep=8 pool.flat=12 pool.pad-length=6 pool.pad-width=8 pool.method=taped",
        ],
        shows: &["measured.apart=16.1"],
        holds: "measure.typed.more measure.apart method.taped",
    },
    Row {
        name: "measured, and the typed one invalid: nobody knows which is meant",
        form: &[
            "pool.volume=x pool.volume.unit=m3 pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=level pool.shallow=1",
        ],
        shows: &["measured.volume=32.00"],
        holds: "!pool.measured need.pool-volume",
    },
    Row {
        name: "the measured size makes the dose, as the demo's typed one does",
        form: &[
            FEET,
            "pool.shape=rectangle pool.length=30 pool.width=15 pool.floor=slope pool.shallow=3.5 pool.deep=6.5",
            "pool.steps=2.625;1.75;0.875 pool.steps-width=6 pool.steps-tread=1",
            "salt.now=400 salt.now.unit=[ppm] salt.method=meter salt.target=3200 bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4",
        ],
        shows: &["basic.mass=390.1 buy.bags=10 stage.bags=6"],
        holds: "pool.measured method.taped !gate.volume.wait",
    },
    Row {
        name: "how it was found, chosen, stands before the way it was measured",
        form: &[
            "pool.method=drawing pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=level pool.shallow=1",
        ],
        shows: &["measured.volume=32.00"],
        holds: "pool.measured method.drawing !method.taped",
    },
    Row {
        name: "filled through a meter",
        form: &["pool.meter-before=1203.5 pool.meter-after=1266.32 pool.meter.unit=m3"],
        shows: &["measured.volume=62.82 measured.accuracy=1.5 measured.area=–"],
        holds: "pool.measured method.metered measure.metered !measure.drawn",
    },
    Row {
        name: "meter before tape, and the tape for surface and depth",
        form: &[
            "pool.meter-before=0 pool.meter-after=30 pool.meter.unit=m3 pool.length.unit=m pool.shape=rectangle pool.length=8 pool.width=4 pool.floor=level pool.shallow=1",
        ],
        shows: &["measured.volume=30.00 measured.area=32.0 measured.depth=1.00"],
        holds: "pool.measured method.metered measure.metered measure.drawn",
    },
    Row {
        name: "a meter that ran backwards, and one not read after",
        form: &["pool.meter-before=500 pool.meter-after=400 pool.meter.unit=L"],
        shows: &["measured.volume=–"],
        holds: "fault !pool.measured",
    },
    Row {
        name: "a meter not read after",
        form: &["pool.meter-before=500"],
        shows: &["measured.volume=–"],
        holds: "need.pool-meter-after need.pool-meter-unit !pool.measured",
    },
    Row {
        name: "a meter not read before",
        form: &["pool.meter-after=500"],
        shows: &["measured.volume=–"],
        holds: "need.pool-meter-before !pool.measured",
    },
];
