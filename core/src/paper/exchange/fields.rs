//! Numbers as a ZIP writes them: the low byte first.

/// Two bytes from this place on.
pub(super) fn word(bytes: &[u8], at: usize) -> Option<u16> {
    let two = bytes.get(at..)?.first_chunk()?;
    Some(u16::from_le_bytes(*two))
}

/// Four bytes from this place on.
pub(super) fn long(bytes: &[u8], at: usize) -> Option<u32> {
    let four = bytes.get(at..)?.first_chunk()?;
    Some(u32::from_le_bytes(*four))
}
