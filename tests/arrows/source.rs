//! The core's files as tokens, with what is built for tests only left out. Text and comments are
//! no tokens, so a name in them is no use of it.

use std::fs;
use std::path::{Path, PathBuf};

use proc_macro2::{Delimiter, TokenStream, TokenTree};

/// One file of the core.
pub(crate) struct Source {
    /// Its path below `core/src`, with `/`.
    pub(crate) path: String,
    pub(crate) text: String,
}

/// What rooms are told apart by.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Token {
    Word(String),
    Sign(char),
    Open,
    Close,
}

/// Every file of the core, tests among them.
pub(crate) fn core() -> Vec<Source> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
    let mut files = Vec::new();
    walk(&root, &mut files);
    files.sort();
    assert!(
        files.len() > 40,
        "the core was not found under {}",
        root.display()
    );
    let below = |file: PathBuf| Source {
        path: file
            .strip_prefix(&root)
            .unwrap()
            .to_str()
            .unwrap()
            .replace('\\', "/"),
        text: fs::read_to_string(&file).unwrap(),
    };
    files.into_iter().map(below).collect()
}

fn walk(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            walk(&path, files);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            files.push(path);
        }
    }
}

impl Source {
    /// Whether the whole file is built for tests only: it is, or stands under, a `tests` module.
    pub(crate) fn tests_only(&self) -> bool {
        let parts = self.path.trim_end_matches(".rs").split('/');
        parts.into_iter().any(|part| part == "tests")
    }

    /// The room it belongs to; `lib.rs` belongs to none.
    pub(crate) fn room(&self) -> &str {
        self.path.split_once('/').map_or("", |(room, _)| room)
    }

    /// How many modules it stands below the crate.
    pub(crate) fn depth(&self) -> usize {
        let parts = self.path.trim_end_matches(".rs").split('/');
        parts
            .filter(|part| *part != "mod" && *part != "lib")
            .count()
    }
}

/// The tokens of some text, and how many of its lines are built for tests only.
pub(crate) fn tokens(text: &str) -> (Vec<Token>, usize) {
    let stream: TokenStream = text.parse().expect("the file is Rust");
    let mut found = (Vec::new(), 0);
    flatten(stream, &mut found);
    found
}

fn flatten(stream: TokenStream, (tokens, test_lines): &mut (Vec<Token>, usize)) {
    let mut trees = stream.into_iter().peekable();
    while let Some(tree) = trees.next() {
        let begins = tree.span().start().line;
        let attribute = is_sign(&tree, '#').then(|| trees.peek()).flatten();
        if attribute.is_some_and(is_for_tests) {
            let ends = trees
                .find(ends_item)
                .map_or(begins, |last| last.span().end().line);
            *test_lines += ends + 1 - begins;
            continue;
        }
        match tree {
            TokenTree::Ident(word) => tokens.push(Token::Word(word.to_string())),
            TokenTree::Punct(sign) => tokens.push(Token::Sign(sign.as_char())),
            TokenTree::Literal(_) => {}
            TokenTree::Group(group) => {
                tokens.push(Token::Open);
                let mut inner = (std::mem::take(tokens), *test_lines);
                flatten(group.stream(), &mut inner);
                (*tokens, *test_lines) = inner;
                tokens.push(Token::Close);
            }
        }
    }
}

fn is_sign(tree: &TokenTree, sign: char) -> bool {
    matches!(tree, TokenTree::Punct(punct) if punct.as_char() == sign)
}

fn is_for_tests(tree: &TokenTree) -> bool {
    matches!(tree, TokenTree::Group(group)
        if group.delimiter() == Delimiter::Bracket
            && group.stream().to_string().replace(' ', "") == "cfg(test)")
}

fn ends_item(tree: &TokenTree) -> bool {
    let body = matches!(tree, TokenTree::Group(group) if group.delimiter() == Delimiter::Brace);
    body || is_sign(tree, ';')
}

#[test]
fn what_is_built_for_tests_is_left_out() {
    let text = "use a::b;\n#[cfg(test)]\nmod tests;\n#[cfg(test)]\nmod more {\n use c::d;\n}\n// e\nconst F: &str = \"g\";\n";
    let (found, test_lines) = tokens(text);
    let words: Vec<String> = found
        .into_iter()
        .filter_map(|token| match token {
            Token::Word(word) => Some(word),
            _ => None,
        })
        .collect();
    assert_eq!(words, ["use", "a", "b", "const", "F", "str"]);
    assert_eq!(test_lines, 6);
}

#[test]
fn files_know_their_room_and_depth() {
    let of = |path: &str| Source {
        path: path.to_owned(),
        text: String::new(),
    };
    for (path, room, depth, tests_only) in [
        ("lib.rs", "", 0, false),
        ("daybook/mod.rs", "daybook", 1, false),
        ("daybook/book.rs", "daybook", 2, false),
        ("paper/line.rs", "paper", 2, false),
        ("paper/line/says.rs", "paper", 3, false),
        ("paper/line/tests.rs", "paper", 3, true),
        ("daybook/tests/law.rs", "daybook", 3, true),
    ] {
        let file = of(path);
        assert_eq!(
            (file.room(), file.depth(), file.tests_only()),
            (room, depth, tests_only)
        );
    }
}
