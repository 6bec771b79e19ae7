//! The state of a task, followed as the visit and the clock change.

use super::desk::Desk;
use super::follow::{Follow, follow};
use super::holds::moment;
use crate::clinical::decision::fresh;
use crate::clinical::decision::task_state::TaskState;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::Face;
use leptos::prelude::*;

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
