//! The groups in which the questions are asked, from the keeper inward and back to the whole.

/// A group of questions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// The first look, standing.
    FirstLook,
    /// What keeps the wheel on.
    Keeper,
    /// The tyre, or the strakes.
    Tyre,
    /// The felloes and their joints.
    Rim,
    /// The spokes.
    Spokes,
    /// The nave and its bonds.
    Nave,
    /// The wheel as a whole, and how it sits on its arm.
    Whole,
}

impl Group {
    /// Every group, in the order of the work.
    pub const ALL: [Group; 7] = [
        Group::FirstLook,
        Group::Keeper,
        Group::Tyre,
        Group::Rim,
        Group::Spokes,
        Group::Nave,
        Group::Whole,
    ];

    /// The word that stands for this group in the state of a page.
    pub fn code(self) -> &'static str {
        match self {
            Group::FirstLook => "first-look",
            Group::Keeper => "keeper",
            Group::Tyre => "tyre",
            Group::Rim => "rim",
            Group::Spokes => "spokes",
            Group::Nave => "nave",
            Group::Whole => "whole",
        }
    }

    /// The group a code stands for.
    pub fn from_code(code: &str) -> Option<Group> {
        Group::ALL.into_iter().find(|group| group.code() == code)
    }
}

#[cfg(test)]
mod tests {
    use super::Group;

    #[test]
    fn a_code_leads_back_to_its_group() {
        for group in Group::ALL {
            assert_eq!(Group::from_code(group.code()), Some(group));
        }
    }
}
