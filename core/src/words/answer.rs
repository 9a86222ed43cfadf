//! What an answer is called, alone and together with its question.

use super::style::Style;
use super::unmarked;
use crate::quantity::length::millimetres;
use crate::quantity::{Length, Measured, Percent, decimal};
use crate::survey::{Answer, Crack, Play, Question, Ring};

/// An answer alone: `½ mm ± ¼ mm`, `over 5 mm`, `tight`.
#[must_use]
pub fn answer(answer: &Answer, style: Style) -> String {
    written(answer, style, &|length| style.gap(length))
}

/// An answer alone, its lengths written as its question asks for them.
#[must_use]
pub fn answered(question: Question, answer: &Answer, style: Style) -> String {
    written(answer, style, &|length| style.read(question, length))
}

fn written(answer: &Answer, style: Style, length: &dyn Fn(Length) -> String) -> String {
    match answer {
        Answer::Length(measured) => with_doubt(*measured, length),
        Answer::Over(least) => format!("over {}", length(*least)),
        Answer::Share(percent) => share(*percent),
        Answer::Play(verdict) => play(*verdict).to_owned(),
        Answer::Ring(sound) => ring(*sound).to_owned(),
        Answer::Crack(found) => crack(*found, style),
        Answer::Yes => "yes".to_owned(),
        Answer::No => "no".to_owned(),
        Answer::CannotSee => "can't see".to_owned(),
        Answer::NotThere => "not there".to_owned(),
        Answer::NothingFound => "looked, nothing found".to_owned(),
    }
}

fn with_doubt(measured: Measured, length: &dyn Fn(Length) -> String) -> String {
    let value = length(measured.value());
    if measured.doubt() == millimetres(0.0) {
        value
    } else {
        let doubt = length(measured.doubt());
        format!("{value} ± {}", unmarked(&doubt))
    }
}

/// A verdict of the hand.
#[must_use]
pub fn play(play: Play) -> &'static str {
    match play {
        Play::Tight => "tight",
        Play::JustMoves => "just moves",
        Play::Loose => "loose",
    }
}

/// A sound of the tyre.
#[must_use]
pub fn ring(ring: Ring) -> &'static str {
    match ring {
        Ring::Rings => "rings",
        Ring::Dull => "dull",
        Ring::Dead => "dead",
    }
}

/// A crack.
#[must_use]
pub fn crack(crack: Crack, style: Style) -> String {
    style.fill(match crack {
        Crack::Hairline => "hairline along the grain",
        Crack::Open => "open 1 mm or more, or reaching a {tongue} or mortise",
        Crack::Across => "across the grain, or running out of the wood",
    })
}

/// A share: `12.5 %`.
#[must_use]
pub fn share(share: Percent) -> String {
    format!("{} %", decimal(share.to_paper(), 2))
}

/// An answer with what it was an answer to: `foot loose`, `keeper not secured`.
#[must_use]
pub fn told(question: Question, said: &Answer, style: Style) -> String {
    let (noun, yes, no) = nouns(question);
    let noun = style.fill(noun);
    let words = answered(question, said, style);
    match said {
        Answer::Yes if !yes.is_empty() => style.fill(yes),
        Answer::No if !no.is_empty() => style.fill(no),
        Answer::Length(_)
        | Answer::Over(_)
        | Answer::Share(_)
        | Answer::Play(_)
        | Answer::Ring(_) => format!("{noun} {words}"),
        _ => format!("{noun}: {words}"),
    }
}

/// The answer that all is sound, in as few words as it takes: `no gap`, `tyre rings`.
#[must_use]
pub fn sound(question: Question, said: &Answer, style: Style) -> String {
    let nothing = match said {
        Answer::NothingFound => true,
        Answer::Length(measured) => measured.value() == millimetres(0.0),
        Answer::Share(share) => share.to_paper() == 0.0,
        _ => false,
    };
    if nothing {
        format!("no {}", style.fill(nouns(question).0))
    } else {
        told(question, said, style)
    }
}

/// The bad answer of a question that is answered by yes or no.
pub(super) fn bad(question: Question, style: Style) -> String {
    let bad = if question.sound_is_yes() {
        Answer::No
    } else {
        Answer::Yes
    };
    told(question, &bad, style)
}

