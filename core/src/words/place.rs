//! Where on the vehicle: positions, places and lists of places. Joint 1 is the mark, and after the
//! last spoke comes the first.

use super::list;
use super::style::Style;
use crate::wheel::{Part, Place, Position, Wheel};

/// Where a wheel stands, as a label: `near fore`.
#[must_use]
pub fn position(position: Position) -> &'static str {
    match position {
        Position::Only => "only wheel",
        Position::Near => "near",
        Position::Off => "off",
        Position::NearFore => "near fore",
        Position::OffFore => "off fore",
        Position::NearHind => "near hind",
        Position::OffHind => "off hind",
    }
}

/// The wheel at a position: `near fore wheel`.
#[must_use]
pub fn wheel_at(at: Position) -> String {
    match at {
        Position::Only => position(at).to_owned(),
        _ => format!("{} wheel", position(at)),
    }
}

/// A place on a wheel: `spoke 3`. Without the wheel the place after its last spoke has no second
/// number.
#[must_use]
pub fn place(place: Place, wheel: Option<&Wheel>, style: Style) -> String {
    match place {
        Place::Whole => "whole wheel".to_owned(),
        Place::Nave => style.terms.nave.to_owned(),
        Place::Spoke(n) => format!("spoke {n}"),
        Place::Between(n) => between(n, wheel),
        Place::Joint(1) => "joint 1, the mark".to_owned(),
        Place::Joint(n) => format!("joint {n}"),
        Place::Felloe(n) => format!("{} {n}", style.terms.felloe),
    }
}

fn between(spoke: u16, wheel: Option<&Wheel>) -> String {
    match wheel.filter(|wheel| wheel.has(Place::Between(spoke))) {
        Some(wheel) => format!("between {spoke} and {}", wheel.next_spoke(spoke)),
        None => format!("between {spoke} and the next"),
    }
}

/// A part of the vehicle: `near wheel, spoke 3`.
#[must_use]
pub fn part(part: Part, wheel: Option<&Wheel>, style: Style) -> String {
    match part {
        Part::Vehicle => "whole vehicle".to_owned(),
        Part::At(position, Place::Whole) => wheel_at(position),
        Part::At(position, at) => {
            format!("{}, {}", wheel_at(position), place(at, wheel, style))
        }
    }
}

/// Several places, those that follow each other drawn together: `spokes 1 to 9 and 11`.
#[must_use]
pub fn places(places: &[Place], wheel: &Wheel, style: Style) -> String {
    let here = |kind: fn(u16) -> Place| -> Vec<u16> {
        let mut numbers: Vec<u16> = places
            .iter()
            .filter(|place| place.number().map(kind) == Some(**place))
            .filter_map(|place| place.number())
            .collect();
        numbers.sort_unstable();
        numbers.dedup();
        numbers
    };
    let betweens = here(Place::Between);
    let single = |at: Place| places.contains(&at).then(|| place(at, Some(wheel), style));
    let groups: Vec<String> = [
        single(Place::Whole),
        single(Place::Nave),
        numbered("spoke", &here(Place::Spoke)),
        (!betweens.is_empty()).then(|| {
            let each: Vec<String> = betweens.iter().map(|n| between(*n, Some(wheel))).collect();
            each.join(", ")
        }),
        joints(&here(Place::Joint)),
        numbered(style.terms.felloe, &here(Place::Felloe)),
    ]
    .into_iter()
    .flatten()
    .collect();
    groups.join("; ")
}

fn joints(numbers: &[u16]) -> Option<String> {
    match numbers {
        [1] => Some("joint 1, the mark".to_owned()),
        _ => numbered("joint", numbers),
    }
}

fn numbered(noun: &str, numbers: &[u16]) -> Option<String> {
    match numbers {
        [] => None,
        [one] => Some(format!("{noun} {one}")),
        _ => Some(format!("{noun}s {}", list(&runs(numbers)))),
    }
}

/// Numbers in order, three or more that follow each other as `1 to 9`.
fn runs(numbers: &[u16]) -> Vec<String> {
    numbers
        .chunk_by(|one, next| one.checked_add(1) == Some(*next))
        .flat_map(|run| match run {
            [first, _, .., last] => vec![format!("{first} to {last}")],
            _ => run.iter().map(u16::to_string).collect(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{part, place, places, position, wheel_at};
    use crate::wheel::{Part, Place, Position};
    use crate::words::sample::{style, wheel};

    #[test]
    fn positions_have_names() {
        let rows = Position::ALL.map(|at| format!("{}: {}", position(at), wheel_at(at)));
        insta::assert_snapshot!(rows.join("\n"), @r"
        only wheel: only wheel
        near: near wheel
        off: off wheel
        near fore: near fore wheel
        off fore: off fore wheel
        near hind: near hind wheel
        off hind: off hind wheel
        ");
    }

    #[test]
    fn places_have_names_and_the_last_spoke_is_followed_by_the_first() {
        let all = [
            Place::Whole,
            Place::Nave,
            Place::Spoke(3),
            Place::Between(3),
            Place::Between(12),
            Place::Between(13),
            Place::Joint(1),
            Place::Joint(2),
            Place::Felloe(6),
        ];
        let rows = all.map(|at| {
            let at_near = part(Part::At(Position::Near, at), None, style());
            format!("{} | {at_near}", place(at, Some(&wheel()), style()))
        });
        insta::assert_snapshot!(rows.join("\n"), @r"
        whole wheel | near wheel
        nave | near wheel, nave
        spoke 3 | near wheel, spoke 3
        between 3 and 4 | near wheel, between 3 and the next
        between 12 and 1 | near wheel, between 12 and the next
        between 13 and the next | near wheel, between 13 and the next
        joint 1, the mark | near wheel, joint 1, the mark
        joint 2 | near wheel, joint 2
        felloe 6 | near wheel, felloe 6
        ");
        assert_eq!(part(Part::Vehicle, None, style()), "whole vehicle");
    }

    #[test]
    fn places_that_follow_each_other_are_drawn_together() {
        let spokes = |numbers: &[u16]| {
            numbers
                .iter()
                .copied()
                .map(Place::Spoke)
                .collect::<Vec<_>>()
        };
        let lists = [
            vec![],
            spokes(&[3]),
            spokes(&[3, 4]),
            spokes(&[12, 1]),
            spokes(&[1, 2, 3, 4, 5, 6, 7, 8, 9, 11]),
            spokes(&[1, 3, 5, 6, 7, 11, 12]),
            spokes(&[5, 5, u16::MAX]),
            vec![Place::Joint(1)],
            vec![Place::Joint(1), Place::Joint(2), Place::Joint(3)],
            vec![Place::Between(4), Place::Between(12), Place::Spoke(2)],
            vec![Place::Felloe(2), Place::Nave, Place::Whole],
        ];
        let rows = lists.map(|list| format!("[{}]", places(&list, &wheel(), style())));
        insta::assert_snapshot!(rows.join("\n"), @r"
        []
        [spoke 3]
        [spokes 3 and 4]
        [spokes 1 and 12]
        [spokes 1 to 9 and 11]
        [spokes 1, 3, 5 to 7, 11 and 12]
        [spokes 5 and 65535]
        [joint 1, the mark]
        [joints 1 to 3]
        [spoke 2; between 4 and 5, between 12 and 1]
        [whole wheel; nave; felloe 2]
        ");
    }
}
