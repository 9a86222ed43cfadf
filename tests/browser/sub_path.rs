//! The same folder under a path of its host: it boots, keeps itself and opens without a network.

use cartside_tests::drive::{Device, Server};

#[tokio::test]
async fn it_works_under_any_path_of_its_host() {
    let mut server = Server::under("/a/b/");
    let device = Device::new("only", &server);
    assert!(device.address().ends_with("/a/b/"), "{}", device.address());
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.step("the host is killed");
    server.kill();
    phone.open_tab().await;
    phone.go(&format!("#/vehicle/{cart}/wheel/off")).await;
    phone.see_page("wheel").await;
    phone.see_standing("not-judged", "none").await;
    phone
        .close_but_for(&["ERR_CONNECTION_REFUSED", "when fetching the script"])
        .await;
}
