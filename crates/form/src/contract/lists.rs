//! Which lists, faults, acts and marks of drawings are there?

use crate::contract::families::{DOSE, Families, INDEX, NONE, REPLACE, SIZE};
use crate::contract::table::{Names, are_distinct, names};

#[rustfmt::skip]
names! {
    /// A list of lines: `data-each`. Its facts are the families with which it is held back.
    List: Families {
    1 Passes "passes": SIZE.and(REPLACE), "Passes of draining and refilling, at most the first 12, in order";
    2 Treatment "treatment": SIZE.and(INDEX), "Steps before the salt, in the order in which they are done";
    3 Steps "steps": NONE, "What is to be done when, in order of time, without what has gone by";
    4 Visits "visits": DOSE, "Salt readings, in order of time";
    5 Gates "gates": NONE, "All gates and what each says, in the order of the work";
    6 Jobs "jobs": NONE, "Jobs kept on this device, the one kept last first";
    7 Answers "answers": NONE, "Answers to the exercises of the first numbers; its cells are all outputs by their own names, and `variant`";
    }
}

#[rustfmt::skip]
names! {
    /// An output in the lines of a list, as `list/output`.
    RowOutput: () {
    1 PassesPass "passes/pass", "Number of the pass";
    2 PassesShare "passes/share", "Share of the pool in this pass";
    3 PassesVolume "passes/volume", "Water in this pass";
    4 PassesLevel "passes/level", "Salt, hardness or stabilizer after this pass, whichever decides";
    5 TreatmentFirst "treatment/first", "First dose, to be put in at one go; missing where air comes first";
    6 TreatmentBegunPh "treatment/begun-ph", "pH after the first dose, before any air";
    7 TreatmentBegunTa "treatment/begun-ta", "Total alkalinity after the first dose";
    8 TreatmentWait "treatment/wait", "Hours to wait at least before the test";
    9 TreatmentWhole "treatment/whole", "All of it, by the model";
    10 TreatmentDoses "treatment/doses", "How many such doses all of it is, at least";
    11 TreatmentThenPh "treatment/then-ph", "pH with all of it in";
    12 TreatmentThenTa "treatment/then-ta", "Total alkalinity with all of it in";
    13 TreatmentThenCh "treatment/then-ch", "Calcium hardness with all of it in";
    14 TreatmentThenCya "treatment/then-cya", "Stabilizer with all of it in, mg/L";
    15 TreatmentThenIndex "treatment/then-index", "Saturation index with all of it in";
    16 TreatmentThenSalted "treatment/then-salted", "Saturation index with all of it and the salt in, the pH left free";
    17 StepsWhen "steps/when", "From when the step may be done";
    18 StepsUntil "steps/until", "Until when it is best done";
    19 VisitsWhen "visits/when", "When it was read";
    20 VisitsPutIn "visits/put-in", "Salt put in since the reading before; missing where none";
    21 VisitsRead "visits/read", "What was read, as salt";
    22 GatesGate "gates/gate", "Which gate: its code stands as the unit";
    23 JobsCalled "jobs/called", "Name given to the job; missing where none";
    24 JobsSaved "jobs/saved", "When the job was kept";
    25 JobsJob "jobs/job", "Code of the job";
    26 AnswersVariant "answers/variant", "Number of the exercise";
    }
}

impl RowOutput {
    /// Its name inside the list.
    #[must_use]
    pub fn in_list(self) -> &'static str {
        self.name().split_once('/').map_or("", |(_, name)| name)
    }
}

