//! What each part of a wheel pushes back with, in newtons and millimetres.
//!
//! All parts are taken as the same all round, so each push is that of a hoop: the tension or thrust in it, which is
//! its push on each millimetre of the round times the radius. Spokes count as a hoop of so many newtons as all of
//! them together, over 2 π. Movements are of the sole, towards the nave.

/// Wood that is pushed: nothing until it is reached, then straight, and softer once it crushes. What has been
/// crushed stays crushed, so that wood let go and pushed again is met later.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Wood {
    /// How far the sole moves in before the wood is reached.
    pub(super) gap: f64,
    /// Its push for each millimetre.
    pub(super) stiffness: f64,
    /// The push at which it begins to crush.
    pub(super) bears: f64,
    /// Its push for each millimetre once it crushes, as a part of that before.
    pub(super) softer: f64,
    /// How far it is crushed for good.
    pub(super) set: f64,
}

impl Wood {
    /// Where it begins to push.
    pub(super) fn met(&self) -> f64 {
        self.gap + self.set
    }

    /// Where it begins to crush, or to crush further.
    pub(super) fn crushes(&self) -> f64 {
        self.gap + self.set / (1.0 - self.softer) + self.bears / self.stiffness
    }

    /// Its push when the sole has moved in so far.
    pub(super) fn push(&self, moved: f64) -> f64 {
        let into = moved - self.gap;
        let straight = self.stiffness * (into - self.set);
        let crushing = self.bears * (1.0 - self.softer) + self.softer * self.stiffness * into;
        straight.min(crushing).max(0.0)
    }

    /// The same wood after it was pushed so far.
    #[must_use]
    pub(super) fn after(self, moved: f64) -> Wood {
        let into = moved - self.gap;
        let set = (into - self.push(moved) / self.stiffness).max(self.set);
        Wood { set, ..self }
    }
}

/// A tyre that is smaller than the wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Ring {
    /// How far in the sole would have to move for the tyre to lie on it without a pull.
    pub(super) short: f64,
    /// How far the sole gives way or the tyre opens for each newton of pull.
    pub(super) gives: f64,
    /// The pull at which it begins to stretch for good.
    pub(super) yields: f64,
}

impl Ring {
    /// Where the tyre stops stretching for good, as the sole moves in.
    pub(super) fn holds(&self) -> f64 {
        self.short - self.gives * self.yields
    }

    /// Its pull when the sole has moved in so far.
    pub(super) fn pull(&self, moved: f64) -> f64 {
        ((self.short - moved) / self.gives).clamp(0.0, self.yields)
    }

    /// How far it has stretched for good, as a part of its radius in millimetres.
    pub(super) fn stretched(&self, moved: f64) -> f64 {
        (self.holds() - moved).max(0.0)
    }

    /// The same tyre after the sole has moved in so far and no further.
    #[must_use]
    pub(super) fn after(self, moved: f64) -> Ring {
        let short = self.short - self.stretched(moved);
        Ring { short, ..self }
    }
}

/// Tyre, rim and spokes of one wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Springs {
    /// The tyre.
    pub(super) tyre: Ring,
    /// The felloes as a ring.
    pub(super) rim: Wood,
    /// All spokes together, as a hoop.
    pub(super) spokes: Wood,
}

impl Springs {
    /// The same parts after the sole has moved in so far.
    #[must_use]
    pub(super) fn after(self, moved: f64) -> Springs {
        Springs {
            tyre: self.tyre.after(moved),
            rim: self.rim.after(moved),
            spokes: self.spokes.after(moved),
        }
    }
}
