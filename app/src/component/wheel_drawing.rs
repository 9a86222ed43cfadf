//! The wheel drawn as it is described: seen from the face, the mark at the top, clockwise. Each part leads to its
//! page; what was seen of it shows in its hatching as well as its tone.

use cartside_core::daybook::EntryId;
use cartside_core::quantity::length::to_paper_mm;
use cartside_core::quantity::{Length, decimal};
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words;

use crate::component::mark::filled;
use crate::component::round::{degrees, point, sector};
use crate::looking::{Look, Looking};
use crate::markup::{Piece, sheet};
use crate::route::Route;
use crate::workshop::workshop;

/// Radii of the drawing.
const NAVE: f64 = 17.0;
const BELLY: f64 = 77.0;
const SOLE: f64 = 93.0;
const TYRE: f64 = 96.5;
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
}

impl Drawn<'_> {
    /// How wide the drawing is, with its margin, in millimetres of paper.
    fn width(&self) -> Option<String> {
        let (height, scale) = self.height?;
        let wide = to_paper_mm(height) / f64::from(scale) * SPAN / (2.0 * SOLE);
        Some(format!("{}mm", decimal(wide, 1)))
    }
}

/// The drawing of a wheel.
pub fn wheel_drawing(id: EntryId, position: Position, looking: &Looking, drawn: &Drawn) -> Piece {
    let place = |kind: fn(u16) -> Place, count: u16| (1..=count).map(kind);
    let felloes = &looking.wheel.felloes;
    let (spokes, rim) = (felloes.spokes(), felloes.felloes());
    let parts: Vec<Piece> = place(Place::Felloe, rim)
        .chain(place(Place::Spoke, spokes))
        .chain(looking.round_the_tyre())
        .chain(place(Place::Joint, rim))
        .chain([Place::Nave])
        .map(|place| one_part(id, position, looking, place))
        .collect();
    // Each grade has a hatching of its own: dots, a slant, a lattice, solid.
    sheet!(
        "<svg class={} width={} data-drawing=wheel viewBox=\"-120 -120 240 240\" role=group \
         aria-label=\"The wheel seen from its face, the mark at the top\"><defs>\
         <pattern id=hatch-note width=6 height=6 patternUnits=userSpaceOnUse><circle class=ink cx=3 cy=3 r=1.2/></pattern>\
         <pattern id=hatch-light width=5 height=5 patternUnits=userSpaceOnUse patternTransform=rotate(45)>\
         <rect class=ink width=1.6 height=5/></pattern>\
         <pattern id=hatch-keep width=5 height=5 patternUnits=userSpaceOnUse patternTransform=rotate(45)>\
         <rect class=ink width=1.8 height=5/><rect class=ink width=5 height=1.8/></pattern>\
         <pattern id=hatch-stop width=5 height=5 patternUnits=userSpaceOnUse><rect class=ink width=5 height=5/></pattern>\
         </defs><circle class=iron r={}/>{}{}{}<path class=the-mark d=\"M0 -100l-7 -12h14z\"/></svg>",
        if drawn.height.is_some() {
            "drawing scaled"
        } else {
            "drawing"
        },
        drawn.width(),
        decimal(TYRE, 1),
        parts,
        numbers(looking),
        figures(looking, drawn)
    )
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

/// The word that stands for a look in the state of the page.
fn look_code(look: Look) -> &'static str {
    match look {
        Look::Open => "open",
        Look::Sound => "sound",
        Look::Found(grade) => grade.code(),
    }
}

fn one_part(id: EntryId, position: Position, looking: &Looking, place: Place) -> Piece {
    let look = looking.look(place);
    let name = words::place::place(place, Some(&looking.wheel), workshop().style());
    let (shape, target) = shapes(looking, place);
    sheet!(
        "svg:<g class=part data-look={}><a href={} data-part={} aria-label={}>\
         <path class=wood d={}/><path d={} fill={}/><path class=target d={}/></a>{}</g>",
        look_code(look),
        Route::Part(id, Part::At(position, place)).href(),
        place.code(),
        name,
        shape.clone(),
        shape,
        hatch(look),
        target,
        badge(looking, place, look)
    )
}

