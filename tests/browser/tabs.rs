//! Two tabs of one browser show one book.

use cartside_tests::drive::Engine;

pub async fn what_is_written_in_one_tab_shows_in_the_other(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.open_wheel(&cart, "near").await;
    phone.see_findings(&[]).await;

    let first = phone.open_tab().await;
    phone.step("an entry in the second tab");
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone.answer("spoke-3", "loose", "foot loose").await;
    phone.step("the first tab shows it, untouched");
    let second = phone.turn_to(first).await;
    phone
        .see_findings(&[("spoke-foot", "light-work-only")])
        .await;

    phone.step("the first tab writes on after it");
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-8")
        .await;
    phone.answer("spoke-8", "loose", "foot loose").await;
    let first = phone.turn_to(second).await;
    phone.open_wheel(&cart, "near").await;
    phone
        .see_words("[data-finding=\"spoke-foot\"]", "spokes 3 and 8")
        .await;

    phone.step("a vehicle begun in the second tab");
    phone.turn_to(first).await;
    phone.open_day_book().await;
    phone.see_vehicles(1).await;
    let first = phone.open_tab().await;
    phone.begin("barrow", "only", "10", "5").await;
    phone.turn_to(first).await;
    phone.see_vehicles(2).await;
    phone.close().await;
}
