//! Waiting for one answer of IndexedDB, or for the end of a transaction.
//!
//! Written against the browser's own interface because `indexed_db_futures` 0.6.4 reports a transaction that
//! aborts at its commit without the reason, and "no room left" arrives exactly there.

use super::error::StorageError;
use js_sys::{Function, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbRequest, IdbTransaction};

/// One request already made, whose answer can be waited for. The handlers are set at once, so several requests
/// can be made first and waited for in turn.
pub(super) struct Answer {
    request: IdbRequest,
    settled: JsFuture,
}

impl Answer {
    /// Takes the request as the browser returned it.
    pub(super) fn to(request: Result<IdbRequest, JsValue>) -> Result<Self, StorageError> {
        let request = request.map_err(|thrown| StorageError::from_js(&thrown))?;
        let settled = settled(|done, failed| {
            request.set_onsuccess(Some(done));
            request.set_onerror(Some(failed));
        });
        Ok(Self { request, settled })
    }

    /// The result of the request, or the reason of its failure.
    pub(super) async fn wait(self) -> Result<JsValue, StorageError> {
        match self.settled.await {
            Ok(_) => self
                .request
                .result()
                .map_err(|thrown| StorageError::from_js(&thrown)),
            Err(_) => Err(reason(self.request.error().ok().flatten())),
        }
    }
}

/// The end of a transaction: `complete`, or `abort` with its reason.
pub(super) struct End {
    transaction: IdbTransaction,
    settled: JsFuture,
}

impl End {
    /// Listens from now on; must be made in the same turn as the transaction.
    pub(super) fn of(transaction: &IdbTransaction) -> Self {
        let settled = settled(|done, failed| {
            transaction.set_oncomplete(Some(done));
            transaction.set_onabort(Some(failed));
        });
        Self {
            transaction: transaction.clone(),
            settled,
        }
    }

    /// Returns only after the browser has said `complete`. An abort without a reason means that the connection
    /// was closed under the transaction.
    pub(super) async fn wait(self) -> Result<(), StorageError> {
        match self.settled.await {
            Ok(_) => Ok(()),
            Err(_) => Err(reason(self.transaction.error())),
        }
    }
}

fn reason(exception: Option<web_sys::DomException>) -> StorageError {
    exception.map_or(StorageError::Gone, |exception| {
        StorageError::from_js(exception.as_ref())
    })
}

/// A promise whose own two functions serve as event handlers, so that no closure has to be kept alive.
pub(super) fn settled(mut listen: impl FnMut(&Function, &Function)) -> JsFuture {
    JsFuture::from(Promise::new(&mut |done: Function, failed: Function| {
        listen(done.unchecked_ref(), failed.unchecked_ref());
    }))
}
