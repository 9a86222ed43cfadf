//! What is kept on a device, what of it is there alone, and the reminder.

use cartside_tests::drive::Device;
use serde_json::json;

/// Sets the clock so many days on, as the test says before each page.
const LATER: &str = r#"
const Honest = Date, LATER = 9 * 86400e3;
globalThis.Date = class extends Honest {
  constructor(...given) { given.length ? super(...given) : super(Honest.now() + LATER); }
  static now() { return Honest.now() + LATER; }
};"#;

#[tokio::test]
async fn what_is_here_alone_is_counted_and_the_reminder_can_be_quietened() {
    let (device, other) = (
        Device::installed("only").await,
        Device::installed("other").await,
    );
    let phone = device.open_ready().await;
    phone.go("#/kept").await;
    phone.see("[data-only-here=\"0\"]").await;
    phone.see("[data-twice=true]").await;
    let cart = phone.begin_a_cart().await;
    phone.step("never carried out, a reminder is due the next time the day book shows");
    phone.open_day_book().await;
    phone.go("#/kept").await;
    phone.see("[data-only-here=\"4\"]").await;
    phone.see_words("main", "never carried out").await;
    let share = phone.attribute("[data-share]", "data-share").await;
    let share: u64 = share.parse().unwrap();
    phone
        .expect(
            (500..4_000).contains(&share),
            "four lines’ worth of room for the cart",
        )
        .await;
    phone.open_day_book().await;
    phone.see("[data-reminder=\"4\"]").await;

    phone.step("carried out, it is not");
    let book = phone.carry_out().await;
    phone.go("#/kept").await;
    phone.see("[data-only-here=\"0\"]").await;
    phone.see_words("main", "today").await;
    phone.open_day_book().await;
    phone.see_no("[data-reminder]").await;

    phone.step("what another device wrote is not here alone");
    let tablet = other.open().await;
    tablet.bring_in(&book.path, 4, 0).await;
    tablet.open_part(&cart, "near/spoke-3").await;
    tablet.remark("Written elsewhere").await;
    let more = tablet.carry_out().await;
    tablet.close().await;
    phone.bring_in(&more.path, 1, 0).await;
    phone.go("#/kept").await;
    phone.see("[data-only-here=\"0\"]").await;
    phone.step("one more remark is");
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Written here").await;
    phone.open_day_book().await;
    phone.go("#/kept").await;
    phone.see("[data-only-here=\"1\"]").await;
    phone.open_day_book().await;
    phone.see_no("[data-reminder]").await;
    phone.close().await;

    let phone = device.start().await;
    phone.before_each_page(LATER).await;
    phone.go("#/kept").await;
    phone.step("nine days later it is due");
    phone.see_words("main", "9 days ago").await;
    phone.open_day_book().await;
    phone.go("#/kept").await;
    phone.see("[data-only-here=\"1\"]").await;
    phone.open_day_book().await;
    phone.see("[data-reminder=\"1\"]").await;
    phone.tap("[data-key=quiet]").await;
    phone.see_no("[data-reminder]").await;
    phone.step("quiet, and after a reload too");
    phone.reload().await;
    phone.open_day_book().await;
    phone.go("#/kept").await;
    phone.see("[data-only-here=\"1\"]").await;
    phone.open_day_book().await;
    let reminded = phone
        .ask(
            "return !!document.querySelector('[data-reminder]');",
            json!([]),
        )
        .await;
    phone
        .expect_same("a reminder", reminded, json!(false))
        .await;
    phone.close().await;
}
