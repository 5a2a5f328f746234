//! Which case do the fields make?
//!
//! From the flat form, name to text as typed, to a typed [`Case`]. All faults are collected before any sum; a
//! field with a fault counts for nothing, and everything else stays.

use crate::answer::{Answer, Shown};
use crate::contract::fields::{LINES, Line, READ_WITH};
use crate::contract::units::{self, Kind, Unit};
use crate::form::{Form, Units};
use crate::read::moment;
use crate::read::reader::Reader;
use crate::text::joined;
use chem::salt::SaltTest;
use chem::treatment::{AcidStrength, BleachStrength};
use chem::*;
use plan::RiskLevels;
use plan::log::{Entry, Log, LogEvent, MOST_ENTRIES, Reading};
use plan::{
    Acid, Bag, Band, BandError, Case, Goals, Ground, History, Instrument, Method, Products, Surface, Tests,
    Typed,
};
use plan::{Flow, Run, Season, WeighedIn};

impl Reader<'_> {
    /// A salt reading, whatever its test shows, by that instrument.
    fn salt(
        &mut self,
        name: &'static str,
        instrument: Option<Instrument>,
        heat: Option<Temperature>,
    ) -> Typed<Salinity> {
        let Some(shown) = Unit::find(Kind::Reading, self.form.text("salt.now.unit")) else {
            return self.optional(name, |x| Salinity::from_mg_per_l(x).ok());
        };
        let conducts = shown.bounds.is_some();
        let fits = |i: Instrument| (i.salt_test() == SaltTest::Conductivity) == conducts;
        match self.number(name) {
            None if self.is_faulty(name) => Typed::Invalid,
            None => Typed::Missing,
            Some(_) if instrument.is_some_and(|i| i != Instrument::Assumed && !fits(i)) => {
                self.fault(name, "not-by-this");
                Typed::Invalid
            }
            Some(x) if !conducts => Salinity::from_mg_per_l(x).map_or(Typed::Invalid, Typed::Valid),
            Some(x) => self.conducted(name, x, heat),
        }
    }

    /// Salt behind a conductivity, and what that is in ppm; not without knowing what the meter does.
    fn conducted(
        &mut self,
        name: &'static str,
        ms_per_cm: f64,
        heat: Option<Temperature>,
    ) -> Typed<Salinity> {
        let at = match self.form.text("salt.compensated") {
            "yes" => Temperature::from_celsius(25.0).ok(),
            "no" => heat,
            _ => {
                self.answer.say_once("need.salt-compensated");
                None
            }
        };
        let (Ok(read), Some(at)) = (Conductivity::from_ms_per_cm(ms_per_cm), at) else {
            return Typed::Invalid;
        };
        let ppm = Unit::find(Kind::Salt, "[ppm]").unwrap_or(&units::UNITS[0]);
        let salt = match conductivity::salt_of(read, at) {
            Ok(salt) => salt.anywhere(),
            Err(out) if out.bounds.quantity == Quantity::Temperature => {
                let unit = Unit::find(Kind::Heat, self.form.text("water.heat.unit"));
                self.outside("water.heat", &out, unit, None);
                return Typed::Invalid;
            }
            Err(out) => {
                self.outside(name, &out, Some(ppm), None);
                self.answer.say_once("outside.salt-now");
                return Typed::Invalid;
            }
        };
        self.answer.put(&joined(&["echo.", name, ".also"]), Shown::of(salt.mg_per_l(), ppm, self.signs));
        Typed::Valid(salt)
    }

    /// The log, unless a line of it can't be used: the rest would tell of another pool.
    fn log(&mut self, bag: Option<Mass>, heat: Option<Temperature>) -> Typed<Log> {
        let used = self.form.lines_used();
        let mut log = [None; MOST_ENTRIES];
        let mut all = Typed::Missing;
        for (place, line) in log.iter_mut().zip(&LINES).take(used) {
            match self.line(line, bag, heat) {
                Typed::Missing => continue,
                Typed::Invalid => {
                    all = Typed::Invalid;
                    self.answer.say_once("log.unfinished");
                }
                Typed::Valid(entry) => *place = Some(entry),
            }
            if all == Typed::Missing {
                all = Typed::Valid(());
            }
        }
        match all {
            Typed::Valid(()) => Typed::Valid(log),
            Typed::Missing => Typed::Missing,
            Typed::Invalid => Typed::Invalid,
        }
    }

    /// One line; garbled while it is not finished.
    fn line(&mut self, line: &Line, bag: Option<Mass>, heat: Option<Temperature>) -> Typed<Entry> {
        let kind = self.choice(line.kind, &["dose", "reading", "struck"], |code| code);
        if kind == Some("struck") {
            return Typed::Missing;
        }
        let when = self.moment(line.when);
        // What the other kind of line asks for is not seen in this one.
        let mass = if kind == Some("reading") { Typed::Missing } else { self.put_in(line, bag) };
        let (mut instrument, mut salt, mut again) = (None, Typed::Missing, Typed::Missing);
        if kind != Some("dose") {
            instrument = self.choice(line.how, &Instrument::ALL[..READ_WITH.len()], Instrument::code);
            salt = self.salt(line.salt, instrument, heat);
            again = self.salt(line.again, instrument, heat);
        }
        let what = match (kind, mass, salt, instrument, again) {
            (Some("dose"), Typed::Valid(mass), ..) => Some(LogEvent::Dose(mass)),
            (Some("reading"), _, Typed::Valid(salt), Some(instrument), again) if again != Typed::Invalid => {
                Some(LogEvent::Reading(Reading { salt, again: again.valid(), instrument }))
            }
            _ => None,
        };
        if let Some(kind) = kind {
            let begin = line.kind.strip_suffix("kind").unwrap_or_default();
            self.answer.say(&joined(&[begin, kind]));
            self.answer.say(&joined(&[begin, "timed"]));
            let missing = |name: &str| self.form.text(name).is_empty();
            let needs = [
                (kind == "dose" && missing(line.mass), "needs-mass"),
                (kind == "reading" && missing(line.salt), "needs-salt"),
                (kind == "reading" && missing(line.how), "needs-how"),
                (missing(line.when), "needs-when"),
            ];
            for (_, state) in needs.iter().filter(|(needed, _)| *needed) {
                self.answer.say(&joined(&[begin, state]));
            }
        }
        match (what, when) {
            (Some(what), Typed::Valid(when)) => Typed::Valid(Entry { when, what }),
            _ if line.names().iter().all(|name| self.form.text(name).is_empty()) => Typed::Missing,
            _ => Typed::Invalid,
        }
    }

    /// What went in, by weight or in bags.
    fn put_in(&mut self, line: &Line, bag: Option<Mass>) -> Typed<Mass> {
        let in_bags = self.form.text(line.unit) == "{bag}";
        match self.number(line.mass) {
            None if self.is_faulty(line.mass) => Typed::Invalid,
            None => Typed::Missing,
            Some(bags) if in_bags => bag.map_or(Typed::Invalid, |bag| {
                let Ok(mass) = bag.checked_mul(bags) else { return Typed::Invalid };
                if let Some(unit) = Unit::find(Kind::Mass, self.form.text("bag.size.unit")) {
                    let weighs = Shown::of(mass.kilograms(), unit, self.signs);
                    self.answer.put(&joined(&["echo.", line.mass, ".also"]), weighs);
                }
                Typed::Valid(mass)
            }),
            Some(kg) => Mass::from_kilograms(kg).map_or(Typed::Invalid, Typed::Valid),
        }
    }

    /// The risks that the page's author takes.
    fn levels(&mut self) -> Typed<RiskLevels> {
        let usual = RiskLevels::default();
        let mut level = |name, usual: f64| match self.value(name).map(|(_, x)| x) {
            None if self.is_faulty(name) => f64::NAN,
            typed => typed.unwrap_or(usual),
        };
        let levels = RiskLevels {
            over: level("level.over", usual.over),
            low: level("level.low", usual.low),
            cap: level("level.cap", usual.cap),
            enough: level("level.enough", usual.enough),
            slack: level("level.slack", usual.slack),
            drained: level("level.drained", usual.drained),
        };
        if levels.are_levels() { Typed::Valid(levels) } else { Typed::Invalid }
    }

    fn tests(&mut self, names: [&'static str; 5]) -> Tests {
        Tests {
            temperature: self.quantity(names[0], Temperature::from_celsius),
            ph: self.quantity(names[1], Ph::from_units),
            alkalinity: self.quantity(names[2], Alkalinity::from_mg_per_l),
            hardness: self.quantity(names[3], Hardness::from_mg_per_l),
            cyanuric_acid: self.quantity(names[4], CyanuricAcid::from_mg_per_l),
            chlorine: Typed::Missing,
        }
    }

    /// The shelf, once all its labels can be read.
    fn products(&mut self) -> Option<Products> {
        let acid = self.number("treat.acid").and_then(|x| match self.form.text("treat.acid.unit") {
            "{Be}" => AcidStrength::from_baume(x).ok().map(Acid::Hydrochloric),
            "%{NaHSO4}" => Purity::from_ratio(x).ok().map(Acid::Bisulfate),
            _ => AcidStrength::from_mass_percent(x).ok().map(Acid::Hydrochloric),
        });
        let bleach = self.number("treat.bleach").and_then(|x| match self.form.text("treat.bleach.unit") {
            "%{NaOCl}" => BleachStrength::from_hypochlorite_percent(x).ok(),
            _ => BleachStrength::from_trade_percent(x).ok(),
        });
        let calcium = self.quantity("treat.calcium", Purity::from_ratio);
        let powder = self.quantity("treat.powder", Purity::from_ratio);
        Some(Products { acid: acid?, bleach: bleach?, calcium: calcium?, powder: powder? })
    }

    fn goals(&mut self) -> Goals {
        let goals = Goals {
            ph: self.quantity("goal.ph", Ph::from_units),
            alkalinity: self.quantity("goal.ta", Alkalinity::from_mg_per_l),
            hardness: self.quantity("goal.ch", Hardness::from_mg_per_l),
            cyanuric_acid: self.quantity("goal.cya", CyanuricAcid::from_mg_per_l),
            chlorine: self.quantity("goal.fc", Chlorine::from_mg_per_l),
            invalid: false,
            water_unknown: false,
        };
        let typed = |name| !self.form.text(name).is_empty();
        let water_unknown = [["goal.ch", "water.ch"], ["goal.cya", "water.cya"]]
            .iter()
            .any(|both| both.iter().any(|name| self.is_faulty(name)) && both.iter().all(|name| typed(name)));
        let invalid = self.answer.faults.iter().any(|fault| fault.field.starts_with("goal."));
        Goals { invalid, water_unknown, ..goals }
    }

    fn band(&mut self) -> Option<Band> {
        let mut limit = |name| self.quantity(name, Salinity::from_mg_per_l);
        let (low, target, high) = (limit("salt.low"), limit("salt.target"), limit("salt.high"));
        let names = ["salt.low", "salt.target", "salt.high"];
        if names.iter().any(|name| self.is_faulty(name)) {
            return None;
        }
        Band::of(low, target, high)
            .map_err(|fault| match fault {
                BandError::LowNotBelow => self.fault("salt.low", "not-below"),
                _ => self.fault("salt.high", "not-above"),
            })
            .ok()
    }
}

