//! What every cut tells of: one examination of one vehicle, its wheels and what they come to.

use super::super::style::Style;
use super::super::{capital, list, place, standing, term, visit, when};
use super::document::{Block, fact};
use crate::daybook::{Day, Decision, Entry, EntryId, Kind, Says, VehicleView, Visit};
use crate::diagnosis::{
    DecisionRefusal, Judgement, Limit, Standing, carries_people, decisions, examined, set_before,
    standing_at, stands_at,
};
use crate::survey::Use;
use crate::wheel::{Part, Position, Wheel};

/// One wheel as the examination found it.
pub(super) struct Wheeled<'a> {
    pub position: Position,
    pub wheel: &'a Wheel,
    pub judgement: Judgement,
    pub proposed: Standing,
    /// The standing that counts.
    pub standing: Standing,
    /// Every decision that counts, with why it does not stand, if it does not.
    pub decided: Vec<(&'a Entry, &'a Decision, Result<(), DecisionRefusal>)>,
}

impl Wheeled<'_> {
    /// The earliest day to look at it again that a decision sets which stands.
    pub fn look_again(&self) -> Option<&Day> {
        let standing = self.decided.iter().filter(|(_, _, stands)| stands.is_ok());
        standing
            .filter_map(|(_, said, _)| said.look_again.as_ref())
            .min()
    }

    /// What was found so far of a wheel that is not judged.
    pub fn so_far(&self) -> Option<Block> {
        let not_yet = self.standing == Standing::NotJudged;
        let found = self.judgement.so_far().filter(|_| not_yet);
        found.map(|found| Block::Text(standing::so_far(Some(found), true)))
    }
}

/// One examination of one vehicle.
pub(super) struct Case<'v, 'a> {
    pub vehicle: &'v VehicleView<'v, 'a>,
    pub begun: &'a Entry,
    pub wheels: Vec<Wheeled<'a>>,
    /// Wheels that such a vehicle has and that are not described.
    pub absent: Vec<Position>,
    pub people: bool,
    pub style: Style,
    visits: Vec<&'a Entry>,
}

impl<'v, 'a> Case<'v, 'a> {
    pub fn of(
        vehicle: &'v VehicleView<'v, 'a>,
        visit: EntryId,
        limits: &[Limit],
        style: Style,
    ) -> Option<Case<'v, 'a>> {
        let thread = vehicle.visit_thread(visit)?;
        if thread.struck() || vehicle.struck() {
            return None;
        }
        let begun = thread.entries().first().copied()?;
        let people = carries_people(vehicle, visit);
        let wheeled = |(position, wheel)| {
            let judgement = examined(vehicle, visit, position, limits)?;
            let proposed = judgement.proposed();
            let decided = decisions(vehicle, visit, position).into_iter();
            Some(Wheeled {
                position,
                wheel,
                proposed,
                standing: standing_at(vehicle, visit, position, limits)?,
                decided: decided
                    .filter_map(|entry| match &entry.says {
                        Says::Decision(said) => {
                            let stands = stands_at(said, proposed, people, begun.at.day());
                            Some((entry, said, stands))
                        }
                        _ => None,
                    })
                    .collect(),
                judgement,
            })
        };
        let wheels: Vec<_> = vehicle.wheels().into_iter().filter_map(wheeled).collect();
        let expected = vehicle
            .described()
            .map_or(&[] as &[_], |it| it.kind.positions());
        let absent = expected
            .iter()
            .copied()
            .filter(|at| wheels.iter().all(|it| it.position != *at))
            .collect();
        Some(Case {
            vehicle,
            begun,
            wheels,
            absent,
            people,
            style,
            visits: thread.readable(),
        })
    }

    /// The harshest standing of its wheels; a wheel that is not described is not judged.
    pub fn standing(&self) -> Standing {
        let silent = if self.wheels.is_empty() || !self.absent.is_empty() {
            Standing::NotJudged
        } else {
            Standing::NoFaultFound
        };
        let each = self.wheels.iter().map(|it| it.standing);
        each.fold(silent, Standing::max)
    }

