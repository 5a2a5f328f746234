//! What was typed, in which signs, and in which units are results shown?

use crate::contract::codes::Show;
use crate::contract::units::{self, QuantityKind, Unit};
use crate::contract::{Field, FieldId, FieldType, LINES, OF_A_LINE, PLACES, Scope};
use crate::read::number::{self, Signs};
use crate::text::joined;

/// The flat form: name to text as typed. A name twice: the last counts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Form(pub Vec<(String, String)>);

impl<const N: usize> From<[(&str, &str); N]> for Form {
    fn from(all: [(&str, &str); N]) -> Self {
        Self(all.map(|(name, text)| (name.into(), text.into())).into())
    }
}

/// Begins the name under which a moment is handed over in minutes of UTC.
pub(crate) const UTC: &str = "utc.";

/// The name under which the moment in a field is handed over in minutes of UTC.
#[must_use]
pub fn utc_of(field: &str) -> String {
    joined(&[UTC, field])
}

impl Form {
    /// The text of a field, without white space around it; empty when it is not there.
    #[must_use]
    pub fn text(&self, name: &str) -> &str {
        self.raw(name).trim_ascii()
    }

    /// The text of a field as it was typed.
    #[must_use]
    pub fn raw(&self, name: &str) -> &str {
        self.said(name).unwrap_or_default()
    }

    /// The same; nothing for a name that is not there.
    #[must_use]
    pub fn said(&self, name: &str) -> Option<&str> {
        self.0.iter().rev().find(|(n, _)| n == name).map(|(_, text)| text.as_str())
    }

    /// The page's signs for decimals and groups, handed over in the form by whoever knows its
    /// language.
    #[must_use]
    pub fn signs(&self) -> Signs {
        let first = |field: Field| self.raw(field.name()).chars().next();
        let decimal = first(Field::SignDecimal).filter(|c| number::is_decimal(*c)).unwrap_or('.');
        let group = first(Field::SignGroup).filter(|c| number::is_group(*c) && *c != decimal);
        let grouped_from = if self.text(Field::SignGrouped.name()) == "5" { 5 } else { 4 };
        Signs { grouped_from, ..Signs::new(decimal, group.unwrap_or(if decimal == ',' { '.' } else { ',' })) }
    }

    /// The number of the last line of the log in which anything stands; 0 for none.
    #[must_use]
    pub fn lines_used(&self) -> u8 {
        let mut used = 0;
        for (name, text) in &self.0 {
            if let Some(FieldId::Line(field, line)) = FieldId::find(name)
                && field != Field::LogMassUnit // Of what?
                && !text.trim_ascii().is_empty()
            {
                used = used.max(line);
            }
        }
        used
    }

    /// Says a text under a name.
    pub fn say(&mut self, name: &str, text: &str) {
        self.0.push((name.into(), text.into()));
    }

    /// Takes in another form, behind its own.
    pub fn append(&mut self, mut other: Self) {
        self.0.append(&mut other.0);
    }

    /// Keeps what goes by a wanted name.
    pub fn keep(&mut self, wanted: &dyn Fn(&str) -> bool) {
        self.0.retain(|(name, _)| wanted(name));
    }

    /// Has anything been typed or chosen, beyond what the page itself began with?
    #[must_use]
    pub fn is_blank(&self) -> bool {
        let begun = |name: &str| match FieldId::find(name) {
            Some(FieldId::Field(field) | FieldId::Line(field, _)) => {
                let own = matches!(field.scope(), Scope::Job | Scope::Person);
                !own || matches!(field.kind(), FieldType::Unit(_)) // Of what?
            }
            Some(FieldId::AttemptUnit(_)) => true,
            Some(_) => false,
            None => name.starts_with(UTC),
        };
        self.0.iter().all(|(name, _)| begun(name) || self.text(name).is_empty())
    }
}

/// What was typed, each text at its field's place.
pub struct Texts<'a>(Vec<&'a str>);

impl<'a> Texts<'a> {
    /// Of a form; what is no question has no place here.
    #[must_use]
    pub fn of(form: &'a Form) -> Self {
        let mut all = vec![""; PLACES];
        for (name, text) in &form.0 {
            if let Some(place) = FieldId::find(name).and_then(FieldId::place) {
                all[place] = text.trim_ascii();
            }
        }
        Self(all)
    }

    /// The text of a field, without white space around it; empty when it is not there.
    #[must_use]
    pub fn text(&self, field: impl Into<FieldId>) -> &'a str {
        field.into().place().map_or("", |place| self.0[place])
    }

    /// The number of the last line of the log in which anything stands; 0 for none.
    #[must_use]
    pub fn lines_used(&self) -> u8 {
        let stands = |line: u8| {
            OF_A_LINE
                .iter()
                .any(|field| *field != Field::LogMassUnit && !self.text(field.in_line(line)).is_empty())
        };
        LINES.rev().find(|line| stands(*line)).unwrap_or(0)
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
    /// For liquid chemicals, little and much.
    pub liquid: [&'static Unit; 2],
    /// For salt readings, as their test shows them.
    pub reading: &'static Unit,
    /// For lengths.
    pub length: &'static Unit,
}

impl Units {
    /// As typed where it was typed, otherwise to go with what was; or all of one system.
    pub fn of(form: &Texts) -> Self {
        let typed = |kind, field: Field| Unit::find(kind, form.text(field));
        let known = |kind, code| Unit::find(kind, code).unwrap_or(&units::UNITS[0]);
        let both = |water, mass| (known(QuantityKind::Water, water), known(QuantityKind::Mass, mass));
        let measured = typed(QuantityKind::Length, Field::PoolLengthUnit);
        let mut length = measured.unwrap_or(known(QuantityKind::Length, "m"));
        let (water, mass) = match form.text(Field::Show) {
            show if show == Show::Metric.code() => {
                length = known(QuantityKind::Length, "m");
                both("m3", "kg")
            }
            show if show == Show::Us.code() => {
                length = known(QuantityKind::Length, "[ft_i]");
                both("[gal_us]", "[lb_av]")
            }
            _ => {
                let (water, mass) = (
                    typed(QuantityKind::Water, Field::PoolVolumeUnit),
                    typed(QuantityKind::Mass, Field::BagSizeUnit),
                );
                // By what was typed of the water, else by the tape, else by the bags.
                let american = match (water, measured, mass) {
                    (Some(water), ..) => water.code == "[gal_us]",
                    (None, Some(length), _) => length.code == "[ft_i]",
                    (None, None, mass) => mass.is_some_and(|u| u.code == "[lb_av]"),
                };
                let (w, m) = if american { both("[gal_us]", "[lb_av]") } else { both("m3", "kg") };
                (water.unwrap_or(w), mass.unwrap_or(m))
            }
        };
        let salt =
            typed(QuantityKind::Salt, Field::SaltNowUnit).unwrap_or(known(QuantityKind::Salt, "[ppm]"));
        let american = mass.code == "[lb_av]";
        let (little, much) = if american { ("[foz_us]", "[gal_us]") } else { ("L", "L") };
        let liquid = [known(QuantityKind::Liquid, little), known(QuantityKind::Liquid, much)];
        let usual = |kind, name| typed(kind, name).unwrap_or(known(kind, "mg/L"));
        let alkalinity = usual(QuantityKind::Alkalinity, Field::WaterTaUnit);
        let hardness = usual(QuantityKind::Hardness, Field::WaterChUnit);
        let reading = typed(QuantityKind::Reading, Field::SaltNowUnit).unwrap_or(salt);
        Self { water, mass, salt, alkalinity, hardness, liquid, reading, length }
    }
}
