//! Do code, table of names and built pages agree, and is nothing typed ever lost?

mod exercise;
mod hostile;
mod keep;
mod languages;
mod names;
mod page;
