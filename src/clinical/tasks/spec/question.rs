//! What a task asks.

use crate::clinical::findings::trial::Trial;

/// When a question is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// Before the start.
    Before,
    /// After the end.
    After,
    /// After the watch.
    AfterWatch,
}

/// What a question takes.
#[derive(Debug)]
pub enum Takes {
    /// One of these: stable ids, stored.
    OneOf(&'static [&'static str]),
    /// Free words, at most so many characters.
    Words(u16),
    /// A number.
    Number {
        /// Least, in the unit.
        least: i32,
        /// Most, in the unit.
        most: i32,
        /// What one press of the stepper changes, in the unit.
        step: i32,
    },
    /// A number in tenths, with a large stepper.
    Tenths {
        /// Least, in the unit.
        least: i32,
        /// Most, in the unit.
        most: i32,
    },
}

/// A question of a task.
#[derive(Debug)]
pub struct Question {
    /// Stable id, stored.
    pub id: &'static str,
    /// When.
    pub when: When,
    /// What it takes.
    pub takes: Takes,
    /// Asked only when this earlier question has this answer.
    pub only_if: Option<(&'static str, &'static str)>,
    /// Whether the task is unfinished without it.
    pub needed: bool,
}

/// An answer that makes a trial whole without a press on the pad: it was tried, and could not even
/// be begun.
#[derive(Clone, Copy, Debug)]
pub struct Untimed {
    /// The question it answers.
    pub question: &'static str,
    /// The answers offered in the pad's stead, by their ids.
    pub choices: &'static [&'static str],
}

/// The question id under which free words on a trial are kept.
pub const REMARK: &str = "remark";

/// Free words on a trial, asked after it.
pub const fn remark() -> Question {
    Question {
        id: REMARK,
        when: When::After,
        takes: Takes::Words(80),
        only_if: None,
        needed: false,
    }
}

/// The question id under which an early end of the watch keeps its reason.
pub const WATCH_CUT: &str = "watch-cut";

/// The question id under which a task that could not be done keeps its reason.
pub const NOT_VALID: &str = "not-valid";

/// Whether the watch was ended early.
pub fn watch_cut(trial: &Trial) -> bool {
    trial.answers.contains_key(WATCH_CUT)
}
