//! Cartside in the browser.

mod clock;
mod exchange;
mod page;
mod photo;
mod preferences;
mod route;
mod scribe;
mod shell;
mod storage;
mod update;
mod workshop;

fn main() {
    leptos::mount::mount_to_body(shell::Shell);
}
