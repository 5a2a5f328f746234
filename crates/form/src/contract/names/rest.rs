//! Which lists, faults, gates, acts, units, marks and terms are there?

use super::{Name, name};

/// Lists: `data-each`.
#[rustfmt::skip]
pub const ROWS: &[Name] = &[
    name("passes", "", "Passes of draining and refilling, at most the first 12, in order"),
    name("treatment", "", "Steps before the salt, in the order in which they are done"),
    name("steps", "", "What is to be done when, in order of time, without what has gone by"),
    name("visits", "", "Salt readings, in order of time"),
    name("gates", "", "All gates and what each says, in the order of the work"),
    name("jobs", "", "Jobs kept on this device, the one kept last first"),
    name("answers", "", "Answers to the exercises of the first numbers; its cells are all outputs by their own names, and `variant`"),
];

/// Outputs inside a row, as `list/output`.
#[rustfmt::skip]
pub const CELLS: &[Name] = &[
    name("passes/pass", "", "Number of the pass"),
    name("passes/share", "", "Share of the pool in this pass"),
    name("passes/volume", "", "Water in this pass"),
    name("passes/level", "", "Salt, hardness or stabiliser after this pass, whichever decides"),
    name("treatment/first", "", "First dose, to be put in at one go; missing where air comes first"),
    name("treatment/begun-ph", "", "pH after the first dose, before any air"),
    name("treatment/begun-ta", "", "Total alkalinity after the first dose"),
    name("treatment/wait", "", "Hours to wait at least before the test"),
    name("treatment/whole", "", "All of it, by the model"),
    name("treatment/doses", "", "How many such doses all of it is, at least"),
    name("treatment/then-ph", "", "pH with all of it in"),
    name("treatment/then-ta", "", "Total alkalinity with all of it in"),
    name("treatment/then-ch", "", "Calcium hardness with all of it in"),
    name("treatment/then-cya", "", "Stabiliser with all of it in, mg/L"),
    name("treatment/then-index", "", "Saturation index with all of it in"),
    name("treatment/then-salted", "", "Saturation index with all of it and the salt in, the pH left free"),
    name("steps/when", "", "From when the step may be done"),
    name("steps/until", "", "Until when it is best done"),
    name("visits/when", "", "When it was read"),
    name("visits/put-in", "", "Salt put in since the reading before; missing where none"),
    name("visits/read", "", "What was read, as salt"),
    name("gates/gate", "", "Which gate: its code stands as the unit"),
    name("jobs/called", "", "Name given to the job; missing where none"),
    name("jobs/saved", "", "When the job was kept"),
    name("jobs/job", "", "Code of the job"),
    name("answers/variant", "", "Number of the exercise"),
];

/// States that hold in one row alone.
#[rustfmt::skip]
pub const LINES: &[Name] = &[
    name("treat.chlorine", "", "Step before the salt: liquid chlorine"),
    name("treat.bicarbonate", "", "Step before the salt: sodium bicarbonate"),
    name("treat.acid-air", "", "Step before the salt: acid against alkalinity, a dose a day, with air between"),
    name("treat.cyanuric", "", "Step before the salt: cyanuric acid (stabiliser)"),
    name("treat.calcium", "", "Step before the salt: calcium chloride"),
    name("treat.acid", "", "Step before the salt: acid for the pH"),
    name("treat.carbonate", "", "Step before the salt: soda ash for the pH"),
    name("step.stage", "", "Step of the schedule: put in this stage"),
    name("step.brush", "", "Step of the schedule: brush, and look for grains"),
    name("step.read", "", "Step of the schedule: read the salt"),
    name("step.power", "", "Step of the schedule: switch the generator on, not before"),
    name("step.test", "", "Step of the schedule: test chlorine and pH"),
    name("step.week", "", "Step of the schedule: a week on, alkalinity, combined chlorine and salt too"),
    name("step.month", "", "Step of the schedule: a month on, test everything"),
    name("visit.counts", "", "The reading counts"),
    name("visit.early", "", "The reading came too soon after the salt"),
    name("visit.differs", "", "The two readings of the visit can’t both be right"),
    name("visit.low", "", "The reading is too low to believe yet"),
    name("visit.high", "", "The reading is too high to believe yet"),
    name("visit.out", "", "The reading was odd and the next one was not: it stays set aside"),
    name("is.pass", "", "The gate passes"),
    name("is.wait", "", "The gate says not yet"),
    name("is.note", "", "The gate says not yet, but is only noted for the salt"),
    name("is.stop", "", "The gate says no"),
    name("is.unknown", "", "What the gate asks is not known, which is never a pass"),
    name("is.over", "", "The gate is ruled otherwise, in writing"),
    name("job.own", "", "The job in hand"),
    name("job.other", "", "Another job"),
];

