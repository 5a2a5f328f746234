//! What did the person type, and what of it can be used?
//!
//! From the flat form, name to text as typed, to a typed [`Case`]. All faults are collected before
//! any sum; a field with a fault counts for nothing, and everything else stays.

use crate::answer::{Answer, Fault, Shown, joined};
use crate::field::{self, Answered, In};
use crate::number::{self, NotNumber, Signs, Typed};
use crate::unit::{self, Kind, Unit};
use chem::salt::Responds;
use chem::treatment::{AcidStrength, BleachStrength};
use chem::*;
use plan::{
    Acid, Bag, Band, BandFault, Case, Goals, Ground, History, Instrument, Method, Optional, Products,
    Surface, Tests,
};

/// The flat form: name to text as typed. A name twice: the last counts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Form(pub Vec<(String, String)>);

impl<const N: usize> From<[(&str, &str); N]> for Form {
    fn from(all: [(&str, &str); N]) -> Self {
        Self(all.map(|(name, text)| (name.into(), text.into())).into())
    }
}

impl Form {
    /// The text of a field, without white space around it; empty when it is not there.
    pub fn text(&self, name: &str) -> &str {
        self.0.iter().rev().find(|(n, _)| n == name).map_or("", |(_, text)| text.trim_ascii())
    }

    /// The page's signs for decimals and groups, handed over in the form by whoever knows its
    /// language.
    pub fn signs(&self) -> Signs {
        let sign = |name, otherwise| self.text(name).chars().next().unwrap_or(otherwise);
        let decimal = sign("sign.decimal", '.');
        // A group sign may be a space, which trimming would lose.
        let group = self.0.iter().find(|(n, _)| n == "sign.group").and_then(|(_, t)| t.chars().next());
        Signs { decimal, group: group.unwrap_or(if decimal == ',' { '.' } else { ',' }) }
    }

    /// Has anything been typed or chosen, beyond what the page itself began with?
    pub fn is_blank(&self) -> bool {
        let begun = |n: &str| {
            matches!(n, "bag.purity" | "show" | "salt.now.unit" | "water.ta.unit" | "water.ch.unit")
                || n.starts_with("sign.")
                || n.starts_with("treat.")
        };
        self.0.iter().all(|(n, text)| begun(n) || text.trim_ascii().is_empty())
    }
}

/// The units in which results are shown.
#[derive(Clone, Copy)]
pub struct Units {
    /// For water.
    pub water: &'static Unit,
    /// For salt in bags.
    pub mass: &'static Unit,
    /// For salt in water.
    pub salt: &'static Unit,
    /// For alkalinity.
    pub alkalinity: &'static Unit,
    /// For hardness.
    pub hardness: &'static Unit,
    /// For liquid chemicals.
    pub liquid: &'static Unit,
}

impl Units {
    /// As typed where it was typed, otherwise to go with what was; or all of one system.
    fn of(form: &Form) -> Self {
        let typed = |kind, name| Unit::find(kind, form.text(name));
        let known = |kind, code| Unit::find(kind, code).unwrap_or(&unit::UNITS[0]);
        let both = |water, mass| (known(Kind::Water, water), known(Kind::Mass, mass));
        let (water, mass) = match form.text("show") {
            "metric" => both("m3", "kg"),
            "us" => both("[gal_us]", "[lb_av]"),
            _ => {
                let (water, mass) =
                    (typed(Kind::Water, "pool.volume.unit"), typed(Kind::Mass, "bag.size.unit"));
                let american = water.is_some_and(|u| u.code == "[gal_us]")
                    || water.is_none() && mass.is_some_and(|u| u.code == "[lb_av]");
                let (w, m) = if american { both("[gal_us]", "[lb_av]") } else { both("m3", "kg") };
                (water.unwrap_or(w), mass.unwrap_or(m))
            }
        };
        let salt = typed(Kind::Salt, "salt.now.unit").unwrap_or(known(Kind::Salt, "[ppm]"));
        let liquid = known(Kind::Liquid, if mass.code == "[lb_av]" { "[foz_us]" } else { "L" });
        let usual = |kind, name| typed(kind, name).unwrap_or(known(kind, "mg/L"));
        let alkalinity = usual(Kind::Alkalinity, "water.ta.unit");
        let hardness = usual(Kind::Hardness, "water.ch.unit");
        Self { water, mass, salt, alkalinity, hardness, liquid }
    }
}

