//! The names members have, and names no member may have.

use crate::daybook::Digest;

use super::bounds::{ENTRIES_BYTES, MANIFEST_BYTES, NAME_BYTES, PICTURE_BYTES, SIDE_BYTES};
use super::refused::{Refused, UnsafeName};

pub(super) const MANIFEST: &str = "manifest.json";
pub(super) const ENTRIES: &str = "entries.jsonl";
pub(super) const READINGS: &str = "readings.csv";
pub(super) const READ_ME: &str = "READ-ME.txt";

/// What a member is, by its name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    Manifest,
    Entries,
    Picture(Digest),
    /// Written for people, never read back.
    Side,
    Unknown,
}

impl Kind {
    /// What a member of this kind may unpack to, in bytes.
    pub(super) fn allowed(self) -> u64 {
        match self {
            Kind::Manifest => MANIFEST_BYTES,
            Kind::Entries => ENTRIES_BYTES,
            Kind::Picture(_) => PICTURE_BYTES,
            Kind::Side | Kind::Unknown => SIDE_BYTES,
        }
    }
}

/// What the member of this name is.
pub(super) fn kind(name: &str) -> Kind {
    match name {
        MANIFEST => Kind::Manifest,
        ENTRIES => Kind::Entries,
        READINGS | READ_ME => Kind::Side,
        _ => picture(name).map_or(Kind::Unknown, Kind::Picture),
    }
}

/// The name of the picture with this digest.
pub(super) fn picture_name(digest: Digest) -> String {
    format!("pictures/{digest}.jpg")
}

fn picture(name: &str) -> Option<Digest> {
    Digest::from_hex(name.strip_prefix("pictures/")?.strip_suffix(".jpg")?)
}

/// The name as text, when it is one that could not write outside a folder.
pub(super) fn name(bytes: &[u8]) -> Result<&str, Refused> {
    let name = std::str::from_utf8(bytes).map_err(|_| Refused::NameNotText {
        name: String::from_utf8_lossy(bytes)
            .chars()
            .take(NAME_BYTES)
            .collect(),
    })?;
    match fault(name) {
        None => Ok(name),
        Some(fault) => Err(Refused::NameUnsafe {
            name: name.chars().take(NAME_BYTES).collect(),
            fault,
        }),
    }
}

fn fault(name: &str) -> Option<UnsafeName> {
    if name.is_empty() {
        Some(UnsafeName::Empty)
    } else if name.len() > NAME_BYTES {
        Some(UnsafeName::TooLong)
    } else if name.contains(char::is_control) {
        Some(UnsafeName::Control)
    } else if name.contains('\\') {
        Some(UnsafeName::Backslash)
    } else if name.starts_with('/') || name.chars().nth(1) == Some(':') {
        Some(UnsafeName::Absolute)
    } else if name.split('/').any(|step| step == "..") {
        Some(UnsafeName::Parent)
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::{Kind, UnsafeName, fault, kind, picture_name};
    use crate::daybook::Digest;

    #[test]
    fn a_picture_is_known_by_its_digest_alone() {
        let digest = Digest::of(b"picture");
        assert_eq!(kind(&picture_name(digest)), Kind::Picture(digest));
        assert_eq!(kind("pictures/cart.jpg"), Kind::Unknown);
        assert_eq!(kind(&format!("{digest}.jpg")), Kind::Unknown);
    }

    #[test]
    fn names_that_lead_out_of_a_folder_are_found() {
        for (name, found) in [
            ("", UnsafeName::Empty),
            (&*"a".repeat(256), UnsafeName::TooLong),
            ("a\nb", UnsafeName::Control),
            ("pictures\\a.jpg", UnsafeName::Backslash),
            ("/etc/a", UnsafeName::Absolute),
            ("C:/a", UnsafeName::Absolute),
            ("..", UnsafeName::Parent),
            ("a/../b", UnsafeName::Parent),
        ] {
            assert_eq!(fault(name), Some(found), "{name:?}");
        }
        for name in ["manifest.json", "a..b", "pictures/", "été.txt"] {
            assert_eq!(fault(name), None, "{name:?}");
        }
    }
}
