//! Presses and answers of a task: which trial they belong to, and what is recorded with them.

use super::Desk;
use crate::browser::page;
use crate::clinical::findings::trial::{Answer, MarkKind};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::measure::time::{Millis, Stamp};
use crate::record::event::Event;
use crate::record::visit::Visit;

impl Desk {
    /// The number of the trial that presses and answers of a task belong to, and the event that
    /// opens it where there is none yet.
    fn trial_for(self, task: TaskId, length: Option<Millis>) -> (u32, Option<Event>) {
        self.visit.with_untracked(|v| match v {
            Some(visit) => match visit.exam.latest(task) {
                Some(trial) => (trial.number, None),
                None => {
                    let trial = visit.next_trial();
                    (
                        trial,
                        Some(Event::TrialOpened {
                            trial,
                            task,
                            length,
                        }),
                    )
                }
            },
            None => (0, None),
        })
    }

    /// Opens another trial of a task.
    pub(in crate::ui) fn repeat(self, task: TaskId, length: Option<Millis>) {
        page::leave_field();
        let trial = self
            .visit
            .with_untracked(|v| v.map_or(0, Visit::next_trial));
        self.record([Event::TrialOpened {
            trial,
            task,
            length,
        }]);
    }

    /// Records a press on a task's pad.
    pub(in crate::ui) fn press(
        self,
        task: TaskId,
        length: Option<Millis>,
        at: Stamp,
        kind: MarkKind,
    ) {
        // Words belong to the trial they were typed under, not to the one this press begins.
        page::leave_field();
        let (trial, opened) = match kind {
            // A sign seen while the next trial is only made ready is that of the one before.
            MarkKind::Sign(_) => self.visit.with_untracked(|v| {
                v.and_then(|v| v.exam.latest_started(task))
                    .map(|t| (t.number, None))
            }),
            _ => None,
        }
        .unwrap_or_else(|| self.trial_for(task, length));
        let mut events: Vec<Event> = opened.into_iter().collect();
        if kind == MarkKind::Start {
            let assumed = self
                .visit
                .with_untracked(|v| v.map_or(Vec::new(), |v| assumed(v, task, trial)));
            events.extend(assumed);
        }
        events.push(Event::Mark { trial, at, kind });
        if kind == MarkKind::Start && tasks::spec(task).pad.first_counts {
            events.push(Event::Mark {
                trial,
                at,
                kind: MarkKind::Tap,
            });
        }
        self.record(events);
    }

    /// The number of the trial to come, and what records that it was given at `at`.
    pub(in crate::ui) fn next_given(
        self,
        visit: &Visit,
        task: TaskId,
        at: Stamp,
    ) -> (u32, Vec<Event>) {
        let ready = visit.exam.latest(task).filter(|t| t.start().is_none());
        let trial = ready.map_or_else(|| visit.next_trial(), |t| t.number);
        let mut events = Vec::new();
        if ready.is_none() {
            events.push(Event::TrialOpened {
                trial,
                task,
                length: None,
            });
        }
        events.extend(assumed(visit, task, trial));
        events.push(Event::Mark {
            trial,
            at,
            kind: MarkKind::Start,
        });
        (trial, events)
    }

    /// Records an answer to a task's question; none takes it back.
    pub(in crate::ui) fn answer(self, task: TaskId, question: &str, answer: Option<Answer>) {
        let (trial, opened) = self.trial_for(task, None);
        let instead = (tasks::spec(task).instead)(question).filter(|other| {
            let given = |v: &Visit| {
                v.trial(trial)
                    .is_some_and(|t| t.answers.contains_key(*other))
            };
            answer.is_some() && self.visit.with_untracked(|v| v.is_some_and(given))
        });
        let answered = Event::Answer {
            trial,
            question: question.to_owned(),
            answer,
        };
        let taken_back = instead.map(|other| Event::Answer {
            trial,
            question: other.to_owned(),
            answer: None,
        });
        self.record(opened.into_iter().chain([answered]).chain(taken_back));
    }

    /// Takes the newest press of a task back.
    pub(in crate::ui) fn undo(self, task: TaskId) {
        let trial = self
            .visit
            .with_untracked(|v| v.and_then(|v| v.undo_goes_to(task)));
        if let Some(trial) = trial {
            self.record([Event::Undo { trial }]);
        }
    }
}

/// What was taken as given on the page, as answers: the record must not depend on what a later
/// version takes as given.
fn assumed(visit: &Visit, task: TaskId, trial: u32) -> Vec<Event> {
    let spec = tasks::spec(task);
    let open = |id: &str| {
        visit
            .trial(trial)
            .is_none_or(|t| !t.answers.contains_key(id))
    };
    let usual = (spec.usual)(&visit.exam)
        .into_iter()
        .filter_map(|(id, _)| Some((id, Answer::Choice(spec.assumed(&visit.exam, id)?))));
    usual
        .chain((tasks::spec(task).taken_over)(&visit.exam))
        .filter(|(id, _)| open(id))
        .map(|(id, answer)| Event::Answer {
            trial,
            question: id.to_owned(),
            answer: Some(answer),
        })
        .collect()
}
