//! What must have been recorded before a wheel is judged, as words that fit into a list.

use super::style::Style;
use super::terms::Terms;
use crate::survey::Need;

/// One need, as a phrase.
#[must_use]
pub fn need(need: Need, style: Style) -> String {
    let Terms {
        tyre,
        foot,
        tongue,
        nave,
        bond,
        end_play,
        ..
    } = style.terms;
    match need {
        Need::Keeper => "what keeps the wheel on (there, the right part, secured)".to_owned(),
        Need::Ring => format!("the ring of the {tyre} at four places"),
        Need::Joints => "the gap of every joint".to_owned(),
        Need::SpokeFeet => format!("the {foot} of every spoke"),
        Need::SpokeRimEnds => "the rim end of every spoke".to_owned(),
        Need::SpokesWhole => "whether any spoke is broken".to_owned(),
        Need::TyreGap => format!("the gap under the {tyre} at four places"),
        Need::Strakes => "every strake".to_owned(),
        Need::Dish => "the dish".to_owned(),
        Need::EndPlayAndShake => format!("{end_play} along the arm and shake at the rim"),
        Need::Rot => {
            format!("rot (pricked for at the {tongue}s, the spokes' feet and the ground point)")
        }
        Need::NaveAndBonds => format!("the {nave} and its {bond}s"),
    }
}

#[cfg(test)]
mod tests {
    use super::need;
    use crate::survey::Need;
    use crate::words::sample::style;

    #[test]
    fn every_need_has_words() {
        insta::assert_snapshot!(Need::ALL.map(|what| need(what, style())).join("\n"), @r"
        what keeps the wheel on (there, the right part, secured)
        the ring of the tyre at four places
        the gap of every joint
        the foot of every spoke
        the rim end of every spoke
        whether any spoke is broken
        the gap under the tyre at four places
        every strake
        the dish
        end play along the arm and shake at the rim
        rot (pricked for at the tongues, the spokes' feet and the ground point)
        the nave and its bonds
        ");
    }
}
