//! What can be done about a finding, and what must be put right first.

use super::style::Style;
use super::{capital, list};
use crate::diagnosis::{Cure, InTheWay};

/// A cure, as it is told to a workshop.
#[must_use]
pub fn cure(cure: Cure, style: Style) -> String {
    capital(&style.fill(match cure {
        Cure::LeaveAndLook => "Leave it, and look again by a date.",
        Cure::TonguesBelow => "Bring the {tongue}s below the {sole}.",
        Cure::Rewedge => "Re-wedge the {tongue}s.",
        Cure::ReseatFeet => "Re-seat or shim the {feet}.",
        Cure::EaseJoint => "Ease a joint.",
        Cure::NewDowel => "Fit a new dowel.",
        Cure::NewFelloe => "Fit a new {felloe}, or half the rim.",
        Cure::PlateFelloe => "Bolt or plate the split {felloe}.",
        Cure::NewSpoke => "Fit a new spoke.",
        Cure::RenewBonds => "Drive up, shrink or renew the {bond}s.",
        Cure::WedgeBox => "Wedge and {centre} the {wheel_box}.",
        Cure::NewBox => "Fit a new {wheel_box}.",
        Cure::Washers => "Leather washers and grease.",
        Cure::NewKeeper => "Fit a new keeper.",
        Cure::RenewArm => "Straighten or renew the arm.",
        Cure::ContractTyre => "{contract} the {tyre}: upset it, or {cut_and_shut}.",
        Cure::NewTyre => "Fit a new {tyre}.",
        Cure::RenewStrake => "Re-nail the strake, or fit a new one.",
        Cure::SetDish => "Set the dish right.",
        Cure::NewNave => "Fit a new {nave}.",
        Cure::KeepAsObject => "Keep it as an object; no hot work.",
    }))
}

/// What stands in the way of a draw.
#[must_use]
pub fn in_the_way(way: InTheWay, style: Style) -> String {
    capital(&style.fill(match way {
        InTheWay::LooseFeet => "{feet} are loose: a {draw} would lean the spokes, not seat them.",
        InTheWay::FeetNotLooked => "Not every {foot} was looked at.",
        InTheWay::ProudTongues => "{tongue}s stand proud: a {draw} would push the dish out.",
        InTheWay::DishUnknown => "The dish is not known.",
        InTheWay::DishReversed => {
            "The wheel is dished the other way than it was built: the cause is found first."
        }
        InTheWay::FelloeBound => {
            "The rim is {felloe}-bound: its joints are shut, and a {draw} closes nothing."
        }
    }))
}

/// When a draw may follow: `once the feet are tight and the dish is known`.
#[must_use]
pub fn once(ways: &[InTheWay], style: Style) -> String {
    let each = ways.iter().map(|way| {
        style.fill(match way {
            InTheWay::LooseFeet => "the {feet} are tight",
            InTheWay::FeetNotLooked => "every {foot} was looked at",
            InTheWay::ProudTongues => "no {tongue} stands proud",
            InTheWay::DishUnknown => "the dish is known",
            InTheWay::DishReversed => "it is known why the dish went the other way",
            InTheWay::FelloeBound => "the rim is {felloe}-bound no more",
        })
    });
    format!("once {}", list(&each.collect::<Vec<String>>()))
}

/// Said once, before what stands in the way of every draw.
#[must_use]
pub fn before_a_draw(style: Style) -> String {
    style.fill("No {draw} before this is put right:")
}

/// Said of each cure that waits for it.
#[must_use]
pub fn waits() -> &'static str {
    "Waits for what stands in the way, above."
}

#[cfg(test)]
mod tests {
    use super::{before_a_draw, cure, in_the_way, once, waits};
    use crate::diagnosis::{Cure, InTheWay};
    use crate::words::sample::{american, style};

    #[test]
    fn every_cure_has_words() {
        insta::assert_snapshot!(Cure::ALL.map(|it| cure(it, style())).join("\n"), @r"
        Leave it, and look again by a date.
        Bring the tongues below the sole.
        Re-wedge the tongues.
        Re-seat or shim the feet.
        Ease a joint.
        Fit a new dowel.
        Fit a new felloe, or half the rim.
        Bolt or plate the split felloe.
        Fit a new spoke.
        Drive up, shrink or renew the bonds.
        Wedge and centre the box.
        Fit a new box.
        Leather washers and grease.
        Fit a new keeper.
        Straighten or renew the arm.
        Contract the tyre: upset it, or cut and shut.
        Fit a new tyre.
        Re-nail the strake, or fit a new one.
        Set the dish right.
        Fit a new nave.
        Keep it as an object; no hot work.
        ");
    }

    #[test]
    fn what_waits_says_for_what() {
        insta::assert_snapshot!(before_a_draw(style()), @"No draw before this is put right:");
        insta::assert_snapshot!(waits(), @"Waits for what stands in the way, above.");
    }

    #[test]
    fn whatever_stands_in_the_way_is_said() {
        let ways = [
            InTheWay::LooseFeet,
            InTheWay::FeetNotLooked,
            InTheWay::ProudTongues,
            InTheWay::DishUnknown,
            InTheWay::DishReversed,
            InTheWay::FelloeBound,
        ];
        insta::assert_snapshot!(ways.map(|it| in_the_way(it, style())).join("\n"), @r"
        Feet are loose: a draw would lean the spokes, not seat them.
        Not every foot was looked at.
        Tongues stand proud: a draw would push the dish out.
        The dish is not known.
        The wheel is dished the other way than it was built: the cause is found first.
        The rim is felloe-bound: its joints are shut, and a draw closes nothing.
        ");
        insta::assert_snapshot!(once(&ways, style()), @"once the feet are tight, every foot was looked at, no tongue stands proud, the dish is known, it is known why the dish went the other way and the rim is felloe-bound no more");
        insta::assert_snapshot!(in_the_way(InTheWay::ProudTongues, american()), @"Tenons stand proud: a draft would push the dish out.");
    }
}
