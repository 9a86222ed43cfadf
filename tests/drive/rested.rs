//! Browsers of tests that have ended, for tests that come: a start of Firefox takes two seconds of a processor. Whoever
//! goes on with one finds nothing of the test before in it: its tabs are closed, its books deleted, its downloads gone.

use std::fs;
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex, PoisonError};

use thirtyfour::error::WebDriverResult;

use super::device::Home;
use super::early;
use super::engine::Engine;
use super::running::Running;

/// A browser that waits, on a device on which the app is installed.
#[derive(Debug)]
pub(super) struct Rested {
    /// The browser.
    pub(super) running: Running,
    /// Where it lives.
    pub(super) home: Arc<Home>,
}

/// Those that wait, each with the program that ends it.
static WAITING: Mutex<Vec<(Engine, Rested, Guard)>> = Mutex::new(Vec::new());

/// Deletes every database of the page's host and what else it was told to keep, but for the app itself; how many databases
/// are left.
const FORGET: &str = r#"
const deleted = ({ name }) => new Promise((done, failed) => {
  const request = indexedDB.deleteDatabase(name);
  request.onsuccess = done;
  request.onerror = request.onblocked = failed;
});
localStorage.clear();
sessionStorage.clear();
return indexedDB.databases()
  .then((all) => Promise.all(all.map(deleted)))
  .then(() => indexedDB.databases())
  .then((all) => all.length);"#;

/// Has the page's host leave nothing at all behind.
const FORGET_HOST: &str = r#"
const left = async () => {
  const installed = await navigator.serviceWorker.getRegistrations();
  await Promise.all(installed.map((registration) => registration.unregister()));
  await Promise.all((await caches.keys()).map((name) => caches.delete(name)));
  const books = await indexedDB.databases();
  books.forEach(({ name }) => indexedDB.deleteDatabase(name));
  localStorage.clear();
};
return left();"#;

impl Rested {
    /// Waits for a test that wants a browser of this engine.
    pub(super) fn wait(self, engine: Engine) {
        let guard = Guard::over(&self.running);
        waiting().push((engine, self, guard));
    }

    /// One that has waited, in which nothing of the test before is left; `still` is an address of the app that runs nothing.
    pub(super) async fn for_another(engine: Engine, still: &str) -> Option<Rested> {
        let mut found = {
            let mut all = waiting();
            let at = all.iter().position(|(of, ..)| *of == engine)?;
            all.swap_remove(at)
        };
        found.2.stand_down();
        // One that cannot be cleared is not used again.
        let cleared = found.1.clear(engine, still).await;
        cleared.is_ok_and(|left| left == Some(0)).then_some(found.1)
    }

    /// Has it forget a host that an earlier test may have had under the same address; `still` is a page of it that runs
    /// nothing.
    pub(super) async fn forget_host(&self, still: &str) -> WebDriverResult<()> {
        let session = self.running.session();
        session.goto(still).await?;
        session.execute(FORGET_HOST, Vec::new()).await?;
        session.goto("about:blank").await
    }

    /// Clears it; how many databases are left.
    async fn clear(&self, engine: Engine, still: &str) -> WebDriverResult<Option<u64>> {
        let session = self.running.session();
        early::forget(engine, session, self.home.profile.path()).await?;
        let before = session.windows().await?;
        let fresh = session.new_tab().await?;
        for old in before {
            session.switch_to_window(old).await?;
            session.close_window().await?;
        }
        session.switch_to_window(fresh).await?;
        session.goto(still).await?;
        let left = session.execute(FORGET, Vec::new()).await?;
        session.goto("about:blank").await?;
        for file in fs::read_dir(self.home.downloads.path())
            .into_iter()
            .flatten()
        {
            fs::remove_file(file?.path())?;
        }
        Ok(left.json().as_u64())
    }
}

fn waiting() -> std::sync::MutexGuard<'static, Vec<(Engine, Rested, Guard)>> {
    WAITING.lock().unwrap_or_else(PoisonError::into_inner)
}

/// A program that ends a waiting browser when this program ends, which nothing else would.
#[derive(Debug)]
struct Guard(Child);

impl Guard {
    fn over(running: &Running) -> Guard {
        let pids: Vec<String> = running.processes().iter().map(u32::to_string).collect();
        // What it reads from is closed when this program ends, in whatever way.
        let child = Command::new("sh")
            .args(["-c", "read -r _; kill -KILL \"$@\" 2>/dev/null", "sh"])
            .args(pids)
            .stdin(Stdio::piped())
            .spawn();
        Guard(child.expect("a shell starts"))
    }

    fn stand_down(&mut self) {
        // One that has ended by itself need not be ended.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}
