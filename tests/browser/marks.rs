//! Marks on pictures: drawn with fingers and with keys, undone, kept while they are not saved, saved, carried to another
//! device, shown in the report, held beside the last visit's picture, and gone with their picture.

use std::fs;

use cartside_core::daybook::{Mark, Marks, Says};
use cartside_core::paper::line;
use cartside_tests::drive::{Browser, Carried, Device, camera};
use serde_json::json;

/// Opens a phone whose cart has one picture, of spoke 3 of the near wheel, and the picture's own page.
async fn pictured<'d>(device: &'d Device) -> (Browser<'d>, String) {
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.be_a_phone(360, 740).await;
    take(&phone, device, &cart, &camera::photograph()).await;
    phone.open_picture().await;
    (phone, cart)
}

async fn take(phone: &Browser<'_>, device: &Device, cart: &str, photograph: &[u8]) {
    phone.open_part(cart, "near/spoke-3").await;
    let taken = device.downloads().join("camera.jpg");
    fs::write(&taken, photograph).unwrap();
    phone.see_words("main", "Take a picture").await;
    phone.give_file(&taken).await;
    phone.see_saved("picture").await;
}

/// What stands in a file as marks, the latest of each picture.
fn marks_in(file: &Carried) -> Vec<Marks> {
    let lines = file.lines();
    let entries = lines.iter().map(|line| line::read(line).unwrap());
    let mut entries: Vec<_> = entries.collect();
    entries.sort_by_key(|entry| entry.order());
    let marks = entries.into_iter().filter_map(|entry| match entry.says {
        Says::Marks(marks) => Some(marks),
        _ => None,
    });
    marks.collect()
}

/// Waits until the drafts that were begun are stored: a transaction of one's own comes after theirs.
async fn settled(phone: &Browser<'_>) {
    let script = r#"
return new Promise((done) => setTimeout(() => {
  const request = indexedDB.open("cartside");
  request.onsuccess = () => {
    const asked = request.result.transaction("drafts", "readwrite").objectStore("drafts").count();
    asked.onsuccess = () => { request.result.close(); done(true); };
  };
}, 300));"#;
    phone.wait_for("the drafts stored", script, json!([])).await;
}

const RING: [(f64, f64); 5] = [(0.5, 0.3), (0.7, 0.5), (0.5, 0.7), (0.3, 0.5), (0.5, 0.3)];

