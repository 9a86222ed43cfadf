//! The shape of the database: its name, its version, its stores and their keys.

use js_sys::Reflect;
use wasm_bindgen::JsValue;
use web_sys::{IdbDatabase, IdbObjectStoreParameters};

/// The version of the stores' shape. The lines themselves are never changed by a new version.
pub(super) const VERSION: u32 = 1;

/// Entries {id, vehicle, arrival, n, line}, by id; looked up by vehicle, arrival and n.
pub(super) const ENTRIES: &str = "entries";
/// Pictures {digest, bytes, thumbnail, width, height}, by digest. Bytes are an ArrayBuffer: WebKit loses Blobs.
pub(super) const PICTURES: &str = "pictures";
/// Unaccepted typing and pictures waited for {name, text, bytes}, by name.
pub(super) const DRAFTS: &str = "drafts";
/// Rebuildable summaries {vehicle, schema, text}, by vehicle.
pub(super) const SUMMARIES: &str = "summaries";
/// What the device knows of itself {name, value}, by name.
pub(super) const META: &str = "meta";

/// The entries' index by vehicle.
pub(super) const BY_VEHICLE: &str = "vehicle";
/// The entries' index by the order in which they reached this device.
pub(super) const BY_ARRIVAL: &str = "arrival";
/// The entries' index by the counter of the book.
pub(super) const BY_N: &str = "n";

/// Which book: the user's own, or the one that shows how Cartside works. They share nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The user's own book.
    Own,
    /// The demonstration, which can be thrown away.
    Demonstration,
}

impl Which {
    /// The name of the book's database.
    pub fn database(self) -> &'static str {
        match self {
            Self::Own => "cartside",
            Self::Demonstration => "cartside-demonstration",
        }
    }

    /// The book whose database has this name.
    pub(super) fn named(name: &str) -> Option<Self> {
        [Self::Own, Self::Demonstration]
            .into_iter()
            .find(|which| which.database() == name)
    }
}

/// Makes the stores of version 1 in a database that has none.
pub(super) fn build(database: &IdbDatabase) -> Result<(), JsValue> {
    let entries = store(database, ENTRIES, "id")?;
    for index in [BY_VEHICLE, BY_ARRIVAL, BY_N] {
        entries.create_index_with_str(index, index)?;
    }
    store(database, PICTURES, "digest")?;
    store(database, DRAFTS, "name")?;
    store(database, SUMMARIES, "vehicle")?;
    store(database, META, "name")?;
    Ok(())
}

fn store(
    database: &IdbDatabase,
    name: &str,
    key: &str,
) -> Result<web_sys::IdbObjectStore, JsValue> {
    let parameters = IdbObjectStoreParameters::new();
    Reflect::set(&parameters, &"keyPath".into(), &key.into())?;
    database.create_object_store_with_optional_parameters(name, &parameters)
}
