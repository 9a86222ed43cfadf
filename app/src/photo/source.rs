//! What is drawn: the file's picture, unpacked by the browser and already made smaller where it can do that.

use super::error::PhotoError;
use super::object_url::ObjectUrl;
use super::picture::{LONGEST_SIDE, fitted};
use js_sys::{Function, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    CanvasRenderingContext2d, File, HtmlImageElement, ImageBitmap, ImageBitmapOptions,
    ResizeQuality,
};

/// The most pixels that are unpacked: four bytes each in the browser's memory.
const MOST_PIXELS: u64 = 120_000_000;

/// A picture that can be drawn, upright.
pub(super) enum Source {
    /// Unpacked and made smaller off the page's own thread.
    Bitmap(ImageBitmap),
    /// Left to the drawing, where the browser cannot make bitmaps from files.
    Element {
        /// The loaded element.
        image: HtmlImageElement,
        /// Keeps the file readable while the element is drawn.
        _url: ObjectUrl,
    },
}

impl Source {
    /// Reads the file's picture. Its size is asked of an image element first: a bitmap of the full size would
    /// take fifty and more megabytes only to be measured.
    pub(super) async fn read(file: &File) -> Result<Self, PhotoError> {
        let not_a_picture = || PhotoError::NotAPicture { name: file.name() };
        let url = ObjectUrl::of(file).ok_or_else(not_a_picture)?;
        let image = loaded(&url).await.map_err(|_| not_a_picture())?;
        let (width, height) = (image.natural_width(), image.natural_height());
        if width == 0 || height == 0 {
            return Err(not_a_picture());
        }
        refuse_huge(width, height)?;
        Ok(match bitmap(file, width, height).await {
            Some(bitmap) => Self::Bitmap(bitmap),
            None => Self::Element { image, _url: url },
        })
    }

    /// Width in pixels.
    pub(super) fn width(&self) -> u32 {
        match self {
            Self::Bitmap(bitmap) => bitmap.width(),
            Self::Element { image, .. } => image.natural_width(),
        }
    }

    /// Height in pixels.
    pub(super) fn height(&self) -> u32 {
        match self {
            Self::Bitmap(bitmap) => bitmap.height(),
            Self::Element { image, .. } => image.natural_height(),
        }
    }

    /// Draws it over the whole of a canvas of this size.
    pub(super) fn draw(
        &self,
        context: &CanvasRenderingContext2d,
        width: u32,
        height: u32,
    ) -> Result<(), JsValue> {
        let (width, height) = (f64::from(width), f64::from(height));
        match self {
            Self::Bitmap(bitmap) => {
                context.draw_image_with_image_bitmap_and_dw_and_dh(bitmap, 0.0, 0.0, width, height)
            }
            Self::Element { image, .. } => context
                .draw_image_with_html_image_element_and_dw_and_dh(image, 0.0, 0.0, width, height),
        }
    }
}

impl Drop for Source {
    fn drop(&mut self) {
        if let Self::Bitmap(bitmap) = self {
            bitmap.close();
        }
    }
}

fn refuse_huge(width: u32, height: u32) -> Result<(), PhotoError> {
    if u64::from(width) * u64::from(height) > MOST_PIXELS {
        return Err(PhotoError::TooManyPixels {
            width,
            height,
            most: MOST_PIXELS,
        });
    }
    Ok(())
}

async fn loaded(url: &ObjectUrl) -> Result<HtmlImageElement, JsValue> {
    let image = HtmlImageElement::new()?;
    let loading = Promise::new(&mut |done: Function, failed: Function| {
        image.set_onload(Some(&done));
        image.set_onerror(Some(&failed));
    });
    image.set_src(url.as_str());
    JsFuture::from(loading).await?;
    Ok(image)
}

async fn bitmap(file: &File, width: u32, height: u32) -> Option<ImageBitmap> {
    let (width, height) = fitted(width, height, LONGEST_SIDE);
    let options = ImageBitmapOptions::new();
    options.set_resize_width(width);
    options.set_resize_height(height);
    options.set_resize_quality(ResizeQuality::High);
    let asked = web_sys::window()?
        .create_image_bitmap_with_blob_and_image_bitmap_options(file, &options)
        .ok()?;
    let made = JsFuture::from(asked).await.ok()?;
    let bitmap: ImageBitmap = made.dyn_into().ok()?;
    // A browser that overlooks the options would hand over the full size, perhaps lying on its side.
    if (bitmap.width(), bitmap.height()) == (width, height) {
        return Some(bitmap);
    }
    bitmap.close();
    None
}