#[tokio::test]
async fn a_finger_draws_each_mark_and_what_it_drew_is_what_is_kept() {
    let device = Device::installed("only").await;
    let (phone, cart) = pictured(&device).await;
    phone.step("nothing chosen, a finger draws nothing");
    phone.draw(&[(0.2, 0.2), (0.8, 0.3)]).await;
    phone.see_marks(&[]).await;
    phone.step("a line, a ring and two pins, the second with a remark");
    phone.choose_to_draw("line").await;
    phone.draw(&[(0.1, 0.9), (0.5, 0.8), (0.9, 0.1)]).await;
    phone
        .see_marks(&["Line from lower left to upper right"])
        .await;
    phone.choose_to_draw("ring").await;
    phone.draw(&RING).await;
    phone.choose_to_draw("pin").await;
    phone.draw(&[(0.2, 0.1)]).await;
    phone.draw(&[(0.5, 0.5), (0.8, 0.5)]).await;
    let drawn = [
        "Line from lower left to upper right",
        "Ring, middle",
        "Pin 1, upper left",
        "Pin 2, middle right",
    ];
    phone.see_marks(&drawn).await;
    phone.write_into("Written at pin 2", "moves here").await;
    phone.step("undone, one after the other, and drawn again");
    phone.tap_key("undo").await;
    phone.see_marks(&drawn[..3]).await;
    phone.tap_key("undo").await;
    phone.see_marks(&drawn[..2]).await;
    phone.draw(&[(0.8, 0.5)]).await;
    phone.write_into("Written at pin 1", "moves here").await;
    phone
        .see_words("[data-key=save-marks]", "Save the marks")
        .await;
    phone.save_marks("pin 1, middle right: “moves here”").await;
    phone.step("what was kept lies where the finger was, and the picture is as it was");
    let file = phone.carry_out().await;
    let [marks] = &marks_in(&file)[..] else {
        panic!("one line of marks");
    };
    let [
        Mark::Line(line),
        Mark::Ring(one, other),
        Mark::Pin(pin, text),
    ] = &marks.all[..]
    else {
        panic!("{:?}", marks.all);
    };
    let near = |spot: &cartside_core::daybook::Spot, x: u16, y: u16| {
        spot.x.abs_diff(x) <= 8 && spot.y.abs_diff(y) <= 8
    };
    assert!(near(&line[0], 100, 900) && near(&line[1], 500, 800) && near(&line[2], 900, 100));
    assert_eq!(line.len(), 3, "{line:?}");
    assert!(
        near(one, 300, 300) && near(other, 700, 700),
        "{one:?} {other:?}"
    );
    assert!(near(pin, 800, 500) && text == "moves here", "{pin:?}");
    let pictures = file.pictures();
    let digests = pictures
        .iter()
        .map(|bytes| cartside_core::daybook::Digest::of(bytes));
    assert!(digests.eq([marks.picture]), "its bytes bear its name still");
    phone.step("opened again, one is taken away, and that is one more line");
    phone.open_part(&cart, "near/spoke-3").await;
    phone
        .see_words(".marks-told", "Pin 1, middle right: “moves here”")
        .await;
    phone
        .see_so_many(1, ".pictures .marks[data-marks=\"3\"] .pin")
        .await;
    phone.open_picture().await;
    phone
        .tap_words_in("[data-mark-no=\"2\"]", "Take away")
        .await;
    phone.save_marks("pin 1, middle right").await;
    let file = phone.carry_out().await;
    let all = marks_in(&file);
    assert_eq!((all.len(), all[1].all.len()), (2, 2));
    phone.step("all taken away: struck out");
    phone.open_part(&cart, "near/spoke-3").await;
    phone.open_picture().await;
    phone.tap_key("undo").await;
    phone.tap_key("undo").await;
    phone.see_marks(&[]).await;
    phone.save_marks("struck out").await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.see("img[data-picture]").await;
    phone.see_no(".marks-told").await;
    phone.close().await;
}

#[tokio::test]
async fn a_palm_and_a_second_finger_draw_nothing_and_the_page_stays_where_it_is() {
    let device = Device::installed("only").await;
    let (phone, _) = pictured(&device).await;
    phone.choose_to_draw("line").await;
    phone.step("a palm");
    let palm = phone.point((0.3, 0.3), 0, 60).await;
    phone.touch("touchStart", &[palm]).await;
    let palm = phone.point((0.7, 0.6), 0, 60).await;
    phone.touch("touchMove", &[palm]).await;
    phone.fingers_up().await;
    phone.see_marks(&[]).await;
    phone.step("a second finger while the first draws");
    phone.finger_down((0.1, 0.1)).await;
    phone.finger_to((0.3, 0.1)).await;
    let scrolled = "return window.scrollY;";
    let before = phone.ask(scrolled, json!([])).await;
    let first = phone.point((0.3, 0.1), 0, 12).await;
    let second = phone.point((0.9, 0.9), 1, 12).await;
    phone.touch("touchStart", &[first, second]).await;
    let first = phone.point((0.9, 0.1), 0, 12).await;
    let second = phone.point((0.1, 0.6), 1, 12).await;
    phone.touch("touchMove", &[first, second]).await;
    phone.fingers_up().await;
    phone
        .see_marks(&["Line from upper left to upper right"])
        .await;
    phone.step("a long way down the picture scrolls nothing");
    phone
        .draw(&[(0.5, 0.9), (0.5, 0.7), (0.5, 0.4), (0.5, 0.1)])
        .await;
    phone.see_so_many(2, "[data-mark-no]").await;
    let after = phone.ask(scrolled, json!([])).await;
    phone.expect_same("scrolled", after, before).await;
    phone.close().await;
}

