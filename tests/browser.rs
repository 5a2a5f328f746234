//! Does the built page do in a browser what a person needs of it?
//!
//! `cargo xtask test` builds and serves the site, and says in the environment where: the folder in
//! `SALTWRIGHT_SITE`, the address in `SALTWRIGHT_URL`, the driver in `CHROMEDRIVER` or its like. Fields and
//! results are found by their names, so the page's words can change without a word to the tests.
//!
//! | Question | Room |
//! |---|---|
//! | Does a checker of access find nothing, and is a screen reader told what it was? | `access` |
//! | How is a browser started, told what to do, and ended? | `driver` |
//! | Which browser is it, and what cannot be judged in it? | `engine` |
//! | By what means is it looked into and set up? | `means` |
//! | What does a page ask for and complain of, where the driver does not tell? | `proxy` |
//! | How does a test sit at a page? | `seat` |
//! | Which figures are typed, and what must come of them? | `figures` |
//! | Does the form take what people type, by keys alone? | `typing` |
//! | Is what cannot be used said beside it, once it is left, and never before? | `faults` |
//! | Is anything typed ever lost: to a press, a reload, a step back or a link? | `keep` |
//! | Does the sheet hold still and fit? | `sheet` |
//! | What stands on paper, in which order? | `paper` |
//! | Is a job kept through whatever befalls a store, and does it leave and come back whole? | `records` |
//! | Is a served page found without its server? | `offline` |
//! | Is one part at a time shown on a telephone, and every part found? | `views` |
//! | Can a job be followed over days? | `days` |
//! | Does each language write its figures its own way, and does every page fit? | `languages` |
//! | Does the script serve other people's pages? | `guest` |
//! | Does the smallest page of somebody's own work? | `smallest` |
//! | Does each way to embed work under its policy? | `embed` |
//! | How soon does the page answer, on a slow line and with a slow processor? | `speed` |
//! | Is it the same after a day, a million answers and ten thousand saves? | `life` |
//! | Is the policy in the page what is meant, and does the browser hold to it? | `policy` |
//! | Does a text stay a text wherever it goes, whatever it says? | `hostile` |
//! | Does question mode hold back what it must, and does a lock hold? | `exercise` |

#[path = "browser/access.rs"]
mod access;
#[path = "browser/days.rs"]
mod days;
#[path = "browser/driver.rs"]
mod driver;
#[path = "browser/embed.rs"]
mod embed;
#[path = "browser/engine.rs"]
mod engine;
#[path = "browser/exercise.rs"]
mod exercise;
#[path = "browser/faults.rs"]
mod faults;
#[path = "browser/figures.rs"]
mod figures;
#[path = "browser/guest.rs"]
mod guest;
#[path = "browser/hostile.rs"]
mod hostile;
#[path = "browser/keep.rs"]
mod keep;
#[path = "browser/languages.rs"]
mod languages;
#[path = "browser/life.rs"]
mod life;
#[path = "browser/means.rs"]
mod means;
#[path = "browser/offline.rs"]
mod offline;
#[path = "browser/paper.rs"]
mod paper;
#[path = "browser/policy.rs"]
mod policy;
#[path = "browser/proxy.rs"]
mod proxy;
#[path = "browser/records.rs"]
mod records;
#[path = "browser/seat.rs"]
mod seat;
#[path = "browser/sheet.rs"]
mod sheet;
#[path = "browser/smallest.rs"]
mod smallest;
#[path = "browser/speed.rs"]
mod speed;
#[path = "browser/typing.rs"]
mod typing;
#[path = "browser/views.rs"]
mod views;
