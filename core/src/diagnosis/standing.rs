//! How bad a finding is, and the standing it proposes.

pub use crate::survey::Standing;

/// How bad one finding is, from mild to grave.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// Worth writing down; it sets no standing.
    Note,
    /// It proposes *light work only*.
    LightWorkOnly,
    /// It proposes *keep empty*.
    KeepEmpty,
    /// It proposes *not on this wheel*.
    NotOnThisWheel,
}

impl Grade {
    /// The standing this grade proposes, if it proposes one.
    pub fn proposes(self) -> Option<Standing> {
        match self {
            Grade::Note => None,
            Grade::LightWorkOnly => Some(Standing::LightWorkOnly),
            Grade::KeepEmpty => Some(Standing::KeepEmpty),
            Grade::NotOnThisWheel => Some(Standing::NotOnThisWheel),
        }
    }
}