/// What can be wrong with a field: `data-fault`.
#[rustfmt::skip]
pub const FAULTS: &[Name] = &[
    name("not-a-number", "", "It does not read as a number"),
    name("low", "", "Below the least allowed"),
    name("high", "", "Above the most allowed"),
    name("two-readings", "", "It can be read in two ways, and only the less likely one is allowed"),
    name("unit-in-text", "", "A unit is typed behind the number"),
    name("no-unit", "", "The unit of the number is not chosen"),
    name("not-whole", "", "A whole number of bags is wanted"),
    name("not-listed", "", "The answer is none of the listed ones"),
    name("not-a-day", "", "It is no day of the calendar"),
    name("not-a-moment", "", "It is no day with a time of day"),
    name("list-unsure", "", "The figures of a list can be parted in two ways"),
    name("list-long", "", "More than 24 figures in a list"),
    name("wider-than-long", "", "Oval with straight sides: it is wider than long"),
    name("too-few", "", "Fewer than three widths"),
    name("other-floor", "", "That floor can’t be worked out under this shape"),
    name("not-deeper", "", "The deep end is not as deep as the shallow one"),
    name("too-long", "", "Parts of the floor are longer than the pool, or the pad is larger than its top"),
    name("no-ledge", "", "The ledge lies no higher than the floor beside it, or is no smaller than the pool"),
    name("not-above", "", "The high limit is not above the target, or the meter not higher after filling"),
    name("not-below", "", "The low limit is not below the target"),
    name("not-by-this", "", "That kind of test does not show this unit"),
];

/// Outputs inside the message of a fault.
#[rustfmt::skip]
pub const IN_FAULTS: &[Name] = &[
    name("low", "", "Least allowed, in the unit typed"),
    name("high", "", "Most allowed"),
    name("got", "", "What was typed"),
    name("other", "", "The other way to read it"),
];

/// Gates; their states are `gate.NAME.pass`, `.wait`, `.stop`, `.unknown`, `.over`.
#[rustfmt::skip]
pub const GATES: &[Name] = &[
    name("code", "", "Local code: whose pool it is, and a public pool’s operator"),
    name("past", "", "What the water was treated with until now"),
    name("cyanurate", "", "Stabiliser up to 90 mg/L; above that only other water brings it down"),
    name("fill", "", "Salt, hardness and alkalinity of the fill water are tested"),
    name("running", "", "Filled to its level, pump and filter running for a day and two turnovers"),
    name("clear", "", "The drain at the deepest point is sharply seen"),
    name("algae", "", "No algae"),
    name("chlorine", "", "Free chlorine is what this water needs, and not too much"),
    name("combined", "", "Combined chlorine: passes up to 0.4, no above 1.0 mg/L"),
    name("copper", "", "Copper: passes below 0.2, no above 0.5 mg/L"),
    name("iron", "", "Iron: passes below 0.2, no above 0.3 mg/L"),
    name("first", "", "Nothing has to go in, or water be replaced, before the salt, by the goals"),
    name("heat", "", "Water of 18 °C or more"),
    name("ta", "", "Alkalinity: passes from 60 to 120, no below 40 or above 200 mg/L"),
    name("ch", "", "Hardness, by the surface"),
    name("cya", "", "Stabiliser, by place: 30 to 50 mg/L outdoors, 0 indoors"),
    name("ph", "", "pH: passes from 7.2 to 7.6, no below 7.0 or above 8.0"),
    name("index", "", "Saturation index after what is due: passes within 0.3 of zero, no beyond 0.5"),
    name("volume", "", "The size of the pool, and that it is better than remembered"),
    name("target", "", "The target is the manual’s, not our example"),
    name("reading", "", "There is a salt reading, not assumed nor off the display"),
    name("reading-age", "", "The reading is at most a week old, and nothing has moved the salt since"),
    name("grade", "", "The salt in the bags is for pool generators, with nothing added"),
    name("finish-age", "", "Cement finish or grout is 30 days old"),
    name("clearance", "", "Written word on salt from whoever laid or made the finish"),
    name("papers", "", "Other makers’ papers are read, and none excludes salt"),
    name("weather", "", "No storm in the next two days"),
    name("wired", "", "Generator installed and signed off by an electrician"),
    name("level", "", "For switching on: the last salt is read, between the limits"),
    name("clock", "", "For switching on: two days since the last bag, and no grain on the floor"),
];

