//! Can what stands in one field be used? Its faults and its echo.

use crate::answer::{Answer, Fault, Shown};
use crate::contract::fields::{self, Answered, In};
use crate::contract::units::{Kind, Unit};
use crate::form::Form;
use crate::read::length;
use crate::read::moment;
use crate::read::number::{self, NotNumber, Signs, Typed as TypedNumber};
use crate::text::joined;
use chem::{Bounds, OutOfRange};
use plan::{Typed, limits};

/// Reads fields, and says of each what was understood.
pub struct Reader<'a> {
    /// What was typed.
    pub form: &'a Form,
    /// The page's signs.
    pub signs: Signs,
    /// What is found wrong, and what was understood.
    pub answer: &'a mut Answer,
}

impl Reader<'_> {
    pub fn fault(&mut self, field: &'static str, code: &'static str) {
        let got = self.form.text(field).to_string();
        self.answer.faults.push(Fault { field, code, limits: None, got, other: None });
    }

    pub fn is_faulty(&self, name: &str) -> bool {
        self.answer.faults.iter().any(|f| f.field == name)
    }

    /// The canonical value of a number field, with an echo of what was understood; `None` when it is empty or at
    /// fault.
    pub fn number(&mut self, name: &'static str) -> Option<f64> {
        let (unit, value) = self.value(name)?;
        self.echo(name, unit, value);
        Some(value)
    }

    /// The same without an echo, and the unit it is typed in.
    pub fn value(&mut self, name: &'static str) -> Option<(Option<&'static Unit>, f64)> {
        if self.form.text(name).is_empty() {
            return None; // As most fields are: no need to look up what could stand there.
        }
        let Answered::Number(bounds, unit) = &fields::find(name)?.answer else {
            return None;
        };
        let (unit, typed) = match self.typed(name, unit) {
            Ok(found) => found?,
            Err(code) => {
                self.fault(name, code);
                return None;
            }
        };
        let value = self.within(name, bounds, unit, typed)?;
        if **bounds == limits::BAGS && value.fract() != 0.0 {
            self.fault(name, "not-whole");
            return None;
        }
        Some((unit, value))
    }

    /// The canonical value of what was typed; `None` and a fault where it lies out of its bounds.
    pub fn within(
        &mut self,
        name: &'static str,
        bounds: &'static Bounds,
        unit: Option<&'static Unit>,
        typed: TypedNumber,
    ) -> Option<f64> {
        let bounds = unit.and_then(|u| u.bounds).unwrap_or(bounds);
        let inward = |x: f64| unit.map_or(x, |u| u.inward(x));
        let value = inward(typed.value);
        if let Err(out) = bounds.check(value) {
            self.outside(name, &out, unit, typed.other.filter(|x| bounds.contains(inward(*x))));
            return None;
        }
        Some(value)
    }

    /// The fault of what lies outside a row; `other` is how else the digits could be read, inside it.
    pub fn outside(
        &mut self,
        name: &'static str,
        out: &OutOfRange,
        unit: Option<&'static Unit>,
        other: Option<f64>,
    ) {
        let code = match other {
            Some(_) => "two-readings",
            None if out.got > out.bounds.high => "high",
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
            limits: Some([limit(out.bounds.low), limit(out.bounds.high)]),
            got: self.form.text(name).to_string(),
            other: other.map(|x| Shown::plain(x, unit, self.signs)),
        });
    }

    /// What stands in a number field, and in which unit; or the code of what is wrong with it.
    #[allow(clippy::type_complexity)]
    fn typed(
        &self,
        name: &str,
        unit: &In,
    ) -> Result<Option<(Option<&'static Unit>, TypedNumber)>, &'static str> {
        let read = match unit {
            In::Asked(Kind::Length, asked) if self.form.text(asked) == "[ft_i]" => length::feet,
            _ => number::read,
        };
        let typed = match read(self.form.text(name), self.signs) {
            Ok(None) => return Ok(None),
            Ok(Some(typed)) => typed,
            Err(NotNumber::Text) => return Err("not-a-number"),
            Err(NotNumber::Unit) => return Err("unit-in-text"),
        };
        let unit = match unit {
            In::Bare => None,
            In::Fixed(kind, code) => Unit::find(*kind, code),
            In::Asked(kind, _) => Some(Self::unit(*kind, self.form.text(fields::unit_of(name)))?),
            In::Squared(asked) => Some(Self::unit(Kind::Length, self.form.text(asked))?.squared()),
            In::Usual(kind, asked, usual) => {
                let text = self.form.text(asked);
                Some(Self::unit(*kind, if text.is_empty() { usual } else { text })?)
            }
        };
        Ok(Some((unit, typed)))
    }

    /// The unit a number is typed in. A salt reading may be in what its test shows, chloride or conductivity;
    /// the other salt figures are in ppm then.
    pub fn unit(kind: Kind, code: &str) -> Result<&'static Unit, &'static str> {
        let other = match kind {
            Kind::Reading => Unit::find(Kind::Salt, code),
            Kind::Salt => Unit::find(Kind::Reading, code).map(Unit::also_salt),
            _ => None,
        };
        Unit::find(kind, code).or(other).ok_or("no-unit")
    }

    /// What was understood, in its own unit and in the other system.
    fn echo(&mut self, name: &'static str, unit: Option<&'static Unit>, value: f64) {
        let echo = joined(&["echo.", name]);
        let mut typed = unit.map_or(value, |u| u.outward(value));
        if unit.is_some_and(|u| u.kind == Kind::Length) {
            typed = (typed * 1000.0).round() / 1000.0; // Inches are twelfths.
        }
        self.answer.put(&echo, Shown::plain(typed, unit, self.signs));
        if let Some(unit) = unit.filter(|u| u.also != u.code) {
            self.answer.put(&joined(&[&echo, ".also"]), Shown::of(value, unit.also(), self.signs));
        }
        self.answer.say(&echo);
    }

    /// A number field that may be left out.
    pub fn optional<T>(&mut self, name: &'static str, of: fn(f64) -> Option<T>) -> Typed<T> {
        match self.number(name) {
            Some(x) => of(x).map_or(Typed::Invalid, Typed::Valid),
            None if self.is_faulty(name) => Typed::Invalid,
            None => Typed::Missing,
        }
    }

    /// The chosen one of a list; `None` when nothing is chosen or the code is not of the list.
    pub fn choice<T: Copy>(
        &mut self,
        name: &'static str,
        all: &[T],
        code: fn(T) -> &'static str,
    ) -> Option<T> {
        let text = self.form.text(name);
        let found = all.iter().copied().find(|x| code(*x) == text);
        if found.is_none() && !text.is_empty() {
            self.fault(name, "not-listed");
        }
        found
    }

    pub fn quantity<T>(&mut self, name: &'static str, of: fn(f64) -> Result<T, OutOfRange>) -> Option<T> {
        of(self.number(name)?).ok()
    }

    /// A moment, in minutes of elapsed time. Whoever knows the zone hands the minutes over in the form, as
    /// `utc.` and the name; without that the clock is taken to be UTC's.
    pub fn moment(&mut self, name: &'static str) -> Typed<i64> {
        let text = self.form.text(name);
        if text.is_empty() {
            return Typed::Missing;
        }
        let Some(read) = moment::read(text) else {
            self.fault(name, "not-a-moment");
            return Typed::Invalid;
        };
        let handed = self.form.text(&joined(&["utc.", name])).parse().ok();
        Typed::Valid(handed.filter(|minutes| moment::RANGE.contains(minutes)).unwrap_or(read))
    }
    /// A day, in days of the calendar.
    pub fn day(&mut self, name: &'static str) -> Typed<i64> {
        match self.form.text(name) {
            "" => Typed::Missing,
            text => match moment::read_day(text) {
                None => {
                    self.fault(name, "not-a-day");
                    Typed::Invalid
                }
                Some(day) => {
                    self.answer.put(&joined(&["echo.", name]), Shown::day(day));
                    Typed::Valid(day)
                }
            },
        }
    }

    /// A person's own words, given back as they are; are there any?
    pub fn words(&mut self, name: &'static str) -> bool {
        let text = self.form.text(name);
        if !text.is_empty() {
            self.answer.put(&joined(&["echo.", name]), Shown::words(text.into()));
        }
        !text.is_empty()
    }
}
