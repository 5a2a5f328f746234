//! What was typed, in which signs, and in which units are results shown?

use crate::contract::fields::LINES;
use crate::contract::units::{self, Kind, Unit};
use crate::read::number::{self, Signs};

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
        self.raw(name).trim_ascii()
    }

    /// The text of a field as it was typed.
    pub fn raw(&self, name: &str) -> &str {
        self.said(name).unwrap_or_default()
    }

    /// The same; nothing for a name that is not there.
    pub fn said(&self, name: &str) -> Option<&str> {
        self.0.iter().rev().find(|(n, _)| n == name).map(|(_, text)| text.as_str())
    }

    /// The page's signs for decimals and groups, handed over in the form by whoever knows its
    /// language.
    pub fn signs(&self) -> Signs {
        let first = |name| self.raw(name).chars().next();
        let decimal = first("sign.decimal").filter(|c| number::is_decimal(*c)).unwrap_or('.');
        let group = first("sign.group").filter(|c| number::is_group(*c) && *c != decimal);
        let grouped_from = if self.text("sign.grouped") == "5" { 5 } else { 4 };
        Signs { grouped_from, ..Signs::new(decimal, group.unwrap_or(if decimal == ',' { '.' } else { ',' })) }
    }

    /// The number of the last line of the log in which anything stands; 0 for none.
    pub fn lines_used(&self) -> usize {
        let mut used = 0;
        for (name, _) in &self.0 {
            if name.starts_with("log.") && !self.text(name).is_empty() {
                let line = LINES.iter().position(|line| line.names().contains(&name.as_str()));
                used = used.max(line.map_or(0, |at| at + 1));
            }
        }
        used
    }

    /// Has anything been typed or chosen, beyond what the page itself began with?
    pub fn is_blank(&self) -> bool {
        let begun = |n: &str| {
            matches!(n, "lock" | "ask" | "only" | "now" | "view" | "at" | "paper" | "bag.purity" | "show")
                || n.ends_with(".unit") // Of what?
                || n.starts_with("sign.")
                || ["treat.", "level.", "utc.", "ask.", "link.", "give."].iter().any(|begin| n.starts_with(begin))
        };
        self.0.iter().all(|(n, _)| begun(n) || self.text(n).is_empty())
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
    pub fn of(form: &Form) -> Self {
        let typed = |kind, name| Unit::find(kind, form.text(name));
        let known = |kind, code| Unit::find(kind, code).unwrap_or(&units::UNITS[0]);
        let both = |water, mass| (known(Kind::Water, water), known(Kind::Mass, mass));
        let measured = typed(Kind::Length, "pool.length.unit");
        let mut length = measured.unwrap_or(known(Kind::Length, "m"));
        let (water, mass) = match form.text("show") {
            "metric" => {
                length = known(Kind::Length, "m");
                both("m3", "kg")
            }
            "us" => {
                length = known(Kind::Length, "[ft_i]");
                both("[gal_us]", "[lb_av]")
            }
            _ => {
                let (water, mass) =
                    (typed(Kind::Water, "pool.volume.unit"), typed(Kind::Mass, "bag.size.unit"));
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
        let salt = typed(Kind::Salt, "salt.now.unit").unwrap_or(known(Kind::Salt, "[ppm]"));
        let american = mass.code == "[lb_av]";
        let liquid = if american { ["[foz_us]", "[gal_us]"] } else { ["L", "L"] };
        let liquid = liquid.map(|code| known(Kind::Liquid, code));
        let usual = |kind, name| typed(kind, name).unwrap_or(known(kind, "mg/L"));
        let alkalinity = usual(Kind::Alkalinity, "water.ta.unit");
        let hardness = usual(Kind::Hardness, "water.ch.unit");
        let reading = typed(Kind::Reading, "salt.now.unit").unwrap_or(salt);
        Self { water, mass, salt, alkalinity, hardness, liquid, reading, length }
    }
}
