//! What several pages show alike. A component is given what it shows; only the one that begins an examination asks
//! the workshop to write.

pub mod caution_card;
pub mod choice;
pub mod examination;
pub mod face;
pub mod history_plot;
pub mod in_hand;
pub mod mark;
pub mod marked;
pub mod number_pad;
pub mod part_list;
pub mod reminder;
pub mod round;
pub mod side_view;
pub mod terms;
pub mod turned;
pub mod wheel_drawing;
