//! A tree for each kind of byte in which the frequent ones hang low (Huffman's), so that few bits have to be guessed.

use crate::coder::Coder;
use crate::{Damaged, KINDS};
use alloc::boxed::Box;
use alloc::vec;
use alloc::vec::Vec;

/// The longest way to a byte.
const LONGEST: u8 = 30;
/// Marks a child that is a byte, not a node.
pub(crate) const LEAF: u16 = 256;
/// The first node.
pub(crate) const ROOT: u16 = 1;

/// The way down to every byte of every kind.
pub(crate) struct Trees {
    /// The two children of each node; 0 where there is none. Nodes are numbered as they are met.
    pub(crate) nodes: Box<[[u16; 2]]>,
    /// The bits on the way to each byte with a 1 before them; 0 for a byte that never comes.
    pub(crate) ways: Box<[u32]>,
}

impl Trees {
    /// From how long the way to each byte is, 0 where it never comes.
    pub(crate) fn new(lengths: &[u8]) -> Result<Self, Damaged> {
        let mut trees = Self {
            nodes: vec![[0; 2]; KINDS << 8].into_boxed_slice(),
            ways: vec![0; KINDS << 8].into_boxed_slice(),
        };
        for (kind, lengths) in lengths.chunks_exact(256).enumerate() {
            trees.grow(kind, lengths)?;
        }
        Ok(trees)
    }

    fn grow(&mut self, kind: usize, lengths: &[u8]) -> Result<(), Damaged> {
        let (mut way, mut nodes) = (0_u32, ROOT);
        for length in 1..=LONGEST {
            way <<= 1;
            for byte in (0..256).filter(|byte| lengths[*byte] == length) {
                // More than such a tree can hold.
                if way >> length != 0 {
                    return Err(Damaged);
                }
                self.ways[kind << 8 | byte] = way | 1 << length;
                self.hang(kind, byte, &mut nodes)?;
                way += 1;
            }
        }
        Ok(())
    }

    fn hang(&mut self, kind: usize, byte: usize, nodes: &mut u16) -> Result<(), Damaged> {
        let way = self.ways[kind << 8 | byte];
        let mut node = ROOT;
        for at in (0..31 - way.leading_zeros()).rev() {
            let child = &mut self.nodes[kind << 8 | usize::from(node)][(way >> at & 1) as usize];
            if at == 0 {
                *child = LEAF | byte as u16;
            } else if *child == 0 {
                *nodes += 1;
                *child = *nodes;
            }
            node = *child;
            if at > 0 && node >= LEAF {
                return Err(Damaged);
            }
        }
        Ok(())
    }
}

/// Codes how long the ways are, by chances that learn on the way.
pub(crate) fn code_lengths(coder: &mut impl Coder, lengths: &mut [u8]) {
    let mut chances = vec![0x8000_u16; 4 << 10];
    let mut bit = |place: usize, bit: bool| {
        let chance = &mut chances[place];
        let bit = coder.code(bit, u32::from(*chance).clamp(64, 65_472));
        let target = if bit { 65_535 } else { 0 };
        *chance = (i32::from(*chance) + ((target - i32::from(*chance)) >> 4)) as u16;
        bit
    };
    for kind in lengths.chunks_exact_mut(256) {
        let comes = kind.iter().any(|length| *length > 0);
        if !bit(0, comes) {
            continue;
        }
        // The lengths of the two bytes before.
        let (mut last, mut other) = (0, 0);
        for length in kind {
            let zeros = usize::from(last == 0) + usize::from(other == 0);
            let near = usize::from(if last == 0 { other } else { last });
            let mut node = 1;
            for at in (0..5).rev() {
                let one = bit((zeros << 5 | near) << 5 | node, *length >> at & 1 == 1);
                node = node << 1 | usize::from(one);
            }
            *length = (node & 31) as u8;
            (last, other) = (*length, last);
        }
    }
}

/// The lengths that suit how often each byte comes.
pub(crate) fn lengths(counts: &[u32]) -> Vec<u8> {
    counts.chunks_exact(256).flat_map(suited).collect()
}

fn suited(counts: &[u32]) -> Vec<u8> {
    let mut lengths = vec![0; 256];
    // A way must not become too long; a floor under the counts sees to that.
    let floor = counts.iter().sum::<u32>() >> 14;
    let come = (0..256).filter(|byte| counts[*byte] > 0);
    let mut groups: Vec<(u32, Vec<usize>)> = come
        .map(|byte| (counts[byte].max(floor), vec![byte]))
        .collect();
    if let [(_, only)] = &groups[..] {
        lengths[only[0]] = 1;
    }
    while groups.len() > 1 {
        groups.sort_by_key(|(count, bytes)| core::cmp::Reverse((*count, bytes.len())));
        let (Some(one), Some(other)) = (groups.pop(), groups.pop()) else {
            break;
        };
        let bytes = [one.1, other.1].concat();
        for byte in &bytes {
            lengths[*byte] += 1;
        }
        groups.push((one.0 + other.0, bytes));
    }
    lengths
}
