//! Every screen there is, put up one after the other in one browser: each page in the demonstration and in a book with
//! nothing in it, and the states a page can be in that look different. What a test asks of a screen it asks of all.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use cartside_core::survey::Question;
use cartside_tests::drive::album::album;
use cartside_tests::drive::{Browser, Device, programs};
use serde_json::json;

/// The pages that stand for a moment while something is fetched, and are gone before they could be looked at.
const PASSING: [&str; 1] = ["wait"];

/// Makes every opening of a database fail as a browser does that grants no storage.
const REFUSE: &str = r#"
IDBFactory.prototype.open = () => { throw new DOMException("storage is switched off", "SecurityError"); };"#;

/// Opens whatever is folded, so that it is looked at too.
const UNFOLD: &str = "for (const fold of document.querySelectorAll(\"details\")) fold.open = true;";

/// The walk so far: the screens that were put up, by the names of their pages.
struct Walk<'b, 'd, Look> {
    phone: &'b Browser<'d>,
    look: Look,
    seen: BTreeSet<String>,
}

/// Puts up every screen of a device that has just been opened, and looks at each; the look is told what it sees.
pub async fn walk(phone: &Browser<'_>, device: &Device, look: impl AsyncFnMut(&str)) {
    let seen = BTreeSet::new();
    let mut walk = Walk { phone, look, seen };
    walk.nothing_written().await;
    walk.demonstration().await;
    walk.own_book(device).await;
    walk.in_trouble().await;
    let expected = "every page that the app names put up, and none else";
    phone.expect_same(expected, walk.seen, named()).await;
}

/// The names of all pages, as the app's own source gives them.
fn named() -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    gather(&programs::root().join("app/src"), &mut found);
    for passing in PASSING {
        assert!(found.remove(passing), "there is a page “{passing}”");
    }
    found
}

fn gather(folder: &Path, found: &mut BTreeSet<String>) {
    for entry in fs::read_dir(folder).expect("the app's source is there") {
        let path = entry.expect("it can be listed").path();
        if path.is_dir() {
            gather(&path, found);
            continue;
        }
        let source = fs::read_to_string(&path).expect("it is text");
        let mut after = source.split("data-page=").skip(1);
        after.by_ref().for_each(|rest| {
            let name = rest.split(|sign: char| !sign.is_ascii_lowercase() && sign != '-');
            found.extend(
                name.take(1)
                    .filter(|name| !name.is_empty())
                    .map(str::to_owned),
            );
        });
    }
}

impl<Look: AsyncFnMut(&str)> Walk<'_, '_, Look> {
    /// Opens an address and looks at the page of this name.
    async fn at(&mut self, page: &str, address: &str) {
        self.phone.go(address).await;
        self.phone.see_page(page).await;
        self.here(page, "").await;
    }

    /// Looks at what is there now; the words tell which state of the page it is.
    async fn here(&mut self, page: &str, state: &str) {
        self.seen.insert(page.to_owned());
        self.phone.ask(UNFOLD, json!([])).await;
        let what = format!("{page}{}{state}", if state.is_empty() { "" } else { ", " });
        self.phone.step(&what);
        (self.look)(&what).await;
    }

    /// A book in which nothing is written.
    async fn nothing_written(&mut self) {
        let nobody = format!("#/vehicle/{}", "0".repeat(64));
        for (page, address) in [
            ("book", "#/"),
            ("kept", "#/kept"),
            ("carry-out", "#/carry-out"),
            ("bring-in", "#/bring-in"),
            ("preferences", "#/preferences"),
            ("limits", "#/limits"),
            ("words", "#/words"),
            ("unknown", "#/nowhere"),
            ("unknown", nobody.as_str()),
        ] {
            self.at(page, address).await;
        }
        self.at("begin", "#/begin").await;
    }

