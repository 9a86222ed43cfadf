//! The picture as something to draw on: by a finger, a pen or a mouse, or by the arrow keys. What is drawn is kept as a
//! draft, the very line that would be written, until it is saved.

use cartside_core::daybook::marks::{MOST_MARKS, simplified};
use cartside_core::daybook::{Digest, EntryId, Mark, Marks, Says, Spot, Unwritten};
use cartside_core::paper::line;
use cartside_core::words::marks::{Tool, place};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, KeyboardEvent, PointerEvent};

use super::entry;
use crate::album::{Album, Shown};
use crate::component::marked;
use crate::draft;
use crate::markup::{Hole, Piece, heard, live, nothing, sheet, tap};
use crate::workshop::{Notice, Workshop};

/// Touches wider or higher than this, in pixels, are a palm's.
const PALM: i32 = 64;
/// A finger's next point is taken when it is so many thousandths away.
const STEP: u16 = 3;
/// A line that is being drawn is made simpler when it has so many points.
const MANY: usize = 256;
/// How far a key moves the cross, in thousandths, alone and with the shift key.
const MOVES: (i32, i32) = (20, 5);

/// What is drawn and not yet saved.
#[derive(Clone, PartialEq)]
pub(super) struct Drawn {
    pub all: Vec<Mark>,
    /// What was drawn before, as it stood when this was begun.
    pub replaces: Vec<EntryId>,
}

/// A mark being drawn.
#[derive(Clone)]
struct Stroke {
    /// By which pointer; none by keys.
    pointer: Option<i32>,
    spots: Vec<Spot>,
}

/// A picture to draw on.
#[derive(Clone, Copy)]
pub(super) struct Board {
    shop: Workshop,
    picture: Digest,
    drawn: RwSignal<Option<Drawn>, LocalStorage>,
    past: StoredValue<Vec<Vec<Mark>>, LocalStorage>,
    tool: RwSignal<Option<Tool>, LocalStorage>,
    stroke: RwSignal<Option<Stroke>, LocalStorage>,
    cross: RwSignal<Option<Spot>, LocalStorage>,
}

impl Board {
    /// With what was drawn before and not saved.
    pub fn new(shop: Workshop, picture: Digest) -> Board {
        let board = Board {
            shop,
            picture,
            drawn: RwSignal::new_local(None),
            past: StoredValue::new_local(Vec::new()),
            tool: RwSignal::new_local(None),
            stroke: RwSignal::new_local(None),
            cross: RwSignal::new_local(None),
        };
        draft::find(shop, board.draft(), move |text| {
            if let Ok(entry) = line::read(&text)
                && let Says::Marks(marks) = entry.says
                && board
                    .drawn
                    .try_get_untracked()
                    .is_some_and(|it| it.is_none())
            {
                let (all, replaces) = (marks.all, entry.replaces);
                board.drawn.try_set(Some(Drawn { all, replaces }));
            }
        });
        board
    }

    fn draft(self) -> String {
        format!("marks/{}", self.picture)
    }

    /// The marks as they stand now.
    pub fn all(self) -> Vec<Mark> {
        match self.drawn.get() {
            Some(drawn) => drawn.all,
            None => self.saved(),
        }
    }

    fn saved(self) -> Vec<Mark> {
        let opened = self.shop.opened.get();
        opened.map_or_else(Vec::new, |opened| {
            let view = opened.book.view();
            view.vehicle(opened.vehicle).marks(self.picture)
        })
    }

    /// Other marks in the place of these; *undo* leads back.
    pub fn change(self, all: Vec<Mark>) {
        if all.len() > MOST_MARKS {
            self.shop.notice.set(Notice::Trouble(format!(
                "This picture has {MOST_MARKS} marks, and at most {MOST_MARKS} are kept. Nothing was lost: take one away first."
            )));
            return;
        }
        let before = untrack(|| self.all());
        self.past.update_value(|past| past.push(before));
        self.set(all);
    }

    /// Other marks in the place of these, with nothing to undo.
    pub fn set(self, all: Vec<Mark>) {
        let replaces = match self.drawn.get_untracked() {
            Some(drawn) => drawn.replaces,
            None => self.standing(),
        };
        self.drawn.set(Some(Drawn { all, replaces }));
        self.keep();
    }

