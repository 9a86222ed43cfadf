//! Addresses that lead nowhere: a clear page, and the way home.

use cartside_tests::drive::Device;

#[tokio::test]
async fn an_address_that_leads_nowhere_says_so_and_leads_home() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    let nobody = "0".repeat(64);
    let nowhere = [
        ("#/nowhere".to_owned(), "unknown", "#/nowhere"),
        ("#/vehicle/short".to_owned(), "unknown", "No page"),
        ("#/%F0%9F%9B%9E".to_owned(), "unknown", "No page"),
        (format!("#/vehicle/{nobody}"), "unknown", "not in the book"),
        (
            format!("#/vehicle/{nobody}/wheel/near"),
            "unknown",
            "not in the book",
        ),
        (
            format!("#/vehicle/{nobody}/entries"),
            "unknown",
            "not in the book",
        ),
        (
            format!("#/vehicle/{nobody}/part/near/spoke-3"),
            "unknown",
            "not in the book",
        ),
        (
            format!("#/vehicle/{cart}/wheel/middle"),
            "unknown",
            "No page",
        ),
        (
            format!("#/vehicle/{cart}/wheel/near-fore"),
            "wheel",
            "No wheel is described",
        ),
        (
            format!("#/vehicle/{cart}/part/near/spoke-65535"),
            "part",
            "no such part",
        ),
        (
            format!("#/vehicle/{cart}/part/near/hub"),
            "unknown",
            "No page",
        ),
        (
            format!("#/vehicle/{cart}/ask/near/colour"),
            "unknown",
            "No page",
        ),
    ];
    for (address, page, words) in nowhere {
        phone.step(&address);
        phone.go(&address).await;
        phone.see_page(page).await;
        phone.see_words("main", words).await;
        phone.tap_words("Day book").await;
        phone.see_vehicles(1).await;
    }
    phone.step("a spoke the wheel has not is not asked about");
    phone
        .go(&format!("#/vehicle/{cart}/ask/near/spoke-foot/spoke-13"))
        .await;
    phone.see_page("ask").await;
    phone.see_at("spoke-1").await;
    phone.close().await;
}
