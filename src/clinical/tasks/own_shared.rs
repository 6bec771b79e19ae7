//! Own trials that overlap: a sign within the minute of two different ones, and which it is of.

use super::by_mouth;
use super::own::{brief, settings};
use super::water::WATCH;
use crate::clinical::exam::Exam;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::rules;
use crate::clinical::sign::Sign;
use crate::clinical::task::TaskId;
use crate::clinical::trial::Trial;
use crate::measure::time::{Millis, Stamp};

/// A sign that may be of either of two trials.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shared {
    /// The sign.
    pub sign: Sign,
    /// When it was pressed.
    pub at: Stamp,
    /// The trial it stands with: its number, and what was given.
    pub of: (u32, String),
    /// The other one.
    pub other: (u32, String),
    /// Whether somebody said already that it is of the trial before.
    pub said: bool,
}

/// Signs that fall into the minute of the trial before as well, where that was another thing; and
/// those that somebody said are that one's.
pub fn shared(exam: &Exam) -> Vec<Shared> {
    let trials: Vec<&Trial> = by_mouth::given(TaskId::Own, exam).collect();
    let mut all = Vec::new();
    let pairs = trials.iter().enumerate().flat_map(|(n, now)| {
        let earlier = &trials[..n];
        // Of several of the same the newest: which of them it was makes no difference.
        let newest = move |at: usize| {
            let same = |t: &&Trial| settings(t) == settings(earlier[at]);
            !earlier[at + 1..].iter().any(same)
        };
        (0..n)
            .filter(move |at| newest(*at))
            .map(move |at| (earlier[at], *now))
    });
    for (before, now) in pairs {
        let (Some(end), Some(start)) = (before.end(), now.start()) else {
            continue;
        };
        if settings(before) == settings(now) {
            continue;
        }
        let name = |trial: &Trial| (trial.number, brief(trial));
        let in_minute = |at| before.between(end, at).length.is_none_or(|l| l <= WATCH);
        let after_start = |at| {
            let since = before.between(start, at).length;
            since.is_some_and(|l| l >= Millis::ZERO)
        };
        for (sign, at) in now.signs().filter(|(_, at)| in_minute(*at)) {
            all.push(Shared {
                sign,
                at,
                of: name(now),
                other: name(before),
                said: false,
            });
        }
        for (sign, at) in before.signs().filter(|(_, at)| after_start(*at)) {
            all.push(Shared {
                sign,
                at,
                of: name(before),
                other: name(now),
                said: true,
            });
        }
    }
    all
}

/// A note for each of which nobody said whose it is.
pub(super) fn flags(exam: &Exam) -> Vec<Flag> {
    let open = shared(exam).into_iter().filter(|shared| !shared.said);
    open.map(|shared| {
        rules::OWN_OVERLAP.flag(
            Level::Note,
            Domain::EatingDrinking,
            format!(
                "{} with {}: within 60 seconds of {} as well, either may be meant",
                shared.sign.past(),
                shared.of.1,
                shared.other.1
            ),
        )
    })
    .collect()
}
