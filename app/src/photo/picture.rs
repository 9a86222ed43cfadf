//! From a camera's file to a picture of the book: made smaller and encoded afresh, which turns it upright and drops
//! everything the camera wrote into it, its place on earth included.

use super::canvas::jpeg;
use super::error::PhotoError;
use super::source::Source;
use js_sys::{Array, Uint8Array};
use web_sys::{File, FilePropertyBag};

/// The longest side that is kept, in pixels: a crack's end can still be seen, and a visit still fits the device.
pub const LONGEST_SIDE: u32 = 1600;

/// The longest side of a thumbnail, in pixels.
pub const THUMBNAIL_SIDE: u32 = 320;

/// The most bytes of a file that are taken.
pub const MOST_BYTES: u64 = 100_000_000;

/// A picture ready to be kept.
#[derive(Clone, Debug)]
pub struct Picture {
    /// The JPEG.
    pub bytes: Uint8Array,
    /// A JPEG of at most [`THUMBNAIL_SIDE`] pixels.
    pub thumbnail: Uint8Array,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
}

/// A small picture made of a large one.
#[derive(Clone, Debug)]
pub struct Thumbnail {
    /// A JPEG of at most [`THUMBNAIL_SIDE`] pixels.
    pub bytes: Uint8Array,
    /// Width of the large one in pixels, as far as it was unpacked.
    pub width: u32,
    /// Height of the large one in pixels, as far as it was unpacked.
    pub height: u32,
}

/// Takes up a file chosen in, or photographed through, an `<input type=file accept=image/*>`.
///
/// # Errors
/// The file is no picture, is too large, or the browser cannot draw it.
pub async fn take(file: &File) -> Result<Picture, PhotoError> {
    refuse_large(file)?;
    let source = Source::read(file).await?;
    let (width, height) = fitted(source.width(), source.height(), LONGEST_SIDE);
    let (small_width, small_height) = fitted(width, height, THUMBNAIL_SIDE);
    Ok(Picture {
        bytes: jpeg(&source, width, height).await?,
        thumbnail: jpeg(&source, small_width, small_height).await?,
        width,
        height,
    })
}

/// The small picture for lists, made of the bytes of a JPEG that came from another device; `None` where the browser
/// cannot draw them.
pub async fn thumbnail(bytes: &Uint8Array) -> Option<Thumbnail> {
    let options = FilePropertyBag::new();
    options.set_type("image/jpeg");
    let parts = Array::of1(bytes);
    let file = File::new_with_buffer_source_sequence_and_options(&parts, "", &options).ok()?;
    let source = Source::read(&file).await.ok()?;
    let (width, height) = (source.width(), source.height());
    let (small_width, small_height) = fitted(width, height, THUMBNAIL_SIDE);
    Some(Thumbnail {
        bytes: jpeg(&source, small_width, small_height).await.ok()?,
        width,
        height,
    })
}

fn refuse_large(file: &File) -> Result<(), PhotoError> {
    let bytes = file.size() as u64;
    if bytes > MOST_BYTES {
        return Err(PhotoError::TooManyBytes {
            bytes,
            most: MOST_BYTES,
        });
    }
    Ok(())
}

/// The size with the same shape whose longer side is at most `longest`; never larger than it was, never nothing.
pub(super) fn fitted(width: u32, height: u32, longest: u32) -> (u32, u32) {
    let longer = width.max(height).max(1);
    if longer <= longest {
        return (width.max(1), height.max(1));
    }
    let scaled = |side: u32| {
        let exact = f64::from(side) * f64::from(longest) / f64::from(longer);
        (exact.round() as u32).max(1)
    };
    (scaled(width), scaled(height))
}

#[cfg(test)]
mod tests {
    use super::fitted;

    #[test]
    fn the_longer_side_is_brought_to_the_limit_and_the_shape_kept() {
        assert_eq!(fitted(4000, 3000, 1600), (1600, 1200));
        assert_eq!(fitted(3000, 4000, 1600), (1200, 1600));
        assert_eq!(fitted(4032, 3024, 320), (320, 240));
    }

    #[test]
    fn a_small_picture_is_never_made_larger() {
        assert_eq!(fitted(300, 200, 320), (300, 200));
        assert_eq!(fitted(1600, 1600, 1600), (1600, 1600));
    }

    #[test]
    fn no_side_comes_to_nothing() {
        assert_eq!(fitted(3, 5000, 320), (1, 320));
        assert_eq!(fitted(0, 0, 320), (1, 1));
    }
}
