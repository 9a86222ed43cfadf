//! A step of a page that asks for a choice, and the keys to choose by.

use std::borrow::Cow;

use crate::markup::{Tag, tag};

/// One thing that is asked: the word that stands for it in the state of the page, and the question.
pub fn step(code: &'static str, heading: impl Into<Cow<'static, str>>) -> Tag {
    tag("section")
        .class("stack")
        .set("data-step", code)
        .put(tag("h2").put(heading.into()))
}

/// A key for one of several choices: the word that stands for it, whether it is chosen, and what stands on it.
pub fn choice(code: &'static str, chosen: bool, words: impl Into<Cow<'static, str>>) -> Tag {
    tag("button")
        .set("type", "button")
        .class("key")
        .set("data-choice", code)
        .is("aria-pressed", chosen)
        .put(tag("span").class("capital").put(words.into()))
}
