//! Laws of the day book, on entries that were written and read as lines.

mod dispute;
mod history;
mod hostile;
mod law;
mod marks;
mod newer;
mod odd;
mod same_as;
mod tyring;
mod portion;
mod strike;
mod writer;
