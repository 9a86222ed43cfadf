//! The tyring sheet: lengths first, then heat, then what gives first and the year; refusals in sentences; what is typed
//! outlasts a reload; and it is reckoned without making a tap wait.

use cartside_tests::drive::{Browser, Device};
use serde_json::json;

/// The longest that a figure typed on the sheet may take until all of it is reckoned anew, at full speed, in milliseconds.
/// It took 7 ms here; the rest is for a busy machine.
const RECKONED: f64 = 100.0;
/// The longest that one slice of it may hold up a tap, in milliseconds; it took 4 ms.
const SLICE: f64 = 50.0;

async fn fill(phone: &Browser<'_>, field: &str, text: &str) {
    let script = r#"
const input = find(`[data-field="${arguments[0]}"] input`);
if (!input) return null;
input.focus();
input.value = arguments[1];
input.dispatchEvent(new Event("input", { bubbles: true }));
return true;"#;
    phone
        .wait_for(&format!("the field {field}"), script, json!([field, text]))
        .await;
}

/// A wheel of which every size is said, on its tyring sheet: the demonstration has one.
async fn on_the_sheet(phone: &Browser<'_>) -> String {
    phone.tap_words("Open the demonstration").await;
    phone.see_the_demonstration().await;
    phone.see("[data-vehicle]").await;
    let find = "return [...document.querySelectorAll('[data-vehicle]')]\
        .find((e) => e.textContent.includes('Hay cart')).dataset.vehicle;";
    let cart = phone.ask(find, json!([])).await;
    let cart = cart.as_str().unwrap().to_owned();
    phone.go(&format!("#/vehicle/{cart}/tyring/off")).await;
    phone.see_page("tyring").await;
    cart
}

