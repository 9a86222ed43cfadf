//! What a vehicle is to be used for: asked before anything is looked at, since a standing is one
//! against the stated use.

/// One intended use; several may hold at once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Use {
    /// It stands and is looked at.
    Display,
    /// It is led or towed at a walk without a load.
    LedEmpty,
    /// It carries goods.
    Goods,
    /// It carries people.
    People,
    /// It goes on a public road.
    Road,
}

impl Use {
    /// Every use, from the least to ask of a wheel.
    pub const ALL: [Use; 5] = [
        Use::Display,
        Use::LedEmpty,
        Use::Goods,
        Use::People,
        Use::Road,
    ];

    /// The word that stands for this use on paper.
    pub fn code(self) -> &'static str {
        match self {
            Use::Display => "display",
            Use::LedEmpty => "led-empty",
            Use::Goods => "goods",
            Use::People => "people",
            Use::Road => "road",
        }
    }

    /// The use a code stands for.
    pub fn from_code(code: &str) -> Option<Use> {
        Use::ALL.into_iter().find(|it| it.code() == code)
    }

    /// Whether people are carried, so that *light work only* is never enough.
    pub fn carries_people(self) -> bool {
        self == Use::People
    }
}

#[cfg(test)]
mod tests {
    use super::Use;

    #[test]
    fn a_code_leads_back_to_its_use() {
        for it in Use::ALL {
            assert_eq!(Use::from_code(it.code()), Some(it));
        }
        assert_eq!(Use::from_code("racing"), None);
    }

    #[test]
    fn only_people_are_people() {
        let people = Use::ALL.into_iter().filter(|it| it.carries_people());
        assert_eq!(people.collect::<Vec<_>>(), [Use::People]);
    }
}
