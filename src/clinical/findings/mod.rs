//! What is known of this person: answers, trials, the examination, and what a rule concluded.

pub mod counted;
pub mod exam;
pub mod fact;
pub mod flag;
pub mod gate;
pub mod go_on;
pub mod looked;
pub mod marks;
pub mod oral;
pub mod table;
pub mod trial;
