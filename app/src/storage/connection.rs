//! One open connection to a book's database: how it is opened, and how it lets go.

use super::error::{Refusal, StorageError};
use super::request::settled;
use super::shape::{VERSION, Which, build};
use js_sys::Reflect;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, IdbDatabase, IdbFactory, IdbOpenDbRequest, IdbVersionChangeEvent};

/// Why an open connection came to its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ended {
    /// The browser closed it, or the book was deleted from another tab.
    Closed,
    /// Another tab wants to give the book a newer shape.
    Newer,
}

/// An open connection. Closed when dropped.
pub(super) struct Connection {
    database: IdbDatabase,
    _on_change: Closure<dyn FnMut(IdbVersionChangeEvent)>,
    _on_close: Closure<dyn FnMut(Event)>,
}

impl Connection {
    /// Opens the book's database in one of the places where databases are kept, making its stores if it is new;
    /// `ended` is called once the connection is lost.
    pub(super) async fn open(
        which: Which,
        place: Option<&IdbFactory>,
        ended: impl Fn(Ended) + Clone + 'static,
    ) -> Result<Self, StorageError> {
        let usual = factory();
        let request = place
            .map_or(usual, |place| Ok(place.clone()))?
            .open_with_u32(which.database(), VERSION)
            .map_err(|thrown| StorageError::from_js(&thrown))?;
        let database = opened(request).await?;
        Ok(Self::listening(database, ended))
    }

    /// The database itself.
    pub(super) fn database(&self) -> &IdbDatabase {
        &self.database
    }

    fn listening(database: IdbDatabase, ended: impl Fn(Ended) + Clone + 'static) -> Self {
        let on_change = {
            let (database, ended) = (database.clone(), ended.clone());
            Closure::new(move |event: IdbVersionChangeEvent| {
                // Letting go at once is what keeps this tab from blocking the other one.
                database.close();
                ended(match event.new_version() {
                    Some(_) => Ended::Newer,
                    None => Ended::Closed,
                });
            })
        };
        let on_close = Closure::new(move |_: Event| ended(Ended::Closed));
        database.set_onversionchange(Some(on_change.as_ref().unchecked_ref()));
        database.set_onclose(Some(on_close.as_ref().unchecked_ref()));
        Self {
            database,
            _on_change: on_change,
            _on_close: on_close,
        }
    }
}

impl Drop for Connection {
    fn drop(&mut self) {
        self.database.set_onversionchange(None);
        self.database.set_onclose(None);
        self.database.close();
    }
}

/// Deletes a whole book. Tabs that hold it open are asked to let go and do.
pub(super) async fn delete(which: Which) -> Result<(), StorageError> {
    let request = factory()?
        .delete_database(which.database())
        .map_err(|thrown| StorageError::from_js(&thrown))?;
    answered(&request).await
}

async fn opened(request: IdbOpenDbRequest) -> Result<IdbDatabase, StorageError> {
    let upgrade = Closure::once(|event: Event| built(&event));
    request.set_onupgradeneeded(Some(upgrade.as_ref().unchecked_ref()));
    let answer = answered(&request).await;
    request.set_onupgradeneeded(None);
    answer?;
    request
        .result()
        .ok()
        .and_then(|result| result.dyn_into().ok())
        .ok_or(StorageError::Refused(Refusal::Unavailable))
}

fn built(event: &Event) -> Result<(), JsValue> {
    let request: IdbOpenDbRequest = event.target().ok_or(JsValue::NULL)?.dyn_into()?;
    build(&request.result()?.dyn_into()?)
}

async fn answered(request: &IdbOpenDbRequest) -> Result<(), StorageError> {
    let answer = settled(|done, failed| {
        request.set_onsuccess(Some(done));
        request.set_onerror(Some(failed));
        request.set_onblocked(Some(failed));
    });
    let Err(event) = answer.await else {
        return Ok(());
    };
    if event
        .dyn_ref::<Event>()
        .is_some_and(|event| event.type_() == "blocked")
    {
        close_when_late(request);
        return Err(StorageError::Refused(Refusal::Blocked));
    }
    let exception = request
        .error()
        .ok()
        .flatten()
        .map_or(JsValue::NULL, JsValue::from);
    Err(StorageError::from_js(&exception))
}

/// A connection that comes after it was given up must not stay open, or it would block others in its turn.
fn close_when_late(request: &IdbOpenDbRequest) {
    let late = Closure::once_into_js(|event: Event| {
        let result = event
            .target()
            .and_then(|target| Reflect::get(&target, &"result".into()).ok());
        if let Some(database) = result.and_then(|result| result.dyn_into::<IdbDatabase>().ok()) {
            database.close();
        }
    });
    request.set_onsuccess(Some(late.unchecked_ref()));
}

/// The browser's factory of databases; absent in some private windows and old embedded views.
fn factory() -> Result<IdbFactory, StorageError> {
    web_sys::window()
        .and_then(|window| window.indexed_db().ok().flatten())
        .ok_or(StorageError::Refused(Refusal::Unavailable))
}
