//! What each byte of a ZIP is, field by field from PKWARE's APPNOTE 6.3.3, 4.3: for files whose members lie one after
//! another, with the list and the end behind them and no remark.

/// The fields of a member's own header (4.3.7), with their lengths in bytes.
const OWN: [(&str, usize); 11] = [
    ("own header: signature", 4),
    ("own header: version needed", 2),
    ("own header: flags", 2),
    ("own header: method", 2),
    ("own header: time", 2),
    ("own header: date", 2),
    ("own header: CRC", 4),
    ("own header: packed size", 4),
    ("own header: size", 4),
    ("own header: length of name", 2),
    ("own header: length of extra", 2),
];

/// The fields of an entry of the list at the end (4.3.12).
const LISTED: [(&str, usize); 17] = [
    ("list: signature", 4),
    ("list: version made by", 2),
    ("list: version needed", 2),
    ("list: flags", 2),
    ("list: method", 2),
    ("list: time", 2),
    ("list: date", 2),
    ("list: CRC", 4),
    ("list: packed size", 4),
    ("list: size", 4),
    ("list: length of name", 2),
    ("list: length of extra", 2),
    ("list: length of remark", 2),
    ("list: first disk", 2),
    ("list: attributes of text", 2),
    ("list: attributes of the file", 4),
    ("list: offset", 4),
];

/// The fields of the end (4.3.16).
const END: [(&str, usize); 8] = [
    ("end: signature", 4),
    ("end: this disk", 2),
    ("end: disk of the list", 2),
    ("end: members on this disk", 2),
    ("end: members", 2),
    ("end: length of the list", 4),
    ("end: offset of the list", 4),
    ("end: length of remark", 2),
];

/// The field that each byte of the file belongs to.
pub(crate) fn fields(zip: &[u8]) -> Vec<&'static str> {
    let mut fields = Vec::new();
    while zip[fields.len()..].starts_with(b"PK\x03\x04") {
        let at = fields.len();
        let (packed, name, extra) = (long(zip, at + 18), word(zip, at + 26), word(zip, at + 28));
        put(&mut fields, &OWN);
        fields.extend(vec!["own header: name"; name]);
        fields.extend(vec!["own header: extra"; extra]);
        fields.extend(vec!["bytes of a member"; packed]);
    }
    while zip[fields.len()..].starts_with(b"PK\x01\x02") {
        let at = fields.len();
        let (name, extra) = (word(zip, at + 28), word(zip, at + 30));
        put(&mut fields, &LISTED);
        fields.extend(vec!["list: name"; name]);
        fields.extend(vec!["list: extra"; extra]);
    }
    put(&mut fields, &END);
    assert_eq!(fields.len(), zip.len(), "every byte is of a field");
    fields
}

fn put(fields: &mut Vec<&'static str>, row: &[(&'static str, usize)]) {
    for (name, length) in row {
        fields.extend(vec![*name; *length]);
    }
}

fn word(zip: &[u8], at: usize) -> usize {
    usize::from(u16::from_le_bytes([zip[at], zip[at + 1]]))
}

fn long(zip: &[u8], at: usize) -> usize {
    word(zip, at) | word(zip, at + 2) << 16
}
