//! A file from outside: bytes of which nothing is believed until all of it has been looked at.

use rawzip::{ZipArchive, ZipFileHeaderRecord, ZipSliceArchive};

use crate::daybook::Digest;

use super::bounds::{FILE_BYTES, MANIFEST_BYTES, MEMBERS};
use super::manifest::{self, List, Listed, Manifest};
use super::member::{self, ENTRIES, Kind};
use super::names::Names;
use super::packed::Packed;
use super::refused::Refused;
use super::warning::{Warning, WhyLeftOut};

/// How a JPEG begins.
pub(super) const JPEG: &[u8] = &[0xFF, 0xD8, 0xFF];

/// A file whose layout holds: a ZIP with a manifest of our container, whose members have names
/// that may stand, once each, and are the ones the manifest lists. What they hold has not been
/// looked at, and nothing shows it before [`verify`](Self::verify) has.
#[derive(Clone, Debug)]
pub struct Unverified<'a> {
    pub(super) manifest: Manifest,
    pub(super) entries: Vouched<'a>,
    pub(super) pictures: Vec<(Digest, Vouched<'a>)>,
    pub(super) sides: Vec<Vouched<'a>>,
    pub(super) warnings: Vec<Warning>,
}

/// A member together with what the manifest lists for it.
#[derive(Clone, Debug)]
pub(super) struct Vouched<'a> {
    pub(super) packed: Packed<'a>,
    pub(super) listed: Listed,
}

type Archive<'a> = ZipSliceArchive<&'a [u8]>;

/// The members of a file, folders left out, and their names.
struct Records<'r> {
    list: Vec<(&'r str, ZipFileHeaderRecord<'r>)>,
    names: Names<'r>,
}

/// Looks at the layout of a file from outside. Members other than the manifest stay packed.
///
/// # Errors
///
/// A newer container before anything else but being a ZIP with a manifest, then the first thing
/// that is wrong with the layout.
pub fn open(bytes: &[u8]) -> Result<Unverified<'_>, Refused> {
    let archive = locate(bytes)?;
    let packed = find_manifest(&archive)?;
    let json = packed.unpack(MANIFEST_BYTES)?;
    manifest::judge_version(&json)?;
    let records = records(&archive)?;
    let (manifest, list) = manifest::read(&json)?;
    sort(&archive, &records, manifest, &list)
}

fn locate(bytes: &[u8]) -> Result<Archive<'_>, Refused> {
    if bytes.is_empty() {
        return Err(Refused::Empty);
    }
    if bytes.len() as u64 > FILE_BYTES {
        return Err(Refused::FileTooLarge {
            bytes: bytes.len() as u64,
        });
    }
    ZipArchive::from_slice(bytes).map_err(|_| match bytes {
        _ if bytes.starts_with(JPEG) => Refused::Jpeg,
        _ if bytes.starts_with(b"PK") => Refused::CutShort,
        _ => Refused::NotZip,
    })
}

/// The first member named as the manifest is; a second one is refused with all other duplicates.
fn find_manifest<'a>(archive: &Archive<'a>) -> Result<Packed<'a>, Refused> {
    for record in archive.entries() {
        let record = record.map_err(|_| Refused::DirectoryBroken)?;
        if record.file_path().as_ref() == member::MANIFEST.as_bytes() {
            return Packed::find(archive, &record, member::MANIFEST);
        }
    }
    Err(Refused::NoManifest)
}

/// Every member with its name, each once.
fn records<'r>(archive: &'r Archive<'_>) -> Result<Records<'r>, Refused> {
    let mut list = Vec::new();
    let gathered = gather(archive, &mut list);
    let names: Names<'_> = list.iter().map(|(name, _)| *name).collect();
    // A name met again is told before what is wrong further on.
    match names.twice() {
        Some(name) => Err(Refused::DuplicateName { name }),
        None => gathered.map(|()| Records { list, names }),
    }
}

