//! Words of the trade, each explained in one plain line.

use super::style::Style;
use super::within;

/// Each word with its line; words that differ from country to country stand by their name.
const LINES: [(&str, &str); 56] = [
    ("arm", "The end of the axle that the wheel turns on."),
    (
        "back-dished",
        "Dished the wrong way: the rim leans in towards the cart.",
    ),
    (
        "bent rim",
        "A rim of one or two lengths steamed and bent round.",
    ),
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
    ("joint", "Where the ends of two {felloe}s meet."),
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
    (
        "moisture",
        "Water in the wood, as a share of what the wood weighs dry. Dry wood shrinks, and what it held comes loose.",
    ),
    ("mortise", "A hole cut for a {foot} or a {tongue}."),
    ("{nave}", "The wooden middle of the wheel."),
    ("near wheel", "The wheel on the left, as the driver sits."),
    ("off wheel", "The wheel on the right, as the driver sits."),
    ("near fore", "At the front, on the left as the driver sits."),
    ("off fore", "At the front, on the right as the driver sits."),
    ("near hind", "At the back, on the left as the driver sits."),
    ("off hind", "At the back, on the right as the driver sits."),
    (
        "nip",
        "What is left of the {draw} to grip with, once the joints are shut.",
    ),
    (
        "out of round",
        "How far the rim rises and falls in one turn.",
    ),
    ("proud", "Standing out above the wood around it."),
    ("play", "How far a part moves in its place before it stops."),
    ("rim", "The {felloe}s, all round the wheel."),
    (
        "ring",
        "The sound of a {tyre} under a hammer: a tight one rings, a loose one thuds.",
    ),
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
    ("spoke", "A bar of wood from the {nave} to the rim."),
    (
        "shrunk on",
        "Put on hot and a little too small, so that it grips as it cools.",
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

/// A word of the trade.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Term {
    /// The word, as the reader says it.
    pub word: String,
    /// What it is called in the other country, where that is another word.
    pub other: Option<String>,
    /// What it means, in one line.
    pub line: String,
}

fn term(word: &str, line: &str, style: Style) -> Term {
    let other = style.terms.other().fill(word);
    let word = style.fill(word);
    Term {
        other: (other != word).then_some(other),
        line: style.fill(line),
        word,
    }
}

/// Every word with its line, as it stands in the table.
pub fn glossary(style: Style) -> impl Iterator<Item = Term> {
    let lines = LINES.into_iter();
    lines.map(move |(word, line)| term(word, line, style))
}

/// The line that explains this word; `None` for a word that is not in the table.
#[must_use]
pub fn explain(word: &str, style: Style) -> Option<String> {
    glossary(style)
        .find(|term| term.word == word)
        .map(|term| term.line)
}

/// The words of the trade that stand in a text, alone or as several (`spokes`), in the order of the
/// table.
#[must_use]
pub fn terms_in(text: &str, style: Style) -> Vec<Term> {
    let text = text.to_ascii_lowercase();
    let held = |word: &str| stands_alone(&text, &style.fill(word).to_ascii_lowercase());
    let lines = LINES.into_iter().filter(|(word, _)| held(word));
    lines.map(|(word, line)| term(word, line, style)).collect()
}

/// Whether a word stands somewhere in a text with no letter beside it, alone or as several.
fn stands_alone(text: &str, word: &str) -> bool {
    let (mut before, mut rest) = (None, text);
    while let Some(at) = within::find(rest, word) {
        let (passed, after) = rest.split_at(at);
        let before_it = passed.as_bytes().last().copied().or(before);
        rest = after.get(word.len()..).unwrap_or_default();
        before = word.as_bytes().last().copied();
        let after = rest.strip_prefix('s').unwrap_or(rest).as_bytes().first();
        // Sentences here hold letters of ASCII; the table of all others weighs more than a page of code.
        let ends = |letter: Option<u8>| letter.is_none_or(|letter| !letter.is_ascii_alphabetic());
        if ends(before_it) && ends(after.copied()) {
            return true;
        }
    }
    false
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::{explain, glossary, terms_in};
    use crate::survey::{Group, Question};
    use crate::wheel::{Arm, Keeper, Place, Position, Rim, Size, Tyre};
    use crate::words::sample::{american, style};
    use crate::words::terms::BRITISH;
    use crate::words::{Style, place, question, term};

    #[test]
    fn every_word_has_its_line_and_stands_once() {
        for style in [style(), american()] {
            let words: BTreeSet<String> = glossary(style).map(|term| term.word).collect();
            assert_eq!(words.len(), glossary(style).count());
            for super::Term { word, line, .. } in glossary(style) {
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

    /// Words of everyday speech that stand in titles.
    const PLAIN: &str = "a and arm as at bare binds bolts box broken built cap channel cracked cracks depth \
        first gap gives height holds in iron length linch look left moves new nailed no nut nuts of off-centre \
        off-center on only out over part pin plate right rot rubber sawn secured shifts step the there thickness \
        three two wear what whole width wheel wood wooden fore hind between it keeps with end next";

    /// The title of every question, group and place, and of everything that is said of how a wheel is
    /// built.
    fn titles(style: Style) -> Vec<String> {
        let mut titles: Vec<String> = Question::all()
            .map(|it| question::short(it, style))
            .collect();
        titles.extend(Group::ALL.map(|it| question::group(it, style)));
        let places = [
            Place::Whole,
            Place::Nave,
            Place::Spoke(1),
            Place::Between(1),
            Place::Joint(2),
            Place::Joint(1),
            Place::Felloe(1),
        ];
        titles.extend(places.map(|it| place::place(it, None, style)));
        titles.extend(Position::ALL.map(place::wheel_at));
        titles.extend(Rim::ALL.map(|it| term::rim(it, style)));
        titles.extend(Tyre::ALL.map(|it| term::tyre(it, style)));
        titles.extend(Arm::ALL.map(|it| term::arm(it).to_owned()));
        titles.extend(Keeper::ALL.map(|it| term::keeper(it, style).to_owned()));
        titles.extend(Size::ALL.map(|it| term::size(it, style)));
        titles
    }

    /// Whoever adds a title with a word of the trade adds the word's line too.
    #[test]
    fn every_word_of_the_trade_in_a_title_is_explained() {
        for style in [style(), american()] {
            let mut left = BTreeSet::new();
            for title in titles(style) {
                let explained: Vec<String> = terms_in(&title, style)
                    .into_iter()
                    .flat_map(|term| {
                        term.word
                            .to_ascii_lowercase()
                            .split(' ')
                            .map(str::to_owned)
                            .collect::<Vec<_>>()
                    })
                    .collect();
                for word in title.split([' ', ',']).filter(|word| !word.is_empty()) {
                    let word = word.to_ascii_lowercase();
                    let number = word.chars().all(|letter| letter.is_ascii_digit());
                    let plain = PLAIN.split_whitespace().any(|plain| plain == word);
                    let one = word.trim_end_matches('s');
                    let known = explained.iter().any(|it| *it == word || it == one);
                    if !(number || plain || known) {
                        left.insert(word);
                    }
                }
            }
            assert_eq!(left, BTreeSet::new());
        }
    }

    #[test]
    fn words_are_found_alone_and_as_several_and_not_within_others() {
        let words = |text, style| -> Vec<String> {
            terms_in(text, style)
                .into_iter()
                .map(|term| term.word)
                .collect()
        };
        insta::assert_snapshot!(words("Do the bonds on the nave hold?", style()).join(", "), @"bond, nave");
        insta::assert_snapshot!(words("Do the bands on the hub hold?", american()).join(", "), @"band, hub");
        insta::assert_snapshot!(words("Felloe-bound: draw, near wheel", style()).join(", "), @"draw, felloe, felloe-bound, near wheel");
        assert_eq!(
            words("farm, naves'eye, a warming dishes", style()),
            ["nave"]
        );
        assert_eq!(words("", style()), [""; 0]);
    }

    #[test]
    fn the_other_country_s_word_stands_beside() {
        let beside = |style| -> Vec<String> {
            let terms = glossary(style);
            terms
                .filter_map(|it| Some(format!("{} ({})", it.word, it.other?)))
                .collect()
        };
        insta::assert_snapshot!(beside(style()).join(", "), @"bond (band), box (boxing), contract (shrink), cut and shut (cut and weld), draw (draft), linch pin (linchpin), nave (hub), running face (wearing face), sole (tread), tongue (tenon), tyre (tire), tyring (setting tires), waggon (wagon)");
        assert!(beside(american()).contains(&"hub (nave)".to_owned()));
    }

    #[test]
    fn a_line_speaks_the_readers_words() {
        insta::assert_snapshot!(explain("bond", style()).unwrap(), @"An iron ring round the nave that keeps it from splitting.");
        insta::assert_snapshot!(explain("band", american()).unwrap(), @"An iron ring round the hub that keeps it from splitting.");
    }
}
