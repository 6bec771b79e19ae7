//! The signs of a trial with their times, as the rules take them.

use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::tasks::by_mouth::lag::since_end;
use crate::clinical::tasks::by_mouth::signs::{SeenSign, WATCH};
use crate::clinical::tasks::spec::watch_cut;
use crate::measure::time::{Doubt, Elapsed, Millis};

/// The signs of a trial, each with its time after the end press.
///
/// A time that can't be known, or that rests on a clock that may have been set meanwhile, never
/// puts a sign off as late.
pub fn signs(trial: &Trial) -> Vec<SeenSign> {
    let end = trial.end();
    trial
        .signs()
        .map(|(sign, at)| {
            let after = end.and_then(|end| match since_end(trial, end, at) {
                Elapsed {
                    length: Some(after),
                    ..
                } if after < Millis::ZERO => None,
                Elapsed {
                    length: Some(after),
                    doubt: Some(Doubt::Restarted | Doubt::Slept(_) | Doubt::Unknown),
                } if after > WATCH => None,
                time => time.length,
            });
            SeenSign { sign, after }
        })
        .collect()
}

/// Whether the watch after the end was kept to its end.
pub fn watched(trial: &Trial) -> bool {
    let whole = trial
        .end()
        .zip(trial.first(MarkKind::WatchOver))
        .and_then(|(end, over)| trial.between(end, over).length)
        .is_some_and(|length| length >= WATCH);
    whole && !watch_cut(trial)
}
