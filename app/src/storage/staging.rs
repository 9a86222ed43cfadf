//! Pictures put beside the book before they belong to it.
//!
//! The bytes of all pictures of a file do not fit the memory of a telephone, and IndexedDB ends a transaction in which
//! anything but itself is waited for, so they cannot be read from the file within one. They are put down in batches
//! before it, each batch together with a record of its digests; the one transaction that adds the lines drops those
//! records, and with that the pictures belong to the book. Whatever is still recorded when a book is opened was left
//! by a page that was stopped or killed, and is cleared away.

use super::batch::{Batch, NewPicture};
use super::device::random;
use super::error::StorageError;
use super::store::Store;

/// How the names of the records of batches begin.
const BESIDE: &str = "beside/";

impl Store {
    /// Puts a batch of pictures beside the book, wholly or not at all, and gives the name of its record.
    ///
    /// # Errors
    /// Nothing of the batch was kept; earlier batches stay.
    pub async fn stage(&self, pictures: Vec<NewPicture>) -> Result<String, StorageError> {
        let name = format!("{BESIDE}{}", random()?);
        let digests: Vec<&str> = pictures.iter().map(|one| one.digest.as_str()).collect();
        let put_metas = vec![(name.clone(), digests.join(" "))];
        let batch = Batch {
            pictures,
            put_metas,
            ..Batch::default()
        };
        self.save(batch).await?;
        Ok(name)
    }

    /// The digests of the pictures that lie beside the book.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn beside(&self) -> Result<Vec<String>, StorageError> {
        Ok(self.lying_beside().await?.erase_pictures)
    }

    /// Clears away every picture that lies beside the book.
    ///
    /// # Errors
    /// They are still there, and still do not belong to the book.
    pub async fn clear_beside(&self) -> Result<(), StorageError> {
        let clearing = self.lying_beside().await?;
        if !clearing.drop_metas.is_empty() {
            self.save(clearing).await?;
        }
        Ok(())
    }

    /// The step that would clear away all that lies beside the book.
    async fn lying_beside(&self) -> Result<Batch, StorageError> {
        let mut clearing = Batch::default();
        for (name, digests) in self.metas(BESIDE).await? {
            let digests = digests.split(' ').map(str::to_owned);
            clearing.erase_pictures.extend(digests);
            clearing.drop_metas.push(name);
        }
        Ok(clearing)
    }
}
