//! Saltwright in a browser: the only crate that knows of one.

mod actions;
pub mod api;
mod aria;
mod bindings;
mod controller;
mod elements;
mod embed;
mod environment;
mod exercise;
mod fields;
mod jobs;
mod local_storage;
mod lock;
mod offline;
mod pairs;
mod parts;
mod publish;
mod renderer;
mod transfer;
mod views;

#[cfg(target_family = "wasm")]
#[global_allocator]
static ALLOCATOR: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();
