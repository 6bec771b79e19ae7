//! From facts to sentences. Nothing reads a sentence back.

pub mod by_mouth;
pub mod counted;
pub mod cracker;
pub mod dry;
pub mod figures;
pub mod flag;
pub mod flow;
pub mod meal;
pub mod oral;
pub mod own;
pub mod six_signs;
pub mod words;
