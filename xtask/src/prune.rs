//! Takes out of the built app what nothing calls. Leptos brings a library for streams to and from a server, and its
//! three classes are exported to the page, so neither compiler nor wasm-opt may drop them or what they reach.

use anyhow::Result;
use std::convert::Infallible;
use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{ExportSection, Module};
use wasmparser::{ExportSectionReader, Parser};

/// How the names of the classes begin in the glue.
const CLASS: &str = "IntoUnderlying";

/// The wasm without the exports of those classes; what only they reach is left for wasm-opt to find.
pub(crate) fn without_streams(wasm: &[u8]) -> Result<Vec<u8>> {
    let mut module = Module::new();
    let parsed = Pruned.parse_core_module(&mut module, Parser::new(0), wasm);
    parsed.map_err(|error| anyhow::anyhow!("the wasm cannot be read: {error}"))?;
    Ok(module.finish())
}

struct Pruned;

impl Reencode for Pruned {
    type Error = Infallible;

    fn parse_export_section(
        &mut self,
        exports: &mut ExportSection,
        section: ExportSectionReader<'_>,
    ) -> Result<(), Error> {
        for export in section {
            let export = export?;
            if !is_of_streams(export.name) {
                self.parse_export(exports, export)?;
            }
        }
        Ok(())
    }
}

fn is_of_streams(export: &str) -> bool {
    let class = CLASS.to_lowercase();
    let name = export.strip_prefix("__wbg_").unwrap_or(export);
    name.starts_with(&class)
}

/// The glue without those classes; as it was if anything else in it names them.
pub(crate) fn glue_without_streams(glue: &str) -> String {
    let (mut kept, mut end) = (String::new(), None);
    for line in glue.lines() {
        let ends_at = end.or_else(|| end_of_class_text(line));
        end = ends_at.filter(|end| line != *end && !(*end == ";" && line.ends_with(';')));
        if ends_at.is_none() {
            kept.push_str(line);
            kept.push('\n');
        }
    }
    if kept.contains(CLASS) {
        glue.to_owned()
    } else {
        kept
    }
}

/// How the last line ends of what begins with this line, if it is about one of the classes.
fn end_of_class_text(line: &str) -> Option<&'static str> {
    let begins = |before: &str| {
        line.strip_prefix(before)
            .is_some_and(|rest| rest.starts_with(CLASS))
    };
    if begins("export class ") {
        Some("}")
    } else if begins("const ") || begins("if (Symbol.dispose) ") {
        Some(";")
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::{glue_without_streams, is_of_streams, without_streams};
    use wasm_encoder::{
        CodeSection, ExportKind, ExportSection, Function, FunctionSection, Module, TypeSection,
    };

    #[test]
    fn only_exports_of_the_classes_go() {
        let names = [
            "main",
            "intounderlyingsink_close",
            "__wbg_intounderlyingsource_free",
            "memory",
        ];
        let (mut types, mut functions) = (TypeSection::new(), FunctionSection::new());
        types.ty().function([], []);
        let (mut exports, mut code) = (ExportSection::new(), CodeSection::new());
        for (n, name) in (0..).zip(names) {
            functions.function(0);
            exports.export(name, ExportKind::Func, n);
            let mut body = Function::new([]);
            body.instructions().end();
            code.function(&body);
        }
        let mut module = Module::new();
        module
            .section(&types)
            .section(&functions)
            .section(&exports)
            .section(&code);
        let pruned = without_streams(&module.finish()).unwrap();
        wasmparser::validate(&pruned).unwrap();
        let left = names.iter().filter(|name| {
            pruned
                .windows(name.len())
                .any(|bytes| bytes == name.as_bytes())
        });
        assert_eq!(left.copied().collect::<Vec<_>>(), ["main", "memory"]);
        assert!(!is_of_streams("underlying"));
    }

    #[test]
    fn the_classes_go_from_the_glue_and_nothing_else() {
        let glue = "export class IntoUnderlyingSink {\n    free() {\n    }\n}\nif (Symbol.dispose) IntoUnderlyingSink.x = 1;\n\
                    /** keeps */\nexport function start() {\n}\n\
                    const IntoUnderlyingSinkFinalization = (typeof F === 'undefined')\n    ? {}\n    : new F();\nlet a;\n";
        assert_eq!(
            glue_without_streams(glue),
            "/** keeps */\nexport function start() {\n}\nlet a;\n"
        );
        let used = format!("{glue}new IntoUnderlyingSink();\n");
        assert_eq!(glue_without_streams(&used), used);
        assert_eq!(glue_without_streams("let a;\n"), "let a;\n");
    }

    #[test]
    fn what_is_no_wasm_is_refused() {
        assert!(without_streams(b"no wasm").is_err());
    }
}
