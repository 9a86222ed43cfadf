//! Laws of the day book.
