//! Voice: how long a sound is held, and the ratio of s to z.

mod longest;
mod s_z;

pub use crate::clinical::findings::speech::{Held, SToZ, Sound};
pub use longest::{ADULT_SHORT, longest};
pub use s_z::{JudgedRatio, S_Z_BORDER, S_Z_LIMIT, no_ratio, s_to_z};
