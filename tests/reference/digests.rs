//! The digest that names entries and pictures, against the values of those who fixed it.

use cartside_core::daybook::Digest;

/// FIPS 180-4, *Secure Hash Standard*, with NIST, "Examples with Intermediate Values: SHA-256"
/// (one block, two blocks); the million times `a` is the third example of FIPS 180-2, appendix B.3.
#[test]
fn the_examples_of_the_standard() {
    let two_blocks = b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq";
    assert_eq!(two_blocks.len() * 8, 448);
    for (message, digest) in [
        (
            b"abc".to_vec(),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        ),
        (
            two_blocks.to_vec(),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        ),
        (
            vec![b'a'; 1_000_000],
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
        ),
    ] {
        assert_eq!(Digest::of(&message).hex(), digest);
    }
}

/// NIST, "Additional SHA-256 examples" (SHA2_Additional): the empty message, and lengths at which
/// the padding begins a new block.
#[test]
fn the_additional_examples() {
    for (message, digest) in [
        (
            vec![],
            "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        ),
        (
            vec![0xbd],
            "68325720aabd7c82f30f554b313d0570c95accbb7dc4b5aae11204c08ffe732b",
        ),
        (
            vec![0xc9, 0x8c, 0x8e, 0x55],
            "7abc22c0ae5af26ce93dbb94433a0e0b2e119d014f8e7f65bd56c61ccccd9504",
        ),
        (
            vec![0; 55],
            "02779466cdec163811d078815c633f21901413081449002f24aa3e80f0b88ef7",
        ),
        (
            vec![0; 56],
            "d4817aa5497628e7c77e6b606107042bbba3130888c5f47a375e6179be789fbb",
        ),
        (
            vec![0; 57],
            "65a16cb7861335d5ace3c60718b5052e44660726da4cd13bb745381b235a1785",
        ),
        (
            vec![0; 64],
            "f5a5fd42d16a20302798ef6ed309979b43003d2320d9f0e8ea9831a92759fb4b",
        ),
        (
            vec![b'A'; 1000],
            "c2e686823489ced2017f6059b8b239318b6364f6dcd835d0a519105a1eadd6e4",
        ),
        (
            vec![b'U'; 1005],
            "f4d62ddec0f3dd90ea1380fa16a5ff8dc4c54b21740650f24afc4120903552b0",
        ),
    ] {
        assert_eq!(
            Digest::of(&message).hex(),
            digest,
            "{} bytes",
            message.len()
        );
    }
}
