//! The marks of its trials: where one goes, and whose a sign is.

use super::{Choking, Visit};
use crate::clinical::decision::fresh;
use crate::clinical::findings::trial::{Answer, Mark, MarkKind, STARTED, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::{self, breathing};
use crate::measure::time::{Stamp, elapsed};

impl Visit {
    pub(super) fn mark(&mut self, number: u32, mark: Mark) {
        let spo2 = (mark.kind == MarkKind::Start)
            .then(|| breathing::reading(&self.exam)?.spo2)
            .flatten();
        let now = self.exam.now;
        let task = self.trial(number).map(|trial| trial.task);
        let task = task.filter(|task| mark.kind == MarkKind::Start && task.is_by_mouth());
        let old = task.map(|task| fresh::begun_on(task, &self.exam, now));
        if let (None, MarkKind::Sign(_)) = (self.trial(number), mark.kind) {
            // What of is lost with its entry: a sign counts all the same.
            let lost = Trial::new(TaskId::Own, number, None);
            self.exam.trials.push(lost);
        }
        let trials = &mut self.exam.trials;
        if let Some(trial) = trials.iter_mut().find(|t| t.number == number) {
            // A second start, or a second end, is kept in the journal and changes nothing here.
            let once = matches!(
                mark.kind,
                MarkKind::Start | MarkKind::End | MarkKind::Stopped
            );
            if !(once && trial.first(mark.kind).is_some()) {
                trial.marks.push(mark);
                if mark.kind == MarkKind::Start {
                    trial.spo2_before = spo2.map(|percent| (percent * 10.0).round() as i32);
                    trial.said_at.insert(STARTED.to_owned(), now);
                    trial.begun_on = old.unwrap_or_default();
                    for on in &mut self.exam.went_on {
                        if !on.led_to.contains(&number) {
                            on.led_to.push(number);
                        }
                    }
                }
            }
        }
    }

    /// Whether "undo" takes something back. A window that ran to its end stays, only taps in it go;
    /// not the first either where one press was both.
    pub fn can_undo(&self, task: TaskId) -> bool {
        let goes_to = self.undo_goes_to(task).and_then(|n| self.trial(n));
        goes_to.is_some_and(|trial| {
            let over = trial.first(MarkKind::WindowOver).is_some();
            let kept = match (over, tasks::spec(task).pad.first_counts) {
                (false, _) => 0,
                (true, false) => 1,
                (true, true) => 2,
            };
            trial.marks.pressed() > kept
        })
    }

    /// Takes the newest press of a trial back, and what ran from it.
    pub(super) fn undo(&mut self, number: u32, at: Stamp) {
        if self.move_back(number) {
            return;
        }
        let Some(trial) = self.trial_mut(number) else {
            return;
        };
        let Some(last) = trial.marks.iter().rposition(|m| m.kind.pressed()) else {
            return;
        };
        let spec = tasks::spec(trial.task);
        let gone = trial.marks.remove(last);
        if let MarkKind::Sign(sign) = gone.kind {
            let after = elapsed(gone.at, at, true).length;
            if after.is_none_or(|after| after > Choking::SLIP) {
                trial.taken_back.push((sign, after));
            }
        }
        let starts = |mark: &Mark| mark.kind == MarkKind::Start && mark.at == gone.at;
        // The time that ran from it never ran out.
        match gone.kind {
            MarkKind::Start => trial.marks.retain(|m| m.kind.pressed()),
            MarkKind::End | MarkKind::Stopped => {
                trial.marks.retain(|m| m.kind != MarkKind::WatchOver);
            }
            // One press made both: the start is the first thing counted.
            MarkKind::Tap if spec.pad.first_counts && trial.marks.last().is_some_and(starts) => {
                trial.marks.clear();
            }
            _ => {}
        }
        // An answer about what was timed is none without a time.
        if let (None, Some(untimed)) = (trial.start(), spec.untimed) {
            trial.answers.remove(untimed.question);
        }
    }

    /// The app was not on the screen in this time.
    pub(super) fn was_hidden(&mut self, from: Stamp, to: Stamp) {
        for trial in &mut self.exam.trials {
            if trial.start().is_some() {
                trial.hidden.push((from, to));
            }
        }
    }

    /// Takes an answer, or that it was taken back.
    pub(super) fn answer(&mut self, number: u32, question: String, answer: Option<Answer>) {
        let now = self.exam.now;
        let Some(trial) = self.trial_mut(number) else {
            return;
        };
        trial.said_at.insert(question.clone(), now);
        match answer {
            Some(answer) => trial.answers.insert(question, answer),
            None => trial.answers.remove(&question),
        };
    }

    /// Takes a trial that was counted elsewhere.
    pub(super) fn attach_copy(&mut self, mut copy: Trial) {
        // Nothing tells when it was answered but the time it was counted at.
        let started = copy.start();
        let then = self.exam.now.of_elsewhere(started);
        let names = copy.answers.keys().cloned();
        let names: Vec<String> = names.chain([STARTED.to_owned()]).collect();
        copy.said_at
            .extend(names.into_iter().map(|name| (name, then)));
        self.attach(copy);
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
    fn move_back(&mut self, number: u32) -> bool {
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

    /// Takes a choking that was noted elsewhere in its place in time: it is not the newest for
    /// being attached.
    pub(super) fn choked_elsewhere(&mut self, choking: Choking) {
        let later = |c: &Choking| c.since.wall > choking.since.wall;
        let place = self.chokings.iter().position(later);
        let place = place.unwrap_or(self.chokings.len());
        self.chokings.insert(place, choking);
        self.which_choked();
    }

    pub(super) fn choked(&mut self, since: Stamp) {
        self.chokings.push(Choking::since(since, self.exam.now));
        self.which_choked();
    }

    /// What is recorded of the newest choking.
    pub(super) fn at_choking(&mut self, at: Stamp, change: impl FnOnce(&mut Choking)) {
        change(self.choking_or_lost(at));
        self.which_choked();
    }

    /// The newest choking; where its own entry is lost, its sign, help or its end tell that there
    /// was one.
    fn choking_or_lost(&mut self, at: Stamp) -> &mut Choking {
        if self.chokings.is_empty() {
            let since = self.exam.choke_pressed_at().unwrap_or(at);
            self.choked(since);
        }
        let newest = self.chokings.len().saturating_sub(1);
        &mut self.chokings[newest]
    }

    pub(super) fn which_choked(&mut self) {
        self.exam.chokings = self.chokings.iter().map(|c| c.since).collect();
        self.exam.choked = !self.chokings.is_empty();
        // The newest recorded: one that was attached may be older by the clock.
        let newest = self.chokings.iter().map(|c| c.noted);
        self.exam.choking_noted = newest.reduce(|a, b| if b.is_after(a) { b } else { a });
        self.exam.choking_over = self.choking().is_some_and(|c| c.over.is_some());
        self.exam.choking_voice = self.choking().and_then(|c| c.voice);
    }

    fn trial_mut(&mut self, number: u32) -> Option<&mut Trial> {
        self.exam.trials.iter_mut().find(|t| t.number == number)
    }
}
