//! What kind of vehicle it is, which decides where wheels can stand.

use super::position::Position;

/// The kinds of vehicle that are asked for at the start.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum VehicleKind {
    /// Two wheels, for goods.
    Cart,
    /// Two wheels, pushed or pulled by hand.
    HandCart,
    /// Two wheels, for people: trap, gig, governess cart.
    Trap,
    /// Four wheels, for goods.
    Waggon,
    /// Four wheels, for people.
    Carriage,
    /// One wheel in front.
    Barrow,
    /// A wheel brought to the shop without its vehicle.
    LooseWheel,
}

impl VehicleKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [VehicleKind; 7] = [
        VehicleKind::Cart,
        VehicleKind::Waggon,
        VehicleKind::Trap,
        VehicleKind::Carriage,
        VehicleKind::HandCart,
        VehicleKind::Barrow,
        VehicleKind::LooseWheel,
    ];

    /// The word that stands for this kind on paper.
    pub fn code(self) -> &'static str {
        match self {
            VehicleKind::Cart => "cart",
            VehicleKind::HandCart => "hand-cart",
            VehicleKind::Trap => "trap",
            VehicleKind::Waggon => "waggon",
            VehicleKind::Carriage => "carriage",
            VehicleKind::Barrow => "barrow",
            VehicleKind::LooseWheel => "loose-wheel",
        }
    }

    /// The kind a code stands for; `None` for a word this version does not know.
    pub fn from_code(code: &str) -> Option<VehicleKind> {
        VehicleKind::ALL
            .into_iter()
            .find(|kind| kind.code() == code)
    }

    /// Where its wheels stand, in the order they are walked round.
    pub fn positions(self) -> &'static [Position] {
        match self {
            VehicleKind::Cart | VehicleKind::HandCart | VehicleKind::Trap => {
                &[Position::Near, Position::Off]
            }
            VehicleKind::Waggon | VehicleKind::Carriage => &[
                Position::NearFore,
                Position::OffFore,
                Position::NearHind,
                Position::OffHind,
            ],
            VehicleKind::Barrow | VehicleKind::LooseWheel => &[Position::Only],
        }
    }
}

/// What is said of a vehicle as a whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Vehicle {
    /// Its kind.
    pub kind: VehicleKind,
    /// What it is called, or whose it is, in the examiner's words; empty until it is said.
    pub name: String,
}

#[cfg(test)]
mod tests {
    use super::VehicleKind;

    #[test]
    fn a_code_leads_back_to_its_kind() {
        for kind in VehicleKind::ALL {
            assert_eq!(VehicleKind::from_code(kind.code()), Some(kind));
        }
        assert_eq!(VehicleKind::from_code("sledge"), None);
    }

    #[test]
    fn every_kind_has_a_wheel_and_no_position_twice() {
        for kind in VehicleKind::ALL {
            let positions = kind.positions();
            assert!(!positions.is_empty());
            for position in positions {
                assert_eq!(
                    positions.iter().filter(|other| *other == position).count(),
                    1
                );
            }
        }
    }
}
