//! The device's identity: random, made at the first start, kept with the book and never carried out.

use super::error::StorageError;
use super::meta::put;
use super::record::text;
use super::shape::META;
use super::store::Store;
use super::transaction::Mode;

/// The name under which the identity is kept.
const DEVICE: &str = "device";
/// The name under which those are kept that it has given up.
const EARLIER: &str = "device-before";

/// How many random bytes an identity has.
const BYTES: usize = 16;

impl Store {
    /// This device's identity, 32 hexadecimal digits; made and kept if there is none yet.
    ///
    /// # Errors
    /// The book cannot be reached, or the browser has no random numbers.
    pub async fn device(&self) -> Result<String, StorageError> {
        let fresh = random()?;
        self.run(&[META], Mode::Write, async |transaction| {
            let kept = text(&transaction.get(META, DEVICE).await?, "value");
            if let Some(kept) = kept.filter(|kept| is_identity(kept)) {
                return Ok(kept);
            }
            put(transaction, DEVICE, &fresh)?;
            Ok(fresh.clone())
        })
        .await
    }

    /// Gives the device a new identity, for one that meets its own name in lines it did not write.
    ///
    /// # Errors
    /// The old identity stands.
    pub async fn rename_device(&self) -> Result<String, StorageError> {
        let fresh = random()?;
        let now = self.device().await?;
        let mut earlier = self.earlier_names().await?;
        earlier.push(now);
        self.run(&[META], Mode::Write, async |transaction| {
            put(transaction, EARLIER, &earlier.join(" "))?;
            put(transaction, DEVICE, &fresh)
        })
        .await?;
        Ok(fresh)
    }

    /// The names this device has given up: what they wrote was written here, or on a device it was copied from.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn earlier_names(&self) -> Result<Vec<String>, StorageError> {
        let kept = self.meta(EARLIER).await?.unwrap_or_default();
        Ok(kept.split_whitespace().map(str::to_owned).collect())
    }
}

fn is_identity(text: &str) -> bool {
    text.len() == 2 * BYTES && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
}

pub(super) fn random() -> Result<String, StorageError> {
    let mut bytes = [0; BYTES];
    web_sys::window()
        .and_then(|window| window.crypto().ok())
        .and_then(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).ok())
        .ok_or_else(|| StorageError::other("no random numbers"))?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

#[cfg(test)]
mod tests {
    use super::is_identity;

    #[test]
    fn only_thirty_two_small_hexadecimal_digits_are_an_identity() {
        assert!(is_identity("70689bb996fee880d086320a670602fa"));
        assert!(!is_identity("70689bb996fee880d086320a670602f"));
        assert!(!is_identity("70689BB996FEE880D086320A670602FA"));
        assert!(!is_identity("70689bb996fee880d086320a670602fé"));
        assert!(!is_identity(""));
    }
}
