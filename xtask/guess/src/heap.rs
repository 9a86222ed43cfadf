//! Arrays of a length that is known, so that no place in them needs to be checked, made where they stay.

use alloc::boxed::Box;
use alloc::vec;

/// So many of the same.
pub(crate) fn many<T: Clone, const COUNT: usize>(one: T) -> Box<[T; COUNT]> {
    match vec![one; COUNT].into_boxed_slice().try_into() {
        Ok(many) => many,
        Err(_) => unreachable!("there are as many as were asked for"),
    }
}
