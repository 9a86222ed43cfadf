//! The place in hand as it stands before whoever looks: its spokes, its felloe and its joint drawn close, turned as the
//! wheel is turned, with a ring round the spot that is asked about.

use cartside_core::quantity::decimal;
use cartside_core::survey::Question;
use cartside_core::wheel::Place;

use super::face::{Face, SOLE, WIDER};
use super::wheel_drawing::{parts, plain, round_it, tyre};
use crate::component::round::point;
use crate::looking::Looking;
use crate::markup::{Piece, sheet};

/// How much of the wheel is in sight either way of the middle of the drawing.
const NEAR: f64 = 58.0;
/// How far round from the place a part may stand and still be in the window, in turns.
const IN_SIGHT: f64 = 0.21;
/// How far from the wheel's middle that of the drawing lies, where one place is in hand.
const OUT: f64 = 60.0;

/// The drawing of one place; of the whole wheel where that is in hand.
pub fn in_hand(looking: &Looking, question: Question, place: Place, top: f64) -> Piece {
    let face = Face::of(&looking.wheel, WIDER, top);
    let whole = matches!(place, Place::Whole | Place::Nave);
    let (x, y) = point(
        face.turn(&looking.wheel, place),
        if whole { 0.0 } else { OUT },
    );
    let half = if whole { 118.0 } else { NEAR };
    let window = [x - half, y - half, 2.0 * half, 2.0 * half].map(|value| decimal(value, 1));
    let parts = parts(looking).into_iter();
    let parts = parts.filter(|part| whole || in_sight(looking, &face, place, *part));
    let parts = parts.map(|part| plain(looking, &face, part, part == place));
    sheet!(
        "<svg class=\"drawing near\" data-in-hand={} viewBox={} aria-hidden=true>{}{}{}{}</svg>",
        place.code(),
        window.join(" "),
        tyre(looking, &face),
        parts.collect::<Vec<Piece>>(),
        round_it(looking, &face),
        spot(looking, &face, question, place)
    )
}

/// Whether a part reaches into the window about this place: what is not in sight costs a slow telephone as much.
fn in_sight(looking: &Looking, face: &Face, place: Place, part: Place) -> bool {
    let wheel = &looking.wheel;
    let apart = (face.turn(wheel, place) - face.turn(wheel, part)).abs() % 1.0;
    let reach = match part {
        Place::Nave => return true,
        Place::Felloe(_) => IN_SIGHT + 0.5 / f64::from(wheel.felloes.felloes()),
        _ => IN_SIGHT,
    };
    apart.min(1.0 - apart) <= reach
}

/// The whole wheel, small: its spokes and what was found, without numbers.
pub fn whole(looking: &Looking) -> Piece {
    let face = Face::of(&looking.wheel, WIDER, 0.0);
    let parts = parts(looking).into_iter();
    let parts = parts.map(|part| plain(looking, &face, part, false));
    sheet!(
        "<svg class=\"drawing small\" viewBox=\"-101 -101 202 202\" aria-hidden=true>{}{}</svg>",
        tyre(looking, &face),
        parts.collect::<Vec<Piece>>()
    )
}

/// The ring round the spot that is asked about.
fn spot(looking: &Looking, face: &Face, question: Question, place: Place) -> Option<Piece> {
    let out = match (place, question) {
        (Place::Whole | Place::Nave | Place::Felloe(_), _) => return None,
        (Place::Spoke(_), Question::SpokeFoot) => face.nave + 3.0,
        (Place::Spoke(_), Question::SpokeRimEnd | Question::StandOff) => face.belly - 2.0,
        (Place::Spoke(_), Question::TongueProud) => SOLE,
        (Place::Spoke(_), _) => (face.nave + face.belly) / 2.0,
        (Place::Between(_), _) => SOLE + 1.0,
        (Place::Joint(_), Question::JointBelly) => face.belly + 2.0,
        (Place::Joint(_), _) => SOLE - 3.0,
    };
    let (x, y) = point(face.turn(&looking.wheel, place), out);
    Some(sheet!(
        "svg:<circle class=spot cx={} cy={} r=11/>",
        decimal(x, 1),
        decimal(y, 1)
    ))
}
