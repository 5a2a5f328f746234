//! Which figures are typed, and what must come of them?
//!
//! One garden pool, invented, in US and in metric units, and two others. Each expected figure is
//! mass balance, worked by hand beside it; the indices are PHREEQC's for the same waters.

/// Names with texts: what is typed, or what must stand in an output.
pub type Rows = &'static [(&'static str, &'static str)];

pub const US: Rows = &[
    ("pool.volume", "16596"),
    ("pool.volume.unit", "[gal_us]"),
    ("pool.method", "taped"),
    ("surface.kind", "cement"),
    ("water.temperature", "75"),
    ("water.temperature.unit", "[degF]"),
    ("water.ph", "7.5"),
    ("water.ta", "110"),
    ("water.ch", "250"),
    ("water.cya", "40"),
    ("salt.now", "400"),
    ("salt.method", "meter"),
    ("salt.target", "3200"),
    ("salt.low", "2800"),
    ("salt.high", "3600"),
    ("bag.size", "40"),
    ("bag.size.unit", "[lb_av]"),
];

/// 16,596 US gal × 2,800 ppm × 0.0000083454 = 387.8 lb; ÷ 0.994 = 390.1 lb; ÷ 40 = 9.75 bags;
/// 0.7 of them is 6.8, so 6 bags, which bring 2,800 × 240 ÷ 390.14 = 1,722.5 ppm.
pub const US_ANSWER: Rows = &[
    ("basic.pure", "387.8 lb"),
    ("basic.mass", "390.1 lb"),
    ("basic.bags", "9.75"),
    ("buy.bags", "10"),
    ("stage.bags", "6"),
    ("stage.mass", "240 lb"),
    ("stage.plain", "2,122 ppm"),
    ("index.now", "+0.09"),
    ("index.same", "−0.13"),
    ("index.free", "−0.17"),
];

pub const METRIC: Rows = &[
    ("pool.volume", "62.82"),
    ("pool.volume.unit", "m3"),
    ("pool.method", "taped"),
    ("surface.kind", "cement"),
    ("water.temperature", "24"),
    ("water.temperature.unit", "Cel"),
    ("water.ph", "7.5"),
    ("water.ta", "110"),
    ("water.ch", "250"),
    ("water.cya", "40"),
    ("salt.now", "400"),
    ("salt.method", "meter"),
    ("salt.target", "3200"),
    ("salt.low", "2800"),
    ("salt.high", "3600"),
    ("bag.size", "20"),
    ("bag.size.unit", "kg"),
];

/// 62.82 m³ × 2,800 ppm ÷ 1,000 = 175.9 kg; ÷ 0.994 = 177.0 kg; ÷ 20 = 8.85 bags; 0.7 of them is
/// 6.2, so 6 bags, which bring 2,800 × 120 ÷ 176.96 = 1,898.7 ppm.
pub const METRIC_ANSWER: Rows = &[
    ("basic.pure", "175.9 kg"),
    ("basic.mass", "177 kg"),
    ("basic.bags", "8.85"),
    ("buy.bags", "9"),
    ("stage.bags", "6"),
    ("stage.mass", "120 kg"),
    ("stage.plain", "2,299 ppm"),
];

/// 75 m³ at 4,100 ppm, for 3,200, with fill water of 150.
/// Link to it: the page's example with this reading.
pub const TOO_MUCH: &str = "a[href*='salt.now=4100']";

/// The demo a day on.
pub const SECOND_DAY: &str = "a[href*='log.2.salt=2150']";

/// The demo's first test, with its goals.
pub const BALANCE_FIRST: &str = "a[href*='goal.ch=250']";
/// 20 mg/L of cyanuric acid in 62.82 m³ is 2.77 lb, 30 mg/L of hardness by 77 % flake 5.98 lb (arithmetic).
pub const BALANCE_STEPS: &str = "Cyanuric acid (stabilizer), in a sock before a return|2.77 lb|7.42|−0.03\n\
                                 Calcium chloride|5.98 lb|7.42|+0.01";
/// Too much stabilizer.
pub const WATER_FIRST: &str = "a[href*='goal.cya=50']";
/// (130 − 50) ÷ 130 = 61.5 %; 120 + (1,800 − 120) × 0.3846 = 766; (3,200 − 766) in 68.14 m³ is 367.8 lb.
pub const WATER_FIRST_ANSWER: Rows = &[
    ("replace.share", "61.5 %"),
    ("replace.count", "3"),
    ("replace.total.share", "80.1 %"),
    ("replace.salt", "766 ppm"),
    ("basic.mass", "367.8 lb"),
];

/// By the plain sum (4,100 − 3,200) ÷ (4,100 − 150) = 22.8 %, exchange 25.9; by the estimate, which takes one
/// reading for a little less than it says, 22.7 and 25.7 (the same as this project's reference model).
pub const TOO_MUCH_ANSWER: Rows = &[
    ("replace.share", "22.7 %"),
    ("replace.volume", "17.00 m³"),
    ("replace.flow.share", "25.7 %"),
    ("replace.count", "2"),
    ("replace.total.share", "24.0 %"),
    ("basic.mass", "–"),
    ("stage.mass", "–"),
];

/// Number, share, water, reading, from an estimated 4,094: the first pass leaves 150 + 3,944 × 0.85 = 3,502, the
/// second takes (3,502 − 3,200) ÷ 3,352 = 9.0 %.
pub const TOO_MUCH_PASSES: &str = "1|15.0 %|11.25 m³|3,502 ppm\n2|9.0 %|6.77 m³|3,200 ppm";

/// 48 m³, 0,5 to 3,5 g/L: 48 × 3 ÷ 0.994 = 144.9 kg in bags of 25.
pub const COMMA: &str = "sw1&pool.volume=48&pool.volume.unit=m3&salt.now=0,5&salt.now.unit=g%2FL\
    &salt.method=meter&pool.method=taped&salt.target=3,5&salt.low=3,0&salt.high=4,0&bag.size=25&bag.size.unit=kg\
    &bag.purity=99,4";

pub const COMMA_ANSWER: Rows = &[("basic.bags", "5.79"), ("buy.bags", "6"), ("stage.bags", "4")];

/// A link that fills the form with these figures.
pub fn link(rows: Rows) -> String {
    let coded = |text: &str| text.replace('[', "%5B").replace(']', "%5D");
    rows.iter().fold("sw1".into(), |link, (name, text)| format!("{link}&{name}={}", coded(text)))
}

/// What else is asked of the demo, answered as of a pool that is ready on 2027-05-21, in a link.
pub const READY: &str = "pool.use=home&pool.location=outdoor&ready.full=yes&ready.running=yes&ready.clarity=clear&ready.algae=none\
    &ready.swimmers=no&ready.weather=dry&water.sanitizer=chlorine&surface.day=2027-04-02&surface.approval=in-hand&surface.approval-by=Applicator\
    &surface.approval-day=2027-05-14&warranty.liner=not-fitted&warranty.heater=read&warranty.cover=not-fitted&warranty.coping=read&warranty.ladders=read\
    &ready.electrical=not-yet&bag.salt=pool&salt.since=no&salt.when=2027-05-20T09:00&water.fc=2.5&water.cc=0.2&water.cu=0&water.fe=0";