    fn standing(self) -> Vec<EntryId> {
        let opened = self.shop.in_hand();
        opened.map_or_else(Vec::new, |opened| {
            let view = opened.book.view();
            let thread = view.vehicle(opened.vehicle).marks_thread(self.picture);
            thread.map_or_else(Vec::new, |thread| thread.to_replace())
        })
    }

    /// Keeps what is drawn as a draft.
    fn keep(self) {
        let written = self.unwritten().and_then(|(entry, _)| {
            let mut scribe = self.shop.scribe();
            scribe.write(&entry).ok()?;
            scribe.lines.pop()
        });
        if let Some(line) = written {
            draft::keep(self.shop, self.draft(), line.line);
        }
    }

    /// The entry that says what is drawn.
    fn unwritten(self) -> Option<(Unwritten, Drawn)> {
        let drawn = self.drawn.get_untracked()?;
        let opened = self.shop.in_hand()?;
        let view = opened.book.view();
        let (of, _) = entry(&view.vehicle(opened.vehicle), self.picture)?;
        let (picture, all) = (self.picture, drawn.all.clone());
        let marks = Unwritten::new(of.vehicle, Says::Marks(Marks { picture, all }))?;
        let marks = marks.replacing(drawn.replaces.clone());
        // With the examination of their picture they are hidden, and shown.
        let marks = Unwritten {
            visit: of.visit,
            ..marks
        };
        Some((marks, drawn))
    }

    fn undo(self) {
        let mut before = None;
        self.past.update_value(|past| before = past.pop());
        let before = before.unwrap_or_else(|| {
            let mut all = untrack(|| self.all());
            all.pop();
            all
        });
        self.set(before);
    }

    fn save(self) {
        let Some((marks, drawn)) = self.unwritten() else {
            return;
        };
        let struck = drawn.all.is_empty();
        if struck && drawn.replaces.is_empty() {
            draft::drop_it(self.shop, self.draft());
            self.drawn.set(None);
            return;
        }
        let entry = match struck {
            true => Unwritten {
                says: Says::Struck,
                ..marks
            },
            false => marks,
        };
        let mut scribe = self.shop.scribe();
        match scribe.write(&entry) {
            Ok(written) => {
                scribe.drop_drafts.push(self.draft());
                let what = crate::picturing::told(self.shop, &scribe.entries);
                self.shop.save_then(scribe, what, move |stored| {
                    if stored {
                        self.saved_as(written, &drawn);
                    }
                });
            }
            Err(sentence) => self.shop.notice.set(Notice::Trouble(sentence)),
        }
    }

    /// What was saved is no draft any more; what was drawn meanwhile is one, in its place.
    fn saved_as(self, written: EntryId, saved: &Drawn) {
        match self.drawn.try_get_untracked().flatten() {
            Some(now) if now.all != saved.all => {
                let replaces = vec![written];
                self.drawn.try_set(Some(Drawn { replaces, ..now }));
                self.keep();
            }
            _ => {
                self.drawn.try_set(None);
            }
        }
        self.past.try_update_value(Vec::clear);
    }

    /// The picture with all that lies over it.
    pub fn picture(self, album: Album) -> Piece {
        let ears = || heard(move |event: Event| self.pointed(&event));
        sheet!(
            "<div class=board tabindex=0 role=application aria-label=\"The picture, to be marked: {}\" on:pointerdown={} \
             on:pointermove={} on:pointerup={} on:pointercancel={} on:keydown={}>{}{}</div>",
            "arrow keys move the cross, Enter sets a mark, Escape drops one begun",
            ears(),
            ears(),
            ears(),
            ears(),
            heard(move |event| self.keyed(&event)),
            live(move || {
                let shown = self.shown();
                sheet!(
                    "<div class=on-board data-tool={}>{}</div>",
                    self.tool.get().map(Tool::name),
                    shown.map(|shown| album.sight(shown))
                )
            }),
            live(move || self.being_drawn())
        )
    }

