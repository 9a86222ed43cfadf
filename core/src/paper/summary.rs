//! A vehicle in a few words, so that the list of vehicles need not read the whole book. It can always
//! be made again from the entries, so its form may change: a summary of another schema is not read.

use serde::Serialize;

use crate::daybook::tyring::jobs;
use crate::daybook::{Book, Day, Entry, EntryId, Kind, Says, VehicleView};
use crate::diagnosis::{Limit, Standing, look_again, lowest};
use crate::paper::json::Json;
use crate::quantity::circumference::Circumference;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::tyring::cut::Job;
use crate::wheel::{Part, Position, VehicleKind};

/// The form of the text; to be raised with every change of its fields or of how they are worked out.
pub const SCHEMA: u32 = 6;

/// The most bytes of what is written of the whole vehicle that a summary keeps to be searched.
const MOST_ALSO: usize = 600;

/// A vehicle in a few words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Summary {
    /// The entry that began it.
    pub vehicle: EntryId,
    /// Its kind; `None` if its description is not here, not read or struck out.
    pub kind: Option<VehicleKind>,
    /// What it is called; may be empty.
    pub name: String,
    /// How many wheels are described.
    pub wheels: usize,
    /// How many entries belong to it.
    pub entries: usize,
    /// How many of its threads are in dispute.
    pub disputes: usize,
    /// The day its latest entry claims, `2026-11-25`.
    pub last_day: String,
    /// The counter of its latest entry.
    pub last_n: u64,
    /// The lowest standing of its wheels at the latest examination, decided or proposed.
    pub standing: Option<Standing>,
    /// The day by which to look again, if one is set.
    pub look_again: Option<Day>,
    /// Remarks on the vehicle as a whole and where it was examined, to be searched: owner, farm, number.
    pub also: String,
    /// Tyres cut and welded: round before, piece cut out, round after, each in hundredths of a millimetre; the day of the
    /// examination, 20261125; and the wheel, by its place among all. The shop's own loss in a weld is learnt from those of
    /// all vehicles.
    pub jobs: Vec<[u64; 5]>,
    /// Whether it is struck out.
    pub struck: bool,
}

#[derive(Serialize)]
struct PaperSummary<'s> {
    kind: Option<&'static str>,
    name: &'s str,
    wheels: usize,
    entries: usize,
    disputes: usize,
    last_day: &'s str,
    last_n: u64,
    standing: Option<&'static str>,
    look_again: Option<&'s str>,
    also: &'s str,
    jobs: &'s [[u64; 5]],
    struck: bool,
}

impl Summary {
    /// Sums a vehicle up. The book may hold other vehicles too.
    pub fn of(book: &Book, vehicle: EntryId, limits: &[Limit]) -> Summary {
        let view = book.view();
        let of = view.vehicle(vehicle);
        let last = of.last_entry();
        Summary {
            vehicle,
            kind: of.described().map(|described| described.kind),
            name: of
                .described()
                .map(|described| described.name.clone())
                .unwrap_or_default(),
            wheels: of.wheels().len(),
            entries: of.count(),
            disputes: of.disputes().len(),
            last_day: last
                .map(|entry| entry.at.day().to_owned())
                .unwrap_or_default(),
            last_n: last.map_or(0, |entry| entry.n),
            standing: lowest(&of, limits),
            look_again: look_again(&of).cloned(),
            also: also(&of),
            jobs: jobs(&of).iter().map(kept).collect(),
            struck: of.struck(),
        }
    }

    /// The text to keep.
    pub fn write(&self) -> String {
        let paper = PaperSummary {
            kind: self.kind.map(VehicleKind::code),
            name: &self.name,
            wheels: self.wheels,
            entries: self.entries,
            disputes: self.disputes,
            last_day: &self.last_day,
            last_n: self.last_n,
            standing: self.standing.map(Standing::code),
            look_again: self.look_again.as_ref().map(Day::as_str),
            also: &self.also,
            jobs: &self.jobs,
            struck: self.struck,
        };
        // Strings and numbers always write; an empty text would only be made again.
        serde_json::to_string(&paper).unwrap_or_default()
    }

    /// Reads a kept text; `None` if it is of another schema or broken, and so to be made again.
    pub fn read(vehicle: EntryId, schema: u32, text: &str) -> Option<Summary> {
        if schema != SCHEMA {
            return None;
        }
        let kept = Json::read(text).ok()?;
        let text = |field| kept.get(field).and_then(Json::text);
        let whole = |field| kept.get(field).and_then(Json::whole);
        let count = |field| usize::try_from(whole(field)?).ok();
        Some(Summary {
            vehicle,
            kind: text("kind").and_then(VehicleKind::from_code),
            name: text("name")?.to_owned(),
            wheels: count("wheels")?,
            entries: count("entries")?,
            disputes: count("disputes")?,
            last_day: text("last_day")?.to_owned(),
            last_n: whole("last_n")?,
            standing: text("standing").and_then(Standing::from_code),
            look_again: text("look_again").and_then(Day::read),
            also: text("also")?.to_owned(),
            jobs: read_jobs(kept.get("jobs")?)?,
            struck: kept.get("struck") == Some(&Json::Flag(true)),
        })
    }
}

