//! What of a wheel is pressed hardest, and how near it is to giving.

/// A part that a tyre can spoil.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Gives {
    /// The tyre stretches for good.
    Tyre,
    /// The shoulders of the spokes sink into the nave.
    Nave,
    /// The shoulders of the spokes sink into the felloes.
    Belly,
    /// The spokes themselves crush.
    Spokes,
    /// The ends of the felloes crush at the joints.
    Joints,
    /// The sole crushes under the tyre.
    Sole,
    /// The feet of the spokes bend too far.
    Feet,
}

impl Gives {
    /// Every part, in the order of their ratios.
    pub const ALL: [Gives; 7] = [
        Gives::Tyre,
        Gives::Nave,
        Gives::Belly,
        Gives::Spokes,
        Gives::Joints,
        Gives::Sole,
        Gives::Feet,
    ];
}

/// How near each part is to giving: 1 where it begins to, in the order of [`Gives::ALL`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressed(pub(super) [f64; Gives::ALL.len()]);

impl Pressed {
    /// How near this part is to giving; 1 where it begins to.
    #[must_use]
    pub fn ratio(&self, part: Gives) -> f64 {
        self.0.get(part as usize).copied().unwrap_or_default()
    }

    /// The part that is nearest, and how near.
    #[must_use]
    pub fn worst(&self) -> (Gives, f64) {
        let mut worst = (Gives::Tyre, self.ratio(Gives::Tyre));
        for part in Gives::ALL {
            if self.ratio(part) > worst.1 {
                worst = (part, self.ratio(part));
            }
        }
        worst
    }
}
