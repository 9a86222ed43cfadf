//! The words and tags of the text that stands among data.

use crate::known::mix;

/// What was met of a text so far.
#[derive(Default)]
pub(crate) struct Text {
    /// The letters of the word that is not over, hashed, great and small alike; 0 between words.
    pub(crate) word: u32,
    /// What stood before that word.
    pub(crate) before: u8,
    /// The last two words.
    pub(crate) words: [u32; 2],
    /// The name of the tag that is open; 1 where none is.
    pub(crate) tag: u32,
    last: u8,
}

impl Text {
    pub(crate) fn came(&mut self, byte: u8) {
        if byte.is_ascii_alphabetic() {
            if self.word == 0 {
                self.before = self.last;
            }
            self.word = mix(self.word, u32::from(byte | 32)) | 1;
        } else {
            self.end_word();
            self.before = byte;
            if byte == b'>' {
                self.tag = 1;
            }
        }
        self.last = byte;
    }

    fn end_word(&mut self) {
        if self.word != 0 {
            if self.before == b'<' {
                self.tag = self.word;
            }
            self.words = [self.word, self.words[0]];
            self.word = 0;
        }
    }
}
