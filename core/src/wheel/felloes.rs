//! How many felloes the rim has and how many spokes each carries, clockwise from the mark as seen
//! from the face.

use std::fmt;

/// The fewest and the most spokes a wheel may be given.
const SPOKES: std::ops::RangeInclusive<u16> = 3..=64;
/// The most felloes a rim may be given; a bent rim counts each half as one.
const MOST_FELLOES: usize = 32;

/// Spokes carried by each felloe, in order from the mark; never empty, none of them nought.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Felloes(Vec<u16>);

/// Why a list of felloes is not one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FelloesRefusal {
    /// This many felloes were given.
    Felloes(usize),
    /// This many spokes in all were given.
    Spokes(u32),
    /// The felloe of this number (from 1) was given no spoke.
    Bare(usize),
}

impl fmt::Display for FelloesRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FelloesRefusal::Felloes(given) => {
                write!(
                    f,
                    "{given} felloes were given; a rim has 1 to {MOST_FELLOES}. Nothing was changed."
                )
            }
            FelloesRefusal::Spokes(given) => {
                write!(
                    f,
                    "{given} spokes were given; a wheel has {} to {}. Nothing was changed.",
                    SPOKES.start(),
                    SPOKES.end()
                )
            }
            FelloesRefusal::Bare(felloe) => {
                write!(
                    f,
                    "Felloe {felloe} was given no spoke; each carries at least one. Nothing was changed."
                )
            }
        }
    }
}

impl Felloes {
    /// Takes the spokes each felloe carries.
    ///
    /// # Errors
    /// No felloe or more than 32, fewer than 3 or more than 64 spokes in all, or a felloe without a
    /// spoke.
    pub fn new(carried: Vec<u16>) -> Result<Felloes, FelloesRefusal> {
        if carried.is_empty() || carried.len() > MOST_FELLOES {
            return Err(FelloesRefusal::Felloes(carried.len()));
        }
        if let Some(bare) = carried.iter().position(|spokes| *spokes == 0) {
            return Err(FelloesRefusal::Bare(bare + 1));
        }
        let spokes: u32 = carried.iter().map(|spokes| u32::from(*spokes)).sum();
        match u16::try_from(spokes) {
            Ok(total) if SPOKES.contains(&total) => Ok(Felloes(carried)),
            _ => Err(FelloesRefusal::Spokes(spokes)),
        }
    }

    /// Deals the spokes out evenly; where they do not go round, the first felloes carry one more.
    ///
    /// # Errors
    /// As [`Felloes::new`].
    pub fn even(spokes: u16, felloes: u16) -> Result<Felloes, FelloesRefusal> {
        if felloes == 0 {
            return Err(FelloesRefusal::Felloes(0));
        }
        let (each, over) = (spokes / felloes, spokes % felloes);
        Felloes::new(
            (0..felloes)
                .map(|felloe| each + u16::from(felloe < over))
                .collect(),
        )
    }

    /// Spokes carried by each felloe, in order from the mark.
    pub fn carried(&self) -> &[u16] {
        &self.0
    }

    /// How many felloes, and so how many joints.
    pub fn felloes(&self) -> u16 {
        u16::try_from(self.0.len()).unwrap_or(u16::MAX)
    }

    /// How many spokes in all.
    pub fn spokes(&self) -> u16 {
        self.0.iter().sum()
    }

    /// Spokes passed, from the mark, before the joint of this number (from 1) is reached.
    pub fn spokes_before_joint(&self, joint: u16) -> u16 {
        self.0
            .iter()
            .take(usize::from(joint.saturating_sub(1)))
            .sum()
    }
}

#[cfg(test)]
mod tests {
    use super::{Felloes, FelloesRefusal};

    /// Two spokes to a felloe: 12/6, 14/7, 16/8. Griffiths, *The Artillerist's Manual*, "Carriages";
    /// Dyer, *Handbook for Light Artillery*, ch. IV.
    #[test]
    fn the_general_rule_gives_two_spokes_to_a_felloe() {
        for (spokes, felloes) in [(12, 6), (14, 7), (16, 8)] {
            let rim = Felloes::even(spokes, felloes).unwrap();
            assert!(rim.carried().iter().all(|carried| *carried == 2));
            assert_eq!((rim.spokes(), rim.felloes()), (spokes, felloes));
        }
    }

    #[test]
    fn spokes_that_do_not_go_round_lie_on_the_first_felloes() {
        let rim = Felloes::even(14, 6).unwrap();
        assert_eq!(rim.carried(), [3, 3, 2, 2, 2, 2]);
        assert_eq!(rim.spokes_before_joint(1), 0);
        assert_eq!(rim.spokes_before_joint(3), 6);
    }

    #[test]
    fn what_cannot_be_a_rim_is_refused() {
        assert_eq!(Felloes::even(12, 0), Err(FelloesRefusal::Felloes(0)));
        assert_eq!(Felloes::even(2, 1), Err(FelloesRefusal::Spokes(2)));
        assert_eq!(Felloes::even(65, 5), Err(FelloesRefusal::Spokes(65)));
        assert_eq!(Felloes::even(4, 6), Err(FelloesRefusal::Bare(5)));
        assert_eq!(
            Felloes::new(vec![u16::MAX; 32]),
            Err(FelloesRefusal::Spokes(2_097_120))
        );
        assert_eq!(Felloes::new(vec![2; 33]), Err(FelloesRefusal::Felloes(33)));
        insta::assert_snapshot!(FelloesRefusal::Spokes(2), @"2 spokes were given; a wheel has 3 to 64. Nothing was changed.");
        insta::assert_snapshot!(FelloesRefusal::Felloes(0), @"0 felloes were given; a rim has 1 to 32. Nothing was changed.");
        insta::assert_snapshot!(FelloesRefusal::Bare(5), @"Felloe 5 was given no spoke; each carries at least one. Nothing was changed.");
    }
}
