//! The wheel cut through from the side: how far the rim stands out from the plane where the spokes enter the nave. The
//! dish is drawn wider than it is, by a scale that is told.

use cartside_core::quantity::decimal;
use cartside_core::quantity::length::to_paper_mm;
use cartside_core::survey::Question;
use cartside_core::wheel::{Place, Size};
use cartside_core::words::Style;

use super::face::{Face, SOLE};
use crate::looking::Looking;
use crate::markup::{Piece, sheet};

/// How much wider than it is the dish is drawn.
const WIDER: f64 = 3.0;
/// How far the rim may stand to a side in the drawing.
const MOST: f64 = 30.0;

/// The side view, once a dish has been measured or said; what was measured last counts before what was built.
pub fn side_view(looking: &Looking, style: Style) -> Option<Piece> {
    let measured = looking
        .answer(Question::Dish, Place::Whole)
        .unwrap_or_default();
    let measured = measured.iter().find_map(|answer| answer.length());
    let dish = measured.or(looking.wheel.sizes.get(Size::Dish))?;
    let face = Face::of(&looking.wheel, WIDER, 0.0);
    let unit = face.units(to_paper_mm(dish) * WIDER).clamp(-MOST, MOST);
    let half = (face.width() / 2.0).clamp(3.0, 14.0);
    let told = style.read(Question::Dish, dish);
    let said = match measured {
        Some(_) => format!("Dish {told}, as measured; drawn three times"),
        None => format!("Dish {told}, as built; drawn three times"),
    };
    let one = |up: f64| {
        let y = |out: f64| decimal(up * out, 1);
        let x = |aside: f64| decimal(unit + aside, 1);
        let (out, from) = (y(face.belly), y(face.nave));
        let wood = format!(
            "M-3 {from}L{} {out}H{}L3 {from}zM{} {out}H{}V{}H{}z",
            x(-2.0),
            x(2.0),
            x(-half),
            x(half),
            y(SOLE),
            x(-half)
        );
        let iron = format!(
            "M{} {}H{}V{}H{}z",
            x(-half),
            y(SOLE),
            x(half),
            y(face.tread),
            x(-half)
        );
        sheet!(
            "svg:<path class=wood d={}/><path class=iron d={}/>",
            wood,
            iron
        )
    };
    Some(sheet!(
        "<figure class=side><svg class=drawing data-drawing=side viewBox=\"-44 -104 88 208\" role=img aria-label={}>\
         <path class=plane d=\"M0 -102V102\"/>{}{}<path class=wood d=\"M-20 -12L-12 -17H12L22 -12V12L12 17H-12L-20 12z\"/></svg>\
         <figcaption class=dim>{}</figcaption></figure>",
        said.clone(),
        one(-1.0),
        one(1.0),
        said
    ))
}
