//! The small pieces every page is made of.

use std::borrow::Cow;

use crate::markup::{Tag, tag};

/// A key that does something.
pub fn key(words: impl Into<Cow<'static, str>>) -> Tag {
    tag("button")
        .set("type", "button")
        .class("key")
        .put(words.into())
}

/// A key that leads to another page.
pub fn link(href: String, words: impl Into<Cow<'static, str>>) -> Tag {
    tag("a").class("key").set("href", href).put(words.into())
}

/// Why something was not done.
pub fn refusal(sentence: String) -> Tag {
    tag("p").class("refusal").set("role", "alert").put(sentence)
}

/// The element every page is, with the word that stands for the page.
pub fn page_of(code: &'static str) -> Tag {
    tag("main").class("page").set("data-page", code)
}
