//! Which names make up the contract between page and code? Each stands once, in a table, with its number and meaning.

mod facts;
mod families;
mod field_id;
mod fields;
mod lists;
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
pub use field_id::{FieldId, LINES, OF_A_LINE, PLACES};
pub use fields::{Field, FieldType, Question, Scope, UnitRule};
pub use lists::{Act, Cell, FaultCode, InFault, List, Mark as DrawingMark, Shape as DrawingPart};
pub use outputs::{ASKED, Measures, Output, OutputId, Told};
pub use states::{CHOSEN, Mark, State, States};
pub use table::Row;

/// The number of the contract; see the form's `data-saltwright`.
pub const CONTRACT: u32 = 1;
