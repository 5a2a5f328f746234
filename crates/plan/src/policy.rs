//! Which numbers are choices, and whose? Everything here may be argued with.
//!
//! "Common practice": the trade does it so, no source. "Our choice": we had to pick something.

pub mod defaults;
pub mod limits;
pub mod risk;
pub mod times;
pub mod treatment;
pub mod uncertainty;

pub use defaults::*;
pub use limits::*;
pub use risk::*;
pub use times::*;
pub use treatment::*;
pub use uncertainty::*;
