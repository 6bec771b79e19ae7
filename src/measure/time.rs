//! Points in time and the lengths between them.
//!
//! A browser's monotonic clock stops while the phone sleeps and starts again at zero with every
//! start of the page; its wall clock can be set back by hand. So a [`Stamp`] carries both, and a
//! length that the two disagree on says so instead of being silently wrong.

use std::fmt;

use serde::{Deserialize, Serialize};

/// A length of time in whole milliseconds. May be negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Millis(pub i64);

impl Millis {
    /// No time at all.
    pub const ZERO: Millis = Millis(0);

    /// `s` whole seconds.
    pub const fn from_secs(s: i64) -> Millis {
        Millis(s * 1000)
    }

    /// The same length as a number of seconds.
    pub fn seconds(self) -> f64 {
        self.0 as f64 / 1000.0
    }
}

impl std::ops::Add for Millis {
    type Output = Millis;
    fn add(self, other: Millis) -> Millis {
        Millis(self.0.saturating_add(other.0))
    }
}

impl std::ops::Sub for Millis {
    type Output = Millis;
    fn sub(self, other: Millis) -> Millis {
        Millis(self.0.saturating_sub(other.0))
    }
}

/// Seconds to one decimal, as shown on every page: `12.3 s`.
///
/// Cut off, not rounded: a display that says 30.0 has reached thirty seconds.
impl fmt::Display for Millis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tenths = self.0 / 100;
        let sign = if self.0 < 0 { "-" } else { "" };
        write!(f, "{sign}{}.{} s", (tenths / 10).abs(), (tenths % 10).abs())
    }
}

/// One life of the page: the monotonic clock of one life can't be compared with another's.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PageLife(pub u32);

/// When something happened, by both clocks.
///
/// **Invariant:** times in records are whole milliseconds, never floats.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stamp {
    /// The page's life in which it was taken.
    #[serde(rename = "l")]
    pub life: PageLife,
    /// Milliseconds since that life began, by the monotonic clock.
    #[serde(rename = "m")]
    pub mono: Millis,
    /// Milliseconds since 1970-01-01 UTC, by the wall clock.
    #[serde(rename = "w")]
    pub wall: Millis,
}

impl Stamp {
    /// The stamp `by` later, for points that are computed rather than pressed ("go" after
    /// "ready, set"; the end of a window).
    pub fn later(self, by: Millis) -> Stamp {
        Stamp {
            mono: self.mono + by,
            wall: self.wall + by,
            ..self
        }
    }
}

/// Why a length of time can't be taken at its word.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Doubt {
    /// The page was restarted in between; the length is by the wall clock.
    Restarted,
    /// The phone slept in between for about this long; the length is by the wall clock.
    Slept(Millis),
    /// The wall clock moved by this much against the monotonic clock while the page was open and
    /// visible; the length is by the monotonic clock.
    ClockSet(Millis),
    /// The wall clock went backwards across a restart: the length can't be known.
    Unknown,
    /// The page was hidden for this long in between: presses may be missing.
    Hidden(Millis),
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Doubt::Restarted => f.write_str(
                "The app was restarted during this time; the length is by the phone's clock.",
            ),
            Doubt::Slept(by) => {
                write!(f, "The phone slept for about {by} during this time.")
            }
            Doubt::ClockSet(_) => f.write_str(
                "The phone's clock was changed during this time; the length is by its stopwatch.",
            ),
            Doubt::Unknown => f.write_str(
                "The phone's clock was set back and the app restarted: this length is not known.",
            ),
            Doubt::Hidden(by) => write!(
                f,
                "Penlight was out of sight for {by} during this time: presses may be missing."
            ),
        }
    }
}

/// A length of time with what is known against it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Elapsed {
    /// The best value, or none where it can't be known.
    pub length: Option<Millis>,
    /// What to say beside it.
    pub doubt: Option<Doubt>,
}

/// Why two presses make no time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoTime {
    /// The second lies this long before the first.
    Before(Millis),
    /// Both are the same moment.
    Nothing,
    /// It can't be known.
    Unknown,
}

impl Elapsed {
    /// The length where it is more than nothing.
    ///
    /// # Errors
    /// [`NoTime`]: why there is none.
    pub fn timed(self) -> Result<Millis, NoTime> {
        match self.length {
            None => Err(NoTime::Unknown),
            Some(Millis::ZERO) => Err(NoTime::Nothing),
            Some(length) if length < Millis::ZERO => Err(NoTime::Before(Millis::ZERO - length)),
            Some(length) => Ok(length),
        }
    }
}

