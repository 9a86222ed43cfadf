//! The address of a page, kept behind the `#` so that every address is served by one file and opens
//! without a network.

use cartside_core::daybook::{Digest, EntryId};
use cartside_core::survey::Question;
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::report::Cut;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;

/// Every page there is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Route {
    /// The day book: every vehicle.
    Book,
    /// Begin a vehicle.
    Begin,
    /// One vehicle.
    Vehicle(EntryId),
    /// Everything written about one vehicle.
    Entries(EntryId),
    /// What has changed about one vehicle since last time.
    Changes(EntryId),
    /// What is in dispute about one vehicle.
    Disputes(EntryId),
    /// Which other vehicle of the book it is the same as.
    SameAs(EntryId),
    /// What one examination of a vehicle is for, and how far the wheels are taken apart.
    Examination(EntryId),
    /// The first look at all wheels of a vehicle.
    FirstLook(EntryId),
    /// One wheel: drawing, list, findings.
    Wheel(EntryId, Position),
    /// How one wheel is built.
    Build(EntryId, Position),
    /// What is decided of one wheel.
    Decide(EntryId, Position),
    /// Work done on one wheel.
    Work(EntryId, Position),
    /// The tyring sheet of one wheel.
    Tyring(EntryId, Position),
    /// One question, put to place after place of a wheel; the place to begin with, if one is named.
    Ask(EntryId, Position, Question, Option<Place>),
    /// Everything about one part: its readings, remarks, pictures.
    Part(EntryId, Part),
    /// One picture, by the digest of its bytes: marked, and held beside an earlier one.
    Picture(EntryId, Digest),
    /// The report of a vehicle in one of its cuts.
    Report(EntryId, Cut),
    /// The full report of one examination, the latest or an earlier one.
    Earlier(EntryId, EntryId),
    /// A report as it was handed over.
    Told(EntryId, EntryId),
    /// Carry the book out as a file, or the vehicle that is named.
    CarryOut(Option<EntryId>),
    /// Bring a file in.
    BringIn,
    /// What is kept on this device, and what of it is nowhere else.
    Kept,
    /// Every word of the trade.
    Words,
    /// Preferences.
    Preferences,
    /// The limits.
    Limits,
    /// One row of the limits, by its name.
    Limit(String),
    /// No page has this address.
    Unknown(String),
}

impl Route {
    /// The address, from the `#` on.
    pub fn href(&self) -> String {
        match self {
            Route::Book => "#/".to_owned(),
            Route::Begin => "#/begin".to_owned(),
            Route::Vehicle(id) => format!("#/vehicle/{id}"),
            Route::Entries(id) => format!("#/vehicle/{id}/entries"),
            Route::Changes(id) => format!("#/vehicle/{id}/changes"),
            Route::Disputes(id) => format!("#/vehicle/{id}/disputes"),
            Route::SameAs(id) => format!("#/vehicle/{id}/same-as"),
            Route::Examination(id) => format!("#/vehicle/{id}/examination"),
            Route::FirstLook(id) => format!("#/vehicle/{id}/first-look"),
            Route::Decide(id, position) => format!("#/vehicle/{id}/decide/{}", position.code()),
            Route::Work(id, position) => format!("#/vehicle/{id}/work/{}", position.code()),
            Route::Tyring(id, position) => format!("#/vehicle/{id}/tyring/{}", position.code()),
            Route::Wheel(id, position) => format!("#/vehicle/{id}/wheel/{}", position.code()),
            Route::Build(id, position) => format!("#/vehicle/{id}/build/{}", position.code()),
            Route::Ask(id, position, question, None) => {
                format!("#/vehicle/{id}/ask/{}/{}", position.code(), question.code())
            }
            Route::Ask(id, position, question, Some(place)) => {
                format!(
                    "#/vehicle/{id}/ask/{}/{}/{}",
                    position.code(),
                    question.code(),
                    place.code()
                )
            }
            Route::Part(id, part) => format!("#/vehicle/{id}/part/{}", part.code()),
            Route::Picture(id, picture) => format!("#/vehicle/{id}/picture/{picture}"),
            Route::Report(id, cut) => format!("#/vehicle/{id}/report/{}", cut.code()),
            Route::Earlier(id, visit) => format!("#/vehicle/{id}/report/of/{visit}"),
            Route::Told(id, entry) => format!("#/vehicle/{id}/report/told/{entry}"),
            Route::CarryOut(None) => "#/carry-out".to_owned(),
            Route::CarryOut(Some(id)) => format!("#/carry-out/{id}"),
            Route::BringIn => "#/bring-in".to_owned(),
            Route::Kept => "#/kept".to_owned(),
            Route::Words => "#/words".to_owned(),
            Route::Preferences => "#/preferences".to_owned(),
            Route::Limits => "#/limits".to_owned(),
            Route::Limit(row) => format!("#/limits/{row}"),
            Route::Unknown(hash) => hash.clone(),
        }
    }

