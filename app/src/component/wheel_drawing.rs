//! The wheel drawn as it is described and as it was found: seen from the face, clockwise from the mark. Each part leads
//! to its page; what was seen of it shows in its shape and its hatching as well as its tone.

use cartside_core::daybook::EntryId;
use cartside_core::quantity::length::to_paper_mm;
use cartside_core::quantity::{Length, decimal};
use cartside_core::survey::{Answer, Question};
use cartside_core::wheel::{Part, Place, Position, Tyre};
use cartside_core::words;

use super::face::{Face, SOLE, WIDER};
use crate::component::mark::filled;
use crate::component::round::{degrees, point, sector};
use crate::looking::{Look, Looking};
use crate::markup::{Piece, sheet};
use crate::route::Route;
use crate::workshop::workshop;

/// Radii of what stands round the wheel.
const NUMBERS: f64 = 110.0;
const FIGURES: f64 = 114.0;
/// How far to a side the middle of a figure may stand, so that it ends within the drawing.
const WIDEST: f64 = 103.0;
/// How wide the drawing is, with the numbers round it.
const SPAN: f64 = 240.0;
/// Above so many spokes only every other one has its number.
const MOST_NUMBERED: u16 = 32;

/// What a drawing shows beside the wheel itself.
#[derive(Default)]
pub struct Drawn<'a> {
    /// The wheel's height over the sole and the scale it is drawn to; without them it fills its place.
    pub height: Option<(Length, u16)>,
    /// Figures at their places.
    pub figures: &'a [(Place, String)],
    /// How far round the wheel stands, in turns.
    pub top: f64,
}

impl Drawn<'_> {
    /// How wide the drawing is, with its margin, in millimetres of paper.
    fn width(&self) -> Option<String> {
        let (height, scale) = self.height?;
        let wide = to_paper_mm(height) / f64::from(scale) * SPAN / (2.0 * SOLE);
        Some(format!("{}mm", decimal(wide, 1)))
    }

    /// On paper a gap is as wide as it is beside the wheel; on a screen nobody would see it.
    fn face(&self, looking: &Looking) -> Face {
        let wider = if self.height.is_some() { 1.0 } else { WIDER };
        Face::of(&looking.wheel, wider, self.top)
    }
}

/// The drawing of a wheel.
pub fn wheel_drawing(id: EntryId, position: Position, looking: &Looking, drawn: &Drawn) -> Piece {
    let face = drawn.face(looking);
    let parts: Vec<Piece> = parts(looking)
        .into_iter()
        .map(|place| linked(id, position, looking, &face, place))
        .collect();
    sheet!(
        "<svg class={} width={} data-drawing=wheel viewBox=\"-120 -120 240 240\" role=group \
         aria-label=\"The wheel seen from its face\">{}{}{}{}</svg>",
        if drawn.height.is_some() {
            "drawing scaled"
        } else {
            "drawing"
        },
        drawn.width(),
        tyre(looking, &face),
        parts,
        round_it(looking, &face),
        figures(looking, drawn, &face)
    )
}

/// Each grade has a hatching of its own: dots, a slant, a lattice, solid. Once on every page, since a name may stand only
/// once there.
pub fn hatches() -> Piece {
    sheet!(
        "<svg class=hatches aria-hidden=true><defs>\
         <pattern id=hatch-note width=6 height=6 patternUnits=userSpaceOnUse><circle class=ink cx=3 cy=3 r=1.2/></pattern>\
         <pattern id=hatch-light width=5 height=5 patternUnits=userSpaceOnUse patternTransform=rotate(45)>\
         <rect class=ink width=1.6 height=5/></pattern>\
         <pattern id=hatch-keep width=5 height=5 patternUnits=userSpaceOnUse patternTransform=rotate(45)>\
         <rect class=ink width=1.8 height=5/><rect class=ink width=5 height=1.8/></pattern>\
         <pattern id=hatch-stop width=5 height=5 patternUnits=userSpaceOnUse><rect class=ink width=5 height=5/></pattern>\
         </defs></svg>"
    )
}

