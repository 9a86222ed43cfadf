//! What a release build was made of, so that the same is not made twice: to shrink and pack what Trunk leaves takes
//! twenty seconds, and most runs of the tests change nothing of it.

use crate::seal::{self, hex};
use anyhow::{Context, Result};
use sha2::{Digest, Sha256};
use std::env;
use std::fs;
use std::path::{Path, PathBuf};

/// Where is written what the build in its place was made of.
const RECORD: &str = "target/made-of";

/// What a build is made of, and what comes of it.
pub(crate) struct Made {
    record: PathBuf,
    of: String,
    results: Vec<PathBuf>,
}

impl Made {
    /// Of this folder as Trunk left it, these bytes, these tools of which each has its version in its path, and of the
    /// program that runs; these folders come of it.
    pub(crate) fn of(
        root: &Path,
        folder: &Path,
        bytes: &[u8],
        tools: &[Option<PathBuf>],
        results: Vec<PathBuf>,
    ) -> Result<Made> {
        let own = fs::read(env::current_exe()?).context("the program that runs cannot be read")?;
        let [bytes, own] = [bytes, &own].map(|part| hex(&Sha256::digest(part)));
        let all = format!("{bytes} {own} {} {tools:?}", digest(folder)?);
        Ok(Made {
            record: root.join(RECORD),
            of: hex(&Sha256::digest(all)),
            results,
        })
    }

    /// Whether all that comes of it is in its place, as it was made of the very same.
    pub(crate) fn is_in_place(&self) -> bool {
        let recorded = fs::read_to_string(&self.record);
        let now = self.line();
        recorded.is_ok_and(|recorded| now.is_ok_and(|now| recorded == now))
    }

    /// Writes down that it is.
    pub(crate) fn record(&self) -> Result<()> {
        Ok(fs::write(&self.record, self.line()?)?)
    }

    fn line(&self) -> Result<String> {
        let mut line = self.of.clone();
        for result in &self.results {
            line = format!("{line} {}", digest(result)?);
        }
        Ok(line)
    }
}

/// The digest of every file of a folder, with its name.
fn digest(folder: &Path) -> Result<String> {
    let files = seal::files(folder)?;
    Ok(hex(&Sha256::digest(format!("{files:?}"))))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    struct Place(tempfile::TempDir);

    impl Place {
        fn new() -> Place {
            let place = Place(tempfile::tempdir().unwrap());
            for folder in ["target", "trunk/icons", "dist"] {
                fs::create_dir_all(place.0.path().join(folder)).unwrap();
            }
            place.write("trunk/icons/a.svg", "icon");
            place.write("dist/a.js", "built");
            place
        }

        fn write(&self, file: &str, text: &str) {
            fs::write(self.0.path().join(file), text).unwrap();
        }

        fn made(&self, bytes: &[u8], tool: &str) -> Made {
            let root = self.0.path();
            let tools = [Some(PathBuf::from(tool))];
            Made::of(
                root,
                &root.join("trunk"),
                bytes,
                &tools,
                vec![root.join("dist")],
            )
            .unwrap()
        }

        fn is_in_place(&self) -> bool {
            self.made(b"unpacker", "tool-1").is_in_place()
        }
    }

    #[test]
    fn the_same_is_not_made_twice_and_anything_else_is() {
        let place = Place::new();
        assert!(!place.is_in_place());
        place.made(b"unpacker", "tool-1").record().unwrap();
        assert!(place.is_in_place());
        assert!(!place.made(b"another", "tool-1").is_in_place());
        assert!(!place.made(b"unpacker", "tool-2").is_in_place());
    }

    #[test]
    fn what_was_altered_added_or_renamed_since_is_made_anew() {
        let changes: [(&str, &str); 3] = [
            ("trunk/icons/a.svg", "other"),
            ("trunk/b.js", "new"),
            ("dist/a.js", "altered"),
        ];
        for (file, text) in changes {
            let place = Place::new();
            place.made(b"unpacker", "tool-1").record().unwrap();
            place.write(file, text);
            assert!(!place.is_in_place(), "{file}");
        }
        let place = Place::new();
        place.made(b"unpacker", "tool-1").record().unwrap();
        let root = place.0.path();
        fs::rename(root.join("dist/a.js"), root.join("dist/b.js")).unwrap();
        assert!(!place.is_in_place());
        fs::remove_dir_all(root.join("dist")).unwrap();
        assert!(!place.is_in_place());
    }
}
