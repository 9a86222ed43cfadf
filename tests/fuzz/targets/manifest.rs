//! Fuzzes `checks::manifest`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| cartside_fuzz::manifest(bytes));
