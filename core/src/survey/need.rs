//! What has to be recorded before a wheel is judged at all. A wheel is never called good by silence.

/// One thing that must have been looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Need {
    /// What keeps the wheel on: there, the right part, secured.
    Keeper,
    /// The tyre's ring at four places, where the tyre is a hoop.
    Ring,
    /// Every felloe joint.
    Joints,
    /// The foot of every spoke.
    SpokeFeet,
    /// The rim end of every spoke.
    SpokeRimEnds,
    /// Whether any spoke is broken.
    SpokesWhole,
    /// The gap under the tyre at four places, where the tyre is a hoop.
    TyreGap,
    /// Every strake, where there are strakes.
    Strakes,
    /// Dish.
    Dish,
    /// End play along the arm, and shake at the rim.
    EndPlayAndShake,
    /// Rot pricked for at tongues, feet and the ground point.
    Rot,
    /// The nave and its bonds.
    NaveAndBonds,
}

impl Need {
    /// Every need, in the order they are listed.
    pub const ALL: [Need; 12] = [
        Need::Keeper,
        Need::Ring,
        Need::Joints,
        Need::SpokeFeet,
        Need::SpokeRimEnds,
        Need::SpokesWhole,
        Need::TyreGap,
        Need::Strakes,
        Need::Dish,
        Need::EndPlayAndShake,
        Need::Rot,
        Need::NaveAndBonds,
    ];
}
