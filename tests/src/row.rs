//! How is a case held fast? What is typed, and what must be said.

/// A case: its form as in a link, the outputs it must show, the states that must hold (`!`: must not).
pub struct Row {
    /// Shown when it fails.
    pub name: &'static str,
    /// The form, `name=text` a part.
    pub form: &'static [&'static str],
    /// `output=text` a part; `output=–` where nothing may be shown.
    pub shows: &'static [&'static str],
    /// States.
    pub holds: &'static str,
}

/// A balanced water.
pub const BALANCED: &str = "water.ph=7.5 water.ta=110 water.ch=250 water.cya=40";

/// The form of a row, its parts put together.
pub fn form(parts: &[&str]) -> form::Form {
    let pairs = parts.iter().flat_map(|part| part.split(' ')).map(|pair| pair.split_once('=').unwrap());
    form::Form(pairs.map(|(name, text)| (name.to_string(), text.to_string())).collect())
}
