//! What holds whatever the water, the case or the text? Over many drawn ones, the same at every run.

mod answer;
mod chemistry;
mod decision;
mod doses;
mod garbled;
mod operation;
mod round_trip;
mod sweep;
