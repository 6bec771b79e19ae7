//! From what was measured to flags.
//!
//! Pure functions, one for each task: typed values in, the value in words, the published group it
//! is put beside and flags out. Every flag is made by a rule of `rules.csv`.

pub mod breath;
pub mod compared;
pub mod speech;
pub mod voice;
