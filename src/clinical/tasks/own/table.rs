//! What came of own trials: a row for those given alike.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::OwnGiven;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::reading::{Reading, Watch};
use crate::clinical::tasks::by_mouth::saturation;
use crate::clinical::tasks::own::given::given;

/// A row of the table: trials given alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// What was given and how.
    pub given: OwnGiven,
    /// How often.
    pub times: usize,
    /// What came of them.
    pub came: Came,
}

/// What came of trials given alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Came {
    /// What was seen, each with in how many of them.
    Seen(Vec<(InTrial, usize)>),
    /// Nothing in them, and choking was noted in this visit.
    Choked,
    /// Nothing in them, and of one nobody said when it was swallowed.
    NoEnd,
    /// Nothing in them so far: a watch runs.
    NoneSoFar,
    /// No sign: all were watched, and nothing else was seen.
    NoSign,
}

/// What can be of a single trial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InTrial {
    /// A sign.
    Sign(Sign),
    /// Oxygen saturation was low, or fell.
    SaturationFell,
    /// It was not watched to the end.
    NotWatched,
    /// A sign was pressed, and taken back.
    TakenBack,
}

/// Whether the minute after a trial is over and was not watched to its end.
pub fn is_unwatched(trial: &Trial) -> bool {
    let reading = Reading::of(trial);
    match reading.watch {
        Watch::Cut(_) => true,
        Watch::Whole => reading.unwatched.is_some(),
        Watch::NotBegun | Watch::Running => false,
    }
}

/// The table of trials, in the order in which each was first given.
pub fn table(exam: &Exam) -> Vec<Row> {
    rows(exam)
        .into_iter()
        .map(|(given, trials)| Row {
            given,
            times: trials.len(),
            came: came(&trials, exam),
        })
        .collect()
}

/// The trials given alike, in the order in which each was first given.
pub(super) fn rows(exam: &Exam) -> Vec<(OwnGiven, Vec<&Trial>)> {
    let mut rows: Vec<(OwnGiven, Vec<&Trial>)> = Vec::new();
    for trial in by_mouth::given(TaskId::Own, exam) {
        let given = given(trial);
        match rows.iter_mut().find(|(of, _)| *of == given) {
            Some((_, trials)) => trials.push(trial),
            None => rows.push((given, vec![trial])),
        }
    }
    rows
}

fn came(trials: &[&Trial], exam: &Exam) -> Came {
    let signs: Vec<Vec<Sign>> = trials
        .iter()
        .map(|t| Reading::of(t).signs().iter().map(|s| s.sign).collect())
        .collect();
    let with_sign = |sign: Sign| signs.iter().filter(|signs| signs.contains(&sign)).count();
    let with = |has: &dyn Fn(&Trial) -> bool| trials.iter().filter(|t| has(t)).count();
    let mut seen: Vec<(InTrial, usize)> = Sign::ALL
        .map(|sign| (InTrial::Sign(sign), with_sign(sign)))
        .to_vec();
    seen.extend([
        (
            InTrial::SaturationFell,
            with(&|t| saturation::fell(t, exam)),
        ),
        (InTrial::NotWatched, with(&is_unwatched)),
        (InTrial::TakenBack, with(&|t| !t.taken_back.is_empty())),
    ]);
    seen.retain(|(_, n)| *n > 0);
    let any = |watch| trials.iter().any(|t| Reading::of(t).watch == watch);
    if !seen.is_empty() {
        Came::Seen(seen)
    } else if exam.choked {
        Came::Choked
    } else if any(Watch::NotBegun) {
        Came::NoEnd
    } else if any(Watch::Running) {
        Came::NoneSoFar
    } else {
        Came::NoSign
    }
}

/// What own trials were about last.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lately {
    /// The row of the newest.
    pub row: Row,
    /// Whether the next is being made ready: it must not read as what is given now.
    pub next: bool,
}

/// What is given now, or what came of the newest; none where none was given.
pub fn lately(exam: &Exam) -> Option<Lately> {
    let newest = given(exam.latest_started(TaskId::Own)?);
    let row = table(exam).into_iter().find(|row| row.given == newest)?;
    let next = exam
        .latest(TaskId::Own)
        .is_some_and(|t| t.start().is_none());
    Some(Lately { row, next })
}
