//! What is the script that tells an author, while a page is opened, what is wrong with it?

use super::WORDS;
use anyhow::{Context, Result};
use form::contract::LINES;
use form::contract::lint::{Known, KnownField, KnownState};
use serde_json::{Map, Value, json};
use std::fs;
use std::path::Path;

/// What it is called in the site.
pub const FILE: &str = "saltwright-check.js";

const SOURCE: &str = include_str!("check.js");
/// What the table takes the place of.
const TABLE: &str = "const KNOWN = null;";

/// Puts it into the site.
pub fn write(site: &Path) -> Result<()> {
    fs::write(site.join(FILE), text()?).with_context(|| format!("{FILE} can't be written"))
}

/// The rules as written by hand, with the table in front of them.
pub fn text() -> Result<String> {
    let (before, behind) =
        SOURCE.split_once(TABLE).with_context(|| format!("check.js has no line {TABLE}"))?;
    Ok(format!("{before}const KNOWN = {};{behind}", table()))
}

fn table() -> Value {
    let known = Known::of_the_contract();
    let field =
        |KnownField { name, unit, codes }: &KnownField| json!({ "name": name, "unit": unit, "codes": codes });
    let state = |KnownState { name, field, code, or }: &KnownState| json!({ "name": name, "field": field, "code": code, "or": or });
    json!({
        "fields": known.fields.iter().map(field).collect::<Vec<_>>(),
        "outputs": known.outputs,
        "states": known.states.iter().map(state).collect::<Vec<_>>(),
        "faults": known.faults,
        "inFault": known.in_fault,
        "lists": known.lists,
        "cells": known.cells,
        "acts": known.acts,
        "marks": known.marks,
        "shapes": known.shapes,
        "units": known.units,
        "gates": known.gates,
        "doses": known.doses,
        "cautions": known.cautions,
        "lines": LINES.end(),
        "words": WORDS.into_iter().map(|(code, words)| (code.into(), words.into())).collect::<Map<String, Value>>(),
    })
}
