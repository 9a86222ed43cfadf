//! Carry the book out as a file.

use std::fs;
use std::time::{Duration, Instant};

use serde_json::json;

use crate::drive::{Browser, Carried};

const PATIENCE: Duration = Duration::from_secs(60);

impl Browser<'_> {
    /// Carries the book out and waits until the file lies in the downloads, whole.
    pub async fn carry_out(&self) -> Carried {
        self.open_day_book().await;
        self.tap_words("Carry out").await;
        self.see_page("carry-out").await;
        self.make_the_file().await
    }

    /// Chooses on the page what goes out: `vehicle/<id>` or `device/<name>`; nothing for the whole book.
    pub async fn choose_what_goes_out(&self, what: &str) {
        let script = r#"
const choice = find("[data-what]");
if (!choice) return false;
choice.value = arguments[0];
if (choice.value !== arguments[0]) return false;
choice.dispatchEvent(new Event("change", { bubbles: true }));
return true;"#;
        let expected = format!("{what} to choose from");
        self.wait_for(&expected, script, json!([what])).await;
    }

    /// Makes the file that is chosen and waits until it lies in the downloads, whole.
    pub async fn make_the_file(&self) -> Carried {
        self.tap_words("Make the file").await;
        self.let_the_file_out().await
    }

    /// Lets the file out that has been made, and waits until it lies in the downloads, whole.
    pub async fn let_the_file_out(&self) -> Carried {
        let name = self.attribute("[data-file]", "data-file").await;
        self.tap_words("Carry it out").await;
        let carried = self.in_the_downloads(&name).await;
        self.see_saved("went out as").await;
        carried
    }

    /// Waits until a file lies in the downloads, whole.
    pub async fn in_the_downloads(&self, name: &str) -> Carried {
        let until = Instant::now() + PATIENCE;
        loop {
            if let Some(file) = self.whole_download() {
                return file;
            }
            if Instant::now() > until {
                self.fail(&format!("a file called {name} in the downloads"))
                    .await;
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
    }

    /// Moves the one whole download aside, so that the next is not taken for it.
    fn whole_download(&self) -> Option<Carried> {
        let listed = fs::read_dir(self.device.downloads()).ok()?.flatten();
        let zip = listed
            .map(|entry| entry.path())
            .find(|path| path.extension().is_some_and(|end| end == "zip"))?;
        // The browser takes the name before there is anything under it.
        if fs::metadata(&zip).ok()?.len() == 0 {
            return None;
        }
        let aside = self.device.downloads().join("carried");
        fs::create_dir_all(&aside).ok()?;
        let number = fs::read_dir(&aside).ok()?.count();
        let path = aside.join(format!("{number}.zip"));
        fs::rename(zip, &path).ok()?;
        Some(Carried { path })
    }
}