    async fn demonstration(&mut self) {
        let phone = self.phone;
        phone.open_day_book().await;
        phone.tap_words("Open the demonstration").await;
        phone.see_the_demonstration().await;
        phone.see_so_many(2, "[data-vehicle]").await;
        self.here("book", "the demonstration").await;
        for (page, address) in [
            ("carry-out", "#/carry-out"),
            ("bring-in", "#/bring-in"),
            ("preferences", "#/preferences"),
            ("kept", "#/kept"),
        ] {
            self.at(page, address).await;
        }
        let [cart, waggon] = self.both().await;
        let cart = format!("#/vehicle/{cart}");
        self.of_the_cart(&cart).await;
        self.asked(&cart).await;
        self.reports(&cart).await;
        for page in ["", "/wheel/near-hind", "/changes", "/disputes", "/entries"] {
            let name = page.split('/').nth(1).unwrap_or("vehicle");
            self.at(name, &format!("#/vehicle/{waggon}{page}")).await;
        }
        self.limits().await;
        phone.open_day_book().await;
        phone.tap_words("Back to my own book").await;
        phone.see_my_own_book().await;
        phone.see_words("main", "Nothing is written yet").await;
    }

    /// The hay cart and the waggon.
    async fn both(&self) -> [String; 2] {
        let script = r#"
// What is out of sight is not laid out, and has words all the same.
const of = (words) => [...document.querySelectorAll("[data-vehicle]")].find((e) => e.textContent.includes(words))?.dataset.vehicle;
const both = [of("Hay cart"), of("Harvest waggon")];
return both.every(Boolean) && both;"#;
        self.phone.open_day_book().await;
        let both = self
            .phone
            .wait_for("a hay cart and a waggon", script, json!([]));
        serde_json::from_value(both.await).expect("two names")
    }

    async fn of_the_cart(&mut self, cart: &str) {
        for (page, rest) in [
            ("vehicle", ""),
            ("entries", "/entries"),
            ("changes", "/changes"),
            ("disputes", "/disputes"),
            ("same-as", "/same-as"),
            ("examination", "/examination"),
            ("first-look", "/first-look"),
            ("wheel", "/wheel/near"),
            ("wheel", "/wheel/off"),
            ("wheel", "/wheel/near-fore"),
            ("build", "/build/near"),
            ("decide", "/decide/near"),
            ("decide", "/decide/off"),
            ("work", "/work/near"),
            ("tyring", "/tyring/near"),
            ("tyring", "/tyring/near-fore"),
            ("part", "/part/near/spoke-3"),
            ("part", "/part/near/joint-5"),
            ("part", "/part/off/nave"),
            ("part", "/part/vehicle"),
            ("part", "/part/near/whole"),
        ] {
            self.at(page, &format!("{cart}{rest}")).await;
        }
        let phone = self.phone;
        phone.go(&format!("{cart}/part/near/spoke-3")).await;
        phone.see_page("part").await;
        phone.open_picture().await;
        self.here("picture", "").await;
        phone.go(&format!("{cart}/tyring/off")).await;
        phone.see_page("tyring").await;
        phone.write_into("Wheel, round the sole", "4241").await;
        phone.write_into("Draw wanted, round", "14").await;
        phone.see("[data-sheet=year]").await;
        self.here("tyring", "reckoned").await;
        phone.tap_key("out-of-the-fire").await;
        phone.see("[role=timer]").await;
        self.here("tyring", "out of the fire").await;
        phone.tap_key("it-lies").await;
        phone.go(&format!("{cart}/decide/near")).await;
        phone.see_page("decide").await;
        phone.tap_choice("standing", "no-fault-found").await;
        phone.tap("[data-key=sign]").await;
        phone.see("[role=alert]").await;
        self.here("decide", "refused").await;
    }