/// Reads fields, and says of each what was understood.
struct Reader<'a> {
    form: &'a Form,
    signs: Signs,
    answer: &'a mut Answer,
}

impl Reader<'_> {
    fn fault(&mut self, field: &'static str, code: &'static str) {
        let got = self.form.text(field).to_string();
        self.answer.faults.push(Fault { field, code, limits: None, got, other: None });
    }

    fn is_faulty(&self, name: &str) -> bool {
        self.answer.faults.iter().any(|f| f.field == name)
    }

    /// The canonical value of a number field; `None` when it is empty or at fault.
    fn number(&mut self, name: &'static str) -> Option<f64> {
        let Answered::Number(bounds, unit) = &field::find(name)?.answer else {
            return None;
        };
        let (unit, typed) = match self.typed(name, unit) {
            Ok(found) => found?,
            Err(code) => {
                self.fault(name, code);
                return None;
            }
        };
        let bounds = unit.and_then(|u| u.bounds).unwrap_or(bounds);
        let inward = |x: f64| unit.map_or(x, |u| u.inward(x));
        let value = inward(typed.value);
        if let Err(out) = bounds.check(value) {
            let other = typed.other.filter(|x| bounds.check(inward(*x)).is_ok());
            let code = match other {
                Some(_) => "two-readings",
                None if out.got > bounds.high => "high",
                None => "low",
            };
            let limit = |x| {
                unit.map_or(Shown::plain(x, None, self.signs), |u| {
                    Shown::plain(u.rounded(u.outward(x)), unit, self.signs)
                })
            };
            self.answer.faults.push(Fault {
                field: name,
                code,
                limits: Some([limit(bounds.low), limit(bounds.high)]),
                got: self.form.text(name).to_string(),
                other: other.map(|x| Shown::plain(x, unit, self.signs)),
            });
            return None;
        }
        if bounds.quantity == Quantity::Bags && value.fract() != 0.0 {
            self.fault(name, "not-whole");
            return None;
        }
        self.echo(name, unit, value);
        Some(value)
    }

    /// What stands in a number field, and in which unit; or the code of what is wrong with it.
    #[allow(clippy::type_complexity)]
    fn typed(&self, name: &str, unit: &In) -> Result<Option<(Option<&'static Unit>, Typed)>, &'static str> {
        let typed = match number::read(self.form.text(name), self.signs) {
            Ok(None) => return Ok(None),
            Ok(Some(typed)) => typed,
            Err(NotNumber::Text) => return Err("not-a-number"),
            Err(NotNumber::Unit) => return Err("unit-in-text"),
        };
        let unit = match unit {
            In::Bare => None,
            In::Fixed(kind, code) => Unit::find(*kind, code),
            In::Asked(kind, asked) => Some(self.unit(name, *kind, self.form.text(asked))?),
            In::Usual(kind, asked, usual) => {
                let text = self.form.text(asked);
                Some(self.unit(name, *kind, if text.is_empty() { usual } else { text })?)
            }
        };
        Ok(Some((unit, typed)))
    }

    /// The unit a number is typed in. The salt reading may be in what its test shows, chloride or
    /// conductivity; the other salt figures are in ppm then.
    fn unit(&self, name: &str, kind: Kind, code: &str) -> Result<&'static Unit, &'static str> {
        let shown = || Unit::find(Kind::Reading, code).filter(|_| kind == Kind::Salt);
        let of_test = || if name == "salt.now" { shown() } else { shown().map(Unit::also_salt) };
        Unit::find(kind, code).or_else(of_test).ok_or("no-unit")
    }

    /// What was understood, in its own unit and in the other system.
    fn echo(&mut self, name: &str, unit: Option<&'static Unit>, value: f64) {
        let echo = joined(&["echo.", name]);
        let typed = unit.map_or(value, |u| u.outward(value));
        self.answer.put(&echo, Shown::plain(typed, unit, self.signs));
        if let Some(unit) = unit.filter(|u| u.also != u.code) {
            self.answer.put(&joined(&[&echo, ".also"]), Shown::of(value, unit.also(), self.signs));
        }
        self.answer.say(&echo);
    }

    /// A number field that may be left out.
    fn optional<T>(&mut self, name: &'static str, of: fn(f64) -> Option<T>) -> Optional<T> {
        match self.number(name) {
            Some(x) => of(x).map_or(Optional::Garbled, Optional::Given),
            None if self.is_faulty(name) => Optional::Garbled,
            None => Optional::LeftOut,
        }
    }

    /// The chosen one of a list; `None` when nothing is chosen or the code is not of the list.
    fn choice<T: Copy>(&mut self, name: &'static str, all: &[T], code: fn(T) -> &'static str) -> Option<T> {
        let text = self.form.text(name);
        let found = all.iter().copied().find(|x| code(*x) == text);
        if found.is_none() && !text.is_empty() {
            self.fault(name, "not-listed");
        }
        found
    }

    fn quantity<T>(&mut self, name: &'static str, of: fn(f64) -> Result<T, OutOfRange>) -> Option<T> {
        of(self.number(name)?).ok()
    }

    /// The salt reading, whatever its test shows.
    fn reading(&mut self, instrument: Option<Instrument>, heat: Option<Temperature>) -> Optional<Salinity> {
        let compensated = self.choice("salt.compensated", &["yes", "no"], |code| code);
        let code = self.form.text("salt.now.unit");
        let Some(shown) = Unit::find(Kind::Reading, code) else {
            return self.optional("salt.now", |x| Salinity::from_mg_per_l(x).ok());
        };
        let conducts = shown.code == "mS/cm";
        let fits = |i: Instrument| (i.responds() == Responds::ToConductivity) == conducts;
        if conducts {
            self.answer.say("salt.conducts");
        }
        match self.number("salt.now") {
            None if self.is_faulty("salt.now") => Optional::Garbled,
            None => Optional::LeftOut,
            Some(_) if instrument.is_some_and(|i| i != Instrument::Assumed && !fits(i)) => {
                self.fault("salt.now", "not-by-this");
                Optional::Garbled
            }
            Some(x) if !conducts => Salinity::from_mg_per_l(x).map_or(Optional::Garbled, Optional::Given),
            Some(x) => self.conducted(x, compensated, heat),
        }
    }

    /// Salt behind a conductivity, and what that is in ppm; not without knowing what the meter does.
    fn conducted(
        &mut self,
        ms_per_cm: f64,
        compensated: Option<&str>,
        heat: Option<Temperature>,
    ) -> Optional<Salinity> {
        let at = match compensated {
            Some("yes") => Temperature::from_celsius(25.0).ok(),
            Some(_) => heat,
            None => {
                self.answer.say("need.salt-compensated");
                None
            }
        };
        let (Ok(read), Some(at)) = (Conductivity::from_ms_per_cm(ms_per_cm), at) else {
            return Optional::Garbled;
        };
        let salt = conductivity::salt_of(read, at);
        let ppm = Unit::find(Kind::Salt, "[ppm]").unwrap_or(&unit::UNITS[0]);
        self.answer.put("echo.salt.now.also", Shown::of(salt.mg_per_l(), ppm, self.signs));
        Optional::Given(salt)
    }

    fn tests(&mut self, names: [&'static str; 5]) -> Tests {
        Tests {
            heat: self.quantity(names[0], Temperature::from_celsius),
            ph: self.quantity(names[1], Ph::from_units),
            alkalinity: self.quantity(names[2], Alkalinity::from_mg_per_l),
            hardness: self.quantity(names[3], Hardness::from_mg_per_l),
            cyanurate: self.quantity(names[4], Cyanurate::from_mg_per_l),
            chlorine: None,
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

    /// The goals, unless one of them can't be used: the others would lead elsewhere without it.
    fn goals(&mut self) -> Option<Goals> {
        let goals = Goals {
            ph: self.quantity("goal.ph", Ph::from_units),
            alkalinity: self.quantity("goal.ta", Alkalinity::from_mg_per_l),
            hardness: self.quantity("goal.ch", Hardness::from_mg_per_l),
            cyanurate: self.quantity("goal.cya", Cyanurate::from_mg_per_l),
            chlorine: self.quantity("goal.fc", Chlorine::from_mg_per_l),
        };
        let names = ["goal.ph", "goal.ta", "goal.ch", "goal.cya", "goal.fc"];
        (!names.iter().any(|name| self.is_faulty(name))).then_some(goals)
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
                BandFault::LowNotBelow => self.fault("salt.low", "not-below"),
                BandFault::HighNotAbove => self.fault("salt.high", "not-above"),
            })
            .ok()
    }
}

/// Reads the whole form: the case, and into `answer` the faults, the echoes and what was chosen.
pub fn read(form: &Form, answer: &mut Answer) -> (Case, Units) {
    let signs = form.signs();
    let mut r = Reader { form, signs, answer };
    let weighed_in = match Unit::find(Kind::Mass, form.text("bag.size.unit")) {
        Some(pound) if pound.code == "[lb_av]" => Some([unit::OUNCE, pound.factor]),
        _ => None,
    };
    let bag = Bag::default();
    let step = |kg: f64, otherwise| Mass::from_kilograms(kg).unwrap_or(otherwise);
    let instrument = r.choice("salt.how", Instrument::ALL, Instrument::code);
    let water = Tests {
        chlorine: r.quantity("water.fc", Chlorine::from_mg_per_l),
        ..r.tests(["water.heat", "water.ph", "water.ta", "water.ch", "water.cya"])
    };
    let case = Case {
        volume: r.quantity("pool.volume", Volume::from_cubic_metres),
        method: r.choice("pool.how", Method::ALL, Method::code),
        surface: r.choice("surface.kind", Surface::ALL, Surface::code),
        reading: r.reading(instrument, water.heat),
        instrument,
        history: r.choice("salt.class", History::ALL, History::code),
        band: r.band(),
        bag: Bag {
            size: r.quantity("bag.size", Mass::from_kilograms),
            purity: r.quantity("bag.purity", Purity::from_ratio),
            in_hand: r.optional("bag.have", |x| Some(x as u32)),
            weighed_in: weighed_in.map_or(bag.weighed_in, |[fine, coarse]| {
                [step(fine, bag.weighed_in[0]), step(coarse, bag.weighed_in[1])]
            }),
        },
        water,
        fill: r.tests(["fill.heat", "fill.ph", "fill.ta", "fill.ch", "fill.cya"]),
        fill_salt: r.quantity("fill.salt", Salinity::from_mg_per_l),
        cap: r.optional("less.cap", |x| Fraction::from_ratio(x).ok()),
        products: r.products(),
        goals: r.goals(),
        ground: r.choice("less.ground", Ground::ALL, Ground::code),
    };
    let _ = r.choice("show", &["as-typed", "metric", "us"], |code| code);
    for (name, prefix) in [("surface.kind", "is."), ("salt.how", "how."), ("pool.how", "found.")] {
        let code = form.text(name);
        if !code.is_empty() && !r.is_faulty(name) {
            r.answer.say(&joined(&[prefix, code]));
        }
    }
    if form.is_blank() {
        r.answer.say("blank");
    }
    (case, Units::of(form))
}
