//! An examination from its beginning to its end: what for, the first look, the decision, the work.

use cartside_tests::drive::{Browser, Device};

/// A cart begun: the vehicle, two wheels and the examination.
const BEGUN: usize = 4;

#[tokio::test]
async fn an_examination_is_set_up_and_carries_its_stage() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.step("a new examination leads to what for");
    phone.tap("[data-key=begin-examination]").await;
    phone.see_page("examination").await;
    phone.step("skipped by one key, nothing is written");
    phone.tap("[data-key=skip]").await;
    phone.see_page("first-look").await;
    see_written(&phone, &cart, BEGUN + 1).await;
    phone.step("people");
    phone
        .open_of_vehicle(&cart, "/examination", "examination")
        .await;
    phone.tap_choice("use", "people").await;
    phone.see_words("[data-people]", "never enough").await;
    phone.tap_choice("use", "goods").await;
    phone.write_into("Place", "Long Barn").await;
    phone.tap("[data-key=save-examination]").await;
    phone.see_page("first-look").await;
    phone.see_saved("at Long Barn; for goods and people").await;
    see_written(&phone, &cart, BEGUN + 2).await;
    phone.step("the same once more is not written again");
    phone
        .open_of_vehicle(&cart, "/examination", "examination")
        .await;
    phone.tap("[data-key=save-examination]").await;
    phone.see_page("first-look").await;
    see_written(&phone, &cart, BEGUN + 2).await;
    change_the_stage(&phone, &cart).await;
    phone.close().await;
}

/// What cannot be taken off the arm is not asked there; the proof after tyring is an examination of its own.
async fn change_the_stage(phone: &Browser<'_>, cart: &str) {
    phone.step("off the arm");
    phone.open_question(cart, "near", "keeper-present").await;
    phone.answer("whole", "yes", "keeper there").await;
    phone.take_apart(cart, "off-the-arm").await;
    phone.see("[data-latest=off-the-arm]").await;
    phone.see_words("[data-latest]", "Long Barn").await;
    phone.open_question(cart, "off", "keeper-present").await;
    phone.see("[data-not-now=off-the-arm]").await;
    phone.open_question(cart, "near", "joint-gap").await;
    phone.answer("joint-1", "0", "joint 1").await;
    phone.open_wheel(cart, "near").await;
    phone.see_no("[data-ask=keeper-present]").await;
    phone.see("[data-stage=off-the-arm]").await;
    phone.step("after tyring");
    let visits = |count| async move {
        phone.open_of_vehicle(cart, "", "vehicle").await;
        phone.see_so_many(count, "[data-visit]").await;
    };
    visits(2).await;
    phone.take_apart(cart, "after-tyring").await;
    visits(3).await;
    phone.see("[data-latest=after-tyring]").await;
}

#[tokio::test]
async fn an_earlier_examination_is_opened_again() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.step("one with a gap of 3 mm, the next with none");
    phone.open_question(&cart, "near", "tyre-gap").await;
    phone.answer("between-1", "3", "tyre gap 3 mm").await;
    phone.open_vehicle(&cart).await;
    phone.tap_key("begin-examination").await;
    phone.see_page("examination").await;
    phone.open_question(&cart, "near", "tyre-gap").await;
    phone.answer("between-1", "0", "tyre gap 0 mm").await;
    let gaps = "[data-page] .paper table tr";
    phone.step("the latest tells of none");
    phone.open_vehicle(&cart).await;
    phone.see_so_many(2, "[data-visit]").await;
    phone.tap("li:first-child > [data-visit]").await;
    phone.see_page("earlier").await;
    phone.see_words("main", "Every reading").await;
    phone.see_no("[data-earlier]").await;
    let told = phone.sees_words(gaps, "3 mm").await;
    phone.expect(!told, "nothing of the gap before").await;
    phone.step("the one before tells of it, and by which limits");
    phone.open_vehicle(&cart).await;
    phone.tap("li:last-child > [data-visit]").await;
    phone.see_page("earlier").await;
    phone
        .see_words("[data-earlier]", "by the limits of today")
        .await;
    phone.see_words(gaps, "3 mm").await;
    phone.close().await;
}