/// A job as it is kept.
fn kept((job, visit, position): &(Job, &Entry, Position)) -> [u64; 5] {
    let hundredths = |length| (to_paper_mm(length) * 100.0).round().max(0.0) as u64;
    let [before, cut, after] = [job.before.0, job.cut, job.after.0].map(hundredths);
    let day = visit.at.day().replace('-', "").parse();
    let wheel = Position::ALL.iter().position(|it| it == position);
    [
        before,
        cut,
        after,
        day.unwrap_or(0),
        wheel.unwrap_or(0) as u64,
    ]
}

fn read_jobs(list: &Json) -> Option<Vec<[u64; 5]>> {
    let Json::List(jobs) = list else {
        return None;
    };
    let read = jobs.iter().map(|job| {
        let Json::List(job) = job else {
            return None;
        };
        let lengths: Option<Vec<u64>> = job.iter().map(Json::whole).collect();
        lengths?.try_into().ok()
    });
    read.collect()
}

impl Summary {
    /// Its jobs as they are reckoned with, each with its day, `2026-11-25`, and its wheel.
    pub fn welded(&self) -> Vec<(Job, String, Position)> {
        let length = |hundredths: u64| millimetres(hundredths as f64 / 100.0);
        let mut all = Vec::new();
        for [before, cut, after, day, wheel] in self.jobs.iter().copied() {
            let job = Job {
                before: Circumference(length(before)),
                cut: length(cut),
                after: Circumference(length(after)),
            };
            let (year, month, day) = (day / 10_000, day / 100 % 100, day % 100);
            let wheel = Position::ALL.get(wheel as usize).copied();
            let day = format!("{year}-{month:02}-{day:02}");
            all.push((job, day, wheel.unwrap_or(Position::Only)));
        }
        all
    }
}

/// What is written of the vehicle as a whole, the latest first, each once.
fn also(of: &VehicleView<'_, '_>) -> String {
    let mut said: Vec<&str> = Vec::new();
    for kind in [Kind::Remark, Kind::Visit] {
        let threads = of.threads(&kind).into_iter().rev();
        let counts = threads.flat_map(|thread| thread.counts());
        let texts = counts
            .filter(|entry| !of.hidden(entry))
            .filter_map(|entry| match &entry.says {
                Says::Remark(Part::Vehicle, text) => Some(text.as_str()),
                Says::Visit(visit) => Some(visit.place.as_str()),
                _ => None,
            });
        for text in texts {
            if !text.is_empty() && !said.contains(&text) {
                said.push(text);
            }
        }
    }
    let mut also = said.join(" ");
    let end = (0..=MOST_ALSO)
        .rev()
        .find(|end| also.is_char_boundary(*end));
    also.truncate(end.unwrap_or(0));
    also
}

#[cfg(test)]
mod tests {
    use super::{MOST_ALSO, SCHEMA, Summary};
    use crate::daybook::tyring::{Ran, TakenWith};
    use crate::daybook::{
        Book, Day, Decision, Digest, Entry, EntryId, Hand, Says, Stamp, Unwritten,
    };
    use crate::daybook::{RoundTaken, TyringSaid, Visit, WheelSaid};
    use crate::diagnosis::Standing;
    use crate::diagnosis::house_limits;
    use crate::paper::line;
    use crate::quantity::length::{millimetres, to_paper_mm};
    use crate::tyring::round::{Line, Run, TapeClass};
    use crate::wheel::{Felloes, Part, Position, Vehicle, VehicleKind, Wheel};

    fn cart() -> Book {
        let says = Says::Vehicle(Vehicle {
            kind: VehicleKind::Cart,
            name: "Hay cart".to_owned(),
        });
        let hand = Hand {
            by: String::new(),
            device: "d1".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
            n: 7,
        };
        let line = line::write(&Unwritten::new(None, says).unwrap(), &hand).unwrap();
        [line::read(&line).unwrap()].into_iter().collect()
    }

    #[test]
    fn a_kept_summary_reads_back() {
        let book = cart();
        let vehicle = book.view().vehicles()[0];
        let summary = Summary::of(&book, vehicle, &house_limits());
        assert_eq!(
            (summary.entries, summary.last_n, summary.last_day.as_str()),
            (1, 7, "2026-11-25")
        );
        assert_eq!(
            Summary::read(vehicle, SCHEMA, &summary.write()),
            Some(summary)
        );
    }

