//! Cartside in the browser.

mod album;
mod bringing;
mod carrying;
mod clock;
mod component;
mod correction;
mod correction_key;
mod demonstration;
mod draft;
mod examining;
mod exchange;
mod fate;
mod folding;
mod house;
mod keeping;
mod looking;
mod markup;
mod only_here;
mod page;
#[cfg(debug_assertions)]
mod panic;
mod photo;
mod picturing;
mod preferences;
mod progress;
mod route;
mod scribe;
mod shell;
mod storage;
mod twice;
mod typing;
mod update;
mod wording;
mod workshop;

fn main() {
    #[cfg(debug_assertions)]
    panic::tell_the_page();
    markup::put_up(shell::shell);
}