    /// The screens at the cart, in each of their states.
    async fn asked(&mut self, cart: &str) {
        let phone = self.phone;
        let ask = |rest: &str| format!("{cart}/ask/{rest}");
        // One of each kind of pad, where places are answered and where none is.
        for question in [
            Question::KeeperPresent,
            Question::KeeperWorn,
            Question::TyreGap,
            Question::TyreRing,
            Question::JointGap,
            Question::SpokeFoot,
            Question::CrackFelloe,
            Question::RotFelloe,
            Question::Bonds,
            Question::Moisture,
            Question::Dish,
            Question::Shake,
        ] {
            let code = question.code();
            self.at("ask", &ask(&format!("near/{code}"))).await;
        }
        // In dispute; every place answered; no such wheel.
        for rest in [
            "near/joint-gap/joint-5",
            "off/joint-gap",
            "near-fore/joint-gap",
        ] {
            self.at("ask", &ask(rest)).await;
        }
        phone.go(&ask("near/joint-gap/joint-2")).await;
        phone.see_at("joint-2").await;
        phone.tap_key("measure").await;
        phone.see("[data-digit]").await;
        self.here("ask", "the number pad").await;
        phone.tap_digits(&["9", "9", "9", "9"]).await;
        phone.tap_key("accept").await;
        phone.see_words("[role=alert]", "9999").await;
        self.here("ask", "a number refused").await;
        phone.go(&ask("near/spoke-foot/spoke-4")).await;
        phone.see_at("spoke-4").await;
        phone.tap_key("other-place").await;
        phone.see_no("[data-key=tight]").await;
        self.here("ask", "another place").await;
        phone.go(&ask("near/spoke-foot/spoke-5")).await;
        phone.answer("spoke-5", "loose", "spoke 5").await;
        phone.see("[data-key=undo]:not(:disabled)").await;
        self.here("ask", "saved").await;
        phone.go(&format!("{cart}/first-look")).await;
        phone.see_page("first-look").await;
        phone.look_first("near", "first-keeper", "no").await;
        phone.tap("[data-lift] [data-answer=no]").await;
        phone.see("[data-lift=no]").await;
        self.here("first-look", "a bad answer").await;
        phone.go(&ask("near/end-play")).await;
        phone.see("[data-barred]").await;
        self.here("ask", "not safe to lift, its cautions").await;
    }

    async fn reports(&mut self, cart: &str) {
        let phone = self.phone;
        let vehicle = cart.trim_start_matches("#/vehicle/");
        for cut in ["owner", "full", "show-card"] {
            phone.open_report(vehicle, cut).await;
            self.here("report", cut).await;
        }
        phone.go(cart).await;
        phone.tap("[data-visit]").await;
        self.here("earlier", "").await;
        phone.open_report(vehicle, "owner").await;
        phone.hand_over("Mrs Bell, Mill Farm").await;
        phone.open_handed_over().await;
        self.here("told", "").await;
    }

    async fn limits(&mut self) {
        self.at("limits", "#/limits").await;
        let rows = self
            .phone
            .attributes("main a[href^='#/limits/']", "href")
            .await;
        let row = rows.first().expect("there are limits");
        self.at("limit", row).await;
    }

    /// The own book, with a cart in it that was hardly looked at, and files that go out and come in.
    async fn own_book(&mut self, device: &Device) {
        let phone = self.phone;
        phone.go("#/begin").await;
        phone.tap_choice("kind", "cart").await;
        phone.tap_choice("wheels", "all").await;
        phone.tap_choice("spokes", "12").await;
        phone.see("[data-step=felloes]").await;
        self.here("begin", "the last step").await;
        let cart = phone.begin_a_cart().await;
        self.here("vehicle", "nothing looked at").await;
        for (page, rest) in [("wheel", "wheel/near"), ("ask", "ask/near/spoke-foot")] {
            self.at(page, &format!("#/vehicle/{cart}/{rest}")).await;
        }
        self.at("book", "#/").await;
        self.at("kept", "#/kept").await;
        phone.go("#/carry-out").await;
        phone.tap_words("Make the file").await;
        phone.see("[data-file]").await;
        self.here("carry-out", "the file is made").await;
        self.files(device).await;
    }

    async fn files(&mut self, device: &Device) {
        let phone = self.phone;
        let file = device.downloads().join("coming-in.zip");
        fs::write(&file, b"no book").unwrap();
        phone.choose_to_bring_in(&file).await;
        phone.see("[data-refused]").await;
        self.here("bring-in", "a file refused").await;
        let album = album(1, 20_000);
        fs::write(&file, &album.file).unwrap();
        phone.choose_to_bring_in(&file).await;
        phone.see_it_would_add(album.entries, 1).await;
        self.here("bring-in", "the dry run").await;
        phone.tap_words("Bring it in").await;
        phone.see("[data-added]").await;
        self.here("bring-in", "brought in").await;
    }

    /// What shows only when something went wrong.
    async fn in_trouble(&mut self) {
        let phone = self.phone;
        phone.open_day_book().await;
        let stop = "window.dispatchEvent(new Event(\"cartside-panic\"));";
        phone.ask(stop, json!([])).await;
        phone.see("#reload-panel").await;
        self.here("book", "the panel of a stop").await;
        phone.before_each_page(REFUSE).await;
        phone.reload().await;
        phone.see_page("refused").await;
        self.here("refused", "").await;
    }
}
