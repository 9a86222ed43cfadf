//! Numbers the locals of each function in the order in which they are first used, those of one type among themselves:
//! a packer that knows which local has not been used yet then knows which comes next. Nothing else of the wasm changes.

use anyhow::{Result, anyhow};
use std::convert::Infallible;
use wasm_encoder::reencode::{Error, Reencode, utils};
use wasm_encoder::{CodeSection, Instruction, Module};
use wasmparser::{FunctionBody, Operator, Parser, Payload, ValType};

/// The same wasm with its locals numbered anew.
pub(crate) fn by_first_use(wasm: &[u8]) -> Result<Vec<u8>> {
    let mut renamed = Renamed {
        parameters: parameters(wasm)?.into_iter(),
        places: Vec::new(),
    };
    let mut module = Module::new();
    let parsed = renamed.parse_core_module(&mut module, Parser::new(0), wasm);
    parsed.map_err(|error| anyhow!("the locals cannot be numbered anew: {error}"))?;
    Ok(module.finish())
}

/// How many parameters each function has that is not brought in.
fn parameters(wasm: &[u8]) -> Result<Vec<u32>> {
    let (mut types, mut functions) = (Vec::new(), Vec::new());
    for payload in Parser::new(0).parse_all(wasm) {
        match payload? {
            Payload::TypeSection(section) => {
                for ty in section.into_iter_err_on_gc_types() {
                    types.push(u32::try_from(ty?.params().len())?);
                }
            }
            Payload::FunctionSection(section) => {
                for ty in section {
                    functions.push(types.get(ty? as usize).copied().unwrap_or(0));
                }
            }
            _ => {}
        }
    }
    Ok(functions)
}

/// Writes a wasm out again with its locals numbered anew.
struct Renamed {
    /// How many parameters each function has that still comes.
    parameters: std::vec::IntoIter<u32>,
    /// The new number of each local of this function, in the old order.
    places: Vec<u32>,
}

impl Renamed {
    fn place(&self, old: u32) -> u32 {
        self.places.get(old as usize).copied().unwrap_or(old)
    }
}

impl Reencode for Renamed {
    type Error = Infallible;

    fn parse_function_body(
        &mut self,
        code: &mut CodeSection,
        body: FunctionBody<'_>,
    ) -> Result<(), Error> {
        let parameters = self.parameters.next().unwrap_or(0);
        self.places = places(parameters, &body)?;
        utils::parse_function_body(self, code, body)
    }

    fn instruction<'a>(&mut self, operator: Operator<'a>) -> Result<Instruction<'a>, Error> {
        match operator {
            Operator::LocalGet { local_index } => {
                Ok(Instruction::LocalGet(self.place(local_index)))
            }
            Operator::LocalSet { local_index } => {
                Ok(Instruction::LocalSet(self.place(local_index)))
            }
            Operator::LocalTee { local_index } => {
                Ok(Instruction::LocalTee(self.place(local_index)))
            }
            other => utils::instruction(self, other),
        }
    }
}

/// The new number of each local. Parameters keep theirs, and so do the numbers that a type has.
fn places(parameters: u32, body: &FunctionBody<'_>) -> Result<Vec<u32>, Error> {
    let mut types = Vec::new();
    for group in body.get_locals_reader()? {
        let (count, ty) = group?;
        types.extend((0..count).map(|_| ty));
    }
    let mut places: Vec<u32> = (0..parameters + types.len() as u32).collect();
    let mut order = in_order_of_use(body)?;
    let unused = places.iter().filter(|local| !order.contains(local));
    order.extend(unused.copied().collect::<Vec<_>>());
    let mut seen: Vec<ValType> = Vec::new();
    for ty in &types {
        if seen.contains(ty) {
            continue;
        }
        seen.push(*ty);
        let of_type = |local: &u32| {
            let own = local.checked_sub(parameters);
            own.and_then(|own| types.get(own as usize)) == Some(ty)
        };
        let numbers = (parameters..parameters + types.len() as u32).filter(of_type);
        for (old, new) in order.iter().filter(|local| of_type(local)).zip(numbers) {
            if let Some(place) = places.get_mut(*old as usize) {
                *place = new;
            }
        }
    }
    Ok(places)
}

/// Each local that is used, once.
fn in_order_of_use(body: &FunctionBody<'_>) -> Result<Vec<u32>, Error> {
    let mut order = Vec::new();
    for operator in body.get_operators_reader()? {
        if let Operator::LocalGet { local_index }
        | Operator::LocalSet { local_index }
        | Operator::LocalTee { local_index } = operator?
            && !order.contains(&local_index)
        {
            order.push(local_index);
        }
    }
    Ok(order)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::by_first_use;
    use wasm_encoder::{CodeSection, Function, FunctionSection, Module, TypeSection, ValType};
    use wasmparser::{Operator, Parser, Payload};
    #[test]
    fn the_first_used_of_each_type_has_its_lowest_number() {
        let mut types = TypeSection::new();
        types.ty().function([ValType::I32], []);
        let mut functions = FunctionSection::new();
        functions.function(0);
        // 0 is given; 1, 2 and 3 hold i32, 4 and 5 i64.
        let mut body = Function::new([(3, ValType::I32), (2, ValType::I64)]);
        body.instructions()
            .local_get(3)
            .local_set(1)
            .local_get(5)
            .local_tee(4)
            .drop()
            .local_get(0)
            .local_set(3)
            .end();
        let mut code = CodeSection::new();
        code.function(&body);
        let mut module = Module::new();
        module.section(&types).section(&functions).section(&code);
        let renamed = by_first_use(&module.finish()).unwrap();
        wasmparser::validate(&renamed).unwrap();
        assert_eq!(named(&renamed), [1, 2, 4, 5, 0, 1]);
    }

    #[test]
    fn what_is_no_wasm_is_refused() {
        assert!(by_first_use(b"no wasm").is_err());
    }

    /// The locals that are named, in the order of the code.
    fn named(wasm: &[u8]) -> Vec<u32> {
        let mut named = Vec::new();
        for payload in Parser::new(0).parse_all(wasm) {
            if let Payload::CodeSectionEntry(body) = payload.unwrap() {
                for operator in body.get_operators_reader().unwrap() {
                    if let Operator::LocalGet { local_index }
                    | Operator::LocalSet { local_index }
                    | Operator::LocalTee { local_index } = operator.unwrap()
                    {
                        named.push(local_index);
                    }
                }
            }
        }
        named
    }
}
