//! How much of a chemical goes in at one go, and how long is waited then?

/// What one step before the salt keeps to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StepLimits {
    /// The most to put in at one go, mmol per litre.
    pub most_at_once: f64,
    /// Hours to the test, at least.
    pub wait: u32,
}

/// What each step before the salt keeps to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TreatmentLimits {
    /// Liquid chlorine: as its label says.
    pub chlorine: StepLimits,
    /// Bicarbonate: 50 ppm of alkalinity.
    pub bicarbonate: StepLimits,
    /// Acid with aeration: 25 mL of 31 % acid a cubic metre.
    pub acid_and_air: StepLimits,
    /// Cyanuric acid: 30 ppm; it dissolves slowly and is tested after days.
    pub cyanuric_acid: StepLimits,
    /// Calcium chloride: 80 ppm of hardness.
    pub calcium: StepLimits,
    /// Acid: as with aeration.
    pub acid: StepLimits,
    /// Soda ash: 12 g a cubic metre.
    pub carbonate: StepLimits,
}

/// The steps before the salt. Common practice, no source.
pub const TREATMENT: TreatmentLimits = TreatmentLimits {
    chlorine: StepLimits { most_at_once: 1_000.0, wait: 4 },
    bicarbonate: StepLimits { most_at_once: 1.0, wait: 6 },
    acid_and_air: StepLimits { most_at_once: 0.25, wait: 24 },
    cyanuric_acid: StepLimits { most_at_once: 0.232, wait: 72 },
    calcium: StepLimits { most_at_once: 0.8, wait: 24 },
    acid: StepLimits { most_at_once: 0.25, wait: 4 },
    carbonate: StepLimits { most_at_once: 0.113, wait: 4 },
};
