//! What does a row ask, and does our answer to it agree in every column?

use chem::{Mass, Purity, Salinity, Volume, bounds};
use plan::RiskLevels;
use plan::log::*;
use plan::policy::Since;
use plan::salt::code::Code;
use plan::salt::course::*;
use plan::salt::decide::{Decision, decide};
use plan::salt::dosing::Dosing;
use plan::salt::job::{Handled, Job, JobError};
use plan::{Band, History, Instrument, Method};
use std::collections::BTreeMap;
use std::fmt;

/// What was compared so far.
#[derive(Default)]
pub struct Checked {
    /// Each of our numbers.
    pub values: Vec<f64>,
    /// What lies beyond its tolerance.
    pub beyond: Vec<String>,
    rows: usize,
    cells: usize,
    /// Visits whose wait no log of moments can tell: a day since a dose that is two days old.
    waits: usize,
    largest: BTreeMap<Kind, f64>,
}

/// How a column is held: bags to the bag, probabilities to 1e-6, what remains to 1e-6 of itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Kind {
    Bags,
    Probability,
    Figure,
}

/// A row, its cells found by the name in the header.
struct Row<'a> {
    file: &'a str,
    cells: BTreeMap<String, String>,
}

impl Row<'_> {
    fn text(&self, name: &str) -> &str {
        self.cells.get(name).unwrap_or_else(|| panic!("{}: no column {name}", self.file))
    }

    fn number(&self, name: &str) -> Option<f64> {
        let text = self.text(name);
        (!text.is_empty()).then(|| text.parse().unwrap_or_else(|_| panic!("{name} is {text:?}, no number")))
    }

    fn sure(&self, name: &str) -> f64 {
        self.number(name).unwrap_or_else(|| panic!("{}, {}: {name} is empty", self.file, self.text("id")))
    }

    fn choice<T: Copy>(&self, name: &str, all: &[T], codes: &[&str]) -> T {
        let at = codes.iter().position(|code| *code == self.text(name));
        all[at.unwrap_or_else(|| panic!("{name} is {:?}", self.text(name)))]
    }

    /// The job and the readings at each visit, or the first fault, found by the types or by the job.
    fn read(&self) -> Result<(Job, [Option<Reading>; 3]), JobError> {
        let mut faults = Vec::new();
        let mut take = |name: &str, fault: JobError, check: &dyn Fn(f64) -> bool| {
            let x = self.number(name);
            faults.extend(x.filter(|x| !check(*x)).map(|_| fault));
            x.filter(|x| check(*x))
        };
        let kg = |x: f64| Mass::from_kilograms(x).unwrap_or(Mass::NONE);
        let salt = |x: Option<f64>| Salinity::from_mg_per_l(x.unwrap_or(0.0)).unwrap();
        let is_salt = |x: f64| Salinity::from_mg_per_l(x).is_ok();
        let volume = take("V0_m3", JobError::Volume, &|x| bounds::POOL.check(x).is_ok());
        let purity = take("purity", JobError::Purity, &|x| Purity::from_ratio(x).is_ok());
        let [low, target, high] =
            ["low", "ideal", "high"].map(|name| salt(take(name, JobError::Band, &is_salt)));
        let mut reading = |first: &str, again: &str, by: &str| {
            let [salt, again] = [first, again].map(|name| take(name, JobError::Reading, &is_salt));
            Some(Reading {
                salt: Salinity::from_mg_per_l(salt?).unwrap(),
                again: again.map(|x| Salinity::from_mg_per_l(x).unwrap()),
                instrument: self.choice(by, Instrument::ALL, Instrument::CODES),
            })
        };
        let readings = [["r0a", "r0b", "instr1"], ["r1a", "r1b", "instr2"], ["r2a", "r2b", "instr3"]]
            .map(|[first, again, by]| reading(first, again, by));
        let job = Job {
            volume: Volume::from_cubic_metres(volume.unwrap_or(1.0)).unwrap(),
            method: self.choice("method", Method::ALL, Method::CODES),
            doubt: None,
            bag: kg(self.sure("bag_kg")),
            purity: Purity::from_ratio(purity.unwrap_or(1.0)).unwrap(),
            in_hand: 0,
            band: Band { low, target, high, example: false, limits_ours: false },
            history: self.choice("baseline_class", History::ALL, History::CODES),
            fill: self.number("fill_ppm").map(|x| salt(Some(x))),
            handled: Handled::Parts(plan::policy::PartOfBag {
                first: self.sure("unit1"),
                later: self.sure("unit2"),
            }),
            levels: RiskLevels {
                over: self.sure("alpha"),
                low: self.sure("beta"),
                cap: self.sure("cap"),
                ..RiskLevels::default()
            },
        };
        faults.extend(job.faults(&course(None, &[None; MOST_ENTRIES])).iter());
        faults.into_iter().min().map_or(Ok((job, readings)), Err)
    }
}

