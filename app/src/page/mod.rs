//! One screen a file. A page reads the workshop and asks it to write; it never touches the store.

pub mod ask;
pub mod begin;
pub mod book;
pub mod bring_in;
pub mod build;
pub mod carry_out;
pub mod changes;
pub mod decide;
pub mod disputes;
pub mod entries;
pub mod examination;
pub mod first_look;
pub mod kept;
pub mod limit;
pub mod limits;
pub mod part;
pub mod picture;
pub mod preferences;
pub mod report;
pub mod same_as;
pub mod unknown;
pub mod tyring;
pub mod vehicle;
pub mod wheel;
pub mod words;
pub mod work;
