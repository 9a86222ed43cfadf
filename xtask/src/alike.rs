//! Puts functions that resemble each other side by side in the wasm: gzip looks back 32 kB only, and what repeats
//! further apart is carried twice. Nothing else of the wasm changes.

use anyhow::{Context, Result};
use std::collections::BTreeSet;
use std::convert::Infallible;
use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{CodeSection, FunctionSection, Module};
use wasmparser::{CodeSectionReader, FunctionBody, FunctionSectionReader, Parser, Payload};

/// The same wasm with its functions in another order.
pub(crate) fn side_by_side(wasm: &[u8]) -> Result<Vec<u8>> {
    let (mut imports, mut bodies) = (0, Vec::new());
    for payload in Parser::new(0).parse_all(wasm) {
        match payload? {
            Payload::ImportSection(section) => {
                for import in section.into_imports() {
                    imports += u32::from(matches!(
                        import?.ty,
                        wasmparser::TypeRef::Func(_) | wasmparser::TypeRef::FuncExact(_)
                    ));
                }
            }
            Payload::CodeSectionEntry(body) => bodies.push(body.as_bytes()),
            _ => {}
        }
    }
    let order = order(&bodies);
    let mut places = vec![0; order.len()];
    for (new, old) in (0_u32..).zip(&order) {
        *places.get_mut(*old).context("a function has no place")? = new;
    }
    let mut moved = Moved {
        imports,
        order,
        places,
    };
    let mut module = Module::new();
    let parsed = moved.parse_core_module(&mut module, Parser::new(0), wasm);
    parsed.map_err(|error| anyhow::anyhow!("the wasm cannot be put in order: {error}"))?;
    Ok(module.finish())
}

/// Writes a wasm out again with its functions moved.
struct Moved {
    imports: u32,
    /// The old number of each function, in the new order.
    order: Vec<usize>,
    /// The new number of each function, in the old order.
    places: Vec<u32>,
}

impl Reencode for Moved {
    type Error = Infallible;

    fn function_index(&mut self, old: u32) -> Result<u32, Error> {
        let own = old.checked_sub(self.imports);
        let place = own.and_then(|own| self.places.get(own as usize));
        Ok(place.map_or(old, |place| self.imports + place))
    }

    fn parse_function_section(
        &mut self,
        functions: &mut FunctionSection,
        section: FunctionSectionReader<'_>,
    ) -> Result<(), Error> {
        let types = section.into_iter().collect::<Result<Vec<u32>, _>>()?;
        for ty in self
            .order
            .clone()
            .into_iter()
            .filter_map(|old| types.get(old))
        {
            functions.function(self.type_index(*ty)?);
        }
        Ok(())
    }

    fn parse_code_section(
        &mut self,
        code: &mut CodeSection,
        section: CodeSectionReader<'_>,
    ) -> Result<(), Error> {
        let bodies = section
            .into_iter()
            .collect::<Result<Vec<FunctionBody<'_>>, _>>()?;
        for body in self
            .order
            .clone()
            .into_iter()
            .filter_map(|old| bodies.get(old))
        {
            self.parse_function_body(code, body.clone())?;
        }
        Ok(())
    }
}

/// How many marks a function is compared by.
const MARKS: usize = 96;
/// How many bytes in a row are one feature of a function.
const FEATURE: usize = 5;
/// How much those before count beside the last: what gzip sees is not one neighbour only.
const BEFORE: [u32; 3] = [4, 2, 1];
/// Marks in common below which two functions do not resemble each other.
const ALIKE: u32 = 8;

/// The functions in an order in which each resembles those before it, the longest first. Resemblance is how many
/// marks two functions share, each the least of all features under one of many hashes (Broder's min-wise hashing).
fn order(bodies: &[&[u8]]) -> Vec<usize> {
    let marks: Vec<[u32; MARKS]> = bodies.iter().map(|body| marks(body)).collect();
    let mut left: BTreeSet<usize> = (0..bodies.len()).collect();
    let mut order: Vec<usize> = Vec::with_capacity(bodies.len());
    let longest = (0..bodies.len()).max_by_key(|n| bodies.get(*n).map_or(0, |body| body.len()));
    let mut next = longest;
    while let Some(taken) = next {
        left.remove(&taken);
        order.push(taken);
        let before: Vec<_> = order
            .iter()
            .rev()
            .take(BEFORE.len())
            .filter_map(|n| marks.get(*n))
            .collect();
        let like = |n: &usize| {
            let own = marks.get(*n);
            let shared = before.iter().zip(BEFORE);
            shared
                .map(|(other, weight)| weight * own.map_or(0, |own| in_common(own, other)))
                .sum::<u32>()
        };
        let best = left.iter().map(|n| (like(n), std::cmp::Reverse(*n))).max();
        next = match best {
            Some((alike, std::cmp::Reverse(n))) if alike >= ALIKE => Some(n),
            _ => left.first().copied(),
        };
    }
    order
}

