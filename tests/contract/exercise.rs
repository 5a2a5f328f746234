//! Does question mode hold back what it must, and mark attempts rightly? Does a numbered exercise stay what it is?

use evidence::named;
use evidence::rows;
use form::contract::ASKED;
use form::exercise::variant::value;
use form::read::number::Signs;
use form::{Answer, Form, answer};

/// The demo of the page: 16,596 US gallons, 400 to 3,200 ppm, bags of 40 lb. By hand: to rise 2,800; pure
/// 16,596 × 2,800 × 0.0000083454 = 387.8 lb; of these bags 390.1 lb, 9.75 bags; first stage 6 bags, 2,122 ppm.
fn demo(more: &[(&str, &str)]) -> Form {
    let demo = rows::all().find(|row| row.name == "the demo in gallons and pounds").unwrap();
    let mut form = rows::form(demo.form);
    form.0.extend(more.iter().map(|(name, text)| (name.to_string(), text.to_string())));
    form
}

fn marks(answer: &Answer) -> String {
    let states = named::states(answer);
    states.iter().filter_map(|state| state.strip_prefix("try.")).collect::<Vec<_>>().join(" ")
}

#[test]
fn an_attempt_is_marked_once_it_is_checked() {
    for (attempts, marked, shown) in [
        // Not checked: nothing is marked, nothing shown.
        (&[("try.basic.mass", "390.1")][..], "basic-mass.open", false),
        (&[("try.basic.mass", "390.1"), ("ask.check", "yes")], "basic-mass.right", true),
        (&[("try.basic.mass", "390.14"), ("ask.check", "yes")], "basic-mass.right", true),
        // A tenth of a pound is printed: half of it is right, ten times that is near.
        (&[("try.basic.mass", "390.5"), ("ask.check", "yes")], "basic-mass.near first.basic-mass", false),
        (&[("try.basic.mass", "391"), ("ask.check", "yes")], "basic-mass.off first.basic-mass", false),
        (&[("try.basic.mass", ""), ("ask.check", "yes")], "basic-mass.open", false),
        // Within two percent, if the author says so: 382.3 to 397.9.
        (
            &[("try.basic.mass", "383"), ("try.basic.mass.within", "2"), ("ask.check", "yes")],
            "basic-mass.right",
            true,
        ),
        (
            &[("try.basic.mass", "382"), ("try.basic.mass.within", "2"), ("ask.check", "yes")],
            "basic-mass.near first.basic-mass",
            false,
        ),
        // In kilograms: 390.14 lb × 0.45359237 = 176.96 kg.
        (
            &[("try.basic.mass", "176.96"), ("try.basic.mass.unit", "kg"), ("ask.check", "yes")],
            "basic-mass.right",
            true,
        ),
        (
            &[("try.basic.mass", "390.1"), ("try.basic.mass.unit", "kg"), ("ask.check", "yes")],
            "basic-mass.off first.basic-mass",
            false,
        ),
        (
            &[("try.basic.mass", "1"), ("ask.check", "yes"), ("ask.reveal", "yes")],
            "basic-mass.off first.basic-mass",
            true,
        ),
    ] {
        let answer = answer(&demo(&[&[("ask", "basic.mass")], attempts].concat()));
        assert_eq!(marks(&answer), marked, "{attempts:?}");
        assert_eq!(answer.text("basic.mass").is_some(), shown, "{attempts:?}");
        assert_eq!(answer.holds("held"), !shown, "{attempts:?}");
        assert_eq!(
            answer.text("basic.mass").is_some(),
            answer.text("buy.bags").is_some(),
            "what follows goes with it"
        );
    }
}

#[test]
fn the_first_step_that_differs_is_named() {
    let ask = ("ask", "basic.rise, basic.pure, basic.mass, basic.bags");
    let steps = |rise, pure, mass, bags| {
        let tried = [
            ("try.basic.rise", rise),
            ("try.basic.pure", pure),
            ("try.basic.mass", mass),
            ("try.basic.bags", bags),
        ];
        answer(&demo(&[&[ask, ("ask.check", "yes")], &tried[..]].concat()))
    };
    let of =
        |answer: &Answer| named::states(answer).into_iter().find(|state| state.starts_with("try.first."));
    assert_eq!(of(&steps("2,800", "387.8", "390.1", "9.75")), None);
    assert_eq!(of(&steps("2,800", "387.8", "385.5", "9.64")).as_deref(), Some("try.first.basic-mass"));
    assert_eq!(of(&steps("3200", "443.2", "445.9", "11.1")).as_deref(), Some("try.first.basic-rise"));
    assert!(steps("2,800", "387.8", "385.5", "9.64").holds("tried"));
    assert!(!steps("2,800", "", "385.5", "9.64").holds("tried"), "one step is still to be tried");
    assert!(!steps("2,800", "387.8", "390.1", "9.75").holds("held"), "all are right");
}

