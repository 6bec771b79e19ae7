//! The tasks, one file or folder each: its data, its finding, its rules. The catalogue lists them;
//! no task knows of it.

pub mod breath;
pub mod breath_taps;
pub mod breathing;
pub mod by_mouth;
mod catalogue;
pub mod compare;
pub mod compared;
pub mod cracker;
mod done;
pub mod dry_swallow;
mod flags;
pub mod flow;
pub mod free_count;
pub mod kept;
pub mod longest;
pub mod meal;
pub mod oral;
pub mod own;
pub mod sips;
pub mod six_signs;
pub mod spec;
pub mod syllables;
pub mod timed_water;
pub mod water;

pub use catalogue::{BESIDE, aside, spec};
pub use done::is_done;
pub use flags::{flags, flags_so_far, of_adults};
