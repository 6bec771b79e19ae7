//! The state of a task, followed as the visit and the clock change.

use leptos::prelude::*;

use super::desk::Desk;
use super::follow::{Follow, follow};
use super::holds::moment;
use super::route::Route;
use crate::browser::page;
use crate::clinical::decision::fresh;
use crate::clinical::decision::task_state::TaskState;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::Face;
use crate::draw::{Piece, when};
use crate::record::visit::Visit;
use crate::record::way;

/// Where a task stands.
pub(super) fn task_state(desk: Desk, task: TaskId, face: Follow<Face>) -> Memo<TaskState> {
    // What grows too old by the clock alone. Nothing is while a trial runs: it is finished.
    let old = follow(move || {
        if matches!(face.get(), Face::Running | Face::Countdown) {
            return 0;
        }
        desk.now.get();
        desk.visit.with(|v| {
            v.map_or(0, |v| {
                let now = moment(v);
                let voice = fresh::old_voice(task, &v.exam, now).is_some();
                fresh::old(&v.exam, now).len() + usize::from(voice)
            })
        })
    });
    Memo::new(move |_| {
        old.get();
        let face = face.get();
        desk.visit.with(|v| match v {
            Some(v) => TaskState::of(task, &v.exam, face, moment(v)),
            None => TaskState::of(task, &Exam::default(), face, Moment::default()),
        })
    })
}

/// A task's page as its parts see it.
#[derive(Clone, Copy)]
pub(super) struct TaskPage {
    pub(super) desk: Desk,
    pub(super) task: TaskId,
    /// Where the task stands.
    pub(super) state: Memo<TaskState>,
    /// Whether it is done on its own, without a visit.
    pub(super) loose: bool,
}

impl TaskPage {
    /// A part that stands there while something is so.
    pub(super) fn part(
        self,
        so: impl Fn(&TaskState) -> bool + Send + Sync + 'static,
        part: impl Fn(TaskPage) -> Piece + Send + Sync + 'static,
    ) -> Piece {
        when(move || self.state.with(&so), move || part(self))
    }

    /// On from here.
    pub(super) fn next(self) {
        if page::refused() {
            return;
        }
        if self.loose {
            self.desk.go(Route::Home);
            return;
        }
        let after = |v: &Visit| way::after_task(v, self.task);
        if let Some(page) = self.desk.visit.with_untracked(|v| v.map(after)) {
            self.desk.turn(page);
        }
    }

    /// Opens another trial; not over a field that was refused, which goes with the trial it stands
    /// in.
    pub(super) fn repeat(self) {
        if !page::refused() {
            self.desk.repeat(self.task, None);
        }
    }
}
