//! Damage on the way: any byte changed, the end cut off anywhere.

use cartside_core::paper::exchange::open;

use crate::book::{files, manifest, members, truthful};
use crate::broken::refusal;
use crate::bytes::{Member, zip};

/// What a file brings in: lines and pictures.
type Brought = (Vec<String>, Vec<Vec<u8>>);

fn brought(bytes: &[u8]) -> Option<Brought> {
    let verified = open(bytes).ok()?.verify().ok()?;
    let lines = verified
        .entries()
        .map(|(_, line)| line.to_owned())
        .collect();
    let pictures = verified
        .pictures()
        .iter()
        .map(|picture| picture.bytes.to_vec())
        .collect();
    Some((lines, pictures))
}

/// Changes each byte of a file in turn, in three ways, and wants it refused or harmless. Gives how
/// many changes were refused and how many were harmless.
fn flip_each(good: &[u8]) -> (usize, usize) {
    let brought_by_good = brought(good).expect("a good file");
    let mut counts = (0, 0);
    for at in 0..good.len() {
        for change in [0x01, 0x80, 0xFF] {
            let mut flipped = good.to_vec();
            flipped[at] ^= change;
            match brought(&flipped) {
                None => counts.0 += 1,
                Some(brought) => {
                    assert_eq!(brought, brought_by_good, "byte {at} by {change:#x}");
                    counts.1 += 1;
                }
            }
        }
    }
    counts
}

#[test]
fn a_flipped_byte_is_refused_or_harmless() {
    let (refused, harmless) = flip_each(&truthful(&files()));
    assert!(
        refused > 2 * harmless,
        "{refused} refused, {harmless} harmless"
    );
}

#[test]
fn a_flipped_byte_of_deflated_members_is_refused_or_harmless() {
    let files = files();
    let mut members = members(&manifest(&files), &files);
    for (member, (name, bytes)) in members.iter_mut().skip(1).zip(&files) {
        *member = Member::deflated(name, bytes);
    }
    let (refused, harmless) = flip_each(&zip(&members));
    assert!(refused > harmless, "{refused} refused, {harmless} harmless");
}

#[test]
fn a_file_cut_short_anywhere_is_refused() {
    let good = truthful(&files());
    for length in 0..good.len() {
        assert!(refusal(&good[..length]).is_some(), "cut to {length}");
    }
}
