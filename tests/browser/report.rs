//! The report: printed in its three cuts and read back from the PDF, and handed over.
//!
//! The cart: two wheels of 12 spokes in 6 felloes. At the near wheel the gap under the tyre is 3 mm between
//! spokes 4 and 5, which is *keep empty* by the house limits, and there is a picture of spoke 3 with a remark.

use std::fs;

use cartside_tests::drive::{Browser, Device, Printed, camera};

const NO_LEAVE: &str = "not a permission to use the road";
const REMARK: &str = "Foot worn, re-wedge";

#[tokio::test]
async fn a_report_is_printed_in_three_cuts_and_handed_over() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    examine(&phone, &cart, &device).await;

    phone.step("the owner's page");
    let owner = printed(&phone, &cart, "owner").await;
    see(
        &owner,
        &[
            "Mill cart: for its owner",
            NO_LEAVE,
            "What it must not do",
            "Gap under the tyre, between 4 and 5: 3 mm",
            REMARK,
        ],
    );
    assert!(
        !owner.words().contains("It may "),
        "nothing is allowed on a wheel to keep empty"
    );
    see_the_picture(&owner);

    phone.step("the full examination");
    let full = printed(&phone, &cart, "full").await;
    see(
        &full,
        &[
            NO_LEAVE,
            "between 4 and 5",
            "3 mm",
            "the limit Cartside comes with",
            "feeler",
            REMARK,
            "Digest of the set",
        ],
    );
    see_the_picture(&full);
    assert!(full.sheets() > 2, "{} sheets", full.sheets());

    phone.step("the show card");
    let card = printed(&phone, &cart, "show-card").await;
    see(
        &card,
        &[
            "Mill cart",
            "People carried: NO",
            "Not signed",
            "Cut along the broken line",
        ],
    );
    assert_eq!(card.sheets(), 1);
    for (name, sheet) in [("owner", owner), ("full", full), ("show-card", card)] {
        keep_to_look_at(name, &sheet);
    }

    handed_over(&phone, &cart).await;
    phone.close().await;
}

async fn examine(phone: &Browser<'_>, cart: &str, device: &Device) {
    phone.step("a gap, a picture and a remark");
    phone.name_it("Mill cart").await;
    phone
        .open_question_at(cart, "near", "tyre-gap", "between-4")
        .await;
    phone.answer("between-4", "3", "tyre gap 3 mm").await;
    let taken = device.downloads().join("camera.jpg");
    fs::write(&taken, camera::photograph()).unwrap();
    phone.open_part(cart, "near/spoke-3").await;
    phone.take_picture(&taken).await;
    phone.remark(REMARK).await;
}

async fn printed(phone: &Browser<'_>, cart: &str, cut: &str) -> Printed {
    phone.open_report(cart, cut).await;
    let printed = phone.print().await;
    assert!(printed.is_a4(), "{cut} is printed on A4");
    let words = printed.words();
    for key in ["Day book", "Handed over", "To the vehicle", "Saved:"] {
        assert!(!words.contains(key), "{cut} prints the key “{key}”");
    }
    printed
}

fn see(printed: &Printed, sentences: &[&str]) {
    let words = printed.words();
    for sentence in sentences {
        assert!(words.contains(sentence), "“{sentence}” is printed: {words}");
    }
}

/// The picture lies upright in the paper, with every pixel it has.
fn see_the_picture(printed: &Printed) {
    let upright = (i64::from(camera::HEIGHT), i64::from(camera::WIDTH));
    let pictures = printed.pictures();
    assert!(
        pictures.contains(&upright),
        "{upright:?} among {pictures:?}"
    );
}

/// Where a folder is named, what was printed is kept there to be looked at.
fn keep_to_look_at(name: &str, printed: &Printed) {
    if let Some(folder) = std::env::var_os("CARTSIDE_PRINTED") {
        let file = std::path::Path::new(&folder).join(format!("{name}.pdf"));
        fs::write(file, &printed.bytes).unwrap();
    }
}

async fn handed_over(phone: &Browser<'_>, cart: &str) {
    phone.step("handed over");
    phone.open_report(cart, "owner").await;
    let before = phone.count_everything_written(cart).await;
    phone.open_report(cart, "owner").await;
    phone.hand_over("Mrs Bell, Mill Farm").await;
    phone.step("what was told stays as it was told");
    phone.name_it_from_its_page(cart, "Another name").await;
    phone.open_report(cart, "owner").await;
    phone.see_words(".paper h1", "Another name").await;
    phone.reload().await;
    phone.open_report(cart, "owner").await;
    phone.open_handed_over().await;
    phone
        .see_words("[data-kept]", "Mill cart: for its owner")
        .await;
    phone.see_words("main", "Mrs Bell, Mill Farm").await;
    let told = phone.print().await;
    assert!(told.is_a4());
    see(&told, &["Mill cart: for its owner", NO_LEAVE]);
    // The report and the new name.
    let after = phone.count_everything_written(cart).await;
    phone.expect_same("lines written", after, before + 2).await;
}
