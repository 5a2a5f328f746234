//! Which pools can a trial be made with? As many made-up ones as are asked for, always the same.

use saltwright_form::contract::codes::LogKind;
use saltwright_form::contract::{Field, FieldId, FieldType};
use std::io::{self, Write};

/// How many pools are metric; in the others water is in US gallons, bags in pounds, warmth in Fahrenheit.
const METRIC_IN_TEN: u64 = 6;

/// Columns of the sample, in order. Line 1 of the log is salt put in, line 2 salt read after it.
const COLUMNS: [FieldId; 29] = [
    FieldId::Field(Field::JobName),
    FieldId::Field(Field::PoolVolume),
    FieldId::Field(Field::PoolVolumeUnit),
    FieldId::Field(Field::PoolMethod),
    FieldId::Field(Field::SurfaceKind),
    FieldId::Field(Field::SaltNow),
    FieldId::Field(Field::SaltNowUnit),
    FieldId::Field(Field::SaltMethod),
    FieldId::Field(Field::SaltTarget),
    FieldId::Field(Field::BagSize),
    FieldId::Field(Field::BagSizeUnit),
    FieldId::Field(Field::BagPurity),
    FieldId::Field(Field::BagPrice),
    FieldId::Field(Field::WaterTemperature),
    FieldId::Field(Field::WaterTemperatureUnit),
    FieldId::Field(Field::WaterPh),
    FieldId::Field(Field::WaterTa),
    FieldId::Field(Field::WaterCh),
    FieldId::Field(Field::WaterCya),
    FieldId::Field(Field::WaterFc),
    FieldId::Field(Field::FillSalt),
    Field::LogKind.in_line(1),
    Field::LogMass.in_line(1),
    Field::LogMassUnit.in_line(1),
    Field::LogWhen.in_line(1),
    Field::LogKind.in_line(2),
    Field::LogSalt.in_line(2),
    Field::LogMethod.in_line(2),
    Field::LogWhen.in_line(2),
];

/// What of a pool decides what stands in several of its cells.
struct Pool {
    metric: bool,
    /// Are the tests other than salt made?
    tested: bool,
    /// Did salt go in before?
    begun: bool,
    /// Water in m³, and salt read in mg/L.
    water: u64,
    salt: u64,
}

/// Writes so many pools.
pub fn write(count: u32, to: &mut impl Write) -> io::Result<()> {
    let mut to = csv::Writer::from_writer(to);
    to.write_record(COLUMNS.map(FieldId::name))?;
    let mut chance = Chance(0);
    for number in 1..=count {
        let pool = Pool {
            metric: chance.whole(1, 10) <= METRIC_IN_TEN,
            tested: chance.whole(1, 5) > 1,
            begun: chance.whole(1, 3) == 1,
            water: chance.whole(15, 120),
            salt: chance.whole(2, 30) * 50,
        };
        for column in COLUMNS {
            to.write_field(cell(column, number, &pool, &mut chance))?;
        }
        to.write_record(None::<&[u8]>)?;
    }
    to.flush()
}

fn cell(column: FieldId, number: u32, pool: &Pool, chance: &mut Chance) -> String {
    let unit = |metric: &str, american: &str| if pool.metric { metric } else { american }.to_string();
    let Some(field) = column.field() else { return String::new() };
    let (logged, test) = (matches!(column, FieldId::Line(..)), field.name().starts_with(of_water()));
    if logged && !pool.begun || test && !pool.tested {
        return String::new();
    }
    match (field, field.kind()) {
        (Field::JobName, _) => format!("Pool {number}"),
        (Field::PoolVolume, _) if pool.metric => pool.water.to_string(),
        (Field::PoolVolume, _) => (pool.water * 264).to_string(),
        (Field::PoolVolumeUnit, _) => unit("m3", "[gal_us]"),
        (Field::SaltNow, _) => pool.salt.to_string(),
        (Field::SaltNowUnit, _) => "[ppm]".into(),
        (Field::SaltTarget, _) => chance.one(&["3000", "3200", "3400", "4000"]).into(),
        (Field::BagSize, _) => unit("25", "40"),
        (Field::BagSizeUnit | Field::LogMassUnit, _) => unit("kg", "[lb_av]"),
        (Field::BagPurity, _) => chance.one(&["99.4", "99.8", "98.5"]).into(),
        (Field::BagPrice, _) => chance.tenths(60, 180),
        (Field::WaterTemperature, _) if pool.metric => chance.tenths(160, 310),
        (Field::WaterTemperature, _) => chance.tenths(600, 880),
        (Field::WaterTemperatureUnit, _) => unit("Cel", "[degF]"),
        (Field::WaterPh, _) => chance.tenths(69, 82),
        (Field::WaterTa, _) => chance.whole(40, 180).to_string(),
        (Field::WaterCh, _) => chance.whole(50, 500).to_string(),
        (Field::WaterCya, _) => chance.whole(0, 90).to_string(),
        (Field::WaterFc, _) => chance.tenths(0, 60),
        (Field::FillSalt, _) => chance.whole(20, 300).to_string(),
        (Field::LogKind, _) if column == Field::LogKind.in_line(1) => LogKind::Salt.code().into(),
        (Field::LogKind, _) => LogKind::Test.code().into(),
        // Half of what brings the water up by some 2,500 mg/L.
        (Field::LogMass, _) if pool.metric => (pool.water * 5 / 4).to_string(),
        (Field::LogMass, _) => (pool.water * 11 / 4).to_string(),
        (Field::LogSalt, _) => (pool.salt + chance.whole(20, 28) * 50).to_string(),
        // The reading two days after the salt.
        (Field::LogWhen, _) if column == Field::LogWhen.in_line(1) => "2026-05-04T10:00".into(),
        (Field::LogWhen, _) => "2026-05-06T10:00".into(),
        (_, FieldType::Choice(codes)) => chance.one(codes.all).into(),
        _ => String::new(),
    }
}

/// How the names of the tests of the water begin.
fn of_water() -> &'static str {
    Field::WaterPh.name().split_inclusive('.').next().unwrap_or_default()
}

/// SplitMix64 (Steele, Lea and Flood, 2014): enough for made-up pools.
struct Chance(u64);

impl Chance {
    /// A whole number from `least` to `most`.
    fn whole(&mut self, least: u64, most: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        least + (mixed ^ (mixed >> 31)) % (most - least + 1)
    }

    /// A decimal from `least` to `most` tenths.
    fn tenths(&mut self, least: u64, most: u64) -> String {
        let tenths = self.whole(least, most);
        format!("{}.{}", tenths / 10, tenths % 10)
    }

    /// One of these.
    fn one<'a>(&mut self, of: &[&'a str]) -> &'a str {
        of[self.whole(0, of.len() as u64 - 1) as usize]
    }
}
