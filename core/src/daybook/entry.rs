//! One entry: what it says, about which slot of which vehicle, and what it replaces.

use super::decision::Decision;
use super::digest::Digest;
use super::marks::Marks;
use super::report::Report;
use super::same_as::SameAs;
use super::stamp::Stamp;
use super::threshold::LimitSaid;
use super::tyring::{RoundTaken, TyringSaid};
use super::work::WorkDone;
use crate::survey::{Reading, SafeToLift, Stage, Use};
use crate::wheel::{Part, Position, Vehicle, Wheel};

/// The name of an entry: the SHA-256 of its line.
pub type EntryId = Digest;

/// The greatest counter a line may claim, so that no line can leave a book without a next number.
pub const GREATEST_N: u64 = 1_000_000_000_000;

/// The most entries one entry may replace.
pub const MOST_REPLACED: usize = 64;

/// What sort of thing an entry says.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A vehicle is begun, or its description corrected.
    Vehicle,
    /// One wheel is described.
    Wheel,
    /// An examination is begun, or what is said of it corrected.
    Visit,
    /// A question is answered.
    Reading,
    /// A remark on a part.
    Remark,
    /// A picture of a part.
    Picture,
    /// A picture's bytes are to go.
    Erasure,
    /// What is drawn over a picture.
    Marks,
    /// The examiner decides what a wheel may be used for, and signs it.
    Decision,
    /// The shop sets one of its limits.
    Limit,
    /// Work is done on a part.
    Work,
    /// A report is handed over.
    Report,
    /// A round is taken of wheel or tyre.
    Round,
    /// What a tyre is shrunk on by is chosen.
    Tyring,
    /// Two descriptions are of one vehicle.
    SameAs,
    /// A kind this version does not know, kept as it came.
    Unknown(String),
}

impl Kind {
    const KNOWN: [Kind; 15] = [
        Kind::Vehicle,
        Kind::Wheel,
        Kind::Visit,
        Kind::Reading,
        Kind::Remark,
        Kind::Picture,
        Kind::Erasure,
        Kind::Marks,
        Kind::Decision,
        Kind::Limit,
        Kind::Work,
        Kind::Report,
        Kind::Round,
        Kind::Tyring,
        Kind::SameAs,
    ];

    /// The word that stands for this kind on paper.
    pub fn code(&self) -> &str {
        match self {
            Kind::Vehicle => "vehicle",
            Kind::Wheel => "wheel",
            Kind::Visit => "visit",
            Kind::Reading => "reading",
            Kind::Remark => "remark",
            Kind::Picture => "picture",
            Kind::Erasure => "erasure",
            Kind::Marks => "marks",
            Kind::Decision => "decision",
            Kind::Limit => "limit",
            Kind::Work => "work",
            Kind::Report => "report",
            Kind::Round => "round",
            Kind::Tyring => "tyring",
            Kind::SameAs => "same-as",
            Kind::Unknown(code) => code,
        }
    }

    /// The kind a word stands for.
    pub fn from_code(code: &str) -> Kind {
        Kind::KNOWN
            .into_iter()
            .find(|kind| kind.code() == code)
            .unwrap_or_else(|| Kind::Unknown(code.to_owned()))
    }

    /// Whether a slot of this kind has one thread only, however its entries are joined: a
    /// description is one thing, and so are a limit, what one examination decides of a wheel and for its tyre, a round
    /// that it takes, what is drawn over a picture, and whether two vehicles are one. Of readings, remarks and pictures all
    /// stand beside each other.
    pub fn one_thread_a_slot(&self) -> bool {
        matches!(
            self,
            Kind::Vehicle
                | Kind::Wheel
                | Kind::Limit
                | Kind::Decision
                | Kind::Round
                | Kind::Tyring
                | Kind::Marks
                | Kind::SameAs
        )
    }
}

/// What an entry belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// The whole house: its limits and its habits.
    House,
    /// The vehicle that the entry of this id began.
    Vehicle(EntryId),
}

/// One wheel's description and where the wheel stands.
#[derive(Clone, Debug, PartialEq)]
pub struct WheelSaid {
    /// Where it stands.
    pub position: Position,
    /// As it is built.
    pub wheel: Wheel,
}

/// One examination.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Visit {
    /// Where it was held; empty if not said.
    pub place: String,
    /// What the vehicle is to be used for, in the order of [`Use::ALL`]; empty if not said.
    pub used_for: Vec<Use>,
    /// How far the wheel was taken apart. A reading is taken at the stage of the very entry it names
    /// as its examination, so that a later stage of the same examination leaves it as it was.
    pub stage: Stage,
    /// Whether the vehicle is safe to lift; `None` if not said.
    pub safe_to_lift: Option<SafeToLift>,
    /// Light, weather, what was in the way; empty if not said.
    pub conditions: String,
}