#[test]
fn an_attempt_that_is_no_number_is_a_fault() {
    let answer = answer(&demo(&[("ask", "basic.mass"), ("try.basic.mass", "lots"), ("ask.check", "yes")]));
    let fault = &answer.faults[0];
    assert_eq!((fault.field.name().as_str(), fault.code.name()), ("try.basic.mass", "not-a-number"));
    assert_eq!(marks(&answer), "basic-mass.open");
}

/// All that is shown, in rows too.
fn shown_in(answer: &Answer) -> impl Iterator<Item = (String, &form::Shown)> {
    named::outputs(answer).into_iter().chain(named::in_lines(answer))
}

/// Whatever is asked, over all cases: no other result shows the same number in the same measure.
#[test]
fn what_is_asked_stands_nowhere_else() {
    let mut compared = 0;
    for row in rows::all() {
        let form = rows::form(row.form);
        let open = answer(&form);
        for asked in ASKED {
            let Some((hidden, unit)) = open.shown(asked).and_then(|shown| shown.number) else {
                continue;
            };
            let kind = unit.map(|unit| unit.kind);
            let mut form = form.clone();
            form.0.push(("ask".into(), asked.name().into()));
            let held = answer(&form);
            assert!(held.shown(asked).is_none(), "{}: {} is shown", row.name, asked.name());
            // A figure of one or two digits is met anywhere.
            let digits = open.text(asked.name()).unwrap().chars().filter(char::is_ascii_digit).count();
            if digits < 3 {
                continue;
            }
            for (name, shown) in shown_in(&held).filter(|(name, _)| !given(name)) {
                let Some((number, _)) = shown.number.filter(|(_, unit)| unit.map(|unit| unit.kind) == kind)
                else {
                    continue;
                };
                compared += 1;
                let same = (number - hidden).abs() <= 1e-6 * hidden.abs();
                assert!(!same, "{}: {} is to be found, and {name} shows it", row.name, asked.name());
            }
        }
    }
    assert!(compared > 500, "{compared}");
}

/// What the reader has typed, and what it was taken for; what is in is the log’s, and the season
/// is counted from the target.
fn given(name: &str) -> bool {
    ["echo.", "season.", "in."].iter().any(|begin| name.starts_with(begin))
        || ["used.target", "used.low", "used.high", "basic.from"].contains(&name)
}

#[test]
fn nothing_that_is_not_asked_is_held_back() {
    for row in rows::all() {
        let form = rows::form(row.form);
        let mut asked = form.clone();
        asked.0.push(("ask".into(), "index.now".into()));
        let (open, held) = (answer(&form), answer(&asked));
        let of_the_salt = |name: &str| name.starts_with("basic.") || name.starts_with("buy.");
        for (name, shown) in named::outputs(&open).into_iter().filter(|(name, _)| of_the_salt(name)) {
            assert_eq!(held.output(&name), Some(shown), "{}: {name}", row.name);
        }
    }
}

/// The figures of an exercise's number are a promise to everybody who has it on paper. Held from the first edition;
/// what they are is our choice.
#[test]
fn number_seven_is_always_the_same() {
    let figures = |number: u32| {
        [
            ("salt.now", "200 900 50"),
            ("pool.volume", "40 90 2.5"),
            ("salt.target", "3000 4000 100"),
            ("salt.method", "meter drops lab"),
        ]
        .map(|(field, range)| value(number, field, range, Signs::default()).unwrap())
        .join(" ")
    };
    let all: Vec<_> = [1, 2, 7, 30, 9_999].map(figures).to_vec();
    assert_eq!(all, SEVEN);
}

const SEVEN: [&str; 5] = [
    "550 90.0 3800 lab",
    "250 40.0 3000 meter",
    "400 65.0 3600 drops",
    "450 55.0 3700 lab",
    "200 57.5 3900 lab",
];

/// Every figure lies in its range, on its steps, reads back as itself in every language; all of them come up, none
/// of them out of proportion.
#[test]
fn figures_lie_in_their_ranges_and_none_is_rare() {
    for (decimal, group) in [('.', ','), (',', '.'), (',', ' '), ('.', '’')] {
        let signs = Signs::new(decimal, group);
        let mut seen = [0; 15];
        for number in 1..=3_000 {
            let text = value(number, "salt.now", "2.5 9.5 0.5", signs).unwrap();
            let read = form::read::number::read(&text, signs).unwrap().unwrap();
            assert_eq!(read.other, None, "{text} reads in one way only");
            let step = (read.value - 2.5) / 0.5;
            assert!(step.fract() == 0.0 && (0.0..=14.0).contains(&step), "{text}");
            seen[step as usize] += 1;
        }
        assert!(seen.iter().all(|count| (120..=280).contains(count)), "{seen:?}");
    }
    // More steps than can be counted.
    assert!(value(7, "salt.now", "0 999999999999999 0.0000000000000001", Signs::default()).is_some());
    for wrong in ["5", "5 1 1", "1 5 0", "1 5 -1", "1 2 x", ""] {
        assert_eq!(value(7, "salt.now", wrong, Signs::default()), None, "{wrong}");
    }
    for wrong in ["", "0", "-1", "1.5", "x", "10000", "99999999999"] {
        assert_eq!(form::exercise::variant::read(wrong), None, "{wrong}");
    }
}
