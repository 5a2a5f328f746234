//! How does a job leave: as a file, a link, a calendar, a table, a code on paper, a frame in another page?

pub mod compact_link;
pub mod csv;
pub mod frame;
pub mod ics;
pub mod job_file;
pub mod link;
pub mod qr;
