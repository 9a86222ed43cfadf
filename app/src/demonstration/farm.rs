//! What stands in the demonstration: a hay cart that was examined wheel by wheel, with a remark and a dispute, and a
//! waggon that was only begun. Farm, people and readings are invented.

use cartside_core::daybook::{
    Day, Decision, Digest, EntryId, Picture, Says, Unwritten, Visit, WheelSaid,
};
use cartside_core::quantity::Measured;
use cartside_core::quantity::length::millimetres;
use cartside_core::survey::{Answer, Play, Question, Reading, Ring, Slot, Standing, Use};
use cartside_core::wheel::{
    Arm, Felloes, Keeper, Part, Place, Position, Rim, Size, Sizes, Tyre, Vehicle, VehicleKind,
    Wheel,
};

use crate::clock;
use crate::photo;
use crate::scribe::Scribe;
use crate::storage::NewPicture;

const WHEELWRIGHT: &str = "Wheelwright (invented)";
const APPRENTICE: &str = "Apprentice (invented)";
const UNSOUND: &str = "The demonstration could not be written. Your own book is untouched.";

/// One examination of one wheel: what each reading names.
struct At {
    vehicle: EntryId,
    visit: EntryId,
    wheel: EntryId,
    position: Position,
}

/// The whole demonstration, written by this scribe.
pub(super) fn written(
    mut scribe: Scribe,
    picture: Option<&photo::Picture>,
) -> Result<Scribe, String> {
    scribe.by = WHEELWRIGHT.to_owned();
    waggon(&mut scribe)?;
    hay_cart(&mut scribe, picture)?;
    Ok(scribe)
}

fn hay_cart(scribe: &mut Scribe, picture: Option<&photo::Picture>) -> Result<(), String> {
    let cart = begin(scribe, VehicleKind::Cart, "Hay cart, Quillet Farm")?;
    let near = wheel(scribe, cart, Position::Near, (12, 6))?;
    let off = wheel(scribe, cart, Position::Off, (12, 6))?;
    let visit = examine(scribe, cart, "the cart shed, Quillet Farm")?;
    let at = |wheel, position| At {
        vehicle: cart,
        visit,
        wheel,
        position,
    };
    sound(scribe, &at(off, Position::Off))?;
    the_rest(scribe, &at(off, Position::Off))?;
    decided(scribe, &at(off, Position::Off))?;
    worn(scribe, &at(near, Position::Near))?;
    let spoke = Part::At(Position::Near, Place::Spoke(3));
    let remark = Says::Remark(
        spoke,
        "Foot moves when the rim is rocked; a crack runs up from the nave, a hand long.".to_owned(),
    );
    write(scribe, new(Some(cart), remark)?.in_visit(visit))?;
    if let Some(picture) = picture {
        let entry = new(Some(cart), pictured(scribe, spoke, picture))?;
        write(scribe, entry.in_visit(visit))?;
    }
    disputed(scribe, &at(near, Position::Near))
}

/// Hands the picture over to be kept, and what is to be said of it.
fn pictured(scribe: &mut Scribe, part: Part, picture: &photo::Picture) -> Says {
    let bytes = picture.bytes.to_vec();
    let digest = Digest::of(&bytes);
    scribe.pictures.push(NewPicture {
        digest: digest.hex(),
        bytes: picture.bytes.clone(),
        thumbnail: picture.thumbnail.clone(),
        width: picture.width,
        height: picture.height,
    });
    Says::Picture(Picture {
        part,
        digest,
        width: picture.width,
        height: picture.height,
        bytes: picture.bytes.length(),
    })
}

fn waggon(scribe: &mut Scribe) -> Result<(), String> {
    let waggon = begin(scribe, VehicleKind::Waggon, "Harvest waggon, Quillet Farm")?;
    for (position, spokes) in [
        (Position::NearFore, (12, 6)),
        (Position::OffFore, (12, 6)),
        (Position::NearHind, (14, 7)),
        (Position::OffHind, (14, 7)),
    ] {
        wheel(scribe, waggon, position, spokes)?;
    }
    let visit = examine(scribe, waggon, "the stack yard, Quillet Farm")?;
    let remark = Says::Remark(
        Part::Vehicle,
        "Stood out two winters. Wheels to be looked at when it can be lifted.".to_owned(),
    );
    write(scribe, new(Some(waggon), remark)?.in_visit(visit))?;
    Ok(())
}

