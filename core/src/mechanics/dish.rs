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
    fn swings(&self, moved: f64) -> f64 {
        let (out, along) = (self.sine.abs() * self.length, self.cosine * self.length);
        let moved = moved.min(along);
        (out * out + (2.0 * along - moved) * moved).sqrt() - out
    }

    /// Whether a side load can push the wheel through the flat and inside out: a shallow truss of two bars snaps when
    /// it is held sideways by less than half of what its lean gives it (von Mises).
    pub(super) fn snaps(&self) -> bool {
        let slope = self.sine / self.cosine;
        self.sideways < 0.5 * self.spoke * slope * slope
    }

    /// The bending moment at a foot when one spoke pushes so on the rim.
    pub(super) fn bends(&self, push: f64) -> f64 {
        push * self.sine.abs() * self.length
    }
}
