//! One picture: drawn on with fingers, as the browser itself feels them, and with keys.

use serde_json::{Value, json};

use crate::drive::Browser;

/// A place on the picture, in shares of its width and height.
pub type Share = (f64, f64);

impl Browser<'_> {
    /// Opens the page of the latest picture of the part in hand.
    pub async fn open_picture(&self) {
        self.tap("[data-key=mark]").await;
        self.see_page("picture").await;
        self.see(".board img[data-picture]").await;
    }

    /// Chooses what is drawn: `line`, `ring` or `pin`.
    pub async fn choose_to_draw(&self, tool: &str) {
        self.tap_key(tool).await;
        self.see(&format!(".on-board[data-tool=\"{tool}\"]")).await;
        self.turn_to_the_picture().await;
    }

    /// Draws through these places with one finger.
    pub async fn draw(&self, places: &[Share]) {
        self.finger_down(places[0]).await;
        for place in &places[1..] {
            self.finger_to(*place).await;
        }
        self.fingers_up().await;
    }

    /// Puts a finger down on the picture.
    pub async fn finger_down(&self, place: Share) {
        self.turn_to_the_picture().await;
        let points = [self.point(place, 0, 12).await];
        self.touch("touchStart", &points).await;
    }

    /// Scrolls so that the picture stands in the middle, clear of what sticks to the edges of the screen; once it is
    /// loaded, since it has no width before, and a finger drawn over it would be a tap, on whatever stands near.
    async fn turn_to_the_picture(&self) {
        let script = r#"
const picture = find(".board img");
if (!picture.complete || !picture.naturalWidth) return false;
find(".board").scrollIntoView({ block: "center", behavior: "instant" });
return true;"#;
        self.wait_for("the picture loaded", script, json!([])).await;
    }

    /// Moves the finger that is down.
    pub async fn finger_to(&self, place: Share) {
        let points = [self.point(place, 0, 12).await];
        self.touch("touchMove", &points).await;
    }

    /// Lifts all fingers.
    pub async fn fingers_up(&self) {
        self.touch("touchEnd", &[]).await;
    }

    /// One point that touches the picture: which finger, and how far it reaches to each side, in pixels.
    pub async fn point(&self, (across, down): Share, finger: u8, reach: u8) -> Value {
        let script = r#"
const lies = find(".board").getBoundingClientRect();
return { x: lies.left + lies.width * arguments[0], y: lies.top + lies.height * arguments[1] };"#;
        let mut point = self
            .wait_for("the board in sight", script, json!([across, down]))
            .await;
        point["id"] = finger.into();
        point["radiusX"] = reach.into();
        point["radiusY"] = reach.into();
        point
    }

    /// What the browser is told of the fingers that are down.
    pub async fn touch(&self, what: &str, points: &[Value]) {
        let touched = json!({ "type": what, "touchPoints": points });
        self.below("Input.dispatchTouchEvent", touched).await;
    }

    /// Saves the marks and waits until they are stored.
    pub async fn save_marks(&self, saved: &str) {
        self.tap_key("save-marks").await;
        self.see_saved(saved).await;
    }

    /// Waits until exactly these marks are listed.
    pub async fn see_marks(&self, expected: &[&str]) {
        let script = r#"
const all = [...document.querySelectorAll(".marks-listed .strong")].map(text);
return JSON.stringify(all) === JSON.stringify(arguments[0]);"#;
        let words = format!("the marks {expected:?}");
        self.wait_for(&words, script, json!([expected])).await;
    }
}