/// What is asked about, and what *yes* and *no* mean where the question takes them.
fn nouns(question: Question) -> (&'static str, &'static str, &'static str) {
    match question {
        Question::FirstKeeper => (
            "keeper at first look",
            "keeper there and right",
            "keeper missing or wrong",
        ),
        Question::FirstTyre => (
            "{tyre} at first look",
            "{tyre} on and central",
            "{tyre} off or not central",
        ),
        Question::FirstSpokes => (
            "spokes at first look",
            "every spoke whole",
            "a spoke broken or missing",
        ),
        Question::FirstDish => (
            "dish at first look",
            "dish the right way",
            "dish not the right way",
        ),
        Question::FirstJoints => (
            "joints at first look",
            "no joint open to the eye",
            "a joint open to the eye",
        ),
        Question::FirstNave => (
            "{nave} at first look",
            "{nave} whole at the {bond}s",
            "{nave} split at the {bond}s",
        ),
        Question::FirstRot => (
            "rot at first look",
            "no rot or worm where it has stood",
            "rot or worm where it has stood",
        ),
        Question::KeeperPresent => ("keeper", "keeper there", "keeper not there"),
        Question::KeeperRight => (
            "right keeper",
            "keeper the right part",
            "keeper not the right part",
        ),
        Question::KeeperSecured => ("keeper's securing", "keeper secured", "keeper not secured"),
        Question::KeeperWorn => ("wear of the {linch_pin}", "", ""),
        Question::TyreRing => ("{tyre}", "", ""),
        Question::TyreGap => ("{tyre} gap", "", ""),
        Question::TyreShifts => (
            "shift of the {tyre}",
            "{tyre} shifts by hand",
            "{tyre} does not shift by hand",
        ),
        Question::TyreOffCentre => (
            "{tyre} on the {sole}",
            "{tyre} off-{centre} by over a quarter of its width",
            "{tyre} central enough",
        ),
        Question::TyreCracked => (
            "crack of the {tyre}",
            "{tyre} cracked through",
            "{tyre} not cracked through",
        ),
        Question::TyreLeft => ("{tyre} thickness left", "", ""),
        Question::Strake => ("strake", "", ""),
        Question::StrakeCracked => (
            "crack of the strake",
            "strake cracked",
            "strake not cracked",
        ),
        Question::JointGap => ("gap", "", ""),
        Question::JointBelly => ("gap at the {belly}", "", ""),
        Question::FelloeStep => ("step", "", ""),
        Question::CrackFelloe | Question::CrackSpoke | Question::CrackNave => ("crack", "", ""),
        Question::RotFelloe | Question::RotSpoke | Question::RotNave => ("rot", "", ""),
        Question::Moisture => ("moisture", "", ""),
        Question::SpokeFoot => ("{foot}", "", ""),
        Question::SpokeRimEnd => ("rim end", "", ""),
        Question::SpokeBroken => ("spoke", "broken", "not broken"),
        Question::StandOff => ("shoulder stand-off", "", ""),
        Question::TongueProud => ("{tongue}", "{tongue} proud", "{tongue} not proud"),
        Question::Bonds => ("{bond}", "", ""),
        Question::BoxMoves => (
            "{wheel_box}",
            "{wheel_box} moves in the {nave}",
            "{wheel_box} does not move in the {nave}",
        ),
        Question::Dish => ("dish", "", ""),
        Question::DishGives => (
            "give of the rim",
            "rim gives in and out by hand",
            "rim does not give by hand",
        ),
        Question::RunOut => ("run-out", "", ""),
        Question::OutOfRound => ("out of round", "", ""),
        Question::EndPlay => ("{end_play}", "", ""),
        Question::Binds => ("turning", "binds", "turns freely"),
        Question::Shake => ("shake at the rim", "", ""),
    }
}

#[cfg(test)]
mod tests {
    use super::{answer, answered, sound, told};
    use crate::quantity::Measured;
    use crate::quantity::length::millimetres;
    use crate::survey::{Answer, Question};
    use crate::words::sample::{answers, answers_to, inches, mm, style};

