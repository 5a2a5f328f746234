//! How does a job leave: as a calendar, a table, a link, a code on paper?

pub mod csv;
pub mod ics;
pub mod link;
pub mod qr;
