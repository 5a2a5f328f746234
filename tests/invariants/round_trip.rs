//! Do a case and its plan come back from JSON as they went?

use evidence::any_case::case;
use evidence::ask::Ask;
use evidence::draw::Draw;
use plan::log::MOST_ENTRIES;
use plan::readiness::gates::GATES;
use plan::salt::job::JobError;
use plan::{Case, Gate, Method, Plan, Typed, Verdict, plan};

#[test]
fn cases_and_plans_come_back_equal() {
    let mut draw = Draw(8);
    for _ in 0..2_000 {
        let case = case(&mut Ask(&mut draw));
        let text = serde_json::to_string(&case).unwrap();
        assert_eq!(serde_json::from_str::<Case>(&text).unwrap(), case, "{text}");
        let plan = plan(&case);
        let text = serde_json::to_string(&plan).unwrap();
        let back: Plan = serde_json::from_str(&text).unwrap_or_else(|error| panic!("{error}: {text}"));
        assert_eq!(back, plan, "{text}");
    }
}

/// A file names what it knows, by the codes of the form; what it names wrongly or out of its range is refused.
#[test]
fn a_file_names_what_it_knows_and_nothing_else() {
    let case: Case = serde_json::from_str(r#"{"volume": 62.82, "method": "taped"}"#).unwrap();
    assert_eq!((case.method, case.reading), (Some(Method::Taped), Typed::Missing));
    assert_eq!(case.volume.map(|volume| volume.cubic_metres()), Some(62.82));
    for wrong in [
        r#"{"volumes": 62.82}"#,
        r#"{"volume": -1}"#,
        r#"{"method": "Taped"}"#,
        r#"{"run": {"demand": {"Valid": -3}}}"#,
        r#"{"run": {"makes": {"Valid": 0}}}"#,
        r#"{"run": {"hours": {"Valid": 25}}}"#,
        r#"{"season": {"lost": {"Valid": -5}}}"#,
        r#"{"season": {"backwash": {"Valid": -5}}}"#,
        r#"{"season": {"times": {"Valid": 1001}}}"#,
        r#"{"season": {"rain": {"Valid": 13}}}"#,
        r#"{"flow": {"out": {"Valid": 0}}}"#,
        r#"{"flow": {"in_": {"Valid": -1}}}"#,
        r#"{"flow": {"price": {"Valid": -1}}}"#,
        r#"{"ready": {"combined": {"Valid": -1}}}"#,
        r#"{"ready": {"copper": {"Valid": 101}}}"#,
        r#"{"ready": {"iron": {"Valid": -1}}}"#,
        r#"{"bag": {"price": -5}}"#,
        r#"{"band": {"low": 9, "target": 3, "high": 1, "example": false, "limits_ours": false}}"#,
        r#"{"band": {"low": 1, "target": 3, "high": 3, "example": false, "limits_ours": false}}"#,
    ] {
        assert!(serde_json::from_str::<Case>(wrong).is_err(), "{wrong}");
    }
    // Each with its like that is none.
    for right in [
        r#"{"run": {"demand": {"Valid": 3}, "hours": "Missing", "makes": "Invalid"}}"#,
        r#"{"bag": {"price": 5}}"#,
        r#"{"band": {"low": 1, "target": 3, "high": 9, "example": false, "limits_ours": false}}"#,
    ] {
        serde_json::from_str::<Case>(right).unwrap();
    }
}

/// A log has the lines that are there, and room for 24.
#[test]
fn a_log_of_few_lines_is_a_short_list() {
    let line = r#"{"when": 5, "what": {"Dose": 120}}"#;
    let log = |lines: &[&str]| format!(r#"{{"log": {{"Valid": [{}]}}}}"#, lines.join(","));
    let read = |lines: &[&str]| serde_json::from_str::<Case>(&log(lines));
    let case = read(&[line]).unwrap();
    assert!(case.log.valid().unwrap()[0].is_some_and(|entry| entry.when == 5));
    assert!(case.log.valid().unwrap()[1..].iter().all(Option::is_none));
    let text = serde_json::to_string(&case).unwrap();
    assert!(text.contains(r#""log":{"Valid":[{"when":5,"what":{"Dose":120.0}}]}"#), "{text}");
    // A line left free keeps the place of the next.
    let case = read(&["null", line]).unwrap();
    assert!(case.log.valid().unwrap()[1].is_some());
    assert_eq!(serde_json::from_str::<Case>(&serde_json::to_string(&case).unwrap()).unwrap(), case);
    assert!(read(&[line; MOST_ENTRIES]).is_ok() && read(&[line; MOST_ENTRIES + 1]).is_err());
}

/// What is missing, what is wrong and what the gates say stands there by name.
#[test]
fn a_plan_in_a_file_names_its_parts() {
    let mut text = serde_json::to_value(plan(&Case::default())).unwrap();
    let needs = text["needs"].as_array().unwrap();
    assert!(needs.contains(&"volume".into()) && needs.contains(&"purity".into()), "{needs:?}");
    assert_eq!(text["gates"].as_object().unwrap().len(), GATES.len());
    assert_eq!(text["gates"]["ph"], "Unknown");
    assert_eq!(text["salt"]["faults"].as_array().unwrap().len(), 0);
    let read = |text: &serde_json::Value| serde_json::from_str::<Plan>(&text.to_string());
    for (part, wrong) in [
        (&["needs"][..], r#"["volumes"]"#),
        (&["needs"], r#"["volume", "volume"]"#),
        (&["needs"], "3"),
        (&["salt", "faults"], r#"["Bags"]"#),
        (&["gates"], r#"{"ph": "Pass"}"#),
        (&["gates", "phs"], r#""Pass""#),
        (&["gates", "ph"], r#""pass""#),
    ] {
        let mut text = text.clone();
        let place = part.iter().fold(&mut text, |text, name| &mut text[*name]);
        *place = serde_json::from_str(wrong).unwrap();
        assert!(read(&text).is_err(), "{part:?} {wrong}");
    }
    text["salt"]["faults"] = serde_json::json!(["Bag", "Instruments"]);
    text["gates"]["ph"] = "Stop".into();
    let plan = read(&text).unwrap();
    assert!(plan.salt.faults.contains(JobError::Instruments) && !plan.salt.faults.contains(JobError::Dose));
    assert_eq!(plan.gates.at(Gate::Ph), Verdict::Stop);
}
