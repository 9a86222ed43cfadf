//! The bar: exact, by the printed rules, and refused.

use super::*;
use crate::quantity::length::millimetres;

fn round(v: f64) -> Circumference {
    Circumference(millimetres(v))
}

#[test]
fn a_bar_is_bent_about_the_middle_of_its_thickness() {
    let bar = bar(round(4209.15), millimetres(16.0), millimetres(0.0)).unwrap();
    let across = Diameter(round(4209.15).across().0 + millimetres(16.0));
    assert!(to_paper_mm(bar - across.round().0).abs() < 1e-6);
    let with_weld = super::bar(round(4209.15), millimetres(16.0), millimetres(12.0)).unwrap();
    assert_eq!(to_paper_mm(with_weld - bar), 12.0);
}

#[test]
fn no_printed_rule_is_far_from_the_bar_and_none_is_refused() {
    let (inside, thickness) = (round(4209.15), millimetres(16.0));
    let true_bar = to_paper_mm(bar(inside, thickness, millimetres(0.0)).unwrap());
    for printed in PRINTED {
        let (least, most) = printed.rule.bar(inside, thickness).unwrap();
        assert!(least <= most);
        let off = to_paper_mm(least) - true_bar;
        assert!((-30.0..30.0).contains(&off), "{}: {off}", printed.source);
    }
}

#[test]
fn what_cannot_be_is_refused() {
    let mm = millimetres;
    assert!(bar(round(0.0), mm(16.0), mm(0.0)).is_err());
    assert!(bar(round(4209.0), mm(0.0), mm(0.0)).is_err());
    assert!(bar(round(4209.0), mm(16.0), mm(-1.0)).is_err());
    assert!(bar(round(4209.0), mm(16.0), mm(f64::NAN)).is_err());
    assert!(Rule::OldRing.bar(round(f64::INFINITY), mm(16.0)).is_err());
}
