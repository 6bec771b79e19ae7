//! Answers that stand otherwise than they did: what was said first, and what is said now.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::oral::Seen;
use crate::clinical::findings::trial::Answer;
use crate::clinical::knowledge::oral;
use crate::clinical::knowledge::signed::Signed;
use crate::measure::time::Millis;

/// What was asked.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Asked {
    /// A question of a trial.
    Trial {
        /// The trial's number.
        number: u32,
        /// The question's id.
        question: String,
    },
    /// An item of the gate, by its id.
    Gate(String),
    /// An item of the examination of face, mouth and throat, by its id.
    Oral(String),
}

/// What was said to it.
#[derive(Clone, Debug, PartialEq)]
pub enum Said {
    /// An answer of a trial.
    Answer(Answer),
    /// What holds at the gate: an exception's id, or that it holds.
    Gate(String),
    /// What was seen.
    Seen(Seen),
}

impl Asked {
    /// What is said to it now; none where it was not asked, or was taken back.
    pub fn said(&self, exam: &Exam) -> Option<Said> {
        match self {
            Asked::Trial { number, question } => {
                let trial = exam.trials.iter().find(|t| t.number == *number)?;
                trial.answers.get(question).cloned().map(Said::Answer)
            }
            Asked::Gate(item) => exam.gate.0.get(item).cloned().map(Said::Gate),
            Asked::Oral(item) => {
                let item = oral::items().find(|of| of.id == item.as_str())?;
                exam.oral.seen(item).cloned().map(Said::Seen)
            }
        }
    }
}

/// An answer that was changed, and that is told with what it was: somebody may have read it, or it
/// made the verdict graver.
///
/// Of each question the first and the present answer are kept, with the last change.
#[derive(Clone, Debug, PartialEq)]
pub struct Changed {
    /// What was asked.
    pub asked: Asked,
    /// What was said.
    pub was: Said,
    /// When it was changed last, by the wall clock.
    pub at: Millis,
    /// By whom.
    pub by: Signed,
    /// The rules that spoke for a graver verdict by what was said, and no longer do.
    pub lifted: Vec<&'static str>,
}
