//! Killed at random moments while remarks are being saved one after the other: whatever the page said was saved is in
//! the book afterwards, whole. This shows order and atomicity, not what a loss of power does to a disk.

use std::collections::BTreeSet;
use std::env;
use std::time::{Duration, Instant};

use cartside_tests::drive::{Browser, Device, Engine};
use serde_json::{Value, json};

/// How often a browser is killed in one run, if nothing else is said: Chromium first, the others after it.
const KILLS: (u64, u64) = (20, 5);
/// Says how often instead.
const HOW_OFTEN: &str = "CARTSIDE_KILLS";

/// How many milliseconds it may write before a kill. In half of that, on two processors with nothing else to do, Chromium
/// saves 12 remarks, WebKit 10, Firefox 25.
const LONGEST: u64 = 600;

/// How many spokes the wheel has.
const SPOKES: u64 = 12;

/// How long the page is let be between two questions.
const PAUSE: Duration = Duration::from_millis(20);

/// Writes remarks without a pause and keeps in `acknowledged` what the page said was saved.
const WRITE: &str = r#"
window.acknowledged = [];
const area = document.querySelector("textarea");
const save = [...document.querySelectorAll("button")].find((key) => key.textContent === "Save the remark");
const until = (holds) => new Promise((done) => { const look = () => holds() ? done() : setTimeout(look, 1); look(); });
const notice = () => document.querySelector("[data-notice]");
(async () => {
  for (let n = 0; ; n++) {
    const words = `${arguments[0]}-${n}`;
    area.value = words;
    area.dispatchEvent(new Event("input", { bubbles: true }));
    save.click();
    await until(() => notice()?.dataset.notice === "saved" && notice().textContent.includes(words));
    window.acknowledged.push(words);
  }
})();"#;

/// Every remark that is written, and how many stored lines cannot be read.
const WRITTEN: &str = r#"
return {
  remarks: [...document.querySelectorAll("[data-entry]")].map((entry) => entry.textContent),
  odd: [...document.querySelectorAll("[data-oddity]")].map((odd) => odd.textContent),
};"#;

pub async fn nothing_acknowledged_is_lost_however_often_it_is_killed(engine: Engine) {
    let kills = env::var(HOW_OFTEN)
        .ok()
        .and_then(|often| often.parse().ok());
    let usual = match engine {
        Engine::Chromium => KILLS.0,
        Engine::Firefox | Engine::WebKit => KILLS.1,
    };
    let kills: u64 = kills.unwrap_or(usual);
    let device = engine.installed("only").await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.close().await;
    let mut acknowledged = BTreeSet::new();
    let mut chance = Chance::new();
    for kill in 0..kills {
        acknowledged.extend(write_until_killed(&device, &cart, kill, chance.next(LONGEST)).await);
    }
    let phone = device.open().await;
    phone.step("after the last kill");
    phone.see_vehicles(1).await;
    let written = everything(&phone, &cart).await;
    for words in &acknowledged {
        let kept = written
            .iter()
            .any(|entry| entry.contains(&format!("“{words}”")));
        phone
            .expect(kept, &format!("{words}, which was said to be saved"))
            .await;
    }
    println!(
        "figure: {kills} kills of {engine:?} survived, {} remarks acknowledged before them, none lost",
        acknowledged.len()
    );
    // A run in which hardly anything was being written shows nothing.
    let enough = acknowledged.len() as u64 >= kills;
    phone
        .expect(enough, "a remark acknowledged before most kills")
        .await;
    phone.close().await;
}

/// How often a browser is killed while the camera is open.
const KILLS_AT_THE_CAMERA: u64 = 3;

#[tokio::test]
async fn killed_while_the_camera_is_open_it_loses_nothing_and_says_what_never_came() {
    let device = Device::installed("only").await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.close().await;
    let mut chance = Chance::new();
    for kill in 0..KILLS_AT_THE_CAMERA {
        let phone = device.open().await;
        phone.open_part(&cart, "near/spoke-3").await;
        let told_before = phone.sees("[data-lost=picture]").await;
        phone
            .expect(
                told_before == (kill > 0),
                "what was lost by the kill before, and only that",
            )
            .await;
        let words = format!("before picture {kill}");
        phone.remark(&words).await;
        // The browser holds the chooser back and leaves the page waiting for it, as a camera does.
        let held = json!({ "enabled": true });
        phone
            .below("Page.setInterceptFileChooserDialog", held)
            .await;
        phone.tap_words("Take a picture").await;
        phone.see_no("[data-lost=picture]").await;
        phone
            .wait_for("the draft that waits for a picture", WAITS, json!([]))
            .await;
        tokio::time::sleep(Duration::from_millis(chance.next(400))).await;
        phone.step(&format!("kill {kill} at the camera"));
        phone.kill();
    }
    let phone = device.open().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.see("[data-lost=picture]").await;
    phone
        .see_so_many(KILLS_AT_THE_CAMERA as usize, "[data-remark]")
        .await;
    phone.see_no("img[data-picture]").await;
    phone.close().await;
}

/// Whether a draft of a picture is stored.
const WAITS: &str = r#"
return new Promise((done) => {
  const request = indexedDB.open("cartside");
  request.onsuccess = () => {
    const asked = request.result.transaction("drafts").objectStore("drafts").getAllKeys();
    asked.onsuccess = () => { request.result.close(); done(asked.result.some((name) => name.startsWith("picture/"))); };
  };
});"#;

/// Opens the book, writes for a while, is killed; what the page had acknowledged when it was last asked.
async fn write_until_killed(device: &Device, cart: &str, kill: u64, millis: u64) -> Vec<String> {
    let phone = device.open().await;
    // Each time on another page, so that none grows so long that it is drawn more than it is written on.
    let part = format!("near/spoke-{}", kill % SPOKES + 1);
    phone.open_part(cart, &part).await;
    phone.see("textarea").await;
    phone.step(&format!("kill {kill}, {millis} ms after the first remark"));
    phone.ask(WRITE, json!([format!("r{kill}")])).await;
    let until = Instant::now() + Duration::from_millis(millis);
    let mut acknowledged = Vec::new();
    while Instant::now() < until {
        let now = phone.ask("return window.acknowledged;", json!([])).await;
        acknowledged = words_of(&now);
        // Asked without a pause, the page would answer more than it writes.
        tokio::time::sleep(PAUSE).await;
    }
    phone.kill();
    acknowledged
}

async fn everything(phone: &Browser<'_>, cart: &str) -> Vec<String> {
    phone.count_everything_written(cart).await;
    let written = phone.ask(WRITTEN, json!([])).await;
    phone
        .expect_same("what is odd", words_of(&written["odd"]), vec![])
        .await;
    words_of(&written["remarks"])
}

fn words_of(list: &Value) -> Vec<String> {
    let words = list.as_array().into_iter().flatten();
    words.filter_map(Value::as_str).map(str::to_owned).collect()
}

/// Numbers nobody can foresee: which moment is hit must differ from run to run.
struct Chance(u64);

impl Chance {
    fn new() -> Chance {
        let now = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
        Chance(now.map_or(1, |since| since.as_nanos() as u64) | 1)
    }

    /// The next, below `end` (xorshift).
    fn next(&mut self, end: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % end
    }
}
