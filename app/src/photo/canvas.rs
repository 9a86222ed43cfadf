//! A canvas of just the wanted size, and the JPEG made from it. Never larger than a phone's canvas may be, since the
//! wanted size is at most [`LONGEST_SIDE`](super::picture::LONGEST_SIDE) each way.

use super::error::PhotoError;
use super::source::Source;
use js_sys::{ArrayBuffer, Function, Promise, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement};

/// The quality at which a crack's end still shows and a picture stays near 300 kB.
const QUALITY: f64 = 0.8;

/// The source as a JPEG of the given size in pixels.
pub(super) async fn jpeg(
    source: &Source,
    width: u32,
    height: u32,
) -> Result<Uint8Array, PhotoError> {
    let canvas = canvas(width, height).ok_or(PhotoError::NoCanvas)?;
    let bytes = encoded(source, &canvas, width, height).await;
    // WebKit gives a canvas's memory back only once it is made small.
    canvas.set_width(0);
    canvas.set_height(0);
    bytes.map_err(|_| PhotoError::NoCanvas)
}

async fn encoded(
    source: &Source,
    canvas: &HtmlCanvasElement,
    width: u32,
    height: u32,
) -> Result<Uint8Array, JsValue> {
    let context: CanvasRenderingContext2d =
        canvas.get_context("2d")?.ok_or(JsValue::NULL)?.dyn_into()?;
    // A JPEG has no transparency: what was clear would come out black.
    context.set_fill_style_str("white");
    context.fill_rect(0.0, 0.0, f64::from(width), f64::from(height));
    source.draw(&context, width, height)?;
    let buffer: ArrayBuffer = JsFuture::from(blob(canvas).await?.array_buffer())
        .await?
        .dyn_into()?;
    Ok(Uint8Array::new(&buffer))
}

async fn blob(canvas: &HtmlCanvasElement) -> Result<Blob, JsValue> {
    let mut asked = Ok(());
    let made = Promise::new(&mut |done: Function, _: Function| {
        asked = canvas.to_blob_with_type_and_encoder_options(&done, "image/jpeg", &QUALITY.into());
    });
    asked?;
    // The browser answers null where it could not encode, and a PNG where it knows no JPEG.
    let blob: Blob = JsFuture::from(made).await?.dyn_into()?;
    match blob.type_().as_str() {
        "image/jpeg" => Ok(blob),
        other => Err(JsValue::from_str(other)),
    }
}

fn canvas(width: u32, height: u32) -> Option<HtmlCanvasElement> {
    let document = web_sys::window()?.document()?;
    let canvas: HtmlCanvasElement = document.create_element("canvas").ok()?.dyn_into().ok()?;
    canvas.set_width(width);
    canvas.set_height(height);
    Some(canvas)
}
