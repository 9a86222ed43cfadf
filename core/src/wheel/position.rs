//! Where a wheel stands: near is the left as the driver sits, off the right; fore and hind axle.

/// The place of one wheel under its vehicle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Position {
    /// The one wheel there is: a barrow's, or a wheel brought without its cart.
    Only,
    /// Left wheel of a two-wheeled vehicle.
    Near,
    /// Right wheel of a two-wheeled vehicle.
    Off,
    /// Left wheel of the fore axle.
    NearFore,
    /// Right wheel of the fore axle.
    OffFore,
    /// Left wheel of the hind axle.
    NearHind,
    /// Right wheel of the hind axle.
    OffHind,
}

impl Position {
    /// Every position there is, in the order they are walked round.
    pub const ALL: [Position; 7] = [
        Position::Only,
        Position::Near,
        Position::Off,
        Position::NearFore,
        Position::OffFore,
        Position::NearHind,
        Position::OffHind,
    ];

    /// The word that stands for this position in a slot and in the address of a page.
    pub fn code(self) -> &'static str {
        match self {
            Position::Only => "only",
            Position::Near => "near",
            Position::Off => "off",
            Position::NearFore => "near-fore",
            Position::OffFore => "off-fore",
            Position::NearHind => "near-hind",
            Position::OffHind => "off-hind",
        }
    }

    /// The position a code stands for; `None` for a word this version does not know.
    pub fn from_code(code: &str) -> Option<Position> {
        Position::ALL
            .into_iter()
            .find(|position| position.code() == code)
    }

    /// The other wheel on the same axle, if there is one.
    pub fn pair(self) -> Option<Position> {
        match self {
            Position::Only => None,
            Position::Near => Some(Position::Off),
            Position::Off => Some(Position::Near),
            Position::NearFore => Some(Position::OffFore),
            Position::OffFore => Some(Position::NearFore),
            Position::NearHind => Some(Position::OffHind),
            Position::OffHind => Some(Position::NearHind),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Position;

    #[test]
    fn a_code_leads_back_to_its_position() {
        for position in Position::ALL {
            assert_eq!(Position::from_code(position.code()), Some(position));
        }
        assert_eq!(Position::from_code("middle"), None);
    }

    #[test]
    fn a_pair_is_mutual() {
        for position in Position::ALL {
            if let Some(other) = position.pair() {
                assert_ne!(other, position);
                assert_eq!(other.pair(), Some(position));
            }
        }
    }
}
