//! From readings to findings to a standing: limits are rows of a table, read by one evaluator.

pub mod examined;
pub mod finding;
pub mod house;
pub mod judge;
pub mod limit;
pub mod needs;
pub mod seen;
pub mod standing;
mod reach;
mod rows;

pub use examined::{examined, lowest};
pub use finding::{Finding, Measure, Missing};
pub use house::house_limits;
pub use judge::{Beside, Judgement, judge};
pub use limit::{Limit, Origin, Test};
pub use needs::{needs, questions};
pub use seen::{Seen, Taken};
pub use standing::{Grade, Standing};
