//! Signs pressed after the watch closed.
//!
//! Just after it: a press comes a moment after what it means. **Invariant:** left alone, such a sign
//! is told and not counted, as the published rule has it; the clinician's word can only make it count.
//!
//! Longer after it, where one trial follows the other: the next may have been in the mouth already.
//! **Invariant:** left alone, such a sign keeps the trials incomplete.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::ByMouthFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::{Sign, meaning};
use crate::clinical::knowledge::task::TaskId;
pub use crate::clinical::tasks::by_mouth::within::{LAG, WITHIN, id};
use crate::clinical::tasks::by_mouth::within::{WATCH, is_near, is_unsure};
use crate::measure::time::{Millis, Stamp};

/// A sign pressed within [`LAG`] of the watch's end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Near {
    /// Its trial.
    pub trial: u32,
    /// The sign.
    pub sign: Sign,
    /// When it was pressed.
    pub at: Stamp,
    /// So long after the end press.
    pub after: Millis,
    /// Whether the clinician said that it was seen within the watch.
    pub said: bool,
}

/// Such signs of a trial.
pub fn near(trial: &Trial) -> Vec<Near> {
    let watched = trial
        .task
        .sign_column()
        .filter(|_| trial.task.is_by_mouth());
    let (Some(end), Some(column)) = (trial.end(), watched) else {
        return Vec::new();
    };
    trial
        .signs()
        // What stops every trial counts whenever it comes.
        .filter(|(sign, _)| meaning(*sign, column).0 != Level::Stop)
        .filter_map(|(sign, at)| {
            let time = trial.between(end, at);
            let after = time.length.filter(|after| is_near(*after, time.doubt))?;
            let said = trial.choice(&id(at)) == Some(WITHIN);
            Some(Near {
                trial: trial.number,
                sign,
                at,
                after,
                said,
            })
        })
        .collect()
}

/// Answer: nothing was in the mouth.
pub const NOTHING: &str = "nothing";

/// The question under which it is kept what a late sign was with.
pub fn late_id(at: Stamp) -> String {
    format!("late.{}", at.wall.0)
}

/// Signs pressed later than [`LAG`] after the watch, where one trial follows the other and the next
/// may have been in the mouth already, and nobody said.
pub fn late(trial: &Trial) -> Vec<Near> {
    let Some(end) = trial.end().filter(|_| trial.task.goes_on()) else {
        return Vec::new();
    };
    trial
        .signs()
        .filter(|(_, at)| trial.choice(&late_id(*at)) != Some(NOTHING))
        .filter_map(|(sign, at)| {
            let time = trial.between(end, at);
            let vouched = !is_unsure(time.doubt);
            let after = time
                .length
                .filter(|after| vouched && *after > WATCH + LAG)?;
            Some(Near {
                trial: trial.number,
                sign,
                at,
                after,
                said: false,
            })
        })
        .collect()
}

/// Incomplete for each of which it was not said.
pub fn late_flags(task: TaskId, exam: &Exam, rule: &'static Rule) -> Vec<Flag> {
    let trials = exam.trials.iter().filter(|t| t.task == task);
    let late = trials.flat_map(late);
    late.map(|Near { sign, after, .. }| {
        let fact = ByMouthFact::NextInMouth { sign, after };
        rule.flag(Level::Incomplete, Domain::EatingDrinking, fact)
    })
    .collect()
}

/// What the clinician said so is handed over with it; and what was taken back long after its press.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let note = |rule: &'static Rule, fact| rule.flag(Level::Note, Domain::EatingDrinking, fact);
    let said = exam.trials.iter().flat_map(near).filter(|near| near.said);
    let said = said.map(|Near { sign, after, .. }| {
        let fact = ByMouthFact::SeenWithin { sign, after };
        note(&rules::SIGN_WITHIN, fact)
    });
    let gone = exam.trials.iter().flat_map(|trial| &trial.taken_back);
    let gone = gone.map(|(sign, after)| {
        let (sign, after) = (*sign, *after);
        let fact = ByMouthFact::TakenBack { sign, after };
        note(&rules::SIGN_TAKEN_BACK, fact)
    });
    said.chain(gone).collect()
}