    fn shown(self) -> Option<Shown> {
        let opened = self.shop.opened.get()?;
        let view = opened.book.view();
        let vehicle = view.vehicle(opened.vehicle);
        let (entry, _) = entry(&vehicle, self.picture)?;
        Some(Shown {
            digest: self.picture,
            words: format!("Picture, {}", crate::wording::hand(entry)),
            marks: self.all(),
            erased: view.erased().contains(&self.picture),
        })
    }

    /// The mark that is being drawn, and the cross.
    fn being_drawn(self) -> Piece {
        let cross = self.cross.get();
        let tool = self.tool.get();
        let begun = self.stroke.get().zip(tool).and_then(|(stroke, tool)| {
            let mut spots = stroke.spots;
            spots.extend(cross.filter(|_| stroke.pointer.is_none()));
            mark(tool, spots)
        });
        let cross = cross.filter(|_| tool.is_some());
        sheet!(
            "{}{}",
            begun.map(|mark| marked::drawn(&[mark])),
            cross.map(marked::cross)
        )
    }

    fn pointed(self, event: &Event) {
        let (Some(pointer), Some(tool)) =
            (event.dyn_ref::<PointerEvent>(), self.tool.get_untracked())
        else {
            return;
        };
        let id = pointer.pointer_id();
        let mine = self.stroke.with_untracked(|stroke| {
            let by = stroke.as_ref().and_then(|stroke| stroke.pointer);
            by == Some(id)
        });
        match event.type_().as_str() {
            "pointerdown" if self.may_begin(pointer) => {
                if let Some((board, spot)) = touched(event, pointer) {
                    // A pointer that is gone already draws nothing more.
                    drop(board.set_pointer_capture(id));
                    let (pointer, spots) = (Some(id), vec![spot]);
                    self.cross.set(None);
                    self.stroke.set(Some(Stroke { pointer, spots }));
                }
            }
            "pointermove" if mine => self.drawn_on(tool, event, pointer),
            "pointerup" if mine => {
                self.drawn_on(tool, event, pointer);
                self.end(tool);
            }
            "pointercancel" if mine => self.stroke.set(None),
            _ => {}
        }
    }

    /// Whether a pointer that comes down draws: the first one, and no palm; a pen draws in the place of a finger.
    fn may_begin(self, pointer: &PointerEvent) -> bool {
        let pen = pointer.pointer_type() == "pen";
        let free = self.stroke.with_untracked(|stroke| {
            let by = stroke.as_ref().and_then(|stroke| stroke.pointer);
            by.is_none()
        });
        let palm = pointer.pointer_type() == "touch"
            && (pointer.width() > PALM || pointer.height() > PALM);
        pointer.button() == 0 && !palm && (pen || (free && pointer.is_primary()))
    }

    fn drawn_on(self, tool: Tool, event: &Event, pointer: &PointerEvent) {
        let Some((_, spot)) = touched(event, pointer) else {
            return;
        };
        self.stroke.update(|stroke| {
            let Some(stroke) = stroke else { return };
            let near =
                |last: &Spot| last.x.abs_diff(spot.x) < STEP && last.y.abs_diff(spot.y) < STEP;
            if tool == Tool::Pin {
                stroke.spots.clear();
            }
            if !stroke.spots.last().is_some_and(near) {
                stroke.spots.push(spot);
            }
            if stroke.spots.len() > MANY {
                stroke.spots = simplified(std::mem::take(&mut stroke.spots));
            }
        });
    }

    /// The mark is drawn; a tap where a line was to be is none.
    fn end(self, tool: Tool) {
        let stroke = self.stroke.try_update(Option::take).flatten();
        if let Some(mark) = stroke.and_then(|stroke| mark(tool, stroke.spots)) {
            let mut all = untrack(|| self.all());
            all.push(mark);
            self.change(all);
        }
    }

