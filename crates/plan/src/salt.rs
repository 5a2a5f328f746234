#![doc = include_str!("salt/METHOD.md")]

pub mod buy;
pub mod code;
pub mod course;
pub mod decide;
pub mod dilute;
pub mod dosing;
mod ekf;
pub mod enough;
pub mod estimate;
pub mod job;
pub mod mixture;
pub mod outliers;
mod prior;
pub mod salt_input;
pub mod salt_plan;
pub mod stage;
pub mod sums;
pub mod value_of_information;
