//! A stopwatch without a clock: it is told when something was pressed.
//!
//! It goes one way, ready, running, stopped, and every step that doesn't fit is an error that
//! leaves it as it was.

use std::fmt;

use super::time::{Elapsed, Millis, Stamp, elapsed};

/// Why a press doesn't fit the state the watch is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StopwatchError {
    /// Stop was pressed on a watch that wasn't started.
    NotStarted,
    /// Start was pressed on a watch that was running or had run.
    AlreadyStarted,
    /// Stop was pressed on a watch that had stopped.
    AlreadyStopped,
    /// The stop lies this long before the start.
    BeforeStart(Millis),
    /// The stop is the start: no time has passed.
    ZeroLength,
    /// The clock was set back across a restart, so the time between can't be known.
    LengthUnknown,
}

impl fmt::Display for StopwatchError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            StopwatchError::NotStarted => f.write_str("The stopwatch was not started."),
            StopwatchError::AlreadyStarted => f.write_str("The stopwatch was started already."),
            StopwatchError::AlreadyStopped => f.write_str("The stopwatch was stopped already."),
            StopwatchError::BeforeStart(by) => {
                write!(f, "Stop was {by} before the start: please time this again.")
            }
            StopwatchError::ZeroLength => {
                f.write_str("Start and stop are the same moment: please time this again.")
            }
            StopwatchError::LengthUnknown => f.write_str(
                "The phone's clock was set back and the app restarted: please time this again.",
            ),
        }
    }
}

impl std::error::Error for StopwatchError {}

/// What the watch is doing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Phase {
    /// Not started yet.
    #[default]
    Ready,
    /// Started and not stopped.
    Running,
    /// Stopped; the time stands.
    Stopped,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum State {
    #[default]
    Ready,
    Running(Stamp),
    Stopped {
        from: Stamp,
        to: Stamp,
        length: Elapsed,
    },
}

/// A stopwatch, as a value: each press gives the watch that follows.
///
/// ```
/// use penlight::measure::stopwatch::Stopwatch;
/// use penlight::measure::time::{Millis, PageLife, Stamp};
/// let at = |ms| Stamp { life: PageLife(1), mono: Millis(ms), wall: Millis(ms) };
/// let watch = Stopwatch::new().start(at(1_000))?;
/// assert_eq!(watch.elapsed(at(3_000), false).length, Some(Millis(2_000)));
/// let watch = watch.stop(at(4_700), false)?;
/// assert_eq!(watch.elapsed(at(99_000), false).length, Some(Millis(3_700)));
/// # Ok::<(), penlight::measure::stopwatch::StopwatchError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[must_use]
pub struct Stopwatch {
    state: State,
}

impl Stopwatch {
    /// A watch that is ready.
    pub const fn new() -> Stopwatch {
        Stopwatch {
            state: State::Ready,
        }
    }

    /// The watch started at `at`, which may lie ahead, as "go" does after "ready, set".
    ///
    /// # Errors
    ///
    /// [`StopwatchError::AlreadyStarted`] unless it is ready.
    pub fn start(self, at: Stamp) -> Result<Stopwatch, StopwatchError> {
        match self.state {
            State::Ready => Ok(Stopwatch {
                state: State::Running(at),
            }),
            State::Running(_) | State::Stopped { .. } => Err(StopwatchError::AlreadyStarted),
        }
    }

    /// The watch stopped at `at`.
    ///
    /// `hidden` tells whether the page was out of sight since the start, as for
    /// [`time::elapsed`](super::time::elapsed).
    ///
    /// # Errors
    ///
    /// [`StopwatchError::NotStarted`] or [`StopwatchError::AlreadyStopped`] unless it is
    /// running; [`StopwatchError::BeforeStart`], [`StopwatchError::ZeroLength`] or
    /// [`StopwatchError::LengthUnknown`] when no length above zero comes of it. The watch itself
    /// is a value and goes on running.
    pub fn stop(self, at: Stamp, hidden: bool) -> Result<Stopwatch, StopwatchError> {
        let from = match self.state {
            State::Ready => return Err(StopwatchError::NotStarted),
            State::Stopped { .. } => return Err(StopwatchError::AlreadyStopped),
            State::Running(from) => from,
        };
        let length = elapsed(from, at, hidden);
        match length.length {
            None => Err(StopwatchError::LengthUnknown),
            Some(Millis::ZERO) => Err(StopwatchError::ZeroLength),
            Some(time) if time < Millis::ZERO => {
                Err(StopwatchError::BeforeStart(Millis::ZERO - time))
            }
            Some(_) => Ok(Stopwatch {
                state: State::Stopped {
                    from,
                    to: at,
                    length,
                },
            }),
        }
    }

