//! A second writer of ZIPs, field by field from PKWARE's APPNOTE 6.3.3, that can write any of them
//! wrong. It shares no code with the writer it checks.

/// A member with every field that a test may want to be wrong.
#[derive(Clone)]
pub(crate) struct Member {
    pub(crate) name: Vec<u8>,
    /// The name in the member's own header.
    pub(crate) own_name: Vec<u8>,
    pub(crate) flags: u16,
    pub(crate) method: u16,
    pub(crate) crc: u32,
    pub(crate) size: u32,
    pub(crate) packed: Vec<u8>,
    /// Where the list says the member lies, when that is not where it lies.
    pub(crate) claimed_offset: Option<u32>,
    /// Whether the member is only in the list.
    pub(crate) only_listed: bool,
}

impl Member {
    pub(crate) fn stored(name: &str, bytes: &[u8]) -> Self {
        Self {
            name: name.as_bytes().to_vec(),
            own_name: name.as_bytes().to_vec(),
            flags: 0,
            method: 0,
            crc: crc(bytes),
            size: u32::try_from(bytes.len()).unwrap(),
            packed: bytes.to_vec(),
            claimed_offset: None,
            only_listed: false,
        }
    }

    pub(crate) fn deflated(name: &str, bytes: &[u8]) -> Self {
        Self {
            method: 8,
            packed: miniz_oxide::deflate::compress_to_vec(bytes, 6),
            ..Self::stored(name, bytes)
        }
    }

    /// The same member under another name, in its own header and in the list.
    pub(crate) fn named(self, name: &[u8]) -> Self {
        Self {
            name: name.to_vec(),
            own_name: name.to_vec(),
            ..self
        }
    }

    /// The member's own header and its bytes.
    pub(crate) fn local(&self) -> Vec<u8> {
        // An extra field of an unknown kind, as other writers put in: it is to be passed over.
        let extra = [0x5A, 0x5A, 2, 0, 1, 2];
        let mut out = b"PK\x03\x04".to_vec();
        out.extend(self.common());
        out.extend(u16::try_from(self.own_name.len()).unwrap().to_le_bytes());
        out.extend(u16::try_from(extra.len()).unwrap().to_le_bytes());
        out.extend(&self.own_name);
        out.extend(extra);
        out.extend(&self.packed);
        out
    }

    fn listed(&self, offset: u32) -> Vec<u8> {
        let mut out = b"PK\x01\x02".to_vec();
        out.extend(63_u16.to_le_bytes());
        out.extend(self.common());
        out.extend(u16::try_from(self.name.len()).unwrap().to_le_bytes());
        out.extend([0; 12]);
        out.extend(self.claimed_offset.unwrap_or(offset).to_le_bytes());
        out.extend(&self.name);
        out
    }

    fn common(&self) -> Vec<u8> {
        let mut out = Vec::new();
        for word in [20, self.flags, self.method, 0x6000, 0x58A6] {
            out.extend(word.to_le_bytes());
        }
        for long in [
            self.crc,
            u32::try_from(self.packed.len()).unwrap(),
            self.size,
        ] {
            out.extend(long.to_le_bytes());
        }
        out
    }
}

/// The ZIP of these members.
pub(crate) fn zip(members: &[Member]) -> Vec<u8> {
    counted_zip(members, u16::try_from(members.len()).unwrap())
}

/// The ZIP of these members that says it has so many.
pub(crate) fn counted_zip(members: &[Member], count: u16) -> Vec<u8> {
    let mut out = Vec::new();
    let mut list = Vec::new();
    for member in members {
        list.extend(member.listed(u32::try_from(out.len()).unwrap()));
        if !member.only_listed {
            out.extend(member.local());
        }
    }
    let start = u32::try_from(out.len()).unwrap();
    let length = u32::try_from(list.len()).unwrap();
    out.extend(list);
    out.extend(b"PK\x05\x06\0\0\0\0");
    out.extend(count.to_le_bytes());
    out.extend(count.to_le_bytes());
    out.extend(length.to_le_bytes());
    out.extend(start.to_le_bytes());
    out.extend([0; 2]);
    out
}

/// CRC-32, bit by bit.
fn crc(bytes: &[u8]) -> u32 {
    let mut crc = u32::MAX;
    for byte in bytes {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            let low = crc & 1;
            crc = (crc >> 1) ^ (0xEDB8_8320 * low);
        }
    }
    !crc
}
