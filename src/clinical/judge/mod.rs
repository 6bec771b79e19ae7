//! Rules as pure functions: typed figures in; results, and flags made by rules, out.
//!
//! A file each for a task or an idea. A setting that an organisation may choose is handed in,
//! with Penlight's own as its `Default`.
//!
//! **Invariants:** a sign gets its level from [`super::sign::meaning`] only. What was not looked
//! at is never taken for absent. What can't be worked out is an error with a sentence, never a
//! figure.

pub mod adult_bands;
pub mod breath;
pub mod breath_taps;
pub mod breathing_child;
pub mod compared;
pub mod cracker;
pub mod flow;
pub mod gag;
pub mod looked;
pub mod mouth;
pub mod signs;
pub mod sips;
pub mod six_signs;
pub mod speech;
pub mod three_ml;
pub mod timed_water;
pub mod tongue_range;
pub mod voice;
pub mod weak_side;
