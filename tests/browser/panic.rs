//! When the app stops, a plain panel says so and offers to reload; nothing saved is lost.

use cartside_tests::drive::Engine;
use serde_json::json;

pub async fn a_panic_shows_the_reload_panel_and_loses_nothing(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Paint broken at the shoulder").await;
    phone.see_no("#reload-panel").await;

    phone.step("the app stops");
    let panic = r#"window.dispatchEvent(new Event("cartside-panic"));"#;
    phone.ask(panic, json!([])).await;
    phone
        .see_words("#reload-panel", "Everything it said was saved is kept")
        .await;
    phone.step("reload");
    phone.tap_words_in("#reload-panel", "Reload").await;
    phone.see_no("#reload-panel").await;
    phone.see_page("part").await;
    phone
        .see_words("[data-remark]", "Paint broken at the shoulder")
        .await;
    phone.close().await;
}