/// Every part that is drawn, what lies over another after it.
pub fn parts(looking: &Looking) -> Vec<Place> {
    let felloes = &looking.wheel.felloes;
    let (spokes, rim) = (felloes.spokes(), felloes.felloes());
    let mut parts: Vec<Place> = (1..=rim).map(Place::Felloe).collect();
    parts.extend((1..=spokes).map(Place::Spoke));
    parts.extend(looking.round_the_tyre());
    parts.extend((1..=rim).map(Place::Joint));
    parts.push(Place::Nave);
    parts
}

/// The tyre as it is said to be: a ring, lengths over the joints, or a soft edge; nothing on bare wood.
pub fn tyre(looking: &Looking, face: &Face) -> Option<Piece> {
    let kind = looking.wheel.tyre.unwrap_or(Tyre::Hoop);
    let ring = |from: f64, to: f64| sector(from, to, SOLE, face.tread);
    let felloes = &looking.wheel.felloes;
    let path = match kind {
        Tyre::Bare => return None,
        Tyre::Strakes => {
            let rim = felloes.felloes();
            let half = 0.46 / f64::from(rim);
            let strake = |n: u16| {
                let turn = face.turn(&looking.wheel, Place::Joint(n));
                ring(turn - half, turn + half)
            };
            (1..=rim).map(strake).collect()
        }
        // Drawn as two halves: one ring that goes the whole way round would end where it begins.
        Tyre::Hoop | Tyre::Rubber => ring(0.0, 0.5) + &ring(0.5, 1.0),
    };
    Some(sheet!(
        "svg:<path class=iron data-tyre={} d={}/>",
        kind.code(),
        path
    ))
}

/// The mark outside its joint, and the spokes' numbers.
pub fn round_it(looking: &Looking, face: &Face) -> Piece {
    let mark = degrees(face.turn(&looking.wheel, Place::Joint(1)));
    sheet!(
        "svg:<path class=the-mark d=\"M0 -101l-6 -11h12z\" transform=rotate({})/>{}",
        decimal(mark, 2),
        numbers(looking, face)
    )
}

/// The word that stands for a look in the state of the page.
fn look_code(look: Look) -> &'static str {
    match look {
        Look::Open => "open",
        Look::Sound => "sound",
        Look::Found(grade) => grade.code(),
    }
}

/// What lies over a part for what was found on it.
fn hatch(look: Look) -> &'static str {
    let Look::Found(grade) = look else {
        return "none";
    };
    match grade.code() {
        "note" => "url(#hatch-note)",
        "light-work-only" => "url(#hatch-light)",
        "keep-empty" => "url(#hatch-keep)",
        _ => "url(#hatch-stop)",
    }
}

/// A part that leads to its page.
fn linked(id: EntryId, position: Position, looking: &Looking, face: &Face, place: Place) -> Piece {
    let look = looking.look(place);
    let name = words::place::place(place, Some(&looking.wheel), workshop().style());
    let found = match look {
        Look::Found(grade) => format!("{name}: {}", words::term::grade(grade)),
        Look::Sound => format!("{name}: looked at"),
        Look::Open => name,
    };
    sheet!(
        "svg:<g class=part data-look={}><a href={} data-part={} aria-label={}>{}<path class=target d={}/></a>{}</g>",
        look_code(look),
        Route::Part(id, Part::At(position, place)).href(),
        place.code(),
        found,
        drawn_part(looking, face, place),
        target(looking, face, place),
        badge(looking, face, place, look)
    )
}

/// A part that is only looked at.
pub fn plain(looking: &Looking, face: &Face, place: Place, here: bool) -> Piece {
    sheet!(
        "svg:<g class={} data-look={}>{}</g>",
        if here { "part here" } else { "part" },
        look_code(looking.look(place)),
        drawn_part(looking, face, place)
    )
}