#[tokio::test]
async fn a_sheet_leads_from_rounds_to_the_fire() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    phone.be_a_phone(360, 740).await;
    let cart = on_the_sheet(&phone).await;
    phone
        .see_words("[data-sheet=lengths]", "type the wheel's round")
        .await;
    phone.step("a tyre that is too large");
    fill(&phone, "traveller", "628").await;
    fill(&phone, "wheel", "6 + 471; 6 + 472").await;
    fill(&phone, "tyre", "6 + 478; 6 + 477.5").await;
    phone
        .see_words("[data-sheet=lengths]", "larger round than the wheel")
        .await;
    phone.see_no("[data-sheet=grip]").await;
    phone.step("the draw that is wanted");
    fill(&phone, "draw", "14").await;
    phone
        .see_words("[data-sheet=lengths]", "20.5 mm must come off")
        .await;
    phone
        .see_words("[data-sheet=heat]", "Cut a stick 1352.5 mm long")
        .await;
    phone.see("[data-sheet=heat][data-verdict=enough]").await;
    phone
        .see_words("[data-sheet=grip]", "What gives first")
        .await;
    phone
        .see_words("[data-sheet=year]", "in the driest month")
        .await;
    phone.step("no time left");
    fill(&phone, "carry", "590").await;
    phone
        .see("[data-sheet=heat][data-verdict=do-not-try]")
        .await;
    fill(&phone, "carry", "").await;
    phone.see("[data-sheet=heat][data-verdict=enough]").await;
    phone.step("too much draw");
    fill(&phone, "draw", "60").await;
    phone.see("[data-sheet=heat] [role=alert]").await;
    fill(&phone, "draw", "14").await;
    phone.see("[data-sheet=year]").await;
    phone.step("no number");
    fill(&phone, "wheel", "six turns").await;
    phone
        .see_words("[data-sheet=lengths] [role=alert]", "six turns")
        .await;
    fill(&phone, "wheel", "6 + 471; 6 + 472").await;
    phone.see("[data-sheet=year]").await;
    phone.step("another place makes another year");
    let before = phone.words("[data-sheet=year]").await;
    choose(&phone, "phoenix").await;
    phone.see_words("[data-sheet=year]", "Wood Handbook").await;
    let after = phone.words("[data-sheet=year]").await;
    phone.expect(before != after, "another year").await;
    phone.step("how hard the nave's elm is");
    let soft = phone.words("[data-sheet=year]").await;
    choose(&phone, "hard").await;
    let changed = "return find('[data-sheet=year]') && find('[data-sheet=year]').textContent !== arguments[0];";
    phone.wait_for("another year", changed, json!([soft])).await;
    choose(&phone, "white-oak").await;
    let asked =
        "return [...document.querySelectorAll('main option')].every((e) => e.value !== 'hard');";
    phone
        .wait_for("no grain asked of oak", asked, json!([]))
        .await;
    choose(&phone, "english-elm").await;
    phone.step("another traveller for the tyre");
    fill(&phone, "other", "2: 628").await;
    phone
        .see_words("[data-sheet=lengths]", "not run with the same traveller")
        .await;
    fill(&phone, "other", "").await;
    phone.step("the fire");
    phone
        .see_words("[data-sheet=fire]", "common practice, no source")
        .await;
    phone
        .see_words("[data-sheet=fire]", "Nobody inside the ring")
        .await;
    phone.tap_key("out-of-the-fire").await;
    phone.see("[data-clock=left]").await;
    phone.see_words("[role=timer]", "0:01").await;
    phone.tap_key("it-lies").await;
    phone.see("[data-key=out-of-the-fire]").await;
    phone.step("written down");
    phone.tap_key("write-down").await;
    phone.see_saved("written down as work").await;
    phone.go(&format!("#/vehicle/{cart}/work/off")).await;
    phone.see_words("[data-work]", "draw wanted 14 mm").await;
    phone.step("dished the other way: asked once, then no draw");
    phone.open_question_at(&cart, "off", "dish", "whole").await;
    phone.tap_digits(&["−", "2", "0"]).await;
    phone.tap_key("accept").await;
    phone
        .see_words("[role=alert]", "this is dished the other way")
        .await;
    phone.tap_key("accept").await;
    phone.see_saved("dish").await;
    phone.go(&format!("#/vehicle/{cart}/tyring/off")).await;
    phone
        .see_words("main", "the other way than it was built")
        .await;
    phone.close().await;
}

/// What stands in a field.
async fn field(phone: &Browser<'_>, name: &str) -> String {
    let script = r#"const input = find(`[data-field="${arguments[0]}"] input`); return input && input.value;"#;
    let value = phone.ask(script, json!([name])).await;
    value.as_str().unwrap_or("no such field").to_owned()
}

/// Chooses in the list that offers this.
async fn choose(phone: &Browser<'_>, option: &str) {
    let script = r#"
const select = [...document.querySelectorAll("main select")]
  .find((e) => [...e.options].some((o) => o.value === arguments[0]));
select.value = arguments[0];
select.dispatchEvent(new Event("change", { bubbles: true }));
return true;"#;
    phone.ask(script, json!([option])).await;
}

/// A cart with an examination, on the sheet of its near wheel.
async fn cart_on_the_sheet(phone: &Browser<'_>) -> String {
    let cart = phone.begin_a_cart().await;
    cart_has_an_examination(phone, &cart).await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see_page("tyring").await;
    cart
}

