//! The three cuts of invented examinations, and what no cut may ever say.

use super::owner::may;
use super::{Block, Cut, Document, kept, report};
use crate::daybook::report::LONGEST_REPORT;
use crate::daybook::tyring::{Ran, TakenWith};
use crate::daybook::{
    Book, Day, Decision, Digest, Entry, Kind, Mark, Marks, Picture, RoundTaken, Says, Spot, Stamp,
    TyringSaid, Visit, WheelSaid, Work, WorkDone,
};
use crate::diagnosis::{Standing, examined, house_limits};
use crate::material::Iron;
use crate::quantity::length::millimetres;
use crate::quantity::{Measured, Percent};
use crate::survey::{Answer, Pad, Play, Question, Reading, Ring, Slot, Use};
use crate::tyring::round::{Line, Run};
use crate::wheel::{
    Arm, Felloes, Keeper, Part, Place, Position, Rim, Size, Sizes, Tyre, Vehicle, VehicleKind,
    Wheel,
};
use crate::words::answer::answered;
use crate::words::sample::{american, entry, id, mm, style};
use crate::words::term;

/// The number of the entry that begins the examination.
const VISIT: u64 = 3;

/// A book being written: each entry has the next number.
struct Writing(Vec<Entry>);

impl Writing {
    /// A cart with two wheels of eight spokes, and an examination for these uses.
    fn cart(uses: &[Use]) -> Writing {
        let mut writing = Writing(Vec::new());
        let vehicle = Says::Vehicle(Vehicle {
            kind: VehicleKind::Cart,
            name: "Mill cart".to_owned(),
        });
        writing.write(Kind::Vehicle, "vehicle", vehicle);
        for position in [Position::Near, Position::Off] {
            let wheel = wheel();
            let said = Says::Wheel(WheelSaid { position, wheel });
            writing.write(Kind::Wheel, position.code(), said);
        }
        let visit = Says::Visit(Visit {
            place: "Upper Meadow".to_owned(),
            used_for: uses.to_vec(),
            conditions: "dry, good light".to_owned(),
            ..Visit::default()
        });
        writing.write(Kind::Visit, "visit", visit);
        writing
    }

    fn write(&mut self, kind: Kind, slot: &str, says: Says) {
        let n = self.0.last().map_or(0, |last| last.n + 1);
        let mut entry = entry(n, kind, slot, says);
        entry.visit = (n > VISIT).then(|| id(VISIT));
        self.0.push(entry);
    }

    fn reads(&mut self, position: Position, question: Question, place: Place, answer: Answer) {
        let slot = Slot {
            position,
            place,
            question,
        };
        let says = Says::Reading(Reading {
            slot,
            answer,
            written: String::new(),
        });
        self.write(Kind::Reading, &slot.code(), says);
    }

    /// Every question answered as of a sound wheel, at every place.
    fn sound(&mut self, position: Position) {
        for question in Question::all().filter(|question| question.asked_of(&wheel())) {
            for place in question.places_on(&wheel()) {
                self.reads(position, question, place, sound(question));
            }
        }
    }

    fn decides(&mut self, position: Position, standing: Standing, proposed: Standing) {
        let decision = Decision {
            position,
            standing,
            proposed,
            reason: if standing < proposed {
                "seen on the road".to_owned()
            } else {
                String::new()
            },
            look_again: Day::read("2027-05-01"),
            signed: "Ada Field".to_owned(),
        };
        let slot = Decision::slot(position);
        self.write(Kind::Decision, &slot, Says::Decision(decision));
    }

    fn book(self) -> Book {
        self.0.into_iter().collect()
    }
}

fn wheel() -> Wheel {
    let sizes = Sizes::default()
        .with(Size::Height, Some(millimetres(1275.0)))
        .with(Size::Dish, Some(millimetres(36.0)))
        .with(Size::TyreThickness, Some(millimetres(12.0)));
    Wheel {
        rim: Some(Rim::Sawn),
        tyre: Some(Tyre::Hoop),
        arm: Some(Arm::Iron),
        keeper: Some(Keeper::LinchPin),
        sizes,
        ..Wheel::of(Felloes::even(8, 4).unwrap())
    }
}

fn sound(question: Question) -> Answer {
    let length = |value| {
        let length = Measured::new(millimetres(value), millimetres(0.0));
        Answer::Length(length.unwrap())
    };
    match (question, question.pad()) {
        (Question::Dish, _) => length(36.0),
        (Question::TyreLeft, _) => length(12.0),
        (Question::Moisture, _) => Answer::Share(Percent::whole(14)),
        (_, Pad::YesNo) if question.sound_is_yes() => Answer::Yes,
        (_, Pad::YesNo) => Answer::No,
        (_, Pad::Gauge(_) | Pad::Size(_)) => length(0.0),
        (_, Pad::Verdict(_) | Pad::Fastening) => Answer::Play(Play::Tight),
        (_, Pad::Ring) => Answer::Ring(Ring::Rings),
        (_, Pad::Crack) => Answer::NothingFound,
        (_, Pad::Share) => Answer::Share(Percent::whole(0)),
    }
}

fn document(book: &Book, cut: Cut) -> Document {
    let view = book.view();
    report(
        cut,
        &view.vehicle(id(0)),
        id(VISIT),
        &house_limits(),
        style(),
    )
    .unwrap()
}

fn plain(book: &Book, cut: Cut) -> String {
    document(book, cut).plain()
}