    /// What the vehicle is called: its name, or its kind.
    pub fn name(&self) -> String {
        match self.vehicle.described() {
            Some(vehicle) if !vehicle.name.is_empty() => vehicle.name.clone(),
            Some(vehicle) => capital(term::vehicle_kind(vehicle.kind, self.style)),
            None => "A vehicle without its beginning".to_owned(),
        }
    }

    /// What is said of the examination; every side of a dispute.
    pub fn visits(&self) -> impl Iterator<Item = &'a Visit> {
        self.visits.iter().filter_map(|entry| match &entry.says {
            Says::Visit(visit) => Some(visit),
            _ => None,
        })
    }

    /// What it is to be used for: what any side says.
    pub fn uses(&self) -> Option<String> {
        let said = |it: &Use| self.visits().any(|visit| visit.used_for.contains(it));
        let uses = Use::ALL.into_iter().filter(said);
        let uses: Vec<String> = uses.map(|it| visit::used_for(it).to_owned()).collect();
        (!uses.is_empty()).then(|| list(&uses))
    }

    /// What each side says of one thing, or that it was not said.
    pub fn told(&self, of: fn(&Visit) -> &str) -> String {
        let mut said: Vec<&str> = self.visits().map(of).filter(|it| !it.is_empty()).collect();
        said.dedup();
        if said.is_empty() {
            "not said".to_owned()
        } else {
            said.join("; or: ")
        }
    }

    /// What was examined, where, when, by whom and what for.
    pub fn identity(&self) -> Vec<(String, String)> {
        let kind = self.vehicle.described().map(|it| it.kind);
        let kind = kind.map_or("not said", |kind| term::vehicle_kind(kind, self.style));
        let uses = self.uses();
        let uses = uses.unwrap_or_else(|| "not said".to_owned());
        vec![
            fact("Vehicle", format!("{} ({kind})", self.name())),
            fact("Examined on", when::day(&self.begun.at)),
            fact("Place", self.told(|visit| &visit.place)),
            fact("Examined by", self.examiners()),
            fact("To be used for", uses),
        ]
    }

    /// Where each wheel stands and what it is worth, the whole vehicle first.
    pub fn standings(&self) -> Vec<Block> {
        let mut blocks = vec![Block::Standing("The vehicle".to_owned(), self.standing())];
        for it in &self.wheels {
            let at = capital(&place::wheel_at(it.position));
            blocks.push(Block::Standing(at, it.standing));
            blocks.extend(it.so_far());
            if let Some(day) = it.look_again() {
                let said = capital(&when::look_again(day, ""));
                blocks.push(Block::Text(format!("{said}.")));
            }
        }
        for position in &self.absent {
            let at = capital(&place::wheel_at(*position));
            let said = format!("{at}, not described and not examined");
            blocks.push(Block::Standing(said, Standing::NotJudged));
        }
        blocks
    }

    /// Whether every wheel has a signed decision, none of which falls.
    pub fn signed(&self) -> bool {
        let signed = |it: &Wheeled| {
            !it.decided.is_empty() && it.decided.iter().all(|(_, _, stands)| stands.is_ok())
        };
        self.absent.is_empty() && !self.wheels.is_empty() && self.wheels.iter().all(signed)
    }

    /// Whether any wheel is signed for as *no fault found* although faults were found on it.
    pub fn passed(&self) -> bool {
        let over =
            |it: &Wheeled| it.standing == Standing::NoFaultFound && it.judgement.so_far().is_some();
        self.wheels.iter().any(over)
    }

    /// The names signed with, each once.
    pub fn names(&self) -> String {
        let all = self.wheels.iter().flat_map(|it| &it.decided);
        let standing = all.filter(|(_, _, stands)| stands.is_ok());
        let mut names: Vec<String> = Vec::new();
        for (_, said, _) in standing {
            if !names.contains(&said.signed) {
                names.push(said.signed.clone());
            }
        }
        list(&names)
    }

    /// Who examined: the names of those who wrote its readings, else of those who signed, else of who
    /// began it; or that no name was given.
    pub fn examiners(&self) -> String {
        let mut names: Vec<String> = Vec::new();
        for (entry, _) in self.vehicle.readings(self.begun.id) {
            if !entry.by.is_empty() && !names.contains(&entry.by) {
                names.push(entry.by.clone());
            }
        }
        if names.is_empty() && self.begun.by.is_empty() {
            names.push(self.names());
        }
        match list(&names) {
            none if none.is_empty() => when::by(self.begun),
            names => names,
        }
    }

    /// Whose word the standings are.
    pub fn signature(&self) -> String {
        if self.signed() {
            format!("Decided and signed by {}.", self.names())
        } else {
            "Not signed: not every wheel has a decision that stands. What is not decided is proposed by the readings alone.".to_owned()
        }
    }

    /// The earliest day by which any wheel is to be looked at again, with each wheel's own where they
    /// differ; where this examination sets none, the day an earlier one set.
    pub fn look_again(&self) -> Option<String> {
        let here = self
            .wheels
            .iter()
            .filter_map(|it| Some((it, it.look_again()?)));
        let days: Vec<(&Wheeled, &Day)> = here.collect();
        let Some(first) = days.iter().map(|(_, day)| *day).min() else {
            return self.set_before();
        };
        let mut said = when::on(first);
        if days.iter().any(|(_, day)| *day != first) {
            let each = days.iter().map(|(it, day)| {
                let at = place::wheel_at(it.position);
                format!("{at}: {}", when::on(day))
            });
            said.push_str(&format!(" ({})", each.collect::<Vec<_>>().join("; ")));
        }
        Some(said)
    }

    fn set_before(&self) -> Option<String> {
        let each = self.wheels.iter();
        let before = |it: &Wheeled| set_before(self.vehicle, self.begun, it.position);
        let (visit, day) = each.filter_map(before).min_by_key(|(_, day)| *day)?;
        let (on, day) = (when::day(&visit.at), when::on(day));
        Some(format!("set at the examination of {on}: {day}"))
    }

    /// The pictures of the examination, with part, remarks and marks.
    pub fn pictures(&self) -> Vec<Block> {
        let remarks = self.remarks();
        let counts = self.vehicle.of_visit(&Kind::Picture, self.begun.id);
        let entries = counts.into_iter().flat_map(|thread| thread.counts());
        let shown = entries.filter_map(|entry| match &entry.says {
            Says::Picture(said) => Some((said.digest, said.part)),
            _ => None,
        });
        shown
            .map(|(digest, part)| {
                let mut caption = capital(&self.part(part));
                for (_, _, text) in remarks.iter().filter(|(_, of, _)| *of == part) {
                    caption.push_str(&format!(": “{text}”"));
                }
                Block::Picture(digest, caption, self.vehicle.marks(digest))
            })
            .collect()
    }

    /// The remarks of the examination that count.
    pub fn remarks(&self) -> Vec<(&'a Entry, Part, &'a str)> {
        let threads = self.vehicle.of_visit(&Kind::Remark, self.begun.id);
        let entries = threads.into_iter().flat_map(|thread| thread.counts());
        entries
            .filter_map(|entry| match &entry.says {
                Says::Remark(part, text) => Some((entry, *part, text.as_str())),
                _ => None,
            })
            .collect()
    }

    /// A part of this vehicle in words.
    pub fn part(&self, part: Part) -> String {
        let wheel = part.position().and_then(|at| self.vehicle.wheel(at));
        place::part(part, wheel.map(|(wheel, _)| wheel), self.style)
    }
}
