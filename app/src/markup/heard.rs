//! Listeners on an element, and what an event brings.

use std::cell::RefCell;
use std::rc::Rc;

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, Event, HtmlInputElement};

use super::piece::Ear;

/// A listener that stands on an element. What it does can be exchanged without touching the element.
pub(super) struct Heard {
    event: &'static str,
    ear: Rc<RefCell<Ear>>,
    closure: Closure<dyn FnMut(Event)>,
}

impl Heard {
    /// Listens on an element.
    pub fn on(element: &Element, event: &'static str, ear: Ear) -> Heard {
        let ear = Rc::new(RefCell::new(ear));
        let inner = Rc::clone(&ear);
        let closure = Closure::<dyn FnMut(Event)>::new(move |heard| {
            // An event that arises from hearing one of the same kind here is not heard twice.
            if let Ok(mut ear) = inner.try_borrow_mut() {
                ear(heard);
            }
        });
        // A browser refuses only what is no function.
        drop(element.add_event_listener_with_callback(event, closure.as_ref().unchecked_ref()));
        Heard {
            event,
            ear,
            closure,
        }
    }

    /// Does this from now on, if it is for the same event.
    pub fn exchange(&self, event: &'static str, ear: Ear) -> Result<(), Ear> {
        match self.ear.try_borrow_mut() {
            Ok(mut now) if self.event == event => {
                *now = ear;
                Ok(())
            }
            _ => Err(ear),
        }
    }

    /// Listens no more.
    pub fn leave(self, element: &Element) {
        let callback = self.closure.as_ref().unchecked_ref();
        // What is not listened to any more cannot be taken away a second time.
        drop(element.remove_event_listener_with_callback(self.event, callback));
    }
}

/// The text that stands in the field the event comes from; none if it is no field.
pub fn typed(event: &Event) -> String {
    let target = event.target();
    let value = target.and_then(|target| js_sys::Reflect::get(&target, &"value".into()).ok());
    value
        .and_then(|value| value.as_string())
        .unwrap_or_default()
}

/// The file picked in the field the event comes from. The field is emptied, so that the same file can be picked again.
pub fn picked_file(event: &Event) -> Option<web_sys::File> {
    let field: HtmlInputElement = event.target()?.dyn_into().ok()?;
    let file = field.files().and_then(|files| files.get(0));
    field.set_value("");
    file
}
