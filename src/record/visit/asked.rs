//! What is asked of a visit as it stands.

use super::{Choking, Visit};
use crate::clinical::decision::assess::assess;
use crate::clinical::decision::verdict::Decision;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::record::called::Called;

impl Visit {
    /// The trial with a number.
    pub fn trial(&self, number: u32) -> Option<&Trial> {
        self.exam.trials.iter().find(|t| t.number == number)
    }

    /// The trial whose newest press "undo" takes back on a task's page: that of the newest trial;
    /// where the next one is only being made ready, a sign of the one before. Never more of that
    /// one: it was given, and must not come up again as due.
    pub fn undo_goes_to(&self, task: TaskId) -> Option<u32> {
        let pressed = |trial: &Trial| trial.marks.iter().rev().find(|m| m.kind.pressed()).copied();
        let newest = self.exam.latest(task)?;
        if pressed(newest).is_some() {
            return Some(newest.number);
        }
        let before = self.exam.latest_started(task)?;
        matches!(pressed(before)?.kind, MarkKind::Sign(_)).then_some(before.number)
    }

    /// The number the next trial gets. One that was detached keeps its own.
    pub fn next_trial(&self) -> u32 {
        let trials = self.exam.trials.iter().map(|t| t.number);
        let numbers = trials.chain(self.attached.iter().map(|a| a.trial));
        numbers.map(|n| n.saturating_add(1)).max().unwrap_or(0)
    }

    /// What it is called.
    pub fn called(&self) -> Called {
        match (&self.details, self.exam.trials.first()) {
            (Some(details), _) => Called::Label(details.label.as_str().to_owned()),
            (None, Some(trial)) if trial.task != TaskId::FreeCount => Called::Task(trial.task),
            (None, _) => Called::Count,
        }
    }

    /// A count that was made without a visit.
    pub fn is_loose(&self) -> bool {
        self.details.is_none() && !self.deleted && self.aside.is_empty()
    }

    /// Choking, if it happened: the newest.
    pub fn choking(&self) -> Option<Choking> {
        self.chokings.last().copied()
    }

    /// The same; where its own entry is lost, that of its sign.
    pub fn choking_or_its_sign(&self) -> Option<Choking> {
        let pressed = self.exam.choke_pressed_at();
        let lost = || pressed.map(|since| Choking::since(since, self.exam.now));
        self.choking().or_else(lost)
    }

    /// Whether a choking runs: nobody has said that the person is back to baseline.
    pub fn is_choking(&self) -> bool {
        self.choking().is_some_and(|c| c.over.is_none())
    }

    /// The decision of its screen, if it has one.
    pub fn decision(&self) -> Option<Decision> {
        self.screen.map(|id| assess(id.screen(), &self.exam))
    }

    /// Whether a time still runs in it.
    pub fn running(&self) -> bool {
        self.exam.trials.iter().any(is_running) || self.is_choking()
    }
}

/// Whether a trial was started and neither its time nor its watch has ended.
pub fn is_running(trial: &Trial) -> bool {
    use crate::clinical::tasks::spec::Phase;
    let Some(newest) = trial.marks.last() else {
        return false;
    };
    // Any moment after the newest mark tells a state that only a mark can change.
    matches!(
        tasks::spec(trial.task).phase(trial, newest.at),
        Phase::Running(_) | Phase::Watching(_) | Phase::Countdown(_)
    )
}
