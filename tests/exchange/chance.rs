//! Numbers from a seed: the same seed, the same history.

/// Splitmix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014).
pub(crate) struct Chance(u64);

impl Chance {
    pub(crate) fn of(seed: u64) -> Chance {
        Chance(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A number below this one, which is not nought.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        usize::try_from(self.next() % end as u64).unwrap()
    }

    /// True once in so many times.
    pub(crate) fn once_in(&mut self, times: usize) -> bool {
        self.below(times) == 0
    }

    /// One of these; `None` of none.
    pub(crate) fn one<T>(&mut self, mut all: Vec<T>) -> Option<T> {
        (!all.is_empty()).then(|| all.swap_remove(self.below(all.len())))
    }

    /// Puts a list into another order.
    pub(crate) fn shuffle<T>(&mut self, list: &mut [T]) {
        for end in (1..list.len()).rev() {
            list.swap(end, self.below(end + 1));
        }
    }
}
