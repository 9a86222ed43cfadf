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

/// Before the fire for a tyre is lit.
#[must_use]
pub fn light_the_fire(style: Style) -> Card {
    let Terms { tyre, sole, .. } = style.terms;
    card(
        "Before the fire is lit",
        &[
            "Local fire rules come first: a permit, a ban in dry weather, the distance from buildings. Ask before, and have whoever is trained for hot work in charge.",
            "In the open, on bare ground, away from the barn, straw, hedges and parked vehicles; note where the smoke goes.",
            "Water laid on: hose or full buckets and cans, more than the wheel needs; a bucket for burns beside them.",
            "Old lead paint, zinc or tar on wheel or iron: their fumes poison. Take them off first, and not by burning; nobody stands in the smoke.",
            "Oil and grease off the wheel: box, nave and felloes catch fire.",
            "Eye cover, leather boots and gloves, wool or cotton clothes; no loose sleeves.",
            &format!(
                "Three or more people for a heavy {tyre}, tongs and dogs for each, and one who calls every step. Try the lift and the way cold, once."
            ),
            "The wheel lies face down, fast on its plate, level, the nave in the hole, before anything is hot.",
            &format!("Nobody inside the ring, nobody under it, no hand between {tyre} and {sole}."),
            "Children and onlookers behind a rope; the horse elsewhere.",
            "Stay until the embers are dead, and look again an hour later.",
        ],
    )
}

/// Before a hot tyre is cooled with water.
#[must_use]
pub fn quench(style: Style) -> Card {
    let Terms { tyre, felloe, .. } = style.terms;
    card(
        "Before water goes on",
        &[
            &format!(
                "Iron that nobody knows may be steel that hardens: spark-test the {tyre} beforehand. Quenched, it may crack at the weld."
            ),
            &format!(
                "Water goes on where the {felloe} burns first, then evenly round; steam scalds, so pour from the side and keep faces back."
            ),
            "Look at the weld before anyone strikes the wheel.",
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