fn drawn_part(looking: &Looking, face: &Face, place: Place) -> Piece {
    let shape = shape(looking, face, place);
    let class = match place {
        Place::Joint(_) => "open",
        Place::Between(_) => "gap",
        _ => "wood",
    };
    sheet!(
        "svg:<path class={} d={}/><path d={} fill={}/>{}",
        class,
        shape.clone(),
        shape,
        hatch(looking.look(place)),
        broken(looking, face, place)
    )
}

/// What is drawn of a part.
fn shape(looking: &Looking, face: &Face, place: Place) -> String {
    let turn = face.turn(&looking.wheel, place);
    let drawn = |question, most| face.drawn(looking, question, place, most);
    match place {
        Place::Spoke(_) => spoke(looking, face, place),
        Place::Between(_) => {
            let open = drawn(Question::TyreGap, 7.0);
            if open > 0.0 {
                let out = (SOLE + open).max(face.tread);
                sector(turn - 0.03, turn + 0.03, SOLE, out)
            } else {
                sector(turn - 0.004, turn + 0.004, face.tread, face.tread + 5.0)
            }
        }
        Place::Joint(_) => {
            let half = |wide: f64, out: f64| wide.max(0.8) / 2.0 / out;
            let sole = half(drawn(Question::JointGap, 9.0), SOLE);
            let belly = half(drawn(Question::JointBelly, 9.0), face.belly);
            corners(
                turn,
                &[
                    (-sole, SOLE),
                    (sole, SOLE),
                    (belly, face.belly),
                    (-belly, face.belly),
                ],
            )
        }
        Place::Felloe(n) => felloe(looking, face, n),
        Place::Whole | Place::Nave => disc(face.nave),
    }
}

/// What may be tapped for a part.
fn target(looking: &Looking, face: &Face, place: Place) -> String {
    let turn = face.turn(&looking.wheel, place);
    let half = 0.5 / f64::from(looking.wheel.felloes.spokes());
    let around = |reach: f64, inner, outer| sector(turn - reach, turn + reach, inner, outer);
    match place {
        Place::Spoke(_) => around(half, face.nave, face.belly),
        Place::Between(_) => around(half.min(0.03), SOLE, 106.0),
        Place::Joint(_) => around(half.min(0.03), face.belly, SOLE),
        _ => shape(looking, face, place),
    }
}

/// A spoke: as wide as there is room beside the nave, no wider than a spoke is. One that moves stands aside at the end
/// that moves, one whose shoulder stands off ends short of the felloe.
fn spoke(looking: &Looking, face: &Face, place: Place) -> String {
    let turn = face.turn(&looking.wheel, place);
    let half = std::f64::consts::PI / f64::from(looking.wheel.felloes.spokes());
    let out = face.belly - face.drawn(looking, Question::StandOff, place, 9.0);
    let aside = |question, out: f64| face.drawn(looking, question, place, 5.0) / out;
    let foot = (5.5_f64).min(half * face.nave * 0.8) / face.nave;
    let tongue = (4.5_f64).min(half * out * 0.8) / out;
    let (below, above) = (
        aside(Question::SpokeFoot, face.nave),
        aside(Question::SpokeRimEnd, out),
    );
    corners(
        turn,
        &[
            (below - foot, face.nave),
            (above - tongue, out),
            (above + tongue, out),
            (below + foot, face.nave),
        ],
    )
}

/// A shape by its corners, each an angle from this turn in radians and how far out.
fn corners(turn: f64, corners: &[(f64, f64)]) -> String {
    let each = corners.iter().map(|(angle, out)| {
        let (x, y) = point(turn + angle / std::f64::consts::TAU, *out);
        format!("{} {}", decimal(x, 2), decimal(y, 2))
    });
    format!("M{}z", each.collect::<Vec<String>>().join("L"))
}

fn felloe(looking: &Looking, face: &Face, n: u16) -> String {
    let felloes = &looking.wheel.felloes;
    let turn = |joint: u16| {
        f64::from(felloes.spokes_before_joint(joint)) / f64::from(felloes.spokes()) - face.top
    };
    // One felloe that goes the whole way round would end where it begins and not be drawn.
    let to = turn(n.saturating_add(1)).min(turn(n) + 0.9999);
    sector(turn(n), to, face.belly, SOLE)
}