#[rustfmt::skip]
names! {
    /// What can be wrong with a field: `data-fault`.
    FaultCode: () {
    1 NotANumber "not-a-number", "It does not read as a number";
    2 Low "low", "Below the least allowed";
    3 High "high", "Above the most allowed";
    4 TwoReadings "two-readings", "It can be read in two ways, and only the less likely one is allowed";
    5 UnitInText "unit-in-text", "A unit is typed behind the number";
    6 NoUnit "no-unit", "The unit of the number is not chosen";
    7 NotWhole "not-whole", "A whole number of bags is wanted";
    8 NotListed "not-listed", "The answer is none of the listed ones";
    9 NotADay "not-a-day", "It is no day of the calendar";
    10 NotAMoment "not-a-moment", "It is no day with a time of day";
    11 ListUnsure "list-unsure", "The figures of a list can be parted in two ways";
    12 ListLong "list-long", "More than 24 figures in a list";
    13 WiderThanLong "wider-than-long", "Oval with straight sides: it is wider than long";
    14 TooFew "too-few", "Fewer than three widths";
    15 OtherFloor "other-floor", "That floor can’t be worked out under this shape";
    16 NotDeeper "not-deeper", "The deep end is not as deep as the shallow one";
    17 TooLong "too-long", "Parts of the floor are longer than the pool, or the pad is larger than its top";
    18 NoLedge "no-ledge", "The ledge lies no higher than the floor beside it, or is no smaller than the pool";
    19 NotAbove "not-above", "The high limit is not above the target, or the meter not higher after filling";
    20 NotBelow "not-below", "The low limit is not below the target";
    21 NotByThis "not-by-this", "That kind of test does not show this unit";
    }
}

#[rustfmt::skip]
names! {
    /// An output inside the message of a fault.
    InFault: () {
    1 Low "low", "Least allowed, in the unit typed";
    2 High "high", "Most allowed";
    3 Got "got", "What was typed";
    4 Other "other", "The other way to read it";
    }
}

#[rustfmt::skip]
names! {
    /// What a button can do: `data-act`.
    Act: () {
    1 Print "print", "Chooses the sheet that its value names, if it names one, and prints";
    2 Clear "clear", "Begins a job of its own with an empty form; what stood here can be put back";
    3 Undo "undo", "Puts back what stood here before; pressed again, undoes that";
    4 Copy "copy", "Copies the text of the element whose id is its value";
    5 Now "now", "Sets the moment that its value names to now";
    6 TakeTheirs "take-theirs", "Takes up the newer copy that another tab has kept";
    7 KeepMine "keep-mine", "Writes over what the other tab has kept";
    8 Link "link", "Shows the link to this job, and copies it where the browser allows";
    9 Save "save", "Gives the job as a file";
    10 Calendar "calendar", "Gives the steps ahead as a calendar";
    11 Csv "csv", "Gives what was typed and what came of it as a table";
    12 OpenJob "open-job", "Opens the kept job of its line";
    13 DropJob "drop-job", "Takes the kept job of its line away; it can be put back";
    14 New "new", "Begins a job of its own with an empty form, as clear does";
    15 Back "back", "Goes to the part of the page before this one";
    16 Next "next", "Goes to the part of the page after this one";
    17 Check "check", "Checks the attempts";
    18 Reveal "reveal", "Shows what is held back";
    19 Answers "answers", "Fills the sheet of answers for so many numbers as its value says";
    20 Example "example", "Opens the link that is its value, as a job of its own";
    21 Open "open", "Asks for a file to open";
    22 Json "json", "Gives the answer as a file for scripts";
    23 Frame "frame", "Shows the text that puts this page into another one";
    24 Expand "expand", "Opens the part that its value names";
    25 Collapse "collapse", "Closes it: what is typed in it counts all the same";
    }
}

#[rustfmt::skip]
names! {
    /// A mark of the drawing of the salt: `data-mark`.
    Mark: () {
    1 Band "band", "Drawing of the salt: from the low to the high limit";
    2 Target "target", "Drawing of the salt: the target";
    3 Now "now", "Drawing of the salt: when last read";
    4 NowRange "now.range", "Drawing of the salt: where it was when last read, 9 times in 10";
    5 Then "then", "Drawing of the salt: reading to expect after this stage";
    6 ThenRange "then.range", "Drawing of the salt: where that reading lies 9 times in 10";
    }
}

#[rustfmt::skip]
names! {
    /// A part of the drawing of the pool: `data-shape`; its labels are the outputs that begin so too.
    Shape: () {
    1 DrawPlan "draw.plan", "Drawing of the pool: its edge from above, a path";
    2 DrawInner "draw.inner", "Drawing of the pool: lines within the edge, such as breaks or widths, a path";
    3 DrawSection "draw.section", "Drawing of the pool: its water from the side, a path";
    }
}
