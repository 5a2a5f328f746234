//! What does each gate of the plan ask for? For the reference; the codes are the plan's.

use plan::readiness::gates::Gate;

/// What it asks for, in a line.
#[must_use]
pub const fn meaning(gate: Gate) -> &'static str {
    match gate {
        Gate::Code => "Local code: whose pool it is, and a public pool’s operator",
        Gate::PreviousSanitizer => "What the water was treated with until now",
        Gate::CyanuricAcid => "Stabilizer up to 90 mg/L; above that only other water brings it down",
        Gate::Fill => "Salt, hardness and alkalinity of the fill water are tested",
        Gate::Running => "Filled to its level, pump and filter running for a day and two turnovers",
        Gate::Clarity => "The drain at the deepest point is sharply seen",
        Gate::Algae => "No algae",
        Gate::Chlorine => "Free chlorine is what this water needs, and not too much",
        Gate::Combined => "Combined chlorine: passes up to 0.4, no above 1.0 mg/L",
        Gate::Copper => "Copper: passes below 0.2, no above 0.5 mg/L",
        Gate::Iron => "Iron: passes below 0.2, no above 0.3 mg/L",
        Gate::BalanceFirst => "Nothing has to go in, or water be replaced, before the salt, by the goals",
        Gate::Temperature => "Water of 18 °C or more",
        Gate::Alkalinity => "Alkalinity: passes from 60 to 120, no below 40 or above 200 mg/L",
        Gate::Hardness => "Hardness, by the surface",
        Gate::CyanuricAcidBand => "Stabilizer, by place: 30 to 50 mg/L outdoors, 0 indoors",
        Gate::Ph => "pH: passes from 7.2 to 7.6, no below 7.0 or above 8.0",
        Gate::Index => "Saturation index after what is due: passes within 0.3 of zero, no beyond 0.5",
        Gate::Volume => "The size of the pool, and that it is better than remembered",
        Gate::Target => "The target is the manual’s, not our example",
        Gate::Reading => "There is a salt reading, not assumed nor off the display",
        Gate::ReadingAge => "The reading is at most a week old, and nothing has moved the salt since",
        Gate::BagSalt => "The salt in the bags is for pool generators, with nothing added",
        Gate::FinishAge => "Cement finish or grout is 30 days old",
        Gate::Clearance => "Written word on salt from whoever laid or made the finish",
        Gate::Warranty => "Other makers’ papers are read, and none excludes salt",
        Gate::Weather => "No storm in the next two days",
        Gate::Electrical => "Generator installed and signed off by an electrician",
        Gate::Level => "For switching on: the last salt is read, between the limits",
        Gate::Clock => "For switching on: two days since the last bag, and no grain on the floor",
    }
}
