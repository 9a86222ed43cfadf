//! What can be done on each page, in the words of someone who does it.

pub mod ask;
pub mod begin;
pub mod bring_in;
pub mod carry_out;
pub mod day_book;
pub mod disputes;
pub mod examination;
pub mod foot;
pub mod head;
pub mod look_over;
pub mod part;
pub mod picture;
pub mod report;
pub mod vehicle;
pub mod wheel;
