//! A file says what it knows in its first line, and is short enough to be held in mind.

use crate::source::{core, tokens};

/// The most lines a file of the core may have without its tests.
const LONGEST: usize = 400;

/// How many lines of a file are not built for tests only.
fn length(text: &str) -> usize {
    text.lines().count() - tokens(text).1
}

#[test]
fn every_file_says_first_what_it_knows() {
    let silent = |text: &str| !text.starts_with("//! ");
    let found: Vec<String> = core()
        .into_iter()
        .filter(|file| silent(&file.text))
        .map(|file| file.path)
        .collect();
    assert!(found.is_empty(), "{found:#?}");
    assert!(silent("use a::b;\n//! Late.\n"));
}

#[test]
fn no_file_is_too_long_to_be_held_in_mind() {
    let mut found = Vec::new();
    for file in core().iter().filter(|file| !file.tests_only()) {
        if length(&file.text) > LONGEST {
            found.push(format!("{}: {} lines", file.path, length(&file.text)));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn tests_are_not_counted() {
    let code = "const A: u8 = 1;\n".repeat(LONGEST);
    let tests = format!("#[cfg(test)]\nmod tests {{\n{code}}}\n");
    assert_eq!(length(&code), LONGEST);
    assert_eq!(length(&format!("{code}{tests}")), LONGEST);
    assert_eq!(
        length(&format!("{code}const B: u8 = 1;\n{tests}")),
        LONGEST + 1
    );
    assert_eq!(
        length(&format!("#[cfg(test)]\nmod tests;\n{code}")),
        LONGEST
    );
}
