//! The driver's own thrift: a test that goes on with the browser of one that has ended finds nothing of that in it.

use std::fs;

use cartside_tests::drive::Engine;
use serde_json::json;

/// What a test may leave behind it.
const LEFT: &str = r#"
return indexedDB.databases().then((all) => ({
  books: all.length,
  local: localStorage.length,
  session: sessionStorage.length,
  script: window.told ?? "none",
}));"#;

pub async fn nothing_of_the_test_before_is_left(engine: Engine) {
    let device = engine.installed("before").await;
    let phone = device.start().await;
    phone.before_each_page("window.told = \"before\";").await;
    phone.go("").await;
    phone.begin_a_cart().await;
    phone.go("#/preferences").await;
    phone
        .ask(
            "localStorage.setItem('left', 'behind'); sessionStorage.setItem('left', 'behind');",
            json!([]),
        )
        .await;
    let left = phone.ask(LEFT, json!([])).await;
    let expected = json!({ "books": 1, "local": 1, "session": 1, "script": "before" });
    phone
        .expect_same("what the first leaves", left, expected)
        .await;
    fs::write(device.downloads().join("left"), "behind").unwrap();
    phone.close().await;
    drop(device);

    let device = engine.installed("after").await;
    let phone = device.start().await;
    phone.go_where_nothing_runs().await;
    let left = phone.ask(LEFT, json!([])).await;
    let nothing = json!({ "books": 0, "local": 0, "session": 0, "script": "none" });
    phone
        .expect_same("what the second finds", left, nothing)
        .await;
    let files = fs::read_dir(device.downloads()).unwrap().count();
    phone.expect_same("its downloads", files, 0).await;
    phone.go("").await;
    phone.see_vehicles(0).await;
    phone.close_but_for(&["favicon.ico"]).await;
}
