//! Saltwright in a browser: the only crate that knows of one.
//!
//! | Question | Room |
//! |---|---|
//! | What can a script call? | [`api`] |
//! | Who listens to a form, and what follows? It alone knows every room | `controller` |
//! | What does a press mean? | `actions` |
//! | What stands in the fields, and which faults may be shown? | `fields` |
//! | Which parts of the page are open? Which is in view? | `parts`, `views` |
//! | Who writes on the page? Where? | `renderer`, in `bindings` |
//! | Where are jobs kept, and how do they leave and come back? | `jobs`, on `local_storage`; `transfer` |
//! | On what terms does a page stand where it is embedded? What is locked? | `embed`, `lock` |
//! | How does a form become an exercise? | `exercise` |
//! | Who hears of an answer? | `publish` |
//! | What does only the browser know? | `environment` |
//! | What does a form get that its author left out? | `aria` |
//! | How is a served page found without its server? | `offline` |
//! | How are elements found and changed? How do a form and an answer cross? | `elements`, `pairs` |

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
