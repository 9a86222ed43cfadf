//! Doubt by JCGM 100:2008 (the GUM): parts put together by their squares, and widened where it rests on few runs.

use crate::quantity::Length;
use crate::quantity::length::millimetres;

/// JCGM 100:2008, table G.2, the column of 95.45 %: the factor *k* by degrees of freedom. Between rows the lower row
/// counts (G.4.1), and without end *k* is 2.
const FACTORS: [(f64, f64); 28] = [
    (1.0, 13.97),
    (2.0, 4.53),
    (3.0, 3.31),
    (4.0, 2.87),
    (5.0, 2.65),
    (6.0, 2.52),
    (7.0, 2.43),
    (8.0, 2.37),
    (9.0, 2.32),
    (10.0, 2.28),
    (11.0, 2.25),
    (12.0, 2.23),
    (13.0, 2.21),
    (14.0, 2.20),
    (15.0, 2.18),
    (16.0, 2.17),
    (17.0, 2.16),
    (18.0, 2.15),
    (19.0, 2.14),
    (20.0, 2.13),
    (25.0, 2.11),
    (30.0, 2.09),
    (35.0, 2.07),
    (40.0, 2.06),
    (45.0, 2.06),
    (50.0, 2.05),
    (100.0, 2.025),
    (f64::INFINITY, 2.0),
];

/// How far the truth may lie to either side, with all that it is made of put together.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Doubt {
    /// The square of the standard uncertainty, in mm².
    variance: f64,
    /// The sum of each part's fourth power over its degrees of freedom, in mm⁴: JCGM 100:2008, G.2b.
    fourths: f64,
}

impl Doubt {
    /// What is known to lie within so many mm to either side, anywhere there alike (4.3.7).
    #[must_use]
    pub(super) fn within(half_width: f64) -> Doubt {
        Doubt::standard_of(half_width / 3_f64.sqrt())
    }

    /// A standard uncertainty in mm that does not rest on a count of runs.
    #[must_use]
    pub(super) fn standard_of(standard: f64) -> Doubt {
        Doubt {
            variance: standard * standard,
            fourths: 0.0,
        }
    }

    /// A mean of so many runs that scatter by this variance in mm² (4.2.3). One run tells nothing of its scatter.
    #[must_use]
    pub(super) fn of_a_mean(scatter: f64, runs: usize) -> Doubt {
        let (variance, freedom) = (scatter / runs as f64, runs.saturating_sub(1));
        let fourths = if freedom == 0 {
            0.0
        } else {
            variance * variance / freedom as f64
        };
        Doubt { variance, fourths }
    }

    /// One more of what was done so many times, and scattered by this variance in mm²: its own scatter and the mean's.
    #[must_use]
    pub(super) fn of_one_more(scatter: f64, runs: usize) -> Doubt {
        let variance = scatter * (1.0 + 1.0 / runs as f64);
        Doubt {
            variance,
            fourths: variance * variance / runs.saturating_sub(1).max(1) as f64,
        }
    }

    /// Both together, where neither leans on the other (5.1.2).
    #[must_use]
    pub(super) fn and(self, other: Doubt) -> Doubt {
        Doubt {
            variance: self.variance + other.variance,
            fourths: self.fourths + other.fourths,
        }
    }

    /// The square of the standard uncertainty, in mm².
    pub(super) fn variance(self) -> f64 {
        self.variance
    }

    /// The standard uncertainty.
    #[must_use]
    pub fn standard(self) -> Length {
        millimetres(self.variance.sqrt())
    }

    /// The degrees of freedom by Welch and Satterthwaite (G.4.1, equation G.2b); without end where nothing rests on a
    /// count of runs.
    #[must_use]
    pub fn freedom(self) -> f64 {
        if self.fourths > 0.0 {
            self.variance * self.variance / self.fourths
        } else {
            f64::INFINITY
        }
    }

    /// The factor *k* for a chance of 95 in 100: 2, and more where it rests on few runs.
    #[must_use]
    pub fn factor(self) -> f64 {
        let freedom = self.freedom();
        let rows = FACTORS.iter().take_while(|row| row.0 <= freedom + 1e-9);
        rows.last().map_or(FACTORS[0].1, |row| row.1)
    }

    /// How far the truth lies to either side, 95 times in 100 (6.2).
    #[must_use]
    pub fn to_either_side(self) -> Length {
        self.standard() * self.factor()
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::quantity::length::to_paper_mm;

    #[test]
    fn what_rests_on_no_count_is_doubled() {
        let doubt = Doubt::within(3.0);
        assert!((to_paper_mm(doubt.standard()) - 1.732_051).abs() < 1e-6);
        assert_eq!(doubt.factor(), 2.0);
        assert_eq!(Doubt::default().factor(), 2.0);
        assert_eq!(to_paper_mm(Doubt::default().to_either_side()), 0.0);
    }

    #[test]
    fn few_runs_widen_it() {
        let factors = [2, 3, 4, 11, 21, 27, 102].map(|runs| Doubt::of_a_mean(1.0, runs).factor());
        assert_eq!(factors, [13.97, 4.53, 3.31, 2.28, 2.13, 2.11, 2.025]);
        assert_eq!(Doubt::of_a_mean(1.0, 1).factor(), 2.0);
    }

    /// JCGM 100:2008, G.4.1, the example: means of 10, 5 and 15 observations with relative standard uncertainties of 0.25,
    /// 0.57 and 0.82 % make 1.03 % with 19.0 effective degrees of freedom.
    #[test]
    fn the_example_of_the_guide_comes_out() {
        let of =
            |standard: f64, runs: usize| Doubt::of_a_mean(standard * standard * runs as f64, runs);
        let all = of(0.25, 10).and(of(0.57, 5)).and(of(0.82, 15));
        assert!((all.variance().sqrt() - 1.03).abs() < 0.005);
        assert!((all.freedom() - 19.0).abs() < 0.05, "{}", all.freedom());
    }

    proptest! {
        #[test]
        fn more_parts_are_more_doubt(
            a in 0.0..10.0, b in 0.0..10.0, scatter in 0.0..10.0, runs in 2_usize..20
        ) {
            let one = Doubt::within(a);
            let two = one.and(Doubt::standard_of(b)).and(Doubt::of_a_mean(scatter, runs));
            prop_assert!(two.standard() >= one.standard() && two.factor() >= 2.0);
            prop_assert!(two.to_either_side().is_finite());
            prop_assert!(two.freedom() >= (runs - 1) as f64 - 1e-6);
        }
    }
}
