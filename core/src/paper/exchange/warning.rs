//! What is said about a file that is good all the same: something was left out, or is missing.

use std::fmt;

use crate::daybook::Digest;

use super::sentence::shown;

/// Something worth knowing about a file whose entries and pictures hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Warning {
    /// A member was not looked at.
    LeftOut {
        /// Its name.
        name: String,
        /// Why not.
        why: WhyLeftOut,
    },
    /// A member written for people is not the one the manifest lists. It is never brought in.
    NotAsListed {
        /// Its name.
        name: String,
    },
    /// The manifest lists a member that is not there, and that would not have been brought in.
    ListedButAbsent {
        /// Its name.
        name: String,
    },
    /// Some lines stand more than once, and were taken once.
    LinesRepeated {
        /// How many lines were one too many.
        count: usize,
    },
    /// An entry speaks of a picture that the file does not hold.
    PictureAbsent {
        /// The SHA-256 of the picture.
        digest: Digest,
    },
    /// The file holds a picture of which no entry in it speaks.
    PictureUnused {
        /// The SHA-256 of the picture.
        digest: Digest,
    },
}

/// Why a member was not looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhyLeftOut {
    /// The manifest lists it; this version does not know what it is.
    Unknown,
    /// The manifest does not list it, so it came into the file after it was made.
    NotListed,
}

impl fmt::Display for Warning {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::LeftOut {
                name,
                why: WhyLeftOut::Unknown,
            } => write!(
                f,
                "\"{}\" was left out: this version does not know what it is. The rest is sound.",
                shown(name)
            ),
            Self::LeftOut {
                name,
                why: WhyLeftOut::NotListed,
            } => write!(
                f,
                "\"{}\" was left out: the manifest does not list it, so it was put in after the \
                 file was made. The rest is sound.",
                shown(name)
            ),
            Self::NotAsListed { name } => write!(
                f,
                "\"{}\" is not as the manifest lists it: do not rely on it. It is never brought \
                 in; entries and pictures are sound.",
                shown(name)
            ),
            Self::ListedButAbsent { name } => write!(
                f,
                "\"{}\" is listed but not there. It would not have been brought in; entries and \
                 pictures are sound.",
                shown(name)
            ),
            Self::LinesRepeated { count } => write!(
                f,
                "{count} of the lines stand more than once; each is taken once."
            ),
            Self::PictureAbsent { digest } => write!(
                f,
                "The picture {digest} is spoken of but not in the file; the entry is kept and \
                 waits for it."
            ),
            Self::PictureUnused { digest } => write!(
                f,
                "The picture {digest} is in the file, but no entry that this version can read speaks of \
                 it."
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Warning, WhyLeftOut};
    use crate::daybook::Digest;

    #[test]
    fn each_warning_has_its_sentence() {
        let name = || "pictures/cart.jpg".to_owned();
        let digest = Digest::of(b"abc");
        let all = [
            Warning::LeftOut {
                name: name(),
                why: WhyLeftOut::Unknown,
            },
            Warning::LeftOut {
                name: name(),
                why: WhyLeftOut::NotListed,
            },
            Warning::NotAsListed { name: name() },
            Warning::ListedButAbsent { name: name() },
            Warning::LinesRepeated { count: 3 },
            Warning::PictureAbsent { digest },
            Warning::PictureUnused { digest },
        ]
        .map(|warning| warning.to_string())
        .join("\n");
        insta::assert_snapshot!(all, @r#"
        "pictures/cart.jpg" was left out: this version does not know what it is. The rest is sound.
        "pictures/cart.jpg" was left out: the manifest does not list it, so it was put in after the file was made. The rest is sound.
        "pictures/cart.jpg" is not as the manifest lists it: do not rely on it. It is never brought in; entries and pictures are sound.
        "pictures/cart.jpg" is listed but not there. It would not have been brought in; entries and pictures are sound.
        3 of the lines stand more than once; each is taken once.
        The picture ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad is spoken of but not in the file; the entry is kept and waits for it.
        The picture ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad is in the file, but no entry that this version can read speaks of it.
        "#);
    }
}
