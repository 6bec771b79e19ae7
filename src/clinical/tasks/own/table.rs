//! What came of own trials: a line a trial, a row for those given alike.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::own::given::settings;
use crate::clinical::tasks::spec::REMARK;
use crate::clinical::tasks::water::Watch;
use crate::wording::sips::sign;
use crate::wording::words::times;

/// What is said of trials without one.
const NO_SIGN: &str = "no sign";

/// While the watch runs.
const SO_FAR: &str = "no sign so far";

/// Where nobody said when it was swallowed.
const NO_END: &str = "last swallow not marked";

/// In words, where the watch was cut.
const NOT_WATCHED: &str = "not watched for 60 seconds";

/// A trial in words.
pub(super) fn line(trial: &Trial) -> String {
    let mut words = vec![settings(trial)];
    let signs: Vec<String> = by_mouth::seen(trial).into_iter().map(sign).collect();
    words.push(match by_mouth::watch(trial) {
        _ if !signs.is_empty() => signs.join(", "),
        Watch::NotBegun => NO_END.to_owned(),
        Watch::Running => SO_FAR.to_owned(),
        _ if is_unwatched(trial) => NOT_WATCHED.to_owned(),
        // What is seen without a press of a sign stands elsewhere.
        _ => "no sign pressed".to_owned(),
    });
    if let Some(Answer::Words(remark)) = trial.answers.get(REMARK) {
        words.push(remark.clone());
    }
    words.join(": ")
}

/// Whether the minute after a trial is over and was not watched to its end.
fn is_unwatched(trial: &Trial) -> bool {
    match by_mouth::watch(trial) {
        Watch::Cut(_) => true,
        Watch::Whole => watched::missing(trial).is_some(),
        Watch::NotBegun | Watch::Running => false,
    }
}

/// A row of the table: trials with the same settings.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Row {
    /// What was given and how.
    pub what: String,
    /// How often.
    pub given: usize,
    /// The signs, each with the number of trials it was seen in.
    pub signs: String,
}

/// The table of trials, in the order in which each was first given.
pub fn table(exam: &Exam) -> Vec<Row> {
    rows(exam)
        .into_iter()
        .map(|(what, trials)| Row {
            what,
            given: trials.len(),
            signs: sign_counts(&trials, exam),
        })
        .collect()
}

pub(super) fn rows(exam: &Exam) -> Vec<(String, Vec<&Trial>)> {
    let mut rows: Vec<(String, Vec<&Trial>)> = Vec::new();
    for trial in by_mouth::given(TaskId::Own, exam) {
        let what = settings(trial);
        match rows.iter_mut().find(|(w, _)| *w == what) {
            Some((_, trials)) => trials.push(trial),
            None => rows.push((what, vec![trial])),
        }
    }
    rows
}

/// "coughed in 1 of 3, cleared the throat in 2 of 3", or "no sign": that only where all were watched and
/// nothing else was seen.
fn sign_counts(trials: &[&Trial], exam: &Exam) -> String {
    let in_some = |words: &str, has: &dyn Fn(&Trial) -> bool| {
        let n = trials.iter().filter(|t| has(t)).count();
        let of = trials.len();
        (n > 0).then(|| match of {
            1 => words.to_owned(),
            _ => format!("{words} in {n} of {of}"),
        })
    };
    let mut counts: Vec<String> = crate::clinical::knowledge::sign::Sign::ALL
        .iter()
        .filter_map(|sign| {
            let seen = |t: &Trial| by_mouth::seen(t).iter().any(|s| s.sign == *sign);
            in_some(sign.past(), &seen)
        })
        .collect();
    counts.extend(in_some("oxygen saturation low or fallen", &|t| {
        saturation::fell(t, exam)
    }));
    counts.extend(in_some(NOT_WATCHED, &is_unwatched));
    counts.extend(in_some("a sign pressed and taken back", &|t| {
        !t.taken_back.is_empty()
    }));
    if !counts.is_empty() {
        return counts.join(", ");
    }
    let any = |watch| trials.iter().any(|t| by_mouth::watch(t) == watch);
    let words = if exam.choked {
        "choking was noted in this visit"
    } else if any(Watch::NotBegun) {
        NO_END
    } else if any(Watch::Running) {
        SO_FAR
    } else {
        NO_SIGN
    };
    words.to_owned()
}

/// What is given now, or what came of the newest, in words beside the pad.
pub fn lately(exam: &Exam) -> Option<String> {
    let newest = exam.latest_started(TaskId::Own)?;
    let what = settings(newest);
    let row = table(exam).into_iter().find(|row| row.what == what)?;
    // While the next is made ready it must not read as what is given now.
    let next = exam
        .latest(TaskId::Own)
        .is_some_and(|t| t.start().is_none());
    let before = if next { "Before: " } else { "" };
    Some(format!(
        "{before}{what}: given {}, {}",
        times(row.given),
        row.signs
    ))
}

/// The rows of the table in words for the handover, those with a sign first.
pub fn told(exam: &Exam) -> Vec<String> {
    let rows = table(exam);
    let (signs, clear): (Vec<Row>, Vec<Row>) =
        rows.into_iter().partition(|row| row.signs != NO_SIGN);
    signs
        .into_iter()
        .chain(clear)
        .map(|row| format!("{}: given {}, {}", row.what, times(row.given), row.signs))
        .collect()
}
