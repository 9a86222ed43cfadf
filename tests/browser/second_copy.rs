//! The browser loses the book, as Chromium does that was killed in the middle of a record; the second copy on the
//! device makes it whole again.

use std::fs;

use cartside_tests::drive::{Browser, Device, camera};

#[tokio::test]
async fn a_book_the_browser_has_lost_is_made_whole_again() {
    let device = Device::installed("only").await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.name_it("Tip cart").await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("To be kept twice").await;
    let taken = device.downloads().join("camera.jpg");
    fs::write(&taken, camera::photograph()).unwrap();
    phone.take_picture(&taken).await;
    let before = phone.count_everything_written(&cart).await;
    phone.close().await;

    device.tear_the_book().await;
    let phone = device.open().await;
    phone.step("after the browser has lost the book");
    phone.see_trouble("back from its second copy").await;
    phone.see_vehicles(1).await;
    see_all(&phone, &cart, before).await;
    phone.step("the next start has nothing to say");
    phone.close().await;
    let phone = device.open().await;
    phone.see_vehicles(1).await;
    let said = phone.notice().await;
    phone
        .expect_same("the notice", said.as_str(), "quiet")
        .await;
    phone.step("and what is written after it is kept twice too");
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Written after the loss").await;
    phone.close().await;
    device.tear_the_book().await;
    let phone = device.open().await;
    phone.step("after it has lost the book once more");
    phone.see_vehicles(1).await;
    see_all(&phone, &cart, before + 1).await;
    phone.close().await;
}

async fn see_all(phone: &Browser<'_>, cart: &str, lines: usize) {
    let now = phone.count_everything_written(cart).await;
    phone.expect_same("lines written", now, lines).await;
    phone.open_part(cart, "near/spoke-3").await;
    phone.see_words("[data-remark]", "To be kept twice").await;
    phone.see_so_many(1, "img[data-picture]").await;
}
