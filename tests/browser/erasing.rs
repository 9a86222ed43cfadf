//! A picture is erased, and its bytes are met again on another device: they go there once that is accepted, and do not
//! come back here unasked.

use std::fs;

use cartside_tests::drive::{Browser, Device, camera};
use serde_json::{Value, json};

#[tokio::test]
async fn an_erased_picture_goes_everywhere_and_never_comes_back_unasked() {
    let (first, second) = (
        Device::installed("first").await,
        Device::installed("second").await,
    );
    let phone = first.open().await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    let taken = first.downloads().join("camera.jpg");
    fs::write(&taken, camera::photograph()).unwrap();
    phone.take_picture(&taken).await;
    see_pictures_stored(&phone, 1).await;
    let before = phone.carry_out().await;
    let lines = before.lines().len();
    let tablet = second.open().await;
    tablet.bring_in(&before.path, lines, 1).await;
    tablet.open_part(&cart, "near/spoke-3").await;
    tablet.see_so_many(1, "img[data-picture]").await;
    tablet.remark("Written beside the picture").await;

    phone.step("erased: bytes and thumbnail are gone, in both places");
    phone.open_part(&cart, "near/spoke-3").await;
    phone.tap_words("Erase this picture").await;
    phone.see_saved("erased").await;
    see_pictures_stored(&phone, 0).await;
    let after = phone.carry_out().await;
    assert!(after.pictures().is_empty(), "no bytes go out");

    tablet.step("the other device says first what would go, and then it is gone");
    tablet.choose_to_bring_in(&after.path).await;
    tablet.see_it_would_add(1, 0).await;
    tablet
        .see_words("main", "1 picture here would go: erased")
        .await;
    see_pictures_stored(&tablet, 1).await;
    let old = tablet.carry_out().await;
    assert_eq!(old.pictures().len(), 1, "not accepted, nothing has gone");
    tablet.bring_in(&after.path, 1, 0).await;
    see_pictures_stored(&tablet, 0).await;
    tablet.open_part(&cart, "near/spoke-3").await;
    tablet.see_no("img[data-picture]").await;

    phone.step("a file that still has the bytes brings its remark and not the bytes");
    phone.choose_to_bring_in(&old.path).await;
    phone.see_it_would_add(1, 0).await;
    phone
        .see_words("main", "1 picture would stay out: erased")
        .await;
    phone.bring_in(&old.path, 1, 0).await;
    see_pictures_stored(&phone, 0).await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.see_so_many(1, "[data-remark]").await;
    phone.see_no("img[data-picture]").await;

    phone.step("they meet again, each way, and each meets the old file: it stays gone");
    let of_phone = phone.carry_out().await;
    let of_tablet = tablet.carry_out().await;
    for (browser, met) in [(&tablet, &of_phone), (&phone, &of_tablet), (&tablet, &old)] {
        browser.bring_in(&met.path, 0, 0).await;
        see_pictures_stored(browser, 0).await;
        browser.reload().await;
        browser.open_part(&cart, "near/spoke-3").await;
        browser.see_so_many(1, "[data-remark]").await;
        browser.see_no("img[data-picture]").await;
    }
    assert!(of_phone.pictures().is_empty() && of_tablet.pictures().is_empty());
    assert_eq!(of_phone.lines(), of_tablet.lines());
    tablet.close().await;
    phone.close().await;
}

/// Waits until so many pictures are stored, in the book's first place and in its second.
async fn see_pictures_stored(browser: &Browser<'_>, count: usize) {
    let script = r#"
const counted = (factory) => new Promise((done) => {
  const request = factory.open("cartside");
  request.onsuccess = () => {
    const asked = request.result.transaction("pictures").objectStore("pictures").count();
    asked.onsuccess = () => { request.result.close(); done(asked.result); };
  };
});
return navigator.storageBuckets.open("second")
  .then((bucket) => Promise.all([counted(indexedDB), counted(bucket.indexedDB)]))
  .then((both) => both.every((one) => one === arguments[0]));"#;
    let expected = format!("{count} pictures stored in each place");
    let found: Value = browser.wait_for(&expected, script, json!([count])).await;
    browser.expect_same("stored", found, json!(true)).await;
}
