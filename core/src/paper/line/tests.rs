//! Laws of a line: what is written is read back, what has been written stays as it is, and what is
//! no line is refused in words.

mod golden;
mod odd;
mod refused;
mod round_trip;
