//! Why a picture could not be taken up, and the sentence that says so.

use std::fmt;

/// Why a file did not become a picture of the book. Nothing of the book was touched.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PhotoError {
    /// The browser cannot read the file as a picture.
    NotAPicture {
        /// The file's name.
        name: String,
    },
    /// The file holds more bytes than is taken.
    TooManyBytes {
        /// Its size in bytes.
        bytes: u64,
        /// The most that is taken, in bytes.
        most: u64,
    },
    /// The picture has more pixels than a phone can unpack.
    TooManyPixels {
        /// Its width in pixels.
        width: u32,
        /// Its height in pixels.
        height: u32,
        /// The most that is taken, in pixels.
        most: u64,
    },
    /// The browser gave no canvas, or no JPEG from it.
    NoCanvas,
}

impl fmt::Display for PhotoError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAPicture { name } => write!(
                f,
                "“{name}” could not be read as a picture. Nothing was changed. Take a JPEG or PNG picture, \
                 or photograph it again."
            ),
            Self::TooManyBytes { bytes, most } => write!(
                f,
                "The picture has {} MB; at most {} MB is taken. Nothing was changed. Set the camera to a \
                 smaller size and photograph it again.",
                bytes.div_ceil(MEGA),
                most / MEGA
            ),
            Self::TooManyPixels {
                width,
                height,
                most,
            } => write!(
                f,
                "The picture has {width} × {height} pixels; at most {} million are taken. Nothing was \
                 changed. Set the camera to a smaller size and photograph it again.",
                most / MEGA
            ),
            Self::NoCanvas => f.write_str(
                "The browser had no room to make the picture smaller. Nothing was changed. Close other \
                 pages and try again.",
            ),
        }
    }
}

impl std::error::Error for PhotoError {}

const MEGA: u64 = 1_000_000;
