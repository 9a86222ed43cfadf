//! The types of all functions, as they are told before the code.

use crate::Damaged;
use alloc::vec::Vec;

const TYPES: u8 = 1;
const IMPORTS: u8 = 2;
const FUNCTIONS: u8 = 3;
/// How each type of function begins.
const FUNCTION: u8 = 0x60;

/// What a function takes and gives.
#[derive(Clone, Default)]
pub(crate) struct Signature {
    /// The last two bits of each parameter's type.
    pub(crate) parameters: Vec<u8>,
    /// How many results there are.
    pub(crate) results: usize,
    /// The last two bits of the first one's type.
    pub(crate) result: u8,
}

/// The types of all functions.
#[derive(Default)]
pub(crate) struct Types {
    types: Vec<Signature>,
    /// The type of each function, those that are brought in first.
    functions: Vec<u32>,
    brought_in: u32,
}

impl Types {
    /// Reads the sections before the code.
    pub(crate) fn read(before: &[u8]) -> Result<Self, Damaged> {
        let mut types = Self::default();
        let mut rest = Bytes(before.get(8..).ok_or(Damaged)?);
        while let Ok(section) = rest.byte() {
            let size = rest.number()? as usize;
            let content = Bytes(rest.take(size)?);
            match section {
                TYPES => types.read_types(content)?,
                IMPORTS => types.read_imports(content)?,
                FUNCTIONS => types.read_functions(content)?,
                _ => {}
            }
        }
        Ok(types)
    }

    fn read_types(&mut self, mut bytes: Bytes<'_>) -> Result<(), Damaged> {
        for _ in 0..bytes.number()? {
            if bytes.byte()? != FUNCTION {
                return Err(Damaged);
            }
            let parameters = bytes.number()? as usize;
            let parameters = bytes.take(parameters)?.iter().map(|ty| ty & 3).collect();
            let results = bytes.number()? as usize;
            let result = bytes.take(results)?.first().map_or(0, |ty| ty & 3);
            self.types.push(Signature {
                parameters,
                results,
                result,
            });
        }
        Ok(())
    }

    /// Functions alone are brought in; whatever else is, no build of ours has.
    fn read_imports(&mut self, mut bytes: Bytes<'_>) -> Result<(), Damaged> {
        for _ in 0..bytes.number()? {
            for _ in 0..2 {
                let name = bytes.number()? as usize;
                bytes.take(name)?;
            }
            if bytes.byte()? != 0 {
                return Err(Damaged);
            }
            self.functions.push(bytes.number()?);
            self.brought_in += 1;
        }
        Ok(())
    }

    fn read_functions(&mut self, mut bytes: Bytes<'_>) -> Result<(), Damaged> {
        for _ in 0..bytes.number()? {
            self.functions.push(bytes.number()?);
        }
        Ok(())
    }

    /// The number of the type of a function that is called by this number.
    pub(crate) fn called(&self, function: u32) -> u32 {
        self.functions.get(function as usize).copied().unwrap_or(0)
    }

    /// The number of the type of the function whose body is the so manyth.
    pub(crate) fn number(&self, body: u32) -> u32 {
        self.called(body.wrapping_add(self.brought_in))
    }

    /// What it takes and gives.
    pub(crate) fn of(&self, ty: u32) -> Signature {
        self.types.get(ty as usize).cloned().unwrap_or_default()
    }
}

/// What is left to be read.
pub(crate) struct Bytes<'b>(pub(crate) &'b [u8]);

impl<'b> Bytes<'b> {
    pub(crate) fn byte(&mut self) -> Result<u8, Damaged> {
        let (byte, rest) = self.0.split_first().ok_or(Damaged)?;
        self.0 = rest;
        Ok(*byte)
    }

    pub(crate) fn take(&mut self, count: usize) -> Result<&'b [u8], Damaged> {
        let (taken, rest) = self.0.split_at_checked(count).ok_or(Damaged)?;
        self.0 = rest;
        Ok(taken)
    }

    pub(crate) fn number(&mut self) -> Result<u32, Damaged> {
        let (mut number, mut shift) = (0_u32, 0);
        loop {
            let byte = self.byte()?;
            number |= u32::from(byte & 127).checked_shl(shift).unwrap_or(0);
            shift += 7;
            if byte < 128 {
                return Ok(number);
            }
        }
    }
}
