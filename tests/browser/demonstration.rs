//! The demonstration is a book of its own and stays where it is.

use cartside_tests::drive::Engine;

pub async fn the_demonstration_is_separate_and_cannot_be_carried_out(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.open_day_book().await;
    phone.see_vehicles(1).await;
    phone.see_my_own_book().await;

    phone.step("into the demonstration");
    phone.tap_words("Open the demonstration").await;
    phone.see_the_demonstration().await;
    phone.see("[data-vehicle]").await;
    let mine = format!("[data-vehicle=\"{cart}\"]");
    phone.see_no(&mine).await;
    phone.step("it cannot be carried out, nor is that offered");
    phone.see_no("[href=\"#/carry-out\"]").await;
    phone.see_no("[href=\"#/bring-in\"]").await;
    phone.go("#/carry-out").await;
    phone.see_page("carry-out").await;
    let offered = phone.sees_control("Make the file").await;
    phone
        .expect(!offered, "no way to carry the demonstration out")
        .await;
    phone.step("nothing can be brought into it");
    phone.go("#/bring-in").await;
    phone.see_page("bring-in").await;
    let offered = phone.sees("main input[type=file]").await;
    phone
        .expect(!offered, "no way to bring a file into the demonstration")
        .await;

    phone.step("and back");
    phone.open_day_book().await;
    phone.tap_words("Back to my own book").await;
    phone.see_my_own_book().await;
    phone.see_vehicles(1).await;
    phone.see(&mine).await;
    phone.close().await;
}
