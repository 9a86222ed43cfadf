//! The round of a wheel, counted: how many taps a whole look-over takes. What is counted are the clicks that the page
//! gets, so that no helper of these tests can hide one.

use cartside_tests::drive::{Browser, Device};
use serde_json::json;

/// Taps that a whole look-over may take.
const SOUND: u64 = 15;
const WITH_FAULTS: u64 = 50;
const WAGGON: u64 = 180;

async fn count_taps(phone: &Browser<'_>) {
    let count = "window.taps = 0; document.addEventListener('click', () => { window.taps += 1; }, true); return true;";
    phone.ask(count, json!([])).await;
}

async fn taps(phone: &Browser<'_>) -> u64 {
    phone
        .ask("return window.taps;", json!([]))
        .await
        .as_u64()
        .unwrap()
}

/// All that is left of the group in hand is sound; then this question is put.
async fn all_sound(phone: &Browser<'_>, then: &str) {
    phone.tap_key("all-sound").await;
    phone.see_question(then).await;
}

/// The first look of these wheels, all of it sound, and that the cart may be lifted.
async fn first_look(phone: &Browser<'_>, vehicle: &str, wheels: &[&str]) {
    phone.go(&format!("#/vehicle/{vehicle}/first-look")).await;
    phone.see_page("first-look").await;
    for wheel in wheels {
        phone
            .tap(&format!("[data-first-look=\"{wheel}\"] [data-key=rest]"))
            .await;
        phone
            .see_no(&format!("[data-first-look=\"{wheel}\"] [data-key=rest]"))
            .await;
    }
    phone.tap("[data-lift] [data-answer=yes]").await;
    phone.see("[data-lift=yes]").await;
}

async fn measured_whole(phone: &Browser<'_>) {
    phone.see_question("dish").await;
    phone.tap_key("all-sound").await;
    phone.see_no("[data-key=all-sound]").await;
    phone.tap_digits(&["6", "0"]).await;
    phone.tap_key("accept").await;
    for question in ["run-out", "out-of-round", "end-play", "shake"] {
        phone.see_question(question).await;
        phone.tap_key("0").await;
    }
    phone.see_answered("shake").await;
}

/// A wheel on which nothing is found, from its page on.
async fn sound_wheel(phone: &Browser<'_>, vehicle: &str, wheel: &str) {
    phone.open_wheel(vehicle, wheel).await;
    phone.tap("[data-next=keeper-present]").await;
    phone.see_question("keeper-present").await;
    for then in ["ring", "joint-gap", "spoke-foot", "bonds", "dish"] {
        all_sound(phone, then).await;
    }
    measured_whole(phone).await;
}

/// A wheel with four gaps, six joints and two loose spokes measured, moisture too, and all else looked at.
async fn wheel_with_faults(phone: &Browser<'_>, vehicle: &str, wheel: &str) {
    phone.open_wheel(vehicle, wheel).await;
    phone.tap("[data-next=keeper-present]").await;
    phone.see_question("keeper-present").await;
    all_sound(phone, "ring").await;
    phone.tap_key("rest-rings").await;
    phone.see_question("tyre-gap").await;
    for (place, gap) in [(1, "0.5"), (4, "1"), (7, "0.5"), (10, "0.25")] {
        phone
            .answer(&format!("between-{place}"), gap, "tyre gap")
            .await;
    }
    phone.see_question("tyre-shifts").await;
    all_sound(phone, "joint-gap").await;
    for (joint, gap) in ["0.5", "1", "0", "0.5", "2", "0.25"].iter().enumerate() {
        phone
            .answer(&format!("joint-{}", joint + 1), gap, "gap")
            .await;
    }
    phone.see_question("joint-belly").await;
    phone.step("moisture of one felloe, then the rest of the rim");
    phone.open_question(vehicle, wheel, "moisture").await;
    phone.answer("felloe-1", "14", "moisture 14 %").await;
    all_sound(phone, "spoke-foot").await;
    phone.step("two loose spokes");
    for spoke in [3, 8] {
        phone.tap_key("other-place").await;
        phone.tap(&format!("[data-go-to=spoke-{spoke}]")).await;
        phone
            .answer(&format!("spoke-{spoke}"), "loose", "loose")
            .await;
    }
    all_sound(phone, "bonds").await;
    all_sound(phone, "dish").await;
    measured_whole(phone).await;
}

