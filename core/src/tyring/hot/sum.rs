//! Adding up over a stretch of temperature what changes with it, by Gauss and Legendre with five points a piece.

/// Where a curve of iron bends or breaks, in °C, and pieces narrow enough about its peak at 735.
const PIECES: [f64; 24] = [
    -40.0, 0.0, 60.0, 130.0, 220.0, 320.0, 426.85, 520.0, 600.0, 660.0, 700.0, 720.0, 730.0, 735.0,
    740.0, 750.0, 768.85, 795.0, 826.85, 860.0, 900.0, 1000.0, 1100.0, 1200.0,
];

/// Nodes and weights on −1 to 1 (M. Abramowitz, I. A. Stegun, *Handbook of Mathematical Functions*, table 25.4, n = 5).
const NODES: [(f64, f64); 5] = [
    (-0.906_179_845_938_664, 0.236_926_885_056_189),
    (-0.538_469_310_105_683, 0.478_628_670_499_366),
    (0.0, 0.568_888_888_888_889),
    (0.538_469_310_105_683, 0.478_628_670_499_366),
    (0.906_179_845_938_664, 0.236_926_885_056_189),
];

/// The sum of `f` from `low` to `high` °C, both within −40 and 1200; nought where they are the wrong way round.
pub(super) fn over(low: f64, high: f64, f: &dyn Fn(f64) -> f64) -> f64 {
    let mut sum = 0.0;
    let mut begins = f64::NEG_INFINITY;
    for ends in PIECES {
        let (from, to) = (low.max(begins), high.min(ends));
        if from < to && begins.is_finite() {
            sum += piece(from, to, f);
        }
        begins = ends;
    }
    sum
}

fn piece(from: f64, to: f64, f: &dyn Fn(f64) -> f64) -> f64 {
    let (middle, half) = ((from + to) / 2.0, (to - from) / 2.0);
    let points = NODES
        .iter()
        .map(|(node, weight)| weight * f(middle + half * node));
    half * points.sum::<f64>()
}

#[cfg(test)]
mod tests {
    use super::over;

    #[test]
    fn it_adds_up_what_has_a_closed_form() {
        assert!((over(20.0, 1200.0, &|c| c * c) - (1.728e9 - 8000.0) / 3.0).abs() < 1e-3);
        // The branch of the peak: 13 002 / (738 − θ) from 600 to 735.
        let peak = over(600.0, 735.0, &|c| 13_002.0 / (738.0 - c));
        assert!(
            (peak / (13_002.0 * (138.0_f64 / 3.0).ln()) - 1.0).abs() < 1e-6,
            "{peak}"
        );
        assert_eq!(over(500.0, 500.0, &|_| 1.0), 0.0);
        assert_eq!(over(600.0, 500.0, &|_| 1.0), 0.0);
    }
}
