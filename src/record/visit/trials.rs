//! The marks of its trials: where one goes, and whose a sign is.

use super::Visit;
use crate::clinical::tasks::breathing;
use crate::clinical::trial::{Mark, MarkKind, Trial};

impl Visit {
    pub(super) fn mark(&mut self, number: u32, mark: Mark) {
        let spo2 = (mark.kind == MarkKind::Start)
            .then(|| breathing::reading(&self.exam)?.spo2)
            .flatten();
        if let Some(trial) = self.trial_mut(number) {
            // A second start, or a second end, is kept in the journal and changes nothing here.
            let once = matches!(mark.kind, MarkKind::Start | MarkKind::End);
            if !(once && trial.first(mark.kind).is_some()) {
                trial.marks.push(mark);
                if mark.kind == MarkKind::Start {
                    trial.spo2_before = spo2.map(|percent| (percent * 10.0).round() as i32);
                }
            }
        }
    }

    /// Moves a sign; where it or the other trial is not there, nothing changes and nothing is lost.
    pub(super) fn move_sign(&mut self, from: u32, to: u32, sign: Mark) {
        if self.trial(to).is_none() {
            return;
        }
        let Some(here) = self.trial_mut(from) else {
            return;
        };
        let Some(place) = here.marks.iter().rposition(|m| *m == sign) else {
            return;
        };
        let mark = here.marks.remove(place);
        if let Some(there) = self.trial_mut(to) {
            there.marks.push(mark);
        }
        let back = self.moved.iter().rposition(|m| *m == (to, from, sign));
        match back {
            Some(back) => {
                self.moved.remove(back);
            }
            None => self.moved.push((from, to, sign)),
        }
    }

    /// Takes back that a sign was moved, where that is what "undo" would take from this trial: the
    /// sign was there all the same, and goes only with a press of its own.
    pub(super) fn move_back(&mut self, number: u32) -> bool {
        let newest = self.trial(number).and_then(|t| {
            let mut pressed = t.marks.iter().rev();
            pressed.find(|m| m.kind.pressed()).copied()
        });
        let Some(&(from, to, sign)) = self
            .moved
            .iter()
            .rfind(|(_, to, mark)| *to == number && newest == Some(*mark))
        else {
            return false;
        };
        // Where the trial it was pressed in is none any more, it stays with the other.
        if self.trial(from).is_none_or(|t| t.start().is_none()) {
            return false;
        }
        self.move_sign(to, from, sign);
        true
    }

    /// A count that was made elsewhere takes its place in time: what was found after it stays the
    /// newest.
    pub(super) fn attach(&mut self, copy: Trial) {
        let opened = self.opened;
        let place = copy.start().and_then(|start| {
            self.exam.trials.iter().position(|t| match t.start() {
                Some(own) => start.wall < own.wall,
                None => t.task == copy.task && !t.answers.is_empty() && start.wall < opened,
            })
        });
        let trials = &mut self.exam.trials;
        trials.insert(place.unwrap_or(trials.len()), copy);
    }

    pub(super) fn trial_mut(&mut self, number: u32) -> Option<&mut Trial> {
        self.exam.trials.iter_mut().find(|t| t.number == number)
    }
}