    /// The page an address leads to.
    pub fn read(hash: &str) -> Route {
        let path = hash.trim_start_matches('#').trim_matches('/');
        let words: Vec<&str> = path.split('/').collect();
        Route::known(&words).unwrap_or_else(|| Route::Unknown(hash.to_owned()))
    }

    fn known(words: &[&str]) -> Option<Route> {
        Some(match words {
            [""] => Route::Book,
            ["begin"] => Route::Begin,
            ["carry-out"] => Route::CarryOut(None),
            ["carry-out", id] => Route::CarryOut(Some(Digest::from_hex(id)?)),
            ["bring-in"] => Route::BringIn,
            ["kept"] => Route::Kept,
            ["words"] => Route::Words,
            ["preferences"] => Route::Preferences,
            ["limits"] => Route::Limits,
            ["limits", row @ ..] => Route::Limit(row.join("/")),
            ["vehicle", id, rest @ ..] => Route::of_vehicle(Digest::from_hex(id)?, rest)?,
            _ => return None,
        })
    }

    fn of_vehicle(id: EntryId, words: &[&str]) -> Option<Route> {
        Some(match words {
            [] => Route::Vehicle(id),
            ["entries"] => Route::Entries(id),
            ["changes"] => Route::Changes(id),
            ["disputes"] => Route::Disputes(id),
            ["same-as"] => Route::SameAs(id),
            ["examination"] => Route::Examination(id),
            ["first-look"] => Route::FirstLook(id),
            ["decide", position] => Route::Decide(id, Position::from_code(position)?),
            ["work", position] => Route::Work(id, Position::from_code(position)?),
            ["tyring", position] => Route::Tyring(id, Position::from_code(position)?),
            ["wheel", position] => Route::Wheel(id, Position::from_code(position)?),
            ["build", position] => Route::Build(id, Position::from_code(position)?),
            ["ask", position, question] => Route::Ask(
                id,
                Position::from_code(position)?,
                Question::from_code(question)?,
                None,
            ),
            ["ask", position, question, place] => {
                let place = Some(Place::from_code(place)?);
                Route::Ask(
                    id,
                    Position::from_code(position)?,
                    Question::from_code(question)?,
                    place,
                )
            }
            ["picture", picture] => Route::Picture(id, Digest::from_hex(picture)?),
            ["report", cut] => Route::Report(id, Cut::from_code(cut)?),
            ["report", "of", visit] => Route::Earlier(id, Digest::from_hex(visit)?),
            ["report", "told", entry] => Route::Told(id, Digest::from_hex(entry)?),
            ["part", part @ ..] => Route::Part(id, Part::from_code(&part.join("/"))?),
            _ => return None,
        })
    }

    /// Goes to the page, so that the browser's back key leads back.
    pub fn go(&self) {
        // A browser that refuses to change the part behind `#` leaves the page as it is.
        let _ = window().location().set_hash(&self.href());
    }

    /// Goes to the page in the place of this one.
    pub fn go_instead(&self) {
        let _ = window().location().replace(&self.href());
    }
}

fn current() -> Route {
    Route::read(&window().location().hash().unwrap_or_default())
}

/// The page of the present address, for as long as the app runs.
pub fn watch() -> ReadSignal<Route> {
    let (route, set_route) = signal(current());
    let changed = Closure::<dyn Fn()>::new(move || set_route.set(current()));
    // Listening ends with the page itself, so the closure is never dropped.
    let _ =
        window().add_event_listener_with_callback("hashchange", changed.as_ref().unchecked_ref());
    changed.forget();
    route
}
