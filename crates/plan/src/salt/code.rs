//! What is to be done about the salt, in one word?

/// What is to be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Code {
    /// There is no reading: a range for buying, and read first.
    NeedBaseline,
    /// Two readings of one visit can't both be right: take a third.
    RepeatDiffers,
    /// The reading is too early after the salt.
    WaitLonger,
    /// The reading is lower than can be believed: brush, wait, read again with another instrument.
    ReadsTooLow,
    /// The reading is higher than can be believed: read again now, with another instrument.
    ReadsTooHigh,
    /// The readings agree on a volume that can't be believed: measure the pool again.
    VolumeImplausible,
    /// More likely than not above the high limit: replace water.
    TooSalty,
    /// Put this in, then read again.
    AddAndRetest,
    /// Put this in, and it is done.
    AddAndFinish,
    /// It is enough.
    StopInBand,
    /// Enough, and perhaps too much: a better reading before any draining.
    StopNearHigh,
    /// Any salt may be too much, and it may be low: a better reading first.
    NoMore,
    /// A part of a bag is due.
    BagTooCoarse,
}

/// Where the salt stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Standing {
    /// Salt is due.
    Short,
    /// It is enough.
    Within,
    /// There is too much.
    Over,
    /// The readings don't allow to say: read again, in the way that the code says.
    Held,
}

impl Code {
    /// Where the salt stands by it; `None` without any reading.
    #[must_use]
    pub const fn standing(self) -> Option<Standing> {
        Some(match self {
            Self::NeedBaseline => return None,
            Self::AddAndRetest | Self::AddAndFinish | Self::BagTooCoarse => Standing::Short,
            Self::StopInBand | Self::StopNearHigh => Standing::Within,
            Self::TooSalty => Standing::Over,
            Self::RepeatDiffers
            | Self::WaitLonger
            | Self::ReadsTooLow
            | Self::ReadsTooHigh
            | Self::VolumeImplausible
            | Self::NoMore => Standing::Held,
        })
    }
}