/// A cart of which the near wheel has a loose tyre and a loose spoke, the off wheel was hardly looked at.
fn worn() -> Book {
    let mut cart = Writing::cart(&[Use::Goods, Use::Road]);
    for (between, wide) in [(1, 0.5), (3, 3.0), (5, 0.5), (7, 0.25)] {
        cart.reads(
            Position::Near,
            Question::TyreGap,
            Place::Between(between),
            mm(wide),
        );
    }
    for spoke in 1..=8 {
        let play = if spoke == 3 { Play::Loose } else { Play::Tight };
        cart.reads(
            Position::Near,
            Question::SpokeFoot,
            Place::Spoke(spoke),
            Answer::Play(play),
        );
    }
    cart.reads(
        Position::Near,
        Question::Moisture,
        Place::Felloe(1),
        Answer::CannotSee,
    );
    cart.reads(
        Position::Off,
        Question::FirstTyre,
        Place::Whole,
        Answer::Yes,
    );
    let spoke = Part::At(Position::Near, Place::Spoke(3));
    let remark = Says::Remark(spoke, "Foot worn".to_owned());
    cart.write(Kind::Remark, &spoke.code(), remark);
    let picture = Says::Picture(Picture {
        part: spoke,
        digest: Digest::of(b"a picture"),
        width: 4,
        height: 3,
        bytes: 9,
    });
    cart.write(Kind::Picture, &spoke.code(), picture);
    let marks = Says::Marks(Marks {
        picture: Digest::of(b"a picture"),
        all: vec![
            Mark::Ring(Spot::at(0, 0), Spot::at(200, 200)),
            Mark::Pin(Spot::at(900, 500), "moves here".to_owned()),
        ],
    });
    let slot = Digest::of(b"a picture").hex();
    cart.write(Kind::Marks, &slot, marks);
    let work = Says::Work(WorkDone {
        part: spoke,
        did: vec![Work::ReSeated],
        text: String::new(),
        by_whom: "B. Hill".to_owned(),
    });
    cart.write(Kind::Work, &spoke.code(), work);
    cart.decides(Position::Near, Standing::KeepEmpty, Standing::KeepEmpty);
    cart.book()
}

fn sound_cart(uses: &[Use]) -> Writing {
    let mut cart = Writing::cart(uses);
    cart.sound(Position::Near);
    cart.sound(Position::Off);
    cart
}

fn signed_cart(uses: &[Use]) -> Book {
    let mut cart = sound_cart(uses);
    for position in [Position::Near, Position::Off] {
        cart.decides(position, Standing::NoFaultFound, Standing::NoFaultFound);
    }
    cart.book()
}

/// A spoke loose at its foot, passed over by the one who signs.
fn passed_cart(uses: &[Use]) -> Book {
    let mut cart = sound_cart(uses);
    let loose = Answer::Play(Play::Loose);
    cart.reads(Position::Near, Question::SpokeFoot, Place::Spoke(3), loose);
    let proposed = Standing::NotOnThisWheel;
    for position in [Position::Near, Position::Off] {
        cart.decides(position, Standing::NoFaultFound, proposed);
    }
    cart.book()
}

#[test]
fn what_was_found_so_far_stands_below_not_judged() {
    let mut cart = Writing::cart(&[Use::Goods]);
    let loose = Answer::Play(Play::Loose);
    cart.reads(Position::Near, Question::SpokeFoot, Place::Spoke(3), loose);
    let book = cart.book();
    for cut in [Cut::Owner, Cut::Full] {
        let told = plain(&book, cut);
        let said = "Near wheel: NOT JUDGED\nSo far: light work only.\nOff wheel: NOT JUDGED\n";
        assert!(told.contains(said), "{told}");
    }
    let judged = plain(&passed_cart(&[Use::Goods]), Cut::Full);
    assert!(!judged.contains("So far"), "{judged}");
}

#[test]
fn faults_that_are_passed_over_carry_nobody_and_are_told() {
    let book = passed_cart(&[Use::People]);
    let card = plain(&book, Cut::ShowCard);
    assert!(
        card.contains("People carried: NO – faults were found and passed over"),
        "{card}"
    );
    let owner = plain(&book, Cut::Owner);
    assert!(
        owner.contains("Faults were found. Whoever signs this passes them"),
        "{owner}"
    );
    let owner = plain(&signed_cart(&[Use::People]), Cut::Owner);
    assert!(!owner.contains("passes them"), "{owner}");
}