fn begin(scribe: &mut Scribe, kind: VehicleKind, name: &str) -> Result<EntryId, String> {
    let says = Says::Vehicle(Vehicle {
        kind,
        name: name.to_owned(),
    });
    write(scribe, new(None, says)?)
}

fn wheel(
    scribe: &mut Scribe,
    vehicle: EntryId,
    position: Position,
    (spokes, felloes): (u16, u16),
) -> Result<EntryId, String> {
    let felloes = Felloes::even(spokes, felloes).map_err(|refusal| refusal.to_string())?;
    let wheel = Wheel {
        rim: Some(Rim::Sawn),
        tyre: Some(Tyre::Hoop),
        arm: Some(Arm::Iron),
        keeper: Some(Keeper::LinchPin),
        sizes: Sizes::default()
            .with(Size::Height, Some(millimetres(1370.0)))
            .with(Size::Dish, Some(millimetres(48.0)))
            .with(Size::TyreWidth, Some(millimetres(60.0)))
            .with(Size::TyreThickness, Some(millimetres(16.0)))
            .with(Size::FelloeDepth, Some(millimetres(85.0)))
            .with(Size::SpokeDepth, Some(millimetres(64.0))),
        ..Wheel::of(felloes)
    };
    let said = Says::Wheel(WheelSaid { position, wheel });
    write(scribe, new(Some(vehicle), said)?)
}

fn examine(scribe: &mut Scribe, vehicle: EntryId, place: &str) -> Result<EntryId, String> {
    let visit = Says::Visit(Visit {
        place: place.to_owned(),
        used_for: vec![Use::Goods],
        conditions: "Dry, good light from the door".to_owned(),
        ..Visit::default()
    });
    write(scribe, new(Some(vehicle), visit)?)
}

/// A wheel on which nothing was found.
fn sound(scribe: &mut Scribe, at: &At) -> Result<(), String> {
    keeper(scribe, at)?;
    for between in [1, 4, 7, 10] {
        answer(
            scribe,
            at,
            Question::TyreGap,
            Place::Between(between),
            gap(0.0)?,
        )?;
    }
    joints_and_spokes(scribe, at, &[], &[])
}

/// What else must be looked at before a wheel is judged: sound in everything.
fn the_rest(scribe: &mut Scribe, at: &At) -> Result<(), String> {
    for between in [1, 4, 7, 10] {
        let place = Place::Between(between);
        answer(
            scribe,
            at,
            Question::TyreRing,
            place,
            Answer::Ring(Ring::Rings),
        )?;
    }
    for felloe in 1..=6 {
        let place = Place::Felloe(felloe);
        answer(scribe, at, Question::RotFelloe, place, Answer::NothingFound)?;
    }
    for spoke in 1..=12 {
        let place = Place::Spoke(spoke);
        answer(scribe, at, Question::RotSpoke, place, Answer::NothingFound)?;
    }
    let tight = Answer::Play(Play::Tight);
    for (question, found) in [
        (Question::Bonds, tight),
        (Question::CrackNave, Answer::NothingFound),
        (Question::RotNave, Answer::NothingFound),
    ] {
        answer(scribe, at, question, Place::Nave, found)?;
    }
    for (question, size) in [
        (Question::Dish, 46.0),
        (Question::EndPlay, 8.0),
        (Question::Shake, 4.0),
    ] {
        answer(scribe, at, question, Place::Whole, gap(size)?)?;
    }
    Ok(())
}

/// What is signed for the sound wheel, to be looked at again in half a year.
fn decided(scribe: &mut Scribe, at: &At) -> Result<(), String> {
    let today = clock::now();
    let today = today.get(..10).and_then(Day::read);
    let says = Says::Decision(Decision {
        position: at.position,
        standing: Standing::NoFaultFound,
        proposed: Standing::NoFaultFound,
        reason: String::new(),
        look_again: today.map(|today| today.months_later(6)),
        signed: WHEELWRIGHT.to_owned(),
    });
    let entry = new(Some(at.vehicle), says)?;
    write(scribe, entry.in_visit(at.visit)).map(drop)
}

