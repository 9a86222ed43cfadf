//! A file that was carried out, as it lies in the downloads.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use cartside_core::paper::exchange::{Scope, open};

/// A file carried out of a book.
#[derive(Clone, Debug)]
pub struct Carried {
    /// Where it lies.
    pub path: PathBuf,
}

impl Carried {
    /// Its bytes.
    pub fn bytes(&self) -> Vec<u8> {
        fs::read(&self.path).expect("the file carried out can be read")
    }

    /// The lines of the book, as a set.
    pub fn lines(&self) -> BTreeSet<String> {
        let bytes = self.bytes();
        let opened = open(&bytes).and_then(|unverified| unverified.verify());
        let verified =
            opened.unwrap_or_else(|refused| panic!("our own file is refused: {refused}"));
        verified
            .entries()
            .map(|(_, line)| line.to_owned())
            .collect()
    }

    /// Which part of the book it says it holds.
    pub fn scope(&self) -> Option<Scope> {
        let bytes = self.bytes();
        let opened = open(&bytes).and_then(|unverified| unverified.verify());
        let verified =
            opened.unwrap_or_else(|refused| panic!("our own file is refused: {refused}"));
        verified.manifest().scope.clone()
    }

    /// The bytes of each picture.
    pub fn pictures(&self) -> Vec<Vec<u8>> {
        let bytes = self.bytes();
        let opened = open(&bytes).and_then(|unverified| unverified.verify());
        let verified =
            opened.unwrap_or_else(|refused| panic!("our own file is refused: {refused}"));
        let pictures = verified.pictures().iter();
        pictures.map(|picture| picture.bytes.to_vec()).collect()
    }
}