impl Checked {
    /// Compares a file.
    pub fn check(&mut self, file: &str, text: &str) {
        let mut lines = text.lines();
        assert!(lines.next().unwrap_or("").starts_with("# source: "), "{file}: where is it from?");
        let head = cells(lines.next().unwrap_or(""));
        for line in lines {
            let row = Row { file, cells: head.iter().cloned().zip(cells(line)).collect() };
            self.row(&row);
            self.rows += 1;
        }
    }

    fn row(&mut self, row: &Row) {
        let (job, readings) = match row.read() {
            Ok(read) => read,
            Err(fault) => return self.word(row, "status1", name_of(fault)),
        };
        let baseline = readings[0].map(|reading| Baseline { when: None, reading });
        let mut log: Log = [None; MOST_ENTRIES];
        let mut place = 0;
        let mut clock = 0;
        let mut told = self.decision(row, &job, &course(baseline, &log), 1);
        let mut dilution = told.dilution;
        for (visit, reading, wait, put_in) in
            [(2, readings[1], "wait", "n1_override"), (3, readings[2], "wait2", "n2_override")]
        {
            let Some(reading) = reading else { break };
            let bags = row.number(put_in).unwrap_or(told.stage.map_or(0.0, |stage| stage.bags));
            self.number(row, &format!("n{}_used", visit - 1), Kind::Bags, Some(bags));
            let (minutes, since) = match row.text(wait) {
                "48h" => (2_880, Since::TwoDays),
                "24h" => (1_440, Since::Day),
                _ => (60, Since::Early),
            };
            let mut enter = |when: i64, what: LogEvent| {
                log[place] = Some(Entry { when, what });
                place += 1;
            };
            if bags > 0.0 {
                enter(clock, LogEvent::Dose(job.bag.checked_mul(bags).unwrap()));
            }
            clock += minutes;
            enter(clock, LogEvent::Reading(reading));
            let mut course = course(baseline, &log);
            if let Some(last) = course.visits.iter_mut().flatten().last() {
                self.waits += usize::from(last.since != since && last.latest > Mass::NONE);
                last.since = since;
            }
            told = self.decision(row, &job, &course, visit);
            dilution = told.dilution.or(dilution);
        }
        self.number(row, "drain_f", Kind::Figure, dilution.map(|d| d.share));
        // The file tells a first pass of a third at most, and the exchange that does the same.
        let step = dilution.map(|d| d.share.min(1.0 / 3.0));
        self.number(row, "drain_step", Kind::Figure, step);
        self.number(row, "drain_turnover", Kind::Figure, step.map(|step| -(-step).ln_1p()));
    }

    /// Compares the columns of a visit.
    fn decision(&mut self, row: &Row, job: &Job, course: &Course, visit: usize) -> Decision {
        let decision = decide(job, course).expect("a row without a fault");
        let at = |name: &str| name.replace('#', &visit.to_string());
        self.word(row, &at("status#"), code(decision.code));
        let Decision { known, guess, stage, buy, .. } = decision;
        let known = known.or(guess);
        if visit == 1 {
            let target = job.band.target.mg_per_l();
            let estimate = known.map(|known| known.estimate);
            self.number(row, "plain_bags", Kind::Figure, Some(decision.plain));
            self.number(row, "need_mean", Kind::Figure, estimate.map(|e| e.mean_bags(target)));
            for (name, sure) in [("05", 0.05), ("50", 0.5), ("75", 0.75), ("90", 0.9), ("95", 0.95)] {
                let bags = estimate.map(|e| e.bags(target, sure));
                self.number(row, &format!("need_q{name}"), Kind::Bags, bags);
            }
            let range = buy.map(|buy| buy.range.map(f64::from));
            self.number(row, "need_q05", Kind::Bags, range.map(|range| range[0]));
            self.number(row, "need_q95", Kind::Bags, range.map(|range| range[1]));
            self.number(row, "C0_mean", Kind::Figure, known.map(|known| known.salt.mean));
            self.number(row, "C0_sd", Kind::Figure, known.map(|known| known.salt.std_dev));
            self.number(row, "buy", Kind::Bags, buy.map(|buy| buy.bags.into()));
            self.number(row, "sealed", Kind::Bags, buy.and_then(|buy| buy.sealed).map(f64::from));
        } else {
            let z = decision.visits.iter().flatten().last().and_then(|judged| judged.z);
            self.number(row, &at("z#"), Kind::Figure, z);
            self.number(row, &at("V#_mean"), Kind::Figure, known.map(|known| known.volume.mean));
            self.number(row, &at("V#_sd"), Kind::Figure, known.map(|known| known.volume.std_dev));
            self.number(row, &at("C#_mean"), Kind::Figure, known.map(|known| known.salt.mean));
            self.number(row, &at("C#_sd"), Kind::Figure, known.map(|known| known.salt.std_dev));
            self.number(row, &at("need#_mean"), Kind::Figure, known.map(|known| known.need));
        }
        self.number(row, &at("stage#"), Kind::Bags, stage.map(|stage| stage.bags));
        let part = stage.and_then(|stage| stage.part).filter(|_| decision.code == Code::BagTooCoarse);
        self.number(row, &at("part#"), Kind::Bags, part);
        self.number(row, &at("p_over#"), Kind::Probability, stage.map(|stage| stage.over));
        self.number(row, &at("p_low#"), Kind::Probability, stage.map(|stage| stage.low));
        if visit == 2 {
            self.dosing(row, decision.dosing);
        }
        decision
    }

