//! Do a case and its plan come back from JSON as they went?

#[path = "sweep/cases.rs"]
mod cases;
#[allow(dead_code)] // The sweep asks them; here only cases are drawn.
#[path = "sweep/questions.rs"]
mod questions;

use cases::{Draw, case};
use plan::{Case, Method, Plan, Typed, plan};
use questions::ask::Ask;

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
    for wrong in [r#"{"volumes": 62.82}"#, r#"{"volume": -1}"#, r#"{"method": "Taped"}"#] {
        assert!(serde_json::from_str::<Case>(wrong).is_err(), "{wrong}");
    }
}