#[tokio::test]
async fn a_sound_wheel_takes_few_taps_and_names_all_it_says() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    count_taps(&phone).await;
    first_look(&phone, &cart, &["near"]).await;
    phone.step("what the key says is what it writes");
    phone.open_question(&cart, "near", "ring").await;
    phone
        .see_words(
            "[data-key=all-sound]",
            "tyre rings; no tyre gap; tyre does not shift by hand",
        )
        .await;
    sound_wheel(&phone, &cart, "near").await;
    let taken = taps(&phone).await;
    println!("a sound wheel: {taken} taps");
    // One more is the whole cart's: that it may be lifted.
    phone
        .expect(
            taken <= SOUND + 1,
            &format!("at most {SOUND} taps and one for the cart, not {taken}"),
        )
        .await;
    phone.open_wheel(&cart, "near").await;
    phone.see_missing(&[]).await;
    phone.see_standing("no-fault-found", "none").await;
    phone
        .see_words("[data-ask=tyre-left]", "0 of 4, not today")
        .await;
    phone.close().await;
}

#[tokio::test]
async fn undo_takes_back_all_that_one_key_said() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.open_question(&cart, "near", "keeper-present").await;
    phone.answer("whole", "yes", "keeper there").await;
    phone.see_question("keeper-right").await;
    let before = phone.count_everything_written(&cart).await;
    phone.open_question(&cart, "near", "keeper-right").await;
    all_sound(&phone, "ring").await;
    phone.see_saved("sound, 3 answers").await;
    phone.tap_key("undo").await;
    phone.see_question("keeper-right").await;
    phone.see_saved("undone: 3 answers").await;
    phone.see_at("whole").await;
    phone.step("what was said before stands");
    phone.open_wheel(&cart, "near").await;
    phone.see_words("[data-ask=keeper-present]", "1 of 1").await;
    for open in ["keeper-right", "keeper-secured", "keeper-worn"] {
        phone
            .see_words(&format!("[data-ask={open}]"), "0 of 1")
            .await;
    }
    let after = phone.count_everything_written(&cart).await;
    phone.expect_same("lines written", after, before + 6).await;
    phone.close().await;
}

#[tokio::test]
async fn a_wheel_with_faults_takes_no_more_than_fifty_taps() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    count_taps(&phone).await;
    first_look(&phone, &cart, &["near"]).await;
    wheel_with_faults(&phone, &cart, "near").await;
    let taken = taps(&phone).await;
    println!("a wheel with faults: {taken} taps");
    phone
        .expect(
            taken <= WITH_FAULTS,
            &format!("at most {WITH_FAULTS} taps, not {taken}"),
        )
        .await;
    phone.open_wheel(&cart, "near").await;
    phone.see_missing(&[]).await;
    phone
        .see_standing("light-work-only", "light-work-only")
        .await;
    phone.step("the drawing turns to the wheel");
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-4")
        .await;
    let before = phone.attribute("[data-in-hand]", "viewBox").await;
    phone.tap_key("at-the-top").await;
    phone.see_no("[data-key=at-the-top]").await;
    let after = phone.attribute("[data-in-hand]", "viewBox").await;
    phone
        .expect(before != after, "the place in hand drawn as it stands")
        .await;
    phone.close().await;
}

#[tokio::test]
async fn a_waggon_of_four_wheels_takes_no_more_than_a_hundred_and_eighty_taps() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let waggon = phone.begin("waggon", "all", "12", "6").await;
    count_taps(&phone).await;
    let wheels = ["near-fore", "off-fore", "near-hind", "off-hind"];
    first_look(&phone, &waggon, &wheels).await;
    for wheel in wheels {
        phone.step(wheel);
        if wheel == "off-hind" {
            wheel_with_faults(&phone, &waggon, wheel).await;
        } else {
            sound_wheel(&phone, &waggon, wheel).await;
        }
    }
    let taken = taps(&phone).await;
    println!("a waggon: {taken} taps");
    phone
        .expect(
            taken <= WAGGON,
            &format!("at most {WAGGON} taps, not {taken}"),
        )
        .await;
    for wheel in wheels {
        phone.open_wheel(&waggon, wheel).await;
        phone.see_missing(&[]).await;
    }
    phone.close().await;
}
