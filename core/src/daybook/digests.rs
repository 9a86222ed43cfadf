//! A set of digests. It is a sorted list: one more kind of tree would be a few kB of the download,
//! and no set of digests grows once it is made.

use super::digest::Digest;

/// A set of digests.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Digests(Vec<Digest>);

impl Digests {
    /// These digests, each once.
    pub fn of(mut digests: Vec<Digest>) -> Digests {
        digests.sort_unstable();
        digests.dedup();
        Digests(digests)
    }

    /// Whether this digest is among them.
    pub fn contains(&self, digest: &Digest) -> bool {
        self.0.binary_search(digest).is_ok()
    }

    /// Every digest, in order.
    pub fn iter(&self) -> std::slice::Iter<'_, Digest> {
        self.0.iter()
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl FromIterator<Digest> for Digests {
    fn from_iter<I: IntoIterator<Item = Digest>>(digests: I) -> Digests {
        Digests::of(digests.into_iter().collect())
    }
}

#[cfg(test)]
mod tests {
    use super::{Digest, Digests};

    #[test]
    fn each_digest_is_there_once_and_in_order() {
        let all: Vec<Digest> = (0..20_u8).map(|seed| Digest::of(&[seed])).collect();
        let (some, others) = all.split_at(10);
        let set: Digests = some.iter().chain(some.iter().rev()).copied().collect();
        assert_eq!(set.len(), 10);
        assert!(set.iter().is_sorted());
        assert!(some.iter().all(|digest| set.contains(digest)));
        assert!(!others.iter().any(|digest| set.contains(digest)));
        assert!(Digests::default().is_empty() && !set.is_empty());
    }
}
