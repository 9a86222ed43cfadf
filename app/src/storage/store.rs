//! The store: one book open on this device, through which everything is kept and read.

use super::connection::{Connection, Ended, delete};
use super::error::StorageError;
use super::shape::Which;
use super::transaction::{Mode, Transaction};
use std::cell::{Cell, RefCell};
use std::pin::Pin;
use std::rc::{Rc, Weak};
use web_sys::{IdbDatabase, IdbFactory};

/// One book open on this device. A clone is the same store.
#[derive(Clone)]
pub struct Store {
    inner: Rc<Inner>,
}

struct Inner {
    which: Which,
    /// Where its database is kept, if not in the usual place.
    place: Option<IdbFactory>,
    /// Where everything saved is kept once more.
    second: RefCell<Option<Store>>,
    connection: RefCell<Option<Connection>>,
    newer: Cell<bool>,
    damaged: Cell<usize>,
    on_newer: RefCell<Option<Rc<dyn Fn()>>>,
}

impl Store {
    /// Opens a book, making an empty one if there is none.
    ///
    /// # Errors
    /// The browser refuses, the device is full, or the book has a newer shape than this Cartside knows.
    pub async fn open(which: Which) -> Result<Self, StorageError> {
        Self::open_in(which, None).await
    }

    /// The same in one of the places where databases are kept.
    pub(super) async fn open_in(
        which: Which,
        place: Option<IdbFactory>,
    ) -> Result<Self, StorageError> {
        let store = Self {
            inner: Rc::new(Inner {
                which,
                place,
                second: RefCell::new(None),
                connection: RefCell::new(None),
                newer: Cell::new(false),
                damaged: Cell::new(0),
                on_newer: RefCell::new(None),
            }),
        };
        store.database().await.map_err(StorageError::at_first)?;
        Ok(store)
    }

    /// Which book this is.
    pub fn which(&self) -> Which {
        self.inner.which
    }

    /// Keeps everything that is saved from now on in this store too.
    pub fn keep_twice(&self, second: Store) {
        *self.inner.second.borrow_mut() = Some(second);
    }

    /// Where everything saved is kept once more, if anywhere.
    pub fn second(&self) -> Option<Store> {
        self.inner.second.borrow().clone()
    }

    /// From now on what is saved is kept once only.
    pub(super) fn keep_once(&self) {
        let before = self.inner.second.borrow_mut().take();
        drop(before);
    }

    /// Calls back when another tab has opened the book with a newer Cartside: from then on this store saves
    /// nothing, every call answers [`StorageError::Newer`], and the page should ask to be reloaded.
    pub fn on_newer(&self, tell: impl Fn() + 'static) {
        *self.inner.on_newer.borrow_mut() = Some(Rc::new(tell));
    }

    /// How many stored records met since opening were not of the expected form and were left out of an answer.
    pub fn damaged(&self) -> usize {
        self.inner.damaged.get()
    }

    /// Throws the whole demonstration away, here and in every other tab. The own book is not touched.
    ///
    /// # Errors
    /// A tab of an older Cartside holds it, or the browser refuses.
    pub async fn delete_demonstration() -> Result<(), StorageError> {
        delete(Which::Demonstration)
            .await
            .map_err(StorageError::at_first)
    }

    /// Runs the work in one transaction; if the browser lost the connection, opens it and tries once more. What does
    /// not depend on the work is kept apart, so that it is compiled once.
    pub(super) async fn run<T>(
        &self,
        stores: &[&str],
        mode: Mode,
        work: impl AsyncFn(&Transaction) -> Result<T, StorageError>,
    ) -> Result<T, StorageError> {
        let mut again = true;
        loop {
            let done = match self.begun(stores, mode).await {
                Err(error) => Err(error),
                Ok(transaction) => {
                    let worked = work(&transaction).await;
                    let failed = worked.as_ref().err().cloned();
                    ended_with(transaction, failed).await.and(worked)
                }
            };
            match done {
                Ok(value) => return Ok(value),
                Err(error) => self.may_try_again(error, &mut again)?,
            }
        }
    }

    /// Keeps what could be read of the records and counts what could not.
    pub(super) fn readable<T>(&self, read: Vec<Option<T>>) -> Vec<T> {
        let asked = read.len();
        let kept: Vec<T> = read.into_iter().flatten().collect();
        let damaged = self.inner.damaged.get() + asked - kept.len();
        self.inner.damaged.set(damaged);
        kept
    }

    /// Boxed, as is the end of a transaction, so that not every kind of work has their states within its own: without
    /// that the download is larger by what the comment on weight says.
    fn begun<'s>(&'s self, stores: &'s [&str], mode: Mode) -> Waiting<'s, Transaction> {
        Box::pin(async move {
            let database = self.database().await?;
            Transaction::begin(&database, stores, mode)
        })
    }

    /// Lets a lost connection go and says that the work may be tried once more; any other fault is final. A connection
    /// lost to a newer Cartside is told as that, whatever the request itself said.
    fn may_try_again(&self, error: StorageError, again: &mut bool) -> Result<(), StorageError> {
        match error {
            StorageError::Gone if self.inner.newer.get() => Err(StorageError::Newer),
            StorageError::Gone if *again => {
                *again = false;
                self.inner.let_go();
                Ok(())
            }
            other => Err(other),
        }
    }

    async fn database(&self) -> Result<IdbDatabase, StorageError> {
        if self.inner.newer.get() {
            return Err(StorageError::Newer);
        }
        if let Some(database) = self.inner.open_database() {
            return Ok(database);
        }
        let inner = Rc::downgrade(&self.inner);
        let (which, place) = (self.inner.which, self.inner.place.as_ref());
        let connection = Connection::open(which, place, move |how| ended(&inner, how)).await?;
        let database = connection.database().clone();
        self.inner.keep(connection);
        Ok(database)
    }
}

/// Something to be waited for.
type Waiting<'s, T> = Pin<Box<dyn Future<Output = Result<T, StorageError>> + 's>>;

/// Waits for the end of a transaction: its completion, or its undoing where the work has failed.
fn ended_with(transaction: Transaction, failed: Option<StorageError>) -> Waiting<'static, ()> {
    Box::pin(async move {
        match failed {
            None => transaction.complete().await,
            Some(error) => Err(transaction.undone(error).await),
        }
    })
}

impl Inner {
    fn open_database(&self) -> Option<IdbDatabase> {
        let connection = self.connection.borrow();
        connection.as_ref().map(|open| open.database().clone())
    }

    fn keep(&self, connection: Connection) {
        let before = self.connection.borrow_mut().replace(connection);
        drop(before);
    }

    fn let_go(&self) {
        let before = self.connection.borrow_mut().take();
        drop(before);
    }
}

/// Runs inside the connection's own event handler, so the connection is only dropped in a later turn.
fn ended(inner: &Weak<Inner>, how: Ended) {
    let Some(inner) = inner.upgrade() else {
        return;
    };
    inner.newer.set(inner.newer.get() || how == Ended::Newer);
    let lost = inner.connection.borrow_mut().take();
    wasm_bindgen_futures::spawn_local(async move {
        drop(lost);
        let tell = inner.on_newer.borrow().clone();
        if let (Ended::Newer, Some(tell)) = (how, tell) {
            tell();
        }
    });
}
