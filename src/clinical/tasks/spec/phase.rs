//! Where a trial stands at a moment, and what has come due.

use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::tasks::spec::pad::Length;
use crate::clinical::tasks::spec::question::watch_cut;
use crate::clinical::tasks::spec::task_spec::TaskSpec;
use crate::measure::time::{Elapsed, Millis, Stamp};

/// Where a trial stands at a moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Not started.
    Ready,
    /// "Ready, set, go" is running; so long until go.
    Countdown(Millis),
    /// The time runs; its length so far.
    Running(Elapsed),
    /// The window is over; taps are kept apart. Time since the start.
    Late(Elapsed),
    /// The watch after the end runs; time since the end.
    Watching(Elapsed),
    /// Nothing runs any more.
    Over,
}

/// A phase without its figures: what decides which pad is drawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Face {
    /// Not started.
    #[default]
    Ready,
    /// "Ready, set, go" is running.
    Countdown,
    /// The time runs.
    Running,
    /// The window is over; taps are kept apart.
    Late,
    /// The watch after the end runs.
    Watching,
    /// Nothing runs any more.
    Over,
}

impl From<Phase> for Face {
    fn from(phase: Phase) -> Face {
        match phase {
            Phase::Ready => Face::Ready,
            Phase::Countdown(_) => Face::Countdown,
            Phase::Running(_) => Face::Running,
            Phase::Late(_) => Face::Late,
            Phase::Watching(_) => Face::Watching,
            Phase::Over => Face::Over,
        }
    }
}

impl TaskSpec {
    /// The window's length in this trial, if it ends by itself.
    pub fn window(&self, trial: &Trial) -> Option<Millis> {
        match self.pad.length {
            Length::Fixed(length) => Some(length),
            Length::Chosen => trial.length,
            Length::Answered(question, lengths) => {
                let answer = trial.choice(question)?;
                lengths.iter().find(|(id, _)| *id == answer)?.1
            }
            Length::Open => None,
        }
    }

    /// Where `trial` stands at `now`.
    pub fn phase(&self, trial: &Trial, now: Stamp) -> Phase {
        let Some(start) = trial.start() else {
            return if self.is_untimed(trial) {
                Phase::Over
            } else {
                Phase::Ready
            };
        };
        let since_start = trial.between(start, now);
        if let Some(length) = since_start.length
            && length < Millis::ZERO
            && trial.end().is_none()
        {
            return Phase::Countdown(Millis::ZERO - length);
        }
        if let Some(end) = trial.end() {
            return match self.pad.watch {
                Some(_) if trial.first(MarkKind::WatchOver).is_none() && !watch_cut(trial) => {
                    Phase::Watching(trial.between(end, now))
                }
                _ => Phase::Over,
            };
        }
        if trial.first(MarkKind::WindowOver).is_some() {
            let late_over = match (self.pad.late, since_start.length) {
                (Some(late), Some(length)) => length > late,
                _ => true,
            };
            return if late_over {
                Phase::Over
            } else {
                Phase::Late(since_start)
            };
        }
        Phase::Running(since_start)
    }

    /// What has come due by `now` and is to be recorded: the end of the window or of the watch.
    ///
    /// Called at every tick, and when the page comes back; a time that ran out while nobody
    /// looked is recorded then, and the stamps tell.
    pub fn due(&self, trial: &Trial, now: Stamp) -> Option<MarkKind> {
        let out = |elapsed: Elapsed, length: Millis| match elapsed.length {
            Some(so_far) => so_far >= length,
            // The length can't be known any more: nothing can be gained by waiting on.
            None => true,
        };
        match self.phase(trial, now) {
            Phase::Running(so_far) => self
                .window(trial)
                .filter(|length| out(so_far, *length))
                .map(|_| MarkKind::WindowOver),
            Phase::Watching(so_far) => self
                .pad
                .watch
                .filter(|length| out(so_far, *length))
                .map(|_| MarkKind::WatchOver),
            _ => None,
        }
    }
}