/// Puts the members into a list, up to the first that is wrong. Folders have no bytes and are passed
/// over.
fn gather<'r>(
    archive: &'r Archive<'_>,
    list: &mut Vec<(&'r str, ZipFileHeaderRecord<'r>)>,
) -> Result<(), Refused> {
    let said = archive.entries_hint();
    let mut found = 0;
    for record in archive.entries() {
        let record = record.map_err(|_| Refused::DirectoryBroken)?;
        found += 1;
        if found.max(said) > MEMBERS {
            let said = found.max(said);
            return Err(Refused::TooManyMembers { said });
        }
        let name = member::name(record.file_path().as_bytes())?;
        if !name.ends_with('/') {
            list.push((name, record));
        }
    }
    if found == said {
        return Ok(());
    }
    Err(Refused::DirectoryCount { said, found })
}

/// Brings each member together with what the manifest lists for it.
fn sort<'a>(
    archive: &Archive<'a>,
    records: &Records<'_>,
    manifest: Manifest,
    list: &List,
) -> Result<Unverified<'a>, Refused> {
    let names = manifest::names(list);
    let mut warnings = absent(records, &names)?;
    let mut entries = None;
    let mut pictures = Vec::new();
    let mut sides = Vec::new();
    let in_order = records.names.iter();
    for (name, record) in in_order.filter_map(|(_, at)| records.list.get(*at)) {
        let kind = member::kind(name);
        let listed = names.place(name).and_then(|at| list.get(at));
        let vouched = |listed: &Listed| vouch(archive, record, name, *listed);
        match (kind, listed.map(|(_, listed)| listed)) {
            (Kind::Manifest, _) => {}
            (Kind::Entries, None) => return Err(Refused::EntriesNotListed),
            (_, None) => warnings.push(left_out(name, WhyLeftOut::NotListed)),
            (Kind::Unknown, Some(_)) => warnings.push(left_out(name, WhyLeftOut::Unknown)),
            (Kind::Entries, Some(listed)) => entries = Some(vouched(listed)?),
            (Kind::Picture(digest), Some(listed)) => pictures.push((digest, vouched(listed)?)),
            (Kind::Side, Some(listed)) => match vouched(listed) {
                Ok(side) => sides.push(side),
                Err(_) => warnings.push(not_as_listed(name)),
            },
        }
    }
    let entries = entries.ok_or_else(|| missing(ENTRIES))?;
    Ok(Unverified {
        manifest,
        entries,
        pictures,
        sides,
        warnings,
    })
}

/// Refuses when an entry or a picture is listed and not there, and reports what else is.
fn absent(records: &Records<'_>, listed: &Names<'_>) -> Result<Vec<Warning>, Refused> {
    let mut warnings = Vec::new();
    for (name, _) in listed.iter() {
        if records.names.place(name).is_some() {
            continue;
        }
        match member::kind(name) {
            Kind::Entries | Kind::Picture(_) => return Err(missing(name)),
            Kind::Manifest | Kind::Side | Kind::Unknown => {
                let name = (*name).to_owned();
                warnings.push(Warning::ListedButAbsent { name });
            }
        }
    }
    Ok(warnings)
}

fn vouch<'a>(
    archive: &Archive<'a>,
    record: &ZipFileHeaderRecord<'_>,
    name: &str,
    listed: Listed,
) -> Result<Vouched<'a>, Refused> {
    let packed = Packed::find(archive, record, name)?;
    Ok(Vouched { packed, listed })
}

fn missing(name: &str) -> Refused {
    let name = name.to_owned();
    Refused::Missing { name }
}

fn left_out(name: &str, why: WhyLeftOut) -> Warning {
    let name = name.to_owned();
    Warning::LeftOut { name, why }
}

pub(super) fn not_as_listed(name: &str) -> Warning {
    let name = name.to_owned();
    Warning::NotAsListed { name }
}
