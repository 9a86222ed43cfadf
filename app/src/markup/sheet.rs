//! Pieces written as the elements they are, with holes for what is not known beforehand. A piece of a page is then
//! one text and a few values, where calls for each element and attribute are code: two fifths of the download, when
//! measured.

use std::borrow::Cow;

use web_sys::Event;

use super::piece::{Ear, Parts, Piece, Tag, Worth, nothing};

/// Writes a piece: `sheet!("<p class=dim>{}</p>", said)`.
///
/// Elements are closed by their name or by `/>`. An attribute stands alone, or with a word, or with a text in `"`.
/// Each `{}` is a hole, filled from the values in turn: a child of an element, an attribute or a part of one, or,
/// after `on:click=`, what hears that event. `value={}` is what stands in a field. An element that is not closed and a
/// hole too many do not compile. All within `<svg>` is drawn; a part of a drawing by itself begins with `svg:`.
macro_rules! sheet {
    ($text:literal $(, $hole:expr)* $(,)?) => {{
        const { assert!($crate::markup::is_sound($text, <[&str]>::len(&[$(stringify!($hole)),*]))) };
        $crate::markup::fill($text, vec![$($crate::markup::Hole::from($hole)),*])
    }};
}
pub(crate) use sheet;

/// What fills a hole.
pub enum Hole {
    /// A child.
    Piece(Piece),
    /// Words, as a child or in an attribute.
    Text(Cow<'static, str>),
    /// Whether an attribute is there at all.
    Flag(bool),
    /// What hears an event.
    Ear(Ear),
}

/// What hears a tap, or the key that stands for one.
pub fn tap(ear: impl Fn() + 'static) -> Hole {
    Hole::Ear(Box::new(move |_| ear()))
}

/// What hears an event.
pub fn heard(ear: impl FnMut(Event) + 'static) -> Hole {
    Hole::Ear(Box::new(ear))
}

impl<P: Into<Piece>> From<P> for Hole {
    fn from(piece: P) -> Hole {
        match piece.into() {
            Piece::Words(words) => Hole::Text(words),
            piece => Hole::Piece(piece),
        }
    }
}

/// Fills the holes of a text. Use [`sheet!`], which has looked whether the text is sound.
pub fn fill(text: &'static str, holes: Vec<Hole>) -> Piece {
    let (text, within) = match text.strip_prefix("svg:") {
        Some(rest) => (rest, true),
        None => (text, false),
    };
    let mut filling = Filling {
        rest: text,
        holes: holes.into_iter(),
    };
    let mut pieces = filling.pieces(within);
    match (pieces.pop(), pieces.is_empty()) {
        (Some(only), true) => only,
        (Some(last), false) => {
            pieces.push(last);
            Piece::Several(pieces)
        }
        (None, _) => nothing(),
    }
}

struct Filling {
    rest: &'static str,
    holes: std::vec::IntoIter<Hole>,
}

impl Filling {
    /// What stands before this sign, which is passed over; all of the rest if it is not there.
    fn until(&mut self, signs: &[char]) -> (&'static str, Option<char>) {
        match self.rest.find(signs) {
            None => (std::mem::take(&mut self.rest), None),
            Some(at) => {
                let (before, after) = self.rest.split_at(at);
                let sign = after.chars().next();
                self.rest = after.get(1..).unwrap_or_default();
                (before, sign)
            }
        }
    }

    /// The pieces up to the end of the element they stand in.
    fn pieces(&mut self, within: bool) -> Vec<Piece> {
        let mut pieces = Vec::new();
        loop {
            let (words, sign) = self.until(&['<', '{']);
            if !words.is_empty() {
                pieces.push(words.into());
            }
            match sign {
                None => return pieces,
                Some('{') => {
                    self.until(&['}']);
                    pieces.push(self.child());
                }
                Some(_) if self.rest.starts_with('/') => {
                    self.until(&['>']);
                    return pieces;
                }
                Some(_) => pieces.push(self.element(within).into()),
            }
        }
    }

