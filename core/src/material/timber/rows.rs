//! One row for each timber: what was read of it, and where.

use super::Species;
use crate::material::source::Source::{
    self, Assumed, EuropeanWood, HandbookMovement, HandbookRatios, HandbookShrinkage,
    HandbookStrength, HandbookVariation, Lavers, ToolBox, Traders, WoodDatabase,
};
use crate::quantity::Band;

/// What was read of one timber.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// The word that stands for it on paper.
    pub code: &'static str,
    /// Shrinkage from green to bone dry, in percent, radial.
    pub radial: Band<f64>,
    /// The same, tangential.
    pub tangential: Band<f64>,
    /// The same, along the grain.
    pub along: Band<f64>,
    /// Change of size for each percent of moisture from 6 to 14 %, radial and tangential, where it is printed.
    pub printed: Option<[f64; 2]>,
    /// Strength in bending, MPa.
    pub bending: Band<f64>,
    /// Modulus of elasticity along the grain, MPa.
    pub modulus: Band<f64>,
    /// Crushing strength along the grain, MPa.
    pub crushing: Band<f64>,
    /// Stress across the grain at the proportional limit, MPa.
    pub side_grain: Band<f64>,
    /// Modulus across the grain as a part of that along it.
    pub across: Band<f64>,
    /// Where these were read.
    pub sources: &'static [Source],
}

const fn one(v: f64) -> Band<f64> {
    Band::new(v, v, v)
}

const fn between(low: f64, middle: f64, high: f64) -> Band<f64> {
    Band::new(low, middle, high)
}

/// 0.1 to 0.2 % along the grain from green to bone dry (*Wood Handbook*, p. 4-5). It tells of up to 2 % in reaction
/// and juvenile wood, which no wheel should be made of.
const ALONG: Band<f64> = between(0.1, 0.15, 0.2);
/// Hardwoods of the *Wood Handbook*, Table 5-1, lie about these; where a kind does not stand there.
const ACROSS: Band<f64> = between(0.07, 0.1, 0.16);

const HANDBOOK: &[Source] = &[
    HandbookShrinkage,
    HandbookMovement,
    HandbookStrength,
    HandbookRatios,
    HandbookVariation,
];
const HANDBOOK_BUT_RATIOS: &[Source] = &[
    HandbookShrinkage,
    HandbookMovement,
    HandbookStrength,
    HandbookVariation,
    Assumed,
];