/// Reads the whole form: the case, and into `answer` the faults, the echoes and what was chosen.
pub fn read(form: &Form, answer: &mut Answer) -> (Case, Units) {
    let signs = form.signs();
    let mut r = Reader { form, signs, answer };
    let weighed_in = match Unit::find(Kind::Mass, form.text("bag.size.unit")) {
        Some(pound) if pound.code == "[lb_av]" => Some([units::OUNCE, pound.factor]),
        _ => None,
    };
    let bag = Bag::default();
    let step = |kg: f64, otherwise| Mass::from_kilograms(kg).unwrap_or(otherwise);
    let instrument = r.choice("salt.how", Instrument::ALL, Instrument::code);
    let water = Tests {
        chlorine: r.optional("water.fc", |x| Chlorine::from_mg_per_l(x).ok()),
        ..r.tests(["water.heat", "water.ph", "water.ta", "water.ch", "water.cya"])
    };
    let _ = r.choice("salt.compensated", &["yes", "no"], |code| code);
    if Unit::find(Kind::Reading, form.text("salt.now.unit")).is_some_and(|unit| unit.bounds.is_some()) {
        r.answer.say("salt.conducts");
    }
    let size = r.quantity("bag.size", Mass::from_kilograms);
    let units = Units::of(form);
    let typed = r.quantity("pool.volume", Volume::from_cubic_metres);
    let faults = r.answer.faults.len();
    let measured = r.measured();
    let tape_faulty = r.answer.faults.iter().skip(faults).any(|fault| !fault.field.starts_with("pool.meter"));
    if let Some(measured) = &measured {
        r.show(measured, typed, units);
    }
    // A size that is typed always counts, also where it is invalid: then nobody knows which is meant. Nor by the tape
    // where the meter is at fault.
    let counted = measured.filter(|_| form.text("pool.volume").is_empty() && !r.is_metered_wrong());
    if counted.is_some() {
        r.answer.say("pool.measured");
    }
    let chosen = r.choice("pool.how", Method::ALL, Method::code);
    let mut case = Case {
        volume: typed.or(counted.map(|m| m.volume)),
        method: chosen.or(counted.map(|m| m.method).filter(|_| form.text("pool.how").is_empty())),
        surface: r.choice("surface.kind", Surface::ALL, Surface::code),
        doubt: r.optional("pool.doubt", |x| Fraction::from_ratio(x).ok()),
        reading: r.salt("salt.now", instrument, water.temperature),
        again: r.salt("salt.again", instrument, water.temperature),
        instrument,
        read_at: r.moment("salt.when"),
        now: r.moment("now").valid(),
        today: moment::read(form.text("now")).map(|now| now.div_euclid(1_440)),
        start: r.moment("start.when"),
        on: r.moment("on.when"),
        log: r.log(size, water.temperature),
        levels: r.levels(),
        history: r.choice("salt.class", History::ALL, History::code),
        band: r.band(),
        bag: Bag {
            size,
            purity: r.quantity("bag.purity", Purity::from_ratio),
            in_hand: r.optional("bag.have", |x| Some(x as u32)),
            price: r.number("bag.price"),
            weighed_in: weighed_in.map_or(bag.weighed_in, |[fine, coarse]| WeighedIn {
                fine: step(fine, bag.weighed_in.fine),
                coarse: step(coarse, bag.weighed_in.coarse),
            }),
        },
        water,
        fill: r.tests(["fill.heat", "fill.ph", "fill.ta", "fill.ch", "fill.cya"]),
        fill_salt: r.quantity("fill.salt", Salinity::from_mg_per_l),
        cap: r.optional("less.cap", |x| Fraction::from_ratio(x).ok()),
        products: r.products(),
        goals: r.goals(),
        ready: r.ready(),
        run: Run {
            demand: r.optional("run.demand", Some),
            makes: r.optional("run.makes", Some),
            hours: r.optional("run.hours", Some),
        },
        season: Season {
            lost: r.optional("season.lost", Some),
            backwash: r.optional("season.backwash", Some),
            times: r.optional("season.times", Some),
            rain: r.optional("season.rain", Some),
        },
        flow: Flow {
            out: r.optional("less.out", Some),
            in_: r.optional("less.in", Some),
            price: r.optional("less.price", Some),
        },
        ground: r.choice("less.ground", Ground::ALL, Ground::code),
        unlisted: false,
        uncounted: false,
        untested: false,
        depth: match measured.and_then(|m| m.taped) {
            Some((_, size)) => Typed::Valid(size.depth),
            None if tape_faulty => Typed::Invalid,
            None => Typed::Missing,
        },
    };
    case.unlisted = r.answer.faults.iter().any(|fault| fault.code == "not-listed");
    if r.words("job.name") {
        r.answer.say("job.named");
    }
    let _ = r.words("job.by") | r.words("job.note");
    // What the decision goes by besides numbers.
    if ["pool.how", "salt.how", "salt.class"].iter().any(|name| r.is_faulty(name)) {
        case.doubt = Typed::Invalid;
    }
    // A reading by nobody knows what may be a guess.
    if r.is_faulty("salt.how") && case.reading != Typed::Missing {
        case.reading = Typed::Invalid;
    }
    // And how much may be drained at one go.
    if ["surface.kind", "less.ground"].iter().any(|name| r.is_faulty(name)) {
        case.cap = Typed::Invalid;
    }
    // And how many bags.
    case.uncounted = ["bag.size", "bag.purity"].iter().any(|name| r.is_faulty(name))
        || case.volume.is_none() && r.answer.faults.iter().any(|fault| fault.field.starts_with("pool."));
    let untested = |field: &str| {
        ["water.", "fill.", "goal.", "treat.", "now"].iter().any(|begin| field.starts_with(begin))
    };
    case.untested = r.answer.faults.iter().any(|fault| untested(fault.field));
    let _ = r.choice("show", &["as-typed", "metric", "us"], |code| code);
    if let Some(method) = case.method {
        r.answer.say(&joined(&["found.", method.code()]));
    }
    for (name, prefix) in [("surface.kind", "is."), ("salt.how", "how.")] {
        let code = form.text(name);
        if !code.is_empty() && !r.is_faulty(name) {
            r.answer.say(&joined(&[prefix, code]));
        }
    }
    if form.is_blank() {
        r.answer.say("blank");
    }
    (case, units)
}
