//! What a tyre does to the dish: as the rim is drawn in, leaning spokes carry it out.
//!
//! With a spoke that leans by β, pushes `k_s` along itself and `k_t` sideways, and no push on the rim across the
//! wheel: the rim goes out by tan β (F / k_t − u), and pushes k_s k_t / (k_s sin² β + k_t cos² β) for each millimetre.

use super::stiffness::Stiffness;

impl Stiffness {
    /// Push of one spoke towards the sole for each millimetre that the sole moves in.
    pub(super) fn inward(&self) -> f64 {
        let (sine2, cosine2) = (self.sine * self.sine, self.cosine * self.cosine);
        self.spoke * self.sideways / (self.spoke * sine2 + self.sideways * cosine2)
    }

    /// How far the rim goes out when the sole has moved in so far past the shoulders and one spoke pushes so; in the
    /// direction of the dish. Never further than a spoke that gives nothing would swing, which small leans and slack
    /// feet would else exceed.
    pub(super) fn goes_out(&self, moved: f64, push: f64) -> f64 {
        if moved <= 0.0 {
            return 0.0;
        }
        let straight = self.sine.abs() / self.cosine * (push / self.sideways - moved);
        straight.clamp(0.0, self.swings(moved)) * self.sine.signum()
    }

    /// How far the end of a spoke that keeps its length goes out when it is moved in so far.
    pub(super) fn swings(&self, moved: f64) -> f64 {
        let (out, along) = (self.sine.abs() * self.length, self.cosine * self.length);
        let moved = moved.min(along);
        (out * out + (2.0 * along - moved) * moved).sqrt() - out
    }

    /// The push from the side, on all spokes together, that puts the wheel through the flat and inside out; nothing
    /// where its spokes are held so that it comes back.
    pub(super) fn folds_at(&self) -> Option<f64> {
        let dish = self.sine.abs() * self.length;
        let spokes = self.spokes * std::f64::consts::TAU;
        folds_at(self.spoke, self.sideways, dish, self.length).map(|one| one * spokes)
    }

    /// The bending moment at a foot when one spoke pushes so on the rim.
    pub(super) fn bends(&self, push: f64) -> f64 {
        push * self.sine.abs() * self.length
    }
}

/// The push at which one shallow bar of a truss snaps through the flat (von Mises' truss), in newtons: of so many newtons
/// for each millimetre along itself and across, so much rise and so long. Nothing where it comes back of itself: that is,
/// held across by more than half of what its lean gives it.
#[must_use]
pub fn folds_at(along: f64, across: f64, rise: f64, long: f64) -> Option<f64> {
    let half = along / (2.0 * long * long);
    // At the height z the push is half (rise² − z²) z + across (rise − z); it is greatest where its slope is nought.
    let square = (rise * rise - across / half) / 3.0;
    let z = square.max(0.0).sqrt();
    (z > 0.0).then_some(half * (rise * rise - z * z) * z + across * (rise - z))
}
