//! What does `cargo xtask test` say of the site and of the browsers?

/// The address of the built site.
pub fn site() -> String {
    setting("SALTWRIGHT_URL")
}

/// A variable that `cargo xtask test` sets.
pub fn setting(name: &str) -> String {
    std::env::var(name).unwrap_or_else(|_| panic!("{name} is not set: run `cargo xtask test`"))
}
