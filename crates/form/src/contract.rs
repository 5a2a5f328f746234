//! Which names make up the contract between page and code? Each stands once, in a table, with its number and meaning.

mod facts;
mod families;
mod field_id;
mod fields;
mod lists;
mod output_id;
mod outputs;
mod states;
mod table;

pub mod codes;
pub mod gates;
#[cfg(not(target_family = "wasm"))]
pub mod lint;
pub mod units;

pub use facts::{Fact, LineFact, RowFact};
pub use families::{DOSE, Families, INDEX, NONE, REPLACE, RUN, SIZE};
pub use field_id::{ATTEMPT, FieldId, LINES, OF_A_LINE, PLACES, is_attempt};
pub use fields::{Field, FieldType, Question, Scope, UnitRule};
pub use lists::{Act, FaultCode, InFault, List, Mark as DrawingMark, RowOutput, Shape as DrawingPart};
pub use output_id::OutputId;
pub use outputs::{ASKED, Measures, Output, Told};
pub use states::{CHOSEN, Mark, State, States};

/// The number of the contract; see the form's `data-saltwright`.
pub const CONTRACT: u32 = 1;
