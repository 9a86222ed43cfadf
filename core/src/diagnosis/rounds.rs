//! The rounds of one examination beside the latest before it, and the tyrings in between.

use super::history::{key, work};
use crate::daybook::tyred::{Tyred, entries};
use crate::daybook::tyring::Ran;
use crate::daybook::{Entry, EntryId, Says, VehicleView, Work};
use crate::quantity::Length;
use crate::survey::{Question, Slot};
use crate::tyring::draw::DrawTaken;
use crate::tyring::round::Round;
use crate::wheel::{Place, Position};

/// A round of now beside that of an earlier examination.
#[derive(Clone, Debug, PartialEq)]
pub struct RoundSince<'a> {
    /// What was run along: the sole, or the inside of the tyre.
    pub ran: Ran,
    /// The earlier examination.
    pub then: &'a Entry,
    /// The round now.
    pub now: Round,
    /// How much longer it is now, below nought where it is shorter, and the doubt of that; `None` where another line was
    /// run.
    pub longer: Option<(Length, Length)>,
}

/// What is new of the rounds of a wheel.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rounds<'a> {
    /// Each round that stands beside an earlier one.
    pub since: Vec<RoundSince<'a>>,
    /// What says that it was tyred since the examination that took the earliest of these, or since the last one.
    pub tyred: Vec<&'a Entry>,
}

/// The rounds that this examination took of a wheel, each beside the latest before, and the tyrings since. A tyre that
/// comes in is held beside the one that went out: as welded, where it was.
pub fn rounds_since<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visit: EntryId,
    position: Position,
) -> Rounds<'a> {
    let mut rounds = Rounds::default();
    let visits = vehicle.visits_by_day();
    let Some(at) = visits.iter().position(|it| it.id == visit) else {
        return rounds;
    };
    let (earlier, now) = visits.split_at(at);
    let of = |visit: &Entry| Tyred::of(vehicle, visit.id, position);
    let mine = now.first().and_then(|now| of(now));
    let mut from = at.saturating_sub(1);
    for ran in [Ran::Sole, Ran::Tyre] {
        let Some(round) = mine.as_ref().and_then(|mine| mine.round(ran)) else {
            continue;
        };
        for (at, then) in earlier.iter().enumerate().rev() {
            let was = of(then).and_then(|it| match ran {
                Ran::Sole => it.round(ran),
                _ => it.tyre(),
            });
            if let Some(was) = was {
                from = from.min(at);
                rounds.since.push(beside(ran, round, was, then));
                break;
            }
        }
    }
    let since = earlier.get(from..).unwrap_or_default();
    for then in since {
        if of(then).is_some_and(|it| done(&it)) {
            let told = entries(vehicle, then.id, position);
            rounds.tyred.extend(told.last());
        }
    }
    let on = Slot {
        position,
        place: Place::Whole,
        question: Question::Dish,
    };
    for entry in work(vehicle, on) {
        let after = since.first().is_some_and(|then| key(entry) > key(then));
        let until = now.first().is_some_and(|now| key(entry) < key(now));
        if let Says::Work(it) = &entry.says
            && it.did.contains(&Work::Contracted)
            && after
            && until
        {
            rounds.tyred.push(entry);
        }
    }
    rounds
}

fn beside<'a>(ran: Ran, now: Round, was: Round, then: &'a Entry) -> RoundSince<'a> {
    let longer = DrawTaken::of(&now, &was).ok();
    RoundSince {
        ran,
        then,
        now,
        longer: longer.map(|it| (it.draw.0, it.doubt.to_either_side())),
    }
}

/// Whether the tyre went through the fire: it was welded, it lay, or its round was taken as it lies.
fn done(tyred: &Tyred) -> bool {
    tyred.said.lay.is_some()
        || [Ran::Welded, Ran::Lying]
            .iter()
            .any(|ran| tyred.round(*ran).is_some())
}

#[cfg(test)]
mod tests;