#[tokio::test]
async fn the_first_look_sets_a_provisional_standing_and_bars_lifting() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone
        .open_of_vehicle(&cart, "/first-look", "first-look")
        .await;
    phone.step("a bad answer");
    phone.look_first("near", "first-keeper", "no").await;
    phone
        .see("[data-first-look=near][data-so-far=not-on-this-wheel]")
        .await;
    phone.see("[data-cart-so-far=not-on-this-wheel]").await;
    phone
        .see_words("[data-cart-so-far]", "not on this wheel")
        .await;
    phone.see("[data-first-look=off][data-so-far=none]").await;
    phone.step("the same once more is not written again");
    phone.look_first("near", "first-keeper", "no").await;
    see_written(&phone, &cart, BEGUN + 1).await;
    phone.step("the rest, one reading each");
    phone
        .open_of_vehicle(&cart, "/first-look", "first-look")
        .await;
    phone.look_first("near", "first-rot", "cannot-see").await;
    phone.tap("[data-first-look=near] [data-key=rest]").await;
    phone.see_saved("5 answers").await;
    phone.see_no("[data-first-look=near] [data-key=rest]").await;
    see_written(&phone, &cart, BEGUN + 7).await;
    phone.step("a correction");
    phone
        .open_of_vehicle(&cart, "/first-look", "first-look")
        .await;
    phone.look_first("near", "first-keeper", "yes").await;
    phone.see("[data-cart-so-far=none]").await;
    lift(&phone, &cart).await;
    phone.close().await;
}

async fn lift(phone: &Browser<'_>, cart: &str) {
    phone.step("not safe to lift");
    phone.tap("[data-lift] [data-answer=no]").await;
    phone.see("[data-lift=no]").await;
    phone.open_question(cart, "near", "tyre-gap").await;
    phone.see_words("[data-barred]", "not safe to lift").await;
    phone.see_no("[data-at]").await;
    phone.open_question(cart, "near", "joint-gap").await;
    phone.see_at("joint-1").await;
    phone.step("made safe");
    phone
        .open_of_vehicle(cart, "/first-look", "first-look")
        .await;
    phone.tap("[data-lift] [data-answer=yes]").await;
    phone.see("[data-lift=yes]").await;
    phone.open_question(cart, "near", "tyre-gap").await;
    phone.see_at("between-1").await;
}

#[tokio::test]
async fn a_decision_is_refused_signed_and_outgrown() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone
        .open_of_vehicle(&cart, "/examination", "examination")
        .await;
    phone.tap_choice("use", "people").await;
    phone.tap("[data-key=save-examination]").await;
    phone.see_page("first-look").await;
    phone.step("light work is never enough for people");
    decide(&phone, &cart, "light-work-only").await;
    phone.write_into("Signed, name", "Ada Field").await;
    phone.tap("[data-key=sign]").await;
    phone.see_words("[role=alert]", "never enough").await;
    phone.step("kinder without a reason");
    phone.tap_choice("standing", "no-fault-found").await;
    phone.see_words("[data-wants-reason]", "kinder").await;
    phone.tap("[data-key=sign]").await;
    phone.see_words("[role=alert]", "write down why").await;
    phone.step("with a reason and a day");
    phone.write_into("Reason", "looked at by daylight").await;
    phone.see_no("[data-wants-reason]").await;
    phone.tap_choice("day", "a-year").await;
    phone.tap("[data-key=sign]").await;
    phone.see_page("wheel").await;
    let card = "[data-decided=no-fault-found][data-stands=yes]";
    phone.see_words(card, "look again by").await;
    phone.see_words(card, "signed Ada Field").await;
    see_written(&phone, &cart, BEGUN + 2).await;
    phone.open_of_vehicle(&cart, "", "vehicle").await;
    phone
        .see("[data-wheel=near][data-standing=no-fault-found]")
        .await;
    outgrow(&phone, &cart).await;
    phone.close().await;
}

async fn decide(phone: &Browser<'_>, cart: &str, standing: &str) {
    phone.open_of_vehicle(cart, "/decide/near", "decide").await;
    phone.tap_choice("standing", standing).await;
}

