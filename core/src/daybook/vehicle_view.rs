//! One vehicle's part of a book: its wheels, examinations and readings as they count. What is struck
//! out hides what belongs to it.

use super::digest::Digest;
use super::digests::Digests;
use super::entry::{Entry, EntryId, Kind, Says, Subject, Visit};
use super::marks::Mark;
use super::order;
use super::thread::Thread;
use super::tyring::{Ran, RoundTaken, TyringSaid};
use super::view::View;
use crate::survey::{Reading, Stage};
use crate::wheel::{Position, Vehicle, Wheel};

/// The slot of what is said of a vehicle as a whole.
const VEHICLE: &str = "vehicle";

/// One vehicle's part of a book as it reads.
#[derive(Clone, Copy, Debug)]
pub struct VehicleView<'v, 'a> {
    view: &'v View<'a>,
    id: EntryId,
}

impl<'v, 'a> VehicleView<'v, 'a> {
    pub(super) fn new(view: &'v View<'a>, id: EntryId) -> VehicleView<'v, 'a> {
        VehicleView { view, id }
    }

    /// The entry that began the vehicle; of several that are one the smallest id.
    pub fn id(&self) -> EntryId {
        self.id
    }

    /// The threads of one kind, earliest first; those struck out or hidden are among them.
    pub fn threads(&self, kind: &Kind) -> Vec<&'v Thread<'a>> {
        earliest_first(self.of_kind(kind).collect())
    }

    fn of_kind(&self, kind: &Kind) -> impl Iterator<Item = &'v Thread<'a>> {
        self.view.of_kind(self.subject(), kind)
    }

    fn subject(&self) -> Subject {
        Subject::Vehicle(self.id)
    }

    /// The threads of one kind of which a head names one of these, earliest first.
    fn naming(&self, kind: &Kind, ids: &Ids) -> Vec<&'v Thread<'a>> {
        let named = |id: &EntryId| self.view.naming(*id, (self.subject(), kind));
        earliest_first(ids.0.iter().flat_map(named).collect())
    }

    /// The one thread of this kind and slot; of descriptions there is only one.
    fn thread(&self, kind: &Kind, slot: &str) -> Option<&'v Thread<'a>> {
        self.of_kind(kind)
            .find(|thread| of_slot(thread, slot) && !thread.void())
    }

