//! How does a form become an exercise?

pub mod asked;
pub mod variant;
