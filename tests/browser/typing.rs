//! What is typed or chosen and not yet saved outlives the page and the browser, and is gone once it is saved.

use cartside_tests::drive::{Browser, Engine};
use serde_json::json;

pub async fn what_is_typed_outlives_a_reload_and_a_kill_until_it_is_saved(engine: Engine) {
    let device = engine.installed("only").await;
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

pub async fn a_number_and_a_day_outlive_a_reload_and_a_kill_until_they_are_taken(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.step("a number is typed with our own keys, then the page loaded anew");
    let at = |place: &'static str| (cart.clone(), place);
    open_at(&phone, at("between-2")).await;
    phone.tap_key("measure").await;
    phone.tap_digits(&["1", "."]).await;
    settled(&phone).await;
    phone.reload().await;
    phone.see_at("between-2").await;
    phone.see_typed("1.").await;
    phone.see("[data-restored]").await;
    phone.step("one more digit, and then the browser is killed");
    phone.tap_digits(&["5"]).await;
    phone.see_no("[data-restored]").await;
    settled(&phone).await;
    phone.kill();

    let phone = device.open().await;
    phone.step("another place's pad is its own");
    open_at(&phone, at("between-3")).await;
    settled(&phone).await;
    phone.tap_key("measure").await;
    settled(&phone).await;
    phone.see_typed_exactly("").await;
    phone.step("what came back is taken, and nothing of it comes back");
    open_at(&phone, at("between-2")).await;
    phone.see_typed("1.5").await;
    phone.tap_key("accept").await;
    phone.see_saved("1½ mm").await;
    settled(&phone).await;
    phone.leave().await;
    open_at(&phone, at("between-2")).await;
    phone.see_words(".already", "1½ mm").await;
    settled(&phone).await;
    phone.see_no("[data-typed]").await;

    phone.step("a limit half typed");
    phone.go(LIMIT).await;
    phone.tap_digits(&["2", "5"]).await;
    settled(&phone).await;
    phone.reload().await;
    phone.see_typed("25").await;
    phone.tap_key("accept").await;
    phone.see_saved("").await;
    settled(&phone).await;
    phone.reload().await;
    phone.see("[data-limit]").await;
    settled(&phone).await;
    phone.see_typed_exactly("").await;
    phone.step("a day to look again, by a key and by hand");
    a_day(&phone, &cart).await;
    phone.kill();
    let phone = device.open().await;
    phone.open_of_vehicle(&cart, "/decide/near", "decide").await;
    see_in_field(&phone, LOOK_AGAIN, "2031-05-01").await;
    phone.step("a count that is none of the usual");
    a_count(&phone).await;
    phone.close().await;
}

const LIMIT: &str = "#/limits/tyre-gap/keep-empty/anywhere";
const LOOK_AGAIN: &str = "Look again by";

async fn open_at(phone: &Browser<'_>, (cart, place): (String, &str)) {
    phone
        .open_question_at(&cart, "near", "tyre-gap", place)
        .await;
}

/// Chooses a day by a key, which a reload leaves, and then another in the calendar.
async fn a_day(phone: &Browser<'_>, cart: &str) {
    phone.open_of_vehicle(cart, "/decide/near", "decide").await;
    phone.tap_choice("day", "a-year").await;
    let script = "return field(arguments[0])?.value || null;";
    let chosen = phone
        .wait_for("a day chosen", script, json!([LOOK_AGAIN]))
        .await;
    settled(phone).await;
    phone.reload().await;
    // Each browser has days typed in another way, and another calendar to choose from. Another day is chosen at the very
    // moment when the one before stands there again, and counts.
    let script = r#"
return new Promise((done) => {
  const look = () => {
    const day = field(arguments[0]);
    if (day?.value !== arguments[1]) return setTimeout(look, 1);
    day.value = "2031-05-01";
    day.dispatchEvent(new Event("input", { bubbles: true }));
    done(true);
  };
  look();
});"#;
    let chosen = chosen.as_str().unwrap_or_default();
    phone.ask(script, json!([LOOK_AGAIN, chosen])).await;
    settled(phone).await;
    see_in_field(phone, LOOK_AGAIN, "2031-05-01").await;
}

/// Types a number of spokes, which comes back when the same pad is opened again, until it is taken.
async fn a_count(phone: &Browser<'_>) {
    let key = |step: &str, choice: &str| {
        let of = format!("[data-step={step}] [data-choice={choice}]");
        async move { phone.tap(&of).await }
    };
    let open_the_pad = || async {
        phone.go("#/begin").await;
        key("kind", "cart").await;
        key("wheels", "all").await;
        key("spokes", "other").await;
    };
    open_the_pad().await;
    phone.tap_digits(&["1", "8"]).await;
    settled(phone).await;
    phone.leave().await;
    open_the_pad().await;
    phone.see_typed("18").await;
    phone.tap_key("accept").await;
    phone.see("[data-step=felloes]").await;
    settled(phone).await;
    phone.leave().await;
    open_the_pad().await;
    settled(phone).await;
    phone.see_typed_exactly("").await;
}

/// Holds back what is to be done in the next frame, until it is let go.
const NO_FRAME: &str = r#"
const inTime = window.requestAnimationFrame.bind(window), held = [];
window.requestAnimationFrame = (act) => (window.holds ? held.push(act) : inTime(act));
window.letGo = () => { window.holds = false; held.splice(0).forEach((act) => inTime(act)); };"#;

pub async fn what_is_typed_before_its_page_has_quite_arrived_is_kept(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.start().await;
    phone.before_each_page(NO_FRAME).await;
    phone.go("").await;
    let cart = phone.begin_a_cart().await;
    phone.ask("window.holds = true;", json!([])).await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.write_into("Remark", "Typed at once").await;
    settled(&phone).await;
    phone.step("the frame comes in which what was typed before is put back");
    phone.ask("window.letGo();", json!([])).await;
    settled(&phone).await;
    phone.reload().await;
    see_in_field(&phone, "Remark", "Typed at once").await;
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
