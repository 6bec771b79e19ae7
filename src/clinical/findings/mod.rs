//! What is known of this person: answers, trials, the examination, and what a rule concluded.

pub mod answered;
pub mod breathing;
pub mod changed;
pub mod counted;
pub mod ended;
pub mod exam;
pub mod fact;
pub mod flag;
pub mod gate;
pub mod go_on;
pub mod in_the_way;
pub mod looked;
pub mod marks;
pub mod measured;
pub mod moment;
pub mod next_trial;
pub mod old;
pub mod oral;
pub mod pads;
pub mod speech;
pub mod trial;
