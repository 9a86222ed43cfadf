//! The tyring sheet: round and draw, the cut, and the heat. What is said here is said of lengths first.
//!
//! A round is taken by traveller or tape with its doubt ([`mod@round`]); the wheel's less the tyre's is the draw, of which
//! the joints take their part before anything grips ([`draw`]); the iron is cut for it ([`cut`], [`mod@bar`]) and put on hot ([`hot`]).
//! What the trade printed stands beside it, row by row ([`advice`]). Whatever cannot be so is a [`Refusal`].

pub mod refusal;
pub mod doubt;
pub mod round;
pub mod draw;
pub mod cut;
pub mod bar;
pub mod hot;
pub mod advice;

pub use doubt::Doubt;
pub use refusal::Refusal;
pub use round::Round;
