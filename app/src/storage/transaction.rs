//! One transaction over a book: the stores it reaches, strict durability, and how it ends.

use super::asleep::{Watch, undo_asleep};
use super::error::StorageError;
use super::request::{Answer, End};
use js_sys::{Array, Function, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbDatabase, IdbIndex, IdbObjectStore, IdbTransaction};

/// How many keys are asked for one by one.
const FEW: usize = 64;

/// What a transaction may do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mode {
    /// Reads only; several may run at once.
    Read,
    /// Reads and writes, one at a time, on the device's disk before it is called complete.
    Write,
}

/// A running transaction. Between its requests nothing but its own requests may be waited for, or it ends.
pub(super) struct Transaction {
    transaction: IdbTransaction,
    end: End,
    _watch: Watch,
}

impl Transaction {
    /// Begins a transaction over the named stores.
    pub(super) fn begin(
        database: &IdbDatabase,
        stores: &[&str],
        mode: Mode,
    ) -> Result<Self, StorageError> {
        let transaction =
            begun(database, stores, mode).map_err(|thrown| StorageError::from_js(&thrown))?;
        let end = End::of(&transaction);
        let watch = undo_asleep(&transaction);
        Ok(Self {
            transaction,
            end,
            _watch: watch,
        })
    }

    /// One of its stores.
    pub(super) fn store(&self, name: &str) -> Result<IdbObjectStore, StorageError> {
        self.transaction
            .object_store(name)
            .map_err(|thrown| StorageError::from_js(&thrown))
    }

    /// An index of one of its stores.
    pub(super) fn index(&self, store: &str, name: &str) -> Result<IdbIndex, StorageError> {
        self.store(store)?
            .index(name)
            .map_err(|thrown| StorageError::from_js(&thrown))
    }

    /// Asks to put a record. Its failure ends the whole transaction, so it need not be waited for.
    pub(super) fn put(&self, store: &str, record: &JsValue) -> Result<(), StorageError> {
        self.store(store)?
            .put(record)
            .map(drop)
            .map_err(|thrown| StorageError::from_js(&thrown))
    }

    /// Asks to delete the record of a key; one that is not there is no fault.
    pub(super) fn delete(&self, store: &str, key: &str) -> Result<(), StorageError> {
        self.store(store)?
            .delete(&JsValue::from_str(key))
            .map(drop)
            .map_err(|thrown| StorageError::from_js(&thrown))
    }

    /// The record of a key, or undefined.
    pub(super) async fn get(&self, store: &str, key: &str) -> Result<JsValue, StorageError> {
        Answer::to(self.store(store)?.get(&JsValue::from_str(key)))?
            .wait()
            .await
    }

    /// Which of the keys are there, in their order. A few are asked for one by one; of many, all that are there are
    /// asked for at once, since each request takes its time (15 000 of them 3 s).
    pub(super) async fn present(
        &self,
        store: &str,
        keys: &[&str],
    ) -> Result<Vec<bool>, StorageError> {
        let store = self.store(store)?;
        if keys.len() > FEW {
            let all = Answer::to(store.get_all_keys())?.wait().await?;
            // IndexedDB gives keys in order.
            let all: Vec<String> = Array::from(&all)
                .iter()
                .filter_map(|key| key.as_string())
                .collect();
            let there = |key: &&str| {
                all.binary_search_by(|known| known.as_str().cmp(key))
                    .is_ok()
            };
            return Ok(keys.iter().map(there).collect());
        }
        let answers = keys
            .iter()
            .map(|key| Answer::to(store.get_key(&JsValue::from_str(key))))
            .collect::<Result<Vec<_>, _>>()?;
        let mut present = Vec::with_capacity(answers.len());
        for answer in answers {
            present.push(!answer.wait().await?.is_undefined());
        }
        Ok(present)
    }

    /// Waits for `complete` after the work is done.
    pub(super) async fn complete(self) -> Result<(), StorageError> {
        self.end.wait().await
    }

    /// Undoes everything after the work has failed and gives the reason, the transaction's own before that of the
    /// request which failed.
    pub(super) async fn undone(self, error: StorageError) -> StorageError {
        // Fails only when the transaction is over already, which the wait below then tells.
        let asked = self.transaction.abort().is_ok();
        match self.end.wait().await {
            Err(reason) if !asked || reason != StorageError::Gone => reason,
            _ => error,
        }
    }
}

fn begun(database: &IdbDatabase, stores: &[&str], mode: Mode) -> Result<IdbTransaction, JsValue> {
    let options = Object::new();
    if mode == Mode::Write {
        Reflect::set(&options, &"durability".into(), &"strict".into())?;
    }
    let names: Array = stores.iter().map(|name| JsValue::from_str(name)).collect();
    let word = match mode {
        Mode::Read => "readonly",
        Mode::Write => "readwrite",
    };
    // The typed binding with options is behind an unstable switch of web-sys.
    let begin: Function = Reflect::get(database, &"transaction".into())?.dyn_into()?;
    begin
        .call3(database, &names, &word.into(), &options)?
        .dyn_into()
}