/// A picture of a part; its bytes are stored apart under their digest.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// The part it shows.
    pub part: Part,
    /// Digest of the JPEG's bytes.
    pub digest: Digest,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// Length of the JPEG in bytes.
    pub bytes: u32,
}

/// What an entry says.
#[derive(Clone, Debug, PartialEq)]
pub enum Says {
    /// The vehicle as a whole.
    Vehicle(Vehicle),
    /// One wheel.
    Wheel(WheelSaid),
    /// An examination.
    Visit(Visit),
    /// An answer.
    Reading(Reading),
    /// A remark on a part, in the examiner's words.
    Remark(Part, String),
    /// A picture of a part.
    Picture(Picture),
    /// The bytes of this digest are to go.
    Erasure(Digest),
    /// What is drawn over a picture.
    Marks(Marks),
    /// A signed standing.
    Decision(Decision),
    /// The shop's own value for one limit.
    Limit(LimitSaid),
    /// Work done on a part.
    Work(WorkDone),
    /// A report handed over.
    Report(Report),
    /// A round taken.
    Round(RoundTaken),
    /// What is chosen for a tyring.
    Tyring(TyringSaid),
    /// Two descriptions are of one vehicle.
    SameAs(SameAs),
    /// What it replaces is struck out.
    Struck,
    /// Written by a newer Cartside: kept, counted, not read.
    Unread,
}

/// One entry of the day book, read from its line.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Digest of its line.
    pub id: EntryId,
    /// What sort of thing it says.
    pub kind: Kind,
    /// The entry that began its vehicle; `None` in that entry itself.
    pub vehicle: Option<EntryId>,
    /// The examination it belongs to, if it belongs to one.
    pub visit: Option<EntryId>,
    /// The description it was judged against when it was written, if it names one.
    pub described_by: Option<EntryId>,
    /// Part and field it is about, as written.
    pub slot: String,
    /// What it says.
    pub says: Says,
    /// Who says it; empty if not said.
    pub by: String,
    /// The device it was written on.
    pub device: String,
    /// The wall time that device claimed.
    pub at: Stamp,
    /// One more than the greatest counter in the book it was written into.
    pub n: u64,
    /// The entries it replaces.
    pub replaces: Vec<EntryId>,
    /// How many fields of its line this version does not know.
    pub unread_fields: u16,
}

impl Entry {
    /// What it belongs to: a vehicle, or the house.
    pub fn subject(&self) -> Subject {
        match self.vehicle {
            Some(vehicle) => Subject::Vehicle(vehicle),
            None if self.kind == Kind::Vehicle => Subject::Vehicle(self.id),
            None => Subject::House,
        }
    }

    /// The examination that parts its slot from the same slot of another, where one does: what is
    /// decided rests on its own examination only, and so do rounds and what is chosen for a tyring.
    pub(super) fn within(&self) -> Option<EntryId> {
        let apart = matches!(self.kind, Kind::Decision | Kind::Round | Kind::Tyring);
        self.visit.filter(|_| apart)
    }

    /// Whether it begins a vehicle.
    pub fn begins_vehicle(&self) -> bool {
        self.kind == Kind::Vehicle && self.vehicle.is_none()
    }

    /// Whether it strikes out what it replaces.
    pub fn strikes(&self) -> bool {
        self.says == Says::Struck
    }

    /// The digest of the picture it speaks of, if it speaks of one.
    pub fn pictured(&self) -> Option<Digest> {
        match &self.says {
            Says::Picture(picture) => Some(picture.digest),
            _ => None,
        }
    }

    /// Its place in the order in which entries are shown: counter, then id.
    pub fn order(&self) -> (u64, EntryId) {
        (self.n, self.id)
    }

    /// Whether this version can read what it says.
    pub fn is_read(&self) -> bool {
        self.says != Says::Unread
    }

    /// Whether it says the same as another of its thread, whoever said it, when and in which
    /// words. What cannot be read agrees with nothing.
    pub fn agrees_with(&self, other: &Entry) -> bool {
        match (&self.says, &other.says) {
            (Says::Unread, _) | (_, Says::Unread) => false,
            (Says::Reading(one), Says::Reading(two)) => {
                (one.slot, one.answer, self.visit) == (two.slot, two.answer, other.visit)
            }
            (Says::Remark(..) | Says::Picture(_) | Says::Work(_) | Says::Report(_), _) => {
                self.says == other.says && self.visit == other.visit
            }
            (Says::Decision(one), Says::Decision(two)) => {
                (one.standing, &one.look_again) == (two.standing, &two.look_again)
            }
            (Says::Round(one), Says::Round(two)) => one.agrees_with(two),
            (one, two) => one == two,
        }
    }
}