#[test]
fn the_owners_page_is_in_plain_words() {
    insta::assert_snapshot!(plain(&worn(), Cut::Owner), @r"
    Mill cart: for its owner
    ========================
    Vehicle: Mill cart (cart)
    Examined on: 5 November 2026
    Place: Upper Meadow
    Examined by: Ada Field
    To be used for: goods and road use
    This is an examination of wheels by a wheelwright, not a permission to use the road. Local law and the driver's judgement stand.

    How its wheels stand
    --------------------
    The vehicle: KEEP EMPTY
    Near wheel: KEEP EMPTY
    Look again by 1 May 2027.
    Off wheel: NOT JUDGED
    The vehicle takes the harshest standing of its wheels. Axle bed, shafts, brake and harness were not examined.

    What it must not do, and until when
    -----------------------------------

    Near wheel
    The vehicle must not be loaded or used, beyond being walked empty to the shed, until these are put right and looked at again:
    - Gap under the tyre, between 3 and 4: 3 mm
    - Spoke loose at the foot, spoke 3: moves by hand
    - Not looked at yet, or not everywhere: what keeps the wheel on (there, the right part, secured); the ring of the tyre at four places; the gap of every joint; the rim end of every spoke; whether any spoke is broken; the dish; end play along the arm and shake at the rim; rot (pricked for at the tongues, the spokes' feet and the ground point); the nave and its bonds

    Off wheel
    The wheel must not be taken as sound, and the vehicle must neither be loaded nor carry people on the word of this page, until these are looked at:
    - Not looked at yet, or not everywhere: what keeps the wheel on (there, the right part, secured); the ring of the tyre at four places; the gap of every joint; the foot of every spoke; the rim end of every spoke; whether any spoke is broken; the gap under the tyre at four places; the dish; end play along the arm and shake at the rim; rot (pricked for at the tongues, the spokes' feet and the ground point); the nave and its bonds

    To be done now
    --------------
    - Near wheel: Gap under the tyre, between 3 and 4: 3 mm. What can be done, the least first: Bring the tongues below the sole. Re-seat or shim the feet. Ease a joint. Then, once the feet are tight and the dish is known: Contract the tyre: upset it, or cut and shut. Fit a new tyre.

    To be done soon
    ---------------
    - Near wheel: Spoke loose at the foot, spoke 3: moves by hand. What can be done, the least first: Ease a joint. Re-seat or shim the feet. Fit a new spoke. Fit a new nave.

    Look again by
    -------------
    1 May 2027

    Pictures
    --------
    - picture 92b2fa58, Near wheel, spoke 3: “Foot worn”
      - ring, upper left
      - pin 1, middle right: “moves here”

    What this does not say
    ----------------------
    - No finding, standing or figure here is leave to load, to carry people or to go on a road.
    - The law, local codes and the site's own rules come first, and so does the word of whoever is licensed or answers for the vehicle where it is used.
    - In Great Britain a vehicle on the highway should be kept by the Code of Practice for Horse-Drawn Vehicles (Department for Transport, 2000; Highway Code, rule 47). It has a check list of its own, in whose place nothing here stands.
    - No published limit in figures for the wear of a wooden wheel is known to us: none was found in the trade books, army specifications, farm papers and road laws read. The check list of that Code was not among them.
    - Whoever examined it decides and signs; this only proposes.

    What is no cure
    ---------------
    - Bolting or re-nailing is never a cure for a loose hoop: it only stops it falling off.
    - Soaking stands in an old army manual (Field Artillery Materiel, about 1918), and farm and craft pages call it harmful. It is for an emergency: it passes, it hastens decay, and it is never done before carrying people.
    - Drying does not excuse slack it cannot cause: what a tyre has lost beyond it is wear, crushing, decay or fitting.
    - Wheels are not changed side for side.

    Whose word this is
    ------------------
    - Near wheel: keep empty, decided; look again by 1 May 2027; signed Ada Field.
    Not signed: not every wheel has a decision that stands. What is not decided is proposed by the readings alone.
    ");
}

#[test]
fn the_owners_page_of_a_sound_cart() {
    let page = plain(&signed_cart(&[Use::People]), Cut::Owner);
    let (page, _) = page.split_once("What this does not say").unwrap();
    insta::assert_snapshot!(page, @r"
    Mill cart: for its owner
    ========================
    Vehicle: Mill cart (cart)
    Examined on: 5 November 2026
    Place: Upper Meadow
    Examined by: Ada Field
    To be used for: people carried
    This is an examination of wheels by a wheelwright, not a permission to use the road. Local law and the driver's judgement stand.

    How its wheels stand
    --------------------
    The vehicle: NO FAULT FOUND
    Near wheel: NO FAULT FOUND
    Look again by 1 May 2027.
    Off wheel: NO FAULT FOUND
    Look again by 1 May 2027.
    The vehicle takes the harshest standing of its wheels. Axle bed, shafts, brake and harness were not examined.

    It may
    ------
    As far as its wheels go, it may be used as was asked: people carried.

    Look again by
    -------------
    1 May 2027
    ");
}

#[test]
fn the_full_examination_tells_everything() {
    insta::assert_snapshot!(plain(&worn(), Cut::Full), @r"
    Mill cart: full examination of its wheels
    =========================================
    This is an examination of wheels by a wheelwright, not a permission to use the road. Local law and the driver's judgement stand.
    Vehicle: Mill cart (cart)
    Examined on: 5 November 2026
    Place: Upper Meadow
    Examined by: Ada Field
    To be used for: goods and road use
    Stage, as said last: on the arm
    Conditions: dry, good light
    Look again by: 1 May 2027

    What it comes to
    ----------------
    The vehicle: KEEP EMPTY
    Near wheel: KEEP EMPTY
    Look again by 1 May 2027.
    Off wheel: NOT JUDGED
    The vehicle takes the harshest standing of its wheels. Axle bed, shafts, brake and harness were not examined.
    - Near wheel: keep empty, decided; look again by 1 May 2027; signed Ada Field.
    Not signed: not every wheel has a decision that stands. What is not decided is proposed by the readings alone.

    Near wheel
    ----------
    Spokes, felloes: 8, 4
    Rim: sawn felloes
    Tyre: hoop tyre, shrunk on
    Arm: iron arm
    Kept on by: linch pin
    Height over the sole: 1275 mm
    Dish as built: 36 mm
    Tyre thickness as new: 12 mm
    Described in entry: 7c9fa136
    Standing: KEEP EMPTY

    Findings
    No draw before this is put right: Feet are loose: a draw would lean the spokes, not seat them. The dish is not known.

    Gap under the tyre – keep empty
    - Between 3 and 4: 3 mm
    - By the limit Cartside comes with: 3 mm or more anywhere; common practice, no source.
    - Rests on f13ee6ed.
    - Likely cause: the rim has dried. Told by: Joints open at the belly, shoulders off, a low moisture; it was tighter in the wet season. With shut joints drying alone loosens a tyre by about 1 mm in 4 m round for 6 % of moisture, no more.
    - Likely cause: felloe-bound: the rim is too long for its spokes. Told by: Shoulders off while the joints are shut: the sum of both says so.
    - Likely cause: tongues stand proud and carry the tyre. Told by: Daylight under the tyre between the spokes, none over them.
    - Likely cause: the tyre is worn thin and has stretched. Told by: Little iron left, joints open, feet tight.
    - Likely cause: wood crushed where it bears. Told by: Bruised, shiny or mushroomed wood, and more slack than drying explains.
    - Likely cause: the tyre was put back in another place. Told by: The marks of the joints inside the tyre do not lie over the joints; it bears in patches.
    - Cure: Bring the tongues below the sole.
    - Cure: Re-seat or shim the feet.
    - Cure: Ease a joint.
    - Cure: Contract the tyre: upset it, or cut and shut. Waits for what stands in the way, above.
    - Cure: Fit a new tyre. Waits for what stands in the way, above.

    Spoke loose at the foot – light work only
    - Spoke 3: moves by hand
    - By the limit Cartside comes with: moves by hand at any place; common practice, no source.
    - Rests on a111f275.
    - Likely cause: run with a loose tyre. The readings speak for it. Told by: Feet worn to a wedge, rust or dust at the shoulder, the tyre dull.
    - Likely cause: felloe-bound: the rim is too long for its spokes. Told by: Shoulders off while the joints are shut: the sum of both says so.
    - Likely cause: the nave has shrunk. Told by: All feet loose alike, and the bonds with them.
    - Likely cause: grease has soaked in. Told by: Dark, soft wood that smells of grease, from the box outwards.
    - Likely cause: rot. Told by: The point goes in without force; the wood is dark, or breaks short.
    - Cure: Ease a joint.
    - Cure: Re-seat or shim the feet.
    - Cure: Fit a new spoke.
    - Cure: Fit a new nave.

    Not examined
    - Still to be recorded: what keeps the wheel on (there, the right part, secured).
    - Still to be recorded: the ring of the tyre at four places. Left: between 1 and 2, between 3 and 4, between 5 and 6, between 7 and 8.
    - Still to be recorded: the gap of every joint. Left: joints 1 to 4.
    - Still to be recorded: the rim end of every spoke. Left: spokes 1 to 8.
    - Still to be recorded: whether any spoke is broken. Left: spokes 1 to 8.
    - Still to be recorded: the dish.
    - Still to be recorded: end play along the arm and shake at the rim.
    - Still to be recorded: rot (pricked for at the tongues, the spokes' feet and the ground point). Left: nave; spokes 1 to 8; felloes 1 to 4.
    - Still to be recorded: the nave and its bonds. Left: nave.
    - Could not be seen: felloe moisture, felloe 1.
    - Not answered at all: keeper, first look, tyre, first look, spokes, first look, dish, first look, joints, first look, nave, first look, rot, first look, keeper there, keeper the right part, keeper secured, linch pin wear, ring of the tyre, tyre shifts, tyre off-centre, tyre cracked, tyre thickness left, joint gap, joint gap at the belly, felloe step, felloe cracks, felloe rot, spoke rim end, spoke broken, shoulder stand-off, tongue proud, spoke cracks, spoke rot, bonds, nave cracks, nave rot, box moves, dish, dish gives, run-out, out of round, end play, binds, shake at the rim.

    Every reading
    Reading | Where | Answer | By whom, when, stage | Entries
    Tyre gap (feeler) | between 1 and 2, between 5 and 6 | ½ mm ± ¼ mm | Ada Field, 5 November 2026, 09:03 (+01:00); on the arm | f0a0278e 23d7f42b
    Tyre gap (feeler) | between 3 and 4 | 3 mm ± ¼ mm | Ada Field, 5 November 2026, 09:03 (+01:00); on the arm | f13ee6ed
    Tyre gap (feeler) | between 7 and 8 | ¼ mm ± ¼ mm | Ada Field, 5 November 2026, 09:03 (+01:00); on the arm | aae89fc0
    Felloe moisture (moisture meter) | felloe 1 | can't see | Ada Field, 5 November 2026, 09:03 (+01:00); on the arm | 5eb6da0e
    Spoke foot (by hand) | spokes 1, 2 and 4 to 8 | tight | Ada Field, 5 November 2026, 09:03 (+01:00); on the arm | 6cc16abd cbbd5f99 5fd1b79e 220dde27 b0bd73e6 18d8d609 a4bd89d0
    Spoke foot (by hand) | spoke 3 | loose | Ada Field, 5 November 2026, 09:03 (+01:00); on the arm | a111f275

    Off wheel
    ---------
    Spokes, felloes: 8, 4
    Rim: sawn felloes
    Tyre: hoop tyre, shrunk on
    Arm: iron arm
    Kept on by: linch pin
    Height over the sole: 1275 mm
    Dish as built: 36 mm
    Tyre thickness as new: 12 mm
    Described in entry: d86e8112
    Standing: NOT JUDGED

    Findings
    No limit is reached by what was looked at.

    Not examined
    - Still to be recorded: what keeps the wheel on (there, the right part, secured).
    - Still to be recorded: the ring of the tyre at four places. Left: between 1 and 2, between 3 and 4, between 5 and 6, between 7 and 8.
    - Still to be recorded: the gap of every joint. Left: joints 1 to 4.
    - Still to be recorded: the foot of every spoke. Left: spokes 1 to 8.
    - Still to be recorded: the rim end of every spoke. Left: spokes 1 to 8.
    - Still to be recorded: whether any spoke is broken. Left: spokes 1 to 8.
    - Still to be recorded: the gap under the tyre at four places. Left: between 1 and 2, between 3 and 4, between 5 and 6, between 7 and 8.
    - Still to be recorded: the dish.
    - Still to be recorded: end play along the arm and shake at the rim.
    - Still to be recorded: rot (pricked for at the tongues, the spokes' feet and the ground point). Left: nave; spokes 1 to 8; felloes 1 to 4.
    - Still to be recorded: the nave and its bonds. Left: nave.
    - Not answered at all: keeper, first look, spokes, first look, dish, first look, joints, first look, nave, first look, rot, first look, keeper there, keeper the right part, keeper secured, linch pin wear, ring of the tyre, tyre gap, tyre shifts, tyre off-centre, tyre cracked, tyre thickness left, joint gap, joint gap at the belly, felloe step, felloe cracks, felloe rot, felloe moisture, spoke foot, spoke rim end, spoke broken, shoulder stand-off, tongue proud, spoke cracks, spoke rot, bonds, nave cracks, nave rot, box moves, dish, dish gives, run-out, out of round, end play, binds, shake at the rim.

    Every reading
    Reading | Where | Answer | By whom, when, stage | Entries
    Tyre, first look (by eye) | whole wheel | yes | Ada Field, 5 November 2026, 09:03 (+01:00); on the arm | 35e3a617

    In dispute
    ----------
    Nothing is in dispute.

    Remarks
    -------
    Part | Remark | By whom, when | Entry
    Near wheel, spoke 3 | Foot worn | Ada Field, 5 November 2026, 09:03 (+01:00) | e48d939f

    Work done
    ---------
    Work | Before | After | Written by | Entry
    Near wheel, spoke 3: foot seated anew; by B. Hill | foot loose | not looked at since | Ada Field, 5 November 2026, 09:03 (+01:00) | debcea1f

    Pictures
    --------
    - picture 92b2fa58, Near wheel, spoke 3: “Foot worn”
      - ring, upper left
      - pin 1, middle right: “moves here”

    How each reading is to be taken
    -------------------------------
    - Tyre, first look: Look along the rim from before and from behind: as much wood shows on one side of the tyre as on the other.
    - Tyre gap: Wheel lifted, in at least four places evenly spaced: the thickest leaf that goes in between tyre and sole, resting on sound wood.
    - Felloe moisture: Meter set for the wood and the warmth, pins with the grain in bare wood at two depths. Do not trust it on lead paint, oil or grease, near nails, or above 28 %.
    - Spoke foot: Wheel lifted, spoke at the top: work it by hand at mid-length along the rim, in and out, up and down; watch the line where it enters the nave, and look for rust, dust or broken paint there.

    The entries this rests on
    -------------------------
    Vehicle: af5570f5a1810b7af78caf4bc70a660f0df51e42baf91d4de5b2328de0e83dfc
    Examination: 35be322d094f9d154a8aba4733b8497f180353bd7ae7b0a15f90b586b549f28b
    Entries about the vehicle: 23
    Digest of the set: f7482a5214c0819278d0a4ed3c0d012293a18229d3e8119532097859d5a8a3c5
    Worked out by: Cartside 0.1.0
    Each entry goes by the SHA-256 of its line in the day book; its first eight signs stand beside what it says. The digest of the set is the SHA-256 of all names in order, each on a line of its own, reports handed over left out.

    What this does not say
    ----------------------
    - No finding, standing or figure here is leave to load, to carry people or to go on a road.
    - The law, local codes and the site's own rules come first, and so does the word of whoever is licensed or answers for the vehicle where it is used.
    - In Great Britain a vehicle on the highway should be kept by the Code of Practice for Horse-Drawn Vehicles (Department for Transport, 2000; Highway Code, rule 47). It has a check list of its own, in whose place nothing here stands.
    - No published limit in figures for the wear of a wooden wheel is known to us: none was found in the trade books, army specifications, farm papers and road laws read. The check list of that Code was not among them.
    - Whoever examined it decides and signs; this only proposes.

    What is no cure
    ---------------
    - Bolting or re-nailing is never a cure for a loose hoop: it only stops it falling off.
    - Soaking stands in an old army manual (Field Artillery Materiel, about 1918), and farm and craft pages call it harmful. It is for an emergency: it passes, it hastens decay, and it is never done before carrying people.
    - Drying does not excuse slack it cannot cause: what a tyre has lost beyond it is wear, crushing, decay or fitting.
    - Wheels are not changed side for side.
    ");
}

#[test]
fn the_show_card_says_yes_or_no() {
    let cards = [
        plain(&worn(), Cut::ShowCard),
        plain(&signed_cart(&[Use::People]), Cut::ShowCard),
    ];
    insta::assert_snapshot!(cards.join("\n"), @r"
    Mill cart
    =========
    People carried: NO – it was not examined for them
    Its wheels: KEEP EMPTY
    Pace: None: it stands, or is walked empty to the shed
    For: Goods and road use
    Examined: 5 November 2026, by Ada Field
    Look again by: 1 May 2027
    Signed: Not signed: this is no card yet
    Wheels only; axle bed, shafts, brake and harness were not examined. Not a permission to use the road: local law, the rules of the show and the driver's judgement stand.

    Mill cart
    =========
    People carried: YES
    Its wheels: NO FAULT FOUND
    Pace: As the driver judges; this card sets none
    For: People carried
    Examined: 5 November 2026, by Ada Field
    Look again by: 1 May 2027
    Signed: Ada Field
    Wheels only; axle bed, shafts, brake and harness were not examined. Not a permission to use the road: local law, the rules of the show and the driver's judgement stand.
    ");
}

/// Only a decision that stands sets a day; where none is set here, that of an earlier examination is
/// told as what it is.
#[test]
fn the_day_to_look_again_is_told_with_whose_it_is() {
    let again = |days: [Option<&str>; 2], earlier: bool| {
        let mut cart = sound_cart(&[Use::Goods]);
        for (position, day) in [Position::Near, Position::Off].into_iter().zip(days) {
            cart.decides(position, Standing::NoFaultFound, Standing::NoFaultFound);
            if let Some(Entry {
                says: Says::Decision(said),
                ..
            }) = cart.0.last_mut()
            {
                said.look_again = day.and_then(Day::read);
            }
        }
        if earlier {
            cart.write(Kind::Visit, "visit", Says::Visit(Visit::default()));
            let first = cart.0.last().unwrap().id;
            for entry in &mut cart.0 {
                if entry.id == first {
                    entry.visit = None;
                    entry.at = Stamp::read("2026-05-04T09:00:00+01:00").unwrap();
                }
            }
            cart.decides(
                Position::Off,
                Standing::NoFaultFound,
                Standing::NoFaultFound,
            );
            cart.0.last_mut().unwrap().visit = Some(first);
        }
        let book = cart.book();
        let page = plain(&book, Cut::ShowCard);
        let mut lines = page.lines().filter(|line| line.contains("Look again by"));
        lines.next().unwrap().to_owned()
    };
    let rows = [
        again([Some("2027-03-01"), Some("2027-03-01")], false),
        again([Some("2027-03-01"), Some("2027-05-01")], true),
        again([Some("2026-11-04"), Some("2027-05-01")], false),
        again([None, Some("2026-11-05")], false),
        again([None, None], true),
        again([None, None], false),
    ];
    insta::assert_snapshot!(rows.join("\n"), @r"
    Look again by: 1 March 2027
    Look again by: 1 March 2027 (near wheel: 1 March 2027; off wheel: 1 May 2027)
    Look again by: 1 May 2027
    Look again by: 5 November 2026
    Look again by: Set at the examination of 4 May 2026: 1 May 2027
    Look again by: No day is set
    ");
}

/// Who read, else who signed, else who began; only of an examination by nobody no name is given.
#[test]
fn the_examiner_is_who_wrote_the_readings() {
    let by = |readers: [&str; 2], begun: &str, signed: bool| {
        let mut cart = sound_cart(&[Use::Goods]);
        if signed {
            cart.decides(
                Position::Near,
                Standing::NoFaultFound,
                Standing::NoFaultFound,
            );
        }
        for entry in &mut cart.0 {
            entry.by = match entry.kind {
                Kind::Reading => readers[(entry.n % 2) as usize].to_owned(),
                _ => begun.to_owned(),
            };
        }
        let book = cart.book();
        for cut in Cut::ALL {
            let page = plain(&book, cut);
            let nobody = page.contains("by no name given") || page.contains("by: no name given");
            assert_eq!(nobody, readers == ["", ""] && begun.is_empty() && !signed);
        }
        let page = plain(&book, Cut::Owner);
        let line = page.lines().find(|line| line.contains("Examined by"));
        line.unwrap().to_owned()
    };
    let rows = [
        by(["Tom Ash", "Ada Field"], "Will Elm", true),
        by(["", "Tom Ash"], "", false),
        by(["", ""], "Will Elm", true),
        by(["", ""], "", true),
        by(["", ""], "", false),
    ];
    insta::assert_snapshot!(rows.join("\n"), @r"
    Examined by: Tom Ash and Ada Field
    Examined by: Tom Ash
    Examined by: Will Elm
    Examined by: Ada Field
    Examined by: no name given
    ");
}

/// What the card says of people.
fn people(book: &Book) -> String {
    let Document(blocks) = document(book, Cut::ShowCard);
    let strong = blocks.into_iter().find_map(|block| match block {
        Block::Strong(said) => Some(said),
        _ => None,
    });
    strong.unwrap()
}

#[test]
fn people_are_carried_only_where_asked_judged_and_signed() {
    let mut loose = sound_cart(&[Use::People]);
    loose.reads(
        Position::Near,
        Question::SpokeFoot,
        Place::Spoke(3),
        Answer::Play(Play::Loose),
    );
    let rows = [
        signed_cart(&[Use::People]),
        signed_cart(&[Use::Goods]),
        sound_cart(&[Use::People]).book(),
        loose.book(),
        Writing::cart(&[Use::People]).book(),
    ]
    .map(|book| people(&book));
    insta::assert_snapshot!(rows.join("\n"), @r"
    People carried: YES
    People carried: NO – it was not examined for them
    People carried: NO – not every wheel is signed for
    People carried: NO – a wheel is not good enough
    People carried: NO – not every wheel is judged
    ");
}

#[test]
fn every_reading_of_the_examination_stands_in_the_full_cut() {
    let mut cart = sound_cart(&[Use::Goods]);
    // Of a wheel that no cart has, and of a place that this wheel has not.
    cart.reads(
        Position::OffHind,
        Question::Dish,
        Place::Whole,
        sound(Question::Dish),
    );
    cart.reads(
        Position::Near,
        Question::SpokeFoot,
        Place::Spoke(30),
        Answer::Play(Play::Loose),
    );
    let book = cart.book();
    for (document, drawn) in [
        (document(&book, Cut::Full), false),
        (drawn_together(&book), true),
    ] {
        let rows = tables(&document);
        for entry in book.entries() {
            let Says::Reading(reading) = &entry.says else {
                continue;
            };
            let asked = reading.slot.question;
            let answer = answered(asked, &reading.answer, style());
            let name = crate::words::capital(&crate::words::question::short(asked, style()));
            let name = format!("{name} (");
            let short = super::document::short(&entry.id);
            let told = rows.iter().any(|row| {
                let entry = drawn || row.last().unwrap().split(' ').any(|id| id == short);
                entry && row[0].starts_with(&name) && row[2] == answer
            });
            assert!(told, "{} {drawn}", entry.slot);
        }
    }
}

fn drawn_together(book: &Book) -> Document {
    let view = book.view();
    let vehicle = view.vehicle(id(0));
    let case = super::Case::of(&vehicle, id(VISIT), &house_limits(), style()).unwrap();
    super::made(Cut::Full, &case, super::Detail::DrawnTogether)
}

fn tables(document: &Document) -> Vec<&Vec<String>> {
    let Document(blocks) = document;
    let rows = blocks.iter().filter_map(|block| match block {
        Block::Table(head, rows) if head[0] == "Reading" => Some(rows),
        _ => None,
    });
    rows.flatten().collect()
}

/// Whatever stands in the way, the owner is told of every cure, and of how much was measured.
#[test]
fn the_owner_is_told_of_every_cure_and_of_the_figure() {
    let mut cart = sound_cart(&[Use::Goods]);
    cart.0.retain(|entry| {
        !entry.slot.starts_with("near/between") && entry.slot != "near/spoke-3/spoke-foot"
    });
    for between in [1, 3, 5, 7] {
        let at = Place::Between(between);
        cart.reads(Position::Near, Question::TyreGap, at, mm(0.75));
    }
    let foot = Answer::Play(Play::Loose);
    cart.reads(Position::Near, Question::SpokeFoot, Place::Spoke(3), foot);
    let page = plain(&cart.book(), Cut::Owner);
    let gap = page.lines().find(|line| line.contains("wheel: Gap"));
    insta::assert_snapshot!(gap.unwrap(), @"- Near wheel: Gap under the tyre, between 1 and 2, between 3 and 4, between 5 and 6, between 7 and 8: 4 of the 4 places looked at, up to ¾ mm. What can be done, the least first: Re-seat or shim the feet. Then, once the feet are tight: Contract the tyre: upset it, or cut and shut. Fit a new tyre.");
}

/// Whether the owner's page has a part with this heading.
fn has(book: &Book, heading: &str) -> bool {
    let Document(blocks) = document(book, Cut::Owner);
    blocks.contains(&Block::Heading(heading.to_owned()))
}

#[test]
fn nothing_that_is_not_judged_may_do_anything() {
    let mut one = Writing::cart(&[Use::Goods]);
    one.sound(Position::Near);
    let mut undescribed = sound_cart(&[Use::Goods]);
    undescribed.0.remove(2);
    for (book, judged) in [
        (Writing::cart(&[Use::Goods]).book(), false),
        (one.book(), false),
        (undescribed.book(), false),
        (sound_cart(&[Use::Goods]).book(), true),
    ] {
        assert_eq!(has(&book, "It may"), judged);
        assert_eq!(has(&book, "What it must not do, and until when"), !judged);
        for cut in Cut::ALL {
            let said = plain(&book, cut).to_lowercase();
            assert_eq!(said.contains("not judged"), !judged, "{}", cut.code());
        }
    }
}

#[test]
fn a_harsher_standing_is_never_told_more_kindly() {
    let harshness = |said: Option<String>| match said {
        Some(said) if said.contains("as was asked") => 0,
        Some(_) => 1,
        None => 2,
    };
    let told = Standing::ALL.map(|it| harshness(may(it, Some("goods".to_owned()))));
    assert_eq!(told, [0, 1, 2, 2, 2]);
    let mut limits = Vec::new();
    for wide in [0.0, 0.5, 1.0, 3.0] {
        let mut cart = sound_cart(&[Use::Goods]);
        cart.0
            .retain(|entry| entry.slot != "near/between-1/tyre-gap");
        cart.reads(
            Position::Near,
            Question::TyreGap,
            Place::Between(1),
            mm(wide),
        );
        let book = cart.book();
        let judged = {
            let view = book.view();
            examined(
                &view.vehicle(id(0)),
                id(VISIT),
                Position::Near,
                &house_limits(),
            )
        };
        let proposed = judged.unwrap().proposed();
        let page = plain(&book, Cut::Owner);
        let standing = format!("Near wheel: {}", term::standing(proposed).to_uppercase());
        assert!(page.contains(&standing), "{page}");
        limits.push((
            has(&book, "It may"),
            has(&book, "What it must not do, and until when"),
            proposed,
        ));
    }
    assert_eq!(
        limits,
        [
            (true, false, Standing::NoFaultFound),
            (true, false, Standing::NoFaultFound),
            (true, true, Standing::LightWorkOnly),
            (false, true, Standing::KeepEmpty),
        ]
    );
}

#[test]
fn a_kinder_decision_is_told_with_its_reason_and_one_that_falls_is_not_followed() {
    let mut cart = sound_cart(&[Use::Goods]);
    cart.0
        .retain(|entry| entry.slot != "near/between-1/tyre-gap");
    cart.reads(
        Position::Near,
        Question::TyreGap,
        Place::Between(1),
        mm(3.0),
    );
    let mut fallen = Writing(cart.0.clone());
    cart.decides(Position::Near, Standing::LightWorkOnly, Standing::KeepEmpty);
    fallen.decides(
        Position::Near,
        Standing::LightWorkOnly,
        Standing::LightWorkOnly,
    );
    let lines = [cart.book(), fallen.book()].map(|book| {
        let page = plain(&book, Cut::Owner);
        let near = page
            .lines()
            .filter(|line| line.contains("Near wheel: ") && !line.contains("What can be done"));
        near.collect::<Vec<_>>().join("\n")
    });
    insta::assert_snapshot!(lines.join("\n\n"), @r"
    Near wheel: LIGHT WORK ONLY
    - Near wheel: light work only, decided; keep empty was proposed; because “seen on the road”; look again by 1 May 2027; signed Ada Field.

    Near wheel: KEEP EMPTY
    - Near wheel: light work only, decided; look again by 1 May 2027; signed Ada Field. It does not count: it is kinder than what is proposed and gives no reason.
    ");
}

#[test]
fn what_is_kept_has_room_or_says_why_not() {
    let kept = |book: &Book, cut| {
        let view = book.view();
        kept(
            cut,
            &view.vehicle(id(0)),
            id(VISIT),
            &house_limits(),
            style(),
        )
    };
    let whole = kept(&worn(), Cut::Full).unwrap();
    assert_eq!(whole, plain(&worn(), Cut::Full));
    let remarked = |times: usize, length: usize| {
        let mut cart = sound_cart(&[Use::Goods]);
        for n in 0..times {
            let said = Says::Remark(Part::Vehicle, format!("{n}{}", "w".repeat(length)));
            cart.write(Kind::Remark, "vehicle", said);
        }
        cart.book()
    };
    let whole = plain(&remarked(1, 1), Cut::Full).len();
    let drawn = drawn_together(&remarked(1, 1)).plain().len();
    assert!(
        drawn + 1000 < whole && whole < LONGEST_REPORT,
        "{drawn} {whole}"
    );
    let some = remarked(1, LONGEST_REPORT - drawn - 500);
    let told = kept(&some, Cut::Full).unwrap();
    assert!(told.len() <= LONGEST_REPORT && told.contains("like answers are drawn together"));
    let refused = kept(&remarked(3, LONGEST_REPORT / 2), Cut::Full).unwrap_err();
    assert!(
        refused.contains("Nothing was handed over and nothing was lost"),
        "{refused}"
    );
    assert!(kept(&remarked(3, LONGEST_REPORT / 2), Cut::ShowCard).is_ok());
}

#[test]
fn american_reports_hold_no_british_word() {
    let book = worn();
    let view = book.view();
    for cut in Cut::ALL {
        let vehicle = view.vehicle(id(0));
        let said = report(cut, &vehicle, id(VISIT), &house_limits(), american()).unwrap();
        let said = said.plain().to_lowercase();
        for word in ["tyre", "nave", "tongue", "linch pin", "{", "}"] {
            assert!(!said.contains(word), "{word}");
        }
    }
}

#[test]
fn figures_stand_where_something_was_measured_or_is_not_tight() {
    let book = worn();
    let view = book.view();
    let figures = super::figures(&view.vehicle(id(0)), id(VISIT), Position::Near, style());
    let told: Vec<String> = figures
        .iter()
        .map(|(place, said)| format!("{}: {said}", place.code()))
        .collect();
    insta::assert_snapshot!(told.join("\n"), @r"
    between-1: ½ mm
    between-3: 3 mm
    between-5: ½ mm
    between-7: ¼ mm
    spoke-3: loose
    ");
}

#[test]
fn a_code_leads_back_to_its_cut() {
    for cut in Cut::ALL {
        assert_eq!(Cut::from_code(cut.code()), Some(cut));
    }
    assert_eq!(Cut::from_code("whole"), None);
    assert_eq!(
        Cut::ALL.map(Cut::name).join(", "),
        "owner's page, full report, show card"
    );
}

#[test]
fn the_scale_is_said_or_that_there_is_none() {
    let rows = [None, Some(1275.0), Some(1500.0)].map(|height| {
        let (scale, words) = super::drawn_at(height.map(millimetres));
        format!("{scale:?}: {words}")
    });
    insta::assert_snapshot!(rows.join("\n"), @r"
    None: Not to scale: the height of the wheel has not been said. Seen from its face, clockwise from the mark.
    Some(10): Height over the rim 1:10 where it is printed at full size; what lies within is not to scale. Seen from its face, clockwise from the mark.
    Some(20): Height over the rim 1:20 where it is printed at full size; what lies within is not to scale. Seen from its face, clockwise from the mark.
    ");
}

#[test]
fn the_drawing_has_its_legend() {
    insta::assert_snapshot!(super::LEGEND, @"Dots: a note. Slanting lines: light work only. Lattice: keep empty. Solid: not on this wheel. The circle on a part carries the mark of the same grade.");
}

/// A thickness beside a gap would read as one.
#[test]
fn no_thickness_stands_among_the_figures() {
    let mut cart = Writing::cart(&[Use::Goods]);
    let between = Place::Between(3);
    cart.reads(Position::Near, Question::TyreLeft, between, mm(10.0));
    cart.reads(Position::Near, Question::TyreGap, between, mm(1.5));
    let book = cart.book();
    let view = book.view();
    let figures = super::figures(&view.vehicle(id(0)), id(VISIT), Position::Near, style());
    assert_eq!(figures, [(between, "1½ mm".to_owned())]);
}

/// A round of six turns and this much of the traveller of this number.
fn round(ran: Ran, number: u16, past: f64) -> RoundTaken {
    let own = Measured::new(millimetres(628.0), millimetres(0.5)).unwrap();
    let past = millimetres(past);
    RoundTaken {
        position: Position::Near,
        ran,
        with: TakenWith::Traveller(number, own),
        line: Line::Middle,
        runs: vec![Run { turns: 6, past }],
        warm: None,
        hot_weld: false,
        written: String::new(),
    }
}

/// A sound cart with these rounds of its near wheel and a tyring chosen for it; its tyre is so wide.
fn tyred_cart(rounds: &[RoundTaken], width: Option<f64>) -> Book {
    let mut cart = sound_cart(&[Use::Goods]);
    let mut wheel = wheel();
    wheel.sizes = wheel.sizes.with(Size::TyreWidth, width.map(millimetres));
    let position = Position::Near;
    let said = Says::Wheel(WheelSaid { position, wheel });
    cart.write(Kind::Wheel, position.code(), said);
    if let Some(described) = cart.0.last_mut() {
        described.replaces = vec![id(1)];
    }
    for round in rounds {
        cart.write(Kind::Round, &round.slot(), Says::Round(round.clone()));
    }
    let chosen = TyringSaid {
        draw: Some(millimetres(12.0)),
        cut: Some(millimetres(10.0)),
        iron: Some(Iron::Wrought),
        lay: Some(41),
        ..TyringSaid::of(position)
    };
    let slot = TyringSaid::slot(position);
    cart.write(Kind::Tyring, &slot, Says::Tyring(chosen));
    cart.book()
}

/// What a cut says of the tyring, up to the next heading.
fn tyring_in(book: &Book, cut: Cut) -> String {
    let page = plain(book, cut);
    let (_, after) = page.split_once("\nTyring\n------\n").unwrap_or_default();
    let said = after.split_once("\n\n").map_or(after, |(said, _)| said);
    said.trim().to_owned()
}

#[test]
fn a_tyring_is_told_from_its_rounds_to_its_proof() {
    let rounds = [
        round(Ran::Sole, 1, 233.0),
        round(Ran::Tyre, 1, 236.0),
        round(Ran::Welded, 1, 221.0),
        round(Ran::Lying, 1, 302.0),
    ];
    let book = tyred_cart(&rounds, Some(60.0));
    let owner = tyring_in(&book, Cut::Owner);
    insta::assert_snapshot!(owner, @r"
    Near wheel
    - Round of the sole: 4001 mm round, to 4 mm either way (6 turns + 233 mm, traveller 1 of 628 mm); 5 November 2026.
    - Round of the tyre, inside: 4004 mm round, to 4 mm either way (6 turns + 236 mm, traveller 1 of 628 mm); 5 November 2026.
    - Round of the tyre as welded, inside: 3989 mm round, to 4 mm either way (6 turns + 221 mm, traveller 1 of 628 mm); 5 November 2026.
    - Round over the tyre as it lies: 4070 mm round, to 4 mm either way (6 turns + 302 mm, traveller 1 of 628 mm); 5 November 2026.
    - Draw of 12 mm, cut out: 10 mm, lay 41 s after the fire, wrought iron; 5 November 2026.
    - As it is: 12 mm of draw, to 3 mm either way.
    - Cut a stick 1276.5 mm long. When it goes through the hot tyre across its widest, the tyre is large enough.
    - About 410 °C, to 50 °C either way; 440 °C if its iron grows little.
    - It touches after 7 min in wind and 28 min at the longest: count on 6.5 min once it has been carried.
    - Inside the tyre as it lies, cold: 3994.5 mm round, to 5.5 mm either way; 6.5 mm shorter than the sole was, 5.5 mm longer than before it was heated.
    ");
    assert_eq!(owner, tyring_in(&book, Cut::Full));
    assert_eq!(tyring_in(&worn(), Cut::Owner), "");
}

#[test]
fn what_is_not_said_of_a_tyring_is_left_out_and_two_travellers_are_told() {
    let rounds = [round(Ran::Sole, 1, 233.0), round(Ran::Tyre, 2, 221.0)];
    insta::assert_snapshot!(tyring_in(&tyred_cart(&rounds, None), Cut::Owner), @r"
    Near wheel
    - Round of the sole: 4001 mm round, to 4 mm either way (6 turns + 233 mm, traveller 1 of 628 mm); 5 November 2026.
    - Round of the tyre, inside: 3989 mm round, to 4 mm either way (6 turns + 221 mm, traveller 2 of 628 mm); 5 November 2026.
    - Draw of 12 mm, cut out: 10 mm, lay 41 s after the fire, wrought iron; 5 November 2026.
    - As it is: 12 mm of draw, to 6 mm either way.
    - Sole and tyre were not run with the same traveller or tape: what is wrong with either stays in the draw, and its doubt is the greater.
    ");
}
