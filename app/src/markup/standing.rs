//! What stands in the browser for a piece, and how it is brought in step with the next making of it.

use std::borrow::Cow;

use leptos::reactive::effect::RenderEffect;
use leptos::tachys::dom::document;
use leptos::tachys::renderer::dom::Dom;
use web_sys::{Element, Node};

use super::heard::Heard;
use super::piece::{Live, Parts, Piece, Tag, Worth};

/// What stands in the browser for a piece.
pub(super) enum Stands {
    Tag(Box<Standing>),
    Words(Node, Cow<'static, str>),
    /// The pieces and a node after the last, so that there is a place even where nothing stands.
    Several(Vec<Stands>, Node),
    Live(RenderEffect<Stands>),
}

/// An element that stands.
pub(super) struct Standing {
    element: Element,
    name: &'static str,
    attributes: Vec<(&'static str, Worth)>,
    ears: Vec<Heard>,
    pieces: Vec<Stands>,
}

/// Makes the nodes of a piece, which belong nowhere yet.
pub(super) fn build(piece: Piece) -> Stands {
    match piece {
        Piece::Tag(tag) => Stands::Tag(Box::new(Standing::new(tag))),
        Piece::Words(words) => Stands::Words(document().create_text_node(&words).into(), words),
        Piece::Several(pieces) => Stands::Several(
            pieces.into_iter().map(build).collect(),
            document().create_text_node("").into(),
        ),
        Piece::Live(live) => follow(live, None),
    }
}

/// Makes the piece again whenever a signal it reads changes, beginning with what stands there.
fn follow(live: Live, stands: Option<Stands>) -> Stands {
    let Live { make, afresh } = live;
    let step = move |before: Option<Stands>| match before {
        None => build(make()),
        Some(before) if afresh => before.replace(make()),
        Some(before) => before.follow(make()),
    };
    Stands::Live(RenderEffect::new_with_value(step, stands))
}

impl Stands {
    /// Puts the nodes into a parent, before one of its nodes or at its end.
    pub fn mount(&self, parent: &Node, before: Option<&Node>) {
        match self {
            Stands::Tag(standing) => put(parent, &standing.element, before),
            Stands::Words(node, _) => put(parent, node, before),
            Stands::Several(several, end) => {
                for stands in several {
                    stands.mount(parent, before);
                }
                put(parent, end, before);
            }
            Stands::Live(effect) => {
                effect.with_value_mut(|stands| stands.mount(parent, before));
            }
        }
    }

    /// Takes the nodes out.
    fn unmount(&self) {
        match self {
            Stands::Tag(standing) => standing.element.remove(),
            Stands::Words(node, _) => take_out(node),
            Stands::Several(several, end) => {
                several.iter().for_each(Stands::unmount);
                take_out(end);
            }
            Stands::Live(effect) => {
                effect.with_value_mut(|stands| stands.unmount());
            }
        }
    }

    /// The first node.
    fn first(&self) -> Option<Node> {
        match self {
            Stands::Tag(standing) => Some(standing.element.clone().into()),
            Stands::Words(node, _) => Some(node.clone()),
            Stands::Several(several, end) => match several.first() {
                Some(first) => first.first(),
                None => Some(end.clone()),
            },
            Stands::Live(effect) => effect.with_value_mut(|stands| stands.first()).flatten(),
        }
    }

    /// Puts a piece in the place of this.
    fn replace(self, piece: Piece) -> Stands {
        let new = build(piece);
        if let Some(first) = self.first()
            && let Some(parent) = first.parent_node()
        {
            new.mount(&parent, Some(&first));
        }
        self.unmount();
        new
    }

    /// Brings this in step with a piece, keeping the nodes that serve it too.
    fn follow(self, piece: Piece) -> Stands {
        match (self, piece) {
            (Stands::Tag(mut standing), Piece::Tag(tag)) if standing.name == tag.0.name => {
                standing.follow(*tag.0);
                Stands::Tag(standing)
            }
            (Stands::Words(node, before), Piece::Words(words)) => {
                if before != words {
                    node.set_text_content(Some(&words));
                }
                Stands::Words(node, words)
            }
            (Stands::Several(mut several, end), Piece::Several(pieces)) => {
                if let Some(parent) = end.parent_node() {
                    follow_all(&mut several, pieces, &parent, Some(&end));
                    Stands::Several(several, end)
                } else {
                    build(Piece::Several(pieces))
                }
            }
            (Stands::Live(effect), Piece::Live(live)) if !live.afresh => {
                follow(live, effect.take_value())
            }
            (before, piece) => before.replace(piece),
        }
    }
}

/// Brings pieces of one parent in step, the first with the first and so on. New ones stand before `end`.
fn follow_all(several: &mut Vec<Stands>, pieces: Vec<Piece>, parent: &Node, end: Option<&Node>) {
    let mut before = std::mem::take(several).into_iter();
    for piece in pieces {
        several.push(match before.next() {
            Some(stands) => stands.follow(piece),
            None => {
                let new = build(piece);
                new.mount(parent, end);
                new
            }
        });
    }
    before.for_each(|left| left.unmount());
}

impl Standing {
    fn new(tag: Tag) -> Standing {
        let parts = *tag.0;
        let space = parts.drawn.then_some("http://www.w3.org/2000/svg");
        let element = Dom::create_element(parts.name, space);
        let mut standing = Standing {
            element,
            name: parts.name,
            attributes: Vec::new(),
            ears: Vec::new(),
            pieces: Vec::new(),
        };
        standing.follow(parts);
        standing
    }

    fn follow(&mut self, parts: Parts) {
        follow_all(&mut self.pieces, parts.pieces, &self.element, None);
        self.follow_attributes(parts.attributes);
        let mut before = std::mem::take(&mut self.ears).into_iter();
        for (event, ear) in parts.ears {
            let heard = match before.next() {
                None => Heard::on(&self.element, event, ear),
                Some(heard) => match heard.exchange(event, ear) {
                    Ok(()) => heard,
                    Err(ear) => {
                        heard.leave(&self.element);
                        Heard::on(&self.element, event, ear)
                    }
                },
            };
            self.ears.push(heard);
        }
        before.for_each(|left| left.leave(&self.element));
    }

    fn follow_attributes(&mut self, attributes: Vec<(&'static str, Worth)>) {
        for said in &attributes {
            if !self.attributes.contains(said) {
                set(&self.element, said.0, &said.1);
            }
        }
        for (name, worth) in &self.attributes {
            if matches!(worth, Worth::Text(_)) && !attributes.iter().any(|said| said.0 == *name) {
                // An attribute that is not there is removed already.
                drop(self.element.remove_attribute(name));
            }
        }
        self.attributes = attributes;
    }
}

fn set(element: &Element, name: &str, worth: &Worth) {
    // A browser refuses only names that could not be written in a page; ours are all in the code.
    match worth {
        Worth::Text(text) => drop(element.set_attribute(name, text)),
        Worth::Typed(text) => drop(js_sys::Reflect::set(element, &name.into(), &text.into())),
    }
}

fn put(parent: &Node, node: &Node, before: Option<&Node>) {
    // Refused only where a node would stand inside itself.
    drop(parent.insert_before(node, before));
}

fn take_out(node: &Node) {
    if let Some(parent) = node.parent_node() {
        drop(parent.remove_child(node));
    }
}
