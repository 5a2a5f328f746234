//! How do templates become pages of plain HTML?
//!
//! `www/pages` has a template a page; what they share lies in `www/parts`. A component's markup is one macro there,
//! and what it has to know of a question it gets from the contract: an unknown name, a code without words and words
//! without a code each end the build, by name.

use super::Page;
use super::contract;
use super::start;
use crate::shell;
use anyhow::{Context, Result};
use minijinja::syntax::SyntaxConfig;
use minijinja::value::{Kwargs, Value, ValueKind};
use minijinja::{Environment, Error, ErrorKind, UndefinedBehavior, context};
use std::fs;
use std::path::Path;

/// Every page of `www/pages`, by its name in the site.
pub fn pages(www: &Path) -> Result<Vec<Page>> {
    let environment = environment(www);
    let mut pages = Vec::new();
    for path in shell::files_and_folders(&www.join("pages"))? {
        let name = path.file_name().context("a page has a name")?.to_string_lossy().into_owned();
        let page = expanded(&environment, &fs::read_to_string(&path)?, &name)?;
        pages.push((name, start::hidden(&page)));
    }
    Ok(pages)
}

fn expanded(environment: &Environment, template: &str, name: &str) -> Result<String> {
    let page = environment.render_named_str(name, template, context! { page => name });
    page.map_err(refused)
}

fn environment(www: &Path) -> Environment<'static> {
    let mut environment = Environment::new();
    let www = www.to_owned();
    environment.set_loader(move |name| match fs::read_to_string(www.join(name)) {
        Ok(text) => Ok(Some(text)),
        Err(error) => Err(refusal(format!("www/{name}: {error}"))),
    });
    let mut syntax = SyntaxConfig::builder();
    syntax.trim_blocks(true).lstrip_blocks(true).keep_trailing_newline(true);
    environment.set_syntax(syntax.build().expect("the usual marks"));
    environment.set_undefined_behavior(UndefinedBehavior::SemiStrict);
    // All words are an author's own HTML.
    environment.set_auto_escape_callback(|_| minijinja::AutoEscape::None);
    environment.add_function("question", question);
    environment.add_function("answers", answers);
    environment.add_function("units_of", units_of);
    environment.add_function("units_asked_by", units_asked_by);
    environment.add_function("units", units);
    environment.add_function("faults", faults);
    environment
}

/// What is wrong, and in which line of which part: the innermost of the errors knows best.
fn refused(error: Error) -> anyhow::Error {
    let mut causes: Vec<String> = Vec::new();
    let mut next: Option<&dyn std::error::Error> = Some(&error);
    while let Some(error) = next {
        causes.insert(0, error.to_string());
        next = error.source();
    }
    anyhow::anyhow!("{}\n{error:#}", causes.join("\n  in: "))
}

fn refusal(text: String) -> Error {
    Error::new(ErrorKind::InvalidOperation, text)
}

fn asked(name: &str) -> Result<contract::Question, Error> {
    contract::question(name).ok_or_else(|| refusal(format!("{name}: the contract has no such question")))
}

/// What the markup of a question hangs on.
fn question(name: String) -> Result<Value, Error> {
    let question = asked(&name)?;
    Ok(context! {
        kind => question.kind,
        measures => question.measures,
        asked_by => question.asked_by,
        unit => question.unit,
        also => question.also,
        need => contract::need(&name).unwrap_or_default(),
    })
}

/// The answers to a question, each with its words.
fn answers(name: String, words: Value) -> Result<Vec<Value>, Error> {
    let question = asked(&name)?;
    if question.codes.is_empty() {
        return Err(refusal(format!("{name} has no codes to choose among")));
    }
    paired(&name, question.codes, &words)
}

/// The units that may be chosen for a question, each with its words; `only` names them in another order.
fn units_of(name: String, words: Value, kwargs: Kwargs) -> Result<Vec<Value>, Error> {
    let only: Vec<String> = kwargs.get("only")?;
    kwargs.assert_all_used()?;
    chosen(&name, &asked(&name)?.units, &words, Some(only).filter(|only| !only.is_empty()))
}

/// The same for a question about a unit alone.
fn units_asked_by(name: String, words: Value) -> Result<Vec<Value>, Error> {
    chosen(&name, &contract::units_asked_by(&name), &words, None)
}

fn chosen(name: &str, codes: &[&str], words: &Value, only: Option<Vec<String>>) -> Result<Vec<Value>, Error> {
    if codes.is_empty() {
        return Err(refusal(format!("{name} has no units to choose among")));
    }
    let only = only.unwrap_or_else(|| codes.iter().map(|code| code.to_string()).collect());
    if let Some(code) = only.iter().find(|code| !codes.contains(&code.as_str())) {
        return Err(refusal(format!("{name}: `{code}` is no unit of it")));
    }
    if let Some(code) = codes.iter().find(|code| !only.iter().any(|only| only == *code)) {
        return Err(refusal(format!("{name}: the unit `{code}` is not offered")));
    }
    only.iter().map(|code| pair(name, code, words)).collect()
}

/// All units, each with its words, in the order of the words.
fn units(words: Value) -> Result<Vec<Value>, Error> {
    paired("units", &contract::units(), &words)
}

