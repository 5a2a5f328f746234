//! What do the tests share? Compiled once; the tests lie beside it, in rooms by the question they answer.
//!
//! | Room | Question |
//! |---|---|
//! | `published` | Do formulas and decisions say what others published, natively and as wasm? |
//! | `model` | What becomes of many pools if people do as they are told? |
//! | `cases` | Do whole cases come out as they must? |
//! | `thresholds` | Does a judgement turn where its limit says? |
//! | `invariants` | What holds whatever the water, the case or the text? |
//! | `contract` | Do code, table of names and built pages agree, and is nothing typed ever lost? |
//! | `browser` | Does the built page do in a browser what a person needs of it? |
//!
//! Without features this library knows nothing but the chemistry: `tests/mutants` builds it thousands of times over.
//! `cases` brings plan and form, `pages` a parser of HTML.

#[cfg(feature = "cases")]
pub mod any_case;
pub mod ask;
pub mod draw;
#[cfg(feature = "cases")]
pub mod everything;
pub mod finite;
pub mod named;
pub mod quantities;
pub mod questions;
#[cfg(feature = "cases")]
pub mod row;
#[cfg(feature = "cases")]
pub mod rows;
#[cfg(all(feature = "pages", not(target_family = "wasm")))]
pub mod site;
pub mod texts;
pub mod vectors;
