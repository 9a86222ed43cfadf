//! How far the sole moves in until rim and spokes push as the tyre pulls.

use super::springs::Springs;

impl Springs {
    /// By how much rim and spokes push more than the tyre pulls; it never falls as the sole moves in.
    fn excess(&self, moved: f64) -> f64 {
        self.rim.push(moved) + self.spokes.push(moved) - self.tyre.pull(moved)
    }

    /// How far the sole moves in, in millimetres, positive towards the nave; where the tyre is slack, as far as it
    /// would go to lie on it. Every part goes straight between two knees, so the answer is exact: knees are tried
    /// until none lies between the two ends that are left.
    pub(super) fn balance(&self) -> f64 {
        let slack = self.tyre.short;
        let (mut low, mut high) = (self.rim.met().min(self.spokes.met()).min(slack), slack);
        // Where the tyre still stretches for good it pulls the same, and the wood may stand further out than its knees.
        low = low.min(self.tyre.holds());
        for knee in [
            self.rim.met(),
            self.rim.crushes(),
            self.spokes.met(),
            self.spokes.crushes(),
            self.tyre.holds(),
        ] {
            if low < knee && knee < high {
                if self.excess(knee) <= 0.0 {
                    low = knee;
                } else {
                    high = knee;
                }
            }
        }
        let (under, over) = (self.excess(low), self.excess(high));
        if over > under {
            (low - under * (high - low) / (over - under)).min(high)
        } else {
            high
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::mechanics::springs::{Ring, Springs, Wood};

    /// The same balance by halving, two hundred times.
    fn halved(springs: &Springs) -> f64 {
        let (mut low, mut high) = (-1e3, springs.tyre.short);
        for _ in 0..200 {
            let middle = (low + high) / 2.0;
            if springs.excess(middle) <= 0.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        (low + high) / 2.0
    }

    fn wood() -> impl Strategy<Value = Wood> {
        (
            -3.0..6.0_f64,
            100.0..2e5_f64,
            10.0..3e5_f64,
            0.01..0.5_f64,
            0.0..3.0_f64,
        )
            .prop_map(|(gap, stiffness, bears, softer, set)| Wood {
                gap,
                stiffness,
                bears,
                softer,
                set,
            })
    }

    fn springs() -> impl Strategy<Value = Springs> {
        let tyre =
            (0.0..8.0_f64, 1e-6..1e-4_f64, 1e3..1e6_f64).prop_map(|(short, gives, yields)| Ring {
                short,
                gives,
                yields,
            });
        (tyre, wood(), wood()).prop_map(|(tyre, rim, spokes)| Springs { tyre, rim, spokes })
    }

    proptest! {
        #[test]
        fn what_pulls_is_what_pushes(springs in springs()) {
            let moved = springs.balance();
            prop_assert!(moved <= springs.tyre.short);
            let (pull, push) = (springs.tyre.pull(moved), springs.rim.push(moved) + springs.spokes.push(moved));
            prop_assert!((pull - push).abs() <= 1e-6 * (1.0 + pull), "{pull} {push}");
        }

        #[test]
        fn it_is_what_halving_finds(springs in springs()) {
            let (pull, halved) = (springs.tyre.pull(springs.balance()), springs.tyre.pull(halved(&springs)));
            prop_assert!((pull - halved).abs() <= 1e-6 * (1.0 + pull));
        }

        /// Taken off and put on again as it was, nothing gives any further.
        #[test]
        fn what_has_given_gives_no_more(springs in springs()) {
            let once = springs.after(springs.balance());
            let moved = once.balance();
            prop_assert!((moved - springs.balance()).abs() < 1e-6);
            let twice = once.after(moved);
            prop_assert!((twice.rim.set - once.rim.set).abs() < 1e-6);
            prop_assert!((twice.spokes.set - once.spokes.set).abs() < 1e-6);
            prop_assert!((twice.tyre.short - once.tyre.short).abs() < 1e-6);
        }
    }
}
