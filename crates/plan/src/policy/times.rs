//! How long is waited, and from what on?

/// Hours from the last salt to a reading that can be decided from. Common practice.
pub const HOURS_TO_READING: i64 = 24;
/// Hours from the last salt to switching on, at least. Common practice; the manual decides.
pub const HOURS_TO_POWER: i64 = 48;
/// Hours from a bag to each brushing: from, to. Common practice: until no heap is left, once more after four to
/// six hours, then once or twice a day; the later hours are our choice.
pub const BRUSH: [[i64; 2]; 4] = [[4, 6], [24, 25], [32, 34], [46, 48]];
/// Days from switching on to each early test of chlorine and pH. Common practice.
pub const TESTS_AFTER: [i64; 4] = [1, 2, 3, 5];
/// Hours by which a step may be late before it counts as gone by. Our choice.
pub const GRACE: i64 = 6;

/// The earliest moment to switch on after the last salt.
#[must_use]
pub const fn power_from(last: i64) -> i64 {
    last.saturating_add(HOURS_TO_POWER * 60)
}
