//! Saltwright in a browser: the only crate that knows of one.

mod actions;
pub mod api;
mod aria;
mod bindings;
mod controller;
pub mod embed;
mod environment;
mod exercise;
mod frame;
mod jobs;
mod local_storage;
mod offline;
mod page_lint;
mod pairs;
mod publish;
mod renderer;
pub mod to_js;
mod transfer;
mod views;

#[cfg(target_family = "wasm")]
#[global_allocator]
static ALLOCATOR: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();