/// A wheel that has dried out: gaps under the tyre, open joints, one spoke loose at its foot.
fn worn(scribe: &mut Scribe, at: &At) -> Result<(), String> {
    keeper(scribe, at)?;
    for (between, wide) in [(1, 0.5), (4, 1.0), (7, 0.5), (10, 0.25)] {
        answer(
            scribe,
            at,
            Question::TyreGap,
            Place::Between(between),
            gap(wide)?,
        )?;
    }
    joints_and_spokes(scribe, at, &[(2, 1.0), (3, 0.5)], &[3])
}

fn keeper(scribe: &mut Scribe, at: &At) -> Result<(), String> {
    for question in [
        Question::KeeperPresent,
        Question::KeeperRight,
        Question::KeeperSecured,
    ] {
        answer(scribe, at, question, Place::Whole, Answer::Yes)?;
    }
    answer(scribe, at, Question::TyreShifts, Place::Whole, Answer::No)
}

/// Every joint shut but those of the list, every spoke whole and tight but the loose ones.
fn joints_and_spokes(
    scribe: &mut Scribe,
    at: &At,
    open: &[(u16, f64)],
    loose: &[u16],
) -> Result<(), String> {
    for joint in 1..=6 {
        let wide = open.iter().find(|(of, _)| *of == joint);
        let wide = wide.map_or(0.0, |(_, wide)| *wide);
        answer(
            scribe,
            at,
            Question::JointGap,
            Place::Joint(joint),
            gap(wide)?,
        )?;
    }
    for spoke in 1..=12 {
        let play = if loose.contains(&spoke) {
            Play::Loose
        } else {
            Play::Tight
        };
        let place = Place::Spoke(spoke);
        answer(scribe, at, Question::SpokeFoot, place, Answer::Play(play))?;
        answer(
            scribe,
            at,
            Question::SpokeRimEnd,
            place,
            Answer::Play(Play::Tight),
        )?;
        answer(scribe, at, Question::SpokeBroken, place, Answer::No)?;
    }
    Ok(())
}

/// Two people correct the same reading, and neither knows of the other.
fn disputed(scribe: &mut Scribe, at: &At) -> Result<(), String> {
    let place = Place::Joint(5);
    let slot = |wide| reading(at, Question::JointGap, place, gap(wide)?);
    let joint = Slot {
        position: at.position,
        place,
        question: Question::JointGap,
    };
    let first = scribe
        .entries
        .iter()
        .find(|entry| entry.slot == joint.code())
        .map(|entry| entry.id)
        .ok_or(UNSOUND)?;
    write(scribe, slot(2.0)?.replacing(vec![first]))?;
    scribe.by = APPRENTICE.to_owned();
    write(scribe, slot(1.0)?.replacing(vec![first]))?;
    scribe.by = WHEELWRIGHT.to_owned();
    Ok(())
}

fn answer(
    scribe: &mut Scribe,
    at: &At,
    question: Question,
    place: Place,
    answer: Answer,
) -> Result<(), String> {
    let entry = reading(at, question, place, answer)?;
    write(scribe, entry).map(drop)
}

fn reading(at: &At, question: Question, place: Place, answer: Answer) -> Result<Unwritten, String> {
    let slot = Slot {
        position: at.position,
        place,
        question,
    };
    let says = Says::Reading(Reading {
        slot,
        answer,
        written: String::new(),
    });
    let entry = new(Some(at.vehicle), says)?;
    Ok(entry.in_visit(at.visit).described_by(at.wheel))
}

/// A gap as a leaf of the gauge gives it, in millimetres.
fn gap(wide: f64) -> Result<Answer, String> {
    Measured::new(millimetres(wide), millimetres(0.0))
        .map(Answer::Length)
        .map_err(|_| UNSOUND.to_owned())
}

fn new(vehicle: Option<EntryId>, says: Says) -> Result<Unwritten, String> {
    Unwritten::new(vehicle, says).ok_or_else(|| UNSOUND.to_owned())
}

fn write(scribe: &mut Scribe, entry: Unwritten) -> Result<EntryId, String> {
    scribe.write(&entry)
}
