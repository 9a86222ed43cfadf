//! Cautions: what to do before lifting, what is never done at the cart, and what no finding gives
//! leave to do. All are common practice, no source; local rules come first.

use super::style::Style;
use super::terms::Terms;

/// A card of cautions.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Card {
    /// What it is about.
    pub heading: String,
    /// Its sentences, in the order in which they are to be heeded.
    pub lines: Vec<String>,
}

/// Before a wheel is lifted.
#[must_use]
pub fn before_lifting() -> Card {
    card(
        "Before lifting",
        &[
            "Take the horse out.",
            "Stand on hard, level ground.",
            "Chock the wheels that stay down.",
            "Prop the shafts front and back: a two-wheeled cart tips.",
            "Set the axle on a stand; never trust the jack alone.",
            "Keep hands out from between the spokes.",
            "Take the pin or nut off only when the weight is off the wheel.",
        ],
    )
}

/// What is never done at the cart.
#[must_use]
pub fn never_at_the_cart(style: Style) -> Card {
    let Terms { tyre, .. } = style.terms;
    card(
        "Never at the cart",
        &[
            "No fire and no sparks in or near a barn.",
            &format!("Do not drive a {tyre} off; that is shop work."),
            "Do not sand or burn old paint: it may hold lead.",
            "Do not prick show paint without asking.",
            &format!("Promise no amount to take out of a {tyre} before it is off."),
        ],
    )
}

/// What findings are not.
#[must_use]
pub fn no_permission() -> Card {
    card(
        "What this does not say",
        &[
            "No finding, standing or figure here is leave to load, to carry people or to go on a road.",
            "The law, local codes and the site's own rules come first, and so does the word of whoever is licensed or answers for the vehicle where it is used.",
            "In Great Britain a vehicle on the highway should be kept by the Code of Practice for Horse-Drawn Vehicles (Department for Transport, 2000; Highway Code, rule 47). It has a check list of its own, in whose place nothing here stands.",
            "No published limit in figures for the wear of a wooden wheel is known to us: none was found in the trade books, army specifications, farm papers and road laws read. The check list of that Code was not among them.",
            "Whoever examined it decides and signs; this only proposes.",
        ],
    )
}

/// What is taken for a cure and is none.
#[must_use]
pub fn no_cure(style: Style) -> Card {
    let Terms { tyre, .. } = style.terms;
    card(
        "What is no cure",
        &[
            "Bolting or re-nailing is never a cure for a loose hoop: it only stops it falling off.",
            "Soaking stands in an old army manual (Field Artillery Materiel, about 1918), and farm and craft pages call it harmful. It is for an emergency: it passes, it hastens decay, and it is never done before carrying people.",
            &format!(
                "Drying does not excuse slack it cannot cause: what a {tyre} has lost beyond it is wear, crushing, decay or fitting."
            ),
            "Wheels are not changed side for side.",
        ],
    )
}

fn card(heading: &str, lines: &[&str]) -> Card {
    Card {
        heading: heading.to_owned(),
        lines: lines.iter().map(|line| (*line).to_owned()).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::{Card, before_lifting, never_at_the_cart, no_cure, no_permission};
    use crate::words::sample::style;

    fn told(card: &Card) -> String {
        format!("{}\n{}", card.heading, card.lines.join("\n"))
    }

    #[test]
    fn every_card_says_its_cautions() {
        insta::assert_snapshot!(told(&before_lifting()), @r"
        Before lifting
        Take the horse out.
        Stand on hard, level ground.
        Chock the wheels that stay down.
        Prop the shafts front and back: a two-wheeled cart tips.
        Set the axle on a stand; never trust the jack alone.
        Keep hands out from between the spokes.
        Take the pin or nut off only when the weight is off the wheel.
        ");
        insta::assert_snapshot!(told(&never_at_the_cart(style())), @r"
        Never at the cart
        No fire and no sparks in or near a barn.
        Do not drive a tyre off; that is shop work.
        Do not sand or burn old paint: it may hold lead.
        Do not prick show paint without asking.
        Promise no amount to take out of a tyre before it is off.
        ");
        insta::assert_snapshot!(told(&no_cure(style())), @r"
        What is no cure
        Bolting or re-nailing is never a cure for a loose hoop: it only stops it falling off.
        Soaking stands in an old army manual (Field Artillery Materiel, about 1918), and farm and craft pages call it harmful. It is for an emergency: it passes, it hastens decay, and it is never done before carrying people.
        Drying does not excuse slack it cannot cause: what a tyre has lost beyond it is wear, crushing, decay or fitting.
        Wheels are not changed side for side.
        ");
        insta::assert_snapshot!(told(&no_permission()), @r"
        What this does not say
        No finding, standing or figure here is leave to load, to carry people or to go on a road.
        The law, local codes and the site's own rules come first, and so does the word of whoever is licensed or answers for the vehicle where it is used.
        In Great Britain a vehicle on the highway should be kept by the Code of Practice for Horse-Drawn Vehicles (Department for Transport, 2000; Highway Code, rule 47). It has a check list of its own, in whose place nothing here stands.
        No published limit in figures for the wear of a wooden wheel is known to us: none was found in the trade books, army specifications, farm papers and road laws read. The check list of that Code was not among them.
        Whoever examined it decides and signs; this only proposes.
        ");
    }
}
