//! Laws of a line.
