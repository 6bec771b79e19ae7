//! From facts to sentences. Nothing reads a sentence back.

pub mod breathing;
pub mod by_mouth;
pub mod compared;
pub mod counted;
pub mod cracker;
pub mod dry;
pub mod figures;
pub mod flag;
pub mod flow;
pub mod found;
pub mod fresh;
pub mod gate;
pub mod gone_past;
pub mod in_the_way;
pub mod meal;
pub mod norms;
pub mod oral;
pub mod oral_answers;
pub mod oral_items;
pub mod own;
mod rule;
pub mod sips;
pub mod six_signs;
pub mod speech;
pub mod timed_water;
pub mod verdict;
pub mod words;
