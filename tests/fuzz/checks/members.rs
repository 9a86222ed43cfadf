//! A ZIP made by a recipe: members of every kind, stored or deflated, each with a lie or none. Bytes that are changed
//! at random seldom get past a CRC; these do.

use cartside_core::daybook::Digest;
use serde_json::json;

use super::bytes::{Member, counted_zip};
use super::file;

/// The most members of one recipe.
const MOST: u8 = 12;

/// A recipe, taken byte by byte; where it ends, noughts follow.
struct Recipe<'r>(&'r [u8]);

impl<'r> Recipe<'r> {
    fn byte(&mut self) -> u8 {
        let Some((first, rest)) = self.0.split_first() else {
            return 0;
        };
        self.0 = rest;
        *first
    }

    fn bytes(&mut self) -> &'r [u8] {
        let length = usize::from(self.byte()) << 8 | usize::from(self.byte());
        let (taken, rest) = self.0.split_at(length.min(self.0.len()));
        self.0 = rest;
        taken
    }
}

/// What a manifest lists for a member.
struct Listed {
    name: String,
    bytes: u64,
    digest: Digest,
}

/// Makes the ZIP of a recipe and reads it.
pub(crate) fn check(bytes: &[u8]) {
    let mut recipe = Recipe(bytes);
    let (mut members, mut list) = (Vec::new(), Vec::new());
    let (mut entries, mut pictures) = (0, 0);
    for _ in 0..recipe.byte() % (MOST + 1) {
        let (member, listed) = member(&mut recipe);
        if listed.name == "entries.jsonl" {
            entries = String::from_utf8_lossy(&member.1).lines().count();
        }
        pictures += usize::from(listed.name.starts_with("pictures/"));
        members.push(member.0);
        list.push(listed);
    }
    let kept = recipe.byte();
    let members = with_manifest(members, &list, kept, entries, pictures);
    let count = members.len() as u16 + u16::from(kept == 0xFE);
    let mut zip = counted_zip(&members, count);
    // The last bytes of the recipe change bytes anywhere.
    for _ in 0..recipe.byte() % 4 {
        let at = usize::from(recipe.byte()) << 8 | usize::from(recipe.byte());
        let at = at % zip.len();
        zip[at] ^= recipe.byte();
    }
    file::check(&zip);
}

/// The next member, what is in it, and what is to be listed for it.
fn member(recipe: &mut Recipe<'_>) -> ((Member, Vec<u8>), Listed) {
    let (what, lie) = (recipe.byte(), recipe.byte());
    let mut bytes = recipe.bytes().to_vec();
    if what % 8 == 1 {
        bytes.splice(0..0, [0xFF, 0xD8, 0xFF]);
    }
    let name = name(what % 8, &bytes);
    let mut member = match lie & 1 {
        0 => Member::stored("", &bytes),
        _ => Member::deflated("", &bytes),
    };
    member = member.named(name.as_bytes());
    let mut listed = Listed {
        name,
        bytes: bytes.len() as u64,
        digest: Digest::of(&bytes),
    };
    tell(lie >> 1, &mut member, &mut listed, recipe);
    ((member, bytes), listed)
}

fn name(what: u8, bytes: &[u8]) -> String {
    match what {
        0 => "entries.jsonl".to_owned(),
        1 => format!("pictures/{}.jpg", Digest::of(bytes)),
        2 => "readings.csv".to_owned(),
        3 => "READ-ME.txt".to_owned(),
        4 => "pictures/".to_owned(),
        5 => "manifest.json".to_owned(),
        6 => String::from_utf8_lossy(bytes).chars().take(300).collect(),
        _ => format!("pictures/{}.jpg", Digest::of(b"another")),
    }
}

/// One lie, or none.
fn tell(lie: u8, member: &mut Member, listed: &mut Listed, recipe: &mut Recipe<'_>) {
    match lie {
        1 => member.crc ^= u32::from(recipe.byte()),
        2 => {
            member.size = member
                .size
                .wrapping_add_signed(i32::from(recipe.byte() as i8))
        }
        3 => member.flags = u16::from(recipe.byte()),
        4 => member.method = u16::from(recipe.byte()),
        5 => member.own_name = recipe.bytes().to_vec(),
        6 => member.claimed_offset = Some(u32::from(recipe.byte())),
        7 => listed.bytes = u64::from(recipe.byte()),
        8 => listed.digest = Digest::of(b"something else"),
        9 => listed.name.push('x'),
        10 => member.size = u32::MAX - u32::from(recipe.byte()),
        11 => member.name = recipe.bytes().to_vec(),
        12 => member.only_listed = true,
        13 => {
            let (at, to) = (usize::from(recipe.byte()), recipe.byte());
            if let Some(byte) = member.packed.get_mut(at) {
                *byte = to;
            }
        }
        _ => {}
    }
}

/// The members after a manifest that lists those that are to be kept.
fn with_manifest(
    members: Vec<Member>,
    list: &[Listed],
    kept: u8,
    entries: usize,
    pictures: usize,
) -> Vec<Member> {
    // From 128 on nothing is left out and nothing miscounted.
    let left_out = (kept < 64).then_some(usize::from(kept));
    let more = usize::from((64..128).contains(&kept));
    let listed = list
        .iter()
        .enumerate()
        .filter(|(at, _)| Some(*at) != left_out);
    let listed = listed.map(|(_, listed)| {
        json!({ "name": listed.name, "bytes": listed.bytes, "sha256": listed.digest.hex() })
    });
    let manifest = json!({
        "format": "cartside exchange", "container": 1, "made_at": "", "device": "", "scope": "book",
        "entries": entries + more, "pictures": pictures, "members": listed.collect::<Vec<_>>(),
    });
    let manifest = Member::stored("manifest.json", manifest.to_string().as_bytes());
    std::iter::once(manifest).chain(members).collect()
}
