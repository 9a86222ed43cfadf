//! A report as data: blocks one after the other, and the same as plain text.

use super::super::{marks, term};
use crate::daybook::{Digest, Mark};
use crate::diagnosis::Standing;
use crate::wheel::Position;

/// One block of a report.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// What the report is called.
    Title(String),
    /// The heading of a part of it.
    Heading(String),
    /// The heading of a part of such a part.
    Under(String),
    /// A paragraph.
    Text(String),
    /// A paragraph that is read first.
    Strong(String),
    /// Sentences, each on its own.
    Points(Vec<String>),
    /// Names and what stands for them.
    Facts(Vec<(String, String)>),
    /// Rows under a head.
    Table(Vec<&'static str>, Vec<Vec<String>>),
    /// What this is worth: the standing by words and mark.
    Standing(String, Standing),
    /// Where the drawing of a wheel stands.
    Drawing(Position),
    /// A picture, what it shows, and what is drawn over it.
    Picture(Digest, String, Vec<Mark>),
}

impl Block {
    /// A heading with these words. Like its kin here it is one function for all callers, which each would
    /// otherwise make the copy in their own code.
    #[inline(never)]
    pub(super) fn heading(words: &str) -> Block {
        Block::Heading(words.to_owned())
    }

    /// A heading under another.
    #[inline(never)]
    pub(super) fn under(words: &str) -> Block {
        Block::Under(words.to_owned())
    }

    /// A paragraph.
    #[inline(never)]
    pub(super) fn text(words: &str) -> Block {
        Block::Text(words.to_owned())
    }

    /// A paragraph that is read first.
    #[inline(never)]
    pub(super) fn strong(words: &str) -> Block {
        Block::Strong(words.to_owned())
    }
}

/// A name and what stands for it.
#[inline(never)]
pub(super) fn fact(name: &str, said: String) -> (String, String) {
    (name.to_owned(), said)
}

/// A report.
#[derive(Clone, Debug, PartialEq)]
pub struct Document(pub Vec<Block>);

impl Document {
    /// The whole report as plain text; drawings and pictures are named, not shown.
    #[must_use]
    pub fn plain(&self) -> String {
        let mut text = String::new();
        for block in &self.0 {
            plain(&mut text, block);
        }
        text
    }
}

fn plain(text: &mut String, block: &Block) {
    match block {
        Block::Title(words) => ruled(text, words, "="),
        Block::Heading(words) => {
            text.push('\n');
            ruled(text, words, "-");
        }
        Block::Under(words) => {
            text.push('\n');
            line(text, &[words]);
        }
        Block::Text(words) | Block::Strong(words) => line(text, &[words]),
        Block::Points(points) => points.iter().for_each(|point| line(text, &["- ", point])),
        Block::Facts(facts) => facts
            .iter()
            .for_each(|(name, said)| line(text, &[name, ": ", said])),
        Block::Table(head, rows) => {
            line(text, &[&head.join(" | ")]);
            rows.iter().for_each(|row| line(text, &[&row.join(" | ")]));
        }
        Block::Standing(what, standing) => {
            line(
                text,
                &[what, ": ", &term::standing(*standing).to_ascii_uppercase()],
            );
        }
        Block::Drawing(_) => {}
        Block::Picture(digest, caption, drawn) => {
            line(text, &["- picture ", &short(digest), ", ", caption]);
            for said in marks::each(drawn) {
                line(text, &["  - ", &said]);
            }
        }
    }
}

fn line(text: &mut String, parts: &[&str]) {
    parts.iter().for_each(|part| text.push_str(part));
    text.push('\n');
}

fn ruled(text: &mut String, words: &str, rule: &str) {
    line(text, &[words]);
    line(text, &[&rule.repeat(words.chars().count())]);
}

/// As much of each of these digests, one blank between any two.
pub(super) fn shorts(digests: &[Digest]) -> String {
    let mut text = String::new();
    for digest in digests {
        if !text.is_empty() {
            text.push(' ');
        }
        text.push_str(&short(digest));
    }
    text
}

/// As much of a digest as tells it from others of its book.
pub(super) fn short(digest: &Digest) -> String {
    let mut hex = digest.hex();
    hex.truncate(8);
    hex
}
