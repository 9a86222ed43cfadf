//! What a page prints, read back: its sheets, their size, their words, their pictures.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use lopdf::{Dictionary, Document, Object};
use serde_json::json;

use super::browser::Browser;

/// Width and height of A4 in points of 1/72 in (ISO 216: 210 mm by 297 mm).
const A4: (f32, f32) = (595.28, 841.89);

/// A printed page.
#[derive(Debug)]
pub struct Printed {
    /// The PDF.
    pub bytes: Vec<u8>,
    document: Document,
}

impl Printed {
    /// How many sheets it has.
    pub fn sheets(&self) -> usize {
        self.document.get_pages().len()
    }

    /// Whether every sheet is upright A4, to within a point.
    pub fn is_a4(&self) -> bool {
        self.document.get_pages().values().all(|id| {
            let sheet = self.document.get_dictionary(*id).expect("a sheet");
            let sides = sheet.get(b"MediaBox").and_then(Object::as_array);
            let sides = sides.expect("a sheet has a size").iter();
            let sides: Vec<f32> = sides.map(|it| it.as_float().expect("a side")).collect();
            (sides[2] - sides[0] - A4.0).abs() < 1.0 && (sides[3] - sides[1] - A4.1).abs() < 1.0
        })
    }

    /// Its words, one blank between any two.
    pub fn words(&self) -> String {
        let numbers: Vec<u32> = self.document.get_pages().keys().copied().collect();
        let text = self
            .document
            .extract_text(&numbers)
            .expect("its words can be read");
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// Width and height in pixels of every picture in it.
    pub fn pictures(&self) -> Vec<(i64, i64)> {
        let streams = self.document.objects.values();
        let pictures = streams.filter_map(|object| object.as_stream().ok());
        let pictures = pictures.filter(|stream| {
            let of = stream.dict.get(b"Subtype").and_then(Object::as_name);
            of.is_ok_and(|name| name == b"Image")
        });
        pictures
            .map(|stream| (side(&stream.dict, b"Width"), side(&stream.dict, b"Height")))
            .collect()
    }
}

fn side(dictionary: &Dictionary, name: &[u8]) -> i64 {
    dictionary
        .get(name)
        .and_then(Object::as_i64)
        .unwrap_or_default()
}

impl Browser<'_> {
    /// Prints the page as it stands, on the paper that the page asks for.
    pub async fn print(&self) -> Printed {
        let asked = json!({ "preferCSSPageSize": true, "printBackground": false });
        let answer = self.below("Page.printToPDF", asked).await;
        let data = answer["data"].as_str().expect("the browser gives a file");
        let bytes = STANDARD.decode(data).expect("it is base64");
        let document = Document::load_mem(&bytes).expect("it is a PDF");
        Printed { bytes, document }
    }
}
