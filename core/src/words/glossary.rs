//! Words of the trade, each explained in one plain line.

use super::style::Style;

/// Each word with its line; words that differ from country to country stand by their name.
const LINES: [(&str, &str); 41] = [
    ("arm", "The end of the axle that the wheel turns on."),
    ("{belly}", "The inside of the rim, towards the {nave}."),
    (
        "{bond}",
        "An iron ring round the {nave} that keeps it from splitting.",
    ),
    (
        "{wheel_box}",
        "The iron lining of the {nave} that turns on the arm.",
    ),
    (
        "Collinge axle",
        "An oil-fed axle end closed by two nuts of opposite thread and a cap.",
    ),
    (
        "{contract}",
        "To make a {tyre} smaller, by squeezing it together hot or by cutting a piece out.",
    ),
    (
        "{cut_and_shut}",
        "To cut a piece out of a {tyre} and weld it closed.",
    ),
    (
        "dish",
        "How far the rim stands out from where the spokes enter the {nave}: the wheel is a shallow cone.",
    ),
    ("dowel", "A peg that joins the ends of two {felloe}s."),
    (
        "{draw}",
        "How much smaller round the {tyre} is made than the wheel.",
    ),
    ("{end_play}", "How far the wheel slides along its arm."),
    ("face", "The side of the wheel away from the cart."),
    ("feeler", "A set of thin leaves for measuring gaps."),
    (
        "{felloe}",
        "A curved length of the wooden rim, with its spokes.",
    ),
    (
        "{felloe}-bound",
        "A rim whose joints shut before the spokes are home.",
    ),
    ("{foot}", "The end of a spoke in the {nave}."),
    ("hoop", "A {tyre} in one ring, shrunk on hot."),
    (
        "keeper",
        "What keeps the wheel on its arm: pin, nut, cap or plate.",
    ),
    (
        "{linch_pin}",
        "A pin through the end of the arm, outside the wheel.",
    ),
    (
        "mail axle",
        "An axle whose wheel is kept on by a plate behind the {nave} and three bolts.",
    ),
    ("mark", "The one joint that all places are counted from."),
    ("mortise", "A hole cut for a {foot} or a {tongue}."),
    ("{nave}", "The wooden middle of the wheel."),
    ("off", "The right side, as the driver sits."),
    ("near", "The left side, as the driver sits."),
    ("proud", "Standing out above the wood around it."),
    ("run-out", "How far the rim wanders in and out in one turn."),
    (
        "{running_face}",
        "The side of the {tyre} that runs on the ground.",
    ),
    (
        "shake",
        "A split that grew with the tree; also the movement of a wheel rocked on its arm.",
    ),
    (
        "shoulder",
        "The step on a spoke that should sit tight on the {felloe}.",
    ),
    ("skein", "Iron plating on a wooden arm."),
    (
        "{sole}",
        "The outside of the rim, on which the {tyre} sits.",
    ),
    (
        "stand-off",
        "The gap between a spoke's shoulder and the {felloe}.",
    ),
    (
        "strake",
        "A length of iron nailed over one joint, where there is no hoop.",
    ),
    ("{tongue}", "The end of a spoke in the {felloe}."),
    (
        "traveller",
        "A small wheel run round rim and {tyre} to measure them.",
    ),
    ("{tyre}", "The iron that the wheel runs on."),
    (
        "{tyring}",
        "Putting a {tyre} on hot and cooling it, so that it draws the wheel together.",
    ),
    ("upset", "To squeeze hot iron shorter and thicker."),
    ("{waggon}", "Four wheels, for goods."),
    (
        "wedge",
        "A sliver driven into the end of a {tongue} to spread it.",
    ),
];

/// Every word with its line, as it stands in the table.
pub fn glossary(style: Style) -> impl Iterator<Item = (String, String)> {
    LINES
        .into_iter()
        .map(move |(word, line)| (style.fill(word), style.fill(line)))
}

/// The line that explains this word; `None` for a word that is not in the table.
#[must_use]
pub fn explain(word: &str, style: Style) -> Option<String> {
    glossary(style)
        .find(|(known, _)| known == word)
        .map(|(_, line)| line)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::{explain, glossary};
    use crate::words::sample::{american, style};
    use crate::words::terms::BRITISH;

    #[test]
    fn every_word_has_its_line_and_stands_once() {
        for style in [style(), american()] {
            let words: BTreeSet<String> = glossary(style).map(|(word, _)| word).collect();
            assert_eq!(words.len(), glossary(style).count());
            for (word, line) in glossary(style) {
                assert!(line.ends_with('.') && !line.contains(['{', '}']), "{line}");
                assert_eq!(explain(&word, style), Some(line));
            }
        }
        assert_eq!(explain("spline", style()), None);
    }

    /// Whatever differs from country to country is explained, but for a plural and a spelling.
    #[test]
    fn every_word_that_differs_is_explained() {
        for name in [
            "tyre",
            "tyring",
            "nave",
            "bond",
            "wheel_box",
            "felloe",
            "sole",
            "belly",
            "running_face",
            "foot",
            "tongue",
            "linch_pin",
            "waggon",
            "end_play",
            "draw",
            "contract",
            "cut_and_shut",
        ] {
            let word = BRITISH.word(name).unwrap();
            assert!(explain(word, style()).is_some(), "{word}");
        }
    }

    #[test]
    fn a_line_speaks_the_readers_words() {
        insta::assert_snapshot!(explain("bond", style()).unwrap(), @"An iron ring round the nave that keeps it from splitting.");
        insta::assert_snapshot!(explain("band", american()).unwrap(), @"An iron ring round the hub that keeps it from splitting.");
    }
}
