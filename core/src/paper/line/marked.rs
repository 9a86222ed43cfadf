//! Marks on a picture, on paper: each with its word and its places, in thousandths of the picture.

use serde::Serialize;

use super::LineRefusal;
use super::fields::Fields;
use crate::daybook::marks::EDGE;
use crate::daybook::{Digest, Mark, Marks, Spot};
use crate::paper::json::Json;

/// One mark, as it is written.
#[derive(Serialize)]
pub(super) struct PaperMark<'a> {
    mark: &'static str,
    at: Vec<[u16; 2]>,
    #[serde(skip_serializing_if = "str::is_empty")]
    text: &'a str,
}

impl<'a> PaperMark<'a> {
    pub(super) fn of(mark: &'a Mark) -> PaperMark<'a> {
        let (word, spots, text) = match mark {
            Mark::Line(line) => ("line", line.clone(), ""),
            Mark::Ring(one, other) => ("ring", vec![*one, *other], ""),
            Mark::Pin(spot, text) => ("pin", vec![*spot], text.as_str()),
        };
        PaperMark {
            mark: word,
            at: spots.iter().map(|spot| [spot.x, spot.y]).collect(),
            text,
        }
    }
}

/// Reads the marks on a picture; `Ok(None)` where this version does not know one of them.
///
/// # Errors
/// A field that is missing or not of its form.
pub(super) fn marks(picture: Digest, fields: &mut Fields) -> Result<Option<Marks>, LineRefusal> {
    let (mut all, mut known) = (Vec::new(), true);
    for mut inner in fields.objects("marks")? {
        match mark(&mut inner)? {
            Some(mark) => all.push(mark),
            None => known = false,
        }
        fields.count(inner.left());
    }
    Ok(known.then_some(Marks { picture, all }))
}

fn mark(fields: &mut Fields) -> Result<Option<Mark>, LineRefusal> {
    let word = fields.text("mark")?;
    let places = match word.as_str() {
        "line" => 2..=usize::MAX,
        "ring" => 2..=2,
        "pin" => 1..=1,
        _ => return Ok(None),
    };
    let at = fields.list("at")?;
    let spots: Option<Vec<Spot>> = at.iter().map(spot).collect();
    let spots = spots.filter(|spots| places.contains(&spots.len()));
    Ok(Some(match (word.as_str(), spots.as_deref()) {
        ("ring", Some([one, other])) => Mark::Ring(*one, *other),
        ("pin", Some([spot])) => Mark::Pin(*spot, fields.maybe_text("text")?.unwrap_or_default()),
        ("line", Some(line)) => Mark::Line(line.to_vec()),
        _ => {
            return Err(LineRefusal::Wrong {
                field: "at",
                given: Json::List(at).to_string(),
                allowed: "pairs of whole numbers from 0 to 1000: one for a pin, two for a ring, two or more for a line",
            });
        }
    }))
}

fn spot(pair: &Json) -> Option<Spot> {
    let Json::List(pair) = pair else {
        return None;
    };
    let number = |json: &Json| {
        let whole = json.whole().filter(|n| *n <= u64::from(EDGE));
        whole.and_then(|n| u16::try_from(n).ok())
    };
    match pair.as_slice() {
        [x, y] => Some(Spot {
            x: number(x)?,
            y: number(y)?,
        }),
        _ => None,
    }
}