fn disc(radius: f64) -> String {
    let radius = decimal(radius, 1);
    format!("M0 -{radius}a{radius} {radius} 0 1 1 -.01 0z")
}

/// The break across a spoke or a felloe that is broken or cracked across the grain.
fn broken(looking: &Looking, face: &Face, place: Place) -> Option<Piece> {
    let across = |question| {
        let answers = looking.answer(question, place).unwrap_or_default();
        let broken = |it: &Answer| match it {
            Answer::Yes | Answer::NotThere => question == Question::SpokeBroken,
            Answer::Crack(found) => *found == cartside_core::survey::Crack::Across,
            _ => false,
        };
        answers.iter().any(broken)
    };
    let (out, wide) = match place {
        Place::Spoke(_) if across(Question::SpokeBroken) || across(Question::CrackSpoke) => {
            ((face.nave + face.belly) / 2.0, 8.0)
        }
        Place::Felloe(_) if across(Question::CrackFelloe) => ((face.belly + SOLE) / 2.0, 10.0),
        _ => return None,
    };
    let turn = degrees(face.turn(&looking.wheel, place));
    let mut path = format!("M{} {}", decimal(-wide, 1), decimal(-out, 1));
    for step in ["-5", "5", "-5", "5"] {
        path.push_str(&format!("l{} {step}", decimal(wide / 2.0, 1)));
    }
    Some(sheet!(
        "svg:<path class=break d={} transform=rotate({})/>",
        path,
        decimal(turn, 2)
    ))
}

/// The mark of a finding on the part it is about.
fn badge(looking: &Looking, face: &Face, place: Place, look: Look) -> Option<Piece> {
    let Look::Found(grade) = look else {
        return None;
    };
    let code = grade.code();
    let out = match place {
        Place::Spoke(_) => 52.0,
        Place::Between(_) => 103.0,
        // Beside the joint, so that it is seen how it stands.
        Place::Joint(_) => face.belly - 9.0,
        Place::Felloe(_) => (face.belly + SOLE) / 2.0,
        Place::Whole | Place::Nave => 0.0,
    };
    let (x, y) = point(face.turn(&looking.wheel, place), out);
    Some(sheet!(
        "svg:<g class=badge transform=\"translate({} {}) scale(.5)\" data-mark={}><circle cx=16 cy=16 r=12/><path d={}/></g>",
        decimal(x - 8.0, 2),
        decimal(y - 8.0, 2),
        code,
        filled(code)
    ))
}

fn numbers(looking: &Looking, face: &Face) -> Vec<Piece> {
    let spokes = looking.wheel.felloes.spokes();
    let step = if spokes > MOST_NUMBERED { 2 } else { 1 };
    (1..=spokes)
        .step_by(step)
        .map(|n| {
            let (x, y) = point(face.turn(&looking.wheel, Place::Spoke(n)), NUMBERS);
            let (x, y) = (decimal(x, 1), decimal(y, 1));
            sheet!(
                "svg:<text class=nth x={} y={}>{}</text>",
                x,
                y,
                n.to_string()
            )
        })
        .collect()
}

/// The figures, each beside its place.
fn figures(looking: &Looking, drawn: &Drawn, face: &Face) -> Vec<Piece> {
    let each = drawn.figures.iter().filter_map(|(place, said)| {
        looking.wheel.turn(*place)?;
        let out = match place {
            Place::Spoke(_) => 36.0,
            Place::Between(_) => FIGURES,
            _ => 63.0,
        };
        let (x, y) = point(face.turn(&looking.wheel, *place), out);
        Some(sheet!(
            "svg:<text class=figure x={} y={}>{}</text>",
            decimal(x.clamp(-WIDEST, WIDEST), 1),
            decimal(y, 1),
            said.clone()
        ))
    });
    each.collect()
}
