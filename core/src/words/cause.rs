//! What may have brought a finding about, and by what each cause is told from the others.

use super::capital;
use super::style::Style;
use crate::diagnosis::{Cause, Told};

/// A cause in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CauseWords {
    /// What it is.
    pub name: String,
    /// What would tell it apart.
    pub told_by: String,
}

/// Puts a cause into words.
#[must_use]
pub fn cause(cause: Cause, style: Style) -> CauseWords {
    let (name, told_by) = words(cause);
    CauseWords {
        name: style.fill(name),
        told_by: capital(&style.fill(told_by)),
    }
}

/// What the readings say of a cause, where they say anything.
#[must_use]
pub fn told(told: Told) -> Option<&'static str> {
    match told {
        Told::For => Some("The readings speak for it."),
        Told::Silent => None,
        Told::Against => Some("The readings speak against it."),
    }
}

fn words(cause: Cause) -> (&'static str, &'static str) {
    match cause {
        Cause::DryRim => (
            "the rim has dried",
            "Joints open at the {belly}, shoulders off, a low moisture; it was tighter in the wet season. With shut joints drying alone loosens a {tyre} by about 1 mm in 4 m round for 6 % of moisture, no more.",
        ),
        Cause::Unseasoned => (
            "made of wood that was not dry",
            "Everything slack alike, soon after it was made or mended.",
        ),
        Cause::NaveShrunk => (
            "the {nave} has shrunk",
            "All {feet} loose alike, and the {bond}s with them.",
        ),
        Cause::FelloeBound => (
            "{felloe}-bound: the rim is too long for its spokes",
            "Shoulders off while the joints are shut: the sum of both says so.",
        ),
        Cause::ProudTongues => (
            "{tongue}s stand proud and carry the {tyre}",
            "Daylight under the {tyre} between the spokes, none over them.",
        ),
        Cause::TyreStretched => (
            "the {tyre} is worn thin and has stretched",
            "Little iron left, joints open, {feet} tight.",
        ),
        Cause::OtherBed => (
            "the {tyre} was put back in another place",
            "The marks of the joints inside the {tyre} do not lie over the joints; it bears in patches.",
        ),
        Cause::OverDrawn => (
            "the {tyre} was drawn too hard",
            "Every joint shut, spokes bowed, more dish than it was built with.",
        ),
        Cause::CrushedWood => (
            "wood crushed where it bears",
            "Bruised, shiny or mushroomed wood, and more slack than drying explains.",
        ),
        Cause::Rot => (
            "rot",
            "The point goes in without force; the wood is dark, or breaks short.",
        ),
        Cause::Worm => ("worm", "Round holes; fresh dust if it is alive."),
        Cause::StoodWet => (
            "it stood wet",
            "Worst in the part that stood lowest, or under heavy paint.",
        ),
        Cause::Grease => (
            "grease has soaked in",
            "Dark, soft wood that smells of grease, from the {wheel_box} outwards.",
        ),
        Cause::RunLoose => (
            "run with a loose {tyre}",
            "{feet} worn to a wedge, rust or dust at the shoulder, the {tyre} dull.",
        ),
        Cause::LooseFeet => (
            "the spokes give at the {feet}",
            "Pushed in and out at the rim, the spokes move where they enter the {nave}.",
        ),
        Cause::WedgesGone => (
            "the wedges in the {tongue}s are loose or gone",
            "Only the rim end moves; with the {tyre} off the wedge can be lifted.",
        ),
        Cause::DowelBroken => (
            "a dowel is broken or worn",
            "The two {felloe}s shift against each other by hand.",
        ),
        Cause::Blow => (
            "a blow or too great a load",
            "One place only, a bruise near it, a fresh break.",
        ),
        Cause::NailsGone => (
            "nails or bolts are loose or gone",
            "Holes worn long, heads standing up, rust running from them.",
        ),
        Cause::WornIron => (
            "worn by road, block or shoe",
            "Hollow or thin in the {running_face}; one edge if a block or shoe did it.",
        ),
        Cause::WeldGave => (
            "a weld or a hole gave",
            "The crack runs through the weld, or from a nail hole.",
        ),
        Cause::RimUntrue => (
            "the rim is out of true",
            "It wanders from {felloe} to {felloe}, not in one smooth swing, and on any arm.",
        ),
        Cause::UnevenSpokes => (
            "spokes of unlike length or lean",
            "It is out at single spokes; measured from the {nave} they differ.",
        ),
        Cause::BoxCrooked => (
            "the {wheel_box} is set crooked",
            "One smooth swing out and in each turn, with a rim that is true by itself.",
        ),
        Cause::BoxLoose => (
            "the {wheel_box} is loose in the {nave}",
            "Rocked, the {wheel_box} moves against the wood.",
        ),
        Cause::ArmWorn => (
            "arm or {wheel_box} is worn",
            "Pressed home, the arm still moves in the {wheel_box}.",
        ),
        Cause::WashersWorn => (
            "washers or collar are worn",
            "It slides along the arm but does not rock.",
        ),
        Cause::DryBearing => (
            "it runs dry or dirty",
            "Scored iron, hard old grease, grit; it squeals.",
        ),
        Cause::KeeperTight => (
            "what keeps it on is too tight",
            "It turns freely once the nut is eased or a washer taken out.",
        ),
        Cause::ArmBent => (
            "the arm is bent",
            "Rims ahead and behind, or top and bottom, do not stand as on the other side. Run-out never shows it.",
        ),
        Cause::NotTied => (
            "never tied or pinned",
            "No hole, tie or cotter, or one that was never used.",
        ),
        Cause::WrongPart => (
            "something else was put in its place",
            "It does not fill its hole or thread.",
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::{cause, told};
    use crate::diagnosis::{Cause, Told};
    use crate::words::sample::style;

    #[test]
    fn what_the_readings_say_of_it_is_said() {
        insta::assert_snapshot!(told(Told::For).unwrap(), @"The readings speak for it.");
        assert_eq!(told(Told::Silent), None);
        insta::assert_snapshot!(told(Told::Against).unwrap(), @"The readings speak against it.");
    }

    #[test]
    fn every_cause_is_named_and_told_apart() {
        let rows = Cause::ALL.map(|it| {
            let words = cause(it, style());
            format!("{}: {}", words.name, words.told_by)
        });
        insta::assert_snapshot!(rows.join("\n"), @r"
        the rim has dried: Joints open at the belly, shoulders off, a low moisture; it was tighter in the wet season. With shut joints drying alone loosens a tyre by about 1 mm in 4 m round for 6 % of moisture, no more.
        made of wood that was not dry: Everything slack alike, soon after it was made or mended.
        the nave has shrunk: All feet loose alike, and the bonds with them.
        felloe-bound: the rim is too long for its spokes: Shoulders off while the joints are shut: the sum of both says so.
        tongues stand proud and carry the tyre: Daylight under the tyre between the spokes, none over them.
        the tyre is worn thin and has stretched: Little iron left, joints open, feet tight.
        the tyre was put back in another place: The marks of the joints inside the tyre do not lie over the joints; it bears in patches.
        the tyre was drawn too hard: Every joint shut, spokes bowed, more dish than it was built with.
        wood crushed where it bears: Bruised, shiny or mushroomed wood, and more slack than drying explains.
        rot: The point goes in without force; the wood is dark, or breaks short.
        worm: Round holes; fresh dust if it is alive.
        it stood wet: Worst in the part that stood lowest, or under heavy paint.
        grease has soaked in: Dark, soft wood that smells of grease, from the box outwards.
        run with a loose tyre: Feet worn to a wedge, rust or dust at the shoulder, the tyre dull.
        the spokes give at the feet: Pushed in and out at the rim, the spokes move where they enter the nave.
        the wedges in the tongues are loose or gone: Only the rim end moves; with the tyre off the wedge can be lifted.
        a dowel is broken or worn: The two felloes shift against each other by hand.
        a blow or too great a load: One place only, a bruise near it, a fresh break.
        nails or bolts are loose or gone: Holes worn long, heads standing up, rust running from them.
        worn by road, block or shoe: Hollow or thin in the running face; one edge if a block or shoe did it.
        a weld or a hole gave: The crack runs through the weld, or from a nail hole.
        the rim is out of true: It wanders from felloe to felloe, not in one smooth swing, and on any arm.
        spokes of unlike length or lean: It is out at single spokes; measured from the nave they differ.
        the box is set crooked: One smooth swing out and in each turn, with a rim that is true by itself.
        the box is loose in the nave: Rocked, the box moves against the wood.
        arm or box is worn: Pressed home, the arm still moves in the box.
        washers or collar are worn: It slides along the arm but does not rock.
        it runs dry or dirty: Scored iron, hard old grease, grit; it squeals.
        what keeps it on is too tight: It turns freely once the nut is eased or a washer taken out.
        the arm is bent: Rims ahead and behind, or top and bottom, do not stand as on the other side. Run-out never shows it.
        never tied or pinned: No hole, tie or cotter, or one that was never used.
        something else was put in its place: It does not fill its hole or thread.
        ");
    }
}
