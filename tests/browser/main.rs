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
//! | What is said of the site and of the browsers? | `environment` |
//! | Which browser is it, and what cannot be judged in it? | `engine` |
//! | How is it looked into and set up? | `devtools` |
//! | What does a page ask for and complain of, where the driver does not tell? | `proxy` |
//! | How does a test use a page? | `session` |
//! | Which figures are typed, and what must come of them? | `fixtures` |
//! | Does the form take what people type, by keys alone? | `typing` |
//! | Is what cannot be used said beside it, once it is left, and never before? | `faults` |
//! | Is anything typed ever lost: to a press, a reload, a step back or a link? | `keep` |
//! | Does the sheet hold still and fit? | `sheet` |
//! | What stands on paper, in which order? | `paper` |
//! | Is a job kept through whatever befalls a store, and does it leave and come back whole? | `records` |
//! | Is a served page found without its server? | `offline` |
//! | Is one part at a time shown on a telephone, and every part found? | `views` |
//! | Is a closed part out of the document, and does what is typed in it count all the same? | `parts` |
//! | Can a job be followed over days? | `days` |
//! | Does each language write its figures its own way, and does every page fit? | `languages` |
//! | Does the script serve other people's pages? | `host_page` |
//! | Does the smallest page of somebody's own work? | `smallest` |
//! | Does each way to embed work under its policy? | `embed` |
//! | How soon does the page answer, on a slow line and with a slow processor? | `speed` |
//! | Is it the same after a day, a million answers and ten thousand saves? | `soak` |
//! | Is the policy in the page what is meant, and does the browser hold to it? | `policy` |
//! | Does a text stay a text wherever it goes, whatever it says? | `hostile` |
//! | Does question mode hold back what it must, and does a lock hold? | `exercise` |

mod access;
mod days;
mod devtools;
mod driver;
mod embed;
mod engine;
mod environment;
mod exercise;
mod faults;
mod fixtures;
mod host_page;
mod hostile;
mod keep;
mod languages;
mod offline;
mod paper;
mod parts;
mod policy;
mod proxy;
mod records;
mod session;
mod sheet;
mod smallest;
mod soak;
mod speed;
mod typing;
mod views;