    fn keyed(self, event: &Event) {
        let (Some(key), Some(tool)) = (event.dyn_ref::<KeyboardEvent>(), self.tool.get_untracked())
        else {
            return;
        };
        let by = if key.shift_key() { MOVES.1 } else { MOVES.0 };
        let middle = Spot::at(500, 500);
        let at = self.cross.get_untracked().unwrap_or(middle);
        match key.key().as_str() {
            "ArrowLeft" => self.cross.set(Some(at.moved(-by, 0))),
            "ArrowRight" => self.cross.set(Some(at.moved(by, 0))),
            "ArrowUp" => self.cross.set(Some(at.moved(0, -by))),
            "ArrowDown" => self.cross.set(Some(at.moved(0, by))),
            "Escape" => self.stroke.set(None),
            "Enter" | " " => self.set_by_key(tool, at),
            _ => return,
        }
        event.prevent_default();
    }

    fn set_by_key(self, tool: Tool, at: Spot) {
        self.cross.set(Some(at));
        let begun = self.stroke.with_untracked(Option::is_some);
        if begun || tool == Tool::Pin {
            let mut stroke = self.stroke.get_untracked();
            let spots = stroke.take().map(|stroke| stroke.spots);
            let mut spots = spots.unwrap_or_default();
            spots.push(at);
            let pointer = None;
            self.stroke.set(Some(Stroke { pointer, spots }));
            self.end(tool);
        } else {
            let (pointer, spots) = (None, vec![at]);
            self.stroke.set(Some(Stroke { pointer, spots }));
        }
    }

    /// The keys that choose what is drawn, and how it is done.
    pub fn tools(self) -> Piece {
        let keys = move || {
            let keys = Tool::ALL.map(|tool| self.tool_key(tool));
            sheet!(
                "<div class=pad role=group aria-label=\"What to draw\">{}</div>",
                Vec::from(keys)
            )
        };
        let how = move || {
            let how = self
                .tool
                .get()
                .map_or("To mark the picture choose line, ring or pin.", Tool::how);
            let at = self.cross.get().filter(|_| self.tool.get().is_some());
            let at = at.map(|at| format!(" The cross: {}.", place(at)));
            sheet!("<p class=dim role=status>{}{}</p>", how, at)
        };
        sheet!("{}{}", live(keys), live(how))
    }

    fn tool_key(self, tool: Tool) -> Piece {
        let chosen = self.tool.get() == Some(tool);
        sheet!(
            "<button type=button class=key data-key={} aria-pressed={} on:click={}>{}</button>",
            tool.name(),
            if chosen { "true" } else { "false" },
            tap(move || {
                self.stroke.set(None);
                self.tool.set((!chosen).then_some(tool));
            }),
            cartside_core::words::capital(tool.name())
        )
    }

    /// *Undo* at the left, and the key that saves.
    pub fn bottom_keys(self) -> Piece {
        live(move || {
            if self.shown().is_none_or(|shown| shown.erased) {
                return nothing();
            }
            let unsaved = self.drawn.get().is_some();
            sheet!(
                "<div class=bottom-keys><button type=button class=key data-key=undo disabled={} on:click={}>Undo</button>\
                 <button type=button class=key data-key=save-marks disabled={} on:click={}>{}</button></div>",
                Hole::Flag(self.all().is_empty() && !unsaved),
                tap(move || self.undo()),
                Hole::Flag(!unsaved),
                tap(move || self.save()),
                if unsaved {
                    "Save the marks"
                } else {
                    "Nothing to save"
                }
            )
        })
    }
}

/// The mark that a stroke comes to.
fn mark(tool: Tool, spots: Vec<Spot>) -> Option<Mark> {
    match tool {
        Tool::Line => Mark::line(spots),
        Tool::Ring => Mark::ring(&spots),
        Tool::Pin => Some(Mark::Pin(spots.last().copied()?, String::new())),
    }
}

/// The board a pointer is on, and where on the picture it is.
fn touched(event: &Event, pointer: &PointerEvent) -> Option<(Element, Spot)> {
    let board: Element = event.current_target()?.dyn_into().ok()?;
    let lies = board.get_bounding_client_rect();
    let share = |at: i32, from: f64, long: f64| {
        ((f64::from(at) - from) / long.max(1.0) * 1000.0).round() as i32
    };
    let spot = Spot::at(
        share(pointer.client_x(), lies.left(), lies.width()),
        share(pointer.client_y(), lies.top(), lies.height()),
    );
    Some((board, spot))
}