static ROWS: [Row; 12] = [
    Row {
        code: "white-ash",
        radial: one(4.9),
        tangential: one(7.8),
        along: ALONG,
        printed: Some([0.001_69, 0.002_74]),
        bending: one(103.4),
        modulus: one(12_000.0),
        crushing: one(51.1),
        side_grain: one(8.0),
        // Radial and tangential from memory.
        across: between(0.08, 0.1, 0.125),
        sources: HANDBOOK,
    },
    Row {
        code: "european-ash",
        radial: between(5.0, 5.7, 5.7),
        tangential: between(8.0, 9.6, 9.6),
        along: ALONG,
        printed: None,
        bending: between(103.6, 103.6, 120.0),
        modulus: between(12_300.0, 12_300.0, 13_400.0),
        crushing: between(51.0, 51.0, 53.3),
        // As white ash.
        side_grain: one(8.0),
        across: between(0.08, 0.1, 0.125),
        sources: &[Traders, Lavers, HandbookVariation, Assumed],
    },
    Row {
        code: "american-elm",
        radial: one(4.2),
        tangential: one(9.5),
        along: ALONG,
        printed: Some([0.001_44, 0.003_38]),
        bending: one(81.4),
        modulus: one(9_240.0),
        crushing: one(38.1),
        side_grain: one(4.8),
        across: ACROSS,
        sources: HANDBOOK_BUT_RATIOS,
    },
    Row {
        code: "rock-elm",
        radial: one(4.8),
        tangential: one(8.1),
        along: ALONG,
        printed: Some([0.001_65, 0.002_85]),
        bending: one(102.1),
        modulus: one(10_620.0),
        crushing: one(48.6),
        side_grain: one(8.5),
        across: ACROSS,
        sources: HANDBOOK_BUT_RATIOS,
    },
    Row {
        code: "english-elm",
        // 4.1 and 7.4 % were read for green to 12 %; to bone dry that is 30/18 of it.
        radial: between(4.2, 4.8, 6.8),
        tangential: between(6.9, 9.5, 12.3),
        along: ALONG,
        printed: None,
        bending: between(54.0, 65.0, 68.0),
        modulus: between(7_000.0, 7_100.0, 11_800.0),
        crushing: between(17.0, 32.0, 34.0),
        side_grain: between(4.8, 6.0, 8.5),
        across: ACROSS,
        sources: &[
            Traders,
            ToolBox,
            WoodDatabase,
            Lavers,
            HandbookVariation,
            Assumed,
        ],
    },
    Row {
        code: "wych-elm",
        radial: between(4.2, 4.8, 6.8),
        // 12.4 stands alone: volumetric shrinkage of 11.8 to 13.7 % leaves no room for it.
        tangential: between(7.4, 9.0, 12.4),
        along: ALONG,
        printed: None,
        bending: one(98.2),
        modulus: one(11_100.0),
        crushing: one(46.3),
        side_grain: between(4.8, 6.0, 8.5),
        across: ACROSS,
        sources: &[WoodDatabase, Traders, HandbookVariation, Assumed],
    },
    Row {
        code: "white-oak",
        radial: one(5.6),
        tangential: one(10.5),
        along: ALONG,
        printed: Some([0.001_8, 0.003_65]),
        bending: between(102.3, 104.8, 104.8),
        modulus: between(12_150.0, 12_270.0, 12_270.0),
        crushing: between(50.8, 51.3, 51.3),
        side_grain: one(7.4),
        across: between(0.072, 0.118, 0.163),
        sources: &[
            HandbookShrinkage,
            HandbookMovement,
            HandbookStrength,
            HandbookRatios,
            HandbookVariation,
            WoodDatabase,
        ],
    },
    Row {
        code: "red-oak",
        radial: one(4.0),
        tangential: one(8.6),
        along: ALONG,
        printed: Some([0.001_58, 0.003_69]),
        bending: one(98.6),
        modulus: one(12_500.0),
        crushing: one(46.6),
        side_grain: one(7.0),
        across: between(0.082, 0.118, 0.154),
        sources: HANDBOOK,
    },
    Row {
        code: "english-oak",
        radial: between(4.3, 4.7, 4.7),
        tangential: between(8.4, 8.4, 8.9),
        along: between(0.1, 0.15, 0.4),
        printed: None,
        bending: between(88.0, 97.1, 97.1),
        modulus: between(10_600.0, 10_600.0, 13_000.0),
        crushing: between(46.3, 51.0, 61.0),
        // Between red oak and white oak.
        side_grain: between(7.0, 7.2, 7.4),
        across: between(0.072, 0.118, 0.163),
        sources: &[WoodDatabase, EuropeanWood, HandbookVariation, Assumed],
    },
    Row {
        code: "american-beech",
        radial: one(5.5),
        tangential: one(11.9),
        along: ALONG,
        printed: Some([0.001_9, 0.004_31]),
        bending: one(102.7),
        modulus: one(11_900.0),
        crushing: one(50.3),
        side_grain: one(7.0),
        across: ACROSS,
        sources: HANDBOOK_BUT_RATIOS,
    },
    Row {
        code: "european-beech",
        radial: one(5.7),
        tangential: one(11.6),
        along: ALONG,
        printed: None,
        // Strength from memory; side grain as American beech.
        bending: between(110.0, 110.0, 118.0),
        modulus: between(12_600.0, 12_600.0, 14_300.0),
        crushing: between(56.3, 56.3, 57.0),
        side_grain: one(7.0),
        across: ACROSS,
        sources: &[WoodDatabase, Lavers, HandbookVariation, Assumed],
    },
    Row {
        code: "hickory",
        radial: between(7.0, 7.2, 7.7),
        tangential: between(10.5, 11.0, 11.5),
        along: ALONG,
        printed: Some([0.002_59, 0.004_11]),
        bending: one(139.3),
        modulus: one(14_900.0),
        crushing: one(63.5),
        side_grain: one(12.1),
        across: ACROSS,
        sources: HANDBOOK_BUT_RATIOS,
    },
];

/// The row of a timber.
pub(super) fn of(species: Species) -> &'static Row {
    // As many rows as species, in their order: a test looks.
    ROWS.get(species as usize).unwrap_or(&ROWS[0])
}