/// What a button can do: `data-act`.
#[rustfmt::skip]
pub const ACTS: &[Name] = &[
    name("print", "", "Chooses the sheet that its value names, if it names one, and prints"),
    name("clear", "", "Begins a job of its own with an empty form; what stood here can be put back"),
    name("undo", "", "Puts back what stood here before; pressed again, undoes that"),
    name("copy", "", "Copies the text of the element whose id is its value"),
    name("now", "", "Sets the moment that its value names to now"),
    name("take-theirs", "", "Takes up the newer copy that another tab has kept"),
    name("keep-mine", "", "Writes over what the other tab has kept"),
    name("link", "", "Shows the link to this job, and copies it where the browser allows"),
    name("save", "", "Gives the job as a file"),
    name("calendar", "", "Gives the steps ahead as a calendar"),
    name("csv", "", "Gives what was typed and what came of it as a table"),
    name("open-job", "", "Opens the kept job of its line"),
    name("drop-job", "", "Takes the kept job of its line away; it can be put back"),
    name("new", "", "Begins a job of its own with an empty form, as clear does"),
    name("back", "", "Goes to the part of the page before this one"),
    name("next", "", "Goes to the part of the page after this one"),
    name("check", "", "Checks the attempts"),
    name("reveal", "", "Shows what is held back"),
    name("answers", "", "Fills the sheet of answers for so many numbers as its value says"),
    name("example", "", "Opens the link that is its value, as a job of its own"),
    name("open", "", "Asks for a file to open"),
    name("json", "", "Gives the answer as a file for scripts"),
    name("frame", "", "Shows the text that puts this page into another one"),
];

/// Marks of a drawing: `data-mark`.
#[rustfmt::skip]
pub const MARKS: &[Name] = &[
    name("band", "", "Drawing of the salt: from the low to the high limit"),
    name("target", "", "Drawing of the salt: the target"),
    name("now", "", "Drawing of the salt: when last read"),
    name("now.range", "", "Drawing of the salt: where it was when last read, 9 times in 10"),
    name("then", "", "Drawing of the salt: reading to expect after this stage"),
    name("then.range", "", "Drawing of the salt: where that reading lies 9 times in 10"),
];

/// Parts of the drawing of the pool: `data-shape`, besides the outputs that begin with draw.
#[rustfmt::skip]
pub const SHAPES: &[Name] = &[
    name("draw.plan", "", "Drawing of the pool: its edge from above, a path"),
    name("draw.inner", "", "Drawing of the pool: lines within the edge, such as breaks or widths, a path"),
    name("draw.section", "", "Drawing of the pool: its water from the side, a path"),
];

/// What is handed over beside the fields; a script without a page may give it too.
#[rustfmt::skip]
pub const HANDED: &[Name] = &[
    name("now", "", "Handed over beside the fields: this place’s date and time"),
    name("utc.NAME", "", "Handed over beside the fields: the moment NAME in minutes of UTC"),
    name("sign.decimal", "", "Handed over beside the fields: the page’s sign before decimals"),
    name("sign.group", "", "Handed over beside the fields: the page’s sign between groups of three digits"),
    name("sign.grouped", "", "Handed over beside the fields: 5 in languages that leave four digits together"),
    name("ask.pays", "", "Handed over beside the fields: yes while “which measurement” is unfolded"),
];

/// What a link can say besides the fields.
#[rustfmt::skip]
pub const TERMS: &[Name] = &[
    name("lock", "", "Fields that keep what the link says, between commas"),
    name("ask", "", "Results to be found, between commas"),
    name("only", "", "The only parts to be shown, between commas"),
    name("tell", "", "The host that may hear of answers and set fields, as https://host"),
    name("can", "", "What the sandbox allows besides scripts: print, download, copy"),
];

/// UCUM codes of units, and what else stands where a unit stands.
#[rustfmt::skip]
pub const UNITS: &[Name] = &[
    name("m3", "", "m³"),
    name("L", "", "litres"),
    name("[gal_us]", "", "US gal"),
    name("[gal_br]", "", "imp gal"),
    name("kg", "", "kg"),
    name("[lb_av]", "", "lb"),
    name("{bag}", "", "bags"),
    name("[foz_us]", "", "fl oz"),
    name("[ppm]", "", "ppm"),
    name("g/L", "", "g/L"),
    name("%", "", "%"),
    name("mg/L{Cl}", "", "mg/L chloride"),
    name("mS/cm", "", "mS/cm"),
    name("uS/cm", "", "µS/cm"),
    name("mg/L", "", "mg/L"),
    name("mmol/L", "", "mmol/L"),
    name("{dH}", "", "°dH"),
    name("{fH}", "", "°fH"),
    name("%{HCl}", "", "% HCl"),
    name("{Be}", "", "°Bé"),
    name("%{NaHSO4}", "", "% NaHSO₄"),
    name("g/dL", "", "g in 100 mL"),
    name("%{NaOCl}", "", "% NaOCl"),
    name("g/h", "", "g/h"),
    name("[lb_av]/d", "", "lb/day"),
    name("mm", "", "mm"),
    name("[in_i]", "", "in"),
    name("L/min", "", "L/min"),
    name("[gal_us]/min", "", "gal/min"),
    name("/m3", "", "for each m³"),
    name("/[kgal]", "", "for each 1,000 US gal"),
    name("Cel", "", "°C"),
    name("[degF]", "", "°F"),
    name("m", "", "m"),
    name("[ft_i]", "", "ft"),
    name("m2", "", "m²"),
    name("[sft_i]", "", "ft²"),
    name("moment", "", "Day and time of day, in UTC; no UCUM code"),
    name("day", "", "Day of the calendar; no UCUM code"),
];
