//! Lengths as the trade writes them: spelt, checked, written back, and kept with their doubt.
//!
//! The primary type is [`Length`]; a millimetre and an inch are only ways to write one. Text
//! becomes a length in [`spelling`], a length becomes text in [`mod@format`], a paper number becomes
//! either in [`length`], and each value is checked against a named row of [`range`]. Whatever a
//! door will not take comes back as a [`refusal`]. Positive lengths point the way their range
//! says; only the dish may be negative. A [`percent`] is a share of a whole, a [`mod@strain`] a part of a length; a
//! [`mod@temperature`] is no rise, a [`mod@force`] no stress, a round no diameter ([`circumference`]). What is assumed is a
//! [`mod@band`].
//!
//! # Accepted spellings
//!
//! The bare unit decides only what a number without a unit means.
//!
//! ```
//! use cartside_core::quantity::length::to_paper_mm;
//! use cartside_core::quantity::range::LengthRange;
//! use cartside_core::quantity::spelling::{BareUnit, parse};
//!
//! use BareUnit::{Inch, Millimetre, Thou};
//! let table = [
//!     // text           bare unit    millimetres
//!     ("1275 mm",       Inch,        1275.0),
//!     ("127.5 cm",      Inch,        1275.0),
//!     ("127,5 cm",      Inch,        1275.0),
//!     ("1.275 m",       Inch,        1275.0),
//!     ("1,275 m",       Inch,        1275.0), // 1275 m is out of range, so one reading is left
//!     ("1275",          Millimetre,  1275.0),
//!     ("½",             Millimetre,  0.5),
//!     ("½",             Inch,        12.7),
//!     ("1⅜",            Inch,        34.925),
//!     ("1.375 in",      Millimetre,  34.925),
//!     ("50 3/16 in",    Millimetre,  1274.7625),
//!     ("50-3/16",       Inch,        1274.7625),
//!     ("50-3⁄16 inches", Millimetre, 1274.7625),
//!     ("4' 2 3/16\"",   Millimetre,  1274.7625),
//!     ("4′ 2 3/16″",    Millimetre,  1274.7625),
//!     ("4’ 2 3/16”",    Millimetre,  1274.7625),
//!     ("4ft 2 3/16in",  Millimetre,  1274.7625),
//!     ("4 ft 2 in",     Millimetre,  1270.0),
//!     ("4 ft",          Millimetre,  1219.2),
//!     ("12 thou",       Millimetre,  0.3048),
//!     ("0.012 in",      Millimetre,  0.3048),
//!     ("12",            Thou,        0.3048),
//! ];
//! for (text, bare, millimetres) in table {
//!     let length = parse(text, LengthRange::General, bare).expect(text);
//!     assert_eq!(to_paper_mm(length), millimetres, "{text}");
//! }
//!
//! let dish = parse("−12 mm", LengthRange::Dish, Millimetre).expect("a dish may be negative");
//! assert_eq!(to_paper_mm(dish), -12.0);
//! ```

pub mod refusal;
pub mod sine;
pub mod length;
pub mod range;
pub mod spelling;
pub mod format;
pub mod measured;
pub mod decimal;
pub mod percent;
pub mod circumference;
pub mod temperature;
pub mod speed;
pub mod time;
pub mod force;
pub mod strain;
pub mod band;

pub use band::{Band, End};
pub use decimal::decimal;
pub use force::{Force, Stress};
pub use length::Length;
pub use measured::Measured;
pub use percent::Percent;
pub use range::LengthRange;
pub use refusal::Refusal;
pub use strain::Strain;
pub use temperature::{Temperature, TemperatureRise};
