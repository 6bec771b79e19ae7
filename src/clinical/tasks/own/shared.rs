//! Own trials that overlap: a sign within the minute of two different ones, and which it is of.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{Given, OwnFact, OwnGiven};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::own::given;
use crate::clinical::tasks::water::WATCH;
use crate::measure::time::{Millis, Stamp};

/// A sign that may be of either of two trials.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shared {
    /// The sign.
    pub sign: Sign,
    /// When it was pressed.
    pub at: Stamp,
    /// The trial it stands with: its number, and what was given.
    pub of: (u32, OwnGiven),
    /// The other one.
    pub other: (u32, OwnGiven),
    /// Whether somebody said already that it is of the trial before.
    pub said: bool,
}

/// Signs that fall into the minute of the trial before as well, where that was another thing; and
/// those that somebody said are that one's.
pub fn shared(exam: &Exam) -> Vec<Shared> {
    let trials: Vec<(&Trial, OwnGiven)> = by_mouth::given(TaskId::Own, exam)
        .map(|trial| (trial, given(trial)))
        .collect();
    let mut all = Vec::new();
    let pairs = trials.iter().enumerate().flat_map(|(n, now)| {
        let earlier = &trials[..n];
        // Of several of the same the newest: which of them it was makes no difference.
        let newest = |at: &usize| earlier[at + 1..].iter().all(|t| t.1 != earlier[*at].1);
        let others = (0..n).filter(newest).map(|at| &earlier[at]);
        others.map(move |before| (before, now)).collect::<Vec<_>>()
    });
    let name = |trial: &Trial, given: &OwnGiven| (trial.number, given.clone());
    for ((before, before_given), (now, now_given)) in pairs {
        let (Some(end), Some(start)) = (before.end(), now.start()) else {
            continue;
        };
        if before_given == now_given {
            continue;
        }
        let of_before = || name(before, before_given);
        let of_now = || name(now, now_given);
        let in_minute = |at| before.between(end, at).length.is_none_or(|l| l <= WATCH);
        let after_start = |at| {
            let since = before.between(start, at).length;
            since.is_some_and(|l| l >= Millis::ZERO)
        };
        for (sign, at) in now.signs().filter(|(_, at)| in_minute(*at)) {
            all.push(Shared {
                sign,
                at,
                of: of_now(),
                other: of_before(),
                said: false,
            });
        }
        for (sign, at) in before.signs().filter(|(_, at)| after_start(*at)) {
            all.push(Shared {
                sign,
                at,
                of: of_before(),
                other: of_now(),
                said: true,
            });
        }
    }
    all
}

/// A note that a sign may be of either of two trials.
fn note(either: OwnFact) -> Flag {
    rules::OWN_OVERLAP.flag(Level::Note, Domain::EatingDrinking, either)
}

/// A note for each of which nobody said whose it is.
pub(super) fn flags(exam: &Exam) -> Vec<Flag> {
    let open = shared(exam).into_iter().filter(|shared| !shared.said);
    open.map(|shared| {
        note(OwnFact::Either {
            sign: shared.sign,
            with: Given::Own(shared.of.1.brief()),
            other: Given::Own(shared.other.1.brief()),
        })
    })
    .collect()
}

/// A note for each sign in a trial that falls into the minute after one of another task.
pub fn across(exam: &Exam) -> Vec<Flag> {
    let was_given = |t: &&Trial| t.task.is_by_mouth() && t.start().is_some();
    let what = |trial: &Trial| match trial.task {
        TaskId::Own => Given::Own(given(trial).brief()),
        task => Given::Task(task),
    };
    let mut notes: Vec<OwnFact> = Vec::new();
    for before in exam.trials.iter().filter(was_given) {
        let (Some(start), Some(end)) = (before.start(), before.end()) else {
            continue;
        };
        let others = exam.trials.iter().filter(was_given);
        for now in others.filter(|now| now.task != before.task) {
            let since = now
                .start()
                .and_then(|now| before.between(start, now).length);
            if since.is_none_or(|since| since <= Millis::ZERO) {
                continue;
            }
            let in_minute = |at| before.between(end, at).length.is_some_and(|l| l <= WATCH);
            for (sign, _) in now.signs().filter(|(_, at)| in_minute(*at)) {
                let either = OwnFact::Either {
                    sign,
                    with: what(now),
                    other: what(before),
                };
                if !notes.contains(&either) {
                    notes.push(either);
                }
            }
        }
    }
    notes.into_iter().map(note).collect()
}
