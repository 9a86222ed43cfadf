//! What is asked at the cart, how it can really be taken, and what can be answered.

pub mod answer;
pub mod need;
pub mod question;
pub mod reading;

pub use answer::{Answer, Play};
pub use need::Need;
pub use question::{Pad, Places, Question};
pub use reading::{Reading, Slot};
