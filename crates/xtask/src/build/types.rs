//! Which types does the module declare for script authors?

use anyhow::{Result, bail, ensure};

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
        ensure!(!text.contains(vague), "something is declared as `{vague}`: give it a type in door.rs");
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    const MADE: &str = "/* tslint:disable */\n/* eslint-disable */\n\n\n\nexport interface Answer {\n    \
        states: string[];\n    low?: Shown;\n}\n\nexport class Desk {\n    private constructor();\n    \
        free(): void;\n    [Symbol.dispose](): void;\n    form(): Record<string, string>;\n}\n\n\
        /**\n * Once: a form.\n */\nexport function attach(form: HTMLFormElement): void;\n\n\
        export type InitInput = RequestInfo;\nexport interface InitOutput {\n}\n";

    #[test]
    fn only_what_the_module_has_is_declared() {
        let types = of_the_module(MADE).unwrap();
        assert!(types.starts_with("/// <reference lib=\"dom\" />\n\nexport interface Answer {"), "{types}");
        assert!(types.ends_with("export function attach(form: HTMLFormElement): void;\n"), "{types}");
        for gone in ["Init", "free", "dispose", "lint", "\n\n\n"] {
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
