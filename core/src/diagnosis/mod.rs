//! From readings to findings to a standing: limits are rows of a table, read by one evaluator.

pub mod decision;
pub mod cause;
pub mod change;
pub mod cure;
pub mod examined;
pub mod held;
pub mod finding;
pub mod history;
pub mod house;
pub mod judge;
pub mod limit;
pub mod look_again;
pub mod needs;
pub mod rounds;
pub mod row;
pub mod shop;
pub mod seen;
pub mod sign;
pub mod standing;
mod reach;
mod rows;

pub use cause::{Cause, causes};
pub use change::{Change, change, worst};
pub use cure::{Cure, InTheWay, before_a_draw, cures, in_the_way};
pub use decision::{
    DecisionRefusal, carries_people, decided, decisions, effective, stands, stands_at,
};
pub use examined::{examined, lowest};
pub use finding::{Finding, Measure, Missing};
pub use held::{held, standing_at, standing_by};
pub use history::{Difference, History, Point, history, since_last};
pub use house::house_limits;
pub use judge::{Beside, Judgement, judge};
pub use limit::{Limit, Origin, Test};
pub use look_again::{look_again, set_before};
pub use needs::{needs, questions};
pub use rounds::{RoundSince, Rounds, rounds_since};
pub use row::{EditRefusal, TypedRefusal};
pub use seen::{Seen, Taken};
pub use shop::limits;
pub use sign::{Signs, Told};
pub use standing::{Grade, Standing};
