//! Gives short names to what the wasm imports from its glue: each carries a digest of its own, in both files, which no
//! packing makes smaller and nobody reads.

use anyhow::{Result, ensure};
use std::convert::Infallible;
use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{ImportSection, Module};
use wasmparser::{ImportSectionReader, Parser};

/// Each import's name before and after.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Names(Vec<(String, String)>);

/// The wasm with short names for its imports, and what they were.
pub(crate) fn imports(wasm: &[u8]) -> Result<(Vec<u8>, Names)> {
    let mut names = Names::default();
    let mut module = Module::new();
    let parsed = names.parse_core_module(&mut module, Parser::new(0), wasm);
    parsed.map_err(|error| anyhow::anyhow!("the wasm cannot be read: {error}"))?;
    Ok((module.finish(), names))
}

impl Reencode for Names {
    type Error = Infallible;

    fn parse_import_section(
        &mut self,
        imports: &mut ImportSection,
        section: ImportSectionReader<'_>,
    ) -> Result<(), Error> {
        for import in section.into_imports() {
            let import = import?;
            let name = short(self.0.len());
            imports.import(import.module, &name, self.entity_type(import.ty)?);
            self.0.push((import.name.to_owned(), name));
        }
        Ok(())
    }
}

/// The name of this number: `a` to `z`, then `aa`, `ba` and so on.
fn short(mut number: usize) -> String {
    let mut name = String::new();
    loop {
        let letter = number % 26;
        name.extend(('a'..='z').nth(letter));
        if number < 26 {
            return name;
        }
        number = number / 26 - 1;
    }
}

impl Names {
    /// The glue, minified, with the same names.
    pub(crate) fn in_glue(&self, glue: &str) -> Result<String> {
        let mut glue = glue.to_owned();
        for (before, after) in &self.0 {
            // Between the signs that end the function before and begin this one, so that no part of a longer name is
            // taken for it.
            let starts = [format!(",{before}:"), format!("{{{before}:")];
            let found: usize = starts.iter().map(|start| glue.matches(start).count()).sum();
            ensure!(
                found == 1,
                "the glue should hold the function `{before}` exactly once, and holds it {found} times"
            );
            for (start, sign) in starts.iter().zip([',', '{']) {
                glue = glue.replace(start, &format!("{sign}{after}:"));
            }
        }
        Ok(glue)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use std::collections::BTreeSet;
    use wasm_encoder::{EntityType, TypeSection};

    fn wasm(imported: &[&str]) -> Vec<u8> {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        let mut imports = ImportSection::new();
        for name in imported {
            imports.import("./a_bg.js", name, EntityType::Function(0));
        }
        let mut module = Module::new();
        module.section(&types).section(&imports);
        module.finish()
    }

    #[test]
    fn each_import_keeps_its_function() {
        let (shortened, names) = imports(&wasm(&["__wbg_get_1f", "__wbg_get_1f00"])).unwrap();
        assert_eq!(shortened, wasm(&["a", "b"]));
        let glue = "({__wbg_get_1f00:function(){two()},__wbg_get_1f:function(){one()}})";
        assert_eq!(
            names.in_glue(glue).unwrap(),
            "({b:function(){two()},a:function(){one()}})"
        );
    }

    #[test]
    fn a_glue_that_lacks_an_import_is_refused() {
        let (_, names) = imports(&wasm(&["__wbg_get_1f", "__wbg_set_2a"])).unwrap();
        assert!(names.in_glue("({__wbg_get_1f:function(){}})").is_err());
        assert!(imports(b"no wasm").is_err());
    }

    #[test]
    fn no_two_names_are_the_same() {
        let names: BTreeSet<String> = (0..2000).map(short).collect();
        assert_eq!(names.len(), 2000);
        assert_eq!([0, 25, 26, 27].map(short), ["a", "z", "aa", "ba"]);
    }
}