#[tokio::test]
async fn keys_alone_draw_every_mark() {
    let device = Device::installed("only").await;
    let (phone, _) = pictured(&device).await;
    phone.choose_to_draw("pin").await;
    press(&phone, "ArrowLeft", 20).await;
    press(&phone, "ArrowUp", 20).await;
    phone
        .see_words("main [role=status]", "The cross: upper left")
        .await;
    press(&phone, "Enter", 1).await;
    phone.see_marks(&["Pin 1, upper left"]).await;
    phone.choose_to_draw("ring").await;
    press(&phone, "Enter", 1).await;
    press(&phone, "ArrowRight", 40).await;
    press(&phone, "ArrowDown", 40).await;
    press(&phone, "Enter", 1).await;
    phone
        .see_marks(&["Pin 1, upper left", "Ring, middle"])
        .await;
    phone.choose_to_draw("line").await;
    press(&phone, "Enter", 1).await;
    press(&phone, "ArrowLeft", 40).await;
    press(&phone, "Escape", 1).await;
    press(&phone, "Enter", 1).await;
    press(&phone, "ArrowUp", 40).await;
    press(&phone, "Enter", 1).await;
    phone
        .see_marks(&[
            "Pin 1, upper left",
            "Ring, middle",
            "Line from lower left to upper left",
        ])
        .await;
    phone.save_marks("line from lower left to upper left").await;
    phone.close().await;
}

/// Presses a key so often with the picture in focus.
async fn press(phone: &Browser<'_>, key: &str, times: u32) {
    phone
        .ask(
            "find(\".board\").focus({ preventScroll: true }); return true;",
            json!([]),
        )
        .await;
    for _ in 0..times {
        for what in ["keyDown", "keyUp"] {
            let pressed = json!({ "type": what, "key": key, "code": key });
            phone.below("Input.dispatchKeyEvent", pressed).await;
        }
    }
}

#[tokio::test]
async fn marks_that_are_not_saved_outlive_a_reload_and_a_kill() {
    let device = Device::installed("only").await;
    let (phone, cart) = pictured(&device).await;
    phone.choose_to_draw("pin").await;
    phone.draw(&[(0.2, 0.1)]).await;
    phone.write_into("Written at pin 1", "crack begins").await;
    settled(&phone).await;
    phone.reload().await;
    phone
        .see_marks(&["Pin 1, upper left: “crack begins”"])
        .await;
    phone.step("one more, then the browser is killed");
    phone.be_a_phone(360, 740).await;
    phone.choose_to_draw("pin").await;
    phone.draw(&[(0.9, 0.9)]).await;
    phone.see_so_many(2, "[data-mark-no]").await;
    settled(&phone).await;
    phone.kill();

    let phone = device.open().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.see("img[data-picture]").await;
    phone.see_no(".marks-told").await;
    phone.open_picture().await;
    let both = ["Pin 1, upper left: “crack begins”", "Pin 2, lower right"];
    phone.see_marks(&both).await;
    phone.save_marks("pin 2, lower right").await;
    phone.step("saved, it is no draft any more");
    phone
        .see_words("[data-key=save-marks]", "Nothing to save")
        .await;
    phone.tap_key("undo").await;
    phone.see_marks(&both[..1]).await;
    settled(&phone).await;
    phone.reload().await;
    phone.see_marks(&both[..1]).await;
    phone.tap_key("save-marks").await;
    phone.see_saved("pin 1").await;
    phone.reload().await;
    phone.see_marks(&both[..1]).await;
    phone
        .see_words("[data-key=save-marks]", "Nothing to save")
        .await;
    phone.close().await;
}

