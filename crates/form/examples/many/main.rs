//! What is to be done at each of many pools? A list of pools in, a list of plans out.
//!
//! ```text
//! cargo run --release --example many -p saltwright-form -- pools.csv > plans.csv
//! cargo run --release --example many -p saltwright-form -- --sample 1000 > pools.csv
//! ```
//!
//! The first row of the list has the names of the contract, each other row is a pool. What is read goes on at once to
//! all cores and out again in the same order, so memory stays the same however long the list is. A row that can't be
//! read, and a field that can't be used, is told on stderr by the number that a spreadsheet gives the row; then the exit
//! code is 1. A field that can't be used counts for nothing, as on the page: its pool has a line all the same.

mod results;
mod sample;
mod stream;
#[cfg(test)]
mod tests;

use results::{As, Results};
use std::fs::File;
use std::io::{self, BufWriter, Write};
use std::process::ExitCode;

const USAGE: &str = "many POOLS.csv [--json] [--results NAME,NAME …]   plans, to stdout
many --sample [COUNT]                             so many made-up pools, 1,000 if not said

NAME is a result (buy.bags), a state, or the beginning of states (do.*): those that hold are told.
POOLS.csv is - for stdin. Exit code: 0; 1 where a row is at fault; 2 where nothing could be done.";

/// What the command line asks for.
enum Asked {
    Plans { pools: String, form: As, results: Results },
    Sample(u32),
}

fn asked(mut args: impl Iterator<Item = String>) -> Result<Asked, String> {
    let (mut pools, mut form, mut results) = (None, As::Csv, Results::usual());
    while let Some(arg) = args.next() {
        match arg.as_str() {
            "--sample" => {
                let count = args.next().map_or(Ok(1_000), |count| count.parse());
                return count.map(Asked::Sample).map_err(|_| "--sample takes a count of pools".into());
            }
            "--json" => form = As::Json,
            "--results" => {
                let names = args.next().ok_or("--results takes names, between commas")?;
                results = Results::of(&names)?;
            }
            _ if pools.is_none() && (arg == "-" || !arg.starts_with('-')) => pools = Some(arg),
            _ => return Err(format!("{arg}: not understood\n\n{USAGE}")),
        }
    }
    Ok(Asked::Plans { pools: pools.ok_or(USAGE)?, form, results })
}

fn run() -> Result<bool, String> {
    let mut out = BufWriter::new(io::stdout().lock());
    let all_well = match asked(std::env::args().skip(1))? {
        Asked::Sample(count) => sample::write(count, &mut out).map(|()| true),
        Asked::Plans { pools, form, results } if pools == "-" => {
            stream::plans(io::stdin(), form, &results, &mut out, &mut io::stderr())
        }
        Asked::Plans { pools, form, results } => {
            let file = File::open(&pools).map_err(|error| format!("{pools}: {error}"))?;
            stream::plans(file, form, &results, &mut out, &mut io::stderr())
        }
    };
    let told = all_well.and_then(|all_well| out.flush().map(|()| all_well));
    told.map_err(|error| error.to_string())
}

fn main() -> ExitCode {
    match run() {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::from(1),
        Err(error) => {
            eprintln!("{error}");
            ExitCode::from(2)
        }
    }
}
