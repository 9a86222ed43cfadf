//! Wheels of different kinds, each looked over whole by the questions its own page lists: what is asked follows how the
//! wheel is built, a sound wheel is found sound, and one fault of its kind is found.

use cartside_core::survey::Question::{self, *};
use cartside_tests::drive::{Browser, Device};

/// Asked only where there is a hoop.
const HOOP: [Question; 4] = [TyreRing, TyreGap, TyreShifts, TyreLeft];

/// Opens a cart whose near wheel is built like this and gives what is asked of it.
async fn built(phone: &Browser<'_>, choices: &[&str]) -> (String, Vec<Question>) {
    let cart = phone.begin_a_cart().await;
    phone.say_how_it_is_built(&cart, "near", choices).await;
    let asked = phone.asked_of(&cart, "near").await;
    (cart, asked)
}

async fn see_sound(phone: &Browser<'_>, cart: &str, wheel: &str) {
    phone.step("a sound wheel");
    phone.open_wheel(cart, wheel).await;
    phone.see_missing(&[]).await;
    phone.see_findings(&[]).await;
    phone.see_standing("no-fault-found", "none").await;
}

async fn type_in(phone: &Browser<'_>, cart: &str, question: &str, digits: &[&str]) {
    phone
        .open_question_at(cart, "near", question, "whole")
        .await;
    phone.tap_key("measure").await;
    phone.tap_digits(digits).await;
    phone.tap_key("accept").await;
    phone.see_saved("").await;
}

#[tokio::test]
async fn a_hooped_wheel_on_a_linch_pin() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let choices = ["rim=sawn", "tyre=hoop", "arm=wood", "keeper=linch-pin"];
    let (cart, asked) = built(&phone, &choices).await;
    for question in HOOP.iter().chain(&[KeeperWorn]) {
        let expected = format!("{} among {asked:?}", question.code());
        phone.expect(asked.contains(question), &expected).await;
    }
    phone
        .expect(!asked.contains(&Strake), "nothing of strakes")
        .await;
    phone.look_over(&cart, "near", &asked).await;
    see_sound(&phone, &cart, "near").await;
    // The pin leaves 13 mm of end play before it is a note, 20 before the wheel is for light work only.
    phone.step("end play of 21 mm");
    type_in(&phone, &cart, "end-play", &["2", "1"]).await;
    phone.open_wheel(&cart, "near").await;
    phone.see_findings(&[("end-play", "light-work-only")]).await;
    phone
        .see_standing("light-work-only", "light-work-only")
        .await;
    phone.close().await;
}

#[tokio::test]
async fn a_straked_wheel() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let (cart, asked) = built(&phone, &["tyre=strakes", "keeper=linch-pin"]).await;
    for question in HOOP {
        let expected = format!("no {} among {asked:?}", question.code());
        phone.expect(!asked.contains(&question), &expected).await;
    }
    phone
        .expect(asked.contains(&StrakeCracked), "each strake is asked for")
        .await;
    phone.look_over(&cart, "near", &asked).await;
    see_sound(&phone, &cart, "near").await;
    phone.step("a strake is gone");
    phone
        .open_question_at(&cart, "near", "strake", "joint-2")
        .await;
    phone.tap_key("not-there").await;
    phone.see_saved("").await;
    phone.open_wheel(&cart, "near").await;
    phone.see_findings(&[("strake", "keep-empty")]).await;
    phone.see_standing("keep-empty", "keep-empty").await;
    phone.close().await;
}

#[tokio::test]
async fn a_bent_rim_on_a_nut_with_rubber_in_a_channel() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin("trap", "all", "14", "2").await;
    let choices = ["rim=bent", "tyre=rubber", "arm=iron", "keeper=nut"];
    phone.say_how_it_is_built(&cart, "near", &choices).await;
    let asked = phone.asked_of(&cart, "near").await;
    let neither = [KeeperWorn, TyreRing, TyreGap, Strake];
    for question in neither {
        let expected = format!("no {} among {asked:?}", question.code());
        phone.expect(!asked.contains(&question), &expected).await;
    }
    phone
        .expect(
            asked.contains(&TyreOffCentre),
            "whether the tyre is central",
        )
        .await;
    phone.look_over(&cart, "near", &asked).await;
    see_sound(&phone, &cart, "near").await;
    // A nut takes up more than a pin: 7 mm are a note here, and nothing on a linch pin.
    phone.step("end play of 7 mm");
    type_in(&phone, &cart, "end-play", &["7"]).await;
    phone.open_wheel(&cart, "near").await;
    phone.see_findings(&[("end-play", "note")]).await;
    phone.see_standing("no-fault-found", "none").await;
    phone.close().await;
}

#[tokio::test]
async fn a_waggon_stands_as_the_lowest_of_its_four_wheels() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let waggon = phone.begin("waggon", "all", "12", "6").await;
    phone.see_so_many(4, "[data-wheel]").await;
    phone.step("one wheel looked over whole");
    let build = ["tyre=hoop", "arm=iron", "keeper=collinge"];
    phone
        .say_how_it_is_built(&waggon, "near-hind", &build)
        .await;
    let asked = phone.asked_of(&waggon, "near-hind").await;
    phone.look_over(&waggon, "near-hind", &asked).await;
    see_sound(&phone, &waggon, "near-hind").await;
    see_waggon(&phone, "not-judged").await;
    phone.step("two broken spokes in another");
    phone
        .open_question_at(&waggon, "off-fore", "spoke-broken", "spoke-2")
        .await;
    phone.answer("spoke-2", "yes", "spoke 2: broken").await;
    phone.answer("spoke-3", "yes", "spoke 3: broken").await;
    phone.open_wheel(&waggon, "off-fore").await;
    phone
        .see_findings(&[("spoke-broken", "not-on-this-wheel")])
        .await;
    see_waggon(&phone, "not-on-this-wheel").await;
    phone.close().await;
}

async fn see_waggon(phone: &Browser<'_>, standing: &str) {
    phone.open_day_book().await;
    phone
        .see(&format!("[data-vehicle][data-standing=\"{standing}\"]"))
        .await;
}
