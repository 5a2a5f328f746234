//! What was read of the salt, and what does the log tell?

use crate::answer::Shown;
use crate::contract::codes::LogKind;
use crate::contract::units::{QuantityKind, Unit};
use crate::contract::{Fact, FaultCode, Field, FieldId, LineFact, OF_A_LINE, OutputId, State};
use crate::read::reader::Reader;
use chem::salt::SaltTest;
use chem::{Conductivity, Mass, Quantity, Salinity, Temperature, conductivity};
use plan::log::{Entry, Log, LogEvent, MOST_ENTRIES, Reading};
use plan::{Instrument, Typed, YesNo};

impl Reader<'_> {
    /// A salt reading, whatever its test shows, by that instrument.
    pub fn salt(
        &mut self,
        field: impl Into<FieldId>,
        instrument: Option<Instrument>,
        temperature: Option<Temperature>,
    ) -> Typed<Salinity> {
        let field = field.into();
        let shown = Unit::find(QuantityKind::Reading, self.text(Field::SaltNowUnit));
        let conducts = shown.is_some_and(|unit| unit.bounds.is_some());
        let fits = |i: Instrument| (i.salt_test() == SaltTest::Conductivity) == conducts;
        match self.number(field) {
            None if self.is_faulty(field) => Typed::Invalid,
            None => Typed::Missing,
            Some(_)
                if shown.is_some() && instrument.is_some_and(|i| i != Instrument::Assumed && !fits(i)) =>
            {
                self.fault(field, FaultCode::NotByThis);
                Typed::Invalid
            }
            Some(x) if !conducts => Salinity::from_mg_per_l(x).map_or(Typed::Invalid, Typed::Valid),
            Some(x) => self.conducted(field, x, temperature),
        }
    }

    /// Salt behind a conductivity, and what that is in ppm; not without knowing what the meter does.
    fn conducted(
        &mut self,
        field: FieldId,
        ms_per_cm: f64,
        temperature: Option<Temperature>,
    ) -> Typed<Salinity> {
        let at = match self.text(Field::SaltAtc) {
            yes if yes == YesNo::Yes.code() => Temperature::from_celsius(25.0).ok(),
            no if no == YesNo::No.code() => temperature,
            _ => {
                self.answer.say(State::need(Field::SaltAtc));
                None
            }
        };
        let (Ok(read), Some(at)) = (Conductivity::from_ms_per_cm(ms_per_cm), at) else {
            return Typed::Invalid;
        };
        let ppm = Unit::find(QuantityKind::Salt, "[ppm]");
        let salt = match conductivity::salt_of(read, at) {
            Ok(salt) => salt.anywhere(),
            Err(out) if out.bounds.quantity == Quantity::Temperature => {
                let unit = Unit::find(QuantityKind::Temperature, self.text(Field::WaterTemperatureUnit));
                self.outside(Field::WaterTemperature.into(), &out, unit, None);
                return Typed::Invalid;
            }
            Err(out) => {
                self.outside(field, &out, ppm, None);
                self.answer.say(Fact::OutsideSaltNow);
                return Typed::Invalid;
            }
        };
        if let Some(ppm) = ppm {
            self.answer.put(OutputId::EchoAlso(field), Shown::of(salt.mg_per_l(), ppm, self.signs));
        }
        Typed::Valid(salt)
    }

    /// The log, unless a line of it can't be used: the rest would tell of another pool.
    pub fn log(&mut self, bag: Option<Mass>, temperature: Option<Temperature>) -> Typed<Log> {
        let mut log = [None; MOST_ENTRIES];
        let mut all = Typed::Missing;
        for (place, number) in log.iter_mut().zip(1..=self.texts.lines_used()) {
            match self.line(number, bag, temperature) {
                Typed::Missing => continue,
                Typed::Invalid => {
                    all = Typed::Invalid;
                    self.answer.say(Fact::LogUnfinished);
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

    /// One line; invalid while it is not finished.
    fn line(&mut self, n: u8, bag: Option<Mass>, temperature: Option<Temperature>) -> Typed<Entry> {
        let kind = self.choice(Field::LogKind.in_line(n), LogKind::ALL);
        if kind == Some(LogKind::Ignored) {
            return Typed::Missing;
        }
        let when = self.moment(Field::LogWhen.in_line(n));
        // What the other kind of line asks for is not seen in this one.
        let mass = if kind == Some(LogKind::Test) { Typed::Missing } else { self.put_in(n, bag) };
        let (mut instrument, mut salt, mut again) = (None, Typed::Missing, Typed::Missing);
        if kind != Some(LogKind::Salt) {
            instrument = self.choice(Field::LogMethod.in_line(n), Instrument::ALL);
            salt = self.salt(Field::LogSalt.in_line(n), instrument, temperature);
            again = self.salt(Field::LogRepeat.in_line(n), instrument, temperature);
        }
        let what = match (kind, mass, salt, instrument, again) {
            (Some(LogKind::Salt), Typed::Valid(mass), ..) => Some(LogEvent::Dose(mass)),
            (Some(LogKind::Test), _, Typed::Valid(salt), Some(instrument), again)
                if again != Typed::Invalid =>
            {
                Some(LogEvent::Reading(Reading { salt, again: again.valid(), instrument }))
            }
            _ => None,
        };
        if let Some(kind) = kind {
            self.lacks(n, kind);
        }
        match (what, when) {
            (Some(what), Typed::Valid(when)) => Typed::Valid(Entry { when, what }),
            _ if self.is_empty(n) => Typed::Missing,
            _ => Typed::Invalid,
        }
    }

    /// Does nothing stand in a line? A unit alone is nothing.
    fn is_empty(&self, n: u8) -> bool {
        let asked = OF_A_LINE.into_iter().filter(|field| *field != Field::LogMassUnit);
        asked.map(|field| self.text(field.in_line(n))).all(str::is_empty)
    }

    /// Says what sort of line it is, and what it lacks.
    fn lacks(&mut self, n: u8, kind: LogKind) {
        let salt = kind == LogKind::Salt;
        let missing = |field: Field| self.text(field.in_line(n)).is_empty();
        let facts = [
            (true, if salt { LineFact::Salt } else { LineFact::Test }),
            (true, LineFact::Timed),
            (salt && missing(Field::LogMass), LineFact::NeedsMass),
            (!salt && missing(Field::LogSalt), LineFact::NeedsSalt),
            (!salt && missing(Field::LogMethod), LineFact::NeedsMethod),
            (missing(Field::LogWhen), LineFact::NeedsWhen),
        ];
        for (_, fact) in facts.into_iter().filter(|(holds, _)| *holds) {
            self.answer.say(State::line(fact, n));
        }
    }

    /// What went in, by weight or in bags.
    fn put_in(&mut self, n: u8, bag: Option<Mass>) -> Typed<Mass> {
        let field = Field::LogMass.in_line(n);
        let in_bags = self.text(Field::LogMassUnit.in_line(n)) == "{bag}";
        match self.number(field) {
            None if self.is_faulty(field) => Typed::Invalid,
            None => Typed::Missing,
            Some(bags) if in_bags => bag.map_or(Typed::Invalid, |bag| {
                let Ok(mass) = bag.checked_mul(bags) else { return Typed::Invalid };
                if let Some(unit) = Unit::find(QuantityKind::Mass, self.text(Field::BagSizeUnit)) {
                    let weighs = Shown::of(mass.kilograms(), unit, self.signs);
                    self.answer.put(OutputId::EchoAlso(field), weighs);
                }
                Typed::Valid(mass)
            }),
            Some(kg) => Mass::from_kilograms(kg).map_or(Typed::Invalid, Typed::Valid),
        }
    }
}
