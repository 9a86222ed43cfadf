//! The layout of a file from outside: its list of members held beside its manifest.

use super::bounds::FILE_BYTES;
use super::directory::{Directory, Record};
use super::manifest::{self, List, Listed, Manifest};
use super::member::{self, ENTRIES, Kind};
use super::names::Names;
use super::packed::Packed;
use super::refused::Refused;
use super::warning::{Warning, WhyLeftOut};

/// How a JPEG begins.
pub(super) const JPEG: &[u8] = &[0xFF, 0xD8, 0xFF];

/// What is wrong with a file that has no end of a ZIP, by how it begins.
pub(super) fn no_zip(beginning: &[u8]) -> Refused {
    match beginning {
        _ if beginning.starts_with(JPEG) => Refused::Jpeg,
        _ if beginning.starts_with(b"PK") => Refused::CutShort,
        _ => Refused::NotZip,
    }
}

/// A member together with what the manifest lists for it.
#[derive(Clone, Debug)]
pub(super) struct Vouched {
    pub(super) kind: Kind,
    pub(super) packed: Packed,
    pub(super) listed: Listed,
}

/// A file whose members have names that may stand, once each, and are the ones the manifest lists.
#[derive(Clone, Debug)]
pub(super) struct Layout {
    pub(super) manifest: Manifest,
    /// By name.
    pub(super) members: Vec<Vouched>,
    pub(super) warnings: Vec<Warning>,
}

/// The first member named as the manifest is; a second one is refused with all other duplicates.
pub(super) fn find_manifest(directory: &mut Directory) -> Result<Packed, Refused> {
    let mut records = directory.records.iter();
    let named = records.find(|record| record.name == member::MANIFEST.as_bytes());
    match (named, directory.fault.take()) {
        (Some(record), fault) => {
            directory.fault = fault;
            Ok(Packed::of(record, member::MANIFEST))
        }
        (None, Some(fault @ (Refused::DirectoryBroken | Refused::TooManyMembers { .. }))) => {
            Err(fault)
        }
        (None, _) => Err(Refused::NoManifest),
    }
}

/// The members of a file, folders left out, and their names.
struct Records<'r> {
    list: Vec<(&'r str, &'r Record)>,
    names: Names<'r>,
}

/// Every member with its name, each once.
fn records(of: &[Record], fault: Option<Refused>) -> Result<Records<'_>, Refused> {
    let mut list = Vec::new();
    let gathered = gather(of, &mut list);
    let names: Names<'_> = list.iter().map(|(name, _)| *name).collect();
    // A name met again is told before what is wrong further on.
    match names.twice() {
        Some(name) => Err(Refused::DuplicateName { name }),
        None => match gathered.err().or(fault) {
            Some(fault) => Err(fault),
            None => Ok(Records { list, names }),
        },
    }
}

/// Puts the members into a list, up to the first that is wrong. Folders have no bytes and are passed
/// over.
fn gather<'r>(records: &'r [Record], list: &mut Vec<(&'r str, &'r Record)>) -> Result<(), Refused> {
    for record in records {
        let name = member::name(&record.name)?;
        if !name.ends_with('/') {
            list.push((name, record));
        }
    }
    Ok(())
}

impl Layout {
    /// Brings each member together with what the manifest lists for it.
    pub(super) fn of(directory: Directory, json: &[u8]) -> Result<Self, Refused> {
        let records = records(&directory.records, directory.fault)?;
        let (manifest, list) = manifest::read(json)?;
        let names = manifest::names(&list);
        let mut layout = Self {
            manifest,
            members: Vec::new(),
            warnings: absent(&records, &names)?,
        };
        let in_order = records.names.iter();
        for (name, record) in in_order.filter_map(|(_, at)| records.list.get(*at)) {
            layout.sort(name, record, listed(&list, &names, name))?;
        }
        match layout.members.iter().any(|one| one.kind == Kind::Entries) {
            true => Ok(layout),
            false => Err(missing(ENTRIES)),
        }
    }

    fn sort(&mut self, name: &str, record: &Record, listed: Option<Listed>) -> Result<(), Refused> {
        match (member::kind(name), listed) {
            (Kind::Manifest, _) => {}
            (Kind::Entries, None) => return Err(Refused::EntriesNotListed),
            (_, None) => self.warnings.push(left_out(name, WhyLeftOut::NotListed)),
            (Kind::Unknown, Some(_)) => self.warnings.push(left_out(name, WhyLeftOut::Unknown)),
            (kind, Some(listed)) => self.members.push(Vouched {
                kind,
                packed: Packed::of(record, name),
                listed,
            }),
        }
        Ok(())
    }

    /// Refuses what would be too much all in all, before any of it is unpacked. Where the members lie is known.
    pub(super) fn judge_together(&self) -> Result<(), Refused> {
        let own = self.members.iter().filter(|one| one.kind != Kind::Side);
        let mut members: Vec<_> = own.map(|member| &member.packed).collect();
        let bytes = members
            .iter()
            .fold(0, |sum: u64, member| sum.saturating_add(member.size));
        members.sort_unstable_by_key(|member| (member.range.start, member.range.end));
        match members.windows(2).find_map(overlap) {
            Some(refused) => Err(refused),
            None if bytes > FILE_BYTES => Err(Refused::UnpacksTooLarge { bytes }),
            None => Ok(()),
        }
    }

    /// How many pictures there are.
    pub(super) fn pictures(&self) -> usize {
        let members = self.members.iter();
        members
            .filter(|member| matches!(member.kind, Kind::Picture(_)))
            .count()
    }
}

fn overlap(pair: &[&Packed]) -> Option<Refused> {
    let [first, second] = pair else { return None };
    (first.range.end > second.range.start).then(|| Refused::Overlap {
        name: first.name.clone(),
        other: second.name.clone(),
    })
}

fn listed(list: &List, names: &Names<'_>, name: &str) -> Option<Listed> {
    let (_, listed) = list.get(names.place(name)?)?;
    Some(*listed)
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