async fn outgrow(phone: &Browser<'_>, cart: &str) {
    phone.step("outgrown by what is found after it");
    phone.open_question(cart, "near", "keeper-present").await;
    phone.answer("whole", "no", "keeper").await;
    phone.open_wheel(cart, "near").await;
    phone.see("[data-decided][data-stands=no]").await;
    phone.see_words("[data-lapsed]", "decided anew").await;
    phone.open_of_vehicle(cart, "", "vehicle").await;
    phone
        .see("[data-wheel=near][data-standing=not-on-this-wheel]")
        .await;
    phone.step("decided anew in its place");
    decide(phone, cart, "not-on-this-wheel").await;
    phone.write_into("Signed, name", "Ben Lea").await;
    phone.tap("[data-key=sign]").await;
    phone.see_page("wheel").await;
    phone
        .see("[data-decided=not-on-this-wheel][data-stands=yes]")
        .await;
    phone.see_so_many(1, "[data-decided]").await;
}

#[tokio::test]
async fn work_stands_between_what_was_read_before_and_after() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone.answer("spoke-3", "loose", "foot loose").await;
    phone.open_wheel(&cart, "near").await;
    phone.tap("[data-key=work]").await;
    phone.see_page("work").await;
    phone.tap("[data-key=save-work]").await;
    phone.see_trouble("nothing to save yet").await;
    phone.choose_part("spoke-3").await;
    phone.tap_choice("work", "re-seated").await;
    phone.write_into("By whom", "Ben Lea").await;
    phone.tap("[data-key=save-work]").await;
    phone.see_saved("spoke 3: foot seated anew").await;
    phone.see_words("[data-work]", "by Ben Lea").await;
    phone.see_words("[data-beside=before]", "foot loose").await;
    phone.see_no("[data-beside=after]").await;
    phone.step("read again after the work");
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone.answer("spoke-3", "tight", "foot tight").await;
    phone.open_of_vehicle(&cart, "/work/near", "work").await;
    phone.see_words("[data-beside=before]", "foot loose").await;
    phone.see_words("[data-beside=after]", "foot tight").await;
    phone.step("a tyre contracted, beside the gap that was under it");
    phone.open_question(&cart, "near", "tyre-gap").await;
    phone.tap_key("2").await;
    phone.see_saved("tyre gap 2 mm").await;
    phone.open_of_vehicle(&cart, "/work/near", "work").await;
    phone.tap_choice("work", "contracted").await;
    phone.tap("[data-key=save-work]").await;
    phone.see_saved("tyre contracted").await;
    phone
        .see_words("li:first-child [data-beside=before]", "tyre gap 2 mm")
        .await;
    phone.close().await;
}

async fn see_written(phone: &Browser<'_>, cart: &str, lines: usize) {
    let now = phone.count_everything_written(cart).await;
    phone.expect_same("lines written", now, lines).await;
}

#[tokio::test]
async fn beginning_to_look_again_makes_no_wheel_better() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone
        .open_question_at(&cart, "near", "spoke-broken", "spoke-3")
        .await;
    phone.answer("spoke-3", "yes", "spoke 3: broken").await;
    see_vehicle(&phone, "keep-empty").await;
    phone.step("a new examination, nothing looked at yet");
    phone.open_of_vehicle(&cart, "", "vehicle").await;
    phone.tap_key("begin-examination").await;
    phone.see_page("examination").await;
    see_vehicle(&phone, "keep-empty").await;
    for page in ["/wheel/near", "/decide/near", "/first-look"] {
        phone.go(&format!("#/vehicle/{cart}{page}")).await;
        phone
            .see_words("[data-held=\"keep-empty\"]", "until this wheel is judged")
            .await;
    }
    phone
        .open_of_vehicle(&cart, "/report/owner", "report")
        .await;
    phone.see_words(".paper", "keep empty").await;
    phone.step("decided, it no longer holds");
    phone.open_of_vehicle(&cart, "/decide/near", "decide").await;
    phone.tap("[data-choice=\"not-on-this-wheel\"]").await;
    phone.write_into("Signed, name", "Ben Lea").await;
    phone.tap_key("sign").await;
    phone.see_page("wheel").await;
    phone.see_no("[data-held]").await;
    see_vehicle(&phone, "not-on-this-wheel").await;
    phone.close().await;
}

async fn see_vehicle(phone: &Browser<'_>, standing: &str) {
    phone.open_day_book().await;
    phone
        .see(&format!("[data-vehicle][data-standing=\"{standing}\"]"))
        .await;
}
