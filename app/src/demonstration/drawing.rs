//! The one picture of the demonstration: a cracked spoke, drawn, so that nothing of a real cart is in it.

use js_sys::{Array, Function, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, File, HtmlCanvasElement};

use crate::photo::{self, Picture};

const WIDTH: u32 = 960;
const HEIGHT: u32 = 720;

/// The picture, taken up as one from the camera is; `None` where the browser cannot draw it.
pub(super) async fn cracked_spoke() -> Option<Picture> {
    let canvas = canvas()?;
    let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    paint(&context);
    let file = file(&canvas).await.ok()?;
    photo::take(&file).await.ok()
}

fn canvas() -> Option<HtmlCanvasElement> {
    let document = web_sys::window()?.document()?;
    let canvas: HtmlCanvasElement = document.create_element("canvas").ok()?.dyn_into().ok()?;
    canvas.set_width(WIDTH);
    canvas.set_height(HEIGHT);
    Some(canvas)
}

/// Wall, nave, the spoke that stands up from it, and the crack.
fn paint(context: &CanvasRenderingContext2d) {
    fill(
        context,
        "#d9cfbd",
        &[(0.0, 0.0), (960.0, 0.0), (960.0, 720.0), (0.0, 720.0)],
    );
    fill(
        context,
        "#6b4a2b",
        &[(0.0, 560.0), (960.0, 500.0), (960.0, 720.0), (0.0, 720.0)],
    );
    fill(
        context,
        "#9a6b3c",
        &[(380.0, 0.0), (560.0, 0.0), (590.0, 540.0), (390.0, 550.0)],
    );
    fill(
        context,
        "#b98852",
        &[(400.0, 0.0), (450.0, 0.0), (455.0, 545.0), (410.0, 548.0)],
    );
    fill(
        context,
        "#1c120a",
        &[
            (500.0, 544.0),
            (488.0, 430.0),
            (508.0, 330.0),
            (494.0, 250.0),
            (520.0, 334.0),
            (502.0, 432.0),
            (516.0, 543.0),
        ],
    );
    context.set_fill_style_str("#1c120a");
    context.set_font("36px sans-serif");
    // A canvas that cannot write is a picture without its line.
    drop(context.fill_text("drawn for the demonstration", 24.0, 690.0));
}

fn fill(context: &CanvasRenderingContext2d, colour: &str, corners: &[(f64, f64)]) {
    context.set_fill_style_str(colour);
    context.begin_path();
    for (x, y) in corners {
        context.line_to(*x, *y);
    }
    context.fill();
}

async fn file(canvas: &HtmlCanvasElement) -> Result<File, JsValue> {
    let mut asked = Ok(());
    let made = Promise::new(&mut |done: Function, _: Function| asked = canvas.to_blob(&done));
    asked?;
    let blob: Blob = JsFuture::from(made).await?.dyn_into()?;
    File::new_with_blob_sequence(&Array::of1(&blob), "drawn.png")
}