#[tokio::test]
async fn marks_go_to_another_device_and_into_the_report_and_go_with_their_picture() {
    let (device, other) = (
        Device::installed("phone").await,
        Device::installed("tablet").await,
    );
    let (phone, cart) = pictured(&device).await;
    phone.choose_to_draw("ring").await;
    phone.draw(&RING).await;
    phone.choose_to_draw("pin").await;
    phone.draw(&[(0.2, 0.1)]).await;
    phone.write_into("Written at pin 1", "crack begins").await;
    phone.save_marks("crack begins").await;
    let told = "Pin 1, upper left: “crack begins”";
    phone.step("in the report, drawn and told, and in what is handed over");
    phone.open_report(&cart, "owner").await;
    phone
        .see_so_many(1, ".paper .marks[data-marks=\"2\"] .pin")
        .await;
    phone.see_words(".paper .marks-told", told).await;
    let printed = phone.print().await;
    assert!(
        printed.words().contains("crack begins"),
        "{}",
        printed.words()
    );
    phone.hand_over("Mrs Bell").await;
    phone.open_handed_over().await;
    phone
        .see_words("[data-kept]", "pin 1, upper left: “crack begins”")
        .await;

    let before = phone.carry_out().await;
    let tablet = other.open().await;
    tablet.bring_in(&before.path, before.lines().len(), 1).await;
    tablet.open_part(&cart, "near/spoke-3").await;
    tablet.see_words(".marks-told", told).await;
    tablet.open_picture().await;
    tablet.see_marks(&["Ring, middle", told]).await;

    phone.step("the picture erased, its marks are nowhere to be seen");
    phone.open_part(&cart, "near/spoke-3").await;
    phone.see_words(".marks-told", told).await;
    phone.tap_words("Erase this picture").await;
    phone.see_saved("erased").await;
    phone.see_no(".marks-told").await;
    phone.open_report(&cart, "owner").await;
    phone.see_words(".paper figure", "erased").await;
    phone.see_no(".paper .marks-told").await;
    let after = phone.carry_out().await;
    tablet.bring_in(&after.path, 1, 0).await;
    tablet.open_part(&cart, "near/spoke-3").await;
    tablet.see("[data-erased]").await;
    tablet.see_no(".marks-told").await;
    tablet.close().await;
    phone.close().await;
}

#[tokio::test]
async fn a_picture_is_held_beside_that_of_the_last_visit() {
    let device = Device::installed("only").await;
    let (phone, cart) = pictured(&device).await;
    phone
        .see_words(
            "[data-page=picture]",
            "no picture of this part from an earlier visit",
        )
        .await;
    phone.choose_to_draw("pin").await;
    phone.draw(&[(0.2, 0.1)]).await;
    phone.save_marks("pin 1").await;
    let first = phone.attribute(".board img", "data-picture").await;
    phone.step("another visit, with two pictures of the spoke and one of another");
    phone.open_vehicle(&cart).await;
    phone.tap_key("begin-examination").await;
    phone.see_page("examination").await;
    take(&phone, &device, &cart, &camera::another(1)).await;
    phone.see_so_many(2, "[data-key=mark]").await;
    take(&phone, &device, &cart, &camera::another(2)).await;
    phone.see_so_many(3, "[data-key=mark]").await;
    phone.open_picture().await;
    phone.step("the last visit's picture stands beside it, with its marks, and can be changed");
    phone.see(&format!("[data-compare=\"{first}\"]")).await;
    phone
        .see_words(".compared figure:first-child figcaption", "The last visit")
        .await;
    phone
        .see_words(
            ".compared figure:first-child .marks-told",
            "Pin 1, upper left",
        )
        .await;
    phone
        .see_words(".compared figure:last-child figcaption", "This picture")
        .await;
    let stacked = below(&phone).await;
    phone
        .expect(stacked, "one below the other on a telephone")
        .await;
    phone.be_a_phone(740, 360).await;
    let stacked = below(&phone).await;
    phone
        .expect(!stacked, "side by side where it is wide")
        .await;
    phone.tap_words_in("[data-compare]", "The same visit").await;
    phone
        .see_words(".compared figure:first-child figcaption", "The same visit")
        .await;
    phone.see_no(".compared .marks-told").await;
    phone.close().await;
}

/// Whether the second of the pictures held beside each other lies below the first.
async fn below(phone: &Browser<'_>) -> bool {
    phone.see_so_many(2, ".compared img").await;
    let script = r#"
const [one, other] = [...document.querySelectorAll(".compared figure")].map((e) => e.getBoundingClientRect());
return other.top >= one.bottom;"#;
    phone.ask(script, json!([])).await == json!(true)
}
