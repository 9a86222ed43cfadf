//! A limit the shop sets: wheels are judged by it at once, everywhere, and what was set before stays to be read.

use cartside_tests::drive::{Browser, Device};

/// Two millimetres at one place are nothing to this row as it comes (3 mm), and are *keep empty* once it is 2 mm.
const ROW: &str = "tyre-gap/keep-empty/anywhere";

#[tokio::test]
async fn a_limit_set_here_judges_here_and_travels() {
    let device = Device::installed("first").await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.step("a gap of two millimetres");
    phone.open_question(&cart, "near", "tyre-gap").await;
    phone.tap_key("measure").await;
    phone.tap_digits(&["2"]).await;
    phone.tap_key("accept").await;
    phone.see_saved("").await;
    phone.open_wheel(&cart, "near").await;
    phone.see_findings(&[("tyre-gap", "light-work-only")]).await;
    phone.open_day_book().await;
    phone
        .see("[data-vehicle][data-standing=\"not-judged\"]")
        .await;
    set_to_two(&phone).await;
    see_judged_harder(&phone, &cart).await;
    phone.step("after a reload");
    phone.reload().await;
    see_judged_harder(&phone, &cart).await;
    phone.step("carried to another device");
    let file = phone.carry_out().await;
    let other = Device::installed("second").await;
    let tablet = other.open_ready().await;
    let entries = file.lines().len();
    tablet.bring_in(&file.path, entries, 0).await;
    see_judged_harder(&tablet, &cart).await;
    tablet.close().await;
    as_it_comes(&phone, &cart).await;
    phone.close().await;
}

async fn set_to_two(phone: &Browser<'_>) {
    phone.step("a value that cannot be");
    phone.go(&format!("#/limits/{ROW}")).await;
    phone.see_page("limit").await;
    phone.see_words("[data-in-force]", "3 mm or more").await;
    phone.tap_digits(&["0"]).await;
    phone.tap_key("accept").await;
    phone
        .see_words("[role=alert]", "more than nought and at most 50 mm")
        .await;
    phone.step("the limit set");
    phone.tap_key("erase").await;
    phone.tap_digits(&["2"]).await;
    phone.tap_key("accept").await;
    phone.see_saved("the shop's limit for tyre gap").await;
    phone
        .see_words("[data-in-force]", "set by this shop: 2 mm or more")
        .await;
    phone.see_so_many(1, "[data-entry][data-fate=counts]").await;
}

async fn see_judged_harder(phone: &Browser<'_>, cart: &str) {
    phone.open_day_book().await;
    phone
        .see("[data-vehicle][data-standing=\"keep-empty\"]")
        .await;
    phone.open_wheel(cart, "near").await;
    phone.see_findings(&[("tyre-gap", "keep-empty")]).await;
    phone
        .see_words("[data-finding]", "set by this shop: 2 mm")
        .await;
}

async fn as_it_comes(phone: &Browser<'_>, cart: &str) {
    phone.step("not used here");
    phone.go(&format!("#/limits/{ROW}")).await;
    phone.tap_key("leave-out").await;
    phone.see_words("[data-in-force]", "not used").await;
    phone.step("as it comes again");
    phone.tap_key("as-it-comes").await;
    phone.see_words("[data-in-force]", "3 mm or more").await;
    phone.see_so_many(3, "[data-entry]").await;
    phone.open_wheel(cart, "near").await;
    phone.see_findings(&[("tyre-gap", "light-work-only")]).await;
}