    /// Every entry of the vehicle, earliest first.
    pub fn entries(&self) -> Vec<&'a Entry> {
        let threads = self.view.threads_of(self.subject());
        let mut entries: Vec<&'a Entry> = threads
            .flat_map(|thread| thread.entries().iter().copied())
            .collect();
        order::sort(&mut entries, &order::shown);
        entries
    }

    /// How many entries belong to the vehicle.
    pub fn count(&self) -> usize {
        let threads = self.view.threads_of(self.subject());
        threads.map(|thread| thread.entries().len()).sum()
    }

    /// The latest of its entries, by counter.
    pub fn last_entry(&self) -> Option<&'a Entry> {
        let threads = self.view.threads_of(self.subject());
        let entries = threads.filter_map(|thread| thread.entries().last().copied());
        entries.max_by_key(|entry| entry.order())
    }

    /// The thread that describes the vehicle as a whole.
    pub fn description(&self) -> Option<&'v Thread<'a>> {
        self.thread(&Kind::Vehicle, VEHICLE)
    }

    /// What is said of the vehicle as a whole; in a dispute the side written first. `None` if it is
    /// struck out.
    pub fn described(&self) -> Option<&'a Vehicle> {
        self.description()?
            .readable()
            .into_iter()
            .find_map(|entry| match &entry.says {
                Says::Vehicle(vehicle) => Some(vehicle),
                _ => None,
            })
    }

    /// Whether the vehicle as a whole is struck out; all that belongs to it is then hidden.
    pub fn struck(&self) -> bool {
        self.description().is_some_and(Thread::struck)
    }

    /// The thread that describes the wheel at this position, struck out or not.
    pub fn wheel_thread(&self, position: Position) -> Option<&'v Thread<'a>> {
        self.thread(&Kind::Wheel, position.code())
    }

    /// The wheel at this position and the entry that describes it; in a dispute the side with the
    /// most parts, so that no reading falls out of sight. `None` if it is struck out.
    pub fn wheel(&self, position: Position) -> Option<(&'a Wheel, EntryId)> {
        wheel_of(self.wheel_thread(position)?)
    }

    /// The wheels that are described and neither struck out nor hidden, in the order they are
    /// walked round.
    pub fn wheels(&self) -> Vec<(Position, &'a Wheel)> {
        if self.struck() {
            return Vec::new();
        }
        Position::ALL
            .into_iter()
            .filter_map(|position| Some((position, self.wheel(position)?.0)))
            .collect()
    }

    /// The thread of an examination, by the id of any of its entries.
    pub fn visit_thread(&self, id: EntryId) -> Option<&'v Thread<'a>> {
        self.of_kind(&Kind::Visit).find(|thread| thread.has(id))
    }

    /// The examinations that are neither struck out nor hidden, earliest first, each by its first
    /// entry.
    pub fn visits(&self) -> Vec<&'a Entry> {
        if self.struck() {
            return Vec::new();
        }
        self.threads(&Kind::Visit)
            .into_iter()
            .filter(|thread| !thread.struck())
            .filter_map(|thread| thread.entries().first().copied())
            .collect()
    }

    /// The same examinations by the day they claim: books of two devices have counters of their own, and a history
    /// goes by the calendar.
    pub fn visits_by_day(&self) -> Vec<&'a Entry> {
        let mut visits = self.visits();
        order::sort(&mut visits, &order::by_day);
        visits
    }

    /// What is said of an examination now, and by which entry; in a dispute the side written first.
    /// `None` if it is struck out.
    pub fn visit(&self, id: EntryId) -> Option<(&'a Visit, EntryId)> {
        let said = self.visit_thread(id)?.readable();
        said.into_iter().find_map(|entry| match &entry.says {
            Says::Visit(visit) => Some((visit, entry.id)),
            _ => None,
        })
    }

    /// The entries that say this stage of an examination: what names one of them was taken at it.
    pub fn said_at(&self, visit: EntryId, stage: Stage) -> Digests {
        let thread = self.visit_thread(visit);
        let entries = thread.map(Thread::entries).unwrap_or_default();
        let here = entries.iter().filter(|entry| match &entry.says {
            Says::Visit(said) => said.stage == stage,
            _ => false,
        });
        here.map(|entry| entry.id).collect()
    }

    /// Whether an entry is hidden because its vehicle or its examination is struck out, or because it marks a
    /// picture that is struck out or erased.
    pub fn hidden(&self, entry: &Entry) -> bool {
        self.struck()
            || entry
                .visit
                .and_then(|visit| self.visit_thread(visit))
                .is_some_and(Thread::struck)
            || (entry.kind == Kind::Marks
                && Digest::from_hex(&entry.slot).is_some_and(|it| self.picture_gone(it)))
    }

    /// Whether a picture is erased, or each entry that speaks of it here is struck out.
    fn picture_gone(&self, picture: Digest) -> bool {
        let speaks = |thread: &&Thread<'_>| {
            let mut entries = thread.entries().iter();
            entries.any(|entry| entry.pictured() == Some(picture))
        };
        let threads = self.threads(&Kind::Picture);
        let mut threads = threads.into_iter().filter(speaks).peekable();
        let struck = threads.peek().is_some() && threads.all(Thread::struck);
        struck || self.view.erased().contains(&picture)
    }

    /// The thread of what is drawn over a picture.
    pub fn marks_thread(&self, picture: Digest) -> Option<&'v Thread<'a>> {
        self.thread(&Kind::Marks, &picture.hex())
    }

    /// What is drawn over a picture; in a dispute all that any side draws. Nothing over one that is struck out or
    /// erased.
    pub fn marks(&self, picture: Digest) -> Vec<Mark> {
        let thread = self.marks_thread(picture);
        let heads = thread.map(Thread::readable).unwrap_or_default();
        let shown = heads.into_iter().filter(|head| !self.hidden(head));
        let mut all: Vec<Mark> = Vec::new();
        for head in shown {
            if let Says::Marks(marks) = &head.says {
                let more = marks.all.iter().filter(|mark| !all.contains(mark));
                let more: Vec<Mark> = more.cloned().collect();
                all.extend(more);
            }
        }
        all
    }

    /// The threads of one kind of which something that counts belongs to this examination. Empty if
    /// the examination or the vehicle is struck out.
    pub fn of_visit(&self, kind: &Kind, visit: EntryId) -> Vec<&'v Thread<'a>> {
        let visit = Ids::of(self, visit);
        let mut threads = self.naming(kind, &visit);
        threads.retain(|thread| thread.counts().iter().any(|entry| visit.holds(entry)));
        threads
    }

    /// The readings of one examination that count, each with its entry; of a disputed one every
    /// side.
    pub fn readings(&self, visit: EntryId) -> Vec<(&'a Entry, &'a Reading)> {
        let ids = Ids::of(self, visit);
        self.naming(&Kind::Reading, &ids)
            .into_iter()
            .flat_map(Thread::counts)
            .filter(|entry| ids.holds(entry))
            .filter_map(|entry| match &entry.says {
                Says::Reading(reading) => Some((entry, reading)),
                _ => None,
            })
            .collect()
    }

    /// The thread of this kind and slot within one examination, for kinds of which a slot has one in each.
    pub fn thread_in(&self, kind: &Kind, visit: EntryId, slot: &str) -> Option<&'v Thread<'a>> {
        let threads = self.of_visit(kind, visit);
        threads.into_iter().find(|thread| of_slot(thread, slot))
    }

    /// A round that one examination took of this wheel; in a dispute the side written first.
    pub fn round(&self, visit: EntryId, position: Position, ran: Ran) -> Option<&'a RoundTaken> {
        match &self.round_entry(visit, position, ran)?.says {
            Says::Round(round) => Some(round),
            _ => None,
        }
    }

    /// The entry of such a round.
    pub fn round_entry(&self, visit: EntryId, position: Position, ran: Ran) -> Option<&'a Entry> {
        self.said_first(&Kind::Round, visit, &RoundTaken::slot_of(position, ran))
    }

    /// What one examination chose for the tyring of this wheel; in a dispute the side written first.
    pub fn tyring(&self, visit: EntryId, position: Position) -> Option<&'a TyringSaid> {
        match &self.tyring_entry(visit, position)?.says {
            Says::Tyring(said) => Some(said),
            _ => None,
        }
    }

    /// The entry of such a choice.
    pub fn tyring_entry(&self, visit: EntryId, position: Position) -> Option<&'a Entry> {
        self.said_first(&Kind::Tyring, visit, &TyringSaid::slot(position))
    }

    fn said_first(&self, kind: &Kind, visit: EntryId, slot: &str) -> Option<&'a Entry> {
        let thread = self.thread_in(kind, visit, slot)?;
        thread.readable().into_iter().find(|entry| !entry.strikes())
    }

    /// The threads whose heads differ, but for those that are hidden and those of which this
    /// version can read no side.
    pub fn disputes(&self) -> Vec<&'v Thread<'a>> {
        let open = |thread: &&Thread<'a>| {
            let heads = thread.heads();
            thread.disputed()
                && heads.iter().any(|head| head.is_read())
                && !heads.iter().all(|head| self.hidden(head))
        };
        self.view.threads_of(self.subject()).filter(open).collect()
    }
}

