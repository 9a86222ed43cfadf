//! The pages by which an examination is set up, begun, decided and closed.

use serde_json::json;

use crate::drive::Browser;

impl Browser<'_> {
    /// Opens a page of a vehicle by the end of its address, and waits for it.
    pub async fn open_of_vehicle(&self, vehicle: &str, rest: &str, page: &str) {
        self.go(&format!("#/vehicle/{vehicle}{rest}")).await;
        self.see_page(page).await;
    }

    /// Taps a choice of a step.
    pub async fn tap_choice(&self, step: &str, choice: &str) {
        self.tap(&format!(
            "[data-step=\"{step}\"] [data-choice=\"{choice}\"]"
        ))
        .await;
    }

    /// Says how far the wheels are taken apart and saves it.
    pub async fn take_apart(&self, vehicle: &str, stage: &str) {
        self.open_of_vehicle(vehicle, "/examination", "examination")
            .await;
        self.tap_choice("stage", stage).await;
        self.tap("[data-key=save-examination]").await;
        self.see_saved("").await;
    }

    /// Answers one row of the first look.
    pub async fn look_first(&self, wheel: &str, question: &str, answer: &str) {
        let row = format!("[data-first-look=\"{wheel}\"] [data-question=\"{question}\"]");
        self.tap(&format!("{row} [data-answer=\"{answer}\"]")).await;
        let held = format!("{row} [data-answer=\"{answer}\"][aria-pressed=true]");
        self.see(&held).await;
    }

    /// Chooses the part that work was done on.
    pub async fn choose_part(&self, part: &str) {
        let script = r#"
const select = find("main select");
if (![...select.options].some((option) => option.value === arguments[0])) return false;
select.value = arguments[0];
select.dispatchEvent(new Event("change", { bubbles: true }));
return true;"#;
        let expected = format!("the part {part} to choose");
        self.wait_for(&expected, script, json!([part])).await;
    }
}
