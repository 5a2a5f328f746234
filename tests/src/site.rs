//! Which pages has the built site, and in which languages?