    /// The cart, with these written one after the other; what names an examination names the last.
    fn with(says: Vec<Says>) -> Summary {
        let mut book = cart();
        let vehicle = book.view().vehicles()[0];
        let mut visit: Option<EntryId> = None;
        for (n, says) in (8..).zip(says) {
            let (begins, within) = (
                matches!(says, Says::Visit(_)),
                matches!(says, Says::Decision(_) | Says::Round(_) | Says::Tyring(_)),
            );
            let mut entry = Unwritten::new(Some(vehicle), says).unwrap();
            if let Some(visit) = visit.filter(|_| within) {
                entry = entry.in_visit(visit);
            }
            let hand = Hand {
                by: String::new(),
                device: "d1".to_owned(),
                at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
                n,
            };
            let entry: Entry = line::read(&line::write(&entry, &hand).unwrap()).unwrap();
            visit = if begins { Some(entry.id) } else { visit };
            book.add(entry);
        }
        Summary::of(&book, vehicle, &house_limits())
    }

    fn remark(text: &str) -> Says {
        Says::Remark(Part::Vehicle, text.to_owned())
    }

    #[test]
    fn the_day_to_look_again_and_what_is_written_of_the_whole_are_kept() {
        let position = Position::Near;
        let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
        let look_again = Day::read("2027-05-01");
        let summary = with(vec![
            Says::Wheel(WheelSaid { position, wheel }),
            Says::Visit(Visit {
                place: "Long Barn".to_owned(),
                ..Visit::default()
            }),
            Says::Decision(Decision {
                position,
                standing: Standing::KeepEmpty,
                proposed: Standing::NotJudged,
                reason: String::new(),
                look_again: look_again.clone(),
                signed: "A. Field".to_owned(),
            }),
            remark("Owner: B. Mill"),
            remark("Owner: B. Mill"),
            Says::Remark(
                Part::At(position, crate::wheel::Place::Nave),
                "split".to_owned(),
            ),
        ]);
        assert_eq!(summary.look_again, look_again);
        assert_eq!(summary.also, "Owner: B. Mill Long Barn");
        let kept = Summary::read(summary.vehicle, SCHEMA, &summary.write());
        assert_eq!(kept, Some(summary));
    }

    fn tyre(ran: Ran, mm: f64) -> Says {
        let run = Run {
            turns: 0,
            past: millimetres(mm),
        };
        Says::Round(RoundTaken {
            position: Position::Near,
            ran,
            with: TakenWith::Tape(1, TapeClass::I),
            line: Line::Middle,
            runs: vec![run],
            warm: None,
            hot_weld: false,
            written: String::new(),
        })
    }

    #[test]
    fn a_tyre_that_was_cut_and_welded_is_kept_as_a_job() {
        let position = Position::Near;
        let begun = || {
            let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
            vec![
                Says::Wheel(WheelSaid { position, wheel }),
                Says::Visit(Visit::default()),
            ]
        };
        let cut = |mm| {
            Says::Tyring(TyringSaid {
                cut: Some(millimetres(mm)),
                ..TyringSaid::of(position)
            })
        };
        let (before, after) = (tyre(Ran::Tyre, 4250.0), tyre(Ran::Welded, 4228.25));
        let whole = [before.clone(), cut(12.5), after.clone()];
        let summary = with(begun().into_iter().chain(whole).collect());
        assert_eq!(summary.jobs, [[425_000, 1250, 422_825, 20_261_125, 1]]);
        let (job, day, at) = summary.welded().pop().unwrap();
        assert_eq!((day.as_str(), at), ("2026-11-25", position));
        assert!((to_paper_mm(job.before.0 - job.cut - job.after.0) - 9.25).abs() < 1e-9);
        let kept = Summary::read(summary.vehicle, SCHEMA, &summary.write());
        assert_eq!(kept, Some(summary));
        for part in [vec![before.clone(), cut(12.5)], vec![before, after]] {
            let part = with(begun().into_iter().chain(part).collect());
            assert_eq!(part.jobs, Vec::<[u64; 5]>::new());
        }
    }

    #[test]
    fn what_is_kept_to_be_searched_has_an_end() {
        let long = with(vec![remark(&"ö".repeat(301))]).also;
        assert_eq!(long.len(), MOST_ALSO);
        let odd = with(vec![remark(&format!("x{}", "ö".repeat(301)))]).also;
        assert_eq!(odd.len(), MOST_ALSO - 1);
    }

    #[test]
    fn another_schema_or_a_broken_text_is_made_again() {
        let id = Digest::of(b"x");
        assert_eq!(Summary::read(id, SCHEMA + 1, "{}"), None);
        assert_eq!(Summary::read(id, SCHEMA, "{"), None);
    }
}
