//! Fuzzes `checks::line`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| cartside_fuzz::line(bytes));
