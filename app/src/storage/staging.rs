//! Pictures put beside the book before they belong to it.
//!
//! The bytes of all pictures of a file do not fit the memory of a telephone, and IndexedDB ends a transaction in which
//! anything but itself is waited for, so they cannot be read from the file within one. They are put down in batches
//! before it, each batch together with a record of its digests; the one transaction that adds the lines drops those
//! records, and with that the pictures belong to the book. Whatever is still recorded when a book is opened was left
//! by a page that was stopped or killed, and is cleared away.

use super::batch::NewPicture;
use super::device::random;
use super::error::StorageError;
use super::meta::{all, put};
use super::pictures::put_picture;
use super::shape::{META, PICTURES};
use super::store::Store;
use super::transaction::{Mode, Transaction};

/// How the names of the records of batches begin.
const BESIDE: &str = "beside/";

/// The batches of one bringing in.
#[derive(Clone, Debug, Default)]
pub struct Staged {
    /// The names of their records.
    names: Vec<String>,
}

impl Store {
    /// Puts a batch of pictures beside the book, wholly or not at all.
    ///
    /// # Errors
    /// Nothing of the batch was kept; earlier batches stay.
    pub async fn stage(
        &self,
        pictures: &[NewPicture],
        staged: &mut Staged,
    ) -> Result<(), StorageError> {
        let name = format!("{BESIDE}{}", random()?);
        let digests: Vec<&str> = pictures.iter().map(|one| one.digest.as_str()).collect();
        let digests = digests.join(" ");
        self.run(&[PICTURES, META], Mode::Write, async |transaction| {
            for picture in pictures {
                put_picture(transaction, picture)?;
            }
            put(transaction, &name, &digests)
        })
        .await?;
        staged.names.push(name);
        Ok(())
    }

    /// The digests of the pictures that lie beside the book.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn beside(&self) -> Result<Vec<String>, StorageError> {
        let records = self.metas(BESIDE).await?;
        let digests = records.iter().flat_map(|(_, digests)| digests.split(' '));
        Ok(digests.map(str::to_owned).collect())
    }

    /// Clears away every picture that lies beside the book.
    ///
    /// # Errors
    /// They are still there, and still do not belong to the book.
    pub async fn clear_beside(&self) -> Result<(), StorageError> {
        if self.metas(BESIDE).await?.is_empty() {
            return Ok(());
        }
        self.run(&[PICTURES, META], Mode::Write, async |transaction| {
            for (name, digests) in all(transaction, BESIDE).await? {
                for digest in digests.split(' ') {
                    transaction.delete(PICTURES, digest)?;
                }
                transaction.delete(META, &name)?;
            }
            Ok(())
        })
        .await
    }
}

/// Makes the pictures of these batches the book's, as long as all of them are still there.
pub(super) async fn take_up(
    transaction: &Transaction,
    staged: &Staged,
) -> Result<(), StorageError> {
    let names: Vec<&str> = staged.names.iter().map(String::as_str).collect();
    if transaction.present(META, &names).await?.contains(&false) {
        return Err(StorageError::Cleared);
    }
    for name in names {
        transaction.delete(META, name)?;
    }
    Ok(())
}
