//! Words in a file of a build that must stand there once to be replaced: twice, or not at all, and the build is of another
//! form than is expected.

use anyhow::{Result, bail};

/// The text with other words in the place of these.
pub(crate) fn replace_once(file: &str, text: &str, old: &str, new: &str) -> Result<String> {
    if text.matches(old).count() != 1 {
        bail!("{file} should hold `{old}` exactly once");
    }
    Ok(text.replace(old, new))
}