    /// The time on the watch, with what is known against it.
    ///
    /// Zero while ready; up to `now` while running, below zero before a start that lies ahead;
    /// the time it was stopped at afterwards, whatever `now` and `hidden` say.
    pub fn elapsed(self, now: Stamp, hidden: bool) -> Elapsed {
        match self.state {
            State::Ready => Elapsed {
                length: Some(Millis::ZERO),
                doubt: None,
            },
            State::Running(from) => elapsed(from, now, hidden),
            State::Stopped { length, .. } => length,
        }
    }

    /// What the watch is doing.
    pub const fn phase(self) -> Phase {
        match self.state {
            State::Ready => Phase::Ready,
            State::Running(_) => Phase::Running,
            State::Stopped { .. } => Phase::Stopped,
        }
    }

    /// When it was started, if it was.
    pub const fn started(self) -> Option<Stamp> {
        match self.state {
            State::Ready => None,
            State::Running(from) | State::Stopped { from, .. } => Some(from),
        }
    }

    /// When it was stopped, if it was.
    pub const fn stopped(self) -> Option<Stamp> {
        match self.state {
            State::Ready | State::Running(_) => None,
            State::Stopped { to, .. } => Some(to),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::measure::time::{Doubt, PageLife};

    fn at(life: u32, mono: i64, wall: i64) -> Stamp {
        Stamp {
            life: PageLife(life),
            mono: Millis(mono),
            wall: Millis(wall),
        }
    }

    #[test]
    fn goes_one_way() {
        let ready = Stopwatch::new();
        assert_eq!(ready.phase(), Phase::Ready);
        assert_eq!(ready.elapsed(at(1, 5, 5), false).length, Some(Millis::ZERO));
        assert_eq!(
            ready.stop(at(1, 5, 5), false),
            Err(StopwatchError::NotStarted)
        );

        let running = ready.start(at(1, 0, 0)).unwrap();
        assert_eq!(running.phase(), Phase::Running);
        assert_eq!(
            running.start(at(1, 5, 5)),
            Err(StopwatchError::AlreadyStarted)
        );

        let stopped = running.stop(at(1, 9, 9), false).unwrap();
        assert_eq!(stopped.phase(), Phase::Stopped);
        assert_eq!(stopped.started(), Some(at(1, 0, 0)));
        assert_eq!(stopped.stopped(), Some(at(1, 9, 9)));
        assert_eq!(
            stopped.stop(at(1, 12, 12), false),
            Err(StopwatchError::AlreadyStopped)
        );
        assert_eq!(
            stopped.start(at(1, 12, 12)),
            Err(StopwatchError::AlreadyStarted)
        );
    }

    #[test]
    fn a_failed_stop_can_be_pressed_again() {
        let running = Stopwatch::new().start(at(1, 1_000, 1_000)).unwrap();
        assert_eq!(
            running.stop(at(1, 1_000, 1_000), false),
            Err(StopwatchError::ZeroLength)
        );
        assert_eq!(
            running.stop(at(1, 500, 500), false),
            Err(StopwatchError::BeforeStart(Millis(500)))
        );
        assert!(running.stop(at(1, 1_001, 1_001), false).is_ok());
    }

    #[test]
    fn a_start_that_lies_ahead_counts_down() {
        let running = Stopwatch::new()
            .start(at(1, 0, 0).later(Millis(2_000)))
            .unwrap();
        let time = running.elapsed(at(1, 500, 500), false);
        assert_eq!(time.length, Some(Millis(-1_500)));
    }

    #[test]
    fn the_wall_clock_set_back_does_not_spoil_the_time() {
        let running = Stopwatch::new().start(at(1, 0, 90_000)).unwrap();
        let stopped = running.stop(at(1, 4_000, 10_000), false).unwrap();
        let time = stopped.elapsed(at(1, 4_000, 10_000), false);
        assert_eq!(time.length, Some(Millis(4_000)));
        assert!(matches!(time.doubt, Some(Doubt::ClockSet(_))));
    }

    #[test]
    fn a_restart_and_a_clock_set_back_leave_nothing_to_time() {
        let running = Stopwatch::new().start(at(1, 0, 90_000)).unwrap();
        assert_eq!(
            running.stop(at(2, 10, 80_000), true),
            Err(StopwatchError::LengthUnknown)
        );
    }

    #[test]
    fn a_stopped_time_keeps_its_doubt() {
        let running = Stopwatch::new().start(at(1, 0, 0)).unwrap();
        let stopped = running.stop(at(1, 10_000, 30_000), true).unwrap();
        let time = stopped.elapsed(at(1, 50_000, 70_000), false);
        assert_eq!(time.length, Some(Millis(30_000)));
        assert_eq!(time.doubt, Some(Doubt::Slept(Millis(20_000))));
    }

    #[test]
    fn errors_read_as_sentences() {
        assert_eq!(
            StopwatchError::BeforeStart(Millis(1_500)).to_string(),
            "Stop was 1.5 s before the start: please time this again."
        );
    }
}
