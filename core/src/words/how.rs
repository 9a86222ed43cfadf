//! For each question, how it can really be taken at the cart and why it is asked, one line each.

use super::style::Style;
use super::terms::Terms;
use crate::survey::Question;

/// How and why a reading is taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HowWords {
    /// How it can really be taken.
    pub how: String,
    /// Why it is asked.
    pub why: String,
}

/// How and why a question is answered.
#[must_use]
pub fn how(question: Question, style: Style) -> HowWords {
    let (how, why) = match question {
        Question::KeeperPresent | Question::KeeperRight | Question::KeeperSecured => {
            keeper(question, style.terms)
        }
        Question::TyreGap | Question::TyreShifts => tyre(question, style.terms),
        Question::JointGap | Question::FelloeStep => joint(question, style.terms),
        Question::SpokeFoot | Question::SpokeRimEnd | Question::SpokeBroken => {
            spoke(question, style.terms)
        }
    };
    HowWords { how, why }
}

fn keeper(question: Question, terms: &Terms) -> (String, String) {
    let Terms { linch_pin, .. } = terms;
    match question {
        Question::KeeperPresent => (
            format!("Look at the end of the arm: {linch_pin}, nut, cap or plate. Clean the grease off to be sure."),
            "Without it the wheel can walk off its arm.".to_owned(),
        ),
        Question::KeeperRight => (
            "See that it fills its hole or thread and was made for it; a nail, wire or odd bolt is a no.".to_owned(),
            "A nail shears or drops out where the proper part holds.".to_owned(),
        ),
        _ => (
            "Try it with finger and thumb: a pin must be tied or tight, a nut held by its cotter or thread, plate bolts tight.".to_owned(),
            "What is there but can turn or lift will be gone after some miles.".to_owned(),
        ),
    }
}

fn tyre(question: Question, terms: &Terms) -> (String, String) {
    let Terms {
        tyre, sole, felloe, ..
    } = terms;
    match question {
        Question::TyreGap => (
            format!(
                "Wheel lifted, in at least four places evenly spaced: the thickest leaf that goes in between {tyre} and {sole}, resting on sound wood."
            ),
            format!(
                "A {tyre} that stands off no longer squeezes the {felloe}s and spokes together."
            ),
        ),
        _ => (
            format!(
                "Wheel lifted: push the {tyre} sideways and round with both hands and watch its edge against the wood."
            ),
            format!("A {tyre} that moves by hand can run off the rim."),
        ),
    }
}

fn joint(question: Question, terms: &Terms) -> (String, String) {
    let Terms {
        tyre, sole, felloe, ..
    } = terms;
    match question {
        Question::JointGap => (
            format!(
                "Feeler in the joint at the {sole}, where it meets the {tyre}; clear out packed dirt first, and say if it will not come out."
            ),
            format!(
                "Open joints add up: together they are room for the rim to shrink and the {tyre} to come loose."
            ),
        ),
        _ => (
            format!(
                "A straight edge across the two {felloe}s at the joint, and a feeler under it where it does not touch."
            ),
            format!("A step shows that the dowel has let go and one {felloe} has shifted."),
        ),
    }
}

fn spoke(question: Question, terms: &Terms) -> (String, String) {
    let Terms {
        tyre,
        nave,
        foot,
        tongue,
        felloe,
        ..
    } = terms;
    let hand = "Wheel lifted, spoke at the top: work it by hand at mid-length along the rim, in and out, up and down";
    match question {
        Question::SpokeFoot => (
            format!(
                "{hand}; watch the line where it enters the {nave}, and look for rust, dust or broken paint there."
            ),
            format!(
                "A loose {foot} wears its mortise, and no {tyre} however tight makes it fast again."
            ),
        ),
        Question::SpokeRimEnd => (
            format!("{hand}; watch the shoulder at the {felloe}, and tap it."),
            format!(
                "A loose {tongue} lets the {felloe} wander; a tight {tyre} can hide it, so a rattle or dust counts."
            ),
        ),
        _ => (
            format!(
                "Look along each spoke on both sides and flex it; cracks hide under paint and close to the {nave}."
            ),
            "Each broken spoke throws its load on the two beside it.".to_owned(),
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::how;
    use crate::survey::Question;
    use crate::words::sample::style;

    #[test]
    fn every_question_says_how_and_why() {
        let row = |question| {
            let words = how(question, style());
            format!("{question:?}: {} Why: {}", words.how, words.why)
        };
        insta::assert_snapshot!(Question::all().map(row).collect::<Vec<_>>().join("\n"), @r"
        KeeperPresent: Look at the end of the arm: linch pin, nut, cap or plate. Clean the grease off to be sure. Why: Without it the wheel can walk off its arm.
        KeeperRight: See that it fills its hole or thread and was made for it; a nail, wire or odd bolt is a no. Why: A nail shears or drops out where the proper part holds.
        KeeperSecured: Try it with finger and thumb: a pin must be tied or tight, a nut held by its cotter or thread, plate bolts tight. Why: What is there but can turn or lift will be gone after some miles.
        TyreGap: Wheel lifted, in at least four places evenly spaced: the thickest leaf that goes in between tyre and sole, resting on sound wood. Why: A tyre that stands off no longer squeezes the felloes and spokes together.
        TyreShifts: Wheel lifted: push the tyre sideways and round with both hands and watch its edge against the wood. Why: A tyre that moves by hand can run off the rim.
        JointGap: Feeler in the joint at the sole, where it meets the tyre; clear out packed dirt first, and say if it will not come out. Why: Open joints add up: together they are room for the rim to shrink and the tyre to come loose.
        FelloeStep: A straight edge across the two felloes at the joint, and a feeler under it where it does not touch. Why: A step shows that the dowel has let go and one felloe has shifted.
        SpokeFoot: Wheel lifted, spoke at the top: work it by hand at mid-length along the rim, in and out, up and down; watch the line where it enters the nave, and look for rust, dust or broken paint there. Why: A loose foot wears its mortise, and no tyre however tight makes it fast again.
        SpokeRimEnd: Wheel lifted, spoke at the top: work it by hand at mid-length along the rim, in and out, up and down; watch the shoulder at the felloe, and tap it. Why: A loose tongue lets the felloe wander; a tight tyre can hide it, so a rattle or dust counts.
        SpokeBroken: Look along each spoke on both sides and flex it; cracks hide under paint and close to the nave. Why: Each broken spoke throws its load on the two beside it.
        ");
    }
}
