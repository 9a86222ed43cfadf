//! A portion of the book carried out: one vehicle with all it rests on, or what is new for a device.

use std::collections::BTreeSet;
use std::fs;

use cartside_core::daybook::Digest;
use cartside_core::paper::exchange::Scope;
use cartside_tests::drive::album::album;
use cartside_tests::drive::{Browser, Device};
use serde_json::{Value, json};

/// The lines that name this vehicle, and the one that began it.
fn of_vehicle(lines: &BTreeSet<String>, vehicle: &str) -> BTreeSet<String> {
    let names = format!("\"vehicle\":\"{vehicle}\"");
    let begins = |line: &&String| Digest::of(line.as_bytes()).hex() == vehicle;
    let own = lines
        .iter()
        .filter(|line| line.contains(&names) || begins(line));
    own.cloned().collect()
}

async fn open_carry_out(phone: &Browser<'_>) {
    phone.go("#/carry-out").await;
    phone.see_page("carry-out").await;
}

#[tokio::test]
async fn one_vehicle_goes_out_with_its_pictures_and_nothing_else() {
    let device = Device::installed("giving").await;
    let phone = device.open_ready().await;
    let made = album(3, 20_000);
    let file = device.downloads().join("album.zip");
    fs::write(&file, &made.file).unwrap();
    phone.bring_in(&file, made.entries, 3).await;
    fs::remove_file(&file).unwrap();
    phone.begin_a_cart().await;
    phone.name_it("Tip cart").await;
    phone.step("from the vehicle's own page");
    phone.open_vehicle(&made.cart).await;
    phone.tap_words("Carry out this vehicle").await;
    phone.see_page("carry-out").await;
    phone
        .see_words("main", "The limits your shop has set stay here")
        .await;
    let carried = phone.make_the_file().await;
    let book = phone.carry_out().await;
    let expected = of_vehicle(&book.lines(), &made.cart);
    assert_eq!(expected.len(), made.entries);
    assert_eq!(carried.lines(), expected);
    let cart = Digest::from_hex(&made.cart).unwrap();
    assert_eq!(carried.scope(), Some(Scope::Vehicle(cart)));
    let pictures: Vec<Digest> = carried
        .pictures()
        .iter()
        .map(|jpeg| Digest::of(jpeg))
        .collect();
    assert_eq!(pictures, made.pictures);
    phone.close().await;
}

/// What the device remembers of this name.
const REMEMBERED: &str = r#"
const asked = indexedDB.open("cartside");
window.remembered = null;
asked.onsuccess = () => {
  asked.result.transaction("meta").objectStore("meta").getAll().onsuccess = (event) => {
    asked.result.close();
    window.remembered = Object.fromEntries(event.target.result.map(({ name, value }) => [name, value]));
  };
};
return true;"#;

async fn remembered(phone: &Browser<'_>) -> Value {
    phone.ask(REMEMBERED, json!([])).await;
    phone
        .wait_for("what is remembered", "return window.remembered;", json!([]))
        .await
}

async fn name_of(phone: &Browser<'_>) -> String {
    let device = remembered(phone).await["device"].clone();
    device.as_str().unwrap().to_owned()
}

async fn new_for(phone: &Browser<'_>, device: &str) -> cartside_tests::drive::Carried {
    open_carry_out(phone).await;
    phone
        .choose_what_goes_out(&format!("device/{device}"))
        .await;
    phone
        .see_words(
            "main",
            "since that device was last known to have everything",
        )
        .await;
    phone.make_the_file().await
}

#[tokio::test]
async fn what_is_new_for_a_device_is_all_that_it_lacks_and_both_end_with_one_book() {
    let (barn, shop) = (
        Device::installed("barn").await,
        Device::installed("shop").await,
    );
    let (phone, tablet) = (barn.open_ready().await, shop.open_ready().await);
    let cart = phone.begin_a_cart().await;
    phone.name_it("Tip cart").await;
    let first = phone.carry_out().await;
    let at_first = first.lines();
    tablet.bring_in(&first.path, at_first.len(), 0).await;
    let (in_the_barn, in_the_shop) = (name_of(&phone).await, name_of(&tablet).await);

    phone.step("the tablet has met the phone, and knows that it has everything");
    let gig = tablet.begin("trap", "all", "14", "7").await;
    let for_the_barn = new_for(&tablet, &in_the_barn).await;
    assert_eq!(
        for_the_barn.scope(),
        Some(Scope::NewFor(in_the_barn.clone()))
    );
    let whole = tablet.carry_out().await.lines();
    let new: BTreeSet<String> = whole.difference(&at_first).cloned().collect();
    assert_eq!(new, of_vehicle(&whole, &gig));
    assert_eq!(for_the_barn.lines(), new);

    phone.step("the phone, unsure what the tablet has, gives it everything once");
    phone.bring_in(&for_the_barn.path, new.len(), 0).await;
    let everything = new_for(&phone, &in_the_shop).await;
    assert_eq!(everything.lines(), whole);

    phone.step("and from then on only what is new, with what that rests on");
    phone.name_it_from_its_page(&cart, "Tip cart, mended").await;
    let only_new = new_for(&phone, &in_the_shop).await;
    let after = phone.carry_out().await.lines();
    let named: Vec<&String> = after.difference(&whole).collect();
    let lines = only_new.lines();
    assert_eq!(named.len(), 1);
    assert!(lines.contains(named[0]));
    let rests_on = |line: &String| {
        let id = Digest::of(line.as_bytes()).hex();
        line == named[0] || lines.iter().any(|other| other.contains(&id))
    };
    assert!(
        lines.len() < after.len() / 2,
        "{} of {}",
        lines.len(),
        after.len()
    );
    assert!(lines.iter().all(rests_on), "{lines:#?}");
    tablet.bring_in(&only_new.path, 1, 0).await;
    assert_eq!(tablet.carry_out().await.lines(), after);

    phone.step("what was handed over is remembered, and nothing goes out twice");
    let nothing = new_for(&phone, &in_the_shop).await;
    assert!(nothing.lines().is_empty());
    let kept = remembered(&phone).await;
    let reached = kept["carried-out-reached"].as_str().unwrap();
    assert_eq!(reached, after.len().to_string());
    phone.close().await;
    tablet.close().await;
}