/// What may be wrong with the answer to a question, each with its words.
fn faults(name: String, words: Value) -> Result<Vec<Value>, Error> {
    let mut pairs = Vec::new();
    for code in words.try_iter()? {
        if !contract::is_fault(&format!("{name}:{code}")) {
            return Err(refusal(format!("{name}: `{code}` is no fault of the contract")));
        }
        pairs.push(pair(&name, &code.to_string(), &words)?);
    }
    Ok(pairs)
}

/// Codes with their words, in the order of the words: none may be missing and none unknown.
fn paired(name: &str, codes: &[&str], words: &Value) -> Result<Vec<Value>, Error> {
    if words.kind() != ValueKind::Map {
        return Err(refusal(format!(
            "{name}: words must stand beside their codes, as {{\"code\": \"words\"}}"
        )));
    }
    let given: Vec<String> = words.try_iter()?.map(|code| code.to_string()).collect();
    if let Some(code) = given.iter().find(|code| !codes.contains(&code.as_str())) {
        return Err(refusal(format!("{name}: `{code}` is no code of it")));
    }
    if let Some(code) = codes.iter().find(|code| !given.iter().any(|given| given == *code)) {
        return Err(refusal(format!("{name}: the code `{code}` has no words")));
    }
    given.iter().map(|code| pair(name, code, words)).collect()
}

fn pair(name: &str, code: &str, words: &Value) -> Result<Value, Error> {
    let word = words.get_item(&Value::from(code))?;
    if word.is_undefined() {
        return Err(refusal(format!("{name}: the code `{code}` has no words")));
    }
    Ok(Value::from(vec![Value::from(code), word]))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn www() -> std::path::PathBuf {
        shell::root().join("www")
    }

    /// A page with this call of a macro.
    fn of(call: &str) -> Result<String> {
        let template =
            format!("{{% from \"parts/macros.html\" import choice, field, select %}}\n{{{{ {call} }}}}\n");
        expanded(&environment(&www()), &template, "test.html")
    }

    fn refused(call: &str) -> String {
        of(call).unwrap_err().to_string()
    }

    #[test]
    fn every_page_expands() {
        let pages = pages(&www()).unwrap();
        let names: Vec<_> = pages.iter().map(|(name, _)| name.as_str()).collect();
        assert_eq!(names, ["first-salt.html", "index.html"]);
        for (name, page) in pages {
            assert!(page.starts_with("<!DOCTYPE html>") && page.ends_with("</html>\n"), "{name}");
            assert!(!page.contains("{{") && !page.contains("{%"), "{name}");
        }
    }

    #[test]
    fn a_field_has_all_that_belongs_to_it() {
        let row = of(r#"field("pool.volume", "Water", hint="Filled.", need=true)"#).unwrap();
        for part in [
            r#"<label for="pool-volume">Water</label>"#,
            r#"<input id="pool-volume" name="pool.volume" type="text" inputmode="decimal""#,
            r#"aria-describedby="pool-volume-h pool-volume-e pool-volume-f""#,
            r#"<select id="pool-volume-unit" name="pool.volume.unit" aria-label="Unit: water""#,
            r#"<option value="[gal_us]">US gallons</option>"#,
            r#"<span data-when="need.pool-volume">needed</span>"#,
            r#"<output name="echo.pool.volume.also">"#,
            r#"<p class="hint" id="pool-volume-h">Filled.</p>"#,
            r#"<p class="fault" id="pool-volume-f" data-fault="pool.volume"></p>"#,
        ] {
            assert!(row.contains(part), "{part} is not in {row}");
        }
    }

    #[test]
    fn an_unknown_question_is_refused_by_its_name() {
        for call in [r#"field("pool.volum", "Water")"#, r#"choice("pool.volum", "Water", {"a": "b"})"#] {
            let error = refused(call);
            assert!(error.contains("pool.volum: the contract has no such question"), "{error}");
        }
    }

    #[test]
    fn a_code_without_words_is_refused_by_its_name() {
        let error = refused(r#"choice("pool.operator", "Operator", {"yes": "yes"})"#);
        assert!(error.contains("pool.operator: the code `no` has no words"), "{error}");
    }

    #[test]
    fn words_without_a_code_are_refused_by_name() {
        let error =
            refused(r#"select("pool.operator", "Operator", {"yes": "yes", "no": "no", "perhaps": "?"})"#);
        assert!(error.contains("pool.operator: `perhaps` is no code of it"), "{error}");
    }

    #[test]
    fn a_unit_left_out_or_unknown_is_refused_by_its_name() {
        let error = refused(r#"field("bag.size", "Bag", units=["kg"])"#);
        assert!(error.contains("bag.size: the unit `[lb_av]` is not offered"), "{error}");
        let error = refused(r#"field("bag.size", "Bag", units=["kg", "[lb_av]", "t"])"#);
        assert!(error.contains("bag.size: `t` is no unit of it"), "{error}");
    }

    #[test]
    fn an_unknown_fault_is_refused_by_its_name() {
        let error = refused(r#"field("bag.size", "Bag", faults={"heavy": "Too heavy."})"#);
        assert!(error.contains("bag.size: `heavy` is no fault of the contract"), "{error}");
    }
}
