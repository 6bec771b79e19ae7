//! From facts to sentences. Nothing reads a sentence back.

pub mod figures;
pub mod flag;
pub mod oral;
pub mod words;
