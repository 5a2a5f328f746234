//! Do whole cases come out as they must: those of the form, of the decision and of the treatment?

mod cards;
mod rows;
mod treatment;
