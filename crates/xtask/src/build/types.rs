//! Which types does the module declare for script authors?

use anyhow::{Result, bail, ensure};
use form::contract::{ASKED, Field, FieldId, Output, State};
use std::collections::BTreeSet;

/// From here on the tool's declarations are about fetching wasm from somewhere; our module has it inside.
const TYPES_END: &str = "export type InitInput =";

/// Lines to leave out: words to other programs, and what an object of wasm has for those who free memory by hand
/// (it is freed without them, and the second is unknown to all but the newest compilers).
const NOT_OURS: [&str; 4] =
    ["/* tslint:disable */", "/* eslint-disable */", "free(): void;", "[Symbol.dispose](): void;"];

/// The declarations of our one module, from those that the tool made of the Rust code.
pub fn of_the_module(made: &str) -> Result<String> {
    let Some((made, _)) = made.split_once(TYPES_END) else {
        bail!("the declarations have no `{TYPES_END}`; does types.rs fit this version of wasm-bindgen?");
    };
    let mut text = String::from("/// <reference lib=\"dom\" />\n");
    for line in made.lines() {
        let again = line.is_empty() && text.ends_with("\n\n");
        if !again && !NOT_OURS.contains(&line.trim()) {
            text.push_str(line);
            text.push('\n');
        }
    }
    text.truncate(text.trim_end().len() + 1);
    for vague in [": any", ": object", ": Object"] {
        ensure!(!text.contains(vague), "something is declared as `{vague}`: give it a type where it crosses");
    }
    text.push_str(&names());
    Ok(text)
}

/// The names of the contract, so that an editor knows them and a misspelled one is told.
fn names() -> String {
    let fields: BTreeSet<_> = Field::ALL.iter().map(|field| of_any_line(field.name())).collect();
    let attempts = ASKED.map(|asked| of_any_line(&FieldId::Attempt(asked).name()));
    let outputs: BTreeSet<_> = Output::ALL.iter().map(|output| of_any_line(output.name())).collect();
    let of_a_line = |name: &str| name.starts_with("log.1.") || name.starts_with("echo.log.1.");
    let other_line =
        |name: &str| name.contains("log.") && name.split('.').any(|part| part.parse::<u8>().is_ok());
    let states: BTreeSet<_> = State::all()
        .map(State::name)
        .filter(|name| of_a_line(name) || !other_line(name))
        .map(|name| of_any_line(&name.replace("log.1.", "log.N.")))
        .collect();
    let union = |names: Vec<String>| names.join("\n    | ");
    let fields = union(fields.into_iter().chain(attempts).collect());
    let outputs = union(outputs.into_iter().chain(["`echo.${string}`".into()]).collect());
    let states = union(states.into_iter().collect());
    format!(
        "\n/** A question, or an attempt at a result. */\nexport type FieldName =\n    | {fields};\n\n\
         /** A result. */\nexport type OutputName =\n    | {outputs};\n\n\
         /** Something that may be so. */\nexport type StateName =\n    | {states};\n"
    )
}

/// As a type: the number of a line of the log is any.
fn of_any_line(name: &str) -> String {
    match name.replacen("log.N.", "log.${number}.", 1) {
        line if line != name => format!("`{line}`"),
        _ => format!("\"{name}\""),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MADE: &str = "/* tslint:disable */\n/* eslint-disable */\n\n\n\nexport interface Answer {\n    \
        states: string[];\n    low?: Shown;\n}\n\nexport class Controller {\n    private constructor();\n    \
        free(): void;\n    [Symbol.dispose](): void;\n    form(): Record<string, string>;\n}\n\n\
        /**\n * Once: a form.\n */\nexport function attach(form: HTMLFormElement): void;\n\n\
        export type InitInput = RequestInfo;\nexport interface InitOutput {\n}\n";

    #[test]
    fn only_what_the_module_has_is_declared() {
        let types = of_the_module(MADE).unwrap();
        assert!(types.starts_with("/// <reference lib=\"dom\" />\n\nexport interface Answer {"), "{types}");
        assert!(
            types.contains("export function attach(form: HTMLFormElement): void;\n\n/** A question"),
            "{types}"
        );
        for name in ["\"pool.volume\"", "`log.${number}.mass.unit`", "\"add.yes\"", "\"gate.ph.wait\""] {
            assert!(types.contains(&format!("| {name}\n")), "{name} in {types}");
        }
        for gone in ["Init", "free()", "dispose", "lint", "\n\n\n"] {
            assert!(!types.contains(gone), "{gone:?} in {types}");
        }
    }

    #[test]
    fn declarations_that_say_nothing_are_refused() {
        assert!(of_the_module(&MADE.replace("InitInput", "Other")).is_err());
        assert!(of_the_module(&MADE.replace("string[]", "any")).is_err());
        assert!(of_the_module(&MADE.replace("Record<string, string>", "object")).is_err());
    }
}
