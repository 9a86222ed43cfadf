//! By the keyboard alone: a vehicle begun, a question answered, a step undone, a number typed, the book carried out. The
//! focus shows at every stop and is never lost.

use cartside_tests::drive::Device;
use thirtyfour::Key;

#[tokio::test]
async fn the_whole_way_is_gone_by_keys_alone() {
    let device = Device::installed("only").await;
    let phone = device.open_ready().await;
    phone.be_a_window(360, 740).await;
    phone.see_page_by_keys("book").await;
    phone.step("begin a vehicle");
    phone.press_on("Begin a vehicle", Key::Enter).await;
    phone.see_page_by_keys("begin").await;
    for (choice, key) in [
        ("cart", Key::Space),
        ("all", Key::Enter),
        ("12", Key::Space),
    ] {
        phone.press_on(choice, key).await;
        phone.focus().await;
    }
    phone.press_on("6", Key::Enter).await;
    phone.see_page_by_keys("vehicle").await;
    phone.step("to a question");
    phone.press_on("Near wheel", Key::Enter).await;
    phone.see_page_by_keys("wheel").await;
    phone.press_on("Spoke foot", Key::Enter).await;
    phone.see_page_by_keys("ask").await;
    phone.step("answer and undo");
    phone.press_on("tight", Key::Enter).await;
    phone.see_saved("spoke 1").await;
    phone.see_at("spoke-2").await;
    phone.focus().await;
    phone.press_on("loose", Key::Space).await;
    phone.see_saved("spoke 2").await;
    phone.see_at("spoke-3").await;
    phone.focus().await;
    phone.press_on("undo", Key::Enter).await;
    phone.see_saved("undone").await;
    phone.see_at("spoke-2").await;
    phone.focus().await;
    phone.step("the rest, and on to the next question");
    phone.press_on("rest-tight", Key::Enter).await;
    phone.see_answered("spoke-foot").await;
    phone.focus().await;
    phone.step("a number");
    phone.press_on("To the wheel", Key::Enter).await;
    phone.see_page_by_keys("wheel").await;
    phone.press_on("Tyre gap", Key::Enter).await;
    phone.see_page_by_keys("ask").await;
    phone.press_on("measure", Key::Space).await;
    phone.see("[data-digit]").await;
    phone.focus().await;
    phone.type_by_keys("1/2mm").await;
    phone.see_typed("1/2mm").await;
    phone.press_on("accept", Key::Enter).await;
    phone.see_saved("tyre gap ½ mm").await;
    phone.focus().await;
    phone.step("carry out");
    phone.press_on("Day book", Key::Enter).await;
    phone.see_page_by_keys("book").await;
    phone.press_on("Carry out", Key::Enter).await;
    phone.see_page_by_keys("carry-out").await;
    phone.press_on("Make the file", Key::Enter).await;
    phone.see("[data-file]").await;
    phone.focus().await;
    phone.press_on("Carry it out", Key::Enter).await;
    let carried = phone.in_the_downloads("the book").await;
    phone.see_saved("went out as").await;
    phone.focus().await;
    assert!(carried.lines().iter().any(|line| line.contains("tyre-gap")));
    phone.close().await;
}
