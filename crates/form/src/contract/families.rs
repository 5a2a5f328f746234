//! Which results follow from one another, so that one that is to be found holds the others back?

/// A set of families.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Families(u8);

/// None.
pub const NONE: Families = Families(0);
/// How much water there is; every amount follows from it.
pub const SIZE: Families = Families(1);
/// How much salt: from the rise to the bags, the stage and what to expect.
pub const DOSE: Families = Families(2);
/// The saturation index.
pub const INDEX: Families = Families(4);
/// How much water to replace.
pub const REPLACE: Families = Families(8);
/// At which setting the generator runs.
pub const RUN: Families = Families(16);

impl Families {
    /// Both.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// Is there one that both have?
    #[must_use]
    pub const fn meet(self, other: Self) -> bool {
        self.0 & other.0 != 0
    }

    /// Is it empty?
    #[must_use]
    pub const fn is_none(self) -> bool {
        self.0 == 0
    }
}
