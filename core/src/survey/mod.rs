//! What is asked at the cart, how it can really be taken, and what can be answered.

pub mod answer;
pub mod group;
pub mod lift;
pub mod need;
pub mod question;
pub mod reading;
pub mod stage;
pub mod standing;
pub mod usage;
mod sheet;

pub use answer::{Answer, Crack, Play, Ring};
pub use group::Group;
pub use lift::{SafeToLift, is_lifted_for};
pub use need::Need;
pub use question::{Pad, Places, Question};
pub use reading::{Reading, Slot};
pub use stage::Stage;
pub use standing::Standing;
pub use usage::Use;
