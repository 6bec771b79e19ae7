//! Published values by task, unit, age, sex and language.
//!
//! The values are the tables beside this file (`README.md` explains their columns); the build
//! checks them (`scripts/tables`). [`lookup()`] finds the one that fits, or says why there is none;
//! [`Norm::place`] puts a measured value against it.
//!
//! **Invariant:** nothing is extrapolated or smoothed. A table is read outside its own ages only
//! where it says so (`read_from`, `read_to`), and the result then says "nearest published group".

mod compared;
pub mod lookup;
pub mod place;
pub mod row;

pub use compared::{Compared, NotCompared, Who};
pub use lookup::{Fit, NoNorm, Norm, Query, lookup};
pub use place::{Place, Quantity, WrongUnit};
pub use row::{Method, ROWS, Row, Task, Unit};
