//! What a page is made of.

use std::borrow::Cow;

use web_sys::Event;

/// A piece of a page.
pub enum Piece {
    /// An element.
    Tag(Tag),
    /// Words.
    Words(Cow<'static, str>),
    /// Pieces one after the other; none of them is nothing.
    Several(Vec<Piece>),
    /// A piece that is made again whenever a signal read in making it changes.
    Live(Live),
}

/// A piece that follows signals.
pub struct Live {
    pub(super) make: Box<dyn Fn() -> Piece>,
    /// Whether each making stands apart, with nothing kept of what stood there before.
    pub(super) afresh: bool,
}

/// An element. Boxed, so that handing it on is handing on one pointer.
pub struct Tag(pub(super) Box<Parts>);

/// What hears an event.
pub(super) type Ear = Box<dyn FnMut(Event)>;

#[derive(Default)]
pub(super) struct Parts {
    pub name: &'static str,
    pub drawn: bool,
    pub attributes: Vec<(&'static str, Worth)>,
    pub ears: Vec<(&'static str, Ear)>,
    pub pieces: Vec<Piece>,
}

/// What an attribute is set to.
#[derive(PartialEq, Eq)]
pub(super) enum Worth {
    /// The attribute has this text.
    Text(Cow<'static, str>),
    /// The element's property `value` has this text: what stands in a field.
    Typed(String),
}

/// A piece that is made again whenever a signal it reads changes. What has not changed keeps its element, and with it
/// focus, caret and scroll.
pub fn live<P: Into<Piece>>(make: impl Fn() -> P + 'static) -> Piece {
    Piece::Live(Live {
        make: Box::new(move || make().into()),
        afresh: false,
    })
}

/// As [`live`], but keeps nothing of what stood there before: for pages, each of which begins anew.
pub fn afresh<P: Into<Piece>>(make: impl Fn() -> P + 'static) -> Piece {
    Piece::Live(Live {
        make: Box::new(move || make().into()),
        afresh: true,
    })
}

/// No piece at all.
pub fn nothing() -> Piece {
    Piece::Several(Vec::new())
}

impl From<Tag> for Piece {
    fn from(tag: Tag) -> Piece {
        Piece::Tag(tag)
    }
}

impl From<&'static str> for Piece {
    fn from(words: &'static str) -> Piece {
        Piece::Words(words.into())
    }
}

impl From<String> for Piece {
    fn from(words: String) -> Piece {
        Piece::Words(words.into())
    }
}

impl From<Cow<'static, str>> for Piece {
    fn from(words: Cow<'static, str>) -> Piece {
        Piece::Words(words)
    }
}

impl<P: Into<Piece>> From<Option<P>> for Piece {
    fn from(piece: Option<P>) -> Piece {
        piece.map_or_else(nothing, Into::into)
    }
}

impl<P: Into<Piece>> From<Vec<P>> for Piece {
    fn from(pieces: Vec<P>) -> Piece {
        Piece::Several(pieces.into_iter().map(Into::into).collect())
    }
}
