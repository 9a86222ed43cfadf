//! The cut: learnt losses, the safe first piece, and what is refused.

use proptest::prelude::*;

use super::*;

fn mm(v: f64) -> Length {
    millimetres(v)
}

fn round(v: f64) -> Circumference {
    Circumference(mm(v))
}

fn job(cut: f64, loss: f64) -> Job {
    Job {
        before: round(4240.0),
        cut: mm(cut),
        after: round(4240.0 - cut - loss),
    }
}

#[test]
fn a_shop_s_own_loss_is_learnt_from_its_jobs() {
    let jobs = [job(20.0, 10.0), job(15.0, 12.0), job(30.0, 11.0)];
    let loss = WeldLoss::learnt(&jobs).unwrap();
    assert_eq!(loss.jobs, Some(3));
    assert!((to_paper_mm((loss.least + loss.most) / 2.0) - 11.0).abs() < 1e-6);
    // A scatter of 1 mm in three jobs: 1 mm × √(4/3) × 4.53 to either side.
    let half = to_paper_mm(loss.most - loss.least) / 2.0;
    assert!(
        (half - (4.0_f64 / 3.0).sqrt() * 4.53).abs() < 1e-5,
        "{half}"
    );
    let many: Vec<_> = (0..30).map(|n| jobs[n % 3]).collect();
    let surer = WeldLoss::learnt(&many).unwrap();
    assert!(surer.most < loss.most && surer.least > loss.least);
}

#[test]
fn a_job_that_does_not_add_up_is_left_out() {
    for few in [&[][..], &[job(20.0, 10.0); 2]] {
        assert!(matches!(
            WeldLoss::learnt(few),
            Err(Refusal::FewJobs { .. })
        ));
    }
    for odd in [
        job(20.0, 100.0),
        job(-20.0, 10.0),
        job(20.0, f64::NAN),
        job(20.0, -61.0),
    ] {
        let jobs = [job(20.0, 10.0), job(20.0, 11.0), odd];
        assert!(!odd.is_believed() && jobs[0].is_believed());
        let too_few = Refusal::FewJobs {
            given: 2,
            fewest: FEWEST_JOBS,
        };
        assert_eq!(WeldLoss::learnt(&jobs), Err(too_few));
        let enough = [jobs[0], jobs[1], odd, job(20.0, 12.0)];
        let learnt = WeldLoss::learnt(&enough).unwrap();
        let without = WeldLoss::learnt(&[enough[0], enough[1], enough[3]]).unwrap();
        assert_eq!(learnt, without);
    }
}

#[test]
fn the_first_cut_counts_on_the_most_a_weld_takes() {
    let loss = WeldLoss::printed();
    let out = to_take_out(round(4241.0), round(4244.0), Draw(mm(32.0)), &loss).unwrap();
    assert_eq!(to_paper_mm(out.off), 35.0);
    let Way::Cut { piece, left } = out.way else {
        panic!("a cut")
    };
    assert_eq!(to_paper_mm(piece), 35.0 - 15.875);
    assert_eq!(to_paper_mm(left), 9.525);
    // Whatever the weld takes between its least and its most, the tyre is never too small.
    for taken in [loss.least, loss.most] {
        let after = Circumference(mm(4244.0) - piece - taken);
        assert!(to_paper_mm(after.0 - out.wanted.0) > -1e-6);
        let again = to_take_out(round(4241.0), after, Draw(mm(32.0)), &loss);
        assert!(again.is_err() || again.unwrap().way == Way::Upset);
    }
}

#[test]
fn what_a_weld_might_overshoot_is_upset_instead() {
    let out = to_take_out(
        round(4241.0),
        round(4230.0),
        Draw(mm(20.0)),
        &WeldLoss::printed(),
    );
    assert_eq!(out.unwrap().way, Way::Upset);
}

#[test]
fn what_cannot_be_is_refused() {
    let of = |wheel, tyre, draw| {
        to_take_out(
            round(wheel),
            round(tyre),
            Draw(mm(draw)),
            &WeldLoss::printed(),
        )
        .unwrap_err()
    };
    assert!(matches!(
        of(4241.0, 4200.0, 10.0),
        Refusal::TyreSmaller { .. }
    ));
    assert!(matches!(
        of(4241.0, 4244.0, 0.0),
        Refusal::TyreLarger { .. }
    ));
    assert!(matches!(of(0.0, 4244.0, 10.0), Refusal::Given(_)));
    assert!(matches!(of(4241.0, f64::NAN, 10.0), Refusal::Given(_)));
    assert!(lost_to_char(mm(-1.0)).is_err());
    assert!(oval(mm(1340.0), mm(1350.0)).is_err());
}

#[test]
fn charred_wood_is_lost_all_round() {
    let lost = to_paper_mm(lost_to_char(mm(1.0)).unwrap());
    assert!((lost - std::f64::consts::TAU).abs() < 1e-6);
    assert_eq!(to_paper_mm(oval(mm(1353.0), mm(1350.0)).unwrap()), 3.0);
}

#[test]
fn what_is_printed_stands_between_its_own_least_and_most() {
    let between = PRINTED.map(|row| row.between());
    let least = between
        .iter()
        .map(|row| to_paper_mm(row.0))
        .fold(f64::INFINITY, f64::min);
    let most = between
        .iter()
        .map(|row| to_paper_mm(row.1))
        .fold(0.0, f64::max);
    let all = WeldLoss::printed();
    assert_eq!(
        (least, most),
        (to_paper_mm(all.least), to_paper_mm(all.most))
    );
}

proptest! {
    #[test]
    fn any_input_is_a_number_or_refused(
        wheel in 0.0..1e4, tyre in 0.0..1e4, draw in -10.0..120.0, losses in prop::collection::vec(-70.0..70.0, 0..8)
    ) {
        let jobs: Vec<_> = losses.into_iter().map(|loss| job(20.0, loss)).collect();
        let loss = WeldLoss::learnt(&jobs).unwrap_or(WeldLoss::printed());
        prop_assert!(loss.least <= loss.most && loss.most.is_finite());
        let Ok(out) = to_take_out(round(wheel), round(tyre), Draw(mm(draw)), &loss) else { return Ok(()) };
        prop_assert!(out.off > mm(0.0) && out.off.is_finite());
        if let Way::Cut { piece, left } = out.way {
            prop_assert!(piece > mm(0.0) && piece.is_finite() && left >= mm(0.0));
        }
    }
}
