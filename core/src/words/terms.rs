//! The one table of trade words that differ from country to country. A second table of the same
//! shape is all that another country's words need.

/// Words of the trade, each in the singular and without an article.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Terms {
    /// The iron ring, or what stands in its stead.
    pub tyre: &'static str,
    /// The middle of the wheel, into which the spokes are driven.
    pub nave: &'static str,
    /// An iron ring on the nave.
    pub bond: &'static str,
    /// A length of the rim.
    pub felloe: &'static str,
    /// The outside of the rim, on which the tyre sits.
    pub sole: &'static str,
    /// The end of a spoke in the nave.
    pub foot: &'static str,
    /// The end of a spoke in the felloe.
    pub tongue: &'static str,
    /// The pin through the end of an arm.
    pub linch_pin: &'static str,
    /// Four wheels, for goods.
    pub waggon: &'static str,
    /// The wheel's movement along its arm.
    pub end_play: &'static str,
}

/// British words.
pub const BRITISH: Terms = Terms {
    tyre: "tyre",
    nave: "nave",
    bond: "bond",
    felloe: "felloe",
    sole: "sole",
    foot: "foot",
    tongue: "tongue",
    linch_pin: "linch pin",
    waggon: "waggon",
    end_play: "end play",
};
