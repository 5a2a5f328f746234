//! Which verbs does `cargo xtask` know?

mod build;
mod check;
mod package;
mod prove;
mod reference;
mod serve;
mod setup;
mod shell;
mod test;
mod words;

use anyhow::{Context, Result, bail};
use std::process::ExitCode;

const HELP: &str = "\
cargo xtask build             the site, in target/site
cargo xtask pages             the pages in plain HTML, without style, script and wasm, in target/pages
cargo xtask serve [--port N]  build, then serve it on this machine only
cargo xtask names             the reference for authors, www/names.md, from the table of names
cargo xtask words             the messages of the English pages, brought into www/words/*.po
cargo xtask check-page FILE   names, units, states and cautions in a page that you write
cargo xtask package           build, then a package for npm: target/saltwright-VERSION.tgz
cargo xtask test              every check there is; the first failure ends it
cargo xtask prove package         the package, installed, bundled and type-checked, as `test` does it
cargo xtask prove vectors         what the general libraries say, beside the stored vectors
cargo xtask prove fuzz [SECONDS]  any bytes against chemistry, forms and all that comes from outside, 600 s each
cargo xtask prove mutants [K/N]   changed chemistry or plan: do the checks notice? shard K of N
cargo xtask prove panics          the chemistry's solver links only if it cannot panic
cargo xtask prove simulation      200,000 made-up pools: who passes the high limit, and how often
cargo xtask prove bench           ns for an index, natively, as wasm and in PHREEQC
cargo xtask prove engines [PART]  the tests of the page, or those with PART in their name, in three engines
cargo xtask prove access          axe-core in every view, language and look of the page
cargo xtask prove speed           ms to the first answer and from key to paint, on a slow line and processor
cargo xtask prove soak            a day, 1,000,000 answers, 10,000 saves: does memory stay flat? 30 min
cargo xtask prove lighthouse      its four scores of three pages, as on a telephone with a slow line
cargo xtask prove supply          what comes from outside is allowed, and two clean builds are the same";

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match act(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error:#}");
            ExitCode::FAILURE
        }
    }
}

fn act(words: &[&str]) -> Result<()> {
    match words {
        ["build"] => build::build(&mut shell::Steps::default()).map(drop),
        ["pages"] => build::pages(&mut shell::Steps::default()).map(drop),
        ["serve"] => serve::serve(serve::PORT),
        ["serve", "--port", port] => serve::serve(port.parse().context("--port")?),
        ["names"] => reference::write(),
        ["words"] => words::words(),
        ["check-page", file] => check::page::check(file),
        ["package"] => package::package(&mut shell::Steps::default()).map(drop),
        ["test"] => test::test(),
        ["prove", what @ ..] => prove::prove(what),
        // Cargo calls this one, with a compiled test and cargo's own arguments behind it.
        [test::RUNNER, ..] => wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(words),
        [] | ["help" | "--help"] => {
            println!("{HELP}");
            Ok(())
        }
        _ => bail!("no such verb\n{HELP}"),
    }
}
