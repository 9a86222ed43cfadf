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

/// An element of HTML.
pub fn tag(name: &'static str) -> Tag {
    Tag(Box::new(Parts {
        name,
        drawn: false,
        attributes: Vec::new(),
        ears: Vec::new(),
        pieces: Vec::new(),
    }))
}

/// An element of SVG.
pub fn drawn(name: &'static str) -> Tag {
    let mut tag = tag(name);
    tag.0.drawn = true;
    tag
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

impl Tag {
    /// Sets an attribute.
    pub fn set(mut self, name: &'static str, text: impl Into<Cow<'static, str>>) -> Tag {
        self.say(name, text.into());
        self
    }

    /// Sets an attribute to a number.
    pub fn number(mut self, name: &'static str, number: f64) -> Tag {
        self.say(name, number.to_string().into());
        self
    }

    /// Has an attribute without a text, or has it not.
    pub fn flag(mut self, name: &'static str, has: bool) -> Tag {
        if has {
            self.say(name, "".into());
        }
        self
    }

    /// Says *true* or *false* in an attribute.
    pub fn is(mut self, name: &'static str, so: bool) -> Tag {
        self.say(name, if so { "true" } else { "false" }.into());
        self
    }

    /// Adds classes.
    pub fn class(mut self, classes: &'static str) -> Tag {
        self.add_class(classes);
        self
    }

    /// Adds classes if this is so.
    pub fn class_if(self, so: bool, classes: &'static str) -> Tag {
        if so { self.class(classes) } else { self }
    }

    /// Puts text into a field. A field is not rewritten unless this text changes.
    pub fn typed(mut self, text: String) -> Tag {
        self.0.attributes.push(("value", Worth::Typed(text)));
        self
    }

    /// Hears an event.
    pub fn on(mut self, event: &'static str, ear: impl FnMut(Event) + 'static) -> Tag {
        self.hear(event, Box::new(ear));
        self
    }

    /// Hears a tap, or the key that stands for one.
    pub fn tap(self, ear: impl Fn() + 'static) -> Tag {
        self.on("click", move |_| ear())
    }

    /// Adds a piece at the end.
    pub fn put(mut self, piece: impl Into<Piece>) -> Tag {
        self.add(piece.into());
        self
    }

    /// Adds pieces at the end.
    pub fn each<P: Into<Piece>>(mut self, pieces: impl IntoIterator<Item = P>) -> Tag {
        for piece in pieces {
            self.add(piece.into());
        }
        self
    }

    /// Adds, at the end, a piece that follows signals.
    pub fn live<P: Into<Piece>>(self, make: impl Fn() -> P + 'static) -> Tag {
        self.put(live(make))
    }

    // Kept out of line: the shape of a page is many calls of these.

    #[inline(never)]
    fn say(&mut self, name: &'static str, text: Cow<'static, str>) {
        self.0.attributes.retain(|said| said.0 != name);
        self.0.attributes.push((name, Worth::Text(text)));
    }

    #[inline(never)]
    fn add_class(&mut self, classes: &'static str) {
        let class = self.0.attributes.iter_mut().find(|said| said.0 == "class");
        match class {
            Some((_, Worth::Text(text))) => *text = format!("{text} {classes}").into(),
            _ => self.say("class", classes.into()),
        }
    }

    #[inline(never)]
    fn hear(&mut self, event: &'static str, ear: Ear) {
        self.0.ears.push((event, ear));
    }

    #[inline(never)]
    fn add(&mut self, piece: Piece) {
        self.0.pieces.push(piece);
    }
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
