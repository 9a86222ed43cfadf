//! What drying explains of a slack, in words, and what is left over.

use super::grip::rough;
use super::style::Style;
use crate::mechanics::Slack;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::quantity::{Band, Length};

/// What drying explains of a slack that was measured.
#[must_use]
pub fn explains(slack: Slack, measured: Length, explained: &Band<Length>, style: Style) -> String {
    let read = |length: Length| match slack {
        Slack::TyreShut | Slack::TyreOpen => style.size(length),
        _ => style.gap(length),
    };
    let what = name(slack);
    let said = if to_paper_mm(explained.high) <= 0.0 {
        format!("The wood has not dried, so drying explains nothing of {what}.")
    } else if measured <= explained.high {
        format!(
            "Drying alone may explain {what}: {} were measured, and it can make up to {}.",
            read(measured),
            rough(explained.high.max(measured), style)
        )
    } else {
        format!(
            "Drying does not explain {what}: {} were measured, and it makes {} at the most. The rest is wear, crushing, decay or fitting.",
            read(measured),
            rough(explained.high.max(millimetres(0.5)), style)
        )
    };
    style.fill(&said)
}

/// By what drying shows in a rim.
#[must_use]
pub fn signs(style: Style) -> String {
    style.fill("A rim that has dried while its joints are shut shows it by shoulders that stand off and joints that gape at the {belly}; the {tyre} stays tight over the joints.")
}

fn name(slack: Slack) -> &'static str {
    match slack {
        Slack::TyreShut => "a slack {tyre}, the joints being shut",
        Slack::TyreOpen => "a slack {tyre}, the joints being open",
        Slack::UnderFelloe => "daylight under the middle of a {felloe}",
        Slack::Joint => "a joint open at the {sole}",
        Slack::Belly => "a joint open at the {belly}",
        Slack::StandOff => "a shoulder that stands off",
        Slack::Foot => "a {foot} that gives",
        Slack::Tongue => "a {tongue} that gives",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::material::MoistureContent;
    use crate::mechanics::sample::cart;
    use crate::mechanics::{Damp, explains as reckoned};
    use crate::words::sample::{american, style};

    fn dried(slack: Slack, measured: f64, from: f64, to: f64, style: Style) -> String {
        let [from, to] = [from, to].map(|v| Damp::even(MoistureContent::from_percent(v).unwrap()));
        explains(
            slack,
            millimetres(measured),
            &reckoned(&cart(), slack, from, to),
            style,
        )
    }

    #[test]
    fn a_slack_tyre_is_not_excused_by_drying() {
        insta::assert_snapshot!(dried(Slack::TyreShut, 6.0, 16.0, 10.0, style()), @"Drying does not explain a slack tyre, the joints being shut: 6 mm were measured, and it makes 1.5 mm at the most. The rest is wear, crushing, decay or fitting.");
        insta::assert_snapshot!(dried(Slack::TyreShut, 1.0, 16.0, 10.0, style()), @"Drying alone may explain a slack tyre, the joints being shut: 1 mm were measured, and it can make up to 1.5 mm.");
        insta::assert_snapshot!(dried(Slack::TyreOpen, 6.0, 16.0, 10.0, american()), @"Drying alone may explain a slack tire, the joints being open: ≈ 1/4 in were measured, and it can make up to 1 3/16 in.");
        insta::assert_snapshot!(dried(Slack::TyreShut, 6.0, 10.0, 16.0, style()), @"The wood has not dried, so drying explains nothing of a slack tyre, the joints being shut.");
        insta::assert_snapshot!(signs(style()), @"A rim that has dried while its joints are shut shows it by shoulders that stand off and joints that gape at the belly; the tyre stays tight over the joints.");
    }

    #[test]
    fn every_slack_has_its_name() {
        let rows = Slack::ALL.map(|it| dried(it, 40.0, 16.0, 10.0, style()));
        insta::assert_snapshot!(rows.join("\n"), @r"
        Drying does not explain a slack tyre, the joints being shut: 40 mm were measured, and it makes 1.5 mm at the most. The rest is wear, crushing, decay or fitting.
        Drying does not explain a slack tyre, the joints being open: 40 mm were measured, and it makes 29.5 mm at the most. The rest is wear, crushing, decay or fitting.
        Drying does not explain daylight under the middle of a felloe: 40 mm were measured, and it makes 1.5 mm at the most. The rest is wear, crushing, decay or fitting.
        Drying does not explain a joint open at the sole: 40 mm were measured, and it makes 0.5 mm at the most. The rest is wear, crushing, decay or fitting.
        Drying does not explain a joint open at the belly: 40 mm were measured, and it makes 1.5 mm at the most. The rest is wear, crushing, decay or fitting.
        Drying does not explain a shoulder that stands off: 40 mm were measured, and it makes 4.5 mm at the most. The rest is wear, crushing, decay or fitting.
        Drying does not explain a foot that gives: 40 mm were measured, and it makes 1.5 mm at the most. The rest is wear, crushing, decay or fitting.
        Drying does not explain a tongue that gives: 40 mm were measured, and it makes 0.5 mm at the most. The rest is wear, crushing, decay or fitting.
        ");
    }
}
