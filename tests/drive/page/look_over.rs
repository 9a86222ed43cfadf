//! The whole look-over of a wheel, each question that the wheel's page lists answered as of a sound wheel.

use cartside_core::survey::{Pad, Places, Question};

use crate::drive::Browser;

impl Browser<'_> {
    /// Says how a wheel is built, by the words that stand for the choices.
    pub async fn say_how_it_is_built(&self, vehicle: &str, wheel: &str, choices: &[&str]) {
        self.go(&format!("#/vehicle/{vehicle}/build/{wheel}")).await;
        self.see_page("build").await;
        for choice in choices {
            let (step, choice) = choice.split_once('=').unwrap_or(("", choice));
            let key = format!("[data-step=\"{step}\"] [data-choice=\"{choice}\"]");
            self.tap(&key).await;
            self.see(&format!("{key}[aria-pressed=\"true\"]")).await;
        }
        self.tap_key("save").await;
        self.see_page("wheel").await;
    }

    /// The questions that the wheel's page lists, in order.
    pub async fn asked_of(&self, vehicle: &str, wheel: &str) -> Vec<Question> {
        self.open_wheel(vehicle, wheel).await;
        let codes = self.attributes("[data-ask]", "data-ask").await;
        codes
            .iter()
            .filter_map(|code| Question::from_code(code))
            .collect()
    }

    /// Answers every one of these questions as of a sound wheel.
    pub async fn look_over(&self, vehicle: &str, wheel: &str, questions: &[Question]) {
        for question in questions {
            self.step(&format!("{wheel}: {}", question.code()));
            self.open_question(vehicle, wheel, question.code()).await;
            self.answer_soundly(*question).await;
        }
    }

    async fn answer_soundly(&self, question: Question) {
        match (sound_rest(question), sound_key(question)) {
            (Some(rest), _) => self.tap_key(rest).await,
            (None, Some(key)) => self.answer_each(Some(key), question).await,
            (None, None) => self.answer_each(None, question).await,
        }
        self.see_answered(question.code()).await;
    }

    /// One place after the other, by this key or else by a number.
    async fn answer_each(&self, key: Option<&str>, question: Question) {
        let here = format!("[data-question=\"{}\"]", question.code());
        loop {
            self.see("[data-at]").await;
            let place = self.attribute("[data-at]", "data-at").await;
            if place == "none" || !self.sees(&here).await {
                return;
            }
            match key {
                Some(key) => self.tap_key(key).await,
                None => {
                    self.tap_digits(sound_number(question)).await;
                    self.tap_key("accept").await;
                }
            }
            self.see_no(&format!("{here} [data-at=\"{place}\"]")).await;
        }
    }
}

/// The key that answers for all places at once as of a sound wheel.
fn sound_rest(question: Question) -> Option<&'static str> {
    if matches!(question.places(), Places::Whole | Places::Nave) {
        return None;
    }
    Some(match question.pad() {
        Pad::Verdict(_) | Pad::Fastening => "rest-tight",
        Pad::Ring => "rest-rings",
        Pad::Crack => "rest-whole",
        Pad::YesNo => "rest-no",
        Pad::Gauge(_) => match question {
            Question::TyreGap => return None,
            Question::RotFelloe | Question::RotSpoke => "rest-sound",
            Question::StandOff => "rest-home",
            _ => "rest-shut",
        },
        Pad::Size(_) | Pad::Share => return None,
    })
}

/// The key that says a place is sound.
fn sound_key(question: Question) -> Option<&'static str> {
    Some(match question.pad() {
        Pad::Gauge(_) => "0",
        Pad::Fastening => "tight",
        Pad::Crack => "nothing-found",
        Pad::YesNo if question.sound_is_yes() => "yes",
        Pad::YesNo => "no",
        Pad::Share if question == Question::KeeperWorn => "0",
        Pad::Share => "14",
        Pad::Size(_) if !matches!(question, Question::Dish | Question::TyreLeft) => "0",
        _ => return None,
    })
}

/// A measure in millimetres that reaches no limit.
fn sound_number(question: Question) -> &'static [&'static str] {
    match question {
        Question::Dish => &["6", "0"],
        _ => &["1", "4"],
    }
}