    fn dosing(&mut self, row: &Row, dosing: Option<Dosing>) {
        let (status, numbers) = match dosing {
            None => ("", [None; 4]),
            Some(Dosing::NoRise) => ("NO_RISE", [Some(f64::NAN); 4]),
            Some(Dosing::Told { weak, volume, low, high }) => {
                let high = high.unwrap_or(f64::INFINITY); // As the file says it.
                (if weak { "WEAK" } else { "OK" }, [volume.mean, volume.std_dev, low, high].map(Some))
            }
        };
        self.word(row, "tracer_status", status);
        for (name, number) in ["V", "sd", "lo", "hi"].into_iter().zip(numbers) {
            self.number(row, &format!("tracer_{name}"), Kind::Figure, number);
        }
    }

    fn word(&mut self, row: &Row, column: &str, ours: &str) {
        self.cells += 1;
        let theirs = row.text(column);
        if ours != theirs {
            self.differs(row, column, ours, theirs);
        }
    }

    fn number(&mut self, row: &Row, column: &str, kind: Kind, ours: Option<f64>) {
        self.cells += 1;
        self.values.extend(ours);
        let theirs = row.number(column);
        let off = match (ours, theirs) {
            (None, None) => return,
            (Some(ours), Some(theirs)) if ours == theirs || ours.is_nan() && theirs.is_nan() => 0.0,
            // In parts of the tolerance, so that one number tells how near it is to failing.
            (Some(ours), Some(theirs)) => {
                (ours - theirs).abs()
                    / match kind {
                        Kind::Bags => 1e-9,
                        Kind::Probability => 1e-6,
                        Kind::Figure => (1e-6 * theirs.abs()).max(1e-9),
                    }
            }
            _ => f64::INFINITY,
        };
        if off.is_nan() || off > 1.0 {
            self.differs(row, column, &format!("{ours:?}"), &format!("{theirs:?}"));
        }
        let largest = self.largest.entry(kind).or_default();
        *largest = largest.max(off);
    }

    fn differs(&mut self, row: &Row, column: &str, ours: &str, theirs: &str) {
        let (file, id) = (row.file, row.text("id"));
        self.beyond.push(format!("{file} row {id}, {column}: ours {ours}, theirs {theirs}"));
    }
}

impl fmt::Display for Checked {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        write!(
            f,
            "{} rows, {} cells, largest differences in parts of the tolerance:",
            self.rows, self.cells
        )?;
        for (kind, largest) in &self.largest {
            write!(f, " {kind:?} {largest:.1e}")?;
        }
        write!(f, "; {} waits that no log can tell", self.waits)
    }
}

fn name_of(fault: JobError) -> &'static str {
    match fault {
        JobError::Volume => "ERR_VOLUME",
        JobError::Bag => "ERR_BAG",
        JobError::Purity => "ERR_PURITY",
        JobError::Band => "ERR_BAND",
        JobError::Reading => "ERR_READING",
        _ => "a fault that the rows know nothing of",
    }
}

fn code(code: Code) -> &'static str {
    match code {
        Code::NeedBaseline => "NEED_BASELINE",
        Code::RepeatDiffers => "REPEAT_DIFFERS",
        Code::WaitLonger => "WAIT_LONGER",
        Code::ReadsTooLow => "READS_TOO_LOW",
        Code::ReadsTooHigh => "READS_TOO_HIGH",
        Code::VolumeImplausible => "VOLUME_IMPLAUSIBLE",
        Code::TooSalty => "TOO_SALTY",
        Code::AddAndRetest => "ADD_AND_RETEST",
        Code::AddAndFinish => "ADD_AND_FINISH",
        Code::StopInBand => "STOP_IN_BAND",
        Code::StopNearHigh => "STOP_NEAR_HIGH",
        Code::NoMore => "NO_MORE",
        Code::BagTooCoarse => "BAG_TOO_COARSE",
    }
}

/// The cells of a line; one in quotes may hold commas.
fn cells(line: &str) -> Vec<String> {
    let mut quoted = false;
    let fields = line.split(|c| {
        quoted ^= c == '"';
        c == ',' && !quoted
    });
    fields.map(|cell| cell.trim_matches('"').to_string()).collect()
}
