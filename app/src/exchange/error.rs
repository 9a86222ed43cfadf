//! Why a file could not go out or come in, and the sentence that says so.

use std::fmt;

/// Why a file was not handed out or taken in. The book itself was not touched.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// The browser could not make one file of the parts, most likely for want of memory.
    NotPacked,
    /// The browser did not let the file out.
    NotHandedOut,
    /// The file could not be read.
    Unreadable {
        /// Its name.
        name: String,
    },
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotPacked => f.write_str(
                "The file could not be put together, most likely for want of memory. The book is as it was. \
                 Close other pages, or carry out one vehicle at a time.",
            ),
            Self::NotHandedOut => f.write_str(
                "The browser did not let the file out. The book is as it was. Try again, or use another \
                 browser.",
            ),
            Self::Unreadable { name } => write!(
                f,
                "“{name}” could not be read: it may have been moved, or there is too little memory. Nothing \
                 was brought in. Choose the file again."
            ),
        }
    }
}

impl std::error::Error for FileError {}
