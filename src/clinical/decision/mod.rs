//! From flags to a verdict, what stands in the way, and how old an answer may be.

pub mod assess;
pub mod basis;
mod course;
pub mod fresh;
pub mod gate_flags;
pub mod in_the_way;
pub mod task_state;
pub mod verdict;
