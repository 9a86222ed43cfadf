//! The words of the trade, explained by a tap where they stand, and all of them on a page of their own.

use cartside_tests::drive::Device;

#[tokio::test]
async fn a_tap_explains_the_words_on_the_page() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    phone.be_a_phone(360, 740).await;
    let cart = phone.begin_a_cart().await;
    phone.step("on the vehicle's page");
    phone.see_no("[data-terms][open]").await;
    phone.tap("[data-terms] summary").await;
    let near = "[data-term=\"near wheel\"]";
    phone
        .see_words(near, "on the left, as the driver sits")
        .await;
    phone.step("on how the wheel is built");
    phone.go(&format!("#/vehicle/{cart}/build/near")).await;
    phone.see_page("build").await;
    phone.tap("[data-terms] summary").await;
    phone
        .see_words("[data-term=\"strake\"]", "nailed over one joint")
        .await;
    phone.step("on a question's page");
    phone
        .go(&format!("#/vehicle/{cart}/ask/near/tongue-proud"))
        .await;
    phone.see_page("ask").await;
    phone.tap("[data-terms] summary").await;
    phone
        .see_words("[data-term=\"tongue\"]", "end of a spoke in the felloe")
        .await;
    phone
        .see_words("[data-term=\"proud\"]", "above the wood around it")
        .await;
    phone.step("in a finding");
    phone
        .open_question_at(&cart, "near", "tongue-proud", "spoke-3")
        .await;
    phone.answer("spoke-3", "yes", "tongue proud").await;
    phone.open_wheel(&cart, "near").await;
    phone
        .tap("[data-finding=\"tongue-proud\"] [data-terms] summary")
        .await;
    phone
        .see("[data-finding=\"tongue-proud\"] [data-term=\"proud\"]")
        .await;
    phone.step("all words, in the other country's too");
    phone.go("#/preferences").await;
    phone.tap_words("American").await;
    phone.tap_words("All words").await;
    phone.see_page("words").await;
    phone
        .see_words("[data-term=\"hub\"]", "elsewhere: nave")
        .await;
    phone.see_so_many(56, "[data-term]").await;
    phone.close().await;
}