    fn child(&mut self) -> Piece {
        match self.holes.next() {
            Some(Hole::Piece(piece)) => piece,
            Some(Hole::Text(words)) => Piece::Words(words),
            _ => nothing(),
        }
    }

    fn element(&mut self, within: bool) -> Tag {
        let (name, mut sign) = self.until(&[' ', '>', '/']);
        let within = within || name == "svg";
        let mut element = Parts {
            name,
            drawn: within,
            ..Parts::default()
        };
        while sign == Some(' ') {
            sign = self.attribute(&mut element);
        }
        if sign == Some('>') {
            element.pieces = self.pieces(within);
        } else {
            self.until(&['>']);
        }
        Tag(Box::new(element))
    }

    /// One attribute, and the sign after it.
    fn attribute(&mut self, element: &mut Parts) -> Option<char> {
        let (name, sign) = self.until(&['=', ' ', '>', '/']);
        if sign != Some('=') {
            if !name.is_empty() {
                element.attributes.push((name, Worth::Text("".into())));
            }
            return sign;
        }
        let (text, sign) = if let Some(rest) = self.rest.strip_prefix('"') {
            self.rest = rest;
            let (text, _) = self.until(&['"']);
            (text, self.until(&[' ', '>', '/']).1)
        } else {
            let before = self.rest;
            match self.until(&[' ', '>']) {
                (text, Some('>')) if text.ends_with('/') => {
                    let (text, rest) = before.split_at(text.len() - 1);
                    self.rest = rest.get(1..).unwrap_or_default();
                    (text, Some('/'))
                }
                told => told,
            }
        };
        self.worth(element, name, text);
        sign
    }

    /// Sets an attribute to a text with holes.
    fn worth(&mut self, element: &mut Parts, name: &'static str, text: &'static str) {
        let mut said = Cow::Borrowed(text);
        if text == "{}" {
            match self.holes.next() {
                Some(Hole::Text(words)) => said = words,
                Some(Hole::Flag(true)) => said = "".into(),
                Some(Hole::Ear(ear)) => {
                    let event = name.strip_prefix("on:").unwrap_or(name);
                    element.ears.push((event, ear));
                    return;
                }
                _ => return,
            }
        } else if text.contains('{') {
            let mut parts = text.split('{');
            let mut whole = parts.next().unwrap_or_default().to_owned();
            for part in parts {
                if let Some(Hole::Text(words)) = self.holes.next() {
                    whole.push_str(&words);
                }
                whole.push_str(part.strip_prefix('}').unwrap_or(part));
            }
            said = whole.into();
        }
        let worth = match name {
            "value" => Worth::Typed(said.into_owned()),
            _ => Worth::Text(said),
        };
        element.attributes.push((name, worth));
    }
}

/// The deepest that elements stand in each other in one text.
const DEPTH: usize = 16;

/// Whether every element of a text is closed by its own name and it has so many holes.
// What can be worked out at compile time can only index; a place out of bounds is then an error of the compiler.
#[allow(clippy::indexing_slicing)]
pub const fn is_sound(text: &str, holes: usize) -> bool {
    let text = text.as_bytes();
    let (mut open, mut depth) = ([0; DEPTH], 0);
    let (mut at, mut found) = (0, 0);
    while at < text.len() {
        let next = sign(text, at + 1);
        match sign(text, at) {
            b'{' if next != b'}' => return false,
            b'{' => found += 1,
            b'<' if next == b'/' => {
                if depth == 0 || !same_name(text, open[depth - 1], at + 2) {
                    return false;
                }
                depth -= 1;
            }
            b'<' => {
                if depth == DEPTH {
                    return false;
                }
                open[depth] = at + 1;
                depth += 1;
            }
            b'/' if next == b'>' => {
                if depth == 0 {
                    return false;
                }
                depth -= 1;
            }
            _ => {}
        }
        at += 1;
    }
    depth == 0 && found == holes
}

#[allow(clippy::indexing_slicing)]
const fn sign(text: &[u8], at: usize) -> u8 {
    if at < text.len() { text[at] } else { 0 }
}

/// Whether the name that begins at one place is the one that begins at another.
const fn same_name(text: &[u8], one: usize, other: usize) -> bool {
    let mut n = 0;
    loop {
        let (a, b) = (sign(text, one + n), sign(text, other + n));
        if is_end(a) || is_end(b) {
            return is_end(a) && is_end(b);
        }
        if a != b {
            return false;
        }
        n += 1;
    }
}

const fn is_end(sign: u8) -> bool {
    matches!(sign, b' ' | b'>' | b'/' | 0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::panic)]