/// What is drawn of a part, and what may be tapped for it.
fn shapes(looking: &Looking, place: Place) -> (String, String) {
    let turn = looking.wheel.turn(place).unwrap_or_default();
    let half = 0.5 / f64::from(looking.wheel.felloes.spokes());
    let around = |reach: f64, inner, outer| sector(turn - reach, turn + reach, inner, outer);
    match place {
        Place::Spoke(_) => (around_width(turn, half), around(half, NAVE, BELLY)),
        Place::Between(_) => (
            around(0.012, SOLE + 1.0, 101.0),
            around(half.min(0.03), SOLE, 106.0),
        ),
        Place::Joint(_) => (
            around(0.006, BELLY, SOLE),
            around(half.min(0.03), BELLY, SOLE),
        ),
        Place::Felloe(n) => {
            let length = felloe(looking, n);
            (length.clone(), length)
        }
        Place::Whole | Place::Nave => (disc(NAVE), disc(NAVE)),
    }
}

/// A spoke: as wide as there is room beside the nave, no wider than a spoke is.
fn around_width(turn: f64, half: f64) -> String {
    let at = |out: f64, width: f64| {
        width.min(half * std::f64::consts::TAU * out * 0.8) / std::f64::consts::TAU / out
    };
    let (foot, tongue) = (at(NAVE, 5.5), at(BELLY, 4.5));
    let corners = [
        point(turn - foot, NAVE),
        point(turn - tongue, BELLY),
        point(turn + tongue, BELLY),
        point(turn + foot, NAVE),
    ];
    let each: Vec<String> = corners
        .iter()
        .map(|(x, y)| format!("{} {}", decimal(*x, 2), decimal(*y, 2)))
        .collect();
    format!("M{}z", each.join("L"))
}

fn felloe(looking: &Looking, n: u16) -> String {
    let felloes = &looking.wheel.felloes;
    let turn =
        |joint: u16| f64::from(felloes.spokes_before_joint(joint)) / f64::from(felloes.spokes());
    // One felloe that goes the whole way round would end where it begins and not be drawn.
    sector(
        turn(n),
        turn(n.saturating_add(1)).min(turn(n) + 0.9999),
        BELLY,
        SOLE,
    )
}

fn disc(radius: f64) -> String {
    let radius = decimal(radius, 1);
    format!("M0 -{radius}a{radius} {radius} 0 1 1 -.01 0z")
}

/// The mark of a finding on the part it is about.
fn badge(looking: &Looking, place: Place, look: Look) -> Option<Piece> {
    let Look::Found(grade) = look else {
        return None;
    };
    let code = grade.code();
    let out = match place {
        Place::Spoke(_) => 52.0,
        Place::Between(_) => 101.0,
        Place::Joint(_) | Place::Felloe(_) => 85.0,
        Place::Whole | Place::Nave => 0.0,
    };
    let (x, y) = point(looking.wheel.turn(place).unwrap_or_default(), out);
    Some(sheet!(
        "svg:<g class=badge transform=\"translate({} {}) scale(.5)\" data-mark={}><circle cx=16 cy=16 r=12/><path d={}/></g>",
        decimal(x - 8.0, 2),
        decimal(y - 8.0, 2),
        code,
        filled(code)
    ))
}

fn numbers(looking: &Looking) -> Vec<Piece> {
    let spokes = looking.wheel.felloes.spokes();
    let step = if spokes > MOST_NUMBERED { 2 } else { 1 };
    (1..=spokes)
        .step_by(step)
        .map(|n| {
            let turn = looking.wheel.turn(Place::Spoke(n)).unwrap_or_default();
            let (x, y) = point(turn, NUMBERS);
            let (x, y) = (decimal(x, 1), decimal(y, 1));
            sheet!(
                "svg:<text class=number x={} y={}>{}</text>",
                x,
                y,
                n.to_string()
            )
        })
        .collect()
}

/// The figures, each beside its place.
fn figures(looking: &Looking, drawn: &Drawn) -> Vec<Piece> {
    let each = drawn.figures.iter().filter_map(|(place, said)| {
        let turn = looking.wheel.turn(*place)?;
        let out = match place {
            Place::Spoke(_) => 36.0,
            Place::Between(_) => FIGURES,
            _ => 63.0,
        };
        let (x, y) = point(turn, out);
        Some(sheet!(
            "svg:<text class=figure x={} y={}>{}</text>",
            decimal(x.clamp(-WIDEST, WIDEST), 1),
            decimal(y, 1),
            said.clone()
        ))
    });
    each.collect()
}

/// A small drawing's spokes, as lines at the top to be turned.
pub fn spoke_turns(wheel: &cartside_core::wheel::Wheel) -> Vec<f64> {
    let spokes = wheel.felloes.spokes();
    (1..=spokes)
        .filter_map(|n| wheel.turn(Place::Spoke(n)))
        .map(degrees)
        .collect()
}