    #[test]
    fn every_answer_has_words() {
        let rows = answers().map(|said| answer(&said, style()));
        insta::assert_snapshot!(rows.join("\n"), @r"
        ½ mm ± ¼ mm
        over 5 mm
        tight
        just moves
        loose
        rings
        dull
        dead
        hairline along the grain
        open 1 mm or more, or reaching a tongue or mortise
        across the grain, or running out of the wood
        12.5 %
        yes
        no
        can't see
        not there
        looked, nothing found
        ");
    }

    #[test]
    fn a_measure_is_written_as_the_reader_likes() {
        let sure = Measured::new(millimetres(1.5), millimetres(0.0)).unwrap();
        assert_eq!(answer(&Answer::Length(sure), style()), "1½ mm");
        insta::assert_snapshot!(answer(&mm(0.508), inches()), @"20 thou ± 10 thou");
        insta::assert_snapshot!(answer(&mm(0.3), style()), @"0.3 mm ± ¼ mm");
    }

    #[test]
    fn a_size_is_written_as_sizes_are() {
        let dish = Measured::new(millimetres(-12.7), millimetres(0.0)).unwrap();
        let said = |style| answered(Question::Dish, &Answer::Length(dish), style);
        assert_eq!([said(style()), said(inches())], ["−12.7 mm", "−1/2 in"]);
        insta::assert_snapshot!(told(Question::Dish, &Answer::Length(dish), style()), @"dish −12.7 mm");
    }

    #[test]
    fn every_answer_to_every_question_has_words() {
        let row = |question| {
            let told = answers_to(question).map(|said| told(question, &said, style()));
            format!("{question:?}: {}", told.collect::<Vec<_>>().join(" | "))
        };
        insta::assert_snapshot!(Question::all().map(row).collect::<Vec<_>>().join("\n"), @r"
        FirstKeeper: keeper there and right | keeper missing or wrong | keeper at first look: can't see | keeper at first look: not there | keeper at first look: looked, nothing found
        FirstTyre: tyre on and central | tyre off or not central | tyre at first look: can't see | tyre at first look: not there | tyre at first look: looked, nothing found
        FirstSpokes: every spoke whole | a spoke broken or missing | spokes at first look: can't see | spokes at first look: not there | spokes at first look: looked, nothing found
        FirstDish: dish the right way | dish not the right way | dish at first look: can't see | dish at first look: not there | dish at first look: looked, nothing found
        FirstJoints: no joint open to the eye | a joint open to the eye | joints at first look: can't see | joints at first look: not there | joints at first look: looked, nothing found
        FirstNave: nave whole at the bonds | nave split at the bonds | nave at first look: can't see | nave at first look: not there | nave at first look: looked, nothing found
        FirstRot: no rot or worm where it has stood | rot or worm where it has stood | rot at first look: can't see | rot at first look: not there | rot at first look: looked, nothing found
        KeeperPresent: keeper there | keeper not there | keeper: can't see | keeper: not there | keeper: looked, nothing found
        KeeperRight: keeper the right part | keeper not the right part | right keeper: can't see | right keeper: not there | right keeper: looked, nothing found
        KeeperSecured: keeper secured | keeper not secured | keeper's securing: can't see | keeper's securing: not there | keeper's securing: looked, nothing found
        KeeperWorn: wear of the linch pin 12.5 % | wear of the linch pin: can't see | wear of the linch pin: not there | wear of the linch pin: looked, nothing found
        TyreRing: tyre rings | tyre dull | tyre dead | tyre: can't see | tyre: not there | tyre: looked, nothing found
        TyreGap: tyre gap ½ mm ± ¼ mm | tyre gap over 5 mm | tyre gap: can't see | tyre gap: not there | tyre gap: looked, nothing found
        TyreShifts: tyre shifts by hand | tyre does not shift by hand | shift of the tyre: can't see | shift of the tyre: not there | shift of the tyre: looked, nothing found
        TyreOffCentre: tyre off-centre by over a quarter of its width | tyre central enough | tyre on the sole: can't see | tyre on the sole: not there | tyre on the sole: looked, nothing found
        TyreCracked: tyre cracked through | tyre not cracked through | crack of the tyre: can't see | crack of the tyre: not there | crack of the tyre: looked, nothing found
        TyreLeft: tyre thickness left 0.5 mm ± 0.25 mm | tyre thickness left: can't see | tyre thickness left: not there | tyre thickness left: looked, nothing found
        Strake: strake tight | strake just moves | strake loose | strake: can't see | strake: not there | strake: looked, nothing found
        StrakeCracked: strake cracked | strake not cracked | crack of the strake: can't see | crack of the strake: not there | crack of the strake: looked, nothing found
        JointGap: gap ½ mm ± ¼ mm | gap over 5 mm | gap: can't see | gap: not there | gap: looked, nothing found
        JointBelly: gap at the belly ½ mm ± ¼ mm | gap at the belly over 5 mm | gap at the belly: can't see | gap at the belly: not there | gap at the belly: looked, nothing found
        FelloeStep: step ½ mm ± ¼ mm | step over 5 mm | step: can't see | step: not there | step: looked, nothing found
        CrackFelloe: crack: hairline along the grain | crack: open 1 mm or more, or reaching a tongue or mortise | crack: across the grain, or running out of the wood | crack: can't see | crack: not there | crack: looked, nothing found
        RotFelloe: rot ½ mm ± ¼ mm | rot over 5 mm | rot: can't see | rot: not there | rot: looked, nothing found
        Moisture: moisture 12.5 % | moisture: can't see | moisture: not there | moisture: looked, nothing found
        SpokeFoot: foot ½ mm ± ¼ mm | foot tight | foot just moves | foot loose | foot: can't see | foot: not there | foot: looked, nothing found
        SpokeRimEnd: rim end ½ mm ± ¼ mm | rim end tight | rim end just moves | rim end loose | rim end: can't see | rim end: not there | rim end: looked, nothing found
        SpokeBroken: broken | not broken | spoke: can't see | spoke: not there | spoke: looked, nothing found
        StandOff: shoulder stand-off ½ mm ± ¼ mm | shoulder stand-off over 5 mm | shoulder stand-off: can't see | shoulder stand-off: not there | shoulder stand-off: looked, nothing found
        TongueProud: tongue proud | tongue not proud | tongue: can't see | tongue: not there | tongue: looked, nothing found
        CrackSpoke: crack: hairline along the grain | crack: open 1 mm or more, or reaching a tongue or mortise | crack: across the grain, or running out of the wood | crack: can't see | crack: not there | crack: looked, nothing found
        RotSpoke: rot ½ mm ± ¼ mm | rot over 5 mm | rot: can't see | rot: not there | rot: looked, nothing found
        Bonds: bond tight | bond just moves | bond loose | bond: can't see | bond: not there | bond: looked, nothing found
        CrackNave: crack: hairline along the grain | crack: open 1 mm or more, or reaching a tongue or mortise | crack: across the grain, or running out of the wood | crack: can't see | crack: not there | crack: looked, nothing found
        RotNave: rot ½ mm ± ¼ mm | rot over 5 mm | rot: can't see | rot: not there | rot: looked, nothing found
        BoxMoves: box moves in the nave | box does not move in the nave | box: can't see | box: not there | box: looked, nothing found
        Dish: dish 0.5 mm ± 0.25 mm | dish: can't see | dish: not there | dish: looked, nothing found
        DishGives: rim gives in and out by hand | rim does not give by hand | give of the rim: can't see | give of the rim: not there | give of the rim: looked, nothing found
        RunOut: run-out 0.5 mm ± 0.25 mm | run-out: can't see | run-out: not there | run-out: looked, nothing found
        OutOfRound: out of round 0.5 mm ± 0.25 mm | out of round: can't see | out of round: not there | out of round: looked, nothing found
        EndPlay: end play 0.5 mm ± 0.25 mm | end play: can't see | end play: not there | end play: looked, nothing found
        Binds: binds | turns freely | turning: can't see | turning: not there | turning: looked, nothing found
        Shake: shake at the rim 0.5 mm ± 0.25 mm | shake at the rim: can't see | shake at the rim: not there | shake at the rim: looked, nothing found
        ");
    }

    #[test]
    fn a_sound_answer_takes_few_words() {
        let nothing = Measured::new(millimetres(0.0), millimetres(0.25)).unwrap();
        let said = [
            sound(Question::TyreGap, &Answer::NothingFound, style()),
            sound(Question::JointGap, &Answer::Length(nothing), style()),
            sound(Question::JointGap, &mm(0.25), style()),
            sound(Question::TyreCracked, &Answer::No, style()),
        ];
        insta::assert_snapshot!(said.join("; "), @"no tyre gap; no gap; gap ¼ mm ± ¼ mm; tyre not cracked through");
    }

    /// A file may hold any answer to any question.
    #[test]
    fn an_answer_that_does_not_fit_its_question_has_words_all_the_same() {
        for question in Question::all() {
            for said in answers() {
                let told = told(question, &said, style());
                assert!(!told.is_empty() && !told.contains(['{', '}']), "{told}");
            }
        }
    }
}
