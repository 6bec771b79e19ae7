//! Counts that were made elsewhere: attached to the visit, and detached again.

use super::{Choking, Visit};
use crate::clinical::findings::trial::{Mark, MarkKind, Trial};
use crate::clinical::knowledge::signed::Signed;
use crate::clinical::knowledge::task::TaskId;
use crate::measure::time::Millis;
use crate::record::id::VisitId;

/// A count that was attached, whether it still is or not.
#[derive(Clone, Debug, PartialEq)]
pub struct Attached {
    /// The loose count it came from.
    pub from: VisitId,
    /// Its number in this visit.
    pub trial: u32,
    /// Its task.
    pub task: TaskId,
    /// When it was counted, by the wall clock, if it was started.
    pub counted: Option<Millis>,
    /// When it was attached, and by whom.
    pub at: (Millis, Signed),
    /// When it was detached, and by whom.
    pub detached: Option<(Millis, Signed)>,
    /// The signs in it as it came.
    signs: Vec<Mark>,
    /// What choked in it.
    chokings: Vec<Choking>,
}

impl Visit {
    /// Takes a trial that was counted elsewhere, with what choked in it.
    pub(super) fn attach_from(
        &mut self,
        from: VisitId,
        copy: Trial,
        chokings: Vec<Choking>,
        at: Millis,
    ) {
        for choking in &chokings {
            self.choked_elsewhere(*choking);
        }
        self.attached.push(Attached {
            from,
            trial: copy.number,
            task: copy.task,
            counted: copy.first(MarkKind::Start).map(|start| start.wall),
            at: (at, self.signed()),
            detached: None,
            signs: signs(&copy).collect(),
            chokings,
        });
        self.attach_copy(copy);
    }

    /// Takes it out again. What was never attached stays.
    pub(super) fn detach(&mut self, trial: u32, at: Millis) {
        let by = self.signed();
        let mut all = self.attached.iter_mut();
        let Some(attached) = all.find(|a| a.trial == trial && a.detached.is_none()) else {
            return;
        };
        attached.detached = Some((at, by));
        let chokings = std::mem::take(&mut attached.chokings);
        let came = std::mem::take(&mut attached.signs);
        // A sign that was pressed in this visit was seen here, and stays.
        let given = self.moved.iter().filter(|(_, to, _)| *to == trial);
        let given: Vec<_> = given.copied().collect();
        for (from, to, sign) in given {
            self.move_sign(to, from, sign);
        }
        self.moved
            .retain(|(from, to, _)| ![*from, *to].contains(&trial));
        let trials = &mut self.exam.trials;
        trials.retain_mut(|t| t.number != trial || pressed_here(t, &came));
        // One that was noted in the visit itself at the same moment is another. What was recorded of it
        // since goes with it.
        for choking in chokings {
            let it = |c: &Choking| c.since == choking.since && c.noted == choking.noted;
            let place = self.chokings.iter().position(it);
            place.map(|place| self.chokings.remove(place));
        }
        self.which_choked();
    }

    /// Who holds the phone, as they said.
    pub(super) fn signed(&self) -> Signed {
        Signed {
            role: self.role,
            initials: self.initials.clone(),
        }
    }
}

fn signs(trial: &Trial) -> impl Iterator<Item = Mark> + '_ {
    let is_sign = |mark: &&Mark| matches!(mark.kind, MarkKind::Sign(_));
    trial.marks.iter().filter(is_sign).copied()
}

/// Leaves of a trial the signs that did not come with it, and nothing else. Whether there are any.
fn pressed_here(trial: &mut Trial, came: &[Mark]) -> bool {
    let here: Vec<Mark> = signs(trial).filter(|mark| !came.contains(mark)).collect();
    let any = !here.is_empty();
    *trial = Trial::new(trial.task, trial.number, None);
    trial.marks = here.into();
    any
}