fn in_common(one: &[u32; MARKS], other: &[u32; MARKS]) -> u32 {
    one.iter().zip(other).map(|(a, b)| u32::from(a == b)).sum()
}

fn marks(body: &[u8]) -> [u32; MARKS] {
    let hash = |feature: &[u8]| {
        // FNV-1a.
        feature
            .iter()
            .fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
                (hash ^ u64::from(*byte)).wrapping_mul(0x100_0000_01b3)
            })
    };
    let features: BTreeSet<u64> = body.windows(FEATURE).map(hash).collect();
    std::array::from_fn(|n| {
        // An odd factor of its own for each mark.
        let factor = (n as u64 + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1;
        let mixed = |feature: &u64| (feature.wrapping_mul(factor) >> 32) as u32;
        features.iter().map(mixed).min().unwrap_or(u32::MAX)
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::indexing_slicing)]
    use super::{order, side_by_side};
    use wasm_encoder::{
        CodeSection, ConstExpr, ElementSection, Elements, ExportKind, ExportSection, Function,
        FunctionSection, Module, RefType, TableSection, TableType, TypeSection, ValType,
    };

    #[test]
    fn each_function_stands_once_and_beside_what_it_resembles() {
        let bodies: Vec<Vec<u8>> = (0..40_u8)
            .map(|n| {
                let kind = n % 2;
                (0..60_u8)
                    .map(|at| at.wrapping_mul(7) ^ (kind * 0x55))
                    .chain([n, n])
                    .collect()
            })
            .collect();
        let bodies: Vec<&[u8]> = bodies.iter().map(Vec::as_slice).collect();
        let order = order(&bodies);
        let mut sorted = order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, (0..40).collect::<Vec<_>>());
        let changes = order
            .windows(2)
            .filter(|pair| pair[0] % 2 != pair[1] % 2)
            .count();
        assert_eq!(changes, 1, "{order:?}");
    }

    #[test]
    fn nothing_is_in_order_already() {
        assert_eq!(order(&[]), Vec::<usize>::new());
        assert_eq!(order(&[b""]), [0]);
    }

    /// Functions that give their own number, one that calls the last, a table and an export of each.
    fn numbered(count: u32) -> Vec<u8> {
        let mut types = TypeSection::new();
        types.ty().function([], [ValType::I32]);
        let (mut functions, mut exports, mut code) = (
            FunctionSection::new(),
            ExportSection::new(),
            CodeSection::new(),
        );
        for n in 0..count {
            functions.function(0);
            exports.export(&format!("give {n}"), ExportKind::Func, n);
            let mut body = Function::new([]);
            if n == 0 {
                body.instructions().call(count - 1).end();
            } else {
                body.instructions()
                    .i32_const(n as i32 % 3)
                    .i32_const(n as i32)
                    .i32_add()
                    .end();
            }
            code.function(&body);
        }
        let mut tables = TableSection::new();
        tables.table(TableType {
            element_type: RefType::FUNCREF,
            table64: false,
            minimum: count.into(),
            maximum: None,
            shared: false,
        });
        let mut elements = ElementSection::new();
        let all: Vec<u32> = (0..count).collect();
        elements.active(
            None,
            &ConstExpr::i32_const(0),
            Elements::Functions(all.into()),
        );
        let mut module = Module::new();
        module
            .section(&types)
            .section(&functions)
            .section(&tables)
            .section(&exports)
            .section(&elements)
            .section(&code);
        module.finish()
    }

    /// The body that each name leads to.
    fn exported(wasm: &[u8]) -> Vec<(String, Vec<u8>)> {
        let (mut exports, mut bodies) = (Vec::new(), Vec::new());
        for payload in wasmparser::Parser::new(0).parse_all(wasm) {
            match payload.unwrap() {
                wasmparser::Payload::ExportSection(section) => {
                    exports = section
                        .into_iter()
                        .map(|export| export.unwrap())
                        .map(|export| (export.name.to_owned(), export.index))
                        .collect();
                }
                wasmparser::Payload::CodeSectionEntry(body) => {
                    bodies.push(body.as_bytes().to_vec())
                }
                _ => {}
            }
        }
        exports
            .into_iter()
            .map(|(name, index)| (name, bodies[index as usize].clone()))
            .collect()
    }

    #[test]
    fn a_name_leads_to_the_same_function_wherever_it_stands() {
        let before = numbered(30);
        let after = side_by_side(&before).unwrap();
        wasmparser::validate(&after).unwrap();
        assert_ne!(before, after);
        let (old, new) = (exported(&before), exported(&after));
        assert_eq!(old.len(), new.len());
        // The first calls another, whose number may have changed.
        assert_eq!(old[1..], new[1..]);
    }

    #[test]
    fn what_is_no_wasm_is_refused() {
        assert!(side_by_side(b"no wasm").is_err());
    }
}
