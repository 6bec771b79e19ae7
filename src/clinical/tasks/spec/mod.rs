//! A task as data: what the pad does, what is asked, which rules read it. What of it is said in
//! words stands in `wording`, by the ids used here.

mod number;
mod pad;
mod phase;
mod question;
mod task_spec;

pub use number::{NumberError, parse_tenths};
pub use pad::{Length, Pad, QUICK};
pub use phase::{Face, Phase};
pub use question::{
    NOT_VALID, Question, REMARK, Takes, Untimed, WATCH_CUT, When, remark, watch_cut,
};
pub use task_spec::{Shows, TaskSpec};
