//! A plot of the grip: a line, and round it a band where there is one. Figures stand beside it in words.

use cartside_core::quantity::decimal;

use crate::markup::{Piece, sheet};

/// Left and right end, top and foot.
const ENDS: (f64, f64, f64, f64) = (16.0, 302.0, 16.0, 96.0);

/// A line through these heights, evenly apart from left to right, each a part of the highest; with the low and the high
/// ends of its band; and what stands under its two ends.
pub fn plot(line: &[f64], band: Option<(&[f64], &[f64])>, [from, to]: [&str; 2]) -> Piece {
    let highest = |heights: &[f64]| heights.iter().copied().fold(0.0, f64::max);
    let most = highest(band.map_or(line, |(_, high)| high)).max(1.0);
    let (left, right, top, foot) = ENDS;
    let way = |heights: &[f64]| -> Vec<String> {
        let pieces = heights.len().saturating_sub(1).max(1) as f64;
        let points = heights.iter().enumerate().map(|(n, height)| {
            let x = left + (right - left) * n as f64 / pieces;
            let y = foot - (foot - top) * height / most;
            format!("{} {}", decimal(x, 1), decimal(y, 1))
        });
        points.collect()
    };
    let area = band.map(|(low, high)| {
        let back: Vec<String> = way(low).into_iter().rev().collect();
        format!("M{}L{}z", way(high).join("L"), back.join("L"))
    });
    sheet!(
        "<svg class=plot viewBox=\"0 0 320 128\" aria-hidden=true><path class=band d={}/><path d={}/>\
         <path class=thin d=\"M16 96H302\"/><text x=16 y=122>{}</text><text class=end x=302 y=122>{}</text></svg>",
        area.unwrap_or_default(),
        format!("M{}", way(line).join("L")),
        from.to_owned(),
        to.to_owned()
    )
}
