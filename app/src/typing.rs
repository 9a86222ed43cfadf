//! What is typed and not yet saved. Each text field of a page is kept as a draft under the page's address and the
//! field's label. It outlives the page, stands in its field again when the page is opened again, and is dropped once
//! a step of that page is saved and the field is empty or gone.

use js_sys::Reflect;
use leptos::prelude::{document, window};
use leptos::task::spawn_local;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, Event, EventInit, HtmlElement};

use crate::draft;
use crate::markup::typed;
use crate::workshop::Workshop;

/// The fields whose typing is kept: what is written into the book, and nothing that only searches.
const KEPT: &str = "main label.field input:is([type=text], [type=date]), main label.field textarea";

/// Marks the label of a field in which something stands again; the style says so in words.
const RESTORED: &str = "data-restored";

/// A field in which something was entered since it was put up has this property: what was read of its draft before that
/// may be older, and must not come in its place.
const ENTERED: &str = "cartsideEntered";

/// Keeps what is typed from now on.
pub fn listen(shop: Workshop) {
    let ear = Closure::<dyn FnMut(Event)>::new(move |event: Event| {
        let target = event.target().and_then(|it| it.dyn_into::<Element>().ok());
        if let Some(field) = target.filter(|field| field.matches(KEPT).unwrap_or(false))
            && let Some(label) = label_of(&field)
        {
            // An event of our own puts back what is kept already.
            if event.is_trusted() {
                drop(label.remove_attribute(RESTORED));
            }
            drop(Reflect::set(&field, &ENTERED.into(), &JsValue::TRUE));
            draft::keep(shop, name(&page(), &label), typed(&event));
        }
    });
    let heard = ear.as_ref().unchecked_ref();
    // A browser without events shows no page either.
    drop(document().add_event_listener_with_callback("input", heard));
    ear.forget();
}

/// The address of the page that shows, from the `#` on.
pub fn page() -> String {
    window().location().hash().unwrap_or_default()
}

fn label_of(field: &Element) -> Option<Element> {
    field.closest("label").ok().flatten()
}

/// The name of a draft: its page, then the words of the label.
fn name(page: &str, label: &Element) -> String {
    let words = label.text_content().unwrap_or_default();
    format!("{}{words}", beginning(page))
}

fn beginning(page: &str) -> String {
    format!("typed/{page} ")
}

fn field(name: &str, page: &str) -> Option<Element> {
    let fields = document().query_selector_all(KEPT).ok()?;
    let all = (0..fields.length()).filter_map(|at| fields.get(at)?.dyn_into::<Element>().ok());
    all.into_iter()
        .find(|field| label_of(field).is_some_and(|label| self::name(page, &label) == name))
}

/// The drafts of every field that is on the page, for a step that keeps all of them.
pub fn kept_here() -> Vec<String> {
    let page = page();
    let Ok(fields) = document().query_selector_all(KEPT) else {
        return Vec::new();
    };
    let all = (0..fields.length()).filter_map(|at| fields.get(at)?.dyn_into::<Element>().ok());
    all.filter_map(|field| Some(name(&page, &label_of(&field)?)))
        .collect()
}

fn text_in(field: &Element) -> String {
    let value = Reflect::get(field, &"value".into());
    value
        .ok()
        .and_then(|value| value.as_string())
        .unwrap_or_default()
}

/// Puts what was typed on the page that shows back into its fields. What stands there already is dropped, and what
/// has been typed meanwhile stays.
pub fn put_back(shop: Workshop) {
    spawn_local(async move {
        let page = page();
        for (name, text) in draft::all(shop, &beginning(&page)).await {
            match field(&name, &page) {
                // What was put back a moment ago is not saved yet, nor is what is being typed.
                Some(field) if is_entered(&field) || is_focused(&field) => {}
                Some(field) if text_in(&field) != text => put(&field, &text),
                Some(_) => draft::drop_it(shop, name),
                _ => {}
            }
        }
    });
}

fn is_entered(field: &Element) -> bool {
    Reflect::get(field, &ENTERED.into()).is_ok_and(|entered| entered.is_truthy())
}

fn is_focused(field: &Element) -> bool {
    document().active_element().as_ref() == Some(field)
}

fn put(field: &Element, text: &str) {
    enter(field, text);
    if let Some(label) = label_of(field) {
        drop(label.set_attribute(RESTORED, ""));
        // What stands again is not to be overlooked in a part that is folded.
        if let Ok(Some(fold)) = label.closest("details") {
            drop(fold.set_attribute("open", ""));
        }
    }
}

/// Types something behind what stands in the first field within what matches, and leaves the focus there.
pub fn type_on(css: &str, more: &str) {
    let field = document()
        .query_selector(&format!("{css} input"))
        .ok()
        .flatten();
    if let Some(field) = field.and_then(|field| field.dyn_into::<HtmlElement>().ok()) {
        enter(&field, &(text_in(&field) + more));
        drop(field.focus());
    }
}

/// Puts a text into a field, which the page's own ear takes as if it were typed.
fn enter(field: &Element, text: &str) {
    let set = Reflect::set(field, &"value".into(), &JsValue::from_str(text));
    let init = EventInit::new();
    init.set_bubbles(true);
    if let (Ok(true), Ok(event)) = (set, Event::new_with_event_init_dict("input", &init)) {
        drop(field.dispatch_event(&event));
    }
}

/// Puts what a key stands for into the field with this label, so that it is kept as what is typed there.
pub fn choose(label: &str, text: &str) {
    let page = page();
    if let Some(field) = field(&format!("{}{label}", beginning(&page)), &page) {
        if let Some(label) = label_of(&field) {
            drop(label.remove_attribute(RESTORED));
        }
        enter(&field, text);
    }
}

/// After a step of a page is saved: drops what was typed there and is no longer in its field.
pub fn sweep(shop: Workshop, page: String) {
    spawn_local(async move {
        for (name, _) in draft::all(shop, &beginning(&page)).await {
            let stays = self::page() == page
                && field(&name, &page).is_some_and(|field| !text_in(&field).is_empty());
            if !stays {
                draft::drop_it(shop, name);
            }
        }
    });
}