#[tokio::test]
async fn a_sheet_that_is_kept_stands_again_and_on_another_device() {
    let first = Device::installed("first").await;
    let phone = first.open_ready().await;
    phone.see_page("book").await;
    let cart = cart_on_the_sheet(&phone).await;
    let before = entries(&phone, &cart).await;
    phone.step("rounds, choices and what was cut");
    for (name, text) in [
        ("traveller", "628"),
        ("wheel", "6 + 471; 6 + 472"),
        ("tyre", "6 + 478"),
        ("draw", "14"),
        ("cut", "12"),
        ("welded", "6 + 457.5"),
        ("warm", "35"),
        ("other", "3: 629"),
    ] {
        fill(&phone, name, text).await;
    }
    choose(&phone, "wrought").await;
    choose(&phone, "hard").await;
    choose(&phone, "phoenix").await;
    phone.tap_key("keep").await;
    phone.see_saved("the tyring sheet").await;
    // Three rounds and what was chosen.
    let kept = entries(&phone, &cart).await;
    phone.expect_same("entries", kept, before + 4).await;
    phone.step("kept again, nothing is written");
    phone.tap_key("keep").await;
    phone.see_saved("nothing on the sheet has changed").await;
    phone.step("another draw: one entry in the place of the last");
    fill(&phone, "draw", "9").await;
    phone.tap_key("keep").await;
    phone.see_saved("the tyring sheet").await;
    phone.reload().await;
    phone.see_page("tyring").await;
    for (name, text) in [
        ("traveller", "628 mm"),
        ("wheel", "6 + 471; 6 + 472"),
        ("tyre", "6 + 478"),
        ("draw", "9 mm"),
        ("cut", "12 mm"),
        ("welded", "6 + 457.5"),
        ("warm", "35"),
        ("other", "3: 629 mm"),
    ] {
        let stands = field(&phone, name).await;
        phone.expect_same(name, stands, text.to_owned()).await;
    }
    phone
        .see_words("[data-sheet=lengths]", "This weld took")
        .await;
    let grain = "return document.querySelector('main select:has(option[value=hard])').value;";
    let grain = phone.ask(grain, json!([])).await;
    phone.expect_same("grain", grain, json!("hard")).await;
    phone.step("the owner is told");
    phone.go(&format!("#/vehicle/{cart}/report/owner")).await;
    phone.see_words(".paper", "traveller 3 of 629 mm").await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see("[data-field=welded] input").await;
    phone.step("a round taken out of its field is struck out");
    fill(&phone, "welded", "").await;
    phone.tap_key("keep").await;
    phone.see_saved("the tyring sheet").await;
    phone.go(&format!("#/vehicle/{cart}/entries")).await;
    phone
        .see_words(
            "main",
            "Struck out: near wheel, round of the tyre as welded",
        )
        .await;
    let book = phone.carry_out().await;
    let second = Device::installed("second").await;
    let tablet = second.open_ready().await;
    tablet.bring_in(&book.path, book.lines().len(), 0).await;
    tablet.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    tablet.see_page("tyring").await;
    tablet.see("[data-field=wheel] input").await;
    for (name, text) in [
        ("wheel", "6 + 471; 6 + 472"),
        ("draw", "9 mm"),
        ("welded", ""),
    ] {
        let stands = field(&tablet, name).await;
        tablet.expect_same(name, stands, text.to_owned()).await;
    }
    tablet.step("two draws are a dispute");
    fill(&tablet, "draw", "10").await;
    tablet.tap_key("keep").await;
    tablet.see_saved("the tyring sheet").await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see("[data-field=draw] input").await;
    fill(&phone, "draw", "8").await;
    phone.tap_key("keep").await;
    phone.see_saved("the tyring sheet").await;
    let theirs = tablet.carry_out().await;
    phone.bring_in(&theirs.path, 1, 0).await;
    phone.open_disputes(&cart, 1).await;
    phone.see_words("main", "draw of 8 mm").await;
    phone.see_words("main", "draw of 10 mm").await;
    phone.step("the rounds of the next examination stand beside these");
    phone.go(&format!("#/vehicle/{cart}")).await;
    phone.see_page("vehicle").await;
    phone.tap_key("begin-examination").await;
    phone.see_page("examination").await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see("[data-field=wheel] input").await;
    fill(&phone, "traveller", "628").await;
    fill(&phone, "wheel", "6 + 461").await;
    phone.tap_key("keep").await;
    phone.see_saved("the tyring sheet").await;
    phone.go(&format!("#/vehicle/{cart}/changes")).await;
    phone.see_words("[data-rounds]", "shorter than on").await;
    tablet.close().await;
    phone.close().await;
}

