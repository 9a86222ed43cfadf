//! Where a number about timber was read; its words stand with the rest.

/// Where a number was read, or that it was not read at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    /// *Wood Handbook*, FPL-GTR-190 (2010), Table 4-3: shrinkage from green to dry.
    HandbookShrinkage,
    /// The same, Table 5-3: strength of small clear pieces at 12 %.
    HandbookStrength,
    /// The same, Table 5-1: how much softer wood is across the grain.
    HandbookRatios,
    /// The same, Table 5-6: how far single pieces stray from the mean of their kind.
    HandbookVariation,
    /// The same, Table 13-5: change of size for each percent of moisture, from 6 to 14 %.
    HandbookMovement,
    /// The Wood Database, wood-database.com.
    WoodDatabase,
    /// European Wood, europeanwood.org.
    EuropeanWood,
    /// Sheets of timber traders: frey-amon.at, transglobaltimbers, espen.de.
    Traders,
    /// The Engineering ToolBox, engineeringtoolbox.com.
    ToolBox,
    /// G. M. Lavers, *The strength properties of timbers* (Building Research Establishment, 1983), from memory.
    Lavers,
    /// Nothing was found: assumed between kinds that are near it.
    Assumed,
}