/// How far the two clocks may drift apart within one interval before it is said.
///
/// Both are read in the same handler, so ordinary readings agree to a few milliseconds.
const CLOCK_TOLERANCE: Millis = Millis(250);

/// The time from `from` to `to`.
///
/// `hidden` tells whether the page was out of sight in between: only then can the phone have
/// slept, so only then is the wall clock believed over the monotonic one.
///
/// ```
/// use penlight::measure::time::{elapsed, Doubt, Millis, PageLife, Stamp};
/// let at = |mono, wall| Stamp { life: PageLife(1), mono: Millis(mono), wall: Millis(wall) };
/// assert_eq!(elapsed(at(0, 0), at(8_400, 8_401), false).length, Some(Millis(8_400)));
/// // The monotonic clock stood still for twenty seconds of sleep.
/// let slept = elapsed(at(0, 0), at(10_000, 30_000), true);
/// assert_eq!(slept.length, Some(Millis(30_000)));
/// assert_eq!(slept.doubt, Some(Doubt::Slept(Millis(20_000))));
/// ```
pub fn elapsed(from: Stamp, to: Stamp, hidden: bool) -> Elapsed {
    let by_wall = to.wall - from.wall;
    if from.life != to.life {
        return if by_wall < Millis::ZERO {
            Elapsed {
                length: None,
                doubt: Some(Doubt::Unknown),
            }
        } else {
            Elapsed {
                length: Some(by_wall),
                doubt: Some(Doubt::Restarted),
            }
        };
    }
    let by_mono = to.mono - from.mono;
    let apart = by_wall - by_mono;
    if apart.0.unsigned_abs() <= CLOCK_TOLERANCE.0.unsigned_abs() {
        Elapsed {
            length: Some(by_mono),
            doubt: None,
        }
    } else if hidden && apart > Millis::ZERO {
        Elapsed {
            length: Some(by_wall),
            doubt: Some(Doubt::Slept(apart)),
        }
    } else {
        Elapsed {
            length: Some(by_mono),
            doubt: Some(Doubt::ClockSet(apart)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(life: u32, mono: i64, wall: i64) -> Stamp {
        Stamp {
            life: PageLife(life),
            mono: Millis(mono),
            wall: Millis(wall),
        }
    }

    #[test]
    fn shows_tenths_cut_off() {
        assert_eq!(Millis(29_999).to_string(), "29.9 s");
        assert_eq!(Millis(30_000).to_string(), "30.0 s");
        assert_eq!(Millis(-450).to_string(), "-0.4 s");
    }

    #[test]
    fn a_clock_set_back_while_open_is_said_and_the_stopwatch_is_kept() {
        let e = elapsed(at(1, 1_000, 50_000), at(1, 31_000, 20_000), false);
        assert_eq!(e.length, Some(Millis(30_000)));
        assert_eq!(e.doubt, Some(Doubt::ClockSet(Millis(-60_000))));
    }

    #[test]
    fn a_clock_set_forward_while_visible_is_not_taken_for_sleep() {
        let e = elapsed(at(1, 0, 0), at(1, 5_000, 3_605_000), false);
        assert_eq!(e.length, Some(Millis(5_000)));
    }

    #[test]
    fn across_a_restart_only_the_wall_clock_counts() {
        let e = elapsed(at(1, 90_000, 100_000), at(2, 200, 142_000), true);
        assert_eq!(e.length, Some(Millis(42_000)));
        assert_eq!(e.doubt, Some(Doubt::Restarted));
    }

    #[test]
    fn across_a_restart_with_the_clock_set_back_nothing_is_invented() {
        let e = elapsed(at(1, 0, 100_000), at(2, 0, 90_000), true);
        assert_eq!(e.length, None);
        assert_eq!(e.doubt, Some(Doubt::Unknown));
    }

    #[test]
    fn two_presses_make_a_time_or_say_why_not() {
        let timed = |to| elapsed(at(1, 5_000, 5_000), to, false).timed();
        assert_eq!(timed(at(1, 8_700, 8_700)), Ok(Millis(3_700)));
        assert_eq!(timed(at(1, 5_000, 5_000)), Err(NoTime::Nothing));
        assert_eq!(
            timed(at(1, 4_000, 4_000)),
            Err(NoTime::Before(Millis(1_000)))
        );
        assert_eq!(timed(at(2, 0, 4_000)), Err(NoTime::Unknown));
    }
}
