//! What does Lighthouse say of the pages, as of a telephone with a slow line?

use crate::serve;
use crate::shell::Steps;
use crate::{build, package, setup};
use anyhow::{Context, Result, bail, ensure};
use serde_json::Value;
use std::fs;
use std::path::Path;
use std::process::Command;

/// To the digit; it needs Node from 18.20 on.
pub const TOOL: &str = r#"{ "private": true, "dependencies": { "lighthouse": "12.8.2" } }"#;
const PAGES: [&str; 3] = ["index.html", "index.fr.html", "first-salt.html"];
const CATEGORIES: [&str; 4] = ["performance", "accessibility", "best-practices", "seo"];
/// As often as it takes for one bad moment of the machine not to count.
const TIMES: usize = 3;

/// What scores below 1 and counts, and why it stays.
const STAYS: [(&str, &str); 3] = [
    (
        "robots-txt",
        "it is asked for from within the page, whose policy lets nobody ask; without the policy, not judged",
    ),
    (
        "first-contentful-paint",
        "all is one file, which has to run from disk: on this line its bytes take a second",
    ),
    ("largest-contentful-paint", "as the first: there is but one paint"),
];

/// One run's report.
struct Report(Value);

/// Measures each page, prints scores and findings, and fails where one is neither 100 nor accounted for.
pub fn run() -> Result<()> {
    let mut steps = Steps::default();
    steps.take("node and npm", setup::node)?;
    let site = build::build(&mut steps)?;
    let tools = steps.take("lighthouse", || package::tools("lighthouse", TOOL))?;
    let server = serve::start(&site.folder, 0)?;
    let mut faults = Vec::new();
    for page in PAGES {
        let mut runs = Vec::new();
        for _ in 0..TIMES {
            runs.push(one(&tools, &format!("{}{page}", server.address()))?);
        }
        runs.sort_by_key(|run| run.score("performance"));
        let median = &runs[TIMES / 2];
        let all: Vec<_> = runs.iter().map(|run| run.score("performance").to_string()).collect();
        // Lighthouse's own stopwatch says what the machine was good for just then; an idle one of today has over 1,500.
        let power = &median.0["environment"]["benchmarkIndex"];
        println!("\n{page}: performance {}; power {power}, load {}", all.join(" "), load());
        for category in CATEGORIES {
            println!("  {category:<20}{:>4}", median.score(category));
        }
        for line in median.below() {
            println!("  {line}");
        }
        faults.extend(median.unaccounted().into_iter().map(|fault| format!("{page}: {fault}")));
    }
    if faults.is_empty() { Ok(()) } else { bail!("below 100, and not accounted for:\n{}", faults.join("\n")) }
}

fn one(tools: &Path, address: &str) -> Result<Report> {
    let chromium = setup::chromium().context("no Chromium on the path")?;
    let file = tools.join("report.json");
    let mut command = Command::new(tools.join("lighthouse"));
    command.args([address, "--quiet", "--no-enable-error-reporting", "--output=json"]);
    command.arg(format!("--output-path={}", file.display())).arg(format!("--chrome-flags={}", setup::QUIET));
    let done = command.env("CHROME_PATH", chromium).output().context("cannot start Lighthouse")?;
    ensure!(done.status.success(), "Lighthouse ended so:\n{}", String::from_utf8_lossy(&done.stderr));
    let report: Value = serde_json::from_slice(&fs::read(&file)?)?;
    ensure!(report["runtimeError"].is_null(), "Lighthouse did not load the page: {}", report["runtimeError"]);
    Ok(Report(report))
}

impl Report {
    /// In hundredths; what was not judged has none.
    fn score(&self, category: &str) -> u32 {
        let score = self.0["categories"][category]["score"].as_f64().unwrap_or_default();
        (score * 100.0).round() as u32
    }

    /// Every finding that scored below 1, with what it weighs in its category.
    fn findings(&self) -> Vec<(&str, f64, &str, &Value)> {
        let mut found = Vec::new();
        for category in CATEGORIES {
            for audit in self.0["categories"][category]["auditRefs"].as_array().into_iter().flatten() {
                let name = audit["id"].as_str().unwrap_or_default();
                let result = &self.0["audits"][name];
                if result["score"].as_f64().is_some_and(|score| score < 1.0) {
                    found.push((category, audit["weight"].as_f64().unwrap_or_default(), name, result));
                }
            }
        }
        found
    }

    fn below(&self) -> Vec<String> {
        let line = |(category, weight, name, result): (&str, f64, &str, &Value)| {
            let shown = result["displayValue"].as_str().unwrap_or_default();
            let score = result["score"].as_f64().unwrap_or_default();
            let stays = STAYS.iter().find(|(known, _)| *known == name);
            let why = stays.map_or(String::new(), |(_, why)| format!("; stays: {why}"));
            format!("{category:<20}{name:<32} score {score:.2}, weighs {weight}  {shown}{why}")
        };
        self.findings().into_iter().map(line).collect()
    }

    /// What keeps a category from 100 without a reason for it.
    fn unaccounted(&self) -> Vec<String> {
        let below = |category: &str| self.score(category) < 100;
        let counts = |(category, weight, name, _): &(&str, f64, &str, &Value)| {
            *weight > 0.0 && below(category) && !STAYS.iter().any(|(known, _)| known == name)
        };
        let told = |(category, _, name, _)| format!("{category}: {name}");
        let mut all: Vec<_> = self.findings().into_iter().filter(counts).map(told).collect();
        // A category that could not be judged has no findings either.
        all.extend(CATEGORIES.into_iter().filter(|name| self.score(name) == 0).map(String::from));
        all
    }
}

/// How much the machine has to do besides, where it says so.
fn load() -> String {
    let told = fs::read_to_string("/proc/loadavg").unwrap_or_default();
    told.split(' ').next().filter(|text| !text.is_empty()).unwrap_or("not known").into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn report(performance: f64, weight: u32) -> Report {
        let category = |score: f64, audits: Value| json!({ "score": score, "auditRefs": audits });
        Report(json!({
            "categories": {
                "performance": category(performance, json!([{ "id": "late", "weight": weight }, { "id": "fine", "weight": 1 }])),
                "accessibility": category(1.0, json!([])),
                "best-practices": category(1.0, json!([])),
                "seo": category(1.0, json!([])),
            },
            "audits": { "late": { "score": 0.5, "displayValue": "9 s" }, "fine": { "score": 1 } },
        }))
    }

    #[test]
    fn a_finding_that_counts_is_told_and_one_that_does_not_is_only_shown() {
        assert_eq!(report(0.98, 1).unaccounted(), ["performance: late"]);
        assert_eq!(report(1.0, 0).unaccounted(), [""; 0]);
        assert_eq!(report(1.0, 0).below().len(), 1);
        assert!(Report(json!({})).unaccounted().len() == CATEGORIES.len(), "what was not judged is no 100");
    }
}
