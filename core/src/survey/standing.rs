//! What a wheel may still be used for: findings propose it, the examiner decides and signs it.

/// The standing of a wheel, from kind to harsh.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// No fault found against the stated use, in what was examined on this date.
    NoFaultFound,
    /// Empty or up to a quarter of its load, at a walk, on level hard ground, no people.
    LightWorkOnly,
    /// Too little has been recorded to judge. Harsher than *light work only*, since silence never
    /// permits work; milder than what is known to be bad.
    NotJudged,
    /// Not to be loaded or used; it may be walked to the shed.
    KeepEmpty,
    /// Not to be moved on this wheel.
    NotOnThisWheel,
}

impl Standing {
    /// Every standing, from kind to harsh.
    pub const ALL: [Standing; 5] = [
        Standing::NoFaultFound,
        Standing::LightWorkOnly,
        Standing::NotJudged,
        Standing::KeepEmpty,
        Standing::NotOnThisWheel,
    ];

    /// The word that stands for this standing on paper and in the state of a page.
    pub fn code(self) -> &'static str {
        match self {
            Standing::NoFaultFound => "no-fault-found",
            Standing::LightWorkOnly => "light-work-only",
            Standing::NotJudged => "not-judged",
            Standing::KeepEmpty => "keep-empty",
            Standing::NotOnThisWheel => "not-on-this-wheel",
        }
    }

    /// The standing a code stands for.
    pub fn from_code(code: &str) -> Option<Standing> {
        Standing::ALL
            .into_iter()
            .find(|standing| standing.code() == code)
    }
}
