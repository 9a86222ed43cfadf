//! Our own number keys, since no telephone's have fractions. What is typed stays as it was typed.

use leptos::prelude::*;

/// Digits alone, for counts.
pub const DIGITS: [&str; 10] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"];
/// Digits, fractions and units, for lengths.
pub const LENGTHS: [&str; 18] = [
    "1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "½", "¼", "⅛", "1/16", "mm", "in",
    "thou",
];

/// A number being typed.
#[component]
pub fn NumberPad(
    /// The label of the field.
    label: String,
    /// The keys there are.
    keys: &'static [&'static str],
    /// What is typed so far.
    typed: RwSignal<String>,
    /// Why what was typed is not taken; empty while nothing is wrong.
    #[prop(into)]
    refusal: Signal<String>,
    /// Takes what is typed.
    accept: Callback<()>,
    /// Goes back without it.
    leave: Callback<()>,
) -> impl IntoView {
    let key = |digit: &'static str| view! { <button type="button" class="key" data-digit=digit on:click=move |_| type_on(typed, digit)>{digit}</button> };
    view! {
        <form
            class="stack"
            on:submit=move |submit| {
                submit.prevent_default();
                accept.run(());
            }
            on:keydown=move |pressed| {
                if !(pressed.ctrl_key() || pressed.meta_key() || pressed.alt_key()) {
                    by_keyboard(typed, &pressed.key());
                }
            }
        >
            <p class="strong">{label}</p>
            <output class="typed" data-typed aria-label="Typed so far">{typed}</output>
            <p class="refusal" role="alert">{refusal}</p>
            <div class="pad digits">
                {keys.iter().copied().map(key).collect_view()}
            </div>
            <div class="row evenly">
                <button type="button" class="key" data-key="leave" on:click=move |_| leave.run(())>"Back"</button>
                <button type="button" class="key" data-key="erase" on:click=move |_| typed.update(rub_out)>"Rub out one"</button>
            </div>
            <button type="submit" class="key key-main" data-key="accept">"Take it"</button>
        </form>
    }
}

/// A keyboard's figures, signs and letters are typed too; a blank and Enter tap the key in focus instead.
fn by_keyboard(typed: RwSignal<String>, key: &str) {
    let mut signs = key.chars();
    match (signs.next(), signs.next()) {
        (Some(sign), None) if !sign.is_whitespace() => typed.update(|text| text.push(sign)),
        _ if key == "Backspace" => typed.update(rub_out),
        _ => {}
    }
}

/// Adds what stands on a key; a unit, and a fraction of several signs after a figure, is set off by a blank.
fn type_on(typed: RwSignal<String>, key: &str) {
    typed.update(|text| {
        let after_figure = text.ends_with(|last: char| last.is_ascii_digit());
        let set_off = key.len() > 1 && key.is_ascii() && !text.is_empty() && !text.ends_with(' ');
        if set_off && (after_figure || !key.contains('/')) {
            text.push(' ');
        }
        text.push_str(key);
    });
}

fn rub_out(text: &mut String) {
    text.pop();
}
