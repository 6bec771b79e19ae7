//! A screen that is ended before it is through: what runs ends with it.

use super::Visit;
use super::asked::is_running;
use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::trial::{Answer, MarkKind};
use crate::clinical::tasks::spec::{Phase, WATCH_CUT};
use crate::clinical::tasks::{self, water};
use crate::measure::time::Stamp;
use crate::record::event::Event;

impl Visit {
    /// What is recorded where somebody ends the screen at `at`.
    ///
    /// **Invariant:** no window runs out behind an ended screen, as if somebody had counted on; and
    /// a watch runs on only where somebody stays to see it: what was swallowed before the person
    /// wanted to stop is watched, a clinician who is called away watches nothing.
    pub fn ending(&self, why: EndedEarly, at: Stamp) -> Vec<Event> {
        let mut events = Vec::new();
        for trial in self.exam.trials.iter().filter(|t| is_running(t)) {
            let spec = tasks::spec(trial.task);
            let number = trial.number;
            if matches!(
                spec.phase(trial, at),
                Phase::Running(_) | Phase::Countdown(_)
            ) {
                events.push(Event::Mark {
                    trial: number,
                    at,
                    kind: MarkKind::Stopped,
                });
            }
            if why == EndedEarly::BrokenOff && spec.pad.watch.is_some() {
                events.push(Event::Answer {
                    trial: number,
                    question: WATCH_CUT.to_owned(),
                    answer: Some(Answer::Choice(water::CALLED_AWAY.to_owned())),
                });
            }
        }
        events.push(Event::EndedEarly(why));
        events
    }
}