#[tokio::test]
async fn what_cannot_be_kept_is_said_and_nothing_is_written() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = cart_on_the_sheet(&phone).await;
    fill(&phone, "wheel", "4241").await;
    let before = entries(&phone, &cart).await;
    for (name, text, said) in [
        ("air", "cold", "a whole number from −40 to 60"),
        ("wind", "99", "a whole number from 0 to 20"),
        ("months", "80 5; 81 6", "twelve pairs"),
        ("warm", "400", "a whole number from"),
        (
            "months",
            "99 5;99 5;99 5;99 5;99 5;99 5;99 5;99 5;99 5;99 5;99 5;99 5",
            "humidity of 99 %",
        ),
    ] {
        fill(&phone, "tyre", "4250").await;
        fill(&phone, name, text).await;
        phone
            .see_words("[data-sheet=lengths] [role=alert]", said)
            .await;
        phone.tap_key("keep").await;
        phone.see_trouble("Nothing was changed").await;
        fill(&phone, name, "").await;
    }
    let after = entries(&phone, &cart).await;
    phone.expect_same("entries", after, before).await;
    phone.step("the only examination is struck out");
    phone.go(&format!("#/vehicle/{cart}/entries")).await;
    phone.see_page("entries").await;
    let of_visit = r#"return [...document.querySelectorAll("[data-entry]")]
  .find((item) => /^examination/i.test(item.textContent.trim()))?.dataset.entry;"#;
    let visit = phone.wait_for("the examination", of_visit, json!([])).await;
    let visit = format!("[data-entry=\"{}\"]", visit.as_str().unwrap());
    phone.tap_words_in(&visit, "Strike out").await;
    phone.see_saved("").await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see("[data-field=wheel] input").await;
    fill(&phone, "wheel", "4241").await;
    phone.tap_key("keep").await;
    phone.see_trouble("none is begun").await;
    phone.close().await;
}

#[tokio::test]
async fn runs_are_typed_by_keys_for_numbers_and_two_more() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    phone.be_a_phone(360, 740).await;
    on_the_sheet(&phone).await;
    let keys = phone
        .attribute("[data-field=wheel] input", "inputmode")
        .await;
    phone
        .expect_same("keys of the wheel's round", json!(keys), json!("decimal"))
        .await;
    fill(&phone, "traveller", "628").await;
    fill(&phone, "wheel", "6").await;
    for (key, digits) in [
        ("left-over", "471"),
        ("next-run", "6"),
        ("left-over", "473"),
    ] {
        phone.tap_key(key).await;
        let typed = json!({ "text": digits });
        phone.below("Input.insertText", typed).await;
    }
    let script = r#"return find("[data-field=wheel] input").value === "6 + 471; 6 + 473";"#;
    phone.wait_for("two runs", script, json!([])).await;
    phone.step("both are counted: six turns and the middle of what is left over");
    phone.see_words("[data-sheet=lengths]", "4240 mm").await;
    phone.close().await;
}

async fn cart_has_an_examination(phone: &Browser<'_>, cart: &str) {
    phone.open_question(cart, "near", "tyre-gap").await;
    phone
        .answer("between-1", "0.25", "between 1 and 2: tyre gap ¼ mm")
        .await;
}

/// How many entries the vehicle has, without leaving the page that shows.
async fn entries(phone: &Browser<'_>, cart: &str) -> usize {
    let back = phone.hash().await;
    let count = phone.count_everything_written(cart).await;
    phone.go(&back).await;
    phone.see_page("tyring").await;
    count
}

/// The screen's lock, as a page of ours may ask for it: it counts what is held.
const LOCK: &str = r#"
window.awake = 0;
Object.defineProperty(navigator, "wakeLock", { value: {
  request: async (kind) => {
    if (kind !== "screen") throw new TypeError("no such lock");
    window.awake += 1;
    return { release: async () => { window.awake -= 1; } };
  },
} });"#;

