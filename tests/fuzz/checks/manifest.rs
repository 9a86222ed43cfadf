//! Any bytes as the manifest of a file whose other members are sound.

use cartside_core::paper::exchange::{Scope, open};

use super::bytes::{Member, zip};
use super::file;

/// The one entry of the file.
const CART: &str = r#"{"cartside":1,"kind":"vehicle","slot":"vehicle","says":{"kind":"cart","name":"Tip cart"},"by":"","device":"0f1e","at":"2024-05-06T07:08:09+01:00","n":1}"#;
/// The longest text a manifest may claim.
const CLAIM_BYTES: usize = 64;

/// Reads a file with this manifest.
pub(crate) fn check(json: &[u8]) {
    let bytes = zip(&[
        Member::stored("manifest.json", json),
        Member::stored("entries.jsonl", format!("{CART}\n").as_bytes()),
        Member::stored("READ-ME.txt", b"A wheelwright's book.\n"),
    ]);
    if !file::check(&bytes) {
        return;
    }
    let verified = open(&bytes).and_then(|file| file.verify());
    let manifest = verified.as_ref().map(|verified| verified.manifest());
    let Ok(manifest) = manifest else { return };
    assert!(manifest.made_at.len() <= CLAIM_BYTES && manifest.device.len() <= CLAIM_BYTES);
    assert_eq!((manifest.entries, manifest.pictures), (1, 0));
    if let Some(Scope::NewFor(device)) = &manifest.scope {
        assert!(device.len() <= CLAIM_BYTES);
    }
    assert!(serde_json::from_slice::<serde_json::Value>(json).is_ok());
}