/// The ids by which an examination that is not struck out or hidden is named.
struct Ids(Digests);

impl Ids {
    fn of(vehicle: &VehicleView<'_, '_>, visit: EntryId) -> Ids {
        let thread = vehicle
            .visit_thread(visit)
            .filter(|thread| !thread.struck() && !vehicle.struck());
        Ids(thread.into_iter().flat_map(Thread::ids).collect())
    }

    fn holds(&self, entry: &Entry) -> bool {
        entry.visit.is_some_and(|visit| self.0.contains(&visit))
    }
}

/// Each once, by its first entry.
fn earliest_first<'v, 'a>(mut threads: Vec<&'v Thread<'a>>) -> Vec<&'v Thread<'a>> {
    let first = |thread: &&Thread<'a>| thread.entries().first().map(|entry| entry.order());
    threads.sort_by_key(first);
    threads.dedup_by_key(|thread| first(thread));
    threads
}

fn of_slot(thread: &Thread<'_>, slot: &str) -> bool {
    let first = thread.entries().first();
    first.is_some_and(|entry| entry.slot == slot)
}

fn wheel_of<'a>(thread: &Thread<'a>) -> Option<(&'a Wheel, EntryId)> {
    let mut best: Option<(&'a Wheel, EntryId)> = None;
    for entry in thread.readable() {
        if let Says::Wheel(said) = &entry.says
            && best.is_none_or(|(wheel, _)| parts(&said.wheel) > parts(wheel))
        {
            best = Some((&said.wheel, entry.id));
        }
    }
    best
}

fn parts(wheel: &Wheel) -> (u16, u16) {
    (wheel.felloes.spokes(), wheel.felloes.felloes())
}
