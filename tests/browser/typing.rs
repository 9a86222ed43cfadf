//! What is typed and not yet saved outlives the page and the browser, and is gone once it is saved.

use cartside_tests::drive::{Browser, Engine, Server};
use serde_json::json;

pub async fn what_is_typed_outlives_a_reload_and_a_kill_until_it_is_saved(engine: Engine) {
    let server = Server::start();
    let device = engine.device("only", &server);
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.step("a remark is typed, then the page loaded anew");
    phone.open_part(&cart, "near/spoke-3").await;
    phone.write_into("Remark", "Half a sentence, and").await;
    settled(&phone).await;
    phone.reload().await;
    see_in_field(&phone, "Remark", "Half a sentence, and").await;
    phone.see("label[data-restored]").await;
    phone.step("more of it, and then the browser is killed");
    let whole = "Half a sentence, and its end";
    phone.write_into("Remark", whole).await;
    phone.see_no("label[data-restored]").await;
    settled(&phone).await;
    phone.kill();

    let phone = device.open().await;
    phone.open_part(&cart, "near/spoke-3").await;
    see_in_field(&phone, "Remark", whole).await;
    phone.step("another part's field is its own");
    phone.open_part(&cart, "near/spoke-4").await;
    see_in_field(&phone, "Remark", "").await;
    phone.step("saved as it came back");
    phone.open_part(&cart, "near/spoke-3").await;
    see_in_field(&phone, "Remark", whole).await;
    phone.tap_words("Save the remark").await;
    phone.see_words("[data-remark]", whole).await;
    settled(&phone).await;
    phone.reload().await;
    phone.see_words("[data-remark]", whole).await;
    settled(&phone).await;
    see_in_field(&phone, "Remark", "").await;

    phone.step("on the page of the work, by whom too");
    phone.open_of_vehicle(&cart, "/work/near", "work").await;
    phone.write_into("More about it", "New wedge of oak").await;
    phone.write_into("By whom", "B. Lea").await;
    settled(&phone).await;
    phone.kill();
    let phone = device.open().await;
    phone.open_of_vehicle(&cart, "/work/near", "work").await;
    see_in_field(&phone, "More about it", "New wedge of oak").await;
    see_in_field(&phone, "By whom", "B. Lea").await;
    phone.step("and among the sizes of the wheel");
    phone.open_of_vehicle(&cart, "/build/near", "build").await;
    phone.write_into("height", "4' 2 1/2\"").await;
    settled(&phone).await;
    phone.leave().await;
    phone.open_of_vehicle(&cart, "/build/near", "build").await;
    see_in_field(&phone, "height", "4' 2 1/2\"").await;
    phone.step("saved, the page is left and nothing of it comes back");
    phone.tap("[data-key=\"save\"]").await;
    phone.see_page("wheel").await;
    settled(&phone).await;
    phone.open_of_vehicle(&cart, "/build/near", "build").await;
    settled(&phone).await;
    phone.see_no("label[data-restored]").await;
    phone.close().await;
}

async fn see_in_field(phone: &Browser<'_>, label: &str, text: &str) {
    let expected = format!("“{text}” in the field “{label}”");
    let script = "const e = field(arguments[0]); return !!e && e.value === arguments[1];";
    phone
        .wait_for(&expected, script, json!([label, text]))
        .await;
}

/// Waits until the drafts of this moment are stored: a transaction of our own over them comes after theirs.
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
