//! Can what stands in one field be used? Its faults and its echo.

use crate::answer::{Answer, Fault, Shown};
use crate::contract::units::{QuantityKind, Unit};
use crate::contract::{FaultCode, Field, FieldId, FieldType, OutputId, State, UnitRule};
use crate::form::{Form, Texts, utc_of};
use crate::read::length;
use crate::read::moment;
use crate::read::number::{self, NotNumber, Signs, Typed as TypedNumber};
use chem::{Bounds, OutOfRange};
use plan::{Typed, limits};

/// Reads fields, and says of each what was understood.
pub struct Reader<'a> {
    /// What was typed.
    pub texts: &'a Texts<'a>,
    /// The same with what is handed over beside it.
    pub form: &'a Form,
    /// The page's signs.
    pub signs: Signs,
    /// What is found wrong, and what was understood.
    pub answer: &'a mut Answer,
}

impl Reader<'_> {
    pub fn text(&self, field: impl Into<FieldId>) -> &str {
        self.texts.text(field)
    }

    pub fn fault(&mut self, field: impl Into<FieldId>, code: FaultCode) {
        let field = field.into();
        let got = self.text(field).to_string();
        self.answer.faults.push(Fault { field, code, limits: None, got, other: None });
    }

    pub fn is_faulty(&self, field: impl Into<FieldId>) -> bool {
        let field = field.into();
        self.answer.faults.iter().any(|fault| fault.field == field)
    }

    /// Is one of these at fault?
    pub fn any_faulty(&self, fields: &[Field]) -> bool {
        fields.iter().any(|field| self.is_faulty(*field))
    }

    /// Is a question whose name begins so at fault?
    pub fn is_faulty_under(&self, begin: &str) -> bool {
        let under = |field: FieldId| field.field().is_some_and(|field| field.name().starts_with(begin));
        self.answer.faults.iter().any(|fault| under(fault.field))
    }

    /// The canonical value of a number field, with an echo of what was understood; `None` when it is empty or at
    /// fault.
    pub fn number(&mut self, field: impl Into<FieldId>) -> Option<f64> {
        let field = field.into();
        let (unit, value) = self.value(field)?;
        self.echo(field, unit, value);
        Some(value)
    }

    /// The same without an echo, and the unit it is typed in.
    pub fn value(&mut self, field: FieldId) -> Option<(Option<&'static Unit>, f64)> {
        if self.text(field).is_empty() {
            return None; // As most fields are: no need to look up what could stand there.
        }
        let FieldType::Number(bounds, rule) = field.field()?.kind() else { return None };
        let (unit, typed) = match self.typed(field, rule) {
            Ok(found) => found?,
            Err(code) => {
                self.fault(field, code);
                return None;
            }
        };
        let value = self.within(field, bounds, unit, typed)?;
        if **bounds == limits::BAGS && value.fract() != 0.0 {
            self.fault(field, FaultCode::NotWhole);
            return None;
        }
        Some((unit, value))
    }

    /// The canonical value of what was typed; `None` and a fault where it lies out of its bounds.
    pub fn within(
        &mut self,
        field: FieldId,
        bounds: &'static Bounds,
        unit: Option<&'static Unit>,
        typed: TypedNumber,
    ) -> Option<f64> {
        let bounds = unit.and_then(|u| u.bounds).unwrap_or(bounds);
        let inward = |x: f64| unit.map_or(x, |u| u.inward(x));
        let value = inward(typed.value);
        if let Err(out) = bounds.check(value) {
            self.outside(field, &out, unit, typed.other.filter(|x| bounds.contains(inward(*x))));
            return None;
        }
        Some(value)
    }

    /// The fault of what lies outside a row; `other` is how else the digits could be read, inside it.
    pub fn outside(
        &mut self,
        field: FieldId,
        out: &OutOfRange,
        unit: Option<&'static Unit>,
        other: Option<f64>,
    ) {
        let code = match other {
            Some(_) => FaultCode::TwoReadings,
            None if out.got > out.bounds.high => FaultCode::High,
            None => FaultCode::Low,
        };
        let limit = |x| {
            unit.map_or(Shown::plain(x, None, self.signs), |u| {
                Shown::plain(u.rounded(u.outward(x)), unit, self.signs)
            })
        };
        self.answer.faults.push(Fault {
            field,
            code,
            limits: Some([limit(out.bounds.low), limit(out.bounds.high)]),
            got: self.text(field).to_string(),
            other: other.map(|x| Shown::plain(x, unit, self.signs)),
        });
    }

    /// What stands in a number field, and in which unit; or what is wrong with it.
    #[allow(clippy::type_complexity)]
    fn typed(
        &self,
        field: FieldId,
        rule: &UnitRule,
    ) -> Result<Option<(Option<&'static Unit>, TypedNumber)>, FaultCode> {
        let asked = field.unit().map_or("", |asked| self.text(asked));
        let read = match rule {
            UnitRule::Asked(QuantityKind::Length, _) if asked == "[ft_i]" => length::feet,
            _ => number::read,
        };
        let typed = match read(self.text(field), self.signs) {
            Ok(None) => return Ok(None),
            Ok(Some(typed)) => typed,
            Err(NotNumber::Text) => return Err(FaultCode::NotANumber),
            Err(NotNumber::Unit) => return Err(FaultCode::UnitInText),
        };
        let unit = match rule {
            UnitRule::Bare => None,
            UnitRule::Fixed(kind, code) => Unit::find(*kind, code),
            UnitRule::Asked(kind, _) => Some(Self::unit(*kind, asked)?),
            UnitRule::Squared(_) => Some(Self::unit(QuantityKind::Length, asked)?.squared()),
            UnitRule::Usual(kind, _, usual) => {
                Some(Self::unit(*kind, if asked.is_empty() { usual } else { asked })?)
            }
        };
        Ok(Some((unit, typed)))
    }

    /// The unit a number is typed in. A salt reading may be in what its test shows, chloride or conductivity;
    /// the other salt figures are in ppm then.
    pub fn unit(kind: QuantityKind, code: &str) -> Result<&'static Unit, FaultCode> {
        let other = match kind {
            QuantityKind::Reading => Unit::find(QuantityKind::Salt, code),
            QuantityKind::Salt => Unit::find(QuantityKind::Reading, code).map(Unit::also_salt),
            _ => None,
        };
        Unit::find(kind, code).or(other).ok_or(FaultCode::NoUnit)
    }

    /// What was understood, in its own unit and in the other system.
    fn echo(&mut self, field: FieldId, unit: Option<&'static Unit>, value: f64) {
        let mut typed = unit.map_or(value, |u| u.outward(value));
        if unit.is_some_and(|u| u.kind == QuantityKind::Length) {
            typed = (typed * 1000.0).round() / 1000.0; // Inches are twelfths.
        }
        self.answer.put(OutputId::Echo(field), Shown::plain(typed, unit, self.signs));
        if let Some(unit) = unit.filter(|u| u.also != u.code) {
            self.answer.put(OutputId::EchoAlso(field), Shown::of(value, unit.also(), self.signs));
        }
        self.understood(field);
    }

    /// Says that what stands in a field was understood.
    pub fn understood(&mut self, field: FieldId) {
        State::echo(field).into_iter().for_each(|state| self.answer.say(state));
    }

    /// A number field that may be left out.
    pub fn optional<T>(&mut self, field: Field, of: fn(f64) -> Option<T>) -> Typed<T> {
        match self.number(field) {
            Some(x) => of(x).map_or(Typed::Invalid, Typed::Valid),
            None if self.is_faulty(field) => Typed::Invalid,
            None => Typed::Missing,
        }
    }

    /// The chosen one of a question's answers, which stand in the order of its codes; `None` when nothing is chosen or
    /// the code is not of the list.
    pub fn choice<T: Copy>(&mut self, field: impl Into<FieldId>, all: &[T]) -> Option<T> {
        all.get(self.chosen(field.into())?).copied()
    }

    fn chosen(&mut self, field: FieldId) -> Option<usize> {
        let text = self.text(field);
        let FieldType::Choice(codes) = field.field()?.kind() else { return None };
        let found = codes.all.iter().position(|code| *code == text);
        if found.is_none() && !text.is_empty() {
            self.fault(field, FaultCode::NotListed);
        }
        found
    }

    pub fn quantity<T>(&mut self, field: Field, of: fn(f64) -> Result<T, OutOfRange>) -> Option<T> {
        of(self.number(field)?).ok()
    }

    /// A moment, in minutes of elapsed time. Whoever knows the zone hands the minutes over in the form; without that
    /// the clock is taken to be UTC's.
    pub fn moment(&mut self, field: impl Into<FieldId>) -> Typed<i64> {
        let field = field.into();
        let text = self.text(field);
        if text.is_empty() {
            return Typed::Missing;
        }
        let Some(read) = moment::read(text) else {
            self.fault(field, FaultCode::NotAMoment);
            return Typed::Invalid;
        };
        let handed = self.form.text(&utc_of(&field.name())).parse().ok();
        Typed::Valid(handed.filter(|minutes| moment::RANGE.contains(minutes)).unwrap_or(read))
    }

    /// A day, in days of the calendar.
    pub fn day(&mut self, field: Field) -> Typed<i64> {
        match self.text(field) {
            "" => Typed::Missing,
            text => match moment::read_day(text) {
                None => {
                    self.fault(field, FaultCode::NotADay);
                    Typed::Invalid
                }
                Some(day) => {
                    self.answer.put(OutputId::Echo(field.into()), Shown::day(day));
                    Typed::Valid(day)
                }
            },
        }
    }

    /// A person's own words, given back as they are; are there any?
    pub fn words(&mut self, field: Field) -> bool {
        let text = self.text(field);
        if !text.is_empty() {
            let words = Shown::words(text.into());
            self.answer.put(OutputId::Echo(field.into()), words);
            return true;
        }
        false
    }
}
