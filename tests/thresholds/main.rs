//! Does a judgement turn where its limit says: on it, a hair below it, a hair above?
//!
//! The limits that are tried stand here once more, as figures, so that neither they nor their rules move unseen.

mod demo;
mod job;
mod judgement;
mod operation;
mod treatment;
