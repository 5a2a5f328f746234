//! Do whole cases come out as they must, from what is typed to what is shown?

use evidence::rows;
use form::answer;

#[test]
fn every_case_says_what_it_must() {
    let mut wrong = Vec::new();
    for row in rows::all() {
        let answer = answer(&rows::form(row.form));
        for pair in row.shows.iter().flat_map(|part| part.split(' ')) {
            let (output, text) = pair.split_once('=').unwrap();
            // A row is parted at spaces.
            let ours = answer.text(output).unwrap_or("–").replace(' ', "_");
            if ours != text {
                wrong.push(format!("{}: {output} shows {ours}, must be {text}", row.name));
            }
        }
        for state in row.holds.split_whitespace() {
            let (must, state) = state.strip_prefix('!').map_or((true, state), |state| (false, state));
            if answer.holds(state) != must {
                wrong.push(format!("{}: {state} {}", row.name, if must { "does not hold" } else { "holds" }));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn faults_name_the_field_the_code_and_the_limits_in_the_unit_typed() {
    for (name, form, field, code, limits) in [
        ("letters", "pool.volume=big pool.volume.unit=m3", "pool.volume", "not-a-number", None),
        ("a unit", "salt.now=400ppm salt.now.unit=[ppm]", "salt.now", "unit-in-text", None),
        ("no unit", "pool.volume=16596", "pool.volume", "no-unit", None),
        (
            "a fridge",
            "water.temperature=30 water.temperature.unit=[degF]",
            "water.temperature",
            "low",
            Some(["32", "122"]),
        ),
        ("a lake", "pool.volume=90000 pool.volume.unit=m3", "pool.volume", "high", Some(["0.2", "20,000"])),
        ("half a bag", "bag.on-hand=1.5", "bag.on-hand", "not-whole", None),
        ("acid", "water.ph=1", "water.ph", "low", Some(["3", "11"])),
        (
            "a meter in a hot tub",
            "salt.now=5 salt.now.unit=mS/cm salt.method=meter salt.atc=no water.temperature=45 water.temperature.unit=Cel",
            "water.temperature",
            "high",
            Some(["0", "42"]),
        ),
        (
            "a meter in brine",
            "salt.now=70 salt.now.unit=mS/cm salt.method=meter salt.atc=no water.temperature=5 water.temperature.unit=Cel",
            "salt.now",
            "high",
            Some(["0", "40,000"]),
        ),
        ("a grouping slip", "water.ph=7,400", "water.ph", "two-readings", Some(["3", "11"])),
        ("an odd code", "salt.method=guess", "salt.method", "not-listed", None),
        (
            "low above target",
            "salt.target=3000 salt.low=3100 salt.now.unit=[ppm]",
            "salt.low",
            "not-below",
            None,
        ),
        (
            "high below target",
            "salt.target=3000 salt.high=2900 salt.now.unit=[ppm]",
            "salt.high",
            "not-above",
            None,
        ),
    ] {
        let answer = answer(&rows::form(&[form]));
        let [fault] = &answer.faults[..] else { panic!("{name}: {:?}", answer.faults) };
        assert_eq!((fault.field.name().as_str(), fault.code.name()), (field, code), "{name}");
        let ours = fault.limits.as_ref().map(|both| both.each_ref().map(|shown| shown.text.as_str()));
        assert_eq!(ours, limits, "{name}");
    }
}

#[test]
fn showing_in_another_system_changes_no_meaning() {
    let typed = [
        "pool.volume=16596 pool.volume.unit=[gal_us] salt.now=400 salt.now.unit=[ppm] salt.target=3200",
        "bag.size=40 bag.size.unit=[lb_av] bag.purity=99.4 pool.method=taped salt.method=meter",
    ];
    for (show, mass, unit) in
        [("as-typed", "390.1", "[lb_av]"), ("us", "390.1", "[lb_av]"), ("metric", "177", "kg")]
    {
        let mut form = rows::form(&typed);
        form.0.push(("show".into(), show.into()));
        let answer = answer(&form);
        let shown = answer.output("basic.mass").unwrap();
        assert_eq!((shown.text.as_str(), shown.unit), (mass, Some(unit)), "{show}");
        assert_eq!(answer.text("echo.bag.size"), Some("40"), "{show}");
        assert_eq!(answer.text("stage.bags"), Some("6"), "{show}");
    }
}

/// The steps before the salt: which, how much in all, how much at first, the pH then.
///
/// Amounts by hand: 20 mg/L of cyanuric acid in 62.82 m³ is 1.256 kg, 2.77 lb; 30 mg/L of hardness by
/// calcium chloride of 77 % is 2.71 kg, 5.98 lb. The pH to within what two printed figures of the trade's
/// own arithmetic allow: 7.4 and no acid; 534 g of soda ash per 10,000 gal for 7.2 to 7.5, so 141 g in
/// 10 m³, of which 12 g a cubic metre at the first go would be more, so three quarters.
#[test]
fn the_steps_before_the_salt_come_out_as_by_hand() {
    for (row, steps) in [
        (
            "the demo's first test",
            &[("treat.cya", "2.77", "2.77", "7.42"), ("treat.calcium", "5.98", "5.98", "7.42")][..],
        ),
        ("goals for pH up", &[("treat.carbonate", "0.14", "0.11", "7.50")][..]),
    ] {
        let row = rows::all().find(|r| r.name.starts_with(row)).unwrap();
        let answer = answer(&rows::form(row.form));
        let (_, lines) =
            answer.rows.iter().find(|(list, _)| *list == form::contract::List::Treatment).unwrap();
        let cell = |line: &form::answer::Line, name: &str| {
            line.cells.iter().find(|(output, _)| output.name() == name).unwrap().1.text.clone()
        };
        let ours: Vec<_> = lines
            .iter()
            .map(|l| (l.state.unwrap().name(), cell(l, "whole"), cell(l, "first"), cell(l, "then-ph")))
            .collect();
        let theirs: Vec<_> = steps
            .iter()
            .map(|s| (s.0.to_string(), s.1.to_string(), s.2.to_string(), s.3.to_string()))
            .collect();
        assert_eq!(ours, theirs, "{}", row.name);
    }
}