    use super::{Hole, Piece, Worth, fill, is_sound};

    /// A piece written out again, with every attribute in quotes.
    fn written(piece: &Piece) -> String {
        match piece {
            Piece::Words(words) => words.to_string(),
            Piece::Several(pieces) => pieces.iter().map(written).collect(),
            Piece::Live(_) => "(live)".to_owned(),
            Piece::Tag(tag) => {
                let said = |(name, worth): &(&str, Worth)| match worth {
                    Worth::Text(text) => format!(" {name}=\"{text}\""),
                    Worth::Typed(text) => format!(" {name}:=\"{text}\""),
                };
                let attributes: String = tag.0.attributes.iter().map(said).collect();
                let ears: String = tag
                    .0
                    .ears
                    .iter()
                    .map(|(event, _)| format!(" on:{event}"))
                    .collect();
                let children: String = tag.0.pieces.iter().map(written).collect();
                let (name, drawn) = (tag.0.name, if tag.0.drawn { "~" } else { "" });
                format!("<{drawn}{name}{attributes}{ears}>{children}</>")
            }
        }
    }

    #[test]
    fn elements_attributes_and_holes_come_out_as_written() {
        let piece = sheet!(
            "<p class=dim>By {}.</p><input type=text value={} hidden={} disabled={}/><br/>",
            "hand",
            "3 mm".to_owned(),
            Hole::Flag(false),
            Hole::Flag(true),
        );
        assert_eq!(
            written(&piece),
            "<p class=\"dim\">By hand.</><input type=\"text\" value:=\"3 mm\" disabled=\"\"></><br></>"
        );
        let key = sheet!(
            "<button data-x class=\"key {}\" aria-label=\"a > b\" on:click={}>{}</button>",
            "main",
            super::tap(|| ()),
            sheet!("<b>Go</b>"),
        );
        assert_eq!(
            written(&key),
            "<button data-x=\"\" class=\"key main\" aria-label=\"a > b\" on:click><b>Go</></>"
        );
    }

    #[test]
    fn what_stands_in_a_drawing_is_drawn() {
        let piece = sheet!("<i><svg viewBox=\"0 0 1 1\"><path d=M0/></svg><u/></i>");
        assert_eq!(
            written(&piece),
            "<i><~svg viewBox=\"0 0 1 1\"><~path d=\"M0\"></></><u></></>"
        );
        assert_eq!(written(&sheet!("svg:<g><path/></g>")), "<~g><~path></></>");
    }

    #[test]
    fn a_text_that_is_not_sound_is_told() {
        for sound in ["", "a", "<a/>", "<a b=c>{}</a>", "<a><b/><c>d</c></a>"] {
            assert!(is_sound(sound, sound.matches("{}").count()), "{sound}");
        }
        for odd in [
            "<a>",
            "</a>",
            "<a></b>",
            "<a></ab>",
            "<ab></a>",
            "/>",
            "{",
            "{}",
            "<a><b></a></b>",
        ] {
            assert!(!is_sound(odd, 0), "{odd}");
        }
        assert!(!is_sound("<a/>", 1));
        assert!(!is_sound(&"<a>".repeat(17), 0));
    }

    #[test]
    fn a_text_that_is_not_sound_still_fills_to_something() {
        for odd in [
            "<", "<a", "<a b", "<a b=", "<a b=\"", "</", "{", "<a/", "<a {}>",
        ] {
            drop(fill(odd, Vec::new()));
        }
    }
}
