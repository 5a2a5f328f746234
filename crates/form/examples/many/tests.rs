//! Does each pool come out in its order, and each bad row by its number?

use crate::results::{As, Results};
use crate::{sample, stream};
use saltwright_form::contract::{Fact, FaultCode, Field, Output};
use saltwright_form::{Form, answer};

/// Plans, what is told on the side, and whether all rows are all right.
fn plans(pools: &str, form: As, results: &Results) -> (String, String, bool) {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let all_well = stream::plans(pools.as_bytes(), form, results, &mut out, &mut err).unwrap();
    (String::from_utf8(out).unwrap(), String::from_utf8(err).unwrap(), all_well)
}

fn pools(count: u32) -> String {
    let mut pools = Vec::new();
    sample::write(count, &mut pools).unwrap();
    String::from_utf8(pools).unwrap()
}

#[test]
fn every_pool_has_the_plan_that_it_has_alone_and_in_its_order() {
    let pools = pools(700);
    let results = Results::of(&[Output::StageMass.name(), Fact::AddYes.name()].join(",")).unwrap();
    let (table, told, all_well) = plans(&pools, As::Csv, &results);
    assert!(all_well && told.is_empty(), "{told}");
    let mut asked = csv::Reader::from_reader(pools.as_bytes());
    let names = asked.headers().unwrap().clone();
    let mut table = csv::Reader::from_reader(table.as_bytes());
    let mut rows = table.records();
    let mut stages = 0;
    for (row, pool) in (2..).zip(asked.records()) {
        let pool = pool.unwrap();
        let form = Form(names.iter().zip(&pool).map(|(name, text)| (name.into(), text.into())).collect());
        let answer = answer(&form);
        let plan = rows.next().unwrap().unwrap();
        assert_eq!(plan[0], row.to_string());
        assert_eq!(&plan[1], answer.shown(Output::StageMass).map_or("", |shown| &shown.text), "{form:?}");
        assert_eq!(!plan[3].is_empty(), answer.is(Fact::AddYes));
        stages += u32::from(!plan[1].is_empty());
    }
    assert!(rows.next().is_none());
    assert!(stages > 350, "{stages} of them have a stage");
}

#[test]
fn the_sample_is_always_the_same() {
    assert_eq!(pools(50), pools(50));
    assert!(pools(60).starts_with(&pools(50)));
}

#[test]
fn bad_rows_are_told_by_their_number_and_the_others_go_on() {
    let [volume, unit] = [Field::PoolVolume, Field::PoolVolumeUnit].map(Field::name);
    let pools = format!("{volume},{unit},wooden\n50,m3,x\n50,m3\n\"5,,0\",m3,\n75,m3,y\n");
    let used = Results::of(Output::UsedVolume.name()).unwrap();
    let (table, told, all_well) = plans(&pools, As::Csv, &used);
    assert!(!all_well);
    let code = FaultCode::NotANumber.name();
    let expected = [
        "column wooden: no field of that name; it counts for nothing".into(),
        "row 3: 2 cells, where the first row has 3".into(),
        format!("row 4: {volume}: {code}, where \"5,,0\" is typed"),
    ];
    assert_eq!(told.lines().collect::<Vec<_>>(), expected);
    let rows: Vec<_> = table.lines().skip(1).collect();
    assert_eq!(rows, ["2,50,m3", "4,,", "5,75,m3"]);
}

#[test]
fn a_line_of_json_is_a_pool() {
    let (lines, _, all_well) = plans(&pools(300), As::Json, &Results::usual());
    assert!(all_well);
    for (row, line) in (2..).zip(lines.lines()) {
        let plan: serde_json::Value = serde_json::from_str(line).unwrap();
        assert_eq!(plan["row"], row);
    }
    assert_eq!(lines.lines().count(), 300);
}

#[test]
fn no_pool_is_no_plan() {
    let (table, told, all_well) = plans("", As::Csv, &Results::usual());
    assert_eq!((table.lines().count(), told.as_str(), all_well), (1, "", true));
    assert_eq!(plans(&pools(0), As::Json, &Results::usual()), (String::new(), String::new(), true));
}

#[test]
fn an_unknown_result_is_refused() {
    assert!(Results::of("no.such").is_err());
    assert!(Results::of("*").is_err());
}