#[tokio::test]
async fn the_screen_stays_on_while_the_tyre_is_out_of_the_fire_and_its_time_is_kept() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    phone.before_each_page(LOCK).await;
    phone.reload().await;
    let cart = cart_on_the_sheet(&phone).await;
    let held = "return window.awake === arguments[0];";
    phone.wait_for("no lock yet", held, json!([0])).await;
    phone.tap_key("out-of-the-fire").await;
    phone.wait_for("the lock", held, json!([1])).await;
    phone.see_words("[role=timer]", "0:02").await;
    phone.tap_key("it-lies").await;
    phone
        .wait_for("the lock given back", held, json!([0]))
        .await;
    phone.see_saved("the tyring sheet").await;
    phone.reload().await;
    phone.see_page("tyring").await;
    phone.see_words("[data-lay]", "It lay 0:0").await;
    phone.go(&format!("#/vehicle/{cart}/entries")).await;
    phone.see_words("main", "s after the fire").await;
    phone.close().await;
}

#[tokio::test]
async fn what_is_typed_on_the_sheet_outlasts_a_reload() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see_page("tyring").await;
    phone
        .see_words("[data-sheet=missing]", "until these sizes are said")
        .await;
    phone.write_into("Wheel, round the sole", "4241").await;
    phone
        .see_words("[data-sheet=lengths]", "4241 mm round")
        .await;
    // A draft is written a moment after the last letter.
    tokio::time::sleep(std::time::Duration::from_millis(800)).await;
    phone.reload().await;
    phone.see_page("tyring").await;
    phone
        .see_words("[data-sheet=lengths]", "4241 mm round")
        .await;
    phone.step("a wheel without a hoop");
    phone
        .say_how_it_is_built(&cart, "near", &["tyre=strakes"])
        .await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see("[data-no-sheet]").await;
    phone.close().await;
}

/// Writes another draw, and how long it takes until the year is there again and how long no tap would be heard.
const TIME: &str = r#"
const input = find("[data-field=draw] input");
window.sheet = { longest: 0, last: performance.now(), done: null };
const before = document.querySelector("[data-sheet=year]").textContent;
let gone = false;
const look = () => {
  const now = performance.now();
  window.sheet.longest = Math.max(window.sheet.longest, now - window.sheet.last);
  window.sheet.last = now;
  const year = document.querySelector("[data-sheet=year]");
  gone = gone || !year;
  if (gone && year) { window.sheet.done = now - began; return; }
  setTimeout(look, 0);
};
const began = performance.now();
input.value = "9";
input.dispatchEvent(new Event("input", { bubbles: true }));
look();
return true;"#;

/// Runs with nothing beside it.
mod alone {
    use super::*;

    #[tokio::test]
    async fn a_sheet_is_reckoned_without_holding_up_a_tap() {
        let device = Device::installed("only").await;
        let phone = device.open().await;
        on_the_sheet(&phone).await;
        fill(&phone, "wheel", "4241").await;
        fill(&phone, "draw", "14").await;
        phone.see("[data-sheet=year]").await;
        phone.ask(TIME, json!([])).await;
        let done = "return window.sheet.done !== null && window.sheet;";
        let told = phone
            .wait_for("the year reckoned anew", done, json!([]))
            .await;
        let [all, longest] = ["done", "longest"].map(|name| told[name].as_f64().unwrap());
        println!(
            "a sheet with bands and twelve months: {all:.0} ms, the longest slice {longest:.0} ms"
        );
        phone
            .expect(
                all < RECKONED,
                &format!("the sheet within {RECKONED} ms, not {all}"),
            )
            .await;
        phone
            .expect(
                longest < SLICE,
                &format!("no slice longer than {SLICE} ms, not {longest}"),
            )
            .await;
        phone.close().await;
    }
}
