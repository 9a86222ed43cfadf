//! A figure: how long one full tyring sheet takes to reckon on this machine: the fit with its bands, the grip through
//! cooling, twelve months at sixteen corners with the range of draw, and what drying explains. `cargo xtask measure` runs
//! it with the release profile, which is built for size as the app is.

#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a figure is printed, and what it is taken of is made here"
)]

use std::hint::black_box;
use std::time::Instant;

use cartside_core::material::{Iron, MoistureContent, Species};
use cartside_core::mechanics::{
    Build, Corner, Damp, Feet, Fitting, Slack, Stand, after, cooled, explains, season, sheet,
};
use cartside_core::quantity::circumference::{Diameter, Draw};
use cartside_core::quantity::length::millimetres;
use cartside_core::wheel::Rim;

/// The most milliseconds it may take.
const LIMIT: f64 = 5.0;
const TIMES: usize = 200;

fn main() {
    let build = Build {
        across: Diameter(millimetres(1350.0)),
        dish: millimetres(38.0),
        tyre_width: millimetres(60.0),
        tyre_thickness: millimetres(16.0),
        felloe_depth: millimetres(90.0),
        felloe_width: millimetres(64.0),
        spoke_depth: millimetres(65.0),
        spoke_width: millimetres(45.0),
        nave: Diameter(millimetres(300.0)),
        spokes: 12,
        felloes: 6,
        rim: Rim::Sawn,
        feet: Feet::Sound,
        iron: Iron::NotKnown,
        nave_timber: Species::EnglishElm.into(),
        spoke_timber: Species::EnglishOak.into(),
        felloe_timber: Species::EuropeanAsh.into(),
    };
    let moisture = |percent| MoistureContent::from_percent(percent).expect("a moisture");
    let fitting = Fitting {
        draw: Draw(millimetres(20.0)),
        doubt: millimetres(2.7),
        joints: millimetres(6.0),
        stand_off: millimetres(0.5),
        moisture: moisture(14.0),
    };
    // The second place has no range of draw for a wheel as wet as this, so that what would help is looked for too.
    for (name, stand, fitting) in [
        ("a full sheet", Stand::OpenShed, fitting),
        (
            "a full sheet without a range",
            Stand::Phoenix,
            Fitting {
                moisture: moisture(20.0),
                ..fitting
            },
        ),
    ] {
        measure(name, || {
            black_box(sheet(&build, &fitting).expect("a sheet"));
            black_box(after(&build, &fitting).expect("what is left"));
            black_box(cooled(&build, &fitting, &Corner::default()).expect("cooling"));
            black_box(season(&build, &fitting, &stand.year()).expect("a year"));
            let [from, to] = [14.0, 10.0].map(|it| Damp::even(moisture(it)));
            for slack in Slack::ALL {
                black_box(explains(&build, slack, from, to));
            }
        });
    }
}

/// Prints the median of many times, which other work on the machine hardly moves, and fails if it is over the limit.
fn measure(name: &str, reckon: impl Fn()) {
    let mut times: Vec<f64> = (0..TIMES)
        .map(|_| {
            let began = Instant::now();
            reckon();
            began.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    let found = times.get(TIMES / 2).copied().unwrap_or(f64::INFINITY);
    println!("figure: {name} natively: {found:.2} ms (limit {LIMIT:.0} ms)");
    assert!(
        found < LIMIT,
        "{name}: {found:.2} ms was measured, under {LIMIT} ms is allowed"
    );
}
