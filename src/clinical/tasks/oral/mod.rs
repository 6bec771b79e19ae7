//! The examination of face, mouth and throat: what it points to, and what the rules say of it.

pub mod against_gate;
pub mod flags;
pub mod gag;
pub mod mouth;
pub mod points;
pub mod tongue_range;
pub mod weak_side;
