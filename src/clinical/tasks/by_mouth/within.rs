//! Whether a sign came within the watch after the last swallow.

use crate::clinical::findings::fact::{Seen, SeenSign};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::sign::Sign;
use crate::measure::time::{Doubt, Elapsed, Millis, Stamp};

/// The watch after the last swallow. A sign at 60.0 s counts (source: DAN06T, "within one minute").
pub const WATCH: Millis = Millis::from_secs(60);

/// So long after the watch a press may mean what was seen within it (local policy).
pub const LAG: Millis = Millis::from_secs(2);

/// Answer: it was seen within the watch.
pub const WITHIN: &str = "within";

/// The question under which that is kept: the sign's own time makes it the sign's own.
pub fn id(at: Stamp) -> String {
    format!("within.{}", at.wall.0)
}

/// A time that the clocks can't vouch for.
pub fn is_unsure(doubt: Option<Doubt>) -> bool {
    matches!(
        doubt,
        Some(Doubt::Restarted | Doubt::Slept(_) | Doubt::Unknown)
    )
}

/// Just after the watch. A time that the clocks can't vouch for counts anyway.
pub(super) fn is_near(after: Millis, doubt: Option<Doubt>) -> bool {
    !is_unsure(doubt) && after > WATCH && after <= WATCH + LAG
}

/// The time from the end press to a sign; its last moment where the clinician said "within".
fn since_end(trial: &Trial, end: Stamp, at: Stamp) -> Elapsed {
    let mut time = trial.between(end, at);
    let near = time.length.is_some_and(|after| is_near(after, time.doubt));
    if near && trial.choice(&id(at)) == Some(WITHIN) {
        time.length = Some(WATCH);
    }
    time
}

/// When in its trial a sign was seen.
///
/// A time that can't be known, or that rests on a clock that may have been set meanwhile, never
/// puts a sign off as late.
pub(super) fn seen(trial: &Trial, at: Stamp) -> Seen {
    let Some(end) = trial.end() else {
        return Seen::While;
    };
    let time = since_end(trial, end, at);
    match time.length {
        None => Seen::Sometime,
        Some(after) if after > WATCH && is_unsure(time.doubt) => Seen::Sometime,
        Some(after) => Seen::so_long_after(after),
    }
}

impl Seen {
    /// So long after the last swallow.
    pub fn so_long_after(after: Millis) -> Seen {
        if after < Millis::ZERO {
            Seen::While
        } else if after <= WATCH {
            Seen::After(after)
        } else {
            Seen::Later(after)
        }
    }
}

impl SeenSign {
    /// A sign so long after the last swallow.
    pub fn so_long_after(sign: Sign, after: Millis) -> SeenSign {
        SeenSign {
            sign,
            seen: Seen::so_long_after(after),
        }
    }
}
