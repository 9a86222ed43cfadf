//! For each question, how it can really be taken at the cart and why it is asked, one line each.

use super::style::Style;
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
    let (how, why) = sentences(question);
    HowWords {
        how: style.fill(how),
        why: style.fill(why),
    }
}

fn sentences(question: Question) -> (&'static str, &'static str) {
    match question {
        Question::FirstKeeper => (
            "Look at the end of the arm: a {linch_pin}, nut, cap or plate, and no nail or wire in its stead.",
            "Without it the wheel can walk off its arm.",
        ),
        Question::FirstTyre => (
            "Look along the rim from before and from behind: as much wood shows on one side of the {tyre} as on the other.",
            "A {tyre} that has wandered is loose and can run off.",
        ),
        Question::FirstSpokes => (
            "Look along each spoke from both sides.",
            "Each broken spoke throws its load on the two beside it.",
        ),
        Question::FirstDish => (
            "Stand behind the cart: the rims lean out from the {nave}s, both sides alike.",
            "A wheel dished the wrong way has nothing left to hold it up in a turn.",
        ),
        Question::FirstJoints => (
            "Walk round: a joint is open if you see into it, or see fresh wood or broken paint there.",
            "An open joint shows that the rim is no longer squeezed together.",
        ),
        Question::FirstNave => (
            "Look at both ends of the {nave}, between and under the {bond}s, for splits and for {bond}s that have slid.",
            "A split {nave} lets go of its spokes.",
        ),
        Question::FirstRot => (
            "Look at the part that has stood on the ground or against a wall: soft wood, fungus, holes with fresh dust.",
            "Rot begins where wood stands wet, and paint hides it.",
        ),
        Question::KeeperPresent => (
            "Look at the end of the arm: {linch_pin}, nut, cap or plate. Clean the grease off to be sure.",
            "Without it the wheel can walk off its arm.",
        ),
        Question::KeeperRight => (
            "See that it fills its hole or thread and was made for it; a nail, wire or odd bolt is a no.",
            "A nail shears or drops out where the proper part holds.",
        ),
        Question::KeeperSecured => (
            "Try it with finger and thumb: a pin must be tied or tight, a nut held by its cotter or thread, plate bolts tight.",
            "What is there but can turn or lift will be gone after some miles.",
        ),
        Question::KeeperWorn => (
            "Weight off the wheel, pin out: compare it where it is thinnest with where it never bore. 8 mm left of 10 is 20 %. Look at its hole too.",
            "A worn pin shears at a jolt, and a worn hole lets it jump.",
        ),
        Question::TyreRing => (
            "Strike the {tyre} with a light hammer at four places, loose bolts out of the way: rings, dull, or dead.",
            "A dead sound shows a {tyre} that does not bear on the wood; a ringing one clears the {tyre} only, never the wheel.",
        ),
        Question::TyreGap => (
            "Wheel lifted, in at least four places evenly spaced: the thickest leaf that goes in between {tyre} and {sole}, resting on sound wood.",
            "A {tyre} that stands off no longer squeezes the {felloe}s and spokes together.",
        ),
        Question::TyreShifts => (
            "Wheel lifted: push the {tyre} sideways and round with both hands and watch its edge against the wood.",
            "A {tyre} that moves by hand can run off the rim.",
        ),
        Question::TyreOffCentre => (
            "Turn the wheel and measure from each edge of the {tyre} to the edge of the {sole}, where it is worst.",
            "A {tyre} that hangs over tears its nails and tips off.",
        ),
        Question::TyreCracked => (
            "Clean it and look at the weld, at nail and bolt holes and at both edges; the ring is dead there.",
            "A {tyre} that parts lets the whole rim go at once.",
        ),
        Question::TyreLeft => (
            "Rule across the {running_face}: the thickness at the edge less the hollow under the rule.",
            "Thin iron stretches, and no longer squeezes or protects the rim.",
        ),
        Question::Strake => (
            "Wheel lifted: prise at each end of the strake and tap every nail.",
            "Each strake ties one joint; loose, it ties nothing.",
        ),
        Question::StrakeCracked => (
            "Clean it and look across it at the nail holes.",
            "A cracked strake no longer ties its joint, and its end lifts.",
        ),
        Question::JointGap => (
            "Feeler in the joint at the {sole}, where it meets the {tyre}; clear out packed dirt first, and say if it will not come out.",
            "Open joints add up: together they are room for the rim to shrink and the {tyre} to come loose.",
        ),
        Question::JointBelly => (
            "Feeler in the joint on the inside of the rim, face and back; note the wider.",
            "Open at the {belly} and shut at the {sole} shows that the wood has dried, not that the {tyre} has let go.",
        ),
        Question::FelloeStep => (
            "A straight edge across the two {felloe}s at the joint, and a feeler under it where it does not touch.",
            "A step shows that the dowel has let go and one {felloe} has shifted.",
        ),
        Question::CrackFelloe => (
            "Look at face, back and {belly}, most of all beside bolts, dowels and {tongue}s; try its width with a feeler.",
            "Along the grain it may have been there for a lifetime; across it, or out of the wood, it is breaking.",
        ),
        Question::RotFelloe => (
            "Prick with a bradawl at the {tongue}s and where it stood on the ground; ask before you prick show paint. Take the depth that goes in without force.",
            "Rotten wood holds neither {tongue} nor nail, and crushes under a {tyre}.",
        ),
        Question::Moisture => (
            "Meter set for the wood and the warmth, pins with the grain in bare wood at two depths. Do not trust it on lead paint, oil or grease, near nails, or above 28 %.",
            "Before {tyring}: wood that is too dry or too wet does not stay the size it was measured at.",
        ),
        Question::SpokeFoot => (
            "Wheel lifted, spoke at the top: work it by hand at mid-length along the rim, in and out, up and down; watch the line where it enters the {nave}, and look for rust, dust or broken paint there.",
            "A loose {foot} wears its mortise, and no {tyre} however tight makes it fast again.",
        ),
        Question::SpokeRimEnd => (
            "Wheel lifted, spoke at the top: work it by hand at mid-length along the rim, in and out, up and down; watch the shoulder at the {felloe}, and tap it.",
            "A loose {tongue} lets the {felloe} wander; a tight {tyre} can hide it, so a rattle or dust counts.",
        ),
        Question::SpokeBroken => (
            "Look along each spoke on both sides and flex it; cracks hide under paint and close to the {nave}.",
            "Each broken spoke throws its load on the two beside it.",
        ),
        Question::StandOff => (
            "With the {tyre} on: feeler between the spoke's shoulder and the {belly} of the {felloe}; 0 if it is home.",
            "Shoulders off while the joints are shut mean that the rim is too long for its spokes.",
        ),
        Question::TongueProud => (
            "Look between {tyre} and {sole} beside the {tongue}, or at the bare {sole}: the end must lie below the wood.",
            "A proud {tongue} carries the {tyre} off the rim and drives the dish out when the {tyre} draws.",
        ),
        Question::CrackSpoke => (
            "Look along face, back and both sides, most of all at the {foot} and at the {tongue}.",
            "Along the grain it may have been there for a lifetime; across it, the spoke is breaking.",
        ),
        Question::RotSpoke => (
            "Prick with a bradawl at the {foot} and at the {tongue}; ask before you prick show paint. Take the depth that goes in without force.",
            "Most spokes fail inside the joint, where wet and grease stay.",
        ),
        Question::Bonds => (
            "Try each by hand and tap it with a hammer; look for one that is missing. The worst of them counts.",
            "The {bond}s keep the {nave} from opening when the spokes are driven or loaded.",
        ),
        Question::CrackNave => (
            "Look at both ends and between the mortises; see whether a crack runs from one mortise to the next.",
            "A {nave} split from mortise to mortise holds no spoke once a {bond} lets go.",
        ),
        Question::RotNave => (
            "Wheel off, if it can be: prick at both ends and beside the mortises. Its skin says nothing of its heart.",
            "A rotten {nave} cannot be made good.",
        ),
        Question::BoxMoves => (
            "Wheel lifted: rock it and watch the end of the {wheel_box} against the wood, with a finger across both.",
            "A {wheel_box} loose in the {nave} grinds the heart out of it.",
        ),
        Question::Dish => (
            "Wheel off or lifted: straight edge across the wood of the rim's face beside the {nave}, rule to the face of the spokes where they enter it. Two crossings at right angles: write the middle of them; minus if the rim stands in.",
            "Dish is what holds the wheel up sideways; lost or grown, it shows which way the wheel is going.",
        ),
        Question::DishGives => (
            "Wheel lifted: one hand on the {nave}'s side, push and pull the rim in and out, and watch the spokes.",
            "A wheel that gives by hand can turn inside out in a rut.",
        ),
        Question::RunOut => (
            "{nave} pressed home to the collar the whole turn, a fixed stick beside the rim: largest gap less smallest.",
            "It comes from a rim out of true, a crooked or loose {wheel_box} or uneven spokes; never from a bent arm.",
        ),
        Question::OutOfRound => (
            "{nave} pressed home to the collar the whole turn, a fixed stick over the rim: largest gap less smallest.",
            "A wheel that is not round hammers itself, and no {tyre} sits on it alike.",
        ),
        Question::EndPlay => (
            "Push and pull the wheel along the arm, and measure between {nave} and collar. What is too much depends on what keeps it on.",
            "A wheel that slides beats its keeper to pieces.",
        ),
        Question::Binds => (
            "Wheel lifted: turn it with one finger on the rim.",
            "One that binds is dry, too tight or bent, and heats its arm.",
        ),
        Question::Shake => (
            "Wheel lifted, {nave} pressed home: hands at top and bottom, rock it and measure the whole movement at the rim from stop to stop. Say whether the {wheel_box} moves in the {nave} or the arm in the {wheel_box}.",
            "Worn arm, worn {wheel_box}, or a {wheel_box} loose in the wood.",
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
        FirstKeeper: Look at the end of the arm: a linch pin, nut, cap or plate, and no nail or wire in its stead. Why: Without it the wheel can walk off its arm.
        FirstTyre: Look along the rim from before and from behind: as much wood shows on one side of the tyre as on the other. Why: A tyre that has wandered is loose and can run off.
        FirstSpokes: Look along each spoke from both sides. Why: Each broken spoke throws its load on the two beside it.
        FirstDish: Stand behind the cart: the rims lean out from the naves, both sides alike. Why: A wheel dished the wrong way has nothing left to hold it up in a turn.
        FirstJoints: Walk round: a joint is open if you see into it, or see fresh wood or broken paint there. Why: An open joint shows that the rim is no longer squeezed together.
        FirstNave: Look at both ends of the nave, between and under the bonds, for splits and for bonds that have slid. Why: A split nave lets go of its spokes.
        FirstRot: Look at the part that has stood on the ground or against a wall: soft wood, fungus, holes with fresh dust. Why: Rot begins where wood stands wet, and paint hides it.
        KeeperPresent: Look at the end of the arm: linch pin, nut, cap or plate. Clean the grease off to be sure. Why: Without it the wheel can walk off its arm.
        KeeperRight: See that it fills its hole or thread and was made for it; a nail, wire or odd bolt is a no. Why: A nail shears or drops out where the proper part holds.
        KeeperSecured: Try it with finger and thumb: a pin must be tied or tight, a nut held by its cotter or thread, plate bolts tight. Why: What is there but can turn or lift will be gone after some miles.
        KeeperWorn: Weight off the wheel, pin out: compare it where it is thinnest with where it never bore. 8 mm left of 10 is 20 %. Look at its hole too. Why: A worn pin shears at a jolt, and a worn hole lets it jump.
        TyreRing: Strike the tyre with a light hammer at four places, loose bolts out of the way: rings, dull, or dead. Why: A dead sound shows a tyre that does not bear on the wood; a ringing one clears the tyre only, never the wheel.
        TyreGap: Wheel lifted, in at least four places evenly spaced: the thickest leaf that goes in between tyre and sole, resting on sound wood. Why: A tyre that stands off no longer squeezes the felloes and spokes together.
        TyreShifts: Wheel lifted: push the tyre sideways and round with both hands and watch its edge against the wood. Why: A tyre that moves by hand can run off the rim.
        TyreOffCentre: Turn the wheel and measure from each edge of the tyre to the edge of the sole, where it is worst. Why: A tyre that hangs over tears its nails and tips off.
        TyreCracked: Clean it and look at the weld, at nail and bolt holes and at both edges; the ring is dead there. Why: A tyre that parts lets the whole rim go at once.
        TyreLeft: Rule across the running face: the thickness at the edge less the hollow under the rule. Why: Thin iron stretches, and no longer squeezes or protects the rim.
        Strake: Wheel lifted: prise at each end of the strake and tap every nail. Why: Each strake ties one joint; loose, it ties nothing.
        StrakeCracked: Clean it and look across it at the nail holes. Why: A cracked strake no longer ties its joint, and its end lifts.
        JointGap: Feeler in the joint at the sole, where it meets the tyre; clear out packed dirt first, and say if it will not come out. Why: Open joints add up: together they are room for the rim to shrink and the tyre to come loose.
        JointBelly: Feeler in the joint on the inside of the rim, face and back; note the wider. Why: Open at the belly and shut at the sole shows that the wood has dried, not that the tyre has let go.
        FelloeStep: A straight edge across the two felloes at the joint, and a feeler under it where it does not touch. Why: A step shows that the dowel has let go and one felloe has shifted.
        CrackFelloe: Look at face, back and belly, most of all beside bolts, dowels and tongues; try its width with a feeler. Why: Along the grain it may have been there for a lifetime; across it, or out of the wood, it is breaking.
        RotFelloe: Prick with a bradawl at the tongues and where it stood on the ground; ask before you prick show paint. Take the depth that goes in without force. Why: Rotten wood holds neither tongue nor nail, and crushes under a tyre.
        Moisture: Meter set for the wood and the warmth, pins with the grain in bare wood at two depths. Do not trust it on lead paint, oil or grease, near nails, or above 28 %. Why: Before tyring: wood that is too dry or too wet does not stay the size it was measured at.
        SpokeFoot: Wheel lifted, spoke at the top: work it by hand at mid-length along the rim, in and out, up and down; watch the line where it enters the nave, and look for rust, dust or broken paint there. Why: A loose foot wears its mortise, and no tyre however tight makes it fast again.
        SpokeRimEnd: Wheel lifted, spoke at the top: work it by hand at mid-length along the rim, in and out, up and down; watch the shoulder at the felloe, and tap it. Why: A loose tongue lets the felloe wander; a tight tyre can hide it, so a rattle or dust counts.
        SpokeBroken: Look along each spoke on both sides and flex it; cracks hide under paint and close to the nave. Why: Each broken spoke throws its load on the two beside it.
        StandOff: With the tyre on: feeler between the spoke's shoulder and the belly of the felloe; 0 if it is home. Why: Shoulders off while the joints are shut mean that the rim is too long for its spokes.
        TongueProud: Look between tyre and sole beside the tongue, or at the bare sole: the end must lie below the wood. Why: A proud tongue carries the tyre off the rim and drives the dish out when the tyre draws.
        CrackSpoke: Look along face, back and both sides, most of all at the foot and at the tongue. Why: Along the grain it may have been there for a lifetime; across it, the spoke is breaking.
        RotSpoke: Prick with a bradawl at the foot and at the tongue; ask before you prick show paint. Take the depth that goes in without force. Why: Most spokes fail inside the joint, where wet and grease stay.
        Bonds: Try each by hand and tap it with a hammer; look for one that is missing. The worst of them counts. Why: The bonds keep the nave from opening when the spokes are driven or loaded.
        CrackNave: Look at both ends and between the mortises; see whether a crack runs from one mortise to the next. Why: A nave split from mortise to mortise holds no spoke once a bond lets go.
        RotNave: Wheel off, if it can be: prick at both ends and beside the mortises. Its skin says nothing of its heart. Why: A rotten nave cannot be made good.
        BoxMoves: Wheel lifted: rock it and watch the end of the box against the wood, with a finger across both. Why: A box loose in the nave grinds the heart out of it.
        Dish: Wheel off or lifted: straight edge across the wood of the rim's face beside the nave, rule to the face of the spokes where they enter it. Two crossings at right angles: write the middle of them; minus if the rim stands in. Why: Dish is what holds the wheel up sideways; lost or grown, it shows which way the wheel is going.
        DishGives: Wheel lifted: one hand on the nave's side, push and pull the rim in and out, and watch the spokes. Why: A wheel that gives by hand can turn inside out in a rut.
        RunOut: nave pressed home to the collar the whole turn, a fixed stick beside the rim: largest gap less smallest. Why: It comes from a rim out of true, a crooked or loose box or uneven spokes; never from a bent arm.
        OutOfRound: nave pressed home to the collar the whole turn, a fixed stick over the rim: largest gap less smallest. Why: A wheel that is not round hammers itself, and no tyre sits on it alike.
        EndPlay: Push and pull the wheel along the arm, and measure between nave and collar. What is too much depends on what keeps it on. Why: A wheel that slides beats its keeper to pieces.
        Binds: Wheel lifted: turn it with one finger on the rim. Why: One that binds is dry, too tight or bent, and heats its arm.
        Shake: Wheel lifted, nave pressed home: hands at top and bottom, rock it and measure the whole movement at the rim from stop to stop. Say whether the box moves in the nave or the arm in the box. Why: Worn arm, worn box, or a box loose in the wood.
        ");
    }
}
