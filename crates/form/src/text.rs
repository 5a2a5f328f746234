//! How are texts put together?

/// Texts one behind the other. (std's `concat` is a copy of itself for every count of them.)
pub fn joined(parts: &[&str]) -> String {
    let mut all = String::with_capacity(parts.iter().map(|part| part.len()).sum());
    for part in parts {
        all.push_str(part);
    }
    all
}
